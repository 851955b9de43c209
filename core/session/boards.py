"""What the picture before a workout shows: today's circuit as a board."""

from __future__ import annotations

from typing import TYPE_CHECKING

from core.circuit import Span
from core.exercise import Measure
from core.pictures import Board, BoardLine, BoardWeek, group_of, rests_s
from core.reminders import is_dark
from core.session.places import exercise_at, sided, station_at, station_s
from core.session.prescription import advise
from core.session.states import Place

if TYPE_CHECKING:
    from core.session.states import Workout
    from core.session.turn import Turn


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
