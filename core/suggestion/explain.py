"""Why a choice was made: the lever it uses, and the reason with its numbers."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from math import floor
from typing import Final

import numpy as np

from core.reasons import (
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
    Tired,
    TodaysForm,
)
from core.strength.curve import Floats
from core.strength.priors import prior_for
from core.suggestion.asks import Ask, Change, Lever, Suggestion
from core.suggestion.guards import ABOVE_TARGET, LastLoad

FAR_OFF: Final = 4.0
"""Reps beyond the target that call for a harder variant."""
UNLIKELY: Final = 0.35
"""A chance of filling the time that calls for an easier variant, or more rest."""
BREAK_DAYS: Final = 15
NOTICEABLE_FORM: Final = 0.02
SAME_S: Final = 1e-9


@dataclass(frozen=True)
class Choice:
    """One load at one tempo: `possible` reps to failure over the belief, `ceiling` whole reps the clock allows."""

    load: Decimal
    rep_s: float
    possible: Floats
    ceiling: int

    @property
    def finish(self) -> float:
        """Probability that the whole time is filled."""
        return float((self.possible >= self.ceiling).mean())

    @property
    def middle(self) -> float:
        """Median of the repetitions possible."""
        ordered, number = np.sort(self.possible), len(self.possible)
        return float((ordered[(number - 1) // 2] + ordered[number // 2]) / 2.0)


def explain(
    ask: Ask,
    held: tuple[Decimal, ...],
    choice: Choice,
    *,
    change: Change,
    last: LastLoad | None,
    form: float | None,
) -> tuple[Lever | None, Reason]:
    """The lever and the reason for `choice`; `form` is today's, as a share of strength, where today was seen."""
    load, unit = choice.load, ask.unit
    tempo: Lever | None = "tempo" if abs(choice.rep_s - ask.station.rep_s) > SAME_S else None
    spare = choice.middle - choice.ceiling
    if last is not None and load == held[-1] and spare > max(ask.station.reserve) + FAR_OFF:
        return "variant", HeaviestIsLight(load, unit, round(spare))
    if load == held[0] and choice.finish < UNLIKELY:
        tired = ask.round > 1 and last is not None and last.date == ask.today
        return "rest" if tired else "variant", LightestIsHeavy(load, unit, max(0, floor(choice.middle)))
    if last is None:
        return tempo, _first(ask, load)
    before = last_set(ask, last)
    days_off = max((ask.today - last.date).days, ask.trainee.days_off or 0)
    if change == "down" and days_off >= BREAK_DAYS:
        return tempo, AfterBreak(load, unit, days_off)
    if tempo is not None:
        return tempo, OtherTempo(before, load, unit, ask.station.rep_s, choice.rep_s)
    if change != "same" and last.date < ask.today and form is not None and _form_decides(ask, before, change, form):
        return None, TodaysForm(load, unit, round(100 * form))
    if change == "up":
        return None, StepUp(before, load)
    if change == "down" and last.date == ask.today and not before.short:
        return None, Tired(before, load, ask.round)
    if change == "down":
        return None, StepDown(before, load)
    above = [heavier for heavier in held if heavier > load]
    return None, Stay(before, above[0] if above else None)


def last_set(ask: Ask, last: LastLoad) -> LastSet:
    """The last set as a reason tells it."""
    expected = floor(ask.station.work_s / last.rep_s + SAME_S)
    return LastSet(last.load, ask.unit, last.reps, expected, last.left, last.times, today=last.date == ask.today, rep_s=last.rep_s)


def _first(ask: Ask, load: Decimal) -> Reason:
    known = prior_for(ask.station.exercise).known
    done = [name for name, sets in ask.others.items() if any(past.load > 0 for past in sets)]
    if known and done:
        return StartFromOthers(load, ask.unit, len(done))
    return StartLight(load, ask.unit, known)


def _form_decides(ask: Ask, before: LastSet, change: Change, form: float) -> bool:
    """Whether today's form, and not the last set, explains a change."""
    if change == "down":
        return form <= -NOTICEABLE_FORM and not before.short
    easy = before.left is not None and before.left >= min(ask.station.reserve) + ABOVE_TARGET
    return form >= NOTICEABLE_FORM and not easy


def without_load(ask: Ask, rep_s: float, *, bodyweight: bool) -> Suggestion:
    """The answer where there is nothing to hold, or the body is all the load."""
    ceiling = floor(ask.station.work_s / rep_s + SAME_S)
    sets = [past for past in ask.history if past.load == 0 and past.date <= ask.today]
    last = sets[-1] if sets else None
    above = min(ask.station.reserve) + ABOVE_TARGET
    easy = [past for past in sets[-2:] if past.reserve is not None and past.reserve >= above]
    nothing = not bodyweight
    lightest = min((load for load in ask.loads if load > 0), default=None)
    why: Reason = BodyOnly(last.reps if last else None, last.reserve if last else None)
    if nothing:
        why = NothingToHold() if lightest is None else LightestIsHeavy(lightest, ask.unit, 0)
    return Suggestion(
        load=None if nothing else Decimal(0),
        unit=ask.unit,
        rep_s=rep_s,
        reps=(min(max(last.reps, 0), ceiling) if last else 0, ceiling),
        reserve=ask.station.reserve,
        finish_chance=None,
        change="same" if last else "first",
        lever="variant" if nothing or len(easy) == 2 else None,  # noqa: PLR2004 - two sets running
        why=why,
        one_rep_max=None,
    )
