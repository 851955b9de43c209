"""Where a report belongs: the workout and the place it is for, and what it leaves open there.

A report goes to the station asked about last; while a station is under work and nothing is missing, to that station.
"""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from core.circuit import Side
from core.session.places import sided
from core.session.states import Idle, Working

if TYPE_CHECKING:
    from collections.abc import Sequence
    from typing import Literal

    from core.reading.acts import Log
    from core.session.states import Place, Running, Workout
    from core.session.turn import Turn

SIDES = 2


def workout_of(state: Running | Idle) -> Workout | None:
    """The workout under way, or the one that ended last."""
    return state.last if isinstance(state, Idle) else state.workout


def with_workout(state: Running | Idle, workout: Workout) -> Running | Idle:
    """The same state around another workout value."""
    if isinstance(state, Idle):
        return replace(state, last=workout)
    return replace(state, workout=workout)


def place_asked(state: Running | Idle, turn: Turn) -> Place | None:
    """The place a report is for, None when there is none to report."""
    workout = workout_of(state)
    if workout is None:
        return None
    if workout.open:
        return workout.open[-1]
    if isinstance(state, Working) and _well_begun(state, turn):
        done = [record.side for record in turn.sets_at(workout, workout.place)]
        return None if workout.place.side in done or Side.EACH in done else workout.place
    return None


def _well_begun(state: Working, turn: Turn) -> bool:
    """Whether a report can be about the work under way: not before half of it is done."""
    if state.ends_at is None:
        return True
    return turn.now - state.started_at >= (state.ends_at - state.started_at) / 2


def spread_out(workout: Workout, place: Place, logs: Sequence[Log]) -> list[tuple[Place, Log]] | None:
    """Which log belongs to which place; None when there are more sets than places to put them.

    One log, or one for each side, is for the place itself; several are for the open places, oldest first.
    """
    if len(logs) == 1 or (sided(workout, place) and {log.side for log in logs} == {Side.LEFT, Side.RIGHT} and len(logs) == SIDES):
        return [(place, log) for log in logs]
    if len(logs) == len(workout.open) and all(log.side in (None, Side.EACH) for log in logs):
        return list(zip(workout.open, logs, strict=True))
    return None


def closed_places(workout: Workout, spread: Sequence[tuple[Place, Log]], felt: Literal["heavy", "light"] | None) -> Workout:
    """The workout with the reported places no longer open; with one side reported, the other stays open."""
    taken = [place for place, _ in spread]
    opened = []
    for place in workout.open:
        if place not in taken:
            opened.append(place)
            continue
        sides = [log.side for at, log in spread if at == place]
        if place.side is None and sided(workout, place) and sides in ([Side.LEFT], [Side.RIGHT]):
            other = Side.RIGHT if sides == [Side.LEFT] else Side.LEFT
            opened.append(replace(place, side=other))
    stations = {place.station for place in taken}
    said = [pair for pair in workout.felt if pair[0] not in stations]
    if felt is not None:
        said += [(station, felt) for station in stations]
    asked = workout.question
    kept = asked if asked is not None and asked.part is not None and asked.place in opened else None
    return replace(workout, open=tuple(opened), question=kept, unanswered=0, felt=tuple(said))
