"""Sides told by what is good or bad about them: "9 on the good leg... I mean the right", "8 on my bad arm (left), 11 other arm"."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from core.reading.lexicon import listed
from core.reading.side_words import LIMBS
from core.reading.token import Kind, Token

if TYPE_CHECKING:
    from collections.abc import Sequence

_DESCRIBED = listed("words_quantities", "described_sides")
_EXPLAINING = frozenset({"i", "mean", "meaning", "that", "is", "which", "being", "ie", "my", "the", "e"})
_PARTING = frozenset({",", ".", "(", "-", ":", ";"})
_OPPOSITE = {"left": "right", "right": "left"}
_MOST_BETWEEN = 8


def with_named_sides(tokens: list[Token]) -> list[Token]:
    """The tokens with each described side as the side it is, which its words explain, or the other one's leave over."""
    texts = {token.text for token in tokens}
    if not texts & _OPPOSITE.keys() or not texts & (_DESCRIBED | {"other"}):
        return tokens
    named: list[Token] = []
    explained: set[str] = set()
    at = 0
    while at < len(tokens):
        side_and_end = _explained(tokens, at)
        if side_and_end is None:
            named.append(tokens[at])
            at += 1
            continue
        side, end = side_and_end
        explained.add(side)
        named += [replace(tokens[at], text=side), replace(tokens[at + 1], text="side")]
        at = end
    told = explained | {token.text for i, token in enumerate(named) if _names_a_side(named, i)}
    if len(told) != 1 or (texts & _OPPOSITE.keys()) - told or sum(token.kind is Kind.NUMBER for token in named) == 1:
        return named
    other = _OPPOSITE[next(iter(told))]
    over = _DESCRIBED | {"other"} if explained else {"other"}
    return [
        replace(token, text=other) if token.text in over and _stands_for_a_side(named, at) else token
        for at, token in enumerate(named)
    ]


def _names_a_side(tokens: Sequence[Token], at: int) -> bool:
    """Whether "left" at `at` is a side and not what was left: "left arm", "on my left"."""
    limb = _is_of_limb(tokens, at)
    return tokens[at].text in _OPPOSITE and (limb or (at > 0 and tokens[at - 1].text in {"on", "my", "the"}))


def _stands_for_a_side(tokens: Sequence[Token], at: int) -> bool:
    """Whether "the other" at `at` is the other side: "8 on the other", "other arm 8"."""
    closed = at + 1 == len(tokens) or tokens[at + 1].kind is Kind.MARK or tokens[at + 1].text in {"with", "at", "and"}
    led = at > 1 and tokens[at - 2].text in {"on", "with"} and tokens[at - 1].text in {"the", "my"}
    return _is_of_limb(tokens, at) or (tokens[at].text == "other" and led and closed)


def _explained(tokens: Sequence[Token], at: int) -> tuple[str, int] | None:
    """The side that the words at `at` describe and then name, and where its name ends."""
    if tokens[at].text not in _DESCRIBED or not _is_of_limb(tokens, at):
        return None
    ahead = at + 2
    words = 0
    while ahead < min(len(tokens), at + _MOST_BETWEEN) and tokens[ahead].text in _PARTING | _EXPLAINING:
        words += tokens[ahead].text in _EXPLAINING
        ahead += 1
    if ahead >= len(tokens) or tokens[ahead].text not in _OPPOSITE or ahead == at + 2:
        return None
    end = ahead + 1
    end += end < len(tokens) and tokens[end].text in LIMBS | {"one"}
    bracketed = tokens[ahead - 1].text == "(" or "(" in {token.text for token in tokens[at + 2 : ahead]}
    if end < len(tokens) and tokens[end].kind is Kind.NUMBER and not (words or bracketed):
        return None  # "9 on my good leg, right 6"
    end += end < len(tokens) and bracketed and tokens[end].text == ")"
    return tokens[ahead].text, end


def _is_of_limb(tokens: Sequence[Token], at: int) -> bool:
    """Whether what stands at `at` describes a side: "the good leg", "my weak one"."""
    return at + 1 < len(tokens) and tokens[at + 1].text in LIMBS | {"one"}
