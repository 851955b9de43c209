"""A list of things to lift, word by word: "8, 12 and 16 kg dumbbells", "two pairs: 8 and 12 kg", "kettlebell 16 kg and a bench".

A thing is a load with a kind before it ("dumbbells of 5 and 8 kg") or after it ("5 and 8 kg dumbbells"), or a kind alone. A kind that
goes before stands in the list as a thing of its own until its first load takes its place.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from decimal import Decimal
from itertools import pairwise
from typing import TYPE_CHECKING

from core.reading.acts import Have, Item
from core.reading.assembly import MOST_LOAD
from core.reading.lexicon import EXERCISES, listed
from core.reading.token import Kind, Token
from core.units import Unit

if TYPE_CHECKING:
    from collections.abc import Sequence

KINDS: dict[str, str] = {
    word: kind
    for kind in ("dumbbell", "kettlebell", "handle", "plate", "band", "barbell", "bench")
    for word in listed("gear", kind)
}
PAIRS = frozenset({"pair", "pairs", "prs"})
UNITS = frozenset({"kg", "lb"})
SKIPPED = listed("words_gear", "skipped")
_OF = frozenset(
    {"of", ":", "are", "is", "from", "in", "at", "=", "weighing", "weigh", "weighs", "which", "with", "(", "the", "-", "like"}
)
_ONE = frozenset({"a", "an", "one", "single", "another"})
_PARTS = frozenset({",", "and", "plus", "&", "+", ";", "(", ")", "/", "or", "then", "also"})
_LEADING = frozenset({"dumbbell", "kettlebell", "plate"})
_WITHIN = SKIPPED | {"in", "of", "each", "s", "worth"}
_NEGATIONS = frozenset({"no", "not", "without", "never", "zero"})
_AFTER_NEGATION = frozenset({"have", "got", "get", "any", "a", "an", "the", "own", "yet", "even", "one", "single", "more", "had"})
_POINTING = frozenset({"the", "my", "that", "this", "those", "these", "same", "our", "them"})
_NO_LOAD_AFTER = frozenset({"for", "by", "number", "station", "round", "page", "floor", "size", "room"})
_AFTER_BARE_LOAD = (listed("words_gear", "list_words") | _PARTS | _WITHIN | PAIRS | UNITS | {"x", "-", "!", "?", ")", "in", "[", "]"}) - {
    "of"
}
_AFTER_BAR = frozenset(
    {"bell", ",", "and", "with", "plus", "&", "+", "(", ")", "in", "at", "here", "is", "too", "of", ":", "-", "x", ";"}
)
_PIECES = frozenset({"piece", "pieces", "pcs", "pc", "nos", "no's", "units"})
_AFTER_KIND = _PARTS | {"with", "in", "at", "here", "there", "now", "too", "plus", "from", "as", "x", "only", "that", "i"}
_NOT_DESCRIBING = (
    listed("structure", "words") | _PARTS | _OF | UNITS | PAIRS | {"x", "s", "each", "on", "using", "for", "by", "i", "we", "my"}
)
_MOST_DESCRIBING = 2
_LOST = frozenset({"rid", "sold", "lost", "broke", "lent", "binned", "returned"})
_DECIMAL_TAILS = frozenset({"25", "75"})
_STEP, _HALF_STEP = 5, 2
"""Loads go by fives: "7,5" and "12,5" are one load, "10,5" is not."""

_ENDS = 2
_MOST_COUNT = 40
_MOST_LEADING_COUNT = 6
_MOST_TIMES = 10


@dataclass(slots=True)
class Thing:
    """An item being put together; `paired` until a kind is said makes it dumbbells, `closed` keeps later kinds from it."""

    load: Decimal | None = None
    unit: Unit | None = None
    count: int | None = None
    kind: str | None = None
    paired: bool = False
    closed: bool = False
    plural: bool = False


@dataclass(slots=True)
class Lead:
    """A kind that goes before its loads, with the number of things or pairs said with it."""

    kind: str
    holder: Thing
    count: int | None = None
    pairs: bool = False
    taken: list[Thing] = field(default_factory=list)


@dataclass(slots=True)
class Listing:
    """Reads a list of things token by token."""

    tokens: Sequence[Token]
    first: int
    last: int
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
            whole, comma, tail = token.raw.partition(",")
            return (Decimal(f"{whole}.{tail}"), index + 1) if comma and _is_decimal(whole, tail) else None
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
        if word == "bar" and following and following not in _AFTER_BAR:
            return None
        if word == "kettle" and not (self.is_number(index - 1) or self.text(index - 1) in UNITS | {"s"}):
            return None
        return None if following in EXERCISES - {"one"} or following in {"handles", "handle", "plates"} else KINDS.get(word)

    def kind_near(self, index: int) -> bool:
        """Whether a kind stands at `index` or after words such as "adjustable"."""
        while self.text(index) in SKIPPED:
            index += 1
        return self.kind_at(index) is not None

    def _described_kind(self, index: int) -> bool:
        """Whether a kind stands within a word or two that only describe it: "stretchy yellow band"."""
        for at in range(index, index + _MOST_DESCRIBING + 1):
            if self.kind_at(at) is not None:
                return True
            if self.text(at) in _NOT_DESCRIBING or at >= self.last or self.tokens[at].kind is not Kind.WORD:
                return False
        return False

    def _step(self, index: int) -> int | None:
        """Take the token at `index`; the index to go on from, None when its number cannot be explained."""
        token, word = self.tokens[index], self.text(index)
        if word in {"between", "nothing"} and "between" in {word, self.text(index + 1), self.text(index + 2)}:
            return self._past_between(index)
        if word in _NEGATIONS | _LOST:
            return self._past_negation(index)
        number = self.number(index)
        if number is not None:
            return self._number(index, *number)
        if token.kind in {Kind.ODD, Kind.CLOCK, Kind.ORDINAL, Kind.NUMBER} or self._spans(index):
            return None
        if word in PAIRS or (word == "couple" and self.text(index + 1) == "of"):
            return self._take_pair(index)
        if word in UNITS:
            self._unit = Unit(word)
            self.until = index + 1
        elif word in _ONE:
            self._take_one(index)
        elif self.kind_at(index) is not None:
            return self._kind(index, KINDS[word])
        elif word in _PARTS and word not in {"(", ")"}:
            self._part()
        return index + 1

    def _take_one(self, index: int) -> None:
        ahead = index + 2 if self.text(index + 1) == "of" else index + 1
        if self.text(ahead) in {"each", "them"}:
            self._count_all(1)
        elif self.is_number(ahead) or self._described_kind(ahead) or self.text(ahead) == "(":
            self._count, self._pairs = 1, None

    def _part(self) -> None:
        for thing in self.things:
            thing.closed = thing.closed or thing.paired
        self._count = None

    def _spans(self, index: int) -> bool:
        """Whether the loads are given as a span ("up to 20 kg", "from 5 to 25")."""
        word = self.text(index)
        near = any(self.is_number(i) for i in range(max(index - 2, self.first), index))
        return (
            word == "upto"
            or (word == "up" and self.text(index + 1) == "to")
            or (word in {"to", "-", "till", "through"} and self.is_number(index + 1) and near)
        )

    def _past_between(self, index: int) -> int:
        """The index after "nothing between 8 and 12 kg"."""
        numbers = 0
        while index < self.last and (numbers < _ENDS or self.text(index) in UNITS | {"s"}):
            numbers += self.is_number(index)
            index += 1
        return index

    def _past_negation(self, index: int) -> int | None:
        """The index after "no bench" or "do not have a bench"; None when what is not there has a load."""
        at = index + 1
        while self.text(at) in _AFTER_NEGATION | SKIPPED | {"of", "my"}:
            at += 1
        if self.is_number(at) and self.text(at + 1) in UNITS | {"s"}:
            return None
        if self.kind_at(at) is None and self.text(at) not in _NOUNS:
            return index + 1
        self.negated.add(index)
        while self.text(at + 1) in {"or", "and", "nor"} and self.kind_at(at + 2) is not None:
            at += 2
        return at + 1

    def _take_pair(self, index: int) -> int | None:
        before = self.things[-1] if self.things else None
        if self.text(index) == "couple":
            self._count = 2
            return index + 2
        if before is not None and self._load_end == index and before.count is None and self.text(index + 1) != "of":
            for thing in self.things if self.text(index) == "pairs" else [before]:
                if thing.count is None:
                    thing.count, thing.paired = 2, True
            self.until = index + 1
            return index + 1
        if before is not None and before.load is not None and before.count is None and self._ends_at(index + 1):
            before.count, before.closed, self.until = 2, True, index + 1  # "8 kg dumbbells (pair)"
            self._count = None
            return index + 1
        ahead = index + 1
        while self.text(ahead) in SKIPPED | _ONE | _OF | {"each"}:
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
            and value in {self._count or 1, Decimal(_ENDS)}
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
        elif self.is_number(after) and self._counts_behind(thing, after):
            thing.count = int(self.tokens[after].value)
            after += 2 if self.text(after + 1) in _PIECES else 1
        elif self.text(after) == "one" and self._ends_at(after + 1):
            thing.count = 1
            after += 1
        return after

    def _counts_behind(self, thing: Thing, index: int) -> bool:
        """Whether a number in words behind a load counts it: "dumbbell 8kg two"."""
        token = self.tokens[index]
        return (
            thing.unit is not None
            and token.worded
            and 1 <= token.value <= _MOST_LEADING_COUNT
            and self._ends_at(index + 2 if self.text(index + 1) in _PIECES else index + 1)
        )

    def _ends_at(self, index: int) -> bool:
        """Whether a thing of the list ends before `index`."""
        return index >= self.last or self.text(index) in _PARTS

    def _follow_lead(self, thing: Thing, index: int) -> None:
        """Take the kind that went before, unless the kind of this load follows it."""
        lead = self._lead
        if lead is None:
            return
        strong = bool(lead.taken) or self._leads_to(self.things.index(lead.holder), index)
        if not strong and self._tail_ahead(index):
            self._lead = None
            return
        if lead.holder in self.things and not lead.taken:
            self.things = [one for one in self.things if one is not lead.holder]
        thing.kind = lead.kind
        thing.paired = thing.paired or lead.pairs
        lead.taken.append(thing)

    def _leads_to(self, holder: int, index: int) -> bool:
        """Whether the kind right before the number at `index` is the last thing said and leads to it: "dumbbells of 5"."""
        at = index - 1
        while self.text(at) in _OF | _ONE | PAIRS or (self.is_number(at) and self.text(at + 1) in {"of", "x"} | PAIRS):
            at -= 1
        return holder == len(self.things) - 1 and self.kind_at(at) is not None

    def _tail_ahead(self, index: int) -> bool:
        """Whether the load at `index`, or the last of its list, is followed by a kind: "12 and 16 kg kettlebells"."""
        parted = False
        while index < self.last:
            word = self.text(index)
            if self.kind_at(index) is not None:
                return not parted
            if word in _PARTS:
                parted = True
            elif parted and (word in _ONE | PAIRS or self.text(index + 1) in PAIRS | {"x", "of"}):
                return False
            elif (number := self.number(index)) is not None:
                parted, index = False, number[1]
                continue
            elif word not in _WITHIN | UNITS | {"x"}:
                return False
            index += 1
        return False

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
        return index + 2 if following in _PIECES | {"x"} else index + 1

    def _count_all(self, count: int) -> None:
        for thing in self.things:
            if thing.count is None and thing.kind not in {"bench", "band"}:
                thing.count = count
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
            and self.text(index - 1) == ","
            and value % 1 == 0
            and 1 <= value <= _MOST_LEADING_COUNT
            and (self.tokens[index].worded or value <= _ENDS)
        )

    def _is_count(self, index: int, value: Decimal) -> bool:
        """Whether the number at `index` counts things: "two 12s", "4 x 1.25", "2 10kg dumbbells", "three bands"."""
        token, ahead = self.tokens[index], index + 1
        if token.kind is Kind.ODD or value % 1 or not 1 <= value <= _MOST_COUNT:
            return False
        following = self.text(ahead)
        if following == "x" and self.is_number(ahead + 1):
            return True
        if following == "of":
            return self.is_number(ahead + 1) or self.text(ahead + 1) in {"each", "them", "those", "these"}
        if following in PAIRS | _PIECES:
            return True
        if self.kind_near(ahead):
            listing = self._load_end == index - 1 and self.text(index - 1) in _PARTS and self.things[-1].kind is None
            article = self.text(index - 1) in {"a", "an"} and not token.worded
            return not listing and not article
        if value > _MOST_LEADING_COUNT:
            return False
        if not self.is_number(ahead):
            return following not in UNITS | {"s"} and self._described_kind(ahead)
        weighed = self.text(ahead + 1) in UNITS | {"s"} or self.kind_near(ahead + 1)
        return weighed and not (index > self.first and self.is_number(index - 1))

    def _kind(self, index: int, kind: str) -> int:
        """Take a kind: of the loads before it, of those to come, or a thing of its own."""
        if (following := self._times_after(index)) is not None:
            self._count, after = following
        else:
            after = index + 1
        adjacent = self._load_end >= 0 and all(self.text(i) in _WITHIN for i in range(self._load_end, index))
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
            return (int(times[0]), index + 4) if times[0] <= _MOST_LEADING_COUNT and self._load_end >= 0 else None
        if self.text(index + 1) not in {"x", "times"} or (times := self.number(index + 2)) is None or times[0] > _MOST_TIMES:
            return None
        return int(times[0]), index + 3

    def _name_loads(self, kind: str) -> None:
        """A kind right after a load names it, and the loads before it that have none."""
        latest = self.things[-1]
        latest.kind = kind
        if self._count is not None:
            latest.count = self._count
        for thing in self.things:
            if thing.kind is None and (not thing.closed or latest.paired):
                thing.kind = kind
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
            and self.text(index - 1) not in _ONE
            and (kind == "dumbbell" or not any(thing.paired for thing in opened))
            and not any(self.is_number(i) for i in range(index + 1, self.last))
        )

    def _is_mentioned(self, index: int, kind: str) -> bool:
        """Whether the kind only speaks again of what was listed: "the band is old"."""
        known = any(thing.kind == kind for thing in self.things)
        followed = index + 1 < self.last and (self.is_number(index + 1) or self.text(index + 1) in _OF)
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
            self._lead = Lead(kind, holder, self._pairs if self._pairs else self._count, self._pair or self._pairs is not None)
            self._leads.append(self._lead)
        self._pairs = None

    def _count_pairs(self) -> None:
        """Two pairs of one load are four things; two pairs of two loads are a pair of each."""
        for begin, pairs in self._paired_from:
            group = [thing for thing in self.things[begin:] if thing.load is not None]
            alone = len(group) == 1 or (len(group) > 1 and not group[1].paired)
            if group and alone and group[0].paired and group[0].count == _ENDS:
                group[0].count = 2 * pairs

    def have(self) -> Have | None:
        """What was listed; None when a load has no place or nobody lifts it."""
        for lead in self._leads:
            _share_count(lead)
        self._count_pairs()
        units = ({thing.unit for thing in self.things} | {self._unit}) - {None}
        loads = [thing for thing in self.things if thing.load is not None]
        if any(
            one.unit is not None and other.unit is None and not (other.kind or other.plural or other.paired)
            for one, other in pairwise(loads)
        ):
            return None  # "10kg pair, 13": the last number is no load
        for thing in self.things:
            thing.kind = thing.kind or ("dumbbell" if thing.paired else None)
        kinds = {thing.kind for thing in loads} - {None}
        for thing in loads:
            if len(units) == 1:
                thing.unit = next(iter(units))
            if thing.kind is None and len(kinds) == 1:
                thing.kind = next(iter(kinds))
            if thing.load is not None and not 0 < thing.load <= MOST_LOAD[thing.unit or Unit.KG]:
                return None
        return Have(tuple(Item(thing.kind, thing.load, thing.unit, thing.count) for thing in self.things))


_NOUNS = listed("words_gear", "nouns")


def _is_decimal(whole: str, tail: str) -> bool:
    """Whether "7,5" or "1,25" is one load."""
    return whole.isdigit() and (tail in _DECIMAL_TAILS or (tail == "5" and (int(whole) % _STEP == _HALF_STEP or int(whole) == 1)))


def _share_count(lead: Lead) -> None:
    """Give the loads that a kind leads to the number said with it: "two dumbbells of 8", "two pairs of dumbbells: 8 and 12"."""
    if not lead.taken or lead.count is None:
        return
    if any(thing.count is not None and not thing.paired for thing in lead.taken):
        lead.taken[0].count = lead.taken[0].count or lead.count
        return
    if lead.pairs:
        if len(lead.taken) == 1:
            lead.taken[0].count = 2 * lead.count
    elif len(lead.taken) == 1:
        lead.taken[0].count = lead.count
    elif len(lead.taken) == lead.count:
        for thing in lead.taken:
            thing.count = 1
    elif lead.count == 1:
        lead.taken[0].count = 1
