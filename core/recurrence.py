"""Days to train, as RFC 5545 (iCalendar) recurrence rules with exceptions.

A rule is a DTSTART and an RRULE of FREQ=DAILY or WEEKLY; exceptions are EXDATE (not on that day) and RDATE (on that day as well).
Times are "floating" in the sense of section 3.3.5: local time wherever the trainee is. So a trainee who moves to another zone keeps
the same text. What instant a local time is in a zone is decided in `core.reminders`.

One reminder a day is enough: where two rules fall on one day, the earlier time counts.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from datetime import date, timedelta
from typing import Literal, get_args

Weekday = Literal["mon", "tue", "wed", "thu", "fri", "sat", "sun"]
Frequency = Literal["day", "week"]

WEEK: tuple[Weekday, ...] = get_args(Weekday)
DAY = timedelta(days=1)
EVERY_MAX = 52  # "every 52 weeks" is the rarest there is

_FREQUENCIES: dict[Frequency, str] = {"day": "DAILY", "week": "WEEKLY"}
_CODES: dict[Weekday, str] = {day: day[:2].upper() for day in WEEK}
_LOCAL = re.compile(r"(\d{4})(\d{2})(\d{2})T(\d{2})(\d{2})00")


@dataclass(frozen=True)
class Rule:
    """A recurrence rule.

    Attributes:
        start: the first day it falls on (DTSTART). With `every` above 1 the count goes from here: by days, or by weeks from Monday.
        at: the time of day, "HH:MM", 24 hours.
        every: INTERVAL, 1 to 52.
        of: FREQ: every so many days, or weeks.
        days: BYDAY, in week order; may be empty with days.
        until: the last day it may fall on (UNTIL), None: no end.
    """

    start: date
    at: str
    every: int = 1
    of: Frequency = "week"
    days: tuple[Weekday, ...] = ()
    until: date | None = None

    def falls_on(self, day: date) -> bool:
        """Whether the rule falls on a day, exceptions aside."""
        if day < self.start or (self.until is not None and day > self.until):
            return False
        if self.of == "day":
            return (day - self.start).days % self.every == 0 and (not self.days or WEEK[day.weekday()] in self.days)
        weeks = (_monday(day) - _monday(self.start)).days // 7
        return weeks % self.every == 0 and WEEK[day.weekday()] in self.days

    def without(self, days: tuple[Weekday, ...]) -> Rule | None:
        """The rule without some days of the week, None when no day is left; its count goes on as before."""
        left = tuple(day for day in (self.days or WEEK) if day not in days)
        ahead = (self.start + timedelta(days=number) for number in range(7 * self.every))
        loose = replace(self, days=left)
        start = next((day for day in ahead if loose.falls_on(day)), None)
        return None if start is None else replace(loose, start=start)


@dataclass(frozen=True)
class Extra:
    """One day more (RDATE)."""

    day: date
    at: str


@dataclass(frozen=True)
class Recurrence:
    """All the days of a trainee: one rule or more, less the days in `excluded`, and the days in `added`. A day is never in both."""

    rules: tuple[Rule, ...]
    excluded: tuple[date, ...] = ()
    added: tuple[Extra, ...] = ()

    def time_on(self, day: date) -> str | None:
        """The time of day ("HH:MM") on a day, None when the day is free."""
        times = [extra.at for extra in self.added if extra.day == day]
        if day not in self.excluded:
            times += [rule.at for rule in self.rules if rule.falls_on(day)]
        return min(times, default=None)

    def next_day(self, first: date) -> tuple[date, str] | None:
        """The first training day on or after a day, and its time; None when there is none."""
        last = self._last_to_look_at(first)
        day = first
        while day <= last:
            if (at := self.time_on(day)) is not None:
                return day, at
            day += DAY
        return None

    def ends_on(self) -> date | None:
        """The last day of all, None when it goes on for ever."""
        if any(rule.until is None for rule in self.rules):
            return None
        ends = [rule.until for rule in self.rules if rule.until is not None] + [extra.day for extra in self.added]
        return max(ends, default=date.min)

    def without(self, first: date, last: date) -> Recurrence:
        """The same with every training day from `first` to `last` taken out."""
        gone = [day for day in _days(first, last) if any(rule.falls_on(day) for rule in self.rules)]
        kept = tuple(extra for extra in self.added if not first <= extra.day <= last)
        return replace(self, excluded=tuple(sorted({*self.excluded, *gone})), added=kept)

    def moved(self, day: date, to: date) -> Recurrence:
        """The same with one training day moved to another day, at its own time; on a day that is one already, it is one still."""
        at = self.time_on(day)
        if at is None or day == to:
            return self
        less = self.without(day, day)
        if less.time_on(to) is not None:
            return less
        return replace(less, added=tuple(sorted((*less.added, Extra(to, at)), key=lambda extra: extra.day)))

    def without_weekdays(self, days: tuple[Weekday, ...]) -> Recurrence | None:
        """The same without some days of the week, None when nothing is left."""
        rules = tuple(rule for rule in (rule.without(days) for rule in self.rules) if rule is not None)
        gone = tuple(day for day in self.excluded if any(rule.falls_on(day) for rule in rules))
        return Recurrence(rules, gone, self.added) if rules else None

    def since(self, first: date) -> Recurrence:
        """The same without exceptions before a day, which no longer matter."""
        return replace(
            self,
            excluded=tuple(day for day in self.excluded if day >= first),
            added=tuple(extra for extra in self.added if extra.day >= first),
        )

    def _last_to_look_at(self, first: date) -> date:
        """A day by which a training day has come if there is any."""
        ahead = max(rule.start for rule in self.rules)
        exceptions = max((*self.excluded, *(extra.day for extra in self.added)), default=first)
        longest = max((rule.every * (7 if rule.of == "week" else 1) for rule in self.rules), default=0)
        last = max(first, ahead, exceptions) + timedelta(days=longest + 7)
        ends = self.ends_on()
        return last if ends is None else min(last, ends)


def weekly(days: tuple[Weekday, ...], at: str, first: date, every: int = 1) -> Rule:
    """A rule for days of the week, from the first of them on or after a day; the days in any order."""
    in_order = tuple(sorted(set(days), key=WEEK.index))
    start = first
    while WEEK[start.weekday()] not in in_order:
        start += DAY
    return Rule(start, at, every, "week", in_order)


def text_of(recurrence: Recurrence) -> str:
    """The recurrence as iCalendar lines, a VEVENT for each rule; RFC 5545, sections 3.3.10, 3.8.2.4 and 3.8.5.

    Added days stand in the first VEVENT. Lines end in a plain newline; a calendar file would have CR LF and fold long ones.
    """
    lines = []
    for number, rule in enumerate(recurrence.rules):
        lines += ["BEGIN:VEVENT", f"DTSTART:{_local(rule.start, rule.at)}", f"RRULE:{_rrule(rule)}"]
        gone = [_local(day, rule.at) for day in recurrence.excluded if rule.falls_on(day)]
        lines += [f"EXDATE:{','.join(gone)}"] if gone else []
        if number == 0 and recurrence.added:
            lines.append(f"RDATE:{','.join(_local(extra.day, extra.at) for extra in recurrence.added)}")
        lines.append("END:VEVENT")
    return "\n".join(lines)


def recurrence_of(text: str) -> Recurrence:
    """The recurrence that `text_of` wrote.

    Raises:
        ValueError: when it is none.
        KeyError: when a part of it is missing.
    """
    rules: list[Rule] = []
    excluded: set[date] = set()
    added: set[Extra] = set()
    for event in text.split("BEGIN:VEVENT\n")[1:]:
        lines = dict(line.split(":", 1) for line in event.removesuffix("\n").removesuffix("END:VEVENT").splitlines())
        start, at = _day_and_time(lines.pop("DTSTART"))
        rules.append(_rule(start, at, lines.pop("RRULE")))
        excluded |= {_day_and_time(value)[0] for value in _values(lines.pop("EXDATE", ""))}
        added |= {Extra(*_day_and_time(value)) for value in _values(lines.pop("RDATE", ""))}
        if lines:
            raise ValueError(next(iter(lines)))
    found = Recurrence(tuple(rules), tuple(sorted(excluded)), tuple(sorted(added, key=lambda extra: extra.day)))
    if text_of(found) != text or not rules:
        raise ValueError(text)
    return found


def _rrule(rule: Rule) -> str:
    parts = [f"FREQ={_FREQUENCIES[rule.of]}"]
    if rule.every > 1:
        parts.append(f"INTERVAL={rule.every}")
    if rule.until is not None:
        parts.append(f"UNTIL={_local(rule.until, '23:59')}")
    if rule.days:
        parts.append(f"BYDAY={','.join(_CODES[day] for day in rule.days)}")
    return ";".join(parts)


def _rule(start: date, at: str, text: str) -> Rule:
    parts = dict(part.split("=", 1) for part in text.split(";"))
    of = next((of for of, name in _FREQUENCIES.items() if name == parts["FREQ"]), None)
    every, codes = int(parts.get("INTERVAL", "1")), _values(parts.get("BYDAY", ""))
    days = tuple(day for day in WEEK if _CODES[day] in codes)
    until = _day_and_time(parts["UNTIL"])[0] if "UNTIL" in parts else None
    if of is None or not 1 <= every <= EVERY_MAX or (of == "week" and not days) or len(days) != len(codes):
        raise ValueError(text)
    rule = Rule(start, at, every, of, days, until)
    if not rule.falls_on(start):
        raise ValueError(text)  # a DTSTART off its own rule has no defined meaning (section 3.8.5.3)
    return rule


def _values(text: str) -> list[str]:
    return text.split(",") if text else []


def _local(day: date, at: str) -> str:
    return f"{day:%Y%m%d}T{at.replace(':', '')}00"


def _day_and_time(text: str) -> tuple[date, str]:
    found = _LOCAL.fullmatch(text)
    if found is None or found[4] > "23" or found[5] > "59":
        raise ValueError(text)
    return date(int(found[1]), int(found[2]), int(found[3])), f"{found[4]}:{found[5]}"


def _monday(day: date) -> date:
    return day - timedelta(days=day.weekday())


def _days(first: date, last: date) -> list[date]:
    return [first + timedelta(days=number) for number in range((last - first).days + 1)]
