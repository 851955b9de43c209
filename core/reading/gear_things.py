"""Things to lift as they are put together, and what a whole list of them says of each: kinds, units, counts."""

from __future__ import annotations

from dataclasses import dataclass, field
from decimal import Decimal
from itertools import pairwise
from typing import TYPE_CHECKING

from core.reading.acts import Have, Item
from core.reading.assembly import MOST_LOAD
from core.units import Unit

if TYPE_CHECKING:
    from collections.abc import Sequence

_PAIR = 2


@dataclass(slots=True)
class Thing:
    """An item being put together; `paired` until a kind is said makes it dumbbells, `closed` keeps later kinds from it."""

    load: Decimal | None = None
    unit: Unit | None = None
    count: int | None = None
    kind: str | None = None
    paired: bool = False
    closed: bool = False
    plural: bool = False


@dataclass(slots=True)
class Lead:
    """A kind that goes before its loads, with the number of things or pairs said with it."""

    kind: str
    holder: Thing
    count: int | None = None
    pairs: bool = False
    taken: list[Thing] = field(default_factory=list)


def have(things: Sequence[Thing], leads: Sequence[Lead], paired_from: Sequence[tuple[int, int]], unit: Unit | None) -> Have | None:
    """What was listed; None when a load has no place or nobody lifts it.

    `paired_from` tells where a number of pairs was said, `unit` the unit that stands apart for all loads.
    """
    for lead in leads:
        _share_count(lead)
    _count_pairs(things, paired_from)
    units = ({thing.unit for thing in things} | {unit}) - {None}
    loads = [thing for thing in things if thing.load is not None]
    if any(
        one.unit is not None and other.unit is None and not (other.kind or other.plural or other.paired)
        for one, other in pairwise(loads)
    ):
        return None  # "10kg pair, 13": the last number is no load
    for thing in things:
        thing.kind = thing.kind or ("dumbbell" if thing.paired else None)
    kinds = {thing.kind for thing in loads} - {None, "barbell", "handle", "bench"}
    barred = any(thing.kind in {"barbell", "handle"} for thing in things)
    alone = kinds == {"kettlebell"} and all(thing.count == 1 for thing in loads if thing.kind)  # "one 16kg kettlebell and 8s"
    for thing in loads:
        if len(units) == 1:
            thing.unit = next(iter(units))
        if thing.kind is None and len(kinds) == 1:
            thing.kind = "dumbbell" if thing.plural and alone else next(iter(kinds))
        if thing.kind is None and barred:
            return None  # "a 20kg barbell, two 5s": they may be plates
        if thing.load is not None and not 0 < thing.load <= MOST_LOAD[thing.unit or Unit.KG]:
            return None
    named = {thing.kind for thing in loads}
    if things and things[0].load is None and things[0].count is None and things[0].kind in named:
        things = things[1:]  # "found my dumbbells, I have 4kg and 6kg dumbbells"
    return Have(tuple(Item(thing.kind, thing.load, thing.unit, thing.count) for thing in things))


def _count_pairs(things: Sequence[Thing], paired_from: Sequence[tuple[int, int]]) -> None:
    """Two pairs of one load are four things; two pairs of two loads are a pair of each."""
    for begin, pairs in paired_from:
        group = [thing for thing in things[begin:] if thing.load is not None]
        alone = len(group) == 1 or (len(group) > 1 and not group[1].paired)
        if group and alone and group[0].paired and group[0].count == _PAIR:
            group[0].count = 2 * pairs


def _share_count(lead: Lead) -> None:
    """Give the loads that a kind leads to the number said with it: "two dumbbells of 8", "two pairs of dumbbells: 8 and 12"."""
    lead.taken = [thing for thing in lead.taken if thing.kind == lead.kind]  # "two kettlebells of 16 and a pair of 10 kg dumbbells"
    if not lead.taken or lead.count is None:
        return
    if any(thing.count is not None and not thing.paired for thing in lead.taken):
        lead.taken[0].count = lead.taken[0].count or lead.count
        return
    if lead.pairs:
        if len(lead.taken) == 1:
            lead.taken[0].count = 2 * lead.count
    elif len(lead.taken) == 1:
        lead.taken[0].count = lead.count
    elif len(lead.taken) == lead.count:
        for thing in lead.taken:
            thing.count = 1
    elif lead.count == 1:
        lead.taken[0].count = 1
