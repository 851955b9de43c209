"""What set phrases say of the numbers beside them: what was left, sides, effort, nought; or nothing there."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from core.reading.failed_things import fails_another_thing
from core.reading.held_things import holds_another_thing
from core.reading.lexicon import AMOUNTS, HURT
from core.reading.number_marks import NumberMarks
from core.reading.set_numbers import CLOSED
from core.reading.side_words import counted_left, is_beside_number, is_busy, is_remark, is_where
from core.reading.surroundings import HELD_THINGS, PERHAPS
from core.reading.whose import could_and_did

if TYPE_CHECKING:
    from core.reading.phrases import Said

_MARKS = {
    "mark-reserve": "RESERVE", "mark-could": "COULD", "mark-failure": "FAILURE", "mark-bodyweight": "BODYWEIGHT",
    "mark-each": "EACH", "mark-hands": "HANDS", "mark-same": "SAME", "mark-held": "HELD", "mark-label": "LABEL",
    "mark-not": "NOT", "mark-left": "LEFT_SIDE", "mark-right": "RIGHT", "mark-effort": "EFFORT", "mark-nought": "NOUGHT",
    "mark-load": "LOAD_IS",
}  # fmt: skip
_SILENT = {"mark-amend", "mark-sorry", "mark-was", "mark-plain", "mark-whole"}
_POINTING = frozenset({"the", "this", "that", "last", "no", "each", "every", "which", "any"})
_HELD_UP = frozenset({"form", "grip", "technique", "posture", "balance", "nerve"})
"""What held while the set went on, and was not held for a time: "form held for 8"."""

LETTERED = {"a": "first", "b": "second", "c": "third", "d": "fourth"}


@dataclass(slots=True)
class PhraseMarks(NumberMarks):
    """Marks set phrases where they say something of a set."""

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
        if name == "EACH" and self._text(said.last) in HELD_THINGS:
            name = "HANDS"  # "weight on each dumbbell 12kg"
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
        named_next = named_next or self._goes_by_names(ahead) or self._names_next(said, ahead)
        if name in {"RESERVE", "EFFORT"} and (not counted or named_next):
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
            return (
                hurts or named or is_where(self.tokens, said) or is_remark(self.tokens, said, self.skip)
            )  # "elbow is barking, right one"
        if name == "LABEL":
            return self._is_side_first(said)
        if name == "HELD" and (
            holds_another_thing(self.tokens, said.first, said.last)
            or self._text(said.first - 1) in _HELD_UP
            or self._text(said.last) == "please"
        ):
            return True
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
        if name == "FAILURE" and (self._is_all_there_was(said) or fails_another_thing(self.tokens, said.first, said.last)):
            return True
        return name == "FAILURE" and (self._is_denied(said) or (self.hold and self._ends_a_hold(said)))  # "nearly failed"

    def _is_all_there_was(self, failure: Said) -> bool:
        """Whether "all I had" tells of a thing that is named: "carry on luggage is all I had", but "that was all I had"."""
        words = [token.text for token in self.tokens[failure.first : failure.last]]
        subject = self._text(failure.first - 1)
        named = subject.isalpha() and not self._is_number(failure.first - 1)
        return (
            words[:3] in (["is", "all", "i"], ["was", "all", "i"])
            and named
            and subject not in CLOSED | AMOUNTS["reps"] | {"kg", "lb"}
        )

    def _goes_by_names(self, ahead: int) -> bool:
        """Whether every figure has its name before it, as the first one has: "kilos 14 reps 12 reserve 2"."""
        closed = self._ends(ahead + 1) or self._text(ahead + 1) in AMOUNTS["rpe"]
        closed |= self._text(ahead + 1) in {"kg", "lb", "reps"} and self._is_number(self._label_end(ahead + 2))
        return bool(self.terminals) and self.terminals[0].type.endswith("_IS") and self._is_number(ahead) and closed

    def _is_side_first(self, label: Said) -> bool:
        """Whether "first" only says which side was done before the other, and numbers no set: "right side first, ten"."""
        first = [token.text for token in self.tokens[label.first : label.last]] == ["first"]
        labels = sum(said.meaning == "mark-label" for said in self.skip.values())
        return first and labels == 1 and self.terminals[-1:] != [] and self.terminals[-1].type in {"LEFT_SIDE", "RIGHT"}

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
        return self._text(index + 1) in LETTERED and {"a", "b"} <= sets and self._is_number(self._label_end(index + 2))

    def _tells_what_was_possible(self, could: Said) -> bool:
        """Whether "was possible" tells how many were done, no others being told before it: "only 6 was possible"."""
        words = {token.text for token in self.tokens[could.first : could.last]}
        if "possible" not in words or words & {"more", "extra"}:
            return False
        told = [i for i in range(len(self.tokens)) if self._is_number(i) and self._text(i + 1) not in {"kg", "lb", "s"}]
        return told == [could.first - 1]
