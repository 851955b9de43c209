"""The estimated one-rep max over the weeks."""

from decimal import Decimal

from core.suggestion import suggest, trend
from tests.core.suggestion.given import FINE, MONDAY, ask, past


def test_one_point_for_each_day_of_this_exercise():
    """Three days of squats, two rounds each: three points, oldest first; other exercises and days to come make none."""
    sets = [past(11, 20, days_ago=days, round_number=number) for days in (7, 4, 2) for number in (1, 2)]
    points = trend(ask(*sets, past(11, 20, days_ago=-1), others={"row": (past(11, 12, days_ago=1),)}))
    assert [(MONDAY - point.date).days for point in points] == [7, 4, 2]


def test_the_last_point_is_what_a_suggestion_would_say_that_day():
    """The trend and the suggestion rest on one belief."""
    sets = [past(11, 20, days_ago=days) for days in (7, 4, 0)]
    assert trend(ask(*sets))[-1].one_rep_max == suggest(ask(*sets)).one_rep_max


def test_a_point_knows_nothing_of_later_days():
    """What came after does not change an earlier estimate."""
    sets = [past(11, 20, days_ago=days) for days in (7, 4)]
    assert trend(ask(*sets, past(15, 30, days_ago=0)))[:2] == trend(ask(*sets))


def test_getting_stronger_shows():
    """The same eleven reps with a kilogram more each time: the estimate rises by the middle of the loads' own rise."""
    sets = [past(11, 16 + step, days_ago=21 - 3 * step) for step in range(7)]
    points = trend(ask(*sets, loads=FINE))
    assert points[-1].one_rep_max.best > points[0].one_rep_max.best * Decimal("1.15")
