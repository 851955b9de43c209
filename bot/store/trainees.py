"""Trainees and their diaries read from rows. Plain functions over a connection, inside somebody's transaction."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, Any

from sqlalchemy import bindparam, func, select

from bot.store.blocks import read_block, read_coming
from bot.store.diary_values import note_of, pain_of, question_of, set_of, unasked_of, voided_numbers, word_of, workout_of
from bot.store.tables import COACH_WORD, PAIN_RECORD, QUESTION, RACK_ITEM, SAFETY_NOTE, SET_RECORD, SET_VOID, UNASKED, WORKOUT
from bot.store.values import trainee_of
from core.diary import History

if TYPE_CHECKING:
    from sqlalchemy import Connection, Row, Table

    from core.diary import SetRecord
    from core.trainee import Trainee

_ROWS = {  # of a trainee, in order; built once, for building one costs more than running it
    table: select(table).where(table.c.trainee_id == bindparam("of_id")).order_by(table.c[order])
    for table, order in (
        (RACK_ITEM, "position"),
        (SET_RECORD, "number"),
        (SET_VOID, "number"),
        (WORKOUT, "number"),
        (PAIN_RECORD, "id"),
        (UNASKED, "id"),
        (SAFETY_NOTE, "id"),
        (COACH_WORD, "number"),
        (QUESTION, "number"),
    )
}


def trainee_in(connection: Connection, row: Row[Any]) -> Trainee:
    """A trainee from their row, with their rack, their plan and what is coming.

    Raises:
        bot.errors.RowBroken: when a value is none that may be stored.
    """
    trainee = trainee_of(row, _rows(connection, RACK_ITEM, row.id))
    return replace(trainee, block=read_block(connection, row.id), coming=read_coming(connection, row.id))


def diary_of(connection: Connection, trainee_id: int, before: History | None = None) -> History:
    """A trainee's whole diary, oldest first; `before` is what it was at some time, so that sets are not read twice.

    Raises:
        bot.errors.RowBroken: when a value is none that may be stored.
    """
    return History(
        sets_of(connection, trainee_id) if before is None else _sets_since(connection, trainee_id, before.sets),
        tuple(workout_of(row) for row in _rows(connection, WORKOUT, trainee_id)),
        tuple(pain_of(row) for row in _rows(connection, PAIN_RECORD, trainee_id)),
        tuple(unasked_of(row) for row in _rows(connection, UNASKED, trainee_id)),
        tuple(note_of(row) for row in _rows(connection, SAFETY_NOTE, trainee_id)),
        tuple(word_of(row) for row in _rows(connection, COACH_WORD, trainee_id)),
        tuple(question_of(row) for row in _rows(connection, QUESTION, trainee_id)),
    )


def sets_of(connection: Connection, trainee_id: int) -> tuple[SetRecord, ...]:
    """A trainee's set records, in the order noted; those that no longer hold included.

    Raises:
        bot.errors.RowBroken: when a value is none that may be stored.
    """
    rows = _rows(connection, SET_RECORD, trainee_id)
    voided = voided_numbers(rows, [row.number for row in _rows(connection, SET_VOID, trainee_id)])
    return tuple(set_of(row, voided=row.number in voided) for row in rows)


def _sets_since(connection: Connection, trainee_id: int, before: tuple[SetRecord, ...]) -> tuple[SetRecord, ...]:
    """The set records, read again only when there are more of them, or more that were undone: rows of both are only ever added."""
    replaced = sum(record.replaces is not None for record in before)
    undone = sum(record.voided for record in before) - replaced
    counts = (_count(connection, SET_RECORD, trainee_id), _count(connection, SET_VOID, trainee_id))
    return before if counts == (len(before), undone) else sets_of(connection, trainee_id)


def _count(connection: Connection, table: Table, trainee_id: int) -> int:
    counted: int = connection.execute(select(func.count()).select_from(table).where(table.c.trainee_id == trainee_id)).scalar_one()
    return counted


def _rows(connection: Connection, table: Table, trainee_id: int) -> list[Row[Any]]:
    return list(connection.execute(_ROWS[table], {"of_id": trainee_id}))
