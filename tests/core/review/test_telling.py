"""What is told of a week: to a coach of everyone or of one, to a trainee of their own."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta
from decimal import Decimal

import pytest

from bot.wording import worded
from core.review.looking import ROWS
from core.review.telling import how_is, own_week, sheet_of, week_told, who_missed, who_needs_word, who_trained
from core.review_facts import DayKind, FlagKind
from core.review_messages import ComingDay, TrainedLine
from core.trainee import Block, Pause
from core.units import Load, Unit
from core.wishes import CardNote, HeldLoad, Swapped, Wishes
from tests.reviewing import CIRCUIT, DAY, EVENING, MONDAY, Book, month

SUNDAY = EVENING.date()
LAST = SUNDAY - 6 * DAY  # the Monday of the week


def people():
    """Three: one trained three days, one a day of three, one has no days and did not come."""
    ana, bo, cy = Book("Ana"), Book("Bo"), Book("Cy", days="")
    for days in (0, 2, 4):
        ana.trains(LAST + days * DAY, ("goblet-squat", 12, 16), effort=6)
    for days in (-7, -5, -3, 0):
        bo.trains(LAST + days * DAY, ("goblet-squat", 12, 14 + (days == 0) * 2), effort=8)
    return ana, bo, cy


def persons(books):
    """As a review sees them."""
    return [book.person for book in books]


def text(message):
    """The words of a message in one line."""
    return worded(message).text.replace("\n", " ").replace("   ", " ")


def test_who_trained_lists_most_days_first_and_who_did_not():
    """Last week it was Bo alone, every day."""
    told = who_trained(persons(people()), "this", "UTC", EVENING)
    assert told.trained == (TrainedLine("Ana", 3, 3), TrainedLine("Bo", 1, 3))
    assert told.others == ("Cy",)
    last = who_trained(persons(people()), "last", "UTC", EVENING)
    assert (last.monday, last.trained) == (LAST - 7 * DAY, (TrainedLine("Bo", 3, 3),))
    assert "Ana: 3 of 3 days" in text(told)


def test_who_missed_claims_nothing_of_those_without_days():
    """Bo missed two days; of Cy nothing is known."""
    told = who_missed(persons(people()), "this", "UTC", EVENING)
    assert [(line.name, [day.day for day in line.days]) for line in told.missed] == [("Bo", [25, 27])]
    assert told.without_days == ("Cy",)


def test_who_needs_a_word_is_told_with_the_most_urgent_first():
    """A sign before a pain, and Ana, who is well, not at all."""
    ana, bo, cy = people()
    bo.hurts(SUNDAY - DAY, "knee")
    cy.hurts(SUNDAY, "chest", urgent=True)
    told = who_needs_word(persons((ana, bo, cy)), EVENING)
    assert [(line.name, line.flags[0].kind) for line in told.lines] == [("Cy", FlagKind.SIGN), ("Bo", FlagKind.PAIN)]
    assert "knee" not in text(told)


def test_the_week_is_five_lines_and_a_picture_with_a_row_for_each():
    """However long it was: a headline, then five things."""
    for books in (people(), month(12), month(50, weeks=1)):
        told = week_told(persons(books), "this", "UTC", EVENING)
        lines = worded(told).text.split("\n")
        assert sum(line.startswith("• ") for line in lines) == 5
        assert len(told.picture.rows) + told.picture.more == len(books)
        assert len(told.picture.rows) <= ROWS


def test_the_figures_of_a_week_are_those_of_its_people():
    """Four days, four of six planned kept, one load up, effort 6.5 as said four times."""
    told = week_told(persons(people()), "this", "UTC", EVENING)
    assert (told.people, told.trained, told.days, told.kept, told.planned) == (3, 2, 4, 4, 6)
    assert (told.up, told.down, told.effort, told.efforts) == (1, 0, Decimal("6.5"), 4)
    assert [row.name for row in told.picture.rows] == ["Ana", "Bo", "Cy"]
    assert "trained: 2 of 3, 4 days (4 of 6 planned)" in text(told)


def test_who_needs_a_word_has_the_first_rows_when_there_is_no_room_for_all():
    """The others come as they are on the roster, and how many are left out is said."""
    books = month(50, weeks=1)
    books[49].hurts(SUNDAY)
    books[48].asks(SUNDAY, "Elbows in?")
    told = week_told(persons(books), "this", "UTC", EVENING)
    assert [row.name for row in told.picture.rows[:2]] == [books[49].trainee.name, books[48].trainee.name]
    flagged = [row.flag is not None for row in told.picture.rows]
    assert flagged == sorted(flagged, reverse=True)
    assert next(row.name for row in told.picture.rows if row.flag is None) == books[0].trainee.name
    assert told.picture.more == 50 - ROWS


def test_long_lists_are_cut_with_how_many_more_and_where_all_are():
    """Fifty names do not fit a chat."""
    books = month(50, weeks=1)
    for told in (who_trained(persons(books), "this", "UTC", EVENING), who_missed(persons(books), "this", "UTC", EVENING)):
        lines = worded(told).text.split("\n")
        assert len(lines) < 30
        assert any('more: say "sheet"' in line for line in lines)


def test_somebody_taken_off_the_roster_is_told_of_no_more():
    """Neither in lists nor in the picture nor on the sheet."""
    books = people()
    books[0].trainee = replace(books[0].trainee, ended_at=EVENING)
    assert week_told(persons(books), "this", "UTC", EVENING).people == 2
    assert [one.name for one in sheet_of(persons(books), "this", "UTC", EVENING).document.people] == ["Bo", "Cy"]
    assert "Ana" not in text(who_trained(persons(books), "this", "UTC", EVENING))


def test_nobody_on_the_roster_is_said_plainly():
    """No picture, no division by nobody."""
    told = week_told([], "this", "UTC", EVENING)
    assert told.picture is None
    assert "Nobody" in text(told)
    assert "Nobody" in text(who_needs_word([], EVENING))


def test_how_somebody_is_doing_is_this_week_the_last_and_what_moved():
    """With the picture of how it goes; the load that went up is named."""
    _, bo, _ = people()
    told = how_is(bo.person, EVENING)
    assert (told.this, told.last, told.days_since) == (TrainedLine("Bo", 1, 3), TrainedLine("Bo", 3, 3), 6)
    assert [chart.exercise for chart in told.picture.charts] == ["Goblet squat"]
    assert "this week 1 of 3 days, last week 3 of 3 days. Last workout 6 days ago." in text(told)
    assert "Up: Goblet squat 16 kg." in text(told)
    assert how_is(Book("Cy").person, EVENING).picture is None
    assert "In the middle of a workout now." in text(how_is(replace(bo.person, running=True), EVENING))


def test_a_trainees_own_week_says_what_was_done_and_what_comes_and_no_reproach():
    """Days, sets, minutes, the next day; what was missed is a mark on the picture and no word."""
    _, bo, _ = people()
    told = own_week(bo.person, EVENING)
    assert (told.days, told.sets, told.minutes) == (TrainedLine("Bo", 1, 3), 1, 30)
    assert told.coming == ComingDay(SUNDAY + DAY, "Kitchen seven")
    assert "missed" not in text(told)
    assert told.picture.minutes == (30, 0, 0, 0, 0, 0, 0)
    assert told.picture.days[2] is DayKind.MISSED
    empty = own_week(Book("Cy", days="").person, EVENING)
    assert empty.coming is None
    assert "0" not in text(empty)


def test_the_next_day_of_a_plan_is_told_with_the_circuit_whose_turn_it_is():
    """Own days go before the plan's; in the coach's pause there is none to come."""
    book, other = Book(), replace(CIRCUIT, name="Staircase six")
    book.trainee = replace(book.trainee, block=Block((other, CIRCUIT), (), 4, (), MONDAY))
    book.trains(LAST, ("goblet-squat", 12, 16))
    assert own_week(book.person, EVENING).coming == ComingDay(SUNDAY + DAY, "Kitchen seven")
    book.trainee = replace(book.trainee, pause=Pause(EVENING - DAY, None))
    assert own_week(book.person, EVENING).coming is None


def test_the_own_week_is_that_of_the_trainees_clock():
    """It is Monday already in Tokyo."""
    book = Book(zone="Asia/Tokyo")
    assert own_week(book.person, EVENING).picture.monday == SUNDAY + DAY


@pytest.mark.parametrize("share", [True, False], ids=["agreed", "not agreed"])
def test_the_sheet_holds_wishes_questions_and_pains_as_far_as_agreed(share):
    """Names instead of slugs; a pain of three weeks ago that is not gone is still there, an answered old question is not."""
    book = Book()
    swaps, holds = (Swapped("goblet-squat", "chair-squat"),), (HeldLoad(None, Load(Decimal(14), Unit.KG)),)
    wishes = Wishes(swaps, holds, (CardNote("one-arm-row", "elbows in"),))
    book.trainee = replace(book.trainee, wishes=wishes, health=replace(book.trainee.health, share=share))
    book.hurts(MONDAY, "knee", "goblet-squat")
    book.asks(MONDAY, "Shoes?")
    book.history = replace(book.history, questions=(replace(book.history.questions[0], answered_at=EVENING),))
    book.asks(SUNDAY, "Elbows?", "one-arm-row")
    (one,) = sheet_of([book.person], "this", "UTC", EVENING).document.people
    assert (one.swaps[0].exercise, one.swaps[0].instead) == ("Goblet squat", "Chair squat")
    assert (one.holds[0].exercise, one.notes[0].exercise, one.notes[0].text) == (None, "One-arm row", "elbows in")
    assert [(question.text, question.exercise) for question in one.questions] == [("Elbows?", "One-arm row")]
    assert [(pain.day, pain.place, pain.exercise) for pain in one.pains] == [(MONDAY, "knee" if share else None, "Goblet squat")]


def test_the_strength_of_a_week_that_is_over_is_that_of_its_end():
    """What came after does not change what last week's sheet says."""
    (book, *_) = month(1, weeks=6)
    before = sheet_of([book.person], "this", "UTC", EVENING).document.people[0].change
    later = EVENING + 7 * DAY
    for days in (0, 1, 2, 3):
        book.trains(SUNDAY + timedelta(days=1 + days), ("goblet-squat", 3, 30), ("floor-press", 2, 20))
    assert sheet_of([book.person], "last", "UTC", later).document.people[0].change == before
    assert sheet_of([book.person], "this", "UTC", later).document.people[0].change != before


def test_a_sheet_is_named_after_its_monday():
    """So that files sort."""
    told = sheet_of(persons(people()), "this", "UTC", EVENING)
    assert told.document.file_name == "week-2026-03-23.html"
    assert told.document.monday == date(2026, 3, 23)
