"""What the trainee owns: "8, 12 and 16 kg dumbbells", "a pair of 8s and a 16", "adjustable handles with 4 x 1.25 kg plates"."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from decimal import Decimal
from itertools import pairwise

from core.reading.acts import Have, Item
from core.reading.assembly import MOST_LOAD
from core.reading.lexicon import EXERCISES, listed, sayings
from core.reading.token import Kind, Token
from core.units import Unit

KINDS: dict[str, str] = {
    word: kind
    for kind in ("dumbbell", "kettlebell", "handle", "plate", "band", "barbell", "bench")
    for word in listed("gear", kind)
}
PAIRS = frozenset({"pair", "pairs", "prs"})
_PLAINLY_OWNED = listed("words_gear", "plainly_owned")
_OF = frozenset({"of", ":", "are", "is", "from", "in", "at", "=", "weighing", "which", "with"})
_ONE = frozenset({"a", "an", "one", "single", "another"})
_SKIPPED = listed("words_gear", "skipped")
_ENDS = 2
_LONGEST_LIST = 8
_MOST_COUNT = 40
_MOST_LEADING_COUNT = 6
_MOST_TIMES = 10


@dataclass(slots=True)
class _Thing:
    """An item being put together; `paired` until a kind is said makes it dumbbells."""

    load: Decimal | None = None
    unit: Unit | None = None
    count: int | None = None
    kind: str | None = None
    paired: bool = False
    closed: bool = False


@dataclass(slots=True)
class _Listing:
    """Reads a list of things token by token."""

    tokens: Sequence[Token]
    last: int
    things: list[_Thing] = field(default_factory=list)
    count: int | None = None
    paired: bool = False
    all_paired: bool = False
    lead: str | None = None

    def text(self, index: int) -> str:
        return self.tokens[index].text if index < self.last else ""

    def is_number(self, index: int) -> bool:
        return index < self.last and self.tokens[index].kind is Kind.NUMBER

    def kind_at(self, index: int) -> str | None:
        """The kind of thing named at `index`, unless it is part of an exercise ("bench press")."""
        kind, following = KINDS.get(self.text(index)), self.text(index + 1)
        return None if kind is None or following in EXERCISES or following in {"handles", "handle", "plates"} else kind

    def kind_near(self, index: int) -> bool:
        """Whether a kind stands at `index` or after words such as "adjustable"."""
        while self.text(index) in _SKIPPED:
            index += 1
        return self.kind_at(index) is not None

    def step(self, index: int) -> int | None:
        """Take the token at `index`; the index to go on from, None when its number cannot be explained."""
        token, word = self.tokens[index], self.text(index)
        if word in {"between", "nothing"} and "between" in {word, self.text(index + 1), self.text(index + 2)}:
            return self._past_between(index)
        spans = (
            word == "upto"
            or (word == "up" and self.text(index + 1) == "to")
            or (word in {"to", "-", "till"} and self.is_number(index + 1) and self.is_near_number(index))
        )
        if token.kind in {Kind.ODD, Kind.CLOCK, Kind.ORDINAL} or spans:
            return None
        if token.kind is Kind.NUMBER:
            return self._number(index)
        if word in PAIRS or (word == "couple" and self.text(index + 1) == "of"):
            self._pair(index)
        elif word == "no" and self.kind_near(index + 1):
            return index + 2
        elif word in _ONE and (self.is_number(index + 1) or self.kind_near(index + 1)):
            self.count = 1
        elif word == "one" and self.text(index + 1) == "of" and self.is_number(index + 2):
            self.count = 1
            return index + 2
        elif self.kind_at(index) is not None:
            self._kind(index, KINDS[word])
        elif word in {",", "and", "plus", "&", ";"}:
            for thing in self.things:
                thing.closed = thing.closed or thing.paired
            self.count = None
        return index + 1

    def is_near_number(self, index: int) -> bool:
        return any(self.is_number(i) for i in range(max(index - 2, 0), index))

    def _past_between(self, index: int) -> int:
        """The index after "nothing between 8 and 12 kg"."""
        numbers = 0
        while index < self.last and (numbers < _ENDS or self.text(index) in {"kg", "lb", "s"}):
            numbers += self.is_number(index)
            index += 1
        return index

    def _pair(self, index: int) -> None:
        before = self.things[-1] if self.things else None
        follows_load = index > 0 and self.tokens[index - 1].text in {"kg", "lb", "s"} and before is not None
        if follows_load and before is not None and before.count is None and self.text(index + 1) != "of":
            for thing in self.things if self.text(index) == "pairs" else [before]:
                if thing.count is None:
                    thing.count, thing.paired = 2, True
        elif self.text(index) == "couple":
            self.count = 2
        else:
            self.paired, self.count = True, None
            self.all_paired = self.text(index) == "pairs"  # "pairs of 5, 7.5 and 10kg"

    def _number(self, index: int) -> int | None:
        if self._is_count(index):
            self.count = int(self.tokens[index].value)
            if self.text(index + 1) in PAIRS:
                self.count = None
            return index + 2 if self.text(index + 1) == "x" else index + 1
        thing = _Thing(
            self.tokens[index].value,
            count=2 if self.paired or self.all_paired else self.count,
            paired=self.paired or self.all_paired,
            kind=self.lead,
        )
        index += 1
        if self.text(index) in {"kg", "lb"}:
            thing.unit = Unit(self.text(index))
            index += 1
        if self.text(index) == "s":
            index += 1
        if self.text(index) in {"x", "times"} and self.is_number(index + 1) and self.tokens[index + 1].value <= _MOST_TIMES:
            thing.count = int(self.tokens[index + 1].value)
            index += 2
        self.things.append(thing)
        self.count, self.paired = None, False
        return index

    def _is_count(self, index: int) -> bool:
        """Whether the number at `index` counts things: "two 12s", "4 x 1.25", "2 10kg dumbbells", "three bands"."""
        token, ahead = self.tokens[index], index + 1
        if token.value % 1 or not 1 <= token.value <= _MOST_COUNT:
            return False
        if self.text(ahead) == "x" and self.is_number(ahead + 1):
            return True
        if self.text(ahead) in PAIRS or self.kind_near(ahead) or (self.text(ahead) == "of" and token.worded):
            return self.text(ahead) != "of" or self.is_number(ahead + 1)
        if not self.is_number(ahead) or token.value > _MOST_LEADING_COUNT:
            return False
        weighed = self.text(ahead + 1) in {"kg", "lb", "s"} or self.kind_near(ahead + 1)
        return weighed and not (index > 0 and self.is_number(index - 1))

    def _kind(self, index: int, kind: str) -> None:
        ahead = index + 1
        while self.text(ahead) in _OF:
            ahead += 1
        leads = (ahead > index + 1 or self.text(index + 1) == ":") and (self.is_number(ahead) or self.text(ahead) in PAIRS | _ONE)
        leads = leads or (self.is_number(index + 1) and not self.things)
        opened = [thing for thing in self.things if thing.kind is None and not thing.closed]
        if opened and not (leads and self.text(index + 1) == ":") and kind not in {"bench", "band", "handle"}:
            for thing in opened:
                thing.kind = kind
            self.count, self.paired = None, False
            self.lead = None
        elif leads and kind not in {"handle", "barbell", "bench", "band"}:
            self.lead = kind
        elif kind == "dumbbell" and any(thing.kind == kind for thing in self.things) and self.count is None and not self.paired:
            return
        else:
            self.things.append(_Thing(count=2 if self.paired else self.count, kind=kind))
            self.count, self.paired, self.lead = None, False, None


def items(tokens: Sequence[Token], first: int, last: int) -> Have | None:
    """The things that tokens `[first, last)` list; None when a number among them stays unexplained."""
    listing = _Listing(tokens, last)
    index: int | None = first
    while index is not None and index < last:
        index = listing.step(index)
    if index is None:
        return None
    return _have(listing.things, _unit_of_all(tokens, first, last))


def _unit_of_all(tokens: Sequence[Token], first: int, last: int) -> Unit | None:
    """The unit that a list ends with: "a pair of 8s and a pair of 12s, in kilos"."""
    said = [token.text for token in tokens[first:last] if token.kind is Kind.WORD]
    return Unit(said[-1]) if said[-2:-1] in (["in"], ["all"]) and said[-1] in {"kg", "lb"} else None


def _have(things: list[_Thing], unit: Unit | None) -> Have | None:
    units = ({thing.unit for thing in things} | {unit}) - {None}
    loads = [thing for thing in things if thing.load is not None]
    if any(one.unit is not None and other.unit is None for one, other in pairwise(loads)):
        return None  # "10kg pair, 13": the last number is no load
    for thing in things:
        thing.kind = thing.kind or ("dumbbell" if thing.paired else None)
    kinds = {thing.kind for thing in things if thing.load is not None} - {None}
    for thing in things:
        if thing.load is None:
            continue
        if len(units) == 1:
            thing.unit = next(iter(units))
        if thing.kind is None and len(kinds) == 1:
            thing.kind = next(iter(kinds))
        if not 0 < thing.load <= MOST_LOAD[thing.unit or Unit.KG]:
            return None
    return Have(tuple(Item(thing.kind, thing.load, thing.unit, thing.count) for thing in things))


def begins(tokens: Sequence[Token], first: int, last: int) -> int | None:
    """Where a sentence that tells a set first goes on to what is owned: "got 11 with 10kg, and I've also got a 16kg kettlebell"."""
    for at in range(first + 1, last):
        if tokens[at].text not in {",", "and", "but", "("} or not any(tokens[i].kind is Kind.NUMBER for i in range(first, at)):
            continue
        begin = at + 1
        while begin < last and tokens[begin].text in {"and", "but", "also", ",", "btw", "oh"}:
            begin += 1
        words = [tokens[i].text for i in range(begin, min(begin + 4, last))]
        if (
            words[:1] in (["i"], ["we"])
            and set(words[1:]) & _PLAINLY_OWNED
            and any(tokens[i].text in KINDS for i in range(begin, last))
        ):
            return begin
    return None


_OWNING = listed("words_gear", "owning")
_OWNING_PAIRS = frozenset(tuple(pair.split()) for pair in sayings("owning_pairs"))
_OWNED_AT_LAST = {("what", "i"), ("what", "we")}
_DONE = listed("words_gear", "done")
_NOT_OWNED = listed("words_gear", "not_owned")


_LIST_WORDS = listed("words_gear", "list_words")


def _lists_only(tokens: Sequence[Token], first: int, last: int) -> bool:
    """Whether the sentence is "I have" and a list of loads, and nothing else."""
    return all(tokens[i].kind is Kind.NUMBER or tokens[i].text in _LIST_WORDS for i in range(first, last))


def gear(tokens: Sequence[Token], first: int, last: int, *, awaited: bool = False) -> Have | None:
    """What the sentence says the trainee owns; None when it says nothing of that.

    `awaited` says that reps are awaited, so that only a verb of owning makes a rack of it.
    """
    listing = _Listing(tokens, last)
    words = [token.text for token in tokens[first:last]]
    said = set(words)
    kinds = {KINDS[words[i - first]] for i in range(first, last) if listing.kind_at(i) is not None}
    paired = bool(said & PAIRS)
    numbers = [i for i in range(first, last) if listing.is_number(i)]
    owns = bool(said & _OWNING) or bool(_OWNING_PAIRS & set(pairwise(words)))
    parts = kinds & {"handle", "plate", "barbell"}
    doing = said & (_DONE - {"set"} if ("set", "of") in pairwise(words) else _DONE)
    homely = bool({("at", "home"), ("at", "hand"), ("at", "my"), ("at", "mine"), ("at", "ours")} & set(pairwise(words)))
    done = doing or "@" in said or ("at" in said and not homely) or ("with" in said and not parts and not owns)
    if (awaited and not said & (_PLAINLY_OWNED - {"got"}) and "got a" not in " ".join(words)) or any(
        tokens[i].kind is Kind.ODD for i in range(first, last)
    ):
        return None
    not_owned = said & (_NOT_OWNED - {"what"} if _OWNED_AT_LAST & set(pairwise(words)) else _NOT_OWNED)
    if (
        done
        or not_owned
        or (owns and not kinds and not paired and said & ({"x", "left", "in"} if homely else {"at", "x", "left", "in"}))
    ):
        return None
    plural = any(listing.text(i + 1) == "s" and tokens[i + 1].glued for i in numbers)
    weighed = bool(said & {"kg", "lb"})
    if not numbers:
        listed_alone = (
            kinds - {"dumbbell"}
            and len(words) <= _LONGEST_LIST
            and (
                owns
                or words[0] in {"just", "only", "a", "an"}
                or set(words) <= set(KINDS) | {"and", ",", "a", "some", "resistance"}
            )
        )
        if not listed_alone:
            return None
    elif not (kinds or paired) and not (
        said & _PLAINLY_OWNED and (plural or (weighed and len(numbers) > 1)) and _lists_only(tokens, first, last)
    ):
        return None
    have = items(tokens, first, last)
    return have if have is not None and have.items else None
