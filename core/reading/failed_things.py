"""What failed or was left without being the set: "the wifi failed", "failed my driving test", "nothing left in the fridge"."""

from __future__ import annotations

from typing import TYPE_CHECKING

from core.reading.lexicon import AMOUNTS, COURTESY, EXERCISES, PLACES, listed
from core.reading.spelling import is_english
from core.reading.token import Kind, Token

if TYPE_CHECKING:
    from collections.abc import Sequence

_OWNING = frozenset({"the", "my", "our", "his", "her", "their", "these", "those", "this", "a", "an", "me"})
_LEADING = frozenset({"in", "on", "with", "of", "for", "from", "at"})
_FAILING = frozenset({"fail", "failed", "fails", "failing"})
_OF_A_SET = (
    listed("words_company", "closed")
    | listed("words_company", "subjects")
    | listed("words_quantities", "of_the_set")
    | listed("words_quantities", "failing")
    | frozenset(PLACES)
    | COURTESY
    | EXERCISES
    | AMOUNTS["reps"]
    | AMOUNTS["sets"]
)


def fails_another_thing(tokens: Sequence[Token], first: int, last: int) -> bool:
    """Whether the words `[first, last)` of failing tell of something else than a set, in a clause without numbers."""
    begin = next((i + 1 for i in range(first - 1, -1, -1) if _parts(tokens[i]) or tokens[i + 1].apart), 0)
    end = next((i for i in range(last, len(tokens)) if _parts(tokens[i]) or tokens[i].apart), len(tokens))
    if any(token.kind is Kind.NUMBER for token in (*tokens[begin:first], *tokens[last:end])):
        return False
    if _stops_at(tokens, begin) or _stops_at(tokens, end):
        return False
    if _stops_another_thing(tokens, last, end):
        return True
    return _is_subject(tokens, begin, first, last) or _is_of_a_thing(tokens, first, last, end)


def _stops_at(tokens: Sequence[Token], at: int) -> bool:
    """Whether a number bounds the clause, so that the words go with it: "12 failed"."""
    return 0 < at < len(tokens) and Kind.NUMBER in {tokens[at].kind, tokens[at - 1].kind}


def _parts(token: Token) -> bool:
    return token.kind is not Kind.WORD or token.text in {"and", "but", "so", "then", "because", "while"}


def _stops_another_thing(tokens: Sequence[Token], last: int, end: int) -> bool:
    """Whether what was not done is no repetition: "could not do another day", "failed to impress the dog"."""
    after = [token.text for token in tokens[last:end]]
    if tokens[last - 1].text == "another":
        return after[:1] != [] and _is_thing(after[0])
    return tokens[last - 1].text in _FAILING and after[:1] == ["to"] and after[1:] != [] and after[1] not in _OF_A_SET


def _is_subject(tokens: Sequence[Token], begin: int, first: int, last: int) -> bool:
    """Whether a thing that is no part of a set stands right before "failed": "the wifi failed", but "grip failed"."""
    words = [token.text for token in tokens[begin:first]]
    if tokens[first].text not in _FAILING or tokens[last - 1].text not in _FAILING or not words:
        return False
    return set(words[:-1]) <= _OWNING and _is_thing(words[-1])


def _is_of_a_thing(tokens: Sequence[Token], first: int, last: int, end: int) -> bool:
    """Whether a thing that is no part of a set follows: "left in the fridge", "failed my test", but "left in my arms"."""
    after = [token.text for token in tokens[last:end]]
    led = after[:1] != [] and after[0] in _LEADING
    rest = after[1:] if led else after
    if rest[:1] == [] or rest[0] not in _OWNING or (not led and tokens[first].text not in _FAILING):
        return False
    return all(_is_thing(word) for word in rest[1:2]) and bool(rest[1:]) and not set(rest) & listed("words_quantities", "failing")


def _is_thing(word: str) -> bool:
    return word not in _OF_A_SET and not word.endswith(("ly", "th")) and (is_english(word) or word in _THINGS)


_THINGS = frozenset({"wifi", "internet", "phone", "car"})
