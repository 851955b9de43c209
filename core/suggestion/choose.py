"""`suggest(ask)`: choose among everything the rack allows, load and tempo together.

Each choice is judged by how far the reps left at the end would be from the target, on average over the belief;
failing before the time is over weighs heavier than finishing easily. The guards then say which steps are allowed.
"""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from math import floor
from typing import Final

import numpy as np

from core.strength.belief import TodaysStrength, learn
from core.strength.curve import Floats
from core.suggestion.asks import Ask, Change, StationAsk, Suggestion
from core.suggestion.chances import Chances, chances, quantile, sampled
from core.suggestion.explain import Choice, explain, without_load
from core.suggestion.guards import LastLoad, allowed, last_load
from core.suggestion.trend import evidence_of, kg_per_unit, spread_of
from core.units import Load

HEAVIEST_KG: Final = Decimal(150)
"""No hand holds more at a timed station, whatever a rack says."""
FAILING: Final = 4.0
"""What not filling the time costs, in reps away from the target."""
FAILING_PER_REP: Final = 3.0
TEMPO_CHANGE: Final = 0.2
"""What a tempo other than the coach's costs, in reps: it is only taken when it helps."""
TEMPO_AWAY: Final = 0.2
"""What each second away from the coach's tempo costs, and each second away from the last set's."""
TEMPO_STEP_S: Final = 0.5
SAME_S: Final = 1e-9
OUT_OF_REACH: Final = 0.05
"""When even one rep is less likely than this at a first try, nothing is named to hold."""


@dataclass(frozen=True)
class _Judged:
    """Everything the rack allows, judged: axes (load, tempo); a choice the guards forbid costs infinity."""

    held: tuple[Decimal, ...]
    tempos: tuple[float, ...]
    belief: TodaysStrength
    points: Floats
    outcome: Chances
    last: LastLoad | None
    cost: Floats


def suggest(ask: Ask) -> Suggestion:
    """The load and tempo for one station, and why. Never raises for odd records or racks."""
    held = _held(ask)
    if not held:
        return without_load(ask, _nearest(_tempos(ask.station), ask.station.rep_s), bodyweight=Decimal(0) in ask.loads)
    judged = _judge(ask, held)
    if judged.last is None and float((judged.outcome.possible[0] >= 1.0).mean()) < OUT_OF_REACH:
        return without_load(ask, _nearest(judged.tempos, ask.station.rep_s), bodyweight=False)
    row, column = divmod(int(np.argmin(judged.cost)), len(judged.tempos))
    outcome, last = judged.outcome, judged.last
    choice = Choice(held[row], judged.tempos[column], outcome.possible[row, column], int(outcome.ceiling[column]))
    change: Change = "first"
    if last is not None:
        change = "same" if choice.load == last.load else "up" if choice.load > last.load else "down"
    lever, why = explain(ask, held, choice, change=change, last=last, form=judged.belief.form)
    lowest = max(0, min(choice.ceiling, floor(quantile(choice.possible, 0.1))))
    return Suggestion(
        load=choice.load,
        unit=ask.unit,
        rep_s=choice.rep_s,
        reps=(lowest, choice.ceiling),
        reserve=ask.station.reserve,
        finish_chance=round(choice.finish, 2),
        change=change,
        lever=lever,
        why=why,
        one_rep_max=spread_of(judged.points, kg_per_unit(ask)),
    )


def load_costs(ask: Ask) -> dict[Decimal, float]:
    """For each load that the guards allow, the expected distance from the target in reps, at its best tempo."""
    held = _held(ask)
    if not held:
        return {}
    cheapest = _judge(ask, held).cost.min(axis=1)
    return {load: float(cost) for load, cost in zip(held, cheapest, strict=True) if np.isfinite(cost)}


def _held(ask: Ask) -> tuple[Decimal, ...]:
    """The loads that a hand can hold, lightest first."""
    one_kg = Load(Decimal(1), ask.unit).kg
    return tuple(load for load in sorted(set(ask.loads)) if load.is_finite() and 0 < load * one_kg <= HEAVIEST_KG)


def _judge(ask: Ask, held: tuple[Decimal, ...]) -> _Judged:
    belief = learn(evidence_of(ask), round_number=max(1, ask.round), trainee=ask.trainee)
    tempos, points = _tempos(ask.station), sampled(belief)
    loads_kg = np.array([float(load) for load in held]) * kg_per_unit(ask)
    outcome = chances(belief, points, loads_kg, np.array(tempos), ask.station.work_s)
    last = last_load(ask)
    free = allowed(ask, held, tempos, last, outcome)
    cost = np.full(free.shape, np.inf)
    cost[free] = _cost(outcome.possible[free] - outcome.ceiling[np.nonzero(free)[1], None], ask.station.reserve)
    cost += _tempo_cost(np.array(tempos), ask.station.rep_s, last)
    return _Judged(held, tempos, belief, points, outcome, last, cost)


def _cost(spare: Floats, reserve: tuple[float, float]) -> Floats:
    """Expected distance from the target in reps, failing weighed heavier; `spare` has the axes (choice, point)."""
    low, high = min(reserve), max(reserve)
    failed = low + FAILING - FAILING_PER_REP * spare
    finished = np.maximum(np.maximum(spare - high, low - spare), 0.0)
    expected: Floats = np.where(spare < 0.0, failed, finished).mean(axis=1)
    return expected


def _tempo_cost(tempos: Floats, usual_s: float, last: LastLoad | None) -> Floats:
    """What each tempo costs for being another one, in reps."""
    away = np.abs(tempos - usual_s)
    turned = np.zeros_like(tempos) if last is None else np.abs(tempos - last.rep_s)
    return TEMPO_CHANGE * (away > SAME_S) + TEMPO_AWAY * (away + turned)


def _tempos(station: StationAsk) -> tuple[float, ...]:
    """Seconds a rep that the coach allows, in half-second steps, the coach's own among them."""
    if station.rep_s_range is None:
        return (station.rep_s,)
    fastest, slowest = min(station.rep_s_range), max(station.rep_s_range)
    steps = range(floor((slowest - fastest) / TEMPO_STEP_S) + 1)
    every = {fastest, slowest, *(fastest + step * TEMPO_STEP_S for step in steps)}
    every.add(min(max(station.rep_s, fastest), slowest))
    return tuple(sorted(every))


def _nearest(tempos: tuple[float, ...], rep_s: float) -> float:
    return min(tempos, key=lambda tempo: abs(tempo - rep_s))
