"""What is done at each station today: as written, as the rack allows, and as what hurts allows."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from core.catalogue import exercise
from core.exercise import Implement
from core.rack import Kind, Rack
from core.safety.joints import Hold, hold, spare
from core.session.places import entering, with_exercises

if TYPE_CHECKING:
    from collections.abc import Sequence

    from core.diary import PainRecord
    from core.exercise import Exercise
    from core.session.states import Workout
    from core.session.turn import Turn


def doable(slug: str, rack: Rack | None) -> bool:
    """Whether the rack has what the hands must hold for it, and a band where that is all it is done with."""
    movement, owned = exercise(slug), rack or Rack()
    if movement.implements[0] is Implement.BAND:
        return any(item.kind is Kind.BAND for item in owned.items)
    return not movement.loads_held or bool(owned.loads(movement.loads_held))


def as_written(workout: Workout, turn: Turn) -> Workout:
    """The circuit's own exercises, or their swaps without a load where the rack has nothing for them; then as `spared`."""
    rack = turn.plan.trainee.rack
    slugs = [station.exercise for station in workout.circuit.stations]
    own = tuple(slug if doable(slug, rack) else exercise(slug).swap_load or slug for slug in slugs)
    return spared(replace(with_exercises(workout, own), left_out=()), turn)


def spared(workout: Workout, turn: Turn, at: int | None = None) -> Workout:
    """The workout with every exercise that is to stay out today swapped for one that spares the place, or left out.

    `at` is the station (from 1) that hurt just now: whatever its pain is like, it is not gone on with.
    """
    pains = turn.diary.pains
    exercises, left_out = list(workout.exercises), list(workout.left_out)
    for number, slug in enumerate(workout.exercises, start=1):
        movement = exercise(slug)
        held = hold(movement, pains, turn.sets(), turn.now)
        if held is None or (held[0] is not Hold.OUT and number != at) or number in left_out:
            continue
        other = _spare(movement, held[1], pains, turn)
        if other is None:
            left_out.append(number)
        else:
            exercises[number - 1] = other.slug
    changed = replace(with_exercises(workout, tuple(exercises)), left_out=tuple(left_out))
    return replace(changed, place=entering(changed, changed.place))


def _spare(movement: Exercise, pain: PainRecord, pains: Sequence[PainRecord], turn: Turn) -> Exercise | None:
    """What spares the place, can be done with this rack, and is not held back itself."""
    wanted = spare(movement, pain.place)
    for _ in range(2):
        if wanted is None:
            return None
        if doable(wanted.slug, turn.plan.trainee.rack):
            held = hold(wanted, pains, turn.sets(), turn.now)
            return wanted if held is None or held[0] is not Hold.OUT else None
        wanted = None if wanted.swap_load is None else exercise(wanted.swap_load)
    return None
