"""The assistant: one message or one alarm in, one transaction, then the outbox and the alarm.

Nothing is decided here. `core.session.step` decides, the store keeps, the outbox sends, the alarm rings.
"""

from __future__ import annotations

import asyncio
import logging
from collections import defaultdict
from contextlib import asynccontextmanager
from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from typing import TYPE_CHECKING, TypeVar

from bot.alarms import Alarms
from bot.coach_duty import CoachDuty
from bot.leaving import Leaving
from bot.outbox import Outbox, backoff_s
from bot.store.store import InboxKey
from bot.wakes import Wakes
from core.messages import GetReady, HalfWay, SecondsLeft
from core.session.events import Edited, Event, Opened, Plan, Said, Say, Step, Woke
from core.session.moment import moment, still_fits
from core.session.step import step as core_step

if TYPE_CHECKING:
    from collections.abc import AsyncIterator, Callable, Coroutine, Iterable, Sequence
    from pathlib import Path

    from bot.ports import Channel, Clock, Decide, StepFunction, Timed
    from bot.store.outgoing import Offer
    from bot.store.store import Handled, Store
    from core.circuit import Circuit
    from core.diary import History
    from core.messages import Message
    from core.session.states import State
    from core.trainee import Trainee

FIRST_WAIT_S = 5.0
LONGEST_WAIT_S = 300.0
STEPS_AT_ONE_INSTANT = 20  # several cues can fall together; more is a fault that would never end
SOON = timedelta(minutes=2)  # who is due within this is read at the start: at work, or about to be reminded
AT_ONCE = 64  # alarms handled side by side, so that they share commits
DISPENSABLE = (GetReady, HalfWay, SecondsLeft)  # what somebody who wishes for fewer messages does without

_log = logging.getLogger(__name__)
T = TypeVar("T")


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
        emergency: str | None = None,
        step: StepFunction = core_step,
        chores: Sequence[Timed] = (),
        data: Path | None = None,
    ) -> None:
        self._store = store
        self._clock = clock
        self._outbox = outbox
        self._alarms = alarms
        self._coach = coach
        self._emergency = emergency
        self._step = step
        self._chores = chores
        self._on_news: Callable[[], None] | None = None
        self._wakes = Wakes()
        self._duty = CoachDuty(store, clock, outbox, self._wake_by)
        self._attention: defaultdict[int, _Attention] = defaultdict(lambda: _Attention(asyncio.Lock()))
        self._looking = asyncio.Lock()
        self._fewer: set[int] = set()
        self._away: set[int] = set()
        self._stopping = False
        self._held = False
        self._changed = asyncio.Condition()
        self._leaving = Leaving(store, data)
        outbox.when_delayed(self.rearm)
        outbox.when_clear(self._leaving.goodbye_is_out)

    async def start(self) -> None:
        """Rebuild the alarms from the database, send what waits in the outbox, and look what fell due meanwhile."""
        await self._store.notice_zones(self._clock.now())
        leaving = await self._leaving.resume()
        known = {trainee_id: at for trainee_id, at in (await self._store.wakes()).items() if trainee_id not in self._away}
        self._wakes = Wakes(known)
        soon = self._clock.now() + SOON
        await self._store.remember([trainee_id for trainee_id, at in known.items() if at <= soon])
        self._alarms.start(self.look)
        await self._outbox.recover()
        for trainee_id in leaving:
            if self._outbox.is_clear(trainee_id):
                self._leaving.goodbye_is_out(trainee_id)
        self.rearm()

    async def stop(self) -> None:
        """Let the step and the sending that run come to their end, then stop. The database is not closed."""
        self._stopping = True
        async with self._looking:
            for attention in self._attention.values():
                async with attention.lock:
                    pass
        await self._idle()
        await self._alarms.stop()

    def hold(self) -> None:
        """Look at no alarm yet: what was written while the program was away comes first."""
        self._held = True

    def release(self) -> None:
        """Everything that was written before has come in: look what is due."""
        self._held = False
        self.rearm()

    async def opened(self, trainee_id: int, key: InboxKey | None = None) -> bool:
        """The trainee's chat was opened, for the first time or again; true when that was handled (see `said`)."""
        return await asyncio.shield(self._hear(trainee_id, key, Opened()))

    async def trains(self, person_id: int, key: InboxKey | None = None) -> bool:
        """A coach wishes to train: their own conversation as a trainee is opened (see `said`)."""
        return await asyncio.shield(self._take(person_id, key, self._deciding(Opened())))

    async def said(self, trainee_id: int, text: str, external_id: str, channel: str, *, written_at: datetime | None = None) -> bool:
        """A trainee, or a coach, sent a text; the channel's id for it must never come twice for two texts.

        A coach in the middle of their own training is a trainee, and one who has trained is heard as a trainee where what they say
        is nothing that a coach says.

        `written_at` is given for a text that lay on the way for long: it is read as of then, not earlier than the latest step.

        Returns:
            True when it is kept and answered, now or before. False when something went wrong inside: nothing was kept, it is in the
            log, and the channel may tell the trainee or hand in the same message again.
        """
        return await asyncio.shield(self._hear(trainee_id, InboxKey(channel, external_id), Said(text), written_at))

    async def edited(self, trainee_id: int, text: str, external_id: str, channel: str, original_id: str) -> bool:
        """The trainee changed a text that they had sent as `original_id`; true when that was handled (see `said`)."""
        first_at = await self._store.heard_at(InboxKey(channel, original_id))
        return await asyncio.shield(self._hear(trainee_id, InboxKey(channel, external_id), Edited(text, first_at)))

    async def pressed(self, trainee_id: int, offer: Offer, number: int, external_id: str, channel: str) -> bool | None:
        """The trainee pressed a quick reply (`number` counts from 0) of a message; None when that moment has passed.

        True and False are as with `said`.
        """
        if offer.trainee_id != trainee_id or not 0 <= number < len(offer.rendered.replies):
            return None
        now_at = moment(await self._store.state(trainee_id))
        if offer.moment is None or not still_fits(offer.rendered.kind, offer.moment, now_at):
            return None
        return await self.said(trainee_id, offer.rendered.replies[number], external_id, channel)

    async def tell(self, trainee_id: int, messages: Sequence[Message], key: InboxKey | None = None) -> bool:
        """Say something that no conversation decides, after what is due; true when it is kept, now or before under the same key."""

        def decide_at(now: datetime) -> Decide:
            due = self._deciding(Woke())(now)

            def decide(trainee: Trainee, state: State, history: History, circuit: Circuit) -> Step:
                step = due(trainee, state, history, circuit)
                said = (*step.messages, *(Say(message) for message in messages))
                return replace(step, messages=said, state=replace(step.state, forget_asked=False))  # a yes would be to these

            return decide

        return await asyncio.shield(self._take(trainee_id, key, decide_at))

    def when_news(self, tell: Callable[[], None]) -> None:
        """Call this when there is something of safety that the coach is to be told at once; it must return at once itself."""
        self._on_news = tell

    def attend(self, coach_id: int) -> None:
        """Look at a coach from now on: what they are told unasked can reach them. One who has spoken is looked at anyway."""
        self._duty.attend(coach_id)

    def wishes(self, trainee_id: int, *, fewer: bool) -> None:
        """Somebody wishes for fewer messages from now on, or for all."""
        (self._fewer.add if fewer else self._fewer.discard)(trainee_id)

    def away(self, trainee_id: int, *, away: bool) -> None:
        """Nothing can be sent to somebody: their clock is not looked at until they are back and have written."""
        (self._away.add if away else self._away.discard)(trainee_id)
        if away:
            self._wakes.plan(trainee_id, None)
            self._duty.leave(trainee_id)

    def when_forgotten(self, leaves: Callable[[int], object], gone: Callable[[int], object]) -> None:
        """Call the first with a trainee's id when they had everything erased, the second when nothing is left of them."""
        self._leaving.when(leaves, gone)

    def has_left(self, trainee_id: int) -> bool:
        """Whether a trainee had everything erased: nothing that comes for them is handled any more."""
        return self._leaving.has(trainee_id)

    def called(self, coach: str) -> None:
        """What the coach is called from now on."""
        self._coach = coach

    async def look(self) -> None:
        """Work off everything that is due, each trainee in a transaction of their own, then set the alarm. Raises nothing."""
        async with self._looking:
            self._outbox.retry()
            for chore in self._chores:
                chore.look()
            while not self._stopping and not self._held and (due := self._due()):
                for some in _in_parts(due, AT_ONCE):
                    await asyncio.gather(*some)
        await self._tell()

    def _due(self) -> list[Coroutine[None, None, None]]:
        """Everybody who is to be looked at by now: trainees, else coaches."""
        now = self._clock.now()
        trainees = [self._wake(trainee_id) for trainee_id in self._wakes.due(now)]
        return trainees or [self._look_at_coach(coach_id) for coach_id in self._duty.due(now)]

    def next_due(self) -> datetime | None:
        """When there is something to do next: a wake-up, or another try to send."""
        wakes = [] if self._held else [self._wakes.next_at(), self._duty.next_at()]
        instants = [*wakes, self._outbox.retry_at(), *(it.due_at() for it in self._chores)]
        return min((instant for instant in instants if instant is not None), default=None)

    def rearm(self) -> None:
        """Set the alarm for `next_due`. Only who sets a simulated clock needs to call this."""
        self._alarms.arm(self.next_due())

    async def settled(self) -> None:
        """Return when nothing is due at the clock's time, and nothing is being sent."""
        async with self._changed:
            await self._changed.wait_for(self._nothing_due)
        await self._idle()

    async def _idle(self) -> None:
        await self._outbox.idle()
        await self._leaving.idle()
        for chore in self._chores:
            await chore.idle()

    async def _hear(self, trainee_id: int, key: InboxKey | None, event: Event, written_at: datetime | None = None) -> bool:
        self._outbox.heard_from(trainee_id)
        try:
            coaches = await self._store.is_coach(trainee_id)
            if coaches and await self._coached(trainee_id, key, event):
                return True
        except Exception:  # noqa: BLE001 - nothing is kept and the channel is told, as for a trainee
            _log.exception("coach %d: a message could not be handled", trainee_id)
            return False
        return await self._take(trainee_id, key, self._deciding(event, coaches=coaches), written_at)

    async def _coached(self, person_id: int, key: InboxKey | None, event: Event) -> bool:
        """Hear a coach as a coach; false when they are to be heard as a trainee instead."""
        async with self._attention[person_id].lock:
            heard = await self._duty.hear(person_id, key, event)
        await self._tell()
        return heard

    async def _look_at_coach(self, coach_id: int) -> None:
        async with self._attention[coach_id].lock:
            if not self._stopping:
                await self._duty.look(coach_id)

    def _wake_by(self, trainee_id: int, at: datetime) -> None:
        """Look at a trainee by an instant, or sooner if that was planned."""
        planned = self._wakes.planned(trainee_id)
        self._plan(trainee_id, at if planned is None else min(at, planned))

    async def _take(
        self, trainee_id: int, key: InboxKey | None, decide_at: Callable[[datetime], Decide], written_at: datetime | None = None
    ) -> bool:
        attention = self._attention[trainee_id]
        async with attention.lock:
            if self._leaving.has(trainee_id):
                return True
            try:
                handled = await self._handle(trainee_id, key, decide_at, written_at)
            except Exception:  # noqa: BLE001 - whatever it was, the message is not kept and the channel is told
                _log.exception("trainee %d: a message could not be handled", trainee_id)
                kept = False
            else:
                self._plan(trainee_id, handled.wake_at)
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
                handled = await self._handle(trainee_id, None, self._deciding(Woke()), None)
            except Exception:  # noqa: BLE001 - this trainee's alarm must not stop the others'
                _log.exception("trainee %d: the alarm could not be handled", trainee_id)
                self._put_off(trainee_id, attention)
                return
            self._plan(trainee_id, handled.wake_at)
            attention.failures = 0
            moved = handled.wake_at is None or handled.wake_at > due
            attention.standing = 0 if moved else attention.standing + 1
            if attention.standing > STEPS_AT_ONE_INSTANT:
                _log.error("trainee %d: the alarm rings for ever at one instant", trainee_id)
                self._put_off(trainee_id, attention)

    def _deciding(self, event: Event, *, coaches: bool = False) -> Callable[[datetime], Decide]:
        def at(now: datetime) -> Decide:
            def decide(trainee: Trainee, state: State, history: History, circuit: Circuit) -> Step:
                plan = Plan(trainee, circuit, self._coach, self._emergency, coaches=coaches)
                return self._step(state, event, plan, history, now)

            return decide

        return at

    async def _handle(
        self, trainee_id: int, key: InboxKey | None, decide_at: Callable[[datetime], Decide], written_at: datetime | None
    ) -> Handled:
        now = self._clock.now()
        if written_at is not None:
            latest = await self._store.seen_at(trainee_id)
            now = min(now, written_at if latest is None else max(written_at, latest))
        decide = decide_at(now)
        if trainee_id in self._fewer:
            decide = _with_fewer(decide)
        handled = await self._store.handle(trainee_id, key, decide, now, claim=self._outbox.is_clear(trainee_id))
        if handled.forgotten:
            self._leaving.begin(trainee_id)
        if handled.messages:
            self._outbox.post(trainee_id, handled.letters)
        for coach_id in handled.coaches:
            self._outbox.post(coach_id)
        if handled.for_coach and self._on_news is not None:
            self._on_news()
        return handled

    def _plan(self, trainee_id: int, at: datetime | None) -> None:
        """Look at a trainee at an instant; not at all while nothing can be sent to them."""
        self._wakes.plan(trainee_id, None if trainee_id in self._away else at)
        self._duty.seen(trainee_id)

    def _put_off(self, trainee_id: int, attention: _Attention) -> None:
        """Plan another try; the database keeps the instant at which it was due."""
        attention.failures += 1
        wait_s = backoff_s(attention.failures, FIRST_WAIT_S, LONGEST_WAIT_S)
        self._plan(trainee_id, self._clock.now() + timedelta(seconds=wait_s))

    def _nothing_due(self) -> bool:
        due = self.next_due()
        return due is None or due > self._clock.now()

    async def _tell(self) -> None:
        self.rearm()
        async with self._changed:
            self._changed.notify_all()


def _with_fewer(decide: Decide) -> Decide:
    """The same decision without the messages that can be done without."""

    def fewer(trainee: Trainee, state: State, history: History, circuit: Circuit) -> Step:
        step = decide(trainee, state, history, circuit)
        return replace(step, messages=tuple(say for say in step.messages if not isinstance(say.message, DISPENSABLE)))

    return fewer


def _in_parts(all_of_it: Sequence[T], size: int) -> Iterable[Sequence[T]]:
    return (all_of_it[at : at + size] for at in range(0, len(all_of_it), size))


@asynccontextmanager
async def on_duty(
    store: Store,
    clock: Clock,
    channel: Channel,
    coach: str,
    step: StepFunction = core_step,
    *,
    emergency: str | None = None,
    data: Path | None = None,
) -> AsyncIterator[Assistant]:
    """An assistant at work over an open store, stopped in good order at the end.

    What `python -m bot chat` does: `make_folder`, `claimed(folder)`, `to_file(folder)`, `Store.open(url, render)`, add circuit and
    trainee when they are not there, a clock, then `async with on_duty(...)`: `opened`, and `said` for every line.
    """
    outbox = Outbox(store.outgoing, clock, channel)
    assistant = Assistant(store, clock, outbox, Alarms(clock), coach=coach, emergency=emergency, step=step, data=data)
    async with started(assistant) as it:
        yield it


@asynccontextmanager
async def started(assistant: Assistant) -> AsyncIterator[Assistant]:
    """An assistant at work, stopped in good order at the end."""
    await assistant.start()
    try:
        yield assistant
    finally:
        await assistant.stop()
