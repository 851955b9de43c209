"""What is taken back in the same breath: "twelve no thirteen at ten kilos", "nine, no wait, ten".

Somebody who corrects himself before the set is told in full has told one set, the last one said. What was told in full stands as a
record, and what follows amends it.
"""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING

from core.reading.acts import Awaiting, Context
from core.reading.assembly import Open
from core.reading.token import Kind

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from core.reading.parts import Part
    from core.reading.phrases import Said
    from core.reading.token import Token

_TAKING_BACK = {"mark-sorry", "mark-amend"}
_CLASSES = {
    "bare": "count", "reps": "count", "duration": "count", "load": "load", "bodyweight": "load", "reserve": "reserve",
    "more": "reserve", "failure": "reserve", "effort": "effort", "either": "either", "set_count": "sets", "left": "side",
    "left_side": "side", "right": "side", "each": "side", "same": "same",
}  # fmt: skip


_LEADING = frozenset({"at", "at_sign", "with", "by", "for"})


def restate(
    tokens: Sequence[Token], parts: Sequence[Part], said: Mapping[int, Said], context: Context
) -> tuple[list[Part], list[Part] | None] | None:
    """The parts of the set that was meant, and those that amend it when it was told in full; None when nothing is taken back."""
    if context.last is not None and context.awaiting is not Awaiting.REPS:
        return None
    stretches = _stretches(parts, said, tokens)
    if len(stretches) == 1 or any(goes_on_after_an_excuse(tokens, one, *stretches) for one in _excuses(said, stretches)):
        return None
    if any(part.kind == "not" for part in parts):
        return (stretches[0], stretches[1]) if _gives_up_of_it(parts, stretches) else None
    if _is_full(stretches[0]) and any(
        one.meaning == "mark-amend" and tokens[one.first].text == "supposed" for one in said.values()
    ):
        raise Open  # "12 at 20kg, supposed to be 15"
    meant = stretches[0]
    for index, stretch in enumerate(stretches[1:], 1):
        if (kept := _kept_of_several(meant, _classes(stretch), stretch)) is not None:
            meant = [*kept, *stretch]
            continue  # "right 9 no 10, left 8, 14kg", "12, 10 no 9, all 14kg"
        if _is_listed(meant) and min(len(_classes(meant)), _classes(stretch).count("count")) > 1:
            raise Open  # "10, 9, no 10, 8, all 16kg"
        if _is_full(meant) and _tells_again(meant, stretch):
            continue  # "12 at 10kg, it was 12, in fact 13"
        if set(_classes(meant)) < set(_classes(stretch)):
            meant = stretch
            continue  # "twelve each side no eleven each side with the seven kilo"
        if _is_full(meant):
            if set(_classes(stretch)) <= {"reserve", "effort"} - set(_classes(meant)):
                return None  # "8 at 20kg abeg, e remain one": nothing is taken back
            return (meant, stretch) if index == len(stretches) - 1 and not _is_full(stretch) else None
        if _classes(meant)[0] not in _classes(stretch):
            return None
        meant = stretch
    return meant, None


def _gives_up_of_it(parts: Sequence[Part], stretches: Sequence[Sequence[Part]]) -> bool:
    """Whether a number of a set just told in full is given up for another: "12kg for 11, wait no, 12 not 11"."""
    if len(stretches) != len(("told", "changed")) or not _is_full(stretches[0]):
        return False
    rejected = [part.numbers[0] for before, part in pairwise(parts) if before.kind == "not" and part.numbers]
    named = [part for part in stretches[1] if part.numbers]
    told = {part.numbers[0] for part in stretches[0] if part.numbers}
    return (
        len(rejected) == 1
        and len(named) == len(("meant", "given up"))
        and rejected[0] in told
        and named[1].numbers == (rejected[0],)
    )


def _kept_of_several(meant: Sequence[Part], again: Sequence[str], stretch: Sequence[Part]) -> list[Part] | None:
    """What stays of counts and sides when only the last of them is told `again`: "left 9, right 8, no right 9"; None otherwise."""
    told = [part for part in meant if part.kind in _CLASSES]
    kinds = _classes(told)
    if kinds[-2:] == again[:2] == ["count", "side"] and kinds.count("count") > again.count("count"):
        side = next(part for part in stretch if _CLASSES.get(part.kind) == "side")
        return list(meant[: meant.index(told[-2])]) if side.kind == told[-1].kind else None  # "10 left 9 right no 8 right"
    if kinds[-1:] != ["count"] or not set(kinds) <= {"side", "count", "load"}:
        return None
    counts, counted = kinds.count("count"), again.count("count")
    place = meant.index(told[-1])
    if "load" in kinds:  # "12 at 10kg then 10 sorry 9 at 12kg"
        own = kinds[:-1] == ["count", "load"] * (counts - 1) and again == ["count", "load"]
        return list(meant[:place]) if own else None
    if kinds[-2:] != ["side", "count"]:
        only = _is_listed(meant) and "side" not in again and counts > counted == 1
        return list(meant[:place]) if only and again[0] == "count" else None
    if again[0] == "count":
        return list(meant[:place]) if again.count("side") < counted else None
    side = next(part for part in stretch if part.kind in _CLASSES)
    same = again[:2] == ["side", "count"] and side.kind == told[-2].kind and counts > counted
    return list(meant[: meant.index(told[-2])]) if same else None


def _is_listed(parts: Sequence[Part]) -> bool:
    """Whether nothing but counts is told, none of which may be a load: "12, 10", but not "10 at 14"."""
    return set(_classes(parts)) == {"count"} and not any(part.kind in _LEADING for part in parts)


def _stretches(parts: Sequence[Part], said: Mapping[int, Said], tokens: Sequence[Token]) -> list[list[Part]]:
    """The parts between words that take back, of those only that hold a quantity."""
    again = {one.first for one in said.values() if _puts_right(tokens, one)}
    breaks = sorted(again | {one.first for one in said.values() if one.meaning in _TAKING_BACK})
    stretches: list[list[Part]] = [[]]
    for part in parts:
        while breaks and part.at >= breaks[0]:
            told_again = breaks.pop(0) in again
            if told_again and _CLASSES.get(part.kind) not in _classes(stretches[-1]):
                continue  # "left 9, right 10, it was 14 kg"
            if any(other.kind in _CLASSES for other in stretches[-1]):
                stretches.append([])
            else:
                stretches[-1] = []
        stretches[-1].append(part)
    return [stretch for stretch in stretches if any(part.numbers and part.kind in _CLASSES for part in stretch)] or [list(parts)]


def _puts_right(tokens: Sequence[Token], said: Said) -> bool:
    """Whether "it was" tells again of the set before it, and of no other: "12 at 10kg, it was actually 13"."""
    if said.meaning != "mark-was" or not said.first or tokens[said.first].text not in {"it", "that"}:
        return False
    counted = said.last < len(tokens) and tokens[said.last].kind is Kind.NUMBER
    lead = tokens[said.first - 1]
    return counted and lead.kind is Kind.MARK and tokens[said.last - 1].text not in {"only", "just", "with"}


def _tells_again(told: Sequence[Part], again: Sequence[Part]) -> bool:
    """Whether the one quantity of a stretch is one of those told before."""
    known = {(part.kind, part.numbers) for part in told}
    return len(_classes(again)) == 1 and all((part.kind, part.numbers) in known for part in again if part.kind in _CLASSES)


def _classes(parts: Sequence[Part]) -> list[str]:
    return [_CLASSES[part.kind] for part in parts if part.kind in _CLASSES]


def _is_full(parts: Sequence[Part]) -> bool:
    """Whether more than one thing is told: reps and a load, reps and what was left."""
    return len(_classes(parts)) > 1


def _excuses(said: Mapping[int, Said], stretches: Sequence[Sequence[Part]]) -> list[Said]:
    """The one word that parts two stretches and may be an excuse."""
    found = [one for one in said.values() if one.meaning in _TAKING_BACK]
    return found if len(found) == 1 and len(stretches) == len(("before", "after")) else []


def goes_on_after_an_excuse(tokens: Sequence[Token], sorry: Said, before: Sequence[Part], after: Sequence[Part]) -> bool:
    """Whether one count is told, then an excuse, then its load, so that nothing is taken back; but "10x14 sorry 16kg"."""
    excuses = bool(_EXCUSING & {token.text for token in tokens[sorry.first : sorry.last]})
    told, added = ({part.kind for part in parts} & _OF_SETS for parts in (before, after))
    counts = sum(bool(part.numbers) for part in before)
    sided = sum(_CLASSES.get(part.kind) == "side" for part in before) == counts  # "12 left 11 right, sorry, 8kg"
    counted = told - _SIDES <= {"bare", "reps"} and (counts == 1 or sided)
    if excuses and counts == 1 and "bare" in told and [part.numbers for part in before] == [part.numbers for part in after]:
        raise Open  # "16 sorry 16kg"
    return excuses and counted and "load" in added and added - _SIDES <= {"load", "reserve", "effort"}


_SIDES = {kind for kind, said in _CLASSES.items() if said == "side"}
_EXCUSING = frozenset({"sorry", "apologies"})
_OF_SETS = {*_CLASSES, "more", "either", "set_count", "not"}
