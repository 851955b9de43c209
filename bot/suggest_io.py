"""The `suggest` command: a JSON object a line in, a JSON object a line out, each flushed."""

from __future__ import annotations

import json
from datetime import date
from decimal import Decimal, InvalidOperation
from math import isfinite
from typing import TYPE_CHECKING, Any, NoReturn, TextIO

from bot.wording.reasons import why
from core.suggestion import Ask, PastSet, Spread, StationAsk, Suggestion, TraineeFacts, suggest
from core.units import Load, Unit

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

MOST_REPS = 1000
MOST_SECONDS = 3600.0
EXPERIENCES = ("new", "steady", "strong")


class LineUnusable(ValueError):
    """A line that is no question; the message is one plain sentence."""


def run(lines: Iterable[str], out: TextIO) -> None:
    """Answer each line of `lines` on `out`; an empty line is passed over, a bad one gets `{"error": …}`."""
    for line in lines:
        if not line.strip():
            continue
        print(json.dumps(answer(line), ensure_ascii=False), file=out, flush=True)


def answer(line: str) -> dict[str, Any]:
    """The answer to one line."""
    try:
        return written(suggest(asked(json.loads(line, parse_float=Decimal, parse_constant=_no_constant))))
    except LineUnusable as error:
        return {"error": str(error)}
    except (json.JSONDecodeError, RecursionError):
        return {"error": "This line is not a JSON object."}


def _no_constant(_: str) -> NoReturn:
    raise LineUnusable("A number here is not a number.")


def asked(value: object) -> Ask:
    """The question in a JSON value.

    Raises:
        LineUnusable: when something needed is missing or cannot be.
    """
    line = _object(value, "the line")
    unit = _unit(line.get("unit"))
    station = _object(_needed(line, "station"), "station")
    others = _object(line.get("others") or {}, "others")
    return Ask(
        unit=unit,
        loads=tuple(_decimal(load, "loads") for load in _list(_needed(line, "loads"), "loads")),
        station=_station(station),
        round=int(_number(line.get("round", 1), "round", 1, 100)),
        today=_date(_needed(line, "today"), "today"),
        history=_sets(line.get("history"), unit, "history"),
        trainee=_trainee(_object(line.get("trainee") or {}, "trainee")),
        others={str(name): _sets(sets, unit, "others") for name, sets in others.items()},
    )


def written(suggestion: Suggestion) -> dict[str, Any]:
    """A suggestion as JSON values."""
    return {
        "load": _plain(suggestion.load),
        "unit": str(suggestion.unit),
        "rep_s": _whole(suggestion.rep_s),
        "reps": list(suggestion.reps),
        "reserve": [_whole(reps) for reps in suggestion.reserve],
        "finish_chance": suggestion.finish_chance,
        "change": suggestion.change,
        "lever": suggestion.lever,
        "why": why(suggestion.why),
        "one_rep_max": _spread(suggestion.one_rep_max),
    }


def _spread(spread: Spread | None) -> dict[str, float | int | None] | None:
    if spread is None:
        return None
    return {"best": _plain(spread.best), "low": _plain(spread.low), "high": _plain(spread.high)}


def _plain(amount: Decimal | None) -> float | int | None:
    return None if amount is None else _whole(float(amount))


def _whole(number: float) -> float | int:
    return int(number) if float(number).is_integer() else float(number)


def _station(station: Mapping[str, Any]) -> StationAsk:
    exercise = _needed(station, "exercise")
    if not isinstance(exercise, str) or not exercise.strip():
        raise LineUnusable("The station's exercise is not a name.")
    allowed = station.get("rep_s_range")
    reserve = station.get("reserve", [1, 2])
    return StationAsk(
        exercise=exercise,
        work_s=_number(station.get("work_s", 60), "work_s", 1, MOST_SECONDS),
        rep_s=_number(_needed(station, "rep_s"), "rep_s", 0.2, 120),
        rep_s_range=None if allowed is None else _pair(allowed, "rep_s_range", 0.2, 120),
        sides=bool(station.get("sides", False)),
        reserve=_pair(reserve if isinstance(reserve, list) else [reserve, reserve], "reserve", 0, 50),
    )


def _trainee(trainee: Mapping[str, Any]) -> TraineeFacts:
    experience = trainee.get("experience", "new")
    if experience not in EXPERIENCES:
        raise LineUnusable("The trainee's experience is one of new, steady, strong.")
    age, body_mass, days_off = (trainee.get(key) for key in ("age", "body_mass_kg", "days_off"))
    return TraineeFacts(
        experience=experience,
        sex=None if trainee.get("sex") is None else str(trainee["sex"]),
        age=None if age is None else int(_number(age, "age", 0, 130)),
        body_mass_kg=None if body_mass is None else _number(body_mass, "body_mass_kg", 1, 700),
        days_off=None if days_off is None else int(_number(days_off, "days_off", 0, 40_000)),
    )


def _sets(value: object, unit: Unit, where: str) -> tuple[PastSet, ...]:
    return tuple(_set(_object(item, where), unit, where) for item in _list(value or [], where))


def _set(item: Mapping[str, Any], unit: Unit, where: str) -> PastSet:
    said_unit = item.get("unit")
    load = _decimal(_needed(item, "load"), f"{where} load")
    if said_unit is not None:
        load = Load(load, _unit(said_unit)).in_unit(unit)
    return PastSet(
        date=_date(_needed(item, "date"), f"{where} date"),
        round=int(_number(item.get("round", 1), f"{where} round", 1, 100)),
        load=load,
        reps=int(_number(_needed(item, "reps"), f"{where} reps", 0, MOST_REPS)),
        rep_s=_number(_needed(item, "rep_s"), f"{where} rep_s", 0.2, 120),
        reserve=_optional(item.get("reserve"), f"{where} reserve", 0, 100),
        rpe=_optional(item.get("rpe"), f"{where} rpe", 0, 10),
        seconds=_optional(item.get("seconds"), f"{where} seconds", 0, MOST_SECONDS),
    )


def _needed(value: Mapping[str, Any], key: str) -> object:
    if value.get(key) is None:
        raise LineUnusable(f"{key} is missing.")
    return value[key]


def _object(value: object, where: str) -> Mapping[str, Any]:
    if not isinstance(value, dict):
        raise LineUnusable(f"{where} is not a JSON object.")
    return value


def _list(value: object, where: str) -> list[Any]:
    if not isinstance(value, list):
        raise LineUnusable(f"{where} is not a list.")
    return value


def _number(value: object, where: str, low: float, high: float) -> float:
    if isinstance(value, bool) or not isinstance(value, (int, float, Decimal)):
        raise LineUnusable(f"{where} is not a number.")
    number = float(value) if not isinstance(value, int) or abs(value) < 10**15 else float("inf")
    if not isfinite(number) or not low <= number <= high:
        raise LineUnusable(f"{where} is out of range.")
    return number


def _optional(value: object, where: str, low: float, high: float) -> float | None:
    return None if value is None else _number(value, where, low, high)


def _pair(value: object, where: str, low: float, high: float) -> tuple[float, float]:
    items = _list(value, where)
    if len(items) != len(("low", "high")):
        raise LineUnusable(f"{where} is two numbers.")
    first, second = sorted(_number(item, where, low, high) for item in items)
    return first, second


def _decimal(value: object, where: str) -> Decimal:
    _number(value, where, 0, 10_000)
    try:
        return Decimal(str(value))
    except InvalidOperation:
        raise LineUnusable(f"{where} is not a number.") from None


def _unit(value: object) -> Unit:
    if value is None:
        return Unit.KG
    try:
        return Unit(str(value).strip().lower())
    except ValueError:
        raise LineUnusable("The unit is kg or lb.") from None


def _date(value: object, where: str) -> date:
    try:
        return date.fromisoformat(str(value))
    except ValueError:
        raise LineUnusable(f"{where} is not a date such as 2026-03-02.") from None
