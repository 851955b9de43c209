"""What a trainee's records tell about strength, as one joint belief with its spread.

The model. With w the load per hand, the repetitions possible in round r on a given day at `rep_s` seconds each are

    log R = c + log curve(z - log w) - tempo_cost * log(rep_s / 4)
    z = log one-rep max + day form - fatigue * (r - 1)

where `curve` is the table of `core.strength.curve`. A set stopped by strength measures R; a set stopped by the
clock bounds it from below; reserve said is a reading of R that falls short by `underclaim` reps (about one:
Halperin et al. 2022). Strength today is strength then plus gain per day, less what breaks cost. Unknown, with
cautious priors, and learned together from every exercise of the same body: general strength, each exercise's own
part, the form of each day, c, tempo cost, fatigue, underclaim, gain.

The belief is the normal distribution around the most plausible values (found by damped Gauss-Newton steps), which is
close: for one exercise it is compared with brute-force integration in the tests. Records far from everything else
pull little (Student noise), so that one typing error or one very good day does not move it much.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import log
from typing import TYPE_CHECKING, Final

import numpy as np

from core.strength.curve import EXPONENT, REPS_AT_HALF, USUAL_REP_S, Floats, headroom
from core.strength.priors import person_log_factor, prior_for

if TYPE_CHECKING:
    from core.strength.evidence import Evidence

CURVE, TEMPO, FATIGUE, UNDERCLAIM, GAIN, PERSON = range(6)
SHARED: Final = 6

CURVE_SPREAD: Final = 0.25
"""Between people the count at a given share of the max differs by a quarter (Nuzzo 2024: SD 2.51 reps at 80 %)."""
TEMPO_COST: Final = (0.40, 0.25)
"""Slower reps cost more each (Wilk 2018, Sakamoto 2006); how much is from no source."""
FATIGUE_PER_ROUND: Final = (0.025, 0.02)
"""Little loss where other muscles work in between (Alcaraz 2008), more when they do not; no source for the size."""
UNDERCLAIM_REPS: Final = (0.8, 0.7)
"""People say about one rep fewer than they have (Halperin 2022: 0.95, CI 0.17-1.73)."""
GAIN_PER_WEEK: Final = {"new": (0.010, 0.008), "steady": (0.005, 0.005), "strong": (0.002, 0.003)}
"""New trainees gain fast: 28 % (SD 21) in 12 weeks is the upper end (Mayhew 2008)."""
DAY_FORM: Final = 0.04
LOSS_PER_DAY: Final = 0.002
"""After the free days; 5 weeks off cost 8-9 % in the highly trained (Garcia-Pallares 2010), 6 weeks nothing
significant in recreational lifters (Kraemer 2002): the middle."""
WANDER_PER_WEEK: Final = 0.008
SET_NOISE: Final = 0.04
"""Standard deviation of log R from set to set beside the counting itself."""
TAIL: Final = 6.0
"""Degrees of freedom of the Student noise."""
STEPS: Final = 12
PLAIN_STEPS: Final = 3
CLOSE: Final = 2e-3
LOGISTIC: Final = 1.702
"""The logistic curve stretched by this is the normal one to within 0.01."""


@dataclass(frozen=True)
class TodaysStrength:
    """The belief about one exercise today, in the order (strength in this round, log c, tempo cost).

    Attributes:
        mean: length 3; strength is the log of the one-rep max in kilograms, day form and fatigue included.
        covariance: 3 x 3.
        rested_mean, rested_variance: log one-rep max without the day's form and fatigue.
    """

    mean: Floats
    covariance: Floats
    rested_mean: float
    rested_variance: float


def learn(
    evidence: Evidence,
    *,
    round_number: int,
    experience: str,
    sex: str | None = None,
    age: int | None = None,
    body_mass_kg: float | None = None,
) -> TodaysStrength:
    """Today's belief about exercise 0 of `evidence`, in round `round_number`."""
    exercises = len(evidence.exercises)
    size = SHARED + exercises + evidence.day_count
    own, form = SHARED, SHARED + exercises
    mean, spread = np.zeros(size), np.full(size, DAY_FORM)
    mean[TEMPO], spread[TEMPO] = TEMPO_COST
    mean[FATIGUE], spread[FATIGUE] = FATIGUE_PER_ROUND
    mean[UNDERCLAIM], spread[UNDERCLAIM] = UNDERCLAIM_REPS
    weekly = GAIN_PER_WEEK.get(experience, GAIN_PER_WEEK["new"])
    mean[GAIN], spread[GAIN] = weekly[0] / 7.0, weekly[1] / 7.0
    mean[PERSON], spread[PERSON] = person_log_factor(experience, sex, age, body_mass_kg)
    spread[CURVE] = CURVE_SPREAD
    for number, name in enumerate(evidence.exercises):
        prior = prior_for(name)
        mean[own + number], spread[own + number] = log(prior.one_rep_max_kg), prior.spread

    state, precision = _most_plausible(evidence, mean, 1.0 / spread**2, own=own, form=form)
    covariance = np.linalg.inv(precision)

    look = np.zeros((3, size))
    look[0, PERSON] = look[0, own] = 1.0
    look[0, FATIGUE] = -(round_number - 1.0)
    if evidence.today is not None:
        look[0, form + evidence.today] = 1.0
    look[1, CURVE] = look[2, TEMPO] = 1.0
    today = look @ covariance @ look.T
    if evidence.today is None:
        today[0, 0] += DAY_FORM**2
    rested = np.zeros(size)
    rested[PERSON] = rested[own] = 1.0
    return TodaysStrength(
        mean=look @ state,
        covariance=today,
        rested_mean=float(rested @ state),
        rested_variance=float(rested @ covariance @ rested),
    )


def _most_plausible(
    evidence: Evidence, prior_mean: Floats, prior_precision: Floats, *, own: int, form: int
) -> tuple[Floats, Floats]:
    """The most plausible state, and the precision around it."""
    rows, size = len(evidence.reps), len(prior_mean)
    prior = np.diag(prior_precision)
    if not rows:
        return prior_mean, prior
    row = np.arange(rows)
    strength = np.zeros((rows, size))
    strength[:, PERSON] = 1.0
    strength[row, own + evidence.exercise] = 1.0
    strength[:, FATIGUE] = -evidence.rounds_before
    strength[:, GAIN] = -evidence.age_days
    with_form = np.flatnonzero(evidence.day >= 0)
    strength[with_form, form + evidence.day[with_form]] = 1.0
    beside = np.zeros((rows, size))
    beside[:, CURVE] = 1.0
    beside[:, TEMPO] = -np.log(evidence.rep_s / USUAL_REP_S)

    offset = LOSS_PER_DAY * evidence.lost_days - evidence.log_load
    wander = (
        WANDER_PER_WEEK**2 * evidence.age_days / 7.0
        + (LOSS_PER_DAY * evidence.lost_days) ** 2
        + np.where(evidence.day < 0, DAY_FORM**2, 0.0)
    )
    state = prior_mean.copy()
    precision = prior
    for step in range(STEPS):
        soft, soft_slope = headroom(strength @ state + offset)
        slope = EXPONENT * soft_slope / soft
        log_reps = log(REPS_AT_HALF) + EXPONENT * np.log(soft) + beside @ state
        claimed = np.maximum(evidence.reps + evidence.said * state[UNDERCLAIM], 0.3)
        variance = (evidence.noise / claimed) ** 2 + SET_NOISE**2 + slope**2 * wander
        error = log_reps - np.log(claimed)

        weight = 1.0 / variance
        if step >= PLAIN_STEPS:
            weight = weight * (TAIL + 1.0) / (TAIL + error**2 / variance)
        pull = -error * weight
        scale = LOGISTIC / np.sqrt(SET_NOISE**2 + slope**2 * wander + (0.5 / claimed) ** 2)
        above = 1.0 / (1.0 + np.exp(np.clip(scale * error, -40.0, 40.0)))
        pull = np.where(evidence.bound, scale * above, pull)
        weight = np.where(evidence.bound, scale**2 * above * (1.0 - above), weight)

        jacobian = strength * slope[:, None] + beside
        jacobian[:, UNDERCLAIM] = -(evidence.said / claimed)
        precision = prior + jacobian.T @ (jacobian * weight[:, None])
        gradient = jacobian.T @ pull - prior_precision * (state - prior_mean)
        move = np.linalg.solve(precision, gradient)
        longest = float(np.abs(strength @ move).max())
        state = state + move * min(1.0, 0.5 / max(longest, 1e-12))
        if longest < CLOSE and step > PLAIN_STEPS:
            break
    return state, precision
