"""What each number of a message is: tokens become the terminals of `grammar.lark`, the grammar makes quantities of them."""

from __future__ import annotations

from dataclasses import dataclass, replace
from decimal import Decimal
from typing import TYPE_CHECKING

from lark.exceptions import UnexpectedInput

from core.reading.held_things import holds_another_thing
from core.reading.lexicon import AMOUNTS
from core.reading.number_marks import SIXTY
from core.reading.parts import Part, cached_grammar
from core.reading.phrase_marks import LETTERED, PhraseMarks
from core.reading.side_words import joined_sides
from core.reading.token import Kind, Token

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from core.reading.phrases import Said

HOLD_WORDS = {
    "plank",
    "planks",
    "hold",
    "held",
    "hang",
    "hung",
    "wall",
    "planked",
    "lasted",
    "carry",
    "isometric",
    "resist",
    "hanging",
    "resisted",
}
_MANY_TIMES = {"twice": 2, "thrice": 3}
_LONGEST_UNSAID_HOLD = Decimal(5)


def quantities(
    tokens: Sequence[Token],
    skip: Mapping[int, Said],
    *,
    hold: bool = False,
    timed: bool = False,
    sides: bool = False,
    load: Decimal | None = None,
) -> list[Part] | None:
    """The parts of a message in order; None when the grammar cannot make sense of its numbers.

    `skip` says which set phrase, if any, begins at a token: marks become terminals, other phrases are passed over with
    every number in them. `hold` makes a clock ("1:10") a duration; `timed` says that minutes can be a set even when nothing
    else says that something was held; `sides` that "r10" is the right side and not reps; `load` which load was suggested.
    """
    marking = _Marking(tokens, skip, hold=hold or speaks_of_a_hold(tokens), timed=timed, sides=sides, load=load)
    marking.run()
    if marking.broken:
        return None
    if marking.minutes and not (marking.hold or (timed and marking.minutes <= _LONGEST_UNSAID_HOLD)):
        return None
    try:
        parts: list[Part] = cached_grammar().parse(marking.terminals)  # type: ignore[assignment]
    except UnexpectedInput:
        return None
    told = {part.kind for part in parts} & {"load", "reps"}
    while parts and (parts[-1].kind == "at" or (told and (parts[-1].kind, parts[-1].word) == ("by", "by"))) and marking.passed:
        parts.pop()  # "no pain at all", "hit by the plow": the words go on, and no number comes
    return [replace(part, dropped=marking.dropped.get(part.at, frozenset())) for part in parts]


def speaks_of_a_hold(tokens: Sequence[Token]) -> bool:
    """Whether a word says that something was held for a time, and not that the form held up: "hang the washing" is no hold."""
    return any(
        token.text in HOLD_WORDS
        and not (token.text in {"held", "holding", "hold"} and tokens[i + 1 : i + 2] and tokens[i + 1].text in {"up", "together"})
        and not (token.text == "hang" and tokens[i + 1 : i + 2] and tokens[i + 1].text in {"the", "my", "that", "it", "about"})
        and not (
            token.text in {"hang", "hold"}
            and [t.text for t in tokens[i + 1 : i + 2]] in (["on"], ["please"])
            and not _lasts(tokens, i + 2)
        )
        and not (token.text in {"held", "hung"} and holds_another_thing(tokens, i, i + 1))
        for i, token in enumerate(tokens)
    )


def _lasts(tokens: Sequence[Token], at: int) -> bool:
    """Whether a number follows "hold on", with "for" before it or not: so long was it held."""
    at += at < len(tokens) and tokens[at].text == "for"
    return at < len(tokens) and tokens[at].kind is Kind.NUMBER


@dataclass(slots=True)
class _Marking(PhraseMarks):
    """Turns tokens into terminals, one after the other."""

    def run(self) -> None:
        """Mark every token."""
        index = 0
        while index < len(self.tokens):
            index = self._step(index)

    def _step(self, index: int) -> int:
        token = self.tokens[index]
        said = self.skip.get(index)
        if said is not None:
            self._mark(said)
            labels = bool(self.terminals) and self.terminals[-1].type.endswith("_IS")
            return self._label_end(said.last) if labels else max(said.last, index + 1)
        if token.text in {"set", "round"} and self._is_lettered(index):
            self._emit("LABEL", index, LETTERED[self._text(index + 1)])
            return self._label_end(index + 2)  # "set A 12 reps, set B 10 reps"
        if token.kind is Kind.NUMBER and self._is_one_set(index):
            self._emit("LABEL", index, "first")
            return index + 2  # "one set 12 reps, second set 10"
        if token.kind is Kind.NUMBER and self._gathers_counts(index):
            self.passed.add("all")
            return index + 1 + (self._text(index + 1) in AMOUNTS["sets"] | {"times", "goes"})  # "12, 11, 9, all three at 14kg"
        if token.kind is Kind.NUMBER:
            return self._number(index)
        if token.kind is Kind.CLOCK and self.hold:
            minutes, seconds = token.text.split(":")[:2]
            self._emit("DURATION", index, Decimal(minutes) * SIXTY + Decimal(seconds))
            return index + 1
        if token.kind is Kind.ORDINAL:
            self._emit("LABEL", index, token.text)
            return index + 1
        if token.text in {"sets", "rounds"} and (named := self._past_numbers_of_sets(index)) is not None:
            self.passed.add("...")
            return named  # "rounds one and two: 10 at 30 lb, 8 at 35 lb"
        if token.text == "one" and self._may_be_one_more(index + 1):
            self._emit("NUM", index, 1)
            return index + 1
        if token.text == "next" and self._is_next_of_several(index):
            self._emit("LABEL", index, "next")
            return index + 1 + (self._text(index + 1) in {"one", "go", "set", "round"})
        whole = self._is_the_station(index) or self._is_counted_in_reps()
        if token.text == "minutes" and not self._is_rested(index) and (self.hold or (self.timed and not whole)):
            return self._minutes(index, self._share_of_a_minute(index), index + 1)
        counted = index - 1 - (self._text(index - 1) == "," and self._ends(index + 1))
        if token.text in _MANY_TIMES and (self._is_number(counted) or self._text(counted) in AMOUNTS["reps"]):
            self._emit("NUM", index, _MANY_TIMES[token.text])
            self._emit("SETS", index)
            return index + 1  # "10 twice at 16kg"
        if token.text == "both" and self._text(index + 1) in {"rounds", "sets", "times", "goes"}:
            if any(terminal.type == "SETS" for terminal in self.terminals):
                self.passed.add("both")
                return index + 2  # "two sets, 12 and 10, 8kg both times"
            if self.terminals and self.terminals[-1].type in {"RESERVE", "FAILURE"}:
                self._emit("EACH", index, "on both")
                return index + 2  # "7 at 30kg and then 6, 1 rep in reserve both times"
            self._emit("NUM", index, 2)
            self._emit("SETS", index + 1)
            return index + 2
        name = self._word(index)
        joined = joined_sides(self.tokens, index) if name == "EACH" else None
        if joined is not None:
            self._emit("EACH", index, "both")
            return joined
        if name is None:
            self.passed.add(token.text)
        else:
            self._emit(name, index, token.text)
        return self._label_end(index + 1) if name is not None and name.endswith("_IS") else index + 1
