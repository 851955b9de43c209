"""How many sets a message writes at once: "3x10 at 20kg", "2 sets of 12 then 1 of 10", "3 rounds: 10, 9 and 8"."""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING

from core.reading.acts import Side
from core.reading.assembly import TWO, Open, Quantity
from core.reading.lexicon import listed

if TYPE_CHECKING:
    from collections.abc import Sequence
    from decimal import Decimal

_MOST_SETS = 8
_MOST_BESIDE = 10
"""What is crossed with so many reps by name and is more than this is a load."""

_FEWEST_IN_TURN = 3
_FEWEST_CROSSED = 5
_ENDING = listed("words_sets", "stopping") | listed("words_company", "ending")
"""Words that say a set ended, at the number after them."""


def notation(items: list[Quantity], *, sided: bool = False) -> tuple[list[Quantity], int]:
    """Such as "3x10 at 20kg" and "3 sets of 10" are so many equal sets; "2x16kg" is a pair.

    `sided` says that "each" may be each side; "3 sets, 12 each" else tells of the sets.
    """
    for at, item in enumerate(items):
        if at and item.kind == "bare" and item.linked("by") and TWO <= item.value <= _MOST_SETS and _is_told(items, at - 1):
            item.kind = "sets"  # "8 each side x 3", "10 reps x 3 at 16kg"
    sets = [item for item in items if item.kind == "sets"]
    if sets:
        return _counted_sets(items, sets, sided=sided)
    for item, following in pairwise(items):
        if _is_pair(item, following):
            following.links = item.links
            return [other for other in items if other is not item], 1
    for i, (item, following) in enumerate(pairwise(items)):
        third = items[i + 2] if i + 2 < len(items) else None
        if _is_crossed(items, item, following, third):
            if item.value > _MOST_BESIDE and following.kind == "reps" and len(items) == TWO:
                item.kind, following.links = "load", ()
                return items, 1  # "20 x 11 reps"
            if not TWO <= item.value <= _MOST_SETS or item.value > following.value or following.value < _FEWEST_CROSSED:
                raise Open
            following.kind, following.links = "reps", item.links
            if third is not None and third.kind == "bare" and third.linked("by"):
                third.kind = "load"
            following.repeats = _repeats(item.value)
            rest = [other for other in items if other is not item]
            if i + 1 < len(rest) and any(other.kind == "bare" and other.linked("by") for other in rest[i + 1 :]):
                rest = [*rest[: i + 1], *notation(rest[i + 1 :])[0]]
            return rest, following.repeats
    return items, 1


def _is_told(items: Sequence[Quantity], at: int) -> bool:
    """Whether the one count of a message ends at `at`, by name or with its sides, and its load has a unit."""
    counts = [item for item in items[: at + 1] if item.kind in {"bare", "reps"}]
    loaded = any(item.kind == "load" and item.unit is not None for item in items)
    each = items[at].kind == "side" and items[at].side is Side.EACH
    return len(counts) == 1 and (each or (items[at].kind == "reps" and loaded))


def _after_a_dash(items: Sequence[Quantity], last: int) -> int | None:
    """Where loads begin after a dash in a list of counts and as many loads: "10,9,8 - 16,16,14kg"; None in any other list."""
    dashed = [at for at in range(1, last + 1) if items[at].linked("dash")]
    listed = all(items[at].linked("comma", "slash") for at in range(1, last + 1) if at not in dashed)
    if len(dashed) != 1 or dashed == [last] or not listed or last < _FEWEST_IN_TURN:
        return None
    if dashed[0] * len(("count", "load")) != last + 1:
        raise Open  # "10, 9, 8 - 16, 14 kg"
    return dashed[0]


def loads_in_turn(items: Sequence[Quantity]) -> None:
    """Make loads of a list of numbers that ends in one, in turn for the counts before it: "12/10/8 at 16/18/20kg"."""
    for last, load in enumerate(items):
        if load.kind != "load" or load.unit is None or "then" in load.flags or not load.linked("slash", "comma", "and", "dash"):
            continue
        first = last
        while first and items[first].linked("slash", "comma", "and", "dash") and items[first - 1].kind == "bare":
            first -= 1
        if load.linked("and") and not load.linked("at", "at_sign", "with") and last - first > 1 and not load.dropped:
            raise Open  # "12 and 10, 16 and 18 kg"
        first = _after_a_dash(items, last) or first
        failed = first > 0 and items[first - 1].kind == "reserve"  # "12, 10 and then failed at 7, 16kg"
        named = items[first].linked("at", "at_sign", "with", "dash") and first < last and not failed
        counts = [item for item in items[:first] if item.kind in {"bare", "reps"}]
        if not named or any(item.kind == "load" for item in items[:first]):
            continue
        if len(counts) != last - first + 1 and any(item.kind in {"bare", "reps"} for item in items[last:]):
            continue
        if not counts and first + 1 == last and items[first].dropped & _ENDING:
            continue  # "stopped at 9, 22.5kg"
        if len(counts) != last - first + 1:
            raise Open
        for item in items[first:last]:
            item.kind, item.unit = "load", load.unit


def are_groups(items: Sequence[Quantity]) -> bool:
    """Whether every count is so many sets, or follows those with a "then" and a load of its own: "3x10 at 20kg, then 8 at 24kg"."""
    counts = [item for item in items if item.kind in {"bare", "reps", "seconds"}]
    loads = sum(item.kind == "load" for item in items)
    own = loads in {1, len(counts)}
    return own and all(
        (item.repeats > 1 or "grouped" in item.flags or (loads == len(counts) and "then" in item.flags)) for item in counts
    )


def _counted_sets(items: list[Quantity], sets: list[Quantity], *, sided: bool) -> tuple[list[Quantity], int]:
    """Such as "3 rounds of 12", "12 reps x 2 sets", "three rounds: 10, 9 and 8"."""
    if len(sets) > 1:
        return _groups(items, sets)
    rest = [item for item in items if item is not sets[0] and (item.kind != "side" or item.word != "each" or sided)]
    counts = [item for item in rest if item.kind in {"bare", "reps", "seconds"}]
    repeats = _repeats(sets[0].value)
    if len(counts) == 1:
        if counts[0].kind == "bare":
            counts[0].kind = "reps"
        counts[0].links = ()
        return rest, repeats
    if len(counts) == repeats:
        for count in counts:
            count.kind = "reps" if count.kind == "bare" else count.kind
        return rest, 1
    raise Open


def _groups(items: list[Quantity], sets: list[Quantity]) -> tuple[list[Quantity], int]:
    """Such as "3 sets of 10 at 20kg, 2 sets of 8 at 24kg": each number of sets has its count right after it."""
    for item in sets:
        at = items.index(item)
        count = items[at + 1] if at + 1 < len(items) else None
        if count is None or count.kind not in {"bare", "reps"}:
            raise Open
        count.kind, count.links, count.repeats = "reps", item.links, _repeats(item.value)
        count.flags = count.flags | item.flags | {"then", "grouped"}
    rest = [item for item in items if item not in sets]
    return rest, max(item.repeats for item in rest)


def _is_pair(item: Quantity, following: Quantity) -> bool:
    """Whether "2x16kg" or "two 14kgs" is the pair of dumbbells and not two reps."""
    if item.kind != "bare" or item.value != TWO or following.kind != "load" or "bodyweight" in following.flags:
        return False
    led = item.linked("with", "by") or "held" in item.flags
    return following.linked("by") or (not following.links and (following.unit is None or led))


def _is_crossed(items: list[Quantity], item: Quantity, following: Quantity, third: Quantity | None) -> bool:
    """Whether "3x10" is sets by reps: both numbers beside a load, or named as reps, or the second crossed again."""
    if item.kind != "bare" or following.kind not in {"bare", "reps"} or not following.linked("by"):
        return False
    again = third is not None and third.kind == "bare" and third.linked("by")
    return any(other.kind == "load" for other in items) or following.kind == "reps" or again


def _repeats(value: Decimal) -> int:
    if value != value.to_integral_value() or not 1 <= value <= _MOST_SETS:
        raise Open
    return int(value)
