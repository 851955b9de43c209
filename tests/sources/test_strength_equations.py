"""One-rep-max equations and the curve against published tables (fixtures/published, origins in its README)."""

import csv
from pathlib import Path

import numpy as np
import pytest

from core.strength import curve
from tests.sources.named_equations import EQUATIONS

PUBLISHED = Path(__file__).parents[2] / "fixtures" / "published"


def reps_to_failure(percent: float) -> float:
    """Repetitions of the average person at a share of the max."""
    soft, _ = curve.headroom(np.array([np.log(100.0 / percent)]))
    return float(curve.REPS_AT_HALF * soft[0] ** curve.EXPONENT)


def percent_of_max(reps: float) -> float:
    """The share of the max at which so many repetitions are average."""
    return float(100.0 / np.exp(curve.log_one_rep_max(np.zeros(1), np.array([reps])))[0])


def rows(name: str) -> list[dict[str, str]]:
    """The rows of a published table."""
    with (PUBLISHED / name).open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


@pytest.mark.parametrize(
    "row", rows("one_rm_equations.csv"), ids=lambda row: f"{row['equation']} {row['load_kg']}x{row['reps_to_failure']}"
)
def test_each_named_equation_gives_its_worked_values(row):
    """Seven equations, eleven worked sets each (entry 4; arithmetic from second-hand forms)."""
    found = EQUATIONS[row["equation"]](float(row["load_kg"]), float(row["reps_to_failure"]))
    assert found == pytest.approx(float(row["one_rm_kg"]), abs=0.0006)


def test_two_equations_meet_at_ten_reps():
    """Epley and Brzycki agree exactly at ten repetitions (entry 4)."""
    assert EQUATIONS["epley"](20, 10) == pytest.approx(EQUATIONS["brzycki"](20, 10))


HANDBOOK = [row for row in rows("reps_percent_1rm.csv") if row["variant"] == "training_load_chart" or int(row["reps_max"]) <= 10]


@pytest.mark.parametrize("row", HANDBOOK, ids=lambda row: f"{row['variant']} {row['reps_max']}")
def test_the_curve_stays_near_the_handbook_tables(row):
    """Within four points of %1RM (entry 1 from memory, 2 read: a convention; past 10 reps only the read one)."""
    reps = float(row["reps_max"])
    found = percent_of_max(reps)
    assert found == pytest.approx(float(row["percent_1rm"]), abs=4.0)


def test_the_curve_and_its_inverse_undo_each_other():
    """A max worked out from reps gives those reps again, up to the softened end near the max itself."""
    for reps in (5.0, 8.0, 12.0, 17.0, 30.0):
        assert reps_to_failure(percent_of_max(reps)) == pytest.approx(reps, rel=0.01)


def test_above_the_max_next_to_nothing_is_left():
    """With a tenth more than the max no whole repetition is expected, and nothing breaks."""
    assert 0.0 < reps_to_failure(110.0) < 0.5
