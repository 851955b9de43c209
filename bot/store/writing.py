"""Putting entries into rows."""

from __future__ import annotations

from typing import TYPE_CHECKING, assert_never

from sqlalchemy import delete, insert, update

from bot.store import tables
from bot.store.diary_values import (
    ending_columns,
    note_columns,
    pain_columns,
    question_columns,
    set_columns,
    unasked_columns,
    workout_columns,
)
from bot.store.forgetting import erase
from bot.store.prepared import Prepared
from bot.store.values import rack_columns
from core.diary import (
    CautionsAccepted,
    EffortSaid,
    Entry,
    Forgotten,
    HealthSaid,
    Heard,
    PainDescribed,
    PainEased,
    PainNoted,
    QuestionAsked,
    RackSaid,
    ReminderSet,
    SafetyNoted,
    SetNoted,
    SetUndone,
    SnoozeSet,
    UnaskedNoted,
    UnitChosen,
    WordSaid,
    WorkoutClosed,
    WorkoutOpened,
    ZoneChosen,
)

if TYPE_CHECKING:
    from sqlalchemy import Connection

    from bot.store.ledger import Ledger
    from core.rack import Rack


_ADD_SET = Prepared(insert(tables.SET_RECORD), tables.SET_RECORD.c.keys())


def write_entry(connection: Connection, trainee_id: int, entry: Entry, after: Ledger) -> None:
    """Write the rows of one entry; `after` is the ledger with the entry in it.

    What changes in the trainee's own row is not written here: the caller writes that row once, at the end.
    """
    match entry:
        case SetNoted(record):
            _ADD_SET.run(connection, set_columns(trainee_id, record))
        case SetUndone(number, at):
            connection.execute(insert(tables.SET_VOID), {"trainee_id": trainee_id, "number": number, "at": at})
        case WorkoutOpened(number, circuit):
            columns = workout_columns(trainee_id, after.workout(number), circuit)
            connection.execute(insert(tables.WORKOUT), columns)
        case WorkoutClosed(number) | EffortSaid(number):
            of_number = (tables.WORKOUT.c.trainee_id == trainee_id) & (tables.WORKOUT.c.number == number)
            columns = ending_columns(trainee_id, after.workout(number))
            connection.execute(update(tables.WORKOUT).where(of_number).values(columns))
        case PainNoted(record):
            connection.execute(insert(tables.PAIN_RECORD), pain_columns(trainee_id, record))
        case PainDescribed(at, quality, known):
            of_instant = (tables.PAIN_RECORD.c.trainee_id == trainee_id) & (tables.PAIN_RECORD.c.at == at)
            described = {"quality": None if quality is None else quality.value, "known": known}
            connection.execute(update(tables.PAIN_RECORD).where(of_instant).values(described))
        case PainEased(place, at):
            pains = tables.PAIN_RECORD.c
            here = pains.place.is_(None) if place is None else pains.place == place
            there = (pains.trainee_id == trainee_id) & here & pains.eased_at.is_(None) & ~pains.urgent
            connection.execute(update(tables.PAIN_RECORD).where(there).values(eased_at=at))
        case SafetyNoted(note):
            connection.execute(insert(tables.SAFETY_NOTE), note_columns(trainee_id, note))
        case RackSaid(rack):
            _write_rack(connection, trainee_id, rack)
        case UnaskedNoted(record):
            connection.execute(insert(tables.UNASKED), unasked_columns(trainee_id, record))
        case WordSaid(number, at):
            word = tables.COACH_WORD.c
            of_number = (word.trainee_id == trainee_id) & (word.number == number)
            connection.execute(update(tables.COACH_WORD).where(of_number).values(told_at=at))
        case QuestionAsked(question):
            connection.execute(insert(tables.QUESTION), question_columns(trainee_id, question))
        case Forgotten(at):
            erase(connection, trainee_id, at)
        case CautionsAccepted() | UnitChosen() | HealthSaid() | Heard() | ReminderSet() | SnoozeSet() | ZoneChosen():
            pass
        case _:
            assert_never(entry)


def _write_rack(connection: Connection, trainee_id: int, rack: Rack) -> None:
    connection.execute(delete(tables.RACK_ITEM).where(tables.RACK_ITEM.c.trainee_id == trainee_id))
    if rack.items:
        connection.execute(insert(tables.RACK_ITEM), rack_columns(trainee_id, rack))
