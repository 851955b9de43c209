"""Before the first station: the checks that fit the circuit and the rack, and warm-up moves that fit the first stations.

Warm-up of 5-10 easy minutes: entry 49, from memory; the moves and the checks are common practice, no source.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from core.catalogue import exercise
from core.exercise import Implement, Joint, Pattern, Posture
from core.health import Check
from core.rack import Kind

if TYPE_CHECKING:
    from collections.abc import Sequence

    from core.rack import Rack

FIRST_STATIONS = 3
MOVES = 4

MOVE_FOR = {
    Pattern.SQUAT: "easy squats",
    Pattern.LUNGE: "leg swings",
    Pattern.HINGE: "easy bends at the hip",
    Pattern.HORIZONTAL_PUSH: "push-ups at the wall",
    Pattern.HORIZONTAL_PULL: "arm circles",
    Pattern.VERTICAL_PUSH: "arm circles",
    Pattern.VERTICAL_PULL: "arm circles",
    Pattern.CARRY: "shoulder rolls",
    Pattern.CORE_EXTENSION: "cat and cow",
    Pattern.CORE_ROTATION: "slow trunk turns",
    Pattern.ARMS: "elbow bends",
    Pattern.CALVES: "heel raises",
    Pattern.BALANCE: "standing on one leg",
    Pattern.MOBILITY: "slow trunk turns",
    Pattern.WARM_UP: "arm circles",
}
ALL_ROUND = ("arm circles", "easy bends at the hip", "easy squats")
TROUBLED_BY = {
    "easy squats": Joint.KNEE,
    "leg swings": Joint.HIP,
    "push-ups at the wall": Joint.WRIST,
    "easy bends at the hip": Joint.LOWER_BACK,
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


def warm_up_moves(slugs: Sequence[str], sore: Sequence[Joint] = ()) -> tuple[str, ...]:
    """What to do in the warm-up: march, then moves that fit the first stations (by slug), none that troubles a sore joint."""
    first = [MOVE_FOR[exercise(slug).pattern] for slug in slugs[:FIRST_STATIONS]]
    fitting = [move for move in dict.fromkeys([*first, *ALL_ROUND]) if TROUBLED_BY.get(move) not in sore]
    return ("march on the spot", *fitting[: MOVES - 1])
