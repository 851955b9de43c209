"""What trainees have asked their coach: kept in the step's own transaction, told when a coach can be reached."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from sqlalchemy import select, update

from bot.store.diary_values import question_of
from bot.store.tables import COACH, QUESTION, TRAINEE
from core.diary import Question

if TYPE_CHECKING:
    from collections.abc import Iterable
    from datetime import datetime

    from sqlalchemy import Connection

    from bot.store.database import Database


@dataclass(frozen=True)
class PassedOn:
    """A question on its way to the coach, and who asked it."""

    trainee_id: int
    trainee: str
    question: Question


class Questions:
    """The trainees' questions of one database."""

    def __init__(self, database: Database) -> None:
        self._database = database

    async def untold(self) -> tuple[PassedOn, ...]:
        """The questions that no coach was told yet, oldest first."""
        return await self._database.read(untold_questions)

    async def told(self, question: PassedOn, at: datetime) -> None:
        """The coaches were told this question."""
        await self._database.write(
            lambda connection: questions_told(connection, [(question.trainee_id, question.question.number)], at)
        )


def untold_questions(connection: Connection) -> tuple[PassedOn, ...]:
    """The questions that no coach was told yet, oldest first, inside the caller's transaction; a coach's own are not among them."""
    both = select(QUESTION, TRAINEE.c.name).join(TRAINEE, TRAINEE.c.id == QUESTION.c.trainee_id)
    waiting = QUESTION.c.told_at.is_(None) & QUESTION.c.trainee_id.not_in(select(COACH.c.person_id))
    rows = connection.execute(both.where(waiting).order_by(QUESTION.c.at, QUESTION.c.trainee_id, QUESTION.c.number))
    return tuple(PassedOn(row.trainee_id, row.name, question_of(row)) for row in rows)


def questions_told(connection: Connection, asked: Iterable[tuple[int, int]], at: datetime) -> None:
    """A coach was told these, each by whose it is and its number, inside the caller's transaction."""
    for trainee_id, number in asked:
        of_number = (QUESTION.c.trainee_id == trainee_id) & (QUESTION.c.number == number)
        connection.execute(update(QUESTION).where(of_number).values(told_at=at))
