"""What was left in the tank in looser words: "one, maybe two left", "between two and three left", "could get another couple out".

Each is rewritten as the plain way of saying it ("one or two left", "two more"), of which the grammar knows.
"""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from typing import TYPE_CHECKING

from core.reading.lexicon import AMOUNTS, listed
from core.reading.token import Kind, Token

if TYPE_CHECKING:
    from collections.abc import Sequence

_HEDGES = frozenset({"maybe", "possibly", "perhaps", "probably", "or", "about", "around", "potentially"})
_PRAISE = listed("words_quantities", "praise") - {"more"}
_LEFT = frozenset({"left", "more", "rir", "remaining", "further", "extra"})
_RESERVED = frozenset({"reserve", "rir", "tank"})
_ABLE = frozenset({"could", "might", "would", "can"})
_POSSIBLE = (["would", "have", "been", "possible"], ["were", "possible"], ["was", "possible"], ["in", "me"], ["in", "the", "tank"])
_MOST_LEFT = Decimal(6)
_LONGEST_ABLE = 6
_ONES = frozenset({"ones", "one", "reps", "rep", "of"})


def with_plain_reserve(tokens: list[Token]) -> list[Token]:
    """The tokens with each loose reserve told plainly."""
    said: list[Token] = []
    at = 0
    while at < len(tokens):
        plain, taken = _rewritten(tokens, at)
        said += plain
        at += taken
    return said


def _rewritten(tokens: Sequence[Token], at: int) -> tuple[Sequence[Token], int]:
    """What the words at `at` say plainly, and how many they are."""
    token = tokens[at]
    if token.text == "between" and (span := _pair(tokens, at + 1, {"and"})) is not None:
        return span, len(("between", "two", "and", "three"))
    if token.text == "a" and at + 1 < len(tokens) and tokens[at + 1].raw == "couple" and _is_small(tokens, at + 1):
        return (), 1
    if token.text == "another":
        return _another(tokens, at)
    if token.text in _HEDGES and at and _text(tokens, at - 1) in _RESERVED and _is_small(tokens, at + 1):
        return (), 1
    if token.text == "further" and at and _text(tokens, at - 1) == "a" and _is_small(tokens, at + 1):
        return (tokens[at + 1], replace(token, text="more")), 2 + (_text(tokens, at + 2) in _ONES)  # "a further two"
    if token.text == "further" and _is_small(tokens, at - 1):
        return (replace(token, text="more"),), 1 + (_text(tokens, at + 1) in _ONES)
    if not _is_small(tokens, at):
        return (token,), 1
    hedged = at + 1
    while hedged < len(tokens) and (tokens[hedged].text in _HEDGES or (tokens[hedged].text == "," and hedged == at + 1)):
        hedged += 1
    if hedged > at + 1 and tokens[hedged - 1].text != "," and (span := _pair(tokens, at, set(), hedged)) is not None:
        return span, hedged - at + 1
    praised = at + 1
    while _text(tokens, praised) in _PRAISE:
        praised += 1
    if praised > at + 1 and _text(tokens, praised) in AMOUNTS["reps"] and _text(tokens, praised + 1) == "left":
        return (token,), praised - at  # "two clean reps left"
    return (token,), 1


def _pair(tokens: Sequence[Token], first: int, between: set[str], second: int | None = None) -> Sequence[Token] | None:
    """Two numbers one apart of what was left, as "one or two"; None when they are not."""
    other = first + 2 if second is None else second
    if not (_is_small(tokens, first) and _is_small(tokens, other)) or tokens[other].value != tokens[first].value + 1:
        return None
    if between and _text(tokens, first + 1) not in between:
        return None
    after = other + 1 + (_text(tokens, other + 1) in AMOUNTS["reps"])
    if _text(tokens, after) not in _LEFT and _line(tokens, after, 3) != ["in", "the", "tank"]:
        return None
    return (tokens[first], replace(tokens[first + 1], kind=Kind.WORD, text="or", raw="or", apart=False), tokens[other])


def _another(tokens: Sequence[Token], at: int) -> tuple[Sequence[Token], int]:
    """What "another couple" or "another two" tells that was left, when it could have been done: "two more"."""
    counted, end = at + 1, at + 2
    number = tokens[counted] if counted < len(tokens) else tokens[at]
    if number.text == "couple":
        number = replace(number, kind=Kind.NUMBER, text="two", value=Decimal(2), worded=True)
    elif not _is_small(tokens, counted):
        return (tokens[at],), 1
    numbers: Sequence[Token] = (number,)
    if _text(tokens, end) == "or" and _is_small(tokens, end + 1):
        numbers, end = (number, tokens[end], tokens[end + 1]), end + 2
    while _text(tokens, end) in _ONES:
        end += 1
    able = {token.text for token in tokens[max(0, at - _LONGEST_ABLE) : at]} & _ABLE
    if not able and not any(_line(tokens, end, len(words)) == words for words in _POSSIBLE):
        return (tokens[at],), 1
    return (*numbers, replace(tokens[at], text="more")), end + (_text(tokens, end) == "more") - at


def _is_small(tokens: Sequence[Token], at: int) -> bool:
    return 0 <= at < len(tokens) and tokens[at].kind is Kind.NUMBER and tokens[at].value <= _MOST_LEFT


def _text(tokens: Sequence[Token], at: int) -> str:
    return tokens[at].text if 0 <= at < len(tokens) else ""


def _line(tokens: Sequence[Token], at: int, count: int) -> list[str]:
    return [token.text for token in tokens[at : at + count]]
