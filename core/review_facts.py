"""The facts a review is made of: what a day was, how strength goes, who needs a word and why, and how a load went."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from enum import StrEnum

from core.units import Load


class DayKind(StrEnum):
    """What a day was for somebody, on their own calendar."""

    TRAINED = "trained"
    MISSED = "missed"  # planned, gone by, and not made up for in the same week
    MOVED = "moved"  # planned, and made up for on another day of the week
    AHEAD = "ahead"  # planned, today or later
    PAUSED = "paused"  # planned, while the coach's pause or a safety matter held them back
    FREE = "free"


@dataclass(frozen=True)
class Change:
    """How strength has gone, in per cent over four weeks: the middle, and the ends of the 80 % interval."""

    best: Decimal
    low: Decimal
    high: Decimal

    @property
    def clear(self) -> bool:
        """Whether the interval leaves no change at all out."""
        return self.low > 0 or self.high < 0


class FlagKind(StrEnum):
    """Why somebody needs a word, the most urgent first."""

    SIGN = "warning sign"
    PAIN = "pain"
    CLEARANCE = "clearance waiting"
    QUESTION = "question"
    MISSED = "three missed"
    FALLING = "strength falling"
    STUCK = "stuck"
    UNREACHABLE = "unreachable"


URGENCY = tuple(FlagKind)


@dataclass(frozen=True)
class Flag:
    """One reason for a word.

    Attributes:
        kind: the reason.
        since: the day it goes back to, on the trainee's calendar.
        exercise: the name of the exercise it is about, None when it is about none.
        place: where it hurts, None when not said or not agreed to be told.
        count: training days missed, questions open, or exercises stuck; 0 for the others.
        change: how strength falls.
    """

    kind: FlagKind
    since: date
    exercise: str | None = None
    place: str | None = None
    count: int = 0
    change: Change | None = None


@dataclass(frozen=True)
class LoadWeek:
    """An exercise over a week.

    Attributes:
        exercise: its name.
        loads_held: how many weights are held.
        sets: how many, a station once a round, per side or not.
        top: the heaviest load, per hand; None when none applies.
        reps: the reps of the sets with it, in order, of two sides the weaker; empty for a hold or a carry.
        before: the heaviest load of the last day before this week, None when there was none.
    """

    exercise: str
    loads_held: int
    sets: int
    top: Load | None
    reps: tuple[int, ...]
    before: Load | None

    @property
    def step(self) -> int:
        """1 when the load went up, -1 when it went down, else 0."""
        if self.top is None or self.before is None:
            return 0
        return (self.top.kg > self.before.kg) - (self.top.kg < self.before.kg)


@dataclass(frozen=True)
class GroupSets:
    """A major muscle group over a week: sets of its most trained muscle, days of main work."""

    group: str
    sets: Decimal
    days: int
