"""What a day was: trained, missed, made up for, held back; and that nobody misses what was not planned."""

from dataclasses import replace
from datetime import UTC, date, datetime, timedelta

import pytest

from core.diary import Ending
from core.health import NoteKind, SafetyNote, Symptom
from core.recurrence import WEEK
from core.review.days import days_of_week, missed_in_a_row
from core.review.person import Person, Week
from core.review_facts import DayKind
from core.trainee import Block, Pause
from tests.core.reminders.given import Weeks
from tests.reviewing import BEGAN, CIRCUIT, DAY, MONDAY, Book

SQUATS = ("goblet-squat", 12, 16)
SUNDAY = datetime(2026, 3, 8, 20, tzinfo=UTC)
LETTER = {
    DayKind.TRAINED: "T",
    DayKind.MISSED: "M",
    DayKind.MOVED: "u",
    DayKind.AHEAD: "a",
    DayKind.PAUSED: "p",
    DayKind.FREE: ".",
}


def seen(book, now=SUNDAY, monday=MONDAY):
    """The seven days of a week, a letter each."""
    return "".join(LETTER[kind] for kind in days_of_week(book.person, Week(monday), now))


def test_a_planned_day_is_trained_missed_or_still_to_come():
    """On Wednesday evening Monday is done, Wednesday still open, Friday to come; on Sunday what was not done was missed."""
    book = Book()
    book.trains(MONDAY, SQUATS)
    assert seen(book, datetime(2026, 3, 4, 20, tzinfo=UTC)) == "T.a.a.."
    assert seen(book) == "T.M.M.."


def test_a_workout_on_a_free_day_makes_up_for_a_missed_one_of_its_week():
    """Tuesday for Monday, also when it came before; one makes up for one, and not for another week's."""
    book = Book()
    book.trains(MONDAY + DAY, SQUATS)
    assert seen(book) == "uTM.M.."
    book.trains(MONDAY + 6 * DAY, SQUATS)
    assert seen(book) == "uTu.M.T"
    assert seen(book, SUNDAY + 7 * DAY, MONDAY + 7 * DAY) == "M.M.M.."


def test_somebody_without_days_misses_nothing():
    """No adherence is claimed where no days are known."""
    book = Book(days="")
    book.trains(MONDAY + DAY, SQUATS)
    assert seen(book) == ".T....."


def test_the_days_of_a_plan_count_where_the_trainee_has_set_none():
    """From the plan's first day on; own days go before the plan's."""
    book = Book(days="")
    block = Block((CIRCUIT,), (WEEK[1], WEEK[3]), 4, (), MONDAY + 2 * DAY)
    book.trainee = replace(book.trainee, block=block)
    assert seen(book) == "...M..."
    own = Book(days="Sat")
    own.trainee = replace(own.trainee, block=block)
    assert seen(own) == ".....M."


def test_nobody_misses_days_before_they_began():
    """Neither before the cautions were accepted, nor before the reminders were set, by the hour."""
    late = Book()
    late.trainee = replace(late.trainee, cautions_accepted_at=datetime(2026, 3, 4, 9, tzinfo=UTC))
    assert seen(late) == "..M.M.."
    changed = Book()
    changed.trainee = replace(changed.trainee, reminders_since=datetime(2026, 3, 4, 18, 1, tzinfo=UTC))
    assert seen(changed) == "....M.."
    waiting = Book()
    waiting.trainee = replace(waiting.trainee, cautions_accepted_at=None)
    assert seen(waiting) == "......."


def test_a_pause_of_the_coach_is_no_miss():
    """From its first day to the day before it ends; without an end until it is told."""
    book = Book()
    book.trainee = replace(book.trainee, pause=Pause(datetime(2026, 3, 3, tzinfo=UTC), date(2026, 3, 6)))
    assert seen(book) == "M.p.M.."
    book.trainee = replace(book.trainee, pause=Pause(datetime(2026, 3, 3, tzinfo=UTC), None))
    assert seen(book) == "M.p.p.."


def test_a_warning_sign_is_no_miss_until_it_is_cleared():
    """Nobody trains through a sign; the day they say that they are cleared counts again."""
    book = Book()
    book.hurts(MONDAY + DAY, "chest", urgent=True)
    assert seen(book) == "M.p.p.."
    told = SafetyNote(datetime(2026, 3, 6, 8, tzinfo=UTC), NoteKind.CLEARED, "trainee")
    book.history = replace(book.history, notes=(told,))
    assert seen(book) == "M.p.M.."


def test_a_clearance_that_is_waited_for_is_no_miss():
    """As long as the answers ask for one, from when they were given."""
    book = Book()
    health = replace(book.trainee.health, symptoms=(Symptom.DIZZY,), decided_at=datetime(2026, 3, 3, 9, tzinfo=UTC))
    book.trainee = replace(book.trainee, health=health)
    assert seen(book) == "M.p.p.."


@pytest.mark.parametrize(("zone", "expected"), [("Asia/Tokyo", "T.T.T.."), ("America/New_York", "T.T.T..")])
def test_days_are_those_of_the_trainees_own_clock(zone, expected):
    """Late in the evening in New York it is the next day in UTC, early in Tokyo the day before."""
    book = Book(zone=zone)
    for days in (0, 2, 4):
        book.trains(MONDAY + days * DAY, SQUATS, clock="22:30" if zone.startswith("America") else "06:30")
    assert seen(book) == expected


def test_a_workout_without_a_set_counts_only_when_they_came_for_it():
    """Opened and left is no training; done to the end without a number told, or stopped for pain, is."""
    for ending, expected in ((Ending.SILENT, "M.M.M.."), (Ending.COMPLETE, "T.M.M.."), (Ending.PAIN, "T.M.M..")):
        book = Book()
        book.trains(MONDAY, ending=ending)
        assert seen(book) == expected


def test_missed_days_in_a_row_end_at_the_last_workout():
    """Over the weeks, held days left out; none while the coach's pause holds."""
    book = Book()
    book.trains(MONDAY, SQUATS)
    now = SUNDAY + 7 * DAY
    run = missed_in_a_row(book.person, now)
    assert [day.isoformat() for day in run] == ["2026-03-04", "2026-03-06", "2026-03-09", "2026-03-11", "2026-03-13"]
    book.trains(date(2026, 3, 12), SQUATS)
    assert missed_in_a_row(book.person, now) == (date(2026, 3, 13),)
    book.trainee = replace(book.trainee, pause=Pause(now - timedelta(days=1), None))
    assert missed_in_a_row(book.person, now) == ()
    assert missed_in_a_row(Book().person, BEGAN + DAY) == ()


def test_a_day_that_was_taken_off_is_never_missed():
    """Not even when more days are taken off later; of what lies behind, the trainee is told no more."""
    weeks = Weeks()
    weeks.at("2026-03-01 21:00").says("skip tomorrow")
    weeks.at("2026-03-06 05:00").says("not today")
    trainee = replace(weeks.ledger.trainee, cautions_accepted_at=BEGAN)
    days = days_of_week(Person("Robin", trainee, weeks.circuit, weeks.history), Week(MONDAY), SUNDAY)
    assert [LETTER[kind] for kind in days] == [".", ".", "M", ".", ".", ".", "."]
    (told,) = weeks.at("2026-03-07 12:00").says("my reminders").said
    assert told.reminders.excluded == ()
