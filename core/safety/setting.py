"""Before the first station: the checks that fit the circuit and the rack, and warm-up moves that fit the first stations.

Warm-up of 5-10 easy minutes: entry 49, from memory; the moves and the checks are common practice, no source.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from core.catalogue import exercise
from core.exercise import Implement, Joint, Pattern, Posture
from core.health import Check, Move
from core.rack import Kind

if TYPE_CHECKING:
    from collections.abc import Sequence

    from core.rack import Rack

FIRST_STATIONS = 3
MOVES = 4

MOVE_FOR = {
    Pattern.SQUAT: Move.SQUATS,
    Pattern.LUNGE: Move.LEG_SWINGS,
    Pattern.HINGE: Move.HIP_BENDS,
    Pattern.HORIZONTAL_PUSH: Move.WALL_PUSH_UPS,
    Pattern.HORIZONTAL_PULL: Move.ARM_CIRCLES,
    Pattern.VERTICAL_PUSH: Move.ARM_CIRCLES,
    Pattern.VERTICAL_PULL: Move.ARM_CIRCLES,
    Pattern.CARRY: Move.SHOULDER_ROLLS,
    Pattern.CORE_EXTENSION: Move.CAT_AND_COW,
    Pattern.CORE_ROTATION: Move.TRUNK_TURNS,
    Pattern.ARMS: Move.ELBOW_BENDS,
    Pattern.CALVES: Move.HEEL_RAISES,
    Pattern.BALANCE: Move.ONE_LEG,
    Pattern.MOBILITY: Move.TRUNK_TURNS,
    Pattern.WARM_UP: Move.ARM_CIRCLES,
}
ALL_ROUND = (Move.ARM_CIRCLES, Move.HIP_BENDS, Move.SQUATS)
TROUBLED_BY = {
    Move.SQUATS: Joint.KNEE,
    Move.LEG_SWINGS: Joint.HIP,
    Move.WALL_PUSH_UPS: Joint.WRIST,
    Move.HIP_BENDS: Joint.LOWER_BACK,
}


def checks(slugs: Sequence[str], rack: Rack | None) -> tuple[Check, ...]:
    """The checks for exercises (by slug) done with this rack; a clear floor and shoes that grip always."""
    moves = [exercise(slug) for slug in slugs]
    kinds = {item.kind for item in rack.items} if rack is not None else set()
    loaded = any(move.loads_held for move in moves)
    bells = any(move.implements[0] is Implement.KETTLEBELL for move in moves) or kinds & {Kind.KETTLEBELL}
    wanted = {
        Check.COLLARS: loaded and bool(kinds & {Kind.HANDLE, Kind.PLATE}),
        Check.HANDLE: loaded and bool(bells) and Kind.KETTLEBELL in kinds,
        Check.CHAIR: any(Implement.CHAIR in move.implements for move in moves),
        Check.MAT: any(move.posture is Posture.FLOOR for move in moves),
        Check.BAND: any(move.implements[0] is Implement.BAND for move in moves),
    }
    return (Check.FLOOR, Check.SHOES, *(check for check, holds in wanted.items() if holds))


def warm_up_moves(slugs: Sequence[str], sore: Sequence[Joint] = ()) -> tuple[Move, ...]:
    """What to do in the warm-up: march, then moves that fit the first stations (by slug), none that troubles a sore joint."""
    first = [MOVE_FOR[exercise(slug).pattern] for slug in slugs[:FIRST_STATIONS]]
    fitting = [move for move in dict.fromkeys([*first, *ALL_ROUND]) if TROUBLED_BY.get(move) not in sore]
    return (Move.MARCH, *fitting[: MOVES - 1])
