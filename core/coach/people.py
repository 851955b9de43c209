"""Who is meant by a name as a coach types it: exactly somebody, one of several, perhaps somebody, nobody. Nothing is ever guessed.

Capitals, accents on Latin letters, apostrophes, hyphens and a possessive ending make no difference. Exactly somebody is who bears
the whole name, or alone bears a whole part of it ("Mia" for "Mia Berg"), or such a part with the beginning of the next ("Mia B"). A
beginning alone ("Alex" for "Alexandra") and a slip of the thumb only ever make a `Near`, which is to be asked about.
"""

from __future__ import annotations

import re
import unicodedata
from collections import defaultdict
from dataclasses import dataclass
from functools import lru_cache

from rapidfuzz.distance import OSA

LONGEST_NAME = 64
"""Characters past which nothing typed is a name."""
_SHORTEST_BEGINNING = 3
_SHORTEST_SLIP = 3
_TWO_SLIPS = 7
_APOSTROPHES = "'\N{RIGHT SINGLE QUOTATION MARK}\N{LEFT SINGLE QUOTATION MARK}\N{MODIFIER LETTER APOSTROPHE}`\N{ACUTE ACCENT}"
_POSSESSIVE = re.compile(rf"(?:[{_APOSTROPHES}]s|(?<=s)[{_APOSTROPHES}])\s*$", re.IGNORECASE)
_LETTERS = str.maketrans({"ø": "o", "ł": "l", "đ": "d", "ð": "d", "þ": "th", "æ": "ae", "œ": "oe", "ı": "i"})


@dataclass(frozen=True)
class Found:
    """This one, without a doubt."""

    name: str


@dataclass(frozen=True)
class Several:
    """These match equally well, in the roster's order."""

    names: tuple[str, ...]


@dataclass(frozen=True)
class Near:
    """Nobody is called so, and only this one nearly: to be asked about, never assumed."""

    name: str


@dataclass(frozen=True)
class Nobody:
    """Nobody is called anything like it."""


Person = Found | Several | Near | Nobody


def find(typed: str, names: tuple[str, ...]) -> Person:
    """Who of these is meant by a name as typed."""
    exact = called(typed, names)
    if exact:
        return Found(exact[0]) if len(exact) == 1 else Several(exact)
    near = _near(name_words(typed), names)
    if not near:
        return Nobody()
    return Near(near[0]) if len(near) == 1 else Several(near)


def called(typed: str, names: tuple[str, ...]) -> tuple[str, ...]:
    """Those who are called so, wholly or in part, without any slip; more than one when all match equally well."""
    if len(typed) > LONGEST_NAME:
        return ()
    as_typed = tuple(name for name in dict.fromkeys(names) if name == typed)
    if as_typed and names.count(typed) == 1:
        return as_typed
    words = name_words(typed)
    wholes, parts, begun = _index(names)
    for index in (wholes, parts, begun):
        found = index.get(words, ())
        if found:
            return found
    return ()


@lru_cache(maxsize=4096)
def name_words(typed: str) -> tuple[str, ...]:
    """The words of a name as they are compared."""
    plain = _POSSESSIVE.sub("", typed.strip())
    folded = unicodedata.normalize("NFKD", plain.casefold()).translate(_LETTERS)
    kept: list[str] = []
    latin = False
    for character in folded:
        if unicodedata.category(character) == "Mn" and latin:
            continue
        latin = character.isalpha() and unicodedata.name(character, "").startswith("LATIN")
        kept.append(character)
    bare = "".join(character for character in kept if character not in _APOSTROPHES)
    return tuple("".join(c if c.isalnum() or unicodedata.category(c)[0] == "M" else " " for c in bare).split())


_Index = dict[tuple[str, ...], tuple[str, ...]]


@lru_cache(maxsize=64)
def _index(names: tuple[str, ...]) -> tuple[_Index, _Index, _Index]:
    """The names by their whole words, by each run of their words, and by a run with the next word begun."""
    wholes, parts, begun = (defaultdict[tuple[str, ...], list[str]](list) for _ in range(3))
    for name in names:
        words = name_words(name)
        for key in {words, ("".join(words),)} - {(), ("",)}:
            wholes[key].append(name)
        runs = {words[first:last] for first in range(len(words)) for last in range(first + 1, len(words) + 1)}
        for run in runs:
            parts[run].append(name)
        beginnings = {
            (*words[first:last], words[last][:length])
            for first in range(len(words))
            for last in range(first + 1, len(words))
            for length in range(1, len(words[last]))
        }
        for beginning in beginnings:
            begun[beginning].append(name)
    found = [{key: tuple(there) for key, there in index.items()} for index in (wholes, parts, begun)]
    return found[0], found[1], found[2]


@lru_cache(maxsize=1024)
def _near(words: tuple[str, ...], names: tuple[str, ...]) -> tuple[str, ...]:
    """Those whose name, or a part of it, begins so or is the fewest slips away."""
    typed = " ".join(words)
    if not _SHORTEST_SLIP <= len(typed) <= LONGEST_NAME:
        return ()
    slips = 2 if len(typed) >= _TWO_SLIPS else 1
    wholes, parts, _ = _index(names)
    best: dict[str, int] = {}
    for index in (wholes, parts):
        for key, bearers in index.items():
            called_so = " ".join(key)
            distance = OSA.distance(typed, called_so, score_cutoff=slips)
            if called_so.startswith(typed) and len(typed) >= _SHORTEST_BEGINNING:
                distance = 1
            if distance <= slips:
                for name in bearers:
                    best[name] = min(distance, best.get(name, distance))
    nearest = min(best.values(), default=0)
    return tuple(name for name in names if best.get(name) == nearest)
