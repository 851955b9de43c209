"""Between workouts: the trainee's days, and what is put off, moved or left out."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta
from typing import TYPE_CHECKING, assert_never

from core.diary import ReminderSet, SnoozeSet, ZoneChosen
from core.messages import (
    DayAt,
    DayMoved,
    DaySkipped,
    DaysOffNoted,
    HalfAsked,
    NothingToMove,
    ReminderNoted,
    ReminderPartMissing,
    RemindersOff,
    Snoozed,
    SnoozeTimeAsked,
    ZoneAsked,
    ZoneNoted,
    ZoneUnknown,
)
from core.reading.acts import Away, Days, HalfOfDay, InZone, Move, MyReminders, Repeat
from core.reading.zones import near_places, place_name
from core.recurrence import Recurrence, Rule, weekly
from core.reminders import at_clock, clock_text, local_date, next_time, next_training, pause_ends

if TYPE_CHECKING:
    from datetime import datetime

    from core.reading.acts import Calendar, Remind, Snooze
    from core.session.states import Idle
    from core.session.turn import Turn


KEPT = timedelta(days=42)  # a day off that has gone by is not to look like one that was missed, as far as a review looks back


def remind(turn: Turn, act: Remind) -> None:
    """Set the days and the time of reminders, or end them."""
    known = turn.clock_setting()[0].reminders
    if act.off:
        _less(turn, known, act)
        return
    first_at = known.rules[0].at if known is not None and known.rules else None
    if act.days:
        _set(turn, (Days("week", 1, act.days, act.at or first_at),), None, None)
    elif known is not None and act.at is not None:
        at = act.at
        _keep(turn, replace(known, rules=tuple(replace(rule, at=at) for rule in known.rules), added=()), since=turn.now)
    else:
        turn.say(ReminderPartMissing("days"))


def _less(turn: Turn, known: Recurrence | None, act: Remind) -> None:
    """End the reminders, or those on some days of the week."""
    left = None if known is None or not act.days else known.without_weekdays(act.days)
    if left is not None:
        _keep(turn, left)
        return
    turn.keep(ReminderSet(None, turn.now))
    turn.keep(SnoozeSet(None))
    turn.say(RemindersOff())


def calendar(turn: Turn, state: Idle, act: Calendar) -> Idle:
    """What was said about days, times away and zones."""
    match act:
        case Repeat(rules, first, last):
            _set(turn, rules, first, last)
        case HalfOfDay(morning, evening):
            turn.say(HalfAsked(morning, evening))
        case Away(first, last):
            _away(turn, first, last)
        case Move(day, to):
            _move(turn, day, to)
        case InZone():
            return _zone(turn, state, act)
        case MyReminders():
            known = turn.clock_setting()[0].reminders
            turn.say(ReminderPartMissing("days") if known is None else ReminderNoted(known.since(turn.today), _coming(turn)))
        case _:
            assert_never(act)
    return state


def _set(turn: Turn, said: tuple[Days, ...], first: date | None, last: date | None) -> None:
    """Reminders by rules that were said, in place of those before; a time that was not said is the one before."""
    known = turn.clock_setting()[0].reminders
    known_at = known.rules[0].at if known is not None and known.rules else None
    rules = []
    for days in said:
        at = days.at or known_at
        if at is None:
            turn.say(ReminderPartMissing("time"))
            return
        rule = replace(_rule(turn, days, at, first), until=last)
        rules += [rule] if rule.falls_on(rule.start) else []  # none of its days may lie before the end
    if rules:
        _keep(turn, Recurrence(tuple(rules)), since=turn.now)
    else:
        turn.say(ReminderPartMissing("days"))


def _rule(turn: Turn, days: Days, at: str, first: date | None) -> Rule:
    """A rule from the first day on: a day of the week counts today even when its time has gone by, a count of days does not."""
    start = first or turn.today
    if days.of == "week":
        return weekly(days.days, at, start, days.every)
    if start == turn.today and at_clock(start, at, turn.clock_setting()[0].zone) <= turn.now:
        start += timedelta(days=1)
    return Rule(start, at, days.every, "day")


def _keep(turn: Turn, reminders: Recurrence, since: datetime | None = None) -> None:
    turn.keep(ReminderSet(reminders, since or turn.clock_setting()[0].reminders_since or turn.now))
    turn.say(ReminderNoted(reminders.since(turn.today), _coming(turn)))


def _coming(turn: Turn) -> DayAt | None:
    """The next training day that has not begun to be reminded of."""
    trainee = turn.clock_setting()[0]
    ends_at = pause_ends(trainee)
    if trainee.reminders is None or (trainee.pause is not None and ends_at is None):
        return None
    found = next_training(trainee.reminders, trainee.zone, turn.now if ends_at is None else max(turn.now, ends_at))
    return None if found is None else DayAt(found[0], clock_text(found[1], trainee.zone))


def _away(turn: Turn, first: date, last: date) -> None:
    """No training for some days."""
    known = turn.clock_setting()[0].reminders
    if known is None:
        turn.say(ReminderPartMissing("days"))
        return
    _change(turn, known.since(turn.today - KEPT).without(first, last))
    snoozed = turn.clock_setting()[0].snoozed_until
    if snoozed is not None and first <= local_date(snoozed, turn.clock_setting()[0].zone) <= last:
        turn.keep(SnoozeSet(None))
    turn.say(DaysOffNoted(first, last, _coming(turn)))


def _move(turn: Turn, day: date, to: date) -> None:
    """A training day to another day."""
    known = turn.clock_setting()[0].reminders
    at = None if known is None else known.time_on(day)
    if known is None or at is None:
        turn.say(NothingToMove(day))
        return
    was_one = known.time_on(to)
    _change(turn, known.since(turn.today - KEPT).moved(day, to))
    turn.keep(SnoozeSet(None))
    turn.say(DayMoved(day, to, was_one or at, was_one=was_one is not None))


def _change(turn: Turn, reminders: Recurrence) -> None:
    """Keep exceptions; what was due before is due still."""
    turn.keep(ReminderSet(reminders, turn.clock_setting()[0].reminders_since or turn.now))


def _zone(turn: Turn, state: Idle, act: InZone) -> Idle:
    """The trainee's clock is another one: the times stay what they are on it."""
    if act.zone is None:
        turn.say(ZoneAsked() if act.said is None else ZoneUnknown(act.said, near_places(act.said)))
        return replace(state, asked="zone")
    turn.keep(ZoneChosen(act.zone))
    turn.say(ZoneNoted(place_name(act.zone), clock_text(turn.now, act.zone), _coming(turn)))
    return replace(state, asked=None)


def snooze(turn: Turn, act: Snooze) -> None:
    """One reminder, later today or at a time."""
    zone = turn.clock_setting()[0].zone
    if act.minutes is None and act.at is None:
        turn.say(SnoozeTimeAsked())
        return
    until = next_time(act.at, zone, turn.now) if act.at else turn.now + timedelta(minutes=act.minutes or 0)
    turn.keep(SnoozeSet(until))
    turn.say(Snoozed(clock_text(until, zone)))


def skip_day(turn: Turn) -> None:
    """Not today: nothing more is said until the next day of the trainee's."""
    known = turn.clock_setting()[0].reminders
    if known is not None:
        _change(turn, known.since(turn.today - KEPT).without(turn.today, turn.today))
    turn.keep(SnoozeSet(None))
    turn.say(DaySkipped())
