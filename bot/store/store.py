"""The store: trainees, circuits and diaries, and the one transaction in which a message is handled."""

from __future__ import annotations

from contextlib import suppress
from dataclasses import dataclass, replace
from datetime import date, datetime
from functools import partial
from typing import TYPE_CHECKING, Any

from sqlalchemy import bindparam, delete, func, insert, select, update
from sqlalchemy.exc import DBAPIError

from bot.errors import DatabaseUnusable, StoreError, TraineeUnknown
from bot.ports import Letter
from bot.store.blocks import circuit_id, keep_circuit
from bot.store.coach_notes import CoachNotes
from bot.store.coaching import Trains, decide_and_write, make_coach, moment_of_talk, newcomers, wake_of
from bot.store.engine import open_database
from bot.store.forgetting import Forgetting, coaches, forgotten_so_far, nameless
from bot.store.ledger import NOBODY, Ledger
from bot.store.outgoing import Outbound, Outgoing
from bot.store.people import People
from bot.store.prepared import Prepared
from bot.store.pruning import Pruning
from bot.store.questions import Questions
from bot.store.revision import bring_to_newest
from bot.store.rows import add_trainee
from bot.store.tables import (
    CIRCUIT,
    COACH,
    INBOX,
    TRAINEE,
    ZONE_SEEN,
)
from bot.store.trainees import diary_of, sets_of, trainee_in
from bot.store.values import circuit_of, state_of, state_text, trainee_columns
from bot.store.writing import write_entry
from core.circuit import Circuit
from core.diary import History, QuestionAsked, SafetyNoted, SetRecord
from core.health import AT_ONCE
from core.own_messages import SomebodyForgotten
from core.reminders import offsets_of
from core.session.events import Say
from core.session.moment import moment
from core.session.states import State

if TYPE_CHECKING:
    from collections.abc import Sequence
    from typing import Self

    from sqlalchemy import Connection

    from bot.ports import Decide, DecideForCoach, Render
    from bot.store.database import Database
    from core.diary import Entry
    from core.session.events import Step
    from core.trainee import Trainee

_THIS_TRAINEE = TRAINEE.c.id == bindparam("of_id")
_THIS_MESSAGE = (INBOX.c.channel == bindparam("of_channel")) & (INBOX.c.external_id == bindparam("of_external_id"))
_REVISION = Prepared(select(TRAINEE.c.revision).where(_THIS_TRAINEE).with_for_update())
_HEARD = Prepared(select(INBOX.c.trainee_id).where(_THIS_MESSAGE))
_HEAR = Prepared(insert(INBOX), INBOX.c.keys())
_STEP_COLUMNS = ("revision", "state", "wake_at", "seen_at")
_STEP = Prepared(update(TRAINEE).where(_THIS_TRAINEE), _STEP_COLUMNS)
_HEARD_STEP = Prepared(update(TRAINEE).where(_THIS_TRAINEE), (*_STEP_COLUMNS, "heard_at"))

_WHOLE = select(TRAINEE, CIRCUIT.c.body).join(CIRCUIT, CIRCUIT.c.id == TRAINEE.c.circuit_id).where(_THIS_TRAINEE)
REMEMBERED = 2_000  # trainees, some ten kilobytes each
READ_AT_ONCE = 50  # read beforehand in one go: a message does not wait for more
DAYS_AHEAD = 800  # how far the clocks of a zone are compared: two years and more


@dataclass(frozen=True)
class InboxKey:
    """A message from outside: the channel it came by, and the channel's own id for it."""

    channel: str
    external_id: str


@dataclass(frozen=True)
class Handled:
    """What a transaction came to.

    Attributes:
        wake_at: when the trainee is due next.
        messages: how many messages it put into the outbox.
        letters: those of them that were claimed.
        for_coach: whether there is something that the coach is to be told at once.
        wakes: the trainees who must be looked at because of it, each with when (UTC).
        forgotten: whether the trainee had everything erased.
        coaches: the ids of the coaches into whose chats it put something.
        seen: true when the incoming message had been handled before, and nothing changed.
    """

    wake_at: datetime | None
    messages: int = 0
    letters: tuple[Letter, ...] = ()
    for_coach: bool = False
    wakes: tuple[tuple[int, datetime], ...] = ()
    forgotten: bool = False
    coaches: tuple[int, ...] = ()
    seen: bool = False


@dataclass(frozen=True)
class _Known:
    """A trainee as stored at a revision: what a step is decided from."""

    revision: int
    ledger: Ledger
    state: State
    circuit: Circuit
    wake_at: datetime | None


class Store:
    """Everything that is kept. One per process: it remembers what it last read of each trainee, and knows it by its revision."""

    def __init__(self, database: Database, render: Render) -> None:
        self._database = database
        self._render = render
        self._known: dict[int, _Known] = {}
        self._coaches: frozenset[int] | None = None
        self.outgoing = Outgoing(database)
        self.people = People(database)
        self.coach_notes = CoachNotes(database)
        self.questions = Questions(database)
        self.forgetting = Forgetting(database)
        self.pruning = Pruning(database)

    @classmethod
    async def open(cls, url: str, render: Render) -> Self:
        """Open the database at `sqlite:///FILE` or `postgresql://…`, bringing it to the newest shape first.

        `render` puts a message into words for its outbox row.

        Raises:
            bot.errors.DatabaseTooNew: when a newer program wrote it.
            bot.errors.DatabaseUnusable: when it cannot be opened.
            OSError: when the file cannot be made or the server cannot be reached.
        """
        database = open_database(url)
        try:
            await bring_to_newest(database)
        except DBAPIError as error:
            await database.close()
            raise DatabaseUnusable(str(error.orig)) from error
        except BaseException:
            await database.close()
            raise
        return cls(database, render)

    async def close(self) -> None:
        """Close every connection."""
        await self._database.close()

    async def save_circuit(self, circuit: Circuit) -> int:
        """Keep a circuit under its name, replacing what was there; return its id.

        Workouts under way, and those done, keep the circuit as it was.
        """
        return await self._database.write(lambda connection: keep_circuit(connection, circuit))

    async def circuit_id(self, name: str) -> int | None:
        """The id of the circuit of this name, None when there is none."""
        return await self._database.read(lambda connection: circuit_id(connection, name))

    async def make_coach(self, person_id: int) -> None:
        """Somebody who was added as a trainee coaches from now on: what they say goes to `handle_coach`."""
        await self._database.write(lambda connection: make_coach(connection, person_id))
        self._coaches = None

    async def is_coach(self, person_id: int) -> bool:
        """Whether somebody coaches."""
        coaches = self._coaches
        if coaches is None:
            everybody = select(COACH.c.person_id)
            found: frozenset[int] = await self._database.read(lambda connection: frozenset(connection.execute(everybody).scalars()))
            self._coaches = coaches = found
        return person_id in coaches

    async def coach_moment(self, person_id: int) -> str | None:
        """Where the talk with a coach is, as the rows of what was said in it have it; None for who is none."""
        return await self._database.read(lambda connection: moment_of_talk(connection, person_id))

    async def coach_wake(self, person_id: int, now: datetime) -> datetime | None:
        """When a coach is to be looked at as their latest step had it, None for not at all; now for one without any step."""
        return await self._database.read(lambda connection: wake_of(connection, person_id, now))

    async def newcomer_circuit(self) -> int | None:
        """The id of the circuit that new trainees start with, None when no coach has said."""
        return await self._database.read(newcomers)

    async def add_trainee(self, trainee: Trainee, circuit_id: int) -> int:
        """Add a trainee to whom nobody has spoken yet, with the circuit that is on for them; return their id.

        The name must be new here, and the circuit one that was saved.
        """
        return await self._database.write(lambda connection: add_trainee(connection, trainee, circuit_id))

    async def trainee_id(self, name: str) -> int:
        """The id of the trainee of this name.

        Raises:
            TraineeUnknown: when there is none.
        """
        found: int | None = await self._scalar(select(TRAINEE.c.id).where(TRAINEE.c.name == name))
        if found is None:
            raise TraineeUnknown(name)
        return found

    async def names(self) -> dict[int, str]:
        """What everybody is called, by id."""
        everybody = select(TRAINEE.c.id, TRAINEE.c.name).order_by(TRAINEE.c.id)
        return await self._database.read(lambda connection: {row.id: row.name for row in connection.execute(everybody)})

    async def wakes(self) -> dict[int, datetime]:
        """When each trainee is due, by id; a trainee for whom nothing is planned is left out."""
        due = (
            select(TRAINEE.c.id, TRAINEE.c.wake_at).where(TRAINEE.c.wake_at.is_not(None)).order_by(TRAINEE.c.wake_at, TRAINEE.c.id)
        )
        return await self._database.read(lambda connection: {row.id: row.wake_at for row in connection.execute(due)})

    async def remember(self, ids: Sequence[int]) -> None:
        """Read trainees beforehand, so that those who are due soon need not wait for each other; what cannot be read is left."""

        def work(connection: Connection, some: Sequence[int]) -> dict[int, _Known]:
            found = {}
            for trainee_id in some:
                with suppress(StoreError):  # a row that is broken is the fault of the step that needs it
                    found[trainee_id] = self._read(connection, trainee_id)
            return found

        for first in range(0, min(len(ids), REMEMBERED), READ_AT_ONCE):
            some = ids[first : first + READ_AT_ONCE]
            for trainee_id, known in (await self._database.read(partial(work, some=some))).items():
                self._remember(trainee_id, known)

    async def notice_zones(self, now: datetime) -> None:
        """Have everybody looked at whose zone's clocks will do something else than the zone data of the last start said.

        What is due follows from the diary at every look; only the wake-ups that are stored could be wrong, and are brought to now.
        """

        def work(connection: Connection) -> None:
            known = {row.zone: row.offsets for row in connection.execute(select(ZONE_SEEN))}
            zones = connection.execute(select(TRAINEE.c.zone).distinct()).scalars().all()
            told = {zone: offsets_of(zone, date(now.year, 1, 1), DAYS_AHEAD) for zone in zones}
            changed = [zone for zone in told if told[zone] != known.get(zone)]
            for zone in changed:
                of_zone = TRAINEE.c.zone == zone
                connection.execute(delete(ZONE_SEEN).where(ZONE_SEEN.c.zone == zone))
                connection.execute(insert(ZONE_SEEN).values(zone=zone, offsets=told[zone]))
                if zone in known:
                    connection.execute(update(TRAINEE).where(of_zone & TRAINEE.c.wake_at.is_not(None)).values(wake_at=now))

        await self._database.write(work)

    async def latest_at(self) -> datetime | None:
        """The instant of the latest step of anybody: no clock of this database may start before it."""
        latest: datetime | None = await self._scalar(select(func.max(TRAINEE.c.seen_at)))
        return latest

    async def diary(self, trainee_id: int) -> History:
        """A trainee's whole diary.

        Raises:
            TraineeUnknown: when there is no such trainee.
        """
        return await self._database.read(lambda connection: self._read(connection, trainee_id).ledger.history)

    async def state(self, trainee_id: int) -> State:
        """Where the conversation with a trainee is.

        Raises:
            TraineeUnknown: when there is no such trainee.
        """
        known = self._known.get(trainee_id)
        if known is not None:
            return known.state
        return await self._database.read(lambda connection: self._read(connection, trainee_id).state)

    async def seen_at(self, trainee_id: int) -> datetime | None:
        """The instant of the latest step of a trainee, None when there was none."""
        at: datetime | None = await self._scalar(select(TRAINEE.c.seen_at).where(TRAINEE.c.id == trainee_id))
        return at

    async def heard_at(self, key: InboxKey) -> datetime | None:
        """The instant at which a message was handled, None when it was not."""
        this = (INBOX.c.channel == key.channel) & (INBOX.c.external_id == key.external_id)
        at: datetime | None = await self._scalar(select(INBOX.c.at).where(this))
        return at

    async def bury(self, trainee_id: int) -> None:
        """Take the last of somebody who had everything erased: the goodbye is out, or cannot be sent."""
        await self.forgetting.bury(trainee_id)
        self._known.pop(trainee_id, None)

    async def records(self, name: str | None) -> tuple[tuple[str, SetRecord], ...]:
        """The set records of one trainee or of all, each with the trainee's name, oldest first.

        Raises:
            TraineeUnknown: when there is no trainee of this name.
        """
        names = select(TRAINEE.c.id, TRAINEE.c.name).order_by(TRAINEE.c.id)

        def work(connection: Connection) -> list[tuple[str, SetRecord]]:
            chosen = [row for row in connection.execute(names) if name in (None, row.name)]
            if name is not None and not chosen:
                raise TraineeUnknown(name)
            return [(row.name, record) for row in chosen for record in sets_of(connection, row.id)]

        return tuple(sorted(await self._database.read(work), key=lambda pair: pair[1].at))

    async def handle(
        self,
        trainee_id: int,
        inbox_key: InboxKey | None,
        decide: Decide,
        now: datetime,
        *,
        claim: bool = False,
    ) -> Handled:
        """Handle one message or one alarm: read, decide once, write everything, all in one transaction or not at all.

        A message whose `inbox_key` has been handled before changes nothing, and `decide` is not called. `claim` says that nothing
        waits in this chat and the caller sends the messages itself (see `Outbound.put`).

        Raises:
            TraineeUnknown: when there is no such trainee.
            bot.errors.StoreError: when what was decided may not be stored.
        """

        def work(connection: Connection) -> tuple[_Known, Handled]:
            known = self._read(connection, trainee_id)
            if inbox_key is not None and not _take(connection, inbox_key, trainee_id, now):
                return known, Handled(known.wake_at, seen=True)
            step = decide(known.ledger.trainee, known.state, known.ledger.history, known.circuit)
            after = _write(connection, trainee_id, known, step, now)
            letters = Outbound(trainee_id, step.messages, self._render, now, moment(step.state)).put(connection, claim=claim)
            told = any(_is_for_coach(entry) for entry in step.records)
            forgotten = after.ledger.trainee is NOBODY
            informed = self._tell_forgotten(connection, now) if forgotten else ()
            return after, Handled(step.wake_at, len(step.messages), letters, told, (), forgotten, informed)

        known, handled = await self._database.write(work)
        self._remember(trainee_id, known)
        return handled

    def _tell_forgotten(self, connection: Connection, now: datetime) -> tuple[int, ...]:
        """Put it into every coach's chat that somebody had everything erased; nothing but the count."""
        news = (Say(SomebodyForgotten(forgotten_so_far(connection))),)
        told = coaches(connection)
        for coach_id in told:
            Outbound(coach_id, news, self._render, now).put(connection, claim=False)
        return told

    async def handle_coach(
        self,
        coach_id: int,
        inbox_key: InboxKey | None,
        decide: DecideForCoach,
        now: datetime,
        *,
        claim: bool = False,
    ) -> Handled | None:
        """Handle one message or one alarm of a coach, as `handle` does a trainee's; None when `decide` gave None: nothing is kept.

        Raises:
            bot.errors.StoreError: when what was decided may not be stored.
        """
        read: dict[int, _Known] = {}

        def trains(connection: Connection, trainee_id: int) -> Trains:
            known = read[trainee_id] = self._read(connection, trainee_id)
            return Trains(known.ledger.trainee, known.ledger.history, known.circuit, known.state)

        def work(connection: Connection) -> Handled | None:
            if inbox_key is not None and _heard(connection, inbox_key):
                return Handled(None, seen=True)
            done = decide_and_write(connection, coach_id, decide, trains, now)
            if done is None:
                return None
            if inbox_key is not None:
                _take(connection, inbox_key, coach_id, now)
            at, messages = moment_of_talk(connection, coach_id), done.step.messages
            letters = Outbound(coach_id, messages, self._render, now, at).put(connection, claim=claim)
            return Handled(done.step.wake_at, len(messages), letters, wakes=done.wakes)

        handled = await self._database.write(work)
        for trainee_id, known in read.items():
            self._remember(trainee_id, known)
        return handled

    def _remember(self, trainee_id: int, known: _Known) -> None:
        """Keep what is known of the latest few: at half past six there are thousands, and they sleep again a minute later."""
        self._known.pop(trainee_id, None)
        self._known[trainee_id] = known
        if len(self._known) > REMEMBERED:
            del self._known[next(iter(self._known))]

    def _read(self, connection: Connection, trainee_id: int) -> _Known:
        """The trainee as stored; read again only when the revision is not the one that is remembered."""
        revision = _REVISION.run(connection, {"of_id": trainee_id})
        if revision is None:
            raise TraineeUnknown(trainee_id)
        known = self._known.get(trainee_id)
        if known is not None and known.revision == revision:
            return known
        before = None if known is None else known.ledger.history
        row = connection.execute(_WHOLE, {"of_id": trainee_id}).one()
        return _Known(
            revision,
            Ledger(trainee_in(connection, row), diary_of(connection, trainee_id, before)),
            state_of(row.state, trainee_id),
            circuit_of(row.body, row.circuit_id),
            row.wake_at,
        )

    async def _scalar(self, statement: Any) -> Any:  # noqa: ANN401 - whatever the statement selects
        return await self._database.read(lambda connection: connection.execute(statement).scalar_one_or_none())


def _write(connection: Connection, trainee_id: int, known: _Known, step: Step, now: datetime) -> _Known:
    """Write what a step keeps: its entries, the state, the wake-up."""
    ledger = known.ledger
    for entry in step.records:
        ledger = ledger.after(entry)
        write_entry(connection, trainee_id, entry, ledger)
    after = replace(known, revision=known.revision + 1, ledger=ledger, state=step.state, wake_at=step.wake_at)
    columns = {"revision": after.revision, "state": state_text(step.state), "wake_at": step.wake_at, "seen_at": now}
    before, trainee = known.ledger.trainee, ledger.trainee
    if trainee == before:
        _STEP.run(connection, columns | {"of_id": trainee_id})
    elif trainee == replace(before, heard_at=trainee.heard_at):
        _HEARD_STEP.run(connection, columns | {"heard_at": trainee.heard_at, "of_id": trainee_id})
    else:
        columns |= trainee_columns(trainee)
        if trainee is NOBODY:
            columns["name"] = nameless(trainee_id, now)
        connection.execute(update(TRAINEE).where(TRAINEE.c.id == trainee_id).values(columns))
    return after


def _is_for_coach(entry: Entry) -> bool:
    """Whether a coach is to be told of an entry at once."""
    return isinstance(entry, QuestionAsked) or (isinstance(entry, SafetyNoted) and entry.note.kind in AT_ONCE)


def _take(connection: Connection, key: InboxKey, trainee_id: int, now: datetime) -> bool:
    """Note an incoming message; false when it was noted before."""
    if _heard(connection, key):
        return False
    _HEAR.run(connection, {"channel": key.channel, "external_id": key.external_id, "trainee_id": trainee_id, "at": now})
    return True


def _heard(connection: Connection, key: InboxKey) -> bool:
    """Whether an incoming message was noted before."""
    return _HEARD.run(connection, {"of_channel": key.channel, "of_external_id": key.external_id}) is not None
