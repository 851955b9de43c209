"""Beginning a workout."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from core.agenda import DayKind, agenda, days_of, days_since, eased
from core.catalogue import exercise
from core.diary import WorkoutOpened
from core.messages import ClearanceNeeded, DayAt, PlanOver, RestDay, StationLine, TodayInBlock, TodayPlan, WarmUp
from core.plan import weekday
from core.rack import Rack
from core.safety import must_wait
from core.session import cues
from core.session.boards import board_of
from core.session.cards import show
from core.session.places import entering, exercise_at, seconds_after, sided, station_s
from core.session.prescription import advise
from core.session.states import Idle, Place, State, Workout

if TYPE_CHECKING:
    from core.plan import Due
    from core.session.turn import Turn


def opened(turn: Turn) -> Workout:
    """The day's workout, before its first station."""
    trainee = turn.plan.trainee
    circuit, due = turn.plan.circuit, turn.plan.due
    if due is None or not due.easier:
        circuit = eased(circuit, days_since(turn.history.workouts, trainee.zone, turn.today))
    workout = Workout(
        number=len(turn.history.workouts) + 1,
        circuit=circuit,
        started_at=turn.now,
        place=Place(1, 1),
        exercises=tuple(_doable(station.exercise, trainee.rack) for station in circuit.stations),
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
    """Say what today holds, whatever day it is."""
    trainee, circuit = turn.clock_setting()[0], turn.plan.circuit.name
    day = agenda(days_of(trainee.reminders, circuit, turn.today), turn.history.workouts, trainee.zone, turn.today)
    coming = None if day.coming is None or day.coming.at is None else DayAt(day.coming.day, day.coming.at)
    if must_wait(turn.history, turn.now):
        turn.say(ClearanceNeeded())
        return
    due = turn.plan.due
    if due is not None and (due.done_today or due.on != turn.today):
        coming = DayAt(due.on, None if trainee.reminders is None else trainee.reminders.time_on(due.on))
        turn.say(RestDay(circuit, coming, taken_off=day.kind is DayKind.OFF, done=due.done_today))
        return
    if due is not None:
        _say_circuit(turn, done=False, days_off=day.days_off)
        return
    match day.kind:
        case DayKind.REST | DayKind.OFF:
            turn.say(RestDay(circuit, coming, taken_off=day.kind is DayKind.OFF))
        case DayKind.OVER:
            turn.say(PlanOver(circuit))
        case DayKind.OPEN | DayKind.TRAINING | DayKind.DONE:
            _say_circuit(turn, done=day.kind is DayKind.DONE, days_off=day.days_off)


def _say_circuit(turn: Turn, *, done: bool, days_off: int | None) -> None:
    """Say the day's circuit: stations with their loads, rounds, minutes."""
    workout = opened(turn)
    circuit, due = workout.circuit, turn.plan.due
    lines = []
    for place in (Place(1, number) for number in range(1, len(circuit.stations) + 1)):
        movement = exercise_at(workout, place)
        load = advise(turn, workout, place).prescription.load if movement.loads_held else None
        lines.append(StationLine(movement.name, load, movement.loads_held, sided(workout, place)))
    shortest_s, longest_s = whole_s(workout)
    turn.say(
        TodayPlan(
            circuit=circuit.name,
            rounds=circuit.rounds,
            stations=tuple(lines),
            minutes_low=round(shortest_s / 60),
            minutes_high=round(longest_s / 60),
            done_today=done,
            days_off=days_off if circuit.rounds < turn.plan.circuit.rounds else None,
            picture=board_of(turn, workout, (shortest_s, longest_s)),
            block=None if due is None else _in_block(due),
        )
    )


def _in_block(due: Due) -> TodayInBlock:
    """Where in the block today's workout is."""
    return TodayInBlock(due.week, due.weeks, due.easier, None if due.missed is None else weekday(due.missed))
