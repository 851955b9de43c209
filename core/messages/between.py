"""Between workouts: what today holds, progress, help."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from core.messages.reports import SetLine
from core.pictures import Board, ProgressPicture
from core.recurrence import Weekday
from core.units import Load, Unit


@dataclass(frozen=True)
class WelcomeBack:
    """The chat was opened again, with no workout under way."""

    name: str


@dataclass(frozen=True)
class StationLine:
    """A station in one line of an overview."""

    exercise: str
    load: Load | None
    loads_held: int
    sides: bool


@dataclass(frozen=True)
class TodayPlan:
    """What today holds. Minutes in all, warm-up and rests included.

    `days_off` is set when rounds were taken off because the last workout was so many days ago; `offer` when the health questions
    are offered with it.
    """

    circuit: str
    rounds: int
    stations: tuple[StationLine, ...]
    minutes_low: int
    minutes_high: int
    done_today: bool
    days_off: int | None = None
    offer: bool = False
    picture: Board | None = None
    block: TodayInBlock | None = None


@dataclass(frozen=True)
class TodayInBlock:
    """Where in a block today's workout is: week `week` of `weeks`; `missed` is the training day that today makes up for."""

    week: int
    weeks: int
    easier: bool
    missed: Weekday | None


@dataclass(frozen=True)
class NothingRuns:
    """Something was said that needs a workout under way."""

    circuit: str


@dataclass(frozen=True)
class HelpShown:
    """What can I say?"""

    running: bool


@dataclass(frozen=True)
class UnitNoted:
    """The unit changed."""

    unit: Unit


@dataclass(frozen=True)
class ProgressShown:
    """How it goes: a line an exercise, first and latest set, oldest exercise first."""

    workouts: int
    lines: tuple[ProgressLine, ...]
    picture: ProgressPicture | None = None


@dataclass(frozen=True)
class ProgressLine:
    """An exercise: its first set and its latest."""

    exercise: str
    first: SetLine
    latest: SetLine


@dataclass(frozen=True)
class NotUnderstood:
    """Nothing in the message could be read; `expects` is what would be understood now."""

    expects: Literal["reps", "go", "back", "today"]


@dataclass(frozen=True)
class MannersReturned:
    """Thanks, a greeting, a nod or a farewell, answered in kind; `expects` is what is waited for, None when nothing is."""

    said: Literal["thanks", "hello", "nod", "bye"]
    expects: Literal["reps", "go", "back", "today"] | None


@dataclass(frozen=True)
class NoHurry:
    """Somebody asks to wait while no workout runs."""


BetweenMessage = (
    WelcomeBack | TodayPlan | NothingRuns | HelpShown | UnitNoted | ProgressShown | NotUnderstood | MannersReturned | NoHurry
)
