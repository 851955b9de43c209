"""The suggestion against lifters with a hidden truth, in a few worlds and at every rack; the whole table is by hand.

"On target" is 0 to 3.5 true reps left at the end of the minute, from the fourth of twelve workouts on.
"""

import pytest

from tests.simulation.lifters import RACKS, WORLDS
from tests.simulation.loads_table import Tally, tally

CHOSEN = [
    world for world in WORLDS if world.name in {"plain", "reps curve of the literature", "very biased", "tempo costs strength"}
]


def over_all_racks(name: str) -> Tally:
    """One lifter for each chosen world and rack."""
    total = Tally()
    for world in CHOSEN:
        for rack in RACKS:
            total.merge(tally(name, world, rack, range(10, 11)))
    return total


@pytest.fixture(scope="module")
def engine() -> Tally:
    """The suggestion's tally."""
    return over_all_racks("engine")


@pytest.fixture(scope="module")
def knowing() -> Tally:
    """Of someone who knows all but the day's form."""
    return over_all_racks("knows_all_but_form")


def test_most_stations_are_on_target(engine):
    """At least 48 of 100 stations, and under 0.75 reps lost against someone who knows the whole truth."""
    target, _, loss = engine.shares
    assert target >= 48.0
    assert loss <= 0.75


def test_it_comes_near_someone_who_knows_all_but_the_form_of_the_day(engine, knowing):
    """On target as often, no more often too heavy, and no more reps lost."""
    target, heavy, loss = engine.shares
    known_target, known_heavy, known_loss = knowing.shares
    assert target >= known_target - 2.0
    assert heavy <= known_heavy
    assert loss <= known_loss


def test_it_is_far_better_than_the_habits(engine):
    """Twice as often on target as a coach's habit, and less than half as often too heavy."""
    habit = over_all_racks("coach_habit").shares
    target, heavy, _ = engine.shares
    assert target > 2.0 * habit[0]
    assert heavy < habit[1] / 2.0


def test_the_stated_intervals_hold(engine):
    """80 % intervals of the one-rep max hold about 80 % of the truths (75-85 over all worlds; these four are kinder)."""
    assert 75.0 <= engine.coverage <= 97.0
