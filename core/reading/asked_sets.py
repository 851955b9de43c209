"""Whether the numbers of a set are asked about, or wondered at, and not told."""

from __future__ import annotations

from typing import TYPE_CHECKING

from core.reading import guards

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from core.reading.phrases import Said
    from core.reading.token import Token

_ASKING = frozenset(
    {
        "what",
        "how",
        "is",
        "was",
        "should",
        "can",
        "do",
        "does",
        "when",
        "am",
        "did",
        "will",
        "where",
        "why",
        "which",
        "could",
        "are",
        "have",
        "has",
        "would",
    }
)
_TAGS = frozenset({"eh", "ey", "abi", "huh", "innit", "hey", "so", "ya", "sha", "o", "oh"})


def _boasts(words: Sequence[str]) -> bool:
    """Whether a question only looks for praise, after a comma of its own: "20kg, not bad eh?", "20kg each hand, I try abi?"."""
    tail = words[max((i + 1 for i, word in enumerate(words) if word == ","), default=len(words)) :]
    return len(tail) > 1 and tail[-1] in _TAGS and not _ASKING - {"am"} & set(tail)


def _wonders(tokens: Sequence[Token], first: int) -> bool:
    """Whether a sentence asks what came through, with or without a question mark: "did you get r1", "have you my 12"."""
    opening = [token.text for token in tokens[first : first + 2]]
    if opening in (["was", "that"], ["was", "it"], ["is", "it"]) and first + 3 == len(tokens):
        return True  # "was that 12"
    return opening in (["did", "you"], ["did", "u"], ["have", "you"], ["have", "u"], ["has", "my"])


def _asks_of_it(said: Said, numbers: Sequence[int]) -> bool:
    """Whether "what is this" stands before the numbers of a question, and so asks of them: "what's this, 12 at 12kg?"."""
    return said.meaning == "form" and bool(numbers) and said.last <= numbers[0]


def _sets_a_riddle(words: Sequence[str]) -> bool:
    """Whether the words before a number ask to guess something else than the set: "guess what time it is", but "guess what"."""
    at = next((i for i, word in enumerate(words) if word in {"guess", "guessing"}), len(words))
    asked = words[at + 1 : at + 3]
    if asked[:1] == ["how"]:
        return asked[1:] != [] and asked[1] in _MEASURES
    return asked[:1] != [] and asked[0] in _RIDDLES and asked[1:] != [] and asked[1].isalpha() and asked[1] not in _OWN


_MEASURES = frozenset({"old", "tall", "far", "late", "cold", "hot", "fast", "long"})
_RIDDLES = frozenset({"what", "which", "who", "when", "where", "whose"})
_OWN = frozenset({"i", "my", "we", "number"})


def asks(
    tokens: Sequence[Token],
    sentences: Sequence[tuple[int, int]],
    open_numbers: Sequence[int],
    said: Mapping[int, Said],
    *,
    strong: bool,
) -> bool:
    """Whether the numbers stand in a question that no set phrase explains."""
    for first, last in sentences:
        inside = [i for i in open_numbers if first <= i < last]
        if inside and _wonders(tokens, first):
            return True
        if inside and _sets_a_riddle([token.text for token in tokens[first : inside[0]]]):
            return True
        asked = last < len(tokens) and tokens[last].text == "?"
        if inside and asked and inside[0] and tokens[inside[0] - 1].text == "what":
            return True  # "you know what 12 at 20kg would do to me?"
        if asked and not guards.polite_request(tokens, first, last):
            explained = any(
                first <= one.first < last and not one.meaning.startswith("mark") and not _asks_of_it(one, inside)
                for one in said.values()
            )
            explained |= strong and bool(inside) and _boasts([token.text for token in tokens[inside[-1] + 1 : last]])
            if inside and not explained and not (strong and _ASKING & {token.text for token in tokens[inside[-1] + 1 : last]}):
                return True
    return False
