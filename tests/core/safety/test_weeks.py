"""Training load of weeks, against the worked numbers of entries 41 and 42."""

from __future__ import annotations

import pytest

from core.safety.weeks import Week, monotony, session_load, week
from tests.core.safety.given import NOW, trained, workout

FOSTER = [180, 0, 210, 0, 150, 0, 0]


def test_session_load_is_effort_times_minutes():
    """Foster et al. 2001 (entry 41): 40 minutes at 6 are 240."""
    assert session_load(workout(1, 1, minutes=40), 6) == 240


def test_monotony_and_strain_are_those_of_the_worked_week():
    """Entry 42, arithmetic: 180, 0, 210, 0, 150, 0, 0 has load 540, monotony 0.789 (sample deviation), strain 426.1."""
    assert monotony(FOSTER) == pytest.approx(0.789, abs=5e-4)
    assert Week(sum(FOSTER), None, monotony(FOSTER)).strain == pytest.approx(426.1, abs=0.05)


@pytest.mark.parametrize("every_day", [0, 150])
def test_seven_equal_days_have_no_monotony_and_no_strain(every_day):
    """Entry 42: the deviation is 0, so it is undefined and never infinite."""
    assert monotony([every_day] * 7) is None
    assert Week(7 * every_day, None, None).strain is None


def test_training_alike_every_day_is_seen_though_monotony_is_undefined():
    """Seven equal days with training are alike; a week without training is not."""
    assert Week(1050, None, None).days_alike
    assert not Week(0, None, None).days_alike
    assert not Week(540, None, monotony(FOSTER)).days_alike


def test_a_jump_is_half_more_than_the_weeks_before():
    """Common practice, from memory and disputed: 1.5 times the mean of the weeks before is worth a word; less is not."""
    usual = [24, 22, 17, 15, 10, 8]
    calm = week(trained(*usual, 3, 1, efforts=[6] * 8), NOW)
    assert calm.jump_percent is None
    much = week(trained(*usual, 5, 3, 1, efforts=[6] * 6 + [8, 9, 9]), NOW)
    assert much.usual == pytest.approx(480)
    assert much.jump_percent == round(100 * (40 * 26 / 480 - 1))


def test_too_little_is_known_for_a_jump_in_the_first_weeks():
    """One week before is no usual week."""
    assert week(trained(9, 3, 2, 1, efforts=[6, 9, 9, 9]), NOW).jump_percent is None


def test_an_effort_not_said_counts_as_usual_and_without_any_nothing_is_claimed():
    """The median of those said stands in; with none said the week has no load to speak of."""
    assert week(trained(3, 1, efforts=[6, None]), NOW).load == 480
    assert week(trained(3, 1), NOW).load == 0
