"""The alarm on a machine that sleeps, or whose time of day is set: it is set anew from the clock every so often."""

import asyncio
from datetime import UTC, datetime, timedelta

from bot.alarms import JOB, WATCH_S, Alarms
from tests.bot.given import T0


class Slept:
    """A clock that finds that less time is left than it said before."""

    def __init__(self, wait_s):
        self.left_s = wait_s

    def wait_s(self, _instant):
        """Real seconds until the instant."""
        return self.left_s


async def look():
    """What the alarm calls."""


def rings_in_s(alarms):
    """In how many seconds of the machine's time of day the job will run."""
    return (alarms._scheduler.get_job(JOB).next_run_time - datetime.now(UTC)).total_seconds()  # noqa: SLF001


async def test_the_alarm_is_set_anew_from_the_clock(monkeypatch):
    """Armed for three hours; when it is looked at again the clock says ten seconds, and the job is set for then."""
    later = []
    monkeypatch.setattr(
        asyncio.get_running_loop(), "call_later", lambda wait_s, call, *_args, **_: later.append((wait_s, call)) or Handle()
    )
    clock = Slept(3 * 3600)
    alarms = Alarms(clock)
    alarms.start(look)
    alarms.arm(T0)
    assert 10_700 < rings_in_s(alarms) < 10_801
    clock.left_s = 10
    [again] = [call for wait_s, call in later if wait_s == WATCH_S]
    again()
    assert 5 < rings_in_s(alarms) < 11
    await alarms.stop()


async def test_what_is_set_for_sooner_stays():
    """A later instant does not set the alarm anew; an earlier one does."""
    clock = Slept(10)
    alarms = Alarms(clock)
    alarms.start(look)
    alarms.arm(T0)
    clock.left_s = 100
    alarms.arm(T0 + timedelta(seconds=90))
    assert rings_in_s(alarms) < 11
    alarms.arm(T0 - timedelta(seconds=5))
    assert rings_in_s(alarms) > 90
    await alarms.stop()


async def test_an_alarm_for_nothing_is_not_watched():
    """With nobody to wake, nothing ticks."""
    alarms = Alarms(Slept(10))
    alarms.start(look)
    alarms.arm(T0)
    alarms.arm(None)
    assert alarms._watch is None  # noqa: SLF001
    assert alarms._scheduler.get_job(JOB) is None  # noqa: SLF001
    await alarms.stop()


class Handle:
    """What a loop gives for a later call."""

    def cancel(self):
        """Nothing to cancel."""
