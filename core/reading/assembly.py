"""Settled quantities become sets: one for each count, with the load, the side and the effort that belong to it."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from decimal import ROUND_FLOOR, Decimal

from core.reading.acts import Context, Log, Side
from core.reading.lexicon import listed
from core.reading.spelling import is_english
from core.units import Unit

MOST_REPS = 199
MOST_LOAD = {Unit.KG: Decimal(200), Unit.LB: Decimal(440)}
MOST_RESERVE = Decimal(20)
MOST_SECONDS = 3600
_MOST_LISTED = 3
_MOST_LONE_RESERVE = Decimal(5)
EFFORT_UP_TO = Decimal(10)
_QUARTERS = Decimal(4)
TWO = Decimal(2)
_MOST_STRANGE = 2
"""Words of any kind between the number of a set and its count."""

_GATHERING = frozenset({"both", "all", "throughout"})
"""Words beside a load that it was the same in several sets."""

_JUDGING = listed("words_sets", "judging")
_TRENDING = listed("words_sets", "trending")
DOING = frozenset(
    {"i", "na", "do", "did", "make", "made", "get", "got", "lift", "lifted", "after", "later", "only", "just", "can", "could"}
)
"""Words before a count that has its own load, or the number of its set, before it: "then 12.5kg do 8", "round 2 I do 11"."""

_WARMING = frozenset({"as", "a", "an", "warm", "warmup", "warming", "warmer", "light", "heavy", "easy"})
"""Words of the set before, when each has its own load: "12 at 8kg to warm up, 9 at 14kg"."""

LISTING = listed("words_sets", "listing")
"""Words that may stand between two sets of one message."""


@dataclass(slots=True, eq=False)
class Quantity:
    """A quantity on its way to a set; `link` is what stands between it and the one before.

    `scope`, `of_side` and `every` tell of a reserve or an effort which sets it is about, when the words say so.
    """

    kind: str  # bare, reps, load, reserve, effort, seconds, side, same, sets
    value: Decimal = Decimal(0)
    unit: Unit | None = None
    side: Side | None = None
    links: tuple[str, ...] = ()
    at: int = 0
    dropped: frozenset[str] = frozenset()
    flags: set[str] = field(default_factory=set)
    word: str = ""
    scope: int | None = None
    of_side: Side | None = None
    every: bool = False
    repeats: int = 1

    def linked(self, *names: str) -> bool:
        """Whether one of these links stands before it."""
        return any(name in self.links for name in names)


class Open(Exception):
    """The statement can mean more than one thing; `choices` are the likely ones."""

    def __init__(self, *choices: tuple[Log, ...]) -> None:
        super().__init__()
        self.choices = choices


def _whole(reps: Decimal) -> int:
    """The whole reps of a count, of which a half does not count; a price or a slip ("89.99") is none."""
    if reps * _QUARTERS != (reps * _QUARTERS).to_integral_value():
        raise Open
    return int(reps.to_integral_value(ROUND_FLOOR))


@dataclass(slots=True)
class _Set:
    """One set being put together; each field at most once."""

    values: dict[str, Quantity] = field(default_factory=dict)
    at: int = 0

    def add(self, item: Quantity) -> None:
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
            reps=None if reps is None else _whole(reps),
            load=None if load is None else load.value,
            unit=None if load is None else load.unit,
            side=None if side is None else side.side,
            reserve=number("reserve"),
            rpe=number("effort"),
            seconds=None if seconds is None else int(seconds),
            same="same" in self.values and (load is None or reps is None),
        )


def assemble(items: list[Quantity], context: Context) -> list[Log]:
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
    led = any(item.kind == "load" and item.at < counts[1].at for item in items) and counts[0].value >= counts[1].value
    if slashed == 1 and not sides and not led:
        raise Open  # "14/12 at 7kg" may be so many of so many
    if slashed and slashed != len(counts) - 1 and not sides:
        raise Open  # "12/2, 10/1" may be what was left
    if slashed == len(counts) - 1 == len(sides) and sides[0].side is Side.EACH:
        raise Open  # "10/10 each leg": one set or two
    if context.sides and not sides and len(counts) == TWO:
        raise Open
    if len(counts) == len(sides) > TWO and len(counts) % 2 and {side.side for side in sides} == {Side.LEFT, Side.RIGHT}:
        raise Open  # "R 12, L 12, R one to failure"
    _check_list(items, counts, sided=len(counts) in {len(sides), sum(item.kind == "load" for item in items)})
    loads = sum(item.kind == "load" for item in items)
    if len({side.side for side in sides} & {Side.EACH, Side.LEFT, Side.RIGHT}) > 1 and any(
        side.side is Side.EACH for side in sides
    ):
        raise Open  # "12 per side, 10 on the left"
    if len(counts) == TWO and not sides and loads == 1 and counts[1].value * _MOST_LISTED <= counts[0].value:
        raise Open  # "12 plus 2 at 20kg", "12 at 20kg, up 2"
    sets = [_Set(at=count.at) for count in counts]
    for one, count in zip(sets, counts, strict=True):
        one.add(count)
    for kind in ("load", "side", "reserve", "effort", "seconds", "same"):
        rest = [item for item in items if item.kind == kind and item not in counts]
        _share(rest, counts, sets, items)
    _share_unit(sets)
    return [one.log() for one in sets]


def _check_list(items: list[Quantity], counts: list[Quantity], *, sided: bool) -> None:
    """Raises `Open` when what stands between two counts does not read like a list of sets."""
    if counts[1].linked("break") and not counts[1].dropped and counts[0].value <= _MOST_LISTED and counts[0].kind == "reps":
        raise Open  # "1. 11 at 20kg" may be a numbered line
    loads = [item for item in items if item.kind == "load"]
    sides = any(item.kind == "side" for item in items)
    rising = not sides and all(one.value < other.value for one, other in zip(counts, [*counts[1:], *loads], strict=False))
    told_last = len(loads) == 1 and loads[0] is items[-1] and not loads[0].dropped & _TRENDING
    if told_last and rising and not set(loads[0].links) - {"comma", "and"} and loads[0].links:
        raise Open  # "8, 10, 12 kg" may be what somebody owns
    told = {side.at for side in items if side.kind == "side"} and sum(item.kind == "side" for item in items) == len(counts)
    gathered = any(item.dropped & _GATHERING for item in items if item.kind in {"load", "same"})
    labelled = all(count.linked("label") for count in counts)  # "first set: 12, second set: regret, 8"
    for count in counts[1:]:
        before = items[items.index(count) - 1]
        cued = told or gathered or (bool(loads) and ("then" in count.flags or "another" in count.dropped))
        cued |= before.kind == "load" and len(loads) == len(counts) and count.dropped <= DOING | LISTING | _WARMING
        cued |= count.linked("label") and count.dropped <= DOING | LISTING
        cued |= _is_before_and_after(items, count) or (before.kind == "load" and len(loads) == len(counts) and _is_a_slip(count))
        cued |= count.linked("label") and labelled and len(count.dropped - LISTING) <= _MOST_STRANGE
        strange = count.dropped - LISTING - (_JUDGING if {"a", "an"} & count.dropped and count.linked("and", "comma") else set())
        if (strange and not cued) or (
            count.linked("with", "for", "by", "at", "at_sign")
            and not (before.kind == "side" or (before.kind == "load" and items.index(before) < items.index(counts[0])))
            and not count.linked("label")
            and not (before.kind == "load" and (count.linked("by") or len(loads) == len(counts)))
        ):
            raise Open
        after = next(iter(items[items.index(count) + 1 :]), None)
        if (
            before.kind == "effort"
            and not count.dropped
            and count.linked("comma", "slash")
            and (after is None or after.kind == "reps")
        ):
            raise Open  # "8, 7, 6 rpe 7, 8, 9"
        if (count.linked("of") and not count.linked("label")) or (
            before.kind == "load" and count.linked("by") and _is_complete(items, before, own=len(loads) == len(counts))
        ):
            raise Open  # "11 of 12", "11 at 20kg x2"
        if not sided and not count.links and not count.dropped and len(counts) <= TWO:
            raise Open


def _is_before_and_after(items: list[Quantity], count: Quantity) -> bool:
    """Whether something came between two sets: "12 before the baby woke and 8 after, 8kg"."""
    later = items[items.index(count) + 1 :]
    return "before" in count.dropped and bool(later) and "after" in later[0].dropped


def _is_a_slip(count: Quantity) -> bool:
    """Whether nothing but one mistyped word parts a set from the one told before it: "10 reps 18kg rhen 9 at 18kg"."""
    strange = count.dropped - LISTING
    return len(strange) == 1 and not count.links and not is_english(next(iter(strange)))


def _is_complete(items: list[Quantity], load: Quantity, *, own: bool) -> bool:
    """Whether the load already has its count before it, with nothing to part them but "at" or a cross.

    `own` says that every count has a load of its own, which a slash may part: "12kg x 10 / 14kg x 8".
    """
    at = items.index(load)
    parting = ("comma", "and", "break", "label", *(("slash",) if own else ()))
    return at > 0 and items[at - 1].kind == "reps" and not load.linked(*parting)


def _single(items: list[Quantity], sides: list[Quantity]) -> Log:
    """The one set of a message."""
    one = _Set()
    if len({side.side for side in sides}) > 1 or any(_is_another(item) for item in items[1:]):
        raise Open
    for item in items:
        one.add(item)
    lone = one.values["reserve"].value if set(one.values) == {"reserve"} else Decimal(0)
    if set(one.values) <= {"side"} or lone > _MOST_LONE_RESERVE:
        raise Open
    return one.log()


def _is_another(item: Quantity) -> bool:
    """Whether "and the same again" tells of one more set: "and the weight was same" tells of this one."""
    of_the_load = {"weight", "weights", "load", "dumbbell", "dumbbells", "kg", "kettlebell", "kettlebells", "pair", "bells"}
    if item.kind == "same" and item.linked("comma", "break") and "again" in item.word.split():
        return True  # "ten, same again, twelve kilos"
    return item.kind == "same" and item.linked("and") and not (of_the_load & set(item.word.split()) and "again" not in item.word)


def _share(rest: list[Quantity], counts: list[Quantity], sets: list[_Set], items: list[Quantity]) -> None:
    """Give each quantity of one kind to the sets it belongs to."""
    for item in [one for one in rest if one.scope is not None or one.of_side is not None or one.every]:
        for one in _scope(item, sets):
            one.add(item)
        rest = [other for other in rest if other is not item]
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
    if len(rest) == len(sets) and rest[0].kind in {"load", "side"} and _paired(rest, counts, sets):
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


def _scope(item: Quantity, sets: list[_Set]) -> list[_Set]:
    """The sets that a reserve or an effort is said of."""
    if item.every:
        return sets
    if item.of_side is not None:
        about = [one for one in sets if "side" in one.values and one.values["side"].side is item.of_side]
    else:
        at = item.scope or 0
        about = [sets[at]] if -len(sets) <= at < len(sets) else []
    if len(about) != 1:
        raise Open
    return about


def _paired(rest: list[Quantity], counts: list[Quantity], sets: list[_Set]) -> bool:
    """Give each set the load or the side it is said with, whichever comes first: "9 at 20kg then dropped to 16kg for 6"."""
    ordered = sorted([*rest, *counts], key=lambda item: item.at)
    couples = list(zip(ordered[::2], ordered[1::2], strict=True))
    if any({one.kind, other.kind} == {one.kind} for one, other in couples):
        return False
    crossed = [item.kind for item in ordered] == ["side", "reps", "reps", "side"]  # "right first, ten, then nine on the left"
    if rest[0].kind == "side" and any(other.linked("comma", "and", "break") for _, other in couples[crossed:]):
        return False
    for one, couple in zip(sets, couples, strict=True):
        one.add(next(item for item in couple if item.kind == rest[0].kind))
    return True


def _share_loads(rest: list[Quantity], counts: list[Quantity], sets: list[_Set], items: list[Quantity]) -> None:
    """Several loads for more sets: each covers the counts before it ("11 and 10 at 20kg, 9 at 17.5"), or all after it."""
    first_is_load = items.index(rest[0]) < items.index(counts[0])
    for one in sets:
        if len({(item.value, item.unit) for item in rest}) == 1:
            load: Quantity | None = rest[0]  # "12 at 20kg, 10 at 20kg, 8"
        elif first_is_load:
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


def checked(log: Log, context: Context) -> Log:
    """The log, if a person can have done it; raises `Open` when not."""
    most_load = MOST_LOAD[log.unit or context.unit or Unit.KG]
    possible = (
        (log.reps is None or log.reps <= MOST_REPS)
        and (log.load is None or log.load <= most_load)
        and (log.reserve is None or log.reserve <= MOST_RESERVE)
        and (log.rpe is None or 1 <= log.rpe <= EFFORT_UP_TO)
        and (log.seconds is None or 0 < log.seconds <= MOST_SECONDS)
    )
    if not possible:
        raise Open
    return replace(log, reserve=None) if log.reps == 0 and log.reserve == 0 else log  # "zero, grip gave out"
