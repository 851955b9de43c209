"""Days and dates as people name them: "today", "friday", "the 14th", "3 march". A date without a year is the next one."""

from __future__ import annotations

import re
from datetime import date, timedelta
from typing import TYPE_CHECKING

from core.recurrence import WEEK

if TYPE_CHECKING:
    from core.recurrence import Weekday

DAY = timedelta(days=1)

DAY_NAMES: dict[str, Weekday] = {
    word + plural: day
    for day, words in zip(
        WEEK,
        (
            ("mon", "monday"),
            ("tue", "tues", "tuesday"),
            ("wed", "weds", "wednesday"),
            ("thu", "thur", "thurs", "thursday"),
            ("fri", "friday"),
            ("sat", "saturday"),
            ("sun", "sunday"),
        ),
        strict=True,
    )
    for word in words
    for plural in ("", "s")
}
_MONTHS = {
    word: number
    for number, words in enumerate(
        ("jan january", "feb february", "mar march", "apr april", "may", "jun june", "jul july", "aug august",
         "sep sept september", "oct october", "nov november", "dec december"),
        start=1,
    )
    for word in words.split()
}  # fmt: skip
NUMBERS = {
    word: number
    for number, words in enumerate(
        ("a one", "other second two couple", "third three", "fourth four", "fifth five", "sixth six", "seven", "eight", "nine",
         "ten", "eleven", "twelve"),
        start=1,
    )
    for word in words.split()
}  # fmt: skip

NAMED_DAY = r"(?:(?:on )?(?:the |this |next )?[a-z0-9][a-z0-9-]*(?: of)?(?: [a-z0-9]+)?)"


def date_named(words: str, today: date, *, first: date) -> date | None:
    """The date that words name, on or after `first`; None when they name none."""
    words = re.sub(r"^(?:on|the|this|coming|upcoming) ", "", re.sub(r"^on ", "", words)).strip()
    if words in ("today", "tonight"):
        return today
    if words in ("tomorrow", "tmrw", "tomorow"):
        return today + DAY
    if words in ("the day after tomorrow", "day after tomorrow"):
        return today + 2 * DAY
    if words == "next week":
        return today + timedelta(days=7 - today.weekday())
    if (found := re.fullmatch(r"(next )?([a-z]+)", words)) is not None and found[2] in DAY_NAMES:
        if found[2].endswith("days"):
            return None  # "fridays" are all of them
        day = today + timedelta(days=7 - today.weekday()) if found[1] else first
        while WEEK[day.weekday()] != DAY_NAMES[found[2]]:
            day += DAY
        return day
    return _calendar_date(words, first)


def _calendar_date(words: str, first: date) -> date | None:
    if re.fullmatch(r"\d{4}-\d{2}-\d{2}", words):
        try:
            exact = date.fromisoformat(words)
        except ValueError:
            return None
        return exact if exact >= first else None
    found = re.fullmatch(r"(?:the )?(\d{1,2})(?:st|nd|rd|th)?(?: of)? ([a-z]+)", words)
    if found is not None and found[2] in _MONTHS:
        return _next_with(int(found[1]), _MONTHS[found[2]], first)
    found = re.fullmatch(r"([a-z]+)(?: the)? (\d{1,2})(?:st|nd|rd|th)?", words)
    if found is not None and found[1] in _MONTHS:
        return _next_with(int(found[2]), _MONTHS[found[1]], first)
    found = re.fullmatch(r"(?:the )?(\d{1,2})(?:st|nd|rd|th)", words)
    return None if found is None else _next_with(int(found[1]), None, first)


def _next_with(number: int, month: int | None, first: date) -> date | None:
    """The next day of this number (in this month) within a year; the 29th of February only where there is one."""
    for ahead in range(367):
        day = first + timedelta(days=ahead)
        if day.day == number and month in (None, day.month):
            return day
    return None


def number_named(word: str) -> int | None:
    """A number in digits or as a word up to twelve; "other" and "second" are 2. None when it is none."""
    return int(word) if word.isdigit() else NUMBERS.get(word)
