"""Which of several missing sets a report names: "fifteen curls" is about the curls, whatever was asked about last."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise
from typing import TYPE_CHECKING

from core.catalogue.matching import words_of
from core.session.belonging import with_workout, workout_of
from core.session.places import exercise_at, whole
from core.session.states import Working

if TYPE_CHECKING:
    from core.exercise import Exercise
    from core.session.states import Idle, Running
    from core.session.turn import Turn

SEVERAL = 2
# Last words of names that say nothing without the word before: a push-up, a farmer walk.
_WEAK = frozenset({"up", "out", "down", "over", "hold", "walk", "carry", "step", "march", "turn", "reach", "lean", "sit"})


def with_named_last(state: Running | Idle, text: str, turn: Turn) -> Running | Idle:
    """The state with the set whose exercise a text names moved to where reports go; as it is when none is named, or several.

    It is one that is missing, or the one under work.
    """
    workout = workout_of(state)
    if workout is None:
        return state
    at_hand = (whole(workout.place),) if isinstance(state, Working) and not turn.sets_at(workout, workout.place) else ()
    places = (*workout.open, *at_hand)
    if not at_hand and len(places) < SEVERAL:
        return state
    words = words_of(text)
    line = f" {' '.join(words)} "
    named = [place for place in places if any(f" {tail} " in line for tail in _tails(exercise_at(workout, place)))]
    if len({exercise_at(workout, place).slug for place in named}) != 1 or ("in", "row") in pairwise(words):
        return state
    others = tuple(place for place in workout.open if place != named[-1])
    return with_workout(state, replace(workout, open=(*others, named[-1])))


def _tails(movement: Exercise) -> set[str]:
    """How the names of an exercise end, in one word where that is enough: "curl", "push up"."""
    tails = set()
    for name in (movement.name, *movement.names):
        words = words_of(name)
        tail = words[-2:] if words[-1] in _WEAK else words[-1:]
        tails |= {" ".join(tail), "".join(tail)}  # "push up", "pushup"
    return tails
