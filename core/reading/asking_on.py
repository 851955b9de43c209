"""Where a sentence goes on to ask for something else: "pair of 8s here, and remind me sat 9am"."""

from __future__ import annotations

from typing import TYPE_CHECKING

from core.reading.lexicon import COURTESY

if TYPE_CHECKING:
    from collections.abc import Sequence

    from core.reading.token import Token

_ASKING = frozenset(
    tuple(words.split())
    for words in (
        "remind me", "no more", "stop the", "stop my", "cancel the",
        "how am", "how is my", "how are my", "tell me", "show me", "what do i", "what is on", "what am i",
        "how do i", "can i do", "can i have", "can i skip", "skip this", "skip today", "can you use",
        "could you use", "can we use", "use kg", "use lb", "please use", "set a reminder", "switch to",
    )
)  # fmt: skip
_KINDLY = frozenset({"kindly", "please", "also", "just", "can", "could", "you", "would", "will"})
_POINTING_BACK = frozenset({"then", "those", "these", "that", "them", "weekly"})
_EACH_WEEK = [["each", "week"], ["every", "week"]]
_LINKS = frozenset({",", "and", "&", "+", "plus", "also", "please", "then", "so"})


def goes_on_asking(tokens: Sequence[Token], first: int, last: int) -> int | None:
    """The link after which a sentence asks for something of its own: "pair of 8s here, and remind me sat 9am"."""
    if tokens[first].text in {"except", "apart", "bar"}:
        return None  # "except on Wednesdays, remind me daily"
    for at in range(first + 2, last - 1):
        if tokens[at].text in _LINKS and tokens[at + 1].text not in _LINKS:
            begin = next((i for i in range(at + 1, last - 1) if tokens[i].text not in _KINDLY), at + 1)
            words = tuple(tokens[i].text for i in range(begin, min(begin + 3, last)))
            told = any(tokens[i].text not in COURTESY for i in range(at + 3, last))
            if words[:2] == ("remind", "me") and words[2:] and words[2] in _POINTING_BACK:
                continue  # "my days are mon and fri, remind me then"
            if words[:2] == ("remind", "me") and [token.text for token in tokens[begin + 2 : begin + 4]] in _EACH_WEEK:
                continue  # "Sundays at 5 pm, remind me each week"
            if words[:1] == ("how",) and any(tokens[i].text == "never" for i in range(first, at)):
                continue  # "never done a windmill, how do I do it"
            if any(words[: len(asking)] == asking for asking in _ASKING) and (told or words[0] != "remind"):
                return at
    return None
