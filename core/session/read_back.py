"""A report read back with what comes next and one reminder, and how the workout goes on after it."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from core.circuit import Side
from core.messages import FormPoint, Lighter, Noted, OtherSideAsked, Slower
from core.session.belonging import workout_of
from core.session.closing import close
from core.session.lines import line_of
from core.session.loads import change_of
from core.session.places import exercise_at, station_at, whole
from core.session.prescription import advise
from core.session.ring import finish_side, put_down, show_in_rest, worked_s
from core.session.states import Closing, Place, Resting, Working
from core.tempo import whole_reps

if TYPE_CHECKING:
    from collections.abc import Sequence
    from typing import Literal

    from core.diary import SetRecord
    from core.session.states import Idle, Running, Workout
    from core.session.turn import Turn
    from core.tempo import Tempo
    from core.units import Load


def read_back(state: Running | Idle, records: Sequence[SetRecord], turn: Turn) -> Running | Idle:
    """Read the records back with the next load and one reminder, and go on as the state allows."""
    workout = workout_of(state)
    if workout is None:
        return state
    record = records[-1]
    place = Place(record.round, record.station)
    half = next((spot for spot in workout.open if whole(spot) == place and spot.side is not None), None)
    if half is not None and half.side is not None:
        turn.say(OtherSideAsked(line_of(record), half.side))
        return state
    say_noted(turn, state, place, records)
    return _after_report(state, place, turn)


def _after_report(state: Running | Idle, place: Place, turn: Turn) -> Running | Idle:
    """Go on after a report: show the next card, end a station that was reported early, or end the workout."""
    match state:
        case Resting(carded=False):
            return show_in_rest(state, turn)
        case Working(workout=workout) if whole(workout.place) == place and workout.place.side is None:
            over = replace(workout, work_s=workout.work_s + worked_s(state, turn.now))
            left_s = 0.0 if state.ends_at is None else (state.ends_at - turn.now).total_seconds()
            rest = put_down(over, turn.now, turn, extra_rest_s=left_s)
            return _after_report(rest, place, turn) if isinstance(rest, Resting) else rest
        case Working(workout=workout) if whole(workout.place) == place and state.ends_at is None:
            if Side.EACH in {record.side for record in turn.sets_at(workout, place)}:
                over = replace(workout, work_s=workout.work_s + worked_s(state, turn.now))
                return put_down(over, turn.now, turn)
            return finish_side(state, turn.now, turn)
        case Closing(workout=workout, ending=ending) if not workout.open:
            return close(state, ending, turn)
        case _:
            return state


def say_noted(turn: Turn, state: Running | Idle, place: Place, records: Sequence[SetRecord]) -> None:
    """Read sets back in one line, with what comes next at that station and one reminder that fits."""
    workout, record = workout_of(state), min(records, key=lambda kept: kept.reps or 0)
    if workout is None:
        return
    rounds_left = place.round < workout.circuit.rounds
    load: Load | None = None
    change: Literal["up", "same", "down"] | None = None
    tempo: Tempo | None = None
    movement = exercise_at(workout, place)
    if movement.loads_held and record.load is not None:
        coming = replace(place, round=place.round + 1) if rounds_left else place
        coming_up = advise(turn, workout, coming, next_workout=not rounds_left).prescription
        load, shown = coming_up.load, workout.prescriptions[place.station - 1]
        change = None if load is None else change_of(record.load, load)
        if shown is not None and shown.exercise == movement.slug and shown.tempo != coming_up.tempo:
            tempo = coming_up.tempo
    turn.say(
        Noted(
            sets=tuple(line_of(kept) for kept in records),
            exercise=None if isinstance(state, Resting | Closing) and whole(place) == _just_done(state) else movement.name,
            next_load=load,
            next_when=None if load is None else ("round" if rounds_left else "time"),
            change=change,
            next_tempo=tempo,
            reminder=_reminder(workout, place, record, load),
        )
    )


def _just_done(state: Resting | Closing) -> Place:
    """The place before the one announced, or the last of all."""
    here, stations = state.workout.place, len(state.workout.circuit.stations)
    if isinstance(state, Closing):
        return whole(here)
    return Place(here.round, here.station - 1) if here.station > 1 else Place(here.round - 1, stations)


def _reminder(workout: Workout, place: Place, record: SetRecord, load: Load | None) -> Slower | Lighter | FormPoint | None:
    """One reminder: slower above the tempo's ceiling, lighter when short of the minute, else a form point."""
    station, movement = station_at(workout, place), exercise_at(workout, place)
    prescribed = workout.prescriptions[place.station - 1]
    tempo = None if prescribed is None else prescribed.tempo
    if record.reps is not None and tempo is not None and station.work_s is not None and prescribed is not None:
        ceiling = whole_reps(station.work_s, tempo.rep_s)
        if record.reps > ceiling:
            return Slower(record.reps, ceiling, tempo)
        if (
            prescribed.reps_low is not None
            and record.reps < prescribed.reps_low
            and movement.loads_held
            and record.load is not None
        ):
            easier = load is not None and load.kg < record.load.kg
            return Lighter(record.reps, prescribed.reps_low, load if easier else None)
    points = (station.form if movement.slug == station.exercise else ()) + movement.form
    return FormPoint(points[place.round % len(points)])
