"""The face of the work clock: one message, edited without sound four times in the work of a station.

The calls of the clock that must be heard are messages of their own. The face is an ornament: an edit that the network has no room
for is left out, and after a restart in the middle of a station the face stays as it was.
"""

from __future__ import annotations

import asyncio
import logging
from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from html import escape
from typing import TYPE_CHECKING

from bot.channels.telegram.keyboard import Buttons
from bot.errors import ChannelError, Unreachable
from bot.pace import Rank
from bot.wakes import Wakes
from bot.wording.network import face, face_over

if TYPE_CHECKING:
    from collections.abc import Awaitable, Callable

    from bot.pace import Pace
    from bot.ports import Clock

LEFT = (5 / 6, 2 / 3, 1 / 3, 0.0)  # of the work, at each edit: never when a call of the clock is due
OVER_S = 1.0  # the last edit gives way to the call of the end
SHORTEST_S = 20  # shorter work gets no face: its calls are enough

_log = logging.getLogger(__name__)


@dataclass(frozen=True)
class _Running:
    """A clock that runs: which message shows it, until when, and which edit is next."""

    address: str
    message_id: int
    exercise: str
    ends_at: datetime
    whole_s: int
    buttons: Buttons | None
    edit: int = 0

    @property
    def last(self) -> bool:
        return self.edit == len(LEFT) - 1

    @property
    def due_at(self) -> datetime:
        return self.ends_at - timedelta(seconds=self.whole_s * LEFT[self.edit] - (OVER_S if self.last else 0.0))

    def html(self) -> str:
        left_s = round(self.whole_s * LEFT[self.edit])
        return escape(face_over(self.exercise) if self.last else face(self.exercise, left_s, self.whole_s), quote=False)


class Faces:
    """Every clock face that runs. `still_runs` says whether a trainee's work still ends at an instant."""

    def __init__(
        self,
        clock: Clock,
        pace: Pace,
        change: Callable[[str, int, str, Buttons | None], Awaitable[None]],
        still_runs: Callable[[int, datetime], Awaitable[bool]],
    ) -> None:
        self._clock = clock
        self._pace = pace
        self._change = change
        self._still_runs = still_runs
        self._running: dict[int, _Running] = {}
        self._due = Wakes()
        self._edits: dict[int, asyncio.Task[None]] = {}
        self._planned: Callable[[], None] = lambda: None

    def when_planned(self, call: Callable[[], None]) -> None:
        """Call this when an edit was planned, so that the alarm can be set for `due_at`."""
        self._planned = call

    def begin(
        self,
        trainee_id: int,
        address: str,
        message_id: int,
        exercise: str,
        ends_at: datetime,
        buttons: Buttons | None,
    ) -> None:
        """The work of a station has begun and was announced in a message, which keeps its buttons until it is over."""
        whole_s = round((ends_at - self._clock.now()).total_seconds())
        if whole_s >= SHORTEST_S:
            self._show(trainee_id, _Running(address, message_id, exercise, ends_at, whole_s, buttons))
            self._planned()

    def due_at(self) -> datetime | None:
        """When the next edit is due, None when no clock runs."""
        return self._due.next_at()

    def look(self) -> None:
        """Begin every edit that is due; none waits for another."""
        now = self._clock.now()
        for trainee_id in self._due.due(now):
            running = self._running[trainee_id]
            self._show(trainee_id, None if running.last else replace(running, edit=running.edit + 1))
            room = self._pace.ready_at(trainee_id, Rank.ORNAMENT, now) <= now or running.last
            if room and trainee_id not in self._edits:
                self._edits[trainee_id] = asyncio.create_task(self._edit(trainee_id, running))

    async def idle(self) -> None:
        """Return when no edit is on its way."""
        while self._edits:
            await asyncio.wait(tuple(self._edits.values()))

    def _show(self, trainee_id: int, running: _Running | None) -> None:
        """Keep where a clock is; None: it runs no more."""
        if running is None:
            self._running.pop(trainee_id, None)
        else:
            self._running[trainee_id] = running
        self._due.plan(trainee_id, None if running is None else running.due_at)

    async def _edit(self, trainee_id: int, running: _Running) -> None:
        try:
            if not await self._still_runs(trainee_id, running.ends_at) and not running.last:
                self._show(trainee_id, None)
                return
            self._pace.count(trainee_id, self._clock.now())
            buttons = None if running.last else running.buttons
            await self._change(running.address, running.message_id, running.html(), buttons)
        except Unreachable as error:
            self._show(trainee_id, None)
            if error.retry_after_s is not None:
                self._pace.hold(trainee_id, self._clock.now() + timedelta(seconds=error.retry_after_s))
        except ChannelError:
            self._show(trainee_id, None)
        except Exception:  # noqa: BLE001 - nobody waits for this task, and it is an ornament
            _log.exception("trainee %d: the clock's face could not be changed", trainee_id)
            self._show(trainee_id, None)
        finally:
            del self._edits[trainee_id]
