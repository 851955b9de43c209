"""Before the first workout: the cautions, the health questions, what they come to, a clearance; and what the coach hears of it."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date

from core.health import Bar, Branch, NoteKind, Outcome, Topic


@dataclass(frozen=True)
class Cautions:
    """The cautions, and the question for a yes."""


@dataclass(frozen=True)
class CautionsNeeded:
    """No yes to the cautions: nothing starts."""


@dataclass(frozen=True)
class HealthOffered:
    """A few short health questions are offered; `go` goes without them, and light."""


@dataclass(frozen=True)
class HealthAsked:
    """One health question; `again` when the answer could not be read."""

    topic: Topic
    coach: str
    again: bool


@dataclass(frozen=True)
class HealthLater:
    """The health questions wait; `running` while a workout is under way, `free` when one may start without them, lightly."""

    running: bool
    free: bool


@dataclass(frozen=True)
class HealthOutcome:
    """What the health answers come to; `places` are injuries that are held back, `medicine` one that changes the heart rate."""

    outcome: Outcome
    branch: Branch
    coach: str
    places: tuple[str, ...]
    medicine: bool


@dataclass(frozen=True)
class ClearanceNeeded:
    """Something stands before a workout: nothing starts. `same_day` when a warning sign was told today."""

    bar: Bar
    coach: str
    emergency: str | None
    same_day: bool


@dataclass(frozen=True)
class ClearanceNoted:
    """The trainee is cleared; the start is a light one. `first_talk` when that still has to be finished."""

    first_talk: bool


@dataclass(frozen=True)
class ClearanceTooSoon:
    """Cleared was said on the day of a warning sign: not today."""


@dataclass(frozen=True)
class SafetyNews:
    """To the coach: a note on a trainee's safety, told on another day when `on` is set.

    `value` is that of the note (for an outcome: `core.health.outcome_value`).
    """

    name: str
    kind: NoteKind
    value: str
    on: date | None = None


HealthMessage = (
    Cautions
    | CautionsNeeded
    | HealthOffered
    | HealthAsked
    | HealthLater
    | HealthOutcome
    | ClearanceNeeded
    | ClearanceNoted
    | ClearanceTooSoon
    | SafetyNews
)
