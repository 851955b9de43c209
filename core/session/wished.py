"""What the coach wishes for this trainee, as it bears on a workout: swaps in the circuit, loads held back, notes on cards."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from core.catalogue import exercise
from core.circuit import WORK_S, Station
from core.exercise import Measure

if TYPE_CHECKING:
    from core.circuit import Circuit
    from core.diary import SetRecord
    from core.exercise import Exercise
    from core.session.states import Workout
    from core.session.turn import Turn
    from core.units import Load
    from core.wishes import HeldLoad, Wishes


def with_swaps(circuit: Circuit, wishes: Wishes) -> Circuit:
    """The circuit as one trainee does it: wherever it has an exercise that is swapped for them, the other one."""
    instead = {swap.exercise: swap.instead for swap in wishes.swaps}
    if not any(station.exercise in instead for station in circuit.stations):
        return circuit
    return replace(circuit, stations=tuple(_swapped(station, instead.get(station.exercise)) for station in circuit.stations))


def _swapped(station: Station, instead: str | None) -> Station:
    """The station with another exercise, done that one's own way in the same time; reps become seconds where it counts none."""
    if instead is None:
        return station
    movement, before = exercise(instead), exercise(station.exercise)
    work_s, reps = station.work_s, station.reps
    if reps is not None and movement.measure is not Measure.REPS:
        tempo = station.tempo or before.tempo
        work_s, reps = (WORK_S if tempo is None else max(1, round(reps * tempo.rep_s))), None
    return replace(
        station,
        exercise=instead,
        work_s=work_s,
        reps=reps,
        tempo=movement.tempo,
        sides=movement.sides,
        load_hint=None,
        form=(),
        swap=tuple(slug for slug in station.swap if slug != instead),
    )


def most_load(turn: Turn, workout: Workout, movement: Exercise, *, next_workout: bool = False) -> Load | None:
    """The heaviest load that the coach lets this trainee have at an exercise, None where nothing is held back."""
    hold = hold_on(turn.plan.trainee.wishes, movement.slug)
    if hold is None or hold.most is not None:
        return None if hold is None else hold.most
    done = [record for record in turn.sets() if record.exercise == movement.slug and record.load is not None]
    before = done if next_workout else [record for record in done if record.workout != workout.number] or done
    return max(_of_last_workout(before), key=lambda load: load.kg, default=None)


def _of_last_workout(done: list[SetRecord]) -> list[Load]:
    return [record.load for record in done if record.load is not None and record.workout == done[-1].workout]


def hold_on(wishes: Wishes, slug: str) -> HeldLoad | None:
    """What holds the loads of an exercise: what was said of it, else what was said of all."""
    holds = {hold.exercise: hold for hold in wishes.holds}
    return holds.get(slug, holds.get(None))


def notes_at(turn: Turn, workout: Workout) -> tuple[str, ...]:
    """The coach's notes for the card of the workout's place: in round 1, those for any exercise on the first card of all."""
    if workout.place.round != 1:
        return ()
    first = next((number for number in range(1, len(workout.exercises) + 1) if number not in workout.left_out), 1)
    slug = workout.exercises[workout.place.station - 1]
    wanted = (None, slug) if workout.place.station == first else (slug,)
    return tuple(note.text for note in turn.plan.trainee.wishes.notes if note.exercise in wanted)
