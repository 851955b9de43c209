"""What a message can mean: one frozen dataclass for each act, a field for each thing said.

A field is None (or empty, or False) when it was not said; nothing is ever guessed. Loads are per hand.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import date
from decimal import Decimal
from enum import StrEnum
from typing import Literal

from core.circuit import Side as Side  # noqa: PLC0414 - the acts speak of sides and weekdays
from core.recurrence import Frequency
from core.trainee import Weekday as Weekday  # noqa: PLC0414
from core.units import Unit


class Awaiting(StrEnum):
    """What the conversation waits for, as far as it changes how a reply is read.

    The first three are part of the outside contract. With the others, short answers become `Answer`.
    """

    REPS = "reps"
    GO = "go"
    NONE = "none"
    YES = "yes"  # a yes or a no
    UNIT = "unit"  # kg or lb
    RACK = "rack"  # the loads the trainee owns
    CHOICE = "choice"  # one of the numbered choices just offered


@dataclass(frozen=True)
class LastSet:
    """The set logged last, which an amendment is about."""

    reps: int | None = None
    load: Decimal | None = None
    unit: Unit | None = None
    side: Side | None = None
    seconds: int | None = None


@dataclass(frozen=True)
class Context:
    """What a careful reader knows before reading: all optional.

    `load` is the load suggested for the station just done, per hand, in `unit`; `target` the suggested reps; `sides` true when
    the station is done one side at a time; `today` an ISO date and `zone` an IANA name, for times and dates; `hold` true when the
    station is a hold or a carry, measured in seconds. `choices` counts what was offered when awaiting a choice.
    """

    unit: Unit | None = None
    load: Decimal | None = None
    target: int | None = None
    sides: bool = False
    awaiting: Awaiting = Awaiting.NONE
    last: LastSet | None = None
    today: str | None = None
    zone: str | None = None
    hold: bool = False
    choices: int = 0


@dataclass(frozen=True)
class Log:
    """A set done: reps, load per hand, reps in reserve, effort on the 0-10 scale, seconds."""

    reps: int | None = None
    load: Decimal | None = None
    unit: Unit | None = None
    side: Side | None = None
    reserve: Decimal | None = None
    rpe: Decimal | None = None
    seconds: int | None = None
    same: bool = False


@dataclass(frozen=True)
class Amend:
    """A correction of the set logged last: only the fields that change.

    `rejected` is the number that was said to be wrong ("12 not 11"); it tells which set is meant. It is no part of the outside
    contract.
    """

    reps: int | None = None
    load: Decimal | None = None
    unit: Unit | None = None
    side: Side | None = None
    reserve: Decimal | None = None
    rpe: Decimal | None = None
    seconds: int | None = None
    rejected: Decimal | None = field(default=None, compare=False)


@dataclass(frozen=True)
class Undo:
    """Take the set logged last away."""


@dataclass(frozen=True)
class Start:
    """Begin: the workout, or the station that waits."""


@dataclass(frozen=True)
class Pause:
    """Stop the clock for a while."""


@dataclass(frozen=True)
class Resume:
    """Go on after a pause."""


@dataclass(frozen=True)
class Finish:
    """End the workout for today."""


@dataclass(frozen=True)
class Today:
    """What do I do today?"""


@dataclass(frozen=True)
class Help:
    """What can I say?"""


@dataclass(frozen=True)
class Form:
    """How is it done? `exercise` as written, None for the one at hand."""

    exercise: str | None = None


@dataclass(frozen=True)
class Skip:
    """Leave out this station, or the day."""

    what: Literal["station", "day"] = "station"


@dataclass(frozen=True)
class Swap:
    """Something else instead; `exercise` as written when it is named."""

    exercise: str | None = None


@dataclass(frozen=True)
class Snooze:
    """Later: in `minutes`, or `at` a time of day ("HH:MM")."""

    minutes: int | None = None
    at: str | None = None


@dataclass(frozen=True)
class Remind:
    """Reminders on `days` (in week order) `at` a time ("HH:MM"); `off` ends them, on those days if any are named."""

    days: tuple[Weekday, ...] = ()
    at: str | None = None
    off: bool = False


@dataclass(frozen=True)
class Pain:
    """Pain, present and meant; `urgent` for the signs that stop everything at once."""

    place: str | None = None
    side: Side | None = None
    urgent: bool = False


@dataclass(frozen=True)
class Feel:
    """How the load felt."""

    value: Literal["heavy", "light", "right"]


@dataclass(frozen=True)
class Item:
    """A thing to lift that the trainee owns; `count` only when it was said."""

    kind: str | None = None
    load: Decimal | None = None
    unit: Unit | None = None
    count: int | None = None


@dataclass(frozen=True)
class Have:
    """What the trainee owns; no items when they own nothing."""

    items: tuple[Item, ...] = ()


@dataclass(frozen=True)
class Progress:
    """How am I doing? `exercise` as written."""

    exercise: str | None = None


@dataclass(frozen=True)
class Units:
    """Speak in this unit from now on."""

    unit: Unit


@dataclass(frozen=True)
class TimeLeft:
    """How long left? Not part of the outside contract: `read` prints it as unclear."""


@dataclass(frozen=True)
class Again:
    """Say that again, or do this station again. Not part of the outside contract: `read` prints it as unclear."""


@dataclass(frozen=True)
class Answer:
    """A short answer to what was asked: yes, no, or the number of a choice (from 1).

    Read only while the conversation awaits it; never part of the outside contract.
    """

    yes: bool | None = None
    choice: int | None = None


@dataclass(frozen=True)
class Unclear:
    """Something to ask about; `choices` holds the likely meanings, most likely first."""

    choices: tuple[tuple[Log | Amend, ...], ...] = ()


@dataclass(frozen=True)
class Days:
    """Days to be reminded on: `days` of the week, or every so many days; `every` above 1 with weeks is every so many weeks.

    `at` ("HH:MM") is None when no time was said.
    """

    of: Frequency
    every: int = 1
    days: tuple[Weekday, ...] = ()
    at: str | None = None


@dataclass(frozen=True)
class Repeat:
    """Reminders by rules, from `first` (None: now) to `last` (None: no end). Read between workouts; `read` prints it as unclear."""

    rules: tuple[Days, ...]
    first: date | None = None
    last: date | None = None


@dataclass(frozen=True)
class HalfOfDay:
    """A time of day that may be morning or evening: the same message with either. `read` prints it as unclear."""

    morning: str
    evening: str


@dataclass(frozen=True)
class Away:
    """No training from `first` to `last`, both days included. `read` prints it as unclear."""

    first: date
    last: date


@dataclass(frozen=True)
class Move:
    """A training day to another day. `read` prints it as unclear."""

    day: date
    to: date


@dataclass(frozen=True)
class InZone:
    """Another time zone: the IANA name, None when none was named or `said` is not known. `read` prints it as unclear."""

    zone: str | None = None
    said: str | None = None


@dataclass(frozen=True)
class MyReminders:
    """When do you remind me? `read` prints it as unclear."""


Calendar = Repeat | HalfOfDay | Away | Move | InZone | MyReminders

Act = (
    Log
    | Amend
    | Undo
    | Start
    | Pause
    | Resume
    | Finish
    | Today
    | Help
    | Form
    | Skip
    | Swap
    | Snooze
    | Remind
    | Pain
    | Feel
    | Have
    | Progress
    | Units
    | TimeLeft
    | Again
    | Answer
    | Unclear
    | Calendar
)
