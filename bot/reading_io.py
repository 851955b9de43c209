"""The `read` command: lines in, one JSON line of acts each, flushed; memory stays flat however many lines come."""

from __future__ import annotations

import json
from dataclasses import fields
from decimal import Decimal
from enum import Enum
from typing import TYPE_CHECKING, Any, TextIO, TypeVar, get_args

from core.reading import Act, Again, Answer, Awaiting, Context, LastSet, Side, TimeLeft, Unclear, read
from core.reading.acts import Calendar
from core.units import Unit

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

_Choice = TypeVar("_Choice", bound=Enum)

_NOT_IN_CONTRACT = (TimeLeft, Again, Answer, *get_args(Calendar))
_NOT_PRINTED = {("unclear", "choices"), ("amend", "rejected")}
_ALWAYS = {("skip", "what"), ("have", "items"), ("log", "load")}


def run(lines: Iterable[str], out: TextIO) -> None:
    """Read each line and print its acts.

    A line is a JSON object with `text` and an optional `context`, or else the message itself; a blank line is an empty message.
    Nothing a line holds is an error: what cannot be understood prints as unclear.
    """
    for line in lines:
        text, context = _message(line.rstrip("\r\n"))
        acts = [act_json(act) for act in read(text, context)]
        out.write(json.dumps({"acts": acts}, ensure_ascii=False) + "\n")
        out.flush()


def act_json(act: Act) -> dict[str, Any]:
    """One act as the contract prints it: the key "act" and the fields that were said."""
    if isinstance(act, _NOT_IN_CONTRACT):
        act = Unclear()
    name = type(act).__name__.lower()
    printed: dict[str, Any] = {"act": name}
    for field in fields(act):
        value = getattr(act, field.name)
        if (name, field.name) in _NOT_PRINTED:
            continue
        if ((name, field.name) in _ALWAYS and value is not None) or (value is not None and value is not False and value != ()):
            printed[field.name] = _plain(value)
    return printed


def _plain(value: object) -> object:
    """A value as JSON holds it: whole numbers without a point, items as objects without what was not said."""
    if isinstance(value, Decimal):
        return int(value) if value == value.to_integral_value() else float(value)
    if isinstance(value, Enum):
        return value.value
    if isinstance(value, tuple):
        return [_plain(item) for item in value]
    if hasattr(value, "__dataclass_fields__"):
        held = {name: getattr(value, name) for name in value.__dataclass_fields__}
        return {name: _plain(item) for name, item in held.items() if item is not None}
    return value


def _message(line: str) -> tuple[str, Context]:
    """The text and context of one line; a line that is no such object is the text itself."""
    if line.lstrip().startswith("{"):
        try:
            said = json.loads(line)
        except (ValueError, RecursionError):
            return line, Context()
        if isinstance(said, dict) and isinstance(said.get("text"), str):
            context = said.get("context")
            return said["text"], context_of(context) if isinstance(context, dict) else Context()
    return line, Context()


def context_of(said: Mapping[str, Any]) -> Context:
    """The context an object tells; a field that makes no sense is taken as not told."""
    last = said.get("last")
    return Context(
        unit=_member(Unit, said.get("unit")),
        load=_decimal(said.get("load")),
        target=_whole(said.get("target")),
        sides=said.get("sides") is True,
        awaiting=_member(Awaiting, said.get("awaiting")) or Awaiting.NONE,
        last=_last(last) if isinstance(last, dict) else None,
        today=_text(said.get("today")),
        zone=_text(said.get("zone")),
        hold=said.get("hold") is True,
        choices=_whole(said.get("choices")) or 0,
    )


def _last(said: Mapping[str, Any]) -> LastSet:
    return LastSet(
        _whole(said.get("reps")),
        _decimal(said.get("load")),
        _member(Unit, said.get("unit")),
        _member(Side, said.get("side")),
        _whole(said.get("seconds")),
    )


def _member(kind: type[_Choice], value: object) -> _Choice | None:
    try:
        return kind(value)
    except ValueError:
        return None


def _decimal(value: object) -> Decimal | None:
    if isinstance(value, bool) or not isinstance(value, int | float):
        return None
    number = Decimal(str(value))
    return number if number.is_finite() else None


def _whole(value: object) -> int | None:
    number = _decimal(value)
    return int(number) if number is not None and number == number.to_integral_value() else None


def _text(value: object) -> str | None:
    return value if isinstance(value, str) else None
