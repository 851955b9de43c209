"""Training days against independent libraries. The whole, every zone by name: `python -m tests.sources.occurrences`."""

from __future__ import annotations

from datetime import UTC, date, datetime, timedelta

import icalendar
import pytest
import recurring_ical_events

from core.recurrence import recurrence_of, text_of
from core.reminders import at_clock, next_training
from tests.sources.occurrences import RULES, differences, distinct_zones, every_zone, ours, packaged_zones

EVERY = 12  # of the zones that differ in their data, one in so many is compared here; the command compares all
AWKWARD = ["Europe/Lisbon", "Africa/Casablanca", "America/Havana", "Antarctica/Troll", "Australia/Lord_Howe", "Europe/Dublin"]


def test_there_are_as_many_zones_as_there_should_be():
    """The tzdata package lists every zone and link: some six hundred names, some three hundred and forty of them distinct."""
    assert len(every_zone()) > 590
    assert 330 < len(distinct_zones()) < 400


@pytest.mark.parametrize("first_year", [2016, 2026])
def test_ten_years_of_every_rule_agree_with_dateutil_and_pytz(first_year):
    """Instant by instant, past years with their irregular changes and years to come, in zones taken evenly and in awkward ones."""
    with packaged_zones():
        assert list(differences(sorted({*distinct_zones()[::EVERY], *AWKWARD}), first_year)) == []


@pytest.mark.parametrize("name", RULES)
def test_what_is_kept_is_read_the_same_by_a_calendar_library(name):
    """The text in the database, put into a calendar file with the trainee's zone, gives the same instants there."""
    recurrence = RULES[name]
    start = recurrence.rules[0].start
    with packaged_zones():
        for zone in ("Europe/Lisbon", "America/New_York", "Australia/Lord_Howe"):
            events = text_of(recurrence).replace("DTSTART:", f"DTSTART;TZID={zone}:").replace("DATE:", f"DATE;TZID={zone}:")
            file = f"BEGIN:VCALENDAR\nVERSION:2.0\nPRODID:-//days//EN\n{events}\nEND:VCALENDAR".replace("\n", "\r\n")
            calendar = icalendar.Calendar.from_ical(file)
            found = recurring_ical_events.of(calendar).between(start, start + timedelta(days=1000))
            theirs = {event["DTSTART"].dt.astimezone(UTC) for event in found}
            until = datetime.combine(start + timedelta(days=998), datetime.min.time(), UTC)
            assert {at for at in theirs if at < until} == {at for at in ours(recurrence, zone) if at < until}


@pytest.mark.parametrize("name", RULES)
def test_what_is_kept_comes_back_the_same(name):
    """Written and read again; anything else in the text is refused."""
    recurrence = RULES[name]
    text = text_of(recurrence)
    assert recurrence_of(text) == recurrence
    for broken in (text.replace("FREQ", "FRQ"), text.replace("T0", "T7"), text + "\nX", text.replace("BEGIN", "START"), ""):
        with pytest.raises((ValueError, KeyError)):
            recurrence_of(broken)


@pytest.mark.parametrize(
    ("day", "at", "zone", "instant"),
    [
        (date(2026, 3, 29), "02:30", "Europe/Berlin", "2026-03-29T01:30"),  # no 02:30: read as +01:00, so 03:30 on the new clock
        (date(2026, 10, 25), "02:30", "Europe/Berlin", "2026-10-25T00:30"),  # 02:30 twice: the first, on summer time
        (date(2007, 3, 11), "02:30", "America/New_York", "2007-03-11T07:30"),  # the standard's own example: 03:30 EDT
        (date(2007, 11, 4), "01:30", "America/New_York", "2007-11-04T05:30"),  # the standard's own example: 01:30 EDT, not EST
        (date(2026, 10, 4), "02:15", "Australia/Lord_Howe", "2026-10-03T15:45"),  # half an hour is left out
        (date(2011, 12, 30), "06:30", "Pacific/Apia", "2011-12-30T16:30"),  # a day that Samoa left out: the same as the 31st
        (date(2028, 2, 29), "06:30", "Pacific/Kiritimati", "2028-02-28T16:30"),
    ],
)
def test_the_hour_that_is_left_out_and_the_one_that_comes_twice(day, at, zone, instant):
    """RFC 5545, section 3.3.5: the offset before a gap, the first of two."""
    with packaged_zones():
        assert at_clock(day, at, zone) == datetime.fromisoformat(instant).replace(tzinfo=UTC)


def test_a_day_that_a_zone_left_out_is_reminded_of_once():
    """In Samoa the 30th of December 2011 did not happen: every day at 06:30 gives one instant for the 30th and the 31st."""
    daily = RULES["every day 02:30, where clocks change"]
    daily = type(daily)((type(daily.rules[0])(date(2011, 12, 28), "06:30", of="day"),))
    with packaged_zones():
        after, found = datetime(2011, 12, 28, tzinfo=UTC), []
        for _ in range(5):
            _, after = next_training(daily, "Pacific/Apia", after)
            found.append(f"{after:%d %H:%M}")
    assert found == ["28 16:30", "29 16:30", "30 16:30", "31 16:30", "01 16:30"]
