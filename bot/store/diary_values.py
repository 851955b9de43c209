"""The rows of a diary, mapped to core values both ways; nothing impossible passes in either direction."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from bot.store.cells import (
    Columns,
    check,
    check_instant,
    check_load,
    decimal_of,
    decimal_text,
    enum_of,
    load_columns,
    load_of,
    word_text,
)
from bot.store.values import circuit_text
from core.circuit import Circuit, Side
from core.diary import (
    CoachWord,
    Ending,
    PainRecord,
    Question,
    Reason,
    SetRecord,
    Unasked,
    UnaskedKind,
    WordKind,
    WorkoutRecord,
)
from core.health import NoteKind, Quality, SafetyNote

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from sqlalchemy import Row

REPS_MAX = 999  # nobody does a thousand in a station: common practice, no source
RPE_MAX = 10  # the effort scale ends there
NOTE_MAX = 200  # letters: a place, an outcome, a number
ANSWERS_MAX = 800  # letters: every answer of the health talk at once is shorter


def set_columns(trainee_id: int, record: SetRecord) -> Columns:
    """The row of a set record.

    Raises:
        RowBroken: when a number in it is impossible.
    """
    _check_set(record, f"set {record.number} of trainee {trainee_id}")
    return {
        "trainee_id": trainee_id,
        "number": record.number,
        "workout": record.workout,
        "at": record.at,
        "circuit": record.circuit,
        "round": record.round,
        "station": record.station,
        "exercise": record.exercise,
        "side": word_text(record.side),
        "reps": record.reps,
        **load_columns(record.load),
        "reserve": decimal_text(record.reserve),
        "rpe": decimal_text(record.rpe),
        "seconds": record.seconds,
        "work_s": record.work_s,
        "rep_s": record.rep_s,
        "replaces": record.replaces,
    }


def set_of(row: Row[Any], *, voided: bool) -> SetRecord:
    """A set record from its row.

    Raises:
        RowBroken: when a value is none that may be stored.
    """
    where = f"set {row.number} of trainee {row.trainee_id}"
    record = SetRecord(
        number=row.number,
        workout=row.workout,
        at=row.at,
        circuit=row.circuit,
        round=row.round,
        station=row.station,
        exercise=row.exercise,
        side=None if row.side is None else enum_of(Side, row.side, where),
        reps=row.reps,
        load=load_of(row, where),
        reserve=decimal_of(row.reserve, where),
        rpe=decimal_of(row.rpe, where),
        seconds=row.seconds,
        work_s=row.work_s,
        rep_s=row.rep_s,
        replaces=row.replaces,
        voided=voided,
    )
    _check_set(record, where)
    return record


def _check_set(record: SetRecord, where: str) -> None:
    check_instant(record.at, where)
    check(where, min(record.number, record.workout, record.round, record.station) >= 1, "numbers count from 1")
    check(where, bool(record.exercise) and bool(record.circuit), "no exercise or no circuit")
    check(where, record.reps is None or 0 <= record.reps <= REPS_MAX, "impossible reps")
    check(where, record.seconds is None or record.seconds >= 0, "negative seconds")
    check(where, record.work_s is None or record.work_s > 0, "a station without time")
    check(where, record.rep_s is None or record.rep_s > 0, "a rep without time")
    check(where, record.reserve is None or 0 <= record.reserve <= REPS_MAX, "impossible reserve")
    check(where, record.rpe is None or 0 <= record.rpe <= RPE_MAX, "effort off its scale")
    check(where, record.replaces is None or 1 <= record.replaces < record.number, "replaces no earlier record")
    check_load(record.load, where)


def workout_columns(trainee_id: int, record: WorkoutRecord, circuit: Circuit) -> Columns:
    """The row of a workout.

    Raises:
        RowBroken: when a number in it is impossible.
    """
    _check_workout(record, f"workout {record.number} of trainee {trainee_id}")
    return {
        "trainee_id": trainee_id,
        "number": record.number,
        "circuit": record.circuit,
        "body": circuit_text(circuit),
        "started_at": record.started_at,
        **ending_columns(trainee_id, record),
    }


def ending_columns(trainee_id: int, record: WorkoutRecord) -> Columns:
    """What changes in a workout's row when it ends, or when its effort is told.

    Raises:
        RowBroken: when it ends before it began, or worked less than no time.
    """
    _check_workout(record, f"workout {record.number} of trainee {trainee_id}")
    return {
        "ended_at": record.ended_at,
        "ending": word_text(record.ending),
        "work_s": record.work_s,
        "paused_s": record.paused_s,
        "effort": decimal_text(record.effort),
    }


def workout_of(row: Row[Any]) -> WorkoutRecord:
    """A workout from its row.

    Raises:
        RowBroken: when a value is none that may be stored.
    """
    where = f"workout {row.number} of trainee {row.trainee_id}"
    ending = None if row.ending is None else enum_of(Ending, row.ending, where)
    record = WorkoutRecord(
        row.number, row.circuit, row.started_at, row.ended_at, ending, row.work_s, decimal_of(row.effort, where), row.paused_s
    )
    _check_workout(record, where)
    return record


def _check_workout(record: WorkoutRecord, where: str) -> None:
    check(where, record.number >= 1, "numbers count from 1")
    check_instant(record.started_at, where)
    check(where, record.work_s >= 0, "negative seconds of work")
    check(where, record.paused_s >= 0, "negative seconds of pause")
    check(where, record.effort is None or 0 <= record.effort <= RPE_MAX, "effort off its scale")
    check(where, (record.ended_at is None) == (record.ending is None), "an end without a reason, or the reverse")
    if record.ended_at is not None:
        check_instant(record.ended_at, where)
        check(where, record.ended_at >= record.started_at, "ends before it began")


def pain_columns(trainee_id: int, record: PainRecord) -> Columns:
    """The row of a pain report.

    Raises:
        RowBroken: when its instant has no zone.
    """
    check_instant(record.at, f"pain of trainee {trainee_id}")
    return {
        "trainee_id": trainee_id,
        "at": record.at,
        "place": record.place,
        "side": word_text(record.side),
        "urgent": record.urgent,
        "exercise": record.exercise,
        "quality": word_text(record.quality),
        "known": record.known,
        "eased_at": record.eased_at,
    }


def pain_of(row: Row[Any]) -> PainRecord:
    """A pain report from its row.

    Raises:
        RowBroken: when a value is none that may be stored.
    """
    side = None if row.side is None else enum_of(Side, row.side, f"pain {row.id}")
    quality = None if row.quality is None else enum_of(Quality, row.quality, f"pain {row.id}")
    return PainRecord(row.at, row.place, side, row.urgent, row.exercise, quality, row.known, row.eased_at)


def note_columns(trainee_id: int, note: SafetyNote) -> Columns:
    """The row of a note on safety.

    Raises:
        RowBroken: when its instant has no zone, or its value is a whole text.
    """
    check_instant(note.at, f"note of trainee {trainee_id}")
    most = ANSWERS_MAX if note.kind is NoteKind.OUTCOME else NOTE_MAX
    check(f"note of trainee {trainee_id}", len(note.value) <= most, "a value that is a text")
    return {"trainee_id": trainee_id, "at": note.at, "kind": note.kind.value, "value": note.value}


def note_of(row: Row[Any]) -> SafetyNote:
    """A note on safety from its row.

    Raises:
        RowBroken: when its kind is unknown.
    """
    return SafetyNote(row.at, enum_of(NoteKind, row.kind, f"note {row.id}"), row.value)


def unasked_columns(trainee_id: int, record: Unasked) -> Columns:
    """The row of something that fell due and was seen to.

    Raises:
        RowBroken: when an instant has no zone.
    """
    check_instant(record.due_at, f"unasked of trainee {trainee_id}")
    check_instant(record.at, f"unasked of trainee {trainee_id}")
    return {
        "trainee_id": trainee_id,
        "kind": record.kind.value,
        "day": record.day,
        "due_at": record.due_at,
        "at": record.at,
        "dropped": word_text(record.dropped),
    }


def unasked_of(row: Row[Any]) -> Unasked:
    """Something that fell due, from its row.

    Raises:
        RowBroken: when its kind or reason is none.
    """
    where = f"unasked {row.id}"
    dropped = None if row.dropped is None else enum_of(Reason, row.dropped, where)
    return Unasked(enum_of(UnaskedKind, row.kind, where), row.day, row.due_at, row.at, dropped)


def word_columns(trainee_id: int, word: CoachWord) -> Columns:
    """The row of a coach's words to a trainee.

    Raises:
        RowBroken: when an instant has no zone, or there are no words.
    """
    where = f"word {word.number} of trainee {trainee_id}"
    check_instant(word.at, where)
    check(where, bool(word.text.strip()), "no words")
    return {
        "trainee_id": trainee_id,
        "number": word.number,
        "at": word.at,
        "kind": word.kind.value,
        "text": word.text,
        "about": word.about,
        "told_at": word.told_at,
        "taken_back_at": word.taken_back_at,
    }


def word_of(row: Row[Any]) -> CoachWord:
    """A coach's words from their row.

    Raises:
        RowBroken: when their kind is unknown.
    """
    kind = enum_of(WordKind, row.kind, f"word {row.number} of trainee {row.trainee_id}")
    return CoachWord(row.number, row.at, kind, row.text, row.about, row.told_at, row.taken_back_at)


def question_columns(trainee_id: int, question: Question) -> Columns:
    """The row of a trainee's question.

    Raises:
        RowBroken: when an instant has no zone, or nothing was asked.
    """
    where = f"question {question.number} of trainee {trainee_id}"
    check_instant(question.at, where)
    check(where, bool(question.text.strip()), "nothing asked")
    return {
        "trainee_id": trainee_id,
        "number": question.number,
        "at": question.at,
        "text": question.text,
        "circuit": question.circuit,
        "round": question.round,
        "station": question.station,
        "exercise": question.exercise,
        "answered_at": question.answered_at,
    }


def question_of(row: Row[Any]) -> Question:
    """A trainee's question from its row."""
    where = (row.circuit, row.round, row.station, row.exercise)
    return Question(row.number, row.at, row.text, *where, row.answered_at)


def voided_numbers(rows: Sequence[Row[Any]], undone: Iterable[int]) -> frozenset[int]:
    """The numbers of the set rows that no longer hold: undone, or replaced by a later one."""
    return frozenset(undone) | {row.replaces for row in rows if row.replaces is not None}
