"""How many, answered in words and without a figure: "none, the kid climbed on me", "not one", "only the one, I fear"."""

from __future__ import annotations

from typing import TYPE_CHECKING

from core.reading.acts import Awaiting, Context
from core.reading.lexicon import COURTESY, GUARDS, HURT
from core.reading.loose_numbers import WHILE
from core.reading.spans import parted
from core.reading.token import Kind, Token

if TYPE_CHECKING:
    from collections.abc import Sequence

_BESIDE_ONE = frozenset({"the", "i", "fear", "am", "afraid", "sorry", "did", "managed", "got", "sir", "coach", "today", "this"})
_ADDRESSING = frozenset(
    {
        "mate",
        "lol",
        "haha",
        "sorry",
        "coach",
        "sir",
        "bro",
        "boss",
        "love",
        "pal",
        "!",
        "-",
        "o",
        "oh",
        "oo",
        "abeg",
        "sha",
        "yaar",
        "ji",
    }
)
_REGRETTING = frozenset({"sadly", "unfortunately", "alas", "regrettably", "sorry", ",", "."})
_NOT_ONE = (["not", "one", ","], ["not", "one", "."], ["not", "one", "!"])
_BESIDE_NONE = frozenset(
    {"did", "got", "managed", "made", "afraid", "am", "there", "reps", "friend", "all", "at", "this", "time", "today", "for", "me"}
)
_RUEING = frozenset({"to", "say", "report", "admit", "tell", "you", "fear", "regret", "sad", "sadly", "ashamed", "embarrassed"})
_OF_SOMETHING_ELSE = frozenset({"?", "left", "tank", "dumbbells", "kettlebells", "weights", "plates", "reserve", "more", "help"})
"""Words of what there may be none of, other than repetitions."""

_SHORTEST_STORY = 1


def answers_in_words(tokens: Sequence[Token], context: Context) -> bool:
    """Whether a long message without figures still answers how many: "none, the kid climbed on me", "only the one, I fear"."""
    return _answers_none(tokens) or _none_at_last(tokens) or is_just_one(tokens, context)


def _answers_none(tokens: Sequence[Token]) -> bool:
    """Whether a long message begins with a "none" that is parted from the rest: "none, the kid climbed on me"."""
    planned = {token.text for token in tokens} & (GUARDS["plan"] | GUARDS["question"] | {"?"})
    return (
        not planned
        and (tokens[0].text in {"none", "zilch", "nada", "zip"} or [token.text for token in tokens[:3]] in _NOT_ONE)
        and (tokens[0].text == "not" or _after_address(tokens) > 1 or tokens[1].text in WHILE or tokens[1].apart)
    )


def _none_at_last(tokens: Sequence[Token]) -> bool:
    """Whether a story ends with a "none" of its own: "The cat sat on me. None, I'm afraid", "baby woke up so none"."""
    said = {token.text for token in tokens}
    if said & (_OF_SOMETHING_ELSE | HURT) or said & (GUARDS["plan"] | GUARDS["question"]):
        return False
    at = next((i for i in range(len(tokens) - 1, 0, -1) if tokens[i].text == "none"), 0)
    led = at > _SHORTEST_STORY and (tokens[at - 1].text in {".", "!", ";", "so"} or tokens[at].apart)
    return led and all(token.kind is Kind.MARK or token.text in COURTESY | _BESIDE_NONE | _RUEING for token in tokens[at + 1 :])


def _after_address(tokens: Sequence[Token]) -> int:
    """The index after the first word of a message and whom it speaks to: "none o", "none sir sorry"."""
    return next((at for at in range(1, len(tokens)) if tokens[at].text not in _ADDRESSING), len(tokens))


def is_nought(tokens: Sequence[Token], context: Context) -> bool:
    """Whether a bare "none" answers how many."""
    if context.awaiting is Awaiting.REPS and _none_at_last(tokens):
        return True
    begin = next((i for i, token in enumerate(tokens) if token.text not in _REGRETTING), 0)
    first = next(parted(tokens, [(begin, len(tokens))]), (0, 0))[1]
    end = next((i for i in range(begin + 1, first) if tokens[i].text in WHILE | _ADDRESSING), first)
    words = [token.text for token in tokens[begin:end] if token.kind is not Kind.MARK and token.text not in COURTESY | _BESIDE_NONE]
    return context.awaiting is Awaiting.REPS and words in (
        ["none"],
        ["nothing"],
        ["nada"],
        ["zilch"],
        ["zip"],
        ["not", "one"],
        ["not", "a", "one"],
    )


def is_just_one(tokens: Sequence[Token], context: Context) -> bool:
    """Whether "only the one" answers how many."""
    end = next(parted(tokens, [(0, len(tokens))]), (0, 0))[1]
    end = next((i for i in range(1, end) if tokens[i].text in WHILE), end)
    words = [token.text for token in tokens[:end] if token.kind is not Kind.MARK and token.text not in _BESIDE_ONE]
    return context.awaiting is Awaiting.REPS and words in (["only", "one"], ["just", "one"], ["one", "only"])
