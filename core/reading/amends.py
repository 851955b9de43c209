"""Corrections of the set logged last: "sorry 12 not 11", "that was 14kg", "meant lbs not kg"."""

from __future__ import annotations

from dataclasses import replace
from decimal import ROUND_FLOOR, Decimal
from typing import TYPE_CHECKING

from core.reading.acts import Amend, Awaiting, Context, Log
from core.reading.assembly import MOST_LOAD, MOST_REPS, Open
from core.reading.sets import SIDES, logs
from core.units import Unit

if TYPE_CHECKING:
    from collections.abc import Sequence

    from core.reading.parts import Part

_NAMED = {
    "left",
    "left_side",
    "right",
    "each",
    "failure",
    "bodyweight",
    "duration",
    "reserve",
    "effort",
    "more",
}


def amend(parts: Sequence[Part], context: Context, *, about: str = "") -> Amend:
    """The correction that the parts say; raises `Open` when it is not settled what changes.

    `about` says that the words name the "load", the "rpe" or the "reserve", so that a bare number is one.
    """
    asked, context = context, of_the_last(context)
    said, rejected = _without_rejected(_as_loads(parts, context))
    if rejected and said and said[0].kind in {"at", "with", "at_sign"} and parts[0].kind == "not":
        raise Open  # "not 11 at 20kg" denies the whole
    if rejected and [part.kind for part in said if part.kind != "comma"][:3] == ["at", "bare", "bare"]:
        raise Open  # "tea at four, 12 not 11"
    if [part.kind for part in said] == ["at", "bare"] and not about:
        raise Open  # "correction: lunch is at 12"
    numbers = [part for part in said if part.numbers]
    named = [part for part in said if part.kind in _NAMED]
    if not numbers and not named:
        return _unit_only(said)
    if len(numbers) == 1 and numbers[0].kind == "bare" and (not named or [part.kind for part in named] == ["left"]):
        if named:
            return Amend(reserve=numbers[0].numbers[0])
        if about:
            return _with_unit(_named_amend(about, numbers[0].numbers[0]), parts)
        if asked.hold != context.hold and not rejected:
            raise Open  # "sorry, 40": how long the hold was, or how many before it?
        return _with_unit(_bare(numbers[0].numbers[0], rejected, context), parts)
    if not numbers and len(named) == 1 and named[0].kind in {"left", "left_side", "right", "each"}:
        return Amend(side=SIDES[named[0].kind])
    if _names_what_was(said, context):
        if [part.kind for part in said] == ["bare", "bare"]:
            return _bare(numbers[0].numbers[0], [*rejected, numbers[1].numbers[0]], context)
        raise Open  # "sorry 9 nit 8": a slip of "not", or of "at"
    awaited = replace(context, awaiting=Awaiting.REPS)
    sets = logs(said, awaited)
    if len(sets) != 1 or sets[0].same:
        raise Open
    return _with_unit(_without_known(_from_log(sets[0]), context), parts)


def of_the_last(context: Context) -> Context:
    """The context for what is said of the set logged last: it was counted, or held, whatever is asked for by now."""
    last = context.last
    known = last is not None and (last.reps, last.seconds) != (None, None)
    return replace(context, hold=last is not None and last.reps is None) if known else context


def _with_unit(change: Amend, parts: Sequence[Part]) -> Amend:
    """The change of a load with the unit that was said with the load given up: "weight was 12 not 10 kg"."""
    rejected = next((at for at, part in enumerate(parts) if part.kind == "not"), 0)
    first = next((at for at, part in enumerate(parts) if part.numbers), rejected)
    unit = next((part.unit for part in parts[rejected:] if part.unit is not None), None) if first < rejected else None
    return replace(change, unit=unit) if change.load is not None and change.unit is None else change


def _without_known(change: Amend, context: Context) -> Amend:
    """The change without the reps or the side that only name the record: "twelve was both sides", "left side was 11"."""
    last = context.last
    if last is not None and change.side is not None and change.side is last.side and (change.reps, change.load) != (None, None):
        change = replace(change, side=None)
    others = change.side is not None or change.reserve is not None or change.rpe is not None
    named = context.last is not None and change.reps == context.last.reps and change.load is None
    if context.last is not None and change.side is not None and change.side == context.last.side and change.reps is not None:
        return replace(change, side=None)  # "left side was 11", of the left
    return replace(change, reps=None) if named and others else change


def _as_loads(parts: Sequence[Part], context: Context) -> Sequence[Part]:
    """The parts with seconds as loads where one is the load of the last record: "that was 45s not 40s"."""
    last = context.last
    if last is None or last.load is None:
        return parts
    lasting = [part for part in parts if part.kind == "duration"]
    if len(lasting) < len(("45s", "40s")) or all(part.numbers[0] != last.load for part in lasting):
        return parts
    return [replace(part, kind="load") if part in lasting else part for part in parts]


def _names_what_was(said: Sequence[Part], context: Context) -> bool:
    """Whether two bare numbers end with the reps of the last record, which is no load that is known."""
    if context.last is None or [part.kind for part in said if part.kind != "at"] != ["bare", "bare"]:
        return False
    first, second = (part.numbers[0] for part in said if part.kind == "bare")
    return second == context.last.reps and second not in {first, context.load, context.last.load}


def _named_amend(about: str, value: Decimal) -> Amend:
    """The correction of the one field that the words name."""
    if about == "load":
        return Amend(load=value)
    return Amend(rpe=value) if about == "rpe" else Amend(reserve=value)


def _unit_only(said: Sequence[Part]) -> Amend:
    units = {part.unit for part in said if part.kind == "unit_only"} - {None}
    if len(units) != 1:
        raise Open
    return Amend(unit=units.pop())


def _from_log(log: Log) -> Amend:
    return Amend(log.reps, log.load, log.unit, log.side, log.reserve, log.rpe, log.seconds)


def _without_rejected(parts: Sequence[Part]) -> tuple[list[Part], list[Decimal]]:
    """The parts without the quantity after "not", and its number."""
    said: list[Part] = []
    rejected: list[Decimal] = []
    after_not = False
    parts = _without_full_rejected(parts)
    for part in parts:
        if part.kind == "not":
            after_not = True
        elif after_not and part.kind == "duration":
            rejected += [Decimal(-1)]
            after_not = False
        elif after_not and (part.numbers or part.kind in _NAMED or part.kind == "unit_only"):
            rejected += part.numbers
            after_not = False
        else:
            said.append(part)
    return said, rejected


def _without_full_rejected(parts: Sequence[Part]) -> Sequence[Part]:
    """The parts without the load in "9 at 24kg, not 11 at 20kg": what is given up was told in full, like what is meant."""
    kinds = [part.kind for part in parts]
    if "not" not in kinds:
        return parts
    at = kinds.index("not")
    told = sum(kind in {"bare", "reps", "load"} for kind in kinds[:at]) > 1
    rejected = kinds[at + 1 : at + 4]
    full = (
        told
        and len(rejected) == len(("10", "at", "8kg"))
        and rejected[0] in {"bare", "reps"}
        and rejected[1] in {"at", "at_sign", "with", "by"}
        and rejected[2] in {"load", "bare"}
    )
    return [*parts[: at + 2], *parts[at + 4 :]] if full else parts


def _bare(value: Decimal, rejected: list[Decimal], context: Context) -> Amend:
    """A bare number corrects the reps, unless what it replaces was the load."""
    last = context.last
    if rejected == [Decimal(-1)]:
        return Amend(seconds=int(value))  # "40 not 50 seconds"
    if value > MOST_LOAD[context.unit or Unit.KG]:
        raise Open
    if value % 1:
        return Amend(load=value)
    reps = int(value.to_integral_value(ROUND_FLOOR))
    if rejected and last is not None and last.load == rejected[0] and last.reps != rejected[0]:
        return Amend(load=value, rejected=rejected[0])
    if reps > MOST_REPS:
        raise Open
    wrong = rejected[0] if rejected else None
    held = context.hold and (wrong is None or last is None or last.seconds in {None, wrong})
    return Amend(seconds=reps) if held else Amend(reps=reps, rejected=wrong)
