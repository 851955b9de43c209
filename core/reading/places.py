"""The places on the body that a clause names, and their sides."""

from __future__ import annotations

from dataclasses import dataclass, replace
from itertools import pairwise
from typing import TYPE_CHECKING

from core.reading.acts import Side
from core.reading.lexicon import EXERCISES, HURT, PLACES, listed
from core.reading.token import Kind, Token

if TYPE_CHECKING:
    from collections.abc import Sequence


_SPREADING = listed("words_pain", "spreading")
NOT_THE_BODY_AFTER = EXERCISES - {
    "back",
    "front",
    "side",
    "hold",
    "one",
    "chest",
    "leg",
    "arm",
    "hip",
    "calf",
    "shoulder",
    "good",
} | frozenset(["day", "supported", "workout", "dips", "pump", "each", "hand", "free", "rest"])
_MY = listed("words_pain", "my")
_COUNTED_SIDES = frozenset({"arm", "leg", "hand"})
_LIMBS = frozenset({"arm", "arms", "leg", "legs", "hand", "hands", "foot", "feet", "side"})
_BEHIND = frozenset({"on", "in", "the", "my", "left", "right", "side", "one"})
_MOVING = frozenset({("when", "i"), ("whenever", "i"), ("as", "i"), ("if", "i"), ("while", "i"), ("time", "i")})
_THIS_MOMENT = frozenset({"now", "away", "here", "there"})


def _is_doing(pair: tuple[str, str]) -> bool:
    """Whether two words begin what one does when it hurts: "when lifting", "while I raise"."""
    return pair[0] in {"when", "whenever", "while", "on", "upon"} and pair[1].endswith("ing") and pair[1] not in HURT


@dataclass(frozen=True, slots=True)
class Place:
    """A place on the body at a token, with its side."""

    at: int
    name: str
    side: Side | None
    spread: bool


_OF_A_SIDE = frozenset(
    {
        "the",
        "my",
        "one",
        "side",
        "it",
        "is",
        "on",
        "that",
        "in",
        "mostly",
        "mainly",
        "only",
        "just",
        "more",
        "especially",
        "worse",
        "i",
        "mean",
        "think",
        "a",
        "bit",
    }
)


def side_alone(tokens: Sequence[Token], first: int, last: int) -> Side | None:
    """The side that a clause names and nothing else: "my elbow hurts, the left one"."""
    words = {tokens[i].text for i in range(first, last) if tokens[i].kind is not Kind.MARK}
    named = words & set(_SIDES)
    return _SIDES[named.pop()] if len(named) == 1 and words - named <= _OF_A_SIDE else None


_SIDES = {"left": Side.LEFT, "right": Side.RIGHT, "l": Side.LEFT, "r": Side.RIGHT}


def places_in(tokens: Sequence[Token], first: int, last: int) -> list[Place]:
    """The places on the body that a clause names."""
    found: list[Place] = []
    both = {"both"} if any(tokens[i].kind is Kind.NUMBER for i in range(first, last)) else set()
    counted = _counted_sides(tokens, max(1, first - _AROUND), min(len(tokens) - 1, last + _AROUND))
    for at in range(first, last):
        word = tokens[at].text
        if word not in PLACES or (word == "side" and not _is_flank(tokens, at, first, last)):
            continue
        before = tokens[at - 1].text if at > first else ""
        after = tokens[at + 1].text if at + 1 < last else ""
        shared = {"hand", "hands", "arm", "arms", "leg", "legs"} if both else {"hand", "hands"}
        if after in NOT_THE_BODY_AFTER or (before in {"each", "per", "chest", *both} and word in shared):
            continue
        if found and "between" in {tokens[i].text for i in range(max(first, at - 3), at)}:
            continue  # "my upper back between the shoulders"
        if before in {"each", "per"} and word in _LIMBS:
            continue  # "10 each arm and my wrist hurts"
        if at in counted:
            continue  # "left arm ten, right arm eight"
        if word == "back" and after == "of":
            continue  # "the back of my right knee"
        if word == "back" and not (
            before in _MY
            or after in HURT
            or before in HURT
            or at == first
            or after in {"is", "pain", "has", "feels", "gone", "went"}
        ):
            continue
        if word == "back" and before in {"get", "go", "come", "going", "am", "am i", "coming", "put"}:
            continue
        if found and _is_moved(tokens, first, found[-1].at, at, last):
            continue
        name = PLACES[word]
        if name == "back" and (part := _part_before(tokens, first, at) or _part_named(tokens, at, last)) is not None:
            name = f"{_PART_OF_BACK[part]} back"
        spread = any(tokens[i].text in _SPREADING for i in range(max(first, at - 4), at)) and bool(found)
        if not any(place.name == name and place.side is None for place in found):
            found.append(Place(at, name, _side(tokens, at, first, last), spread))
    return _of_one(tokens, found)


def _counted_sides(tokens: Sequence[Token], first: int, last: int) -> set[int]:
    """Where arms, legs or hands are named only to tell a number for each side: "left arm ten, right arm eight"."""
    limbs = {
        at: tokens[at - 1].text
        for at in range(first, last)
        if tokens[at].text in _COUNTED_SIDES and tokens[at + 1].kind is Kind.NUMBER
    }
    return set(limbs) if {"left", "right"} <= set(limbs.values()) else set()


_PART_OF_BACK = {"lower": "lower", "low": "lower", "bottom": "lower", "upper": "upper", "top": "upper"}


def _part_before(tokens: Sequence[Token], first: int, at: int) -> str | None:
    """Which part of the back is told before it, a side between them or not: "lower left back"."""
    while at > first and tokens[at - 1].text in {"left", "right", "l", "r", "side"}:
        at -= 1
    return tokens[at - 1].text if at > first and tokens[at - 1].text in _PART_OF_BACK else None


def _part_named(tokens: Sequence[Token], at: int, last: int) -> str | None:
    """Which part of the back is told after it: "back hurts lower bit"."""
    words = [tokens[i].text for i in range(at + 1, last)]
    return next((one for one, after in pairwise(words) if one in _PART_OF_BACK and after in {"bit", "part", "half", "end"}), None)


_BETWEEN = 12
"""Words between a place and another that is moved when it hurts, at most."""


def part_of_back(tokens: Sequence[Token], first: int, last: int) -> str | None:
    """The part of the back that a clause names and nothing else: "back's gone, lower bit"; None when it says anything else."""
    part = _part_named(tokens, first - 1, last)
    alone = all(tokens[i].text in _OF_A_PART or tokens[i].text in _PART_OF_BACK for i in range(first, last))
    return f"{_PART_OF_BACK[part]} back" if part is not None and alone else None


_OF_A_PART = frozenset({"the", "bit", "part", "half", "end", "of", "it", "right", "very", "just", "mostly", "mainly"})


def _is_moved(tokens: Sequence[Token], first: int, hurting: int, at: int, last: int) -> bool:
    """Whether the place at `at` is only what is moved when another one hurts: "my neck aches when I turn my head".

    So it is, too, when it hurts too much to be moved: "neck so sore I can't turn my head".
    """
    hurting = max(hurting, at - _BETWEEN)
    words = [tokens[i].text for i in range(hurting + 1, at)]
    so = words.index("so") if "so" in words else len(words)
    when = next(
        (
            n
            for n, pair in enumerate(pairwise(words))
            if pair in _MOVING or _is_doing(pair) or (n > so and pair[0] == "not" and pair[1] in _MOVED)
        ),
        None,
    )
    if when is None or "and" in words[when:]:
        return False
    return any(tokens[i].text in HURT for i in range(max(first, hurting - _BETWEEN), hurting + 1 + when)) and not any(
        tokens[i].text in HURT for i in range(at, last)
    )


def is_lifted(tokens: Sequence[Token], first: int, at: int, last: int) -> bool:
    """Whether the place at `at` is only what it hurts to move: "done my groin, hurts to lift the leg"."""
    words = [tokens[i].text for i in range(max(first, at - _NEAR), at)]
    to = next((n for n, pair in enumerate(pairwise(words)) if pair[0] == "to" and pair[1] in _MOVED), None)
    return to is not None and bool(HURT & set(words[:to])) and not any(tokens[i].text in HURT for i in range(at, last))


_MOVED = frozenset(
    {"lift", "raise", "move", "bend", "straighten", "turn", "twist", "lower", "swing", "extend", "stretch", "use", "put"}
)
_PARTS = {
    "hand": frozenset({"finger", "thumb", "palm", "wrist", "knuckle", "hand"}),
    "foot": frozenset({"toe", "heel", "ankle", "arch", "sole", "instep", "achilles", "foot"}),
    "leg": frozenset(
        {"knee", "calf", "hamstring", "thigh", "quad", "shin", "ankle", "hip", "groin", "glute", "adductor", "achilles", "leg"}
    ),
    "arm": frozenset({"elbow", "wrist", "forearm", "bicep", "tricep", "shoulder", "arm"}),
}
"""What belongs to a limb, so that the side of the limb is its side."""

_IN_THE_WHOLE = frozenset({"of", "on", "in", "from", "left", "right", "l", "r"})
_AND = frozenset({"and", "or", "&", "+", "plus", "also", ",", "/", "when", "while"})
_NEAR = 7
_AROUND = 40


def is_part(part: str, whole: str) -> bool:
    """Whether one place belongs to the other, which is a limb: a hamstring to a leg."""
    return part in _PARTS.get(whole, ())


def _of_one(tokens: Sequence[Token], found: list[Place]) -> list[Place]:
    """The places, where "the finger of my left hand" is one, with the side of the hand."""
    kept: list[Place] = []
    for place in found:
        part = kept[-1] if kept else None
        if part is not None and is_part(part.name, place.name):
            between = {tokens[i].text for i in range(part.at + 1, place.at)}
            if place.at - part.at <= _NEAR and not between & _AND and between & _IN_THE_WHOLE:
                kept[-1] = replace(part, side=part.side or place.side)
                continue
        if part is not None and is_part(place.name, part.name) and place.name != part.name and place.at - part.at <= _NEAR:
            between = {tokens[i].text for i in range(part.at + 1, place.at)}
            if not between & _AND and (not between or between & {"in", "of", "on", "at"}):
                kept[-1] = replace(place, side=place.side or part.side)
                continue  # "left hand fingers", "leg cramp in my calf"
        kept.append(place)
    return kept


def _is_flank(tokens: Sequence[Token], at: int, first: int, last: int) -> bool:
    """Whether "side" is the flank: "a stitch in my side", where nothing else is named that hurts."""
    lead = [tokens[i].text for i in range(max(first, at - 3), at)]
    mine = lead[-1:] == ["my"] or (lead[-2:-1] == ["my"] and lead[-1] in {"left", "right"})
    others = any(tokens[i].text in PLACES and i != at for i in range(first, last))
    return mine and bool({"in", "down"} & set(lead)) and not others


def _side(tokens: Sequence[Token], at: int, first: int, last: int) -> Side | None:
    """The side said right before the place, or after it ("knee, the left one", "on the right side")."""
    before = [tokens[i].text for i in range(max(first, at - 2), at)]
    for word in reversed(before):
        if word in _AND:
            break
        if word in {"left", "right", "l", "r"}:
            return Side.LEFT if word[0] == "l" else Side.RIGHT
    if (
        [tokens[i].text for i in range(max(first, at - 3), at)][-3:-2]
        and tokens[at - 3].text in {"left", "right"}
        and tokens[at - 2].text == "side"
    ):
        return Side(tokens[at - 3].text)
    lead = [tokens[i].text for i in range(max(first, at - 4), at)]
    for side in ("left", "right"):
        if f"{side} side of" in " ".join(lead) or f"{side} of my" in " ".join(lead):
            return Side(side)
    directly = tokens[at + 1].text if at + 1 < last else ""
    moment = directly == "right" and at + 2 < last and tokens[at + 2].text in _THIS_MOMENT  # "pressure in my chest right now"
    if at + 2 < last and tokens[at + 1].kind is Kind.MARK and tokens[at + 2].text in {"left", "right"}:
        parted = at + 3 == last or tokens[at + 3].kind is Kind.MARK
        directly = tokens[at + 2].text if parted else directly  # "knee. left. sharp."
    if directly in {"left", "right"} and not moment:
        return Side(directly)
    if directly in {"l", "r"} and at + 1 < last and tokens[at].text == PLACES[tokens[at].text]:
        return Side.LEFT if directly == "l" else Side.RIGHT
    ends = tokens[last - 1].text if last - 1 > at and "to" not in {tokens[i].text for i in range(last - 3, last)} else ""
    if ends in {"left", "right", "l", "r"} and any(tokens[i].text in HURT for i in range(first, last)):
        counted = tokens[last - 2].kind is Kind.NUMBER or _text_before(tokens, last) & {"reps", "rep", "and", "not", "to"}
        if not counted:  # "groin strain R", but "elbow sore, 2 left"
            return Side.LEFT if ends[0] == "l" else Side.RIGHT
    turns = next((i for i in range(at + 1, last - 1) if (tokens[i].text, tokens[i + 1].text) in _MOVING), last)
    last = turns if {"to", "towards"} & {tokens[i].text for i in range(turns, last)} else last  # "when I twist to the left"
    end = [tokens[i].text for i in range(max(at + 1, last - 2), last)]
    if end[-1:] in (["l"], ["r"]) and not any(tokens[i].kind is Kind.NUMBER for i in range(at, last)):
        return Side.LEFT if end[-1] == "l" else Side.RIGHT  # "forearm cramp l"
    if end[-1:] and end[-1] in {"one", "side"} and end[0] in _SIDES:
        return _SIDES[end[0]]
    if end in (["the", "left"], ["the", "right"]):
        return Side(end[1])
    after = " ".join(tokens[i].text for i in range(at + 1, min(last, at + 9)))
    for side in ("left", "right"):
        if any(
            form in after
            for form in (
                f"on the {side}",
                f"on my {side}",
                f"the {side} one",
                f"the {side} side",
                f"on {side}",
                f"of {side}",
                f"{side} side",
            )
        ):
            return Side(side)
    if any(form in after for form in ("that side", "this side", "the same side", "same side", "on that 1", "on that one")):
        return _side_told_before(tokens, first)  # "7 on the right, shoulder sore that side"
    return None


def _side_told_before(tokens: Sequence[Token], first: int) -> Side | None:
    """The side named last before `first`, where it is a side and not what was left."""
    for i in range(first - 1, 0, -1):
        following = tokens[i + 1].text if i + 1 < len(tokens) else ""
        if tokens[i].text in {"left", "right"} and (tokens[i - 1].text in {"on", "the", "my"} or following in _LIMBS):
            return Side(tokens[i].text)
    return None


def _text_before(tokens: Sequence[Token], last: int) -> set[str]:
    """The two words before the last one of a clause."""
    return {tokens[i].text for i in range(max(0, last - 3), last - 1)}


def end_of(tokens: Sequence[Token], place: Place, last: int) -> int:
    """The index after the place, and after the side told behind it: "my elbow right side"."""
    end = place.at + 1
    while end < last and tokens[end].text in _BEHIND:
        end += 1
    sided = any(tokens[i].text in {"left", "right"} for i in range(place.at + 1, end))
    counted = end < len(tokens) and tokens[end].kind is Kind.NUMBER
    return end if sided and not counted else place.at + 1


def begin_of(tokens: Sequence[Token], place: Place, first: int) -> int:
    """The index where the place begins, its side and "my" included."""
    at = place.at
    while at > first and tokens[at - 1].text in {"left", "right", "my", "lower", "upper", "l", "r", "the"}:
        at -= 1
    return at
