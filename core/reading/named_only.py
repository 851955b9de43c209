"""Acts whose words are only named beside another one: what to type to stop, a dislike of a pain, one's own weight."""

from __future__ import annotations

from typing import TYPE_CHECKING

from core.reading.acts import Act, Feel, Finish, Help, Log, Pain, Pause, Resume, Skip, Start, Swap
from core.reading.token import Kind, Token

if TYPE_CHECKING:
    from collections.abc import Sequence

_NAMED_IN_HELP = (Start, Finish, Skip, Pause, Resume, Swap)
_SENDING = frozenset({"type", "say", "send", "text", "write"})
_OF_ONES_WEIGHT = frozenset({"weigh", "stone", "bmi"})
_SOON = 6
"""Words within which a question for the words to send says so."""


def without_what_is_only_named(acts: list[tuple[int, Act]], tokens: Sequence[Token]) -> list[tuple[int, Act]]:
    """The acts with their places, without those that their words do not ask for beside the others."""
    if any(isinstance(act, Help) for _, act in acts) and _asks_for_words(tokens):
        acts = [(at, act) for at, act in acts if not isinstance(act, _NAMED_IN_HELP)]  # "what do I type when I want to stop"
    if any(isinstance(act, Pain) for _, act in acts):
        acts = [(at, act) for at, act in acts if act != Skip() or not (_dislikes_it(tokens, at) or _sits_down(tokens, at))]
    if not any(isinstance(act, Log) for _, act in acts) and _tells_ones_build(tokens):
        acts = [(at, act) for at, act in acts if not isinstance(act, Feel)]  # "I weigh 74 kg, is it a good weight?"
    return acts


def _asks_for_words(tokens: Sequence[Token]) -> bool:
    """Whether the words to send are asked for, so that what they would ask for is only named."""
    said = [token.text for token in tokens[:_SOON]]
    return said[:1] in (["what"], ["which"]) and bool(_SENDING & set(said))


def _dislikes_it(tokens: Sequence[Token], at: int) -> bool:
    """Whether "I don't like it" at `at` stands beside a pain, which is what it is about."""
    words = [token.text for token in tokens[at : at + 5]]
    return "like" in words and words[words.index("like") + 1 :][:1] in (["it"], ["that"])


def _sits_down(tokens: Sequence[Token], at: int) -> bool:
    """Whether "I will sit" at `at` leaves nothing out: "giddiness is coming, I will sit"."""
    words = {token.text for token in tokens[at : at + 6]}
    return "sit" in words and "out" not in words


def _tells_ones_build(tokens: Sequence[Token]) -> bool:
    """Whether somebody tells how heavy or tall they are: "I weigh 74 kg", "I'm 5 foot 4", "I am 61 kg"."""
    said = [token.text for token in tokens]
    return bool(_OF_ONES_WEIGHT & set(said)) or any(
        token.kind is Kind.NUMBER and (said[i + 1 : i + 2] == ["foot"] or (i > 1 and said[i - 2 : i] == ["i", "am"]))
        for i, token in enumerate(tokens)
    )
