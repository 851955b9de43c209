"""Pain: what spares it, and what stays out or lighter until the trainee says that it is gone.

Acute, sharp or new joint pain: leave the movement out (entry 46, from memory). The rest is common practice, no source: dull and
known pain only makes it lighter, both come back only after being asked about, and one step lighter the first time.
"""

from __future__ import annotations

from datetime import timedelta
from enum import StrEnum
from typing import TYPE_CHECKING

from core.catalogue import exercise, sparing
from core.exercise import Joint
from core.health import Quality

if TYPE_CHECKING:
    from collections.abc import Sequence
    from datetime import datetime

    from core.diary import PainRecord, SetRecord
    from core.exercise import Exercise

WATCHED = timedelta(days=42)  # six weeks without a word about it: common practice, no source
ANOTHER_DAY = timedelta(hours=12)

# Places as people name them. What lies around the shoulder is spared by what spares the shoulder.
JOINTS = {
    "knee": Joint.KNEE,
    "hip": Joint.HIP,
    "groin": Joint.HIP,
    "hip flexor": Joint.HIP,
    "back": Joint.LOWER_BACK,
    "lower back": Joint.LOWER_BACK,
    "upper back": Joint.SHOULDER,
    "shoulder blade": Joint.SHOULDER,
    "collarbone": Joint.SHOULDER,
    "shoulder": Joint.SHOULDER,
    "neck": Joint.SHOULDER,
    "elbow": Joint.ELBOW,
    "wrist": Joint.WRIST,
    "hand": Joint.WRIST,
    "palm": Joint.WRIST,
}


class Hold(StrEnum):
    """How an exercise is held back."""

    OUT = "out"
    LIGHTER = "lighter"


def joint_of(place: str | None) -> Joint | None:
    """The joint a reported place names, None when it is none that swaps are kept for."""
    return None if place is None else JOINTS.get(place.lower())


def spare(movement: Exercise, place: str | None) -> Exercise | None:
    """An exercise that spares the place, None when none is known for it."""
    joint = joint_of(place)
    return None if joint is None else sparing(movement.slug, joint)


def is_mild(pain: PainRecord) -> bool:
    """Dull and known: lighter is enough."""
    return pain.quality is Quality.DULL and pain.known is True


def troubles(movement: Exercise, pain: PainRecord) -> bool:
    """Whether an exercise is among those that this pain holds back.

    Where it hurt, and the same movement pattern where it can trouble that joint; unless the pain is mild, everything that can.
    """
    if movement.slug == pain.exercise:
        return True
    joint = joint_of(pain.place)
    if joint is None or joint not in movement.spare:
        return False
    return pain.exercise is None or not is_mild(pain) or exercise(pain.exercise).pattern is movement.pattern


def watched(pains: Sequence[PainRecord], now: datetime) -> tuple[PainRecord, ...]:
    """The pains still to be asked about, one for each place and exercise, the latest of each."""
    found = {
        (pain.place, pain.side, pain.exercise): pain
        for pain in pains
        if not pain.urgent and pain.eased_at is None and now - pain.at < WATCHED
    }
    return tuple(found.values())


def hold(
    movement: Exercise, pains: Sequence[PainRecord], sets: Sequence[SetRecord], now: datetime
) -> tuple[Hold, PainRecord] | None:
    """How an exercise is held back, and by which pain; None when it is free.

    A pain that is gone makes it lighter until it was done on another day.
    """
    held = [pain for pain in watched(pains, now) if troubles(movement, pain)]
    if held:
        worst = next((pain for pain in reversed(held) if not is_mild(pain)), held[-1])
        return (Hold.LIGHTER if is_mild(worst) else Hold.OUT), worst
    for pain in reversed(pains):
        if pain.urgent or pain.eased_at is None or now - pain.eased_at >= WATCHED or not troubles(movement, pain):
            continue
        done = (record for record in sets if record.exercise == movement.slug)
        if not any(record.at > pain.eased_at and now - record.at > ANOTHER_DAY for record in done):
            return Hold.LIGHTER, pain
    return None
