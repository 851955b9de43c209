"""What the coach is to be told of safety, at once: kept in the step's own transaction, told when a coach's channel asks for it.

The coach sees the kind of a note and its value (an outcome, a place where the trainee agreed to that), never an answer.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from sqlalchemy import select, update

from bot.store.engine import reading
from bot.store.tables import SAFETY_NOTE, TRAINEE
from bot.store.values import note_of
from core.health import COACH_KINDS, SafetyNote

if TYPE_CHECKING:
    from collections.abc import Iterable
    from datetime import datetime

    from sqlalchemy.ext.asyncio import AsyncEngine


@dataclass(frozen=True)
class CoachNote:
    """A note for the coach: its number, who it is about, and what it says."""

    number: int
    trainee: str
    note: SafetyNote


class CoachNotes:
    """The notes for the coach of one database."""

    def __init__(self, engine: AsyncEngine) -> None:
        self._engine = engine

    async def untold(self) -> tuple[CoachNote, ...]:
        """The notes that the coach was not told yet, oldest first."""
        kinds = [kind.value for kind in COACH_KINDS]
        both = select(SAFETY_NOTE, TRAINEE.c.name).join(TRAINEE, TRAINEE.c.id == SAFETY_NOTE.c.trainee_id)
        waiting = both.where(SAFETY_NOTE.c.told_at.is_(None) & SAFETY_NOTE.c.kind.in_(kinds)).order_by(SAFETY_NOTE.c.id)
        async with reading(self._engine).begin() as connection:
            return tuple(CoachNote(row.id, row.name, note_of(row)) for row in await connection.execute(waiting))

    async def told(self, numbers: Iterable[int], at: datetime) -> None:
        """The coach was told these notes."""
        async with self._engine.begin() as connection:
            await connection.execute(update(SAFETY_NOTE).where(SAFETY_NOTE.c.id.in_(list(numbers))).values(told_at=at))
