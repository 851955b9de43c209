"""Figures that number sets and lines, and are no counts: "round 2: 11", "1) 12", "r1: 12 r2: 11"."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal

from core.reading.lexicon import AMOUNTS, COURTESY, listed
from core.reading.phrases import Said
from core.reading.token import Kind, Token

CLOSED = listed("words_company", "closed")
_NEXT = frozenset(
    {"next", "final", "another", "new", "third", "second", "fourth", "fifth", "warmup", "working", "done", "finished"}
)
_JOINS_A_LOAD = frozenset({"at", "@", "x", "with", "reps"})
_MOST_NUMBERED = Decimal(8)
_OF_ANOTHER = frozenset({"last", "previous", "that", "this", "my", "drop", "other"})
_BEFORE_ITS_SET = frozenset({"", "the", "my", "that", "this", ",", ".", "!", ";"})


@dataclass(slots=True)
class SetNumbers:
    """The words of a message, as far as they say which figures only number what follows.

    `skip` says which set phrase begins at a token; `hold` that the station is held for a time; `sides` that it is done one side
    at a time; `load` which load was suggested.
    """

    tokens: Sequence[Token]
    skip: Mapping[int, Said]
    hold: bool = False
    sides: bool = False
    load: Decimal | None = None

    def _text(self, index: int) -> str:
        return self.tokens[index].text if 0 <= index < len(self.tokens) else ""

    def _is_number(self, index: int) -> bool:
        return 0 <= index < len(self.tokens) and self.tokens[index].kind is Kind.NUMBER and index not in self.skip

    def _is_numbered_short(self, index: int, *, apart: bool = False) -> bool:
        """Whether a letter, or a word `apart` from its number, numbers a set: "r2 11", "S1: 12", "lap 2 10"."""
        numbered = (
            self._is_number(index + 1)
            and (apart or self.tokens[index + 1].glued)
            and self.tokens[index + 1].value <= _MOST_NUMBERED
        )
        return numbered and self._is_number(index + 2 + (self._text(index + 2) in {":", "-", "=", "."}))

    def _is_numbered_in_turn(self, index: int) -> bool:
        """Whether the letter or mark numbers one of several sets, in their order: "r1: 12 r2: 11", "#1 12 #2 10"."""
        sign = self._text(index)
        numbered = [
            i + 1 for i, token in enumerate(self.tokens) if token.text == sign and self._is_numbered_short(i, apart=len(sign) > 1)
        ]
        return (
            len(numbered) > 1
            and index + 1 in numbered
            and all(self.tokens[i].value == nth for nth, i in enumerate(numbered, start=1))
        )

    def _numbers_a_line(self, index: int) -> bool:
        """Whether a figure only numbers what follows it: "1) 12", or one of several such lines."""
        bracket = index + 1
        if self._text(bracket) == ")":
            return self.tokens[bracket].glued and self._is_number(bracket + 1) and self._text(index - 1) != "("
        return self._text(index - 1) not in {"r", "s", "#"} and index in self._line_numbers()

    def _numbers_a_remark(self, index: int) -> bool:
        """Whether a figure only numbers one of several remarks: "12 reps 10kg. 1. knee hurts 2. too hot"."""
        heads = [
            i
            for i, token in enumerate(self.tokens)
            if token.kind is Kind.NUMBER
            and self._text(i + 1) in {".", ")"}
            and self.tokens[i + 1].glued
            and i + 2 < len(self.tokens)
            and self.tokens[i + 2].kind is Kind.WORD
            and self._text(i + 2) not in AMOUNTS["reps"] | {"at", "x", "kg", "lb"}
        ]
        while heads and self.tokens[heads[0]].value != 1:
            heads.pop(0)
        in_turn = all(self.tokens[i].value == nth for nth, i in enumerate(heads, start=1))
        return len(heads) > 1 and in_turn and index in heads

    def _may_number_a_line(self, index: int) -> bool:
        """Whether one figure begins a message like the number of a line, and a count follows: "2: 12 at 10kg"."""
        led = index == 0 and self._text(index + 1) == ":" and self.tokens[index].value <= _MOST_NUMBERED
        return led and self._is_number(index + 2) and self._text(index + 3) in {"at", "@", "x", "with", *AMOUNTS["reps"]}

    def _line_numbers(self) -> list[int]:
        """Where figures only number the lines that follow: "1. 12" with "2. 10" below it, "1: 12, 2: 10"; empty when none do."""
        heads = [
            i
            for i, token in enumerate(self.tokens)
            if token.kind is Kind.NUMBER
            and self._text(i + 1) in {".", ":", "-"}
            and self._is_number(i + 2)
            and (self._text(i + 1) != "-" or (self.tokens[i + 1].glued and not self.tokens[i + 2].glued))
            and (not i or self.tokens[i - 1].kind is not Kind.WORD or self._text(i - 1) in {"kg", "lb"} | AMOUNTS["reps"])
        ]
        marks = {self._text(i + 1) for i in heads}
        in_turn = all(self.tokens[i].value == nth for nth, i in enumerate(heads, start=1))
        return heads if len(heads) > 1 and len(marks) == 1 and in_turn else []

    def _numbers_a_set(self, index: int) -> bool:
        """Whether the number after "set" or "round" is its own: not "3 sets of 10", nor "last set 9"."""
        before = self._text(index - 1)
        known = before in COURTESY or before in CLOSED or before in _NEXT or not before.isalpha()
        praised = not known and not any(self._is_number(i) for i in range(index + 2, len(self.tokens)))
        if self._text(index + 1) == ":" and self._text(index + 3) in {",", "/"} and self._is_number(index + 4):
            return False  # "done with the round: 14, 12, 11"
        if before == "time" and self._text(index + 2) in _JOINS_A_LOAD:
            return False  # "this time round 12 with 14kg"
        if self._text(index) == "set" and self._text(index + 1) == ":" and self._text(index + 3) in _JOINS_A_LOAD:
            return False  # "did a set: 10 at 20kg"
        if index + 1 < len(self.tokens) and self.tokens[index + 1].raw == "dozen":
            return False  # "a round dozen"
        if self._text(index) == "set" and self._is_count_of_set(index + 1):
            return False  # "great set 15 @ 12kg"
        if self._text(index) == "set" and self._text(index + 1) == "was" and before in _BEFORE_ITS_SET:
            return False  # "set was 10", but "Dad's set was 14"
        return self._text(index + 1) != "of" and before not in _OF_ANOTHER and not praised

    def _is_count_of_set(self, index: int) -> bool:
        """Whether the number after "set" is too great to be its place in a row, and a load follows it."""
        if not self._is_number(index) or self.tokens[index].value <= _MOST_NUMBERED:
            return False
        return self._text(index + 1) in _JOINS_A_LOAD and self._is_number(index + 2)
