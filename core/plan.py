"""Which circuit of a trainee's block is due, and when: it follows from the block, the diary and the day.

The rules, all common practice without a source unless one is named:

- Circuits take turns. What was missed is what comes next, on the next training day; nothing is left out and nothing piles up.
- After a missed training day the day after it is as good, unless the next one follows at once.
- Weeks are those of the calendar. A week in which nothing was done does not count: the block gets longer by it.
- In an easier week there are a third fewer rounds, and two reps more stay in the tank; `core.session.prescription` names loads a
  tenth lighter. Coaches mostly cut sets and reps, then effort or load (Bell et al., 2022, abstract).
- After the last week the block begins again.
"""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass, replace
from datetime import date, timedelta
from typing import TYPE_CHECKING

from core.circuit import Circuit, Span
from core.diary import Ending
from core.recurrence import WEEK
from core.reminders import local_date

if TYPE_CHECKING:
    from collections.abc import Sequence

    from core.diary import History, WorkoutRecord
    from core.recurrence import Recurrence, Weekday
    from core.trainee import Block, Trainee

EASIER_ROUNDS = (2, 3)
"""In an easier week: two rounds of three."""
EASIER_RESERVE = 2
"""In an easier week: so many reps more left in the tank."""
RESERVE_MAX = 10
DONE_SHARE = 0.5
"""A workout that was broken off counts as its turn when at least this share of its stations was reported."""
DAY = timedelta(days=1)


@dataclass(frozen=True)
class Due:
    """What a block asks for.

    Attributes:
        circuit: whose turn it is, with an easier week's changes in it.
        on: the day it is for: today, or the next training day.
        week: the week of the block on that day, from 1.
        weeks: how many it has.
        easier: whether that week is an easier one.
        done_today: whether today's workout is done.
        missed: the training day that is made up for today, None when today is one itself.
    """

    circuit: Circuit
    on: date
    week: int
    weeks: int
    easier: bool
    done_today: bool
    missed: date | None = None


def in_force(trainee: Trainee, circuit: Circuit, today: date) -> tuple[Circuit, Block | None]:
    """What is on for a trainee on their day: what was coming once its day has come, else their circuit and their block."""
    coming = trainee.coming
    return (circuit, trainee.block) if coming is None or today < coming.from_on else (coming.circuit, None)


def circuit_due(block: Block, diary: History, today: date, zone: str = "UTC", own_days: Recurrence | None = None) -> Due:
    """What is due on `today` (the trainee's day), given the diary of a trainee who lives in `zone`.

    `own_days` are the days that the trainee has set, which go before the block's as long as there are any to come.
    """
    own = None if own_days is None or own_days.next_day(today) is None else own_days
    done = turns_taken(block, diary, zone)
    done_today = today in done
    missed = None if done_today or today < block.starts_on else _missed(block, done, today, own)
    on = max(today, block.starts_on)
    if done_today:
        on += DAY
    if missed is None:
        on = next_training_day(block, on, own)
    trained = {local_date(record.started_at, zone) for record in diary.workouts}
    week = _week(block, trained, on)
    circuit = block.circuits[len(done) % len(block.circuits)]
    easier = week in block.easier_weeks
    return Due(eased(circuit) if easier else circuit, on, week, block.weeks, easier, done_today, missed)


def turns_taken(block: Block, diary: History, zone: str) -> tuple[date, ...]:
    """The days on which a circuit of the block was done since it began, oldest first."""
    circuits = {circuit.name: circuit for circuit in block.circuits}
    days = ((local_date(record.started_at, zone), record) for record in diary.workouts if record.circuit in circuits)
    ended = [(day, record) for day, record in days if day >= block.starts_on and record.ending is not None]
    reported = _reported(diary, {record.number for _, record in ended if record.ending is not Ending.COMPLETE})
    return tuple(day for day, record in ended if _counts(record, circuits[record.circuit], reported))


def _reported(diary: History, workouts: set[int]) -> Counter[int]:
    """How many stations were reported in each of these workouts, a station once a round."""
    places = {(one.workout, one.round, one.station) for one in diary.standing() if one.workout in workouts} if workouts else ()
    return Counter(workout for workout, _, _ in places)


def _counts(record: WorkoutRecord, circuit: Circuit, reported: Counter[int]) -> bool:
    """Whether a workout took its circuit's turn: done to the end, or half of it."""
    return record.ending is Ending.COMPLETE or reported[record.number] >= DONE_SHARE * circuit.rounds * len(circuit.stations)


def next_training_day(block: Block, day: date, own_days: Recurrence | None) -> date:
    """The first training day that is `day` or later; the block's, when the trainee's own have come to their end."""
    own = None if own_days is None else own_days.next_day(day)
    if own is not None:
        return own[0]
    while not is_training_day(block, day, None):
        day += DAY
    return day


def is_training_day(block: Block, day: date, own_days: Recurrence | None) -> bool:
    """Whether the trainee's own days, or else the block's, have that day."""
    if own_days is not None:
        return own_days.time_on(day) is not None
    return not block.days or weekday(day) in block.days


def weekday(day: date) -> Weekday:
    """The day of the week, as trainees have them."""
    return WEEK[day.weekday()]


def _missed(block: Block, done: Sequence[date], today: date, own: Recurrence | None) -> date | None:
    """The training day since the last workout that today makes up for; None when today is one, or tomorrow is."""
    if is_training_day(block, today, own) or is_training_day(block, today + DAY, own):
        return None
    day, since = today - DAY, max((*done, block.starts_on - DAY))
    while day > since:
        if is_training_day(block, day, own):
            return day
        day -= DAY
    return None


def _week(block: Block, trained: set[date], day: date) -> int:
    """The week of the block on a day: calendar weeks since its start, less those in which nothing was done."""
    monday, count = monday_of(block.starts_on), 0
    while monday < monday_of(day):
        count += any(monday <= one < monday + 7 * DAY for one in trained)
        monday += 7 * DAY
    return count % block.weeks + 1


def monday_of(day: date) -> date:
    """The Monday of a day's week."""
    return day - day.weekday() * DAY


def eased(circuit: Circuit) -> Circuit:
    """The circuit as it is done in an easier week, under the same name."""
    part, whole = EASIER_ROUNDS
    stations = tuple(
        replace(
            station,
            reserve=Span(
                min(RESERVE_MAX, station.reserve.low + EASIER_RESERVE), min(RESERVE_MAX, station.reserve.high + EASIER_RESERVE)
            ),
        )
        for station in circuit.stations
    )
    return replace(circuit, rounds=max(1, circuit.rounds * part // whole), stations=stations)


def weeks_of(block: Block) -> tuple[tuple[Circuit, ...], ...]:
    """The circuits of each week until they come in the same order again, when no day is missed.

    A block without days is taken to be done on as many days a week as it has circuits, and at least two.
    """
    days = len(block.days) or max(2, len(block.circuits))
    order = 0
    weeks: list[tuple[Circuit, ...]] = []
    while not weeks or order % len(block.circuits):
        weeks.append(tuple(block.circuits[(order + number) % len(block.circuits)] for number in range(days)))
        order += days
    return tuple(weeks)
