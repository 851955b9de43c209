"""What to expect of an exercise before it was ever done.

A table of movement patterns: the one-rep max per hand in kilograms of an untrained woman of 65 kg, and how far
people differ from it for that movement once their general strength is known. Published ratios between movements
are few (Saeterbakken 2011 and 2013, Wong 2013; see fixtures/published/load_ratios.csv); the presses and the curl
keep to them, the rest is common practice, no source. All values are deliberately low: a first set that is too
light costs little.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import lru_cache
from math import log
from typing import Final, Literal


@dataclass(frozen=True)
class MovementPrior:
    """The first guess for one movement.

    Attributes:
        one_rep_max_kg: per hand, an untrained woman of 65 kg at the usual tempo.
        spread: standard deviation of the log of a person's max, once their general strength is known.
        known: False when the name says nothing to us.
    """

    one_rep_max_kg: float
    spread: float = 0.30
    known: bool = True


Experience = Literal["new", "steady", "strong"]


@dataclass(frozen=True)
class TraineeFacts:
    """What is known of a trainee beside the records; `days_off` is days without any training, as said."""

    experience: Experience = "new"
    sex: str | None = None
    age: int | None = None
    body_mass_kg: float | None = None
    days_off: int | None = None


UNKNOWN: Final = MovementPrior(9.0, 0.55, known=False)

# The first entry whose words are all in the name counts, so special names stand before general ones.
TABLE: Final[tuple[tuple[str, MovementPrior], ...]] = (
    ("lateral raise", MovementPrior(6.0)),
    ("side raise", MovementPrior(6.0)),
    ("front raise", MovementPrior(6.0)),
    ("rear delt", MovementPrior(6.0)),
    ("reverse fly", MovementPrior(6.0)),
    ("fly", MovementPrior(8.0)),
    ("leg curl", MovementPrior(10.0, 0.4)),
    ("wrist curl", MovementPrior(7.0)),
    ("hammer curl", MovementPrior(10.5)),
    ("curl", MovementPrior(10.0)),
    ("kickback", MovementPrior(7.0)),
    ("skull", MovementPrior(8.0)),
    ("triceps", MovementPrior(11.0)),
    ("tricep", MovementPrior(11.0)),
    ("overhead extension", MovementPrior(11.0)),
    ("upright row", MovementPrior(12.0)),
    ("renegade", MovementPrior(12.0)),
    ("one arm row", MovementPrior(21.0)),
    ("single arm row", MovementPrior(21.0)),
    ("row", MovementPrior(19.0)),
    ("pullover", MovementPrior(15.0)),
    ("pulldown", MovementPrior(20.0)),
    ("floor press", MovementPrior(15.0)),
    ("chest press", MovementPrior(15.0)),
    ("bench press", MovementPrior(15.0)),
    ("incline press", MovementPrior(13.0)),
    ("push press", MovementPrior(14.0)),
    ("arnold", MovementPrior(10.0)),
    ("shoulder press", MovementPrior(11.5)),
    ("overhead press", MovementPrior(11.5)),
    ("leg press", MovementPrior(60.0, 0.4)),
    ("press", MovementPrior(12.0)),
    ("thruster", MovementPrior(11.5)),
    ("clean", MovementPrior(15.0)),
    ("snatch", MovementPrior(14.0)),
    ("halo", MovementPrior(9.0)),
    ("get up", MovementPrior(10.0)),
    ("swing", MovementPrior(26.0)),
    ("goblet", MovementPrior(28.0)),
    ("split squat", MovementPrior(17.0)),
    ("bulgarian", MovementPrior(15.0)),
    ("lunge", MovementPrior(17.0)),
    ("step up", MovementPrior(17.0)),
    ("single leg deadlift", MovementPrior(18.0)),
    ("one leg deadlift", MovementPrior(18.0)),
    ("romanian", MovementPrior(28.0)),
    ("rdl", MovementPrior(28.0)),
    ("deadlift", MovementPrior(32.0)),
    ("good morning", MovementPrior(18.0)),
    ("hip thrust", MovementPrior(38.0, 0.4)),
    ("bridge", MovementPrior(34.0, 0.4)),
    ("hinge", MovementPrior(28.0)),
    ("squat", MovementPrior(24.0)),
    ("calf", MovementPrior(38.0, 0.4)),
    ("carry", MovementPrior(30.0, 0.4)),
    ("shrug", MovementPrior(30.0)),
    ("side bend", MovementPrior(22.0)),
    ("twist", MovementPrior(11.0)),
    ("woodchop", MovementPrior(11.0)),
    ("wood chop", MovementPrior(11.0)),
    ("sit up", MovementPrior(13.0)),
    ("crunch", MovementPrior(13.0)),
    ("dead bug", MovementPrior(9.0)),
    ("horizontal push", MovementPrior(15.0)),
    ("vertical push", MovementPrior(11.5)),
    ("horizontal pull", MovementPrior(19.0)),
    ("vertical pull", MovementPrior(15.0)),
)

REFERENCE_BODY_MASS_KG: Final = 65.0
BODY_MASS_EXPONENT: Final = 0.67
"""Strength grows with body mass to the power 2/3 (cross-section against volume; common practice, no source)."""
MALE_FACTOR: Final = 1.6
"""Bench press over body mass, 30-39 years, median: 0.93 men, 0.57 women (entry 73, bench_percentiles.csv)."""
UNSAID_SEX_FACTOR: Final = 1.15
EXPERIENCE_FACTOR: Final = {"new": 1.0, "steady": 1.3, "strong": 1.7}
PERSON_SPREAD: Final = 0.40


def words_of(exercise: str) -> str:
    """A name as lower-case words with single spaces: `One-Arm_Row` is `one arm row`."""
    return " ".join(re.findall(r"[a-z0-9]+", exercise.lower()))


@lru_cache(maxsize=1024)
def prior_for(exercise: str) -> MovementPrior:
    """The first guess for an exercise, by whatever name; `UNKNOWN` when no word of it is known."""
    words = words_of(exercise)
    padded = f" {words} "
    squeezed = words.replace(" ", "")
    for key, prior in TABLE:
        if all(f" {word} " in padded or f" {word}s " in padded for word in key.split()):
            return prior
    for key, prior in TABLE:
        if len(key) > len("curls") and key.replace(" ", "") in squeezed:
            return prior
    return UNKNOWN


def person_log_factor(trainee: TraineeFacts) -> tuple[float, float]:
    """Mean and standard deviation of the log of a trainee's general strength against the table's."""
    said = (trainee.sex or "").strip().lower()[:1]
    age, body_mass_kg = trainee.age, trainee.body_mass_kg
    factor = {"m": MALE_FACTOR, "f": 1.0, "w": 1.0}.get(said, UNSAID_SEX_FACTOR)
    factor *= EXPERIENCE_FACTOR.get(trainee.experience, 1.0)
    if body_mass_kg is not None and 30.0 <= body_mass_kg <= 250.0:  # noqa: PLR2004 - what a body can weigh
        heavier = min(body_mass_kg, 110.0) / REFERENCE_BODY_MASS_KG
        factor *= heavier**BODY_MASS_EXPONENT
    if age is not None and age > 40:  # noqa: PLR2004 - from the fifth decade on medians fall (entry 73)
        factor *= max(0.6, 1.0 - 0.009 * (age - 40))
    return log(factor), PERSON_SPREAD
