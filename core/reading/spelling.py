"""A word as typed becomes a word that the lexicon knows, where that is safe.

Sweaty thumbs swap, drop and double letters; rapidfuzz finds the nearest known word. The guards: a word the lexicon knows is
never touched; a number word or a unit is only restored when no other number or unit is nearly as near, and never from a
short word; when two known words are equally near nothing is changed.
"""

from __future__ import annotations

import re
from collections import defaultdict
from functools import lru_cache

from rapidfuzz.distance import OSA

from core.reading.lexicon import NUMBER_WORDS, REWRITES, UNITS, VOCABULARY

_LONG_WORD = 8
_SHORTEST_CORRECTED = 4
_SHORTEST_NUMBER = 5
_SHORTEST_SPLIT = 5
_REPEATS = re.compile(r"(.)\1{2,}")

_BY_LENGTH: dict[int, list[str]] = defaultdict(list)
for _word in sorted(VOCABULARY):
    if _word.isalpha() and len(_word) >= _SHORTEST_CORRECTED:
        _BY_LENGTH[len(_word)].append(_word)

_JOINED_PARTS = frozenset(
    word
    for word in VOCABULARY
    if (len(word) > 1 and word.isalpha() and word not in NUMBER_WORDS) or word in {"a", "i"}
)


def _counts(word: str) -> bool:
    """Whether the word is a number or a unit, where a wrong correction would be a wrong record."""
    return word in NUMBER_WORDS or word in UNITS


def expand(word: str) -> tuple[str, ...]:
    """The plain words that a word stands for."""
    if word in UNITS:
        return (UNITS[word].value,)
    return REWRITES.get(word, (word,))


@lru_cache(maxsize=4096)
def respell(word: str) -> tuple[str, ...]:
    """The known words nearest to `word`; the word itself when none is safely near."""
    if word in VOCABULARY:
        return expand(word)
    for shorter in (_REPEATS.sub(r"\1\1", word), _REPEATS.sub(r"\1", word)):
        if shorter != word and shorter in VOCABULARY:
            return expand(shorter)
    if len(word) < _SHORTEST_CORRECTED or not word.isalpha() or not word.isascii():
        return (word,)
    nearest = _nearest(word)
    if nearest is not None:
        return expand(nearest)
    return _split(word) or (word,)


def _nearest(word: str) -> str | None:
    """The one known word within reach, or None when there is none or two that would mean different things."""
    reach = 2 if len(word) >= _LONG_WORD else 1
    near: list[tuple[int, str]] = []
    for length in range(len(word) - reach, len(word) + reach + 1):
        for known in _BY_LENGTH.get(length, ()):
            distance = OSA.distance(word, known, score_cutoff=reach)
            if distance <= reach:
                near.append((distance, known))
    if not near:
        return None
    near.sort(key=lambda found: (found[0], found[1][0] != word[0], -len(found[1]), found[1]))
    distance, best = near[0]
    if any(_counts(known) for _, known in near):
        rivals = {expand(known) for _, known in near if _counts(known) or _ <= distance}
        if len(rivals) > 1 or len(word) < _SHORTEST_NUMBER or distance > 1:
            return None
    return best


def _split(word: str) -> tuple[str, ...] | None:
    """Two known words written without the space between them."""
    if len(word) < _SHORTEST_SPLIT:
        return None
    for cut in range(len(word) - 1, 0, -1):
        first, second = word[:cut], word[cut:]
        if first in _JOINED_PARTS and second in _JOINED_PARTS and max(len(first), len(second)) > 2:
            return (*expand(first), *expand(second))
    return None
