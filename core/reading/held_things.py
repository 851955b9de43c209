"""What was held, kept or carried without being a set: "held on to the rail", "kept it short", "my husband held the baby"."""

from __future__ import annotations

from typing import TYPE_CHECKING

from core.reading.lexicon import AMOUNTS, listed
from core.reading.token import Kind, Token

if TYPE_CHECKING:
    from collections.abc import Sequence

_HELD_FOR_TIME = listed("words_quantities", "held_things") | {"minutes", "seconds"}
_OWNING = frozenset({"the", "my", "a", "an", "our", "his", "her", "their", "your", "some", "onto", "to"})
_STEADY = frozenset({"held", "hold", "holding", "hung", "hanging", "hang", "lasted", "lasting"})
"""Verbs that say of themselves that it was for a time, unless something is named that was held."""

_LEADING = frozenset(
    {"on", "up", "for", "about", "only", "just", "it", "at", "around", "there", "still", "with", "in", "all", "by", "of"}
)
_DOERS = frozenset(
    {"i", "we", "it", "that", "this", "and", "then", "just", "only", "barely", "still", "also", "to", "have", "had", "was"}
)
_DOING = frozenset({"did", "got", "managed", "made"})


def holds_another_thing(tokens: Sequence[Token], first: int, last: int) -> bool:
    """Whether the verb of holding in the words `[first, last)` tells of something else than the set that is told after it.

    So it does when a thing follows that nobody holds for a time ("held on to the rail. 12 each leg"), and "kept", "stayed",
    "walked" and "carried" when anything follows but the time itself ("kept it tidy, 11 at 18kg").
    """
    if [token.text for token in tokens[last : last + 2]] == ["in", "there"]:
        return True  # "hung in there, 12 at 20kg"
    steady = any(token.text in _STEADY for token in tokens[first:last])
    owned = tokens[last - 1].text in _OWNING
    at = last
    if not _is_counted(tokens, last) and _is_of_another(tokens, first):
        return True
    while at < len(tokens) and tokens[at].kind is Kind.WORD and not tokens[at].apart:
        text = tokens[at].text
        if text in _HELD_FOR_TIME or (text == "and" and _does(tokens, at + 1)):
            break
        owned |= text in _OWNING
        if (owned and text not in _OWNING) or (not steady and text not in _LEADING | AMOUNTS["sets"]):
            return True
        if steady and text not in _LEADING | _OWNING:
            return False
        at += 1
    return False


def _is_counted(tokens: Sequence[Token], at: int) -> bool:
    """Whether a number follows in the same breath."""
    while at < len(tokens) and tokens[at].kind is Kind.WORD and not tokens[at].apart:
        at += 1
    return at < len(tokens) and tokens[at].kind is Kind.NUMBER


def _is_of_another(tokens: Sequence[Token], first: int) -> bool:
    """Whether somebody or something else is named right before the verb: "the rain held off", "the phone call lasted ages"."""
    subject = tokens[first - 1].text if first else ""
    owned = any(token.text in _OWNING for token in tokens[max(0, first - 3) : max(0, first - 1)])
    return owned and subject.isalpha() and subject not in _HELD_FOR_TIME | _DOERS


def _does(tokens: Sequence[Token], at: int) -> bool:
    return at < len(tokens) and tokens[at].text in _DOING
