"""What is told of how it went, to a coach and to a trainee, as values; the words are in `bot.wording.review`."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from typing import Literal

from core.pictures import OwnWeekPicture, ProgressPicture, RosterWeek
from core.review_facts import Change, Flag, LoadWeek
from core.sheet import Sheet

Which = Literal["this", "last"]


@dataclass(frozen=True)
class TrainedLine:
    """Somebody's days: trained, and planned (None where no days are set)."""

    name: str
    trained: int
    planned: int | None


@dataclass(frozen=True)
class MissedLine:
    """Somebody's days that went by."""

    name: str
    days: tuple[date, ...]


@dataclass(frozen=True)
class NeedLine:
    """Somebody who needs a word, and why, the most urgent reason first."""

    name: str
    flags: tuple[Flag, ...]


@dataclass(frozen=True)
class WhoTrainedTold:
    """Who trained in a week, most days first, and who did not."""

    week: Which
    monday: date
    trained: tuple[TrainedLine, ...]
    others: tuple[str, ...]


@dataclass(frozen=True)
class WhoMissedTold:
    """Who missed days in a week, most first; `without_days` have none set, so nothing can be said of them."""

    week: Which
    monday: date
    missed: tuple[MissedLine, ...]
    without_days: tuple[str, ...]


@dataclass(frozen=True)
class NeedWordTold:
    """Who needs a word, the most urgent first; `people` is how many were looked at."""

    people: int
    lines: tuple[NeedLine, ...]


@dataclass(frozen=True)
class HowIsTold:
    """How somebody is doing.

    Attributes:
        name: theirs.
        this, last: their days of this week and of the last one.
        days_since: since the last workout, None when there was none.
        running: in the middle of a workout.
        sets: of this week.
        change: how strength goes.
        effort: the mean of the last workouts (0-10).
        loads: of the last week in which there were any, those that went up or down.
        flags: why they need a word.
        picture: how it goes, None without loads.
    """

    name: str
    this: TrainedLine
    last: TrainedLine
    days_since: int | None
    running: bool
    sets: int
    change: Change | None
    effort: Decimal | None
    loads: tuple[LoadWeek, ...]
    flags: tuple[Flag, ...]
    picture: ProgressPicture | None = None


@dataclass(frozen=True)
class WeekTold:
    """A coach's week.

    Attributes:
        week, monday: which.
        people: on the roster.
        trained: how many of them trained; `days` all their days.
        kept, planned: training days kept, and planned, of those who have days.
        up, down: exercises whose load went up, or down, over all.
        stronger, weaker: names of those whose strength is clearly rising, or falling.
        unclear: how many of whom that cannot be said.
        effort: the mean over all workouts (0-10); `efforts` how many said it.
        missed: who missed days.
        needs: who needs a word.
        picture: everyone in a row, None when there is nobody.
    """

    week: Which
    monday: date
    people: int
    trained: int
    days: int
    kept: int
    planned: int
    up: int
    down: int
    stronger: tuple[str, ...]
    weaker: tuple[str, ...]
    unclear: int
    effort: Decimal | None
    efforts: int
    missed: tuple[MissedLine, ...]
    needs: tuple[NeedLine, ...]
    picture: RosterWeek | None = None


@dataclass(frozen=True)
class SheetTold:
    """The sheet of a week, of so many people, as a file."""

    week: Which
    monday: date
    people: int
    document: Sheet


@dataclass(frozen=True)
class ComingDay:
    """A training day to come, and its circuit."""

    day: date
    circuit: str


@dataclass(frozen=True)
class OwnWeek:
    """A trainee's own week: days trained and planned, sets, what went up, how strength goes, the next training day."""

    days: TrainedLine
    sets: int
    minutes: int
    effort: Decimal | None
    change: Change | None
    loads: tuple[LoadWeek, ...]
    coming: ComingDay | None
    picture: OwnWeekPicture | None = None


ReviewMessage = WhoTrainedTold | WhoMissedTold | NeedWordTold | HowIsTold | WeekTold | SheetTold | OwnWeek
