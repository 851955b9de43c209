"""Safety: what holds a workout or a load back. It informs and defers; doctors and licensed practice decide."""

from __future__ import annotations

from datetime import timedelta
from typing import TYPE_CHECKING

from core.exercise import Joint

if TYPE_CHECKING:
    from datetime import datetime

    from core.diary import History, PainRecord, SetRecord
    from core.exercise import Exercise

URGENT_WAIT = timedelta(hours=24)  # common practice, no source: not on the same day, and only after a clearance
PAIN_WATCH = timedelta(days=14)  # common practice, no source

JOINT_WORDS = {
    "knee": Joint.KNEE,
    "hip": Joint.HIP,
    "back": Joint.LOWER_BACK,
    "lower back": Joint.LOWER_BACK,
    "shoulder": Joint.SHOULDER,
    "elbow": Joint.ELBOW,
    "wrist": Joint.WRIST,
}


def must_wait(history: History, now: datetime) -> bool:
    """Whether an urgent sign was reported too short a time ago to train."""
    return any(pain.urgent and now - pain.at < URGENT_WAIT for pain in history.pains)


def joint_of(place: str | None) -> Joint | None:
    """The joint a reported place names, None when it is none that swaps are kept for."""
    return None if place is None else JOINT_WORDS.get(place.lower())


def sparing(exercise: Exercise, place: str | None) -> str | None:
    """The slug of an exercise that spares the place, None when there is none."""
    joint = joint_of(place)
    return None if joint is None else exercise.spare.get(joint)


def pain_held_against(slug: str, history: History, sets: tuple[SetRecord, ...], now: datetime) -> PainRecord | None:
    """The pain that holds this exercise's load back: reported at it lately, with no set of it since another day."""
    pains = [pain for pain in history.pains if pain.exercise == slug and now - pain.at < PAIN_WATCH]
    if not pains:
        return None
    latest = pains[-1]
    eased = any(record.exercise == slug and record.at - latest.at > timedelta(hours=12) for record in sets)
    return None if eased else latest
