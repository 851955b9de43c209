"""What stands on pictures: a few words at a time, so that a phone shows them large."""

from __future__ import annotations

from typing import TYPE_CHECKING

from bot.wording.phrases import load_text, seconds_text
from core.units import amount_text

if TYPE_CHECKING:
    from datetime import date

    from core.circuit import Span
    from core.pictures import Board, BoardLine, BoardWeek, ProgressChart

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
