"""The auditor finds what it is there to find."""

from __future__ import annotations

import sqlite3
from contextlib import closing
from datetime import UTC, datetime, timedelta

import pytest

from tests.simulation.weeks.auditor import Auditor

SUNDAY = datetime(2026, 3, 8, 20, 0, tzinfo=UTC)
END = SUNDAY + timedelta(days=4)


def at(day, clock):
    """An instant of the week after, UTC, which is Lisbon's time then."""
    return datetime.fromisoformat(f"2026-03-{day:02d}T{clock}").replace(tzinfo=UTC)


@pytest.fixture
def auditor():
    """One that knows a trainee in Lisbon with reminders on Monday and Wednesday at 06:30."""
    auditor = Auditor()
    auditor.joins(1, "Europe/Lisbon")
    auditor.handled(1, ("set", ("mon", "wed"), "06:30"), SUNDAY)
    return auditor


@pytest.fixture
def verdict(auditor, tmp_path):
    """A function that gives the verdict over a database in which one set of 11 stands."""
    file = tmp_path / "sets.sqlite3"
    with closing(sqlite3.connect(file)) as connection:
        connection.executescript(
            "CREATE TABLE set_record (trainee_id, number, reps, replaces); CREATE TABLE set_void (trainee_id, number);"
            "INSERT INTO set_record VALUES (1, 1, 12, NULL), (1, 2, 11, 1);"
        )
    auditor.handled(1, ("reps", 12), at(9, "21:00"))
    auditor.handled(1, ("amend", 12, 11), at(9, "21:01"))
    return lambda: auditor.verdict(file, END, [])


def told(auditor, kind, day, clock, **how):
    """A message reaches the trainee."""
    auditor.delivered(1, kind, at(day, clock), **({"again": False} | how))


def test_a_week_as_it_should_be_has_no_fault(auditor, verdict):
    """Two reminders, and a kind word in between."""
    told(auditor, "Reminder", 9, "06:30")
    told(auditor, "FollowUp", 10, "08:00")
    told(auditor, "Reminder", 11, "06:31")
    assert verdict() == []


def test_a_missing_reminder_is_found_unless_the_program_was_away(auditor, verdict):
    """Wednesday's did not come."""
    told(auditor, "Reminder", 9, "06:30")
    assert [fault for fault in verdict() if "no reminder for 2026-03-11" in fault]
    auditor.program_away(at(11, "06:00"), at(11, "09:00"))
    assert verdict() == []


def test_a_short_absence_is_no_excuse(auditor, verdict):
    """Back after a quarter of an hour, the reminder is late and not lost."""
    told(auditor, "Reminder", 9, "06:30")
    auditor.program_away(at(11, "06:25"), at(11, "06:34"))
    assert [fault for fault in verdict() if "no reminder for 2026-03-11" in fault]


def test_what_was_put_off_and_did_not_come_is_found(auditor, verdict):
    """Half an hour later, on Wednesday."""
    told(auditor, "Reminder", 9, "06:30")
    told(auditor, "Reminder", 11, "06:30")
    auditor.tried(1, ("later", 30), at(11, "06:31"))
    auditor.handled(1, ("later", 30), at(11, "06:31"))
    assert [fault for fault in verdict() if "put off" in fault]
    told(auditor, "Reminder", 11, "07:01")
    assert not [fault for fault in verdict() if "put off" in fault]


def test_what_comes_after_a_come_back_is_found(auditor, verdict):
    """Silence, until the trainee speaks."""
    told(auditor, "ComeBack", 10, "08:00")
    told(auditor, "Reminder", 11, "06:30")
    assert [fault for fault in verdict() if "after the come-back" in fault]


def test_a_reminder_that_nobody_wanted_is_found(auditor, verdict):
    """On a Tuesday; and on a Monday three hours late."""
    told(auditor, "Reminder", 9, "09:45")
    told(auditor, "Reminder", 10, "06:30")
    told(auditor, "Reminder", 11, "06:30")
    assert len([fault for fault in verdict() if "nobody wanted" in fault]) == 2


def test_what_comes_after_stop_is_found(auditor, verdict):
    """From the moment at which the stop was handled."""
    told(auditor, "Reminder", 9, "06:30")
    auditor.handled(1, ("stop",), at(9, "07:00"))
    told(auditor, "FollowUp", 10, "08:00")
    assert [fault for fault in verdict() if "after stop" in fault]


def test_what_comes_at_night_or_twice_a_day_is_found(auditor, verdict):
    """A kind word at six in the morning; a second one the same day. The same message come again is no second one."""
    told(auditor, "Reminder", 9, "06:30")
    told(auditor, "Reminder", 9, "06:30", again=True)
    told(auditor, "FollowUp", 10, "06:00")
    told(auditor, "FollowUp", 10, "09:00")
    told(auditor, "Reminder", 11, "06:30")
    faults = verdict()
    assert len([fault for fault in faults if "at night" in fault]) == 1
    assert [fault for fault in faults if "more than one on 2026-03-10" in fault]
    assert len(faults) == 2


def test_a_reminder_in_a_workout_or_after_it_is_found(auditor, verdict):
    """The workout begins with the first card, and ends with the summary."""
    told(auditor, "Card", 9, "06:25")
    told(auditor, "Reminder", 9, "06:30")
    told(auditor, "Summary", 9, "06:40")
    assert [fault for fault in verdict() if "during a workout" in fault]
    told(auditor, "Card", 11, "05:25")
    told(auditor, "Summary", 11, "05:40")
    told(auditor, "Reminder", 11, "06:30")
    assert [fault for fault in verdict() if "after the day's workout" in fault]


def test_lost_and_doubled_sets_are_found(auditor, verdict):
    """One that was told and is not there, one that is there and was not told."""
    told(auditor, "Reminder", 9, "06:30")
    told(auditor, "Reminder", 11, "06:30")
    auditor.handled(1, ("reps", 9), at(9, "21:02"))
    assert [fault for fault in verdict() if "sets lost: {9: 1}" in fault]
    auditor.handled(1, ("amend", 11, 9), at(9, "21:03"))
    assert [fault for fault in verdict() if "sets too many: {11: 1}" in fault]
