"""Urgent words misspelt: looked for with more patience than any others."""

from __future__ import annotations

from functools import lru_cache
from typing import TYPE_CHECKING

from rapidfuzz.distance import OSA

from core.reading.lexicon import ENGLISH, VOCABULARY, listed
from core.reading.token import Kind, Token

if TYPE_CHECKING:
    from collections.abc import Sequence


_URGENT_WORDS = tuple(
    sorted({word for entry in ("chest", "dizzy", "numb", "breath", "collapse", "with") for word in listed("urgent", entry)})
)
_SHORTEST = 4
_PATIENT_FROM = 7
_PAIRS = (
    ("urgent-chest", {"chest"}, set(listed("words_pain", "beside_chest")), 5),
    ("urgent-heart", {"heart"}, {"attack"}, 1),
    ("urgent-numb", {"pins"}, {"needles"}, 2),
    ("urgent-breath", {"short", "shortness"}, {"breath"}, 2),
    ("urgent-breath", {"cant", "cannot", "couldnt"}, {"breathe", "breath"}, 4),
    ("urgent-breath", {"struggling", "gasping"}, {"breathe", "breath"}, 3),
    ("urgent-numb", {"cant"}, {"feel"}, 1),
    ("urgent-severe", {"worst", "severe", "sudden"}, {"headache", "pain"}, 2),
    ("urgent-dizzy", {"room", "head"}, {"spinning"}, 2),
)  # fmt: skip
"""Words that are urgent together, how far apart at most; one of each pair may be misspelt in any way thumbs can."""
_OTHER_WORDS = listed("words_pain", "other_words")


@lru_cache(maxsize=4096)
def urgent_spelling(raw: str) -> str | None:
    """The urgent word that an unknown word may be meant for: one slip, or two in a long word."""
    if raw in VOCABULARY or raw in ENGLISH or len(raw) < _SHORTEST or not raw.isalpha():
        return None
    reach = 2 if len(raw) >= _PATIENT_FROM + 1 else 1
    best = min(_URGENT_WORDS, key=lambda word: (OSA.distance(raw, word), word))
    return best if OSA.distance(raw, best) <= reach and (best[0] == raw[0] or OSA.distance(raw, best) == 1) else None


def misspelt_signs(tokens: Sequence[Token], first: int, last: int) -> list[tuple[str, int, int]]:
    """Urgent signs of two words, of which one is spelt right and the other only nearly."""
    raw = [(i, tokens[i].raw) for i in range(first, last) if tokens[i].raw and tokens[i].kind is Kind.WORD]
    found = []
    for meaning, ones, others, reach in _PAIRS:
        for n, (i, word) in enumerate(raw):
            one = _nearness(word, ones)
            if one > 1:
                continue
            for j, other in raw[max(0, n - reach) : n + reach + 1]:
                if j != i and one + _nearness(other, others) == 1:
                    found.append((meaning, min(i, j), max(i, j) + 1))
    return found


@lru_cache(maxsize=4096)
def _distance(word: str, known: str) -> int:
    return OSA.distance(word, known, score_cutoff=1)


def _nearness(word: str, knowns: set[str]) -> int:
    """0 for a word itself, 1 for one slip from it, 2 for anything else."""
    plain = word.replace("'", "")
    if plain in knowns:
        return 0
    if "'" in word:
        return min(_distance(plain, known) for known in knowns)
    if len(word) < _SHORTEST - 1 or word in _OTHER_WORDS:
        return 2
    return min(_distance(word, known) for known in knowns)
