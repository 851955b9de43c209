"""What goes into a step and what comes out."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime

from core.circuit import Circuit
from core.diary import Entry
from core.messages import Message
from core.plan import Due
from core.session.states import State
from core.trainee import Trainee


@dataclass(frozen=True)
class Opened:
    """The trainee opened the chat, or it was opened again after the program stopped."""


@dataclass(frozen=True)
class Said:
    """The trainee sent a text."""

    text: str


@dataclass(frozen=True)
class Edited:
    """The trainee changed a text they had sent; `first_at` is when that was handled (UTC), None when it never was."""

    text: str
    first_at: datetime | None


@dataclass(frozen=True)
class Woke:
    """The alarm rang: look what is due."""


Event = Opened | Said | Edited | Woke


@dataclass(frozen=True)
class Plan:
    """Who trains, what is on for today, who is the coach, and which number to call in an emergency (None: the local one).

    For a trainee with a block, `due` says when and where in it, and `circuit` is the one that is due. `coaches` is true for a
    coach who trains.
    """

    trainee: Trainee
    circuit: Circuit
    coach: str
    emergency: str | None = None
    due: Due | None = None
    coaches: bool = False


@dataclass(frozen=True)
class Say:
    """A message to send; past `expires_at` (UTC) it is stale and worth nothing. None: it is never stale."""

    message: Message
    expires_at: datetime | None = None


@dataclass(frozen=True)
class Step:
    """What was decided: the new state, what to keep, what to say in this order, when to look again (UTC)."""

    state: State
    records: tuple[Entry, ...]
    messages: tuple[Say, ...]
    wake_at: datetime | None
