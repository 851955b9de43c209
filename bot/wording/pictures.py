"""What stands on pictures: a few words at a time, so that a phone shows them large."""

from __future__ import annotations

from datetime import timedelta
from typing import TYPE_CHECKING

from bot.wording.phrases import load_text, number_text, percent, seconds_text
from core.review_facts import DayKind
from core.units import amount_text

if TYPE_CHECKING:
    from datetime import date

    from core.circuit import Span
    from core.pictures import Board, BoardLine, BoardWeek, OwnWeekPicture, ProgressChart, RosterRow, RosterWeek
    from core.review_facts import Change, LoadWeek

ONE_ROUND = "One round"
WORK_AND_REST = "Colour is work, the gaps are rest."
PROGRESS = "How it goes"
KEY_LOAD, KEY_STRENGTH = "lifted, with reps", "strength, estimated"
NEVER_TEST = "Strength is an estimate of one lift, with its doubt. Never test it."


def rounds_and_minutes(board: Board) -> str:
    """`3 rounds · 33-41 min · warm-up 5 min`."""
    parts = [f"{board.rounds} round{'' if board.rounds == 1 else 's'}", f"{_minutes(board.total_s)} min"]
    if board.warm_up_s:
        parts.append(f"warm-up {seconds_text(board.warm_up_s)}")
    return " · ".join(parts)


def rests(board: Board) -> str:
    """`Rest 30-60 s, between rounds 60-90 s`."""
    between = f", between rounds {span_text(board.rest_between_rounds_s)} s" if board.rounds > 1 else ""
    return f"Rest {span_text(board.rest_s)} s{between}"


def week(of: BoardWeek) -> str:
    """`Week 4 of 4, the easier one`."""
    return f"Week {of.week} of {of.weeks}{', the easier one' if of.easier else ''}"


def load(station: BoardLine) -> str:
    """`2 × 12 kg`; for empty hands `no weight`."""
    if station.load is None or not station.load.amount:
        return "" if station.loads_held else "no weight"
    return load_text(station.load, station.loads_held)


def clock(station: BoardLine) -> str:
    """`60 s`, `2 × 40 s`, `your pace` where reps are counted."""
    if station.work_s is None:
        return "your pace"
    return f"{'2 × ' if station.sides else ''}{station.work_s} s"


def reps(station: BoardLine) -> str:
    """`12-15 reps, each side`; a hold or a carry says so."""
    counted = station.measure.value if station.reps is None else f"{span_text(station.reps)} reps"
    return f"{counted}, each side" if station.sides else counted


def round_time(board: Board) -> str:
    """How long a round is at its shortest: `11 min 30 s or more`."""
    shortest_s = sum(line.clock_s + line.rest_s for line in board.lines)
    longer = board.rest_s.low != board.rest_s.high
    return seconds_text(shortest_s) + (" or more" if longer else "")


def span_text(span: Span) -> str:
    """`30-60`, or `45` where both ends are the same."""
    return str(span.low) if span.low == span.high else f"{span.low}-{span.high}"


def day(of: date) -> str:
    """`3 Mar`."""
    return f"{of.day} {of:%b}"


def strength(chart: ProgressChart) -> str:
    """The latest estimate: `Strength now: about 31 kg (26-37)`."""
    if chart.points[-1].best is None:
        return "Not enough sets to estimate strength yet"
    return f"Strength now: about {strength_text(chart)}"


def strength_text(chart: ProgressChart) -> str:
    """The latest estimate with its 80 % interval: `31 kg (26-37)`; empty when there is none."""
    point = chart.points[-1]
    if point.best is None or point.low is None or point.high is None:
        return ""
    return f"{point.best:.0f} {chart.unit} ({point.low:.0f}-{point.high:.0f})"


def latest(chart: ProgressChart) -> str:
    """`12, 11, 10 at 14 kg`."""
    point = chart.points[-1]
    return f"{', '.join(map(str, point.reps))} at {amount_text(point.load)} {chart.unit}"


def _minutes(span: Span) -> str:
    low, high = round(span.low / 60), round(span.high / 60)
    return str(low) if low == high else f"{low}-{high}"


ROSTER = "The week"
OWN_WEEK = "Your week"
DAY_LETTERS = ("M", "T", "W", "T", "F", "S", "S")
KEY_DAYS = {
    DayKind.TRAINED: "trained",
    DayKind.MISSED: "missed",
    DayKind.MOVED: "made up for",
    DayKind.AHEAD: "to come",
    DayKind.PAUSED: "paused",
}
KEY_CHANGE = "Strength over 4 weeks, and how sure: 8 times of 10 inside."
NOT_CLEAR, TOO_FEW = "not clear", "too few sets"
BEST_LOADS, STRENGTH = "Loads", "strength"
MUSCLES = "Sets by muscle group"


def week_from(monday: date) -> str:
    """`2 to 8 Mar`, `30 Mar to 5 Apr`."""
    sunday = monday + timedelta(days=6)
    return f"{monday.day} to {day(sunday)}" if monday.month == sunday.month else f"{day(monday)} to {day(sunday)}"


def roster_head(week: RosterWeek) -> str:
    """`2 to 8 Mar, 12 people`."""
    people = len(week.rows) + week.more
    return f"{week_from(week.monday)}, {people} {'person' if people == 1 else 'people'}"


def more_in_sheet(more: int) -> str:
    """How many have no row."""
    return f'and {more} more: say "sheet"'


def change(of: Change | None) -> str:
    """`4 % (1 to 7)` beside an arrow; words where it is not clear."""
    if of is None:
        return TOO_FEW
    if not of.clear:
        return f"{NOT_CLEAR} ({percent(of.low)} to {percent(of.high)} %)"
    low, high = sorted((abs(of.low), abs(of.high)))
    return f"{percent(abs(of.best))} % ({percent(low)} to {percent(high)})"


def loads_and_effort(row: RosterRow) -> str:
    """`loads +2 -1, effort 6.5 of 10`: how many went up and down."""
    moved = " ".join(text for count, text in ((row.up, f"+{row.up}"), (row.down, f"-{row.down}")) if count)
    parts = [f"loads {moved}" if moved else "", "" if row.effort is None else f"effort {number_text(round(row.effort, 1))} of 10"]
    return ", ".join(filter(None, parts))


def own_head(picture: OwnWeekPicture) -> str:
    """`3 days, 41 sets, 96 min`."""
    days = sum(kind is DayKind.TRAINED for kind in picture.days)
    parts = [f"{days} day{'' if days == 1 else 's'}", f"{picture.sets} set{'' if picture.sets == 1 else 's'}"]
    return ", ".join([*parts, f"{sum(picture.minutes)} min"])


def minutes(count: int) -> str:
    """`32 min`, nothing for none."""
    return f"{count} min" if count else ""


def top(of: LoadWeek) -> str:
    """`2 × 14 kg`; the sets where no load applies."""
    return load_text(of.top, of.loads_held) if of.top is not None else f"{of.sets} set{'' if of.sets == 1 else 's'}"


def before(of: LoadWeek) -> str:
    """`10, 9 reps, up from 12 kg`."""
    reps = ", ".join(map(str, of.reps[:6])) + (" reps" if of.reps else "")
    if not of.step or of.before is None:
        return reps
    return f"{reps}, {'up' if of.step > 0 else 'down'} from {load_text(of.before)}".removeprefix(", ")


def advised(sets: int) -> str:
    """Whose advice the mark is."""
    return f"The line: about {sets} sets a week to grow (ACSM)."
