"""What the shell asks of its parts: the clock, the channel, the words, the decision."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path
from typing import Protocol

from core.circuit import Circuit
from core.coach.desk import Desk
from core.coach.states import CoachState, CoachStep
from core.diary import History
from core.messages import Message
from core.pictures import Picture
from core.records_file import RecordsFile
from core.session.events import Event, Plan, Step
from core.session.states import State
from core.sheet import Sheet
from core.trainee import Trainee

Document = RecordsFile | Sheet  # what can be sent as a file, see `bot.files`


class Clock(Protocol):
    """The time of day, and how long until another."""

    def now(self) -> datetime:
        """The instant it is, aware, UTC; never earlier than what it said before."""

    def wait_s(self, instant: datetime) -> float:
        """Real seconds until this clock shows `instant`: 0 when it is due, infinite when waiting will not bring it."""


@dataclass(frozen=True)
class Rendered:
    """A message in words, as rows and channels carry it.

    Attributes:
        text: what is read.
        replies: quick replies to offer, as the trainee would type them; may be empty.
        kind: the message's class, for the log, the rows and the channel's tone.
        exercise: the slug of the exercise a card shows, None for other messages.
        shows: what a picture or a document beside it holds, None without one.
        picture: that picture as a PNG file, set just before it is sent (`bot.pictures.gallery`).
        document: that document as a file, set in the same way.
    """

    text: str
    replies: tuple[str, ...]
    kind: str
    exercise: str | None = None
    shows: Picture | Document | None = None
    picture: Path | None = None
    document: Path | None = None


@dataclass(frozen=True)
class Letter:
    """A message on its way: the id of its row, the message in words, and past when (UTC) it is stale (None: never)."""

    id: int
    rendered: Rendered
    expires_at: datetime | None = None


class Channel(Protocol):
    """Where trainees are talked to. It sends, and decides nothing."""

    async def send(self, trainee: int, letter: Letter) -> None:
        """Send one message to a trainee (by id) and return once it is out.

        Called for one message of a trainee at a time, in order. A channel that does not serve this trainee raises `Unreachable`:
        the message waits.

        Raises:
            bot.errors.Gone: the chat is over; this and all waiting messages of the trainee are dropped with the reason.
            bot.errors.Unreachable: try again later; the message keeps its place.
        """


class Timed(Protocol):
    """Something of a channel's own that is due at instants of the clock."""

    def due_at(self) -> datetime | None:
        """When it is due next, None when nothing is planned."""

    def look(self) -> None:
        """Begin everything that is due, without waiting for it."""

    async def idle(self) -> None:
        """Return when what was begun is over."""


Render = Callable[[Message], Rendered]
Decide = Callable[[Trainee, State, History, Circuit], Step]
DecideForCoach = Callable[[CoachState, Desk], CoachStep | None]
StepFunction = Callable[[State, Event, Plan, History, datetime], Step]
