"""The hidden truth of somebody invented: what they could do, of which the program only ever sees what they text."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from math import exp, floor, log
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    import random

REPS_AT_HALF = 30.0  # to failure with half of what could be lifted once
USUAL_REP_S = 4.0
SLOWER_COSTS = 0.35  # exponent by which slower reps cost reps
ROUND_COSTS = 0.03  # of the log of strength, a round
LUCK = 0.03  # spread of a set's own luck, of the log of reps
USUAL = "usual"


@dataclass(frozen=True)
class Bodies:
    """A middling person: heaviest loads by exercise (per hand, kg), most reps and longest holds; "usual" for others."""

    once_kg: Mapping[str, float]
    most_reps: Mapping[str, float]
    longest_s: Mapping[str, float]


@dataclass(frozen=True)
class Lifter:
    """One person's strength against the middling one, and by how much its logarithm changes a week."""

    bodies: Bodies
    strength: float
    weekly: float

    def reps(
        self, exercise: str, load_kg: float | None, rep_s: float, weeks: float, rounds_before: int, luck: random.Random
    ) -> float:
        """Repetitions to failure, as a real number; `load_kg` is None without a load."""
        now = self.strength * exp(self.weekly * weeks) * exp(-ROUND_COSTS * rounds_before)
        slower = exp(SLOWER_COSTS * log(USUAL_REP_S / rep_s) + luck.gauss(0.0, LUCK))
        if load_kg is None:
            return _of(self.bodies.most_reps, exercise) * now * slower
        return max(0.0, REPS_AT_HALF * (_of(self.bodies.once_kg, exercise) * now / load_kg - 1.0) * slower)

    def seconds(self, exercise: str, weeks: float, luck: random.Random) -> int:
        """The longest hold, in whole seconds."""
        longest_s = _of(self.bodies.longest_s, exercise) * self.strength * exp(self.weekly * weeks + luck.gauss(0.0, LUCK))
        return floor(longest_s)


def _of(table: Mapping[str, float], exercise: str) -> float:
    return table[exercise] if exercise in table else table[USUAL]
