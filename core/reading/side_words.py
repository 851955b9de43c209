"""How far a side may stand from the number it belongs to: "left only so far: 11", "11 at 16kg, right only", "right not left"."""

from __future__ import annotations

from typing import TYPE_CHECKING

from core.reading.lexicon import listed
from core.reading.token import Kind, Token

if TYPE_CHECKING:
    from collections.abc import Sequence

    from core.reading.phrases import Said

COUNTED_WITH = frozenset({"kg", "lb", "reps", "rep", "s", "seconds", "/"})
"""Words between a number and the side that follows it."""

_AFTER_SIDE = listed("words_quantities", "after_side")
_BESIDE_SIDE = frozenset({"only", "just", "the", "my", "side", "arm", "leg", "that", "was", "this", "is"})
_MOST_AFTER_SIDE = 4


def leads(tokens: Sequence[Token], index: int, *, sides: bool) -> bool:
    """Whether a side at `index` has its number a few small words on: "left only so far: 11", "(left) got 13"."""
    if not (sides or {"left", "right"} <= {token.text for token in tokens}):
        return False
    if _text(tokens, index + 1) in {"now", "then", "so"} and _text(tokens, index + 2) != "far":
        return False  # "right then, 12"
    ahead = _past_small_words(tokens, index + 1, index + 1 + _MOST_AFTER_SIDE)
    return _is_number(tokens, ahead)


def is_beside_number(tokens: Sequence[Token], first: int, last: int) -> bool:
    """Whether a number stands right before the words `[first, last)`, or a few small words after them."""
    ahead = _past_small_words(tokens, last, len(tokens))
    return _is_number(tokens, ahead) or _is_number(tokens, first - 1) or _text(tokens, first - 1) in COUNTED_WITH


def stands_alone(tokens: Sequence[Token], index: int) -> bool:
    """Whether a side at `index` stands with "only" or "just" and nothing else between marks: "11 at 16kg, left only"."""
    first, last = index, index + 1
    while first and tokens[first - 1].text in _BESIDE_SIDE:
        first -= 1
    while _text(tokens, last) in _BESIDE_SIDE:
        last += 1
    only = {"only", "just"} & {token.text for token in tokens[first:last]}
    begun = first == 0 or tokens[first - 1].kind is Kind.MARK
    return bool(only) and begun and (last == len(tokens) or tokens[last].kind is Kind.MARK)


def contrasts(tokens: Sequence[Token], index: int) -> bool:
    """Whether one side is named for the other, and no number: "right not left"."""
    if any(token.kind is Kind.NUMBER for token in tokens):
        return False
    pair = {_text(tokens, index), _text(tokens, index + 2 if _text(tokens, index + 1) == "not" else index - 2)}
    return pair == {"left", "right"} and "not" in {_text(tokens, index - 1), _text(tokens, index + 1)}


def counted_left(tokens: Sequence[Token], said: Said) -> bool:
    """Whether "reps left" names a side, since the right is told as well: "10 reps left, 9 reps right"."""
    words = [token.text for token in tokens[said.first : said.last]]
    return words in (["reps", "left"], ["rep", "left"]) and any(
        token.text in {"right", "r"}
        and (_is_number(tokens, i - 1) or _is_number(tokens, i + 1) or _text(tokens, i - 1) in {"reps", "rep"})
        for i, token in enumerate(tokens)
    )


def _past_small_words(tokens: Sequence[Token], index: int, last: int) -> int:
    first = index
    while index < last and _text(tokens, index) in _AFTER_SIDE:
        index += 1
    comma = index > first and _text(tokens, index) == ","  # "left only so far, 11"
    return index + 1 if comma and index < last else index


def _text(tokens: Sequence[Token], index: int) -> str:
    return tokens[index].text if 0 <= index < len(tokens) else ""


def _is_number(tokens: Sequence[Token], index: int) -> bool:
    return 0 <= index < len(tokens) and tokens[index].kind is Kind.NUMBER
