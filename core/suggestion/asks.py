"""What is asked of the suggestion, and what it answers. Loads are per hand, in the unit of the question."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date
from decimal import Decimal
from typing import Literal

from core.reasons import Reason
from core.strength.evidence import PastSet
from core.strength.priors import TraineeFacts
from core.units import Unit

Change = Literal["first", "up", "same", "down"]
Lever = Literal["tempo", "variant", "rest"]


@dataclass(frozen=True)
class StationAsk:
    """The station: `work_s` seconds of one exercise at `rep_s` seconds a rep.

    Attributes:
        exercise: any name; one the tables do not know starts light.
        work_s: seconds of work (each side when `sides`).
        rep_s: seconds a rep at the coach's tempo.
        rep_s_range: seconds a rep the coach allows, fastest first; None when the tempo is fixed.
        sides: left and right one after the other.
        reserve: reps to be left at the end, lowest first.
    """

    exercise: str
    work_s: float
    rep_s: float
    rep_s_range: tuple[float, float] | None = None
    sides: bool = False
    reserve: tuple[float, float] = (1, 2)


@dataclass(frozen=True)
class Ask:
    """One question: which load and tempo for this station, in this round, today?

    Attributes:
        unit: of every load here.
        loads: what both hands (or the one that is needed) can hold; any order.
        station: what is to be done.
        round: 1 for the first.
        today: the trainee's day.
        history: this exercise's records, oldest first.
        trainee: facts beside the records.
        others: the records of the same body's other exercises.
    """

    unit: Unit
    loads: tuple[Decimal, ...]
    station: StationAsk
    round: int
    today: date
    history: tuple[PastSet, ...] = ()
    trainee: TraineeFacts = field(default_factory=TraineeFacts)
    others: Mapping[str, tuple[PastSet, ...]] = field(default_factory=dict)


@dataclass(frozen=True)
class Spread:
    """An estimate with its 80 % interval, in the unit of the question."""

    best: Decimal
    low: Decimal
    high: Decimal


@dataclass(frozen=True)
class Suggestion:
    """The answer.

    Attributes:
        load: None when the rack is empty.
        unit: of `load` and `one_rep_max`.
        rep_s: seconds a rep to use.
        reps: whole reps to expect, lowest first.
        reserve: reps to be left, as the station asks.
        finish_chance: probability of lasting the whole time at the tempo; None where strength is not known.
        change: against the last set of this exercise.
        lever: what changes beside the load, or instead of it.
        why: the reason, as numbers.
        one_rep_max: estimated at the usual tempo, never to be tried.
    """

    load: Decimal | None
    unit: Unit
    rep_s: float
    reps: tuple[int, int]
    reserve: tuple[float, float]
    finish_chance: float | None
    change: Change
    lever: Lever | None
    why: Reason
    one_rep_max: Spread | None
