"""Where a conversation is, as a short sign: by it a quick reply pressed late is told from one that still fits.

What was offered about a set fits until that set is reported; anything else, until the station is left.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from core.messages import Down, OtherSideAsked, PartMissing, SetNotRead, StillMissing, WhichOne
from core.session.states import Idle, Running

if TYPE_CHECKING:
    from core.session.states import Place, State, Workout

ABOUT_A_SET = frozenset(kind.__name__ for kind in (Down, OtherSideAsked, PartMissing, SetNotRead, StillMissing, WhichOne))
SET = " set "


def moment(state: State) -> str:
    """The sign of a state: `workout 3 1.2 set 3 1.1.0` is workout 3 at round 1, station 2, a set of station 1 still asked for."""
    match state:
        case Idle(last=last, topic=topic):
            return f"idle{'' if topic is None else f' {topic}'}{_set_asked(last)}"
        case _ if isinstance(state, Running):
            return f"workout {state.workout.number} {_at(state.workout.place)}{_set_asked(state.workout)}"
        case _:
            return state.kind


def still_fits(kind: str, offered: str, now: str) -> bool:
    """Whether a reply offered with a kind of message at one moment can be taken at another."""
    where_then, _, set_then = offered.partition(SET)
    where_now, _, set_now = now.partition(SET)
    return set_then == set_now if kind in ABOUT_A_SET and set_then else where_then == where_now


def _set_asked(workout: Workout | None) -> str:
    if workout is None or not workout.open:
        return ""
    times = 0 if workout.question is None else workout.question.times
    return f"{SET}{workout.number} {_at(workout.open[-1])}.{times}"


def _at(place: Place) -> str:
    return f"{place.round}.{place.station}"
