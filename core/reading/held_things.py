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

_LEADING = frozenset({"on", "up", "for", "about", "only", "just", "it", "at", "around", "there", "still", "with", "in", "all"})
_DOING = frozenset({"did", "got", "managed", "made"})


def holds_another_thing(tokens: Sequence[Token], first: int, last: int) -> bool:
    """Whether the verb of holding in the words `[first, last)` tells of something else than the set that is told after it.

    So it does when a thing follows that nobody holds for a time ("held on to the rail. 12 each leg"), and "kept", "stayed",
    "walked" and "carried" when anything follows but the time itself ("kept it tidy, 11 at 18kg").
    """
    steady = any(token.text in _STEADY for token in tokens[first:last])
    owned = tokens[last - 1].text in _OWNING
    at = last
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


def _does(tokens: Sequence[Token], at: int) -> bool:
    return at < len(tokens) and tokens[at].text in _DOING
