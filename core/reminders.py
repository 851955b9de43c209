"""When to remind a trainee, in their own zone. The only place that knows zones."""

from __future__ import annotations

from datetime import UTC, date, datetime, time, timedelta
from typing import TYPE_CHECKING
from zoneinfo import ZoneInfo

if TYPE_CHECKING:
    from core.trainee import ReminderDays, Weekday

WEEK: tuple[Weekday, ...] = ("mon", "tue", "wed", "thu", "fri", "sat", "sun")


def local_date(instant: datetime, zone: str) -> date:
    """The date on the trainee's calendar at an instant (UTC)."""
    return instant.astimezone(ZoneInfo(zone)).date()


def clock_text(instant: datetime, zone: str) -> str:
    """The wall clock of the trainee at an instant, "HH:MM"."""
    return instant.astimezone(ZoneInfo(zone)).strftime("%H:%M")


def at_clock(day: date, at: str, zone: str) -> datetime:
    """The instant (UTC) when the wall clock of `zone` shows `at` ("HH:MM") on `day`.

    A time that the spring change leaves out is read with the offset before the change, one that the autumn change repeats is the
    first of the two (RFC 5545, section 3.3.5).
    """
    local = datetime.combine(day, time.fromisoformat(at), tzinfo=ZoneInfo(zone))
    return local.astimezone(UTC)


def next_time(at: str, zone: str, after: datetime) -> datetime:
    """The first instant later than `after` when the wall clock of `zone` shows `at`."""
    day = local_date(after, zone)
    while (instant := at_clock(day, at, zone)) <= after:
        day += timedelta(days=1)
    return instant


def next_reminder(reminder: ReminderDays, zone: str, after: datetime) -> datetime:
    """The first reminder later than `after`, UTC."""
    day = local_date(after, zone)
    while True:
        if WEEK[day.weekday()] in reminder.days and (instant := at_clock(day, reminder.at, zone)) > after:
            return instant
        day += timedelta(days=1)
