"""Days of the week that nobody can read: "monday and wxxday". No day that was asked for may be lost, so it is asked about."""

from __future__ import annotations

from typing import TYPE_CHECKING

from core.reading.clock import DAY_WORDS, GROUPS
from core.reading.lexicon import COURTESY, VOCABULARY, listed
from core.reading.spelling import is_english
from core.reading.token import Kind, Token

if TYPE_CHECKING:
    from collections.abc import Sequence

_LINKS = frozenset({"and", "&", "+", "/", "plus"})
_OF_TIME = frozenset(word for entry in ("morning", "evening", "noon", "remind", "off", "half") for word in listed("when", entry))
_NO_WEEKDAYS = listed("words_when", "no_weekdays")
_SHORTEST = 2
_INITIALS = frozenset("mtwfs")


def loses_a_day(tokens: Sequence[Token], first: int, last: int) -> bool:
    """Whether a word among the days of tokens `[first, last)` is a day in a spelling that cannot be read."""
    return any(
        _is_unreadable(tokens[at]) and (_ends_as_day(tokens[at]) or _is_among(tokens, at, first, last)) for at in range(first, last)
    )


def _is_unreadable(token: Token) -> bool:
    """Whether a word is neither a day nor a word that stands beside days, as typed or mended."""
    known = token.text in DAY_WORDS or token.text in GROUPS or token.text in COURTESY | _OF_TIME | _LINKS | _NO_WEEKDAYS
    raw = token.raw.lower()
    spelt = raw.isalpha() and len(raw) >= _SHORTEST and not (raw in VOCABULARY or is_english(raw))
    return token.kind is Kind.WORD and spelt and not known


def _ends_as_day(token: Token) -> bool:
    return token.raw.lower().removesuffix("s").endswith(("day", "dya"))


def _is_among(tokens: Sequence[Token], at: int, first: int, last: int) -> bool:
    """Whether a word is linked to a day: "mon, wdn", "wdn and fri"."""
    before = at - 2 if at - 1 >= first and tokens[at - 1].text in _LINKS | {","} else at - 1
    after = at + 2 if at + 1 < last and tokens[at + 1].text in _LINKS else at + 1
    if tokens[at].raw[0].lower() not in _INITIALS:
        return False  # "mon, Priya"
    led = before >= first and tokens[before].text in DAY_WORDS
    return led or (after < last and after != at + 1 and tokens[after].text in DAY_WORDS)
