"""How it goes in an exercise, day by day: the sets that tell of strength, and the charts drawn of them."""

from __future__ import annotations

from typing import TYPE_CHECKING

from core.catalogue import exercise
from core.circuit import WORK_S
from core.pictures import ProgressChart, ProgressPicture, ProgressPoint
from core.reminders import is_dark, local_date
from core.suggestion import Ask, PastSet, StationAsk, suggest

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping, Sequence
    from datetime import date, datetime
    from decimal import Decimal

    from core.diary import SetRecord
    from core.trainee import Trainee
    from core.units import Unit

CHARTS = 3  # on one picture: more are too small on a phone
POINTS = 12  # days on one chart


def past_sets(sets: Iterable[SetRecord], unit: Unit, zone: str) -> dict[str, tuple[PastSet, ...]]:
    """Every set with reps and a load, by exercise, loads in one unit, days on a zone's clock; of two sides the weaker counts."""
    gathered: dict[str, dict[tuple[int, int, int, int], PastSet]] = {}
    for record in sets:
        if record.reps is None or record.load is None or record.rep_s is None or record.load.amount == 0:
            continue
        spot = (record.workout, record.round, record.station, 0 if record.side is not None else record.number)
        found = gathered.setdefault(record.exercise, {})
        past = PastSet(
            date=local_date(record.at, zone),
            round=record.round,
            load=record.load.in_unit(unit),
            reps=record.reps,
            rep_s=record.rep_s,
            reserve=None if record.reserve is None else float(record.reserve),
            rpe=None if record.rpe is None else float(record.rpe),
            seconds=None if record.seconds is None else float(record.seconds),
            work_s=None if record.work_s is None else float(record.work_s),
        )
        if spot not in found or past.reps < found[spot].reps:
            found[spot] = past
    return {slug: tuple(one.values()) for slug, one in gathered.items()}


def progress_of(
    trainee: Trainee, sets: Sequence[SetRecord], now: datetime, slugs: Iterable[str], charts: int = CHARTS
) -> ProgressPicture | None:
    """How it goes in those of the exercises that are done with a load; None when there is none. `sets` are those that hold.

    The ones done on most days are shown, at most so many `charts`.
    """
    past = past_sets(sets, trainee.unit, trainee.zone)
    done = sorted((slug for slug in slugs if past.get(slug)), key=lambda slug: -len({one.date for one in past[slug]}))
    shown = tuple(
        ProgressChart(exercise(slug).name, trainee.unit, tuple(_points(trainee, sets, slug, past))) for slug in done[:charts]
    )
    return ProgressPicture(shown, is_dark(now, trainee.zone)) if shown else None


def _points(
    trainee: Trainee, sets: Sequence[SetRecord], slug: str, past: Mapping[str, tuple[PastSet, ...]]
) -> Iterable[ProgressPoint]:
    """The latest days of an exercise, each with what was known of its strength when that day was over."""
    work_s = next((record.work_s for record in reversed(sets) if record.exercise == slug and record.work_s), WORK_S)
    for day in sorted({one.date for one in past[slug]})[-POINTS:]:
        of_day = [one for one in past[slug] if one.date == day]
        heaviest = max(one.load for one in of_day)
        best, low, high = _strength(trainee.unit, slug, past, day, work_s)
        yield ProgressPoint(day, heaviest, tuple(one.reps for one in of_day if one.load == heaviest), best, low, high)


def _strength(
    unit: Unit, slug: str, past: Mapping[str, tuple[PastSet, ...]], day: date, work_s: int
) -> tuple[Decimal, Decimal, Decimal] | tuple[None, None, None]:
    until = {other: tuple(one for one in sets if one.date <= day) for other, sets in past.items()}
    history = until.pop(slug)
    answer = suggest(
        Ask(
            unit=unit,
            loads=(history[-1].load,),
            station=StationAsk(slug, float(work_s), history[-1].rep_s),
            round=1,
            today=day,
            history=history,
            others=until,
        )
    )
    spread = answer.one_rep_max
    return (None, None, None) if spread is None else (spread.best, spread.low, spread.high)
