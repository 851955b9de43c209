"""What thumbs made of a word, read by the place it stands in: "eack side", "mothing left", "nune reps", "18kg rhen 9".

Spelling (`core.reading.spelling`) sees a word alone, and leaves it when several are near. The words beside it leave only a few
that can have been meant; the nearest of those is read. Where a side, a number or an effort must stand and nothing is near
enough, the word is odd: the message is asked about, and nothing is dropped in silence.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from decimal import Decimal
from functools import lru_cache
from typing import TYPE_CHECKING

from rapidfuzz.distance import OSA, Levenshtein

from core.reading.lexicon import AMOUNTS, ENGLISH, MISTYPED, NUMBER_WORDS, VOCABULARY, listed
from core.reading.spelling import expand, is_english, lie_beside
from core.reading.token import Kind, Token

if TYPE_CHECKING:
    from collections.abc import Collection, Sequence

_LIMBS = frozenset({"side", "sides", "arm", "arms", "leg", "legs", "hand", "hands"})
_BEFORE_LIMBS = frozenset({"each", "per", "every", "left", "right", "other"})
_BEFORE_SEVERAL = frozenset({"both", "each"})
_SEVERAL = frozenset({"sides", "arms", "legs", "hands"})
_GATHERING = frozenset({"each", "per", "both", "every"})
_LEFT_OVER = frozenset({"nothing", "none", "zero", "one", "two", "three", "four", "five", "couple"})
_NAUGHT = frozenset({"nothing", "none", "zero", "nil", "much", "more", "reps", "couple", "another"})
_AFTER_NUMBER = frozenset(
    {"reps", "rep", "left", "more", "kilos", "kilo", "kgs", "pounds", "lbs", "seconds", "secs", "each", "with", "then", "right"}
)
_JOINING = frozenset({"then", "and", "with", "at", "for"})
_SCORING = frozenset({"rpe", "effort", "rir"})
_NUMBERS = frozenset(NUMBER_WORDS) - {"dozen", "nil", "nought"}
_SMALL = frozenset({"one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten"})
_SPOKEN_OF = frozenset({"with", "using", "at", "on", "in", "to", "@"})
_DAYS = frozenset(word for day in ("mon", "tue", "wed", "thu", "fri", "sat", "sun") for word in listed("when", day))
_THINGS = frozenset({"bench", "band", "bands", "barbell", "kettlebell", "dumbbell"})
_AND = frozenset({"and", "&", ",", "+", "/"})
_DOING = frozenset({"got", "did", "managed", "made", "and", "then", "only", "just", "done", "finished", "completed", "hit", "i"})
_BEFORE_LOAD = frozenset({"at", "with", "x", "@", "each", "per", "on", "using", "both"})
_UNITS = frozenset({"kg", "lb", "s"})
_REPS = AMOUNTS["reps"]
_MOST_EFFORT = 10
_CHANGING = listed("words_spelling", "changing")
_SHORTEST_HIDDEN = 4
_SHORTEST_LONG = 6
_SHORTEST_SHUFFLED = 5
_SHORTEST_FAILURE = 5
_LONGEST_MENDED = 14
_MENDED_UNTIL = 1500
"""Spelling is mended in so many characters."""


@dataclass(frozen=True, slots=True)
class _Place:
    """What can stand at a place, whether a word known to mean something else is looked at too, and whether one must stand there."""

    words: frozenset[str]
    must: bool = False
    known: bool = False


def with_slips_in_place(tokens: list[Token]) -> list[Token]:
    """The tokens with each mistyped word as the one that its place asks for, or odd where its place cannot do without."""
    mended = list(tokens)
    for at, token in enumerate(tokens):
        if token.kind is not Kind.WORD or token.start > _MENDED_UNTIL or len(token.raw) > _LONGEST_MENDED:
            continue
        strange = _is_strange(token.raw)
        if not strange and token.raw not in _KNOWN:
            continue
        for place in _places(mended, at):
            if token.text in place.words:
                break
            if not strange and not place.known:
                continue
            meant = _misheard(token.raw, place.words) if token.raw in _KNOWN else None
            meant = _nearest(token.raw, place.words) if strange and meant is None else meant
            if place.words is _DAYS and meant is not None and _rank(token.raw, meant) == 1:
                break  # "wxd" is no slip of the thumb, and no day may be lost
            if meant is not None:
                mended[at] = _said(token, meant)
                break
            if place.must and strange and token.text not in VOCABULARY and not is_english(token.raw):
                mended[at] = replace(token, kind=Kind.ODD)
                break
    return mended


def hides_a_word_of_sets(tokens: Sequence[Token], used: Collection[int]) -> bool:
    """Whether an unknown word that nothing has used may be one that changes a set: "10 at 20kg nithinh lfft"."""
    return any(
        token.kind is Kind.WORD
        and at not in used
        and token.text == token.raw
        and token.text not in VOCABULARY
        and len(token.raw) >= _SHORTEST_HIDDEN
        and _is_strange(token.raw)
        and any(_rank(token.raw, word) is not None for word in _CHANGING)
        for at, token in enumerate(tokens)
    )


def _places(tokens: Sequence[Token], at: int) -> list[_Place]:
    """What the words around the word at `at` leave it to be, the narrowest place first."""
    before, after = _text(tokens, at - 1), _text(tokens, at + 1)
    counted = at > 0 and tokens[at - 1].kind is Kind.NUMBER
    counts = at + 1 < len(tokens) and tokens[at + 1].kind is Kind.NUMBER
    amount = counted or before in _UNITS or before in _REPS
    places: list[_Place] = []
    if after in _LIMBS and (amount or _has_number(tokens)):
        words = _BEFORE_SEVERAL | {"left", "right"} if after in _SEVERAL else _BEFORE_LIMBS
        known = amount or (before == "on" and at > 1) or (_has_number(tokens[at + 2 : at + 3]) and not before.isalpha())
        places.append(_Place(words, must=amount and after in {"side", "sides"}, known=known))
    if before in _GATHERING and at > 1 and (_is_amount(tokens, at - 2) or (after in _BEFORE_LOAD and _has_number(tokens))):
        places.append(_Place(_LIMBS, must=True, known=True))
    if _is_left_over(tokens, at + 1) and not counted:
        taken = {"left": {"one"} if tokens[at].raw == "on" else set(), "more": {"three"}}.get(after, set())
        places.append(_Place(_LEFT_OVER - taken, known=True))
        places.append(_Place(_LEFT_OVER, must=after != "more"))
    if after == "or" and _text(tokens, at + 2) in {"two", "2"} and _is_left_over(tokens, at + 3):
        places.append(_Place(frozenset({"one"}), must=True, known=True))  # "wan or two left in me"
    if before in {"effort", "rpe"} and tokens[at].raw not in {"there", "here"}:
        places.append(_Place(_SMALL, must=True, known=True))
    if before in {"left", "right"} and after in {"left", "right"}:
        places.append(_Place(_NUMBERS, must=True, known=True))
    if after == "on" and _text(tokens, at + 2) in {"the", "my", "that", "last"} and _has_number(tokens):
        places.append(_Place(frozenset({"failed"}), known=True))
    if after in _REPS and not counted:
        places.append(_Place(_NUMBERS, known=True))
    if before in _NAUGHT and (_closes(tokens, at + 1) or after == "in"):
        places.append(_Place(frozenset({"left", "more"}), known=True))
    if counted and not counts:
        ends = _text(tokens, at + 1) == "in"
        places.append(_Place(frozenset({"left", "more"}) if ends else _AFTER_NUMBER, known=ends))
    named = after in {"the", "my", "those"} and at + 2 < len(tokens) and tokens[at + 2].kind is Kind.NUMBER
    if amount and (counts or named):
        scored = counts and tokens[at + 1].value <= _MOST_EFFORT
        places.append(_Place(_JOINING | _SCORING if scored and not counted else _JOINING))
    elif counts and before in {",", ";", ".", "and"} and tokens[at + 1].value <= _MOST_EFFORT:
        places.append(_Place(_SCORING))
    if before in _SPOKEN_OF and (counts or after in {"tank", "last", "same"}):
        places.append(_Place(frozenset({"the"}), known=True))
    if (
        (not before.isalpha() or before in _DOING)
        and not counted
        and after in _BEFORE_LOAD
        and _has_number(tokens[at + 1 : at + 5])
    ):
        places.append(_Place(_NUMBERS))
    if before in {"at", "with", "@"} and after in {"kg", "lb"}:
        places.append(_Place(_NUMBERS))
    if before == "to" and _closes(tokens, at + 1) and len(tokens[at].raw) >= _SHORTEST_FAILURE and _has_number(tokens):
        places.append(_Place(frozenset({"failure"})))
    if after in {"weight", "load"} and (amount or not before.isalpha()):
        places.append(_Place(frozenset({"same"}), known=True))
    return [*places, *_places_of_days_and_gear(tokens, at)]


def _places_of_days_and_gear(tokens: Sequence[Token], at: int) -> list[_Place]:
    """What days, times of day and lists of things leave a word to be: "mon wef fri", "half pat ten", "a par of 12s and a bebch"."""
    before, after = _text(tokens, at - 1), _text(tokens, at + 1)
    counts = at + 1 < len(tokens) and tokens[at + 1].kind is Kind.NUMBER
    places: list[_Place] = []
    if (
        after in _DAYS or before in _DAYS or (before in _AND and _text(tokens, at - 2) in _DAYS) or _is_timed(tokens, at)
    ) and after != "morning":
        places.append(_Place(_DAYS))
    if before in {"half", "quarter"} and counts:
        places.append(_Place(frozenset({"past", "to"}), known=True))
    if before in {"a", "one", "two", "another", "1", "2"} and after == "of" and _has_number(tokens[at + 2 : at + 4]):
        places.append(_Place(frozenset({"pair", "pairs"}), known=True))
    if (
        before in {"a", "an", "and", "one"}
        and _closes(tokens, at + 1)
        and {"pair", "kg", "lb", "dumbbells"} & {t.text for t in tokens}
    ):
        places.append(_Place(_THINGS))
    return places


def _is_timed(tokens: Sequence[Token], at: int) -> bool:
    """Whether a word stands between "remind me" and a time of day: "remind me sud 9am"."""
    timed = at + 1 < len(tokens) and (tokens[at + 1].kind is Kind.CLOCK or _text(tokens, at + 2) in {"am", "pm"})
    return timed and [_text(tokens, at - 2), _text(tokens, at - 1)] in (["remind", "me"], ["me", "on"], ["me", "every"])


def _is_left_over(tokens: Sequence[Token], at: int) -> bool:
    """Whether the words from `at` on say that so much was left: "left", "more in me", "in the tank"."""
    words = [_text(tokens, at + n) for n in range(3)]
    if words[0] == "left":
        return not words[1].isalpha() or words[1] in {"in", "over", "today", "at", "after", "but"}
    if words[0] == "more":
        return not words[1].isalpha() or words[1] in {"in", "left", "if", "but", "maybe", "reps"}
    return words[0] in {"rir", "remaining"} or (words[0] == "in" and (words[1] == "reserve" or words[2] == "tank"))


def _is_amount(tokens: Sequence[Token], at: int) -> bool:
    return tokens[at].kind is Kind.NUMBER or tokens[at].text in _UNITS or tokens[at].text in _REPS


def _has_number(tokens: Sequence[Token]) -> bool:
    return any(token.kind is Kind.NUMBER for token in tokens)


def _closes(tokens: Sequence[Token], at: int) -> bool:
    """Whether nothing more is said from `at` on in this breath."""
    return at >= len(tokens) or tokens[at].kind is Kind.MARK or tokens[at].apart


def _text(tokens: Sequence[Token], at: int) -> str:
    return tokens[at].text if 0 <= at < len(tokens) else ""


def _said(token: Token, word: str) -> Token:
    if word in NUMBER_WORDS:
        return replace(token, kind=Kind.NUMBER, text=word, value=Decimal(NUMBER_WORDS[word]), worded=True)
    return replace(token, text=expand(word)[0])


_MEANT: dict[str, frozenset[str]] = {
    typed: frozenset(word for word, slips in MISTYPED.items() if typed in slips) for slips in MISTYPED.values() for typed in slips
}
_KNOWN = frozenset(_MEANT)
"""Words of their own that thumbs and dictation make of another, where nothing else makes sense."""


def _misheard(raw: str, words: frozenset[str]) -> str | None:
    meant = _MEANT[raw] & words
    return next(iter(meant)) if len(meant) == 1 else None


@lru_cache(maxsize=2048)
def _is_strange(raw: str) -> bool:
    """Whether a word as typed is none that the lexicon or plain English knows."""
    return len(raw) > 1 and raw.isascii() and raw.isalpha() and raw not in VOCABULARY and raw not in ENGLISH


@lru_cache(maxsize=2048)
def _nearest(raw: str, words: frozenset[str]) -> str | None:
    """The one word of these that slips of the thumb explain best; None when none is near, or two are equally near."""
    ranked: dict[int, set[str]] = {}
    for word in words:
        if (rank := _rank(raw, word)) is not None:
            ranked.setdefault(rank, set()).add(word)
    nearest = ranked[min(ranked)] if ranked else set()
    return nearest.pop() if len(nearest) == 1 else None


def _rank(raw: str, word: str) -> int | None:
    """How likely thumbs make `raw` of `word`: 0 a key beside, a letter swapped, dropped or too many; None when they hardly do."""
    distance = OSA.distance(raw, word, score_cutoff=2)
    if distance <= 1:
        swapped = len(raw) == len(word) and Levenshtein.distance(raw, word) == 1
        if not swapped:
            return 0
        at = next(i for i, (typed, meant) in enumerate(zip(raw, word, strict=True)) if typed != meant)
        return 0 if lie_beside(raw[at], word[at]) else 1
    shuffled = len(word) >= _SHORTEST_SHUFFLED and raw[0] == word[0] and sorted(raw) == sorted(word)
    return 2 if shuffled or (distance == 2 and len(word) >= _SHORTEST_LONG) else None  # noqa: PLR2004 - two slips
