"""Repetitions against load, and the named one-rep-max equations it is compared with.

The curve is `reps = 31.5 (1/f - 1)^0.94`, f being the share of the one-rep max. It runs through the middle of the
figures quoted from Nuzzo et al. 2024 (Sports Med 54:303-321: about 5 at 90 % and 15 at 70 %; bench press 4, 8.8
and 14.1 at 90, 80 and 70 %; second-hand) and gives 4.0, 8.6, 14.2, 21.5 and 31.5 reps at 90, 80, 70, 60 and 50 %.
With the exponent 1 and the factor 30 it would be Epley's equation.
"""

from __future__ import annotations

from math import exp

import numpy as np
import numpy.typing as npt

Floats = npt.NDArray[np.float64]

REPS_AT_HALF = 31.5
EXPONENT = 0.94
SOFTNESS = 0.03
"""How gently the curve runs out above the one-rep max, where the plain formula has no value."""
USUAL_REP_S = 4.0
"""The seconds a rep to which a one-rep max refers; a max belongs to its tempo (Wilk et al. 2020)."""


def headroom(log_ratio: Floats) -> tuple[Floats, Floats]:
    """1/f - 1 and its slope, from the log of one-rep max over load; smooth and positive also where f > 1."""
    plain = np.expm1(np.clip(log_ratio, -2.0, 4.0))
    scaled = plain / SOFTNESS
    soft = SOFTNESS * np.logaddexp(0.0, scaled)
    slope = (plain + 1.0) / (1.0 + np.exp(-np.clip(scaled, -30.0, 30.0)))
    return np.maximum(soft, 1e-9), slope


def reps_to_failure(load: float, one_rep_max: float) -> float:
    """Repetitions the average person can do with `load` (same unit as the max), at the usual tempo."""
    soft, _ = headroom(np.array([np.log(one_rep_max / load)]))
    return float(REPS_AT_HALF * soft[0] ** EXPONENT)


def one_rep_max(load: float, reps: float) -> float:
    """The one-rep max at which `reps` repetitions to failure with `load` are average."""
    return float(load * (1.0 + (reps / REPS_AT_HALF) ** (1.0 / EXPONENT)))


def epley(load: float, reps: float) -> float:
    """W (1 + r/30). Epley 1985, second-hand."""
    return load * (1.0 + reps / 30.0)


def brzycki(load: float, reps: float) -> float:
    """36 w / (37 - r). Brzycki 1993, second-hand; a pole at 37 reps."""
    return 36.0 * load / (37.0 - reps)


def lombardi(load: float, reps: float) -> float:
    """W r^0.10. Lombardi 1989, second-hand."""
    return float(load * reps**0.10)


def oconner(load: float, reps: float) -> float:
    """W (1 + 0.025 r). O'Conner et al. 1989, second-hand."""
    return load * (1.0 + 0.025 * reps)


def mayhew(load: float, reps: float) -> float:
    """100 w / (52.2 + 41.9 e^(-0.055 r)). Mayhew et al. 1992, second-hand."""
    return 100.0 * load / (52.2 + 41.9 * exp(-0.055 * reps))


def wathan(load: float, reps: float) -> float:
    """100 w / (48.8 + 53.8 e^(-0.075 r)). Wathan 1994, second-hand."""
    return 100.0 * load / (48.8 + 53.8 * exp(-0.075 * reps))


def lander(load: float, reps: float) -> float:
    """100 w / (101.3 - 2.67123 r). Lander 1985, second-hand; a pole near 37.9 reps."""
    return 100.0 * load / (101.3 - 2.67123 * reps)
