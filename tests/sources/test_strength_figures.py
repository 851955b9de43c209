"""The constants of the strength rules against published figures (fixtures/published, origins in its README)."""

import csv
from pathlib import Path

import pytest

from core.strength.belief import CURVE_SPREAD, FATIGUE_PER_ROUND, GAIN_PER_WEEK, UNDERCLAIM_REPS
from core.strength.evidence import FAILED_NOISE, SAID_NOISE, SAID_NOISE_PER_REP
from core.strength.priors import MALE_FACTOR, prior_for
from core.suggestion.guards import LARGEST_STEP
from tests.sources.test_strength_equations import reps_to_failure

PUBLISHED = Path(__file__).parents[2] / "fixtures" / "published"


def rows(name: str, **wanted: str) -> list[dict[str, str]]:
    """The rows of a published table that have the wanted fields."""
    with (PUBLISHED / name).open(encoding="utf-8", newline="") as file:
        return [row for row in csv.DictReader(file) if all(row[key] == value for key, value in wanted.items())]


def test_people_are_expected_to_say_about_one_rep_too_few():
    """Halperin 2022 (read): 0.95 reps too few over 12 studies, 95 % interval 0.17 to 1.73."""
    (pooled,) = rows("rir_accuracy.csv", study="meta-analysis 2022")
    assert float(pooled["ci95_low"]) < UNDERCLAIM_REPS[0] < float(pooled["ci95_high"])


def test_a_claim_near_failure_misses_by_about_a_rep():
    """Refalo 2023 (read): SD 1.00 over claims of one and three left."""
    (bench,) = rows("rir_accuracy.csv", study="bench 75% 1RM raw")
    assert pytest.approx(float(bench["sd_reps"]), abs=0.35) == SAID_NOISE + 2 * SAID_NOISE_PER_REP


def test_two_sets_to_failure_differ_by_about_a_rep():
    """Mitter et al. 2022 (read): measurement error 0.7 reps (0.5-0.9) at 90 %, 1.1 (0.8-1.4) at 70 %."""
    assert 0.5 <= FAILED_NOISE <= 1.4


@pytest.mark.parametrize("percent", ["80", "60"])
def test_people_differ_in_their_curve_as_in_the_meta_regression(percent):
    """Nuzzo 2024: SD 2.51 reps at 80 %, 4.36 at 60 % (second-hand); a common factor can only be near both."""
    (row,) = rows("nuzzo_reps.csv", model="main", percent_1rm=percent)
    ours = CURVE_SPREAD * reps_to_failure(float(percent))
    assert ours == pytest.approx(float(row["between_person_sd_reps"]), rel=0.3)


@pytest.mark.parametrize("percent", ["90", "80", "70"])
def test_the_curve_is_the_bench_presss(percent):
    """Nuzzo 2024, bench press: about 4, 8.8 and 14.1 reps at 90, 80 and 70 % (second-hand)."""
    (row,) = rows("nuzzo_reps.csv", model="bench_press", percent_1rm=percent)
    assert reps_to_failure(float(percent)) == pytest.approx(float(row["mean_reps"]), abs=0.4)


def test_the_largest_free_step_is_the_position_stands():
    """American College of Sports Medicine 2009 (read): add 2 to 10 %."""
    (stand,) = rows("load_increments.csv", rule="position stand 2009", high="10")
    assert (float(LARGEST_STEP) - 1.0) * 100 == pytest.approx(float(stand["high"]))


def test_the_press_and_the_curl_keep_to_their_published_ratio():
    """Wong 2013 (read): dumbbell press and hammer curl from the group's bench of 54.3 kg; halves cancel in the ratio."""
    press, curl = (
        float(row["slope"]) * 54.3 + float(row["intercept_kg"])
        for name in ("dumbbell shoulder press", "dumbbell hammer curl")
        for row in rows("load_ratios.csv", to_exercise=name)
    )
    ours = prior_for("shoulder press").one_rep_max_kg / prior_for("hammer curl").one_rep_max_kg
    assert ours == pytest.approx(press / curl, rel=0.2)


def test_men_start_from_the_published_ratio():
    """Median bench over body mass in the thirties (second-hand): 0.93 men over 0.57 women."""
    (man,) = rows("bench_percentiles.csv", sex="men", age_years="30-39", percentile="50")
    (woman,) = rows("bench_percentiles.csv", sex="women", age_years="30-39", percentile="50")
    assert float(man["one_rm_over_body_mass"]) / float(woman["one_rm_over_body_mass"]) == pytest.approx(MALE_FACTOR, abs=0.05)


def test_new_trainees_gain_no_faster_than_the_fastest_reported():
    """Mayhew 2008 (read): 28 % in 12 weeks, about 2 % a week; ours is half of it, and less for the trained."""
    assert GAIN_PER_WEEK["strong"][0] < GAIN_PER_WEEK["steady"][0] < GAIN_PER_WEEK["new"][0] < 0.28 / 12


def test_rounds_are_expected_to_cost_little():
    """Alcaraz 2008 (read): in a circuit with 35 s between stations as many reps as with 3 min rest; under one rep in 15."""
    lost = 1.0 - reps_to_failure(66.0 / (1.0 - FATIGUE_PER_ROUND[0])) / reps_to_failure(66.0)
    assert 0.0 < lost * 15 < 1.5
