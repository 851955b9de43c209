"""Words of manners that say nothing else: thanks, a greeting, a nod, a farewell. No act; they are answered in kind."""

from __future__ import annotations

from itertools import pairwise
from typing import Literal

from core.reading.lexicon import listed
from core.reading.whole_words import plain

_THANKS, _GREETINGS = listed("words_manners", "thanks"), listed("words_manners", "greetings")
_PARTING = listed("words_manners", "parting")
_NODS, _BESIDE = listed("words_manners", "nods"), listed("words_manners", "beside")
_HANDS = frozenset("👍🙏👌🙂😊❤💪🙌👏😀😄🫡")


def manners(text: str) -> Literal["thanks", "hello", "nod", "bye"] | None:
    """What a text is that holds nothing but manners: "thanks coach", "good morning", "ok cool", a thumb; None for any other.

    A question and a number are never manners.
    """
    words = plain(text).split()
    if not words:
        return "nod" if _HANDS & set(text) else None
    if "?" in text or not set(words) <= _THANKS | _GREETINGS | _NODS | _PARTING | _BESIDE:
        return None
    if _PARTING & set(words) or any(("see", whom) in pairwise(words) for whom in ("you", "u", "ya")):
        return "bye"
    if _THANKS & set(words):
        return "thanks"
    if _GREETINGS & set(words):
        return "hello"
    return "nod" if _NODS & set(words) or words in (["got", "it"], ["will", "do"], ["all", "good"]) else None
