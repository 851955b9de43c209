"""Coaches as the assistant sees to them: what they say, what they are told unasked and when, and whom a step of theirs wakes."""

from __future__ import annotations

import logging
from collections import Counter
from datetime import timedelta
from typing import TYPE_CHECKING

from bot.outbox import backoff_s
from bot.wakes import Wakes
from core.coach.step import step
from core.coach_messages import CoachNotUnderstood, NothingAsked
from core.session.events import Woke
from core.session.states import Idle, New, Running

if TYPE_CHECKING:
    from collections.abc import Callable
    from datetime import datetime

    from bot.outbox import Outbox
    from bot.ports import Clock
    from bot.store.store import Handled, InboxKey, Store
    from core.coach.desk import Desk
    from core.coach.states import CoachState, CoachStep
    from core.session.events import Event

FIRST_WAIT_S = 5.0
LONGEST_WAIT_S = 300.0

_log = logging.getLogger(__name__)


class CoachDuty:
    """The coaches that can be reached. The caller holds a person's lock around `hear` and `look`."""

    def __init__(self, store: Store, clock: Clock, outbox: Outbox, wake: Callable[[int, datetime], None]) -> None:
        self._store = store
        self._clock = clock
        self._outbox = outbox
        self._wake = wake
        self._wakes = Wakes()
        self._away: set[int] = set()
        self._training: set[int] = set()
        self._failures: Counter[int] = Counter()

    def attend(self, coach_id: int) -> None:
        """Look at a coach from now on. One who has spoken is looked at anyway."""
        self._away.discard(coach_id)
        self._wakes.plan(coach_id, self._clock.now())

    def leave(self, coach_id: int) -> None:
        """Look at a coach no more: nothing can be sent to them."""
        self._away.add(coach_id)
        self._wakes.plan(coach_id, None)

    def due(self, now: datetime) -> list[int]:
        """Who is to be looked at by now."""
        return self._wakes.due(now)

    def next_at(self) -> datetime | None:
        """When somebody is to be looked at next, None when nobody is."""
        return self._wakes.next_at()

    def seen(self, person_id: int) -> None:
        """Something of somebody's own training was handled: if they are a coach who was due meanwhile, it may be over now."""
        if person_id in self._training:
            self._training.remove(person_id)
            self.attend(person_id)

    async def hear(self, coach_id: int, key: InboxKey | None, event: Event) -> bool:
        """Hear a coach as a coach; false when they are to be heard as a trainee instead, and nothing is kept.

        In the middle of their own training they are a trainee, and so they are with what no coach says once they have trained.
        """
        state, now = await self._store.state(coach_id), self._clock.now()
        if not isinstance(state, New | Idle):
            return False

        def decide(coach_state: CoachState, desk: Desk) -> CoachStep | None:
            decided = step(coach_state, event, desk, now)
            strange = all(isinstance(say.message, CoachNotUnderstood | NothingAsked) for say in decided.messages)
            return None if strange and isinstance(state, Idle) else decided

        handled = await self._store.handle_coach(coach_id, key, decide, now, claim=self._outbox.is_clear(coach_id))
        if handled is None:
            return False
        self._after(coach_id, handled)
        return True

    async def look(self, coach_id: int) -> None:
        """Tell a coach what is due; in the middle of their own training, when that is over. Raises nothing."""
        now, due = self._clock.now(), self._wakes.planned(coach_id)
        if due is None or due > now:
            return
        try:
            if isinstance(await self._store.state(coach_id), Running):
                self._wakes.plan(coach_id, None)
                self._training.add(coach_id)
                return
            wake_at = await self._store.coach_wake(coach_id, now)
            if wake_at is None or wake_at > now:
                self._wakes.plan(coach_id, wake_at)  # everybody's diary is read only when there is something to tell
                return
            claim = self._outbox.is_clear(coach_id)
            handled = await self._store.handle_coach(
                coach_id, None, lambda state, desk: step(state, Woke(), desk, now), now, claim=claim
            )
        except Exception:  # noqa: BLE001 - this coach's alarm must not stop the others'
            _log.exception("coach %d: the alarm could not be handled", coach_id)
            self._failures[coach_id] += 1
            wait_s = backoff_s(self._failures[coach_id], FIRST_WAIT_S, LONGEST_WAIT_S)
            self._wakes.plan(coach_id, now + timedelta(seconds=wait_s))
            return
        del self._failures[coach_id]
        if handled is not None:
            self._after(coach_id, handled)

    def _after(self, coach_id: int, handled: Handled) -> None:
        """Send what a step said, and have those looked at whom it wakes."""
        if handled.messages:
            self._outbox.post(coach_id, handled.letters)
        if not handled.seen:
            self._wakes.plan(coach_id, None if coach_id in self._away else handled.wake_at)
        for trainee_id, at in handled.wakes:
            self._wake(trainee_id, at)
