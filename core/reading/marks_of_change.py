"""Words that take something back or put it right, as they are meant where they stand: "no sleep" takes nothing back."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from core.reading.acts import Awaiting, Context
from core.reading.corrections import (
    ABSENT,
    NUMERIC,
    stresses,
)
from core.reading.lexicon import COURTESY, listed
from core.reading.scopes import LAST
from core.reading.token import Kind, Token

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from core.reading.parts import Part
    from core.reading.phrases import Said

_ASSERTING = (["in", "fact"], ["in", "reality"])
_PUTS_RIGHT = listed("words_records", "puts_right")
"""Words that go on with a correction after its "no"."""
_TO_BE_DONE = frozenset({"doing", "lifting", "hitting", "managing", "getting", "able"})


def without_unit_again(
    parts: list[Part], marks: dict[str, Said], said: Mapping[int, Said]
) -> tuple[list[Part], Mapping[int, Said]]:
    """The parts and phrases without a correction that only says the unit again: "20 kegs haha I mean kgs"."""
    mark, units = marks.get("mark-amend"), {part.unit for part in parts if part.kind == "load"}
    again = [part for part in parts if part.kind == "unit_only" and mark is not None and part.at == mark.last]
    if len(again) != 1 or units != {again[0].unit}:
        return parts, said
    del marks["mark-amend"]
    return [part for part in parts if part is not again[0]], {at: one for at, one in said.items() if one is not mark}


def before_taken_back(parts: list[Part], marks: Mapping[str, Said], *, correcting: bool) -> list[Part]:
    """The parts before a "wait no" that gives up a number of them for another: "12kg for 11, wait no 12 not 11"; else all."""
    sorry = marks.get("mark-sorry")
    if correcting or sorry is None or not any(part.kind == "not" and part.at > sorry.first for part in parts):
        return parts
    before = [part for part in parts if part.at < sorry.first]
    return before if any(part.numbers for part in before) else parts


def was_to_be(tokens: Sequence[Token], said: Said) -> bool:
    """Whether a phrase says what a number was supposed to be, right before it, or what is still to be done."""
    ahead = tokens[said.last : said.last + 1]
    if said.meaning == "mark-amend" and ahead != [] and ahead[0].text in _TO_BE_DONE:
        return True  # "should be doing 12 at 14 by now"
    supposed = any(token.text == "supposed" for token in tokens[said.first : said.last])
    return said.meaning == "mark-amend" and supposed and ahead != [] and ahead[0].kind is Kind.NUMBER


def only_asserts(tokens: Sequence[Token], said: Said, sentences: Sequence[tuple[int, int]]) -> bool:
    """Whether "in fact" stands in a sentence without numbers, and corrects none: "just right in fact. Twelve"."""
    if said.meaning != "mark-amend" or [token.text for token in tokens[said.first : said.first + 2]] not in _ASSERTING:
        return False
    inside = next((span for span in sentences if span[0] <= said.first < span[1]), (0, len(tokens)))
    return not any(token.kind in NUMERIC for token in tokens[inside[0] : inside[1]])


def as_meant(tokens: Sequence[Token], said: Said, context: Context) -> Said:
    """The phrase, with a "no" that says what is not there as plain words, which take nothing back: "no pain, 3 left"."""
    if said.meaning == "mark-was" and context.awaiting is Awaiting.REPS:
        return _as_label(tokens, said)
    if stresses(tokens, said):
        return replace(said, meaning="mark-plain")
    no = said.meaning == "mark-sorry" and [token.text for token in tokens[said.first : said.last]] == ["no"]
    absent = no and said.last < len(tokens) and (tokens[said.last].text in ABSENT or _is_lacking(tokens, said.last))
    absent |= no and _is_no_more(tokens, said)
    return replace(said, meaning="mark-plain") if absent else said


def _is_no_more(tokens: Sequence[Token], said: Said) -> bool:
    """Whether "no more" right after a count only says that it was all: "8 reps no more, 15kg"."""
    closed = said.last + 1 >= len(tokens) or tokens[said.last + 1].kind is Kind.MARK
    more = said.last < len(tokens) and tokens[said.last].text == "more"
    return more and closed and said.first > 0 and tokens[said.first - 1].kind is not Kind.MARK


def _is_lacking(tokens: Sequence[Token], at: int) -> bool:
    """Whether the word after a "no" names something that was not there, and corrects nothing: "no sleep last night, 10kg"."""
    token = tokens[at]
    return token.kind is Kind.WORD and not token.apart and token.text not in _PUTS_RIGHT | COURTESY


def _as_label(tokens: Sequence[Token], said: Said) -> Said:
    """The phrase, with a "last one was" after the sets as the name of the last of them: "3x10 at 20kg, last one was to failure"."""
    words = [token.text for token in tokens[said.first : said.last]]
    named = [at for at, word in enumerate(words) if word in {"was", "were", "is"}]
    if not LAST & set(words) or not named or {"weight", "load"} & set(words):
        return said
    if not any(token.kind is Kind.NUMBER for token in tokens[: said.first]):
        return said
    return replace(said, meaning="mark-label", last=said.first + named[0])
