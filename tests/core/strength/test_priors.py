"""First guesses by name."""

import pytest

from core.strength.priors import UNKNOWN, TraineeFacts, person_log_factor, prior_for


@pytest.mark.parametrize("name", ["goblet squat", "Goblet-Squat", "GOBLET_SQUATS", "gobletsquat", "heavy goblet squat, slow"])
def test_a_name_is_known_however_it_is_written(name):
    """Case, hyphens, underscores, plurals and missing spaces do not matter."""
    assert prior_for(name) == prior_for("goblet squat")


@pytest.mark.parametrize("name", ["", "zercher wobble", "???", "出力"])
def test_a_name_that_says_nothing_starts_light(name):
    """Unknown is said to be unknown, and is wide."""
    assert prior_for(name) is UNKNOWN
    assert not UNKNOWN.known


def test_special_names_come_before_general_ones():
    """A lateral raise is no raise of anything else, a split squat no squat, a hammer curl no leg curl."""
    assert prior_for("lateral raise").one_rep_max_kg < prior_for("shoulder press").one_rep_max_kg
    assert prior_for("split squat").one_rep_max_kg < prior_for("goblet squat").one_rep_max_kg
    assert prior_for("one-arm row").one_rep_max_kg > prior_for("upright row").one_rep_max_kg


def test_age_and_body_mass_count_only_when_they_can_be_true():
    """A body of 0 or 5000 kg changes nothing; an older one starts lighter."""
    plain = person_log_factor(TraineeFacts())[0]
    assert person_log_factor(TraineeFacts(body_mass_kg=5000.0))[0] == plain
    assert person_log_factor(TraineeFacts(age=70))[0] < plain
