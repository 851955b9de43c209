"""Before every workout: the warm-up, how the trainee is today, what makes the day lighter or ends it."""

from __future__ import annotations

from dataclasses import dataclass

from core.health import Check, Feeling, LightWhy, Move


@dataclass(frozen=True)
class WarmUp:
    """The warm-up clock starts (0 seconds: there is none); with checks, and questions that need no answer.

    `places` hurt the last time and are asked about.
    """

    seconds: int
    moves: tuple[Move, ...]
    checks: tuple[Check, ...]
    places: tuple[str, ...]


@dataclass(frozen=True)
class LighterDay:
    """Why today is lighter. `days` away for a break; `rounds` when there are fewer than the circuit has."""

    whys: tuple[LightWhy, ...]
    days: int | None
    rounds: int | None


@dataclass(frozen=True)
class SameMuscles:
    """The same muscles worked hard less than two days ago."""

    hours: int
    muscles: tuple[str, ...]


@dataclass(frozen=True)
class FeelingNoted:
    """How the trainee is today was noted; `lighter` when the loads follow, `rounds` when there are fewer than planned."""

    feelings: tuple[Feeling, ...]
    lighter: bool
    rounds: int | None


@dataclass(frozen=True)
class IllAsked:
    """Ill: any fever, or anything below the neck?"""


@dataclass(frozen=True)
class FeverRest:
    """Fever, or ill below the neck: no workout today."""


ReadinessMessage = WarmUp | LighterDay | SameMuscles | FeelingNoted | IllAsked | FeverRest
