"""Checks that fit the circuit and the rack; a warm-up that fits the first stations. Common practice, no source."""

from __future__ import annotations

import pytest

from core.catalogue import all_exercises
from core.exercise import Joint, Pattern
from core.health import Check, Move
from core.rack import Kind, Rack, RackItem
from core.safety.setting import MOVE_FOR, checks, warm_up_moves
from tests.core.safety.given import kg


def rack(*kinds):
    """A rack with a pair of each kind."""
    return Rack(tuple(RackItem(kind, kg(8), 2) for kind in kinds))


ALWAYS = {Check.FLOOR, Check.SHOES}


@pytest.mark.parametrize(
    ("slugs", "kinds", "more"),
    [
        (["goblet-squat"], [Kind.DUMBBELL], set()),
        (["goblet-squat"], [Kind.HANDLE, Kind.PLATE], {Check.COLLARS}),
        (["bodyweight-squat"], [Kind.HANDLE, Kind.PLATE], set()),
        (["goblet-squat"], [Kind.KETTLEBELL], {Check.HANDLE}),
        (["one-arm-row"], [Kind.DUMBBELL], {Check.CHAIR}),
        (["plank"], [Kind.DUMBBELL], {Check.MAT}),
        (["band-row"], [Kind.BAND], {Check.BAND, Check.MAT}),
    ],
)
def test_a_check_is_named_where_it_fits(slugs, kinds, more):
    """A clear floor and grip always; collars, a dry handle, the chair, the mat, the band where they are used."""
    assert set(checks(slugs, rack(*kinds))) == ALWAYS | more


def test_the_warm_up_moves_what_the_first_stations_need():
    """Squats before squats, the hips before hinges; the all-round moves fill up."""
    assert Move.SQUATS in warm_up_moves(["goblet-squat", "plank"])
    assert Move.LEG_SWINGS in warm_up_moves(["reverse-lunge"])
    assert warm_up_moves(["romanian-deadlift"])[1] == Move.HIP_BENDS


def test_the_warm_up_spares_what_is_sore():
    """No squats to warm up a sore knee."""
    assert Move.SQUATS not in warm_up_moves(["goblet-squat"], [Joint.KNEE])


def test_every_pattern_has_a_warm_up_move():
    """Whatever comes first in a circuit."""
    assert set(MOVE_FOR) == set(Pattern)
    assert all(len(warm_up_moves([slug])) >= 3 for slug in all_exercises())
