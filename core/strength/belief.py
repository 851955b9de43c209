"""What a trainee's records tell about strength, as one joint belief with its spread.

The model. With w the load per hand, the repetitions possible in round r on a given day at `rep_s` seconds each are

    log R = c + log 31.5 + 0.94 log(exp(z - log w) - 1) - tempo_cost * log(rep_s / 4)
    z = log one-rep max + day form - fatigue * (r - 1)

that is, the curve of `core.strength.curve` with a factor c of one's own. A set stopped by strength
measures R; a set stopped by the clock bounds it from below; reserve said is a reading of R that falls short by
`underclaim` reps (about one: Halperin et al. 2022). Strength today is strength then plus gain per day, less what breaks
cost. Unknown, with cautious priors, and learned together from every exercise of the same body: general strength, each
exercise's own part, the form of each day, c, tempo cost, fatigue, underclaim, gain.

The belief is the normal distribution around the most plausible state (found by damped Gauss-Newton steps) across, and
the density itself along the line on which strength moves, because a bound leaves a long tail upwards; for one exercise
the tests compare it with brute-force integration. Records far from everything else pull little (Student noise), so
that one typing error or one very good day does not move it much.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import log
from typing import TYPE_CHECKING, Final

import numpy as np

from core.strength.curve import EXPONENT, REPS_AT_HALF, USUAL_REP_S, Floats, headroom, log_one_rep_max
from core.strength.evidence import SAID_NOISE, SAID_NOISE_PER_REP
from core.strength.priors import TraineeFacts, person_log_factor, prior_for

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
LONGEST_LOSS: Final = 0.20
LOSS_DAYS: Final = 100.0
"""A break costs 0.2 % a day at first, after the free days, and a fifth in the end: 5 weeks cost 8-9 % in the highly
trained (Garcia-Pallares 2010), 6 weeks nothing significant in recreational lifters (Kraemer 2002); the middle."""
WANDER_PER_WEEK: Final = 0.008
SET_NOISE: Final = 0.04
"""Standard deviation of log R from set to set beside the counting itself."""
TAIL: Final = 6.0
"""Degrees of freedom of the Student noise."""
STEPS: Final = 12
PLAIN_STEPS: Final = 1
CLOSE: Final = 4e-3
LONGEST_STEP: Final = 0.5
LOGISTIC: Final = 1.702
"""The logistic curve stretched by this is the normal one to within 0.01."""
STEPS_DOWN: Final = np.array([-3.5, -2.5, -1.75, -1.1, -0.5])
STEPS_UP: Final = np.array([0.0, 0.2, 0.4, 0.7, 1.0, 1.4, 1.8, 2.3, 2.8, 3.4, 4.0])
"""Where the density is worked out again, in standard deviations: down by the narrow one that the bounds leave, up by
the wide one of the readings alone, because what is only bounded from below may be far above."""


@dataclass(frozen=True)
class TodaysStrength:
    """The belief about one exercise today.

    The four values are (strength in the round asked about, log c, tempo cost, rested strength); strength is the log of
    the one-rep max in kilograms, with day form and fatigue, rested strength is without them.

    Attributes:
        mean: length 4, the most plausible values.
        covariance: 4 x 4, around them.
        form_spread: standard deviation that today's form adds to the first value; 0 once today was seen.
        form: today's form, as a share of strength, None before the first set of the day.
        ladder: steps of the first value from its mean, in its standard deviations.
        chance: probability of each step; it carries what is not normal (a bound leaves a long tail upwards).
    """

    mean: Floats
    covariance: Floats
    form_spread: float
    form: float | None
    ladder: Floats
    chance: Floats

    def steps_at(self, shares: Floats) -> Floats:
        """Steps, in standard deviations, below which `shares` of the belief lie."""
        below = np.cumsum(self.chance) - self.chance / 2.0
        return np.interp(shares, below, self.ladder)


@dataclass(frozen=True)
class _Peak:
    """The most plausible state, the precision that readings and bounds give there, and the noise."""

    state: Floats
    readings: Floats
    bounds: Floats
    variance: Floats
    scale: Floats


class _Model:
    """The model of the module's docstring over fixed evidence, for one state or for many."""

    def __init__(self, evidence: Evidence, prior_mean: Floats, prior_precision: Floats) -> None:
        self.evidence = evidence
        self.prior_mean = prior_mean
        self.prior_precision = prior_precision
        rows, exercises = len(evidence.reps), len(evidence.exercises)
        form = SHARED + exercises
        row = np.arange(rows)
        self.strength = np.zeros((rows, len(prior_mean)))
        self.strength[:, PERSON] = 1.0
        self.strength[row, SHARED + evidence.exercise] = 1.0
        self.strength[:, FATIGUE] = -evidence.rounds_before
        self.strength[:, GAIN] = -evidence.age_days
        with_form = evidence.day >= 0
        self.strength[row[with_form], form + evidence.day[with_form]] = 1.0
        self.beside = np.zeros(self.strength.shape)
        self.beside[:, CURVE] = 1.0
        self.beside[:, TEMPO] = -np.log(evidence.rep_s / USUAL_REP_S)
        loss = LONGEST_LOSS * -np.expm1(-evidence.lost_days / LOSS_DAYS)
        self.offset = loss - evidence.log_load
        self.wander = WANDER_PER_WEEK**2 * np.abs(evidence.age_days) / 7.0 + loss**2 + np.where(with_form, 0.0, DAY_FORM**2)
        self.said = evidence.said.astype(np.float64)

    def log_reps(self, states: Floats) -> tuple[Floats, Floats]:
        """Log of the repetitions possible, and its slope in strength; `states` is (size,) or (size, many)."""
        offset = self.offset if states.ndim == 1 else self.offset[:, None]
        soft, soft_slope = headroom(self.strength @ states + offset)
        return log(REPS_AT_HALF) + EXPONENT * np.log(soft) + self.beside @ states, EXPONENT * soft_slope / soft

    def noise(self, log_reps: Floats, slope: Floats, underclaim: float) -> tuple[Floats, Floats]:
        """Variance of log reps as read, and scale of the bounds, near one state."""
        evidence = self.evidence
        possible = np.exp(np.minimum(log_reps, 5.0))
        left = np.maximum(possible - underclaim - evidence.done, 0.0)
        reps = np.where(evidence.said, SAID_NOISE + SAID_NOISE_PER_REP * left, evidence.noise)
        drift = SET_NOISE**2 + slope**2 * self.wander
        read = np.maximum(evidence.reps + self.said * underclaim, 0.5)
        return (reps / _log_mean(possible, read)) ** 2 + drift, LOGISTIC / np.sqrt(drift + (0.5 / read) ** 2)

    def _start(self) -> Floats:
        """Where the steps begin: each exercise where its own sets would put it on the average curve."""
        evidence, state = self.evidence, self.prior_mean.copy()
        exercises = len(evidence.exercises)
        own = slice(SHARED, SHARED + exercises)
        plain = log_one_rep_max(evidence.log_load, evidence.reps)
        counts = np.bincount(evidence.exercise, minlength=exercises)
        means = np.bincount(evidence.exercise, plain, exercises) / np.maximum(counts, 1)
        moved = np.where(counts > 0, means - state[own] - state[PERSON], 0.0)
        general = float(moved.sum()) / max(1, int((counts > 0).sum()))
        state[PERSON] += general
        state[own] += np.where(counts > 0, moved - general, 0.0)
        return state

    def most_plausible(self) -> _Peak:
        """The most plausible state and what surrounds it."""
        evidence, state = self.evidence, self._start()
        prior = np.diag(self.prior_precision)
        before, pace = np.zeros_like(state), 1.0
        for step in range(STEPS):
            log_reps, slope = self.log_reps(state)
            variance, scale = self.noise(log_reps, slope, float(state[UNDERCLAIM]))
            read = np.maximum(evidence.reps + self.said * state[UNDERCLAIM], 0.3)
            error = log_reps - np.log(read)
            weight = 1.0 / variance
            if step >= PLAIN_STEPS:
                weight = weight * (TAIL + 1.0) / (TAIL + error**2 / variance)
            beyond = np.minimum(np.maximum(scale * error, -40.0), 40.0)
            broken = 1.0 / (1.0 + np.exp(beyond))
            pull = np.where(evidence.bound, scale * broken, -error * weight)
            weight = np.where(evidence.bound, scale**2 * _steady_curvature(beyond, broken), weight)
            jacobian = self.strength * slope[:, None] + self.beside
            jacobian[:, UNDERCLAIM] = -(self.said / read)
            precision = prior + jacobian.T @ (jacobian * weight[:, None])
            gradient = jacobian.T @ pull - self.prior_precision * (state - self.prior_mean)
            move = np.linalg.solve(precision, gradient)
            turned = float(move @ before) < 0.0
            pace = max(pace / 2.0, 0.25) if turned else min(1.0, 1.5 * pace)
            longest = float(np.abs(self.strength @ move).max(initial=0.0))
            state = state + move * min(pace, LONGEST_STEP / max(longest, 1e-12))
            before = move
            if longest < CLOSE and step > PLAIN_STEPS:
                break
        read_weight = np.where(evidence.bound, 0.0, weight)
        bound_weight = np.where(evidence.bound, scale**2 * broken * (1.0 - broken), 0.0)
        readings = prior + jacobian.T @ (jacobian * read_weight[:, None])
        return _Peak(state, readings, jacobian.T @ (jacobian * bound_weight[:, None]), variance, scale)

    def plausibility(self, states: Floats, variance: Floats, scale: Floats) -> Floats:
        """Log of the joint density at each column of `states`, with the noise held."""
        evidence = self.evidence
        log_reps, _ = self.log_reps(states)
        claims = self.said[:, None] * states[UNDERCLAIM]
        error = log_reps - np.log(np.maximum(evidence.reps[:, None] + claims, 0.3))
        read = (TAIL + 1.0) / 2.0 * np.log1p(error**2 / (TAIL * variance[:, None]))
        bound = np.logaddexp(0.0, -scale[:, None] * error)
        surprise = np.where(evidence.bound[:, None], bound, read).sum(axis=0)
        away = (states - self.prior_mean[:, None]) ** 2
        return np.asarray(-surprise - self.prior_precision @ away / 2.0)


def _log_mean(first: Floats, second: Floats) -> Floats:
    """The number by which a difference of logs is divided to be a difference of reps: noise counts reps, not shares."""
    apart = np.log(np.maximum(first, 1e-3) / second)
    return np.where(np.abs(apart) < 1e-3, second, second * np.expm1(apart) / np.where(apart == 0.0, 1.0, apart))  # noqa: PLR2004


def _steady_curvature(beyond: Floats, broken: Floats) -> Floats:
    """Curvature of the logistic bound; a broken bound is stiffened, so that a step lands just beyond it."""
    return np.where(beyond < 0.0, broken / (2.0 - beyond), broken * (1.0 - broken))


def _widths(ladder: Floats) -> Floats:
    """How wide a part of the line each step stands for: half-way to its neighbours, as `numpy.gradient` has it."""
    widths = np.empty_like(ladder)
    widths[1:-1] = (ladder[2:] - ladder[:-2]) / 2.0
    widths[0], widths[-1] = ladder[1] - ladder[0], ladder[-1] - ladder[-2]
    return widths


def learn(evidence: Evidence, *, round_number: int, trainee: TraineeFacts) -> TodaysStrength:
    """Today's belief about exercise 0 of `evidence`, in round `round_number`."""
    model = _model(evidence, trainee)
    size, form = len(model.prior_mean), SHARED + len(evidence.exercises)
    look = np.zeros((4, size))
    look[0, PERSON] = look[0, SHARED] = 1.0
    look[0, FATIGUE] = -(round_number - 1.0)
    if evidence.today is not None:
        look[0, form + evidence.today] = 1.0
    look[1, CURVE] = look[2, TEMPO] = 1.0
    look[3, PERSON] = look[3, SHARED] = 1.0

    peak = model.most_plausible()
    covariance, ladder, chance = _along(model, peak, look[0])
    return TodaysStrength(
        mean=look @ peak.state,
        covariance=look @ covariance @ look.T,
        form_spread=DAY_FORM if evidence.today is None else 0.0,
        form=None if evidence.today is None else float(peak.state[form + evidence.today]),
        ladder=ladder,
        chance=chance,
    )


def slope_of(evidence: Evidence, trainee: TraineeFacts, *, spread: float, shares: tuple[float, ...]) -> tuple[float, ...]:
    """The gain in log strength per day of `evidence.age_days`, at these shares of its belief; before any set it is 0 ± `spread`."""
    model = _model(evidence, trainee, gain=(0.0, spread))
    look = np.zeros(len(model.prior_mean))
    look[GAIN] = 1.0
    peak = model.most_plausible()
    covariance, ladder, chance = _along(model, peak, look)
    below = np.cumsum(chance) - chance / 2.0
    wide = float(look @ covariance @ look) ** 0.5
    return tuple(float(peak.state[GAIN] + wide * step) for step in np.interp(shares, below, ladder))


def _model(evidence: Evidence, trainee: TraineeFacts, gain: tuple[float, float] | None = None) -> _Model:
    """The model with its priors; `gain` a day as mean and spread, None: as is usual for the trainee."""
    size = SHARED + len(evidence.exercises) + evidence.day_count
    mean, spread = np.zeros(size), np.full(size, DAY_FORM)
    mean[TEMPO], spread[TEMPO] = TEMPO_COST
    mean[FATIGUE], spread[FATIGUE] = FATIGUE_PER_ROUND
    mean[UNDERCLAIM], spread[UNDERCLAIM] = UNDERCLAIM_REPS
    weekly = GAIN_PER_WEEK.get(trainee.experience, GAIN_PER_WEEK["new"])
    mean[GAIN], spread[GAIN] = gain or (weekly[0] / 7.0, weekly[1] / 7.0)
    mean[PERSON], spread[PERSON] = person_log_factor(trainee)
    spread[CURVE] = CURVE_SPREAD
    for number, name in enumerate(evidence.exercises):
        prior = prior_for(name)
        mean[SHARED + number], spread[SHARED + number] = log(prior.one_rep_max_kg), prior.spread
    return _Model(evidence, mean, 1.0 / spread**2)


def _along(model: _Model, peak: _Peak, look: Floats) -> tuple[Floats, Floats, Floats]:
    """What the readings leave open, and the density along `look`: steps in its standard deviations, and the chance of each."""
    covariance = np.asarray(np.linalg.inv(peak.readings), dtype=np.float64)
    along = covariance @ look
    direction = along / float(look @ along) ** 0.5
    narrow = (1.0 + float(direction @ peak.bounds @ direction)) ** -0.5
    ladder = np.concatenate([STEPS_DOWN * narrow, STEPS_UP])
    plausible = model.plausibility(peak.state[:, None] + direction[:, None] * ladder, peak.variance, peak.scale)
    chance = np.exp(plausible - plausible.max()) * _widths(ladder)
    return covariance, ladder, chance / chance.sum()
