"""Training days: reminders and what becomes of them, rest days, times away, zones."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import Literal

from core.messages.summary import NextChange
from core.recurrence import Recurrence


@dataclass(frozen=True)
class DayAt:
    """A training day and its time, "HH:MM", None where any time of the day is good."""

    day: date
    at: str | None


@dataclass(frozen=True)
class RestDay:
    """No training today, or no more.

    `circuit` is what comes next; `coming` is when, None when nothing is planned. `taken_off` when today would have been a training
    day; `done` when today's workout is done.
    """

    circuit: str
    coming: DayAt | None
    taken_off: bool
    done: bool = False


@dataclass(frozen=True)
class PlanOver:
    """The training days have come to their end."""

    circuit: str


@dataclass(frozen=True)
class ReminderNoted:
    """When reminders come, read back; `coming` is the next."""

    reminders: Recurrence
    coming: DayAt | None


@dataclass(frozen=True)
class DaysOffNoted:
    """No training from `first` to `last`; `coming` is the next training day after."""

    first: date
    last: date
    coming: DayAt | None


@dataclass(frozen=True)
class DayMoved:
    """A training day moved to another; `at` is its time there, `was_one` when that was a training day before."""

    day: date
    to: date
    at: str
    was_one: bool


@dataclass(frozen=True)
class NothingToMove:
    """The day named is no training day."""

    day: date


@dataclass(frozen=True)
class HalfAsked:
    """Morning or evening? Each answer is a whole message."""

    morning: str
    evening: str


@dataclass(frozen=True)
class ZoneAsked:
    """Another time zone, but which?"""


@dataclass(frozen=True)
class ZoneUnknown:
    """A place whose zone is not known; `nearest` may be meant."""

    said: str
    nearest: tuple[str, ...]


@dataclass(frozen=True)
class ZoneNoted:
    """The trainee's zone changed: the place it is named after, and what the clock shows there; `coming` is the next reminder."""

    place: str
    clock: str
    coming: DayAt | None


@dataclass(frozen=True)
class ReminderPartMissing:
    """Days without a time, or a time without days."""

    missing: Literal["days", "time"]


@dataclass(frozen=True)
class RemindersOff:
    """Reminders have ended."""


@dataclass(frozen=True)
class Snoozed:
    """A reminder will come later; `at` is the wall clock of the trainee, "HH:MM"."""

    at: str


@dataclass(frozen=True)
class SnoozeTimeAsked:
    """Later was said, but not when."""


@dataclass(frozen=True)
class Reminder:
    """The reminder of a day. Minutes in all; `change` is the one thing that differs from the last time."""

    circuit: str
    rounds: int
    minutes_high: int
    change: NextChange | None = None


@dataclass(frozen=True)
class FollowUp:
    """A training day went by; today is as good. Minutes in all."""

    circuit: str
    minutes_high: int


@dataclass(frozen=True)
class ComeBack:
    """After a week or two of silence: coming back is easy. The last word until the trainee speaks.

    `eased` when the workout is a round shorter; `days_off` since the last workout, None when there was none.
    """

    circuit: str
    rounds: int
    minutes_high: int
    eased: bool
    days_off: int | None


@dataclass(frozen=True)
class DaySkipped:
    """Not today."""


DaysMessage = (
    RestDay
    | PlanOver
    | ReminderNoted
    | DaysOffNoted
    | DayMoved
    | NothingToMove
    | HalfAsked
    | ZoneAsked
    | ZoneUnknown
    | ZoneNoted
    | ReminderPartMissing
    | RemindersOff
    | Snoozed
    | SnoozeTimeAsked
    | Reminder
    | FollowUp
    | ComeBack
    | DaySkipped
)
