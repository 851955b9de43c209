"""The `records` command: the set records, one a line, newest last."""

from __future__ import annotations

import json
from typing import TYPE_CHECKING, TextIO, TypedDict

from core.units import amount_text

if TYPE_CHECKING:
    from decimal import Decimal

    from bot.store.store import Store
    from core.diary import SetRecord


class Fields(TypedDict):
    """A set record as it is promised to programs, in this order."""

    trainee: str
    at: str
    circuit: str
    round: int
    station: int
    exercise: str
    side: str | None
    reps: int | None
    load: float | None
    unit: str | None
    reserve: float | None
    rpe: float | None
    seconds: int | None
    voided: bool
    replaces: int | None


COLUMNS = tuple(Fields.__annotations__)


async def run(store: Store, trainee_name: str | None, *, as_json: bool, out: TextIO) -> None:
    """Write the records of one trainee, or of all, to `out`; as JSON objects or short plain lines.

    Raises:
        bot.errors.TraineeUnknown: when there is no trainee of this name.
    """
    for name, record in await store.records(trainee_name):
        line = json.dumps(fields_of(name, record), ensure_ascii=False) if as_json else _plain(name, record)
        out.write(f"{line}\n")


def fields_of(name: str, record: SetRecord) -> Fields:
    """The fields of a record, in the order they are promised."""
    load = record.load
    return {
        "trainee": name,
        "at": record.at.isoformat(timespec="seconds"),
        "circuit": record.circuit,
        "round": record.round,
        "station": record.station,
        "exercise": record.exercise,
        "side": None if record.side is None else record.side.value,
        "reps": record.reps,
        "load": None if load is None else number_of(load.amount),
        "unit": None if load is None else load.unit.value,
        "reserve": None if record.reserve is None else number_of(record.reserve),
        "rpe": None if record.rpe is None else number_of(record.rpe),
        "seconds": record.seconds,
        "voided": record.voided,
        "replaces": record.replaces,
    }


def number_of(value: Decimal) -> int | float:
    """A decimal as JSON writes it: `20` and `17.5`."""
    return int(value) if value == value.to_integral_value() else float(value)


def _plain(name: str, record: SetRecord) -> str:
    """Such as `2026-03-02 06:41 Ana: round 1, station 2, goblet-squat, 11 reps, 20 kg`."""
    parts = [f"round {record.round}", f"station {record.station}", record.exercise]
    if record.side is not None:
        parts.append(record.side.value)
    if record.reps is not None:
        parts.append(f"{record.reps} reps")
    if record.load is not None:
        parts.append(f"{amount_text(record.load.amount)} {record.load.unit.value}")
    if record.seconds is not None:
        parts.append(f"{record.seconds} s")
    if record.reserve is not None:
        parts.append(f"{amount_text(record.reserve)} in reserve")
    if record.rpe is not None:
        parts.append(f"effort {amount_text(record.rpe)}")
    if record.replaces is not None:
        parts.append(f"replaces record {record.replaces}")
    if record.voided:
        parts.append("void")
    return f"{record.at:%Y-%m-%d %H:%M} {name}: {', '.join(parts)}"
