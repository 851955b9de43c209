"""What a number is said with: a unit, "reps", minutes, a scale; and which numbers count nothing."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal

from core.reading.joining_words import JoiningWords
from core.reading.lexicon import AMOUNTS, ENGLISH, PLAIN, VOCABULARY, listed
from core.reading.set_numbers import CLOSED
from core.reading.spelling import is_english
from core.reading.token import Kind

_SECONDS = frozenset({"seconds", "second", "s"})
_HELD = frozenset({"hold", "plank", "planks", "hang", "wall", "side"})
_LEADING_TO_SIDES = frozenset({"each", "per", "a", "/", "both", "on", "left", "right", "every", "l", "r"})
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
SIXTY = Decimal(60)
_THIRTY = Decimal(30)
_NAMES_OF_COUNTS = frozenset({"left", "right", "l", "r", "side", "arm", "leg", "hand"})
_TO_COME = frozenset({"set", "sets", "round", "rounds", "exercise", "exercises", "station", "stations", "minutes", "to"})
_GOES_ON = frozenset({"then", "plus", "did"})


@dataclass(slots=True)
class NumberMarks(JoiningWords):
    """Marks numbers with what belongs to them."""

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
        glued_s = following == "s" and (self.tokens[after].glued or self._is_short_for_seconds(after))
        self.broken |= self._may_be_its_load(index, after) or (
            following in _SECONDS and (glued_s or following != "s") and self._is_of_the_clock(index)
        )
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
        } and (
            following != "of"
            or (len(self.terminals) > 1 and self._text(after + 2) not in CLOSED | {"", ",", ".", "!", "using", "@"})
        )
        held_in = self._text(after + 2)
        self.broken |= tank and after + 1 not in self.skip and not (is_english(held_in) or held_in in PLAIN)
        self.broken |= following == "per" and after not in self.skip and not self._is_number(after + 1)
        after = self._past_scale(index, after)
        scored = self.terminals[-1].type == "EFFORT"
        return after if after in self.skip or scored else self._after_number(after)

    def _is_short_for_seconds(self, at: int) -> bool:
        """Whether an "s" that stands apart from its number ends what was said of it, or leads to a side: "25 s each side"."""
        stopped = self._text(at + 1) == "in" and self._ends(at + 2)  # "45 s in, had to stop"
        return self._ends(at + 1) or stopped or self._text(at + 1) in _LEADING_TO_SIDES | _HELD

    def _may_be_its_load(self, index: int, at: int) -> bool:
        """Whether an "s" that stands apart ends a number that is the suggested load: "24 s", of dumbbells of 24."""
        apart = self._text(at) == "s" and not self.tokens[at].glued and self._ends(at + 1)
        return apart and self.tokens[index].value == self.load and not self._is_load_plural(index)

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
        if word in {"kg", "lb"} and (self._is_led_by_unit(after) or self._is_named_by_unit(after)):
            self._emit("UNIT_IS", after, word)
            return self._label_end(after + 1)
        if word in {"kg", "lb"}:
            name = "UNIT"
            length = 2 if next_word == "s" and self.tokens[after + 1].glued else 1
        elif self._is_short_for_reps(after):
            name = "REPS"
        elif word == "times" and self._is_number(after + 1):
            return after
        elif word in AMOUNTS["reps"] and not (self._is_number(after + 1 + (next_word == "=")) and self._is_labelled()):
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
            spare = self.skip.get(after + 1)
            if spare is None or spare.meaning != "mark-reserve":
                loaded |= self._follows_another_load(first)  # "then I took the 16 kg and did 6 more"
                loaded |= [terminal.type for terminal in self.terminals[-4:-1]] == ["LOAD_IS", "NUM", "AND"]
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

    def _is_named_by_unit(self, unit: int) -> bool:
        """Whether a unit between two numbers names the one after it, as the one before is named: "left=10 right=9 kg=12"."""
        sign = self._text(unit + 1)
        named = sign == "=" or (sign == ":" and self._text(unit - 3) in _NAMES_OF_COUNTS)
        if not named or self._text(unit - 2) != sign or self.tokens[unit].glued or not self._is_number(unit + 2):
            return False
        return sum(token.text in {"kg", "lb"} for token in self.tokens) == 1

    def _is_labelled(self) -> bool:
        """Whether the last number had its name before it, as in "weight 14 reps 12"."""
        return len(self.terminals) > 1 and self.terminals[-2].type.endswith("_IS")

    def _share_of_a_minute(self, minute: int) -> Decimal:
        """How much of "a minute" the words before it leave: "half a minute", "three quarters of a minute"."""
        words = [self._text(minute - n) for n in (1, 2, 3)]
        if "half" in words[: 1 + (words[0] == "a")]:
            return Decimal("0.5")
        if words[1:] not in (["of", "quarter"], ["of", "quarters"]) or words[0] != "a":
            return Decimal(1)
        while self.terminals and self.terminals[-1].type in {"OF", "NUM"}:
            self.terminals.pop()
        return Decimal("0.25") * (self.tokens[minute - 4].value if self._is_number(minute - 4) else 1)

    def _minutes(self, index: int, minutes: Decimal, after: int) -> int:
        """Such as "1 minute 10 seconds", "1m20", "a minute and a half": one duration; the index after it."""
        self.minutes = max(self.minutes, minutes)
        self.broken |= not self.hold and self._text(after) in {
            "left",
            "until",
            "till",
            "remaining",
            "late",
            "early",
            "away",
            "ago",
            "older",
            "walk",
            "drive",
        }
        seconds = minutes * SIXTY
        skip = 1 if self._text(after) == "and" else 0
        rest = after + skip
        if self._is_number(rest) and self.tokens[rest].value < SIXTY:
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
