"""What autocorrect and dictation make of the words around a count: "12 wraps", "for teen kilos", "forty pounds four ten reps"."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from typing import TYPE_CHECKING

from rapidfuzz.distance import OSA

from core.reading.lexicon import AMOUNTS, VOCABULARY, listed
from core.reading.spelling import is_english
from core.reading.token import Kind, Token

if TYPE_CHECKING:
    from collections.abc import Sequence

_REPS = listed("words_tokens", "rep_slips")
_EATEN = listed("words_tokens", "eaten")
_TEENS = {
    "thir": 13, "for": 14, "four": 14, "fore": 14, "fif": 15, "six": 16, "seven": 17, "eigh": 18, "eight": 18, "ate": 18,
    "nine": 19,
}  # fmt: skip
_TENS = {"twen": 20, "thir": 30, "for": 40, "fore": 40, "fif": 50, "six": 60, "seven": 70, "eigh": 80, "nine": 90}
_AFTER_COUNT = AMOUNTS["reps"] | _REPS | {"kg", "lb", "at", "with", "on", "for", "and", "x", "s", "each", "left", "right", "then"}
_OF_EACH = frozenset({"side", "sides", "leg", "legs", "arm", "arms", "hand", "hands"})
_SHORTEST_EACH = 3
_FOR = frozenset({"four", "4", "fore"})
_WEIGHED = frozenset({"kg", "lb", "s", "dumbbells", "weight"})
_MOST_SETS = 5
"""Sets that somebody does at most, so that more "lots" than these are reps: "nine lots with the twelves"."""

_LIFTED_WITH = frozenset({"with", "at", "on", "@", "using"})
_GOES_ON = frozenset(
    {"at", "with", "on", "using", "each", "and", "then", "left", "right", "per", "in", "out", "x", "@", "but", "kg", "lb"}
)


def joined_parts(tokens: list[Token]) -> list[Token]:
    """The tokens with a number that was written in two made one: "for teen kilos", "thir ty pounds"."""
    joined: list[Token] = []
    for index, token in enumerate(tokens):
        before = joined[-1] if joined else None
        value = None if before is None or before.glued else _joined(before.raw, token.raw, tokens[index + 1 : index + 3])
        if before is None or value is None:
            joined.append(token)
        else:
            raw = f"{before.raw} {token.raw}"
            joined[-1] = replace(
                before, kind=Kind.NUMBER, text=str(value), raw=raw, end=token.end, value=Decimal(value), worded=True
            )
    return joined


def _joined(first: str, second: str, following: Sequence[Token]) -> int | None:
    """The number that two words beside one another are, when what follows lets it be one."""
    after = following[0] if following else None
    if second in {"teen", "teens"}:
        ends = after is None or after.kind is not Kind.WORD or after.apart or after.text in _AFTER_COUNT
        return _TEENS.get(first) if ends else None
    if second != "ty" or after is None or not (after.worded or after.text in {"kg", "lb"}):
        return None
    return _TENS.get(first) if any(token.text in {"kg", "lb"} for token in following) else None


def as_each(tokens: Sequence[Token], index: int) -> str | None:
    """The "each" or "both" that a word before "side" or a limb is one slip from: "12 eack side", "9kg bith sides"."""
    raw, after = tokens[index].raw, tokens[index + 1].text if index + 1 < len(tokens) else ""
    if after not in _OF_EACH or len(raw) < _SHORTEST_EACH or is_english(raw) or raw in VOCABULARY:
        return None
    return next((word for word in ("each", "both") if OSA.distance(raw, word) == 1), None)


def is_reps(tokens: Sequence[Token], index: int) -> bool:
    """Whether the word at `index` is "reps" as autocorrect has it: right after a number, and nothing that is eaten or worn."""
    if tokens[index].text == "lots" and index and tokens[index - 1].kind is Kind.NUMBER:
        return tokens[index - 1].value > _MOST_SETS and index + 1 < len(tokens) and tokens[index + 1].text in _LIFTED_WITH
    if tokens[index].text not in _REPS or index == 0 or tokens[index - 1].kind is not Kind.NUMBER:
        return False
    if any(token.text in _EATEN for token in tokens[max(index - 4, 0) : index - 1]):
        return False
    after = tokens[index + 1] if index + 1 < len(tokens) else None
    ends = after is None or after.kind is not Kind.WORD or after.apart or after.text in _GOES_ON
    return ends or (after is not None and after.text == "for" and any(t.text in _WEIGHED for t in tokens[index + 2 : index + 5]))


def is_for(tokens: Sequence[Token], index: int) -> bool:
    """Whether "four" stands for "for" between a load and the reps: "forty pounds four ten reps"."""
    if tokens[index].raw not in _FOR or index == 0 or index + 1 >= len(tokens):
        return False
    if tokens[index - 1].text not in {"kg", "lb", "pounders"} or tokens[index + 1].kind is not Kind.NUMBER:
        return False
    end = next((i for i in range(index + 1, len(tokens)) if tokens[i].kind is not Kind.NUMBER), len(tokens))
    named = end < len(tokens) and tokens[end].text in AMOUNTS["reps"] | _REPS
    return named or (tokens[index].raw == "four" and end == len(tokens))
