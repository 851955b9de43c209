"""A word as typed becomes a word that the lexicon knows, where that is safe.

Sweaty thumbs swap, drop and double letters or hit the key beside; rapidfuzz finds the known words within reach, and only such
slips count. The guards: a word that the lexicon or plain English knows is never touched; a number word or a unit is restored
only when every other word in reach is farther away, so that no correction turns one number or unit into another.
"""

from __future__ import annotations

import re
from collections import defaultdict
from functools import lru_cache

from rapidfuzz import process
from rapidfuzz.distance import OSA, Levenshtein

from core.reading.lexicon import CORE, ENGLISH, GUARDS, NUMBER_PLURALS, NUMBER_WORDS, REWRITES, UNITS, VOCABULARY, listed

_SHORTEST_KNOWN = 3
_SHORTEST_TYPED = 3
_SHORTEST_REWRITTEN = 4
_SHORT_PARTS = listed("words_spelling", "short_parts")
_SHORTEST_SWAPPED_KEY = 4
_LONG_WORD = 8
_LONG_NUMBER = 6
_SHORTEST_SPLIT = 5
_SHORTEST_RUN = 8
_LONGEST_RUN = 30
_LONGEST_PART = 10
_FEWEST_PARTS = 3
_MOST_PARTS = 5
_LED_BY = ("reps", "kgs", "lbs", "kilos", "pounds")
_LED_BY_NUMBER = frozenset({"at", "with", "each", "left", "rep", "kilo", "kg", "lb", "lbs", *_LED_BY})
_OF_SETS = frozenset(
    {*_LED_BY, "rep", "kg", "lb", "left", "each", "tank", "same", "more", "failure", "weight", "done", "reserve", "side"}
)
_SHORTEST_PART = 2
_REPEATS = re.compile(r"(.)\1{2,}")
_DOUBLED = re.compile(r"([a-z])\1")
_SHORTEST_DOUBLED = 4
_VOWELS = frozenset("aeiou")
_ROWS = ("qwertyuiop", "asdfghjkl", "zxcvbnm")
_INDENT = (0.0, 0.3, 0.8)
_KEYS = {key: (row, column + _INDENT[row]) for row, keys in enumerate(_ROWS) for column, key in enumerate(keys)}
_BESIDE = 1.1


_WHOLE = tuple(sorted(listed("words_spelling", "whole")))

_AS_DAY = re.compile(r"d(?:ee|y|ie|ey|i|ay)(s?)$")
"""What people make of "-day": "sundees", "fridy"."""

_WEEKDAYS = tuple(
    sorted(day for entry in ("mon", "tue", "wed", "thu", "fri", "sat", "sun") for day in listed("when", entry) if "day" in day)
)


def lie_beside(one: str, other: str) -> bool:
    """Whether two letters lie side by side on a keyboard; what is no letter of English ("'", "é") lies beside none."""
    if one not in _KEYS or other not in _KEYS:
        return False
    (row, column), (other_row, other_column) = _KEYS[one], _KEYS[other]
    return abs(row - other_row) <= 1 and abs(column - other_column) <= _BESIDE


_BY_LENGTH: dict[int, list[str]] = defaultdict(list)
for _word in sorted(VOCABULARY - GUARDS["foreign"]):
    if _word.isalpha() and _word.isascii() and len(_word) >= (_SHORTEST_REWRITTEN if _word in REWRITES else _SHORTEST_KNOWN):
        _BY_LENGTH[len(_word)].append(_word)

_SHORTEST_SKELETON = 4
_SKELETONS: dict[str, tuple[str, ...]] = {}
for _word in (known for words in _BY_LENGTH.values() for known in words if len(known) > _SHORTEST_SKELETON):
    _skeleton = "".join(letter for letter in _word if letter not in _VOWELS)
    _SKELETONS[_skeleton] = (*_SKELETONS.get(_skeleton, ()), _word)

_JOINED_PARTS = frozenset(
    word
    for word in VOCABULARY - GUARDS["foreign"] - GUARDS["measure"] - set(NUMBER_PLURALS)
    if (len(word) > _SHORTEST_PART and word.isalpha() and word not in NUMBER_WORDS) or word in _SHORT_PARTS
)


def expand(word: str) -> tuple[str, ...]:
    """The plain words that a word stands for."""
    if word in UNITS:
        return (UNITS[word].value,)
    return REWRITES.get(word, (word,))


@lru_cache(maxsize=4096)
def is_english(word: str) -> bool:
    """Whether a word is common English, or a form of such a word: "judging", "lorries", "stopped"."""
    return word in ENGLISH or any(
        stem in ENGLISH
        for ending, says in _ENDINGS
        if word.endswith(ending) and len(word) - len(ending) >= _SHORTEST_STEM
        for stem in (word[: -len(ending)] + says, *(_single(word[: -len(ending)]) if ending in _DOUBLING else ()))
    )


def _single(stem: str) -> tuple[str, ...]:
    """The stem without a letter doubled before an ending: "stop" for "stopp" of "stopped", but nothing for "trainn"."""
    doubles = len(stem) > _SHORTEST_STEM and stem[-1] == stem[-2] and stem[-3] in _VOWELS and stem[-4] not in _VOWELS - {"u"}
    return (stem[:-1],) if doubles else ()


_SHORTEST_STEM = 3
_DOUBLING = frozenset({"ing", "ed", "er", "est"})
_ENDINGS = (
    *((ending, says) for ending in ("ing", "ed", "er", "ers", "est") for says in ("", "e")),
    *((ending, "") for ending in ("s", "es", "ly", "ness", "less", "ful")),
    *((ending, "y") for ending in ("ies", "ied", "ier", "iest", "ily", "iness")),
)


_SHORTEST_SWUNG = 5
"""Letters from which a word in "-in" may be one in "-ing"."""


@lru_cache(maxsize=4096)
def respell(word: str) -> tuple[str, ...]:
    """The known words nearest to `word`; the word itself when none is safely near."""
    if word in VOCABULARY:
        return expand(word)
    for shorter in (_REPEATS.sub(r"\1\1", word), _REPEATS.sub(r"\1", word)):
        if shorter != word and shorter in VOCABULARY:
            return expand(shorter)
    if not is_english(word) and (swapped := _swapped(word)) is not None:
        return expand(swapped)
    if word not in ENGLISH and len(word) > _SHORTEST_DOUBLED:
        for found in _DOUBLED.finditer(word):
            single = word[: found.start()] + word[found.start() + 1 :]
            if single in VOCABULARY and (single in CORE or found[1] in _VOWELS or not is_english(word)):
                return expand(single)  # "tooday", "lateer", "shouldder"
    if (day := _weekday(word)) is not None:
        return (day,)
    if word.endswith("n't"):
        said = respell(word.replace("'", ""))
        return said if "not" in said else (*respell(word[: -len("n't")])[:1], "not")
    if word.endswith("in") and len(word) >= _SHORTEST_SWUNG and not is_english(word) and f"{word}g" in VOCABULARY:
        return expand(f"{word}g")  # "hollerin", "throbbin"
    if is_english(word) or len(word) < _SHORTEST_TYPED or not (word.isalpha() and word.isascii()):
        return (word,)
    if len(word) > _SHORTEST_SPLIT and (whole := _near_whole(word)) is not None:
        return (whole,)
    parts = _split(word, shortest=_SHORTEST_PART)
    if parts is not None:
        return parts
    if not set(word) & _VOWELS and len(word) >= _SHORTEST_SKELETON:
        meant = _SKELETONS.get(word, ())
        if len(meant) == 1:
            return expand(meant[0])
    if (parts := _number_led(word)) is not None:
        return parts
    nearest = _nearest(word)
    if nearest is not None:
        return expand(nearest)
    return _split(word, shortest=1) or _run_together(word) or (word,)


def _nearest(word: str) -> str | None:
    """The known word that one slip away explains; None when there is none, or when a number or unit is in doubt."""
    reach = 2 if len(word) >= _LONG_WORD else 1
    near = [
        (int(distance), known)
        for known, distance, _ in process.extract(
            word, _near_length(len(word), reach), scorer=OSA.distance, score_cutoff=reach, limit=None
        )
        if is_slip(word, known, int(distance))
    ]
    if not near:
        return None
    near.sort(key=lambda found: (found[0], found[1] not in CORE, found[1][0] != word[0], -len(found[1]), found[1]))
    distance, best = near[0]
    if any(_counts(known) for _, known in near) and len({_meaning(known) for found, known in near if found <= distance + 1}) > 1:
        return None
    return best


def _near_whole(word: str) -> str | None:
    """The word of a set that one slip away explains, before any two words do that are run together: "boyweight", "amother"."""
    return next((whole for whole in _WHOLE if OSA.distance(word, whole, score_cutoff=1) <= 1), None)


def _weekday(word: str) -> str | None:
    """The day of the week that one slip away explains, which no two words run together are: "momday"."""
    if is_english(word):
        return None
    said = _AS_DAY.sub(r"day\1", word)
    if said in _WEEKDAYS:
        return said
    near = [day for day in _WEEKDAYS if day[0] == said[0] and OSA.distance(said, day, score_cutoff=1) <= 1]
    return near[0] if len(near) == 1 else None


def _swapped(word: str) -> str | None:
    """The one known word of which two letters beside each other changed places, rather than two words run together: "todya"."""
    if len(word) < _SHORTEST_REWRITTEN:
        return None
    swaps = {word[:at] + word[at + 1] + word[at] + word[at + 2 :] for at in range(len(word) - 1)}
    known = [swap for swap in swaps & VOCABULARY if swap not in GUARDS["foreign"]]
    return known[0] if len(known) == 1 and not _counts(known[0]) else None


@lru_cache(maxsize=64)
def _near_length(length: int, reach: int) -> tuple[str, ...]:
    """The known words that differ from `length` letters by no more than `reach`."""
    return tuple(word for n in range(length - reach, length + reach + 1) for word in _BY_LENGTH.get(n, ()))


def _counts(word: str) -> bool:
    """Whether the word is a number or a unit, where a wrong correction would be a wrong record."""
    return word in NUMBER_WORDS or word in UNITS


def _meaning(word: str) -> object:
    return NUMBER_WORDS.get(word, NUMBER_PLURALS.get(word, expand(word)))


def is_slip(word: str, known: str, distance: int) -> bool:
    """Whether thumbs make this of `known`: letters swapped, one left out, one doubled, the key beside, a wrong vowel."""
    if distance > 1:
        return word[0] == known[0]
    if word[0] != known[0] and min(len(word), len(known)) <= _SHORTEST_SWAPPED_KEY and sorted(word) != sorted(known):
        return False
    if _counts(known) and len(known) >= _LONG_NUMBER and word[0] == known[0]:
        return True  # no two long number words are a letter apart
    if len(word) == len(known):
        if Levenshtein.distance(word, known) > 1:
            return True  # two letters swapped
        at = next(i for i, (typed, meant) in enumerate(zip(word, known, strict=True)) if typed != meant)
        typed, meant = word[at], known[at]
        return len(word) >= _SHORTEST_SWAPPED_KEY and (lie_beside(typed, meant) or {typed, meant} <= _VOWELS)
    if len(word) < len(known):
        return word[0] == known[0] and len(word) >= _SHORTEST_TYPED
    at = next((i for i, (typed, meant) in enumerate(zip(word, known, strict=False)) if typed != meant), len(known))
    neighbours = word[max(at - 1, 0) : at] + word[at + 1 : at + 2]
    return len(known) >= _SHORTEST_SWAPPED_KEY - 1 and at > 0 and any(word[at] == n or lie_beside(word[at], n) for n in neighbours)


def _number_led(word: str) -> tuple[str, ...] | None:
    """A number word with what belongs to it, and no space between: "eightreps", "tenat"."""
    for cut in range(len(word) - 1, _SHORTEST_PART, -1):
        number, rest = word[:cut], word[cut:]
        if number not in NUMBER_WORDS:
            continue
        if rest in _LED_BY_NUMBER:
            return (number, *expand(rest))
        parts = _run_together(rest) or _split(rest, shortest=_SHORTEST_PART) or ("",)
        if parts[0] in _LED_BY_NUMBER and set(parts) & _OF_SETS:
            return (number, *parts)  # "tenrepseachleg"
    return None


def _run_together(word: str) -> tuple[str, ...] | None:
    """Three or more known words, or one of a set's and a damaged one, with no space between: "leftinthetank", "repsbodywieght"."""
    if len(word) > _LONGEST_RUN:
        return None
    for first in _LED_BY:
        rest = word[len(first) :]
        if word.startswith(first) and len(rest) >= _SHORTEST_REWRITTEN:
            after = respell(rest)
            if after != (rest,):
                return (*expand(first), *after)
    if len(word) < _SHORTEST_RUN:
        return None
    ends: dict[int, tuple[str, ...]] = {0: ()}
    for end in range(_SHORTEST_PART, len(word) + 1):
        for start in range(max(0, end - _LONGEST_PART), end - 1):
            part = word[start:end]
            if start in ends and part in _JOINED_PARTS and (end not in ends or len(ends[start]) + 1 < len(ends[end])):
                ends[end] = (*ends[start], part)
    parts = ends.get(len(word), ())
    if not _FEWEST_PARTS <= len(parts) <= _MOST_PARTS or not {parts[0], parts[-1]} & _OF_SETS:
        return None
    return tuple(word for part in parts for word in expand(part))


def _split(word: str, *, shortest: int) -> tuple[str, ...] | None:
    """Two known words written without the space between them."""
    if len(word) < _SHORTEST_SPLIT:
        return None
    for cut in range(len(word) - 1, 0, -1):
        first, second = word[:cut], word[cut:]
        if min(len(first), len(second)) < shortest:
            continue
        if first in _JOINED_PARTS and second in _JOINED_PARTS and max(len(first), len(second)) > _SHORTEST_PART:
            return (*expand(first), *expand(second))
    return None
