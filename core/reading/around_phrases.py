"""What stands around a set phrase: who is said to do it, whether it is asked, and words that several judgements share."""

from __future__ import annotations

from typing import TYPE_CHECKING

from core.reading.lexicon import GUARDS, listed

if TYPE_CHECKING:
    from collections.abc import Sequence

    from core.reading.phrases import Said
    from core.reading.token import Token


OF_THE_SESSION = frozenset({"today", "workout", "session", "tonight", "day", "training", "todays"})
FEELINGS = {"heavy", "light", "right"}
WHEN = frozenset({"before", "when", "after", "while", "whilst", "until", "till", "because", "since", "as", "though", "although"})
OF_WAITING = listed("words_sentences", "waiting")
LIFTING = listed("words_standing", "lifting")
_OF_A_BACK = frozenset({"bad", "sore", "dodgy", "stiff", "lower", "his", "her", "their", "a"})
AUXILIARIES = listed("words_standing", "auxiliaries")
_LITTLE_ONES = frozenset({"baby", "man", "boy", "girl", "lad", "lass", "pikin", "bub"})


def of_somebody(tokens: Sequence[Token], said: Said, first: int) -> bool:
    """Whether somebody else is said to do it: "my mum is back", "my friend can't train today"."""
    at = said.first - 1
    if tokens[said.first].text == "back" and at >= first and tokens[at].text in _OF_A_BACK:
        return True  # "the wife's got a bad back again"
    while at >= first and tokens[at].text in AUXILIARIES:
        at -= 1
    others = GUARDS["people"] | _LITTLE_ONES if said.meaning in FEELINGS else GUARDS["people"] | {"he", "she"}
    return at >= first and tokens[at].text in others


def asked(tokens: Sequence[Token], first: int, last: int) -> bool:
    """Whether the sentence is a question such as "is 16kg too heavy?"."""
    questions = {"if", "is", "are", "was", "will", "would", "should", "do"}
    return last < len(tokens) and tokens[last].text == "?" and tokens[first].text in questions
