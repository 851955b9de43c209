"""Beginning a workout."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from core.catalogue import exercise
from core.diary import WorkoutOpened
from core.messages import ClearanceNeeded, StationLine, TodayInBlock, TodayPlan, WarmUp
from core.plan import weekday
from core.rack import Rack
from core.reminders import local_date
from core.safety import must_wait
from core.session import cues
from core.session.boards import board_of
from core.session.cards import show
from core.session.places import entering, exercise_at, seconds_after, sided, station_s
from core.session.prescription import advise
from core.session.states import Idle, Place, State, Workout

if TYPE_CHECKING:
    from datetime import date

    from core.plan import Due
    from core.session.turn import Turn


def opened(turn: Turn) -> Workout:
    """The day's workout, before its first station."""
    circuit = turn.plan.circuit
    workout = Workout(
        number=len(turn.history.workouts) + 1,
        circuit=circuit,
        started_at=turn.now,
        place=Place(1, 1),
        exercises=tuple(_doable(station.exercise, turn.plan.trainee.rack) for station in circuit.stations),
        prescriptions=(None,) * len(circuit.stations),
    )
    return replace(workout, place=entering(workout, workout.place))


def _doable(slug: str, rack: Rack | None) -> str:
    """The exercise, or its swap without a load where the rack has nothing that the hands can hold for it."""
    movement = exercise(slug)
    if movement.loads_held and not (rack or Rack()).loads(movement.loads_held):
        return movement.swap_load or slug
    return slug


def begin(turn: Turn, idle: Idle) -> State:
    """Open the workout: warm-up first, then the card of the first station."""
    if must_wait(turn.history, turn.now):
        turn.say(ClearanceNeeded())
        return idle
    workout = opened(turn)
    turn.keep(WorkoutOpened(workout.number, workout.circuit, turn.now))
    if workout.circuit.warm_up_s:
        turn.say(WarmUp(workout.circuit.warm_up_s))
        return cues.warming_up(workout, turn.now, workout.circuit.warm_up_s)
    return cues.setting_up(show(turn, workout, None), turn.now)


def whole_s(workout: Workout) -> tuple[int, int]:
    """Seconds a workout takes from its warm-up to its last station, with the shortest and the longest rests."""
    first_s = workout.circuit.warm_up_s + station_s(workout, Place(1, 1))
    return first_s + seconds_after(workout, longest=False), first_s + seconds_after(workout)


def say_today(turn: Turn) -> None:
    """Say what today holds: stations with their loads, rounds, minutes."""
    workout = opened(turn)
    circuit, zone = workout.circuit, turn.plan.trainee.zone
    lines = []
    for place in (Place(1, number) for number in range(1, len(circuit.stations) + 1)):
        movement = exercise_at(workout, place)
        load = advise(turn, workout, place).prescription.load if movement.loads_held else None
        lines.append(StationLine(movement.name, load, movement.loads_held, sided(workout, place)))
    shortest_s, longest_s = whole_s(workout)
    due = turn.plan.due
    done = (
        due.done_today
        if due is not None
        else any(
            record.ended_at is not None and local_date(record.ended_at, zone) == turn.today for record in turn.history.workouts
        )
    )
    turn.say(
        TodayPlan(
            circuit=circuit.name,
            rounds=circuit.rounds,
            stations=tuple(lines),
            minutes_low=round(shortest_s / 60),
            minutes_high=round(longest_s / 60),
            done_today=done,
            picture=board_of(turn, workout, (shortest_s, longest_s)),
            block=None if turn.plan.due is None else _in_block(turn.plan.due, turn.today),
        )
    )


def _in_block(due: Due, today: date) -> TodayInBlock:
    """Where in the block today's workout is."""
    return TodayInBlock(
        week=due.week,
        weeks=due.weeks,
        easier=due.easier,
        on=None if due.on == today else weekday(due.on),
        missed=None if due.missed is None else weekday(due.missed),
    )
