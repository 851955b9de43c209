"""What a trainee may tell about their health, and what follows from it, as values.

The topics are after published screening advice (its topics, in words of our own); the rules over them are in `core.safety`.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from enum import StrEnum

from core.circuit import Side


class Topic(StrEnum):
    """One question of the health talk, in the order asked."""

    AGE = "age"
    PREGNANCY = "pregnancy"
    CONDITIONS = "conditions"
    SYMPTOMS = "symptoms"
    INJURIES = "injuries"
    ACTIVITY = "activity"
    CHECKED = "checked"  # cleared by a doctor in the last year; asked where it decides
    MEDICINE = "medicine"
    SHARE = "share"


class AgeBand(StrEnum):
    """How old, as far as it matters here."""

    UNDER_18 = "under 18"
    ADULT = "18-39"
    MIDDLE = "40-64"
    OLDER = "65 or over"


class Condition(StrEnum):
    """Known disease that the screening asks about."""

    HEART = "heart"  # heart or blood vessels, stroke included
    METABOLIC = "metabolic"  # diabetes and the like
    KIDNEY = "kidney"


class Symptom(StrEnum):
    """Signs and symptoms of such disease, known or not."""

    CHEST = "chest"  # pain or pressure in chest, neck, jaw or arms
    BREATH = "breath"  # breathless at rest or with little effort
    DIZZY = "dizzy"  # dizziness or fainting
    NIGHT_BREATH = "night breath"  # breathless lying down or waking at night
    ANKLES = "ankles"  # swelling
    HEARTBEAT = "heartbeat"  # racing or irregular
    CALF = "calf"  # pain on walking that eases with rest
    MURMUR = "murmur"  # of the heart, known
    FATIGUE = "fatigue"  # unusual, with usual activity


class Outcome(StrEnum):
    """What a screening comes to."""

    GO = "go"
    LIGHT = "go light"
    CLEARANCE = "clearance first"
    WAIT = "coach and clinician decide"


@dataclass(frozen=True)
class Injury:
    """A place that is hurt or was hurt lately."""

    place: str
    side: Side | None = None


@dataclass(frozen=True)
class Health:
    """What the trainee has answered so far. None: not said, or left out on purpose.

    Attributes:
        open: topics still to be asked, in order.
        age, pregnant, conditions, symptoms, injuries, active, checked, medicine: the answers. `pregnant` is true for a recent birth
            too, `active` for half an hour of brisk movement on three days a week over three months, `checked` for a doctor's yes
            to hard exercise in the last year, `medicine` for one that changes the heart rate.
        share: the coach may see the answers, not only the outcome.
        decided_at: when an answer that decides was last changed (UTC); a clearance told before it no longer counts.
        finished_at: when the last topic was answered or left out (UTC), None while some are open.
    """

    open: tuple[Topic, ...] = tuple(Topic)
    age: AgeBand | None = None
    pregnant: bool | None = None
    conditions: tuple[Condition, ...] | None = None
    symptoms: tuple[Symptom, ...] | None = None
    injuries: tuple[Injury, ...] | None = None
    active: bool | None = None
    checked: bool | None = None
    medicine: bool | None = None
    share: bool = False
    decided_at: datetime | None = None
    finished_at: datetime | None = None


class Feeling(StrEnum):
    """What a trainee may say of themselves before a workout."""

    BAD_SLEEP = "bad sleep"
    SORE = "sore"
    ILL = "ill"  # and nothing said of fever, nor of chest, stomach or body
    COLD = "cold"  # above the neck only, no fever
    FEVER = "fever"  # or ill below the neck: chest, stomach, body aches
    HOT = "hot"  # the room or the day


class Quality(StrEnum):
    """How a pain feels."""

    SHARP = "sharp"
    DULL = "dull"


class NoteKind(StrEnum):
    """A small fact about safety that is kept with its instant; `value` of the note depends on the kind."""

    OUTCOME = "outcome"  # of the screening: an Outcome, and the answers where the trainee agreed (`outcome_value`)
    CLEARED = "cleared"  # who says so: "trainee" or "coach"
    FEELING = "feeling"  # before a workout: a Feeling
    EASIER_WEEK = "easier week"  # begins; an EasierWhy
    LOAD_JUMP = "load jump"  # the trainee was warned; per cent above usual
    DAYS_ALIKE = "days alike"  # the trainee was told; no value
    URGENT = "urgent"  # for the coach, at once: the place, may be empty
    PAIN = "pain"  # for the coach: the place, may be empty
    TAKEN_BACK = "clearance taken back"  # who had said so: "coach"


AT_ONCE = (NoteKind.URGENT, NoteKind.OUTCOME, NoteKind.CLEARED)
COACH_KINDS = (*AT_ONCE, NoteKind.PAIN, NoteKind.EASIER_WEEK, NoteKind.LOAD_JUMP)


class EasierWhy(StrEnum):
    """Why a week is easier."""

    PLAN = "plan"
    FALLING = "falling"  # strength falls while effort rises


@dataclass(frozen=True)
class SafetyNote:
    """A fact about safety at an instant (UTC).

    Those of `COACH_KINDS` are for the coach, who sees the kind and the value; those of `AT_ONCE` as soon as they are kept.
    """

    at: datetime
    kind: NoteKind
    value: str = ""


Answers = tuple[tuple[Topic, tuple[str, ...]], ...]  # of each topic that was answered, the values; none for "nothing of it"
YES, NO = "yes", "no"


def outcome_value(outcome: Outcome, health: Health, *, answers: bool) -> str:
    """The value of a note on an outcome, a line for each answer after it; the outcome alone unless the `answers` may be seen."""
    told = answers_of(health) if answers else ()
    return "\n".join([outcome.value, *(f"{topic.value}: {', '.join(values)}" for topic, values in told)])


def read_outcome(value: str) -> tuple[Outcome, Answers]:
    """What `outcome_value` wrote.

    Raises:
        ValueError: when it wrote no such thing.
    """
    outcome, *lines = value.split("\n")
    split = [line.partition(":") for line in lines]
    return Outcome(outcome), tuple(
        (Topic(topic), tuple(rest.split(", ")) if (rest := said.strip()) else ()) for topic, _, said in split
    )


def answers_of(health: Health) -> Answers:
    """What was answered, topic by topic, in the order asked; what was left out is not there."""
    places = None
    if health.injuries is not None:
        places = tuple(one.place if one.side is None else f"{one.side.value} {one.place}" for one in health.injuries)
    said: dict[Topic, tuple[str, ...] | bool | None] = {
        Topic.AGE: None if health.age is None else (health.age.value,),
        Topic.PREGNANCY: health.pregnant,
        Topic.CONDITIONS: health.conditions,
        Topic.SYMPTOMS: health.symptoms,
        Topic.INJURIES: places,
        Topic.ACTIVITY: health.active,
        Topic.CHECKED: health.checked,
        Topic.MEDICINE: health.medicine,
    }
    return tuple(
        (topic, ((YES,) if values else (NO,)) if isinstance(values, bool) else tuple(values))
        for topic, values in said.items()
        if values is not None
    )


class Branch(StrEnum):
    """Which branch decided."""

    YOUNG = "young"
    PREGNANT = "pregnant"
    SYMPTOMS = "symptoms"
    DISEASE = "disease"  # known, and not active
    DISEASE_ACTIVE = "disease, active"  # known and active, not cleared for hard exercise within a year
    UNANSWERED = "unanswered"
    STARTING = "starting"  # not active, nothing known
    FREE = "free"


class Bar(StrEnum):
    """What stands before a workout."""

    URGENT = "urgent"  # a warning sign: waits for a clear "I am cleared", never on the same day
    CLEARANCE = "clearance"  # the screening says: a clearance first
    YOUNG = "young"  # the coach and their clinician decide
    PREGNANT = "pregnant"  # the same
    FEVER = "fever"  # until tomorrow at least


class LightWhy(StrEnum):
    """Why today is lighter."""

    UNANSWERED = "unanswered"
    STARTING = "starting"
    DISEASE = "disease"
    CLEARED = "cleared"
    BREAK = "break"
    FEVER = "fever"
    EASIER_PLAN = "easier week by plan"
    EASIER_FALLING = "easier week, strength falls"
    SLEEP = "sleep"
    SORE = "sore"
    ILL = "ill"


class TooMuch(StrEnum):
    """What is seen."""

    FAILING = "failing"
    HALVED = "halved"


class Check(StrEnum):
    """Something to look at before starting."""

    FLOOR = "floor"
    SHOES = "shoes"
    MAT = "mat"
    COLLARS = "collars"
    HANDLE = "handle"
    CHAIR = "chair"
    BAND = "band"


class Move(StrEnum):
    """Something easy to warm up with."""

    MARCH = "march"
    SQUATS = "squats"
    LEG_SWINGS = "leg swings"
    HIP_BENDS = "hip bends"
    WALL_PUSH_UPS = "wall push-ups"
    ARM_CIRCLES = "arm circles"
    SHOULDER_ROLLS = "shoulder rolls"
    CAT_AND_COW = "cat and cow"
    TRUNK_TURNS = "trunk turns"
    ELBOW_BENDS = "elbow bends"
    HEEL_RAISES = "heel raises"
    ONE_LEG = "one leg"
