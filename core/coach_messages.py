"""Everything the assistant says to a coach, as values; the words are in `bot.wording.coach`."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from typing import Literal

from core.circuit import Span
from core.deeds import DeedMessage
from core.exercise import Measure
from core.health import Outcome
from core.pictures import Board
from core.recurrence import Weekday
from core.units import Load


@dataclass(frozen=True)
class CoachGreeting:
    """The chat was opened: who the coach is, how many people train with them, how many circuits there are."""

    coach: str
    trainees: int
    circuits: int


HelpTopic = Literal["all", "people", "words", "changes", "circuits"]


@dataclass(frozen=True)
class BoardHelp:
    """What a coach can say, in all or on a topic; `day` and `at` are when the week is told, day None for never."""

    topic: HelpTopic
    day: Weekday | None
    at: str


@dataclass(frozen=True)
class CoachNotUnderstood:
    """Nothing in the message could be read."""


@dataclass(frozen=True)
class Remark:
    """A fault or a piece of advice: where it is, what is so there, what to do."""

    place: str
    says: str
    remedy: str


@dataclass(frozen=True)
class ToMend:
    """All faults of what was typed, at once; nothing was changed."""

    faults: tuple[Remark, ...]


@dataclass(frozen=True)
class TypedLine:
    """A station as it was understood; `reps` None for a hold or a carry, `work_s` None where reps are counted."""

    exercise: str
    sides: bool
    work_s: int | None
    reps: Span | None
    measure: Measure
    load: Load | None
    loads_held: int


@dataclass(frozen=True)
class CircuitShown:
    """A circuit with its times, in seconds; `picture` is its board."""

    name: str
    rounds: int
    stations: tuple[TypedLine, ...]
    work_s: int
    rest_s: Span
    round_s: Span
    warm_up_s: int
    total_s: Span
    picture: Board | None = None


@dataclass(frozen=True)
class CircuitAdvice:
    """What a good coach might still change, never a refusal."""

    remarks: tuple[Remark, ...]


@dataclass(frozen=True)
class GroupLine:
    """A major muscle group over a week: sets of its most trained muscle, days of main work."""

    group: str
    sets: Decimal
    days: int


@dataclass(frozen=True)
class WeekShown:
    """What a week does for the body, against published advice; all of it is an estimate.

    Attributes:
        circuits: what is done in it.
        days: workouts a week.
        assumed: true when the days are not from a plan.
        groups: every major muscle group.
        few_sets: groups below the `sets_advised` a week.
        few_days: groups on fewer days than `days_advised`.
        tension_s: seconds under tension in the week.
        kcal: kilocalories of one workout, from the lightest to the hardest, for a body of `body_mass_kg`.
    """

    circuits: tuple[str, ...]
    days: int
    assumed: bool
    groups: tuple[GroupLine, ...]
    few_sets: tuple[str, ...]
    few_days: tuple[str, ...]
    sets_advised: int
    days_advised: int
    tension_s: Span
    kcal: Span
    body_mass_kg: int


@dataclass(frozen=True)
class Turning:
    """A training day and the circuit whose turn it is."""

    day: Weekday
    circuit: str


@dataclass(frozen=True)
class PlanShown:
    """A plan: circuits that take turns, the days (none: any day), weeks, and its first week or two day by day."""

    circuits: tuple[str, ...]
    days: tuple[Weekday, ...]
    weeks: int
    easier_weeks: tuple[int, ...]
    turns: tuple[Turning, ...]


@dataclass(frozen=True)
class InForceAsked:
    """May it come into force?

    `replaces` when a circuit of that name is there; `whom` are the trainees it is for, empty for whoever comes; `instead` names
    those who have a plan that it would end. `from_on` is the day from which it is on, None for the next workout.
    """

    name: str
    plan: bool
    replaces: bool
    whom: tuple[str, ...]
    instead: tuple[str, ...]
    from_on: date | None = None


@dataclass(frozen=True)
class InForce:
    """It is in force, from each trainee's next workout or from a day on; `running` names those who are in the middle of one."""

    name: str
    plan: bool
    whom: tuple[str, ...]
    running: tuple[str, ...]
    from_on: date | None = None


@dataclass(frozen=True)
class PutAside:
    """It was not put in force."""

    name: str


@dataclass(frozen=True)
class TakenBack:
    """What was put in force last is taken back; all is as before."""

    name: str


@dataclass(frozen=True)
class NothingToTakeBack:
    """Nothing was put in force that could be taken back."""


@dataclass(frozen=True)
class NothingAsked:
    """A yes or a no, and nothing that it could be about."""


@dataclass(frozen=True)
class ListedCircuit:
    """A circuit in a list. Minutes in all."""

    name: str
    stations: int
    rounds: int
    minutes_low: int
    minutes_high: int


@dataclass(frozen=True)
class CircuitsListed:
    """All circuits there are."""

    circuits: tuple[ListedCircuit, ...]


@dataclass(frozen=True)
class TraineePlan:
    """What is on for a trainee: one circuit, or several with days and the week they are in; `next_on` is the day of the next.

    `comes` is the circuit that takes the place of all that, and the day.
    """

    trainee: str
    circuits: tuple[str, ...]
    days: tuple[Weekday, ...]
    week: int | None
    weeks: int | None
    next_circuit: str
    next_on: date | None
    comes: tuple[str, date] | None = None


@dataclass(frozen=True)
class PlansShown:
    """What is on for every trainee."""

    trainees: tuple[TraineePlan, ...]


@dataclass(frozen=True)
class CircuitUnknown:
    """No circuit of that name."""

    said: str
    there_are: tuple[str, ...]


@dataclass(frozen=True)
class ClearanceAsked:
    """May they train? `outcome` is what the health questions came to; `not_meant` are others whose name is like theirs."""

    trainee: str
    outcome: Outcome
    not_meant: tuple[str, ...]


@dataclass(frozen=True)
class ClearanceKept:
    """They may train."""

    trainee: str


@dataclass(frozen=True)
class ClearanceLeft:
    """They go on waiting: the answer was no, or what was asked about is no longer so."""

    trainee: str


@dataclass(frozen=True)
class ClearanceTakenBack:
    """That they may train is taken back; they wait again."""

    trainee: str


@dataclass(frozen=True)
class ClearanceWho:
    """Who is meant, of those with such a name?"""

    names: tuple[str, ...]


@dataclass(frozen=True)
class ClearanceUnknown:
    """Nobody of that name trains here; `waiting` names those who wait for a clearance."""

    said: str
    waiting: tuple[str, ...]


@dataclass(frozen=True)
class NotWaiting:
    """No health question holds them back; `waiting` names those who wait for a clearance."""

    trainee: str
    waiting: tuple[str, ...]


@dataclass(frozen=True)
class SignStands:
    """They told of a warning sign: nobody but themselves can say that they are cleared, and not on the same day."""

    trainee: str


CoachMessage = (
    DeedMessage
    | CoachGreeting
    | BoardHelp
    | CoachNotUnderstood
    | ToMend
    | CircuitShown
    | CircuitAdvice
    | WeekShown
    | PlanShown
    | InForceAsked
    | InForce
    | PutAside
    | TakenBack
    | NothingToTakeBack
    | NothingAsked
    | CircuitsListed
    | PlansShown
    | CircuitUnknown
    | ClearanceAsked
    | ClearanceKept
    | ClearanceLeft
    | ClearanceTakenBack
    | ClearanceWho
    | ClearanceUnknown
    | NotWaiting
    | SignStands
)
