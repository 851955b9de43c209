"""Quantities become sets: which number is the reps and which the load, and what belongs to which set.

The order of the steps matters. First what two numbers say together ("3x10 at 20kg", "the pair of 16s"), then what each bare
number is, then which load, side and reserve go with which reps. Whatever stays open makes the whole statement unclear:
`None`, never a guess.
"""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from decimal import ROUND_FLOOR, Decimal
from itertools import pairwise
from typing import TYPE_CHECKING

from core.reading.acts import Awaiting, Context, Log, Side
from core.reading.lexicon import listed
from core.units import Unit

if TYPE_CHECKING:
    from collections.abc import Sequence

    from core.reading.quantities import Part

MOST_REPS = 199
MOST_LOAD = {Unit.KG: Decimal(200), Unit.LB: Decimal(440)}
MOST_RESERVE = Decimal(20)
MOST_SECONDS = 3600
MOST_SETS = 8
_MOST_SHORT_RESERVE = Decimal(6)
_TWO = Decimal(2)
_FEWEST_CROSSED = 5
_MOST_LISTED = 3
_MOST_BARE = Decimal(120)
_MOST_LONE_RESERVE = Decimal(5)
_EFFORT_UP_TO = Decimal(10)
SIDES = {"left": Side.LEFT, "left_side": Side.LEFT, "right": Side.RIGHT, "each": Side.EACH}
_STOPPING = listed("words_sets", "stopping")
_TELLING_TIME = (frozenset({"i", "am"}), frozenset({"until"}), frozenset({"till"}), frozenset({"til"}), frozenset({"since"}))
_JOINTS = {"comma", "and", "slash", "dash", "break", "label"}
_LISTING = listed("words_sets", "listing")
"""Words that may stand between two sets of one message."""


@dataclass(slots=True, eq=False)
class _Quantity:
    """A quantity on its way to a set; `link` is what stands between it and the one before."""

    kind: str  # bare, reps, load, reserve, effort, seconds, side, same, sets
    value: Decimal = Decimal(0)
    unit: Unit | None = None
    side: Side | None = None
    links: tuple[str, ...] = ()
    at: int = 0
    dropped: frozenset[str] = frozenset()
    flags: set[str] = field(default_factory=set)

    def linked(self, *names: str) -> bool:
        return any(name in self.links for name in names)


class Open(Exception):
    """The statement can mean more than one thing; `choices` are the likely ones."""

    def __init__(self, *choices: tuple[Log, ...]) -> None:
        super().__init__()
        self.choices = choices


def logs(parts: Sequence[Part], context: Context) -> tuple[Log, ...]:
    """The sets that the parts of a message say; raises `Open` when that is not settled."""
    items = _items(parts)
    if not items:
        return ()
    units = {part.unit for part in parts if part.kind == "load"}
    loose_unit = any(part.kind == "unit_only" and part.unit not in units for part in parts)
    if parts[-1].kind in {"by", "at", "at_sign"} or loose_unit:
        raise Open  # a load was said whose number was not read
    items = _reserves(items, context)
    items, repeats = _notation(items)
    _settle_pairs(items, context)
    _settle_bare(items, context)
    sets = _assemble(items, context)
    return tuple(_checked(one, context) for one in sets for _ in range(repeats))


def _items(parts: Sequence[Part]) -> list[_Quantity]:
    """Quantities with their links; labels and words that only introduce fall away."""
    items: list[_Quantity] = []
    links: list[str] = []
    flags: set[str] = set()
    dropped: frozenset[str] = frozenset()
    for part in parts:
        item = _item(part)
        if part.kind in {"could", "held"}:
            flags.add(part.kind)
        elif part.kind == "hands":
            if items and items[-1].kind == "load":
                items[-1].flags.add("hands")
            elif items and items[-1].kind == "bare":
                items[-1].flags.add("per hand")
        elif part.kind == "label":
            links.append("label")
        elif item is None:
            links.append(part.kind)
        else:
            item.links, item.flags, item.dropped = tuple(links), flags, dropped | part.dropped
            if part.kind == "left":
                item.flags = item.flags | {"suffix"}
            items.append(item)
            links, flags, dropped = [], set(), frozenset()
            continue
        dropped |= part.dropped
    return items


def _item(part: Part) -> _Quantity | None:
    """The quantity of one part, None for a link."""
    kind, number = part.kind, part.numbers[0] if part.numbers else Decimal(0)
    if kind in {"bare", "reps", "load", "effort", "more", "either"}:
        if kind in {"either", "more"} and len(part.numbers) > 1:
            return _Quantity(kind, sum(part.numbers, Decimal(0)) / 2, at=part.at)
        return _Quantity(kind, number, part.unit, at=part.at)
    if kind == "reserve":
        return _Quantity(kind, sum(part.numbers, Decimal(0)) / max(len(part.numbers), 1), at=part.at)
    if kind == "duration":
        return _Quantity("seconds", number, at=part.at)
    if kind in SIDES:
        return _Quantity("side", side=SIDES[kind], at=part.at)
    if kind == "failure":
        return _Quantity("reserve", at=part.at)
    if kind == "bodyweight":
        return _Quantity("load", at=part.at, flags={"bodyweight"})
    if kind == "same":
        return _Quantity("same", at=part.at)
    if kind == "set_count":
        return _Quantity("sets", number, at=part.at)
    return None


def _reserves(items: list[_Quantity], context: Context) -> list[_Quantity]:
    """Such as "2 left" and "2 more" become reserve where another number is the reps; "10 left 9 right" stays sides."""
    has_right = any(item.side is Side.RIGHT for item in items)
    lefts = sum(item.side is Side.LEFT for item in items)
    kept: list[_Quantity] = []
    for i, item in enumerate(items):
        if item.side is Side.LEFT and "suffix" in item.flags and kept and not item.links:
            before = kept[-1]
            if before.kind in {"either", "more"}:
                kept[-1] = replace(before, kind="reserve")
            elif before.kind not in {"bare", "reps"} or (has_right and lefts == 1):
                kept.append(item)
            elif _has_reps(items, i - 1) or "could" in before.flags:
                if before.value > _MOST_SHORT_RESERVE:
                    raise Open
                kept[-1] = replace(before, kind="reserve")
            elif context.sides:
                kept.append(item)
            else:
                raise Open
        elif item.kind == "more" or (item.kind in {"either", "bare"} and "could" in item.flags):
            if item.value > _MOST_SHORT_RESERVE:
                raise Open
            compared = any(other.kind == "same" for other in items)
            if compared or (not _has_reps(items, i) and not ("could" in item.flags and item.kind == "more")):
                raise Open
            kept.append(replace(item, kind="reserve"))
        else:
            kept.append(item)
    if any(item.kind == "either" for item in kept):
        raise Open
    return kept


def _has_reps(items: Sequence[_Quantity], skip: int) -> bool:
    """Whether another number than the one at `skip` can be the reps (or the seconds of a hold)."""
    return any(
        item.kind in {"reps", "bare", "seconds", "same"} for i, item in enumerate(items) if i != skip and item.kind != "either"
    )


def _notation(items: list[_Quantity]) -> tuple[list[_Quantity], int]:
    """Such as "3x10 at 20kg" and "3 sets of 10" are so many equal sets; "2x16kg" is a pair."""
    sets = [item for item in items if item.kind == "sets"]
    if sets:
        return _counted_sets(items, sets)
    for item, following in pairwise(items):
        if _is_pair(item, following):
            following.links = item.links
            return [other for other in items if other is not item], 1
    for i, (item, following) in enumerate(pairwise(items)):
        third = items[i + 2] if i + 2 < len(items) else None
        if _is_crossed(items, item, following, third):
            if not _TWO <= item.value <= MOST_SETS or item.value > following.value or following.value < _FEWEST_CROSSED:
                raise Open
            following.kind, following.links = "reps", item.links
            if third is not None and third.kind == "bare" and third.linked("by"):
                third.kind = "load"
            return [other for other in items if other is not item], _repeats(item.value)
    return items, 1


def _counted_sets(items: list[_Quantity], sets: list[_Quantity]) -> tuple[list[_Quantity], int]:
    """Such as "3 rounds of 12", "12 reps x 2 sets", "three rounds: 10, 9 and 8"."""
    if len(sets) > 1:
        raise Open
    rest = [item for item in items if item is not sets[0]]
    counts = [item for item in rest if item.kind in {"bare", "reps", "seconds"}]
    repeats = _repeats(sets[0].value)
    if len(counts) == 1:
        if counts[0].kind == "bare":
            counts[0].kind = "reps"
        counts[0].links = ()
        return rest, repeats
    if len(counts) == repeats:
        _become([count for count in counts if count.kind == "bare"], "reps")
        return rest, 1
    raise Open


def _is_pair(item: _Quantity, following: _Quantity) -> bool:
    """Whether "2x16kg" or "two 14kgs" is the pair of dumbbells and not two reps."""
    if item.kind != "bare" or item.value != _TWO or following.kind != "load" or "bodyweight" in following.flags:
        return False
    return following.linked("by") or (not following.links and (following.unit is None or item.linked("with", "by")))


def _is_crossed(items: list[_Quantity], item: _Quantity, following: _Quantity, third: _Quantity | None) -> bool:
    """Whether "3x10" is sets by reps: both numbers beside a load, or named as reps, or the second crossed again."""
    if item.kind != "bare" or following.kind not in {"bare", "reps"} or not following.linked("by"):
        return False
    again = third is not None and third.kind == "bare" and third.linked("by")
    return any(other.kind == "load" for other in items) or following.kind == "reps" or again


def _repeats(value: Decimal) -> int:
    if value != value.to_integral_value() or not 1 <= value <= MOST_SETS:
        raise Open
    return int(value)


def _settle_pairs(items: list[_Quantity], context: Context) -> None:
    """Numbers joined by "at", "with", "for" or a cross settle each other."""
    if not _any(items, "load"):
        _settle_crossed(items, context)
        for before, after in pairwise(items):
            crossed = before.kind == after.kind == "bare" and after.linked("by", "for")
            if crossed and (before.value == context.load) != (after.value == context.load):
                load, reps = (before, after) if before.value == context.load else (after, before)
                load.kind, reps.kind = "load", "reps"
                break
    for before, after in pairwise(items):
        if after.kind != "bare":
            if before.kind == "bare" and after.kind == "reps" and after.linked("for", "by"):
                before.kind = "load"
            continue
        if after.linked("at_sign", "at"):
            _settle_at(items, before, after, context)
        elif (after.linked("with") and before.kind in {"bare", "reps", "side"} and not _any(items, "load")) or (
            after.linked("by") and before.kind == "reps" and not _any(items, "load")
        ):
            after.kind = "load"


def _settle_crossed(items: list[_Quantity], context: Context) -> None:
    """Such as "11x20, 10x20, 9x20": pairs of which each has the suggested load in the same place."""
    if len(items) <= _TWO or len(items) % 2 or any(item.kind != "bare" for item in items):
        return
    pairs = list(zip(items[::2], items[1::2], strict=True))
    if not all(second.linked("by") and not first.linked("by") for first, second in pairs):
        return
    for place in (0, 1):
        if all(pair[place].value == context.load != pair[1 - place].value for pair in pairs):
            for pair in pairs:
                pair[place].kind, pair[1 - place].kind = "load", "reps"


def _settle_at(items: list[_Quantity], before: _Quantity, after: _Quantity, context: Context) -> None:
    """Such as "11 at 20" is a load; "@8" after a load and reps is effort; "11 @ 8" is neither, unless 8 was suggested."""
    if before.kind == "reserve" and not any(item.kind in {"bare", "reps"} and item is not after for item in items):
        return  # "failed at 12"
    loads = [item for item in items if item.kind == "load" and item.at < after.at]
    another = before.kind in {"bare", "reps"} and any(item.kind in {"bare", "reps"} and item.at < before.at for item in items)
    if loads and not (another and all(load.at < before.at for load in loads) and before.links):
        if after.value > _EFFORT_UP_TO:
            raise Open
        after.kind = "effort"
        return
    if before.kind not in {"bare", "reps", "side", "reserve", "seconds"}:
        raise Open
    if after.linked("at_sign") and after.value <= _EFFORT_UP_TO and context.load != after.value:
        raise Open
    after.kind = "load"


def _any(items: Sequence[_Quantity], kind: str) -> bool:
    return any(item.kind == kind for item in items)


def _settle_bare(items: list[_Quantity], context: Context) -> None:
    """What each number is that is said without a unit or a name."""
    for item in items:
        if "held" in item.flags and item.kind == "bare":
            if _any(items, "seconds"):
                raise Open
            item.kind = "seconds"
        if "per hand" in item.flags and item.kind == "bare":
            item.kind = "load"
    bare = [item for item in items if item.kind == "bare"]
    if not bare:
        return
    if any(item.kind == "seconds" and not item.linked("in") and "took" not in item.dropped for item in items) and not _any(
        items, "reps"
    ):
        raise Open
    if items[0] is bare[0] and bare[0].linked("at", "at_sign", "with") and (_any(items, "reps") or len(bare) == _TWO):
        bare[0].kind = "load"
        bare = bare[1:]
    if _any(items, "reps"):
        if bare and _any(items, "load"):
            if not all(item.linked(*_JOINTS) for item in bare):
                raise Open
            _become_reps(bare)
            return
        for item in bare:
            if item.value != context.load:
                raise Open
            item.kind = "load"
        return
    if _any(items, "load"):
        if any(
            after.linked("slash") and after.value == _EFFORT_UP_TO and _is_score(items, before) for before, after in pairwise(items)
        ):
            raise Open  # "11 at 20kg 8/10"
        _become(bare, "seconds" if context.hold else "reps")
        return
    broken = [item for item in bare if item.value % 1]
    if len(bare) == _TWO and len(broken) == 1:
        broken[0].kind = "load"
        _become([item for item in bare if item is not broken[0]], "reps")
        return
    _settle_unnamed(items, bare, context)


def _settle_unnamed(items: list[_Quantity], bare: list[_Quantity], context: Context) -> None:
    """Bare numbers with no load and no reps named."""
    kind = "seconds" if context.hold else "reps"
    sided = sum(item.kind == "side" for item in items)
    labels = sum("label" in item.links for item in bare)
    described = any(item.kind in {"reserve", "effort", "seconds", "same"} for item in items) or sided
    if len(bare) == 1 and bare[0].dropped & {"used", "using"}:
        bare[0].kind = "load"  # "I used the 22"
        return
    if len(bare) == 1:
        if context.awaiting is not Awaiting.REPS and not described and not labels:
            raise Open
        if bare[0].value > _MOST_BARE or _is_elsewhere(items, bare[0]):
            raise Open
        if bare[0].value != bare[0].value.to_integral_value() and bare[0].value % 1 != Decimal("0.5"):
            raise Open
        _become(bare, kind)
        return
    if sided == len(bare) or labels == len(bare):
        _become(bare, kind)
        return
    if len(bare) == _TWO and not sided:
        first, second = bare
        if (first.value == context.load) != (second.value == context.load):
            load, reps = (first, second) if first.value == context.load else (second, first)
            load.kind, reps.kind = "load", kind
            return
        if second.linked("and") and not context.sides and context.awaiting is Awaiting.REPS and context.load is None:
            _become(bare, kind)
            return
        raise Open(
            *(
                (Log(reps=int(reps.value), load=load.value),)
                for reps, load in ((first, second), (second, first))
                if reps.value == reps.value.to_integral_value()
            )
        )
    apart = all(item.linked(*_JOINTS) for item in bare[1:]) or not any(item.links for item in bare[1:])
    if not apart or sided or context.awaiting is not Awaiting.REPS or any(item.value == context.load for item in bare):
        raise Open
    _become(bare, kind)


def _is_score(items: list[_Quantity], item: _Quantity) -> bool:
    """Whether the first number of "8/10" stands after a load and another count."""
    ahead = items[: items.index(item)]
    return _any(ahead, "load") and not item.linked("comma", "and")


def _is_elsewhere(items: list[_Quantity], item: _Quantity) -> bool:
    """Whether a lone number is a time, a place or an age: "up at 6", "done by 8", "I'm 60"."""
    if len(items) > 1:
        return False
    if item.linked("at", "by", "in"):
        return not item.dropped & _STOPPING
    return item.dropped in _TELLING_TIME


def _become(items: list[_Quantity], kind: str) -> None:
    for item in items:
        item.kind = kind


def _become_reps(items: list[_Quantity]) -> None:
    _become(items, "reps")


@dataclass(slots=True)
class _Set:
    """One set being put together; each field at most once."""

    values: dict[str, _Quantity] = field(default_factory=dict)
    at: int = 0

    def add(self, item: _Quantity) -> None:
        if item.kind in self.values:
            held = self.values[item.kind]
            if (held.value, held.unit, held.side) != (item.value, item.unit, item.side):
                raise Open
        self.values[item.kind] = item

    def log(self) -> Log:
        def number(kind: str) -> Decimal | None:
            return self.values[kind].value if kind in self.values else None

        load, side, reps, seconds = (
            self.values.get("load"),
            self.values.get("side"),
            number("reps"),
            number("seconds"),
        )
        return Log(
            reps=None if reps is None else int(reps.to_integral_value(ROUND_FLOOR)),
            load=None if load is None else load.value,
            unit=None if load is None else load.unit,
            side=None if side is None else side.side,
            reserve=number("reserve"),
            rpe=number("effort"),
            seconds=None if seconds is None else int(seconds),
            same="same" in self.values and (load is None or reps is None),
        )


def _assemble(items: list[_Quantity], context: Context) -> list[Log]:
    """The sets: one for each count of reps (or of seconds, in a hold), with what belongs to it."""
    counts = [item for item in items if item.kind == "reps"]
    if not counts or sum(item.kind == "seconds" for item in items) > len(counts):
        seconds = [item for item in items if item.kind == "seconds"]
        if counts and seconds:
            raise Open
        counts = counts or seconds
    sides = [item for item in items if item.kind == "side"]
    if len(counts) <= 1:
        return [_single(items, sides)]
    slashed = sum(count.linked("slash") for count in counts[1:])
    if slashed == 1 and not sides and not any(item.kind == "load" and item.at < counts[1].at for item in items):
        raise Open  # "14/12 at 7kg" may be so many of so many
    if context.sides and not sides and len(counts) == _TWO:
        raise Open
    _check_list(items, counts, sided=len(counts) in {len(sides), sum(item.kind == "load" for item in items)})
    sets = [_Set(at=count.at) for count in counts]
    for one, count in zip(sets, counts, strict=True):
        one.add(count)
    for kind in ("load", "side", "reserve", "effort", "seconds", "same"):
        rest = [item for item in items if item.kind == kind and item not in counts]
        _share(rest, counts, sets, items)
    _share_unit(sets)
    return [one.log() for one in sets]


def _check_list(items: list[_Quantity], counts: list[_Quantity], *, sided: bool) -> None:
    """Raises `Open` when what stands between two counts does not read like a list of sets."""
    if counts[1].linked("break") and not counts[1].dropped and counts[0].value <= _MOST_LISTED and counts[0].kind == "reps":
        raise Open  # "1. 11 at 20kg" may be a numbered line
    loads = [item for item in items if item.kind == "load"]
    rising = all(one.value < other.value for one, other in zip(counts, [*counts[1:], *loads], strict=False))
    if len(loads) == 1 and loads[0] is items[-1] and rising and not set(loads[0].links) - {"comma", "and"} and loads[0].links:
        raise Open  # "8, 10, 12 kg" may be what somebody owns
    for count in counts[1:]:
        before = items[items.index(count) - 1]
        if count.dropped - _LISTING or (
            count.linked("with", "for", "by", "at", "at_sign")
            and not (before.kind == "side" or (before.kind == "load" and items.index(before) < items.index(counts[0])))
            and not count.linked("label")
            and not (before.kind == "load" and count.linked("by"))
        ):
            raise Open
        if count.linked("of") or (before.kind == "load" and count.linked("by") and _is_complete(items, before)):
            raise Open  # "11 of 12", "11 at 20kg x2"
        if not sided and not count.links and not count.dropped and len(counts) <= _TWO:
            raise Open


def _is_complete(items: list[_Quantity], load: _Quantity) -> bool:
    """Whether the load already has its count before it, with nothing to part them but "at" or a cross."""
    at = items.index(load)
    return at > 0 and items[at - 1].kind == "reps" and not load.linked("comma", "and", "break")


def _single(items: list[_Quantity], sides: list[_Quantity]) -> Log:
    """The one set of a message."""
    one = _Set()
    if len({side.side for side in sides}) > 1 or any(item.kind == "same" and item.linked("and") for item in items[1:]):
        raise Open
    for item in items:
        one.add(item)
    lone = one.values["reserve"].value if set(one.values) == {"reserve"} else Decimal(0)
    if set(one.values) <= {"side"} or lone > _MOST_LONE_RESERVE:
        raise Open
    return one.log()


def _share(rest: list[_Quantity], counts: list[_Quantity], sets: list[_Set], items: list[_Quantity]) -> None:
    """Give each quantity of one kind to the sets it belongs to."""
    if not rest:
        return
    if len(rest) == 1 and rest[0].kind in {"load", "same"}:
        for one in sets:
            one.add(rest[0])
        return
    if len(rest) == 1 and rest[0].side is Side.EACH:
        for one in sets:
            one.add(rest[0])
        return
    if len(rest) == len(sets):
        for one, item in zip(sets, rest, strict=True):
            one.add(item)
        # Each must stand on the same hand of its count, or the pairing is not what was meant.
        before = {item.at < count.at for item, count in zip(rest, counts, strict=True)}
        if len(before) > 1:
            raise Open
        return
    if rest[0].kind in {"reserve", "effort"}:
        for item in rest:
            nearest = max((one for one in sets if one.at < item.at), key=lambda one: one.at, default=None)
            if nearest is None:
                raise Open
            nearest.add(item)
        return
    if rest[0].kind == "load":
        _share_loads(rest, counts, sets, items)
        return
    raise Open


def _share_loads(rest: list[_Quantity], counts: list[_Quantity], sets: list[_Set], items: list[_Quantity]) -> None:
    """Several loads for more sets: each covers the counts before it ("11 and 10 at 20kg, 9 at 17.5"), or all after it."""
    first_is_load = items.index(rest[0]) < items.index(counts[0])
    for one in sets:
        if first_is_load:
            load = max((item for item in rest if item.at < one.at), key=lambda item: item.at, default=None)
        else:
            load = min((item for item in rest if item.at > one.at), key=lambda item: item.at, default=None)
        if load is None:
            raise Open
        one.add(load)


def _share_unit(sets: list[_Set]) -> None:
    """A unit said once covers all loads of the message."""
    units = {one.values["load"].unit for one in sets if "load" in one.values} - {None}
    if len(units) == 1:
        unit = units.pop()
        for one in sets:
            load = one.values.get("load")
            if load is not None and load.unit is None and "bodyweight" not in load.flags:
                one.values["load"] = replace(load, unit=unit)


def _checked(log: Log, context: Context) -> Log:
    """The log, if a person can have done it; raises `Open` when not."""
    most_load = MOST_LOAD[log.unit or context.unit or Unit.KG]
    possible = (
        (log.reps is None or log.reps <= MOST_REPS)
        and (log.load is None or log.load <= most_load)
        and (log.reserve is None or log.reserve <= MOST_RESERVE)
        and (log.rpe is None or 1 <= log.rpe <= _EFFORT_UP_TO)
        and (log.seconds is None or 0 < log.seconds <= MOST_SECONDS)
    )
    if not possible:
        raise Open
    return log
