"""What was held, kept or carried without being a set: "held on to the rail", "kept it short", "my husband held the baby"."""

from __future__ import annotations

from typing import TYPE_CHECKING

from core.reading.lexicon import AMOUNTS, COURTESY, EXERCISES, PLACES, listed
from core.reading.token import Kind, Token

if TYPE_CHECKING:
    from collections.abc import Sequence

_HELD_FOR_TIME = listed("words_quantities", "held_things") | {"minutes", "seconds"}
_GRIPPED = frozenset(
    {"bar", "rings", "weight", "weights", "dumbbell", "dumbbells", "kettlebell", "kettlebells", "bells", "it", "them"}
)
"""What somebody hangs on to, or does not let go of, for a time."""

_OWNING = frozenset({"the", "my", "a", "an", "our", "his", "her", "their", "your", "some"})
_ONTO = frozenset({"to", "onto"})
_STEADY = frozenset({"held", "hold", "holding", "hung", "hanging", "hang", "lasted", "lasting"})
"""Verbs that say of themselves that it was for a time, unless something is named that was held."""

_LEADING = frozenset(
    {"on", "up", "for", "about", "only", "just", "it", "at", "around", "there", "still", "with", "in", "all", "by", "of"}
)
_DOING = frozenset({"did", "got", "managed", "made"})
_DEGREES = frozenset({"never", "not", "did", "has", "have", "had", "only", "just", "barely", "still", "really", "all"})
_NOBODY = (_HELD_FOR_TIME | COURTESY | EXERCISES | listed("words_company", "closed") | _DOING) - frozenset(PLACES)
_NEAR = 3


def holds_another_thing(tokens: Sequence[Token], first: int, last: int) -> bool:
    """Whether the verb of holding in the words `[first, last)` tells of something else than the set that is told after it.

    So it does when a thing follows that nobody holds for a time ("held on to the rail. 12 each leg"), or somebody else is
    named; and "kept", "stayed", "walked" and "carried" when anything follows but the time itself ("kept it tidy, 11 at 18kg").
    """
    if [token.text for token in tokens[last : last + 2]] == ["in", "there"]:
        return True  # "hung in there, 12 at 20kg"
    if first and (tokens[first - 1].text, tokens[first].text) == ("on", "hold"):
        return True  # "put the phone on hold"
    end = next((at for at in range(last, len(tokens)) if tokens[at].kind is not Kind.WORD or tokens[at].apart), len(tokens))
    counted = end < len(tokens) and tokens[end].kind is Kind.NUMBER
    if not counted and _is_of_another(tokens, first):
        return True
    steady = any(token.text in _STEADY for token in tokens[first:last])
    gripped = False
    for at in range(last, end):
        text = tokens[at].text
        if text in _ONTO:
            gripped = True
        elif text in _OWNING:
            near = {token.text for token in tokens[at + 1 : min(at + _NEAR, end)]}
            return not near & (_GRIPPED if gripped else _HELD_FOR_TIME)
        elif text in _HELD_FOR_TIME or (text == "and" and [token.text in _DOING for token in tokens[at + 1 : at + 2]] == [True]):
            return gripped and text not in _GRIPPED
        elif gripped or text not in _LEADING | AMOUNTS["sets"]:
            return gripped or not steady
    return gripped and not steady  # "carried on to 12", but "held on to 40"


def _is_of_another(tokens: Sequence[Token], first: int) -> bool:
    """Whether somebody or something else is named right before the verb: "the rain held off", "grip held, 9 with 26kg"."""
    at = first - 1
    while at >= 0 and tokens[at].text in _DEGREES:
        at -= 1
    subject = tokens[at].text if at >= 0 and tokens[at].kind is Kind.WORD else ""
    return subject.isalpha() and not subject.endswith("ly") and subject not in _NOBODY
