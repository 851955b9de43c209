"""The words of a list of things to lift: numbers (decimal commas too), kinds, and what may stand between them."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal

from core.reading.lexicon import EXERCISES, listed
from core.reading.token import Kind, Token

KINDS: dict[str, str] = {
    word: kind
    for kind in ("dumbbell", "kettlebell", "handle", "plate", "band", "barbell", "bench")
    for word in listed("gear", kind)
}
PAIRS = frozenset({"pair", "pairs", "prs"})
UNITS = frozenset({"kg", "lb"})
SKIPPED = listed("words_gear", "skipped")
OF = frozenset(
    {"of", ":", "are", "is", "from", "in", "at", "=", "weighing", "weigh", "weighs", "which", "with", "(", "the", "-", "like"}
)
ONE = frozenset({"a", "an", "one", "single", "another", "lone", "solitary", "sole", "individual"})
PARTS = frozenset({",", "and", "plus", "&", "+", ";", "(", ")", "/", "or", "then", "also"})
WITHIN = SKIPPED | {"in", "of", "each", "s", "worth"}
PIECES = frozenset({"piece", "pieces", "pcs", "pc", "nos", "no's", "units", "numbers"})
_AFTER_BAR = frozenset(
    {"bell", ",", "and", "with", "plus", "&", "+", "(", ")", "in", "at", "here", "is", "too", "of", ":", "-", "x", ";"}
)
_NO_BARBELL = frozenset(
    {"up", "pullup", "pull-up", "chinup", "chin-up", "dip", "door", "doorway", "way", "chocolate", "protein", "snack"}
)
_NOT_DESCRIBING = (
    listed("structure", "words") | PARTS | OF | UNITS | PAIRS | {"x", "s", "each", "on", "using", "for", "by", "i", "we", "my"}
)
_MORE_THAN_DESCRIBING = (_NOT_DESCRIBING - SKIPPED) | {"set", "sets"}
_MOST_DESCRIBING = 2
_DECIMAL_TAILS = frozenset({"25", "75"})
_STEP, _HALF_STEP = 5, 2
"""Loads go by fives: "7,5" and "12,5" are one load, "10,5" is not."""

ENDS = 2


@dataclass(slots=True)
class Words:
    """Looks at tokens `[first, last)`."""

    tokens: Sequence[Token]
    first: int
    last: int

    def text(self, index: int) -> str:
        """The word at `index`, empty outside."""
        return self.tokens[index].text if self.first <= index < self.last else ""

    def is_number(self, index: int) -> bool:
        """Whether a number stands at `index`, be it with a decimal comma."""
        return self.number(index) is not None

    def number(self, index: int) -> tuple[Decimal, int] | None:
        """The number at `index` and the index after it; "7,5" is one where the list has other commas."""
        if not self.first <= index < self.last:
            return None
        token = self.tokens[index]
        if token.kind is Kind.ODD:
            if token.raw.isdigit() and self.text(index - 1) == "+":
                return Decimal(token.raw), index + 1  # "bench+2x14kg"
            whole, comma, tail = token.raw.partition(",")
            return (Decimal(f"{whole}.{tail}"), index + 1) if comma and _is_decimal(whole, tail) else None
        if token.text == "one" and self.text(index + 1) in UNITS:
            return Decimal(1), index + 1
        if token.kind is not Kind.NUMBER:
            return None
        tail = self.text(index + 2)
        joined = (
            self.text(index + 1) == ","
            and self.tokens[index + 1].glued
            and tail.isdigit()
            and self.tokens[index + 2].glued
            and _is_decimal(token.text, tail)
            and self._parts_otherwise()
        )
        return (Decimal(f"{token.text}.{tail}"), index + 3) if joined else (token.value, index + 1)

    def _parts_otherwise(self) -> bool:
        """Whether some of the list is parted by "and" or by a comma with a space, so that "7,5" is one number."""
        return any(
            self.text(i) == "and" or (self.text(i) == "," and not self.tokens[i + 1].glued)
            for i in range(self.first, self.last - 1)
        )

    def kind_at(self, index: int) -> str | None:
        """The kind of thing named at `index`, unless it is part of an exercise ("bench press") or boils water."""
        word, following = self.text(index), self.text(index + 1)
        if word in {"bar", "bars"} and ((following and following not in _AFTER_BAR) or self.text(index - 1) in _NO_BARBELL):
            return None
        if word == "kettle" and not (self.is_number(index - 1) or self.text(index - 1) in UNITS | {"s"}):
            return None
        return None if following in EXERCISES - {"one"} or following in {"handles", "handle", "plates"} else KINDS.get(word)

    def kind_near(self, index: int) -> bool:
        """Whether a kind stands at `index` or after words such as "adjustable"."""
        while self.text(index) in SKIPPED:
            index += 1
        return self.kind_at(index) is not None

    def described_kind(self, index: int) -> bool:
        """Whether a kind stands within a word or two that only describe it: "stretchy yellow band"."""
        for at in range(index, index + _MOST_DESCRIBING + 1):
            if self.kind_at(at) is not None:
                return True
            if self.text(at) in _MORE_THAN_DESCRIBING or at >= self.last or self.tokens[at].kind is not Kind.WORD:
                return False
        return False

    def past_describing(self, index: int) -> int:
        """The index after up to three words that only describe a thing: "a rusty old 16 kg kettlebell"."""
        at = index
        while at < min(index + _MOST_DESCRIBING + 1, self.last) and self.tokens[at].kind is Kind.WORD:
            if self.text(at) in _MORE_THAN_DESCRIBING or self.text(at) in KINDS:
                return index
            at += 1
        weighed = self.text(at + 1) in UNITS | {"s"} or self.kind_near(at + 1)
        return at if weighed or at == index else index

    def ends_at(self, index: int) -> bool:
        """Whether a thing of the list ends before `index`."""
        return index >= self.last or self.text(index) in PARTS

    def tail_ahead(self, index: int) -> bool:
        """Whether the load at `index`, or the last of its list, is followed by a kind: "12 and 16 kg kettlebells"."""
        parted = False
        while index < self.last:
            word = self.text(index)
            if self.kind_at(index) is not None:
                return not parted
            if word in PARTS:
                parted = True
            elif parted and (word in ONE | PAIRS or self.text(index + 1) in PAIRS | {"x", "of"}):
                return False
            elif (number := self.number(index)) is not None:
                parted, index = False, number[1]
                continue
            elif word not in WITHIN | UNITS | {"x"}:
                return False
            index += 1
        return False

    def spans(self, index: int) -> bool:
        """Whether the loads are given as a span ("up to 20 kg", "from 5 to 25")."""
        word = self.text(index)
        near = any(self.is_number(i) for i in range(max(index - 2, self.first), index))
        return (
            word == "upto"
            or (word == "up" and self.text(index + 1) == "to")
            or (word in {"to", "-", "till", "through"} and self.is_number(index + 1) and near)
        )

    def past_between(self, index: int) -> int:
        """The index after "nothing between 8 and 12 kg"."""
        numbers = 0
        while index < self.last and (numbers < ENDS or self.text(index) in UNITS | {"s"}):
            numbers += self.is_number(index)
            index += 1
        return index


def _is_decimal(whole: str, tail: str) -> bool:
    """Whether "7,5" or "1,25" is one load."""
    return whole.isdigit() and (tail in _DECIMAL_TAILS or (tail == "5" and (int(whole) % _STEP == _HALF_STEP or int(whole) == 1)))
