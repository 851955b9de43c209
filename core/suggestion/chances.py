"""How a set would go, for every load and tempo at once, from the belief about strength.

The belief is sampled at fixed, evenly spread points (no randomness): the same question always has the same answer.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import log
from statistics import NormalDist
from typing import TYPE_CHECKING, Final

import numpy as np

from core.strength.belief import SET_NOISE
from core.strength.curve import EXPONENT, REPS_AT_HALF, USUAL_REP_S, Floats, headroom

if TYPE_CHECKING:
    from core.strength.belief import TodaysStrength

POINTS: Final = 96


def _even_normals(points: int, dimensions: int) -> Floats:
    """Standard normal points spread evenly: the additive recurrence on the generalised golden ratio."""
    ratio = 2.0
    for _ in range(60):
        ratio = (1.0 + ratio) ** (1.0 / (dimensions + 1))
    steps = np.array([ratio ** -(axis + 1) for axis in range(dimensions)])
    unit = (0.5 + np.outer(np.arange(1, points + 1), steps)) % 1.0
    inverse = NormalDist().inv_cdf
    normals = np.array([[inverse(float(value)) for value in line] for line in unit])
    return np.asarray((normals - normals.mean(axis=0)) / normals.std(axis=0))


NORMALS: Final = _even_normals(POINTS, 6)
SHARES: Final = (np.argsort(np.argsort(NORMALS[:, 0])) + 0.5) / POINTS


@dataclass(frozen=True)
class Chances:
    """Outcomes, with axes (load, tempo) or (load, tempo, point).

    Attributes:
        possible: repetitions to failure at each point.
        ceiling: whole reps the clock allows at each tempo.
    """

    possible: Floats
    ceiling: Floats

    @property
    def spare(self) -> Floats:
        """Reps left at the end of the time; negative when it is not filled."""
        return self.possible - self.ceiling[None, :, None]

    @property
    def finish(self) -> Floats:
        """Probability that the whole time is filled, axes (load, tempo)."""
        return np.asarray((self.spare >= 0.0).mean(axis=2))


def sampled(belief: TodaysStrength) -> Floats:
    """The belief's four values at the fixed points, axes (value, point)."""
    root = np.linalg.cholesky(belief.covariance + 1e-10 * np.eye(4))
    steps = NORMALS[:, :4].copy()
    steps[:, 0] = belief.steps_at(SHARES)
    return np.asarray((belief.mean + steps @ root.T).T)


def quantile(values: Floats, share: float) -> float:
    """The value below which a share lies, between neighbours on a straight line: `numpy.quantile` without its preparations."""
    ordered = np.sort(values)
    place = share * (len(ordered) - 1)
    before = int(place)
    low, part = float(ordered[before]), place - before
    high = float(ordered[min(before + 1, len(ordered) - 1)])
    return low + (high - low) * part if part < 0.5 else high - (high - low) * (1.0 - part)  # noqa: PLR2004 - from the nearer one


def chances(belief: TodaysStrength, points: Floats, loads_kg: Floats, tempos_s: Floats, work_s: float) -> Chances:
    """How sets with each of `loads_kg` and each of `tempos_s` would go.

    Args:
        belief: strength in the round asked about.
        points: the belief as `sampled`.
        loads_kg: per hand.
        tempos_s: seconds a rep.
        work_s: seconds of work.
    """
    strength, curve, tempo_cost, _ = points
    strength = strength + belief.form_spread * NORMALS[:, 4]
    soft, _ = headroom(strength[None, :] - np.log(loads_kg)[:, None])
    log_reps = log(REPS_AT_HALF) + curve + EXPONENT * np.log(soft) + SET_NOISE * NORMALS[:, 5]
    slower = -np.log(tempos_s / USUAL_REP_S)[:, None] * tempo_cost[None, :]
    possible = np.exp(log_reps)[:, None, :] * np.exp(slower)[None, :, :]
    return Chances(possible, np.floor(work_s / tempos_s + 1e-9))
