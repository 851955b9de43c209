"""Counts that cannot be trusted, or that tell of a part of a set: "but I lost count", "8... 9... lost it", "the last 3"."""

from __future__ import annotations

from typing import TYPE_CHECKING

from core.reading.token import Kind, Token

if TYPE_CHECKING:
    from collections.abc import Sequence

_MOST_LAST = 6


def lost_count(tokens: Sequence[Token]) -> bool:
    """Whether it is told anywhere that the count was lost, so that no number of it can be trusted: "but I lost count"."""
    return any(
        tokens[i].text == "lost"
        and (tokens[i + 1].text in {"count", "track"} or _lost_it(tokens, i))
        and "time" not in {token.text for token in tokens[i + 2 : i + 5]}
        and not {token.text for token in tokens[max(0, i - 2) : i]} & {"nearly", "almost", "not", "never"}
        for i in range(len(tokens) - 1)
    )


def _lost_it(tokens: Sequence[Token], lost: int) -> bool:
    """Whether "lost it" breaks off a count: "8... 9... lost it"."""
    closed = lost + 2 >= len(tokens) or tokens[lost + 2].kind is Kind.MARK
    counting = [token.kind is Kind.NUMBER for token in tokens[:lost] if token.kind is not Kind.MARK]
    return tokens[lost + 1].text == "it" and closed and len(counting) > 1 and all(counting)


def counts_the_last(tokens: Sequence[Token], counted: Sequence[int]) -> bool:
    """Whether one of the numbers at the indices `counted` tells of a few reps of a set: "last 3 were tough", "for the last two"."""
    return any(
        i > 0
        and (len(counted) == 1 or tokens[i].value < max(tokens[j].value for j in counted if j != i))
        and (
            (tokens[i - 1].text in {"last", "final"} and tokens[i].value <= _MOST_LAST)
            or (tokens[i - 1].text == "first" and _is_judged(tokens, i + 1))
        )
        for i in counted
    )


def _is_judged(tokens: Sequence[Token], index: int) -> bool:
    """Whether it is said right here how something went: "were easy", "reps felt ok"."""
    return any(
        token.text in {"were", "felt", "was", "easy", "hard", "clean", "good", "fine"} for token in tokens[index : index + 2]
    )
