"""Coming back after a break or illness, easier weeks, and 48 hours for a muscle group.

What the figures ask for, and what is caution: strength hardly falls in two weeks (entry 28) and little in five or six (29, 30), so
loads need no large cut for its sake. What is guarded is soreness and the heart's and the heat's strain in the first weeks after two
weeks or more away (32: volume down by 50, 30, 20, 10 %, the weekly split from memory; it caps volume, not load), and building up
after fever (46, no figures: ours are caution). Easier weeks: coaches cut sets first (33), every six weeks or so (34, from memory).
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import timedelta
from itertools import pairwise
from math import log
from typing import TYPE_CHECKING

from core.catalogue import exercise
from core.health import EasierWhy, Feeling, NoteKind

if TYPE_CHECKING:
    from datetime import datetime

    from core.circuit import Circuit
    from core.diary import History, SetRecord, WorkoutRecord

BREAK = timedelta(days=14)  # entry 32: two weeks or more away
LONGER_BREAK = timedelta(days=28)  # common practice, no source
WEEK = timedelta(days=7)
AFTER_LONGER = (0.5, 0.7, 0.8, 0.9)  # share of the rounds, week by week: entry 32
AFTER_SHORTER = (0.8, 0.9)  # the last two of these steps: common practice, no source
AFTER_FEVER = (0.5, 0.7)  # the first two of these steps, workout by workout: common practice, no source
EASIER_AFTER = timedelta(days=42)  # six weeks: entry 34 rounded up, from memory
EASIER_SHARE = 0.67
STREAK_GAP = timedelta(days=10)  # a longer gap was rest enough: common practice, no source
STREAK_WORKOUTS = 10
FALLS = 3  # workouts: common practice, no source
MUSCLE_REST = timedelta(hours=48)  # entry 26, from memory
HARD_EFFORT = 5  # below this on the 0-10 scale a workout was easy: common practice, no source
TIRING_SETS = 4  # common practice, no source
COMMON = 2  # exercises that two workouts must share to be compared


@dataclass(frozen=True)
class Step:
    """A step on the way back: the share of the rounds, reps to leave beyond the usual, and days away (None after fever)."""

    share: float
    reserve: int
    days_away: int | None = None


def ended(history: History) -> list[WorkoutRecord]:
    """The workouts that ended, oldest first."""
    return [record for record in history.workouts if record.ended_at is not None]


def after_break(history: History, now: datetime) -> Step | None:
    """The step after the latest break of two weeks or more, None when there was none lately."""
    done = ended(history)
    starts = [record.started_at for record in done] + [now]
    for earlier, start in reversed(list(zip(done, starts[1:], strict=True))):
        away = start - (earlier.ended_at or earlier.started_at)
        if away < BREAK:
            continue
        shares = AFTER_LONGER if away >= LONGER_BREAK else AFTER_SHORTER
        week = (now - start) // WEEK
        if week >= len(shares):
            return None
        return Step(shares[week], max(0, (2 if away >= LONGER_BREAK else 1) - week), away.days)
    return None


def after_fever(history: History) -> Step | None:
    """The step after the latest illness with fever (or below the neck), by workouts done since."""
    ill = [note.at for note in history.notes if note.kind is NoteKind.FEELING and note.value == Feeling.FEVER]
    if not ill:
        return None
    since = sum(record.started_at > ill[-1] for record in ended(history))
    return Step(AFTER_FEVER[since], 2 - since) if since < len(AFTER_FEVER) else None


def easier_week(history: History, now: datetime) -> EasierWhy | None:
    """Why this week is an easier one, as begun in the diary; None when it is not."""
    begun = [note for note in history.notes if note.kind is NoteKind.EASIER_WEEK and now - note.at < WEEK]
    return EasierWhy(begun[-1].value) if begun else None


def easier_week_due(history: History, now: datetime) -> EasierWhy | None:
    """Why an easier week should begin with the workout that is about to start."""
    done, begun = ended(history), [note.at for note in history.notes if note.kind is NoteKind.EASIER_WEEK]
    since = max([at + WEEK for at in begun], default=None)
    if since is not None and now < since:
        return None
    fresh = [record for record in done if since is None or record.started_at >= since]
    if _falling(fresh, history.standing()):
        return EasierWhy.FALLING
    streak: list[WorkoutRecord] = []
    for record in reversed(fresh):
        if (streak[-1].started_at if streak else now) - record.started_at > STREAK_GAP:
            break
        streak.append(record)
    if len(streak) >= STREAK_WORKOUTS and now - streak[-1].started_at >= EASIER_AFTER:
        return EasierWhy.PLAN
    return None


def _falling(done: list[WorkoutRecord], sets: tuple[SetRecord, ...]) -> bool:
    """Whether strength fell from workout to workout over the last three, while effort rose."""
    last = done[-FALLS:]
    efforts = [record.effort for record in last if record.effort is not None]
    if len(efforts) < FALLS or not efforts[0] < efforts[1] < efforts[2]:
        return False
    strengths = [_strengths(record.number, sets) for record in last]
    return all(_change(before, after) < 0 for before, after in pairwise(strengths))


def _strengths(workout: int, sets: tuple[SetRecord, ...]) -> dict[str, float]:
    """The best set of each exercise in a workout: log of load times (1 + reps / 30), Epley's form; only for comparing alike."""
    best: dict[str, float] = {}
    for record in sets:
        if record.workout == workout and record.reps and record.load is not None and record.load.amount:
            best[record.exercise] = max(best.get(record.exercise, -9.0), log(float(record.load.kg) * (1 + record.reps / 30)))
    return best


def _change(before: dict[str, float], after: dict[str, float]) -> float:
    """Mean change over the exercises that both workouts hold; none when they share too few."""
    both = before.keys() & after.keys()
    return sum(after[slug] - before[slug] for slug in both) / len(both) if len(both) >= COMMON else 0.0


@dataclass(frozen=True)
class Recent:
    """The same muscles were trained hard `hours` ago."""

    hours: int
    muscles: tuple[str, ...]


def recently_hard(circuit: Circuit, history: History, now: datetime) -> Recent | None:
    """What today's circuit shares with a hard workout less than 48 hours ago (entry 26), None when it is nothing."""
    last = next(
        (
            record
            for record in reversed(ended(history))
            if (record.effort is None or record.effort >= HARD_EFFORT) and _loaded(record, history)
        ),
        None,
    )
    if last is None or last.ended_at is None or now - last.ended_at >= MUSCLE_REST:
        return None
    then = {muscle for record in _loaded(last, history) for muscle in exercise(record.exercise).main}
    shared = dict.fromkeys(muscle for station in circuit.stations for muscle in exercise(station.exercise).main if muscle in then)
    return Recent((now - last.ended_at) // timedelta(hours=1), tuple(shared)) if shared else None


def _loaded(workout: WorkoutRecord, history: History) -> list[SetRecord]:
    """The sets of a workout; none where there were too few to tire."""
    sets = [record for record in history.standing() if record.workout == workout.number and record.reps]
    return sets if len(sets) >= TIRING_SETS else []
