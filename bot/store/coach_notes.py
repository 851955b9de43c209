"""What the coach is to be told of safety, at once: kept in the step's own transaction, told when a coach can be reached.

The coach sees the kind of a note and its value (an outcome, a place where the trainee agreed to that), never an answer.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Any

from sqlalchemy import select, update

from bot.store.diary_values import note_of
from bot.store.tables import SAFETY_NOTE, TRAINEE
from bot.store.values import health_of
from core.health import AT_ONCE, NoteKind, SafetyNote, read_outcome

if TYPE_CHECKING:
    from collections.abc import Sequence
    from datetime import datetime

    from sqlalchemy import Connection, Row

    from bot.store.database import Database


@dataclass(frozen=True)
class CoachNote:
    """A note for the coach: its number, who it is about, and what it says."""

    number: int
    trainee_id: int
    trainee: str
    note: SafetyNote


class CoachNotes:
    """The notes for the coach of one database."""

    def __init__(self, database: Database) -> None:
        self._database = database

    async def untold(self, kinds: Sequence[NoteKind] = AT_ONCE) -> tuple[CoachNote, ...]:
        """The notes of these kinds that the coach was not told yet, oldest first."""
        return await self._database.read(lambda connection: untold_notes(connection, kinds))

    async def told(self, numbers: Sequence[int], at: datetime) -> None:
        """The coach was told these notes."""
        await self._database.write(lambda connection: notes_told(connection, numbers, at))


def untold_notes(connection: Connection, kinds: Sequence[NoteKind]) -> tuple[CoachNote, ...]:
    """The notes of these kinds that the coach was not told yet, oldest first, inside the caller's transaction."""
    both = select(SAFETY_NOTE, TRAINEE.c.name, TRAINEE.c.health).join(TRAINEE, TRAINEE.c.id == SAFETY_NOTE.c.trainee_id)
    waiting = both.where(SAFETY_NOTE.c.told_at.is_(None) & SAFETY_NOTE.c.kind.in_([kind.value for kind in kinds])).order_by(
        SAFETY_NOTE.c.id
    )
    return tuple(CoachNote(row.id, row.trainee_id, row.name, _agreed_part(row)) for row in connection.execute(waiting))


def _agreed_part(row: Row[Any]) -> SafetyNote:
    """The note, without the answers when the trainee does not agree to that any more."""
    note = note_of(row)
    if note.kind is not NoteKind.OUTCOME or health_of(row.health, f"trainee {row.trainee_id}").share:
        return note
    return replace(note, value=read_outcome(note.value)[0].value)


def notes_told(connection: Connection, numbers: Sequence[int], at: datetime) -> None:
    """The coach was told these notes, inside the caller's transaction."""
    connection.execute(update(SAFETY_NOTE).where(SAFETY_NOTE.c.id.in_(numbers)).values(told_at=at))
