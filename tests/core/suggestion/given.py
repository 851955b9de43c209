"""Questions to start from, for the tests of suggestions."""

from datetime import date, timedelta
from decimal import Decimal

from core.suggestion import Ask, PastSet, StationAsk, TraineeFacts
from core.units import Unit

MONDAY = date(2026, 3, 2)
BELLS = (8, 12, 16, 20, 24)
FINE = tuple(range(2, 42, 2))


def past(reps, load, *, days_ago=2, round_number=1, rep_s=4.0, **said):
    """One set of some days ago."""
    return PastSet(MONDAY - timedelta(days=days_ago), round_number, Decimal(str(load)), reps, rep_s, **said)


def ask(*history, loads=BELLS, exercise="goblet squat", round_number=1, rep_s=4.0, allowed=None, work_s=60.0, others=None, **more):
    """A question about a minute's station today."""
    return Ask(
        unit=more.pop("unit", Unit.KG),
        loads=tuple(Decimal(str(load)) for load in loads),
        station=StationAsk(exercise, work_s, rep_s, allowed),
        round=round_number,
        today=MONDAY,
        history=history,
        trainee=TraineeFacts(**more),
        others=others or {},
    )
