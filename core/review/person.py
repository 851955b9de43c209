"""Somebody who is looked at: a trainee with their diary."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, datetime, timedelta

from core.circuit import Circuit
from core.diary import Ending, History, SetRecord, WorkoutRecord
from core.reminders import at_clock, local_date
from core.trainee import Trainee

CAME = (Ending.COMPLETE, Ending.PAIN)


@dataclass(frozen=True)
class Person:
    """A trainee as a review sees them.

    Attributes:
        name: as the coach knows them.
        trainee: what is known of them.
        circuit: the circuit that is on where there is no block.
        diary: theirs.
        gone_at: since when nothing can be sent to them (UTC), None while it can.
        running: true in the middle of a workout.
    """

    name: str
    trainee: Trainee
    circuit: Circuit
    diary: History
    gone_at: datetime | None = None
    running: bool = False

    def day(self, instant: datetime) -> date:
        """The day of an instant on their own calendar."""
        return local_date(instant, self.trainee.zone)

    def sets_since(self, day: date) -> list[SetRecord]:
        """The sets that hold, from the beginning of a day on their own clock."""
        begin = at_clock(day, "00:00", self.trainee.zone)
        return [record for record in self.diary.sets if not record.voided and record.at >= begin]

    def came(self) -> list[WorkoutRecord]:
        """The workouts that they came for, oldest first: done to the end, stopped for pain, or with a set that holds."""
        with_sets = {record.workout for record in self.diary.standing()}
        return [workout for workout in self.diary.workouts if workout.number in with_sets or workout.ending in CAME]


@dataclass(frozen=True)
class Week:
    """A calendar week, from its Monday."""

    monday: date

    @property
    def sunday(self) -> date:
        """Its last day."""
        return self.monday + timedelta(days=6)

    def days(self) -> tuple[date, ...]:
        """Its seven days."""
        return tuple(self.monday + timedelta(days=number) for number in range(7))

    def holds(self, day: date) -> bool:
        """Whether a day is in it."""
        return self.monday <= day <= self.sunday
