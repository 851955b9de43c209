"""The diary: what was done, kept for good.

Set records are only ever added. A correction is a new record that replaces an old one; an undone record is marked by an entry of
its own. Everything a step decides to keep comes out as one of the `Entry` values.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, datetime
from decimal import Decimal
from enum import StrEnum

from core.circuit import Circuit, Side
from core.health import Health, Quality, SafetyNote
from core.rack import Rack
from core.recurrence import Recurrence
from core.units import Load, Unit


@dataclass(frozen=True)
class SetRecord:
    """What was done at one station in one round (and side).

    Attributes:
        number: its place in this trainee's diary, from 1, never used twice.
        workout: the number of the workout it belongs to.
        at: when it was reported, UTC.
        circuit: the circuit's name. `round` and `station` count from 1.
        exercise: the slug. `side` is None unless sides were reported apart.
        reps, load, reserve, rpe, seconds: None when not said; load is per hand, 0 is bodyweight.
        work_s, rep_s: what was asked: the station's seconds and the tempo's seconds a rep; None where there is none.
        replaces: the number of the record that this one corrects.
        voided: true when undone or replaced.
    """

    number: int
    workout: int
    at: datetime
    circuit: str
    round: int
    station: int
    exercise: str
    side: Side | None = None
    reps: int | None = None
    load: Load | None = None
    reserve: Decimal | None = None
    rpe: Decimal | None = None
    seconds: int | None = None
    work_s: int | None = None
    rep_s: float | None = None
    replaces: int | None = None
    voided: bool = False


class Ending(StrEnum):
    """How a workout ended."""

    COMPLETE = "complete"  # every station called
    EARLY = "early"  # the trainee said so
    SILENT = "silent"  # nobody answered for a long time
    PAIN = "pain"  # stopped for safety


@dataclass(frozen=True)
class WorkoutRecord:
    """One workout; `ended_at` and `ending` are None while it runs. `work_s` is seconds under work.

    `paused_s` is seconds with the clock stopped, `effort` how hard the whole of it was, 0 to 10, None when not said.
    """

    number: int
    circuit: str
    started_at: datetime
    ended_at: datetime | None = None
    ending: Ending | None = None
    work_s: int = 0
    effort: Decimal | None = None
    paused_s: int = 0


@dataclass(frozen=True)
class PainRecord:
    """Pain, as reported: where, on which side, whether it was a sign to stop everything, and at which exercise.

    `quality` and `known` (not new) are None until they are said; `eased_at` is when the trainee said that it is gone.
    """

    at: datetime
    place: str | None
    side: Side | None
    urgent: bool
    exercise: str | None
    quality: Quality | None = None
    known: bool | None = None
    eased_at: datetime | None = None


class UnaskedKind(StrEnum):
    """What the assistant says without being spoken to, between workouts."""

    REMINDER = "reminder"  # on a training day, at its time
    SNOOZE = "snooze"  # a reminder that was put off by the trainee
    FOLLOW_UP = "follow up"  # the day after a training day that went by
    COME_BACK = "come back"  # after a week or two of silence


class Reason(StrEnum):
    """Why something that was due was not said."""

    WORKOUT = "a workout runs"
    TRAINED = "trained that day"
    LATE = "too late"
    QUIET = "quiet hours"
    ONE_A_DAY = "one a day"
    UNWELL = "a warning sign"


@dataclass(frozen=True)
class Unasked:
    """Something that fell due and was seen to: said, or dropped for a reason.

    Attributes:
        kind: what it was.
        day: the day it was for, on the trainee's calendar.
        due_at: when it was to be said, UTC.
        at: when it was seen to, UTC.
        dropped: why it was not said, None when it was.
    """

    kind: UnaskedKind
    day: date
    due_at: datetime
    at: datetime
    dropped: Reason | None = None


class WordKind(StrEnum):
    """Why a coach's words come."""

    MESSAGE = "message"  # to one, some or all
    ANSWER = "answer"  # to a question of the trainee's
    CHANGE = "change"  # the coach has changed something for them


@dataclass(frozen=True)
class CoachWord:
    """Words of the coach's on their way to a trainee, said outside quiet hours and never in the middle of a workout.

    Attributes:
        number: its place among this trainee's, from 1.
        at: when the coach sent it off (UTC).
        kind: why it comes.
        text: as the coach typed it.
        about: the number of the question that it answers, None for the others.
        told_at: when it was said (UTC), None while it waits.
        taken_back_at: when the coach took it back before it was said (UTC).
    """

    number: int
    at: datetime
    kind: WordKind
    text: str
    about: int | None = None
    told_at: datetime | None = None
    taken_back_at: datetime | None = None


@dataclass(frozen=True)
class Question:
    """Something that a trainee asked the coach.

    Attributes:
        number: its place among this trainee's, from 1.
        at: when it was asked (UTC).
        text: as it was typed.
        circuit, round, station, exercise: where in a workout it was asked, `exercise` a slug; all None outside of one.
        answered_at: when the coach answered (UTC), None while it is open.
    """

    number: int
    at: datetime
    text: str
    circuit: str | None = None
    round: int | None = None
    station: int | None = None
    exercise: str | None = None
    answered_at: datetime | None = None


@dataclass(frozen=True)
class History:
    """A trainee's diary as read before a decision, oldest first; voided records included."""

    sets: tuple[SetRecord, ...] = ()
    workouts: tuple[WorkoutRecord, ...] = ()
    pains: tuple[PainRecord, ...] = ()
    unasked: tuple[Unasked, ...] = ()
    notes: tuple[SafetyNote, ...] = ()
    words: tuple[CoachWord, ...] = ()
    questions: tuple[Question, ...] = ()

    def standing(self) -> tuple[SetRecord, ...]:
        """The records that still hold: neither undone nor replaced."""
        return tuple(record for record in self.sets if not record.voided)


@dataclass(frozen=True)
class SetNoted:
    """A new record; when it replaces another, that one no longer holds."""

    record: SetRecord


@dataclass(frozen=True)
class SetUndone:
    """The record with this number no longer holds."""

    number: int
    at: datetime


@dataclass(frozen=True)
class WorkoutOpened:
    """A workout began."""

    number: int
    circuit: Circuit
    at: datetime


@dataclass(frozen=True)
class WorkoutClosed:
    """A workout ended; seconds under work, and of pauses."""

    number: int
    at: datetime
    ending: Ending
    work_s: int
    paused_s: int = 0


@dataclass(frozen=True)
class PainNoted:
    """Pain was reported."""

    record: PainRecord


@dataclass(frozen=True)
class CautionsAccepted:
    """The trainee said yes to the cautions."""

    at: datetime


@dataclass(frozen=True)
class UnitChosen:
    """Loads are spoken of in this unit from now on."""

    unit: Unit


@dataclass(frozen=True)
class RackSaid:
    """What the trainee owns, replacing what was known."""

    rack: Rack


@dataclass(frozen=True)
class Heard:
    """The trainee wrote, or opened the chat, at an instant (UTC)."""

    at: datetime


@dataclass(frozen=True)
class ReminderSet:
    """When to remind, from an instant (UTC) on; None ends the reminders."""

    reminders: Recurrence | None
    since: datetime


@dataclass(frozen=True)
class PainDescribed:
    """How the pain reported at this instant feels, and whether it is known."""

    at: datetime
    quality: Quality | None
    known: bool | None


@dataclass(frozen=True)
class PainEased:
    """Pain at this place, whatever the side, is gone; at no named place when None."""

    place: str | None
    at: datetime


@dataclass(frozen=True)
class HealthSaid:
    """What the trainee has answered of the health talk so far, replacing what was known."""

    health: Health


@dataclass(frozen=True)
class EffortSaid:
    """How hard a workout was as a whole, 0 to 10."""

    workout: int
    effort: Decimal


@dataclass(frozen=True)
class SafetyNoted:
    """A fact about safety, kept for good."""

    note: SafetyNote


@dataclass(frozen=True)
class SnoozeSet:
    """A reminder comes again at an instant (UTC); None: no more."""

    until: datetime | None


@dataclass(frozen=True)
class ZoneChosen:
    """The trainee's clock is that of this IANA zone from now on."""

    zone: str


@dataclass(frozen=True)
class UnaskedNoted:
    """Something that fell due was said, or dropped for a reason. One that was put off is put off no more."""

    record: Unasked


@dataclass(frozen=True)
class WordSaid:
    """The coach's word of this number was said at an instant (UTC)."""

    number: int
    at: datetime


@dataclass(frozen=True)
class QuestionAsked:
    """The trainee asked the coach something; it is passed on."""

    question: Question


@dataclass(frozen=True)
class Forgotten:
    """The trainee had everything about them erased. Nothing else is kept of a step that keeps this."""

    at: datetime


Entry = (
    SetNoted
    | SetUndone
    | WorkoutOpened
    | WorkoutClosed
    | PainNoted
    | PainDescribed
    | PainEased
    | CautionsAccepted
    | UnitChosen
    | RackSaid
    | HealthSaid
    | EffortSaid
    | SafetyNoted
    | Heard
    | ReminderSet
    | SnoozeSet
    | ZoneChosen
    | UnaskedNoted
    | WordSaid
    | QuestionAsked
    | Forgotten
)
