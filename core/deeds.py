"""What a coach wants done for some of the trainees, and what is said of it: shown first, done after a yes, taken back."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from enum import StrEnum

from core.recurrence import Weekday
from core.units import Load


class DeedKind(StrEnum):
    """What is to be done."""

    SAY = "say"
    ANSWER = "answer"
    SWAP = "swap"
    SWAP_ENDED = "swap ended"
    HOLD = "hold"
    HOLD_ENDED = "hold ended"
    NOTE = "note"
    NOTE_ENDED = "note ended"
    PUT_UP = "put up"
    PAUSE = "pause"
    PAUSE_ENDED = "pause ended"
    REMOVE = "remove"


@dataclass(frozen=True)
class Deed:
    """Something to be done.

    Attributes:
        kind: what.
        exercise: which exercise it is about, None for all of them (a note: for the first card).
        other: the exercise that is done instead.
        text: the coach's words, or the name of a circuit.
        load: the most that may be held, None for no more than the last time.
        on: the day on which it begins (a circuit) or ends (a pause), None for at once and until told.
        about: the number of the question that is answered.
        everyone: said of all, not of some by name.
    """

    kind: DeedKind
    exercise: str | None = None
    other: str | None = None
    text: str = ""
    load: Load | None = None
    on: date | None = None
    about: int | None = None
    everyone: bool = False


@dataclass(frozen=True)
class Arrival:
    """When words arrive, in numbers of people: at once, after quiet hours or a workout, when they come or come back."""

    now: int
    quiet: int
    workout: int
    away: int


@dataclass(frozen=True)
class DeedAsked:
    """May it be done? Exercises in the deed by their names.

    Attributes:
        whom: for whom exactly.
        arrival: when the words arrive, None where there are none.
        not_on: those who have no such exercise in what is on for them.
        instead: those whose plan it ends.
        question: what is answered.
    """

    deed: Deed
    whom: tuple[str, ...]
    arrival: Arrival | None = None
    not_on: tuple[str, ...] = ()
    instead: tuple[str, ...] = ()
    question: str = ""


@dataclass(frozen=True)
class DeedDone:
    """It is done; `running` names those whose workout under way goes on as it was."""

    deed: Deed
    whom: tuple[str, ...]
    arrival: Arrival | None = None
    running: tuple[str, ...] = ()


@dataclass(frozen=True)
class DeedDropped:
    """It was not done, and nothing has changed."""

    deed: Deed


@dataclass(frozen=True)
class DeedTakenBack:
    """It is taken back; `of` counts the people it was for, `out` those of them who had the words by then."""

    deed: Deed
    of: int
    out: int = 0


@dataclass(frozen=True)
class AskDropped:
    """It was asked who is meant, and nobody is: nothing has changed."""


@dataclass(frozen=True)
class WhoMeant:
    """Who is meant by a name as typed? `sure` when it fits all of these; else it only looks like them."""

    said: str
    names: tuple[str, ...]
    sure: bool


@dataclass(frozen=True)
class NobodyCalled:
    """Nobody of that name is on the roster, and nobody's is like it."""

    said: str
    there_are: tuple[str, ...]


@dataclass(frozen=True)
class ForWhomAsked:
    """Nobody was named for something that is for some."""

    kind: DeedKind


@dataclass(frozen=True)
class MovementUnknown:
    """No exercise is meant for sure; these are like it."""

    said: str
    nearest: tuple[str, ...]


@dataclass(frozen=True)
class NoOtherMovement:
    """Nothing kinder stands in for an exercise, or it would be the same one."""

    exercise: str


@dataclass(frozen=True)
class NothingToEnd:
    """Nobody of these has such a thing."""

    kind: DeedKind
    whom: tuple[str, ...]


@dataclass(frozen=True)
class NoQuestionOpen:
    """Nothing was asked that is not answered, by nobody or by the one named."""

    name: str | None


@dataclass(frozen=True)
class WhichQuestion:
    """Several people have asked: whose question is answered?"""

    names: tuple[str, ...]


@dataclass(frozen=True)
class WordsTooLong:
    """More letters than `most` fit there."""

    most: int


@dataclass(frozen=True)
class NameTaken:
    """A circuit of this name is on the board and would change at once: one that begins on a day needs another name."""

    name: str
    on: date


@dataclass(frozen=True)
class InviteElsewhere:
    """Invites are made on the messaging network, not here."""


@dataclass(frozen=True)
class ClipElsewhere:
    """A film goes with the exercise's name under it."""


@dataclass(frozen=True)
class ReviewNoted:
    """When the week is told from now on: the day and the time, None for not at all."""

    day: Weekday | None
    at: str


@dataclass(frozen=True)
class QuestionPassed:
    """A trainee's question to the coach, as it was typed; `exercise`, `station`, `round` and `circuit` say where it was asked."""

    trainee: str
    text: str
    circuit: str | None = None
    exercise: str | None = None
    station: int | None = None
    round: int | None = None


DeedMessage = (
    DeedAsked
    | DeedDone
    | DeedDropped
    | DeedTakenBack
    | AskDropped
    | WhoMeant
    | NobodyCalled
    | ForWhomAsked
    | MovementUnknown
    | NoOtherMovement
    | NothingToEnd
    | NoQuestionOpen
    | WhichQuestion
    | WordsTooLong
    | NameTaken
    | InviteElsewhere
    | ClipElsewhere
    | ReviewNoted
    | QuestionPassed
)
