"""The answer to "what do I do today?", on every day: training days, rest days, days off, and days after the plan has ended.

A pure function over the days that are planned, the diary and the date. Where the days come from does not matter here: `days_of`
makes them from a trainee's recurrence and one circuit; a plan of several circuits makes its own `PlannedDays`.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import date
from enum import StrEnum
from typing import TYPE_CHECKING

from core.reminders import local_date

if TYPE_CHECKING:
    from collections.abc import Sequence

    from core.circuit import Circuit
    from core.diary import WorkoutRecord
    from core.recurrence import Recurrence

EASED_FROM_DAYS = 10  # so long without a workout, and the first one back is a round shorter: common practice, no source


@dataclass(frozen=True)
class PlannedDay:
    """A training day, its time ("HH:MM", None when any time is good) and the circuit's name."""

    day: date
    at: str | None
    circuit: str


@dataclass(frozen=True)
class PlannedDays:
    """Training days around today, ascending: at least today's, if it is one, and the next.

    `off` are days that were taken out. `ends_on` is the last day of the plan, None when it goes on.
    """

    days: tuple[PlannedDay, ...]
    off: tuple[date, ...] = ()
    ends_on: date | None = None


class DayKind(StrEnum):
    """What kind of day it is."""

    OPEN = "open"  # no days are set: every day is good
    TRAINING = "training"
    DONE = "done"  # trained already
    REST = "rest"
    OFF = "off"  # a training day that was taken out
    OVER = "over"  # the plan has ended


@dataclass(frozen=True)
class Agenda:
    """What a day holds.

    Attributes:
        kind: what kind of day it is.
        planned: the day as planned, None unless it is a training day.
        coming: the next training day after it, None when there is none.
        days_off: days since the last workout, 0 when it was on this day; None when there was none.
    """

    kind: DayKind
    planned: PlannedDay | None
    coming: PlannedDay | None
    days_off: int | None


def agenda(planned: PlannedDays | None, workouts: Sequence[WorkoutRecord], zone: str, today: date) -> Agenda:
    """What a day holds.

    Args:
        planned: the training days, None when none are set.
        workouts: the diary's workouts, oldest first.
        zone: the trainee's IANA zone, in which the diary's instants become days.
        today: the day asked about, on the trainee's calendar.
    """
    days = () if planned is None else planned.days
    now = next((day for day in days if day.day == today), None)
    coming = next((day for day in days if day.day > today), None)
    days_off = days_since(workouts, zone, today)
    done = any(workout.ended_at is not None and local_date(workout.started_at, zone) == today for workout in workouts)
    if done:
        kind = DayKind.DONE
    elif planned is None:
        kind = DayKind.OPEN
    elif now is not None:
        kind = DayKind.TRAINING
    elif today in planned.off:
        kind = DayKind.OFF
    elif coming is None and planned.ends_on is not None and planned.ends_on < today:
        kind = DayKind.OVER
    else:
        kind = DayKind.REST
    return Agenda(kind, now, coming, days_off)


def days_of(recurrence: Recurrence | None, circuit: str, today: date) -> PlannedDays | None:
    """The training days of a trainee who does one circuit: today's, if it is one, and the next."""
    if recurrence is None:
        return None
    found = [recurrence.next_day(today)]
    if found[0] is not None and found[0][0] == today:
        found.append(recurrence.next_day(date.fromordinal(today.toordinal() + 1)))
    days = tuple(PlannedDay(*day, circuit) for day in found if day is not None)
    return PlannedDays(days, recurrence.excluded, recurrence.ends_on())


def days_since(workouts: Sequence[WorkoutRecord], zone: str, today: date) -> int | None:
    """Days from the last workout to a day, None when there was none."""
    return None if not workouts else max(0, (today - local_date(workouts[-1].started_at, zone)).days)


def eased(circuit: Circuit, days_off: int | None) -> Circuit:
    """The circuit for somebody who comes back: a round shorter after a long break. Loads are eased where they are worked out."""
    if days_off is None or days_off < EASED_FROM_DAYS or circuit.rounds == 1:
        return circuit
    return replace(circuit, rounds=circuit.rounds - 1)
