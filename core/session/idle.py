"""Between workouts: the next reminder, and nothing else on the clock."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta
from typing import TYPE_CHECKING

from core.diary import ReminderSet
from core.messages import (
    DaySkipped,
    ReminderNoted,
    ReminderPartMissing,
    RemindersOff,
    Snoozed,
    SnoozeTimeAsked,
)
from core.reminders import WEEK, clock_text, next_reminder, next_time
from core.session.states import Cue, CueKind, Idle, Workout
from core.trainee import ReminderDays

if TYPE_CHECKING:
    from datetime import datetime

    from core.reading.acts import Remind, Snooze
    from core.session.turn import Turn


def idle(turn: Turn, last: Workout | None = None) -> Idle:
    """No workout runs; the next reminder, if there are any, is on the clock."""
    return Idle(_reminder_cues(turn, turn.plan.trainee.reminder), last)


def _reminder_cues(turn: Turn, reminder: ReminderDays | None) -> tuple[Cue, ...]:
    if reminder is None:
        return ()
    return (Cue(CueKind.REMIND, next_reminder(reminder, turn.plan.trainee.zone, turn.now)),)


def after_reminder(turn: Turn, state: Idle) -> Idle:
    """A reminder was said (or was stale): the next of its days."""
    later = state.cues[1:]
    return replace(state, cues=later or _reminder_cues(turn, turn.plan.trainee.reminder))


def remind(turn: Turn, state: Idle, act: Remind) -> Idle:
    """Set the days and the time of reminders, or end them."""
    known = turn.plan.trainee.reminder
    if act.off:
        kept = tuple(day for day in (known.days if known else ()) if act.days and day not in act.days)
        reminder = None if known is None or not kept else ReminderDays(kept, known.at)
    else:
        days, at = act.days or (known.days if known else ()), act.at or (known.at if known else None)
        if at is None or not days:
            turn.say(ReminderPartMissing("time" if at is None else "days"))
            return state
        reminder = ReminderDays(tuple(sorted(days, key=WEEK.index)), at)
    turn.keep(ReminderSet(reminder))
    turn.say(RemindersOff() if reminder is None else ReminderNoted(reminder.days, reminder.at))
    return replace(state, cues=_reminder_cues(turn, reminder))


def snooze(turn: Turn, state: Idle, act: Snooze) -> Idle:
    """One reminder, later today or at a time."""
    zone = turn.plan.trainee.zone
    if act.minutes is None and act.at is None:
        turn.say(SnoozeTimeAsked())
        return state
    at: datetime = next_time(act.at, zone, turn.now) if act.at else turn.now + timedelta(minutes=act.minutes or 0)
    turn.say(Snoozed(clock_text(at, zone)))
    regular = tuple(cue for cue in _reminder_cues(turn, turn.plan.trainee.reminder) if cue.at > at)
    return replace(state, cues=(Cue(CueKind.REMIND, at), *regular))


def skip_day(turn: Turn, state: Idle) -> Idle:
    """Not today: nothing more is said until the next day of the trainee's."""
    turn.say(DaySkipped())
    kept = tuple(cue for cue in _reminder_cues(turn, turn.plan.trainee.reminder))
    return replace(state, cues=kept)
