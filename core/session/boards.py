"""What the pictures of a trainee show: today's circuit as a board, and how it goes, an exercise a chart."""

from __future__ import annotations

from typing import TYPE_CHECKING

from core.catalogue import exercise
from core.circuit import WORK_S, Span
from core.exercise import Measure
from core.pictures import Board, BoardLine, BoardWeek, ProgressChart, ProgressPicture, ProgressPoint, group_of, rests_s
from core.reminders import clock_text
from core.session.places import exercise_at, sided, station_at, station_s
from core.session.prescription import advise, past_sets
from core.session.states import Place
from core.suggestion import Ask, StationAsk, suggest

if TYPE_CHECKING:
    from collections.abc import Iterable
    from datetime import date, datetime
    from decimal import Decimal

    from core.session.states import Workout
    from core.session.turn import Turn
    from core.suggestion import PastSet

DARK_FROM, LIGHT_FROM = "19:00", "07:00"  # on the trainee's wall clock: a bright picture hurts the eyes in a dark room
CHARTS = 3  # on one picture: more are too small on a phone
POINTS = 12  # days on one chart


def is_dark(now: datetime, zone: str) -> bool:
    """Whether it is evening or night in a zone."""
    return not LIGHT_FROM <= clock_text(now, zone) < DARK_FROM


def board_of(turn: Turn, workout: Workout, total_s: tuple[int, int]) -> Board:
    """A workout's board, before it begins, with the loads of its first round; `total_s` from shortest to longest."""
    circuit, due = workout.circuit, turn.plan.due
    rests = rests_s(circuit)
    lines = []
    for number in range(1, len(circuit.stations) + 1):
        if number in workout.left_out:
            continue
        place = Place(1, number)
        station, movement = station_at(workout, place), exercise_at(workout, place)
        prescribed = advise(turn, workout, place).prescription
        low, high = prescribed.reps_low, prescribed.reps_high
        lines.append(
            BoardLine(
                exercise=movement.name,
                group=group_of(movement),
                load=prescribed.load if movement.loads_held else None,
                loads_held=movement.loads_held,
                sides=sided(workout, place),
                work_s=station.work_s,
                reps=Span(low, high) if movement.measure is Measure.REPS and low is not None and high is not None else None,
                measure=movement.measure,
                clock_s=station_s(workout, place),
                rest_s=rests[number - 1],
            )
        )
    return Board(
        circuit=circuit.name,
        rounds=circuit.rounds,
        lines=tuple(lines),
        rest_s=circuit.rest_s,
        rest_between_rounds_s=circuit.rest_between_rounds_s,
        warm_up_s=circuit.warm_up_s,
        total_s=Span(*total_s),
        week=None if due is None else BoardWeek(due.week, due.weeks, due.easier),
        dark=is_dark(turn.now, turn.plan.trainee.zone),
    )


def progress_of(turn: Turn, slugs: Iterable[str]) -> ProgressPicture | None:
    """How it goes in those of the exercises that are done with a load; None when there is none.

    The ones done on most days are shown, at most `CHARTS`.
    """
    past = past_sets(turn)
    done = sorted((slug for slug in slugs if past.get(slug)), key=lambda slug: -len({one.date for one in past[slug]}))
    charts = tuple(
        ProgressChart(exercise(slug).name, turn.plan.trainee.unit, tuple(_points(turn, slug, past))) for slug in done[:CHARTS]
    )
    return ProgressPicture(charts, is_dark(turn.now, turn.plan.trainee.zone)) if charts else None


def _points(turn: Turn, slug: str, past: dict[str, tuple[PastSet, ...]]) -> Iterable[ProgressPoint]:
    """The latest days of an exercise, each with what was known of its strength when that day was over."""
    for day in sorted({one.date for one in past[slug]})[-POINTS:]:
        sets = [one for one in past[slug] if one.date == day]
        heaviest = max(one.load for one in sets)
        best, low, high = _strength(turn, slug, past, day)
        yield ProgressPoint(day, heaviest, tuple(one.reps for one in sets if one.load == heaviest), best, low, high)


def _strength(
    turn: Turn, slug: str, past: dict[str, tuple[PastSet, ...]], day: date
) -> tuple[Decimal, Decimal, Decimal] | tuple[None, None, None]:
    until = {other: tuple(one for one in sets if one.date <= day) for other, sets in past.items()}
    history = until.pop(slug)
    work_s = next((record.work_s for record in reversed(turn.sets()) if record.exercise == slug and record.work_s), WORK_S)
    answer = suggest(
        Ask(
            unit=turn.plan.trainee.unit,
            loads=(history[-1].load,),
            station=StationAsk(slug, float(work_s), history[-1].rep_s),
            round=1,
            today=day,
            history=history,
            others=until,
        )
    )
    spread = answer.one_rep_max
    return (None, None, None) if spread is None else (spread.best, spread.low, spread.high)
