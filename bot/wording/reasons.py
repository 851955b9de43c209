"""Why this load: one plain sentence for each reason, with the numbers it rests on.

Each sentence is one line; the channel wraps it. Loads are per hand.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, assert_never

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
from core.units import amount_text

if TYPE_CHECKING:
    from decimal import Decimal

    from core.units import Unit


def load_text(load: Decimal, unit: Unit) -> str:
    """A load as people say it: `17.5 kg`."""
    return f"{amount_text(load)} {unit}"


def number_text(number: float) -> str:
    """A number of reps or seconds: `3`, `1.5`."""
    return f"{number:g}"


def set_text(last: LastSet) -> str:
    """What the last set was: `13 and 3 left, twice`."""
    when = "just now" if last.today else "last time"
    if last.short:
        return f"{last.reps} of {last.expected_reps} {when}"
    if last.left is None:
        return f"All {last.reps} {'twice running' if last.times > 1 else when}"
    left = "none" if last.left == 0 else number_text(last.left)
    return f"{last.reps} and {left} left{', twice' if last.times > 1 else ''}"


def nothing_to_hold(_: NothingToHold) -> str:
    """No weights at all."""
    return "No weights here yet: do the version without."


def body_only(reason: BodyOnly) -> str:
    """Only the body's own weight."""
    if reason.reps is None:
        return "Your own weight is the load today."
    if reason.left is None:
        return f"Your own weight is the load: {reason.reps} last time."
    return f"Your own weight is the load: {reason.reps} and {number_text(reason.left)} left last time."


def start_light(reason: StartLight) -> str:
    """A first set with nothing to go by."""
    load = load_text(reason.load, reason.unit)
    if reason.known:
        return f"First time: {load} is a careful start."
    return f"New to me, this one: starting light with {load}."


def start_from_others(reason: StartFromOthers) -> str:
    """A first set judged from other exercises."""
    stations = "other station" if reason.others == 1 else f"{reason.others} other stations"
    return f"First time: {load_text(reason.load, reason.unit)}, going by your {stations}."


def step_up(reason: StepUp) -> str:
    """More load."""
    return f"{set_text(reason.last)}: up to {load_text(reason.load, reason.last.unit)}."


def step_down(reason: StepDown) -> str:
    """Less load."""
    return f"{set_text(reason.last)}: down to {load_text(reason.load, reason.last.unit)} so the time is filled."


def stay(reason: Stay) -> str:
    """The same load again."""
    load = load_text(reason.last.load, reason.last.unit)
    if reason.next_load is None:
        return f"{set_text(reason.last)}: {load} again."
    return f"{set_text(reason.last)}: {load} again before {load_text(reason.next_load, reason.last.unit)}."


def other_tempo(reason: OtherTempo) -> str:
    """Another tempo instead of another load."""
    load = load_text(reason.load, reason.unit)
    seconds = f"{number_text(reason.rep_s)} s a rep"
    if reason.last is None:
        return f"{load} at {seconds}, not {number_text(reason.usual_rep_s)}."
    if reason.rep_s == reason.last.rep_s:
        again = " again" if reason.load == reason.last.load else ""
        return f"{set_text(reason.last)}: {load}{again}, still {seconds}."
    pace = "slower" if reason.rep_s > reason.last.rep_s else "quicker"
    return f"{set_text(reason.last)}: {load} with {pace} reps, {number_text(reason.rep_s)} s each."


def heaviest_is_light(reason: HeaviestIsLight) -> str:
    """The rack ends too early."""
    return f"{load_text(reason.load, reason.unit)} is your heaviest, and about {reason.spare} will be left."


def lightest_is_heavy(reason: LightestIsHeavy) -> str:
    """The rack starts too late."""
    load = load_text(reason.load, reason.unit)
    if reason.reps < 1:
        return f"{load} is your lightest, and too heavy here yet: do the version without."
    return f"{load} is your lightest: about {reason.reps} to expect, stop when form goes."


def after_break(reason: AfterBreak) -> str:
    """Lighter after a break."""
    return f"{reason.days} days off: {load_text(reason.load, reason.unit)} to come back gently."


def tired(reason: Tired) -> str:
    """Lighter in a later round."""
    load = load_text(reason.load, reason.last.unit)
    return f"Round {reason.round}, and rounds tire: {load}, so the time is filled."


def todays_form(reason: TodaysForm) -> str:
    """Today is better or worse than usual."""
    load = load_text(reason.load, reason.unit)
    if reason.percent < 0:
        return f"Today runs about {-reason.percent} % under your usual: {load}."
    return f"Today runs about {reason.percent} % over your usual: {load}."


def why(reason: Reason) -> str:
    """The sentence for any reason."""
    match reason:
        case NothingToHold():
            return nothing_to_hold(reason)
        case BodyOnly():
            return body_only(reason)
        case StartLight():
            return start_light(reason)
        case StartFromOthers():
            return start_from_others(reason)
        case StepUp():
            return step_up(reason)
        case StepDown():
            return step_down(reason)
        case Stay():
            return stay(reason)
        case OtherTempo():
            return other_tempo(reason)
        case HeaviestIsLight():
            return heaviest_is_light(reason)
        case LightestIsHeavy():
            return lightest_is_heavy(reason)
        case AfterBreak():
            return after_break(reason)
        case Tired():
            return tired(reason)
        case TodaysForm():
            return todays_form(reason)
        case _:
            assert_never(reason)
