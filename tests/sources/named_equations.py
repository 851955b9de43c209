"""The named one-rep-max equations, to be compared with: load and repetitions to failure in, the max out.

Forms second-hand (SOURCES entry 4, see fixtures/published/README.md); their worked values are checked in
`test_strength_equations`. What the assistant itself uses is `core.strength.curve`.
"""

from math import exp


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


EQUATIONS = {
    "epley": epley,
    "brzycki": brzycki,
    "lombardi": lombardi,
    "oconner": oconner,
    "mayhew": mayhew,
    "wathan": wathan,
    "lander": lander,
}
