"""What a clause says beside its numbers or its set phrases: "11 at 20kg ready", "too heavy swap please"."""

from __future__ import annotations

from typing import TYPE_CHECKING

from core.reading.lexicon import COURTESY
from core.reading.token import Kind, Token

if TYPE_CHECKING:
    from collections.abc import Collection, Iterable, Iterator, Sequence

    from core.reading.phrases import Said

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


def around_numbers(tokens: Sequence[Token], first: int, last: int) -> dict[tuple[int, int], bool]:
    """What a clause says before its first number (False) and after its last quantity (True): "11 at 20kg ready"."""
    numbers = [i for i in range(first, last) if tokens[i].kind is Kind.NUMBER]
    if not numbers:
        return {}
    after = numbers[-1] + 1
    while after < last and tokens[after].text in _OF_QUANTITIES:
        after += 1
    return {(a, b): trails for a, b, trails in ((first, numbers[0], False), (after, last, True)) if a < b}


def beside_phrases(
    tokens: Sequence[Token], said: Iterable[Said], explained: Collection[int], first: int, last: int
) -> Iterator[tuple[int, int]]:
    """What a clause without open numbers says beside a phrase that is an act: "too heavy" and "swap please"."""
    found = [one for one in said if first <= one.first < last and one.first in explained]
    if found and not any(tokens[i].kind is Kind.NUMBER for i in range(first, last) if i not in explained):
        begin = first
        for one in sorted(found, key=lambda one: one.first):
            if begin < one.first:
                yield begin, one.first
            begin = one.last
        if begin < last:
            yield begin, last
