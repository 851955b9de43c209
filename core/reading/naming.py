"""The exercise a phrase names: its words as typed, without the small words around them."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from core.reading.lexicon import EXERCISES, UNITS, listed
from core.reading.spelling import respell

if TYPE_CHECKING:
    from collections.abc import Sequence

_LEADING = listed("words_naming", "leading")
_TRAILING = listed("words_naming", "trailing")
_POINTING = listed("words_naming", "pointing")
_TOO_COMMON = listed("words_naming", "too_common")
_DOING = frozenset(
    {"do", "doing", "try", "trying", "perform", "performs", "performing", "performed", "executed", "done", "have", "use"}
)
_COMPARING = frozenset({"than", "instead", "rather", "if"})
_ABOUT = frozenset({"on", "for", "in", "during", "of"})
_IN_ITS_PLACE = frozenset({"for", "over"})
_LESSONS = listed("words_naming", "lessons")
_OUTSIDE = listed("words_naming", "outside")
_SHORTEST_NAME = 3
_JOINTS = listed("words_naming", "joints")
_AT_HAND = listed("words_naming", "at_hand")
_NEVER = listed("words_naming", "never")


def exercise_named(words: Sequence[str], *, free: bool) -> tuple[bool, str | None]:
    """Whether these words can name an exercise, and its name; None when they only point at the one at hand.

    `free` lets an exercise pass that the lexicon does not know.
    """
    named = [word for word in words if any(map(str.isalnum, word))]
    if any(word in UNITS for word in named):
        return False, None
    verb = max((i for i, word in enumerate(named[:-1]) if word in _DOING), default=-1)
    named = named[verb + 1 :]
    while named and _is_all(named[0], _LEADING | _OUTSIDE):
        named.pop(0)
    if named[:2] in (["instead", "of"], ["rather", "than"]):
        return True, None  # "what can I do instead of burpees"
    named = named[: next((i for i, word in enumerate(named) if i and _is_all(word, _COMPARING | _OUTSIDE)), len(named))]
    if len(named) > len(("refresher", "on")) and named[0] in _LESSONS and named[1] in _ABOUT:
        named = named[2:]  # "a refresher on skull crushers"
        while named and named[0] in _LEADING:
            named.pop(0)
    if len(named) > len(_IN_ITS_PLACE) and named[-2] in _IN_ITS_PLACE and named[-1] in _AT_HAND:
        named = named[:-2]  # "sub in push presses for this"
    while named and _is_all(named[-1], _TRAILING):
        named.pop()
    spelt = {word for raw in named for word in respell(raw.removesuffix("'s"))}
    if set(named) <= _POINTING or spelt <= _POINTING | _JOINTS:
        return True, None  # "how should I hold my wrists"
    known = bool(spelt & (EXERCISES - _TOO_COMMON)) or len(spelt & EXERCISES) > 1
    readable = any(len(word) >= _SHORTEST_NAME for word in named)
    return known or (free and readable and not spelt & _NEVER), " ".join(named)


def _is_all(word: str, words: frozenset[str]) -> bool:
    """Whether a word as typed stands for nothing but some of `words`."""
    return set(respell(word)) <= words


def points(words: Sequence[str]) -> bool:
    """Whether words that name no exercise point at the one at hand: "this one", but not "you" of "forgot to tell you"."""
    return any(set(respell(word)) & (_AT_HAND | _JOINTS) for word in words)


def as_written(exercise: str | None, text: str) -> str | None:
    """The exercise in the letters it was typed in."""
    if exercise is None:
        return None
    found = re.search(r"\W*".join(map(re.escape, exercise.split())), text, re.IGNORECASE)
    return " ".join(found.group().split()) if found else exercise
