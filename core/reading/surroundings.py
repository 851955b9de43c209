"""What stands around a number or a word beside one: whether it counts a pair, a set or a side, or names what comes next."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from typing import TYPE_CHECKING

from core.reading.lexicon import AMOUNTS, COURTESY, listed
from core.reading.set_numbers import CLOSED, SetNumbers
from core.reading.side_words import LIMBS, contrasts
from core.reading.token import Kind
from core.reading.whose import tells_of_a_first

if TYPE_CHECKING:
    from core.reading.phrases import Said

_LOAD_BEFORE_PLURAL = {
    "these", "them", "has", "have", "had", "with", "the", "using", "my", "at", "@", "pair", "on", "those", "x", "of", "used", "2",
}  # fmt: skip
_BETWEEN_LABEL = {"stay", "stays", "stayed", ":", "=", "was", "is", "-", "used", "were", "done", "of"}
HELD_THINGS = frozenset({"dumbbell", "dumbbells", "kettlebell", "kettlebells"})
"""What is held in a hand."""

_DETERMINED = frozenset({"the", "those", "these", "my", "them", "our", "a", "with"})
_OF_TIME = frozenset({"last", "first", "full", "final", "whole", "next", "extra", "another", "for", "in", "only", "just", "about"})
_ENDED = frozenset({"stopped", "dropped", "gave", "quit", "lasted", "failed", "stop", "let"})
_CARRYING = frozenset({"with", "using", "carrying", "carried", "holding", "held", "at", "on", "lugging", "lugged", "gripping"})
_OVER_TO = frozenset({"to", "onto", "into", "took", "grabbed", "picked", "down", "up"})
_OTHERS = frozenset({"me", "him", "her", "us", "you", "them"})
_OF_UNITS = frozenset("kglbs")
_TIMES = frozenset({"seconds", "second", "s", "minutes"})
_AFTER_TIME = frozenset({"left", "more", "remaining", "to", "rest", "break", "in"})
_AFTER_ONE_SET = frozenset(
    {"done", "down", "in", "finished", "completed", "complete", "was", "i", "did", "got", "made", ":", "-", ",", "."}
)
_SEVERAL = frozenset(map(Decimal, range(2, 9)))
TWO = Decimal(2)
_AFFIRMING = listed("words_quantities", "affirming")
_SURE = frozenset({"yes", "aye", "definitely", "sure", "certain", "counted"})
"""Words that say a number once more: "eleven, definitely eleven"."""

_MOST_IN_ONE = Decimal(6)
_OFF_THE_CLOCK = listed("words_quantities", "off_the_clock")
_GETTING_OUT = listed("words_quantities", "getting_out")
_RESTING = frozenset(
    {
        "sit",
        "sat",
        "rest",
        "rested",
        "resting",
        "wait",
        "waited",
        "lie",
        "lay",
        "breathe",
        "needed",
        "breather",
        "pause",
        "paused",
        "took",
        "takes",
    }
)
PERHAPS = frozenset({"maybe", "possibly", "perhaps", "probably", "about"})
"""Words between one number and the next, where it may be either."""

_SHORTEST_HOLD_S = 15
_TO_FAILURE = frozenset(
    {
        "quite",
        "really",
        "even",
        "actually",
        "fully",
        "go",
        "going",
        "get",
        "take",
        "took",
        "push",
        "pushed",
        "it",
        "all",
        "the",
        "way",
    }
)


@dataclass(slots=True)
class Surroundings(SetNumbers):
    """The words of a message, as far as they say what a number among them is."""

    def _counts_sets(self, each: Said) -> bool:
        """Whether "for all 3 sets" says how often the one count there is was done."""
        numbers = [i for i, token in enumerate(self.tokens) if token.kind is Kind.NUMBER and not each.first <= i < each.last]
        counts = [i for i in numbers if self._text(i + 1) not in {"kg", "lb", "s"}]
        counted = self.tokens[each.last - 1].kind is Kind.NUMBER and self._text(each.last) in AMOUNTS["sets"]
        return counted and len(counts) == 1 and counts[0] < each.first

    def _counts_each(self, hands: Said) -> bool:
        """Whether "each hand" is beside the reps, and no load: "12 reps each hand, weight 8 kg"."""
        first = hands.first + (self._text(hands.first) in {"for", "with", "on"})
        if self._text(first) not in {"per", "each", "every"}:
            return False
        if self._text(hands.first - 1) in AMOUNTS["reps"]:
            return True
        if self._is_number(hands.last) and self._text(hands.last + 1) in AMOUNTS["reps"]:
            return True  # "each hand 12 reps"
        weighed = any(token.text in {"kg", "lb"} for token in self.tokens)
        return self.sides and weighed and self._is_number(hands.first - 1)

    def _leaves_a_side(self, reserve: Said) -> bool:
        """Whether "reps left" counts those of the left side, because it goes on or the right side is counted as well."""
        words = [token.text for token in self.tokens[reserve.first : reserve.last]]
        if words not in (["reps", "left"], ["rep", "left"]):
            return False
        rights = [i for i, token in enumerate(self.tokens) if token.text in {"right", "r"}]
        return self._text(reserve.last) in LIMBS or any(
            self._is_number(at - 1) or self._text(at - 1) in AMOUNTS["reps"] or self._is_number(at + 1) for at in rights
        )

    def _is_denied(self, failure: Said) -> bool:
        """Whether a failure did not come about: "did not quite fail", "nearly failed", "did not go to failure"."""
        at = failure.first - 1
        while self._text(at) in _TO_FAILURE:
            at -= 1
        bare = self._text(failure.first) in {"fail", "failed", "failure", "to", "till", "until", "went", "reached", "hit", "all"}
        return bare and self._text(at) in {"not", "never", "nearly", "almost", "without"}

    def _is_in_my(self, reserve: Said) -> bool:
        """Whether "in me" leads to a thing of one's own, and nothing was left: "18 x 9kg in me slippers"."""
        if [token.text for token in self.tokens[reserve.first : reserve.last]] != ["in", "me"] or self._ends(reserve.last):
            return False
        small = self._is_number(reserve.first - 1) and self.tokens[reserve.first - 1].value <= _MOST_IN_ONE
        following = self.tokens[reserve.last]
        return not small and following.kind is Kind.WORD and following.text not in CLOSED

    def _ends(self, index: int) -> bool:
        """Whether nothing is said from here on that goes with what stands before: a mark, a courtesy, the end."""
        token = self.tokens[index] if index < len(self.tokens) else None
        return token is None or token.kind is Kind.MARK or token.apart or token.text in COURTESY | {"easily", "too", "maybe"}

    def _names_next(self, said: Said, ahead: int) -> bool:
        """Whether "rir" or "rpe" between two numbers names the one after it: "6 rir1", "8 rpe 9", but "2rir 10"."""
        first = self.tokens[said.first]
        short = first.text in {"rir", "rpe"} and all(self._text(i) in {":", "="} for i in range(said.first + 1, said.last))
        ends = self.tokens[min(ahead, len(self.tokens) - 1)].glued and self._text(ahead + 1) in {"", ",", ".", "!"}
        return short and self._is_number(ahead) and (not first.glued or ends)  # "22kgx8rpe9", but "2rir10 at 20kg"

    def _label_end(self, index: int) -> int:
        """The index after the words that join a label to its number ("weight: 20", "reps was 11")."""
        while self._text(index) in _BETWEEN_LABEL:
            index += 1
        return index

    def _is_said_again(self, index: int) -> bool:
        """Whether a number only repeats in words what was just said in figures, or the other way: "9! nine!", "12 (twelve)"."""
        if [token.text for token in self.tokens[index + 1 : index + 4]] == ["of", "my", "life"]:
            return any(self._is_number(i) and self.tokens[i].value == self.tokens[index].value for i in range(index))
        if self._is_affirmed(index) or self._is_stuttered(index):
            return True
        first = index - 1
        while first >= 0 and (self.tokens[first].kind is Kind.MARK or self._text(first) in AMOUNTS["reps"]):
            first -= 1
        if not self._is_number(first) or first == index - 1 or self._text(first - 1) in {"of", "/"}:
            return False  # "effort 8 out of 10. Ten reps"
        said, again = self.tokens[first], self.tokens[index]
        return (
            said.value == again.value and said.worded != again.worded and self._text(index + 1) not in {"kg", "lb", "left", "more"}
        )

    def _is_stuttered(self, index: int) -> bool:
        """Whether the number is said twice in a row, as one stammers: "ten ten reps with the twelve the twelve kilo"."""
        ahead = index + 1 + (self._text(index + 1) == "the" == self._text(index - 1))
        if not self._is_number(ahead) or not (self.tokens[index].worded and self.tokens[ahead].worded):
            return False
        named = self._text(ahead + 1) in ({"kg", "lb"} if ahead > index + 1 else AMOUNTS["reps"])
        value = self.tokens[index].value
        return named and value == self.tokens[ahead].value and (ahead > index + 1 or value != self.load)

    def _is_affirmed(self, index: int) -> bool:
        """Whether the number before is said once more after a "yes" of one's own: "um ten, yeah, ten at twelve kilos"."""
        first = index - 1
        while first >= 0 and (self.tokens[first].kind is Kind.MARK or self._text(first) in _AFFIRMING):
            first -= 1
        told = [self._text(i) for i in range(first + 1, index)]
        affirmed = bool(_SURE & set(told)) or told[-2:] == ["it", "was"]  # "I counted nine and it was nine"
        affirmed = affirmed and self._text(index + 1) not in {"kg", "lb", "s", "left", "more"}
        return affirmed and self._is_number(first) and self.tokens[first].value == self.tokens[index].value

    def _counts_what_follows(self, index: int) -> bool:
        """Whether the number at `index` is how many counts are told after it."""
        counts = [
            i for i in range(index + 1, len(self.tokens)) if self._is_number(i) and self._text(i + 1) not in {"kg", "lb", "s"}
        ]
        return len(counts) > 1 and self.tokens[index].value == len(counts)

    def _follows_another_load(self, index: int) -> bool:
        """Whether the number at `index` is done with a load right before it, which is not the first one told."""
        at = index - 1
        while self._text(at) in _GETTING_OUT:
            at -= 1
        apart = self._text(at) == ","
        if at == index - 1 and not apart:
            return False
        at -= apart
        if apart or self._text(at) == "s":
            return self._text(at) in {"kg", "lb", "s"} and self._is_changed_to(at - 1)
        return self._text(at) in {"kg", "lb"} and sum(token.text in {"kg", "lb"} for token in self.tokens[: at + 1]) > 1

    def _is_changed_to(self, index: int) -> bool:
        """Whether the number at `index` is a load that was gone over to after another: "dropped to 16kg", "onto the 14s"."""
        lead = index - 1
        while self._text(lead) in _DETERMINED | {"pair", "of"}:
            lead -= 1
        return self._is_number(index) and self._text(lead) in _OVER_TO and any(self._is_number(i) for i in range(lead))

    def _is_rested(self, index: int) -> bool:
        """Whether "a minute" at `index` was a rest, or to come, and no set: "had to sit down for a minute", "left in a minute"."""
        before = {self._text(i) for i in range(max(0, index - 5), index)}
        soon = [self._text(index - 2), self._text(index - 1)] == ["in", "a"] and not self.hold
        return soon or (self._text(index - 1) in {"a", "the"} and bool(before & _RESTING))

    def _is_one_set(self, index: int) -> bool:
        """Whether "one set" begins what is told of the first set: "one set 12 reps, second set 10", "one set done, 12 at 20kg"."""
        ahead = index + 2
        while self._text(ahead) in _AFTER_ONE_SET:
            ahead += 1
        return self.tokens[index].value == 1 and self._text(index + 1) in {"set", "round"} and self._is_number(ahead)

    def _gathers_counts(self, index: int) -> bool:
        """Whether "all three" speaks of the counts told before it: "12, 11, 9, all three at 14kg"."""
        before = [i for i in range(index) if self._is_number(i) and self._text(i + 1) not in {"kg", "lb", "s"} | AMOUNTS["sets"]]
        return len(before) > 1 and self._text(index - 1) == "all" and self.tokens[index].value == len(before)

    def _gathers_sets(self, index: int) -> bool:
        """Whether "each" speaks of the sets told before it, and of no side: "ten and then nine, each of them with 4.5 kg"."""
        before = [
            i
            for i in range(index)
            if self._is_number(i)
            and self._text(i + 1) not in {"kg", "lb", "s"} | AMOUNTS["sets"]
            and self._text(i - 1) not in {"set", "round"}
        ]
        ahead = index + 1
        while self._text(ahead) in {"of", "them", "these", "those", "one", "was", "were", "done"}:
            ahead += 1
        loaded = self._text(ahead) in {"with", "at", "@", "using"} and self._is_number(ahead + 1)
        beside = self._is_number(index - 1) or self._text(index - 1) in AMOUNTS["reps"]
        return len(before) > 1 and loaded and not beside

    def _is_next_of_several(self, index: int) -> bool:
        """Whether "the next" is the set after one that was called the first: "10 for the first set and 10 for the next"."""
        return self._text(index - 1) in {"the", "my"} and tells_of_a_first(self.tokens[:index])

    def _past_numbers_of_sets(self, index: int) -> int | None:
        """The index after the numbers that sets are told by, told after them: "sets 1 and 2: 10, 8"; None for others."""
        if self._is_number(index - 1):
            return None  # "3 sets 10 and 9"
        ahead, last = index + 1, 0
        while self._is_number(ahead) and self.tokens[ahead].value == last + 1:
            last += 1
            ahead += 1
            while self._text(ahead) in {"and", "&", ",", "-", "to"} and self._is_number(ahead + 1):
                ahead += 1
                if self._text(ahead - 1) in {"-", "to"}:
                    last = int(self.tokens[ahead].value) - 1
        counted = sum(self._is_number(i) and self._text(i + 1) not in {"kg", "lb", "s"} for i in range(ahead, len(self.tokens)))
        return ahead if last > 1 and counted >= last else None

    def _counts_a_pair(self, index: int) -> bool:
        """Whether the number at `index` only says that both hands held one: "with two dumbbells of 8 kilos"."""
        held = self._text(index + 3) in HELD_THINGS and self._text(index + 2) in {"kg", "lb"}
        if self.tokens[index].value == TWO and self._is_number(index + 1) and held and not self._is_number(index - 1):
            return True  # "two fifteen pound dumbbells"
        ahead = index + 2
        while self._text(ahead) in {"of", "at", "weighing", "each", ","}:
            ahead += 1
        weighed = self._is_number(ahead) and self._text(ahead + 1) in {"kg", "lb", "s"}
        return self.tokens[index].value in {1, 2} and self._text(index + 1) in HELD_THINGS and weighed

    def _counts_set(self, index: int) -> bool:
        """Whether a "set" after a number is one of so many: "3 set, every set 10", "3 set 10 reps"."""
        several = self._text(index) == "set" and self.tokens[index - 1].value in _SEVERAL
        named = self._is_number(index + 1) and self._text(index + 2) in AMOUNTS["reps"]
        return several and (self._text(index + 1) in {",", "each", "every"} or named)

    def _is_short_for_reps(self, index: int) -> bool:
        """Whether a letter after a number stands for reps: "12r", "12 r" where no side is asked for, "14kg 8x"."""
        if self._text(index) == "x":
            return self.tokens[index].glued and self._is_count_after_load(index)
        alone = self.tokens[index].glued or not self.sides
        return self._text(index) == "r" and alone and not self._speaks_of_left() and not self._is_numbered_in_turn(index)

    def _is_count_after_load(self, cross: int) -> bool:
        """Whether the cross ends a count: "14kg 8x, my arm", and not "14kg 8x2"."""
        return self._text(cross - 2) in {"kg", "lb"} and not self._is_number(cross + 1) and not self._is_number(cross + 2)

    def _is_paired(self, letter: str) -> bool:
        """Whether a number stands beside the letter of the other side, too."""
        other = "r" if letter == "l" else "l"
        return any(t.text == other and (self._is_number(i - 1) or self._is_number(i + 1)) for i, t in enumerate(self.tokens))

    def _speaks_of_left(self) -> bool:
        return any(token.text in {"l", "left"} for token in self.tokens)

    def _is_load_plural(self, index: int) -> bool:
        """Whether "16s" is a pair of dumbbells rather than seconds."""
        before, after = self._text(index - 1), self._text(index + 2)
        ended = before == "at" and any(token.text in _ENDED for token in self.tokens[:index])
        if self._is_carried(index):
            return True  # "farmers carry, 40 seconds with the 24s"
        if before in {"in", "held", "hold", "for", "plank", "lasted"} or self.hold or ended:
            return False
        if before in {"left", "right", "l", "r"} and self.tokens[index].value >= _SHORTEST_HOLD_S:
            return False  # "left 25s right 30s"
        if self._is_time_of_a_side(index):
            return False
        if self.tokens[index].value == self.load and self._leads_to_reps(index + 2):
            return True  # "25s, 12 reps"
        if self.tokens[index].value == self.load and before == "," and self._is_number(index - 2):
            return True  # "10 then 9 then 9, 24s"
        several = sum(t.text == "s" and t.glued and self._is_number(i - 1) for i, t in enumerate(self.tokens)) > 1
        several = several and not any(t.text == "not" for t in self.tokens)
        if before == "is" and not self.tokens[index - 1].raw:
            return True  # "my brother's 30s"
        if before not in _OF_TIME and before.isalpha() and self._text(index - 2) in _DETERMINED:
            return True  # "with the new 26s"
        if (
            self.tokens[index].worded
            or several
            or before in _LOAD_BEFORE_PLURAL
            or after in {"x", "for", "dumbbells", "dumbbell", "are", "were"}
        ):
            return True
        return self._is_number(index - 1) or self.tokens[index].value < _SHORTEST_HOLD_S

    def _is_time_of_a_side(self, index: int) -> bool:
        """Whether "30s" is how long one side was held, as every number is a time: "30s left side, 35s right side"."""
        side = index + 2
        while self._text(side) in {"on", "the", "my"}:
            side += 1
        long = self.tokens[index].value >= _SHORTEST_HOLD_S and self.tokens[index].value != self.load
        if not long or self._text(side) not in {"left", "right", "l", "r"}:
            return False
        return all(self._text(i + 1) in {"s", "kg", "lb"} for i, token in enumerate(self.tokens) if token.kind is Kind.NUMBER)

    def _is_carried(self, index: int) -> bool:
        """Whether "24s" is what was carried for a time that is told besides: "with the 24s for 40 seconds"."""
        first = index - 1
        while self._text(first) in _DETERMINED - {"with", "a"} or self._text(first) in {"pair", "of"}:
            first -= 1
        timed = any(token.text in _TIMES and i != index + 1 and self._is_number(i - 1) for i, token in enumerate(self.tokens))
        return timed and self._text(first) in _CARRYING and self._text(index + 2) not in _AFTER_TIME

    def _is_compared(self, index: int) -> bool:
        """Whether a number tells a difference, or is damaged: "weaker by 2 reps", "got 12 reps on me", "20 lg x 12"."""
        before, following, beyond = self._text(index - 1), self._text(index + 1), self._text(index + 2)
        named = following in AMOUNTS["reps"]
        apart = named and (
            (before == "by" and not self._is_number(index - 2)) or (beyond == "on" and self._text(index + 3) in _OTHERS)
        )
        return apart or (following not in {"kg", "lb"} and 1 < len(following) <= len("lgs") and set(following) <= _OF_UNITS)

    def _leads_a_set(self, index: int) -> bool:
        """Whether a count is told at `index`, after "one set": "one set 12 reps, second set 10"."""
        ahead = index + (self._text(index) in {",", ":", "-"})
        return self._is_number(ahead)

    def _is_the_station(self, minute: int) -> bool:
        """Whether "the minute" is how long every station lasts, beside a count: "finished the minute and counted thirteen"."""
        counted = any(token.kind is Kind.NUMBER for token in self.tokens)
        timed = any(token.text in {"seconds", "s"} for token in self.tokens)
        return counted and not timed and self._text(minute - 1) in {"the", "my", "your"} and not self._is_number(minute - 2)

    def _leads_to_reps(self, index: int) -> bool:
        """Whether the first number of the message has just been said, and a number of reps follows."""
        first = sum(token.kind is Kind.NUMBER for token in self.tokens[:index]) == 1
        count = index + (self._text(index) == ",")
        return first and self._is_number(count) and self._text(count + 1) in AMOUNTS["reps"] | {"", ",", ".", "!"}

    def _is_of_the_clock(self, index: int) -> bool:
        """Whether seconds are no set: a rest, a tempo, a clock that is wrong: "10 seconds fast", "3 second pauses"."""
        beside = self._text(index + 2)
        if beside in {"off", "down"} and self._text(index - 1) in {"of", "the", "my", "those", "these", "them"}:
            return False  # "a pair of 12s off the rack"
        timed = any(token.text == "tempo" for token in self.tokens)
        return timed or beside in _OFF_THE_CLOCK or (beside == "hold" and self._text(index + 3) in {"at", "on"} and not self.hold)

    def _may_be_one_more(self, index: int) -> bool:
        """Whether a comma or a "maybe" parts two numbers of what was left: "one, possibly two left"."""
        ahead = index + 1 if self._text(index) in PERHAPS else index + 2
        hedged = self._text(ahead - 1) in PERHAPS and self._is_number(ahead)
        after = self.skip.get(ahead + 1)
        left = self._text(ahead + 1) in {"left", "more"} or (after is not None and after.meaning == "mark-reserve")
        return hedged and left and self.tokens[ahead].value == (self.tokens[index - 1].value or 1) + 1

    def _corrects(self, index: int) -> bool:
        """Whether "not" at `index` rejects a number or a unit that follows."""
        ahead = index + 1
        while self._text(ahead) in {"the", "a", "an", "at", "with", "be"}:
            ahead += 1
        return self._is_number(ahead) or self._text(ahead) in {"kg", "lb"} or contrasts(self.tokens, ahead)
