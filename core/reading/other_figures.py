"""Figures that look like a set and are none: an age with a body weight, a house number, a figure that a thumb has split."""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING

from core.reading.lexicon import AMOUNTS, COURTESY, EXERCISES, GUARDS, listed
from core.reading.token import Kind

if TYPE_CHECKING:
    from collections.abc import Sequence

    from core.reading.token import Token

_STREETS = listed("words_records", "streets")
_CLOSED = listed("words_company", "closed")
_TIMES = frozenset({"times", "x", "days", "sessions", "workouts", "nights", "mornings"})
_EVERY = frozenset({"a", "per", "each", "every", "in", "the", "this"})
_PERIODS = frozenset({"week", "month", "day", "fortnight", "year", "weekly"})
_OFTEN = frozenset({"weekly", "daily", "monthly", "pw", "week"})
_UNITS = frozenset({"kg", "lb"})
_LONGEST_LEAD = 8
_OWNERS = frozenset({"the", "my", "our", "a", "that"})
_ELSEWHERE = (
    (GUARDS["substance"] | GUARDS["people"] | listed("words_phrases", "thing") | listed("words_standing", "elsewhere"))
    | listed("words_when", "comfort")
) - {"floor", "mat", "body", "face", "weight", "height"}
_OF_A_HOLD = EXERCISES | {
    "i",
    "we",
    "me",
    "held",
    "hold",
    "holding",
    "hung",
    "hang",
    "did",
    "got",
    "managed",
    "made",
    "kept",
    "stayed",
}
_QUEUED = frozenset({"queued", "queuing", "queueing", "commuted", "commuting", "drove", "chatted", "chatting"})
_WHERE_ONE_WAS = (
    frozenset({"on", "in", "at"}),
    frozenset({"the", "my", "a"}),
    listed("words_when", "comfort")
    | {"phone", "call", "queue", "bus", "train", "car", "traffic", "door", "sink", "bath", "shower"},
)
_LEADING = frozenset({"for", "about", "only", "just", "around", "at", "in", "after", "by", "of", "to", "with"})
_DIGITS = frozenset("0123456789")


def tells_of_oneself(tokens: Sequence[Token]) -> bool:
    """Whether a number right after "I am" is an age or a body weight: "I'm 58, 84 kg and ready", "I am 84 kg"."""
    for at in range(len(tokens) - 2):
        told = (tokens[at].text, tokens[at + 1].text) == ("i", "am") and tokens[at + 2].kind is Kind.NUMBER
        after = tokens[at + 3].text if at + 3 < len(tokens) else ""
        if told and not tokens[at + 2].apart and after not in AMOUNTS["reps"] | {"in", "done", "down", "into"}:
            return True
    return False


def tells_how_often(tokens: Sequence[Token]) -> bool:
    """Whether a number says how often something is to be done, and not how many reps were: "3 times a week", "4 times weekly"."""
    for at, token in enumerate(tokens[:-2]):
        following = [other.text for other in tokens[at + 1 : at + 4]]
        if token.kind is not Kind.NUMBER or following[0] not in _TIMES:
            continue
        if following[1] in _OFTEN or (following[1] in _EVERY and following[2:] != [] and following[2] in _PERIODS):
            return True
    return False


def lasts_otherwise(tokens: Sequence[Token]) -> bool:
    """Whether a length of time is one of something else than a hold: "the phone rang for 2 minutes", "the loo took 2 minutes"."""
    figures = [i for i, token in enumerate(tokens) if token.kind is Kind.NUMBER]
    for at in figures:
        if at + 1 == len(tokens) or tokens[at + 1].text not in {"minutes", "seconds"}:
            continue
        begin = next((i + 1 for i in range(at - 1, max(at - _LONGEST_LEAD, 0) - 1, -1) if tokens[i].kind is not Kind.WORD), 0)
        lead = [token.text for token in tokens[max(begin, at - _LONGEST_LEAD) : at]]
        rest = [other.text for other in tokens[at + 2 : at + 5]]
        if (set(lead) | set(rest)) & _OF_A_HOLD:
            continue
        named = next((i for i, (owner, noun) in enumerate(pairwise(lead)) if owner in _OWNERS and noun in _ELSEWHERE), None)
        if named is not None and set(lead[named + 2 :]) - _LEADING:
            return True
        ahead = len(lead) > 1 and lead[-1] == "in"  # "bus is in 3 minutes"
        if len(figures) > 1:
            continue
        if ahead or _is_at_something(lead[-len(_WHERE_ONE_WAS) :]) or _is_at_something(rest) or set(lead) & _QUEUED:
            return True
    return False


def _is_at_something(words: Sequence[str]) -> bool:
    """Whether three words tell where somebody was instead of holding something: "on the phone", "in the queue"."""
    return len(words) == len(_WHERE_ONE_WAS) and all(word in known for word, known in zip(words, _WHERE_ONE_WAS, strict=True))


def names_an_address(tokens: Sequence[Token]) -> bool:
    """Whether a number is that of a house, by the street that follows: "17 Mill Lane", "4 Station Road"."""
    for at, token in enumerate(tokens[:-2]):
        name, street = tokens[at + 1], tokens[at + 2]
        if token.kind is not Kind.NUMBER or street.text not in _STREETS or name.kind is not Kind.WORD:
            continue
        if name.text not in _CLOSED | COURTESY | _UNITS | AMOUNTS["reps"] and not (name.apart or name.glued):
            return True
    return False


def splits_a_figure(tokens: Sequence[Token]) -> bool:
    """Whether a one stands before another digit where one figure belongs, before "reps" or after "at": "1 4 reps at 1 8kg"."""
    for at, (one, other) in enumerate(pairwise(tokens)):
        if one.raw != "1" or other.raw not in _DIGITS or other.apart:
            continue
        before = tokens[at - 1].text if at else ""
        after = tokens[at + 2].text if at + 2 < len(tokens) else ""
        if after in AMOUNTS["reps"] or (before in {"at", "@", "with", "x"} and after in _UNITS):
            return True
    return False
