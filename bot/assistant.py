"""The assistant: one message or one alarm in, one transaction, then the outbox and the alarm.

Nothing is decided here. `core.session.step` decides, the store keeps, the outbox sends, the alarm rings.
"""

from __future__ import annotations

import asyncio
import logging
from collections import defaultdict
from contextlib import asynccontextmanager
from dataclasses import dataclass
from datetime import datetime, timedelta
from typing import TYPE_CHECKING

from bot.alarms import Alarms
from bot.outbox import Outbox, backoff_s
from bot.store.store import InboxKey
from bot.wakes import Wakes
from core.coach.step import step as coach_step
from core.session.events import Event, Opened, Plan, Said, Step, Woke
from core.session.step import step as core_step

if TYPE_CHECKING:
    from collections.abc import AsyncIterator

    from bot.ports import Channel, Clock, StepFunction
    from bot.store.store import Handled, Store
    from core.circuit import Circuit
    from core.coach.desk import Desk
    from core.coach.states import CoachState, CoachStep
    from core.diary import History
    from core.session.states import State
    from core.trainee import Trainee

FIRST_WAIT_S = 5.0
LONGEST_WAIT_S = 300.0
STEPS_AT_ONE_INSTANT = 20  # several cues can fall together; more is a fault that would never end

_log = logging.getLogger(__name__)


@dataclass
class _Attention:
    """What the assistant knows of a trainee it has seen to since the start.

    `failures` counts failures in a row, `standing` the alarms in a row that did not bring time forward.
    """

    lock: asyncio.Lock
    failures: int = 0
    standing: int = 0


class Assistant:
    """Answers trainees and looks what is due. Use `on_duty` to have one that is wired up and running."""

    def __init__(
        self,
        store: Store,
        clock: Clock,
        outbox: Outbox,
        alarms: Alarms,
        *,
        coach: str,
        step: StepFunction = core_step,
    ) -> None:
        self._store = store
        self._clock = clock
        self._outbox = outbox
        self._alarms = alarms
        self._coach = coach
        self._step = step
        self._wakes = Wakes()
        self._attention: defaultdict[int, _Attention] = defaultdict(lambda: _Attention(asyncio.Lock()))
        self._looking = asyncio.Lock()
        self._stopping = False
        self._changed = asyncio.Condition()
        outbox.when_delayed(self.rearm)

    async def start(self) -> None:
        """Rebuild the alarms from the database, send what waits in the outbox, and look what fell due meanwhile."""
        await self._store.notice_zones(self._clock.now())
        self._wakes = Wakes(await self._store.wakes())
        self._alarms.start(self.look)
        await self._outbox.recover()
        self.rearm()

    async def stop(self) -> None:
        """Let the step and the sending that run come to their end, then stop. The database is not closed."""
        self._stopping = True
        async with self._looking:
            for attention in self._attention.values():
                async with attention.lock:
                    pass
        await self._outbox.idle()
        await self._alarms.stop()

    async def opened(self, trainee_id: int) -> bool:
        """The trainee's chat was opened, for the first time or again; true when that was handled (see `said`)."""
        return await asyncio.shield(self._hear(trainee_id, None, Opened()))

    async def said(self, trainee_id: int, text: str, external_id: str, channel: str) -> bool:
        """A trainee, or a coach, sent a text; the channel's id for it must never come twice for two texts.

        Returns:
            True when it is kept and answered, now or before. False when something went wrong inside: nothing was kept, it is in the
            log, and the channel may tell the trainee or hand in the same message again.
        """
        return await asyncio.shield(self._hear(trainee_id, InboxKey(channel, external_id), Said(text)))

    async def look(self) -> None:
        """Work off everything that is due, each trainee in a transaction of their own, then set the alarm. Raises nothing."""
        async with self._looking:
            self._outbox.retry()
            while not self._stopping and (due := self._wakes.due(self._clock.now())):
                for trainee_id in due:
                    await self._wake(trainee_id)
        await self._tell()

    def next_due(self) -> datetime | None:
        """When there is something to do next: a trainee's wake-up, or another try to send."""
        return min((instant for instant in (self._wakes.next_at(), self._outbox.retry_at()) if instant is not None), default=None)

    def rearm(self) -> None:
        """Set the alarm for `next_due`. Only who sets a simulated clock needs to call this."""
        self._alarms.arm(self.next_due())

    async def settled(self) -> None:
        """Return when nothing is due at the clock's time, and nothing is being sent."""
        async with self._changed:
            await self._changed.wait_for(self._nothing_due)
        await self._outbox.idle()

    async def _hear(self, trainee_id: int, key: InboxKey | None, event: Event) -> bool:
        attention = self._attention[trainee_id]
        self._outbox.heard_from(trainee_id)
        async with attention.lock:
            try:
                handled = await self._handle(trainee_id, key, event)
            except Exception:  # noqa: BLE001 - whatever it was, the message is not kept and the channel is told
                _log.exception("trainee %d: a message could not be handled", trainee_id)
                kept = False
            else:
                self._wakes.plan(trainee_id, handled.wake_at)
                attention.failures = attention.standing = 0
                kept = True
        await self._tell()
        return kept

    async def _wake(self, trainee_id: int) -> None:
        attention = self._attention[trainee_id]
        async with attention.lock:
            if self._stopping:
                return
            due = self._wakes.planned(trainee_id)
            if due is None or due > self._clock.now():
                return  # a message was faster
            try:
                handled = await self._handle(trainee_id, None, Woke())
            except Exception:  # noqa: BLE001 - this trainee's alarm must not stop the others'
                _log.exception("trainee %d: the alarm could not be handled", trainee_id)
                self._put_off(trainee_id, attention)
                return
            self._wakes.plan(trainee_id, handled.wake_at)
            attention.failures = 0
            moved = handled.wake_at is None or handled.wake_at > due
            attention.standing = 0 if moved else attention.standing + 1
            if attention.standing > STEPS_AT_ONE_INSTANT:
                _log.error("trainee %d: the alarm rings for ever at one instant", trainee_id)
                self._put_off(trainee_id, attention)

    async def _handle(self, trainee_id: int, key: InboxKey | None, event: Event) -> Handled:
        now, claim = self._clock.now(), self._outbox.is_clear(trainee_id)

        def decide(trainee: Trainee, state: State, history: History, circuit: Circuit) -> Step:
            return self._step(state, event, Plan(trainee, circuit, self._coach), history, now)

        def decide_for_coach(state: CoachState, desk: Desk) -> CoachStep:
            return coach_step(state, event, desk, now)

        if await self._store.is_coach(trainee_id):
            handled = await self._store.handle_coach(trainee_id, key, decide_for_coach, now, claim=claim)
        else:
            handled = await self._store.handle(trainee_id, key, decide, now, claim=claim)
        if handled.messages:
            self._outbox.post(trainee_id, handled.letter)
        return handled

    def _put_off(self, trainee_id: int, attention: _Attention) -> None:
        """Plan another try; the database keeps the instant at which it was due."""
        attention.failures += 1
        wait_s = backoff_s(attention.failures, FIRST_WAIT_S, LONGEST_WAIT_S)
        self._wakes.plan(trainee_id, self._clock.now() + timedelta(seconds=wait_s))

    def _nothing_due(self) -> bool:
        due = self.next_due()
        return due is None or due > self._clock.now()

    async def _tell(self) -> None:
        self.rearm()
        async with self._changed:
            self._changed.notify_all()


@asynccontextmanager
async def on_duty(
    store: Store,
    clock: Clock,
    channel: Channel,
    coach: str,
    step: StepFunction = core_step,
) -> AsyncIterator[Assistant]:
    """An assistant at work over an open store, stopped in good order at the end.

    What `python -m bot chat` does: `make_folder`, `claimed(folder)`, `to_file(folder)`, `Store.open(url, render)`, add circuit and
    trainee when they are not there, a clock, then `async with on_duty(...)`: `opened`, and `said` for every line.
    """
    assistant = Assistant(store, clock, Outbox(store.outgoing, clock, channel), Alarms(clock), coach=coach, step=step)
    await assistant.start()
    try:
        yield assistant
    finally:
        await assistant.stop()
