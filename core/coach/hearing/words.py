"""A coach's text as words that know where they stand in it, so that what is a coach's own wording can be cut out untouched."""

from __future__ import annotations

import re
import unicodedata
from dataclasses import dataclass
from functools import lru_cache
from typing import TYPE_CHECKING

from rapidfuzz.distance import OSA

from core.catalogue import all_exercises
from core.catalogue.matching import words_of
from core.coach.hearing.lists import SHORT_FORMS
from core.coach.people import called
from core.reading.lexicon import ENGLISH, EXERCISES, VOCABULARY

if TYPE_CHECKING:
    from collections.abc import Iterator

_QUOTE = "'"
_APOSTROPHES = frozenset(
    "'\N{RIGHT SINGLE QUOTATION MARK}\N{LEFT SINGLE QUOTATION MARK}\N{MODIFIER LETTER APOSTROPHE}`\N{ACUTE ACCENT}"
)
_IN_NUMBERS = frozenset(".,:/")
_STOPS = frozenset("?/()+&%@=#<>|{}[]\\^$£€")
_SHORTEST_MENDED = 3
_LONG = 8


@dataclass(frozen=True)
class Word:
    """One word or mark: as it is compared, and where it stands in the text, `[start, end)`.

    `mark` is "," for what only parts words (comma, colon, dash, line end, sign), "?" and the like for what means something.
    """

    says: str
    start: int
    end: int
    mark: bool = False
    line_end: bool = False

    @property
    def parts_only(self) -> bool:
        """Whether it may stand between any two words without meaning anything."""
        return self.mark and self.says not in _STOPS


def words_in(text: str, names: tuple[str, ...]) -> tuple[Word, ...]:
    """The words and marks of a text; a possessive ending is a word of its own, a short form becomes the words it stands for."""
    return tuple(word for piece in _pieces(text) for word in _spelled_out(piece, text, names))


def _pieces(text: str) -> Iterator[Word]:
    """Runs of letters and digits, and single marks."""
    at = 0
    while at < len(text):
        if _is_letter(text[at]):
            end = at + 1
            while end < len(text) and (_is_letter(text[end]) or _joins(text, end)):
                end += 1
            yield Word(_folded(text[at:end]), at, end)
            at = end
            continue
        if text[at] == "-" and at + 1 < len(text) and text[at + 1].isdigit() and (at == 0 or text[at - 1].isspace()):
            yield Word("<", at, at + 1, mark=True)  # less than nothing: no dash
        elif text[at] in "\n\r\u2028\u2029":
            yield Word(",", at, at + 1, mark=True, line_end=True)
        elif not text[at].isspace():
            yield Word(text[at] if text[at] in _STOPS or text[at] in ".:!;" else ",", at, at + 1, mark=True)
        at += 1


def _is_letter(character: str) -> bool:
    return character.isalnum() or unicodedata.category(character)[0] == "M"


def _joins(text: str, at: int) -> bool:
    """Whether the sign at a place joins what stands on both its sides: an apostrophe, a hyphen, a point in a number."""
    if at + 1 >= len(text) or not _is_letter(text[at + 1]):
        return False
    if text[at] in _APOSTROPHES or text[at] in "-\N{HYPHEN}\N{NON-BREAKING HYPHEN}\N{ZERO WIDTH NON-JOINER}\N{ZERO WIDTH JOINER}":
        return True
    return text[at] in _IN_NUMBERS and text[at - 1].isdigit() and text[at + 1].isdigit()


def _folded(raw: str) -> str:
    plain = unicodedata.normalize("NFKC", raw.lower())
    return "".join(_QUOTE if character in _APOSTROPHES else character for character in plain)


def _spelled_out(word: Word, text: str, names: tuple[str, ...]) -> Iterator[Word]:
    """A word in the words it stands for; the first of them stands where it stood."""
    if word.mark:
        if text[word.start] in _APOSTROPHES and word.start and text[word.start - 1] in "sS":
            yield Word("'s", word.start, word.end)  # "James' row"
        else:
            yield word
        return
    raw = text[word.start : word.end]
    if word.says in SHORT_FORMS and not called(raw, names):
        first, *others = SHORT_FORMS[word.says]
        yield Word(first, word.start, word.end)
        for other in others:
            yield Word(other, word.end, word.end)
        return
    base = word.says.removesuffix("'s")
    if base != word.says and base:
        cut = word.end - 2
        yield Word(base, word.start, cut)
        yield Word("'s", cut, word.end)
    elif word.says.endswith("s") and _is_bare_name(raw[:-1], names) and not called(raw, names):
        yield Word(word.says[:-1], word.start, word.end - 1)
        yield Word("'s", word.end - 1, word.end)
    else:
        yield word


def _is_bare_name(raw: str, names: tuple[str, ...]) -> bool:
    return len(raw) > 1 and raw.isalnum() and bool(called(raw, names))


@lru_cache(maxsize=1)
def exercise_words() -> frozenset[str]:
    """Every word that is in the name of an exercise, singular, or that people use for one."""
    named = {word for exercise in all_exercises().values() for name in (exercise.name, *exercise.names) for word in words_of(name)}
    return frozenset(named | {single for word in EXERCISES for single in words_of(word)})


@lru_cache(maxsize=4096)
def is_ordinary(word: str) -> bool:
    """Whether a word is one of everyday English, or of training: no name that was mistyped."""
    return word in ENGLISH or word in VOCABULARY or bool(exercise_words().intersection(words_of(word)))


@lru_cache(maxsize=4096)
def mended(word: str, known: frozenset[str]) -> str:
    """The word of `known` that a thumb most likely meant; the word itself when it is a word, or when two are as near."""
    if word in known or is_ordinary(word) or len(word) < _SHORTEST_MENDED or not re.fullmatch("[a-z]+", word):
        return word
    ranked = sorted(
        (rank, other) for other in known if abs(len(other) - len(word)) <= 1 and (rank := _slip(word, other)) is not None
    )
    if not ranked or (len(ranked) > 1 and ranked[0][0] == ranked[1][0]):
        return word
    return ranked[0][1]


def _slip(word: str, meant: str) -> int | None:
    """How unlikely a slip it is (0: letters swapped or one left out), None when it is none."""
    if len(meant) <= _SHORTEST_MENDED - 1 or not meant.isalpha():
        return None
    if len(word) == len(meant) and sorted(word) == sorted(meant) and OSA.distance(word, meant) == 1:
        return 0
    if word[0] != meant[0]:
        return None
    distance = OSA.distance(word, meant, score_cutoff=2)
    if len(word) == len(meant) - 1 and distance == 1:
        return 0
    if len(word) > _SHORTEST_MENDED and distance == 1:
        return 1
    return 2 if len(word) >= _LONG and distance <= 2 else None  # noqa: PLR2004
