"""The exercise a phrase names: its words as typed, without the small words around them."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from core.reading.lexicon import EXERCISES
from core.reading.spelling import respell

if TYPE_CHECKING:
    from collections.abc import Sequence

_LEADING = frozenset(
    "do doing perform performing a an the some my to how i you we again me about with those these go for on of it is what please can".split()
)
_TRAILING = frozenset(
    "again please properly now instead thanks correctly here today then exercise one mate coach form right too sir bro looks look like".split()
)
_POINTING = frozenset(
    "it this that these those them one something anything else another other different easier things same me again what you i the do a way "
    "move exercise station help thing everything how to properly perform get out new exercises movement last next current on just please form "
    "dumbbell dumbbells weight weights kettlebell is are does done correct technique show for of goes works".split()
)
_TOO_COMMON = frozenset(
    "one side front back good morning hold holds arm leg single step chest hip shoulder wall dead floor bench knee toe heel bear standing "
    "seated reverse incline decline kick tap complex front v".split()
)
_NEVER = frozenset(
    "what something anything rice dinner help day time kg lb reps set work weather wifi password news joke".split()
)


def exercise_named(words: Sequence[str], *, free: bool) -> tuple[bool, str | None]:
    """Whether these words can name an exercise, and its name; None when they only point at the one at hand.

    `free` lets an exercise pass that the lexicon does not know.
    """
    named = [word for word in words if word]
    while named and named[0] in _LEADING:
        named.pop(0)
    while named and named[-1] in _TRAILING:
        named.pop()
    if set(named) <= _POINTING:
        return True, None
    spelt = {word for raw in named for word in respell(raw.removesuffix("'s"))}
    known = bool(spelt & (EXERCISES - _TOO_COMMON)) or len(spelt & EXERCISES) > 1
    return known or (free and not spelt & _NEVER), " ".join(named)


def as_written(exercise: str | None, text: str) -> str | None:
    """The exercise in the letters it was typed in."""
    if exercise is None:
        return None
    found = re.search(r"\W+".join(map(re.escape, exercise.split())), text, re.IGNORECASE)
    return " ".join(found.group().split()) if found else exercise
