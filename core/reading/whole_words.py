"""Phrases found in a short answer word by word, one slip of the finger allowed in longer words; and a plain yes or no."""

from __future__ import annotations

import re
from functools import lru_cache

from rapidfuzz.distance import OSA

from core.reading.normal import normalise
from core.reading.token import Kind
from core.reading.tokens import tokenise

SLIP_FROM = 6  # letters; shorter words must be spelt right
DENIED_WITHIN = 4  # words
YES = {
    "yes", "y", "yeah", "yep", "yup", "yea", "aye", "sure", "ok", "okay", "true", "correct", "i do", "i am", "i have", "i did",
}  # fmt: skip
NO = {"no", "n", "nope", "nah", "none", "never", "nothing", "neither", "nil", "false", "zero", "0"}
NO_STARTS = ("no ", "none ", "nope ", "nah ", "not ", "nothing ", "never ", "i dont", "i do not", "i am not", "im not", "dont ")
UNSURE = ("not sure", "dont know", "do not know", "no idea", "unsure", "maybe", "what", "why", "unclear", "idk", "not certain")
STARTS = {"go", "start", "begin", "lets go", "ready", "go go", "just go"}
DENIALS = {"no", "not", "never", "without", "nor", "isnt", "arent", "dont", "havent", "hasnt", "none", "neither", "n"}


def plain(text: str) -> str:
    """Lower case, no apostrophes, single spaces, nothing but letters, digits and what numbers need."""
    lowered = text.lower().replace("’", "").replace("'", "")
    return " ".join(re.sub(r"[^a-z0-9.+/\-]+", " ", lowered).replace(" - ", " ").split()).strip(". ")


def in_figures(text: str) -> str:
    """A text made `plain`, its number words as figures: "fifty-two" is "52", "in my fifties" "in my 50s"."""
    said = normalise(text)
    for token in reversed(tokenise(said)):
        if token.kind is Kind.NUMBER and token.worded:
            said = f"{said[: token.start]}{token.value}{said[token.end :]}"
    return plain(said)


def has(said: str, phrases: tuple[str, ...]) -> bool:
    """Whether one of the phrases stands in a text that was made `plain`."""
    return any(place_of(said, phrase) is not None for phrase in likely(said, phrases))


def likely(said: str, phrases: tuple[str, ...]) -> list[str]:
    """The phrases that begin as a word of the text does, in their order: a slip never changes the first letter."""
    of = _by_letter(phrases)
    return [phrase for _, phrase in sorted(entry for letter in _words(said)[1] if letter in of for entry in of[letter])]


@lru_cache(maxsize=256)
def _by_letter(phrases: tuple[str, ...]) -> dict[str, list[tuple[int, str]]]:
    of: dict[str, list[tuple[int, str]]] = {}
    for place, phrase in enumerate(phrases):
        of.setdefault(phrase[0], []).append((place, phrase))
    return of


def place_of(said: str, phrase: str) -> int | None:
    """Where a phrase begins, in words; a longer single word may have a slip."""
    words = _words(said)[0]
    wanted = _parts(phrase)
    for first in range(len(words) - len(wanted) + 1):
        if all(_alike(words[first + i], word) for i, word in enumerate(wanted)):
            return first
    return None


@lru_cache(maxsize=64)
def _words(said: str) -> tuple[tuple[str, ...], frozenset[str]]:
    """The words of a text, and the letters they begin with; one text is looked at for hundreds of phrases."""
    words = tuple(word.strip(".") for word in said.split())
    return words, frozenset(word[:1] for word in words)


@lru_cache(maxsize=4096)
def _parts(phrase: str) -> tuple[str, ...]:
    return tuple(phrase.split())


def _alike(word: str, wanted: str) -> bool:
    if word == wanted:
        return True
    return len(wanted) >= SLIP_FROM and word[:1] == wanted[:1] and OSA.distance(word, wanted) <= 1


def is_denied(said: str, at: int) -> bool:
    """Whether a denial stands shortly before, with no "but" or comma's worth in between."""
    before = said.split()[max(0, at - DENIED_WITHIN) : at]
    if "but" in before:
        before = before[before.index("but") + 1 :]
    return any(word in DENIALS for word in before)


def yes_or_no(text: str) -> bool | None:
    """A plain yes or no, None when it is neither or unsure."""
    said = plain(text)
    if any(said.startswith((word, f"i {word}", f"im {word}")) for word in UNSURE):
        return None
    if said in NO or said.startswith(NO_STARTS):
        return False
    first = said.split(" ", 1)[0] if said else ""
    if said in YES or first in {"yes", "yeah", "yep", "yup", "yea", "sure"}:
        return True
    return None


def says_start(text: str) -> bool:
    """Whether it plainly asks to start, and does not just agree to something."""
    said = plain(text)
    return said in STARTS or said.startswith(("go ", "start ", "lets go"))
