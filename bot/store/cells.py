"""How a value stands in a column, both ways; nothing impossible passes in either direction."""

from __future__ import annotations

from decimal import Decimal, InvalidOperation
from enum import StrEnum
from typing import TYPE_CHECKING, Any, TypeVar

from pydantic import TypeAdapter, ValidationError

from bot.errors import RowBroken
from core.units import Load, Unit

if TYPE_CHECKING:
    from datetime import datetime

    from sqlalchemy import Row

Word = TypeVar("Word", bound=StrEnum)
Value = TypeVar("Value")
Columns = dict[str, Any]  # a row on its way in: a value for each column

LOAD_KG_MAX = Decimal(499)  # nobody holds half a ton in a hand: common practice, no source


def load_columns(load: Load | None) -> Columns:
    """The two columns of a load."""
    return {"amount": None if load is None else str(load.amount), "unit": None if load is None else load.unit.value}


def load_of(row: Row[Any], where: str) -> Load | None:
    """A load from its two columns.

    Raises:
        RowBroken: when only one of them is there, or it is no load.
    """
    amount = decimal_of(row.amount, where)
    check(where, (amount is None) == (row.unit is None), "an amount without a unit, or the reverse")
    return None if amount is None else Load(amount, enum_of(Unit, row.unit, where))


def check_load(load: Load | None, where: str) -> None:
    """Refuse a load that nobody can hold.

    Raises:
        RowBroken: it is such a load.
    """
    check(where, load is None or (load.amount.is_finite() and 0 <= load.kg <= LOAD_KG_MAX), "impossible load")


def decimal_text(value: Decimal | None) -> str | None:
    """A number as it is kept: digit for digit."""
    return None if value is None else str(value)


def decimal_of(text: str | None, where: str) -> Decimal | None:
    """A number that was kept.

    Raises:
        RowBroken: when it is none.
    """
    if text is None:
        return None
    try:
        value = Decimal(text)
    except InvalidOperation:
        raise RowBroken(where, "not a number") from None
    check(where, value.is_finite(), "not a number")
    return value


def word_text(word: StrEnum | None) -> str | None:
    """The word of an enumeration as it is kept."""
    return None if word is None else word.value


def enum_of(words: type[Word], text: str, where: str) -> Word:
    """The member of an enumeration that was kept as its word.

    Raises:
        RowBroken: when there is none of that name.
    """
    try:
        return words(text)
    except ValueError:
        raise RowBroken(where, f"no {words.__name__} of that name") from None


def check_instant(at: datetime, where: str) -> None:
    """Refuse an instant without a zone.

    Raises:
        RowBroken: it has none.
    """
    check(where, at.utcoffset() is not None, "an instant without a zone")


def check(where: str, holds: bool, fault: str) -> None:  # noqa: FBT001 - it is the assertion itself
    """Refuse a value for which something does not hold.

    Raises:
        RowBroken: it does not hold.
    """
    if not holds:
        raise RowBroken(where, fault)


def json_text(adapter: TypeAdapter[Value], value: Value, where: str) -> str:
    """A value as JSON.

    Raises:
        RowBroken: when it would not come back the same.
    """
    text = adapter.dump_json(value, warnings=False).decode()
    try:
        same = adapter.validate_json(text) == value
    except ValidationError:
        same = False
    check(where, same, "would not come back the same")
    return text


def json_value(adapter: TypeAdapter[Value], text: str, where: str) -> Value:
    """A value from its JSON.

    Raises:
        RowBroken: when it cannot be read.
    """
    try:
        return adapter.validate_json(text)
    except ValidationError:
        raise RowBroken(where, "cannot be read") from None
