"""Reports read back, corrections, and the short questions about them."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from typing import Literal

from core.circuit import Side
from core.tempo import Tempo
from core.units import Load


@dataclass(frozen=True)
class SetLine:
    """A set in one line: what was reported. `load` is per hand, None when none applies."""

    reps: int | None = None
    load: Load | None = None
    side: Side | None = None
    reserve: Decimal | None = None
    rpe: Decimal | None = None
    seconds: int | None = None


@dataclass(frozen=True)
class StillMissing:
    """Nothing reported yet for the station just done."""

    exercise: str
    ask: Literal["reps", "seconds"]


@dataclass(frozen=True)
class Noted:
    """Sets read back, the next load for that station, and one reminder that fits what was reported.

    `exercise` is None for the station just done, where nobody needs its name. `next_when` says whether `next_load` is for the next
    round or the next workout; None when there is nothing to say. `next_tempo` is set when the tempo changes.
    """

    sets: tuple[SetLine, ...]
    exercise: str | None
    next_load: Load | None
    next_when: Literal["round", "time"] | None
    change: Literal["up", "same", "down"] | None
    next_tempo: Tempo | None
    reminder: Slower | Lighter | FormPoint | None


@dataclass(frozen=True)
class Slower:
    """More reps than the tempo allows in the time."""

    reps: int
    reps_ceiling: int
    tempo: Tempo


@dataclass(frozen=True)
class Lighter:
    """Short of the minute; `to` is the lighter load, None when there is none."""

    reps: int
    reps_low: int
    to: Load | None


@dataclass(frozen=True)
class FormPoint:
    """One form point of the exercise."""

    text: str


@dataclass(frozen=True)
class OtherSideAsked:
    """One side was reported and is noted; the other, `side`, is missing."""

    noted: SetLine
    side: Side


@dataclass(frozen=True)
class AlreadyNoted:
    """The same report came twice."""

    line: SetLine


@dataclass(frozen=True)
class Corrected:
    """A record was corrected."""

    exercise: str
    before: SetLine
    after: SetLine


@dataclass(frozen=True)
class EditNotRead:
    """A sent text was changed into something that cannot be read; the set stands as it was."""

    exercise: str
    line: SetLine


@dataclass(frozen=True)
class Undone:
    """A record was taken away."""

    exercise: str
    line: SetLine


@dataclass(frozen=True)
class NothingToCorrect:
    """Nothing is noted in this workout that could be changed."""


@dataclass(frozen=True)
class NotDoneYet:
    """A set was told before the first station was done; `started` when its clock runs."""

    exercise: str
    started: bool


@dataclass(frozen=True)
class ChoiceLine:
    """A likely meaning: a set, at an exercise."""

    exercise: str
    line: SetLine


@dataclass(frozen=True)
class NoSuchNumber:
    """A correction of a number that no set of this workout holds; the last set is named instead."""

    said: Decimal
    exercise: str
    line: SetLine


@dataclass(frozen=True)
class WhichOne:
    """A short question with the likely answers."""

    choices: tuple[ChoiceLine, ...]


@dataclass(frozen=True)
class PartMissing:
    """A set came without its reps (or seconds); what was said is kept."""

    exercise: str
    said: SetLine
    ask: Literal["reps", "seconds"]


@dataclass(frozen=True)
class SetNotRead:
    """A report could not be read: asked once more, with an example."""

    exercise: str
    ask: Literal["reps", "seconds"]
    example: SetLine


@dataclass(frozen=True)
class LeftOpen:
    """Asked twice without an answer that could be read: kept as not noted."""

    exercise: str


@dataclass(frozen=True)
class TooManySets:
    """More sets came in one message than are missing."""

    exercise: str
    count: int


ReportMessage = (
    StillMissing
    | Noted
    | OtherSideAsked
    | AlreadyNoted
    | Corrected
    | EditNotRead
    | Undone
    | NothingToCorrect
    | NotDoneYet
    | NoSuchNumber
    | WhichOne
    | PartMissing
    | SetNotRead
    | LeftOpen
    | TooManySets
)
