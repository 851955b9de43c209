"""Which number is the load and which the count, where the words alone do not say."""

from __future__ import annotations

from decimal import Decimal
from itertools import pairwise
from typing import TYPE_CHECKING

from core.reading.acts import Awaiting, Context, Log, Side
from core.reading.assembly import EFFORT_UP_TO, TWO, Open, Quantity
from core.reading.lexicon import COURTESY, EXERCISES, PLAIN, listed

if TYPE_CHECKING:
    from collections.abc import Sequence

_LEAST_LIFTED = Decimal(1)
_MOST_BARE = Decimal(60)
_MOST_TIMES_TARGET = 4
_FEWEST_DOUBTED = 60
_OF_SIDES = frozenset({"side", "sides", "other", "arm", "leg", "hand", "stronger", "weaker"})
_DONE = frozenset({"got", "did", "managed", "made", "hit"})
_HOLDS = frozenset({"plank", "planks", "wall", "sit", "sits", "hang", "hangs", "hold", "holds"})
_ONE_MORE = frozenset({"another"})
_GONE_OVER = frozenset({"dropped", "went", "down", "moved", "swapped", "switched", "changed", "stripped", "jumped", "bumped", "up"})
_THIS_TIME = frozenset({"time", "now", "today", "round"})
_STOPPING = listed("words_sets", "stopping")
_BROKEN_OFF = frozenset({"stopped", "stop", "failed", "maxed", "quit", "stalled", "gave", "tapped", "gassed", "capped", "peaked"})
_TELLING_TIME = (frozenset({"i", "am"}), frozenset({"until"}), frozenset({"till"}), frozenset({"til"}), frozenset({"since"}))
SMALL = listed("words_sets", "small")
_BETWEEN_PAIR = (
    PLAIN
    | EXERCISES
    | COURTESY
    | listed("words_company", "closed")
    | listed("words_company", "done")
    | listed("words_company", "how")
)
_JUDGING = frozenset(
    {"felt", "feels", "it", "was", "easy", "hard", "solid", "tough", "strong", "good", "heavy", "so", "and", "..."}
)
_ONLY = frozenset({"just", "only"})
_CALLED = frozenset({"call", "say", "count", "counts", "make", "honest"})
_STILL = frozenset({"just", "only", "but", "so", "yes", "still", "yeah", "yep"})
JOINTS = {"comma", "and", "slash", "dash", "break", "label"}


def has_reps(items: Sequence[Quantity], skip: int) -> bool:
    """Whether another number than the one at `skip` can be the reps (or the seconds of a hold)."""
    return any(
        item.kind in {"reps", "bare", "seconds", "same"} for i, item in enumerate(items) if i != skip and item.kind != "either"
    )


def settle_pairs(items: list[Quantity], context: Context) -> None:
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
        elif after.linked("with") and after.value <= _LEAST_LIFTED and context.load not in {None, after.value}:
            raise Open  # "9 w/ 1, 8 w/ 0": the load, or what was left?
        elif (after.linked("with") and _is_counted_by(items, before) and _awaits_a_load(items, before)) or (
            after.linked("by") and before.kind == "reps" and not _any(items, "load")
        ):
            after.kind = "load"


def _awaits_a_load(items: list[Quantity], count: Quantity) -> bool:
    """Whether no load is told before a count, or only those of the counts before it: "10 with 20, then 8 with 20"."""
    at = items.index(count)
    another = any(item.kind in {"bare", "reps"} for item in items[:at]) and bool(count.links)
    return not _any(items[: at + 2], "load") or (another and not _any(items[at : at + 2], "load"))


def _is_counted_by(items: list[Quantity], item: Quantity) -> bool:
    """Whether a count ends with `item`, so that "with" leads to its load: "9 with 20", "9 to failure with 20"."""
    spent = item.kind == "reserve" and any(one.kind in {"bare", "reps"} for one in items[: items.index(item)])
    return spent or item.kind in {"bare", "reps", "side"}


def _settle_crossed(items: list[Quantity], context: Context) -> None:
    """Such as "11x20, 10x20, 9x20": pairs of which each has the suggested load in the same place; or "10 @16 9 @16 8 @16"."""
    if len(items) <= TWO or len(items) % 2 or any(item.kind != "bare" for item in items):
        return
    pairs = list(zip(items[::2], items[1::2], strict=True))
    if all(
        load.linked("at", "at_sign", "with")
        and not reps.linked("at", "at_sign", "with")
        and not reps.dropped
        and (load.value > EFFORT_UP_TO or load.value == context.load or (load.linked("with") and load.value > _LEAST_LIFTED))
        for reps, load in pairs
    ):
        for reps, load in pairs:
            reps.kind, load.kind = "reps", "load"
        return
    if not all(second.linked("by") and not first.linked("by") for first, second in pairs):
        return
    for place in (0, 1):
        if all(pair[place].value == context.load != pair[1 - place].value for pair in pairs):
            for pair in pairs:
                pair[place].kind, pair[1 - place].kind = "load", "reps"


def _settle_at(items: list[Quantity], before: Quantity, after: Quantity, context: Context) -> None:
    """Such as "11 at 20" is a load; "@8" after a load and reps is effort; "11 @ 8" is neither, unless 8 was suggested."""
    if before.side is Side.EACH and items[0] is not before:
        before = items[items.index(before) - 1]  # "8 each arm at 15"
    if before.kind == "reserve" and not any(item.kind in {"bare", "reps"} and item is not after for item in items):
        return  # "failed at 12"
    if after.linked("at") and after.linked("and", "comma", "break") and after.dropped & _STOPPING:
        after.links = tuple(link for link in after.links if link != "at")
        return  # "10 then 9 then stopped at 6"
    if after.linked("at") and after.dropped & _BROKEN_OFF and after.value != context.load and before.kind in {"bare", "reps"}:
        raise Open  # "12 stopped at 10"
    several = before.linked("and") or sum(item.kind in {"bare", "reps"} for item in items[: items.index(before)]) > 1
    if before.kind == "reserve" and after.links == ("at",) and before.links and several and not after.dropped:
        place = items.index(before)
        items[place : place + 2] = [after, before]
        after.links, before.links, after.at, before.at = before.links, (), before.at, after.at
        return  # "10 at 14kg, then failed at 6 with 16kg"
    if before.kind == "reserve" and after.linked("at"):
        raise Open
    loads = [item for item in items if item.kind == "load" and item.at < after.at]
    another = before.kind in {"bare", "reps"} and any(item.kind in {"bare", "reps"} and item.at < before.at for item in items)
    led = items[items.index(before) - 1] if another else None
    parted_off = before.links or (led is not None and led.kind == "side")
    counts = [item for item in items if item.kind in {"bare", "reps"} and item.at < after.at]
    complete = len(loads) == len(counts) > 1 and loads[-1].at < before.at  # "24kg x 7, 24kg x 6 @9"
    if loads and not (another and not complete and all(load.at < before.at for load in loads) and parted_off):
        if after.value > EFFORT_UP_TO or after.dropped - SMALL - _JUDGING:
            raise Open  # "12 at 20kg, dinner at 7"
        after.kind = "effort"
        return
    if before.kind not in {"bare", "reps", "side", "reserve", "seconds"}:
        raise Open
    if after.dropped - (SMALL if after.linked("break") else _BETWEEN_PAIR):
        raise Open  # "Nine. Bridge club at two."
    if after.linked("at_sign") and after.value <= EFFORT_UP_TO and context.load != after.value:
        raise Open
    after.kind = "load"


def _any(items: Sequence[Quantity], kind: str) -> bool:
    return any(item.kind == kind for item in items)


def _is_carried(items: Sequence[Quantity], item: Quantity, load: Decimal | None) -> bool:
    """Whether a number is the load suggested, held for a time: "walked 30 seconds with a 16"."""
    lone = sum(other.kind in {"bare", "reps", "load"} for other in items) == 1
    return lone and item.value == load and item.linked("with", "at", "at_sign") and _any(items, "seconds")


def _settle_held(items: list[Quantity], context: Context) -> None:
    """Numbers that are the time of a hold, or the load that was held."""
    in_a_row = _are_times_in_a_row(items, [item for item in items if item.kind == "bare"], hold=context.hold)
    for item in items:
        if "held" in item.flags and item.kind == "bare":
            if _any(items, "seconds") and not in_a_row:
                raise Open
            item.kind = "seconds"
        if item.kind == "bare" and ("per hand" in item.flags or _is_carried(items, item, context.load)):
            item.kind = "load"
    bare = [item for item in items if item.kind == "bare"]
    if in_a_row or _are_times_of_sides(items, bare):
        _become(bare, "seconds")


def _settle_gone_over(items: Sequence[Quantity]) -> None:
    """A number that was gone over to after a load, and a count done with it: "8 with 30, dropped to 24 and did another 6"."""
    for before, item, after in zip(items, items[1:], items[2:], strict=False):
        gone = item.kind == "bare" and "to" in item.dropped and bool(item.dropped & _GONE_OVER)
        counted = after.kind in {"bare", "reps"} and (
            after.linked("for") or bool(after.dropped & _DONE | after.dropped & _ONE_MORE)
        )
        if before.kind == "load" and gone and counted:
            item.kind = "load"
    last = items[-1]
    if len(items) > 1 and items[-2].kind == "load" and last.kind == "bare" and "to" in last.dropped and last.dropped & _GONE_OVER:
        raise Open  # "12 at 20kg, dropped to 10": reps or kilos?


def settle_bare(items: list[Quantity], context: Context) -> None:
    """What each number is that is said without a unit or a name."""
    _settle_held(items, context)
    _settle_gone_over(items)
    for said in [item for item in items if item.kind in {"bare", "reps"}][1:]:
        before = items[items.index(said) - 1]
        if before.kind == "bare" and before.value == said.value and said.linked("break") and said.dropped & _STILL:
            items.remove(before)  # "Eleven. Bit grim but eleven"
    if any(item.kind == "reps" and not item.value for item in items):
        items[:] = [item for item in items if item.kind != "bare" or item.value]  # "didn't manage any, so 0"
    named = [item for item in items if item.kind in {"bare", "reps"}]
    again = len(named) > 1 and named[-1] is items[-1] and items[-2] is not named[-2] and named[-1].value == named[-2].value
    if again and named[-1].kind == "bare" and named[-1].dropped & _ONLY and named[-1].linked("break", "comma"):
        items.pop()  # "8 at 9kg. Just the 8."
    bare = [item for item in items if item.kind == "bare"]
    if not bare:
        return
    if any(item.kind == "seconds" and not item.linked("in", "at") and "took" not in item.dropped for item in items) and not _any(
        items, "reps"
    ):
        raise Open
    if _leads_with_a_load(items, bare):
        bare[0].kind = "load"
        bare = bare[1:]
    if _any(items, "reps"):
        if bare and _any(items, "load"):
            counts, loads = (sum(item.kind in kinds for item in items) for kinds in ({"bare", "reps"}, {"load"}))
            sided = sum(item.kind == "side" for item in items) == counts  # "right hand 10 reps 12kg, left hand 8"
            joined = sided or all(item.linked(*JOINTS) for item in bare)
            if not (_is_list_of_reps(items, bare) or counts == loads or joined):
                raise Open
            _become_reps(bare)
            return
        if _is_list_of_reps(items, bare):
            _become_reps(bare)
            return
        for item in bare:
            this_time = len(bare) == 1 and items[0] is item and items[1].kind == "reps" and _THIS_TIME & items[1].dropped
            if item.value != context.load and not this_time:
                raise Open
            item.kind = "load"
        return
    if _any(items, "load"):
        unloaded = any("bodyweight" in item.flags for item in items)
        if unloaded and any(item.value > _MOST_BARE for item in bare) and not _any(items, "seconds"):
            raise Open  # "bw 82"
        listed_by_slashes = sum(item.linked("slash") for item in bare) > 1  # "16kg: 12/10/8"
        if not listed_by_slashes and any(
            after.linked("slash") and after.value == EFFORT_UP_TO and _is_score(items, before) for before, after in pairwise(items)
        ):
            raise Open  # "11 at 20kg 8/10"
        _become(bare, "seconds" if context.hold else "reps")
        return
    if len(bare) == TWO and _settle_broken(items, bare, context):
        return
    _settle_unnamed(items, bare, context)


def _are_times_of_sides(items: list[Quantity], bare: list[Quantity]) -> bool:
    """Whether the time of one side is told in seconds and the other's as a number alone: "25 secs on the left, 31 on the right"."""
    times = [item for item in items if item.kind == "seconds"]
    sides = [item.side for item in items if item.kind == "side"]
    return len(times) == len(bare) == 1 and sorted(sides, key=str) == [Side.LEFT, Side.RIGHT] and not _any(items, "reps")


def _are_times_in_a_row(items: list[Quantity], bare: list[Quantity], *, hold: bool) -> bool:
    """Whether the unit of a row of holds is said once, at its end: "wall sits 40, 35, 30 secs"."""
    counted = [item for item in items if item.kind in {"bare", "seconds", "reps"}]
    if [item.kind for item in counted] != [*("bare" for _ in bare), "seconds"] or not bare:
        return False
    held = hold or "held" in counted[0].flags or bool(counted[0].dropped & _HOLDS)
    return held and all(item.links and set(item.links) <= JOINTS and not item.dropped for item in counted[1:])


def _settle_broken(items: list[Quantity], bare: list[Quantity], context: Context) -> bool:
    """Settle two bare numbers of which one has a fraction; false when none or both have one."""
    broken = [item for item in bare if item.value % 1]
    if len(broken) != 1:
        return False
    told = "seconds" if context.hold else "reps"
    if broken == bare[:1] and bare[1].value == broken[0].value // 1 and bare[1].dropped & _CALLED:
        items.remove(broken[0])  # "nine and a half but I'll call it nine"
        _become(bare[1:], told)
        return True
    if _may_be_reps(broken[0], bare, context):
        raise Open  # "9.5 then 9"
    broken[0].kind = "load"
    _become([item for item in bare if item is not broken[0]], "reps")
    return True


def _may_be_reps(broken: Quantity, bare: list[Quantity], context: Context) -> bool:
    """Whether a number with a half may be reps, too: it is near the other one, joined to it, and no load that was suggested."""
    other = next(item for item in bare if item is not broken)
    near = abs(broken.value - other.value) < TWO and broken.value % 1 == Decimal("0.5")
    return near and context.load not in {None, broken.value} and bare[1].linked("and", "comma")


def _leads_with_a_load(items: list[Quantity], bare: list[Quantity]) -> bool:
    """Whether the first number is a load by the word before it: "with 20 did 12"; raises `Open` for "at 7, so call it 7"."""
    first = bare[0]
    led = items[0] is first and first.linked("at", "at_sign", "with") and (_any(items, "reps") or len(bare) == TWO)
    if led and len(bare) == TWO and first.value == bare[1].value:
        raise Open
    return led


def _is_list_of_reps(items: list[Quantity], bare: list[Quantity]) -> bool:
    """Whether "15/14/12 reps" names reps once for the whole list: nothing but joints between the numbers."""
    counts = [item for item in items if item.kind in {"bare", "reps"}]
    listed_last = [item.kind for item in counts] == ["bare"] * len(bare) + ["reps"]
    joined = all(item.links and set(item.links) <= JOINTS and not item.dropped for item in counts[1:])
    return listed_last and joined and (len(bare) > 1 or counts[-1].linked("and"))


def _settle_unnamed(items: list[Quantity], bare: list[Quantity], context: Context) -> None:
    """Bare numbers with no load and no reps named."""
    kind = "seconds" if context.hold else "reps"
    sided = sum(item.kind == "side" for item in items)
    labels = sum("label" in item.links for item in bare)
    described = any(item.kind in {"reserve", "effort", "seconds", "same"} for item in items) or sided
    if len(bare) == 1 and bare[0].dropped & {"used", "using"} and not bare[0].dropped & _DONE:
        bare[0].kind = "load"  # "I used the 22"
        return
    if len(bare) == 1:
        if context.awaiting is not Awaiting.REPS and not described and not labels:
            raise Open
        doubted = context.target and not context.hold and bare[0].value >= max(_FEWEST_DOUBTED, _MOST_TIMES_TARGET * context.target)
        if bare[0].value > _MOST_BARE or doubted or _is_elsewhere(items, bare[0]):
            raise Open
        if bare[0].value != bare[0].value.to_integral_value() and bare[0].value % 1 != Decimal("0.5"):
            raise Open
        _become(bare, kind)
        return
    judged = sum(item.kind in {"reserve", "effort"} for item in items)
    both = {Side.LEFT, Side.RIGHT} <= {item.side for item in items}
    if sided == len(bare) or labels == len(bare) or (both and len(bare) == TWO and sided == len(bare) + judged):
        _become(bare, kind)  # "12 left, 11 right, right had two more in the tank"
        return
    if len(bare) == TWO and all(item.side is Side.EACH for item in items if item.kind == "side"):
        first, second = bare
        if context.sides and (first.dropped | second.dropped) & _OF_SIDES:
            raise Open  # "stronger side 12, other one 10"
        if (first.value == context.load) != (second.value == context.load):
            load, reps = (first, second) if first.value == context.load else (second, first)
            load.kind, reps.kind = "load", kind
            return
        two_sets = second.linked("and") and not (sided or context.sides) and first.value != context.load
        if two_sets and context.awaiting is Awaiting.REPS:
            _become(bare, kind)
            return
        raise Open(
            *(
                (Log(reps=int(reps.value), load=load.value),)
                for reps, load in ((first, second), (second, first))
                if reps.value == reps.value.to_integral_value()
            )
        )
    apart = all(item.linked(*JOINTS) for item in bare[1:]) or not any(item.links for item in bare[1:])
    if not apart or sided or context.awaiting is not Awaiting.REPS:
        raise Open
    if any(item.value == context.load for item in bare) and not _tires(bare):
        raise Open
    if _counts_along(bare):
        raise Open  # "1 2 3 go"
    _become(bare, kind)


def _tires(bare: list[Quantity]) -> bool:
    """Whether the counts of a list go down a little from set to set, as they do of one load: "10, 9, 8", and not "20, 12, 10"."""
    falling = all(one.value >= other.value for one, other in pairwise(bare))
    listed_in_full = all(item.linked("comma", "and") for item in bare[1:])
    return falling and listed_in_full and bare[-1].value * 3 >= bare[0].value * 2


def _counts_along(bare: list[Quantity]) -> bool:
    """Whether the numbers are counted up one by one, or down to one: "5 6 7 8", "3 2 1"."""
    steps = {after.value - before.value for before, after in pairwise(bare)}
    return steps == {Decimal(1)} or (steps == {Decimal(-1)} and bare[-1].value == 1)


def _is_score(items: list[Quantity], item: Quantity) -> bool:
    """Whether the first number of "8/10" stands after a load and another count."""
    ahead = items[: items.index(item)]
    return _any(ahead, "load") and not item.linked("comma", "and")


def _is_elsewhere(items: list[Quantity], item: Quantity) -> bool:
    """Whether a lone number is a time, a place or an age: "up at 6", "done by 8", "I'm 60"."""
    if len(items) > 1:
        return False
    if item.linked("at_sign"):
        return True  # "@8": an effort, or a load?
    if item.linked("at", "by", "in"):
        return not item.dropped & _STOPPING
    return item.dropped in _TELLING_TIME


def _become(items: list[Quantity], kind: str) -> None:
    for item in items:
        item.kind = kind


def _become_reps(items: list[Quantity]) -> None:
    _become(items, "reps")
