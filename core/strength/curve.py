"""Repetitions against load.

The curve is `reps = 31.5 (1/f - 1)^0.94`, f being the share of the one-rep max. It runs through the middle of the
figures quoted from Nuzzo et al. 2024 (Sports Med 54:303-321: about 5 at 90 % and 15 at 70 %; bench press 4, 8.8
and 14.1 at 90, 80 and 70 %; second-hand) and gives 4.0, 8.6, 14.2, 21.5 and 31.5 reps at 90, 80, 70, 60 and 50 %.
With the exponent 1 and the factor 30 it would be Epley's equation.
"""

from __future__ import annotations

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
    plain = np.expm1(np.minimum(np.maximum(log_ratio, -2.0), 4.0))
    vanishing = np.exp(-np.abs(plain) / SOFTNESS)
    soft = SOFTNESS * np.log1p(vanishing) + np.maximum(plain, 0.0)
    slope = (plain + 1.0) * np.where(plain > 0.0, 1.0, vanishing) / (1.0 + vanishing)
    return np.maximum(soft, 1e-9), slope


def log_one_rep_max(log_load: Floats, reps: Floats) -> Floats:
    """Log of the max at which `reps` repetitions to failure are average; the inverse of the curve."""
    found: Floats = log_load + np.log1p((reps / REPS_AT_HALF) ** (1.0 / EXPONENT))
    return found
