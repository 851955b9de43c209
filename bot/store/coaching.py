"""The coach's side of the store: who coaches, where the talk is, and the one transaction of a coach's message."""

from __future__ import annotations

from hashlib import sha256
from typing import TYPE_CHECKING, assert_never

from sqlalchemy import delete, insert, select, update
from sqlalchemy.exc import IntegrityError

from bot.store.blocks import assign, circuit_id, keep_circuit
from bot.store.coach_notes import notes_told, untold_notes
from bot.store.tables import ACCOUNT, CIRCUIT, COACH, SAFETY_NOTE, TRAINEE
from bot.store.trainees import trainee_in
from bot.store.values import circuit_of, coach_state_of, coach_state_text, note_columns, state_of
from core.coach.desk import (
    Assigned,
    Change,
    CircuitKept,
    CircuitRemoved,
    Clearance,
    Client,
    Desk,
    NewcomersGet,
    News,
    NewsTold,
)
from core.coach.states import Quiet
from core.health import AT_ONCE, NoteKind, SafetyNote
from core.session.states import Running

if TYPE_CHECKING:
    from collections.abc import Callable
    from datetime import datetime

    from sqlalchemy import Connection

    from core.coach.states import CoachState, CoachStep
    from core.diary import History


def is_coach(connection: Connection, person_id: int) -> bool:
    """Whether somebody coaches."""
    return connection.execute(select(COACH.c.person_id).where(COACH.c.person_id == person_id)).first() is not None


def make_coach(connection: Connection, person_id: int) -> None:
    """Somebody who has a trainee's row coaches from now on; new trainees go on with what is on for that row."""
    if not is_coach(connection, person_id):
        newcomers = connection.execute(select(TRAINEE.c.circuit_id).where(TRAINEE.c.id == person_id)).scalar_one()
        row = {"person_id": person_id, "state": coach_state_text(Quiet()), "newcomers": newcomers}
        connection.execute(insert(COACH).values(row))


def moment_of_talk(connection: Connection, person_id: int) -> str | None:
    """A mark of where the talk with a coach is: an answer to another moment would be about something else."""
    state: str | None = connection.execute(select(COACH.c.state).where(COACH.c.person_id == person_id)).scalar_one_or_none()
    return None if state is None else f"coach {sha256(state.encode()).hexdigest()[:12]}"


def newcomers(connection: Connection) -> int | None:
    """The id of the circuit that new trainees start with, None when no coach has said."""
    found: int | None = connection.execute(select(COACH.c.newcomers).order_by(COACH.c.person_id)).scalars().first()
    return found


def decide_and_write(
    connection: Connection,
    coach_id: int,
    decide: Callable[[CoachState, Desk], CoachStep | None],
    history_of: Callable[[Connection, int], History],
    now: datetime,
) -> CoachStep | None:
    """Read the desk, decide once, and write what changes; all of it inside the caller's transaction. None changes nothing.

    Raises:
        bot.errors.RowBroken: when a value is none that may be stored.
    """
    row = connection.execute(select(COACH).where(COACH.c.person_id == coach_id).with_for_update()).one()
    desk = _desk(connection, coach_id, row.newcomers, history_of)
    step = decide(coach_state_of(row.state, coach_id), desk)
    if step is None:
        return None
    for change in step.changes:
        _write(connection, coach_id, change, now)
    connection.execute(update(COACH).where(COACH.c.person_id == coach_id).values(state=coach_state_text(step.state)))
    connection.execute(update(TRAINEE).where(TRAINEE.c.id == coach_id).values(seen_at=now, revision=TRAINEE.c.revision + 1))
    return step


def _desk(connection: Connection, coach_id: int, newcomers_id: int, history_of: Callable[[Connection, int], History]) -> Desk:
    circuits = {
        row.id: circuit_of(row.body, row.id)
        for row in connection.execute(select(CIRCUIT.c.id, CIRCUIT.c.body).order_by(CIRCUIT.c.id))
    }
    coaches = select(COACH.c.person_id)
    rows = connection.execute(select(TRAINEE).where(TRAINEE.c.id.not_in(coaches)).order_by(TRAINEE.c.id)).all()
    coach = connection.execute(select(TRAINEE.c.name, TRAINEE.c.zone).where(TRAINEE.c.id == coach_id)).one()
    gone = {row.trainee_id: row.gone_at for row in connection.execute(select(ACCOUNT.c.trainee_id, ACCOUNT.c.gone_at))}
    clients = (
        Client(
            id=row.id,
            trainee=trainee_in(connection, row),
            circuit=circuits[row.circuit_id],
            running=isinstance(state_of(row.state, row.id), Running),
            diary=history_of(connection, row.id),
            gone_at=gone.get(row.id),
        )
        for row in rows
    )
    news = tuple(News(one.number, one.trainee, one.note) for one in untold_notes(connection, AT_ONCE) if one.trainee_id != coach_id)
    return Desk(coach.name, coach.zone, tuple(clients), tuple(circuits.values()), circuits[newcomers_id].name, news)


def _write(connection: Connection, coach_id: int, change: Change, now: datetime) -> None:
    match change:
        case CircuitKept(circuit):
            keep_circuit(connection, circuit)
        case CircuitRemoved(name):
            _remove(connection, name)
        case Assigned(client, circuit, block):
            assign(connection, client, circuit, block)
        case NewcomersGet(name):
            chosen = {"newcomers": circuit_id(connection, name)}
            connection.execute(update(COACH).where(COACH.c.person_id == coach_id).values(chosen))
        case Clearance(client, agreed):
            note = SafetyNote(now, NoteKind.CLEARED if agreed else NoteKind.TAKEN_BACK, "coach")
            connection.execute(insert(SAFETY_NOTE), note_columns(client, note) | {"told_at": now})  # the coach knows
            connection.execute(update(TRAINEE).where(TRAINEE.c.id == client).values(revision=TRAINEE.c.revision + 1))
        case NewsTold(numbers):
            notes_told(connection, numbers, now)
        case _:
            assert_never(change)


def _remove(connection: Connection, name: str) -> None:
    """Remove a circuit, unless somebody has it: whoever came in the meantime keeps it."""
    try:
        with connection.begin_nested():
            connection.execute(delete(CIRCUIT).where(CIRCUIT.c.name == name))
    except IntegrityError:
        return
