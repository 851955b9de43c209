"""The week is told on the coach's day, at their time, on their clock: once, and late up to a day."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, datetime, timedelta

import pytest

from core.coach.desk import Asked, News, NewsTold, QuestionsTold, Review, WeekTold
from core.coach.looking import week_due
from core.deeds import QuestionPassed
from core.diary import History, Question
from core.health import NoteKind, SafetyNote
from core.messages import SafetyNews
from core.review_messages import WeekTold as WeekAtAGlance
from tests.core.coaching import ANA, NOW, Talk

SUNDAY = datetime(2026, 3, 8, 18, tzinfo=UTC)


def test_the_week_is_due_on_sunday_at_six_unless_another_day_is_chosen():
    """NOW is a Wednesday."""
    assert week_due(Review(since=NOW), "UTC", NOW) == SUNDAY
    assert week_due(Review("fri", "07:30", NOW), "UTC", NOW) == datetime(2026, 3, 6, 7, 30, tzinfo=UTC)
    assert week_due(Review("wed", "10:00", NOW), "UTC", NOW) == NOW + timedelta(days=7)
    assert week_due(Review("wed", "10:01", NOW), "UTC", NOW) == NOW + timedelta(minutes=1)
    assert week_due(Review(None, "18:00", NOW), "UTC", NOW) is None


@pytest.mark.parametrize(
    ("zone", "at"),
    [
        ("Europe/Lisbon", datetime(2026, 3, 29, 17, tzinfo=UTC)),  # summer time began that morning
        ("Pacific/Auckland", datetime(2026, 3, 29, 5, tzinfo=UTC)),
        ("America/New_York", datetime(2026, 3, 29, 22, tzinfo=UTC)),
    ],
)
def test_the_time_is_that_of_the_coachs_own_clock(zone, at):
    """Also on the day on which the clocks change (by hand, from the published rules)."""
    assert week_due(Review(since=datetime(2026, 3, 25, tzinfo=UTC)), zone, NOW) == at


def test_it_is_told_once():
    """When the alarm rings again there is nothing, until the next Sunday."""
    talk = Talk(ANA).woken(NOW)
    assert (talk.said, talk.changes) == ([], ())
    talk = Talk(ANA, review=Review(since=NOW)).woken(SUNDAY)
    assert talk.the(WeekAtAGlance).week == "this"
    assert talk.wake_at == SUNDAY + timedelta(days=7)
    assert talk.woken(SUNDAY + timedelta(minutes=5)).said == []


@pytest.mark.parametrize(("hours", "said"), [(23, 1), (25, 0), (24 * 6, 0), (24 * 20, 0)])
def test_late_it_is_told_up_to_a_day_and_then_the_next_one_counts(hours, said):
    """What is a day late is worth nothing any more; and whatever was missed, there are never two."""
    talk = Talk(ANA, review=Review(since=NOW)).woken(SUNDAY + timedelta(hours=hours))
    assert len(talk.said) == said
    assert talk.changes == (WeekTold(talk.now),)
    assert talk.wake_at > talk.now


def test_early_in_the_week_it_is_the_one_that_is_over():
    """On Monday morning nothing of this week is there to tell."""
    monday = datetime(2026, 3, 9, 7, 30, tzinfo=UTC)
    assert Talk(ANA, review=Review("mon", "07:30", NOW)).woken(monday).the(WeekAtAGlance).week == "last"


def test_with_nobody_there_is_nothing_to_tell():
    """And it is seen to."""
    talk = Talk(review=Review(since=NOW)).woken(SUNDAY)
    assert (talk.said, talk.changes) == ([], (WeekTold(SUNDAY),))


def test_what_was_chosen_counts_from_then_on():
    """A day that has gone by this week is not made up for."""
    talk = Talk(ANA, review=Review(since=NOW - timedelta(days=5))).says("send me the week on tuesdays at 9am")
    assert talk.wake_at == datetime(2026, 3, 10, 9, tzinfo=UTC)


def test_opening_the_chat_tells_news_and_questions_with_the_greeting_and_marks_them_told():
    """Safety first; an alarm tells neither."""
    note = SafetyNote(NOW, NoteKind.URGENT)
    asking = replace(ANA, diary=History(questions=(Question(1, NOW, "Heels?"),)))
    talk = Talk(asking, news=(News(7, "Ana", note),), asked=(Asked(1, 1),))
    assert talk.woken(NOW).said == []
    talk.opens()
    assert [type(one) for one in talk.said[1:]] == [SafetyNews, QuestionPassed]
    assert talk.changes == (NewsTold((7,)), QuestionsTold((Asked(1, 1),)))
    assert len(talk.opens().said) == 1
