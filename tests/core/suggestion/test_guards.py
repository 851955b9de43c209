"""Which steps are allowed, whatever the belief says."""

from decimal import Decimal

import pytest

from core.suggestion import suggest
from core.suggestion.guards import last_load
from tests.core.suggestion.given import FINE, ask, past

STRONG_BODY = {name: tuple(past(15, 40, days_ago=days, reserve=3) for days in (6, 4, 2)) for name in ("row", "hip thrust")}
"""Other exercises that make the belief expect far more than the last set shows."""


@pytest.mark.parametrize("reserve", [2, 3])
def test_where_the_rack_has_it_a_step_is_ten_per_cent_at_most(reserve):
    """Add 2-10 % (American College of Sports Medicine 2009, entry 21, read): from 20, no more than 22."""
    answer = suggest(ask(past(15, 20, reserve=reserve), loads=FINE, others=STRONG_BODY))
    assert answer.load <= 22


def test_one_good_session_does_not_earn_a_wide_step():
    """Nine left once, from 16 to a 20 kg bell is 25 %: not yet (two-for-two, entry 23, second-hand)."""
    assert suggest(ask(past(15, 16, reserve=9), others=STRONG_BODY)).load == 16


def test_two_good_sessions_earn_the_next_load_and_no_more():
    """Thirty left, two sessions running: the next bell, not the one after it."""
    answer = suggest(ask(past(15, 16, days_ago=5, reserve=30), past(15, 16, reserve=30), others=STRONG_BODY))
    assert answer.load == 20


def test_two_rounds_of_one_session_are_one_session():
    """Three left in rounds one and two of the same day do not make two sessions."""
    sets = (past(15, 16, reserve=3), past(15, 16, round_number=2, reserve=3))
    assert last_load(ask(*sets)).times == 1


def test_a_short_set_breaks_the_run():
    """Above the target, then short of the minute: the count begins again."""
    assert last_load(ask(past(15, 16, days_ago=5, reserve=4), past(13, 16))).times == 0


def test_a_lighter_session_does_not_count_for_a_heavier_load():
    """Easy at 12 and once at 16 is one session at 16."""
    assert last_load(ask(past(15, 12, days_ago=5, reserve=4), past(15, 16, reserve=4))).times == 1


def test_a_slower_tempo_eases_a_wide_step():
    """From 16 to 20 with slower reps is allowed after one session; at the same tempo it is not."""
    answer = suggest(ask(past(15, 16, reserve=9), others=STRONG_BODY, allowed=(4.0, 6.0)))
    assert answer.load == 20
    assert answer.rep_s > 4.0


def test_going_back_to_a_load_is_no_step_up():
    """20 last week, 16 on a bad day since: 20 again is allowed at once."""
    usual = [past(15, 20, days_ago=days, reserve=3) for days in (9, 7, 5)]
    answer = suggest(ask(*usual, past(15, 16, days_ago=2, reserve=6), others=STRONG_BODY))
    assert answer.load == Decimal(20)


def test_never_more_than_the_rack_holds():
    """Whatever the belief, the answer is a load of the rack."""
    for loads in ((4,), (4, 6), FINE):
        assert suggest(ask(past(15, 4, reserve=10), loads=loads, others=STRONG_BODY)).load in loads


def test_a_lifetimes_load_that_no_hand_holds_is_not_offered():
    """A rack entry of 400 kg is passed over."""
    assert suggest(ask(past(15, 16, reserve=2), loads=(16, 400))).load == 16
