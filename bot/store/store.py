"""The store: trainees, circuits and diaries, and the one transaction in which a message is handled."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import date, datetime
from typing import TYPE_CHECKING, Any

from sqlalchemy import delete, func, insert, select, update
from sqlalchemy.exc import DBAPIError

from bot.errors import DatabaseUnusable, TraineeUnknown
from bot.store.blocks import assign, circuit_id, keep_circuit, read_block
from bot.store.coaching import decide_and_write, make_coach, newcomers
from bot.store.engine import open_engine, reading
from bot.store.ledger import Ledger
from bot.store.outgoing import Letter, Outbound, Outgoing
from bot.store.revision import bring_to_newest
from bot.store.tables import (
    CIRCUIT,
    COACH,
    INBOX,
    PAIN_RECORD,
    RACK_ITEM,
    SET_RECORD,
    SET_VOID,
    TRAINEE,
    UNASKED,
    WORKOUT,
    ZONE_SEEN,
)
from bot.store.values import (
    circuit_of,
    pain_of,
    set_of,
    state_of,
    state_text,
    trainee_columns,
    trainee_of,
    unasked_of,
    voided_numbers,
    workout_of,
)
from bot.store.writing import write_entry
from core.circuit import Circuit
from core.diary import History, SetRecord
from core.reminders import offsets_of
from core.session.states import New, State

if TYPE_CHECKING:
    from typing import Self

    from sqlalchemy import ColumnElement, Row, Table
    from sqlalchemy.ext.asyncio import AsyncConnection, AsyncEngine

    from bot.ports import Decide, DecideForCoach, Render
    from core.session.events import Step
    from core.trainee import Block, Trainee

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
        letter: the first of them, when it was claimed.
        seen: true when the incoming message had been handled before, and nothing changed.
    """

    wake_at: datetime | None
    messages: int = 0
    letter: Letter | None = None
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

    def __init__(self, engine: AsyncEngine, render: Render) -> None:
        self._engine = engine
        self._render = render
        self._known: dict[int, _Known] = {}
        self._coaches: frozenset[int] | None = None
        self.outgoing = Outgoing(engine)

    @classmethod
    async def open(cls, url: str, render: Render) -> Self:
        """Open the database at `sqlite:///FILE` or `postgresql://…`, bringing it to the newest shape first.

        `render` puts a message into words for its outbox row.

        Raises:
            bot.errors.DatabaseTooNew: when a newer program wrote it.
            bot.errors.DatabaseUnusable: when it cannot be opened.
            OSError: when the file cannot be made or the server cannot be reached.
        """
        engine = open_engine(url)
        try:
            await bring_to_newest(engine)
        except DBAPIError as error:
            await engine.dispose()
            raise DatabaseUnusable(str(error.orig)) from error
        except BaseException:
            await engine.dispose()
            raise
        return cls(engine, render)

    async def close(self) -> None:
        """Close every connection."""
        await self._engine.dispose()

    async def save_circuit(self, circuit: Circuit) -> int:
        """Keep a circuit under its name, replacing what was there; return its id.

        Workouts under way, and those done, keep the circuit as it was.
        """
        async with self._engine.begin() as connection:
            return await connection.run_sync(keep_circuit, circuit)

    async def circuit_id(self, name: str) -> int | None:
        """The id of the circuit of this name, None when there is none."""
        async with reading(self._engine).begin() as connection:
            return await connection.run_sync(circuit_id, name)

    async def assign(self, trainee_id: int, circuit: str, block: Block | None) -> None:
        """What is on for a trainee from now on: a circuit that was saved, by its name, and a plan of such circuits, or none."""
        async with self._engine.begin() as connection:
            await connection.run_sync(assign, trainee_id, circuit, block)

    async def make_coach(self, person_id: int) -> None:
        """Somebody who was added as a trainee coaches from now on: what they say goes to `handle_coach`."""
        async with self._engine.begin() as connection:
            await connection.run_sync(make_coach, person_id)
        self._coaches = None

    async def is_coach(self, person_id: int) -> bool:
        """Whether somebody coaches."""
        if self._coaches is None:
            async with reading(self._engine).begin() as connection:
                self._coaches = frozenset((await connection.execute(select(COACH.c.person_id))).scalars())
        return person_id in self._coaches

    async def newcomer_circuit(self) -> int | None:
        """The id of the circuit that new trainees start with, None when no coach has said."""
        async with reading(self._engine).begin() as connection:
            return await connection.run_sync(newcomers)

    async def add_trainee(self, trainee: Trainee, circuit_id: int) -> int:
        """Add a trainee to whom nobody has spoken yet, with the circuit that is on for them; return their id.

        The name must be new here, and the circuit one that was saved.
        """
        row = {**trainee_columns(trainee), "circuit_id": circuit_id, "state": state_text(New()), "revision": 0}
        row["rack_said"] = False  # a rack is said in the chat
        async with self._engine.begin() as connection:
            return await _insert(connection, TRAINEE, row)

    async def trainee_id(self, name: str) -> int:
        """The id of the trainee of this name.

        Raises:
            TraineeUnknown: when there is none.
        """
        found: int | None = await self._scalar(select(TRAINEE.c.id).where(TRAINEE.c.name == name))
        if found is None:
            raise TraineeUnknown(name)
        return found

    async def wakes(self) -> dict[int, datetime]:
        """When each trainee is due, by id; a trainee for whom nothing is planned is left out."""
        due = (
            select(TRAINEE.c.id, TRAINEE.c.wake_at).where(TRAINEE.c.wake_at.is_not(None)).order_by(TRAINEE.c.wake_at, TRAINEE.c.id)
        )
        async with reading(self._engine).begin() as connection:
            return {row.id: row.wake_at for row in await connection.execute(due)}

    async def notice_zones(self, now: datetime) -> None:
        """Have everybody looked at whose zone's clocks will do something else than the zone data of the last start said.

        What is due follows from the diary at every look; only the wake-ups that are stored could be wrong, and are brought to now.
        """
        async with self._engine.begin() as connection:
            known = {row.zone: row.offsets for row in await connection.execute(select(ZONE_SEEN))}
            zones = (await connection.execute(select(TRAINEE.c.zone).distinct())).scalars().all()
            told = {zone: offsets_of(zone, date(now.year, 1, 1), DAYS_AHEAD) for zone in zones}
            changed = [zone for zone in told if told[zone] != known.get(zone)]
            for zone in changed:
                of_zone = TRAINEE.c.zone == zone
                await connection.execute(delete(ZONE_SEEN).where(ZONE_SEEN.c.zone == zone))
                await connection.execute(insert(ZONE_SEEN).values(zone=zone, offsets=told[zone]))
                if zone in known:
                    await connection.execute(update(TRAINEE).where(of_zone & TRAINEE.c.wake_at.is_not(None)).values(wake_at=now))

    async def latest_at(self) -> datetime | None:
        """The instant of the latest step of anybody: no clock of this database may start before it."""
        latest: datetime | None = await self._scalar(select(func.max(TRAINEE.c.seen_at)))
        return latest

    async def diary(self, trainee_id: int) -> History:
        """A trainee's whole diary.

        Raises:
            TraineeUnknown: when there is no such trainee.
        """
        async with reading(self._engine).begin() as connection:
            return (await self._read(connection, trainee_id)).ledger.history

    async def records(self, name: str | None) -> tuple[tuple[str, SetRecord], ...]:
        """The set records of one trainee or of all, each with the trainee's name, oldest first.

        Raises:
            TraineeUnknown: when there is no trainee of this name.
        """
        names = select(TRAINEE.c.id, TRAINEE.c.name).order_by(TRAINEE.c.id)
        async with reading(self._engine).begin() as connection:
            chosen = [row for row in await connection.execute(names) if name in (None, row.name)]
            if name is not None and not chosen:
                raise TraineeUnknown(name)
            found = [(row.name, record) for row in chosen for record in await _sets(connection, row.id)]
        return tuple(sorted(found, key=lambda pair: pair[1].at))

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
        waits in this chat and the caller sends the first message itself (see `Outbound.put`).

        Raises:
            TraineeUnknown: when there is no such trainee.
            bot.errors.StoreError: when what was decided may not be stored.
        """
        async with self._engine.begin() as connection:
            known = await self._read(connection, trainee_id)
            if inbox_key is not None and await _seen(connection, inbox_key):
                return Handled(known.wake_at, seen=True)
            step = decide(known.ledger.trainee, known.state, known.ledger.history, known.circuit)
            if inbox_key is not None:
                taken = {"channel": inbox_key.channel, "external_id": inbox_key.external_id, "trainee_id": trainee_id, "at": now}
                await connection.execute(insert(INBOX).values(taken))
            after = await _write(connection, trainee_id, known, step, now)
            letter = await Outbound(trainee_id, step.messages, self._render, now).put(connection, claim=claim)
        self._known[trainee_id] = after
        return Handled(step.wake_at, len(step.messages), letter)

    async def handle_coach(
        self,
        coach_id: int,
        inbox_key: InboxKey | None,
        decide: DecideForCoach,
        now: datetime,
        *,
        claim: bool = False,
    ) -> Handled:
        """Handle one message of a coach, as `handle` does a trainee's.

        Raises:
            bot.errors.StoreError: when what was decided may not be stored.
        """
        async with self._engine.begin() as connection:
            if inbox_key is not None and await _seen(connection, inbox_key):
                return Handled(None, seen=True)
            if inbox_key is not None:
                taken = {"channel": inbox_key.channel, "external_id": inbox_key.external_id, "trainee_id": coach_id, "at": now}
                await connection.execute(insert(INBOX).values(taken))
            histories = {row.id: await _history(connection, row.id) for row in await connection.execute(select(TRAINEE.c.id))}
            step = await connection.run_sync(decide_and_write, coach_id, decide, lambda _, number: histories[number], now)
            letter = await Outbound(coach_id, step.messages, self._render, now).put(connection, claim=claim)
        return Handled(None, len(step.messages), letter)

    async def _read(self, connection: AsyncConnection, trainee_id: int) -> _Known:
        """The trainee as stored; read again only when the revision is not the one that is remembered."""
        of_id = TRAINEE.c.id == trainee_id
        revision = (await connection.execute(select(TRAINEE.c.revision).where(of_id).with_for_update())).scalar_one_or_none()
        if revision is None:
            raise TraineeUnknown(trainee_id)
        known = self._known.get(trainee_id)
        if known is not None and known.revision == revision:
            return known
        both = select(TRAINEE, CIRCUIT.c.body).join(CIRCUIT, CIRCUIT.c.id == TRAINEE.c.circuit_id)
        row = (await connection.execute(both.where(of_id))).one()
        trainee = replace(
            trainee_of(row, await _rows(connection, RACK_ITEM, trainee_id, "position")),
            block=await connection.run_sync(read_block, trainee_id),
        )
        return _Known(
            revision,
            Ledger(trainee, await _history(connection, trainee_id)),
            state_of(row.state, trainee_id),
            circuit_of(row.body, row.circuit_id),
            row.wake_at,
        )

    async def _scalar(self, statement: Any) -> Any:  # noqa: ANN401 - whatever the statement selects
        async with reading(self._engine).begin() as connection:
            return (await connection.execute(statement)).scalar_one_or_none()


async def _write(connection: AsyncConnection, trainee_id: int, known: _Known, step: Step, now: datetime) -> _Known:
    """Write what a step keeps: its entries, the state, the wake-up."""
    ledger = known.ledger
    for entry in step.records:
        ledger = ledger.after(entry)
        await write_entry(connection, trainee_id, entry, ledger)
    after = replace(known, revision=known.revision + 1, ledger=ledger, state=step.state, wake_at=step.wake_at)
    columns = {"revision": after.revision, "state": state_text(step.state), "wake_at": step.wake_at, "seen_at": now}
    if ledger.trainee != known.ledger.trainee:
        columns |= trainee_columns(ledger.trainee)
    await connection.execute(update(TRAINEE).where(TRAINEE.c.id == trainee_id).values(columns))
    return after


async def _seen(connection: AsyncConnection, key: InboxKey) -> bool:
    same = (INBOX.c.channel == key.channel) & (INBOX.c.external_id == key.external_id)
    return (await connection.execute(select(INBOX.c.trainee_id).where(same))).first() is not None


async def _history(connection: AsyncConnection, trainee_id: int) -> History:
    return History(
        await _sets(connection, trainee_id),
        tuple(workout_of(row) for row in await _rows(connection, WORKOUT, trainee_id, "number")),
        tuple(pain_of(row) for row in await _rows(connection, PAIN_RECORD, trainee_id, "id")),
        tuple(unasked_of(row) for row in await _rows(connection, UNASKED, trainee_id, "id")),
    )


async def _sets(connection: AsyncConnection, trainee_id: int) -> tuple[SetRecord, ...]:
    rows = await _rows(connection, SET_RECORD, trainee_id, "number")
    voided = voided_numbers(rows, [row.number for row in await _rows(connection, SET_VOID, trainee_id, "number")])
    return tuple(set_of(row, voided=row.number in voided) for row in rows)


async def _rows(connection: AsyncConnection, table: Table, trainee_id: int, order: str) -> list[Row[Any]]:
    of_trainee: ColumnElement[bool] = table.c.trainee_id == trainee_id
    return list(await connection.execute(select(table).where(of_trainee).order_by(table.c[order])))


async def _insert(connection: AsyncConnection, table: Table, columns: dict[str, Any]) -> int:
    key = (await connection.execute(insert(table).values(columns))).inserted_primary_key
    assert key is not None  # noqa: S101 - these tables number their rows
    number: int = key[0]
    return number
