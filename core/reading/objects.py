"""What a verb of starting, pausing, ending or skipping is about: the session or something else ("pause the telly")."""

from __future__ import annotations

from typing import TYPE_CHECKING

from core.reading.lexicon import COURTESY, EXERCISES, PLACES, listed
from core.reading.token import Kind

if TYPE_CHECKING:
    from collections.abc import Sequence

    from core.reading.token import Token

ABOUT_THE_SESSION = frozenset({"start", "start-if-go", "pause", "resume", "finish", "skip"})
"""The meanings whose verb may be about something else."""

_VERBS = frozenset(
    {
        "start",
        "starts",
        "begin",
        "pause",
        "resume",
        "finish",
        "finished",
        "end",
        "continue",
        "skip",
        "starting",
        "finishing",
        "restart",
        "freeze",
        "halt",
        "suspend",
        "miss",
        "drop",
        "bypass",
    }
)
_OWNERS = frozenset({"the", "my", "our", "his", "her", "their", "your"})
OF_TRAINING = listed("words_standing", "of_training") | EXERCISES | frozenset(PLACES)
"""What of a session may be started, paused, ended or skipped, and the parts of the body that are trained."""

_BEHIND = listed("words_standing", "behind_an_object") | COURTESY
_LONGEST_OBJECT = 2


def is_about_something_else(tokens: Sequence[Token], first: int, last: int) -> bool:
    """Whether a verb in tokens `[first, last)` has an object that is no part of a session: "we start the new job today"."""
    return any(
        tokens[at].text in _VERBS and tokens[at + 1].text in _OWNERS and _is_an_object(tokens, at + 2, last)
        for at in range(first, last - 2)
    )


def _is_an_object(tokens: Sequence[Token], begin: int, last: int) -> bool:
    """Whether the words from `begin` on name one thing that is no part of a session, and nothing is told of it."""
    for end in range(begin + 1, min(begin + _LONGEST_OBJECT, last) + 1):
        named = tokens[begin:end]
        if any(token.kind is not Kind.WORD or token.text in OF_TRAINING for token in named):
            return False
        if end == last or tokens[end].kind is Kind.MARK or tokens[end].apart or tokens[end].text in _BEHIND:
            return True
    return False
