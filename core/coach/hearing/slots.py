"""What stands in the gaps of a line of `phrases.txt`."""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from datetime import date, timedelta
from decimal import Decimal
from typing import TYPE_CHECKING

from core.catalogue import named
from core.catalogue.matching import words_of
from core.coach.hearing import days
from core.coach.hearing.lists import listed, ways
from core.coach.hearing.message import CLOSING, QUOTES, OwnWords, message_at
from core.coach.hearing.pattern import literals, skipped
from core.coach.hearing.whom import NOT_NAMES, Roster
from core.coach.hearing.words import Word, exercise_words, is_ordinary, mended
from core.reading.dates import DAY_NAMES
from core.reading.lexicon import NUMBER_WORDS, UNITS
from core.units import Load

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

_AMOUNT = re.compile(r"(?P<amount>\d{1,3}(?:\.\d{1,2})?)(?P<unit>[a-z]*)")
_PARTS_OF_DAY = frozenset({"morning", "mornings", "afternoon", "afternoons", "evening", "evenings", "night", "nights"})
_DETERMINERS = listed("things", "determiners")
_A_HAND = ways("things", "a_hand")
_LONGEST_THING = 5
_LONGEST_DAY = 7
_LONGEST_NEWCOMER = 4
_DAY_WORDS = listed("things", "day_words")
_NO_THING = listed("things", "no_exercise")
_NO_NEWCOMER = listed("things", "no_newcomer")
_NO_CIRCUIT_START = listed("things", "no_circuit_first")
_NO_CIRCUIT = listed("things", "no_circuit")


def _is_of_exercise(word: Word) -> bool:
    """Whether a word is one that exercises are called by."""
    return any(mended(said, exercise_words()) in exercise_words() for said in words_of(word.says))


@dataclass
class Gaps:
    """The gaps that a text can fill, each looked for at a place once."""

    text: str
    words: tuple[Word, ...]
    names: tuple[str, ...]
    today: date
    ends: int
    politely: bool
    _seen: dict[tuple[str, int], tuple[tuple[int, object], ...]] = field(default_factory=dict)

    def __post_init__(self) -> None:
        """Get ready to look for people."""
        self.roster = Roster(self.text, self.words, self.names)

    def find(self, gap: str, at: int) -> tuple[tuple[int, object], ...]:
        """Every way to fill a gap from a word on: where it ends, and the value."""
        key = (gap, at)
        if key not in self._seen:
            look: Callable[[int], Iterator[tuple[int, object]]] = getattr(self, f"_{gap}")
            start = at if gap in {"message", "words", "reminded"} else skipped(self.words, at)
            self._seen[key] = tuple(look(start)) if start < len(self.words) else ()
        return self._seen[key]

    def _whom(self, at: int) -> Iterator[tuple[int, object]]:
        found = self.roster.whom(at)
        if found is not None:
            yield found

    def _anyone(self, at: int) -> Iterator[tuple[int, object]]:
        found = self.roster.whom(at, anyone=True)
        if found is not None:
            yield found

    def _people(self, at: int) -> Iterator[tuple[int, object]]:
        """People by their names: never everyone."""
        found = self.roster.whom(at)
        if found is not None and not found[1].whom.everyone:
            yield found

    def _name(self, at: int) -> Iterator[tuple[int, object]]:
        end = self.roster.name(at)
        if end is not None:
            yield end, self.roster.raw(at, end)

    def _known(self, at: int) -> Iterator[tuple[int, object]]:
        """A name of the roster, or nearly one; a stranger's only with a capital letter."""
        for end, name in self._name(at):
            if self.roster.known(at) is not None or str(name)[:1].isupper() or self.roster.is_near(at, end):
                yield end, name

    def _newcomer(self, at: int) -> Iterator[tuple[int, object]]:
        """The name of somebody new: up to four words, whatever they are."""
        for last in range(at + 1, min(at + _LONGEST_NEWCOMER, self.ends) + 1):
            run = self.words[at:last]
            if any(
                word.mark or word.says in NOT_NAMES | _NO_NEWCOMER or word.says == "'s" or any(c.isdigit() for c in word.says)
                for word in run
            ):
                return
            if any(word.says in literals() and not self.text[word.start].isupper() for word in run):
                return
            yield last, self.roster.raw(at, last)

    def _stranger(self, at: int) -> Iterator[tuple[int, object]]:
        """The name of somebody new, where the words could mean something else: none of them is a word of the language."""
        for last, name in self._newcomer(at):
            if not any(is_ordinary(word.says) for word in self.words[at:last]):
                yield last, name

    def _exercise(self, at: int) -> Iterator[tuple[int, object]]:
        """What an exercise is called, as far as its words go."""
        for first, last in self._things(at):
            if any(_is_of_exercise(word) for word in self.words[first:last]):
                yield last, self.roster.raw(first, last)

    def _thing(self, at: int) -> Iterator[tuple[int, object]]:
        """An exercise, or something that is no everyday word and may be one."""
        for first, last in self._things(at):
            run = self.words[first:last]
            if not all(is_ordinary(word.says) for word in run) or any(_is_of_exercise(word) for word in run):
                yield last, self.roster.raw(first, last)

    def _things(self, at: int) -> Iterator[tuple[int, int]]:
        """Runs of words without names and without words that mean something else; an exercise's own name may hold any word."""
        if self.words[at].says in _DETERMINERS:
            at += 1
        if at < len(self.words) and self.words[at].says in NOT_NAMES:
            return
        for last in range(min(at + _LONGEST_THING, self.ends), at, -1):
            run = self.words[at:last]
            if (
                any(word.mark for word in run)
                or [word.says for word in run] in (["hold"], ["holds"])
                or any(word.says in _NO_THING for word in run)
                or self.roster.named_in(at, last)
            ):
                continue
            if any(word.says in NOT_NAMES or word.says in DAY_NAMES or word.says == "'s" for word in run):
                if named(self.roster.raw(at, last)) is None:
                    continue
            elif any(character.isdigit() for word in run for character in word.says):
                continue
            yield at, last

    def _circuit(self, at: int) -> Iterator[tuple[int, object]]:
        """The name of a circuit: any words but those that mean something else, and no exercise."""
        if self.words[at].says == "the":
            at += 1
        for last in range(min(at + _LONGEST_THING, self.ends), at, -1):
            run = self.words[at:last]
            if any(word.mark or word.says in NOT_NAMES or word.says in _NO_CIRCUIT or word.says == "'s" for word in run):
                continue
            raw = self.roster.raw(at, last)
            if run[-1].says in DAY_NAMES or run[0].says in _NO_CIRCUIT_START or named(raw) is not None:
                continue
            if not raw[:1].isdigit() and not self.roster.named_in(at, last):
                yield last, raw

    def _from(self, at: int) -> Iterator[tuple[int, object]]:
        yield from self._dated(at, days.begins)

    def _until(self, at: int) -> Iterator[tuple[int, object]]:
        yield from self._dated(at, days.ends)

    def _through(self, at: int) -> Iterator[tuple[int, object]]:
        for last, day in self._dated(at, days.ends):
            yield last, day + timedelta(days=1)

    def _soon(self, at: int) -> Iterator[tuple[int, object]]:
        """A day that needs no word before it: "tomorrow"."""
        for last, day in self._dated(at, days.begins):
            if self.words[at].says in {"today", "tomorrow", "next", "tmrw", "tomorow"}:
                yield last, day

    def _week(self, at: int) -> Iterator[tuple[int, object]]:
        yield from self._lastweek(at)
        for way in ("this week", "the week"):
            if self._says(at, way):
                yield at + 2, "this"

    def _lastweek(self, at: int) -> Iterator[tuple[int, object]]:
        for way in (
            "last week",
            "the last week",
            "previous week",
            "the previous week",
            "the week before",
            "for last week",
            "last weeks",
        ):
            if self._says(at, way):
                yield at + len(way.split()), "last"

    def _says(self, at: int, run: str) -> bool:
        known = frozenset(run.split())
        return " ".join(mended(word.says, known) for word in self.words[at : at + len(known)]) == run

    def _lasting(self, at: int) -> Iterator[tuple[int, object]]:
        yield from self._dated(at, days.lasts)

    def _dated(self, at: int, read: Callable[[str, date], date | None]) -> Iterator[tuple[int, date]]:
        """The longest run of words that names a day."""
        known = frozenset(DAY_NAMES) | _DAY_WORDS
        for last in range(min(at + _LONGEST_DAY, self.ends), at, -1):
            run = self.words[at:last]
            if any(word.mark or word.says == "'s" for word in run):
                continue
            day = read(" ".join(mended(word.says, known) for word in run), self.today)
            if day is not None:
                yield last, day
                return

    def _instead(self, at: int) -> Iterator[tuple[int, object]]:
        yield from self._thing(at)

    def _load(self, at: int) -> Iterator[tuple[int, object]]:
        """A number with its unit."""
        says = self.words[at].says
        says = str(NUMBER_WORDS.get(says, says))
        found = _AMOUNT.fullmatch(says)
        if found is None:
            return
        unit, last = found["unit"], at + 1
        if not unit and last < len(self.words):
            unit, last = self.words[last].says, last + 1
        if unit in UNITS and Decimal(found["amount"]) > 0:
            load = Load(Decimal(found["amount"]), UNITS[unit])
            for way in _A_HAND:
                if tuple(word.says for word in self.words[last : last + len(way)]) == way:
                    yield last + len(way), load
            yield last, load

    def _day(self, at: int) -> Iterator[tuple[int, object]]:
        """A day of the week, and the part of it."""
        says = mended(self.words[at].says, frozenset(DAY_NAMES))
        if says in DAY_NAMES:
            there = at + 1 < len(self.words) and self.words[at + 1].says in _PARTS_OF_DAY
            yield at + 1 + there, (DAY_NAMES[says], self.words[at + 1].says if there else None)

    def _time(self, at: int) -> Iterator[tuple[int, object]]:
        """A time of day as it is said."""
        for last in range(min(at + 4, len(self.words)), at, -1):
            said = " ".join(word.says for word in self.words[at:last])
            if not any(word.mark for word in self.words[at:last]) and re.match(r"\d|noon|midday", said):
                yield last, said

    def _message(self, at: int) -> Iterator[tuple[int, object]]:
        """A coach's own words, to the end, after a name."""
        found = message_at(self.roster, at, politely=self.politely, marked=False)
        if found is not None:
            yield len(self.words), found

    def _words(self, at: int) -> Iterator[tuple[int, object]]:
        """A coach's own words, to the end, after a colon or a dash."""
        found = message_at(self.roster, at, politely=self.politely, marked=True)
        if found is not None:
            yield len(self.words), found

    def _reminded(self, at: int) -> Iterator[tuple[int, object]]:
        """What somebody is to be reminded of: only after a colon, "that" or "to"."""
        found = message_at(self.roster, at, politely=self.politely, marked=False)
        if found is not None and found.apart:
            yield len(self.words), found

    def _inside(self, at: int) -> Iterator[tuple[int, object]]:
        """A coach's own words in the middle of a line."""
        if self.roster.known(at) is not None or self.words[at].says in NOT_NAMES:
            return
        start = self.words[at].start
        closing = CLOSING.get(self.text[start - 1 : start])
        if closing is not None:
            closed = re.compile(re.escape(closing) + r"(?=\s)").search(self.text, start)
            if closed is not None:
                yield (
                    next((last for last in range(at, self.ends) if self.words[last].start >= closed.end()), self.ends),
                    OwnWords(self.text[start : closed.start()], at, apart=True),
                )
            return
        for last in range(self.ends, at, -1):
            end = self.words[last - 1].end
            after = self.text[end : self.words[last].start if last < len(self.words) else None]
            if self.text[end - 1] not in QUOTES and not after.strip(QUOTES + " "):
                yield last, OwnWords(self.text[start:end], at, apart=True)
