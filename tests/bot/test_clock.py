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
