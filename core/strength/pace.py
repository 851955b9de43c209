"""Whether strength rises or falls over some weeks: one straight line through all exercises of a body, with its spread.

The model is that of `core.strength.belief`, so a minute that was filled counts as a bound, a lighter week as no loss, and what was
said of reserve is read as there; each day has its form. In place of the gain that new trainees usually have, which would be a
change even where nothing was done, stands a slope that may be anything: up or down by `MAY_BE` in four weeks, most plausibly none.
It turns about the middle of the sets, so that bounds alone lean to neither side. Breaks are left in: what is asked is what
happened, whatever the reason.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Final

import numpy as np

from core.strength.belief import slope_of
from core.strength.evidence import PastSet, gather

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence
    from datetime import date

    from core.strength.priors import TraineeFacts

WINDOW_DAYS: Final = 42
"""Six weeks say more of a pace than four; they are told as so much in four."""
TOLD_DAYS: Final = 28
LEAST_DAYS: Final = 6
LEAST_SPAN_DAYS: Final = 14
"""Fewer training days, or closer together, and nothing is said: common practice, no source."""
MAY_BE: Final = 0.15
"""28 % in 12 weeks is much (Mayhew 2008, see `core.strength.belief`); this leaves room for half as much again."""
SURE: Final = (0.1, 0.5, 0.9)


@dataclass(frozen=True)
class Pace:
    """The change in four weeks in per cent: the middle, and the ends of the 80 % interval; the days and exercises it rests on."""

    best: float
    low: float
    high: float
    days: int
    exercises: int


def pace(past: Mapping[str, Sequence[PastSet]], today: date, work_s: float, trainee: TraineeFacts) -> Pace | None:
    """How strength goes at the end of `today`, from the sets of each exercise; None when there are too few.

    An exercise counts when it was done on two days or more of the last six weeks.
    """
    first = today.toordinal() - WINDOW_DAYS + 1
    recent = {slug: [one for one in sets if first <= one.date.toordinal() <= today.toordinal()] for slug, sets in past.items()}
    compared = {slug: sets for slug, sets in recent.items() if len({one.date for one in sets}) > 1}
    days = sorted({one.date for sets in compared.values() for one in sets})
    if len(days) < LEAST_DAYS or (days[-1] - days[0]).days < LEAST_SPAN_DAYS:
        return None
    asked, *_ = compared
    others = {slug: sets for slug, sets in compared.items() if slug != asked}
    evidence = gather(asked, compared[asked], others, today=today, work_s=work_s, kg_per_unit=1.0)
    ages = evidence.age_days + evidence.lost_days
    evidence = replace(evidence, age_days=ages - ages.mean(), lost_days=np.zeros_like(ages))
    low, best, high = (TOLD_DAYS * value for value in slope_of(evidence, trainee, spread=MAY_BE / TOLD_DAYS, shares=SURE))
    return Pace(_percent(best), _percent(low), _percent(high), len(days), len(compared))


def _percent(log_change: float) -> float:
    return 100.0 * float(np.expm1(log_change))
