"""Where the talk with a coach can be: one frozen value a state."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, datetime
from typing import Literal

from core.circuit import Circuit
from core.coach.desk import Change
from core.deeds import Deed
from core.health import Outcome
from core.messages import Message
from core.session.events import Say
from core.trainee import Block


@dataclass(frozen=True)
class WayBack:
    """How to take back what was done last: its name, the changes that bring the desk back, and the deed `of` some people it was."""

    name: str
    changes: tuple[Change, ...]
    deed: Deed | None = None
    of: int = 0


@dataclass(frozen=True)
class Quiet:
    """Nothing is waiting for an answer. `shown` is the name of the circuit that was looked at last."""

    way_back: WayBack | None = None
    shown: str | None = None
    kind: Literal["quiet"] = "quiet"


@dataclass(frozen=True)
class CircuitReviewed:
    """A circuit was shown; a yes puts it in force for those with these ids or for everyone (None), at once or from a day on."""

    circuit: Circuit
    whom: tuple[int, ...] | None
    way_back: WayBack | None = None
    from_on: date | None = None
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


@dataclass(frozen=True)
class DeedReviewed:
    """Something was shown, with everyone it is for by their ids; a yes does it."""

    deed: Deed
    whom: tuple[int, ...]
    way_back: WayBack | None = None
    kind: Literal["deed_reviewed"] = "deed_reviewed"


@dataclass(frozen=True)
class Choosing:
    """It was asked who is meant; the answer goes on with the text.

    Attributes:
        text: as the coach typed it, on `day` of their calendar.
        said: the name in doubt, as it stands there; empty where none was said.
        names: those who may be meant.
        sure: whether the name fits all of these; else it only looks like theirs.
        meant: what is settled of other names: each as typed, and whose it is.
    """

    text: str
    day: date
    said: str
    names: tuple[str, ...]
    meant: tuple[tuple[str, str], ...] = ()
    sure: bool = True
    way_back: WayBack | None = None
    kind: Literal["choosing"] = "choosing"


CoachState = Quiet | CircuitReviewed | PlanReviewed | ClearanceReviewed | DeedReviewed | Choosing
Decided = tuple[CoachState, tuple[Change, ...], Sequence[Message]]


@dataclass(frozen=True)
class CoachStep:
    """What was decided: the new state, what changes on the desk in this order, what to say, when to look again (UTC)."""

    state: CoachState
    changes: tuple[Change, ...]
    messages: tuple[Say, ...]
    wake_at: datetime | None = None
