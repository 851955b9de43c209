"""Figures that look like a set and are none: an age with a body weight, a house number, a figure that a thumb has split."""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING

from core.reading.company import is_counted
from core.reading.lexicon import AMOUNTS, COURTESY, EXERCISES, GUARDS, listed
from core.reading.spelling import is_english
from core.reading.token import Kind

if TYPE_CHECKING:
    from collections.abc import Sequence

    from core.reading.parts import Part
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


def is_code(tokens: Sequence[Token]) -> bool:
    """Whether figures stand in a line of a program: "print(11*20)", "echo 12", "x = 12", "reps = 12;"."""
    for at, (one, after) in enumerate(pairwise(tokens)):
        third = tokens[at + 2] if at + 2 < len(tokens) else after
        called = after.text == "(" and after.glued and third.kind is Kind.NUMBER and third.glued
        if called and (
            one.text in _CODE or (at and tokens[at - 1].text == "_") or (len(one.raw) == 1 and one.text not in _SHORT_FOR_SETS)
        ):
            return True
        if after.text == "=" and third.kind is Kind.NUMBER and (one.raw.isalpha() and len(one.raw) == 1):
            return one.text not in _SHORT_FOR_SETS - {"x"}
        if one.kind is Kind.NUMBER and after.text == ";" and at + 2 == len(tokens) and "=" in {token.text for token in tokens}:
            return True
    if tokens and tokens[0].raw in _PROGRAMS:
        return True
    return len(tokens) > 1 and tokens[0].text in _COMMANDS and tokens[1].kind is Kind.NUMBER


_CODE = listed("words_guards", "code")
_COMMANDS = frozenset({"echo", "print", "printf", "return", "exec", "eval"})
_PROGRAMS = frozenset({"git", "npm", "docker", "ssh"})
_SHORT_FOR_SETS = frozenset({"l", "r", "x", "s"})


def opens_with_more(tokens: Sequence[Token], parts: Sequence[Part]) -> bool:
    """Whether a message begins with how many more, which is what was left of no set told yet: "1 more actually, so 11"."""
    numbers = [part for part in parts if part.numbers]
    first = numbers[0] if len(numbers) > 1 else None
    return first is not None and first.kind == "more" and first.at == 0 and tokens[2:3] != [] and tokens[2].text not in _LEFT_IN


_LEFT_IN = frozenset({"left", "in", "possible", "reserve", "remaining"})


def points_at_another(tokens: Sequence[Token], parts: Sequence[Part]) -> bool:
    """Whether a bare number beside a load is a weight that is spoken of: "14kg. The 12 is my daughter's"."""
    if not any(part.kind == "load" for part in parts):
        return False
    for part in parts:
        lead = tokens[part.at - 1].text if part.at else ""
        after = [token.text for token in tokens[part.at + 1 : part.at + 3]]
        if (
            part.kind == "bare"
            and lead in _POINTING
            and after[:1] != []
            and after[0] in {"is", "belongs", "was", "felt", "feels", "looks", "looked", "has", "needs"}
        ):
            return True
    return False


def is_left_of_a_thing(tokens: Sequence[Token], parts: Sequence[Part]) -> bool:
    """Whether "left" or "more" after a number is of something else than reps: "2 left the room", "one more cookie than planned"."""
    for part in parts:
        word = tokens[part.at + 1].text if part.at + 1 < len(tokens) else ""
        if not part.numbers or word not in {"left", "more"} or part.at + 2 >= len(tokens):
            continue
        after = tokens[part.at + 2]
        if after.kind is not Kind.WORD or after.apart:
            continue
        if word == "left" and (after.text in _LEAVING or is_counted(after.text)):
            return True
        if word == "more" and part.kind == "more" and (after.text in _NOT_REPS or is_counted(after.text)):
            return True
    return False


_LEAVING = frozenset({"the", "over", "behind", "sock", "shoe", "boot", "glove", "turn", "feet", "foot"})
_NOT_REPS = frozenset(
    {"cookie", "biscuit", "coffee", "tea", "beer", "sleep", "day", "week", "hour", "month", "email", "call", "meeting"}
)


def tells_what_is_owned(tokens: Sequence[Token]) -> bool:
    """Whether the numbers are of weights that somebody owns: "I only own 12 and 16kg"."""
    return any(
        tokens[at].text in {"own", "possess"} and tokens[at - 1].text in _OWNING and tokens[at + 1].kind is Kind.NUMBER
        for at in range(1, len(tokens) - 1)
    )


_OWNING = frozenset({"i", "we", "only", "just"})
_POINTING = frozenset({"the", "that", "his", "her", "their", "our"})


def counts_a_thing(tokens: Sequence[Token], parts: Sequence[Part]) -> bool:
    """Whether a bare number of what looks like a correction is of something else: "make that two coffees", "the score was 3"."""
    if any(
        one.text in {"was", "is"} and of.text in {"my", "the", "our"} and whom.text in GUARDS["people"]
        for one, of, whom in zip(tokens, tokens[1:], tokens[2:], strict=False)
    ):
        return True  # "sorry that was my sister typing, 13"
    for part in parts:
        if part.kind == "load" and _befell(tokens, part.at):
            return True
        if part.kind != "bare":
            continue
        after = tokens[part.at + 1] if part.at + 1 < len(tokens) else None
        if after is not None and after.kind is Kind.WORD and not (after.apart or after.glued) and is_counted(after.text):
            return True
        following = [token.text for token in tokens[part.at + 1 : part.at + 4]]
        if following in _PARTS_OF_A_DAY:
            return True
        if following[:1] == ["is"] and following[1:] != [] and not set(following[1:]) & _IS_RIGHT:
            return True  # "13 is my lucky number"
        lead = [token.text for token in tokens[max(0, part.at - 3) : part.at]]
        if lead[:1] == ["the"] and lead[-1] in {"was", "is"} and lead[1] not in _OF_THE_RECORD | EXERCISES | AMOUNTS["rpe"]:
            return is_english(lead[1]) and lead[1].isalpha()
    return _mistakes_a_thing(tokens)


def _befell(tokens: Sequence[Token], at: int) -> bool:
    """Whether something happened to a weight, and it was not lifted: "dropped a 14kg", "my 14kg is missing"."""
    lead = [token.text for token in tokens[max(0, at - 3) : at]]
    after = [token.text for token in tokens[at + 1 : at + 4] if token.text not in {"kg", "lb", "s"}]
    gone = after[:1] in (["is"], ["are"]) and after[1:] != [] and after[1] in _GONE
    return lead[-1:] != [] and lead[-1] in {"a", "an", "my", "the", "our"} and (gone or bool(_HAPPENED & set(lead)))


_GONE = frozenset({"missing", "gone", "broken", "lost", "damaged", "mine", "hers", "his", "taken", "new"})
_HAPPENED = frozenset({"dropped", "lost", "broke", "found", "bought", "ordered", "sold", "borrowed", "lent", "tripped"})


def _mistakes_a_thing(tokens: Sequence[Token]) -> bool:
    """Whether what was mistaken is named, and is no record: "I miscounted the eggs, there are 10", "typo in the email at 9"."""
    for at, token in enumerate(tokens[:-2]):
        if token.text not in _MISTAKES:
            continue
        after = [one.text for one in tokens[at + 1 : at + 4] if one.text not in {"in", "with", "on"}]
        if after[:1] != [] and after[0] in {"the", "my", "our"} and after[1:] != [] and is_english(after[1]):
            return after[1] not in _OF_THE_RECORD | _WEIGHED | AMOUNTS["reps"]
    return False


_MISTAKES = frozenset({"miscounted", "misread", "misheard", "typo", "mistake", "confused"})
_WEIGHED = listed("words_guards", "weights") | {
    "plate",
    "plates",
    "label",
    "screen",
    "display",
    "sheet",
    "note",
    "notes",
    "own",
    "entry",
}
_IS_RIGHT = frozenset(
    {"right", "correct", "what", "true", "all", "actual", "real", "accurate", "count", "reps", "total", "answer", "done"}
)
_PARTS_OF_A_DAY = (["in", "the", "morning"], ["in", "the", "evening"], ["in", "the", "afternoon"])
_OF_THE_RECORD = listed("words_records", "told_of") | listed("words_records", "of_the_record")


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
