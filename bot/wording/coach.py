"""What a coach reads: circuits with their times, plans, advice, and what a week does. Short, for a phone in one hand."""

from __future__ import annotations

from typing import TYPE_CHECKING

from bot.wording.book import Worded, words_for
from bot.wording.days import DAY_NAMES, date_text
from bot.wording.phrases import TIED, and_list, load_text, number_text, page, seconds_text
from bot.wording.pictures import span_text
from core.circuit import Span
from core.coach_messages import (
    CircuitAdvice,
    CircuitShown,
    CircuitsListed,
    CircuitUnknown,
    CoachGreeting,
    CoachNotUnderstood,
    InForce,
    InForceAsked,
    ListedCircuit,
    NothingAsked,
    NothingToTakeBack,
    PlanShown,
    PlansShown,
    PutAside,
    Remark,
    TakenBack,
    ToMend,
    TraineePlan,
    TypedLine,
    WeekShown,
)

if TYPE_CHECKING:
    from datetime import date

EXAMPLE = "goblet squat / one-arm row, each side / plank / 60 work 45 rest, 3 rounds"
PLAN_EXAMPLE = '"plan Kitchen seven, Staircase six on mon thu, 4 weeks"'


@words_for(CoachGreeting)
def coach_greeting(message: CoachGreeting) -> Worded:
    """The chat was opened."""
    people = "Nobody trains" if not message.trainees else "One trains" if message.trainees == 1 else f"{message.trainees} train"
    circuits = f"{message.circuits} circuit{'' if message.circuits == 1 else 's'}"
    return Worded(
        page(
            f"Hello {message.coach}. {people} with you so far; {circuits} on the board.",
            "Type a circuit as you would on a board:",
            f'"{EXAMPLE}"',
            'Or "circuits", "plans", "help".',
        ),
        ("circuits", "plans", "help"),
    )


@words_for(CoachNotUnderstood)
def coach_not_understood(message: CoachNotUnderstood) -> Worded:
    """Nothing could be read."""
    del message
    return Worded(page("I didn't catch that.", "A circuit goes like this:", f'"{EXAMPLE}"', 'Or say "help".'), ("help",))


@words_for(ToMend)
def to_mend(message: ToMend) -> Worded:
    """All faults at once."""
    count = len(message.faults)
    head = "One thing to mend:" if count == 1 else f"{count} things to mend:"
    return Worded(page(head, *map(_remark, message.faults), "Nothing has changed. Send it again whole."))


def _remark(remark: Remark) -> str:
    return f"• {remark.place}: {remark.says}. {remark.remedy[:1].upper()}{remark.remedy[1:]}."


@words_for(CircuitShown)
def circuit_shown(message: CircuitShown) -> Worded:
    """A circuit with its times."""
    warm_up = f", {seconds_text(message.warm_up_s)} warm-up in it" if message.warm_up_s else ""
    return Worded(
        page(
            message.name,
            *(f"{number} {_station(line)}" for number, line in enumerate(message.stations, start=1)),
            f"{message.rounds} round{'' if message.rounds == 1 else 's'}. In each:",
            f"• work {seconds_text(message.work_s)}",
            f"• rest {_times(message.rest_s)}",
            f"• so {_times(message.round_s)}",
            f"In all {_times(message.total_s)}{warm_up}.",
        )
    )


def _station(line: TypedLine) -> str:
    """`Goblet squat, 60 s, 10-12 reps, 12 kg`."""
    parts = [line.exercise]
    if line.work_s is not None:
        parts.append(f"{line.work_s} s")
    if line.reps is not None:
        parts.append(f"{span_text(line.reps)} reps")
    if line.sides:
        parts.append("each side")
    if line.load is not None and line.load.amount:
        parts.append(load_text(line.load, max(1, line.loads_held)))
    return ", ".join(parts)


def _times(span: Span) -> str:
    low, high = seconds_text(span.low), seconds_text(span.high)
    return low if low == high else f"{low} to {high}"


@words_for(CircuitAdvice)
def circuit_advice(message: CircuitAdvice) -> Worded:
    """What might be better."""
    return Worded(page("Sound. Worth a thought:", *map(_remark, message.remarks)))


@words_for(WeekShown)
def week_shown(message: WeekShown) -> Worded:
    """What a week does for the body."""
    head = f"A week of {and_list(message.circuits)}, {message.days} workout{'' if message.days == 1 else 's'}"
    groups = [f"• {line.group}: {number_text(round(line.sets, 1))} sets, {_days(line.days)}" for line in message.groups]
    advised = f"Advised (ACSM, WHO): about {message.sets_advised} sets to grow, {message.days_advised} days or more to keep well."
    return Worded(
        page(
            f"{head}{' (if so often)' if message.assumed else ''}:",
            *groups,
            advised,
            f"Fewer sets: {and_list(message.few_sets)}." if message.few_sets else "",
            f"Fewer days: {and_list(message.few_days)}." if message.few_days else "",
            f"Under tension: {_minutes(message.tension_s)} min in the week.",
            f"Energy of a workout, an estimate for {message.body_mass_kg} kg: {span_text(message.kcal)} kcal.",
        )
    )


def _days(count: int) -> str:
    return f"{count} day{'' if count == 1 else 's'}"


def _minutes(span: Span) -> str:
    return span_text(Span(round(span.low / 60), round(span.high / 60)))


@words_for(PlanShown)
def plan_shown(message: PlanShown) -> Worded:
    """A plan day by day."""
    days = ", ".join(DAY_NAMES[day] for day in message.days) if message.days else "any day"
    easier = [str(week) for week in message.easier_weeks]
    turns = (
        f"{and_list(message.circuits)} take turns."
        if len(message.circuits) > 1
        else f"{and_list(message.circuits)}, again and again."
    )
    return Worded(
        page(
            turns,
            f"Days: {days}",
            f"{message.weeks} week{'' if message.weeks == 1 else 's'}, "
            + (f"easier: week {and_list(tuple(easier))}" if easier else "none of them easier"),
            *(f"• {DAY_NAMES[turn.day]}: {turn.circuit}" for turn in message.turns),
            "A missed day moves on: what was missed comes next.",
        )
    )


@words_for(InForceAsked)
def in_force_asked(message: InForceAsked) -> Worded:
    """May it come into force?"""
    whom = and_list(message.whom) if message.whom else "whoever comes"
    if message.replaces and not message.whom:
        whom = "nobody yet"
    what = f"In place of the old {message.name}, " if message.replaces else ""
    instead = f"Ends the plan of {and_list(message.instead)}." if message.instead else ""
    return Worded(
        page(
            f"{what}{'for' if message.replaces else 'For'} {whom}, from {_day(message.from_on)} on.",
            instead,
            'Put it in force? "yes" or "no"',
        ),
        ("yes", "no"),
    )


@words_for(InForce)
def in_force(message: InForce) -> Worded:
    """It is in force."""
    whom = f" for {and_list(message.whom)}" if message.whom else ""
    running = f"{and_list(message.running)}: the workout under way goes on as it was." if message.running else ""
    start = "" if message.from_on is None else f" from {_day(message.from_on)} on"
    return Worded(page(f"In force{whom}{start}: {message.name}.", running, '"undo" takes it back.'), ("undo",))


def _day(from_on: date | None) -> str:
    return "the next workout" if from_on is None else date_text(from_on)


@words_for(PutAside)
def put_aside(message: PutAside) -> Worded:
    """It was not put in force."""
    return Worded(page(f"Dropped: {message.name}. Nothing has changed."))


@words_for(TakenBack)
def taken_back(message: TakenBack) -> Worded:
    """The last change is taken back."""
    return Worded(page(f"Taken back: {message.name}. All is as it was before."))


@words_for(NothingToTakeBack)
def nothing_to_take_back(message: NothingToTakeBack) -> Worded:
    """Nothing to undo."""
    del message
    return Worded(page("There is nothing to take back."))


@words_for(NothingAsked)
def nothing_asked(message: NothingAsked) -> Worded:
    """A yes about nothing."""
    del message
    return Worded(page('Nothing is waiting for a yes or a no. Type a circuit, or say "help".'), ("help",))


@words_for(CircuitsListed)
def circuits_listed(message: CircuitsListed) -> Worded:
    """All circuits."""
    if not message.circuits:
        return Worded(page("No circuit yet. Type one:", f'"{EXAMPLE}"'))
    return Worded(page("Your circuits:", *map(_listed, message.circuits), f'"show {message.circuits[0].name}" for one of them.'))


def _listed(circuit: ListedCircuit) -> str:
    minutes = span_text(Span(circuit.minutes_low, circuit.minutes_high))
    return f"• {circuit.name}: {circuit.stations} stations, {circuit.rounds} rounds, {minutes} min"


@words_for(PlansShown)
def plans_shown(message: PlansShown) -> Worded:
    """What is on for everyone."""
    if not message.trainees:
        return Worded(page("Nobody trains with you yet.", f"A plan goes like this: {PLAN_EXAMPLE}"))
    return Worded(page("Who does what:", *map(_plan, message.trainees)))


def _plan(plan: TraineePlan) -> str:
    comes = "" if plan.comes is None else f". From {date_text(plan.comes[1]).replace(' ', TIED)}: {plan.comes[0]}"
    if plan.week is None or plan.next_on is None:
        return f"• {plan.trainee}: {plan.next_circuit}, no plan{comes}"
    days = ", ".join(DAY_NAMES[day] for day in plan.days) or "any day"
    turns = f"{and_list(plan.circuits)} on {days}, week {plan.week} of {plan.weeks}"
    return f"• {plan.trainee}: {turns}. Next: {plan.next_circuit}, {date_text(plan.next_on).replace(' ', TIED)}{comes}"


@words_for(CircuitUnknown)
def circuit_unknown(message: CircuitUnknown) -> Worded:
    """No circuit of that name."""
    there = f"There {'is' if len(message.there_are) == 1 else 'are'} {and_list(message.there_are)}." if message.there_are else ""
    return Worded(page(f'No circuit "{message.said}".', there))
