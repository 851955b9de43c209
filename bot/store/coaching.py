"""The coach's side of the store: who coaches, where the talk is, and the one transaction of a coach's message."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from hashlib import sha256
from typing import TYPE_CHECKING

from sqlalchemy import func, insert, select, update

from bot.store.coach_changes import NEVER, Changes
from bot.store.coach_notes import untold_notes
from bot.store.questions import untold_questions
from bot.store.tables import ACCOUNT, CIRCUIT, COACH, TRAINEE
from bot.store.values import circuit_of, coach_state_of, coach_state_text, weekday_of
from core.circuit import Circuit
from core.coach.desk import Asked, Client, Desk, News, Review
from core.coach.states import CoachStep, Quiet
from core.diary import History
from core.health import AT_ONCE
from core.session.states import Idle, Running, State
from core.trainee import Trainee

if TYPE_CHECKING:
    from collections.abc import Callable
    from typing import Any

    from sqlalchemy import Connection, Row

    from core.coach.states import CoachState


@dataclass(frozen=True)
class Trains:
    """A trainee as stored: who they are, their diary, the circuit in their row, and where the conversation with them is."""

    trainee: Trainee
    diary: History
    circuit: Circuit
    state: State


@dataclass(frozen=True)
class Coached:
    """What a coach's message came to: the step, and the trainees who must be looked at, each with when (UTC)."""

    step: CoachStep
    wakes: tuple[tuple[int, datetime], ...]


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


def wake_of(connection: Connection, person_id: int, now: datetime) -> datetime | None:
    """When a coach is to be looked at as their latest step had it, None for not at all; now for one without any step."""
    row = connection.execute(select(COACH.c.wake_at, COACH.c.reviewed_at).where(COACH.c.person_id == person_id)).one()
    wake_at: datetime | None = now if row.reviewed_at is None else row.wake_at
    return wake_at


def newcomers(connection: Connection) -> int | None:
    """The id of the circuit that new trainees start with, None when no coach has said."""
    found: int | None = connection.execute(select(COACH.c.newcomers).order_by(COACH.c.person_id)).scalars().first()
    return found


def decide_and_write(
    connection: Connection,
    coach_id: int,
    decide: Callable[[CoachState, Desk], CoachStep | None],
    trains: Callable[[Connection, int], Trains],
    now: datetime,
) -> Coached | None:
    """Read the desk, decide once, and write what changes; all of it inside the caller's transaction. None changes nothing.

    `trains` reads a trainee; it is called once for each.

    Raises:
        bot.errors.RowBroken: when a value is none that may be stored.
    """
    row = connection.execute(select(COACH).where(COACH.c.person_id == coach_id).with_for_update()).one()
    desk = _desk(connection, row, trains)
    step = decide(coach_state_of(row.state, coach_id), desk)
    if step is None:
        return None
    changes = Changes(connection, coach_id, desk, now)
    for change in step.changes:
        changes.write(change)
    of_coach = update(COACH).where(COACH.c.person_id == coach_id)
    seen_to = func.coalesce(COACH.c.reviewed_at, now)  # no week from before the first word is due
    connection.execute(of_coach.values(state=coach_state_text(step.state), wake_at=step.wake_at, reviewed_at=seen_to))
    connection.execute(update(TRAINEE).where(TRAINEE.c.id == coach_id).values(seen_at=now, revision=TRAINEE.c.revision + 1))
    return Coached(step, tuple(changes.wakes.items()))


def _desk(connection: Connection, coach: Row[Any], trains: Callable[[Connection, int], Trains]) -> Desk:
    circuits = {
        row.id: circuit_of(row.body, row.id)
        for row in connection.execute(select(CIRCUIT.c.id, CIRCUIT.c.body).order_by(CIRCUIT.c.id))
    }
    there = TRAINEE.c.id.not_in(select(COACH.c.person_id)) & TRAINEE.c.forgotten_at.is_(None)
    ids = connection.execute(select(TRAINEE.c.id).where(there).order_by(TRAINEE.c.id)).scalars().all()
    own = connection.execute(select(TRAINEE.c.name, TRAINEE.c.zone).where(TRAINEE.c.id == coach.person_id)).one()
    gone = {row.trainee_id: row.gone_at for row in connection.execute(select(ACCOUNT.c.trainee_id, ACCOUNT.c.gone_at))}
    clients = [_client(number, trains(connection, number), gone.get(number)) for number in ids]
    return Desk(
        own.name,
        own.zone,
        tuple(client for client in clients if client.trainee.ended_at is None),
        tuple(circuits.values()),
        circuits[coach.newcomers].name,
        tuple(
            News(one.number, one.trainee, one.note)
            for one in untold_notes(connection, AT_ONCE)
            if one.trainee_id != coach.person_id
        ),
        tuple(Asked(one.trainee_id, one.question.number) for one in untold_questions(connection)),
        _review(coach),
        tuple(client for client in clients if client.trainee.ended_at is not None),
    )


def _client(number: int, known: Trains, gone_at: datetime | None) -> Client:
    state = known.state
    return Client(
        id=number,
        trainee=known.trainee,
        circuit=known.circuit,
        running=isinstance(state, Running),
        diary=known.diary,
        gone_at=gone_at,
        new=not isinstance(state, Running | Idle),
    )


def _review(coach: Row[Any]) -> Review:
    usual = Review()
    said = coach.review_day
    day = None if said == NEVER else usual.day if said is None else weekday_of(said, f"coach {coach.person_id}")
    return Review(day, coach.review_clock or usual.at, coach.reviewed_at)
