"""What each number of a message is: tokens become the terminals of `grammar.lark`, the grammar makes quantities of them."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from decimal import Decimal
from typing import TYPE_CHECKING

from lark import Token as Terminal
from lark.exceptions import UnexpectedInput

from core.reading.lexicon import AMOUNTS, ENGLISH, EXERCISES, HURT, PLACES, PLAIN, VOCABULARY, listed
from core.reading.parts import Part, cached_grammar
from core.reading.side_words import (
    COUNTED_WITH,
    LIMBS,
    contrasts,
    counted_left,
    is_beside_number,
    is_busy,
    is_of_others,
    is_remark,
    is_same,
    joined_sides,
    leads,
    names_both,
    stands_alone,
)
from core.reading.spelling import is_english
from core.reading.surroundings import CLOSED, PERHAPS, Surroundings
from core.reading.token import Kind, Token
from core.reading.whose import could_and_did

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from core.reading.phrases import Said

_MARKS = {
    "mark-reserve": "RESERVE", "mark-could": "COULD", "mark-failure": "FAILURE", "mark-bodyweight": "BODYWEIGHT",
    "mark-each": "EACH", "mark-hands": "HANDS", "mark-same": "SAME", "mark-held": "HELD", "mark-label": "LABEL",
    "mark-not": "NOT", "mark-left": "LEFT_SIDE", "mark-right": "RIGHT", "mark-effort": "EFFORT", "mark-nought": "NOUGHT",
    "mark-load": "LOAD_IS",
}  # fmt: skip
_SILENT = {"mark-amend", "mark-sorry", "mark-was", "mark-plain", "mark-whole"}
_LINKS = {
    "x": "BY", "by": "BY", "*": "BY", "times": "BY", "at": "AT", "@": "AT_SIGN", "for": "FOR", "with": "WITH", "using": "WITH",
    "and": "AND", "plus": "AND", "&": "AND", "then": "AND", "or": "OR", ",": "COMMA", "/": "SLASH", "-": "DASH",
    ";": "BREAK", ".": "BREAK", "!": "BREAK", "?": "BREAK", "in": "IN", "of": "OF", "on": "WITH", "|": "BREAK",
    "per": "FOR",
}  # fmt: skip
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
_SECONDS = frozenset({"seconds", "second", "s"})
_NOISES = frozenset(
    {"creaking", "creaks", "cracking", "cracks", "clunking", "crunching", "popping", "clicks", "snapping", "is", "feels", "felt"}
)
_POINTING = frozenset({"the", "this", "that", "last", "no", "each", "every", "which", "any"})
_LETTERED = {"a": "first", "b": "second", "c": "third", "d": "fourth"}
_MANY_TIMES = {"twice": 2, "thrice": 3}
_SIDED = frozenset({"side", "sides"})
_OUT_OF = frozenset({"/", "of", "from", "over"})
_QUOTES = {'"', "''", "\N{DOUBLE PRIME}"}
_DECADES = listed("words_quantities", "decades")
_PRAISE = listed("words_quantities", "praise")
_DID = frozenset({"did", "done", "got", "managed", "finished", "completed", "all"})
_ORDERED = frozenset({"round", "set", "go", "time", "one", "lap", "attempt", "try", "bout", "circuit"})
"""What a "second" after a number is the second of: "12 first go and 10 second go"."""

_MOST_PRAISE = 3
_REACH_OF_EFFORT = 6
_SIXTY = Decimal(60)
_THIRTY = Decimal(30)
_LONGEST_UNSAID_HOLD = Decimal(5)
_TO_COME = frozenset({"set", "sets", "round", "rounds", "exercise", "exercises", "station", "stations", "minutes", "to"})
_GOES_ON = frozenset({"then", "plus", "did"})


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
    """Whether a word says that something was held for a time, and not that the form held up."""
    return any(
        token.text in HOLD_WORDS
        and not (token.text in {"held", "holding", "hold"} and tokens[i + 1 : i + 2] and tokens[i + 1].text in {"up", "together"})
        and not (token.text in {"hang", "hold"} and [t.text for t in tokens[i + 1 : i + 2]] == ["on"] and not _lasts(tokens, i + 2))
        for i, token in enumerate(tokens)
    )


def _lasts(tokens: Sequence[Token], at: int) -> bool:
    """Whether a number follows "hold on", with "for" before it or not: so long was it held."""
    at += at < len(tokens) and tokens[at].text == "for"
    return at < len(tokens) and tokens[at].kind is Kind.NUMBER


@dataclass(slots=True)
class _Marking(Surroundings):
    """Turns tokens into terminals, and notes the words it passes over."""

    timed: bool = False
    terminals: list[Terminal] = field(default_factory=list)
    dropped: dict[int, frozenset[str]] = field(default_factory=dict)
    passed: set[str] = field(default_factory=set)
    minutes: Decimal = Decimal(0)
    broken: bool = False

    def run(self) -> None:
        """Mark every token."""
        index = 0
        while index < len(self.tokens):
            index = self._step(index)

    def _emit(self, name: str, index: int, value: object = "") -> None:
        if self.passed:
            self.dropped[index] = frozenset(self.passed)
            self.passed = set()
        self.terminals.append(Terminal(name, str(value), start_pos=index))

    def _step(self, index: int) -> int:
        token = self.tokens[index]
        said = self.skip.get(index)
        if said is not None:
            self._mark(said)
            labels = bool(self.terminals) and self.terminals[-1].type.endswith("_IS")
            return self._label_end(said.last) if labels else max(said.last, index + 1)
        if token.text in {"set", "round"} and self._is_lettered(index):
            self._emit("LABEL", index, _LETTERED[self._text(index + 1)])
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
            self._emit("DURATION", index, Decimal(minutes) * _SIXTY + Decimal(seconds))
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
        whole = self._is_the_station(index) or self._is_counted_in_reps()
        if token.text == "minutes" and not self._is_rested(index) and (self.hold or (self.timed and not whole)):
            return self._minutes(index, Decimal(1), index + 1)
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

    def _mark(self, said: Said) -> None:
        name = _MARKS.get(said.meaning)
        if self._changes_nothing(name, said):
            self.passed.add("...")
            return
        self.broken |= name in {"EACH", "HANDS", "SAME"} and self._text(said.first - 1) in {"not", "never"}  # "not each side"
        if name == "EACH" and self._counts_sets(said):
            self._emit("NUM", said.last - 1, self.tokens[said.last - 1].value)
            self._emit("SETS", said.last)
            return  # "10 for all 3 sets"
        if name == "HANDS" and self._counts_each(said):
            name = "EACH"
        if name is None:
            if said.meaning not in _SILENT:
                self._emit("BREAK", said.first)
            else:
                self.passed.add("time" if self._text(said.last - 1) == "time" else "...")
            return
        if name == "RESERVE" and counted_left(self.tokens, said) and self._is_number(said.first - 1):
            self._emit("REPS", said.first)
            self._emit("LEFT", said.last - 1)
            return  # "10 reps left, 9 reps right"
        if name == "NOUGHT" and self._has_counted_nought() and self.terminals[-1].type in {"REPS", "COMMA", "BREAK"}:
            return  # "no reps at all, couldn't do any"
        if name == "NOUGHT":
            self._emit("NUM", said.first, 0)
            self._emit("REPS", said.first)
            return
        counted = self._is_number(said.first - 1) or (
            self._text(said.first - 1) in AMOUNTS["reps"] and self._is_number(said.first - 2)
        )
        if name in {"RESERVE", "COULD"} and self._tells_what_was_possible(said):
            self._emit("REPS", said.first)
            return  # "only 6 was possible with 22 kg"
        if name == "COULD" and (self._one_more(said) or self._did_only(said)):
            return  # "I could do 9 only"
        ahead = self._label_end(said.last)
        ahead += name == "RESERVE" and self._text(ahead) in PERHAPS
        if name == "LOAD_IS" and self._text(ahead + 1) in {"s", "kg", "lb"}:
            self.passed.add("...")
            return  # "moved up to the 14s": the load says so itself
        if name == "RESERVE" and counted and self._leaves_a_side(said):
            if not self._is_number(said.first - 1):
                self._emit("LEFT", said.first)
            else:
                self._emit("REPS", said.first)
                self._emit("LEFT_SIDE", said.last - 1)
            return
        if name == "RESERVE" and not counted and self._is_number(ahead) and self._text(ahead + 1) == "more":
            name = "COULD"  # "was possible 3 more"
        if name == "RESERVE" and not counted and self._is_of_one(said, ahead):
            return
        named_next = name == "EFFORT" and self._text(said.first - 1) in AMOUNTS["reps"] and self._is_number(ahead)
        if name in {"RESERVE", "EFFORT"} and (not counted or named_next or self._names_next(said, ahead)):
            if not self._is_number(ahead):
                self.broken |= name == "RESERVE" and self._text(said.first) == "in" and self._text(said.first - 1) in {"kg", "lb"}
                self.passed.add("...")
                return  # but "I have got 10 at 20kg in me" is nothing done
            name = f"{name}_IS"
        if name == "FAILURE" and self._text(said.first - 1) == "with" and self.terminals[-1:] and self.terminals[-1].type == "WITH":
            self.terminals.pop()  # "9 with nothing left"
        self._emit(name, said.first, " ".join(token.text for token in self.tokens[said.first : said.last]))

    def _changes_nothing(self, name: str | None, said: Said) -> bool:
        """Whether a set phrase is only talk where it stands, and says nothing of a set."""
        if name in {"LEFT_SIDE", "RIGHT"}:
            hurts = self._text(said.first - 1) in HURT  # "hurts on the right"
            named = self._text(said.last - 1) == "one" and not is_beside_number(self.tokens, said.first, said.last)
            return hurts or named or is_remark(self.tokens, said, self.skip)  # "elbow is barking, right one"
        if name == "RESERVE" and self._is_in_my(said):
            return True
        if name == "NOT" and not self._is_number(said.last):
            return True
        if name == "EACH" and self._text(said.last) == "of" and not self._is_number(said.last + 1):
            return True  # "each side of the rack"
        if name == "EACH" and not self.sides:
            return is_busy(self.tokens, said)  # "both arms full of child"
        if name == "BODYWEIGHT":
            return self._text(said.first) == "nothing" and self._has_counted_nought()  # "zero. nothing."
        return name == "FAILURE" and (self._is_denied(said) or (self.hold and self._ends_a_hold(said)))  # "nearly failed"

    def _is_counted_in_reps(self) -> bool:
        """Whether the set is told in full, so that "a minute" beside it is none of it."""
        named = any(terminal.type in {"REPS", "REPS_IS"} for terminal in self.terminals)
        return named and any(terminal.type in {"UNIT", "UNIT_IS", "PLURAL"} for terminal in self.terminals)

    def _is_of_one(self, reserve: Said, ahead: int) -> bool:
        """Mark what was left where it is said in a word that is no number elsewhere: "only one was left"."""
        lead = self._text(reserve.first - 1) == "one" and self._text(reserve.first - 2) not in _POINTING
        begun = self._text(reserve.first - 2) in {"and", ",", ".", "but", ";", "-", "with"}
        if lead and (self._text(reserve.first) in {"was", "were", "is"} or (begun and self._text(reserve.first) in {"i", "we"})):
            self._emit("NUM", reserve.first - 1, 1)
            self._emit("RESERVE", reserve.first)
            return True
        if self._text(ahead) == "one" and not self._is_number(ahead) and self._ends(ahead + 1):
            self._emit("RESERVE_IS", reserve.first)
            self._emit("NUM", ahead, 1)
            return True
        return False

    def _ends_a_hold(self, failure: Said) -> bool:
        """Whether "my arms gave way" only tells how a plank ended, as every hold does."""
        return any(token.text in {"gave", "give", "gives", "giving"} for token in self.tokens[failure.first : failure.last])

    def _one_more(self, could: Said) -> bool:
        """Mark "could have done another" and "had another one in me": one more was left."""
        done = self._text(could.last - 1) == "another"
        after = could.last if done else could.last + 1 + (self._text(could.last) == "out")
        if self._text(after - 1) != "another":
            return False
        if self._text(after) == "couple" and self._ends(after + 1 + (self._text(after + 1) in {"out", "reps", "more"})):
            self._emit("COULD", could.first)
            self._emit("NUM", could.last, 2)
            self._emit("MORE", after)
            return True  # "could get another couple out"
        counted = self._text(after) in {"one", "rep"}
        end = after + counted
        supposed = self._text(end) in {"if", "but", "had", "before", "easily", "with", "maybe", "because"}
        if (done and not counted) or not (
            supposed or self._ends(end) or (self._text(end) == "in" and self._text(end + 1) in {"me", "the"})
        ):
            return False
        self._emit("COULD", could.first)
        self._emit("NUM", could.last - 1, 1)
        self._emit("MORE", could.last)
        return True

    def _did_only(self, could: Said) -> bool:
        """Whether "could do" tells what was done, and no more than that: "could do 9 only", "could manage just seven"."""
        if could_and_did(self.tokens, could.first, self.load):
            return True
        index = could.last
        while self._text(index) in {"only", "just", "barely"}:
            index += 1
        nought = self._is_number(index) and not self.tokens[index].value
        return self._is_number(index) and (
            nought or index > could.last or "only" in {self._text(index + 1), self._text(could.first - 1)}
        )

    def _is_lettered(self, index: int) -> bool:
        """Whether sets go by letters, of which one stands here before a count: "set A 12 reps, set B 10 reps"."""
        sets = {self._text(i + 1) for i, token in enumerate(self.tokens) if token.text == self._text(index)}
        return self._text(index + 1) in _LETTERED and {"a", "b"} <= sets and self._is_number(self._label_end(index + 2))

    def _tells_what_was_possible(self, could: Said) -> bool:
        """Whether "was possible" tells how many were done, no others being told before it: "only 6 was possible"."""
        words = {token.text for token in self.tokens[could.first : could.last]}
        if "possible" not in words or words & {"more", "extra"}:
            return False
        told = [i for i in range(len(self.tokens)) if self._is_number(i) and self._text(i + 1) not in {"kg", "lb", "s"}]
        return told == [could.first - 1]

    def _number(self, index: int) -> int:
        """Mark the number at `index` with what it is said with; the index after them."""
        token, after = self.tokens[index], index + 1
        following = self._text(after)
        if self._is_said_again(index):
            return after
        if [terminal.type for terminal in self.terminals[-3:]] == ["ROUND_IS", "NUM", "OF"]:
            self.terminals.pop()  # "set 2 of 3"
            return after
        self.broken |= following in AMOUNTS["sets"] and self._text(after + 1) in {"to", "left", "more", "remaining", "until"}
        if self._numbers_a_remark(index):
            return after
        if self._counts_a_pair(index):
            if self._is_number(after):
                return after
            return after + 1 + (self._text(after + 1) in {"of", "at", "weighing"} and self._text(index - 1) in {"with", "using"})
        if self._numbers_a_line(index) or (token.value == 1 and following == "set" and self._leads_a_set(after + 1)):
            self._emit("LABEL", index)
            return after + 1
        if token.value == 0 and (past := self._past_nought(after)) is not None:
            return past
        if following == "more" and self._text(after + 1) in {"set", "round", "go"} and token.value == 1:
            self.broken |= not any(self._is_number(i) for i in range(after + 2, len(self.tokens)))
            self._emit("LABEL", index)
            return after + 2  # "one more set, 8 at 16kg"
        led = following == ":" and self._text(index - 1) in _DID
        led |= following == "times" and self._text(after + 1) in {",", ":", "-"}
        if led and self._counts_what_follows(index):
            self._emit("NUM", index, token.value)
            self._emit("SETS", after)
            return after + 1  # "did two: 12 and 10"
        if following == "minutes" or (following == "m" and self.tokens[after].glued):
            return self._minutes(index, token.value, after + 1)
        if following in _QUOTES and self.tokens[after].glued and self._text(index - 1) not in _QUOTES:
            self.broken |= not self.hold
            self._emit("DURATION", index, token.value)
            return after + 1
        if following in {"hold", "plank", "hang"} and self._text(after + 1) in {"", ",", ".", "!", "with", "at"}:
            self._emit("DURATION", index, token.value)
            return after + 1
        glued_s = following == "s" and self.tokens[after].glued
        self.broken |= following in _SECONDS and (glued_s or following != "s") and self._is_of_the_clock(index)
        second = following == "second" and not {"first", "1st", "third"} & {t.text for t in self.tokens[:index]}
        second = second and not self._is_number(after + 1) and self._text(after + 1) not in _ORDERED
        self.broken |= glued_s and self._text(after + 1) in _DECADES
        if following == "seconds" or second or (glued_s and not self._is_load_plural(index)):
            self._emit("DURATION", index, token.value)
            return after + 1
        if glued_s:
            self._emit("PLURAL", index, token.value)
            return after + 1
        self._emit("NUM", index, token.value)
        self.broken |= self._may_number_a_line(index)
        self.broken |= following in {"fewer", "less"} or self._is_compared(index)
        strange = following.isalpha() and following not in VOCABULARY and following not in ENGLISH
        self.broken |= strange and self._text(after + 1) in _SIDED  # "10 eqcch side": each, or which?
        tank = following == "in" and self._text(after + 1) in {"the", "my", "me"} and after not in self.skip
        elsewhere = following == "left" and self._text(after + 1) == "in" and not {after, after + 1} & set(self.skip)
        self.broken |= elsewhere and self._text(after + 2) in {"the", "my", "this"}  # "10 left in the series"
        self.broken |= (following, self._text(after + 1)) in {
            ("to", "go"),
            ("more", "than"),
            ("less", "than"),
            ("of", "them"),
        } and (following != "of" or (len(self.terminals) > 1 and self._text(after + 2) not in CLOSED | {"", ",", ".", "!"}))
        held_in = self._text(after + 2)
        self.broken |= tank and after + 1 not in self.skip and not (is_english(held_in) or held_in in PLAIN)
        self.broken |= following == "per" and after not in self.skip and not self._is_number(after + 1)
        after = self._past_scale(index, after)
        scored = self.terminals[-1].type == "EFFORT"
        return after if after in self.skip or scored else self._after_number(after)

    def _past_nought(self, after: int) -> int | None:
        """The index after a nought that says again what was just said: "no power left, zero", "did not get any, zero reps"."""
        if self._text(after) in AMOUNTS["reps"] and self._has_counted_nought():
            return after + 1
        said = [terminal.type for terminal in self.terminals if terminal.type not in {"COMMA", "BREAK"}]
        return after if self._ends(after) and said[-1:] == ["FAILURE"] and len(said) > 1 else None

    def _has_counted_nought(self) -> bool:
        """Whether the one number so far is a nought."""
        return [terminal.value for terminal in self.terminals if terminal.type == "NUM"] == ["0"]

    def _past_scale(self, index: int, after: int) -> int:
        """The index after "/10" or "out of 10" where effort is what is counted."""
        words = [self._text(after + n) for n in range(4)]
        length = 2 if words[0] in _OUT_OF and words[1] == "10" else 3 if words[:3] == ["out", "of", "10"] else 0
        length = 0 if words[length - 1] == "10" and self._text(after + length) in {"kg", "lb", "s", *AMOUNTS["reps"]} else length
        if length and self._text(after + length) in {"for", "in", "on", "of"} and self._text(after + length + 1) in AMOUNTS["rpe"]:
            self._emit("EFFORT", after)
            return after + length + 2
        first = next((n + 1 for n in range(index - 1, -1, -1) if self._is_number(n) or self._text(n) in {".", ";"}), 0)
        if length and {self._text(n) for n in range(max(index - _REACH_OF_EFFORT, first), index)} & AMOUNTS["rpe"]:
            if [terminal.type for terminal in self.terminals[-2:-1]] != ["EFFORT_IS"]:
                self._emit("EFFORT", after)  # "proper effort, 9 out of 10"
            return after + length
        return after + length if length and self._text(after + length) in AMOUNTS["rpe"] else after

    def _after_number(self, after: int) -> int:
        """Mark what stands right after a number: its unit, "reps", "sets", "rpe", "more"."""
        if after >= len(self.tokens) or self.tokens[after].kind not in {Kind.WORD, Kind.MARK}:
            return after
        following = self.tokens[after]
        word, next_word = following.text, self._text(after + 1)
        name: str | None = None
        length = 1
        praised = after
        while self._text(praised) in _PRAISE and praised < after + _MOST_PRAISE:
            praised += 1
        if praised > after and word != "more" and self._text(praised) in AMOUNTS["reps"] | {"ones"}:
            self._emit("REPS", praised)
            return praised + 1
        if (
            word in {"kg", "lb"}
            and self._is_labelled()
            and self.terminals[-2].type != "LOAD_IS"
            and self._is_number(self._label_end(after + 1))
        ):
            self._emit("UNIT_IS", after, word)
            return self._label_end(after + 1)
        if word in {"kg", "lb"} and self._is_led_by_unit(after):
            self._emit("UNIT_IS", after, word)
            return after + 1
        if word in {"kg", "lb"}:
            name = "UNIT"
            length = 2 if next_word == "s" and self.tokens[after + 1].glued else 1
        elif self._is_short_for_reps(after):
            name = "REPS"
        elif word == "times" and self._is_number(after + 1):
            return after
        elif word in AMOUNTS["reps"] and not (self._is_number(after + 1) and self._is_labelled()):
            name = "REPS"
            self.broken |= next_word in {"fewer", "less"}  # "one rep fewer"
        elif (
            (word in AMOUNTS["sets"] and word != "set")
            or (word in {"set", "lots", "bouts"} and next_word == "of")
            or self._counts_set(after)
        ):
            name = "SETS"
        elif word in AMOUNTS["rpe"] and not self._is_number(self._label_end(after + 1)):
            name = "EFFORT"
        elif word == "more":
            name = "MORE"
            first = after - 1
            while self._is_number(first - 1):
                first -= 1
            loaded = self._text(first - 1) == "for" and self._text(first - 2) in {"kg", "lb", "s"}  # "14kg for 8 more"
            loaded |= self._follows_another_load(first)  # "then I took the 16 kg and did 6 more"
            ahead = after + 2 + (self._text(after + 2) in {"the", "my", "those"})
            loaded |= next_word in {"with", "at", "@", "on", "using"} and self._is_number(ahead)
            name = "REPS" if loaded else name  # "then 4 more with 10kg"
            self.broken |= not loaded and next_word in _TO_COME  # "one more set to go"
            self.broken |= (
                not loaded and self._text(first - 1) in _GOES_ON
            )  # "10, then 2 more" is twelve done, or ten and two left?
            length = 2 if next_word in AMOUNTS["reps"] else 1
        if name is None:
            return after
        self._emit(name, after, word)
        return after + length

    def _is_led_by_unit(self, unit: int) -> bool:
        """Whether a unit between two numbers is written with the one after it, the load suggested: "11 kg20"."""
        ahead = unit + 1
        joined = self._is_number(ahead) and self.tokens[ahead].glued and not self.tokens[unit].glued
        return joined and self.tokens[ahead].value == self.load and self._text(ahead + 1) not in {"kg", "lb", "x"}

    def _is_labelled(self) -> bool:
        """Whether the last number had its name before it, as in "weight 14 reps 12"."""
        return len(self.terminals) > 1 and self.terminals[-2].type.endswith("_IS")

    def _minutes(self, index: int, minutes: Decimal, after: int) -> int:
        """Such as "1 minute 10 seconds", "1m20", "a minute and a half": one duration; the index after it."""
        self.minutes = max(self.minutes, minutes)
        self.broken |= not self.hold and self._text(after) in {"left", "until", "till", "remaining", "late", "early"}
        seconds = minutes * _SIXTY
        skip = 1 if self._text(after) == "and" else 0
        rest = after + skip
        if self._is_number(rest) and self.tokens[rest].value < _SIXTY:
            closing = self._text(rest + 1)
            if closing in {"seconds", "s", "second"}:
                seconds, after = seconds + self.tokens[rest].value, rest + 2
            elif closing not in {"kg", "lb", "reps", "rep", "x", "at"}:
                seconds, after = seconds + self.tokens[rest].value, rest + 1
        elif skip and self._text(rest) in {"half", "a"}:
            half_at = rest if self._text(rest) == "half" else rest + 1
            if self._text(half_at) == "half":
                seconds, after = seconds + _THIRTY, half_at + 1
        self._emit("DURATION", index, seconds)
        return after

    def _word(self, index: int) -> str | None:
        """The terminal of a word or mark that stands before a number or between two; None when it changes nothing."""
        word = self._text(index)
        ahead = self._label_end(index + 1)
        labels = self._is_number(ahead)
        counted = self._is_number(index - 1)
        if word in {"kg", "lb"}:
            return ("UNIT_IS" if labels else "UNIT_ONLY") if not counted else None
        if word in {"reps", "rep", "repetitions", "repetition"} and labels and not counted:
            self.broken |= self._text(index - 1) in {"at", "on", "by", "around", "after", "before", "from", "since"}  # "at rep 6"
            return "REPS_IS"
        if word in {"weight", "load"} and labels:
            named = self._text(index - 1) not in {"kg", "lb"} or self._text(ahead + 1) in {"kg", "lb"}
            return "LOAD_IS" if named else None  # "the 7 kg weight eight times"
        if word in AMOUNTS["rpe"] and labels:
            return "EFFORT_IS"
        if word in {"r", "s", "#", "lap", "number", "no", "nr", "go", "attempt", "bout", "try"} and self._is_numbered_in_turn(
            index
        ):
            return "ROUND_IS"
        lettered = word == "r" and labels and not counted and (ahead == index + 1 or self._text(index + 1) in {":", "="})
        if lettered and not self.sides and not self._speaks_of_left() and not self._is_number(ahead + 1):
            return "REPS_IS"
        if (
            word in {"round", "rnd", "rd", "set", "station", "circuit"}
            and labels
            and self._text(index + 1) != "done"
            and self._numbers_a_set(index)
        ):
            return "ROUND_IS"
        if word in {"r", "s"} and self._is_numbered_short(index) and not self._speaks_of_left():
            return "ROUND_IS"
        if word in {"left", "l", "right", "r"} and joined_sides(self.tokens, index) is not None:
            return "EACH"
        if word in {"left", "l", "right", "r"}:
            following = self.skip.get(index + 1)
            tank = following is not None and following.meaning == "mark-reserve"
            return None if tank and word == "left" else self._side(word, index, ahead)
        if word == "both" and self._text(index - 1) in {"rir", "tank", "reserve"} and self._ends(index + 1):
            return "EACH"
        if word in {"both", "each"} and self.terminals[-2:-1] and self.terminals[-2].type == "EFFORT_IS" and self._ends(index + 1):
            return "EACH"  # "left 12, right 12, rpe 7 both"
        if word == "both" and counted and self.sides and not {"left", "right", "l", "r"} & {t.text for t in self.tokens}:
            return "EACH"
        if word == "both" and self.sides and self._text(index - 1) == "on" and self._is_number(index - 2):
            return "EACH"  # "9 on both 16kg"
        if word == "each" and self._text(index + 1) in {"time", "times", "other"}:
            return None
        if (
            word == "by"
            and self._text(index + 1) in LIMBS - (set() if self.sides else {"hand"})
            and (counted or self._text(index - 1) in AMOUNTS["reps"])
        ):
            return "EACH"  # "10 by arm"
        if word == "each" and (is_of_others(self.tokens, index) or self._gathers_sets(index)):
            return None  # "the grandchildren applauding each one"
        if word == "each":
            return "HANDS" if self._text(index - 1) in {"kg", "lb"} else "EACH"
        if word == "-" and counted and self.terminals[-2:-1] and self.terminals[-2].type == "ROUND_IS":
            return "DASH"  # "rd1-12"
        if word in {"to", "-"} and counted and self._is_number(index + 1):
            joined = word == "to" or (self.tokens[index].glued and self.tokens[index + 1].glued)
            return "OR" if joined else "DASH"
        if word == "times" and not self._is_number(index + 1):
            return None  # "lost my balance a couple of times"
        if word == "empty" and self._ends(index + 1) and (not index or self.tokens[index - 1].kind is Kind.MARK):
            return "FAILURE"  # "7. 22kg. Empty."
        if word == "no" and self._text(index + 1) == "be" and self._is_number(index + 2):
            return "NOT"
        if word in PERHAPS | {","} and (counted or self._text(index - 1) == "one") and self._may_be_one_more(index):
            return "OR"  # "one, possibly two left"
        if word == "or":
            return "OR" if counted and self._is_number(index + 1) else None
        if word == "+":
            return "DASH" if counted and self._is_number(index + 1) else None
        if word == "not":
            return "NOT" if self._corrects(index) else None
        return _LINKS.get(word)

    def _side(self, word: str, index: int, ahead: int) -> str | None:
        """A side, when the word stands beside what it counts and not merely in the sentence."""
        before = "" if self.tokens[index].apart else self._text(index - 1)
        if word == "right" and not self.sides and self._is_number(index - 1) and self._text(index - 2) in {"is", "was"}:
            return None  # "that's 12, right"
        if word == "right" and before == "all" and (self._is_number(index + 1) or self._ends(index + 1)):
            return None  # "all right 9 at 16kg"
        if contrasts(self.tokens, index):
            return "LEFT_SIDE" if word[0] == "l" else "RIGHT"
        spanned = self._is_number(ahead) and self._text(ahead + 1) in {"or", "to", "-"} and self._is_number(ahead + 2)
        ahead_reserve = self.skip.get(ahead + (3 if spanned else 1))  # "left one or two in the tank"
        counts_right = word[0] == "r" and self.sides and self._is_number(index - 1)
        counts_right = counts_right or (ahead_reserve is not None and self._leaves_a_side(ahead_reserve))
        if ahead_reserve is not None and ahead_reserve.meaning == "mark-reserve" and not counts_right:
            return None
        name = "LEFT_SIDE" if word[0] == "l" else "RIGHT"
        if word == "left" and self._is_number(index - 1):
            name = "LEFT"
        if self._text(ahead) in {"got", "did", "side", "had"} and self._is_number(ahead + 1):
            return name
        placed = self._text(index + 1) in PLACES and self._text(index + 1) not in LIMBS
        if placed and self._text(index + 2) in HURT | _NOISES:
            return None  # "left knee creaking but no pain"
        if (
            len(word) > 1
            and not self._is_number(index - 1)
            and (leads(self.tokens, index, sides=self.sides) or (self.sides and stands_alone(self.tokens, index)))
        ):
            return name
        if self._text(index + 1) in PLACES and self._text(index + 1) not in LIMBS and self._text(index + 2) not in EXERCISES:
            return None  # "12 reps 10kg left knee ok"
        direct = self._is_number(ahead) or self._is_number(index - 1)
        if len(word) == 1 and before == "on" and self.sides and self._is_paired(word):
            return name  # "9L/9R, 1 rir on L"
        if names_both(self.tokens, index) or (len(word) > 1 and is_same(self.tokens, index)):
            return name
        if len(word) == 1 and before in {"kg", "lb"} and self.sides and index + 1 == len(self.tokens):
            return name  # "9 16kg L"
        if len(word) == 1:
            damaged = word == "l" and ahead < len(self.tokens) and self.tokens[ahead].glued and not self._is_number(index - 1)
            self.broken |= damaged and not self.sides and not any(t.text in {"r", "right"} for t in self.tokens)  # "l2" for 12
            lone = word == "l" and self.tokens[index].glued and not any(t.text in {"r", "right"} for t in self.tokens)
            return ("LEFT" if lone else name) if direct else None
        counted = before in COUNTED_WITH and (before not in AMOUNTS["reps"] or self._is_number(index - 2) or self.sides)
        to_go = word == "left" and before in {"s", "seconds"} and not self.sides
        self.broken |= to_go and not any(token.text in {"right", "r"} for token in self.tokens)  # "30 seconds left"
        return name if direct or counted else None
