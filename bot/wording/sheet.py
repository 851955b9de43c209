"""What stands on the sheet of a week: for a coach who reads it on a phone or on paper."""

from __future__ import annotations

from decimal import Decimal
from typing import TYPE_CHECKING

from bot.wording.days import date_text
from bot.wording.phrases import TIED, load_text, number_text
from bot.wording.pictures import DAY_LETTERS, day, week_from
from bot.wording.review import change_text, days_text, flag_since
from core.diary import Ending
from core.review_facts import DayKind, FlagKind
from core.units import amount_text

if TYPE_CHECKING:
    from core.review_facts import Change, LoadWeek
    from core.sheet import Sheet, SheetCurve, SheetHold, SheetPain, SheetPerson, SheetQuestion, SheetWorkout

ALL, EVERYONE = "All together", "Everyone, who needs a word first"
CALENDARS = "Each day is one of the person's own calendar. Where no days are set, none can be missed."
EXERCISES, WORKOUTS, NOTES = "Exercises, loads per hand", "Workouts", "Notes"
EXERCISE, SETS, TOP, BEFORE = "Exercise", "Sets", "Top load", "Before"
GROUPS, GROUP, ON_DAYS = "Sets by muscle group", "Group", "Days"
SPREAD = (
    "Strength is estimated from what was lifted, over all exercises done with a load, and never tested. The figures in brackets "
    "hold the true change 8 times of 10; while it may be none at all, it is not clear. The bar goes from 20 % down to 20 % up. "
    "The curves are the heaviest load of each day over six weeks."
)
LETTERS = DAY_LETTERS
DAYS = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")
KINDS = {
    DayKind.TRAINED: "trained",
    DayKind.MISSED: "missed",
    DayKind.MOVED: "made up for on another day",
    DayKind.AHEAD: "to come",
    DayKind.PAUSED: "paused",
    DayKind.FREE: "free",
}
ENDINGS = {
    None: "still going",
    Ending.COMPLETE: "complete",
    Ending.EARLY: "ended early",
    Ending.SILENT: "went silent",
    Ending.PAIN: "stopped for pain",
}


def title(sheet: Sheet) -> str:
    """`The week of 2 to 8 Mar 2026`."""
    return f"The week of {week_from(sheet.monday)} {sheet.sunday.year}"


def made(sheet: Sheet) -> str:
    """When it was made."""
    return f"As of {date_text(sheet.made_on)}."


def totals(sheet: Sheet) -> tuple[tuple[str, str], ...]:
    """The figures of everyone together."""
    people = sheet.people
    planned = sum(person.planned or 0 for person in people)
    kept = sum(min(person.trained, person.planned or 0) for person in people)
    loads = [load for person in people for load in person.loads]
    minutes = sum(workout.minutes or 0 for person in people for workout in person.workouts)
    efforts = [workout.effort for person in people for workout in person.workouts if workout.effort is not None]
    return (
        ("Trained", f"{sum(person.trained > 0 for person in people)} of {len(people)}"),
        ("Days", str(sum(person.trained for person in people))),
        ("Planned days kept", f"{kept} of {planned}" if planned else "none planned"),
        ("Days missed", str(sum(person.missed for person in people))),
        ("Sets", str(sum(person.sets for person in people))),
        ("Time", f"{minutes} min"),
        ("Effort, mean", number_text(round(sum(efforts, Decimal(0)) / len(efforts), 1)) if efforts else "not said"),
        ("Loads", f"{sum(load.step > 0 for load in loads)} up, {sum(load.step < 0 for load in loads)} down"),
    )


def figures(person: SheetPerson) -> tuple[tuple[str, str], ...]:
    """The figures of one person."""
    return (
        ("Trained", days_text(person.trained, person.planned)),
        ("Missed", str(person.missed) if person.planned is not None else "no days set"),
        ("Sets", str(person.sets)),
        ("Effort, mean", number_text(round(person.effort, 1)) if person.effort is not None else "not said"),
        ("Effort × minutes", str(person.load) if person.load is not None else "not known"),
    )


def goes(person: SheetPerson) -> str:
    """Strength in a few words."""
    return f"Strength {change_text(person.change)}"


def tone(of: Change | None) -> str:
    """The class of its colour."""
    if of is None or not of.clear:
        return "faint"
    return "good" if of.low > 0 else "warm"


def clear(of: Change) -> str:
    """The class of its bar."""
    if not of.clear:
        return ""
    return "clear-up" if of.low > 0 else "clear-down"


def key(sheet: Sheet) -> tuple[DayKind, ...]:
    """The marks to explain."""
    there = {kind for person in sheet.people for kind in person.days}
    return tuple(kind for kind in DayKind if kind in there and kind is not DayKind.FREE)


def flags(person: SheetPerson) -> tuple[str, ...]:
    """Why somebody needs a word; that strength falls is said of everyone's strength already."""
    texts = [flag_since(flag) for flag in person.flags if flag.kind is not FlagKind.FALLING]
    return tuple(f"{text[:1].upper()}{text[1:]}" for text in texts)


def top(load: LoadWeek) -> str:
    """The heaviest load."""
    return "" if load.top is None else load_text(load.top)


def before(load: LoadWeek) -> str:
    """The heaviest load of the last time before, with the way it went since."""
    if load.before is None:
        return "first time" if load.top is not None else ""
    way = {1: "↑ ", 0: "", -1: "↓ "}[load.step]
    return f"{way}{load_text(load.before)}"


def step(load: LoadWeek) -> str:
    """The class of its colour."""
    return {1: "good", 0: "", -1: "warm"}[load.step]


def curve(of: SheetCurve) -> str:
    """What a curve shows, in words."""
    (since, first), (_, last) = of.points[0], of.points[-1]
    loads = amount_text(first) if first == last else f"{amount_text(first)} to {amount_text(last)}"
    return f"{of.exercise}, since {day(since)}: {loads}{TIED}{of.unit}"


def number(of: Decimal) -> str:
    """`12`, `4.5`."""
    return number_text(of)


def workout(of: SheetWorkout) -> str:
    """`Mon 2 Mar: Kitchen seven, complete, 34 min, effort 7`."""
    parts = [of.circuit, ENDINGS[of.ending]]
    if of.minutes is not None:
        parts.append(f"{of.minutes} min")
    if of.effort is not None:
        parts.append(f"effort {number_text(of.effort)}")
    return f"{date_text(of.day)}: {', '.join(parts)}"


def notes(person: SheetPerson) -> tuple[str, ...]:
    """All that is noted of somebody: pains, questions, what the coach wishes."""
    return (
        *map(_pain, person.pains),
        *map(_question, person.questions),
        *(f"Swap: {swap.instead} instead of {swap.exercise}" for swap in person.swaps),
        *map(_hold, person.holds),
        *(f"Card note{'' if note.exercise is None else f' at {note.exercise}'}: “{note.text}”" for note in person.notes),
    )


def _pain(pain: SheetPain) -> str:
    what = "Warning sign" if pain.urgent else "Pain"
    where = "" if pain.place is None else f", {pain.place}"
    at = "" if pain.exercise is None else f", at {pain.exercise}"
    gone = "" if pain.eased_on is None else f"; gone on {date_text(pain.eased_on)}"
    return f"{what}{where}{at}, {date_text(pain.day)}{gone}"


def _question(question: SheetQuestion) -> str:
    at = "" if question.exercise is None else f" at {question.exercise}"
    return f"Asked{at}, {date_text(question.day)}: “{question.text}”{' (answered)' if question.answered else ''}"


def _hold(hold: SheetHold) -> str:
    where = "every load" if hold.exercise is None else hold.exercise
    return f"Held back: {where}, {'not above the last one' if hold.most is None else f'at most {load_text(hold.most)}'}"


def advice(sheet: Sheet) -> str:
    """The advice beside the sets, and whose it is."""
    return (
        f"Advised a week for each major group: about {sheet.sets_advised} sets to grow (American College of Sports Medicine, "
        f"2026), on {sheet.days_advised} days or more (World Health Organization, 2020). The mark on the bars is at "
        f"{sheet.sets_advised}. A main muscle counts one set, a helping one a half; a group counts with its most trained muscle."
    )
