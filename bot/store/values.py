"""Rows and core values, mapped both ways; nothing impossible passes in either direction."""

from __future__ import annotations

import json
import logging
from decimal import Decimal, InvalidOperation
from enum import StrEnum
from typing import TYPE_CHECKING, Annotated, Any, TypeVar

from pydantic import Field, TypeAdapter, ValidationError

from bot.errors import RowBroken
from bot.ports import Document, Rendered
from core.circuit import Circuit, Side
from core.coach.states import CoachState, Quiet
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
from core.health import Health, NoteKind, Quality, SafetyNote
from core.pictures import Picture
from core.rack import Kind, Rack, RackItem
from core.recurrence import Recurrence, recurrence_of, text_of
from core.session.states import Idle, State
from core.trainee import Block, Pause, Trainee, Weekday
from core.units import Load, Unit
from core.wishes import Wishes

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence
    from datetime import datetime

    from sqlalchemy import Row

Word = TypeVar("Word", bound=StrEnum)
Value = TypeVar("Value")
Columns = dict[str, Any]  # a row on its way in: a value for each column

REPS_MAX = 999  # nobody does a thousand in a station: common practice, no source
LOAD_KG_MAX = Decimal(499)  # nor holds half a ton in a hand: common practice, no source
RPE_MAX = 10  # the effort scale ends there
NOTE_MAX = 200  # letters: a place, an outcome, a number
ANSWERS_MAX = 800  # letters: every answer of the health talk at once is shorter

_log = logging.getLogger(__name__)
_coach_states: TypeAdapter[CoachState] = TypeAdapter(Annotated[CoachState, Field(discriminator="kind")])
_weekday: TypeAdapter[Weekday] = TypeAdapter(Weekday)
_weekdays: TypeAdapter[tuple[Weekday, ...]] = TypeAdapter(tuple[Weekday, ...])
_numbers: TypeAdapter[tuple[int, ...]] = TypeAdapter(tuple[int, ...])
_states: TypeAdapter[State] = TypeAdapter(Annotated[State, Field(discriminator="kind")])
_circuits: TypeAdapter[Circuit] = TypeAdapter(Circuit)
_healths: TypeAdapter[Health] = TypeAdapter(Health)
_wishes: TypeAdapter[Wishes] = TypeAdapter(Wishes)
_shown: TypeAdapter[Picture | Document] = TypeAdapter(Picture | Document)


def state_text(state: State) -> str:
    """A state as JSON.

    Raises:
        RowBroken: when it would not come back the same.
    """
    return _text(_states, state, "trainee.state")


def state_of(text: str, trainee_id: int) -> State:
    """The state that was stored; one that cannot be read (of another version) is `Idle`: the diary does not depend on it."""
    try:
        return _states.validate_json(text)
    except ValidationError:
        _log.warning("trainee %d: the stored state cannot be read; the conversation starts from idle", trainee_id)
        return Idle()


def circuit_text(circuit: Circuit) -> str:
    """A circuit as JSON.

    Raises:
        RowBroken: when it would not come back the same.
    """
    return _text(_circuits, circuit, "circuit.body")


def circuit_of(text: str, circuit_id: int) -> Circuit:
    """The circuit that was stored.

    Raises:
        RowBroken: when it cannot be read.
    """
    return _read(_circuits, text, f"circuit {circuit_id}")


def coach_state_text(state: CoachState) -> str:
    """The state of a talk with a coach as JSON.

    Raises:
        RowBroken: when it would not come back the same.
    """
    return _text(_coach_states, state, "coach.state")


def coach_state_of(text: str, coach_id: int) -> CoachState:
    """The state of a talk with a coach; one that cannot be read (of another version) is `Quiet`: only an open question is lost."""
    try:
        return _coach_states.validate_json(text)
    except ValidationError:
        _log.warning("coach %d: the stored state cannot be read; the talk starts anew", coach_id)
        return Quiet()


def block_columns(trainee_id: int, block: Block) -> Columns:
    """The row of a trainee's plan; its circuits have rows of their own.

    Raises:
        RowBroken: when it is impossible.
    """
    _check_block(block, f"block of trainee {trainee_id}")
    return {
        "trainee_id": trainee_id,
        "days": json.dumps(block.days),
        "weeks": block.weeks,
        "easier_weeks": json.dumps(block.easier_weeks),
        "starts_on": block.starts_on,
    }


def block_of(row: Row[Any], circuits: Sequence[Circuit]) -> Block:
    """A plan from its row and its circuits, in order.

    Raises:
        RowBroken: when a value is none that may be stored.
    """
    where = f"block of trainee {row.trainee_id}"
    days, easier_weeks = _read(_weekdays, row.days, where), _read(_numbers, row.easier_weeks, where)
    block = Block(tuple(circuits), days, row.weeks, easier_weeks, row.starts_on)
    _check_block(block, where)
    return block


def _check_block(block: Block, where: str) -> None:
    _check(where, bool(block.circuits), "a plan without circuits")
    _check(where, block.weeks >= 1, "a plan without weeks")
    _check(where, all(1 <= week <= block.weeks for week in block.easier_weeks), "an easier week that is none of its weeks")


def trainee_columns(trainee: Trainee) -> Columns:
    """What the trainee's own row holds of a trainee; the rack has rows of its own."""
    return {
        "name": trainee.name,
        "zone": trainee.zone,
        "unit": trainee.unit.value,
        "rack_said": trainee.rack is not None,
        "cautions_accepted_at": trainee.cautions_accepted_at,
        "health": None if trainee.health == Health() else _text(_healths, trainee.health, "trainee.health"),
        "reminder": None if trainee.reminders is None else _recurrence_text(trainee.reminders),
        "reminders_since": trainee.reminders_since,
        "snoozed_until": trainee.snoozed_until,
        "heard_at": trainee.heard_at,
        "wishes": wishes_text(trainee.wishes),
        "paused_at": None if trainee.pause is None else trainee.pause.since,
        "paused_until": None if trainee.pause is None else trainee.pause.until,
        "ended_at": trainee.ended_at,
    }


def health_of(text: str | None, where: str) -> Health:
    """What a trainee answered to the health questions, as their row holds it.

    Raises:
        RowBroken: when it cannot be read.
    """
    return Health() if text is None else _read(_healths, text, where)


def trainee_of(row: Row[Any], items: Iterable[Row[Any]]) -> Trainee:
    """A trainee from their row and the rows of their rack, in order.

    Raises:
        RowBroken: when a value is none that may be stored.
    """
    where = f"trainee {row.id}"
    rack = Rack(tuple(_rack_item_of(item, where) for item in items))
    return Trainee(
        name=row.name,
        zone=row.zone,
        unit=_word(Unit, row.unit, where),
        rack=rack if row.rack_said else None,
        cautions_accepted_at=row.cautions_accepted_at,
        health=health_of(row.health, where),
        reminders=None if row.reminder is None else _recurrence_of(row.reminder, where),
        reminders_since=row.reminders_since,
        snoozed_until=row.snoozed_until,
        heard_at=row.heard_at,
        wishes=Wishes() if row.wishes is None else _read(_wishes, row.wishes, where),
        pause=None if row.paused_at is None else Pause(row.paused_at, row.paused_until),
        ended_at=row.ended_at,
    )


def wishes_text(wishes: Wishes) -> str | None:
    """What a coach wishes for a trainee as JSON, None for nothing.

    Raises:
        RowBroken: when it would not come back the same.
    """
    return None if wishes == Wishes() else _text(_wishes, wishes, "trainee.wishes")


def weekday_of(text: str, where: str) -> Weekday:
    """The day of the week that was stored.

    Raises:
        RowBroken: when it is none.
    """
    return _read(_weekday, json.dumps(text), where)


def _recurrence_text(recurrence: Recurrence) -> str:
    text = text_of(recurrence)
    _check("trainee.reminder", _recurrence_of(text, "trainee.reminder") == recurrence, "would not come back the same")
    return text


def _recurrence_of(text: str, where: str) -> Recurrence:
    try:
        return recurrence_of(text)
    except (ValueError, KeyError):
        raise RowBroken(where, "days that are no recurrence") from None


def rack_columns(trainee_id: int, rack: Rack) -> list[Columns]:
    """A row for each item of a rack.

    Raises:
        RowBroken: when an item is impossible.
    """
    where = f"rack of trainee {trainee_id}"
    for item in rack.items:
        _check_rack_item(item, where)
    return [
        {"trainee_id": trainee_id, "position": position, "kind": item.kind.value, "pieces": item.count, **_load_columns(item.load)}
        for position, item in enumerate(rack.items, 1)
    ]


def _rack_item_of(row: Row[Any], where: str) -> RackItem:
    item = RackItem(_word(Kind, row.kind, where), _load_of(row, where), row.pieces)
    _check_rack_item(item, where)
    return item


def _check_rack_item(item: RackItem, where: str) -> None:
    _check(where, item.count >= 1, "an item that is not there")
    _check_load(item.load, where)


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
        "side": _word_text(record.side),
        "reps": record.reps,
        **_load_columns(record.load),
        "reserve": _decimal_text(record.reserve),
        "rpe": _decimal_text(record.rpe),
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
        side=None if row.side is None else _word(Side, row.side, where),
        reps=row.reps,
        load=_load_of(row, where),
        reserve=_decimal_of(row.reserve, where),
        rpe=_decimal_of(row.rpe, where),
        seconds=row.seconds,
        work_s=row.work_s,
        rep_s=row.rep_s,
        replaces=row.replaces,
        voided=voided,
    )
    _check_set(record, where)
    return record


def _check_set(record: SetRecord, where: str) -> None:
    _check_instant(record.at, where)
    _check(where, min(record.number, record.workout, record.round, record.station) >= 1, "numbers count from 1")
    _check(where, bool(record.exercise) and bool(record.circuit), "no exercise or no circuit")
    _check(where, record.reps is None or 0 <= record.reps <= REPS_MAX, "impossible reps")
    _check(where, record.seconds is None or record.seconds >= 0, "negative seconds")
    _check(where, record.work_s is None or record.work_s > 0, "a station without time")
    _check(where, record.rep_s is None or record.rep_s > 0, "a rep without time")
    _check(where, record.reserve is None or 0 <= record.reserve <= REPS_MAX, "impossible reserve")
    _check(where, record.rpe is None or 0 <= record.rpe <= RPE_MAX, "effort off its scale")
    _check(where, record.replaces is None or 1 <= record.replaces < record.number, "replaces no earlier record")
    _check_load(record.load, where)


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
        "ending": _word_text(record.ending),
        "work_s": record.work_s,
        "paused_s": record.paused_s,
        "effort": _decimal_text(record.effort),
    }


def workout_of(row: Row[Any]) -> WorkoutRecord:
    """A workout from its row.

    Raises:
        RowBroken: when a value is none that may be stored.
    """
    where = f"workout {row.number} of trainee {row.trainee_id}"
    ending = None if row.ending is None else _word(Ending, row.ending, where)
    record = WorkoutRecord(
        row.number, row.circuit, row.started_at, row.ended_at, ending, row.work_s, _decimal_of(row.effort, where), row.paused_s
    )
    _check_workout(record, where)
    return record


def _check_workout(record: WorkoutRecord, where: str) -> None:
    _check(where, record.number >= 1, "numbers count from 1")
    _check_instant(record.started_at, where)
    _check(where, record.work_s >= 0, "negative seconds of work")
    _check(where, record.paused_s >= 0, "negative seconds of pause")
    _check(where, record.effort is None or 0 <= record.effort <= RPE_MAX, "effort off its scale")
    _check(where, (record.ended_at is None) == (record.ending is None), "an end without a reason, or the reverse")
    if record.ended_at is not None:
        _check_instant(record.ended_at, where)
        _check(where, record.ended_at >= record.started_at, "ends before it began")


def pain_columns(trainee_id: int, record: PainRecord) -> Columns:
    """The row of a pain report.

    Raises:
        RowBroken: when its instant has no zone.
    """
    _check_instant(record.at, f"pain of trainee {trainee_id}")
    return {
        "trainee_id": trainee_id,
        "at": record.at,
        "place": record.place,
        "side": _word_text(record.side),
        "urgent": record.urgent,
        "exercise": record.exercise,
        "quality": _word_text(record.quality),
        "known": record.known,
        "eased_at": record.eased_at,
    }


def pain_of(row: Row[Any]) -> PainRecord:
    """A pain report from its row.

    Raises:
        RowBroken: when a value is none that may be stored.
    """
    side = None if row.side is None else _word(Side, row.side, f"pain {row.id}")
    quality = None if row.quality is None else _word(Quality, row.quality, f"pain {row.id}")
    return PainRecord(row.at, row.place, side, row.urgent, row.exercise, quality, row.known, row.eased_at)


def note_columns(trainee_id: int, note: SafetyNote) -> Columns:
    """The row of a note on safety.

    Raises:
        RowBroken: when its instant has no zone, or its value is a whole text.
    """
    _check_instant(note.at, f"note of trainee {trainee_id}")
    most = ANSWERS_MAX if note.kind is NoteKind.OUTCOME else NOTE_MAX
    _check(f"note of trainee {trainee_id}", len(note.value) <= most, "a value that is a text")
    return {"trainee_id": trainee_id, "at": note.at, "kind": note.kind.value, "value": note.value}


def note_of(row: Row[Any]) -> SafetyNote:
    """A note on safety from its row.

    Raises:
        RowBroken: when its kind is unknown.
    """
    return SafetyNote(row.at, _word(NoteKind, row.kind, f"note {row.id}"), row.value)


def unasked_columns(trainee_id: int, record: Unasked) -> Columns:
    """The row of something that fell due and was seen to.

    Raises:
        RowBroken: when an instant has no zone.
    """
    _check_instant(record.due_at, f"unasked of trainee {trainee_id}")
    _check_instant(record.at, f"unasked of trainee {trainee_id}")
    return {
        "trainee_id": trainee_id,
        "kind": record.kind.value,
        "day": record.day,
        "due_at": record.due_at,
        "at": record.at,
        "dropped": _word_text(record.dropped),
    }


def unasked_of(row: Row[Any]) -> Unasked:
    """Something that fell due, from its row.

    Raises:
        RowBroken: when its kind or reason is none.
    """
    where = f"unasked {row.id}"
    dropped = None if row.dropped is None else _word(Reason, row.dropped, where)
    return Unasked(_word(UnaskedKind, row.kind, where), row.day, row.due_at, row.at, dropped)


def word_columns(trainee_id: int, word: CoachWord) -> Columns:
    """The row of a coach's words to a trainee.

    Raises:
        RowBroken: when an instant has no zone, or there are no words.
    """
    where = f"word {word.number} of trainee {trainee_id}"
    _check_instant(word.at, where)
    _check(where, bool(word.text.strip()), "no words")
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
    kind = _word(WordKind, row.kind, f"word {row.number} of trainee {row.trainee_id}")
    return CoachWord(row.number, row.at, kind, row.text, row.about, row.told_at, row.taken_back_at)


def question_columns(trainee_id: int, question: Question) -> Columns:
    """The row of a trainee's question.

    Raises:
        RowBroken: when an instant has no zone, or nothing was asked.
    """
    where = f"question {question.number} of trainee {trainee_id}"
    _check_instant(question.at, where)
    _check(where, bool(question.text.strip()), "nothing asked")
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


def rendered_columns(rendered: Rendered) -> Columns:
    """What an outbox row holds of a message in words."""
    return {
        "kind": rendered.kind,
        "text": rendered.text,
        "replies": json.dumps(list(rendered.replies), ensure_ascii=False),
        "exercise": rendered.exercise,
        "shows": None if rendered.shows is None else _text(_shown, rendered.shows, "outbox.shows"),
    }


def rendered_of(row: Row[Any]) -> Rendered:
    """The message in words of an outbox row.

    Raises:
        RowBroken: when its replies are no list of texts, or what it shows cannot be read.
    """
    replies = json.loads(row.replies)
    _check(f"outbox {row.id}", isinstance(replies, list) and all(isinstance(reply, str) for reply in replies), "broken replies")
    shows = None if row.shows is None else _read(_shown, row.shows, f"outbox {row.id}")
    return Rendered(row.text, tuple(replies), row.kind, row.exercise, shows)


def _load_columns(load: Load | None) -> Columns:
    return {"amount": None if load is None else str(load.amount), "unit": None if load is None else load.unit.value}


def _load_of(row: Row[Any], where: str) -> Load | None:
    amount = _decimal_of(row.amount, where)
    _check(where, (amount is None) == (row.unit is None), "an amount without a unit, or the reverse")
    return None if amount is None else Load(amount, _word(Unit, row.unit, where))


def _check_load(load: Load | None, where: str) -> None:
    _check(where, load is None or (load.amount.is_finite() and 0 <= load.kg <= LOAD_KG_MAX), "impossible load")


def _decimal_text(value: Decimal | None) -> str | None:
    return None if value is None else str(value)


def _decimal_of(text: str | None, where: str) -> Decimal | None:
    if text is None:
        return None
    try:
        value = Decimal(text)
    except InvalidOperation:
        raise RowBroken(where, "not a number") from None
    _check(where, value.is_finite(), "not a number")
    return value


def _word_text(word: StrEnum | None) -> str | None:
    return None if word is None else word.value


def _word(words: type[Word], text: str, where: str) -> Word:
    try:
        return words(text)
    except ValueError:
        raise RowBroken(where, f"no {words.__name__} of that name") from None


def _check_instant(at: datetime, where: str) -> None:
    _check(where, at.utcoffset() is not None, "an instant without a zone")


def _check(where: str, holds: bool, fault: str) -> None:  # noqa: FBT001 - it is the assertion itself
    if not holds:
        raise RowBroken(where, fault)


def _text(adapter: TypeAdapter[Value], value: Value, where: str) -> str:
    text = adapter.dump_json(value, warnings=False).decode()
    try:
        same = adapter.validate_json(text) == value
    except ValidationError:
        same = False
    _check(where, same, "would not come back the same")
    return text


def _read(adapter: TypeAdapter[Value], text: str, where: str) -> Value:
    try:
        return adapter.validate_json(text)
    except ValidationError:
        raise RowBroken(where, "cannot be read") from None


def voided_numbers(rows: Sequence[Row[Any]], undone: Iterable[int]) -> frozenset[int]:
    """The numbers of the set rows that no longer hold: undone, or replaced by a later one."""
    return frozenset(undone) | {row.replaces for row in rows if row.replaces is not None}
