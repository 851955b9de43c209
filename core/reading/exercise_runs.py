"""The exercise that words name wherever it stands among them: "do my knees go past my toes on lunges?"."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from core.reading.lexicon import COURTESY, EXERCISES, PLACES, listed
from core.reading.naming import exercise_named
from core.reading.spans import CLAUSE_ENDS
from core.reading.token import Kind

if TYPE_CHECKING:
    from collections.abc import Sequence

    from core.reading.phrases import Said
    from core.reading.token import Token

NAMING = {"form-here": "form", "swap-here": "swap", "progress": "progress-on"}
"""What a phrase means once it names an exercise."""

_WITH_WHAT = listed("words_gist", "with_what")
_JOINING = frozenset({"over", "and", "to", "up", "out", "in"})
_LEADING_TO_ONE = frozenset({"on", "in", "for", "during", "at", "with", "doing", "of"})
_TO_ONE_COUNTED = frozenset({"reps", "rep", "for", "on", "of", "the"})
_POINTING = frozenset({"this", "that", "next", "one"})
_ARTICLES = frozenset({"a", "an", "the", "my", "some", "these", "those", "doing"})


def counts_several(tokens: Sequence[Token]) -> bool:
    """Whether counts of two different exercises are told, and no load: "10 reps for the squats, 12 for the rows"."""
    counted: set[str] = set()
    for at, token in enumerate(tokens):
        if token.kind is not Kind.NUMBER:
            continue
        end = at + 1
        while end < len(tokens) and tokens[end].text in _TO_ONE_COUNTED:
            end += 1
        if end < len(tokens) and tokens[end].text in EXERCISES:
            counted.add(tokens[end].text.removesuffix("s"))
    return len(counted) > 1 and not any(token.text in {"kg", "lb"} for token in tokens)


def longest_run(tokens: Sequence[Token]) -> str | None:
    """The longest run of words of exercises, as typed; None when they name none."""
    runs: list[list[str]] = [[]]
    for index, token in enumerate(tokens):
        if _belongs(tokens, index):
            if not runs[-1] and index and tokens[index - 1].text in _WITH_WHAT:
                runs[-1].append(tokens[index - 1].raw)
            runs[-1].append(token.raw)
        elif runs[-1] and token.text in _JOINING and index + 1 < len(tokens) and tokens[index + 1].text in EXERCISES:
            runs[-1].append(token.raw)  # "bent over row"
        elif runs[-1]:
            runs.append([])
    longest = max(runs, key=len)
    stands, name = exercise_named(longest, free=False) if longest else (False, None)
    return name if stands else None


def naming_what_follows(tokens: Sequence[Token], said: Said, first: int, last: int) -> Said:
    """The phrase, with the exercise that is named after an "on" or "for" beside it: "knees out on squats?"."""
    if (apposed := _in_apposition(tokens, said, last)) is not None:
        return replace(said, meaning="form", exercise=apposed)
    if said.meaning not in {"form-here", "progress"}:
        return said
    lead = [token for token in tokens[first : said.first] if token.text not in COURTESY and token.kind is not Kind.MARK]
    if said.meaning == "form-here" and lead and all(_belongs(lead, i) or one.text in _WITH_WHAT for i, one in enumerate(lead)):
        named = longest_run(lead)  # "arnold press, how is it done"
        return replace(said, meaning="form", exercise=named) if named is not None else said
    end = next((i for i in range(said.last, last) if tokens[i].text in CLAUSE_ENDS or tokens[i].apart), last)
    for at in range(first + 1, end):
        begin = at
        while begin < end and tokens[begin].text in _ARTICLES:
            begin += 1
        if begin < end and tokens[at - 1].text in _LEADING_TO_ONE and (_belongs(tokens, begin) or tokens[begin].text in _WITH_WHAT):
            name = longest_run(tokens[begin:end])
            return replace(said, meaning=NAMING[said.meaning], exercise=name) if name is not None else said
    return said


def _in_apposition(tokens: Sequence[Token], said: Said, last: int) -> str | None:
    """The exercise that a clause of its own names after what is pointed at: "how do I do the next one, the woodchop"."""
    comma = next((i for i in range(said.last, last) if tokens[i].text not in COURTESY), last)
    asks = said.meaning in {"form", "form-here"} and said.exercise is None
    pointed = _POINTING & {token.text for token in tokens[said.first : comma]}
    if not asks or not pointed or comma == last or tokens[comma].text != ",":
        return None
    rest = [token for token in tokens[comma + 1 : last] if token.text not in _ARTICLES | COURTESY]
    named = bool(rest) and all(_belongs(rest, i) or one.text in _WITH_WHAT for i, one in enumerate(rest))
    return longest_run(rest) if named else None


def proposed(tokens: Sequence[Token], first: int) -> str | None:
    """The exercise that is proposed behind a wish for another one at `first`: "change this, give glute bridge"; None for none."""
    last = len(tokens)
    for at in range(first + 1, last):
        words = [token.text for token in tokens[at : at + 2]]
        after = at + 2 if words in _PROPOSING_IN_TWO else at + 1
        if (words not in _PROPOSING_IN_TWO and words[0] not in _PROPOSING) or _is_taken_back(tokens, at):
            continue
        begin = next((i + 1 for i in range(at - 1, first, -1) if tokens[i].text in CLAUSE_ENDS), at)
        if words in _PROPOSING_IN_TWO[:2] and begin < at and (before := longest_run(tokens[begin:at])) is not None:
            return before  # "..., a squat for instance"
        while after < last and tokens[after].text in _ARTICLES | _ME:
            after += 1
        end = next((i for i in range(after, last) if tokens[i].text in CLAUSE_ENDS or tokens[i].apart), last)
        if after < end and (_belongs(tokens, after) or tokens[after].text in _WITH_WHAT):
            return longest_run(tokens[after:end])
    return _named_nicely(tokens, first)


def _named_nicely(tokens: Sequence[Token], first: int) -> str | None:
    """The exercise that a clause names behind a comma and asks for nicely: "another exercise, please squats"; None for none."""
    comma = next((at for at in range(first + 1, len(tokens)) if tokens[at].text == ","), len(tokens))
    end = next((at for at in range(comma + 1, len(tokens)) if tokens[at].text in CLAUSE_ENDS), len(tokens))
    polite = {token.text for token in (*tokens[comma - 1 : comma], *tokens[comma + 1 : end])} & _ASKING_NICELY
    rest = [token for token in tokens[comma + 1 : end] if token.text not in _ASKING_NICELY | _ARTICLES | COURTESY]
    named = bool(rest) and all(_belongs(rest, i) or one.text in _WITH_WHAT for i, one in enumerate(rest))
    return longest_run(rest) if named and polite else None


def _is_taken_back(tokens: Sequence[Token], at: int) -> bool:
    """Whether what follows is what is not wanted: "something else, do not give burpees", "I did not like the lunges"."""
    return bool(_DENYING & {token.text for token in tokens[max(0, at - 3) : at]})


_ASKING_NICELY = frozenset({"please", "maybe", "perhaps", "then", "pls", "kindly"})
_PROPOSING = frozenset({"give", "maybe", "perhaps", "say", "possibly", "prefer", "preferably", "like", "eg", "do", "put", "try"})
_PROPOSING_IN_TWO = (["for", "example"], ["for", "instance"], ["such", "as"], ["let", "me"], ["lets", "do"], ["how", "about"])
_ME = frozenset({"me", "us", "do", "to", "for", "now", ","})
_DENYING = frozenset({"not", "no", "never", "without", "hate", "dislike", "than", "did", "how", "to"})


def _belongs(tokens: Sequence[Token], index: int) -> bool:
    """Whether a word is one of an exercise; a part of the body is only where an exercise follows: "biceps curl", "leg raises"."""
    word = tokens[index].text
    if word not in EXERCISES and word not in PLACES:
        return False
    after = tokens[index + 1].text if index + 1 < len(tokens) else ""
    return word not in PLACES or (after in EXERCISES and after not in PLACES)
