"""What a set record says about strength, and what it does not."""

from datetime import date, timedelta
from decimal import Decimal

import numpy as np
import pytest

from core.strength.evidence import MOST_DAYS, MOST_SETS, PastSet, gather

MONDAY = date(2026, 3, 2)


def columns(*sets, others=None, today=MONDAY, **more):
    """The columns of some sets of one exercise, in a minute's station."""
    return gather("floor press", sets, others or {}, today=today, work_s=60.0, kg_per_unit=1.0, **more)


def done(reps, *, day=MONDAY, load=20, rep_s=4.0, **said):
    """One set."""
    return PastSet(day, 1, Decimal(load), reps, rep_s, **said)


def test_a_filled_minute_is_a_lower_bound():
    """15 reps at 4 s fill the minute: 15 or more were possible."""
    evidence = columns(done(15))
    assert (evidence.bound[0], evidence.reps[0]) == (True, 15)


def test_a_minute_that_strength_ended_is_a_measurement():
    """11 of 15: eleven and a bit were possible."""
    evidence = columns(done(11))
    assert (evidence.bound[0], evidence.reps[0]) == (False, 11.5)


def test_reserve_turns_a_bound_into_a_reading():
    """15 and 3 left is a reading of 18."""
    evidence = columns(done(15, reserve=3))
    assert (evidence.bound[0], evidence.said[0], evidence.reps[0]) == (False, True, 18)


def test_effort_is_read_as_reserve():
    """Effort 8 is two left (Zourdos 2016, from memory)."""
    assert columns(done(15, rpe=8)).reps[0] == 17


def test_a_light_effort_says_no_more_than_light():
    """Below 5 an effort is a bound at five left, not a reading of eight."""
    evidence = columns(done(15, rpe=2))
    assert (evidence.bound[0], evidence.reps[0]) == (True, 20)


def test_failing_with_nothing_left_is_not_taken_for_modesty():
    """11 of 15 with 0 left measures 11 and a bit; the habit of saying too few does not come in."""
    evidence = columns(done(11, reserve=0))
    assert (evidence.said[0], evidence.reps[0]) == (False, 11.5)


def test_more_reps_than_the_tempo_allows_were_quicker_reps():
    """20 reps in a minute took 3 s each, whatever was asked for."""
    assert columns(done(20)).rep_s[0] == pytest.approx(3.0)


@pytest.mark.parametrize(
    "odd",
    [
        done(12, load=0),
        done(12, load=-5),
        done(12, load=900),
        done(-1),
        done(5000),
        done(12, rep_s=0.0),
        done(12, day=MONDAY + timedelta(days=1)),
    ],
    ids=["bodyweight", "negative load", "beyond any hand", "negative reps", "beyond any count", "no tempo", "tomorrow"],
)
def test_what_cannot_be_a_set_says_nothing(odd):
    """Such a record is left out, and the others stay."""
    assert len(columns(odd, done(12)).reps) == 1


def test_days_off_beyond_ten_count_as_lost():
    """A fortnight costs four days; the ten before them are free (Hortobagyi 1993: no loss over 14 days, second-hand)."""
    evidence = columns(done(12, day=MONDAY - timedelta(days=14)))
    assert (evidence.lost_days[0], evidence.age_days[0]) == (4, 10)


def test_days_off_may_be_longer_than_the_records_show():
    """The trainee says 40 days; the records know of 3."""
    evidence = columns(done(12, day=MONDAY - timedelta(days=3)), days_off=40)
    assert evidence.lost_days[0] == 30


def test_all_exercises_of_a_day_share_its_form():
    """Form belongs to the body: two exercises, one day."""
    evidence = columns(done(12), others={"row": [done(12)]})
    assert list(evidence.day) == [0, 0]
    assert evidence.today == 0


def test_old_days_lose_their_own_form_and_very_old_sets_fall_away():
    """The newest thirty days have a form each; the newest four hundred sets are kept."""
    sets = [done(12, day=MONDAY - timedelta(days=back)) for back in range(500, 0, -1)]
    evidence = columns(*sets)
    assert len(evidence.reps) == MOST_SETS
    assert evidence.day_count == MOST_DAYS
    assert np.count_nonzero(evidence.day == -1) == MOST_SETS - MOST_DAYS
