"""What a trainee reads of their coach: words as they were typed, answers, a rest, and what was changed for them."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date

from core.changed import Changed


@dataclass(frozen=True)
class RestGiven:
    """The coach gives a rest, which ends before `until` (None: when told); `circuit` is what a "go" would start all the same."""

    coach: str
    until: date | None
    circuit: str


@dataclass(frozen=True)
class CoachWrites:
    """Words of the coach's for this trainee, as they were typed."""

    coach: str
    text: str


@dataclass(frozen=True)
class CoachAnswers:
    """The coach's answer to what the trainee asked, both as they were typed."""

    coach: str
    question: str
    text: str


@dataclass(frozen=True)
class CoachChanged:
    """The coach has changed something for this trainee; exercises in it by their names."""

    coach: str
    changed: Changed


CoachWordsMessage = RestGiven | CoachWrites | CoachAnswers | CoachChanged
