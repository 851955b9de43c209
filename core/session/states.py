"""Where a conversation can be: one frozen value a state, with only the fields that exist in it.

Cues are what the clock will do next: absolute instants on one grid, so that a late wake-up never shifts the ones after it.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from enum import StrEnum
from typing import Literal

from core.circuit import Circuit, Side
from core.diary import Ending
from core.health import Feeling, Topic
from core.rack import RackItem
from core.reading.acts import Log
from core.tempo import Tempo
from core.units import Load


class CueKind(StrEnum):
    """What the clock does at a cue."""

    WARM_UP_OVER = "warm-up over"
    CARD = "card"  # show the card of the next station
    READY = "ready"  # ten seconds until the work starts
    GO = "go"  # the work starts
    HALF = "half"
    TEN = "ten"  # ten seconds left
    DOWN = "down"  # the work is over, or changes side
    ASK = "ask"  # ask for what has not been reported
    NUDGE = "nudge"  # nobody has answered for some time
    CLOSE = "close"  # nobody answers: end gently


@dataclass(frozen=True)
class Cue:
    """Something the clock does at an instant (UTC)."""

    kind: CueKind
    at: datetime


@dataclass(frozen=True)
class Place:
    """A station in a round, both from 1, and the side when the station has sides."""

    round: int
    station: int
    side: Side | None = None


@dataclass(frozen=True)
class Prescription:
    """What to do at a station: load per hand (None when no load applies), tempo (None for holds), reps expected."""

    exercise: str
    load: Load | None
    tempo: Tempo | None
    reps_low: int | None
    reps_high: int | None


@dataclass(frozen=True)
class Choice:
    """A likely meaning of a report; `replaces` is the record it would correct, None for a set not noted yet."""

    log: Log
    place: Place
    replaces: int | None = None


@dataclass(frozen=True)
class Question:
    """Something asked about a set: likely meanings offered, or a part still missing.

    `part` is what has been said so far. `times` counts the asking.
    """

    place: Place
    times: int
    choices: tuple[Choice, ...] = ()
    part: Log | None = None


class Asking(StrEnum):
    """A question about health or how it goes that is open; none of them stops a "go"."""

    OFFER = "offer"  # the health questions were offered
    HEALTH = "health"  # one of them was asked
    READINESS = "readiness"  # how are you today, and is what hurt fine now?
    ILL = "ill"  # any fever?
    PAIN = "pain"  # sharp or dull, new or known?
    RELIEF = "relief"  # more rest, lighter, or the end?
    EFFORT = "effort"  # how hard was the workout?


@dataclass(frozen=True)
class Workout:
    """A workout under way.

    Attributes:
        number: its number in the diary.
        circuit: as it was when the workout began.
        started_at: UTC.
        place: the station under work, or next when resting or setting up.
        exercises: the slug done at each station from now on, swaps included.
        prescriptions: what was last prescribed at each station, None before its card.
        open: places asked about and not yet reported, oldest first.
        work_s: seconds under work so far.
        unanswered: stations in a row that nobody reported.
        question: what was asked and not yet answered.
        skipped: places left out.
        planned: for adjustable dumbbells, the load of each station in this round; empty without a plan.
        felt: what the trainee said of the load at a station, by its number, until the next time there.
        ease: reps to leave beyond the station's own reserve today.
        left_out: stations (from 1) that are not done today.
        asking: an open question about health.
        relief_round: the round in which relief was offered last, 0 for none.
        whole_rounds: rounds of the circuit as the coach wrote it.
        feelings: what the trainee said of today.
        paused_s: seconds of the pauses that are over.
        paused_at: when the pause began that the clock is in (UTC), None when it is in none.
        left_open: places asked about often enough; what cannot be read asks about them no more.
        done_as: the slug that was done at a place whose station was swapped afterwards.
    """

    number: int
    circuit: Circuit
    started_at: datetime
    place: Place
    exercises: tuple[str, ...]
    prescriptions: tuple[Prescription | None, ...]
    open: tuple[Place, ...] = ()
    work_s: int = 0
    unanswered: int = 0
    question: Question | None = None
    skipped: tuple[Place, ...] = ()
    felt: tuple[tuple[int, Literal["heavy", "light"]], ...] = ()
    ease: int = 0
    left_out: tuple[int, ...] = ()
    asking: Asking | None = None
    relief_round: int = 0
    whole_rounds: int = 0
    feelings: tuple[Feeling, ...] = ()
    planned: tuple[Load | None, ...] = ()
    paused_s: int = 0
    paused_at: datetime | None = None
    left_open: tuple[Place, ...] = ()
    done_as: tuple[tuple[Place, str], ...] = ()


@dataclass(frozen=True, kw_only=True)
class Conversation:
    """What every state has: `forget_asked` when the last thing said to the trainee was whether to erase everything."""

    forget_asked: bool = False


@dataclass(frozen=True)
class New(Conversation):
    """Nobody has spoken yet."""

    kind: Literal["new"] = "new"


@dataclass(frozen=True)
class AskingCautions(Conversation):
    """The cautions were shown; a yes is awaited."""

    kind: Literal["asking_cautions"] = "asking_cautions"


@dataclass(frozen=True)
class AskingUnit(Conversation):
    """Kilograms or pounds?"""

    kind: Literal["asking_unit"] = "asking_unit"


@dataclass(frozen=True)
class AskingRack(Conversation):
    """Which weights does the trainee own?"""

    kind: Literal["asking_rack"] = "asking_rack"


@dataclass(frozen=True)
class AskingPairs(Conversation):
    """Loads were named without a count: pairs or singles?"""

    items: tuple[RackItem, ...]
    kind: Literal["asking_pairs"] = "asking_pairs"


@dataclass(frozen=True)
class AskingMore(Conversation):
    """Weights were named when others were known: are those still there? Asked `times` times."""

    items: tuple[RackItem, ...]
    times: int = 1
    kind: Literal["asking_more"] = "asking_more"


@dataclass(frozen=True)
class Idle(Conversation):
    """No workout runs. What is due then follows from the diary (`core.reminders`), not from the state.

    `asked` is an open question about the calendar, `asking` one about health (`topic`: which of the health talk). `last` is the
    workout that ended last, for reports and corrections that come after the end.
    """

    last: Workout | None = None
    asking: Asking | None = None
    topic: Topic | None = None
    asked: Literal["zone"] | None = None
    kind: Literal["idle"] = "idle"


@dataclass(frozen=True)
class WarmingUp(Conversation):
    """The warm-up clock runs."""

    workout: Workout
    cues: tuple[Cue, ...]
    kind: Literal["warming_up"] = "warming_up"


@dataclass(frozen=True)
class SettingUp(Conversation):
    """The card is shown and a "go" is awaited."""

    workout: Workout
    cues: tuple[Cue, ...]
    kind: Literal["setting_up"] = "setting_up"


@dataclass(frozen=True)
class Working(Conversation):
    """The work clock runs from `started_at` to `ends_at`; no end when the station counts reps."""

    workout: Workout
    started_at: datetime
    ends_at: datetime | None
    cues: tuple[Cue, ...]
    kind: Literal["working"] = "working"


@dataclass(frozen=True)
class Resting(Conversation):
    """The rest clock runs until `ends_at`; `carded` when the next station's card has been shown.

    `work_left_s` is set when the rest leads back into a station that a pause had cut.
    """

    workout: Workout
    ends_at: datetime
    cues: tuple[Cue, ...]
    carded: bool = False
    work_left_s: float | None = None
    kind: Literal["resting"] = "resting"


@dataclass(frozen=True)
class Paused(Conversation):
    """The clock is stopped; `left_s` is what was left of the clock that ran in `during`."""

    workout: Workout
    during: Literal["warming_up", "setting_up", "working", "resting"]
    left_s: float
    cues: tuple[Cue, ...]
    carded: bool = False
    kind: Literal["paused"] = "paused"


@dataclass(frozen=True)
class Closing(Conversation):
    """Every station is called, or enough is done; the last report is awaited before the summary."""

    workout: Workout
    cues: tuple[Cue, ...]
    ending: Ending = Ending.COMPLETE
    kind: Literal["closing"] = "closing"


State = (
    New
    | AskingCautions
    | AskingUnit
    | AskingRack
    | AskingPairs
    | AskingMore
    | Idle
    | WarmingUp
    | SettingUp
    | Working
    | Resting
    | Paused
    | Closing
)

Running = WarmingUp | SettingUp | Working | Resting | Paused | Closing


def wake_at(state: State) -> datetime | None:
    """When the clock must look at this conversation again."""
    match state:
        case WarmingUp(cues=cues) | SettingUp(cues=cues) | Working(cues=cues) | Resting(cues=cues):
            return cues[0].at if cues else None
        case Paused(cues=cues) | Closing(cues=cues):
            return cues[0].at if cues else None
        case _:
            return None
