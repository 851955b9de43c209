"""Which set a reserve or an effort is about when that is said: "3x8, last one 0 rir", "8 left, 8 right, failed on the right"."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise
from typing import TYPE_CHECKING

from core.reading.acts import Log, Side
from core.reading.assembly import Open, Quantity

if TYPE_CHECKING:
    from collections.abc import Sequence

    from core.reading.parts import Part

_ORDINALS = {"first": 0, "1st": 0, "second": 1, "2nd": 1, "third": 2, "3rd": 2, "fourth": 3, "4th": 3, "fifth": 4, "5th": 4}
LAST = frozenset({"last", "final"})
"""Words for the set that was done last."""

_OF_BOTH = frozenset({"each", "on both", "on each"})
_OF_SETS = frozenset({"all", "set", "sets", "round", "rounds"})
_JUDGED = frozenset({"reserve", "effort"})
_SOFT = frozenset({"reserve", "effort", "more", "left", "failure"})


def scope_of(label: Part) -> int | None:
    """The index of the set that a label names, from the end when negative; None when it names none."""
    if label.numbers:
        return int(label.numbers[0]) - 1
    words = label.word.split()
    if LAST & set(words):
        return -1
    return next((_ORDINALS[word] for word in words if word in _ORDINALS), None)


def judged(parts: Sequence[Part], at: int, items: Sequence[Quantity]) -> Quantity | None:
    """The reserve that the label at `at` is about when it stands after it: "0 rir on the last set", not "1 rir, second set 8"."""
    if not items or (at + 1 < len(parts) and parts[at + 1].kind not in {"comma", "break", "and"}):
        return None
    left_over = items[-1].side is Side.LEFT and parts[at - 1].kind == "left" and len(items) > 1
    about = items[-2] if left_over else items[-1]
    beside = parts[at - 1].kind in _SOFT
    return about if beside and about.scope is None and (left_over or about.kind in _JUDGED | {"more"}) else None


def lead(items: Sequence[Quantity]) -> None:
    """Note the set of each reserve that "last" alone stands before: "4x5 26kg, last 0 left"."""
    counts = sum(item.kind in {"bare", "reps"} for item in items)
    for item in items:
        if item.kind in _JUDGED and item.scope is None and item.dropped & LAST and not item.dropped & {"rep", "reps"}:
            item.scope = -1
        if item.kind in _JUDGED and item.scope is None and item.dropped & {"both", "each"} and counts > 1 and item is items[-1]:
            item.every = True  # "left: 11, right: 11, both to failure", but "35lb for both, 2 left on the second"


def mirrored(items: list[Quantity]) -> list[Quantity]:
    """The quantities with a side that was "the same" given the count of the other: "left 9, right same"."""
    counts = [item for item in items if item.kind in {"bare", "reps", "seconds"}]
    sides = [item for item in items if item.kind == "side"]
    same = [item for item in items if item.kind == "same"]
    if (
        len(counts) != 1
        or len(same) != 1
        or {side.side for side in sides} != {Side.LEFT, Side.RIGHT}
        or len(sides) != len(counts) + 1
    ):
        return items
    if same[0].at < counts[0].at or abs(items.index(same[0]) - items.index(sides[1])) != 1:
        return items
    kept = [item for item in items if item is not same[0]]
    led = items.index(sides[0]) < items.index(counts[0])
    place = kept.index(sides[1]) + led
    twin = replace(counts[0], at=sides[1].at + (1 if led else -1), links=("comma",), dropped=frozenset(), flags=set())
    return [*kept[:place], twin, *kept[place:]]


def sided(items: list[Quantity], counts: int) -> list[Quantity]:
    """The quantities without the sides that only say which set a reserve is about, which is noted there."""
    items = _without_of_sets(items)
    sides = [item for item in items if item.kind == "side"]
    spare = len(sides) - counts
    told = {item.side for item in sides}
    if counts < len((Side.LEFT, Side.RIGHT)):
        return items
    kept = [item for at, item in enumerate(items) if not (told >= {Side.LEFT, Side.RIGHT} and _is_of_load(items, at))]
    spare -= len(items) - len(kept)
    for at, item in enumerate(items):
        if item.kind not in _JUDGED or item.of_side is not None:
            continue
        after = items[at + 1] if at + 1 < len(items) else None
        before = items[at - 1] if at else None
        if after is not None and after.side is Side.EACH and (after.word in _OF_BOTH or told >= {Side.LEFT, Side.RIGHT}):
            item.every = True
            kept.remove(after)
            continue
        if spare <= 0:
            continue
        about = next(
            (
                one
                for one in (after, before)
                if one is not None and one.kind == "side" and one.side is not Side.EACH and one in kept
            ),
            None,
        )
        if about is not None and {Side.LEFT, Side.RIGHT} <= {other.side for other in kept if other is not about}:
            item.of_side, spare = about.side, spare - 1
            kept.remove(about)
    return kept


def _without_of_sets(items: list[Quantity]) -> list[Quantity]:
    """The quantities without an "on all" or "every set", which makes a reserve right before it one of every set."""
    after_effort = {id(after) for item, after in pairwise(items) if item.kind == "effort" and after.word in _OF_BOTH | {"both"}}
    kept = [
        item for item in items if not (item.side is Side.EACH and (_OF_SETS & set(item.word.split()) or id(item) in after_effort))
    ]
    for item, after in pairwise(items):
        if item.kind in _JUDGED and after not in kept:
            item.every = True
    return kept


def _is_of_load(items: Sequence[Quantity], at: int) -> bool:
    """Whether "each" or "both" goes with the load after it: "left 12, right 12, each with 16kg"."""
    after = items[at + 1] if at + 1 < len(items) else None
    if at and items[at - 1].kind == "load" and items[at].side is Side.EACH and items[at].word.startswith("both"):
        return True  # "12kg both sides: left 10, right 9"
    return (
        items[at].word in {"each", "both"} and after is not None and after.kind == "load" and after.linked("with", "at", "at_sign")
    )


def repeated(log: Log, repeats: int, about: Sequence[Quantity]) -> list[Log]:
    """So many equal sets, each with the reserve or the effort that is said of it."""
    sets = [log] * repeats
    for item in about:
        at = item.scope or 0
        if not -repeats <= at < repeats:
            raise Open
        sets[at] = replace(sets[at], reserve=item.value) if item.kind == "reserve" else replace(sets[at], rpe=item.value)
    return sets
