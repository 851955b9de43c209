"""Where the talk with a coach can be: one frozen value a state."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from typing import Literal

from core.circuit import Circuit
from core.coach.desk import Change
from core.health import Outcome
from core.session.events import Say
from core.trainee import Block


@dataclass(frozen=True)
class WayBack:
    """How to take back what was put in force last: its name, and the changes that bring the desk back."""

    name: str
    changes: tuple[Change, ...]


@dataclass(frozen=True)
class Quiet:
    """Nothing is waiting for an answer."""

    way_back: WayBack | None = None
    kind: Literal["quiet"] = "quiet"


@dataclass(frozen=True)
class CircuitReviewed:
    """A circuit was shown; a yes puts it in force for the trainees with these ids, or for everyone (None)."""

    circuit: Circuit
    whom: tuple[int, ...] | None
    way_back: WayBack | None = None
    kind: Literal["circuit_reviewed"] = "circuit_reviewed"


@dataclass(frozen=True)
class PlanReviewed:
    """A plan was shown; a yes gives it to the trainees with these ids, or to everyone (None)."""

    block: Block
    whom: tuple[int, ...] | None
    way_back: WayBack | None = None
    kind: Literal["plan_reviewed"] = "plan_reviewed"


@dataclass(frozen=True)
class ClearanceReviewed:
    """It was asked whether somebody may train; a yes is kept while what the questions came to then is as it was.

    Attributes:
        client: the trainee's id.
        outcome: what the health questions came to.
        decided_at: when the answers that it rests on were last changed (UTC).
    """

    client: int
    outcome: Outcome
    decided_at: datetime | None
    way_back: WayBack | None = None
    kind: Literal["clearance_reviewed"] = "clearance_reviewed"


CoachState = Quiet | CircuitReviewed | PlanReviewed | ClearanceReviewed


@dataclass(frozen=True)
class CoachStep:
    """What was decided: the new state, what changes on the desk in this order, what to say."""

    state: CoachState
    changes: tuple[Change, ...]
    messages: tuple[Say, ...]
