"""The one-rep max: estimated with its spread, today and over the weeks. Never a load to try.

A max belongs to its tempo (Wilk et al. 2020); all here are for the usual one, and sets at other tempos are translated by
the trainee's own tempo cost before they count.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import date
from decimal import Decimal
from math import exp
from typing import TYPE_CHECKING, Final

from core.strength.belief import learn
from core.strength.evidence import Evidence, PastSet, gather
from core.suggestion.asks import Ask, Spread
from core.suggestion.chances import NORMALS, quantile, sampled
from core.units import Load

if TYPE_CHECKING:
    from core.strength.curve import Floats

CURVE_FORM: Final = 0.06
"""Beyond a person's factor, curves differ in form: from 17 reps the maxima by the named equations differ by about 5 %."""


@dataclass(frozen=True)
class TrendPoint:
    """The estimate after one day's sets."""

    date: date
    one_rep_max: Spread


def kg_per_unit(ask: Ask) -> float:
    """Kilograms in one of the question's units."""
    return float(Load(Decimal(1), ask.unit).kg)


def evidence_of(ask: Ask) -> Evidence:
    """The records of a question in columns."""
    return gather(
        ask.station.exercise,
        ask.history,
        ask.others,
        today=ask.today,
        work_s=ask.station.work_s,
        kg_per_unit=kg_per_unit(ask),
        days_off=ask.trainee.days_off,
    )


def spread_of(points: Floats, kg_per_unit: float) -> Spread:
    """The one-rep max with its 80 % interval, from a belief as `sampled`; the curve's own form is in doubt, and widens it."""
    rested = points[3] + CURVE_FORM * NORMALS[:, 4]
    low, best, high = (Decimal(str(round(exp(quantile(rested, share)) / kg_per_unit, 1))) for share in (0.1, 0.5, 0.9))
    return Spread(best, low, high)


def trend(ask: Ask) -> tuple[TrendPoint, ...]:
    """The estimate after each day on which this exercise was done, from what was known that day."""
    days = sorted({past.date for past in ask.history if past.load > 0 and past.date <= ask.today})
    return tuple(TrendPoint(day, _as_of(ask, day)) for day in days)


def _as_of(ask: Ask, day: date) -> Spread:
    def until(sets: tuple[PastSet, ...]) -> tuple[PastSet, ...]:
        return tuple(past for past in sets if past.date <= day)

    others = {name: until(sets) for name, sets in ask.others.items()}
    trainee = replace(ask.trainee, days_off=None)
    then = replace(ask, today=day, history=until(ask.history), others=others, trainee=trainee)
    belief = learn(evidence_of(then), round_number=1, trainee=trainee)
    return spread_of(sampled(belief), kg_per_unit(ask))
