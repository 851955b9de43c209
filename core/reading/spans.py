"""Where the sentences and the clauses of a message begin and end."""

from __future__ import annotations

from typing import TYPE_CHECKING

from core.reading.lexicon import HURT, PLACES

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from core.reading.token import Token


SENTENCE_ENDS = {".", "!", "?", ";"}
_BREATHS = {"ok", "anyway", "anyways", "lol", "haha", "hahaha", "lmao", "alright", "btw"}
CLAUSE_ENDS = {",", "but", "then", "though", "because", "although", "(", ")", "so"}


def split(tokens: Sequence[Token], first: int, last: int, ends: set[str]) -> list[tuple[int, int]]:
    """The spans between the ends, without empty ones."""
    spans: list[tuple[int, int]] = []
    start = first
    for index in range(first, last):
        if tokens[index].text in ends and not (tokens[index].text == "so" and _is_very(tokens, index, last)):
            spans.append((start, index))
            start = index + 1
    spans.append((start, last))
    return [(a, b) for a, b in spans if a < b]


def _is_very(tokens: Sequence[Token], index: int, last: int) -> bool:
    """Whether "so" only strengthens what follows, or adds to it: "so far", "my hip is so sore", "and so is my arm"."""
    following = tokens[index + 1].text if index + 1 < last else ""
    also = following in {"is", "are", "does", "do"} and index > 0 and tokens[index - 1].text == "and"
    before = tokens[index - 1].text if index > 0 else ""
    hurting = following in _HOW_MUCH and (before in HURT or (before in PLACES and following != "much"))  # "pain in my back so bad"
    return following == "far" or also or hurting or (following in _STRENGTHENED and before in _HOW_IT_IS)


_HOW_MUCH = frozenset({"sore", "stiff", "bad", "badly", "much", "severe", "severely", "strong", "strongly"})
_STRENGTHENED = HURT | {"sore", "tight", "stiff", "bad", "weak", "numb", "swollen", "heavy", "hard", "easy", "light", "tired"}


def clauses_of(tokens: Sequence[Token], first: int, last: int) -> list[tuple[int, int]]:
    """The clauses of tokens `[first, last)`."""
    return split(tokens, first, last, CLAUSE_ENDS)


def parted(tokens: Sequence[Token], clauses: Sequence[tuple[int, int]]) -> Iterator[tuple[int, int]]:
    """The clauses, and what an emoji or a breath ("ok", "anyway") parts in them."""
    for first, last in clauses:
        begins = [first, *(i for i in range(first + 1, last) if tokens[i].apart or _is_breath(tokens, i))]
        yield from zip(begins, [*begins[1:], last], strict=True)


def _is_breath(tokens: Sequence[Token], index: int) -> bool:
    """Whether a word only draws breath ("ok so"), and does not say how something is ("my shoulder is ok today")."""
    return tokens[index].text in _BREATHS and tokens[index - 1].text not in _HOW_IT_IS


_HOW_IT_IS = frozenset(
    {"is", "are", "am", "was", "were", "be", "been", "feel", "feels", "felt", "feeling", "seems", "looks", "not", "all"}
)
