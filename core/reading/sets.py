"""Quantities become sets: which number is the reps and which the load, and what belongs to which set.

The order of the steps matters. First what two numbers say together ("3x10 at 20kg", "the pair of 16s"), then what each bare
number is, then which load, side and reserve go with which reps. Whatever stays open makes the whole statement unclear:
`None`, never a guess.
"""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from itertools import pairwise
from typing import TYPE_CHECKING

from core.reading import scopes
from core.reading.acts import Context, Log, Side
from core.reading.assembly import TWO, Open, Quantity, assemble, checked
from core.reading.set_notation import are_groups, loads_in_turn, notation
from core.reading.settling import JOINTS, SMALL, has_reps, settle_bare, settle_pairs

if TYPE_CHECKING:
    from collections.abc import Sequence

    from core.reading.parts import Part
    from core.units import Unit

_MOST_SHORT_RESERVE = Decimal(6)
SIDES = {"left": Side.LEFT, "left_side": Side.LEFT, "right": Side.RIGHT, "each": Side.EACH}
_HAVING = frozenset({"had", "has", "having", "got"})
_DENYING = frozenset({"not", "never", "no", "unable"})
_ABLE = frozenset({"can", "could", "able", "unable"})
_LEADING_LINKS = frozenset({"at", "at_sign", "with", "for", "in", "of", "by"})
_SOFT = {"reserve", "effort", "failure", "more", "left"}
_COUNTED = {"bare", "reps", "duration", "same", "set_count", "either", "reserve", "effort", "failure", "more"}


def logs(parts: Sequence[Part], context: Context) -> tuple[Log, ...]:
    """The sets that the parts of a message say; raises `Open` when that is not settled."""
    covering = _covering_unit(parts)
    if covering is not None:
        parts = [part for part in parts if part.kind != "unit_only"]
    items = _items(parts)
    if not items:
        return ()
    units = {part.unit for part in parts if part.kind == "load"}
    loose_unit = any(part.kind == "unit_only" and part.unit not in units for part in parts)
    crossed = any(
        one.numbers and part.kind == "by" and after.kind in {"break", "comma", "and"} and not after.dropped
        for one, part, after in zip(parts, parts[1:], parts[2:], strict=False)
    )
    denied = any(part.kind == "not" and after.numbers for part, after in pairwise(parts))  # "12 at 20kg instead of 15"
    of_several = any(  # "3 of 5 sets at 14kg": how many of each?
        one.kind == "bare" and part.kind == "of" and after.kind == "set_count"
        for one, part, after in zip(parts, parts[1:], parts[2:], strict=False)
    )
    again = parts[-1].kind == "label" and any(part.kind == "same" for part in parts) and any(part.numbers for part in parts)
    if (
        again
        or denied
        or of_several
        or _names_a_set_alone(parts)
        or parts[-1].kind in {"by", "at", "at_sign"}
        or crossed
        or loose_unit
    ):
        raise Open  # a load was said whose number was not read
    items = _once_a_side(_reserves(items, context))
    items = scopes.mirrored(items)
    scopes.lead(items)
    items, repeats = notation(items, sided=context.sides)
    of_one = [item for item in items if item.scope is not None] if repeats > 1 else []
    if repeats > 1 and sum(item.kind in {"bare", "reps", "seconds"} for item in items) > 1 and not are_groups(items):
        raise Open  # "5x5, last set 4"
    items = [item for item in items if item not in of_one]
    loads_in_turn(items)
    settle_pairs(items, context)
    settle_bare(items, context)
    items = scopes.sided(items, sum(item.kind == "reps" for item in items))
    sets = assemble(items, context)
    if covering is not None:
        sets = [one if one.load is None or one.unit is not None else replace(one, unit=covering) for one in sets]
    named = {scopes.scope_of(part) for part in parts if part.kind == "label"} - {None, -1}
    if any(part.kind == "set_count" for part in parts) and any(nth is not None and nth >= len(sets) > 1 for nth in named):
        raise Open  # "two sets of ten, third one eight"
    if len(named) > max(len(sets), 1):
        raise Open  # "first set 11, second set 10, third set aye": the third was told as well
    if of_one and len(sets) == 1:
        sets = scopes.repeated(sets[0], repeats, of_one)
        repeats = 1
    counts = [item for item in items if item.kind == "reps"]
    if len(counts) == len(sets) > 1 and repeats > 1:
        return tuple(checked(one, context) for one, count in zip(sets, counts, strict=True) for _ in range(count.repeats))
    return tuple(checked(one, context) for one in sets for _ in range(repeats))


def _covering_unit(parts: Sequence[Part]) -> Unit | None:
    """The unit that is said at last for every load before it: "12 at 20, 10 at 22.5, all kilos"."""
    told = [part for part in parts if part.kind == "unit_only"]
    at = parts.index(told[0]) if told else 0
    lead = parts[at - 1].dropped if at and parts[at - 1].kind == "in" else frozenset()  # "all in kilos"
    gathers = (
        len(told) == 1 and {"all", "both"} & (told[0].dropped | lead) and all(part.kind == "break" for part in parts[at + 1 :])
    )
    return told[0].unit if gathers and not any(part.kind == "load" for part in parts) else None


def _names_a_set_alone(parts: Sequence[Part]) -> bool:
    """Whether one of several sets is named and not counted: "set 1 was 12, set 2 was 12, set 3 I skipped"."""
    labels = [at for at, part in enumerate(parts) if part.kind == "label" and not (at and parts[at - 1].kind in _SOFT)]
    counted = [at for at, part in enumerate(parts) if part.kind in _COUNTED]
    if len(labels) < TWO or not counted or counted[0] < labels[0]:
        return False
    ends = [*labels[1:], len(parts)]
    return any(
        not any(label < at < end for at in counted) and (end == len(parts) or parts[end - 1].kind in JOINTS - {"label"})
        for label, end in zip(labels, ends, strict=True)
    )


def _items(parts: Sequence[Part]) -> list[Quantity]:
    """Quantities with their links; labels and words that only introduce fall away."""
    items: list[Quantity] = []
    links: list[str] = []
    flags: set[str] = set()
    dropped: frozenset[str] = frozenset()
    scope: int | None = None
    for at, part in enumerate(parts):
        item = _item(part)
        if part.dropped - SMALL:
            links = [link for link in links if link not in _LEADING_LINKS]  # "sweat in my eyes 11"
        if part.kind in {"could", "held"}:
            flags.add(part.kind)
        elif part.kind == "hands":
            if "with" in links:
                links.remove("with")  # "11 with both dumbbells at 7kg"
            elif items and items[-1].kind == "load":
                items[-1].flags.add("hands")
            elif items and items[-1].kind == "bare":
                (flags if _is_of_next_load(parts, at) else items[-1].flags).add("per hand")
        elif part.kind == "label" and (about := scopes.judged(parts, at, items)) is not None:
            about.scope = scopes.scope_of(part)
        elif part.kind == "label":
            if links[-1:] == ["with"]:
                links.pop()  # "12 on first set and on next set 10"
            links.append("label")
            scope = scopes.scope_of(part)
        elif item is None:
            if part.word == "then":
                flags.add("then")
            if part.kind in {"comma", "break"}:
                links = [link for link in links if link not in _LEADING_LINKS]  # "the radio is on, 20x11"
            if part.kind != "with" or not _leads_to_a_set(parts, at):
                links.append(part.kind)
        else:
            if part.kind == "failure" and scopes.LAST & set(part.word.split()):
                scope = -1  # "failed on the last one"
            item.links, item.flags, item.dropped = tuple(links), item.flags | flags, dropped | part.dropped
            item.scope, scope = (scope if item.kind in {"reserve", "effort", "more"} or _is_left_over(parts, at) else None), None
            if part.kind == "left":
                item.flags = item.flags | {"suffix"}
            items.append(item)
            links, flags, dropped = [], set(), frozenset()
            continue
        dropped |= part.dropped
    return items


def _leads_to_a_set(parts: Sequence[Part], at: int) -> bool:
    """Whether "with" stands before a count that has its own load: "warmed up with 12 at 10kg"."""
    following = parts[at + 1 : at + 4]
    return [part.kind for part in following] in [[count, "at", "load"] for count in ("bare", "reps")]


def _is_of_next_load(parts: Sequence[Part], at: int) -> bool:
    """Whether the hands at `at` are those that held the load after them: "15 then 12, each hand had 5kg"."""
    following = next((part for part in parts[at + 1 : at + 3] if part.kind != "held"), None)
    if following is None or following.kind not in {"load", "bare"}:
        return False
    held = bool(following.dropped & _HAVING) or parts[at + 1].kind == "held"
    return held or (following.kind == "load" and parts[at - 1].kind in {"comma", "break", "dash"})


def _is_left_over(parts: Sequence[Part], at: int) -> bool:
    """Whether the number at `at` is what was "left" of a set that is named before it: "last set 0 left"."""
    return parts[at].kind == "bare" and at + 1 < len(parts) and parts[at + 1].kind == "left"


def _item(part: Part) -> Quantity | None:
    """The quantity of one part, None for a link."""
    kind, number = part.kind, part.numbers[0] if part.numbers else Decimal(0)
    if kind in {"bare", "reps", "load", "effort", "more", "either"}:
        if kind in {"either", "more"} and len(part.numbers) > 1:
            return Quantity(kind, sum(part.numbers, Decimal(0)) / 2, at=part.at)
        return Quantity(kind, number, part.unit, at=part.at)
    if kind == "reserve":
        return Quantity(kind, sum(part.numbers, Decimal(0)) / max(len(part.numbers), 1), at=part.at)
    if kind == "duration":
        return Quantity("seconds", number, at=part.at)
    if kind in SIDES:
        return Quantity("side", side=SIDES[kind], at=part.at, word=part.word)
    if kind == "failure":
        return Quantity("reserve", at=part.at)
    if kind == "bodyweight":
        return Quantity("load", at=part.at, flags={"bodyweight"})
    if kind == "same":
        return Quantity("same", at=part.at, word=part.word)
    if kind == "set_count":
        return Quantity("sets", number, at=part.at)
    return None


def _reserves(items: list[Quantity], context: Context) -> list[Quantity]:
    """Such as "2 left" and "2 more" become reserve where another number is the reps; "10 left 9 right" stays sides."""
    has_right = any(item.side is Side.RIGHT for item in items)
    lefts = sum(item.side is Side.LEFT for item in items)
    after_counts = sum(item.side is Side.LEFT and "suffix" in item.flags for item in items)
    rights = sum(item.side is Side.RIGHT for item in items)
    first = next((item for item in items if item.kind == "side"), None)
    each_told = lefts == 1 or lefts == after_counts == rights
    # "12 left 11 right. Left side had 1 in reserve"
    each_told |= after_counts == rights == 1 and first is not None and "suffix" in first.flags
    kept: list[Quantity] = []
    for i, item in enumerate(items):
        if item.side is Side.LEFT and "suffix" in item.flags and kept and not item.links:
            before = kept[-1]
            if before.kind in {"either", "more"}:
                kept[-1] = replace(before, kind="reserve")
            elif before.kind not in {"bare", "reps"} or (has_right and each_told):
                kept.append(item)
            elif has_reps(items, i - 1) or "could" in before.flags:
                if before.value > _MOST_SHORT_RESERVE:
                    raise Open
                kept[-1] = replace(before, kind="reserve")
            elif context.sides:
                kept.append(item)
            else:
                raise Open
        elif item.kind == "more" and item.dropped & _DENYING and has_reps(items, i):
            if item.value != 1 or not item.dropped & _ABLE:
                raise Open
            kept.append(replace(item, kind="reserve", value=Decimal(0)))  # "I no fit add one more"
        elif item.kind == "more" or (item.kind in {"either", "bare"} and "could" in item.flags):
            if item.value > _MOST_SHORT_RESERVE:
                raise Open
            compared = any(other.kind == "same" for other in items)
            if compared or (not has_reps(items, i) and not ("could" in item.flags and item.kind == "more")):
                raise Open
            kept.append(replace(item, kind="reserve"))
        else:
            kept.append(item)
    if any(item.kind == "either" for item in kept):
        raise Open
    return kept


def _once_a_side(items: list[Quantity]) -> list[Quantity]:
    """The quantities with "8/8 per side" as 8 a side."""
    for one, other, side in zip(items, items[1:], items[2:], strict=False):
        same = one.kind == other.kind == "bare" and one.value == other.value and other.linked("slash")
        if same and side.side is Side.EACH and not any(item.side in {Side.LEFT, Side.RIGHT} for item in items):
            return [item for item in items if item is not other]
    return items
