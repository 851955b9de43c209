"""The screening: what the health answers come to.

The branches follow Riebe et al. 2015 (entry 43; branches from memory): present activity; signs, symptoms or known disease; the
wanted intensity, which at stations that end near failure counts as vigorous. Risk factors do not decide. Under 18: entry 48,
pregnancy: entry 47, both left to the coach and a clinician. Entry 44 is the check that neither almost nobody nor everybody is held
back.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import timedelta
from typing import TYPE_CHECKING, Literal

from core.health import AgeBand, Branch, Health, NoteKind, Outcome, SafetyNote, Topic

if TYPE_CHECKING:
    from datetime import datetime

    from core.diary import History

ASKED_AGAIN_AFTER = timedelta(days=365)  # common practice, no source
LONG_BREAK = timedelta(days=90)  # common practice, no source; three months are also what counts as active (entry 43)
DECIDING = (Topic.AGE, Topic.PREGNANCY, Topic.CONDITIONS, Topic.SYMPTOMS, Topic.ACTIVITY, Topic.CHECKED)


@dataclass(frozen=True)
class Verdict:
    """What the answers come to, and by which branch."""

    outcome: Outcome
    branch: Branch


def verdict(health: Health) -> Verdict:
    """What the answers so far come to; what was not answered never frees, and never holds back more than to go light.

    Any symptom needs a clearance whatever else is true; known disease needs one unless the trainee is active, and then before hard
    exercise: without it the work stays light.
    """
    if health.age is AgeBand.UNDER_18:
        return Verdict(Outcome.WAIT, Branch.YOUNG)
    if health.pregnant:
        return Verdict(Outcome.WAIT, Branch.PREGNANT)
    if health.symptoms:
        return Verdict(Outcome.CLEARANCE, Branch.SYMPTOMS)
    if health.conditions and not health.active:
        return Verdict(Outcome.CLEARANCE, Branch.DISEASE)
    if None in (health.age, health.pregnant, health.conditions, health.symptoms, health.active):
        return Verdict(Outcome.LIGHT, Branch.UNANSWERED)
    if health.conditions and not health.checked:
        return Verdict(Outcome.LIGHT, Branch.DISEASE_ACTIVE)
    return Verdict(Outcome.GO, Branch.FREE) if health.active else Verdict(Outcome.LIGHT, Branch.STARTING)


def next_topic(health: Health) -> Topic | None:
    """The next question, None when there is none: some need no asking after what was said."""
    if verdict(health).outcome is Outcome.WAIT:
        return None
    asked = [topic for topic in health.open if topic is not Topic.CHECKED or (health.conditions and health.active)]
    if health.symptoms and asked != [Topic.SHARE]:  # a clearance is needed whatever else is true
        asked = [topic for topic in asked if topic in (Topic.INJURIES, Topic.MEDICINE, Topic.SHARE)]
    return asked[0] if asked else None


def due(health: Health, history: History, now: datetime) -> bool:
    """Whether the questions should be asked: never finished, a year old, after a long break, or after a warning sign."""
    if health.finished_at is None:
        return True
    age = now - health.finished_at
    ended = [record.ended_at for record in history.workouts if record.ended_at is not None]
    away = bool(ended) and now - ended[-1] >= LONG_BREAK and age >= LONG_BREAK
    return age >= ASKED_AGAIN_AFTER or away or any(pain.urgent and pain.at > health.finished_at for pain in history.pains)


def cleared_since(history: History, at: datetime | None, *, by: Literal["trainee", "coach"] | None = None) -> datetime | None:
    """When a clearance that still holds was last told, not before `at`; `by` leaves out what the other one says."""
    told: list[SafetyNote] = []
    for note in history.notes:
        if note.kind is NoteKind.TAKEN_BACK:
            told = [one for one in told if one.value != note.value]
        elif note.kind is NoteKind.CLEARED and (at is None or note.at >= at) and by in (None, note.value):
            told.append(note)
    return told[-1].at if told else None
