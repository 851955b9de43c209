"""How many there are of the things of a list, where one number counts several of them: "two each", "6 kg - 2 pieces"."""

from __future__ import annotations

from dataclasses import dataclass

from core.reading.gear_words import OF, ONE, PAIRS, PIECES, UNITS, Words
from core.reading.token import Kind

MOST_TOGETHER = 6
"""A bare number up to this counts things; above it is a load."""

_EACH = frozenset({"each", "every", "all", "both", "apiece", "them", "everything"})
_SHARING = _EACH | {"by", "in", "of", "are", "as", "per", "come", "x", "i", "have"}
"""Words that stand with a count shared by all things."""
_WEIGHED = UNITS | PAIRS | (OF - {"(", "the", "from", "in", "at", "-", "is", "are"}) | {"s", "x"}
_BOTH = ["both", "of", "them"]
_LONGEST = 10


@dataclass(slots=True)
class Counts(Words):
    """Finds counts among tokens `[first, last)`."""

    def shared(self, index: int) -> tuple[int, int, bool, bool] | None:
        """A count that all things have, said at `index`: "two each", "a pair of each", "every by two pieces"; None when none is.

        Returns:
            The count, the index after it, whether pairs were said, and whether it may lead to the things ("two of each: 5kg, 8kg").
        """
        at = index
        while at < min(self.last, index + _LONGEST) and (
            self.text(at) in _SHARING | PAIRS | PIECES | ONE or self.is_small_count(at)
        ):
            at += 1
        words = [self.text(i) for i in range(index, at)]
        said = set(words)
        if words == _BOTH and self.count_ends(at):
            return 2, at, False, False
        counts = [int(self.tokens[i].value) for i in range(index, at) if self.is_number(i)]
        lone = bool(said & {"one", "single"}) and words[-2:] not in (["each", "one"], ["every", "one"])
        paired = bool(said & PAIRS)
        together = bool(said & _EACH) or {"in", "pairs"} <= said
        leads = self.text(at) == ":" or (words[-2:] == ["each", "of"] and self.is_number(at) and not paired)
        if not together or not (paired or counts or lone) or len(counts) > 1 or not (leads or self.count_ends(at)):
            return None
        return (counts[0] if counts else 1) * (2 if paired else 1), at, paired, leads

    def says_both(self, after: int) -> bool:
        """Whether "both of them" ends at `after`, which counts one kind of thing and not each of several."""
        return [self.text(i) for i in range(after - len(_BOTH), after)] == _BOTH

    def count_ends(self, index: int) -> bool:
        """Whether nothing that is counted or weighed goes on at `index`."""
        return self.text(index) not in _WEIGHED and not self.is_number(index) and not self.kind_near(index)

    def is_small_count(self, index: int) -> bool:
        """Whether a number of things stands at `index`, and no load."""
        token = self.tokens[index] if self.first <= index < self.last else None
        return (
            token is not None
            and token.kind is Kind.NUMBER
            and token.value % 1 == 0
            and 1 <= token.value <= MOST_TOGETHER
            and self.text(index + 1) not in UNITS | {"s"}
            and not self.kind_near(index + 1)
        )

    def described_pair(self, index: int) -> bool:
        """Whether a pair at `index` says at once what it is one of: "(10 kg) pair of dumbbells"."""
        return self.text(index + 1) == "of" and self.kind_at(index + 2) is not None

    def pieces(self, index: int) -> tuple[int, int] | None:
        """The count and the index after it where "2 pieces" or "1 no" stands behind a thing: "6 kg - 2 pieces"."""
        if not self.is_small_count(index) or self.text(index + 1) not in PIECES | {"no"} or not self.count_ends(index + 2):
            return None
        return int(self.tokens[index].value), index + 2
