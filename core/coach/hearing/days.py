"""Days and times as coaches name them, counted from today.

A weekday is the next one after today ("from Monday" said on a Monday is in a week), "next Monday" the one of the week that comes, a
date the next such date: today or later where something begins, later than today where something ends. Weeks begin on Monday.

A date more than `FARTHEST_DAYS` ahead is more likely a slip than meant, and is none.
"""

from __future__ import annotations

import re
from datetime import date, timedelta

from core.reading.dates import DAY_NAMES, date_named, number_named

FARTHEST_DAYS = 300
_DAY = timedelta(days=1)
_WEEK = 7
_MONTHS = 12
_NOON = 12
_LAST_HOUR = 23
_LAST_MINUTE = 59
_LENGTHS = {"day": 1, "days": 1, "week": _WEEK, "weeks": _WEEK, "wk": _WEEK, "wks": _WEEK, "fortnight": 2 * _WEEK}
_LASTS = re.compile(r"(?:the )?(?:next )?(?P<count>[a-z]+|\d{1,3})(?: of)? (?P<length>[a-z]+)")
_TIME = re.compile(
    r"(?P<hour>\d{1,2})(?:[:.](?P<minute>\d\d))? ?(?P<half>am|pm)?(?P<clock> o'?clock)?(?: in the | at )?(?P<part>[a-z]*)"
)
_PARTS = {
    "morning": "am",
    "mornings": "am",
    "afternoon": "pm",
    "afternoons": "pm",
    "evening": "pm",
    "evenings": "pm",
    "night": "pm",
    "nights": "pm",
}


def begins(words: str, today: date) -> date | None:
    """The day that words name, on which something begins."""
    weekday = re.sub(r"^(?:on |this |next |coming )+", "", words) in DAY_NAMES
    return _near(_named(words, today, first=today + _DAY if weekday else today), today)


def ends(words: str, today: date) -> date | None:
    """The day that words name, at whose beginning something ends: always after today."""
    named = _near(_named(words, today, first=today + _DAY), today)
    return named if named is not None and named > today else None


def lasts(words: str, today: date) -> date | None:
    """The day on which a stretch of time from today is over: "two weeks", "the rest of the week"."""
    if re.fullmatch(r"(?:(?:the )?(?:rest|remainder) of )?(?:the|this) week", words):
        return _monday_after(today)
    found = _LASTS.fullmatch(words)
    if found is None:
        return None
    count, length = number_named(found["count"]), found["length"]
    if not count:
        return None
    if length in {"month", "months"}:
        return _near(_months_on(today, count), today)
    days = _LENGTHS.get(length)
    return None if days is None else _near(today + count * days * _DAY, today)


def time_named(words: str, part_of_day: str | None) -> str | None:
    """A time of day as "HH:MM"; None for an hour that may be morning or evening."""
    if words in {"noon", "midday", "12 noon"}:
        return "12:00"
    found = _TIME.fullmatch(words)
    if found is None or (found["part"] and found["part"] not in _PARTS):
        return None
    hour, minute = int(found["hour"]), int(found["minute"] or 0)
    half = found["half"] or _PARTS.get(found["part"]) or _PARTS.get(part_of_day or "")
    if half is not None:
        if hour > _NOON or hour == 0:
            return f"{hour:02}:{minute:02}" if found["minute"] and _NOON < hour <= _LAST_HOUR and half == "pm" else None
        hour = hour % _NOON + (_NOON if half == "pm" else 0)
    elif not found["minute"] or not (found["hour"].startswith("0") or hour >= _NOON):
        return None  # "at 6:30"
    return f"{hour:02}:{minute:02}" if hour <= _LAST_HOUR and minute <= _LAST_MINUTE else None


def _named(words: str, today: date, *, first: date) -> date | None:
    words = re.sub(r"^next week (?:on )?([a-z]+)$|^([a-z]+) next week$", r"next \1\2", re.sub(r"^on ", "", words))
    if re.fullmatch(r"(?:the )?end of (?:the|this) week", words):
        return _monday_after(today)
    if words in {"the end of next week", "end of next week"}:
        return _monday_after(today) + _WEEK * _DAY
    if re.fullmatch(r"(?:the )?end of (?:the|this) month|(?:the )?month end|next month", words):
        return _months_on(today.replace(day=1), 1)
    if re.fullmatch(r"(?:the )?new year", words):
        return date(today.year + 1, 1, 1)
    if re.fullmatch(r"\d{1,2}/\d{1,2}", words):
        return _slashed(words, first)
    with_year = re.fullmatch(r"(.+?),? (\d{4})", words)
    if with_year is not None:
        named = date_named(with_year[1], today, first=first)
        return named if named is not None and str(named.year) == with_year[2] else None
    end_of = re.fullmatch(r"(?:the )?end of ([a-z]+)", words)
    if end_of is not None:
        month = date_named(f"1 {end_of[1]}", today, first=today.replace(day=1))
        return None if month is None else _months_on(month, 1)
    return date_named(f"1 {words}", today, first=first) or date_named(words, today, first=first)


def _slashed(words: str, first: date) -> date | None:
    """Day and month around a slash, where only one of the two can be the month."""
    one, other = (int(number) for number in words.split("/"))
    if (one > _MONTHS) == (other > _MONTHS) and one != other:
        return None
    day, month = max(one, other), min(one, other)
    for year in (first.year, first.year + 1):
        try:
            named = date(year, month, day)
        except ValueError:
            continue
        if named >= first:
            return named
    return None


def _near(day: date | None, today: date) -> date | None:
    return day if day is not None and today <= day <= today + FARTHEST_DAYS * _DAY else None


def _monday_after(today: date) -> date:
    return today + (_WEEK - today.weekday()) * _DAY


def _months_on(day: date, count: int) -> date:
    """The same day some months later, or the last one of a shorter month."""
    year, month = divmod(day.year * _MONTHS + day.month - 1 + count, _MONTHS)
    for number in range(day.day, 0, -1):
        try:
            return date(year, month + 1, number)
        except ValueError:
            continue
    raise AssertionError
