"""A message that said nothing, looked at again as thumbs may have meant it: "hoe do i do this one agian", "skipthisone".

Spelling (`core.reading.spelling`) is careful, since a wrong word beside a number is a wrong record. Where a message as typed
asks for nothing at all, its unknown words are compared once more, with the words that requests are made of alone. No word
becomes a number or a unit, and the reader takes of the outcome only what can be taken back: never a record.
"""

from __future__ import annotations

import re
from functools import cache, lru_cache
from itertools import islice, product
from typing import TYPE_CHECKING

from rapidfuzz import process
from rapidfuzz.distance import OSA

from core.reading.lexicon import (
    COURTESY,
    ENGLISH,
    EXERCISES,
    GUARDS,
    NUMBER_PLURALS,
    NUMBER_WORDS,
    REWRITES,
    SECOND_LOOK,
    UNITS,
    VOCABULARY,
    listed,
    phrase_lines,
)
from core.reading.spelling import is_english, is_slip, lie_beside

if TYPE_CHECKING:
    from collections.abc import Iterator

_ASKING = frozenset(
    {
        "start", "start-if-go", "pause", "resume", "finish", "today", "help", "form", "form-here", "skip", "skip-day", "swap",
        "swap-here", "progress", "progress-on",
    }
)  # fmt: skip
"""The sections of `phrases.txt` whose words a mistyped word may be."""

_HALF_OF_DAY = re.compile(r"(?<=\d)([ap])(?:\1?mm?|mn|nm)(?![a-z])")
_WORD = re.compile(r"[a-z']+")
_LONGEST_MESSAGE = 120
_MOST_WORDS = 16
_MOST_READINGS = 6
_MOST_MEANT = 3
_TWO_SLIPS_FROM = 8
_SHORT_MESSAGE = 4
_MIDDLING_MESSAGE = 8
_LONG_ENOUGH = 4
_LONG_BESIDE_ENGLISH = 6
_UNIT_NAMES = ("kilos", "pounds", "kilograms", "kilo")
_SHORTEST_JOINED = 5
_LONGEST_JOINED = 28
_LONGEST_PART = 12
_MOST_PARTS = 5
_ONE_LETTER_WORDS = frozenset({"a", "i", "u"})
_TWO_LETTER_WORDS = frozenset(
    {"go", "do", "to", "is", "it", "me", "my", "we", "on", "in", "up", "at", "am", "of", "so", "no", "ok", "pm"}
)


@cache
def _meant_words() -> dict[int, tuple[str, ...]]:
    """The words that requests are made of, by length."""
    words: set[str] = set()
    for meaning, _, line in phrase_lines():
        if meaning in _ASKING:
            words |= set(re.findall(r"[a-z]+", re.sub(r"\{\w+\}|@\w+", " ", line)))
    words |= EXERCISES | listed("gear", "dumbbell") | listed("words_second_look", "words")
    for entry in ("mon", "tue", "wed", "thu", "fri", "sat", "sun"):
        words |= {word for word in listed("when", entry) if "day" in word}
    words -= set(NUMBER_WORDS) | set(NUMBER_PLURALS) | set(UNITS) | GUARDS["foreign"]
    sized: dict[int, list[str]] = {}
    for word in sorted(words):
        if word.isalpha() and (len(word) > len("go") or word in _TWO_LETTER_WORDS):
            sized.setdefault(len(word), []).append(word)
    return {length: tuple(of_length) for length, of_length in sized.items()}


def as_meant(text: str) -> Iterator[str]:
    """The ways a normalised text may have been meant, the likeliest first; none when nothing in it looks mistyped."""
    if len(text) > _LONGEST_MESSAGE or len(text.split()) > _MOST_WORDS:
        return
    if any(found.group() in GUARDS["foreign"] for found in _WORD.finditer(text)):
        return
    plain = _HALF_OF_DAY.sub(lambda found: f"{found[1]}m", text)
    for spaced in dict.fromkeys((plain, " ".join(_put_back(plain.split(" "))))):
        yield from _mended(spaced, text)


def _mended(spaced: str, text: str) -> Iterator[str]:
    """The ways to read the mistyped words of a text whose spaces stand right."""
    typed = list(_WORD.finditer(spaced))
    lead = next((at for at, found in enumerate(typed) if found.group() not in COURTESY), 0)
    counted = any(character.isdigit() for character in text) or any(found.group() in NUMBER_WORDS for found in typed)
    pieces: list[str] = []
    choices: list[tuple[str, ...]] = []
    end = 0
    for at, found in enumerate(typed):
        swaps = len(typed) <= _SHORT_MESSAGE or (at == lead and len(typed) <= _MIDDLING_MESSAGE)
        meant = SECOND_LOOK.get(found.group(), ()) if swaps else ()
        meant = meant if len(typed) > 1 and meant else _meant(found.group(), counted=counted)
        if meant:
            pieces.append(spaced[end : found.start()])
            choices.append(meant)
            end = found.end()
    if (not choices and spaced == text) or len(choices) > max(2, len(typed) * 2 // 3):
        return
    pieces.append(spaced[end:])
    for chosen in islice(product(*choices), _MOST_READINGS):
        yield "".join(part for pair in zip(pieces, (*chosen, ""), strict=True) for part in pair)


def _put_back(words: list[str]) -> list[str]:
    """The words, each letter that went to the wrong side of a space back at its own: "an d12kg", "skip thi sone", "skipt his"."""
    words = list(words)
    for at in range(len(words) - 1):
        first, second = words[at : at + 2]
        if not (_is_a_word(first) and second[:1].isalpha()) or (_is_known(first) and _is_known(second)):
            continue
        rest = second[1:]
        if _is_known(first + second[0]) and (rest[:1].isdigit() or (rest and _is_known(rest))):
            words[at : at + 2] = [first + second[0], rest]
        elif (
            (len(first) > len("skip") - 1 or first[:-1] in _TWO_LETTER_WORDS)
            and _is_a_word(second)
            and _is_known(first[:-1])
            and _is_known(first[-1] + second)
        ):
            words[at : at + 2] = [first[:-1], first[-1] + second]
    return words


def _is_a_word(typed: str) -> bool:
    return typed.isascii() and typed.isalpha()


@lru_cache(maxsize=2048)
def _is_known(word: str) -> bool:
    return word in VOCABULARY or is_english(word)


@lru_cache(maxsize=2048)
def _meant(word: str, *, counted: bool) -> tuple[str, ...]:
    """What an unknown word may be meant to be, likeliest first; nothing when it stands for itself.

    In a text with numbers (`counted`) no word becomes a unit.
    """
    if _is_known(word) or len(word) < len("go") or word.removesuffix("'s") in ENGLISH:
        return ()
    if len(word) == len("go"):
        return tuple(known for known in sorted(_TWO_LETTER_WORDS) if _is_key_beside(word, known))[:_MOST_MEANT]
    slips, near = _near(word)
    if not near and not counted:
        near = tuple(unit for unit in _UNIT_NAMES if OSA.distance(word, unit, score_cutoff=1) <= 1)[:1]
    joined = _parted(word)
    if (joined is None or slips) and len(word) >= _LONG_BESIDE_ENGLISH and _is_near_english(word):
        return ()
    joined = joined or (None if near else _parted_with_a_slip(word))
    if joined is None:
        return near
    return (joined, *near) if slips != 1 else (*near, joined)


def _is_near_english(word: str) -> bool:
    """Whether a common word that asks for nothing is one slip away: "turneed" is "turned", and no "turn need"."""
    return process.extractOne(word, _english_of(len(word)), scorer=OSA.distance, score_cutoff=1) is not None


@cache
def _english_of(length: int) -> tuple[str, ...]:
    return tuple(word for word in sorted(ENGLISH) if abs(len(word) - length) <= 1 and word not in _meant_words().get(len(word), ()))


@lru_cache(maxsize=2048)
def _near(word: str) -> tuple[int, tuple[str, ...]]:
    """How many slips of the thumb make `word` of the nearest words of requests, and those words."""
    reach = 2 if len(word) >= _TWO_SLIPS_FROM else 1
    sized = _meant_words()
    near = [known for n in range(len(word) - reach, len(word) + reach + 1) for known in sized.get(n, ())]
    ranked: dict[int, list[str]] = {}
    for known, distance, _ in process.extract(word, near, scorer=OSA.distance, score_cutoff=reach, limit=None):
        shuffled = sorted(word) == sorted(known) and known[0] == word[0]
        if shuffled or is_slip(word, known, int(distance)):
            ranked.setdefault(0 if shuffled else int(distance), []).append(known)
    least = min(ranked, default=0)
    return least, tuple(sorted(ranked.get(least, ()), key=lambda known: (known[0] != word[0], known)))[:_MOST_MEANT]


def _is_key_beside(word: str, known: str) -> bool:
    """Whether one letter of two went to the key beside: "gp" for "go"; swapped letters count as well."""
    if word[::-1] == known:
        return True
    return word[0] == known[0] and word[1] != known[1] and word[1].isalpha() and lie_beside(word[1], known[1])


def _parted(word: str) -> str | None:
    """The known words written with no space between them, the last perhaps with a slip: "skipthisone", "remindme"."""
    if not _SHORTEST_JOINED <= len(word) <= _LONGEST_JOINED:
        return None
    best: dict[int, tuple[str, ...]] = {0: ()}
    for end in range(1, len(word) + 1):
        for start in range(max(0, end - _LONGEST_PART), end):
            part = word[start:end]
            if start in best and _is_part(part) and (end not in best or len(best[start]) + 1 < len(best[end])):
                best[end] = (*best[start], part)
    parts = best.get(len(word), ())
    if len(parts) > 1 and len(parts) <= _MOST_PARTS and max(map(len, parts)) >= _LONG_ENOUGH:
        return " ".join(parts)
    return None


def _parted_with_a_slip(word: str) -> str | None:
    """Two words of requests written with no space between them, one of them with a slip: "nexone", "andfridya"."""
    if not _SHORTEST_JOINED < len(word) <= _LONGEST_JOINED or _is_near_english(word):
        return None
    for cut in range(len("go"), len(word) - len("go") + 1):
        first, last = word[:cut], word[cut:]
        for known, slipped in ((first, last), (last, first)):
            if len(slipped) < len("nex") or not (known in _meant_words().get(len(known), ()) or known in {"one", "and"}):
                continue
            _, near = _near(slipped)
            if near and near[0] not in EXERCISES:
                return f"{first} {near[0]}" if slipped is last else f"{near[0]} {last}"
    return None


def _is_part(part: str) -> bool:
    """Whether a word may be one of several written together."""
    if len(part) == 1:
        return part in _ONE_LETTER_WORDS
    if len(part) == len("go"):
        return part in _TWO_LETTER_WORDS
    if part in NUMBER_WORDS:
        return part == "one"
    return (part in VOCABULARY and part not in UNITS and part not in NUMBER_PLURALS and part not in GUARDS["foreign"]) or (
        part in REWRITES and len(part) >= _LONG_ENOUGH
    )
