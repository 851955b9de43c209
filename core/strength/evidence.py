"""Set records as numbers in columns, ready for the belief.

A station ends because the minute is over, and then the count is only a lower bound on what the trainee could do, or
because strength is, and then it is a measurement. What was said about reserve turns a bound into a reading.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from itertools import accumulate, pairwise
from typing import TYPE_CHECKING, Final

import numpy as np
import numpy.typing as npt

from core.strength.curve import Floats

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

Indexes = npt.NDArray[np.intp]
Marks = npt.NDArray[np.bool_]

MOST_SETS: Final = 400
"""Older sets than the newest four hundred tell nothing about today."""
MOST_DAYS: Final = 30
"""Training days with a day form of their own; what is older counts too, more loosely."""
MOST_REPS: Final = 200
HEAVIEST_KG: Final = 300.0
FREE_DAYS: Final = 10
"""Days off that cost nothing; the loss over two weeks is not measurable (Hortobagyi 1993, second-hand)."""

FAILED_NOISE: Final = 0.9
"""Reps between two sets to failure: measurement error 0.7-1.1 reps (Mitter et al. 2022, read)."""
ONE_SHORT_NOISE: Final = 1.3
"""One rep short of the clock may be strength, or a slow start."""
SAID_NOISE: Final = 0.8
SAID_NOISE_PER_REP: Final = 0.25
"""Reserve near failure is read to about one rep (Refalo 2023: SD 1.00, read); further away worse (Hackett 2017)."""
LEAST_RPE: Final = 5.0
"""Below this an effort says no more than "easy" (Zourdos 2016, from memory)."""


@dataclass(frozen=True)
class PastSet:
    """One set as it was recorded.

    Attributes:
        date: the trainee's day.
        round: 1 for the first.
        load: per hand, in the unit of the question asked.
        reps: whole repetitions done.
        rep_s: seconds one rep takes at the tempo that was asked for.
        reserve: reps left, as said; None when not said.
        rpe: effort 1-10, as said; None when not said.
        seconds: how long it lasted, when it ended before the clock.
        work_s: the seconds of work of its station; None: as long as the one asked about.
    """

    date: date
    round: int
    load: Decimal
    reps: int
    rep_s: float
    reserve: float | None = None
    rpe: float | None = None
    seconds: float | None = None
    work_s: float | None = None


@dataclass(frozen=True)
class Evidence:
    """Set records in columns, one row a set that says something about strength.

    Attributes:
        exercises: names; an exercise's number is its place here, and the asked one is 0.
        exercise: number of the exercise.
        day: number of the day form, -1 when the day is too long ago to have one.
        log_load: log of the load per hand in kilograms.
        rounds_before: 0 in the first round.
        age_days: days of training life between the set and today, breaks left out.
        lost_days: days off beyond the free ones, between the set and today.
        rep_s: seconds a rep really took.
        bound: True where `reps` is only a lower bound.
        reps: the repetitions that were possible, as far as the set tells.
        said: True where `reps` rests on what the trainee said.
        noise: standard deviation of `reps`, in reps, where nothing was said.
        done: repetitions done.
        day_count: how many days have a day form.
        today: number of today's day form, None before the first set of the day.
    """

    exercises: tuple[str, ...]
    exercise: Indexes
    day: Indexes
    log_load: Floats
    rounds_before: Floats
    age_days: Floats
    lost_days: Floats
    rep_s: Floats
    bound: Marks
    reps: Floats
    said: Marks
    noise: Floats
    done: Floats
    day_count: int
    today: int | None


LOAD, ROUND, WORKED, COLUMNS = 1, 4, 8, 9  # places in a row, and how many there are


def _row(past: PastSet) -> tuple[float | None, ...]:
    """A record as numbers; what was not said is no number."""
    day, load = past.date.toordinal(), float(past.load)
    return day, load, past.reps, past.rep_s, past.round, past.reserve, past.rpe, past.seconds, past.work_s


def gather(
    exercise: str,
    history: Sequence[PastSet],
    others: Mapping[str, Sequence[PastSet]],
    *,
    today: date,
    work_s: float,
    kg_per_unit: float,
    days_off: int | None = None,
) -> Evidence:
    """Columns from records; what cannot be a set (negative, in the future, beyond any human) is left out.

    Args:
        exercise: the exercise asked about.
        history: its records.
        others: the same body's records of other exercises.
        today: the trainee's day.
        work_s: seconds of work at a station; past stations that do not say how long they were are taken to have been as long.
        kg_per_unit: kilograms in one of the records' load units.
        days_off: days without training as the trainee says, when longer than the records show.
    """
    names = (exercise, *(name for name in others if name != exercise))
    sets: list[PastSet] = list(history)
    numbers = [0] * len(sets)
    for number, name in enumerate(names[1:], start=1):
        sets += others[name]
        numbers += [number] * len(others[name])
    exercise_number = np.array(numbers, dtype=np.intp)
    columns = np.array([_row(past) for past in sets], dtype=np.float64).reshape(-1, COLUMNS).T.copy()
    columns[LOAD] *= kg_per_unit
    columns[WORKED] = np.where(np.isnan(columns[WORKED]), work_s, columns[WORKED])
    ordinal, load, reps, rep_s = columns[:ROUND]

    last = today.toordinal()
    possible = (
        (ordinal <= last)
        & (load > 0)
        & (load <= HEAVIEST_KG)
        & (reps >= 0)
        & (reps <= MOST_REPS)
        & (rep_s > 0)
        & np.isfinite(rep_s)
    )
    if len(sets) > MOST_SETS or not possible.all():
        kept = np.flatnonzero(possible)
        if len(kept) > MOST_SETS:
            kept = kept[np.argsort(ordinal[kept], kind="stable")[-MOST_SETS:]]
        columns, exercise_number = columns[:, kept], exercise_number[kept]
    ordinal, load, reps, rep_s, rounds, reserve, rpe, seconds, worked = columns

    each = ordinal.tolist()
    days = sorted(set(each))
    place = {day: number for number, day in enumerate(days)}
    day = np.array([place[one] for one in each], dtype=np.intp)
    age, lost = _ages(days, last, days_off)
    first_with_form = max(0, len(days) - MOST_DAYS)
    ceiling = np.floor(worked / rep_s + 1e-9)
    rep_s = np.where(reps > ceiling, np.minimum(rep_s, worked / np.maximum(reps, 1.0)), rep_s)
    early = (reps < ceiling) | (np.isfinite(seconds) & (seconds < worked - rep_s))
    left = np.where(np.isfinite(reserve), reserve, 10.0 - rpe)
    left = np.where((left >= 0) & (left <= MOST_REPS), left, np.nan)
    easy = ~np.isfinite(reserve) & (rpe < LEAST_RPE)
    said = np.isfinite(left) & ~(early & (left == 0))
    noise = np.where(early & (reps == ceiling - 1) & ~np.isfinite(seconds), ONE_SHORT_NOISE, FAILED_NOISE)
    return Evidence(
        exercises=names,
        exercise=exercise_number,
        day=np.where(day >= first_with_form, day - first_with_form, -1),
        log_load=np.log(load),
        rounds_before=np.minimum(np.fmax(rounds - 1.0, 0.0), 9.0),
        age_days=age[day],
        lost_days=lost[day],
        rep_s=rep_s,
        bound=(~early & ~said) | easy,
        reps=np.where(said, reps + np.where(easy, 10.0 - LEAST_RPE, left), np.where(early, reps + 0.5, np.maximum(reps, 0.5))),
        said=said,
        noise=noise,
        done=reps,
        day_count=len(days) - first_with_form,
        today=len(days) - 1 - first_with_form if days and days[-1] == last else None,
    )


def _ages(days: Sequence[float], last: int, days_off: int | None) -> tuple[Floats, Floats]:
    """Days of training life, and days lost to breaks, between each training day and today."""
    gaps = [later - day for day, later in pairwise((*days, float(last)))]
    if days_off is not None and days and days[-1] < last:
        gaps[-1] = max(gaps[-1], float(days_off))
    beyond = [max(gap - FREE_DAYS, 0.0) for gap in gaps]
    lost = list(accumulate(reversed(beyond)))
    lived = list(accumulate(gap - free for gap, free in zip(reversed(gaps), reversed(beyond), strict=True)))
    return np.array(lived[::-1], dtype=np.float64), np.array(lost[::-1], dtype=np.float64)
