"""What a coach may ask or tell beside circuits and plans, as values: read by `core.coach.hearing`, carried out by the coach's step.

Names and exercises stand as they were typed; who and what is meant is settled against the desk, or asked about.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import Literal

from core.recurrence import Weekday
from core.units import Load

Which = Literal["this", "last"]


@dataclass(frozen=True)
class Whom:
    """Those that are meant: names as typed, in order; `everyone` for all on the roster, `names` are then those left out."""

    names: tuple[str, ...] = ()
    everyone: bool = False


@dataclass(frozen=True)
class WhoTrained:
    """Who trained, this week or the last one."""

    week: Which = "this"


@dataclass(frozen=True)
class WhoMissed:
    """Who missed training days, this week or the last one."""

    week: Which = "this"


@dataclass(frozen=True)
class WhoNeedsWord:
    """Who needs a word, and why."""


@dataclass(frozen=True)
class HowIs:
    """How is somebody doing?"""

    name: str


@dataclass(frozen=True)
class WeekAsked:
    """The week at a glance: a picture and a few lines."""

    week: Which = "this"


@dataclass(frozen=True)
class SheetAsked:
    """The fuller sheet as a file, of everyone or of those named."""

    whom: Whom = Whom(everyone=True)
    week: Which = "this"


@dataclass(frozen=True)
class ReviewOn:
    """Tell the week on this day from now on, at this time ("HH:MM", None: as before)."""

    day: Weekday
    at: str | None = None


@dataclass(frozen=True)
class ReviewOff:
    """No more telling of the week unasked."""


@dataclass(frozen=True)
class SwapFor:
    """Somebody does another exercise instead of one; `instead` None: whatever is kindest."""

    exercise: str
    instead: str | None
    whom: Whom


@dataclass(frozen=True)
class SwapEnded:
    """Back to the circuit's own exercise; `exercise` None: all of them."""

    exercise: str | None
    whom: Whom


@dataclass(frozen=True)
class HoldFor:
    """No load above `most` (per hand; None: not above the last one) at an exercise, None: at all."""

    exercise: str | None
    most: Load | None
    whom: Whom


@dataclass(frozen=True)
class HoldEnded:
    """Loads may go up again at an exercise, None: at all."""

    exercise: str | None
    whom: Whom


@dataclass(frozen=True)
class NoteFor:
    """A note on the card of an exercise (None: on the first card), in the coach's words."""

    text: str
    exercise: str | None
    whom: Whom


@dataclass(frozen=True)
class NoteEnded:
    """Take the note off the card of an exercise, None: all notes."""

    exercise: str | None
    whom: Whom


@dataclass(frozen=True)
class SayTo:
    """A message to one, some or all, in the coach's words."""

    text: str
    whom: Whom


@dataclass(frozen=True)
class AnswerTo:
    """The answer to a question that was passed on; `name` None: to the one that is open."""

    text: str
    name: str | None = None


@dataclass(frozen=True)
class PutUp:
    """A circuit that is on the board comes on for these, from a day on; None: from their next workout."""

    circuit: str
    whom: Whom
    from_on: date | None = None


@dataclass(frozen=True)
class Invite:
    """A link for somebody new; `name` None when not said."""

    name: str | None = None


@dataclass(frozen=True)
class PauseFor:
    """Nothing is said unasked to these until a day (it ends when that day begins), None: until told."""

    whom: Whom
    until: date | None = None


@dataclass(frozen=True)
class PauseEnded:
    """These train on."""

    whom: Whom


@dataclass(frozen=True)
class Remove:
    """Somebody is no longer trained here."""

    whom: Whom


@dataclass(frozen=True)
class TakeClip:
    """This film is for that exercise; read from a film's caption."""

    exercise: str


Ask = (
    WhoTrained
    | WhoMissed
    | WhoNeedsWord
    | HowIs
    | WeekAsked
    | SheetAsked
    | ReviewOn
    | ReviewOff
    | SwapFor
    | SwapEnded
    | HoldFor
    | HoldEnded
    | NoteFor
    | NoteEnded
    | SayTo
    | AnswerTo
    | PutUp
    | Invite
    | PauseFor
    | PauseEnded
    | Remove
    | TakeClip
)
