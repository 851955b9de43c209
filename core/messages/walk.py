"""The walk through a workout: cards, the calls of the clock, and what is asked for on the way."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from core.circuit import Side
from core.reasons import CardReason
from core.tempo import Tempo
from core.units import Load


@dataclass(frozen=True)
class PlateStretch:
    """One setup of the handles, left on from the station `first` to `last` (from 1); `a_side` are the plates on each side."""

    load: Load
    a_side: tuple[Load, ...]
    first: int
    last: int


@dataclass(frozen=True)
class PlatePlan:
    """Which plates to leave on over a round; `slow` are stations before which the change takes longer than the rest."""

    stretches: tuple[PlateStretch, ...]
    slow: tuple[int, ...]


@dataclass(frozen=True)
class Card:
    """A station's card.

    `load` None: no load applies. `starts_in_s` None: a "go" is awaited. `put_down` is what was in the hands before, when that
    changes. `slug` is the exercise's. `rounds` and `stations` count in all; `work_s` or `target_reps` is set.
    `notes` are words of the `coach`'s for this trainee.
    """

    round: int
    rounds: int
    station: int
    stations: int
    exercise: str
    hold: bool
    sides: bool
    load: Load | None
    loads_held: int
    why: CardReason | None
    tempo: Tempo | None
    work_s: int | None
    target_reps: int | None
    reps_low: int | None
    reps_high: int | None
    form: tuple[str, ...]
    set_up: str
    put_down: PutDown | None
    starts_in_s: int | None
    slug: str = ""
    notes: tuple[str, ...] = ()
    coach: str = ""


@dataclass(frozen=True)
class PutDown:
    """What was in the hands before: `hands` of them."""

    load: Load
    hands: int


@dataclass(frozen=True)
class Go:
    """The work starts; `left_s` is what the clock has, None when reps are counted."""

    exercise: str
    side: Side | None
    left_s: int | None
    reps: int | None


@dataclass(frozen=True)
class HalfWay:
    """Half of the work is done."""

    left_s: int


@dataclass(frozen=True)
class SecondsLeft:
    """The last seconds of the work."""

    left_s: int


@dataclass(frozen=True)
class SwitchSides:
    """The other side, at once."""

    side: Side
    left_s: int | None
    reps: int | None


@dataclass(frozen=True)
class Down:
    """The work is over.

    `ask` is what is asked for, None when it was reported already; `likely` are reps that are likely, lowest first, and `again` says
    whether the exercise was done before. `upcoming` is the next station's exercise, None after the
    last. `round_over` is the number of the round just finished, None within a round.
    """

    ask: Literal["reps", "seconds"] | None
    sides: bool
    rest_s: int | None
    upcoming: str | None
    round_over: int | None
    rounds: int
    likely: tuple[int, ...] = ()
    again: bool = False


@dataclass(frozen=True)
class GetReady:
    """The rest is nearly over."""

    exercise: str
    left_s: int


@dataclass(frozen=True)
class PausedNow:
    """The clock is stopped."""

    during: Literal["warming_up", "setting_up", "working", "resting"]
    left_s: int
    exercise: str


@dataclass(frozen=True)
class BackNow:
    """The clock goes on in `lead_s` seconds with what was left."""

    exercise: str
    lead_s: int
    left_s: int | None


@dataclass(frozen=True)
class TimeTold:
    """How long left? Seconds on the running clock, and minutes in all."""

    during: Literal["warming_up", "setting_up", "working", "resting", "paused", "closing"]
    exercise: str
    left_s: int | None
    minutes_all: int


@dataclass(frozen=True)
class FormShown:
    """How it is done."""

    exercise: str
    set_up: str
    form: tuple[str, ...]
    fault: str
    cure: str
    careful: str


@dataclass(frozen=True)
class FormUnknown:
    """An exercise that is not in the catalogue; `nearest` may be meant."""

    said: str
    nearest: tuple[str, ...]


@dataclass(frozen=True)
class Skipped:
    """A station was left out."""

    exercise: str


@dataclass(frozen=True)
class Swapped:
    """Another exercise takes this station."""

    before: str
    after: str


@dataclass(frozen=True)
class NoSwap:
    """There is nothing else that fits."""

    exercise: str


@dataclass(frozen=True)
class LoadChanged:
    """A load was eased or raised at the trainee's word, now or for the next round."""

    exercise: str
    load: Load
    when: Literal["now", "next"]


@dataclass(frozen=True)
class NoOtherLoad:
    """Nothing lighter (or heavier) is on the rack: what to do instead. `held` when the coach lets it go no higher."""

    exercise: str
    wanted: Literal["lighter", "heavier"]
    held: bool = False


@dataclass(frozen=True)
class FeltRight:
    """The load is right."""


@dataclass(frozen=True)
class WhereWeWere:
    """Where the workout stands; `left_s` is what the running clock has, None when it is stopped or there is none."""

    round: int
    rounds: int
    station: int
    stations: int
    exercise: str
    during: Literal["warming_up", "setting_up", "working", "resting", "paused", "closing"]
    left_s: int | None
    missing: str | None


@dataclass(frozen=True)
class StillThere:
    """Nobody has answered for some stations; the clock is stopped."""

    exercise: str


@dataclass(frozen=True)
class AlreadyGoing:
    """Go or back was said while the clock runs."""

    left_s: int | None


WalkMessage = (
    PlatePlan
    | Card
    | Go
    | HalfWay
    | SecondsLeft
    | SwitchSides
    | Down
    | GetReady
    | PausedNow
    | BackNow
    | TimeTold
    | FormShown
    | FormUnknown
    | Skipped
    | Swapped
    | NoSwap
    | LoadChanged
    | NoOtherLoad
    | FeltRight
    | WhereWeWere
    | StillThere
    | AlreadyGoing
)
