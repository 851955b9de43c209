"""What a coach's step changes, put into rows; and who must be looked at because of it."""

from __future__ import annotations

from typing import TYPE_CHECKING, assert_never

from sqlalchemy import case, delete, insert, update
from sqlalchemy.exc import IntegrityError

from bot.store.blocks import assign, circuit_id, keep_circuit, put_coming
from bot.store.coach_notes import notes_told
from bot.store.diary_values import note_columns, word_columns
from bot.store.questions import questions_told
from bot.store.tables import CIRCUIT, COACH, COACH_WORD, QUESTION, SAFETY_NOTE, TRAINEE
from bot.store.values import wishes_text
from core.coach.desk import (
    Assigned,
    Change,
    CircuitKept,
    CircuitRemoved,
    Clearance,
    ComesOn,
    EndKept,
    NewcomersGet,
    NewsTold,
    PauseKept,
    QuestionsAnswered,
    QuestionsTold,
    ReviewSet,
    WeekTold,
    WishesKept,
    WordSent,
    WordTakenBack,
)
from core.health import NoteKind, SafetyNote
from core.reminders import word_due

if TYPE_CHECKING:
    from datetime import datetime

    from sqlalchemy import Connection

    from core.coach.desk import Desk

NEVER = "off"  # in the place of a day, for a coach who does not wish to be told the week


class Changes:
    """Writes the changes of one step, and gathers when trainees are to be looked at (`wakes`)."""

    def __init__(self, connection: Connection, coach_id: int, desk: Desk, now: datetime) -> None:
        self._connection = connection
        self._coach_id = coach_id
        self._clients = {client.id: client for client in (*desk.clients, *desk.ended)}
        self._now = now
        self.wakes: dict[int, datetime] = {}

    def write(self, change: Change) -> None:
        """Write one change."""
        connection, now = self._connection, self._now
        match change:
            case CircuitKept(circuit):
                keep_circuit(connection, circuit)
            case CircuitRemoved(name):
                _remove(connection, name)
            case Assigned(client, circuit, block):
                assign(connection, client, circuit, block)
            case ComesOn(client, circuit, from_on):
                put_coming(connection, client, circuit, from_on)
            case NewcomersGet(name):
                self._coach(newcomers=circuit_id(connection, name))
            case Clearance(client, agreed):
                note = SafetyNote(now, NoteKind.CLEARED if agreed else NoteKind.TAKEN_BACK, "coach")
                connection.execute(insert(SAFETY_NOTE), note_columns(client, note) | {"told_at": now})  # the coach knows
                self._trainee(client)
            case WishesKept(client, wishes):
                self._trainee(client, wishes=wishes_text(wishes))
            case PauseKept(client, pause):
                since, until = (None, None) if pause is None else (pause.since, pause.until)
                self._trainee(client, wake_at=now, paused_at=since, paused_until=until)
            case EndKept(client, ended_at):
                self._trainee(client, wake_at=now, ended_at=ended_at)
            case WordSent() | WordTakenBack():
                self._word(change)
            case QuestionsAnswered() | QuestionsTold():
                self._questions(change)
            case NewsTold(numbers):
                notes_told(connection, numbers, now)
            case ReviewSet(day, clock):
                self._coach(review_day=day or NEVER, review_clock=clock, reviewed_at=now)
            case WeekTold(at):
                self._coach(reviewed_at=at)
            case _:
                assert_never(change)

    def _word(self, change: WordSent | WordTakenBack) -> None:
        """Words for somebody who is there, or words that are not said any more."""
        if change.client not in self._clients:
            return
        if isinstance(change, WordSent):
            self._connection.execute(insert(COACH_WORD), word_columns(change.client, change.word))
            self._trainee(change.client, wake_at=word_due(self._clients[change.client].trainee, self._now))
            return
        word = COACH_WORD.c
        waits = (word.trainee_id == change.client) & (word.number == change.word_number) & word.told_at.is_(None)
        self._connection.execute(update(COACH_WORD).where(waits).values(taken_back_at=self._now))
        self._trainee(change.client)

    def _questions(self, change: QuestionsAnswered | QuestionsTold) -> None:
        if isinstance(change, QuestionsTold):
            questions_told(self._connection, [(one.client, one.number) for one in change.questions_told], self._now)
            return
        those = (QUESTION.c.trainee_id == change.client) & QUESTION.c.number.in_(change.questions)
        self._connection.execute(update(QUESTION).where(those).values(answered_at=self._now if change.answered else None))
        self._trainee(change.client)

    def _coach(self, **columns: object) -> None:
        self._connection.execute(update(COACH).where(COACH.c.person_id == self._coach_id).values(**columns))

    def _trainee(self, trainee_id: int, *, wake_at: datetime | None = None, **columns: object) -> None:
        """Change a trainee's own row, so that whoever remembers them reads them again; they are looked at by `wake_at`."""
        if wake_at is not None and trainee_id in self._clients:
            sooner = TRAINEE.c.wake_at.is_(None) | (TRAINEE.c.wake_at > wake_at)
            columns["wake_at"] = case((sooner, wake_at), else_=TRAINEE.c.wake_at)
            self.wakes[trainee_id] = min(wake_at, self.wakes.get(trainee_id, wake_at))
        statement = update(TRAINEE).where(TRAINEE.c.id == trainee_id)
        self._connection.execute(statement.values(revision=TRAINEE.c.revision + 1, **columns))


def _remove(connection: Connection, name: str) -> None:
    """Remove a circuit, unless somebody has it: whoever came in the meantime keeps it."""
    try:
        with connection.begin_nested():
            connection.execute(delete(CIRCUIT).where(CIRCUIT.c.name == name))
    except IntegrityError:
        return
