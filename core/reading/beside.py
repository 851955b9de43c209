"""What a clause says beside its numbers or its set phrases: "11 at 20kg ready", "too heavy swap please"."""

from __future__ import annotations

from typing import TYPE_CHECKING

from core.reading.lexicon import COURTESY
from core.reading.token import Kind, Token

if TYPE_CHECKING:
    from collections.abc import Collection, Iterator, Sequence

_MAY_TRAIL = frozenset({"start", "pause", "resume", "finish", "progress"})
MAY_STAND_BESIDE = frozenset({"pause", "finish", "progress", "swap", "skip"})
"""What may stand right beside another phrase and mean itself."""

_OF_QUANTITIES = {
    "kg",
    "lb",
    "reps",
    "rep",
    "left",
    "right",
    "each",
    "side",
    "s",
    "rir",
    "hold",
    "plank",
    "minutes",
    "rest",
    "rpe",
    "more",
    "seconds",
    "x",
    "r",
    "l",
}


def may_trail(meaning: str, words: set[str]) -> bool:
    """Whether a phrase means itself right after numbers: "11 at 20kg ready", but "12 today", "put 16 instead"."""
    return (
        meaning in _MAY_TRAIL
        or (meaning == "swap" and not words <= COURTESY | {"instead"})
        or (meaning == "today" and bool(words & {"what", "which", "plan"}))
        or (meaning == "skip" and bool(words & {"skip", "skipping", "pass"}))
    )


def may_stand_beside(meaning: str, words: set[str]) -> bool:
    """Whether a phrase means itself right beside another: "woozy stopping", but "black for a moment"."""
    waits = meaning == "pause" and not words & _WAITING
    return meaning in MAY_STAND_BESIDE and not waits and may_trail(meaning, words)


_WAITING = frozenset({"pause", "wait", "break", "stop", "hold", "hang", "need", "brb", "breather", "water"})


def around_numbers(tokens: Sequence[Token], first: int, last: int) -> dict[tuple[int, int], bool]:
    """What a clause says before its first number (False) and after its last quantity (True): "11 at 20kg ready"."""
    numbers = [i for i in range(first, last) if tokens[i].kind is Kind.NUMBER]
    if not numbers:
        return {}
    after = numbers[-1] + 1
    while after < last and tokens[after].text in _OF_QUANTITIES:
        after += 1
    return {(a, b): trails for a, b, trails in ((first, numbers[0], False), (after, last, True)) if a < b}


def beside_told(tokens: Sequence[Token], explained: Collection[int], first: int, last: int) -> Iterator[tuple[int, int]]:
    """What a stretch without open numbers says beside what is already told: "too heavy" and "swap please"."""
    open_ones = [i for i in range(first, last) if i not in explained]
    if not open_ones or len(open_ones) == last - first or any(tokens[i].kind is Kind.NUMBER for i in open_ones):
        return
    begin = open_ones[0]
    for at, following in zip(open_ones, [*open_ones[1:], None], strict=True):
        if following != at + 1:
            yield begin, at + 1
            begin = following if following is not None else last
