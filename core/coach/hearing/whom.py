"""Who is meant, in the words of a text: a name, several, everyone, everyone but some."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise

from core.coach.asks import Whom
from core.coach.hearing.lists import listed, ways
from core.coach.hearing.pattern import literals
from core.coach.hearing.words import Word, is_ordinary, mended
from core.coach.people import LONGEST_NAME, Nobody, called, find

EVERYONE = ways("people", "everyone")
"""Ways to say everyone, the longer before the shorter."""

EXCEPT = ways("people", "but")
"""Ways to leave some out."""

_BUT_WORDS = frozenset(word for way in EXCEPT for word in way)
NOT_NAMES = listed("people", "no_names")
"""Words that are nobody's name unless somebody on the roster is called so, and part of no exercise and no circuit."""

_AND = listed("people", "and")
_MOST_WORDS = 4
_OF_SOME = frozenset({"the", "my", "our", "of", "those", "these", "who"})
_LONE_WORDS = frozenset("ainur")


@dataclass(frozen=True)
class Said:
    """Who was said, and how surely the list of names is over where it ends.

    Attributes:
        whom: what goes into the ask.
        many: names were joined: what follows may still belong to the last of them.
        loose: joined by commas alone.
        but: some were left out after "but".
    """

    whom: Whom
    many: bool = False
    loose: bool = False
    but: bool = False


@dataclass(frozen=True)
class Roster:
    """Looks for people in the words of a text."""

    text: str
    words: tuple[Word, ...]
    names: tuple[str, ...]

    def raw(self, first: int, last: int) -> str:
        """The text of words `[first, last)`, as typed."""
        return self.text[self.words[first].start : self.words[last - 1].end]

    def known(self, at: int) -> int | None:
        """Where somebody's name ends that begins here and is on the roster."""
        for last in range(min(at + _MOST_WORDS, len(self.words)), at, -1):
            if self._is_run(at, last) and called(self.raw(at, last), self.names):
                if last < len(self.words) and self._is_begun(at, last):
                    return last + 1
                return last
        return None

    def name(self, at: int) -> int | None:
        """Where a name ends that begins here: of the roster, nearly so, or of somebody unknown."""
        known = self.known(at)
        if known is not None and not self._is_odd(known):
            return known
        for last in (at + 2, at + 1):
            if (
                self._is_run(at, last)
                and self._is_odd(last - 1)
                and self._is_alone(at, last)
                and not isinstance(find(self.raw(at, last), self.names), Nobody)
            ):
                return last
        if known is not None:
            return known
        if not self._is_odd(at):
            return None
        longer = self._is_capital(at) and self._is_capital(at + 1) and self._is_run(at, at + 2) and self.known(at + 1) is None
        return at + 2 if longer else at + 1

    def is_near(self, first: int, last: int) -> bool:
        """Whether words are nearly a name of the roster."""
        return not isinstance(find(self.raw(first, last), self.names), Nobody)

    def named_in(self, first: int, last: int) -> bool:
        """Whether somebody of the roster stands in words `[first, last)`."""
        return any(not word.mark and self.known(at) is not None for at, word in enumerate(self.words[first:last], first))

    def whom(self, at: int, *, anyone: bool = False) -> tuple[int, Said] | None:
        """Everyone, or a list of names, from here on: the longest that it can be."""
        if self._says(at, "both"):
            at += 1
        after = next((at + len(way) for way in EVERYONE if self._says(at, *way)), None)
        if (
            after is not None
            and self.words[after - 1].says == "all"
            and after < len(self.words)
            and self.words[after].says in _OF_SOME
        ):
            return None  # "all the new ones"
        if after is None and anyone and (self._says(at, "anyone") or self._says(at, "anybody")):
            after = at + 1
        if after is None:
            return self._list(at)
        left_out = after + 1 if after < len(self.words) and self.words[after].says == "," else after
        for way in EXCEPT:
            if self._means(left_out, *way):
                listed = self._list(left_out + len(way))
                if listed is None:
                    return (after, Said(Whom(everyone=True))) if way == ("not",) else None
                end, said = listed
                return end, Said(Whom(said.whom.names, everyone=True), many=True, loose=said.loose, but=way[0] == "but")
        return after, Said(Whom(everyone=True))

    def _list(self, at: int) -> tuple[int, Said] | None:
        """Names joined by commas and "and"; names side by side only where an "and" closes the list."""
        end = self.name(at)
        if end is None:
            return None
        names, joined = [self.raw(at, end)], [""]
        while (more := self._next(end)) is not None:
            first, last, join = more
            names.append(self.raw(first, last))
            joined.append(join)
            end = last
        while joined[-1] == "beside":  # "tell mia ben can't come": whose the last name is stays open
            return None
        return end, Said(Whom(tuple(names)), many=len(names) > 1, loose=joined[-1] == ",")

    def _next(self, end: int) -> tuple[int, int, str] | None:
        """The next name of a list: where it begins and ends, and what joins it."""
        at, comma = end, False
        while at < len(self.words) and self.words[at].says == "," and not self.words[at].line_end and self._raw_mark(at) == ",":
            at, comma = at + 1, True
        if at < len(self.words) and self.words[at].says in _AND:
            last = self.name(at + 1)
            return None if last is None else (at + 1, last, "and")
        last = self.known(at)
        if comma:
            if last is None and self._is_odd(at) and self.raw(at, at + 1)[:1].isupper() and self._goes_on(at + 1):
                last = at + 1
            return None if last is None else (at, last, ",")
        return None if last is None else (at, last, "beside")

    def _is_alone(self, at: int, last: int) -> bool:
        """Whether no other name begins inside words `[at, last)`."""
        return all(self.known(inside) is None for inside in range(at + 1, last))

    def _is_capital(self, at: int) -> bool:
        return self._is_odd(at) and self.raw(at, at + 1)[:1].isupper()

    def _raw_mark(self, at: int) -> str:
        return self.text[self.words[at].start : self.words[at].end]

    def _goes_on(self, at: int) -> bool:
        return at < len(self.words) and (self._raw_mark(at) in {",", ":", "-", "–", "—"} or self.words[at].says in _AND)

    def _is_run(self, first: int, last: int) -> bool:
        """Whether words stand side by side with only spaces between them."""
        if last > len(self.words) or self.words[last - 1].end - self.words[first].start > LONGEST_NAME:
            return False
        run = self.words[first:last]
        if any(word.mark or word.says == "'s" for word in run):
            return False
        return not "".join(self.text[one.end : other.start] for one, other in pairwise(run)).strip()

    def _is_begun(self, at: int, last: int) -> bool:
        """Whether the next word is the first letter of a surname."""
        word = self.words[last]
        letter = len(word.says) == 1 and word.says not in _LONE_WORDS
        return letter and self._is_run(at, last + 1) and bool(called(self.raw(at, last + 1), self.names))

    def _is_odd(self, at: int) -> bool:
        """Whether a word could be a name: it is none of the language's own."""
        if at >= len(self.words) or self.words[at].mark:
            return False
        says = self.words[at].says
        return (
            says not in NOT_NAMES | literals()
            and not is_ordinary(says)
            and says != "'s"
            and all(c.isalpha() or not c.isalnum() for c in says)
        )

    def _means(self, at: int, *run: str) -> bool:
        """Whether words say something, slips of the thumb mended."""
        return tuple(mended(word.says, _BUT_WORDS) for word in self.words[at : at + len(run)]) == run

    def _says(self, at: int, *run: str) -> bool:
        return tuple(word.says for word in self.words[at : at + len(run)]) == run
