"""Set records as the lines that messages show, and reports as the records that are kept."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from core.circuit import Side
from core.diary import SetRecord
from core.exercise import Measure
from core.messages import SetLine
from core.session.places import exercise_at, sided, station_at
from core.units import Load

if TYPE_CHECKING:
    from core.reading.acts import Log
    from core.session.states import Place, Workout
    from core.session.turn import Turn


def line_of(record: SetRecord) -> SetLine:
    """A record as a line. A bodyweight load of 0 is left out."""
    load = None if record.load is None or not record.load.amount else record.load
    return SetLine(record.reps, load, record.side, record.reserve, record.rpe, record.seconds)


def record_of(turn: Turn, workout: Workout, place: Place, log: Log, replaces: int | None = None) -> SetRecord:
    """The record a complete report makes at a place; the load that was prescribed where none was said."""
    station, movement = station_at(workout, place), exercise_at(workout, place)
    prescribed = workout.prescriptions[place.station - 1]
    load = None if log.load is None else Load(log.load, log.unit or turn.plan.trainee.unit)
    if load is None and prescribed is not None:
        load = prescribed.load
    tempo = None if prescribed is None else prescribed.tempo
    side = log.side
    if side is None and sided(workout, place):
        side = place.side or Side.EACH
    return SetRecord(
        number=0,
        workout=workout.number,
        at=turn.now,
        circuit=workout.circuit.name,
        round=place.round,
        station=place.station,
        exercise=movement.slug,
        side=side,
        reps=log.reps,
        load=load,
        reserve=log.reserve,
        rpe=log.rpe,
        seconds=log.seconds,
        work_s=station.work_s,
        rep_s=None if tempo is None or movement.measure is not Measure.REPS else tempo.rep_s,
        replaces=replaces,
    )


def log_line(turn: Turn, workout: Workout, place: Place, log: Log) -> SetLine:
    """The line that a report would make at a place, before it is kept."""
    return line_of(record_of(turn, workout, place, log))


def filled(turn: Turn, workout: Workout, place: Place, log: Log) -> Log:
    """Fill in what "same again" stands for, from the last set of this exercise."""
    if not log.same:
        return log
    slug = exercise_at(workout, place).slug
    last = next((record for record in reversed(turn.sets()) if record.exercise == slug), None)
    if last is None:
        return log
    load = log.load if log.load is not None or last.load is None else last.load.in_unit(log.unit or last.load.unit)
    return replace(
        log,
        reps=last.reps if log.reps is None else log.reps,
        load=load,
        unit=log.unit or (None if last.load is None else last.load.unit),
        seconds=last.seconds if log.seconds is None else log.seconds,
    )
