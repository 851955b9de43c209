"""Lifters with a hidden truth, and the workouts they do: what a suggestion is judged by.

A world is a set of assumptions about how bodies and reports work. The engine must do well in worlds that differ from
its own model (other curves, fatigue that costs reps instead of strength, tempo that costs strength instead of reps,
reporters who say one rep too few, or nothing), so every assumption has more than one value.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from datetime import date, timedelta
from decimal import Decimal
from math import exp, expm1, floor, log
from typing import TYPE_CHECKING, Any

import numpy as np

from core.strength.evidence import PastSet
from core.suggestion import Spread, StationAsk, TraineeFacts
from core.units import KG_PER_LB, Unit

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

START = date(2026, 1, 5)
WORKOUTS, ROUNDS = 12, 3
COUNTED_FROM = 3
ON_TARGET = (0.0, 3.5)
WORK_S = 60.0
DEFAULT_REP_S = 4.0


@dataclass(frozen=True)
class World:
    """Assumptions; pairs are mean and standard deviation between people.

    Attributes:
        curve: family of reps against share of the max.
        curve_spread: of the log of a person's multiplier of the curve.
        tempo: (mean, SD) of the exponent by which slower reps cost reps.
        tempo_costs_strength: slower reps lower the max instead (5 % a second at the mean exponent).
        fatigue: (mean, SD) lost a round, of strength, or of reps when `fatigue_costs_reps`.
        day_form: SD of a day's form, in log strength.
        set_noise: SD of a set's own luck, in log reps.
        gain: (mean, SD) of log strength a week.
        underclaim: (mean, SD) reps said too few.
        claim_noise: SD of one claim, plus a share of the reps left.
        says: (lowest, highest) share of sets with a reserve said.
        says_rpe: the effort is said instead of the reserve.
        says_seconds: failing sets come with how long they lasted.
        own_form: SD of the form of each exercise on each day, beside the whole body's.
        miscounts: share of sets reported one off.
        stops: share of sets stopped early by choice, with the reserve said and how long they lasted.
        days_between: days from workout to workout.
        strength_spread: SD of the log of a person's strength against the table.
        exercise_spread: SD of the log of an exercise's part.
    """

    name: str
    curve: str = "epley"
    curve_spread: float = 0.20
    tempo: tuple[float, float] = (0.35, 0.15)
    tempo_costs_strength: bool = False
    fatigue: tuple[float, float] = (0.03, 0.015)
    fatigue_costs_reps: bool = False
    day_form: float = 0.03
    set_noise: float = 0.03
    gain: tuple[float, float] = (0.008, 0.005)
    underclaim: tuple[float, float] = (1.0, 0.6)
    claim_noise: tuple[float, float] = (0.7, 0.2)
    says: tuple[float, float] = (0.3, 0.9)
    says_rpe: bool = False
    says_seconds: bool = False
    own_form: float = 0.0
    miscounts: float = 0.0
    stops: float = 0.0
    days_between: tuple[int, ...] = (2, 2, 3)
    strength_spread: float = 0.28
    exercise_spread: float = 0.20


WORLDS = (
    World("plain"),
    World("reps curve of the literature", curve="nuzzo", curve_spread=0.25),
    World("flat curve", curve="mayhew", tempo=(0.5, 0.2)),
    World("fatigue costs reps", fatigue=(0.07, 0.03), fatigue_costs_reps=True),
    World("tempo costs strength", tempo_costs_strength=True),
    World("slow reps are free", tempo=(0.05, 0.05)),
    World("honest", underclaim=(0.0, 0.3), claim_noise=(0.5, 0.1)),
    World("very biased", underclaim=(1.8, 0.8), claim_noise=(1.0, 0.35)),
    World("silent", says=(0.0, 0.05), says_seconds=True),
    World("efforts said, always", says=(0.95, 1.0), says_rpe=True),
    World("steady bodies", day_form=0.02, set_noise=0.01, gain=(0.003, 0.002)),
    World("restless bodies", day_form=0.06, set_noise=0.05),
    World("each exercise its own form", day_form=0.015, own_form=0.03),
    World("careless reports", miscounts=0.15, stops=0.08),
    World("fast gains, rare training", gain=(0.015, 0.007), days_between=(4, 5)),
)

EXERCISES = {
    "goblet squat": 34.0,
    "one-arm row": 25.0,
    "floor press": 20.0,
    "Romanian deadlift": 38.0,
    "shoulder_press": 15.0,
    "reverse lunge": 22.0,
    "biceps curl": 12.0,
}
"""The middle lifter's one-rep max per hand, kg; not the engine's own table."""
TEMPOS = {"goblet squat": 4.0, "one-arm row": 3.0, "Romanian deadlift": 5.0, "biceps curl": 4.0}

RACKS: Mapping[str, tuple[Unit, tuple[Decimal, ...], tuple[float, float] | None]] = {
    "full rack": (Unit.KG, tuple(Decimal(kg) for kg in range(2, 42, 2)), (3.0, 6.0)),
    "full rack, fixed tempo": (Unit.KG, tuple(Decimal(kg) / 2 for kg in range(5, 85, 5)), None),
    "pounds": (Unit.LB, tuple(Decimal(lb) for lb in range(5, 85, 5)), (3.0, 6.0)),
    "kettlebells": (Unit.KG, tuple(Decimal(kg) for kg in (8, 12, 16, 20, 24, 28)), (3.0, 6.0)),
    "three pairs": (Unit.KG, tuple(Decimal(kg) for kg in (5, 10, 15)), (3.0, 6.0)),
    "handle and plates": (Unit.KG, tuple(Decimal(2) + Decimal("2.5") * step for step in range(10)), (3.0, 5.0)),
}


@dataclass(frozen=True)
class Lifter:
    """One invented person's truth."""

    world: World
    max_kg: Mapping[str, float]
    curve_factor: float
    tempo_exponent: float
    fatigue: float
    gain_per_day: float
    underclaim: float
    says: float
    day_form: tuple[float, ...]
    own_form: Mapping[str, tuple[float, ...]]

    def possible(self, exercise: str, load_kg: float, rep_s: float, *, day: int, workout: int, round_number: int) -> float:
        """Repetitions to failure, as a real number, without the set's own luck."""
        strength = log(self.max_kg[exercise]) + self.gain_per_day * day + self.day_form[workout]
        strength += self.own_form[exercise][workout]
        reps = 1.0
        rounds = round_number - 1
        if self.world.fatigue_costs_reps:
            reps *= (1.0 - self.fatigue) ** rounds
        else:
            strength += rounds * log(1.0 - self.fatigue)
        if self.world.tempo_costs_strength:
            strength -= 0.04 * (self.tempo_exponent / 0.35) * (rep_s - DEFAULT_REP_S)
        else:
            reps *= (rep_s / DEFAULT_REP_S) ** -self.tempo_exponent
        return reps * self.curve_factor * average_reps(self.world.curve, strength - log(load_kg))


def average_reps(curve: str, log_ratio: float) -> float:
    """Reps of the average person at one-rep max / load = exp(log_ratio)."""
    if log_ratio <= 0.0:
        return 0.0
    if curve == "epley":
        return 30.0 * expm1(log_ratio)
    if curve == "nuzzo":
        return 31.5 * expm1(log_ratio) ** 0.85
    if curve == "mayhew":
        share = 100.0 * exp(-log_ratio)
        return 60.0 if share <= 53.7 else max(0.0, log((share - 52.2) / 41.9) / -0.055)
    if curve == "brzycki":
        return 37.0 - 36.0 * exp(-log_ratio)
    raise ValueError(curve)


def lifter(world: World, seed: int) -> Lifter:
    """A person of `world`; the same seed is the same person."""
    luck = np.random.default_rng(seed)

    def around(pair: tuple[float, float], low: float, high: float) -> float:
        return float(np.clip(luck.normal(*pair), low, high))

    person = luck.normal(0.0, world.strength_spread)
    return Lifter(
        world=world,
        max_kg={name: kg * exp(person + luck.normal(0.0, world.exercise_spread)) for name, kg in EXERCISES.items()},
        curve_factor=exp(luck.normal(0.0, world.curve_spread)),
        tempo_exponent=around(world.tempo, 0.0, 1.0),
        fatigue=around(world.fatigue, 0.0, 0.3),
        gain_per_day=around(world.gain, -0.005, 0.04) / 7.0,
        underclaim=around(world.underclaim, -1.5, 4.0),
        says=float(luck.uniform(*world.says)),
        day_form=tuple(luck.normal(0.0, world.day_form, WORKOUTS)),
        own_form={name: tuple(luck.normal(0.0, world.own_form, WORKOUTS)) for name in EXERCISES},
    )


@dataclass(frozen=True)
class Question:
    """What a policy is asked: everything a coach standing there would know, and `place` for those who know more."""

    station: StationAsk
    unit: Unit
    loads: tuple[Decimal, ...]
    round: int
    today: date
    history: tuple[PastSet, ...]
    others: Mapping[str, tuple[PastSet, ...]]
    trainee: TraineeFacts
    day: int
    workout: int


@dataclass(frozen=True)
class Outcome:
    """One station as it went: what was held, and the one-rep max that was believed in, by whom asked for one."""

    load: Decimal
    rep_s: float
    one_rep_max: Spread | None


def kg_per_unit(unit: Unit) -> float:
    """Kilograms in one of `unit`."""
    return 1.0 if unit is Unit.KG else float(KG_PER_LB)


def workout_days(world: World) -> list[int]:
    """Day numbers of the workouts."""
    days = [0]
    while len(days) < WORKOUTS:
        days.append(days[-1] + world.days_between[len(days) % len(world.days_between)])
    return days


class Workouts:
    """Twelve workouts of one lifter with one rack."""

    def __init__(self, who: Lifter, rack: str, seed: int) -> None:
        self.who = who
        self.unit, self.loads, self.tempos = RACKS[rack]
        self.luck = np.random.default_rng(seed + 77_000)
        self.history: dict[str, tuple[PastSet, ...]] = dict.fromkeys(EXERCISES, ())

    def run(self, policy: Callable[[Question], tuple[Any, ...]]) -> Iterator[tuple[Question, Outcome]]:
        """Ask `policy` at every station for (load, rep_s, one-rep max or None), lift, report."""
        for workout, day in enumerate(workout_days(self.who.world)):
            for round_number in range(1, ROUNDS + 1):
                for exercise in EXERCISES:
                    question = self.question(exercise, round_number, workout, day)
                    load, rep_s, one_rep_max = policy(question)
                    self.lift(question, load, rep_s)
                    yield question, Outcome(load, rep_s, one_rep_max)

    def question(self, exercise: str, round_number: int, workout: int, day: int) -> Question:
        """The station to come."""
        rep_s = TEMPOS.get(exercise, DEFAULT_REP_S)
        return Question(
            StationAsk(exercise, WORK_S, rep_s, self.tempos),
            self.unit,
            self.loads,
            round_number,
            START + timedelta(days=day),
            self.history[exercise],
            {name: sets for name, sets in self.history.items() if name != exercise and sets},
            TraineeFacts("new"),
            day,
            workout,
        )

    def lift(self, question: Question, load: Decimal, rep_s: float) -> None:
        """Do the set, and keep what is reported of it."""
        world, exercise = self.who.world, question.station.exercise
        mean = self.who.possible(
            exercise,
            float(load) * kg_per_unit(self.unit),
            rep_s,
            day=question.day,
            workout=question.workout,
            round_number=question.round,
        )
        possible = mean * exp(self.luck.normal(0.0, world.set_noise))
        ceiling = floor(WORK_S / rep_s + 1e-9)
        reps = min(ceiling, floor(possible))
        past = PastSet(question.today, question.round, load, reps, rep_s)
        if reps < ceiling and world.says_seconds:
            past = replace(past, seconds=float(round(reps * rep_s)))
        if self.luck.random() < self.who.says:
            left = max(0.0, possible - reps)
            noise = self.luck.normal(0.0, world.claim_noise[0] + world.claim_noise[1] * left)
            said = float(max(0, round(left - self.who.underclaim + noise))) if reps == ceiling else 0.0
            past = replace(past, rpe=max(1.0, 10.0 - said)) if world.says_rpe else replace(past, reserve=said)
        if self.luck.random() < world.stops and reps > 4:
            reps -= 3
            past = replace(past, reps=reps, seconds=float(round(reps * rep_s)), reserve=3.0, rpe=None)
        if self.luck.random() < world.miscounts:
            past = replace(past, reps=max(0, past.reps + int(self.luck.choice((-1, 1)))))
        self.history[exercise] = (*self.history[exercise], past)
