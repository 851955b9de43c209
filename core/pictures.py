"""What a picture shows, as values. The shell draws it when it is sent, see `bot.pictures`."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from typing import Literal

from core.circuit import Circuit, Span
from core.exercise import Exercise, Measure, Pattern
from core.review_facts import Change, DayKind, Flag, GroupSets, LoadWeek
from core.units import Load, Unit

Group = Literal["legs", "push", "pull", "middle", "other"]

_LEGS = {Pattern.SQUAT, Pattern.HINGE, Pattern.LUNGE, Pattern.CALVES, Pattern.BALANCE}
_PUSH = {Pattern.HORIZONTAL_PUSH, Pattern.VERTICAL_PUSH}
_PULL = {Pattern.HORIZONTAL_PULL, Pattern.VERTICAL_PULL}
_MIDDLE = {Pattern.CORE_EXTENSION, Pattern.CORE_ROTATION}


@dataclass(frozen=True)
class BoardLine:
    """A station on a board.

    Attributes:
        exercise: its name.
        group: what it trains, for its colour.
        load: per hand; None when no load applies or none is known yet.
        loads_held: how many weights are held.
        sides: left and right one after the other; `work_s` and reps are for each.
        work_s: seconds of work, None when reps are counted.
        reps: reps to expect, None for a hold or a carry.
        measure: what counts at it.
        clock_s: seconds of work in all, both sides.
        rest_s: the shortest rest after it, 0 after the last.
    """

    exercise: str
    group: Group
    load: Load | None
    loads_held: int
    sides: bool
    work_s: int | None
    reps: Span | None
    measure: Measure
    clock_s: int
    rest_s: int


@dataclass(frozen=True)
class Board:
    """A circuit as a board to look at before starting; `dark` for a dark room. `week` is None outside a block."""

    circuit: str
    rounds: int
    lines: tuple[BoardLine, ...]
    rest_s: Span
    rest_between_rounds_s: Span
    warm_up_s: int
    total_s: Span
    week: BoardWeek | None = None
    dark: bool = False


@dataclass(frozen=True)
class BoardWeek:
    """Where in a block a workout is; `easier` in a week with less to do."""

    week: int
    weeks: int
    easier: bool


@dataclass(frozen=True)
class ProgressPoint:
    """An exercise on one day.

    `load` is the heaviest of the day, per hand; `reps` those of the sets with it, in order. `best`, `low` and `high` are the
    one-rep max estimated after that day with its 80 % interval, None where it cannot be; never a test to try. All in the
    chart's unit.
    """

    day: date
    load: Decimal
    reps: tuple[int, ...]
    best: Decimal | None = None
    low: Decimal | None = None
    high: Decimal | None = None


@dataclass(frozen=True)
class ProgressChart:
    """An exercise over time, oldest first, at least one point."""

    exercise: str
    unit: Unit
    points: tuple[ProgressPoint, ...]


@dataclass(frozen=True)
class ProgressPicture:
    """How it goes: a chart an exercise."""

    charts: tuple[ProgressChart, ...]
    dark: bool = False


@dataclass(frozen=True)
class RosterRow:
    """Somebody's week in one row.

    Attributes:
        name: theirs.
        days: what Monday to Sunday were.
        flag: why they need a word, the most urgent reason; None when they need none.
        change: how strength goes, None when there is too little to say.
        effort: the mean of the week's workouts (0-10), None when none was said.
        up, down: how many exercises went up and down in load.
    """

    name: str
    days: tuple[DayKind, ...]
    flag: Flag | None
    change: Change | None
    effort: Decimal | None
    up: int = 0
    down: int = 0


@dataclass(frozen=True)
class RosterWeek:
    """A coach's week at a glance, flags first; `more` people have no row because there is no room for them."""

    monday: date
    rows: tuple[RosterRow, ...]
    more: int = 0
    dark: bool = False


@dataclass(frozen=True)
class OwnWeekPicture:
    """A trainee's own week.

    Attributes:
        monday: its first day.
        days: what Monday to Sunday were.
        minutes: of each day's workouts, 0 without one.
        sets: all of the week.
        loads: the exercises shown, those done with a load first.
        groups: the major muscle groups, beside the `advised` sets a week.
        change: how strength goes, None when there is too little to say.
        effort: the mean of the week's workouts (0-10), None when none was said.
    """

    monday: date
    days: tuple[DayKind, ...]
    minutes: tuple[int, ...]
    sets: int
    loads: tuple[LoadWeek, ...]
    groups: tuple[GroupSets, ...]
    advised: int
    change: Change | None
    effort: Decimal | None
    dark: bool = False


Picture = Board | ProgressPicture | RosterWeek | OwnWeekPicture


def group_of(exercise: Exercise) -> Group:
    """What an exercise trains, in the five words a board has colours for."""
    pattern = exercise.pattern
    if pattern in _LEGS:
        return "legs"
    if pattern in _PUSH:
        return "push"
    if pattern in _PULL:
        return "pull"
    return "middle" if pattern in _MIDDLE else "other"


def rests_s(circuit: Circuit) -> tuple[int, ...]:
    """The shortest rest after each station inside a round, 0 after the last."""
    return (*(circuit.rest_after_s(index).low for index in range(len(circuit.stations) - 1)), 0)
