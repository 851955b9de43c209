"""What trainees are told of what is theirs: their records, who sees them, having them erased, questions to the coach."""

from __future__ import annotations

from dataclasses import dataclass

from core.rack import RackItem
from core.records_file import RecordsFile


@dataclass(frozen=True)
class RecordsHere:
    """The trainee's records as a file."""

    document: RecordsFile


@dataclass(frozen=True)
class SeenBy:
    """Who sees what: `shared` when the trainee agreed that the coach sees places and health answers."""

    coach: str
    shared: bool


@dataclass(frozen=True)
class RackShown:
    """The equipment that is noted."""

    items: tuple[RackItem, ...]


@dataclass(frozen=True)
class ForgetAsked:
    """Before everything is erased: what goes, and that it stays gone."""


@dataclass(frozen=True)
class ForgetNot:
    """Nothing was erased."""


@dataclass(frozen=True)
class ForgottenNow:
    """Everything is erased: the last word."""


@dataclass(frozen=True)
class ForgetByHost:
    """A coach is not erased by a word: whoever runs the program removes them."""


@dataclass(frozen=True)
class QuestionWanted:
    """A question to the coach was announced, and not asked."""

    coach: str


@dataclass(frozen=True)
class QuestionPassedOn:
    """A question goes to the coach."""

    coach: str


@dataclass(frozen=True)
class CoachEnded:
    """The coach has ended this with the trainee; what is theirs is still theirs."""

    coach: str


@dataclass(frozen=True)
class SomebodyForgotten:
    """To a coach: somebody had everything erased; how many so far."""

    total: int


OwnMessage = (
    RecordsHere
    | SeenBy
    | RackShown
    | ForgetAsked
    | ForgetNot
    | ForgottenNow
    | ForgetByHost
    | QuestionWanted
    | QuestionPassedOn
    | CoachEnded
    | SomebodyForgotten
)
