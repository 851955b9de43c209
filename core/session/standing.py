"""Where safety stands, and the last look at every step: what leads into a workout that must wait does not get out."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta
from typing import TYPE_CHECKING, get_args

from core import messages
from core.diary import Ending
from core.health import Bar, Feeling, NoteKind
from core.messages import ClearanceNeeded, FormPoint, Noted
from core.own_messages import OwnMessage
from core.reminders import local_date
from core.review_messages import OwnWeek
from core.safety.gate import bar, uncleared_sign
from core.session.closing import close
from core.session.states import Closing, Paused, Resting, SettingUp, State, WarmingUp, Working

if TYPE_CHECKING:
    from core.messages import Message
    from core.session.turn import Turn

LEAST_WAIT = timedelta(hours=8)  # between a warning sign and a clearance, also past midnight: common practice, no source

# What may be said while something stands before a workout: neither a load to use, nor a "go", nor a next station.
SAFE = (
    messages.Greeting,
    messages.HowItWorks,
    messages.Cautions,
    messages.CautionsNeeded,
    messages.UnitAsked,
    messages.RackAsked,
    messages.RackNotRead,
    messages.RackMoreAsked,
    messages.RackNoted,
    messages.PairsAsked,
    messages.WelcomeBack,
    messages.UnitNoted,
    messages.ReminderNoted,
    messages.ReminderPartMissing,
    messages.RemindersOff,
    messages.DaySkipped,
    messages.DaysOffNoted,
    messages.DayMoved,
    messages.NothingToMove,
    messages.HalfAsked,
    messages.ZoneAsked,
    messages.ZoneNoted,
    messages.ZoneUnknown,
    messages.ProgressShown,
    messages.HealthAsked,
    messages.HealthLater,
    messages.HealthOutcome,
    messages.ClearanceNeeded,
    messages.ClearanceNoted,
    messages.ClearanceTooSoon,
    messages.FeverRest,
    messages.UrgentStop,
    messages.PainHeard,
    messages.PainKept,
    messages.PainGone,
    messages.PainStays,
    messages.AlreadyNoted,
    messages.Corrected,
    messages.Undone,
    messages.NothingToCorrect,
    messages.NotDoneYet,
    messages.WhichOne,
    messages.PartMissing,
    messages.SetNotRead,
    messages.LeftOpen,
    messages.OtherSideAsked,
    messages.EffortAsked,
    messages.EffortNoted,
    messages.RestGiven,
    messages.CoachWrites,
    messages.CoachAnswers,
    messages.CoachChanged,
    *get_args(OwnMessage),
    OwnWeek,
)

SAYS_SO = (messages.ClearanceNeeded, messages.ClearanceTooSoon, messages.FeverRest, messages.UrgentStop, messages.HealthOutcome)


def bar_now(turn: Turn) -> Bar | None:
    """What stands before a workout, with what was said in this turn."""
    found = bar(turn.plan.trainee, turn.diary)
    if found is not None:
        return found
    fever = [note.at for note in turn.diary.notes if note.kind is NoteKind.FEELING and note.value == Feeling.FEVER]
    if fever and local_date(fever[-1], turn.plan.trainee.zone) == turn.today:
        return Bar.FEVER
    return None


def too_soon(turn: Turn) -> bool:
    """Whether a warning sign is of today, so that no clearance can be told yet."""
    sign = uncleared_sign(turn.diary)
    if sign is None:
        return False
    return local_date(sign.at, turn.plan.trainee.zone) == turn.today or turn.now - sign.at < LEAST_WAIT


def needed(turn: Turn, found: Bar) -> ClearanceNeeded:
    """What stands before a workout, as it is said."""
    return ClearanceNeeded(found, turn.plan.coach, turn.plan.emergency, too_soon(turn))


def guarded(state: State, turn: Turn, *, heard: bool) -> State:
    """The last look at a step: a workout that must not go on is closed, and only what is safe is said.

    `heard` when somebody spoke (or came): then they are told what stands before a workout, in place of what was held back.
    """
    found = bar_now(turn)
    if found is None:
        return state
    if isinstance(state, WarmingUp | SettingUp | Working | Resting | Paused | Closing):
        state = close(state, Ending.PAIN, turn, quietly=True)
    kept = [replace(say, message=_without_next(say.message)) for say in turn.messages if isinstance(say.message, (*SAFE, Noted))]
    held_back = len(kept) < len(turn.messages)
    turn.messages[:] = kept
    if heard and held_back and not any(isinstance(say.message, SAYS_SO) for say in kept):
        turn.say(needed(turn, found))
    return state


def _without_next(message: Message) -> Message:
    """A report read back without what comes next."""
    if not isinstance(message, Noted):
        return message
    reminder = message.reminder if isinstance(message.reminder, FormPoint) else None
    return replace(message, next_load=None, next_when=None, change=None, next_tempo=None, reminder=reminder)
