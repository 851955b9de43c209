"""What a week of circuits does for the body."""

from decimal import Decimal

from core.body_effect import energy, sets_a_muscle, tension_s, week_of
from core.circuit import Circuit, Span
from core.circuit_text import read_typed


def typed(text: str) -> Circuit:
    """A typed circuit without faults."""
    circuit = read_typed(text)
    assert isinstance(circuit, Circuit), circuit
    return circuit


SQUAT_AND_ROW = typed("goblet squat / one-arm row each side / plank / 3 rounds, rest 30")


def test_sets_of_a_muscle():
    """Main muscles count one set a round, helping ones a half; a per-side station is one set for each side."""
    sets = sets_a_muscle([SQUAT_AND_ROW])
    assert sets["quads"] == Decimal(3) + Decimal("1.5")  # goblet squat, and helping in the plank
    assert sets["lats"] == 3
    assert sets["biceps"] == Decimal("1.5")
    assert "chest" not in sets


def test_a_week_against_the_advice():
    """Sets and days of each major group; ten sets for size, two days for health."""
    week = week_of([SQUAT_AND_ROW] * 3)
    assert (week["legs"].sets, week["legs"].days) == (Decimal("13.5"), 3)
    assert week["legs"].sets_enough
    assert week["legs"].days_enough
    assert (week["chest"].sets, week["chest"].days) == (0, 0)
    assert not week["chest"].days_enough
    assert (week["arms"].sets, week["arms"].days) == (Decimal("4.5"), 0)  # helping only: no day of main work
    assert not week_of([SQUAT_AND_ROW])["legs"].days_enough


def test_time_under_tension():
    """Reps times their seconds, each side; all of a hold; over all rounds."""
    circuit = typed("goblet squat 3-1-1-0 / one-arm row 2-0-1-1 each side / plank 40 s / 2 rounds, rest 30")
    low = 10 * 5 + 2 * 12 * 4 + 40
    high = 12 * 5 + 2 * 15 * 4 + 40
    assert tension_s(circuit) == Span(2 * low, 2 * high)


def test_energy_grows_with_mass_and_time():
    """Low from the shortest time, high from the longest; twice the mass is twice the energy."""
    circuit = typed("goblet squat / plank / 3 rounds, rest 30-60")
    light, heavy = energy(circuit, Decimal(50)), energy(circuit, Decimal(100))
    assert light.low_kcal < light.usual_kcal < light.high_kcal
    assert abs(heavy.usual_kcal - 2 * light.usual_kcal) <= 1
