"""Pain: what stays out, what is only lighter, and when it comes back."""

from __future__ import annotations

import pytest

from core.catalogue import all_exercises, exercise
from core.health import Quality
from core.safety.joints import Hold, hold, joint_of, spare, troubles, watched
from tests.core.safety.given import NOW, noted, pain

SHARP_NEW = {"quality": Quality.SHARP, "known": False}
DULL_KNOWN = {"quality": Quality.DULL, "known": True}


@pytest.mark.parametrize(
    ("said", "held"),
    [
        (SHARP_NEW, Hold.OUT),
        ({"quality": Quality.SHARP, "known": True}, Hold.OUT),
        ({"quality": Quality.DULL, "known": False}, Hold.OUT),
        ({}, Hold.OUT),
        (DULL_KNOWN, Hold.LIGHTER),
    ],
)
def test_only_dull_and_known_pain_is_worked_around_lighter(said, held):
    """Sharp, new or not described: left out (entry 46, from memory). Dull and known: lighter (common practice, no source)."""
    found = hold(exercise("goblet-squat"), [pain(**said)], [], NOW)
    assert found is not None
    assert found[0] is held


def test_the_whole_pattern_is_held_and_more_when_the_pain_is_not_mild():
    """Knee pain at the squat holds other squats; unless mild it holds every exercise that can trouble a knee, and no other."""
    mild, strong = pain(**DULL_KNOWN), pain(**SHARP_NEW)
    assert troubles(exercise("bodyweight-squat"), mild)
    assert troubles(exercise("reverse-lunge"), strong)
    assert not troubles(exercise("reverse-lunge"), mild)
    assert not troubles(exercise("hammer-curl"), strong)


def test_it_stays_held_until_it_is_said_to_be_gone():
    """A week of workouts without a word does not free it; six weeks without one do (common practice, no source)."""
    sets = [noted(1, 2, 0.5)]
    assert hold(exercise("goblet-squat"), [pain(days_ago=20)], sets, NOW) is not None
    assert hold(exercise("goblet-squat"), [pain(days_ago=43)], sets, NOW) is None


def test_what_is_gone_comes_back_a_step_lighter_and_free_after_another_day():
    """The first workout with it is lighter; once it was done on another day, it is free."""
    gone = pain(**SHARP_NEW, days_ago=4, eased_at=NOW)
    squat = exercise("goblet-squat")
    assert hold(squat, [gone], [noted(1, 1, 4)], NOW) == (Hold.LIGHTER, gone)
    eased = pain(**SHARP_NEW, days_ago=6, eased_at=noted(1, 1, 3).at)
    done = noted(2, 2, 2.9)
    assert hold(squat, [eased], [done], NOW) is None
    assert hold(squat, [eased], [], NOW) == (Hold.LIGHTER, eased)


def test_a_warning_sign_is_the_gates_and_not_held_by_exercise():
    """Urgent signs are not watched as pain of a joint."""
    assert watched([pain("chest", urgent=True)], NOW) == ()


def test_the_strongest_pain_decides():
    """With a mild and a strong pain at the same place, the exercise stays out."""
    found = hold(exercise("goblet-squat"), [pain(**SHARP_NEW, days_ago=3), pain(**DULL_KNOWN, exercise="front-squat")], [], NOW)
    assert found is not None
    assert found[0] is Hold.OUT


@pytest.mark.parametrize("place", ["knee", "hip", "lower back", "shoulder", "elbow", "wrist", "neck", "groin"])
def test_a_spare_never_troubles_the_joint_it_spares(place):
    """For every exercise the catalogue has something else that leaves the joint alone."""
    for slug, movement in all_exercises().items():
        other = spare(movement, place)
        assert other is not None
        assert other.slug != slug
        assert joint_of(place) not in other.spare
