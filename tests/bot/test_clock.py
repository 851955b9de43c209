"""The clocks."""

import math
from datetime import UTC, datetime, timedelta

import pytest

from bot.clock import LiveClock, SimulatedClock
from tests.bot.given import T0, after


@pytest.fixture
def monotonic(monkeypatch):
    """The monotonic clock, moved by hand."""
    seconds = [1000.0]
    monkeypatch.setattr("bot.clock.time.monotonic", lambda: seconds[0])

    def pass_s(elapsed):
        seconds[0] += elapsed

    return pass_s


def test_a_live_clock_counts_elapsed_seconds_from_its_start(monotonic):
    """However often it is asked, the error does not add up: it always counts from the start."""
    clock = LiveClock(start=T0)
    for _ in range(3600):
        monotonic(0.1)
        clock.now()
    assert abs((clock.now() - after(360)).total_seconds()) < 1e-5


def test_a_clock_at_twenty_times_the_speed(monotonic):
    """Three real seconds are one of its minutes, and it waits a twentieth."""
    clock = LiveClock(speed=20, start=T0)
    assert clock.wait_s(after(60)) == pytest.approx(3.0)
    monotonic(3.0)
    assert clock.now() == after(60)
    assert clock.wait_s(after(60)) == 0
    assert clock.wait_s(after(59)) == 0


class Watch(datetime):
    """The machine's time of day, set by hand."""

    shown = T0

    @classmethod
    def now(cls, tz=None):
        """What it shows."""
        return cls.shown.astimezone(tz)


@pytest.fixture
def time_of_day(monkeypatch):
    """A function that sets the machine's time of day, so many seconds after T0."""
    monkeypatch.setattr("bot.clock.datetime", Watch)

    def set_to(seconds):
        Watch.shown = after(seconds)

    set_to(0)
    return set_to


def test_after_the_machine_slept_the_clock_shows_the_time_of_day(monotonic, time_of_day):
    """Three hours on which the monotonic clock stood still; from there on it counts as before."""
    clock = LiveClock()
    time_of_day(3 * 3600)
    assert clock.now() == after(3 * 3600)
    monotonic(60)
    assert clock.now() == after(3 * 3600 + 60)


def test_a_time_of_day_that_is_set_back_moves_nothing(monotonic, time_of_day):
    """Neither back nor on: an hour back, and the seconds go on as they were; nor do small corrections show."""
    clock = LiveClock()
    monotonic(10)
    time_of_day(-3600)
    assert clock.now() == after(10)
    time_of_day(14)
    assert clock.now() == after(10)


def test_a_clock_that_runs_fast_does_not_follow_the_time_of_day(monotonic, time_of_day):
    """Its time is its own."""
    clock = LiveClock(speed=20, start=T0)
    time_of_day(1e6)
    monotonic(3)
    assert clock.now() == after(60)


def test_a_live_clock_speaks_utc():
    """Whatever zone its start was given in."""
    assert LiveClock(start=T0.astimezone(UTC)).now().tzinfo is UTC
    assert LiveClock().now().tzinfo is UTC


def test_a_simulated_clock_stands_until_it_is_set():
    """What is due is due at once; what is not will not come by waiting."""
    clock = SimulatedClock(T0)
    assert clock.now() == T0
    assert clock.wait_s(T0) == 0
    assert clock.wait_s(after(1)) == math.inf
    clock.set(after(1))
    assert clock.wait_s(after(1)) == 0


def test_a_simulated_clock_is_set_back_only_when_asked():
    """Going back by mistake is an error."""
    clock = SimulatedClock(T0)
    with pytest.raises(ValueError, match="not set back"):
        clock.set(T0 - timedelta(seconds=1))
    clock.set(datetime(2026, 1, 1, tzinfo=UTC), back=True)
    assert clock.now() == datetime(2026, 1, 1, tzinfo=UTC)
