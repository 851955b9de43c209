"""Once a day, and at the start: let go of rows that nobody needs any more."""

from __future__ import annotations

import asyncio
import logging
from datetime import datetime, timedelta
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from bot.ports import Clock
    from bot.store.pruning import Pruning

EVERY = timedelta(days=1)

_log = logging.getLogger(__name__)


class Tidying:
    """A chore of the assistant's (`bot.ports.Timed`)."""

    def __init__(self, pruning: Pruning, clock: Clock) -> None:
        self._pruning = pruning
        self._clock = clock
        self._due_at = clock.now()
        self._running: asyncio.Task[None] | None = None

    def due_at(self) -> datetime:
        """When it is due next."""
        return self._due_at

    def look(self) -> None:
        """Begin, when it is due, without waiting for it."""
        now = self._clock.now()
        if self._due_at <= now:
            self._due_at = now + EVERY
            if self._running is None:
                self._running = asyncio.create_task(self._tidy(now))

    async def idle(self) -> None:
        """Return when what was begun is over."""
        if self._running is not None:
            await asyncio.wait((self._running,))

    async def _tidy(self, now: datetime) -> None:
        try:
            gone = await self._pruning.prune(now)
            _log.info("%d old rows let go", gone)
        except Exception:  # noqa: BLE001 - nobody waits for this task; it is tried again tomorrow
            _log.exception("old rows could not be let go")
        finally:
            self._running = None
