"""What the small words between and beside numbers say: "at", "each", "left", "then"."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from core.reading.lexicon import AMOUNTS, EXERCISES, HURT, PLACES
from core.reading.side_words import (
    COUNTED_WITH,
    LIMBS,
    contrasts,
    is_of_others,
    is_same,
    joined_sides,
    leads,
    names_both,
    stands_alone,
)
from core.reading.surroundings import HELD_THINGS, PERHAPS
from core.reading.terminals import Terminals
from core.reading.token import Kind

if TYPE_CHECKING:
    from core.reading.phrases import Said

_LINKS = {
    "x": "BY", "by": "BY", "*": "BY", "times": "BY", "at": "AT", "@": "AT_SIGN", "for": "FOR", "with": "WITH", "using": "WITH",
    "and": "AND", "plus": "AND", "&": "AND", "then": "AND", "or": "OR", ",": "COMMA", "/": "SLASH", "-": "DASH",
    ";": "BREAK", ".": "BREAK", "!": "BREAK", "?": "BREAK", "in": "IN", "of": "OF", "on": "WITH", "|": "BREAK",
    "per": "FOR",
}  # fmt: skip
_SIDES = frozenset({"left", "l", "right", "r"})
_NOISES = frozenset(
    {"creaking", "creaks", "cracking", "cracks", "clunking", "crunching", "popping", "clicks", "snapping", "is", "feels", "felt"}
)
_RIGHT_THERE = frozenset({"before", "in", "after", "next", "beside", "behind", "away", "there", "here"})


@dataclass(slots=True)
class JoiningWords(Terminals):
    """Finds the terminal of a word by where it stands."""

    def _word(self, index: int) -> str | None:
        """The terminal of a word or mark that stands before a number or between two; None when it changes nothing."""
        word = self._text(index)
        ahead = self._label_end(index + 1)
        labels = self._is_number(ahead)
        counted = self._is_number(index - 1)
        if word in {"kg", "lb"}:
            return ("UNIT_IS" if labels else "UNIT_ONLY") if not counted else None
        named = counted and self.terminals[-2:-1] != [] and self.terminals[-2].type.endswith("_IS")  # "effort 9 reps 6 kilos 30"
        if word in {"reps", "rep", "repetitions", "repetition"} and labels and (named or not counted):
            self.broken |= self._text(index - 1) in {"at", "on", "by", "around", "after", "before", "from", "since"}  # "at rep 6"
            return "REPS_IS"
        if word in {"weight", "load"} and labels:
            own = self._text(index - 1) not in {"kg", "lb"} or self._text(ahead + 1) in {"kg", "lb"}
            return "LOAD_IS" if own else None  # "the 7 kg weight eight times"
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
        if word == "right" and self._text(index + 1) in _RIGHT_THERE and self._text(index - 1) in {"kg", "lb", "reps"}:
            return None  # "12 at 14kg right before lunch"
        if word in {"left", "l", "right", "r"}:
            following = self.skip.get(index + 1)
            tank = following is not None and following.meaning == "mark-reserve" and not self._is_side_of_count(index, following)
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
            held = self._text(index - 1) in {"kg", "lb"} or (
                self._text(index - 1) == "in" and self._text(index - 2) in {"kg", "lb"}
            )
            held |= self._text(index + 1) in HELD_THINGS
            return "HANDS" if held else "EACH"  # "weight on each dumbbell 12kg"
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

    def _is_side_of_count(self, index: int, reserve: Said) -> bool:
        """Whether the reserve after "left" has its own number, and the right is told: "10 left rir 2. 9 right rir 1"."""
        counted = self._is_number(index - 1) and self._names_next(reserve, self._label_end(reserve.last))
        return counted and any(token.text in {"right", "r"} for token in self.tokens)

    def _both_lead(self) -> bool:
        """Whether each side stands before a number, which it counts: "L 10 rir 2, R 9 rir 1"."""
        lead = {token.text[0] for i, token in enumerate(self.tokens[:-1]) if token.text in _SIDES and self._leads_a_number(i + 1)}
        return lead == {"l", "r"}

    def _leads_a_number(self, index: int) -> bool:
        """Whether a number stands at `index`, or after the limb or the colon there: "left arm: 10"."""
        while self._text(index) in LIMBS | {":"}:
            index += 1
        return self._is_number(index)

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
        if ahead_reserve is not None and ahead_reserve.meaning == "mark-reserve" and not counts_right and not self._both_lead():
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
        to_go = word == "left" and before in {"s", "seconds"} and (not self.sides or self._text(index + 1) == "to")
        self.broken |= to_go and not any(token.text in {"right", "r"} for token in self.tokens)  # "30 seconds left"
        return name if direct or counted else None
