"""A list of things to lift, word by word: "8, 12 and 16 kg dumbbells", "two pairs: 8 and 12 kg", "kettlebells of 16 and 20".

A thing is a load with a kind before it ("dumbbells of 5 and 8 kg") or after it ("5 and 8 kg dumbbells"), or a kind alone. A kind
that goes before stands in the list as a thing of its own until its first load takes its place.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from decimal import Decimal
from typing import TYPE_CHECKING

from core.reading.gear_counts import MOST_TOGETHER, Counts
from core.reading.gear_things import Lead, Thing, have
from core.reading.gear_words import KINDS, OF, ONE, PAIRS, PARTS, PIECES, SKIPPED, UNITS, WITHIN
from core.reading.lexicon import listed
from core.reading.token import Kind
from core.units import Unit

if TYPE_CHECKING:
    from core.reading.acts import Have

_NOUNS = listed("words_gear", "nouns")
_UNWEIGHED = frozenset({"mat", "mats", "chair", "chairs", "towel", "towels", "step", "stool", "rope", "ball", "roller"})
_LEADING = frozenset({"dumbbell", "kettlebell", "plate"})
_NEGATIONS = frozenset({"no", "not", "without", "never", "zero"})
_AFTER_NEGATION = frozenset({"have", "got", "get", "any", "a", "an", "the", "own", "yet", "even", "one", "single", "more", "had"})
_POINTING = frozenset({"the", "my", "that", "this", "those", "these", "same", "our", "them"})
_NO_LOAD_AFTER = frozenset({"for", "by", "number", "station", "round", "page", "floor", "size", "room"})
_AFTER_BARE_LOAD = (
    listed("words_gear", "list_words") | PARTS | WITHIN | PAIRS | UNITS | {"x", "-", "!", "?", ")", "in", "[", "]"}
) - {"of"}
_AFTER_KIND = PARTS | {"with", "in", "at", "here", "there", "now", "too", "plus", "from", "as", "x", "only", "that", "i"}
_ONLY = frozenset({"only", "just"})
_TELLING_HOW_MANY = frozenset({"got", "have", "is", "are", "na", "just", "only", "about"})
_SEVERAL = listed("words_gear", "several")
_BROKE = frozenset({"broke", "snapped", "cracked", "died", "split", "vanished", "disappeared", "busted", "bust"})
_GONE = _BROKE | {"broken", "gone", "stolen", "lost", "sold", "knackered", "nicked", "missing"}
_LOST = listed("words_gear", "parted_with")
ENDS = 2
_MOST_COUNT = 40
_MOST_TIMES = 10


@dataclass(slots=True)
class Listing(Counts):
    """Reads a list of things token by token."""

    things: list[Thing] = field(default_factory=list)
    negated: set[int] = field(default_factory=set)
    until: int = 0
    _count: int | None = None
    _pair: bool = False
    _pairs: int | None = None
    _lead: Lead | None = None
    _leads: list[Lead] = field(default_factory=list)
    _load_end: int = -1
    _unit: Unit | None = None
    _each: int | None = None
    _paired_from: list[tuple[int, int]] = field(default_factory=list)

    def read(self) -> bool:
        """Take every token; whether each number found its place."""
        index = self.first
        while index < self.last:
            following = self._step(index)
            if following is None:
                return False
            index = following
        return True

    def _step(self, index: int) -> int | None:
        """Take the token at `index`; the index to go on from, None when its number cannot be explained."""
        token, word = self.tokens[index], self.text(index)
        if (shared := self.shared(index)) is not None and (after := self._share(*shared)) is not None:
            return after
        if word in {"between", "nothing"} and "between" in {word, self.text(index + 1), self.text(index + 2)}:
            return self.past_between(index)
        if word in _NEGATIONS | _LOST:
            return self._past_negation(index)
        if self.is_number(index) and self.text(index + 1) in _UNWEIGHED:
            self._part()
            return index + 2  # "and 1 mat"
        number = self.number(index)
        if number is not None:
            return self._number(index, *number)
        if token.kind in {Kind.ODD, Kind.CLOCK, Kind.ORDINAL, Kind.NUMBER} or self.spans(index):
            return None
        if word in PAIRS or (word == "couple" and self.text(index + 1) == "of"):
            return self._take_pair(index)
        if word in UNITS:
            self._unit = Unit(word)
            self.until = index + 1
        elif word in ONE:
            self._take_one(index)
        elif word == "both" and self.is_number(index + 2 if self.text(index + 1) in _POINTING else index + 1):
            self._count = 2
        elif word == "both" and self.text(index + 1) in _POINTING and self.kind_at(index + 2) and self.text(index + 3) != "and":
            self._count = 2  # "both my dumbbells are 9 kg"
        elif self.kind_at(index) is not None:
            return self._kind(index, KINDS[word])
        elif word in PARTS and word not in {"(", ")"}:
            self._part()
        return index + 1

    def _share(self, count: int, after: int, paired: bool, leads: bool) -> int | None:  # noqa: FBT001 - as `shared` tells it
        """Give a count to all things, those before it or those to come; the index after it, None when there are none."""
        loads = sum(thing.load is not None for thing in self.things)
        if not loads and leads:
            self._each = count
        elif not loads or (leads and self.text(after) != ":") or (self.says_both(after) and loads > 1):
            return None
        else:
            self._count_all(count, paired=paired)
        self.until = after
        return after

    def _take_one(self, index: int) -> None:
        if self.text(index - 1) in {"each", "every"} or self.text(index + 1) in _SEVERAL:
            return  # "two dumbbells, each one is 14 kg", "a few dumbbells, a pair of 5s"
        if self._counts_only_one(index):
            self._count_all(1)
            return
        ahead = index + 2 if self.text(index + 1) in {"of", "with", "at"} else index + 1
        if self.text(ahead) in {"each", "them"}:
            self._count_all(1)
        elif self.is_number(self.past_describing(ahead)) or self.described_kind(ahead) or self.text(ahead) in {"(", ":"}:
            self._count, self._pairs = 1, None

    def _counts_only_one(self, index: int) -> bool:
        """Whether "one" counts the only thing with a load before it: "10 kg dumbbell, only one", "a 16, just the one piece"."""
        lead = index - 2 if self.text(index - 1) in {"the", "a"} else index - 1
        after = index + 2 if self.text(index + 1) in PIECES else index + 1
        alone = len([thing for thing in self.things if thing.load is not None] or self.things) == 1
        return alone and self.text(lead) in _ONLY and not self.is_number(after) and not self.kind_near(after)

    def _part(self) -> None:
        for thing in self.things:
            thing.closed = thing.closed or thing.paired
        self._count = None

    def _past_negation(self, index: int) -> int | None:
        """The index after "no bench" or "do not have a bench"; None when what is not there has a load."""
        at = index + 1
        while self.text(at) in _AFTER_NEGATION | SKIPPED | {"of", "my", "out", "away"}:
            at += 1
        if self.is_number(at) and self.text(at + 1) in UNITS | {"s"}:
            return None
        if self.kind_at(at) is None and self.text(at) not in _NOUNS:
            return index + 1
        listed = self.text(at + 1) == "and" and (self.text(at + 2) in {"both", "my", "the"} or self.is_number(at + 2))
        if listed and self.text(index) in _LOST:
            return None  # "lent out my bench and both 14s"
        self.negated.add(index)
        while self.text(at + 1) in {"or", "and", "nor"} and self.kind_at(at + 2) is not None:
            at += 2
        return at + 1

    def _take_pair(self, index: int) -> int | None:
        before = self.things[-1] if self.things else None
        if self.text(index) == "couple":
            self._count = 2
            return index + 2
        single = before is not None and before.count == 1 and self.text(index) == "pair" and self._load_end == index
        if before is not None and single and self.text(index + 1) != "of":
            before.count = None  # "a 12kg pair"
        if before is not None and self._load_end == index and before.count in {None, 1} and self.described_pair(index):
            before.count, before.paired = 2, True  # "a 6kg pair of dumbbells"
            self._load_end = self.until = index + 2
            return index + 2
        if before is not None and self._load_end == index and before.count is None and self.text(index + 1) != "of":
            for thing in self.things if self.text(index) == "pairs" else [before]:
                if thing.count is None:
                    thing.count, thing.paired = 2, True
            self.until = index + 1
            return index + 1
        if before is not None and before.kind is not None and before.load is None and self.text(index - 1) == "(":
            before.count, self.until = before.count or 2, index + 1  # "handles (pair)"
            return index + 1
        if before is not None and before.load is not None and before.count is None and self.ends_at(index + 1):
            for thing in self.things if self.text(index) == "pairs" else []:
                if thing.kind == before.kind and thing.load is not None and thing.count is None:
                    thing.count = 2
            before.count, before.closed, self.until = 2, True, index + 1  # "8 kg dumbbells (pair)"
            self._count = None
            return index + 1
        ahead = index + 1
        while self.text(ahead) in SKIPPED | ONE | OF | {"each"}:
            ahead += 1
        if self.text(index + 1) == "of" and not (self.is_number(ahead) or self.kind_at(ahead)):
            return None  # "a pair of socks"
        self._pairs = self._pairs or (0 if self.text(index) != "pair" or self.text(index + 1) == "each" else None)
        self._pair, self._count = True, None
        return index + 1

    def _number(self, index: int, value: Decimal, after: int) -> int | None:
        if (
            self.text(index - 1) == "("
            and self.text(after) == ")"
            and value in {self._count or 1, Decimal(ENDS)}
            and self._load_end < 0
        ):
            return after + 1  # "one (1) dumbbell"
        if self._is_count(index, value):
            return self._take_count(index, int(value))
        bare = self.text(after) not in UNITS | {"s"} and not self.kind_near(after)
        if (
            self.text(index - 1) in _NO_LOAD_AFTER
            or (self.text(after) == "times" and not self.is_number(after + 1))
            or (bare and after < self.last and self.text(after) not in _AFTER_BARE_LOAD and not self.is_number(after))
        ):
            return None
        if self._counts_at_last(index, value):
            self.things[-1].count, self.until = int(value), after
            return after
        thing = Thing(value, count=self._count, paired=self._pair or self._pairs is not None)
        self._count, self._pair = None, False
        after = self._take_measure(thing, after)
        self._follow_lead(thing, index)
        thing.count = 2 if thing.paired and thing.count is None else thing.count
        self.things.append(thing)
        self._load_end = self.until = after
        return after

    def _take_measure(self, thing: Thing, after: int) -> int:
        """The unit, plural and number of times that follow a load; the index after them."""
        if self.text(after) in UNITS:
            thing.unit = Unit(self.text(after))
            after += 1
        if self.text(after) == "s":
            thing.plural = True
            after += 1
        cross = after + 1 if self.text(after) == "(" else after
        if self.text(cross) in {"x", "times"} and (times := self.number(cross + 1)) is not None and times[0] <= _MOST_TIMES:
            thing.count = int(times[0])
            after = cross + 2
        elif self.text(after) == "(" and self.text(after + 2) == ")" and self._counts_in_brackets(thing, after + 1):
            thing.count = int(self.tokens[after + 1].value)
            after += 3
        elif self.is_number(after) and self._counts_behind(thing, after):
            thing.count = int(self.tokens[after].value)
            after += 2 if self.text(after + 1) in PIECES else 1
        elif (pieces := self.pieces(after + 1 if self.text(after) in {"-", ":", ","} else after)) is not None:
            thing.count, after = pieces
        elif [self.text(after + i) for i in range(3)] == ["(", "one", ")"]:
            thing.count = 1
            after += 3
        elif self.text(after) == "one" and self.ends_at(after + 1):
            thing.count = 1
            after += 1
        return after

    def _counts_in_brackets(self, thing: Thing, index: int) -> bool:
        """Whether a number in brackets behind a load counts it: "plates 1.25 kg (8)"."""
        token = self.tokens[index]
        return thing.unit is not None and token.kind is Kind.NUMBER and token.value % 1 == 0 and 1 <= token.value <= _MOST_COUNT

    def _counts_behind(self, thing: Thing, index: int) -> bool:
        """Whether a number in words behind a load counts it: "dumbbell 8kg two"."""
        token = self.tokens[index]
        return (
            thing.unit is not None
            and token.worded
            and 1 <= token.value <= MOST_TOGETHER
            and self.ends_at(index + 2 if self.text(index + 1) in PIECES else index + 1)
        )

    def _follow_lead(self, thing: Thing, index: int) -> None:
        """Take the kind that went before, unless the kind of this load follows it."""
        lead = self._lead
        if lead is None:
            return
        strong = bool(lead.taken) or self._leads_to(self.things.index(lead.holder), index) or self._is_told_after(lead, index)
        if not strong and self.tail_ahead(index):
            self._lead = None
            return
        if lead.holder in self.things and not lead.taken:
            self.things = [one for one in self.things if one is not lead.holder]
        thing.kind = lead.kind
        thing.paired = thing.paired or lead.pairs
        lead.taken.append(thing)

    def _is_told_after(self, lead: Lead, index: int) -> bool:
        """Whether the number at `index` only adds the load of a thing that was counted: "one kettlebell, 12 kg, and ..."."""
        counted = lead.holder.count is not None and lead.holder is self.things[-1]
        parted = self.text(index - 1) == "," and self.kind_at(index - 2) is not None and self.text(index + 1) in UNITS
        return counted and parted and self.text(index + 2) in {",", "", ";"}

    def _leads_to(self, holder: int, index: int) -> bool:
        """Whether the kind right before the number at `index` is the last thing said and leads to it: "dumbbells of 5"."""
        at = index - 1
        while self.text(at) in OF | ONE | PAIRS or (self.is_number(at) and self.text(at + 1) in {"of", "x"} | PAIRS):
            at -= 1
        return holder == len(self.things) - 1 and self.kind_at(at) is not None

    def _take_count(self, index: int, count: int) -> int:
        self._count = count
        following = self.text(index + 1)
        if following in PAIRS:
            self._count, self._pairs = None, count if count > 1 else None
            self._pair = True
            self._paired_from.append((len(self.things), count))
            if self.text(index + 2) == "each":
                self._pairs = 0
            return index + 2
        if following == "of" and self.text(index + 2) in {"each", "them", "those", "these"}:
            self._count_all(count)
            self.until = index + 3
            return index + 3
        self._pairs = None
        if following in PIECES and index + 2 >= self.last and [thing.count for thing in self.things] == [None]:
            self._count_all(count)  # "dumbbells 5kg each, two numbers"
        return index + 2 if following in PIECES | {"x"} else index + 1

    def _count_all(self, count: int, *, paired: bool = False) -> None:
        for thing in self.things:
            if thing.count is None and thing.kind not in {"bench", "band"}:
                thing.count, thing.paired = count, paired or thing.paired
        if self._lead is not None and not self._lead.taken and self._lead.count is None:
            self._lead.count = count  # "dumbbells: four of them, all 11 kg"
        self._count = None

    def _counts_at_last(self, index: int, value: Decimal) -> bool:
        """Whether a number that ends the list counts its one thing: "12 kg dumbbells, two"."""
        return (
            index + 1 >= self.last
            and len(self.things) == 1
            and self.things[0].load is not None
            and self.things[0].kind is not None
            and self.things[0].count is None
            and self.things[0].unit is not None
            and (self.text(index - 1) == "," or (self.text(index - 1) in _TELLING_HOW_MANY and self.tokens[index].worded))
            and value % 1 == 0
            and 1 <= value <= MOST_TOGETHER
            and (self.tokens[index].worded or value <= ENDS)
        )

    def _is_count(self, index: int, value: Decimal) -> bool:
        """Whether the number at `index` counts things: "two 12s", "4 x 1.25", "2 10kg dumbbells", "three bands"."""
        token, ahead = self.tokens[index], index + 1
        if "," in token.raw or value % 1 or not 1 <= value <= _MOST_COUNT:
            return False
        following = self.text(ahead)
        if following == "x" and (self.is_number(ahead + 1) or self.kind_near(ahead + 1)):
            return True
        if self.text(index - 1) == "x" and self._count is not None:
            return False  # "2x25 plates"
        if following == "of":
            pointed = ahead + 2 if self.text(ahead + 1) == "the" else ahead + 1
            return self.is_number(pointed) or self.text(pointed) in {"each", "them", "those", "these"}
        if following in PAIRS | PIECES:
            return True
        if self.kind_near(ahead):
            listing = self._load_end == index - 1 and self.text(index - 1) in PARTS and self.things[-1].kind is None
            listing = listing and KINDS.get(self.text(ahead)) != "bench"  # which has no load: "a pair of 40s, 1 bench"
            article = self.text(index - 1) in {"a", "an"} and not token.worded
            return not listing and not article
        if value > MOST_TOGETHER:
            plates = self.text(ahead + 1) in UNITS and KINDS.get(self.text(ahead + 2)) == "plate"
            return token.worded and self.is_number(ahead) and plates  # "eight 1.25 kilo plates"
        if not self.is_number(ahead):
            return following not in UNITS | {"s"} and self.described_kind(ahead)
        weighed = self.text(ahead + 1) in UNITS | {"s"} or self.kind_near(ahead + 1)
        return weighed and not (index > self.first and self.is_number(index - 1))

    def _kind(self, index: int, kind: str) -> int | None:
        """Take a kind: of the loads before it, of those to come, or a thing of its own."""
        if (following := self._times_after(index)) is not None:
            self._count, after = following
        else:
            after = index + 1
        led = (
            bool(self.things and self.things[-1].kind)
            and self.is_number(after)
            and self._lead is not None
            and bool(self._lead.taken)
        )
        adjacent = self._load_end >= 0 and not led and all(self.text(i) in WITHIN for i in range(self._load_end, index))
        between = {self.text(i) for i in range(max(self._load_end, 0), index)}
        if adjacent and kind == "plate" and between & {"of", "in", "worth"} and self.things[-1].count is None:
            return None  # "40 kg of plates" is all of them together
        if adjacent:
            self._name_loads(kind)
        elif self._names_all(index, kind):
            for thing in self.things:
                thing.kind = thing.kind or kind
            self._lead = None
        elif self._count is None and not self._pair and self._is_mentioned(index, kind):
            pass
        else:
            self._append_kind(kind)
        if not (adjacent and self._load_end < 0):
            self._load_end = -1
        self._count, self._pair, self.until = None, False, after
        return after

    def _times_after(self, index: int) -> tuple[int, int] | None:
        """The count and the index after it where "x2" or "(2)" follows a kind."""
        if self.text(index + 1) == "(" and self.text(index + 3) == ")" and (times := self.number(index + 2)) is not None:
            leads = KINDS.get(self.text(index)) in {"dumbbell", "kettlebell"} and self._load_end < 0
            return (int(times[0]), index + 4) if times[0] <= MOST_TOGETHER and not leads else None
        if (pieces := self.pieces(index + 1)) is not None:
            return pieces
        if self.text(index + 1) == "single" and self.ends_at(index + 2):
            return 1, index + 2  # "12 kg dumbbell single"
        behind = self.tokens[index + 1] if index + 1 < self.last else None
        if behind is not None and behind.worded and self.is_small_count(index + 1) and self.ends_at(index + 2):
            return int(behind.value), index + 2  # "10 kg dumbbell two"
        apart = index == self.first or self.text(index - 1) in PARTS | {":"}
        if apart and KINDS.get(self.text(index)) not in _LEADING and self.ends_at(index + 2):
            if self.text(index + 1) == "one":
                return 1, index + 2
            if self.is_small_count(index + 1):
                return int(self.tokens[index + 1].value), index + 2  # "bench 1"
        if self.text(index + 1) not in {"x", "times"} or (times := self.number(index + 2)) is None or times[0] > _MOST_TIMES:
            return None
        return int(times[0]), index + 3

    def _name_loads(self, kind: str) -> None:
        """A kind right after a load names it, and the loads before it that have none."""
        latest = self.things[-1]
        latest.kind = kind
        if self._count is not None:
            latest.count = self._count
        lone = kind == "kettlebell" and latest.count == 1
        before: str | None = None
        for thing in self.things:
            if thing.kind is None and (not thing.closed or latest.paired):
                otherwise = latest.count is not None and thing.count is not None and latest.count != thing.count
                thing.kind = before if otherwise and before is not None else kind  # "two 15kg, one 24kg kettlebell"
                if lone and thing is not latest and thing.count != 1:
                    thing.kind = before or "dumbbell"  # "8s, 12s and a 16kg kettlebell"
            before = thing.kind if thing.kind in _LEADING else before
        self._lead = self._pairs = None

    def _names_all(self, index: int, kind: str) -> bool:
        """Whether a kind at the end names all loads before it: "pairs of 25s, 35s and 45s, dumbbells"."""
        opened = [thing for thing in self.things if thing.kind is None and thing.load is not None]
        return bool(
            opened
            and kind in _LEADING
            and self._count is None
            and not self._pair
            and self.text(index).endswith("s")
            and self.text(index - 1) not in ONE
            and (kind == "dumbbell" or not any(thing.paired for thing in opened))
            and not any(self.is_number(i) for i in range(index + 1, self.last))
        )

    def _is_mentioned(self, index: int, kind: str) -> bool:
        """Whether the kind only speaks again of what was listed: "the band is old"."""
        known = any(thing.kind == kind for thing in self.things)
        followed = index + 1 < self.last and (self.is_number(index + 1) or self.text(index + 1) in OF)
        if self.text(index + 1) in _BROKE or (
            self.text(index + 1) in {"is", "was", "got", "has"} and self.text(index + 2) in _GONE
        ):
            self.negated |= {index + 1, index + 2}
            return True  # "the kettlebell broke"
        told = (
            self.text(index - 1) in _POINTING and index + 1 < self.last and self.text(index + 1) not in _AFTER_KIND and not followed
        )
        if told and kind not in _LEADING:
            return True  # "the band snapped"
        return known and not followed and (kind == "dumbbell" or self.text(index - 1) in _POINTING)

    def _append_kind(self, kind: str) -> None:
        holder = Thing(count=2 if self._pair else self._count, kind=kind, closed=True)
        self.things.append(holder)
        if kind in _LEADING:
            self._lead = Lead(kind, holder, self._pairs or self._count, self._pair or self._pairs is not None)
            self._leads.append(self._lead)
        self._pairs = None

    def have(self) -> Have | None:
        """What was listed; None when a load has no place or nobody lifts it."""
        if self._each is not None:
            self._count_all(self._each)
        return have(self.things, self._leads, self._paired_from, self._unit)
