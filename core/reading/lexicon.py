"""The words people type, read once from `lexicon.toml`, and the lists that the other modules ask it for."""

from __future__ import annotations

import re
import tomllib
from importlib.resources import files
from typing import TYPE_CHECKING, Any

from core.units import Unit

if TYPE_CHECKING:
    from collections.abc import Iterator

_HERE = files("core.reading")
_DATA: dict[str, Any] = tomllib.loads(_HERE.joinpath("lexicon.toml").read_text("utf-8"))

_PHRASES_TEXT: str = _HERE.joinpath("phrases.txt").read_text("utf-8")


def phrase_lines() -> Iterator[tuple[str, bool, str]]:
    """The set phrases as written: what each line means, whether it must be all that is said, and the line."""
    meaning, alone = "", False
    for line in _PHRASES_TEXT.splitlines():
        if heading := re.fullmatch(r"\[([a-z-]+)( alone)?\]", line):
            meaning, alone = heading[1], heading[2] is not None
        elif line.strip() and not line.startswith("#"):
            yield meaning, alone, line


def _words(table: str, entry: str) -> frozenset[str]:
    return frozenset(_DATA[table][entry].split())


UNITS: dict[str, Unit] = {word: unit for unit in Unit for word in _words("units", unit.value)}
"""Each way to write a unit, and the unit."""

REWRITES: dict[str, tuple[str, ...]] = {word: tuple(says.split()) for word, says in _DATA["rewrites"].items()}
"""Short forms and what they are short for."""

PAIRS: dict[tuple[str, ...], tuple[str, ...]] = {tuple(two.split()): tuple(says.split()) for two, says in _DATA["pairs"].items()}
"""Two words that mean something else together."""

NUMBER_WORDS: dict[str, int] = {word: int(value) for word, value in _DATA["numbers"].items()}
"""Words for whole numbers."""

NUMBER_PLURALS: dict[str, int] = {word: int(value) for word, value in _DATA["number_plurals"].items()}
"""Plurals of number words, as in "the twelves"."""

UNIT_SLIPS: dict[str, Unit] = {word: unit for unit in Unit for word in _words("unit_slips", unit.value)}
"""What thumbs make of a unit; read as one only right after a number."""

MISTYPED: dict[str, frozenset[str]] = {word: frozenset(slips.split()) for word, slips in _DATA["mistyped"].items()}
"""Words of their own that thumbs and dictation make of another; read so only where its place asks for that other."""

SECOND_LOOK: dict[str, tuple[str, ...]] = {word: (meant,) for word, meant in _DATA["second_look"].items()}
"""Words of their own that thumbs make of another; read so only where a message says nothing at all as it stands."""

PLACES: dict[str, str] = {word: place for place, words in _DATA["body"].items() for word in words.split()}
"""Each way to name a place on the body, and its plain noun."""

HURT = _words("pain", "hurt")
CHEST_TROUBLE = _words("pain", "chest_trouble")
AMOUNTS: dict[str, frozenset[str]] = {entry: _words("amounts", entry) for entry in _DATA["amounts"]}
GUARDS: dict[str, frozenset[str]] = {entry: _words("guards", entry) for entry in _DATA["guards"]}
EXERCISES = _words("exercises", "words")
PLAIN = _words("plain", "words")
COURTESY = _words("plain", "courtesy")

GISTS: dict[str, str] = _DATA["gists"]
"""The lines of `core.reading.gist` by what they mean."""

SIGNS: dict[str, dict[str, str]] = {table: _DATA[table] for table in ("signs", "signs_apart")}
"""The lines of `core.reading.signs`, of one clause or of several, by what they mean."""

_PHRASE_WORDS = frozenset(re.findall(r"[a-z']+", re.sub(r"(?m)^(#.*|\[[a-z -]+\])$|\{\w+\}", " ", _PHRASES_TEXT)))

_GIST_WORDS = frozenset(
    re.findall(r"[a-z']+", " ".join((*GISTS.values(), *(text for lines in SIGNS.values() for text in lines.values()))))
)

_COMPANY_WORDS = frozenset(word for says in _DATA["words_company"].values() for word in says.split())

ENGLISH = _GIST_WORDS | _COMPANY_WORDS | frozenset(_HERE.joinpath("english.txt").read_text("utf-8").split())
"""Common English words that mean nothing here: spelling leaves them alone (gathered from prose and by hand)."""

VOCABULARY = frozenset(
    {
        *UNITS,
        *REWRITES,
        *(word for says in REWRITES.values() for word in says),
        *NUMBER_WORDS,
        *NUMBER_PLURALS,
        *_words("structure", "words"),
        *(word for pair in _DATA["pairs"] for word in pair.split()),
        *PLACES,
        *HURT,
        *CHEST_TROUBLE,
        *EXERCISES,
        *PLAIN,
        *COURTESY,
        *_PHRASE_WORDS,
        *(word for words in (*AMOUNTS.values(), *GUARDS.values()) for word in words),
        *(
            word
            for table in ("when", "gear", "urgent", "correction", "feelings")
            for says in _DATA[table].values()
            for word in says.split()
        ),
    }
)
"""Every word the reader knows, right spellings and accepted short forms alike."""


CORE = frozenset(
    {
        *UNITS, *NUMBER_WORDS, *PLACES, *HURT, *_words("structure", "words"),
        *(word for entry in ("reps", "sets", "rounds", "rpe") for word in AMOUNTS[entry]),
        *(word for entry in ("mon", "tue", "wed", "thu", "fri", "sat", "sun") for word in _words("when", entry) if "day" in word),
        *(word for entry in ("chest", "dizzy", "numb", "breath", "collapse") for word in _words("urgent", entry)),
    }
)  # fmt: skip
"""The words that matter most: of two equally near spellings these come first."""


def listed(table: str, entry: str) -> frozenset[str]:
    """A word list of the lexicon by its table and name; raises KeyError when there is none."""
    return _words(table, entry)


class Sayings:
    """Short sayings to look for among the words of a line; most lines hold the first word of none, which is seen at once."""

    def __init__(self, entry: str) -> None:
        self._by_first: dict[str, list[str]] = {}
        for saying in sayings(entry):
            self._by_first.setdefault(saying.split()[0], []).append(f" {saying} ")

    def within(self, line: str) -> list[str]:
        """The sayings that a line of words with a space around each holds."""
        firsts = self._by_first.keys() & line.split()
        return [saying[1:-1] for first in firsts for saying in self._by_first[first] if saying in line]


def sayings(entry: str) -> tuple[str, ...]:
    """The short sayings of one entry of the lexicon, one a line there; raises KeyError when there is none."""
    return tuple(_DATA["sayings"][entry].strip().split("\n"))
