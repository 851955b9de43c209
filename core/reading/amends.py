"""Corrections of the set logged last: "sorry 12 not 11", "that was 14kg", "*12"."""

from __future__ import annotations

from decimal import ROUND_FLOOR, Decimal
from typing import TYPE_CHECKING

from core.reading.acts import Amend, Awaiting, Context, Log
from core.reading.sets import MOST_REPS, Open, logs

if TYPE_CHECKING:
    from collections.abc import Sequence

    from core.reading.quantities import Part


def amend(parts: Sequence[Part], context: Context) -> Amend:
    """The correction that the parts say; raises `Open` when it is not settled what changes."""
    said, rejected = _without_rejected(parts)
    numbers = [part for part in said if part.numbers]
    if len(numbers) == 1 and numbers[0].kind == "bare" and not _names_more(said):
        return _bare(numbers[0].numbers[0], rejected, context)
    sets = logs(
        said,
        Context(
            unit=context.unit,
            load=context.load,
            sides=context.sides,
            awaiting=Awaiting.REPS,
            hold=context.hold,
        ),
    )
    if len(sets) != 1 or sets[0].same:
        raise Open
    return _from_log(sets[0])


def _names_more(parts: Sequence[Part]) -> bool:
    return any(part.kind in {"left", "right", "each", "failure", "bodyweight", "duration"} for part in parts)


def _from_log(log: Log) -> Amend:
    return Amend(log.reps, log.load, log.unit, log.side, log.reserve, log.rpe, log.seconds)


def _without_rejected(parts: Sequence[Part]) -> tuple[list[Part], list[Decimal]]:
    """The parts without the number after "not", and that number."""
    said: list[Part] = []
    rejected: list[Decimal] = []
    after_not = False
    for part in parts:
        if part.kind == "not":
            after_not = True
        elif part.numbers and after_not:
            rejected += part.numbers
            after_not = False
        else:
            said.append(part)
    return said, rejected


def _bare(value: Decimal, rejected: list[Decimal], context: Context) -> Amend:
    """A bare number corrects the reps, unless what it replaces was the load."""
    last = context.last
    if value % 1:
        if value % 1 == Decimal("0.5") and last is None:
            return Amend(load=value)
        return Amend(load=value)
    reps = int(value.to_integral_value(ROUND_FLOOR))
    if rejected and last is not None and last.load == rejected[0] and last.reps != rejected[0]:
        return Amend(load=value)
    if reps > MOST_REPS:
        raise Open
    if context.hold:
        return Amend(seconds=reps)
    return Amend(reps=reps)
