"""Energy against the Compendium's arithmetic and a measured light dumbbell circuit."""

from decimal import Decimal

import pytest

from core.body_effect import MET_HIGH, MET_LOW, MET_USUAL, energy
from core.circuit import Circuit, Span


def lasting(minutes: int) -> Circuit:
    """A circuit that lasts so long and does nothing else."""
    return Circuit("Given", 1, Span(0, 0), Span(0, 0), minutes * 60, ())


def test_mets_of_the_2011_compendium():
    """3.5 weight training 8-15 reps, 4.3 moderate circuit, 6.0 vigorous weights (2011 Compendium, second-hand)."""
    assert (Decimal("3.5"), Decimal("4.3"), Decimal("6.0")) == (MET_LOW, MET_USUAL, MET_HIGH)


def test_thirty_minutes_at_seventy_kilograms():
    """70 kg, 30 min at 4.3 MET is 150.5 kcal when 1 MET is 1 kcal a kilogram and hour (arithmetic), rounded to even."""
    assert energy(lasting(30), Decimal(70)).usual_kcal == 150


@pytest.mark.parametrize(
    ("who", "met", "kcal_a_minute", "oxygen_ml"),
    [("men, 10.5 kg", "4.49", "6.21", "15.7"), ("women, 5.9 kg", "3.86", "4.04", "13.5")],
)
def test_a_measured_light_circuit_lies_in_the_range(who: str, met: str, kcal_a_minute: str, oxygen_ml: str):
    """14 minutes of free-weight circuit measured by Beckham and Earnest (2000), abstract read: our range holds it.

    Body mass is not in the abstract; it follows from the two figures at 5 kcal a litre of oxygen (textbook value, from memory).
    """
    assert MET_LOW < Decimal(met) < MET_HIGH, who
    mass_kg = Decimal(kcal_a_minute) / (Decimal(oxygen_ml) * 5 / 1000)
    estimate = energy(lasting(14), mass_kg)
    measured = 14 * Decimal(kcal_a_minute)
    assert estimate.low_kcal < measured < estimate.high_kcal
    assert abs(estimate.usual_kcal - measured) / measured < Decimal("0.15")
