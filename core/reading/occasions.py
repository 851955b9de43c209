"""What happens on a day or at a time besides training: "choir is tuesdays at 7pm", "..., I go church on Sunday"."""

from __future__ import annotations

from typing import TYPE_CHECKING

from core.reading.clock import DAY_WORDS, GROUPS
from core.reading.lexicon import COURTESY, GUARDS, listed
from core.reading.token import Kind

if TYPE_CHECKING:
    from collections.abc import Sequence

    from core.reading.token import Token

_OF_TRAINING = listed("words_when", "of_training")
_OCCASIONS = listed("words_when", "occasions")
_WISHES = listed("words_when", "wishes")
_REMIND = listed("when", "remind")
_OFF = listed("when", "off")
_HAPPENS = frozenset(
    {
        "opens",
        "closes",
        "shuts",
        "starts",
        "begins",
        "ends",
        "departs",
        "arrives",
        "leaves",
        "finishes",
        "goes",
        "runs",
        "lands",
        "comes",
        "come",
        "meets",
        "visits",
        "plays",
        "kicks",
        "gets",
        "wakes",
        "sleeps",
        "naps",
        "works",
        "lasts",
        "falls",
    }
)
_PARTS = frozenset({",", "because", "as", "since", "so", "-", ";", "(", ".", "!"})
_SUBJECTS = frozenset(
    {"i", "we", "my", "our", "he", "she", "they", "his", "her", "their", "the", "wife", "husband", "kids", "mum", "daughter", "son"}
)
_AFTER_A_DAY = (["is"], ["are"], ["na"], ["i"], ["we"], ["he"], ["she"], ["my"], ["be"])
_PAST = frozenset(
    {"watched", "went", "saw", "met", "missed", "had", "ate", "slept", "walked", "ran", "drove", "flew", "landed", "played", "woke"}
)
_OTHERS = GUARDS["people"] | {"boys", "girls", "lads", "twins"}
_ARTICLES = frozenset({"the", "my", "our", "a"})
_OWNING = frozenset({"have", "got", "has", "is", "there", "i", "we", "a", "my", "the", "our", "am", "at"})
_UNNAMED = frozenset(
    {"it", "that", "this", "there", "what", "when", "which", "how", "mine", "best", "where", "why", "who", "yes", "usual", "one"}
)
_LEAD_WORDS = 5
_MOST_CUTS = 8


def is_an_occasion(words: Sequence[str]) -> bool:
    """Whether days and times are told of something that happens then: "the gym opens 6am on weekdays", "dentist thursday 2pm"."""
    if _is_set_for_training(words):
        return False
    start = 1 if words[0] in _ARTICLES else 0
    told = words[start : start + 3]
    named = bool(told) and not set(told) & _OF_TRAINING and not _names_a_day(told[0])
    happens = _HAPPENS | ({"is", "are"} if start else set())
    if named and happens & set(told[1:]):
        return True
    verb = next((at for at in (1, 2) if words[at : at + 1] in (["is"], ["are"])), 0)
    if verb and named and not set(words[:verb]) & (_UNNAMED | COURTESY) and not any(_names_a_day(word) for word in words[:verb]):
        return True  # "choir is tuesdays at 7pm"
    if words[0] in _PAST:
        return True  # "watched the match at 3pm sunday"
    if set(words) & _OF_TRAINING - {"day", "days", "time", "times"}:
        return False
    if (
        "meet" in words
        or (words[start : start + 1] and words[start] in _OTHERS)
        or (words[0] in {"i", "we"} and not set(words[1:_LEAD_WORDS]) & _WISHES)
    ):
        return True  # "the kids have karate tue and thu 5pm", "I go to bed at 9pm every day"
    lead = [word for word in words[:_LEAD_WORDS] if word not in _OWNING]
    return bool(lead) and lead[0] in _OCCASIONS


def _is_set_for_training(words: Sequence[str]) -> bool:
    return bool(set(words) & (_REMIND | {"remember"}))


def _names_a_day(word: str) -> bool:
    return word in DAY_WORDS or word in GROUPS


def without_reasons(tokens: Sequence[Token], first: int, last: int) -> tuple[int, int]:
    """Tokens `[first, last)` without a clause at either end that only tells what else is on: "..., I go church on Sunday"."""
    cuts = [i for i in range(first + 1, last - 1) if tokens[i].text in _PARTS or tokens[i].apart]
    if len(cuts) > _MOST_CUTS:
        return first, last
    for cut in reversed(cuts):
        begin = cut if tokens[cut].apart else cut + 1
        if _plans_days(tokens, first, cut) and _is_a_reason(tokens, begin, last):
            last = cut
            break
    for cut in cuts:
        begin = cut if cut < last and tokens[cut].apart else cut + 1
        if begin < last and _plans_days(tokens, begin, last) and _is_a_reason(tokens, first, cut):
            return begin, last
    return first, last


def _plans_days(tokens: Sequence[Token], first: int, last: int) -> bool:
    return any(_names_a_day(tokens[i].text) or tokens[i].text in {"every", "daily"} for i in range(first, last))


def _is_a_reason(tokens: Sequence[Token], first: int, last: int) -> bool:
    """Whether a clause with a day and no number tells what somebody does then, and not when to train."""
    begin = first
    while begin < last and (
        tokens[begin].text in COURTESY - _SUBJECTS or tokens[begin].text in {"because", "as", "since", "on", ","}
    ):
        begin += 1
    words = [token.text for token in tokens[begin:last]]
    if not words or any(token.kind in {Kind.NUMBER, Kind.CLOCK, Kind.ODD, Kind.ORDINAL} for token in tokens[begin:last]):
        return False
    if not any(_names_a_day(word) for word in words) or set(words) & (_OFF | _REMIND | _WISHES):
        return False
    told = words[0] in _SUBJECTS or (_names_a_day(words[0]) and words[1:2] in _AFTER_A_DAY)
    return told or bool(set(words) & _OCCASIONS)
