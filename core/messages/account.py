"""The account: joining, wishes, films, what cannot be read; and what the coach hears of it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal


@dataclass(frozen=True)
class CoachWelcome:
    """Somebody has become the coach."""

    name: str


@dataclass(frozen=True)
class CoachHelp:
    """What a coach can say here."""


@dataclass(frozen=True)
class InviteMade:
    """An invite: a link to forward, or the code alone. `hours` is how long it holds."""

    name: str | None
    link: str
    code: str
    hours: int


@dataclass(frozen=True)
class TraineeJoined:
    """To the coach: somebody has come in."""

    name: str


@dataclass(frozen=True)
class TraineeGone:
    """To the coach: nothing can be sent to a trainee any more."""

    name: str


@dataclass(frozen=True)
class TraineeBack:
    """To the coach: a trainee who was gone is back."""

    name: str


@dataclass(frozen=True)
class ClipKept:
    """The coach's film of an exercise is shown on its card from now on."""

    exercise: str


@dataclass(frozen=True)
class ClipUnnamed:
    """A film came without the name of an exercise; `nearest` may be meant."""

    nearest: tuple[str, ...]


@dataclass(frozen=True)
class TextOnly:
    """Something came that cannot be read; `what` it was."""

    what: Literal["voice", "sticker", "place", "file", "picture", "film", "other"]


@dataclass(frozen=True)
class FewerNoted:
    """Fewer messages from now on, or all of them."""

    fewer: bool


@dataclass(frozen=True)
class MayHaveMissed:
    """To the coach: the program was away so long that the network has dropped older messages."""


AccountMessage = (
    CoachWelcome
    | CoachHelp
    | InviteMade
    | TraineeJoined
    | TraineeGone
    | TraineeBack
    | ClipKept
    | ClipUnnamed
    | TextOnly
    | FewerNoted
    | MayHaveMissed
)
