"""Diaries for the tests of safety: workouts on given days, sets, pains."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta
from decimal import Decimal

from core.diary import Ending, History, PainRecord, SetRecord, WorkoutRecord
from core.units import Load, Unit

NOW = datetime(2026, 6, 1, 7, 0, tzinfo=UTC)
SLUGS = ("goblet-squat", "one-arm-row", "push-up", "romanian-deadlift")


def day(days_ago):
    """The instant so many days before NOW."""
    return NOW - timedelta(days=days_ago)


def kg(amount):
    """A load in kilograms."""
    return Load(Decimal(str(amount)), Unit.KG)


def workout(number, days_ago, *, minutes=40, effort=None):
    """A workout that ended, so many days before NOW."""
    end = day(days_ago) + timedelta(minutes=minutes)
    return WorkoutRecord(
        number, "Kitchen seven", day(days_ago), end, Ending.COMPLETE, 1200, None if effort is None else Decimal(str(effort))
    )


def noted(number, workout_number, days_ago, **fields):
    """A set of goblet squats, a minute at four seconds a rep, unless told otherwise."""
    usual = {
        "circuit": "Kitchen seven",
        "round": 1,
        "station": 1,
        "exercise": "goblet-squat",
        "reps": 12,
        "load": kg(12),
        "work_s": 60,
        "rep_s": 4.0,
    }
    return SetRecord(number, workout_number, day(days_ago), **(usual | fields))


def pain(place="knee", *, days_ago=2, urgent=False, exercise="goblet-squat", **fields):
    """Pain, reported so many days before NOW."""
    return PainRecord(day(days_ago), place, None, urgent, exercise, **fields)


def trained(*days_ago, efforts=None):
    """A diary with a workout on each of these days before NOW, oldest first."""
    efforts = efforts or [None] * len(days_ago)
    return History(
        workouts=tuple(
            workout(number, ago, effort=effort) for number, (ago, effort) in enumerate(zip(days_ago, efforts, strict=True), 1)
        )
    )
