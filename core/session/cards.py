"""Showing a station: its card, and what starts it."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from core.catalogue import exercise
from core.exercise import Exercise, Measure
from core.messages import Card, PutDown
from core.session.places import entering, exercise_at, sided, station_at
from core.session.plates import planned
from core.session.prescription import advise
from core.session.wished import notes_at

if TYPE_CHECKING:
    from core.circuit import Station
    from core.session.states import Workout
    from core.session.turn import Turn
    from core.units import Load

POINTS = 2  # form points on a card


def show(turn: Turn, workout: Workout, starts_in_s: int | None) -> Workout:
    """Say the card of the workout's place; returns the workout with its prescription kept.

    At the first station of a round, adjustable dumbbells are planned first.
    """
    if workout.place.station == 1:
        workout = planned(turn, workout)
    place, station, movement = workout.place, station_at(workout, workout.place), exercise_at(workout, workout.place)
    advice = advise(turn, workout, place)
    prescribed = advice.prescription
    turn.say(
        Card(
            round=place.round,
            rounds=workout.circuit.rounds,
            station=place.station,
            stations=len(workout.circuit.stations),
            exercise=movement.name,
            hold=movement.measure is not Measure.REPS,
            sides=sided(workout, place),
            load=prescribed.load if movement.loads_held else None,
            loads_held=movement.loads_held,
            why=advice.why,
            tempo=prescribed.tempo,
            work_s=station.work_s,
            target_reps=station.reps,
            reps_low=prescribed.reps_low,
            reps_high=prescribed.reps_high,
            form=form_points(station, movement, place.round),
            set_up=movement.set_up if place.round == 1 else "",
            put_down=_put_down(workout, prescribed.load),
            starts_in_s=starts_in_s,
            slug=movement.slug,
            notes=notes_at(turn, workout),
            coach=turn.plan.coach,
        )
    )
    kept = list(workout.prescriptions)
    kept[place.station - 1] = prescribed
    return replace(workout, prescriptions=tuple(kept), place=entering(workout, place))


def form_points(station: Station, movement: Exercise, round_: int) -> tuple[str, ...]:
    """Two form points, the coach's own first, others in later rounds."""
    own = station.form if movement.slug == station.exercise else ()
    points = own + movement.form
    first = (round_ - 1) * POINTS % len(points)
    return (points + points)[first : first + POINTS]


def _put_down(workout: Workout, load: Load | None) -> PutDown | None:
    """What was in the hands at the station before, when other weights are needed now."""
    before = workout.prescriptions[workout.place.station - 2]
    if before is None or before.load is None or load is None or not before.load.amount or not load.amount:
        return None
    held, now = exercise(before.exercise).loads_held, exercise_at(workout, workout.place).loads_held
    return None if (before.load.kg, held) == (load.kg, now) else PutDown(before.load, held)
