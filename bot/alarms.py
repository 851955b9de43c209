"""The alarm: one wake-up that says only "look now". The only door to APScheduler.

What is due stands in the database. The scheduler holds a single date job for the earliest instant; after each look it is set anew.
It compares with the machine's time of day, and its timers stand still while the machine sleeps. So the job is also set anew every
`WATCH_S` seconds from the clock: a machine that slept, or whose time of day was set, rings late by no more than that.
"""

from __future__ import annotations

import asyncio
import math
from datetime import UTC, datetime, timedelta
from typing import TYPE_CHECKING

from apscheduler.schedulers.asyncio import AsyncIOScheduler  # type: ignore[import-untyped]
from apscheduler.triggers.date import DateTrigger  # type: ignore[import-untyped]

if TYPE_CHECKING:
    from collections.abc import Awaitable, Callable

    from bot.ports import Clock

JOB = "look"
RINGS_AT_ONCE = 1_000  # a ring during a look must not be lost; it waits for the look to end and finds nothing
WATCH_S = 30.0
FARTHEST_S = 86_400.0 * 30  # look at least once a month: no date overflows


class Alarms:
    """One alarm on a clock; `look` is called when it rings."""

    def __init__(self, clock: Clock) -> None:
        self._clock = clock
        self._scheduler = AsyncIOScheduler(timezone=UTC)
        self._instant: datetime | None = None
        self._watch: asyncio.TimerHandle | None = None

    def start(self, look: Callable[[], Awaitable[None]]) -> None:
        """Begin to ring, in the running event loop. `look` must be a coroutine function that raises nothing."""
        self._look = look
        self._scheduler.start()

    def arm(self, instant: datetime | None) -> None:
        """Ring at `instant` of the clock, at once when it is due; None: do not ring.

        What is set for sooner stays: one look that finds nothing costs less than setting the alarm anew at every message.
        """
        if instant is not None and self._is_set_by(instant):
            return
        self._instant = instant
        self._set()

    def _is_set_by(self, instant: datetime) -> bool:
        set_for = self._instant
        return set_for is not None and set_for <= instant and self._watch is not None and self._clock.wait_s(set_for) > 0

    def _set(self) -> None:
        self._watch_no_more()
        wait_s = math.inf if self._instant is None else self._clock.wait_s(self._instant)
        if math.isinf(wait_s):
            if self._scheduler.get_job(JOB) is not None:
                self._scheduler.remove_job(JOB)
            return
        self._scheduler.add_job(
            self._look,
            DateTrigger(datetime.now(UTC) + timedelta(seconds=min(wait_s, FARTHEST_S))),
            id=JOB,
            replace_existing=True,
            misfire_grace_time=None,  # late is better than never
            coalesce=True,
            max_instances=RINGS_AT_ONCE,
        )
        self._watch = asyncio.get_running_loop().call_later(WATCH_S, self._set)

    def _watch_no_more(self) -> None:
        if self._watch is not None:
            self._watch.cancel()
            self._watch = None

    async def stop(self) -> None:
        """Ring no more. A look that runs must have ended before: stopping would cut it short."""
        self._watch_no_more()
        self._scheduler.shutdown(wait=False)
        await asyncio.sleep(0)  # the scheduler stops in the next turn of the event loop
