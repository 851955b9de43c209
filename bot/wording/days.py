"""Training days: reminders and what becomes of them, rest days, times away, zones."""

from __future__ import annotations

from typing import TYPE_CHECKING

from bot.wording.book import Worded, words_for
from bot.wording.phrases import and_list, load_text, page
from core.messages import (
    ComeBack,
    DayMoved,
    DaySkipped,
    DaysOffNoted,
    FollowUp,
    HalfAsked,
    NothingToMove,
    PlanOver,
    Reminder,
    ReminderNoted,
    ReminderPartMissing,
    RemindersOff,
    RestDay,
    Snoozed,
    SnoozeTimeAsked,
    ZoneAsked,
    ZoneNoted,
    ZoneUnknown,
)
from core.recurrence import WEEK

if TYPE_CHECKING:
    from datetime import date

    from core.messages import DayAt, NextChange
    from core.recurrence import Rule

DAY_NAMES = dict(zip(WEEK, ("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"), strict=True))
MONTHS = ("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")
ORDINALS = ("", "", "other", "third", "fourth", "fifth", "sixth")
GO_LATER_NOT = ("go", "later 30 min", "not today")


def date_text(day: date) -> str:
    """`Wed 4 Mar`."""
    return f"{DAY_NAMES[WEEK[day.weekday()]]} {day.day} {MONTHS[day.month - 1]}"


def day_at_text(coming: DayAt) -> str:
    """`Wed 4 Mar at 06:30`, or without the time where none is set."""
    return date_text(coming.day) + (f" at {coming.at}" if coming.at is not None else "")


def rule_text(rule: Rule) -> str:
    """A rule in words: `Mon, Wed, Fri at 06:30`, `every other day at 07:00`, `every other week on Tue at 18:30`."""
    names = ", ".join(DAY_NAMES[day] for day in rule.days)
    often = f"every {ORDINALS[rule.every] if rule.every < len(ORDINALS) else str(rule.every) + 'th'} {rule.of}"
    if rule.of == "day":
        words = "every day" if rule.every == 1 else often
        words += f" that is {names}" if rule.days else ""
    elif rule.every > 1:
        words = f"{often} on {names}"
    else:
        words = "every day" if rule.days == WEEK else names
    return f"{words} at {rule.at}" + (f", until {date_text(rule.until)}" if rule.until is not None else "")


def _next_text(coming: DayAt | None) -> str:
    return "" if coming is None else f"Next: {day_at_text(coming)}."


@words_for(ReminderNoted)
def reminder_noted(message: ReminderNoted) -> Worded:
    """When reminders come, in words."""
    rules = [rule_text(rule) for rule in message.reminders.rules]
    first = f"I'll remind you: {rules[0]}." if len(rules) == 1 else "I'll remind you:"
    off, added = message.reminders.excluded, message.reminders.added
    return Worded(
        page(
            first,
            *(f"• {rule}" for rule in (rules if len(rules) != 1 else [])),
            f"Not on {and_list(tuple(date_text(day) for day in off))}." if off else "",
            f"Also on {and_list(tuple(date_text(extra.day) for extra in added))}." if added else "",
            _next_text(message.coming),
        )
    )


@words_for(DaysOffNoted)
def days_off_noted(message: DaysOffNoted) -> Worded:
    """No training for some days."""
    days = date_text(message.first) if message.first == message.last else f"{date_text(message.first)} to {date_text(message.last)}"
    return Worded(page(f"Noted, {days} off.", _next_text(message.coming)))


@words_for(DayMoved)
def day_moved(message: DayMoved) -> Worded:
    """A training day is on another day."""
    if message.was_one:
        return Worded(page(f"{date_text(message.day)} is off, and {date_text(message.to)} at {message.at} stays."))
    return Worded(page(f"Moved: {date_text(message.to)} at {message.at} instead of {date_text(message.day)}."))


@words_for(NothingToMove)
def nothing_to_move(message: NothingToMove) -> Worded:
    """The day named is no training day."""
    return Worded(
        page(f"{date_text(message.day)} is no training day of yours, so there is nothing to move.", 'Say "my reminders".')
    )


@words_for(HalfAsked)
def half_asked(message: HalfAsked) -> Worded:
    """Morning or evening?"""
    return Worded(page("Morning or evening?", f'"{message.morning}"', f'"{message.evening}"'), (message.morning, message.evening))


@words_for(ZoneAsked)
def zone_asked(message: ZoneAsked) -> Worded:
    """Which zone?"""
    del message
    return Worded(page('Where are you now? A big city will do, like "Lisbon".'))


@words_for(ZoneUnknown)
def zone_unknown(message: ZoneUnknown) -> Worded:
    """A place whose zone is not known."""
    near = f"Did you mean {' or '.join(message.nearest)}?" if message.nearest else "Which big city has the same time?"
    return Worded(page(f"I don't know the time in {message.said}.", near), message.nearest)


@words_for(ZoneNoted)
def zone_noted(message: ZoneNoted) -> Worded:
    """The trainee's clock is another one."""
    return Worded(page(f"{message.place} time from now on: it is {message.clock} there.", _next_text(message.coming)))


@words_for(RestDay)
def rest_day(message: RestDay) -> Worded:
    """No training today."""
    first = "Today is off, as you said." if message.taken_off else "Rest day. That is when you get stronger."
    if message.done:
        first = "You trained today already. Well done."
    coming = f"Next: {message.circuit}, {day_at_text(message.coming)}." if message.coming is not None else ""
    more = "" if message.done else 'Feel like it anyway? Say "go".'
    return Worded(page(first, coming, more), () if message.done else ("go",))


@words_for(PlanOver)
def plan_over(message: PlanOver) -> Worded:
    """The training days have come to their end."""
    return Worded(
        page(
            "Your training days are done: no day is set.",
            'Set new ones: "remind me mon wed fri 6:30am".',
            f'Or say "go" for {message.circuit} now.',
        ),
        ("go",),
    )


@words_for(Reminder)
def reminder(message: Reminder) -> Worded:
    """The reminder of a day: three seconds to read."""
    what = f"{message.circuit}: {rounds_text(message.rounds)}, {message.minutes_high} min."
    return Worded(page(what, _change_text(message.change), '"go", "later 30 min" or "not today"?'), GO_LATER_NOT)


def rounds_text(rounds: int) -> str:
    """`3 rounds`, `1 round`."""
    return f"{rounds} round{'s' if rounds > 1 else ''}"


def _change_text(change: NextChange | None) -> str:
    return "" if change is None else f"{change.exercise}: {change.change} to {load_text(change.load)}."


@words_for(FollowUp)
def follow_up(message: FollowUp) -> Worded:
    """A training day went by."""
    return Worded(
        page(f"Yesterday went by, no harm done. {message.circuit} today? Up to {message.minutes_high} min.", '"go" or "not today"'),
        ("go", "not today"),
    )


@words_for(ComeBack)
def come_back(message: ComeBack) -> Worded:
    """Coming back is easy."""
    shorter = "a round shorter, " if message.eased else ""
    return Worded(
        page(
            f"Whenever you like, {message.circuit} is here, made easy: {shorter}{rounds_text(message.rounds)},"
            f" up to {message.minutes_high} min, no heavier than last time.",
            "I won't write again until you do.",
            '"go", or "stop the reminders"',
        ),
        ("go", "stop the reminders"),
    )


@words_for(ReminderPartMissing)
def reminder_part_missing(message: ReminderPartMissing) -> Worded:
    """Days without a time, or a time without days."""
    if message.missing == "time":
        return Worded(page("At what time? Say days and time together:", '"remind me mon wed fri 6:30am"'))
    return Worded(page("On which days? Say days and time together:", '"remind me mon wed fri 6:30am"'))


@words_for(RemindersOff)
def reminders_off(message: RemindersOff) -> Worded:
    """Reminders have ended."""
    del message
    return Worded(page("No more reminders. I am here when you want me."))


@words_for(Snoozed)
def snoozed(message: Snoozed) -> Worded:
    """A reminder will come later."""
    return Worded(page(f"I'll ask again at {message.at}."))


@words_for(SnoozeTimeAsked)
def snooze_time_asked(message: SnoozeTimeAsked) -> Worded:
    """Later was said, but not when."""
    del message
    return Worded(page('When? "later 30 min" or "remind me at 7pm".'), ("later 30 min",))


@words_for(DaySkipped)
def day_skipped(message: DaySkipped) -> Worded:
    """Not today."""
    del message
    return Worded(page("All right, not today. Rest counts too."))
