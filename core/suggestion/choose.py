"""`suggest(ask)`: choose among everything the rack allows, load and tempo together.

Each choice is judged by how far the reps left at the end would be from the target, on average over the belief;
failing before the time is over weighs heavier than finishing easily. The guards then say which steps are allowed.
"""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from math import exp, floor
from typing import TYPE_CHECKING, Final

import numpy as np

from core.strength.belief import learn
from core.strength.evidence import gather
from core.strength.priors import prior_for
from core.suggestion.asks import Ask, Change, Lever, Spread, StationAsk, Suggestion
from core.suggestion.chances import NORMALS, Chances, chances, sampled
from core.suggestion.guards import LastLoad, allowed, last_load
from core.suggestion.reasons import (
    AfterBreak,
    BodyOnly,
    HeaviestIsLight,
    LastSet,
    LightestIsHeavy,
    NothingToHold,
    OtherTempo,
    Reason,
    StartFromOthers,
    StartLight,
    Stay,
    StepDown,
    StepUp,
)
from core.units import Load

if TYPE_CHECKING:
    from core.strength.belief import TodaysStrength
    from core.strength.curve import Floats

HEAVIEST_KG: Final = Decimal(150)
"""No hand holds more at a timed station, whatever a rack says."""
FAILING: Final = 3.0
"""Cost of not filling the time at all, in reps."""
FAILING_PER_REP: Final = 3.0
TEMPO_CHANGE: Final = 0.1
"""What a tempo other than the coach's costs, in reps: it is only taken when it helps."""
TEMPO_STEP_S: Final = 0.5
CURVE_FORM: Final = 0.05
"""Beyond a person's factor, curves differ in form: from 17 reps the named equations' maxima differ by about 5 %."""
FAR_OFF: Final = 4.0
UNLIKELY: Final = 0.35
BREAK_DAYS: Final = 15


def suggest(ask: Ask) -> Suggestion:
    """The load and tempo for one station, and why. Never raises for odd records or racks."""
    loads = tuple(load for load in sorted(set(ask.loads)) if load.is_finite() and 0 <= Load(load, ask.unit).kg <= HEAVIEST_KG)
    tempos = _tempos(ask.station)
    held = tuple(load for load in loads if load > 0)
    if not held:
        return _without_load(ask, tempos, bodyweight=bool(loads))
    kg_per_unit = float(Load(Decimal(1), ask.unit).kg)
    evidence = gather(
        ask.station.exercise,
        ask.history,
        ask.others,
        today=ask.today,
        work_s=ask.station.work_s,
        kg_per_unit=kg_per_unit,
        days_off=ask.trainee.days_off,
    )
    belief = learn(
        evidence,
        round_number=max(1, ask.round),
        trainee=ask.trainee,
    )
    loads_kg = np.array([float(load) for load in held]) * kg_per_unit
    outcome = chances(belief, loads_kg, np.array(tempos), ask.station.work_s)
    cost = _cost(outcome, ask.station.reserve) + TEMPO_CHANGE * (
        np.abs(np.array(tempos) - _nearest(tempos, ask.station.rep_s)) > 1e-9  # noqa: PLR2004 - equal
    )
    last = last_load(ask)
    cost[~allowed(ask, held, tempos, last, outcome)] = np.inf
    best = int(np.argmin(cost))
    at_load, at_tempo = divmod(best, len(tempos))
    return _answer(ask, held, tempos, _Choice(at_load, at_tempo, outcome), belief, last, kg_per_unit)


@dataclass(frozen=True)
class _Choice:
    load: int
    tempo: int
    outcome: Chances

    @property
    def possible(self) -> Floats:
        """Repetitions to failure over the belief."""
        return self.outcome.possible[self.load, self.tempo]

    @property
    def ceiling(self) -> int:
        return int(self.outcome.ceiling[self.tempo])

    @property
    def finish(self) -> float:
        return float((self.possible >= self.ceiling).mean())


def _cost(outcome: Chances, reserve: tuple[float, float]) -> Floats:
    """Expected distance from the target in reps, failing weighed heavier; axes (load, tempo)."""
    low, high = min(reserve), max(reserve)
    spare = outcome.spare
    easy = np.maximum(spare - high, 0.0)
    tight = np.maximum(low - np.maximum(spare, 0.0), 0.0)
    failed = np.where(spare < 0.0, FAILING - FAILING_PER_REP * spare, 0.0)
    return np.asarray((easy + tight + failed).mean(axis=2))


def _tempos(station: StationAsk) -> tuple[float, ...]:
    """Seconds a rep that the coach allows, half-second steps, the coach's own among them."""
    if station.rep_s_range is None:
        return (station.rep_s,)
    fastest, slowest = sorted(station.rep_s_range)
    steps = range(floor((slowest - fastest) / TEMPO_STEP_S) + 1)
    every = {fastest, slowest, *(fastest + step * TEMPO_STEP_S for step in steps)}
    every.add(min(max(station.rep_s, fastest), slowest))
    return tuple(sorted(every))


def _nearest(tempos: tuple[float, ...], rep_s: float) -> float:
    return min(tempos, key=lambda tempo: abs(tempo - rep_s))


def _answer(  # noqa: PLR0913 - the parts of one answer
    ask: Ask,
    held: tuple[Decimal, ...],
    tempos: tuple[float, ...],
    choice: _Choice,
    belief: TodaysStrength,
    last: LastLoad | None,
    kg_per_unit: float,
) -> Suggestion:
    load, rep_s = held[choice.load], tempos[choice.tempo]
    change: Change = "first"
    if last is not None:
        change = "same" if load == last.load else "up" if load > last.load else "down"
    lever, why = _why(ask, held, choice, change, last, rep_s)
    tenth = float(np.quantile(choice.possible, 0.1))
    lowest = max(0, min(choice.ceiling, floor(tenth)))
    return Suggestion(
        load=load,
        unit=ask.unit,
        rep_s=rep_s,
        reps=(lowest, choice.ceiling),
        reserve=ask.station.reserve,
        finish_chance=round(choice.finish, 2),
        change=change,
        lever=lever,
        why=why,
        one_rep_max=_spread(belief, kg_per_unit),
    )


def _spread(belief: TodaysStrength, kg_per_unit: float) -> Spread:
    """The one-rep max with its 80 % interval; the curve's own form is in doubt, and widens it."""
    rested = sampled(belief)[4] + CURVE_FORM * NORMALS[:, 5]
    low, best, high = (
        Decimal(str(round(exp(value) / kg_per_unit, 1))) for value in np.quantile(rested, (0.1, 0.5, 0.9))
    )
    return Spread(best, low, high)


def _why(  # noqa: PLR0911, PLR0913 - one return a reason
    ask: Ask,
    held: tuple[Decimal, ...],
    choice: _Choice,
    change: Change,
    last: LastLoad | None,
    rep_s: float,
) -> tuple[Lever | None, Reason]:
    load = held[choice.load]
    tempo: Lever | None = "tempo" if abs(rep_s - ask.station.rep_s) > 1e-9 else None  # noqa: PLR2004 - equal
    middle = float(np.median(choice.possible))
    if choice.load == len(held) - 1 and middle - choice.ceiling > max(ask.station.reserve) + FAR_OFF and last:
        return tempo or "variant", HeaviestIsLight(load, ask.unit, round(middle - choice.ceiling))
    if choice.load == 0 and choice.finish < UNLIKELY:
        return tempo or ("rest" if ask.round > 1 else "variant"), LightestIsHeavy(load, ask.unit, max(0, floor(middle)))
    if last is None:
        known = prior_for(ask.station.exercise).known
        done = [name for name, sets in ask.others.items() if sets and prior_for(name).known]
        if known and done:
            return tempo, StartFromOthers(load, ask.unit, done[-1])
        return tempo, StartLight(load, ask.unit, known)
    before = LastSet(
        last.load,
        ask.unit,
        last.reps,
        floor(ask.station.work_s / last.rep_s + 1e-9),
        last.left,
        last.times,
    )
    days = (ask.today - last.date).days
    if change == "down" and max(days, ask.trainee.days_off or 0) >= BREAK_DAYS:
        return tempo, AfterBreak(load, ask.unit, max(days, ask.trainee.days_off or 0))
    if tempo is not None:
        return tempo, OtherTempo(before, load, ask.unit, ask.station.rep_s, rep_s)
    if change == "up":
        return None, StepUp(before, load)
    if change == "down":
        return None, StepDown(before, load)
    return None, Stay(before, held[choice.load + 1] if choice.load + 1 < len(held) else None)


def _without_load(ask: Ask, tempos: tuple[float, ...], *, bodyweight: bool) -> Suggestion:
    """The answer where there is nothing to hold, or the body is all the load."""
    rep_s = _nearest(tempos, ask.station.rep_s)
    ceiling = floor(ask.station.work_s / rep_s + 1e-9)
    last = ask.history[-1] if ask.history else None
    easy = [past for past in ask.history[-2:] if past.reserve is not None and past.reserve >= min(ask.station.reserve) + 2]
    lever: Lever | None = None
    if not bodyweight or len(easy) == 2:  # noqa: PLR2004 - two sets running
        lever = "variant"
    why = BodyOnly(last.reps if last else None, last.reserve if last else None) if bodyweight else NothingToHold()
    return Suggestion(
        load=Decimal(0) if bodyweight else None,
        unit=ask.unit,
        rep_s=rep_s,
        reps=(min(last.reps, ceiling) if last else 0, ceiling),
        reserve=ask.station.reserve,
        finish_chance=None,
        change="same" if last else "first",
        lever=lever,
        why=why,
        one_rep_max=None,
    )
