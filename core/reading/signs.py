"""Urgent signs told by words that belong together, in whatever order they come.

A line of `[signs]` in the lexicon holds groups of words, of which each must have one within reach of the others, and words that
forbid it. What stands in the usual order is a phrase (`phrases.txt`); these lines catch what nobody has thought of.
"""

from __future__ import annotations

from functools import cache
from typing import TYPE_CHECKING

from core.reading.lexicon import HURT, PLACES, SIGNS, listed
from core.reading.token import Kind

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from core.reading.token import Token

_REACH = 7
"""Words between one of the first group and any of the others, at most."""
_LONGEST = 60
"""Tokens of a clause beyond which no order is left to read."""
_LISTS = {"@place": frozenset(PLACES), "@hurt": HURT, "@limb": listed("words_pain", "limbs")}


def pressed_chest(tokens: Sequence[Token]) -> tuple[int, int] | None:
    """Where a chest is named that something presses, though the words stand apart: "a pressing... like, in my chest, pressing"."""
    words = [token.text for token in tokens]
    for at in range(2, len(words)):
        if words[at] == "chest" and words[at - 1] in {"my", "the", "me"} and words[at - 2] in _INSIDE:
            near = set(words[max(0, at - _REACH) : at + _REACH])
            if near & _PRESSING and not near & _LIFTED_THERE:
                return at - 2, at + 1
    return None


_INSIDE = frozenset({"in", "inside", "across", "behind"})
_PRESSING = frozenset({"pressing", "pressure", "squeezing", "squeeze", "crushing", "tightening", "gripping", "clamping"})
_LIFTED_THERE = frozenset(
    {"dumbbell", "dumbbells", "weight", "weights", "kg", "lb", "press", "presses", "bar", "muscles", "muscle", "no"}
)


def breath_excepted(tokens: Sequence[Token]) -> tuple[int, int] | None:
    """Where breath is what is left out of "all is well" ("it doesn't hurt apart from when I breathe", "breathing but barely")."""
    words = [token.text for token in tokens]
    for at, word in enumerate(words):
        if word in _BREATHING and words[at + 1 : at + 2] == ["but"] and set(words[at + 2 : at + 4]) & _HARDLY:
            return at, at + 3
        leaves_out = word in _EXCEPTING or words[at : at + 2] in (["apart", "from"], ["other", "than"])
        breathed = next((end for end in range(at + 1, min(at + _REACH, len(words))) if words[end] in _BREATHING), None)
        if leaves_out and breathed is not None and set(words[:at]) & (HURT | _HOW_IT_IS):
            return at, breathed + 1
    return None


_BREATHING = frozenset({"breathe", "breathing", "inhale", "inhaling", "breath"})
_HARDLY = frozenset({"barely", "hardly", "scarcely", "only"})
_HOW_IT_IS = frozenset({"pain", "pains", "painful", "sore", "fine", "ok", "well", "good"})
_EXCEPTING = frozenset({"except", "excepting", "unless", "bar", "barring"})


def signs_in(tokens: Sequence[Token], first: int, last: int) -> Iterator[tuple[str, int, int]]:
    """The signs of tokens `[first, last)`, one clause: what each means and the span of its words."""
    if last - first > _LONGEST:
        last = first + _LONGEST
    spots = [at for at in range(first, last) if tokens[at].kind is not Kind.MARK]
    words = [tokens[at].text for at in spots]
    said = {word for word, after in zip(words, [*words[1:], ""], strict=True) if word != "right" or after not in PLACES}
    for meaning, groups, never in _lines():
        if said.isdisjoint(groups[0]) or not said.isdisjoint(never) or any(said.isdisjoint(group) for group in groups[1:]):
            continue
        for at in (i for i, word in enumerate(words) if word in groups[0]):
            near = [_nearest(words, at, group) for group in groups[1:]]
            if all(place is not None for place in near):
                told = [at, *(place for place in near if place is not None)]
                yield meaning, spots[min(told)], spots[max(told)] + 1
                break


def _nearest(words: Sequence[str], at: int, group: frozenset[str]) -> int | None:
    """The word of a group nearest to `at`, and within reach of it."""
    spots = [i for i in range(max(0, at - _REACH), min(len(words), at + _REACH + 1)) if i != at and words[i] in group]
    return min(spots, key=lambda i: abs(i - at), default=None)


@cache
def _lines() -> tuple[tuple[str, tuple[frozenset[str], ...], frozenset[str]], ...]:
    """Each line: its meaning, the groups of which one word each must be there, and the words that forbid it."""
    return tuple(
        (
            meaning,
            tuple(_words(group) for group in line.split() if not group.startswith("!")),
            frozenset[str]().union(*(_words(group[1:]) for group in line.split() if group.startswith("!"))),
        )
        for meaning, text in SIGNS.items()
        for line in text.strip().split("\n")
    )


def _words(group: str) -> frozenset[str]:
    return frozenset[str]().union(*(_LISTS.get(word, frozenset({word})) for word in group.split("|")))
