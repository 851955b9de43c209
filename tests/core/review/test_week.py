"""A trainee's week: sets that hold, loads beside the last time, muscle groups, effort."""

from datetime import UTC, datetime, timedelta
from decimal import Decimal

from core.body_effect import week_of as planned_week
from core.circuit import Side
from core.review.person import Week
from core.review.week import week_asked, week_of
from core.units import Load, Unit
from tests.reviewing import CIRCUIT, DAY, MONDAY, Book

NOW = datetime(2026, 3, 15, 20, tzinfo=UTC)
SECOND = Week(MONDAY + 7 * DAY)


def test_a_station_is_one_set_a_round_whether_or_not_sides_are_told_apart():
    """Left and right are one set, and of two sides the weaker counts; two reports without a side are two."""
    book = Book()
    number = book.trains(MONDAY, ("goblet-squat", 12, 16), ("goblet-squat", 11, 16))
    at = book.at(MONDAY, "18:20")
    book.notes(number, at, "one-arm-row", 10, 14, station=3, side=Side.LEFT)
    book.notes(number, at, "one-arm-row", 9, 14, station=3, side=Side.RIGHT)
    book.notes(number, at, "one-arm-row", 8, 14, station=3, round=2, side=Side.EACH)
    week = week_of(book.person, Week(MONDAY), NOW)
    assert week.sets == 4
    assert [(load.exercise, load.sets, load.reps) for load in week.loads] == [
        ("Goblet squat", 2, (12, 11)),
        ("One-arm row", 2, (9, 8)),
    ]


def test_what_was_undone_does_not_count_and_a_correction_counts_once():
    """Only records that hold are looked at."""
    book = Book()
    book.trains(MONDAY, ("goblet-squat", 12, 16), ("goblet-squat", 40, 16), ("goblet-squat", 10, 60))
    book.corrects(2, reps=14)
    book.voids(3)
    week = week_of(book.person, Week(MONDAY), NOW)
    (load,) = week.loads
    assert (week.sets, load.reps, load.top) == (2, (12, 14), Load(Decimal(16), Unit.KG))


def test_a_load_stands_beside_that_of_the_last_time_before_the_week():
    """The heaviest of the last workout before, not of the best ever; pounds and kilograms are compared as what they weigh."""
    book = Book()
    book.trains(MONDAY, ("goblet-squat", 8, 20), ("floor-press", 8, 12), ("plank", None, None))
    book.trains(MONDAY + 2 * DAY, ("goblet-squat", 12, 16), ("goblet-squat", 12, 14))
    book.trains(MONDAY + 7 * DAY, ("goblet-squat", 9, 18), ("floor-press", 12, 12), ("hammer-curl", 9, 8), ("plank", None, None))
    loads = {load.exercise: (load.before and load.before.amount, load.step) for load in week_of(book.person, SECOND, NOW).loads}
    assert loads == {"Goblet squat": (16, 1), "Floor press": (12, 0), "Hammer curl": (None, 0), "Plank": (None, 0)}
    pounds = Book(unit=Unit.LB)
    pounds.trains(MONDAY, ("goblet-squat", 8, 40))
    number = pounds.trains(MONDAY + 7 * DAY)
    pounds.notes(number, pounds.at(MONDAY + 7 * DAY), "goblet-squat", 8, None)
    pounds.corrects(2, load=Load(Decimal(18), Unit.KG))  # 39.7 lb
    (load,) = week_of(pounds.person, SECOND, NOW).loads
    assert load.step == -1


def test_muscle_groups_of_a_circuit_done_are_those_that_the_circuit_promises():
    """Whoever does every station of every round on three days gets what `core.body_effect` says of such a week."""
    book = Book()
    for days in (0, 2, 4):
        number = book.trains(MONDAY + days * DAY)
        for turn in range(1, CIRCUIT.rounds + 1):
            for place, station in enumerate(CIRCUIT.stations, start=1):
                book.notes(number, book.at(MONDAY + days * DAY), station.exercise, 10, 8, round=turn, station=place)
    done = {group.group: (group.sets, group.days) for group in week_of(book.person, Week(MONDAY), NOW).groups}
    assert done == {name: (line.sets, line.days) for name, line in planned_week([CIRCUIT] * 3).items()}


def test_effort_is_the_mean_of_what_was_said_and_load_its_minutes():
    """Session effort times minutes (Foster et al. 2001); a workout whose effort was not said adds nothing, pauses do not count."""
    book = Book()
    book.trains(MONDAY, ("plank", None, None), minutes=30, effort=6)
    book.trains(MONDAY + DAY, ("plank", None, None), minutes=40, effort=7.5, paused_s=600)
    book.trains(MONDAY + 2 * DAY, ("plank", None, None), minutes=50)
    week = week_of(book.person, Week(MONDAY), NOW)
    assert (week.effort, week.load) == (Decimal("6.75"), 6 * 30 + 225)
    silent = week_of(Book().person, Week(MONDAY), NOW)
    assert (silent.effort, silent.load, silent.sets) == (None, None, 0)


def test_days_planned_and_kept_are_told_only_where_days_are_set():
    """Three planned, one missed: two kept. Without days there is nothing to keep."""
    book, free = Book(), Book(days="")
    for days in (0, 1, 2):
        book.trains(MONDAY + days * DAY, ("plank", None, None))
        free.trains(MONDAY + days * DAY, ("plank", None, None))
    week = week_of(book.person, Week(MONDAY), NOW)
    assert (week.trained, week.planned, week.kept, week.missed) == (3, 3, 3, ())
    assert week_of(free.person, Week(MONDAY), NOW).planned is None


def test_whose_monday_it_is_depends_on_who_asks():
    """Sunday night in Lisbon is Monday morning in Tokyo."""
    night = datetime(2026, 3, 8, 20, tzinfo=UTC)
    assert week_asked("this", "Europe/Lisbon", night).monday == MONDAY
    assert week_asked("this", "Asia/Tokyo", night).monday == MONDAY + timedelta(days=7)
    assert week_asked("last", "Asia/Tokyo", night).monday == MONDAY
