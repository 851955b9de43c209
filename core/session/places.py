"""Where in a circuit: the station after this one, the time still to come."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from core.catalogue import exercise
from core.circuit import Side
from core.session.states import Place

if TYPE_CHECKING:
    from core.circuit import Span, Station
    from core.exercise import Exercise
    from core.session.states import Workout


def station_at(workout: Workout, place: Place) -> Station:
    """The station of a place."""
    return workout.circuit.stations[place.station - 1]


def exercise_at(workout: Workout, place: Place) -> Exercise:
    """What is done at a place, swaps included; what was done there, when its station was swapped afterwards."""
    done = next((slug for at, slug in workout.done_as if (at.round, at.station) == (place.round, place.station)), None)
    return exercise(done or workout.exercises[place.station - 1])


def with_exercises(workout: Workout, slugs: tuple[str, ...]) -> Workout:
    """The workout with these exercises at its stations from now on; what was done before stays what it was."""
    here, known = workout.place, {at for at, _ in workout.done_as}
    before = tuple(
        (at, slug)
        for number, slug in enumerate(workout.exercises, start=1)
        for at in (Place(begun, number) for begun in range(1, here.round + 1))
        if slug != slugs[number - 1] and (at.round, number) < (here.round, here.station) and at not in known
    )
    return replace(workout, exercises=slugs, done_as=(*workout.done_as, *before))


def from_now_on(workout: Workout) -> Workout:
    """The workout as if its stations had been swapped from its start on: for what comes, not for what was done."""
    return replace(workout, done_as=())


def sided(workout: Workout, place: Place) -> bool:
    """Whether the place is done one side after the other; a swap brings its own way."""
    station, movement = station_at(workout, place), exercise_at(workout, place)
    return station.sides if movement.slug == station.exercise else movement.sides


def entering(workout: Workout, place: Place) -> Place:
    """The place as it is begun: left side first where there are sides."""
    return replace(place, side=Side.LEFT if sided(workout, place) else None)


def whole(place: Place) -> Place:
    """The place without its side, as sets are asked for."""
    return replace(place, side=None)


def following(workout: Workout) -> Place | None:
    """The place after the present one, stations left out passed over; None after the last."""
    done = [number for number in range(1, len(workout.circuit.stations) + 1) if number not in workout.left_out]
    here = workout.place
    later = [number for number in done if number > here.station]
    if later:
        return entering(workout, Place(here.round, later[0]))
    if done and here.round < workout.circuit.rounds:
        return entering(workout, Place(here.round + 1, done[0]))
    return None


def ends_round(workout: Workout, place: Place) -> bool:
    """Whether no station is done after this one in its round."""
    return all(number in workout.left_out for number in range(place.station + 1, len(workout.circuit.stations) + 1))


def rest_after_s(workout: Workout, place: Place) -> Span:
    """The rest after a place: between stations, or between rounds."""
    if ends_round(workout, place):
        return workout.circuit.rest_between_rounds_s
    return workout.circuit.rest_after_s(place.station - 1)


def station_s(workout: Workout, place: Place) -> int:
    """Seconds of work at a place, both sides; for counted reps the seconds its tempo takes."""
    station = station_at(workout, place)
    one_side = station.work_s
    if one_side is None:
        rep_s = 0.0 if station.tempo is None else station.tempo.rep_s
        one_side = round((station.reps or 0) * rep_s)
    return one_side * (2 if sided(workout, place) else 1)


def seconds_after(workout: Workout, *, longest: bool = True) -> int:
    """Seconds from the end of the present station to the end of the last, rests at their longest (or shortest)."""
    seconds = 0
    while (place := following(workout)) is not None:
        rest = rest_after_s(workout, workout.place)
        seconds += (rest.high if longest else rest.low) + station_s(workout, place)
        workout = replace(workout, place=place)
    return seconds
