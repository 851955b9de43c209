"""Sides written short: "L8 R9 14kg" (and not "late"), "(L) 9", "L arm 9", "9 p/s"."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from typing import TYPE_CHECKING

from core.reading.side_words import LIMBS
from core.reading.token import Kind, Token

if TYPE_CHECKING:
    from collections.abc import Sequence

_SIDES = {"l": "left", "r": "right"}
_SHORTENED = frozenset({"l", "r", "lt", "rt", "lft", "rgt", "rght"})
_LATE = "l8"
_PER_SIDE = ("p", "/", "s")


def with_sides(tokens: list[Token]) -> list[Token]:
    """The tokens with each short side as one that is written out, or beside its number."""
    tokens = _without_stops(tokens)
    if not any(token.text in {"l", "r", "p"} for token in tokens):
        return tokens
    rights = any(token.text == "r" and _stands_by_a_number(tokens, at) for at, token in enumerate(tokens))
    sided: list[Token] = []
    at = 0
    while at < len(tokens):
        token, following = tokens[at], tokens[at + 1] if at + 1 < len(tokens) else None
        taken = 1
        if rights and token.raw == _LATE:
            middle = token.start + 1
            sided.append(replace(token, text="l", raw="l", end=middle))
            sided.append(Token(Kind.NUMBER, "8", "8", middle, token.end, glued=True, value=Decimal(8)))
        elif token.text == "(" and _texts(tokens, at + 2) == (")",) and following is not None and following.text in _SIDES:
            sided.append(following)
            taken = 3
        elif token.text in _SIDES and not token.glued and following is not None and _is_counted(tokens, at, following):
            sided.append(replace(token, text=_SIDES[token.text]))
        elif _texts(tokens, at, 3) == _PER_SIDE and at and tokens[at - 1].kind is Kind.NUMBER:
            sided += [replace(token, text="each"), replace(tokens[at + 2], text="side", glued=False)]
            taken = 3
        else:
            sided.append(token)
        at += taken
    return sided


def _without_stops(tokens: list[Token]) -> list[Token]:
    """The tokens without the full stop of a shortened side before its number: "Rt. 8, Lt. 8"."""
    stops = {
        at + 1
        for at in range(len(tokens) - 2)
        if tokens[at].raw in _SHORTENED
        and tokens[at + 1].text == "."
        and tokens[at + 1].glued
        and tokens[at + 2].kind is Kind.NUMBER
    }
    return [token for at, token in enumerate(tokens) if at not in stops] if stops else tokens


def _stands_by_a_number(tokens: Sequence[Token], at: int) -> bool:
    near = (*tokens[max(at - 1, 0) : at], *tokens[at + 1 : at + 3])
    return any(token.kind is Kind.NUMBER for token in near)


def _is_counted(tokens: Sequence[Token], at: int, limb: Token) -> bool:
    """Whether a letter before a limb tells where a number was done, and not what hurts: "L arm 9", but not "r arm ded"."""
    near = (*tokens[max(at - 2, 0) : at], *tokens[at + 2 : at + 4])
    return limb.text in LIMBS and any(token.kind is Kind.NUMBER for token in near)


def _texts(tokens: Sequence[Token], at: int, count: int = 1) -> tuple[str, ...]:
    return tuple(token.text for token in tokens[at : at + count])
