"""How heavy a load was, told by a clause that says nothing else: "rather chunky these", "weight is very less for me".

A set phrase names a few words and forgives any others; here every word must be one that may stand in such a clause, so that
"easy day at work" and "light has gone" are no feelings. What is asked for instead ("heavier next time please") tells the same.
"""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING

from core.reading.lexicon import COURTESY, listed
from core.reading.token import Kind, Token

if TYPE_CHECKING:
    from collections.abc import Sequence

_LONGEST = 14
_SHORTEST_DEGREE = 5
_HARDER = frozenset({"harder", "tougher"})
_BY_FAR = frozenset({"much", "way", "far", "lot", "lots", "loads", "heaps", "miles"})
_PLEASING = frozenset({"please", "kindly", "abeg"})
_NO_DEGREES = frozenset(
    {"exactly", "hardly", "barely", "scarcely", "mostly", "family", "weekly", "monthly", "previously", "normally", "usually"}
    | {"supposedly", "apparently", "allegedly", "friendly"}
)
"""Words in "-ly" that deny, tell of another time, or are none of degree."""
_HEAVY, _LIGHT = listed("feelings", "heavy"), listed("feelings", "light")
_HEAVY_OF, _LIGHT_OF = listed("feelings", "heavy_of"), listed("feelings", "light_of")
_HEAVY_WEIGHT, _LIGHT_WEIGHT = listed("feelings", "heavy_weight"), listed("feelings", "light_weight")
_UP, _DOWN = listed("feelings", "up"), listed("feelings", "down")
_WEIGHTS = listed("feelings", "weights")
_WISHING = listed("feelings", "wishing")
_COPULAS = listed("feelings", "copulas")
_DEGREES = listed("feelings", "degrees")
_AROUND = listed("feelings", "around") | COURTESY | {"last", "few", "couple", "reps", "rep"}
_TELLING = _HEAVY | _LIGHT | _HEAVY_OF | _LIGHT_OF
_ABOUT = _AROUND | _COPULAS | _DEGREES | _WEIGHTS
_POINTING = frozenset({"that", "this", "these", "those"})
_LIMBS = frozenset({"side", "arm", "leg", "hand"})
_MUCH = frozenset({"too", "very", "so", "really", "way", "quite", "bit", "little", "far", "rather", "super"})
_PLAINLY = _MUCH - {"bit", "little", "far"}
"""Words before "less weight" that make it a complaint; "a bit less weight" is a wish, or what was changed."""
_LAST = frozenset({"set", "weight", "load", "round", "exercise", "station", "few", "couple", "reps", "rep", "bit", "ones"})
_ARTICLES = frozenset({"the", "a", "my", "our", "no"})
_ONES = frozenset({"one", "ones", "set", "side", "thing", "things", "stuff"})
_COMPARED = frozenset({"more", "most", "than"})
_WHOLLY = frozenset({"pure", "as", "like", "too", "absolute", "proper", "total", "complete"})
_DENYING = frozenset({"not", "no", "never", "without"})
_TOLD_WITH = _ABOUT | _TELLING
_WEIGHED_WITH = _ABOUT | _HEAVY_WEIGHT | _LIGHT_WEIGHT
_WISHED_WITH = _AROUND | _DEGREES | _WEIGHTS | _WISHING | _UP | _DOWN


def feeling(tokens: Sequence[Token], first: int, last: int, *, leads: bool) -> str | None:
    """What tokens `[first, last)` tell, and nothing else: "heavy", "light", or None.

    What `leads` to a number asks for nothing: "lighter pair: 17", "add 2".
    """
    span = [token for token in tokens[first:last] if token.kind is not Kind.MARK]
    if not span or len(span) > _LONGEST or any(token.kind is not Kind.WORD for token in span):
        return None
    words = [token.text for token in span if not _is_degree(token.text)]
    if not words or words[0] == "with" or any(one == "last" and after not in _LAST for one, after in pairwise([*words, ""])):
        return None  # "with lighter ones", "but the last was a fight"
    if any(one in {"left", "right"} and after in _LIMBS for one, after in pairwise(words)):
        return None  # "right side easier": of one side only
    if words[:2] == ["not", "exactly"] and set(words[2:]) & _HEAVY and set(words[2:]) <= _ABOUT | _HEAVY:
        return "light"  # "not exactly taxing that"
    if (compared := _compared(words)) is not None:
        return compared
    return _not_enough(words) or _told(words) or _weighed(words) or (None if leads else _wished(words))


def _is_degree(word: str) -> bool:
    """Whether a word only says how much, and is none of those that the rules look at: "absurdly", "outrageously"."""
    return len(word) > _SHORTEST_DEGREE and word.endswith("ly") and word not in _TOLD_WITH | _WISHED_WITH | _NO_DEGREES


def _compared(words: Sequence[str]) -> str | None:
    """What "much easier" tells of the set before it; "easier please" asks for what is easier."""
    told = [word for much, word in pairwise(words) if much in _BY_FAR and word in {"easier", *_HARDER}]
    if not told or not set(words) <= (_ABOUT | _UP | _DOWN) - _PLEASING:
        return None
    return "light" if told[0] == "easier" else "heavy"


def _not_enough(words: Sequence[str]) -> str | None:
    """What a clause tells with "not enough": "not heavy enough for me", "weight is not enough"."""
    said = set(words)
    if not {"not", "enough"} <= said or not said <= _TOLD_WITH | {"not", "enough"}:
        return None
    if said & _LIGHT:
        return "heavy"
    return "light" if said & (_HEAVY | _WEIGHTS | {"challenging"}) else None


def _told(words: Sequence[str]) -> str | None:
    """What a clause tells of how it was: "that one was really hard", "she's a beast", "easy today"."""
    said = set(words)
    if not said <= _TOLD_WITH or said & _DENYING:
        return None
    pointed = ("of", "a") in set(pairwise(words)) and bool(said & (_WEIGHTS | _POINTING))  # "bit of a beast that"
    of = pointed or bool(said & (_COPULAS | _WHOLLY))
    if said & _TELLING == {"nothing"} and ("it", "is") in set(pairwise(words)):
        return None  # "it is nothing, I am sure": of an ache
    if _is_what_shines(words) or (said & _HEAVY_OF and said & _LIGHT):
        return None  # "the light here is bad", "stiff breeze"
    heavy = bool(said & _HEAVY or (of and said & _HEAVY_OF))
    light = bool(said & _LIGHT or (of and said & _LIGHT_OF))
    return None if heavy == light else "heavy" if heavy else "light"


def _is_what_shines(words: Sequence[str]) -> bool:
    """Whether "light" is a thing: "the light is bad", but "the light one", "the light dumbbells"."""
    following = zip(words, words[1:], [*words[2:], ""], strict=False)
    return any(
        lead in _ARTICLES and word in {"light", "lights"} and after not in _WEIGHTS | _ONES for lead, word, after in following
    )


def _weighed(words: Sequence[str]) -> str | None:
    """What a clause tells of the weight: "the weight is very less", "this load too small for me"; "bigger weight" is a wish."""
    said = set(words)
    if said & _LIGHT_WEIGHT - {"little"}:
        said -= _HEAVY_WEIGHT
        words = [word for word in words if word not in _HEAVY_WEIGHT]  # "too much less"
    if not said <= _WEIGHED_WITH or not (said & _WEIGHTS or "too" in said):
        return None
    for at, word in enumerate(words):
        led = bool(set(words[:at]) & (_COPULAS | _MUCH)) or (words[at - 1 : at] != [] and words[at - 1] in _WEIGHTS)
        if not led or (words[at + 1 : at + 2] and words[at + 1] in _WEIGHTS and not set(words[:at]) & _PLAINLY):
            continue
        if word in _LIGHT_WEIGHT and (word != "little" or at + 1 == len(words) or words[at + 1] in _AROUND):
            return "light"
        if word in _HEAVY_WEIGHT and (word != "much" or said & _WEIGHTS):
            if word == "more" and "is" not in said:
                continue
            return "heavy"
    return None


def _wished(words: Sequence[str]) -> str | None:
    """What a clause asks for instead: "heavier next time please", "could have used more weight", "kindly reduce the weight"."""
    said = {word for before, word in pairwise(["", *words]) if word != "with" or before not in {"do", "done"}}
    if not said <= _WISHED_WITH or "than" in said:
        return None
    weighs = bool(said & _WEIGHTS)
    up = bool(said & _UP - _COMPARED) or (weighs and bool(said & _UP))
    down = bool(said & _DOWN - {"less"}) or (weighs and bool(said & _DOWN))
    if up == down:
        return None
    bare = said & {"add", "increase", "raise", "bump", "reduce", "decrease", "lower", "extra"}
    if bare and not (said & _WEIGHTS or said & {"am", "it"} or len(said - COURTESY) == 1):
        return None
    return "light" if up else "heavy"
