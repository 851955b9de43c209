"""Ways to choose the next load, from a coach's habit to someone who knows the whole truth."""

from __future__ import annotations

from collections.abc import Callable
from decimal import Decimal
from math import exp, floor
from statistics import NormalDist
from typing import TYPE_CHECKING, NamedTuple

from core.suggestion import Ask, Spread, suggest
from tests.simulation.lifters import EXERCISES, WORK_S, Lifter, Question, kg_per_unit

if TYPE_CHECKING:
    from core.strength.evidence import PastSet


class Choice(NamedTuple):
    """A load and a tempo; the engine adds what it believes of the one-rep max."""

    load: Decimal
    rep_s: float
    one_rep_max: Spread | None = None


Policy = Callable[[Question], Choice]
FORMS = tuple(NormalDist().inv_cdf((index + 0.5) / 15) for index in range(15))


def cost(spare: float) -> float:
    """Distance in reps from one or two left; failing counts threefold, and two more for failing at all."""
    if spare < 0.0:
        return 2.0 - 3.0 * spare
    return max(1.0 - spare, spare - 2.0, 0.0)


def tempos(question: Question) -> list[float]:
    """Half-second steps within the coach's range."""
    allowed = question.station.rep_s_range
    if allowed is None:
        return [question.station.rep_s]
    return [step / 2.0 for step in range(int(allowed[0] * 2), int(allowed[1] * 2) + 1)]


def nearest(loads: tuple[Decimal, ...], load: Decimal, steps: int) -> Decimal:
    """The load `steps` places above or below."""
    at = min(range(len(loads)), key=lambda index: abs(loads[index] - load))
    return loads[min(max(at + steps, 0), len(loads) - 1)]


def engine(question: Question) -> Choice:
    """The suggestion under test, with its spread."""
    answer = suggest(
        Ask(
            question.unit,
            question.loads,
            question.station,
            question.round,
            question.today,
            question.history,
            question.trainee,
            question.others,
        )
    )
    assert answer.load is not None
    return Choice(answer.load, answer.rep_s, answer.one_rep_max)


def first_load(question: Question) -> Decimal:
    """A coach's careful first load: half of the middle lifter's max."""
    kg = EXERCISES[question.station.exercise] / 2.0
    return nearest(question.loads, Decimal(str(kg / kg_per_unit(question.unit))), 0)


def coach_habit(question: Question) -> Choice:
    """Down a step when short, up a step when three are left."""
    rep_s = question.station.rep_s
    if not question.history:
        return Choice(first_load(question), rep_s)
    last = question.history[-1]
    steps = -1 if last.reps < floor(WORK_S / rep_s) else 1 if (left(last) or 0) >= 3 else 0
    return Choice(nearest(question.loads, last.load, steps), rep_s)


def two_for_two(question: Question) -> Choice:
    """Up a step after two sessions running with two reps above the target in the last set; down after two short ones."""
    rep_s = question.station.rep_s
    if not question.history:
        return Choice(first_load(question), rep_s)
    last = question.history[-1]
    if last.date == question.today:
        return Choice(last.load, rep_s)
    days = sorted({past.date for past in question.history})[-2:]
    ends = [[past for past in question.history if past.date == day][-1] for day in days]
    full = floor(WORK_S / rep_s)
    if len(ends) == 2 and all(past.load == last.load and past.reps >= full and (left(past) or 0) >= 4 for past in ends):
        return Choice(nearest(question.loads, last.load, 1), rep_s)
    if all(past.load == last.load and past.reps < full for past in ends):
        return Choice(nearest(question.loads, last.load, -1), rep_s)
    return Choice(last.load, rep_s)


def left(past: PastSet) -> float | None:
    """Reps said to be left."""
    return past.reserve if past.reserve is not None else None if past.rpe is None else 10.0 - past.rpe


def spare(who: Lifter, question: Question, choice: tuple[Decimal, float], form: float | None = None) -> float:
    """True reps left, without the set's luck; with the day's form replaced when `form` is given."""
    load, rep_s = choice[:2]
    scale = 1.0
    if form is not None:
        scale = exp(form * who.world.day_form - who.day_form[question.workout])
    possible = who.possible(
        question.station.exercise,
        float(load) * kg_per_unit(question.unit) / scale,
        rep_s,
        day=question.day,
        workout=question.workout,
        round_number=question.round,
    )
    return possible - floor(WORK_S / rep_s + 1e-9)


def choices(question: Question) -> list[Choice]:
    """Everything the rack and the coach allow."""
    return [Choice(load, rep_s) for load in question.loads for rep_s in tempos(question)]


def knows_all(who: Lifter) -> Policy:
    """The whole truth."""
    return lambda question: min(choices(question), key=lambda choice: cost(spare(who, question, choice)))


def knows_all_but_form(who: Lifter) -> Policy:
    """The truth but the day's form."""
    return lambda question: min(
        choices(question), key=lambda choice: sum(cost(spare(who, question, choice, form)) for form in FORMS)
    )


def named(name: str, who: Lifter) -> Policy:
    """A policy by the name of its function."""
    knowing = {"knows_all": knows_all, "knows_all_but_form": knows_all_but_form}
    habits = {"coach_habit": coach_habit, "two_for_two": two_for_two, "engine": engine}
    return knowing[name](who) if name in knowing else habits[name]
