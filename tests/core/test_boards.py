"""What the pictures show is what the cards and the diary say."""

from __future__ import annotations

from datetime import UTC, datetime

import pytest

from core.circuit import Span
from core.messages import Card, ProgressShown, TodayPlan
from core.reminders import is_dark
from tests.walking import Walk


def the(walk, kind):
    """The latest message of a kind."""
    return [message for message in walk.heard if isinstance(message, kind)][-1]


def test_the_board_shows_what_the_first_card_will_say():
    """Load, reps and seconds of the first station are the same on both; the clock of a station with sides runs twice."""
    walk = Walk(known=True).says("today")
    board = the(walk, TodayPlan).picture
    walk.says("go", "go")
    card, line = the(walk, Card), board.lines[0]
    assert (line.exercise, line.load, line.work_s) == (card.exercise, card.load, card.work_s)
    assert line.reps == Span(card.reps_low, card.reps_high)
    row = board.lines[1]
    assert (row.sides, row.work_s, row.clock_s) == (True, 60, 120)
    assert [one.rest_s for one in board.lines] == [30, 30, 30, 30, 30, 30, 0]
    assert board.lines[6].reps is None


def test_the_board_has_the_minutes_of_the_words_beside_it():
    """Shortest and longest, to the minute."""
    today = the(Walk(known=True).says("today"), TodayPlan)
    assert (round(today.picture.total_s.low / 60), round(today.picture.total_s.high / 60)) == (
        today.minutes_low,
        today.minutes_high,
    )


@pytest.mark.parametrize(("hour", "minute", "dark"), [(6, 59, True), (7, 0, False), (18, 59, False), (19, 0, True), (23, 30, True)])
def test_a_picture_is_dark_in_the_evening_and_at_night(hour, minute, dark):
    """On the trainee's own clock: in Lisbon in March it is that of UTC, in Tokyo nine hours later."""
    assert is_dark(datetime(2026, 3, 2, hour, minute, tzinfo=UTC), "Europe/Lisbon") is dark
    assert is_dark(datetime(2026, 3, 2, (hour + 24 - 9) % 24, minute, tzinfo=UTC), "Asia/Tokyo") is dark


def test_a_chart_has_a_point_a_day_with_the_heaviest_load_its_reps_and_the_estimate():
    """Two days of one exercise: 12 kg, then 16 kg after 12 kg; the estimate lies inside its interval and above what was lifted."""
    walk = Walk(known=True).says("go", "go", "go").waits(60)
    walk.says("12 at 12 kg, 3 left", "finish").waits(3 * 86400)
    walk.says("go", "go", "go").waits(60)
    walk.says("9 at 16 kg, 1 left", "finish", "how am I doing?")
    (chart,) = the(walk, ProgressShown).picture.charts
    assert chart.exercise == "Goblet squat"
    assert [(point.load, point.reps) for point in chart.points] == [(12, (12,)), (16, (9,))]
    assert [(point.day - chart.points[0].day).days for point in chart.points] == [0, 3]
    assert all(point.load < point.low < point.best < point.high for point in chart.points)


def test_somebody_without_sets_gets_words_and_no_picture():
    """There is nothing to draw before the first set."""
    assert the(Walk(known=True).says("how am I doing?"), ProgressShown).picture is None
