"""Days, times of day and spans of time, found in the words of a clause.

A time that may be morning or evening ("at 7", "half six") is not settled: `Moment.settled` is false and the act is unclear.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal
from typing import get_args

from core.reading.acts import Weekday
from core.reading.lexicon import listed
from core.reading.token import Kind, Token

WEEK: tuple[Weekday, ...] = get_args(Weekday)
DAY_WORDS: dict[str, Weekday] = {word: day for day in WEEK for word in listed("when", day)}
GROUPS: dict[str, tuple[Weekday, ...]] = {
    **dict.fromkeys(listed("when", "weekdays"), WEEK[:5]),
    **dict.fromkeys(listed("when", "weekends"), WEEK[5:]),
    **dict.fromkeys(listed("when", "every_day"), WEEK),
}
_LETTERS: dict[str, Weekday] = {
    "m": "mon",
    "tu": "tue",
    "w": "wed",
    "th": "thu",
    "f": "fri",
    "with": "wed",
    "sa": "sat",
    "su": "sun",
    "t": "tue",
}
_ONE_OF_THEM = frozenset({"weekday", "weekend"})
_KEPT_FROM = listed("words_clock", "kept_from")
_EARLY = listed("when", "morning")
_LATE = listed("when", "evening")
_NOON = listed("when", "noon")
_MIDNIGHT = listed("when", "midnight")
_NIGHT = frozenset({"night", "nights", "midnight"})
_TO = frozenset({"to", "-", "through", "till", "until", "too", "2", "thro"})
_AT = frozenset({"at", "@", "by", "until", "till"})
_NOT_A_TIME_AFTER = listed("words_clock", "not_a_time_after")
_AT_LARGE = frozenset(
    {
        "day",
        "days",
        "morning",
        "mornings",
        "evening",
        "evenings",
        "night",
        "nights",
        "week",
        "single",
        "afternoon",
        "afternoons",
        "arvo",
        "arvos",
        "lunchtime",
        "dawn",
    }
)
_LEAVING_OUT = frozenset({"but", "bar", "barring", "save", "besides", "less"})
_TAKING_OUT = frozenset(
    {("apart", "from"), ("aside", "from"), ("other", "than"), ("with", "exception"), ("leaving", "out"), ("leave", "out")}
)
_HALVES = frozenset({"am", "a.m", "pm", "p.m"})
_HOURS = 24
_HOUR_MINUTES = 60
_NOON_H = 12
_DAY_MINUTES = _HOURS * _HOUR_MINUTES
_PAST_MINUTES = frozenset({5, 10, 15, 20, 25})
_SPREAD = 3
_FIRST_TEN = 10


@dataclass(frozen=True, slots=True)
class Moment:
    """A time of day in minutes after midnight, said in tokens `[first, last)`; `settled` is false when it may be early or late."""

    minute: int
    settled: bool
    first: int
    last: int

    @property
    def text(self) -> str:
        """The time as HH:MM."""
        return f"{self.minute // _HOUR_MINUTES:02d}:{self.minute % _HOUR_MINUTES:02d}"


@dataclass(frozen=True, slots=True)
class Clock:
    """Reads times in tokens `[first, last)`."""

    tokens: Sequence[Token]
    first: int
    last: int

    def text(self, index: int) -> str:
        """The word at `index`, empty outside."""
        return self.tokens[index].text if self.first <= index < self.last else ""

    def is_number(self, index: int) -> bool:
        """Whether a plain number stands at `index`."""
        return self.first <= index < self.last and self.tokens[index].kind is Kind.NUMBER

    def moments(self) -> list[Moment]:
        """The times of day in order."""
        found: list[Moment] = []
        index = self.first
        while index < self.last:
            moment = self._moment(index)
            if moment is not None:
                found.append(moment)
            index = moment.last if moment is not None else index + 1
        return found

    def _moment(self, index: int) -> Moment | None:
        word = self.text(index)
        if self.is_number(index) and self.tokens[index].value == _NOON_H and self.text(index + 1) in _NOON | _MIDNIGHT:
            noon = self.text(index + 1) in _NOON  # "12 noon"
            return Moment(_NOON_H * _HOUR_MINUTES if noon else 0, settled=True, first=index, last=index + 2)
        if word in _NOON or word in _MIDNIGHT:
            return Moment(_NOON_H * _HOUR_MINUTES if word in _NOON else 0, settled=True, first=index, last=index + 1)
        beside = self._minutes_beside_hour(index)
        if beside is None:
            return self._plain(index)
        offset, hour_at = beside
        hour = self.tokens[hour_at] if hour_at < self.last else None
        if hour is None:
            return None
        if hour.text in _NOON:
            return Moment(_NOON_H * _HOUR_MINUTES + offset, settled=True, first=index, last=hour_at + 1)
        if hour.kind is Kind.NUMBER and hour.value % 1 == 0 and 1 <= hour.value <= _HOURS:
            last = hour_at + 1
            last += self.text(last) in {"o'clock", "clock"}
            return self._dated(int(hour.value) * _HOUR_MINUTES + offset, index, last, sure=hour.value > _NOON_H)
        return None

    def _plain(self, index: int) -> Moment | None:
        """Such as "6:30", "0630", "7pm", "7 o'clock", "at 7"."""
        if not self.first <= index < self.last:
            return None
        token = self.tokens[index]
        if token.kind is Kind.CLOCK:
            hours, minutes = (int(part) for part in token.text.split(":")[:2])
            sure = token.text.startswith("0") or hours >= _NOON_H
            return (
                self._dated(hours * _HOUR_MINUTES + minutes, index, index + 1, sure=sure)
                if hours < _HOURS and minutes < _HOUR_MINUTES
                else None
            )
        if token.kind is not Kind.NUMBER:
            return None
        following = self.text(index + 1)
        glued_h = following == "h" and self.is_number(index + 2) and self.tokens[index + 2].glued
        if glued_h and token.value < _HOURS:
            return self._dated(
                int(token.value) * _HOUR_MINUTES + int(self.tokens[index + 2].value),
                index,
                index + 3,
                sure=token.value >= _NOON_H,
            )
        if (
            following == "h"
            and (self.text(index - 1) in _AT | {"from", "after", "before"} or self.text(index - 1) in DAY_WORDS)
            and token.value % 1 == 0
            and token.value < _HOURS
        ):
            return self._dated(int(token.value) * _HOUR_MINUTES, index, index + 2, sure=token.value > _NOON_H)  # "at 19h"
        digits = token.text if token.text.isdigit() and not token.worded else ""
        if len(digits) == len("0630") and int(digits[:2]) < _HOURS and int(digits[2:]) < _HOUR_MINUTES:
            last = index + 2 if following in {"hours", "h"} else index + 1
            return self._dated(
                int(digits[:2]) * _HOUR_MINUTES + int(digits[2:]),
                index,
                last,
                sure=digits[0] == "0" or int(digits[:2]) >= _NOON_H,
            )
        if len(digits) == len("630") and int(digits[1:]) < _HOUR_MINUTES and self._period(index + 1) is not None:
            return self._dated(int(digits[0]) * _HOUR_MINUTES + int(digits[1:]), index, index + 1, sure=False)
        return None if following in _NOT_A_TIME_AFTER else self._hour(index)

    def _hour(self, index: int) -> Moment | None:
        """An hour, or an hour and minutes in words, that "at" or a part of the day marks as a time."""
        token = self.tokens[index]
        hours, minutes, last = int(token.value), 0, index + 1
        if token.value % 1:
            decimals = token.text.partition(".")[2]
            if len(decimals) != len("30") or int(decimals) >= _HOUR_MINUTES:
                return None
            minutes = int(decimals)
        elif token.worded and self.is_number(last) and self.tokens[last].worded and 0 < self.tokens[last].value < _HOUR_MINUTES:
            minutes = int(self.tokens[last].value)
            last += 1
        elif (
            token.worded
            and self.text(last) in {"oh", "o"}
            and self.is_number(last + 1)
            and self.tokens[last + 1].value < _FIRST_TEN
        ):
            minutes = int(self.tokens[last + 1].value)  # "six oh five"
            last += 2
        elif self._is_minutes(last) and self._period(last + 1) is not None:
            minutes = int(self.tokens[last].value)  # "6 30 pm"
            last += 1
        if not 0 <= hours <= _HOURS:
            return None
        if self.text(last) in {"o'clock", "clock"}:
            return self._dated(hours * _HOUR_MINUTES + minutes, index, last + 1, sure=hours > _NOON_H)
        if self._period(last) is None and self.text(index - 1) not in _AT and not self._follows_its_day(index, minutes):
            return None
        return self._dated(hours * _HOUR_MINUTES + minutes, index, last, sure=hours > _NOON_H)

    def _is_minutes(self, index: int) -> bool:
        """Whether two digits that can be minutes stand at `index`."""
        return (
            self.is_number(index)
            and len(self.tokens[index].text) == len("30")
            and self.tokens[index].text.isdigit()
            and self.tokens[index].value < _HOUR_MINUTES
        )

    def _follows_its_day(self, index: int, minutes: int) -> bool:
        """Whether a day or a part of it leads to a bare hour: "saturday morning 7", "mon wed fri 6.15"."""
        before = index - 1
        while self.text(before) in {",", "-", ":", "the"}:
            before -= 1
        part = self.text(before)
        if minutes and (part in _EARLY | _LATE or part in DAY_WORDS or part in GROUPS):
            return True
        while self.text(before - 1) in {"in", "the", "every"}:
            before -= 1
        led = self.text(before - 1) in DAY_WORDS or self.text(before - 1) in GROUPS | dict.fromkeys(("every", "tomorrow"))
        return part in _EARLY | _LATE and led

    def _minutes_beside_hour(self, index: int) -> tuple[int, int] | None:
        """Such as "half past", "half", "quarter to", "ten past" at `index`: minutes to add, and the index of the hour."""
        if self.text(index) == "a" and self.text(index + 1) == "quarter":
            index += 1
        word, following = self.text(index), self.text(index + 1)
        if word == "half":
            if following == "past":
                return 30, index + 2
            return (30, index + 1) if self.is_number(index + 1) else None
        minutes = 15 if word == "quarter" else None
        if self.is_number(index) and self.tokens[index].value in _PAST_MINUTES:
            minutes = int(self.tokens[index].value)
            if following == "minutes":
                index += 1
                following = self.text(index + 1)
        if minutes is None or index + 2 >= self.last:
            return None
        if following in {"past", "after"}:
            return minutes, index + 2
        if following in {"to", "before", "of", "till", "too"} and (self.is_number(index + 2) or self.text(index + 2) in _NOON):
            return -minutes, index + 2
        return None

    def _period(self, index: int) -> tuple[bool, int] | None:
        """Whether a late part of the day stands at `index` (False: an early one), and the index after it."""
        while self.text(index) in {"in", "the", "at", "of", "every", "each", "this", "an", "on"}:
            index += 1
        if self.text(index) in _EARLY:
            return False, index + 1
        if self.text(index) in _LATE:
            return True, index + 1
        return None

    def _dated(self, minute: int, first: int, last: int, *, sure: bool) -> Moment:
        """The moment with its part of the day, said right after it or elsewhere in the clause."""
        period = self._period(last)
        before = first - 1
        while self.text(before) in _AT or self.text(before) in {"around", "about", "say", "from", ","}:
            before -= 1
        if period is None and self.text(before) in (_EARLY | _LATE) - _HALVES:
            period = self.text(before) in _LATE, last  # "tuesday arvo at 5"
        words = {token.text for token in self.tokens[self.first : self.last]}
        if period is not None:
            late, last = period
        else:
            is_late, is_early = bool(words & _LATE), bool(words & _EARLY)
            if is_late == is_early:
                return Moment(minute % _DAY_MINUTES, sure, first, last)
            late = is_late
        noon = _NOON_H * _HOUR_MINUTES
        if late and minute < noon and not (sure and minute < _HOUR_MINUTES):
            minute += noon
        elif noon <= minute < noon + _HOUR_MINUTES and (not late or words & _NIGHT):
            minute -= noon
        return Moment(minute % _DAY_MINUTES, settled=True, first=first, last=last)

    def days(self, first: int, last: int) -> tuple[set[Weekday], set[Weekday]]:
        """The days named in `[first, last)`, and those named after "not" or "except"."""
        named: set[Weekday] = set()
        off: set[Weekday] = set()
        into = named
        every: set[Weekday] = set()
        index = first
        while index < last:
            word = self.text(index)
            if word in {"not", "except", "no", "excluding", "without", "skip", "minus", "excluded", "never"} or (
                word in _LEAVING_OUT and (self.text(index + 1) in DAY_WORDS or self.text(index + 1) in GROUPS)
            ):
                into = off
            elif (word, self.text(index + 1)) in _TAKING_OUT:
                into = off
                index += 1
            elif word == "," and off and not named and not every and self.text(index + 1) not in DAY_WORDS:
                into = named  # "except on Wednesdays, daily at 7am"
            elif word == "only" and off in (set(), set(WEEK)):
                off.clear()
                into = named  # "no reminders in the week, only saturday"
                if self.text(index + 2 if self.text(index + 1) == "on" else index + 1) in DAY_WORDS:
                    named.clear()  # "not daily, only mondays"
            elif word in GROUPS and not (word in _ONE_OF_THEM and self.text(index + 1) in _KEPT_FROM):
                into.update(GROUPS[word])
            elif word in {"every", "each", "all"} and self._is_any_day(index + 1) and not self._is_one_whole(index):
                every = set(WEEK)
            elif word == "m" and self.text(index + 1) == "f" and self._in_a_range(index):
                into.update(WEEK[:5])
            elif word in _LETTERS and self.text(index + 1) == "-" and self.text(index + 2) in _LETTERS:
                into.update(_walk(_LETTERS[word], _LETTERS[self.text(index + 2)]))
                index += 2
            elif word == "mwf":
                into.update({"mon", "wed", "fri"})
            elif word in _LETTERS and self._in_letters(index):
                into.add(_LETTERS[word])
            elif word in DAY_WORDS:
                until = self.text(index + 2) if self.text(index + 1) in _TO else ""
                if until in DAY_WORDS:
                    into.update(_walk(DAY_WORDS[word], DAY_WORDS[until]))
                    index += 2
                elif self.text(index + 1) in {"excepted", "excluded"}:
                    off.add(DAY_WORDS[word])
                else:
                    into.add(DAY_WORDS[word])
            index += 1
        if every and not named:
            named |= every
        return named, off

    def _is_any_day(self, index: int) -> bool:
        """Whether the word after "every" or "all" names days at large: "every evening", "all the days"."""
        return self.text(index) in _AT_LARGE or (self.text(index) in {"the", "of"} and self.text(index + 1) == "days")

    def _is_one_whole(self, index: int) -> bool:
        """Whether "all" at `index` means the whole of one: "out all day", "crying all morning", but "all mornings"."""
        return self.text(index) == "all" and self.text(index + 1) in {"day", "morning", "evening", "afternoon", "night"}

    def _in_a_range(self, index: int) -> bool:
        """Whether "m-f" stands at `index`, and not two letters of a longer row."""
        return self.text(index - 1) not in _LETTERS and self.text(index + 2) not in _LETTERS

    def _in_letters(self, index: int) -> bool:
        """Whether a letter stands for a day: in a row of at least three such letters, or of two with a "th" ("t/th")."""
        row = [self.text(index)]
        for step in (-1, 1):
            at: int | None = index
            while at is not None and (at := self._beyond_a_comma(at, step)) is not None:
                row.append(self.text(at))
        return (len(row) == len(("t", "th")) and "th" in row) or len(row) >= _SPREAD

    def _beyond_a_comma(self, index: int, step: int) -> int | None:
        """The index of the letter for a day beside the one at `index`, a comma between them or none; None when there is none."""
        at = index + 2 * step if self.text(index + step) == "," else index + step
        return at if self.text(at) in _LETTERS else None

    def span(self, used: set[int]) -> tuple[int | None, set[int]]:
        """A span of time in minutes ("half an hour", "1 h 30"), and the indices of its numbers."""
        total = Decimal(0)
        spent: set[int] = set()
        index = self.first
        while index < self.last:
            following = self.text(index + 1)
            if (self.is_number(index) and following == "more" and self.text(index + 2) == "minutes") or (
                self.is_number(index) and index not in used and following in {"minutes", "m"}
            ):
                total += self.tokens[index].value
                spent.add(index)
            elif self.is_number(index) and following == "of" and "hours" in {self.text(index + 2), self.text(index + 3)}:
                total += self.tokens[index].value * _HOUR_MINUTES  # "3/4 of an hour"
                spent.add(index)
            elif self.is_number(index) and index not in used and following in {"hours", "h", "hr"}:
                total += self.tokens[index].value * _HOUR_MINUTES
                spent.add(index)
                rest = index + 2
                if self.is_number(rest) and self.text(rest + 1) != "minutes":
                    total += self.tokens[rest].value
                    spent.add(rest)
                total += self._half_after(rest)
            elif (
                self.text(index) in {"a", "an", "one", "another"}
                and following in {"hours", "hr"}
                and self.text(index - 1) not in {"half", "of"}
            ):
                total += _HOUR_MINUTES + self._half_after(index + 2)
            elif index == self.first and self.text(index) == "hours" and self._half_after(index + 1):
                total += _HOUR_MINUTES + self._half_after(index + 1)  # "hour and a half, then remind me"
            elif (self.text(index) == "half" and self.text(index + 1) in {"a", "an"} and self.text(index + 2) == "hours") or (
                self.text(index) == "half" and following in {"hours", "hr"}
            ):
                total += 30
            elif (
                self.text(index) in {"quarter", "quarters"}
                and self.text(index + 1) == "of"
                and "hours" in {self.text(index + 2), self.text(index + 3)}
            ):
                times = self.tokens[index - 1].value if self.is_number(index - 1) else Decimal(1)
                spent |= {index - 1} if self.is_number(index - 1) else set()
                total += 15 * times
            elif self.text(index) == "couple" and self.text(index + 1) == "of" and self.text(index + 2) in {"hours", "minutes"}:
                total += 2 * (_HOUR_MINUTES if self.text(index + 2) == "hours" else 1)
            index += 1
        if total != total.to_integral_value() or not 0 < total <= _DAY_MINUTES:
            return None, spent
        return int(total), spent

    def _half_after(self, index: int) -> int:
        if self.text(index) == "and" and "half" in {self.text(index + 1), self.text(index + 2)}:
            return 30
        return 15 if self.text(index) == "and" and "quarter" in {self.text(index + 1), self.text(index + 2)} else 0


def _walk(start: Weekday, until: Weekday) -> tuple[Weekday, ...]:
    """The days from one to the other, over the weekend if need be."""
    begin, end = WEEK.index(start), WEEK.index(until)
    return WEEK[begin : end + 1] if begin <= end else (*WEEK[begin:], *WEEK[: end + 1])


def in_week_order(days: set[Weekday]) -> tuple[Weekday, ...]:
    """The days from Monday on."""
    return tuple(day for day in WEEK if day in days)
