"""Too much today: failing in a row, reps falling by half. Common practice, no source."""

from __future__ import annotations

import pytest

from core.health import TooMuch
from core.safety.signs import is_over, is_short, too_much
from tests.core.safety.given import kg, noted


def row(*reps, round_=1, start=1):
    """Stations of one round with these reps, 15 being what the minute allows."""
    return [noted(start + i, 1, 0, round=round_, station=i + 1, reps=count) for i, count in enumerate(reps)]


@pytest.mark.parametrize(("reps", "short", "over"), [(11, True, False), (12, False, False), (15, False, False), (16, False, True)])
def test_short_is_under_four_fifths_of_what_the_minute_allows_and_over_is_above_it(reps, short, over):
    """A minute at four seconds a rep allows 15 (entry 75, arithmetic)."""
    record = noted(1, 1, 0, reps=reps)
    assert (is_short(record), is_over(record)) == (short, over)


def test_three_short_stations_in_a_row_are_seen_and_two_are_not():
    """In a row: one full station between them begins the count anew."""
    assert too_much(row(8, 8, 8)) is TooMuch.FAILING
    assert too_much(row(8, 8)) is None
    assert too_much(row(8, 8, 14, 8)) is None


def test_half_the_reps_of_the_round_before_are_seen():
    """At the same station and not because of a heavier load or a slower tempo."""
    before = row(14, 14)
    assert too_much([*before, noted(3, 1, 0, round=2, reps=7)]) is TooMuch.HALVED
    assert too_much([*before, noted(3, 1, 0, round=2, reps=8)]) is None
    assert too_much([*before, noted(3, 1, 0, round=2, reps=7, load=kg(16))]) is None
    assert too_much([*before, noted(3, 1, 0, round=2, reps=7, rep_s=6.0)]) is None


def test_holds_and_nothing_reported_say_nothing():
    """What has no reps cannot fall short of them."""
    assert too_much([]) is None
    assert too_much([noted(i, 1, 0, station=i, reps=None, seconds=20, rep_s=None) for i in (1, 2, 3)]) is None
