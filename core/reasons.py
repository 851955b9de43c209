"""Why a load was named, as numbers. The sentences are in `bot.wording.reasons`, one for each class.

Loads are per hand, in the unit of the question.
"""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from typing import Literal

from core.units import Unit


@dataclass(frozen=True)
class NothingToHold:
    """The rack is empty."""


@dataclass(frozen=True)
class BodyOnly:
    """No load in the rack but the body's own; `reps` and `left` of the last set, when there was one."""

    reps: int | None = None
    left: float | None = None


@dataclass(frozen=True)
class StartLight:
    """The first set of an exercise that nothing is known about; `known` is False when its name is new to us."""

    load: Decimal
    unit: Unit
    known: bool


@dataclass(frozen=True)
class StartFromOthers:
    """The first set of an exercise, judged from `others` exercises done before."""

    load: Decimal
    unit: Unit
    others: int


@dataclass(frozen=True)
class LastSet:
    """The last set of this exercise: what was done, and how much was left, when it was said.

    Attributes:
        expected_reps: whole reps that its time allowed at its tempo.
        times: sessions running that ended above the target.
        today: it was in this workout.
        rep_s: seconds a rep it was done at.
    """

    load: Decimal
    unit: Unit
    reps: int
    expected_reps: int
    left: float | None
    times: int
    today: bool
    rep_s: float

    @property
    def short(self) -> bool:
        """The time was not filled."""
        return self.reps < self.expected_reps


@dataclass(frozen=True)
class StepUp:
    """More load, after `last`."""

    last: LastSet
    load: Decimal


@dataclass(frozen=True)
class StepDown:
    """Less load, after `last`."""

    last: LastSet
    load: Decimal


@dataclass(frozen=True)
class Stay:
    """The same load, after `last`; `next_load` is the next heavier one in the rack, if there is one."""

    last: LastSet
    next_load: Decimal | None


@dataclass(frozen=True)
class OtherTempo:
    """Load `load` with another tempo, because the step in the rack is too wide; `rep_s` is slower or faster."""

    last: LastSet | None
    load: Decimal
    unit: Unit
    usual_rep_s: float
    rep_s: float


@dataclass(frozen=True)
class HeaviestIsLight:
    """The heaviest load in the rack leaves too much in reserve: `spare` reps are expected to be left."""

    load: Decimal
    unit: Unit
    spare: int


@dataclass(frozen=True)
class LightestIsHeavy:
    """The lightest load in the rack is likely too heavy for the whole time: about `reps` are expected."""

    load: Decimal
    unit: Unit
    reps: int


@dataclass(frozen=True)
class AfterBreak:
    """Lighter after `days` without training."""

    load: Decimal
    unit: Unit
    days: int


@dataclass(frozen=True)
class Tired:
    """Less in a later round, because earlier rounds cost; `round` is the one to come."""

    last: LastSet
    load: Decimal
    round: int


@dataclass(frozen=True)
class TodaysForm:
    """Today's other stations went `percent` better than usual, or worse when negative."""

    load: Decimal
    unit: Unit
    percent: int


@dataclass(frozen=True)
class CoachSays:
    """The coach put a load on the station and nothing was done there yet."""


@dataclass(frozen=True)
class CoachHolds:
    """The coach lets the load go no higher."""


@dataclass(frozen=True)
class CarryStart:
    """A first load to carry: from the middle of the rack."""


@dataclass(frozen=True)
class AsLastTime:
    """As carried the last time."""


@dataclass(frozen=True)
class HeldBack:
    """Held lighter after pain."""

    place: str | None


@dataclass(frozen=True)
class EasierWeek:
    """Lighter than before, because this week of the plan is an easier one."""


@dataclass(frozen=True)
class AsSaid:
    """The trainee said it felt heavy or light."""

    felt: Literal["heavy", "light"]


@dataclass(frozen=True)
class GoingLight:
    """Lighter today: stop with at least `left` reps left."""

    left: int


@dataclass(frozen=True)
class TempoFirst:
    """The tempo was not kept: the load does not go up until it is."""


@dataclass(frozen=True)
class EmptyHands:
    """No rack, or nothing on it that the hands can hold for this."""


Reason = (
    NothingToHold
    | BodyOnly
    | StartLight
    | StartFromOthers
    | StepUp
    | StepDown
    | Stay
    | OtherTempo
    | HeaviestIsLight
    | LightestIsHeavy
    | AfterBreak
    | Tired
    | TodaysForm
)

CardReason = (
    Reason
    | CoachSays
    | CoachHolds
    | CarryStart
    | AsLastTime
    | HeldBack
    | GoingLight
    | EasierWeek
    | TempoFirst
    | AsSaid
    | EmptyHands
)
