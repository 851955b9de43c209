"""Whether a set phrase means what it says where it stands: a wait, a feeling, an end, or only words beside something else."""

from __future__ import annotations

from typing import TYPE_CHECKING

from core.reading.around_phrases import of_somebody
from core.reading.in_stories import is_told
from core.reading.objects import ABOUT_THE_SESSION, is_about_something_else
from core.reading.phrases import REQUESTS
from core.reading.standing_ends import end_stands
from core.reading.standing_feelings import feeling_stands
from core.reading.standing_requests import (
    form_stands,
    help_stands,
    is_thanked_for,
    resume_stands,
    skip_stands,
    start_stands,
    swap_stands,
    today_stands,
    undo_stands,
)
from core.reading.standing_waits import asks_to_wait
from core.reading.token import Kind, Token

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from core.reading.phrases import Said


_OF_THEIR_KIND: dict[str, Callable[[Sequence[Token], Said, int, int], bool]] = {
    "pause": asks_to_wait,
    "heavy": feeling_stands,
    "light": feeling_stands,
    "right": feeling_stands,
    "finish": end_stands,
    "start": start_stands,
    "resume": lambda tokens, said, first, _: resume_stands(tokens, said, first),
    "swap": swap_stands,
    "swap-here": swap_stands,
    "form": form_stands,
    "form-here": form_stands,
    "skip": skip_stands,
    "undo": lambda tokens, said, first, _: undo_stands(tokens, said, first),
    "help": lambda tokens, said, _, last: help_stands(tokens, said, last),
    "today": lambda tokens, said, first, _: today_stands(tokens, said, first),
}
_ONLY_IF = frozenset({"finish", "skip", "skip-day", "start", "undo"})
_NOT_NEGATED = frozenset({"pause", "heavy", "light", "right"})
_AFTER_FOUR = frozenset({"now", "this", "that", "me", "today", "tonight", "us"})
_OF_ONES_OWN = frozenset({"start", "resume", "finish", "swap", "swap-here", "skip", "skip-day", "heavy", "light", "right"})
_POLITE = (
    "if it is all the same",
    "if you do not mind",
    "if you would not mind",
    "if that is",
    "if possible",
    "if i may",
    "if it is ok",
)


def stands(tokens: Sequence[Token], said: Said, first: int, last: int) -> bool:
    """Whether the phrase means what it says where it stands, in the sentence from `first` to `last`."""
    if said.meaning in ABOUT_THE_SESSION and is_about_something_else(tokens, said.first, last):
        return False  # "pause the telly"
    if is_told(tokens, said, first, last):
        return False  # "my phone is back from the shop", "leave it out said the cabbie"
    if said.meaning in _OF_ONES_OWN and of_somebody(tokens, said, first):
        return False  # "my friend can't train today"
    if said.meaning in REQUESTS and is_thanked_for(tokens, said, first):
        return False  # "thanks for the tips"
    if said.meaning.startswith("units") and said.first > first:
        before = tokens[said.first - 1]
        if before.kind is Kind.NUMBER or before.text in {"much", "many", "few", "more"}:
            return False  # "too much kilos for me"
    if said.meaning.startswith("units") and tells_of_its_unit(tokens, said):
        return False  # "10 reps at 44 lb, sorry I think in pounds"
    if said.meaning == "skip-day" and of_dates(tokens, first, last):
        return False  # "away 21st to 24th, no training"
    if said.meaning in _ONLY_IF and tokens[first].text == "if" and not _is_polite(tokens, first):
        return False  # "if it's 12 again I'm out"
    judge = _OF_THEIR_KIND.get(said.meaning)
    if judge is not None and not judge(tokens, said, first, last):
        return False
    return said.meaning in _NOT_NEGATED or not _negated(tokens, said, first)


def tells_of_its_unit(tokens: Sequence[Token], said: Said) -> bool:
    """Whether somebody only says which unit comes to mind, beside a load that was told in it."""
    words = [token.text for token in tokens[said.first : said.last]]
    loads = {tokens[i + 1].text for i in range(said.first - 1) if tokens[i].kind is Kind.NUMBER} & {"kg", "lb"}
    return bool({"think", "know", "speak"} & set(words)) and bool(loads & set(words)) and not {"use", "please", "show"} & set(words)


def past_a_figure(tokens: Sequence[Token], index: int, last: int) -> int:
    """Where a phrase that ends before `index` ends with a figure for a small word: "skip it *4 now*", "change this *1*"."""
    if index < last and tokens[index].text == "1" and tokens[index - 1].text in {"this", "that", "next"}:
        return index + 1
    figure = index + 1 < last and tokens[index].text == "4" and tokens[index + 1].text in _AFTER_FOUR
    return index + 2 if figure else index


def _is_polite(tokens: Sequence[Token], first: int) -> bool:
    """Whether an "if" only asks nicely: "if it's all the same to you I'll sit this one out"."""
    words = " ".join(token.text for token in tokens[first : first + 6])
    return words.startswith(_POLITE)


def of_dates(tokens: Sequence[Token], first: int, last: int) -> bool:
    """Whether a sentence is about days of the month, and not about today."""
    return any(token.kind is Kind.ORDINAL for token in tokens[first:last])


def _negated(tokens: Sequence[Token], said: Said, first: int) -> bool:
    """Whether "not" or "should I" stands right before the phrase."""
    before = [token.text for token in tokens[max(first, said.first - 3) : said.first]]
    if before[-2:] in (["should", "i"], ["shall", "i"], ["do", "not"], ["did", "not"]) or before[-3:-1] == [
        "do",
        "not",
    ]:
        return True
    return bool(before) and before[-1] in {"not", "never", "nobody"} and tokens[said.first].text != "not"
