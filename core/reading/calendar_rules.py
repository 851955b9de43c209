"""Days with times of day, as rules for reminders: "mon wed 6:30am and sat 9am", "every other day at 7am from monday".

A time that may be morning or evening is asked about, unless one of the two is at night.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import TYPE_CHECKING

from core.reading.acts import Days, HalfOfDay, Repeat
from core.reading.dates import DAY, DAY_NAMES, NAMED_DAY, date_named, number_named
from core.recurrence import EVERY_MAX, WEEK

if TYPE_CHECKING:
    from datetime import date

    from core.recurrence import Weekday

MORNING_FROM, NIGHT_FROM, NOON = 5, 9, 12  # "at 4" is no time to train in the morning, "at 9" none in the evening

_GROUPS: dict[str, tuple[Weekday, ...]] = {
    "weekdays": WEEK[:5], "weekday": WEEK[:5], "weekends": WEEK[5:], "weekend": WEEK[5:], "daily": WEEK, "everyday": WEEK,
    "mwf": ("mon", "wed", "fri"),
}  # fmt: skip


@dataclass(frozen=True)
class _Time:
    """A time of day, "HH:MM", and where its words stand; `evening` is the other one it may be, None when it is settled."""

    at: str
    evening: str | None
    span: tuple[int, int]


_LEAD = (
    r"(?:can you |could you )?(?:remind me(?: to train| to work out)?|reminders?|set (?:up )?(?:my |a )?reminders?"
    r"|change (?:my |the )?reminders?|i(?:'ll| will| want to| would like to|'d like to)? train|i (?:can|could) train|let'?s train"
    r"|train(?:ing)?|my days are|ping me|nudge me)(?: to| for| on| at)?"
)


def repeat_said(line: str, today: date) -> Repeat | HalfOfDay | None:
    """Rules for reminders: days (or every so many days) with a time each, or one time for all, and a first day."""
    rest, lead = line, re.match(rf"{_LEAD}(?= |$)", line)
    if lead is not None:
        rest = line[lead.end() :].strip()
    spoken = _span(rest, today)
    if spoken is None:
        return None
    rest, first, last = spoken
    parts = _parts(rest)
    if parts is None:
        return None
    rules, times = _assembled(parts)
    if not rules or not (lead is not None or times or any(rule.every > 1 for rule in rules)):
        return None
    open_times = [time for time in times if time.evening is not None]
    if open_times:
        return _half(line, rest, open_times)
    return Repeat(rules, first, last)


def _span(rest: str, today: date) -> tuple[str, date | None, date | None] | None:
    """The words without "from monday" and "until the 30th" at their end, and those days; None when a day cannot be read."""
    first = last = None
    ends = re.search(rf"(?:^| |,)(?:until|till|til) (?P<day>{NAMED_DAY})$", rest)
    if ends is not None:
        last, rest = date_named(ends["day"], today, first=today + DAY), rest[: ends.start()].strip(" ,")
    starts = re.search(rf"(?:^| |,)(?:from|starting(?: from| on)?|beginning) (?P<day>{NAMED_DAY})(?: on| onwards?)?$", rest)
    if starts is not None:
        first, rest = date_named(starts["day"], today, first=today + DAY), rest[: starts.start()].strip(" ,")
    unread = (ends is not None and last is None) or (starts is not None and first is None)
    return None if unread or (first is not None and last is not None and first > last) else (rest, first, last)


def _half(line: str, rest: str, times: list[_Time]) -> HalfOfDay | None:
    """The whole message again, with the hour as morning and as evening; one such time at most."""
    if len(times) != 1 or times[0].evening is None:
        return None
    begin, end = times[0].span
    at = line.index(rest)
    before, after = line[: at + begin], line[at + end :]
    return HalfOfDay(f"{before}at {times[0].at}{after}", f"{before}at {times[0].evening}{after}")


def _parts(rest: str) -> list[Days | _Time] | None:
    """Days and times in the order said; None when a word is neither."""
    found: list[Days | _Time] = []
    position = 0
    while position < len(rest):
        if (gap := re.match(r"(?: |,|&|\+|and\b|on\b|also\b|then\b|plus\b|;)+", rest[position:])) is not None:
            position += gap.end()
            continue
        read = _time(rest, position) or _days(rest, position)
        if read is None:
            return None
        part, position = read
        if isinstance(part, Days) and found and isinstance(before := found[-1], Days) and _joins(before, part):
            days = tuple(day for day in WEEK if day in before.days or day in part.days)
            found[-1] = Days("week", before.every, days)
        else:
            found.append(part)
    return found


def _joins(before: Days, part: Days) -> bool:
    """Whether days go on a list of days."""
    return before.of == part.of == "week" and (part.every == 1)


def _assembled(parts: list[Days | _Time]) -> tuple[tuple[Days, ...], list[_Time]]:
    """Each rule with its time: one time for all of them, or one beside each; no rules when they do not match."""
    rules = [part for part in parts if isinstance(part, Days)]
    times = [part for part in parts if isinstance(part, _Time)]
    if len(times) <= 1:
        at = times[0].at if times else None
        return tuple(Days(rule.of, rule.every, rule.days, at) for rule in rules), times
    kinds = [isinstance(part, _Time) for part in parts]
    if len(times) != len(rules) or kinds != [kinds[0], not kinds[0]] * len(rules):
        return (), times
    return tuple(Days(rule.of, rule.every, rule.days, time.at) for rule, time in zip(rules, times, strict=True)), times


def _days(rest: str, position: int) -> tuple[Days, int] | None:
    """Days that begin at a position: a day, a range, a group, "every other day", "every second week on"."""
    text = rest[position:]
    every = re.match(
        r"(?:every|each) (?:(other|second|third|fourth|fifth|sixth|\d{1,2}|two|three|four|five|six) )?(days?|weeks?)\b", text
    )
    if every is not None:
        count = 1 if every[1] is None else number_named(every[1])
        if count is None or not 1 <= count <= EVERY_MAX:
            return None
        if every[2].startswith("day"):
            return (Days("week", 1, WEEK) if count == 1 else Days("day", count)), position + every.end()
        gap = re.match(r"(?:,)?(?: on)? ", text[every.end() :])
        named = None if gap is None else _days(rest, position + every.end() + gap.end())
        return None if named is None or named[0].every != 1 else (Days("week", count, named[0].days), named[1])
    some = re.match(r"(?:every|each|on)? ?(?:(other|second) )?([a-z]+)(?: ?(?:-|to|thru|through|till) ?([a-z]+))?\b", text)
    if some is None:
        return None
    if some[2] in _GROUPS and some[1] is None:
        return Days("week", 1, _GROUPS[some[2]]), position + some.end(2)
    if some[2] not in DAY_NAMES:
        return None
    if some[3] in DAY_NAMES and some[1] is None:
        begin, end = WEEK.index(DAY_NAMES[some[2]]), WEEK.index(DAY_NAMES[some[3]])
        days = WEEK[begin : end + 1] if begin <= end else (*WEEK[begin:], *WEEK[: end + 1])
        return Days("week", 1, tuple(day for day in WEEK if day in days)), position + some.end(3)
    return Days("week", 1 if some[1] is None else 2, (DAY_NAMES[some[2]],)), position + some.end(2)


_HALF = (
    r"(?: ?(?P<half>am|pm|a\.m|p\.m|in the mornings?|in the evenings?|in the afternoons?|mornings?|evenings?|tonight|at night))?"
)


def _time(rest: str, position: int) -> tuple[_Time, int] | None:
    """A time of day that begins at a position."""
    text = rest[position:]
    if (noon := re.match(r"(?:at )?(?:noon|midday)\b", text)) is not None:
        return _Time("12:00", None, (position, position + noon.end())), position + noon.end()
    half = re.match(rf"(?:at )?half (?:past )?(?P<hour>\w+){_HALF}(?=$|[ ,;&+])", text)
    quarter = re.match(rf"(?:at )?(?:a )?quarter (?P<way>past|to) (?P<hour>\w+){_HALF}(?=$|[ ,;&+])", text)
    clock = re.match(rf"(?P<lead>at )?(?P<hour>\d{{1,2}})(?:[:.h](?P<minute>\d{{2}}))?(?: ?o'?clock)?{_HALF}(?=$|[ ,;&+])", text)
    worded = re.match(rf"at (?P<hour>[a-z]+){_HALF}(?=$|[ ,;&+])", text)
    for found in (half, quarter, clock, worded):
        if found is None or (hour := number_named(found["hour"])) is None:
            continue
        minute, sure = 30 if found is half else 0, hour > NOON
        if found is clock:
            if not (found["lead"] or found["half"] or found["minute"]):
                continue  # a bare number is no time
            minute, sure = int(found["minute"] or 0), sure or found["hour"].startswith("0")
        if found is quarter:
            hour, minute = (hour, 15) if found["way"] == "past" else (hour - 1, 45)
        return _settled(hour, minute, found["half"], (position, position + found.end()), sure=sure)
    return None


def _settled(hour: int, minute: int, half: str | None, span: tuple[int, int], *, sure: bool) -> tuple[_Time, int] | None:
    """The time as said; where morning or evening was not said, the one that is not at night, or both."""
    if hour > 23 or minute > 59:  # noqa: PLR2004 - a clock
        return None
    if half is not None and not sure:
        late = half.replace(".", "") in {"pm", "tonight", "at night"} or "evening" in half or "afternoon" in half
        hour = hour % NOON + (NOON if late else 0)
        sure = True
    if sure or hour in (0, NOON):
        return _Time(f"{hour:02d}:{minute:02d}", None, span), span[1]
    if hour < MORNING_FROM:
        return _Time(f"{hour + NOON:02d}:{minute:02d}", None, span), span[1]
    evening = None if hour >= NIGHT_FROM else f"{hour + NOON:02d}:{minute:02d}"
    return _Time(f"{hour:02d}:{minute:02d}", evening, span), span[1]
