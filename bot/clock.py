"""The clocks: one that runs, one that is set. Both speak UTC."""

from __future__ import annotations

import math
import time
from datetime import UTC, datetime, timedelta

JUMP_S = 5.0  # the machine's time of day is believed when it is so far ahead: the machine slept, or its time was put right


class LiveClock:
    """A clock that runs `speed` times as fast as the real one, counted on the monotonic clock from `start`.

    Elapsed time does not jump when the machine's time of day is set, but for one case: at real speed, a time of day that is more
    than `JUMP_S` ahead is taken over, since the monotonic clock stands still while a machine sleeps. It never goes back. `start` is
    the real time unless given; a program that ran fast gives the later of the real time and `Store.latest_at()`, so that time does
    not run backwards over a restart.
    """

    def __init__(self, speed: float = 1.0, start: datetime | None = None) -> None:
        self._speed = speed
        self._start = datetime.now(UTC) if start is None else start.astimezone(UTC)
        self._follows = start is None and speed == 1.0
        self._anchor_s = time.monotonic()

    def now(self) -> datetime:
        """The instant this clock shows."""
        shown = self._start + timedelta(seconds=(time.monotonic() - self._anchor_s) * self._speed)
        if self._follows and (ahead := datetime.now(UTC) - shown) > timedelta(seconds=JUMP_S):
            self._start += ahead
            shown += ahead
        return shown

    def wait_s(self, instant: datetime) -> float:
        """Real seconds until `instant`, 0 when it is past."""
        return max(0.0, (instant - self.now()).total_seconds() / self._speed)


class SimulatedClock:
    """A clock that stands still until it is set."""

    def __init__(self, start: datetime) -> None:
        self._now = start.astimezone(UTC)

    def now(self) -> datetime:
        """The instant it was set to."""
        return self._now

    def set(self, instant: datetime, *, back: bool = False) -> None:
        """Set the clock.

        Raises:
            ValueError: when `instant` is earlier than now and `back` is not set.
        """
        if instant < self._now and not back:
            raise ValueError(f"the clock shows {self._now.isoformat()} and is not set back to {instant.isoformat()}")
        self._now = instant.astimezone(UTC)

    def wait_s(self, instant: datetime) -> float:
        """0 when `instant` is due, else infinite: this clock moves only when set."""
        return 0.0 if instant <= self._now else math.inf
