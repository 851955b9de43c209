"""A trainee's records as CSV (the sets, for a spreadsheet) and as JSON (everything that is kept of them, for a program).

The table is RFC 4180 with a header: commas, CRLF, quotes where needed. It begins with a byte order mark, for without one a
spreadsheet takes the letters of "José" for another encoding's; programs have the JSON. A text that a spreadsheet would take for a
formula has an apostrophe before it.
"""

from __future__ import annotations

import csv
import io
import json
from dataclasses import fields, is_dataclass
from datetime import date, datetime
from decimal import Decimal
from enum import Enum
from typing import TYPE_CHECKING, Any

from bot.records import COLUMNS, fields_of, number_of

if TYPE_CHECKING:
    from core.diary import SetRecord
    from core.records_file import RecordsFile

FORMAT, VERSION = "stationcall records", 1
BYTE_ORDER_MARK = "\ufeff"
FORMULA = ("=", "+", "-", "@", "\t", "\r", "\n")  # how a cell begins that some spreadsheet works out


def csv_of(file: RecordsFile) -> bytes:
    """Every set that was noted, undone and replaced ones included, a line each: the fields of the `records` command."""
    table = io.StringIO(newline="")
    table.write(BYTE_ORDER_MARK)
    writer = csv.writer(table)
    writer.writerow(COLUMNS)
    writer.writerows(map(_cell, fields_of(file.trainee.name, record).values()) for record in file.diary.sets)
    return table.getvalue().encode()


def json_of(file: RecordsFile) -> bytes:
    """Everything that is kept: the trainee with rack, training days and health answers, and the whole diary."""
    diary = {field.name: _plain(getattr(file.diary, field.name)) for field in fields(file.diary) if field.name != "sets"}
    whole = {
        "format": FORMAT,
        "version": VERSION,
        "exported_at": _plain(file.at),
        "trainee": _plain(file.trainee),
        "circuit": file.circuit,
        "sets": [_set(file.trainee.name, record) for record in file.diary.sets],
        **diary,
    }
    return (json.dumps(whole, ensure_ascii=False, indent=1) + "\n").encode()


def _set(name: str, record: SetRecord) -> dict[str, Any]:
    """The fields of the `records` command, and what else the record holds."""
    told: dict[str, Any] = {**fields_of(name, record)}
    more = {field.name: _plain(getattr(record, field.name)) for field in fields(record) if field.name not in told}
    return told | more


def _cell(value: object) -> object:
    """A value as a cell: nothing for what was not said, `true` and `false`, and no formula."""
    match value:
        case None:
            return ""
        case bool():
            return "true" if value else "false"
        case str() if value.startswith(FORMULA):
            return f"'{value}"
        case _:
            return value


def _plain(value: object) -> Any:  # noqa: ANN401 - whatever JSON has
    """A value of the core as JSON has it: an object's fields by their names, instants and days in ISO 8601, decimals as numbers."""
    match value:
        case datetime() | date():
            return value.isoformat()
        case Enum():
            return value.value
        case Decimal():
            return number_of(value)
        case tuple() | list() | frozenset():
            return [_plain(one) for one in value]
        case _ if is_dataclass(value):
            return {field.name: _plain(getattr(value, field.name)) for field in fields(value)}
        case _:
            return value
