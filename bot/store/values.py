"""Rows and core values, mapped both ways; nothing impossible passes in either direction. A diary's are in `diary_values`."""

from __future__ import annotations

import json
import logging
from typing import TYPE_CHECKING, Annotated, Any

from pydantic import Field, TypeAdapter, ValidationError

from bot.errors import RowBroken
from bot.ports import Document, Rendered
from bot.store.cells import Columns, check, check_load, enum_of, json_text, json_value, load_columns, load_of
from core.circuit import Circuit
from core.coach.states import CoachState, Quiet
from core.health import Health
from core.pictures import Picture
from core.rack import Kind, Rack, RackItem
from core.recurrence import Recurrence, recurrence_of, text_of
from core.session.states import Idle, State
from core.trainee import Block, Pause, Trainee, Weekday
from core.units import Unit
from core.wishes import Wishes

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from sqlalchemy import Row

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
    return json_text(_states, state, "trainee.state")


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
    return json_text(_circuits, circuit, "circuit.body")


def circuit_of(text: str, circuit_id: int) -> Circuit:
    """The circuit that was stored.

    Raises:
        RowBroken: when it cannot be read.
    """
    return json_value(_circuits, text, f"circuit {circuit_id}")


def coach_state_text(state: CoachState) -> str:
    """The state of a talk with a coach as JSON.

    Raises:
        RowBroken: when it would not come back the same.
    """
    return json_text(_coach_states, state, "coach.state")


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
    days, easier_weeks = json_value(_weekdays, row.days, where), json_value(_numbers, row.easier_weeks, where)
    block = Block(tuple(circuits), days, row.weeks, easier_weeks, row.starts_on)
    _check_block(block, where)
    return block


def _check_block(block: Block, where: str) -> None:
    check(where, bool(block.circuits), "a plan without circuits")
    check(where, block.weeks >= 1, "a plan without weeks")
    check(where, all(1 <= week <= block.weeks for week in block.easier_weeks), "an easier week that is none of its weeks")


def trainee_columns(trainee: Trainee) -> Columns:
    """What the trainee's own row holds of a trainee; the rack has rows of its own."""
    return {
        "name": trainee.name,
        "zone": trainee.zone,
        "unit": trainee.unit.value,
        "rack_said": trainee.rack is not None,
        "cautions_accepted_at": trainee.cautions_accepted_at,
        "health": None if trainee.health == Health() else json_text(_healths, trainee.health, "trainee.health"),
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
    return Health() if text is None else json_value(_healths, text, where)


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
        unit=enum_of(Unit, row.unit, where),
        rack=rack if row.rack_said else None,
        cautions_accepted_at=row.cautions_accepted_at,
        health=health_of(row.health, where),
        reminders=None if row.reminder is None else _recurrence_of(row.reminder, where),
        reminders_since=row.reminders_since,
        snoozed_until=row.snoozed_until,
        heard_at=row.heard_at,
        wishes=Wishes() if row.wishes is None else json_value(_wishes, row.wishes, where),
        pause=None if row.paused_at is None else Pause(row.paused_at, row.paused_until),
        ended_at=row.ended_at,
    )


def wishes_text(wishes: Wishes) -> str | None:
    """What a coach wishes for a trainee as JSON, None for nothing.

    Raises:
        RowBroken: when it would not come back the same.
    """
    return None if wishes == Wishes() else json_text(_wishes, wishes, "trainee.wishes")


def weekday_of(text: str, where: str) -> Weekday:
    """The day of the week that was stored.

    Raises:
        RowBroken: when it is none.
    """
    return json_value(_weekday, json.dumps(text), where)


def _recurrence_text(recurrence: Recurrence) -> str:
    text = text_of(recurrence)
    check("trainee.reminder", _recurrence_of(text, "trainee.reminder") == recurrence, "would not come back the same")
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
        {"trainee_id": trainee_id, "position": position, "kind": item.kind.value, "pieces": item.count, **load_columns(item.load)}
        for position, item in enumerate(rack.items, 1)
    ]


def _rack_item_of(row: Row[Any], where: str) -> RackItem:
    item = RackItem(enum_of(Kind, row.kind, where), load_of(row, where), row.pieces)
    _check_rack_item(item, where)
    return item


def _check_rack_item(item: RackItem, where: str) -> None:
    check(where, item.count >= 1, "an item that is not there")
    check_load(item.load, where)


def rendered_columns(rendered: Rendered) -> Columns:
    """What an outbox row holds of a message in words."""
    return {
        "kind": rendered.kind,
        "text": rendered.text,
        "replies": json.dumps(list(rendered.replies), ensure_ascii=False),
        "exercise": rendered.exercise,
        "shows": None if rendered.shows is None else json_text(_shown, rendered.shows, "outbox.shows"),
    }


def rendered_of(row: Row[Any]) -> Rendered:
    """The message in words of an outbox row.

    Raises:
        RowBroken: when its replies are no list of texts, or what it shows cannot be read.
    """
    replies = json.loads(row.replies)
    check(f"outbox {row.id}", isinstance(replies, list) and all(isinstance(reply, str) for reply in replies), "broken replies")
    shows = None if row.shows is None else json_value(_shown, row.shows, f"outbox {row.id}")
    return Rendered(row.text, tuple(replies), row.kind, row.exercise, shows)
