"""A week on paper, as values: everyone's days, sets, loads, strength, effort, notes. The shell makes the file, see `bot.sheet`."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from decimal import Decimal

from core.diary import Ending
from core.review_facts import Change, DayKind, Flag, GroupSets, LoadWeek
from core.units import Load, Unit


@dataclass(frozen=True)
class SheetWorkout:
    """A workout: `ending` None while it runs, minutes from start to end, effort (0-10) and `load`, effort times minutes."""

    day: date
    circuit: str
    ending: Ending | None
    minutes: int | None
    effort: Decimal | None
    load: int | None


@dataclass(frozen=True)
class SheetCurve:
    """The heaviest load of each day of an exercise over the last weeks, oldest first, per hand in one unit."""

    exercise: str
    unit: Unit
    points: tuple[tuple[date, Decimal], ...]


@dataclass(frozen=True)
class SheetSwap:
    """Instead of an exercise, another one."""

    exercise: str
    instead: str


@dataclass(frozen=True)
class SheetHold:
    """A load held back at an exercise, None: at all; `most` None: not above what was done last."""

    exercise: str | None
    most: Load | None


@dataclass(frozen=True)
class SheetNote:
    """The coach's words on the card of an exercise, None: on the first card."""

    exercise: str | None
    text: str


@dataclass(frozen=True)
class SheetPain:
    """A pain: `place` None when not said or not agreed to be told, `eased_on` None while it is not said to be gone."""

    day: date
    urgent: bool
    place: str | None
    exercise: str | None
    eased_on: date | None


@dataclass(frozen=True)
class SheetQuestion:
    """A question of the trainee's, at an exercise or at none."""

    day: date
    text: str
    exercise: str | None
    answered: bool


@dataclass(frozen=True)
class SheetPerson:
    """Somebody's week.

    Attributes:
        name: theirs.
        flags: why they need a word, the most urgent first.
        days: what Monday to Sunday were.
        trained, planned, missed: days; `planned` None where no days are set.
        workouts, loads, groups: what was done.
        sets: all of the week.
        effort: the mean of the workouts (0-10); `load` their effort times minutes, added up.
        change: how strength goes, None when there is too little to say.
        curves: the exercises done most.
        swaps, holds, notes: what the coach wishes for them.
        pains, questions: those of the week, and older ones that are open.
    """

    name: str
    flags: tuple[Flag, ...]
    days: tuple[DayKind, ...]
    trained: int
    planned: int | None
    missed: int
    workouts: tuple[SheetWorkout, ...]
    sets: int
    loads: tuple[LoadWeek, ...]
    groups: tuple[GroupSets, ...]
    effort: Decimal | None
    load: int | None
    change: Change | None
    curves: tuple[SheetCurve, ...]
    swaps: tuple[SheetSwap, ...] = ()
    holds: tuple[SheetHold, ...] = ()
    notes: tuple[SheetNote, ...] = ()
    pains: tuple[SheetPain, ...] = ()
    questions: tuple[SheetQuestion, ...] = ()


@dataclass(frozen=True)
class Sheet:
    """A week of several people, those who need a word first; beside it what is advised a week for a muscle group."""

    monday: date
    sunday: date
    made_on: date
    people: tuple[SheetPerson, ...]
    sets_advised: int
    days_advised: int

    @property
    def file_name(self) -> str:
        """Such as `week-2026-03-02.html`."""
        return f"week-{self.monday.isoformat()}.html"
