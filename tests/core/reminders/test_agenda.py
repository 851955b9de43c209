"""What do I do today? An answer for every kind of day."""

from __future__ import annotations

from datetime import UTC, date, datetime, timedelta

import pytest

from bot.bootstrap import demo
from core.agenda import EASED_FROM_DAYS, DayKind, PlannedDay, PlannedDays, agenda, days_of, days_since, eased
from core.diary import Ending, WorkoutRecord
from core.recurrence import Recurrence, Rule, weekly

MONDAY = date(2026, 3, 2)
MWF = Recurrence((weekly(("mon", "wed", "fri"), "06:30", MONDAY),))
LISBON = "Europe/Lisbon"


def trained(day, at="07:00", *, ended=True):
    """A workout on a day of March 2026, UTC."""
    begun = datetime.fromisoformat(f"2026-03-{day:02d}T{at}").replace(tzinfo=UTC)
    return WorkoutRecord(
        1, "Kitchen seven", begun, begun + timedelta(minutes=40) if ended else None, Ending.COMPLETE if ended else None
    )


def on(day, *workouts, recurrence=MWF, zone=LISBON):
    """The agenda of a day of March 2026."""
    today = date(2026, 3, day)
    return agenda(days_of(recurrence, "Kitchen seven", today), workouts, zone, today)


def test_a_training_day_names_its_time_and_the_day_after_it():
    """Wednesday: today at 06:30, then Friday."""
    wednesday = on(4)
    assert wednesday.kind is DayKind.TRAINING
    assert wednesday.planned == PlannedDay(date(2026, 3, 4), "06:30", "Kitchen seven")
    assert wednesday.coming.day == date(2026, 3, 6)


def test_a_rest_day_names_the_next_training_day():
    """Thursday: rest, then Friday."""
    assert (on(5).kind, on(5).coming.day) == (DayKind.REST, date(2026, 3, 6))


def test_a_day_that_was_taken_out_is_off():
    """Not a rest day like any other: it was said so."""
    away = MWF.without(date(2026, 3, 4), date(2026, 3, 10))
    assert [on(day, recurrence=away).kind for day in (2, 4, 5, 6, 11)] == [
        DayKind.TRAINING, DayKind.OFF, DayKind.REST, DayKind.OFF, DayKind.TRAINING
    ]  # fmt: skip
    assert on(6, recurrence=away).coming.day == date(2026, 3, 11)


def test_a_day_on_which_one_has_trained_is_done():
    """On the trainee's own calendar, whatever day it is elsewhere; a workout that runs is not done."""
    assert on(4, trained(4)).kind is DayKind.DONE
    assert on(5, trained(5)).kind is DayKind.DONE
    assert on(4, trained(4, ended=False)).kind is DayKind.TRAINING
    assert on(4, trained(3, "20:00"), zone="Australia/Sydney").kind is DayKind.DONE
    assert on(3, trained(3, "20:00"), zone="Australia/Sydney").kind is DayKind.REST


def test_without_days_every_day_is_good():
    """Nobody who sets no days is told to rest."""
    assert on(3, recurrence=None).kind is DayKind.OPEN


def test_after_the_last_day_the_plan_is_over():
    """And not before it."""
    ended = Recurrence((Rule(MONDAY, "06:30", days=("mon",), until=date(2026, 3, 16)),))
    assert [on(day, recurrence=ended).kind for day in (9, 10, 16, 17)] == [
        DayKind.TRAINING, DayKind.REST, DayKind.TRAINING, DayKind.OVER
    ]  # fmt: skip


def test_a_plan_of_several_circuits_is_fed_in_as_days():
    """Where the days come from does not matter; each names its own circuit."""
    plan = PlannedDays(
        (PlannedDay(date(2026, 3, 3), None, "Legs"), PlannedDay(date(2026, 3, 5), None, "Push and pull")), ends_on=date(2026, 3, 5)
    )
    first = agenda(plan, (), LISBON, date(2026, 3, 3))
    assert (first.planned.circuit, first.coming.circuit) == ("Legs", "Push and pull")
    assert agenda(plan, (), LISBON, date(2026, 3, 6)).kind is DayKind.OVER


@pytest.mark.parametrize(("days_off", "rounds"), [(None, 3), (0, 3), (EASED_FROM_DAYS - 1, 3), (EASED_FROM_DAYS, 2), (200, 2)])
def test_the_first_workout_after_a_long_break_is_a_round_shorter(days_off, rounds):
    """From ten days on; somebody new has had no break."""
    assert eased(demo().circuit, days_off).rounds == rounds


def test_a_single_round_stays():
    """There is nothing to take off."""
    circuit = demo().circuit
    single = type(circuit)(**{**vars(circuit), "rounds": 1})
    assert eased(single, 30) == single


def test_days_since_the_last_workout_are_days_of_the_calendar():
    """Late on Monday to early on Wednesday is two."""
    assert days_since((trained(2, "23:00"),), LISBON, date(2026, 3, 4)) == 2
    assert days_since((), LISBON, date(2026, 3, 4)) is None
