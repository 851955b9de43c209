"""Strength up or down over four weeks, with its spread: from `core.strength.pace`, over every exercise done with a load.

It is told as clear only when the 80 % interval leaves no change out; with too few sets nothing is told.
"""

from __future__ import annotations

from datetime import timedelta
from decimal import Decimal
from typing import TYPE_CHECKING

from core.circuit import WORK_S
from core.progress import past_sets
from core.review_facts import Change
from core.strength.pace import WINDOW_DAYS, pace
from core.suggestion import TraineeFacts
from core.units import Unit

if TYPE_CHECKING:
    from datetime import date

    from core.review.person import Person

WINDOW = timedelta(days=WINDOW_DAYS)


def strength_of(person: Person, until: date) -> Change | None:
    """How strength went up to the end of a day on their own calendar, None when there is too little to say."""
    past = past_sets(person.sets_since(until - WINDOW), Unit.KG, person.trainee.zone)
    found = pace(past, until, float(WORK_S), TraineeFacts())
    return None if found is None else Change(*(Decimal(f"{value:.1f}") for value in (found.best, found.low, found.high)))
