"""Everything the assistant can say, as values: one frozen dataclass a message, numbers in fields with their units.

The words for them are in `bot.wording`, one function a message. Exercises are named as a card names them, not by slug.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from typing import Literal

from core.changed import Changed
from core.circuit import Side
from core.coach_messages import CoachMessage
from core.diary import Ending
from core.health import Bar, Branch, Check, Feeling, LightWhy, Move, NoteKind, Outcome, TooMuch, Topic
from core.own_messages import OwnMessage
from core.pictures import Board, ProgressPicture
from core.rack import RackItem
from core.reasons import CardReason
from core.recurrence import Recurrence, Weekday
from core.review_messages import ReviewMessage
from core.tempo import Tempo
from core.units import Load, Unit


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
class StationLine:
    """A station in one line of an overview."""

    exercise: str
    load: Load | None
    loads_held: int
    sides: bool


# First talk


@dataclass(frozen=True)
class Greeting:
    """The first message to a new trainee."""

    coach: str


@dataclass(frozen=True)
class HowItWorks:
    """The second: what to text."""

    unit: Unit


@dataclass(frozen=True)
class Cautions:
    """The cautions, and the question for a yes."""


@dataclass(frozen=True)
class CautionsNeeded:
    """No yes to the cautions: nothing starts."""


@dataclass(frozen=True)
class UnitAsked:
    """Kilograms or pounds?"""


@dataclass(frozen=True)
class RackAsked:
    """Which weights do you own?"""

    unit: Unit


@dataclass(frozen=True)
class RackNotRead:
    """The answer about weights could not be read."""

    unit: Unit


@dataclass(frozen=True)
class PairsAsked:
    """Loads were named without a count."""

    loads: tuple[Load, ...]


@dataclass(frozen=True)
class RackMoreAsked:
    """Weights were named when others were known: are those still there?"""

    known: tuple[RackItem, ...]


@dataclass(frozen=True)
class RackNoted:
    """What the trainee owns, read back."""

    items: tuple[RackItem, ...]


# Between workouts


@dataclass(frozen=True)
class WelcomeBack:
    """The chat was opened again, with no workout under way."""

    name: str


@dataclass(frozen=True)
class TodayPlan:
    """What today holds. Minutes in all, warm-up and rests included.

    `days_off` is set when rounds were taken off because the last workout was so many days ago; `offer` when the health questions
    are offered with it.
    """

    circuit: str
    rounds: int
    stations: tuple[StationLine, ...]
    minutes_low: int
    minutes_high: int
    done_today: bool
    days_off: int | None = None
    offer: bool = False
    picture: Board | None = None
    block: TodayInBlock | None = None


@dataclass(frozen=True)
class TodayInBlock:
    """Where in a block today's workout is: week `week` of `weeks`; `missed` is the training day that today makes up for."""

    week: int
    weeks: int
    easier: bool
    missed: Weekday | None


@dataclass(frozen=True)
class DayAt:
    """A training day and its time, "HH:MM", None where any time of the day is good."""

    day: date
    at: str | None


@dataclass(frozen=True)
class RestDay:
    """No training today, or no more.

    `circuit` is what comes next; `coming` is when, None when nothing is planned. `taken_off` when today would have been a training
    day; `done` when today's workout is done.
    """

    circuit: str
    coming: DayAt | None
    taken_off: bool
    done: bool = False


@dataclass(frozen=True)
class PlanOver:
    """The training days have come to their end."""

    circuit: str


@dataclass(frozen=True)
class NothingRuns:
    """Something was said that needs a workout under way."""

    circuit: str


@dataclass(frozen=True)
class HelpShown:
    """What can I say?"""

    running: bool


@dataclass(frozen=True)
class UnitNoted:
    """The unit changed."""

    unit: Unit


@dataclass(frozen=True)
class ReminderNoted:
    """When reminders come, read back; `coming` is the next."""

    reminders: Recurrence
    coming: DayAt | None


@dataclass(frozen=True)
class DaysOffNoted:
    """No training from `first` to `last`; `coming` is the next training day after."""

    first: date
    last: date
    coming: DayAt | None


@dataclass(frozen=True)
class DayMoved:
    """A training day moved to another; `at` is its time there, `was_one` when that was a training day before."""

    day: date
    to: date
    at: str
    was_one: bool


@dataclass(frozen=True)
class NothingToMove:
    """The day named is no training day."""

    day: date


@dataclass(frozen=True)
class HalfAsked:
    """Morning or evening? Each answer is a whole message."""

    morning: str
    evening: str


@dataclass(frozen=True)
class ZoneAsked:
    """Another time zone, but which?"""


@dataclass(frozen=True)
class ZoneUnknown:
    """A place whose zone is not known; `nearest` may be meant."""

    said: str
    nearest: tuple[str, ...]


@dataclass(frozen=True)
class ZoneNoted:
    """The trainee's zone changed: the place it is named after, and what the clock shows there; `coming` is the next reminder."""

    place: str
    clock: str
    coming: DayAt | None


@dataclass(frozen=True)
class ReminderPartMissing:
    """Days without a time, or a time without days."""

    missing: Literal["days", "time"]


@dataclass(frozen=True)
class RemindersOff:
    """Reminders have ended."""


@dataclass(frozen=True)
class Snoozed:
    """A reminder will come later; `at` is the wall clock of the trainee, "HH:MM"."""

    at: str


@dataclass(frozen=True)
class SnoozeTimeAsked:
    """Later was said, but not when."""


@dataclass(frozen=True)
class Reminder:
    """The reminder of a day. Minutes in all; `change` is the one thing that differs from the last time."""

    circuit: str
    rounds: int
    minutes_high: int
    change: NextChange | None = None


@dataclass(frozen=True)
class FollowUp:
    """A training day went by; today is as good. Minutes in all."""

    circuit: str
    minutes_high: int


@dataclass(frozen=True)
class ComeBack:
    """After a week or two of silence: coming back is easy. The last word until the trainee speaks.

    `eased` when the workout is a round shorter; `days_off` since the last workout, None when there was none.
    """

    circuit: str
    rounds: int
    minutes_high: int
    eased: bool
    days_off: int | None


@dataclass(frozen=True)
class DaySkipped:
    """Not today."""


@dataclass(frozen=True)
class ProgressShown:
    """How it goes: a line an exercise, first and latest set, oldest exercise first."""

    workouts: int
    lines: tuple[ProgressLine, ...]
    picture: ProgressPicture | None = None


@dataclass(frozen=True)
class ProgressLine:
    """An exercise: its first set and its latest."""

    exercise: str
    first: SetLine
    latest: SetLine


@dataclass(frozen=True)
class NotUnderstood:
    """Nothing in the message could be read; `expects` is what would be understood now."""

    expects: Literal["reps", "go", "back", "today"]


# Safety: before a workout


@dataclass(frozen=True)
class HealthOffered:
    """A few short health questions are offered; `go` goes without them, and light."""


@dataclass(frozen=True)
class HealthAsked:
    """One health question; `again` when the answer could not be read."""

    topic: Topic
    coach: str
    again: bool


@dataclass(frozen=True)
class HealthLater:
    """The health questions wait; `running` while a workout is under way, `free` when one may start without them, lightly."""

    running: bool
    free: bool


@dataclass(frozen=True)
class HealthOutcome:
    """What the health answers come to; `places` are injuries that are held back, `medicine` one that changes the heart rate."""

    outcome: Outcome
    branch: Branch
    coach: str
    places: tuple[str, ...]
    medicine: bool


@dataclass(frozen=True)
class ClearanceNeeded:
    """Something stands before a workout: nothing starts. `same_day` when a warning sign was told today."""

    bar: Bar
    coach: str
    emergency: str | None
    same_day: bool


@dataclass(frozen=True)
class ClearanceNoted:
    """The trainee is cleared; the start is a light one. `first_talk` when that still has to be finished."""

    first_talk: bool


@dataclass(frozen=True)
class ClearanceTooSoon:
    """Cleared was said on the day of a warning sign: not today."""


@dataclass(frozen=True)
class LighterDay:
    """Why today is lighter. `days` away for a break; `rounds` when there are fewer than the circuit has."""

    whys: tuple[LightWhy, ...]
    days: int | None
    rounds: int | None


@dataclass(frozen=True)
class SameMuscles:
    """The same muscles worked hard less than two days ago."""

    hours: int
    muscles: tuple[str, ...]


@dataclass(frozen=True)
class FeelingNoted:
    """How the trainee is today was noted; `lighter` when the loads follow, `rounds` when there are fewer than planned."""

    feelings: tuple[Feeling, ...]
    lighter: bool
    rounds: int | None


@dataclass(frozen=True)
class IllAsked:
    """Ill: any fever, or anything below the neck?"""


@dataclass(frozen=True)
class FeverRest:
    """Fever, or ill below the neck: no workout today."""


@dataclass(frozen=True)
class PainGone:
    """Places that hurt are fine now: what was left out comes back, a step lighter."""

    places: tuple[str, ...]


@dataclass(frozen=True)
class PainStays:
    """Places still hurt: what troubles them stays out."""

    places: tuple[str, ...]


@dataclass(frozen=True)
class NothingSpared:
    """Every station would trouble what hurts: rest today."""

    places: tuple[str, ...]


# The walk through a workout


@dataclass(frozen=True)
class WarmUp:
    """The warm-up clock starts (0 seconds: there is none); with checks, and questions that need no answer.

    `places` hurt the last time and are asked about.
    """

    seconds: int
    moves: tuple[Move, ...]
    checks: tuple[Check, ...]
    places: tuple[str, ...]


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
class UrgentStop:
    """A sign that stops everything at once. `emergency` is the number to call, None for the local one."""

    place: str | None
    emergency: str | None
    coach: str


@dataclass(frozen=True)
class PainStop:
    """Pain stops a station; `asked`: sharp or dull, new or known?"""

    place: str | None
    exercise: str
    asked: bool = True


@dataclass(frozen=True)
class PainAdvice:
    """What follows from pain at a station: `swap` spares the place, None when the station is left out.

    `others` are the other stations that changed with it; `mild` is dull and known.
    """

    exercise: str
    swap: str | None
    others: tuple[str, ...]
    mild: bool


@dataclass(frozen=True)
class PainHeard:
    """Pain outside a station; sharp or dull, new or known?"""

    place: str | None


@dataclass(frozen=True)
class PainKept:
    """Pain outside a station is noted, as it was described."""

    mild: bool


@dataclass(frozen=True)
class FearHeard:
    """The trainee is afraid before anything was lifted."""

    coach: str


@dataclass(frozen=True)
class UnwellPause:
    """The trainee feels unwell or is frightened: the clock is stopped."""

    emergency: str | None


@dataclass(frozen=True)
class GoodToHear:
    """Nothing is wrong: signs or pain were denied, or muscles only burn with work (`burning`). No clock was changed."""

    burning: bool


@dataclass(frozen=True)
class TooMuchSeen:
    """It looks like too much today: more rest, lighter, or the end?"""

    sign: TooMuch


@dataclass(frozen=True)
class ReliefTaken:
    """What was chosen; `rest_s` are the seconds that rests are longer by."""

    choice: Literal["rest", "lighter", "on"]
    rest_s: int


@dataclass(frozen=True)
class EffortAsked:
    """How hard was it as a whole?"""


@dataclass(frozen=True)
class EffortNoted:
    """The effort was noted. `jump_percent`: how far the week is above usual, if far; `alike`: no day differs from another."""

    effort: Decimal
    jump_percent: int | None
    alike: bool


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


@dataclass(frozen=True)
class SummaryLine:
    """An exercise in the summary: its sets in the order done, the sets of the last time."""

    exercise: str
    sets: tuple[SetLine, ...]
    last_time: tuple[SetLine, ...]


@dataclass(frozen=True)
class BestSet:
    """The set that asked most strength."""

    exercise: str
    line: SetLine


@dataclass(frozen=True)
class NextChange:
    """What changes next time: the load, or the tempo."""

    exercise: str
    load: Load
    change: Literal["up", "same", "down"]
    tempo: Tempo | None


@dataclass(frozen=True)
class Summary:
    """The end of a workout: what was done. Times in seconds; `missing` counts sets asked about and not reported."""

    circuit: str
    ending: Ending
    lines: tuple[SummaryLine, ...]
    work_s: int
    total_s: int
    best: BestSet | None
    changes: tuple[NextChange, ...]
    missing: int
    first_time: bool


# The account: joining, wishes, what cannot be read


@dataclass(frozen=True)
class CoachWelcome:
    """Somebody has become the coach."""

    name: str


@dataclass(frozen=True)
class CoachHelp:
    """What a coach can say here."""


@dataclass(frozen=True)
class InviteMade:
    """An invite: a link to forward, or the code alone. `hours` is how long it holds."""

    name: str | None
    link: str
    code: str
    hours: int


@dataclass(frozen=True)
class TraineeJoined:
    """To the coach: somebody has come in."""

    name: str


@dataclass(frozen=True)
class TraineeGone:
    """To the coach: nothing can be sent to a trainee any more."""

    name: str


@dataclass(frozen=True)
class SafetyNews:
    """To the coach: a note on a trainee's safety, told on another day when `on` is set.

    `value` is that of the note (for an outcome: `core.health.outcome_value`).
    """

    name: str
    kind: NoteKind
    value: str
    on: date | None = None


@dataclass(frozen=True)
class RestGiven:
    """The coach gives a rest, which ends before `until` (None: when told); `circuit` is what a "go" would start all the same."""

    coach: str
    until: date | None
    circuit: str


@dataclass(frozen=True)
class CoachWrites:
    """Words of the coach's for this trainee, as they were typed."""

    coach: str
    text: str


@dataclass(frozen=True)
class CoachAnswers:
    """The coach's answer to what the trainee asked, both as they were typed."""

    coach: str
    question: str
    text: str


@dataclass(frozen=True)
class CoachChanged:
    """The coach has changed something for this trainee; exercises in it by their names."""

    coach: str
    changed: Changed


@dataclass(frozen=True)
class TraineeBack:
    """To the coach: a trainee who was gone is back."""

    name: str


@dataclass(frozen=True)
class ClipKept:
    """The coach's film of an exercise is shown on its card from now on."""

    exercise: str


@dataclass(frozen=True)
class ClipUnnamed:
    """A film came without the name of an exercise; `nearest` may be meant."""

    nearest: tuple[str, ...]


@dataclass(frozen=True)
class TextOnly:
    """Something came that cannot be read; `what` it was."""

    what: Literal["voice", "sticker", "place", "file", "picture", "film", "other"]


@dataclass(frozen=True)
class FewerNoted:
    """Fewer messages from now on, or all of them."""

    fewer: bool


@dataclass(frozen=True)
class MayHaveMissed:
    """To the coach: the program was away so long that the network has dropped older messages."""


Message = (
    Greeting
    | RestGiven
    | CoachWrites
    | CoachAnswers
    | CoachChanged
    | HowItWorks
    | Cautions
    | CautionsNeeded
    | UnitAsked
    | RackAsked
    | RackNotRead
    | PairsAsked
    | RackMoreAsked
    | RackNoted
    | WelcomeBack
    | TodayPlan
    | NothingRuns
    | HelpShown
    | UnitNoted
    | RestDay
    | PlanOver
    | ReminderNoted
    | DaysOffNoted
    | DayMoved
    | NothingToMove
    | HalfAsked
    | ZoneAsked
    | ZoneUnknown
    | ZoneNoted
    | ReminderPartMissing
    | RemindersOff
    | Snoozed
    | SnoozeTimeAsked
    | Reminder
    | FollowUp
    | ComeBack
    | DaySkipped
    | ProgressShown
    | NotUnderstood
    | HealthOffered
    | HealthAsked
    | HealthLater
    | HealthOutcome
    | ClearanceNeeded
    | ClearanceNoted
    | ClearanceTooSoon
    | LighterDay
    | SameMuscles
    | FeelingNoted
    | IllAsked
    | FeverRest
    | PainGone
    | PainStays
    | NothingSpared
    | WarmUp
    | PlatePlan
    | Card
    | Go
    | HalfWay
    | SecondsLeft
    | SwitchSides
    | Down
    | GetReady
    | StillMissing
    | Noted
    | OtherSideAsked
    | AlreadyNoted
    | Corrected
    | EditNotRead
    | Undone
    | NothingToCorrect
    | NoSuchNumber
    | WhichOne
    | PartMissing
    | SetNotRead
    | LeftOpen
    | TooManySets
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
    | UrgentStop
    | PainStop
    | PainAdvice
    | PainHeard
    | PainKept
    | FearHeard
    | UnwellPause
    | TooMuchSeen
    | ReliefTaken
    | EffortAsked
    | EffortNoted
    | GoodToHear
    | WhereWeWere
    | StillThere
    | AlreadyGoing
    | Summary
    | CoachWelcome
    | CoachHelp
    | InviteMade
    | TraineeJoined
    | TraineeGone
    | SafetyNews
    | TraineeBack
    | ClipKept
    | ClipUnnamed
    | TextOnly
    | FewerNoted
    | MayHaveMissed
    | OwnMessage
    | CoachMessage
    | ReviewMessage
)
