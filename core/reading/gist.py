"""What a message without numbers is after, by the words it is made of, when no set phrase says it.

People ask for the same few things in more ways than can be listed. A gist is a line of `[gists]` in the lexicon: words of
which each group must be there, and words that forbid it. It never makes a record: only acts that can be taken back or repeated.
"""

from __future__ import annotations

from functools import cache
from typing import TYPE_CHECKING

from core.reading.exercise_runs import NAMING, longest_run
from core.reading.lexicon import GISTS, GUARDS, PLACES, VOCABULARY, listed
from core.reading.objects import ABOUT_THE_SESSION, is_about_something_else
from core.reading.phrases import Said
from core.reading.standing_requests import SKIPPED_ELSEWHERE
from core.reading.token import Kind, Token

if TYPE_CHECKING:
    from collections.abc import Sequence

_LONGEST = 18
_OF_THE_STATION = frozenset({"form-here", "heavy", "light"})
_POINTING = listed("words_gist", "pointing")
_UNWANTED = frozenset({"than", "instead", "swap", "replace", "hate", "without", "alternative", "substitute"})
_OF_THE_WRITER = frozenset({"start-if-go", "progress"})
_SAID = frozenset({"said", "says", "sang", "sings", "shouts", "shouted"})
_LEFT_UNDONE = frozenset({"skip", "skip-day", "finish"})
_NEARLY = frozenset({"nearly", "almost"})
_NEVER = frozenset({"not", "never"})
_LEAVING_OUT = frozenset({"skip", "skipping", "miss", "missing", "cancel", "cancelling"})
_SO = frozenset({"too", "so", "that", "very", "really", "even"})
_UNFIT = frozenset(
    {"tired", "busy", "ill", "sick", "sore", "knackered", "hungover", "late", "exhausted", "poorly", "weak", "sleepy", "wrecked"}
)
_WAS = frozenset({"was", "were"})
_WRITER = frozenset({"i", "am", "me", "my", "we", "us", "lets", "let", "you", "it", "this"})
_NO_GO = listed("words_gist", "no_go")


def gist(tokens: Sequence[Token], *, ready: bool = False) -> Said | None:
    """What the words are after; None when they say nothing of the kind, too much, or something about other people.

    `ready` says that the conversation waits for a go.
    """
    words = [token.text for token in tokens if token.kind is Kind.WORD]
    said = set(words)
    if not words or len(words) > _LONGEST or any(token.kind not in {Kind.WORD, Kind.MARK} for token in tokens):
        return None
    if said & (GUARDS["foreign"] | GUARDS["people"] | GUARDS["orders"] | (GUARDS["others"] - {"you", "your"})):
        return None
    if said & _SAID:
        return None  # "there you go said the cashier"
    strange = said - VOCABULARY
    for meaning, groups, never in _gists():
        if meaning == "start-if-go" and (not ready or said & set(PLACES) or any(token.text == "?" for token in tokens)):
            continue
        if meaning in _OF_THE_WRITER and (said & _WAS or (strange and not said & _WRITER)):
            continue  # "the go kart track was shut", "progress at the building site is slow"
        if meaning == "skip-day" and _is_fit(words):
            continue  # "not too tired to train today"
        if meaning in _LEFT_UNDONE and said & _NEARLY:
            continue  # "nearly took a day off today"
        if meaning in ABOUT_THE_SESSION and is_about_something_else(tokens, 0, len(tokens)):
            continue  # "we might finish the puzzle tonight"
        if meaning == "skip" and said & SKIPPED_ELSEWHERE:
            continue
        if not said & never and all(said & group for group in groups):
            name = longest_run(_wanted(tokens) if meaning == "swap-here" else tokens) if meaning in NAMING else None
            if (
                name is None
                and meaning in _OF_THE_STATION
                and (strange - frozenset().union(*groups) or (meaning == "form-here" and not said & _POINTING))
            ):
                continue  # "how do I cook rice", "how do I pay", "my shoes are too light"
            return Said(NAMING[meaning] if name else meaning, 0, len(tokens), name)
    return None


def _is_fit(words: Sequence[str]) -> bool:
    """Whether a reason to leave a day out is denied, or that it is left out: "not that tired", "don't skip today"."""
    return any(
        denied in _NEVER and (after in _LEAVING_OUT or (after in _SO and reason in _UNFIT))
        for denied, after, reason in zip(words, words[1:], [*words[2:], ""], strict=False)
    )


def _wanted(tokens: Sequence[Token]) -> Sequence[Token]:
    """The words without what is compared or got rid of: "a kinder move than burpees", "swap burpees for something"."""
    at = next((i for i, token in enumerate(tokens) if token.text in _UNWANTED), None)
    if at is None:
        return tokens
    rest = next((i for i in range(at + 1, len(tokens)) if tokens[i].text in {"for", "with", "maybe", "like", ","}), len(tokens))
    return [*tokens[:at], *tokens[rest:]]


def says_go_at_last(tokens: Sequence[Token]) -> bool:
    """Whether a message ends in a bare "go", as somebody shouts who waits for it: "ok hubby has the kids GO"."""
    words = [token for token in tokens if token.kind is not Kind.MARK]
    plain = not any(token.text == "?" or token.kind not in {Kind.WORD, Kind.MARK} for token in tokens)
    return plain and 1 < len(words) <= _LONGEST and words[-1].text == "go" and words[-2].text not in _NO_GO


@cache
def _gists() -> tuple[tuple[str, tuple[frozenset[str], ...], frozenset[str]], ...]:
    """Each line: its meaning, the groups of which one word each must be there, and the words that forbid it."""
    lines = []
    for meaning, text in GISTS.items():
        for line in text.strip().split("\n"):
            groups = [frozenset(group.lstrip("!").split("|")) for group in line.split() if not group.startswith("!")]
            never = frozenset(word for group in line.split() if group.startswith("!") for word in group[1:].split("|"))
            lines.append((meaning, tuple(groups), never))
    return tuple(lines)
