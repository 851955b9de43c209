"""Who needs a word, and why, the most urgent first."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, date, datetime, timedelta
from decimal import Decimal

import pytest

from core.diary import Ending
from core.health import NoteKind, SafetyNote, Symptom
from core.review.flags import flags_of
from core.review_facts import URGENCY, Change, Flag, FlagKind
from core.trainee import Pause
from tests.reviewing import DAY, MONDAY, Book

NOW = datetime(2026, 3, 29, 18, 30, tzinfo=UTC)
TODAY = NOW.date()


def fit(weeks=4, loads=lambda _: 16, reps=lambda _: 12):
    """Somebody who trains three days a week and misses none; `loads` and `reps` by the number of the workout."""
    book = Book()
    for number in range(3 * weeks):
        day = MONDAY + timedelta(days=7 * (number // 3) + 2 * (number % 3))
        book.trains(day, ("goblet-squat", reps(number), loads(number)), ("floor-press", reps(number), loads(number)))
    return book


def growing():
    """Somebody who is well: a rep more each time, and heavier when there are twelve."""
    return fit(loads=lambda number: 14 + 2 * (number // 4), reps=lambda number: 9 + number % 4)


def kinds(book, now=NOW):
    """The reasons of now."""
    return [flag.kind for flag in flags_of(book.person, now)]


def test_somebody_who_is_well_needs_no_word():
    """Trained, grown, nothing hurts."""
    assert kinds(growing()) == []


@pytest.mark.parametrize("share", [True, False], ids=["agreed", "not agreed"])
def test_pain_is_told_with_its_place_only_where_that_was_agreed(share):
    """That it hurts, and at which exercise, may be told; where it hurts only with the trainee's yes."""
    book = growing()
    book.trainee = replace(book.trainee, health=replace(book.trainee.health, share=share))
    book.hurts(TODAY - 2 * DAY, "knee", "goblet-squat")
    assert flags_of(book.person, NOW) == (Flag(FlagKind.PAIN, TODAY - 2 * DAY, "Goblet squat", "knee" if share else None),)
    book.hurts(TODAY - DAY, "chest", urgent=True)
    sign = flags_of(book.person, NOW)[0]
    assert (sign.kind, sign.place) == (FlagKind.SIGN, "chest" if share else None)


def test_pain_that_is_gone_or_six_weeks_old_is_none():
    """As long as it is asked about before a workout, a coach is told of it too."""
    book = growing()
    book.hurts(date(2026, 2, 14))
    book.hurts(TODAY - 3 * DAY)
    eased = replace(book.history.pains[1], eased_at=NOW - DAY)
    book.history = replace(book.history, pains=(book.history.pains[0], eased))
    assert kinds(book) == []


def test_a_warning_sign_is_told_until_the_trainee_is_cleared():
    """Only the trainee's own word ends it."""
    book = growing()
    book.hurts(TODAY - 2 * DAY, "chest", urgent=True)
    assert kinds(book) == [FlagKind.SIGN]
    told = SafetyNote(NOW - DAY, NoteKind.CLEARED, "coach")
    book.history = replace(book.history, notes=(told,))
    assert kinds(book) == [FlagKind.SIGN]
    book.history = replace(book.history, notes=(told, replace(told, value="trainee")))
    assert kinds(book) == []


def test_a_clearance_that_is_waited_for_is_told():
    """Since the answers that ask for it were given."""
    book = growing()
    health = replace(book.trainee.health, symptoms=(Symptom.BREATH,), decided_at=NOW - 3 * DAY)
    book.trainee = replace(book.trainee, health=health)
    assert flags_of(book.person, NOW) == (Flag(FlagKind.CLEARANCE, TODAY - 3 * DAY),)


def test_a_question_is_told_until_it_is_answered():
    """With where it was asked, and how many are open."""
    book = growing()
    book.asks(TODAY - 2 * DAY, "Elbows in?", "floor-press")
    book.asks(TODAY, "And the wrists?")
    assert flags_of(book.person, NOW) == (Flag(FlagKind.QUESTION, TODAY - 2 * DAY, "Floor press", count=2),)
    answered = tuple(replace(one, answered_at=NOW) for one in book.history.questions)
    book.history = replace(book.history, questions=answered)
    assert kinds(book) == []


def test_three_training_days_missed_in_a_row_are_told_and_two_are_not():
    """A workout in between, or a pause, begins the count anew."""
    book = Book()
    book.trains(MONDAY, ("goblet-squat", 12, 16))
    two = datetime(2026, 3, 7, 12, tzinfo=UTC)
    assert kinds(book, two) == []
    three = two + 3 * DAY
    assert flags_of(book.person, three) == (Flag(FlagKind.MISSED, MONDAY + 2 * DAY, count=3),)
    book.trainee = replace(book.trainee, pause=Pause(two, None))
    assert kinds(book, three) == []


def test_coming_back_after_a_break_is_no_reason():
    """They are back: what was missed before is over."""
    book = Book()
    book.trains(MONDAY, ("goblet-squat", 12, 16))
    book.trains(date(2026, 3, 27), ("goblet-squat", 12, 14), ending=Ending.EARLY)
    assert kinds(book) == []


def test_strength_is_told_as_falling_only_when_the_spread_says_so():
    """Fewer reps with the same load, told as failed: clear. A few reps up and down: not."""
    falls = fit(6, reps=lambda number: 13 - number // 3)
    flags = flags_of(falls.person, datetime(2026, 4, 12, 18, tzinfo=UTC))
    assert [flag.kind for flag in flags] == [FlagKind.FALLING]
    assert flags[0].change.high < 0
    wavers = fit(6, reps=lambda number: 11 + (0, 1, -1)[number % 3])
    assert FlagKind.FALLING not in kinds(wavers, datetime(2026, 4, 12, 18, tzinfo=UTC))
    unclear = Change(Decimal(-3), Decimal(-7), Decimal(1))
    assert flags_of(growing().person, NOW, unclear) == ()


def test_stuck_is_the_same_load_and_no_more_reps_for_three_weeks():
    """On every exercise done with a load; a rep more, a kilogram more, or two weeks only, is not stuck."""
    (flag,) = flags_of(fit().person, NOW)
    assert (flag.kind, flag.since, flag.count) == (FlagKind.STUCK, date(2026, 3, 6), 2)
    assert kinds(fit(reps=lambda number: 12 + (number == 9))) == []
    assert kinds(fit(loads=lambda number: 16 + (number > 9))) == []
    assert kinds(fit(2), datetime(2026, 3, 15, 18, tzinfo=UTC)) == []


def test_one_exercise_that_grows_is_enough_not_to_be_stuck():
    """Not everything moves in every month."""
    book = fit()
    for number in range(12):
        day = MONDAY + timedelta(days=7 * (number // 3) + 2 * (number % 3))
        book.notes(number + 1, book.at(day, "18:20"), "hammer-curl", 8 + number // 2, 8, station=3)
    assert kinds(book) == []


def test_somebody_who_cannot_be_reached_is_told():
    """Since when."""
    book = growing()
    book.gone_at = NOW - 5 * DAY
    assert flags_of(book.person, NOW) == (Flag(FlagKind.UNREACHABLE, TODAY - 5 * DAY),)


def test_the_most_urgent_comes_first():
    """Whatever else is so, a warning sign is first, then pain; the order is that of the list of reasons."""
    book = fit()
    book.gone_at = NOW
    book.asks(TODAY, "Elbows in?")
    book.hurts(TODAY - DAY)
    book.hurts(TODAY, "chest", urgent=True)
    found = kinds(book)
    assert found == [FlagKind.SIGN, FlagKind.PAIN, FlagKind.QUESTION, FlagKind.UNREACHABLE]
    assert found == sorted(found, key=URGENCY.index)
