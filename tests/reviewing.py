"""Diaries for reviews: one that is written line by line, and a month of invented people made by dice with a fixed seed."""

from __future__ import annotations

import math
import random
from dataclasses import replace
from datetime import UTC, date, datetime, time, timedelta
from decimal import Decimal
from zoneinfo import ZoneInfo

from bot.bootstrap import demo
from core.circuit import Side
from core.diary import Ending, History, PainRecord, Question, SetRecord, WorkoutRecord
from core.recurrence import WEEK, Recurrence, weekly
from core.review.person import Person
from core.trainee import Trainee
from core.units import Load, Unit
from tests.walking import HEALTHY, RACK

MONDAY = date(2026, 3, 2)
BEGAN = datetime(2026, 3, 1, 12, tzinfo=UTC)
EVENING = datetime(2026, 3, 29, 18, 30, tzinfo=UTC)  # the Sunday of the fourth week
DAY = timedelta(days=1)
CIRCUIT = demo().circuit
MOVES = (  # slug, one-rep max to begin with, station's seconds, seconds a rep, per side
    ("goblet-squat", 34.0, 60, 4.0, False),
    ("one-arm-row", 26.0, 40, 4.0, True),
    ("floor-press", 21.0, 60, 4.0, False),
    ("hammer-curl", 14.0, 60, 4.0, False),
)
NAMES = ("Ana", "Bo", "Cleo", "Dag", "Edda", "Finn", "Gry", "Hal", "Ina", "Jon", "Kaia", "Maximiliane-Josephine von Hohenfels")


class Book:
    """A trainee's diary, written a day at a time; `days` are weekday names, empty for somebody without any."""

    def __init__(self, name: str = "Ana", *, zone: str = "UTC", unit: Unit = Unit.KG, days: str = "Mon Wed Fri") -> None:
        chosen = tuple(WEEK[("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun").index(day)] for day in days.split())
        self.trainee = Trainee(
            name,
            zone,
            unit,
            rack=RACK,
            cautions_accepted_at=BEGAN,
            health=replace(HEALTHY, decided_at=BEGAN, finished_at=BEGAN),
            reminders=Recurrence((weekly(chosen, "18:00", MONDAY),)) if chosen else None,
            reminders_since=BEGAN if chosen else None,
        )
        self.history = History()
        self.gone_at: datetime | None = None

    def at(self, day: date, clock: str = "18:00") -> datetime:
        """An instant on the trainee's own clock."""
        return datetime.combine(day, time.fromisoformat(clock), tzinfo=ZoneInfo(self.trainee.zone)).astimezone(UTC)

    def trains(self, day: date, *sets: tuple, clock: str = "18:00", minutes: int = 30, effort: float | None = None, **more) -> int:
        """A workout; each set is slug, reps, load (in the trainee's unit, None for none). Returns its number."""
        number, start = len(self.history.workouts) + 1, self.at(day, clock)
        said = None if effort is None else Decimal(str(effort))
        ending = more.pop("ending", Ending.COMPLETE)
        record = WorkoutRecord(number, CIRCUIT.name, start, start + minutes * timedelta(minutes=1), ending, effort=said, **more)
        self.history = replace(self.history, workouts=(*self.history.workouts, record))
        for place, (slug, reps, load) in enumerate(sets, start=1):
            self.notes(number, start + place * timedelta(seconds=90), slug, reps, load, station=place)
        return number

    def notes(self, workout: int, at: datetime, slug: str, reps: int | None, load: float | None, **more) -> int:
        """One set record; returns its number."""
        number = len(self.history.sets) + 1
        held = None if load is None else Load(Decimal(str(load)), self.trainee.unit)
        place = {"round": 1, "station": 1, "work_s": 60, "rep_s": 4.0} | more
        record = SetRecord(number, workout, at, CIRCUIT.name, exercise=slug, reps=reps, load=held, **place)
        self.history = replace(self.history, sets=(*self.history.sets, record))
        return number

    def voids(self, number: int) -> None:
        """A record no longer holds."""
        sets = tuple(replace(one, voided=True) if one.number == number else one for one in self.history.sets)
        self.history = replace(self.history, sets=sets)

    def corrects(self, number: int, **changes) -> None:
        """A record is replaced by another that differs."""
        self.voids(number)
        old = self.history.sets[number - 1]
        new = replace(old, number=len(self.history.sets) + 1, voided=False, replaces=number, **changes)
        self.history = replace(self.history, sets=(*self.history.sets, new))

    def hurts(self, day: date, place: str | None = "knee", exercise: str | None = None, *, urgent: bool = False) -> None:
        """Pain is reported."""
        pain = PainRecord(self.at(day), place, None, urgent, exercise)
        self.history = replace(self.history, pains=(*self.history.pains, pain))

    def asks(self, day: date, text: str, exercise: str | None = None) -> None:
        """A question to the coach."""
        question = Question(len(self.history.questions) + 1, self.at(day), text, exercise=exercise)
        self.history = replace(self.history, questions=(*self.history.questions, question))

    @property
    def person(self) -> Person:
        """As a review sees them."""
        return Person(self.trainee.name, self.trainee, CIRCUIT, self.history, self.gone_at)


def month(count: int = len(NAMES), weeks: int = 4, seed: int = 7) -> tuple[Book, ...]:
    """Diaries of invented people over some weeks that end on the Sunday of `EVENING`; the same seed gives the same month."""
    return tuple(_month_of(number, weeks, random.Random(seed + number)) for number in range(count))  # noqa: S311 - no secret


def _month_of(number: int, weeks: int, dice: random.Random) -> Book:
    name = NAMES[number % len(NAMES)] + (f" {number // len(NAMES) + 1}" if number >= len(NAMES) else "")
    zone = ("Europe/Lisbon", "America/New_York", "Asia/Tokyo")[number % 3]
    book = Book(name, zone=zone, unit=Unit.LB if number % 4 == 1 else Unit.KG, days="" if number % 5 == 4 else "Mon Wed Fri")
    book.trainee = replace(book.trainee, health=replace(book.trainee.health, share=number % 2 == 0))
    gain, comes = dice.uniform(-0.06, 0.1), dice.uniform(0.6, 1.0)
    step, per_unit = (Decimal(5), 2.2) if book.trainee.unit is Unit.LB else (Decimal(2), 1.0)
    loads = {slug: step * max(1, round(0.62 * most * per_unit / float(step))) for slug, most, *_ in MOVES}
    first = date(2026, 3, 30) - 7 * weeks * DAY
    for days in range(7 * weeks):
        day = first + days * DAY
        if day.weekday() in (0, 2, 4) and dice.random() < comes:
            _workout(book, day, gain * days / 28, loads, step, dice)
    return book


def _workout(book: Book, day: date, grown: float, loads: dict[str, Decimal], step: Decimal, dice: random.Random) -> None:
    workout = book.trains(day, minutes=dice.randint(26, 44), effort=dice.choice((None, 5, 6, 6.5, 7, 8)))
    form, at = dice.gauss(0, 0.04), book.at(day)
    for turn in (1, 2, 3):
        for station, (slug, most, work_s, rep_s, sides) in enumerate(MOVES, start=1):
            kg = float(Load(loads[slug], book.trainee.unit).kg)
            ratio = most * math.exp(grown + form + dice.gauss(0, 0.02) - 0.02 * turn) / kg
            possible = int(31.5 * max(0.01, ratio - 1) ** 0.94)
            reps = max(1, min(possible, int(work_s / rep_s)))
            left = Decimal(min(6, possible - reps)) if possible >= reps and dice.random() < 0.7 else None
            at += timedelta(seconds=60)
            apart = sides and dice.random() < 0.5
            for side in (Side.LEFT, Side.RIGHT) if apart else (Side.EACH if sides else None,):
                more = {"round": turn, "station": station, "work_s": work_s, "rep_s": rep_s, "side": side, "reserve": left}
                number = book.notes(workout, at, slug, reps, float(loads[slug]), **more)
            if dice.random() < 0.05:
                book.corrects(number, reps=max(1, reps - 1))
            elif dice.random() < 0.02:
                book.voids(number)
            if turn == 3 and left is not None:
                loads[slug] += step if left > 3 else -step if reps < 0.6 * work_s / rep_s and loads[slug] > step else 0
