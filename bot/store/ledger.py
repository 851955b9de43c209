"""What entries make of a trainee and their diary, in memory; the rows are written from the same entries.

An entry that contradicts the diary is refused here, before any row is written; the tables' own constraints are the second wall.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import assert_never

from bot.errors import DiaryConflict
from core.diary import (
    CautionsAccepted,
    CoachWord,
    EffortSaid,
    Entry,
    Forgotten,
    HealthSaid,
    Heard,
    History,
    PainDescribed,
    PainEased,
    PainNoted,
    PainRecord,
    QuestionAsked,
    RackSaid,
    ReminderSet,
    SafetyNoted,
    SetNoted,
    SetRecord,
    SetUndone,
    SnoozeSet,
    UnaskedKind,
    UnaskedNoted,
    UnitChosen,
    WordSaid,
    WorkoutClosed,
    WorkoutOpened,
    WorkoutRecord,
    ZoneChosen,
)
from core.trainee import Trainee

NOBODY = Trainee("nobody")  # what is left of somebody who had everything erased


@dataclass(frozen=True)
class Ledger:
    """A trainee and their diary."""

    trainee: Trainee
    history: History

    def after(self, entry: Entry) -> Ledger:
        """The same with one more entry.

        Raises:
            DiaryConflict: when the entry contradicts what is there.
        """
        trainee, history = self.trainee, self.history
        match entry:
            case SetNoted(record):
                history = replace(history, sets=_noted(history, record))
            case SetUndone(number):
                history = replace(history, sets=_voided(history, number, "undoing set"))
            case WorkoutOpened(number, circuit, at):
                history = replace(history, workouts=_opened(history, WorkoutRecord(number, circuit.name, at)))
            case WorkoutClosed():
                history = replace(history, workouts=_closed(history, entry))
            case PainNoted(record):
                history = replace(history, pains=(*history.pains, record))
            case PainDescribed() | PainEased():
                history = replace(history, pains=tuple(_told(pain, entry) for pain in history.pains))
            case EffortSaid():
                history = replace(history, workouts=_effort(history, entry))
            case SafetyNoted(note):
                history = replace(history, notes=(*history.notes, note))
            case HealthSaid(health):
                trainee = replace(trainee, health=health)
            case CautionsAccepted(at):
                trainee = replace(trainee, cautions_accepted_at=at)
            case UnitChosen(unit):
                trainee = replace(trainee, unit=unit)
            case RackSaid(rack):
                trainee = replace(trainee, rack=rack)
            case Heard(at):
                trainee = replace(trainee, heard_at=at)
            case ReminderSet(reminders, since):
                trainee = replace(trainee, reminders=reminders, reminders_since=since)
            case SnoozeSet(until):
                trainee = replace(trainee, snoozed_until=until)
            case ZoneChosen(zone):
                trainee = replace(trainee, zone=zone)
            case UnaskedNoted(record):
                history = replace(history, unasked=(*history.unasked, record))
                if record.kind is UnaskedKind.SNOOZE:
                    trainee = replace(trainee, snoozed_until=None)
            case WordSaid():
                history = replace(history, words=_said(history, entry))
            case QuestionAsked(question):
                _check("question", question.number, question.number == len(history.questions) + 1, "it is not the next number")
                history = replace(history, questions=(*history.questions, question))
            case Forgotten():
                trainee, history = NOBODY, History()
            case _:
                assert_never(entry)
        return Ledger(trainee, history)

    def workout(self, number: int) -> WorkoutRecord:
        """The workout of this number, which is there."""
        return next(workout for workout in self.history.workouts if workout.number == number)


def _noted(history: History, record: SetRecord) -> tuple[SetRecord, ...]:
    _check("set", record.number, record.number == len(history.sets) + 1, f"the next number is {len(history.sets) + 1}")
    _check("set", record.number, not record.voided, "a new record holds")
    known = any(workout.number == record.workout for workout in history.workouts)
    _check("set", record.number, known, f"there is no workout {record.workout}")
    before = history.sets if record.replaces is None else _voided(history, record.replaces, "replacing set")
    return (*before, record)


def _voided(history: History, number: int, what: str) -> tuple[SetRecord, ...]:
    _check(what, number, 1 <= number <= len(history.sets), "there is no such record")
    record = history.sets[number - 1]
    _check(what, number, not record.voided, "it no longer holds")
    return (*history.sets[: number - 1], replace(record, voided=True), *history.sets[number:])


def _opened(history: History, record: WorkoutRecord) -> tuple[WorkoutRecord, ...]:
    next_number = len(history.workouts) + 1
    _check("workout", record.number, record.number == next_number, f"the next number is {next_number}")
    return (*history.workouts, record)


def _closed(history: History, entry: WorkoutClosed) -> tuple[WorkoutRecord, ...]:
    _check("closing workout", entry.number, 1 <= entry.number <= len(history.workouts), "there is no such workout")
    record = history.workouts[entry.number - 1]
    _check("closing workout", entry.number, record.ended_at is None, "it has ended before")
    ended = replace(record, ended_at=entry.at, ending=entry.ending, work_s=entry.work_s, paused_s=entry.paused_s)
    return (*history.workouts[: entry.number - 1], ended, *history.workouts[entry.number :])


def _told(pain: PainRecord, entry: PainDescribed | PainEased) -> PainRecord:
    """A pain with what was told of it later: the one of that instant described, all at that place gone."""
    if isinstance(entry, PainDescribed):
        return replace(pain, quality=entry.quality, known=entry.known) if pain.at == entry.at else pain
    gone = not pain.urgent and pain.place == entry.place and pain.eased_at is None
    return replace(pain, eased_at=entry.at) if gone else pain


def _said(history: History, entry: WordSaid) -> tuple[CoachWord, ...]:
    there = next((word for word in history.words if word.number == entry.number), None)
    waits = there is not None and there.told_at is None and there.taken_back_at is None
    _check("coach's word", entry.number, waits, "it does not wait")
    return tuple(replace(word, told_at=entry.at) if word.number == entry.number else word for word in history.words)


def _effort(history: History, entry: EffortSaid) -> tuple[WorkoutRecord, ...]:
    _check("effort", entry.workout, 1 <= entry.workout <= len(history.workouts), "there is no such workout")
    told = replace(history.workouts[entry.workout - 1], effort=entry.effort)
    return (*history.workouts[: entry.workout - 1], told, *history.workouts[entry.workout :])


def _check(entry: str, number: int, holds: bool, fault: str) -> None:  # noqa: FBT001 - it is the assertion itself
    if not holds:
        raise DiaryConflict(entry, number, fault)
