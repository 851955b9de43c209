"""How it went, for a coach and for a trainee: short, true, and never a reproach."""

from __future__ import annotations

from typing import TYPE_CHECKING, assert_never

from bot.wording.book import Worded, words_for
from bot.wording.days import DAY_NAMES, date_text
from bot.wording.phrases import TIED, and_list, load_text, minutes_text, number_text, page, percent
from core.recurrence import WEEK
from core.review_facts import Flag, FlagKind
from core.review_messages import (
    HowIsTold,
    NeedWordTold,
    OwnWeek,
    SheetTold,
    WeekTold,
    WhoMissedTold,
    WhoTrainedTold,
)

if TYPE_CHECKING:
    from collections.abc import Sequence
    from datetime import date
    from decimal import Decimal

    from core.review_facts import Change, LoadWeek
    from core.review_messages import Which

LINES = 12  # of a list in a chat; the sheet has all
NAMES = 4  # in a row within a line
NEEDS = 3  # in the line of a week
LASTING = (FlagKind.FALLING, FlagKind.STUCK)  # how long is in their words
SHORT = {
    FlagKind.SIGN: "warning sign",
    FlagKind.PAIN: "pain",
    FlagKind.CLEARANCE: "clearance",
    FlagKind.QUESTION: "question",
    FlagKind.MISSED: "days missed",
    FlagKind.FALLING: "strength down",
    FlagKind.STUCK: "stuck",
    FlagKind.UNREACHABLE: "unreachable",
}


@words_for(WhoTrainedTold)
def who_trained(message: WhoTrainedTold) -> Worded:
    """Who trained."""
    head = _head(message.week, message.monday)
    if not message.trained:
        return Worded(page(f"{head}: nobody has trained{'' if message.week == 'last' else ' so far'}."))
    count = len(message.trained)
    others = (
        f"Not {'in that week' if message.week == 'last' else 'so far'}: {_some(message.others, LINES)}." if message.others else ""
    )
    lines = [f"• {line.name}: {days_text(line.trained, line.planned)}" for line in message.trained]
    return Worded(page(f"{head}, {count} trained:", *_cut(lines), others), ("who missed", "sheet"))


@words_for(WhoMissedTold)
def who_missed(message: WhoMissedTold) -> Worded:
    """Who missed days, said as plainly as a calendar does."""
    head = _head(message.week, message.monday)
    without = f"No days set, so nothing to say: {_some(message.without_days, LINES)}." if message.without_days else ""
    if not message.missed:
        return Worded(page(f"{head}: no training day was missed.", without))
    lines = [f"• {line.name}: {', '.join(map(_weekday, line.days))}" for line in message.missed]
    return Worded(page(f"{head}, days missed:", *_cut(lines), without), ("who needs a word", "sheet"))


@words_for(NeedWordTold)
def need_word(message: NeedWordTold) -> Worded:
    """Who needs a word, and why."""
    if not message.lines:
        return Worded(page(f"Nobody of {message.people} needs a word now." if message.people else "Nobody trains with you yet."))
    lines = [f"• {line.name}: {', '.join(map(flag_text, line.flags))}" for line in message.lines]
    return Worded(page("A word would do good, the most urgent first:", *_cut(lines)), (f"how is {message.lines[0].name}",))


@words_for(HowIsTold)
def how_is(message: HowIsTold) -> Worded:
    """How one trainee is doing."""
    if message.days_since is None:
        last = "No workout yet."
    elif message.running:
        last = "In the middle of a workout now."
    else:
        last = "Last workout today." if not message.days_since else f"Last workout {_ago(message.days_since)}."
    flags = [
        f"• {flag_text(flag)}" + ("" if flag.kind in LASTING else f", since {date_text(flag.since)}") for flag in message.flags
    ]
    return Worded(
        page(
            f"{message.name}: this week {days_text(message.this.trained, message.this.planned)}, "
            f"last week {days_text(message.last.trained, message.last.planned)}.",
            last,
            f"Strength: {change_text(message.change)}.",
            "" if message.effort is None else f"Effort lately: {_tenths(message.effort)} of 10.",
            _moves(message.loads),
            "Worth a word:" if flags else "",
            *flags,
        )
    )


@words_for(WeekTold)
def week_told(message: WeekTold) -> Worded:
    """The week in five lines."""
    if not message.people:
        return Worded(page("Nobody trains with you yet, so there is no week to tell."))
    needs = [f"{line.name} ({SHORT[line.flags[0].kind]})" for line in message.needs]
    missed = [f"{line.name} ({len(line.days)})" for line in message.missed]
    return Worded(
        page(
            f"{_head(message.week, message.monday)}:",
            f"• trained: {message.trained} of {message.people}, {_count(message.days, 'day')}"
            + (f" ({message.kept} of {message.planned} planned)" if message.planned else ""),
            f"• loads: {message.up} up, {message.down} down; strength {_strengths(message)}",
            "• effort: "
            + ("not said" if message.effort is None else f"{_tenths(message.effort)} of 10, said {_times(message.efforts)}"),
            f"• days missed: {_some(tuple(missed), NAMES) or 'none'}",
            f"• a word first: {_some(tuple(needs), NEEDS) or 'nobody'}",
        ),
        ("who needs a word", "sheet"),
    )


@words_for(SheetTold)
def sheet_told(message: SheetTold) -> Worded:
    """The sheet goes along."""
    people = "one person" if message.people == 1 else f"{message.people} people"
    return Worded(page(f"The sheet of the week from {date_text(message.monday)}, {people}. It opens on the phone, and prints."))


@words_for(OwnWeek)
def own_week(message: OwnWeek) -> Worded:
    """A trainee's own week."""
    coming = "" if message.coming is None else f"Next: {message.coming.circuit}, {date_text(message.coming.day)}."
    if not message.days.trained:
        return Worded(page("Your week is still open. One short workout is a good beginning.", coming), ("today",))
    return Worded(
        page(
            f"Your week: {days_text(message.days.trained, message.days.planned)}, {_count(message.sets, 'set')}"
            + (f", {minutes_text(60 * message.minutes)}" if message.minutes else "")
            + ".",
            _moves(message.loads),
            "" if message.change is None else f"Strength: {change_text(message.change)}.",
            "" if message.effort is None else f"Effort: {_tenths(message.effort)} of 10.",
            coming,
        )
    )


def days_text(trained: int, planned: int | None) -> str:
    """`2 of 3 days`, `3 days` where none were planned, `4 days, 3 planned` for more than planned."""
    if not planned:
        return _count(trained, "day")
    return f"{trained} of {_count(planned, 'day')}" if trained <= planned else f"{_count(trained, 'day')}, {planned} planned"


def change_text(change: Change | None) -> str:
    """`up 4 % (1 to 7) in 4 weeks`; where the doubt holds no change at all, it is said to be not clear."""
    if change is None:
        return "too few sets to say"
    if not change.clear:
        return f"not clear ({percent(change.low)} to {percent(change.high)}{TIED}%)"
    low, high = sorted((abs(change.low), abs(change.high)))
    way = "up" if change.low > 0 else "down"
    return f"{way} {percent(abs(change.best))}{TIED}% ({percent(low)} to {percent(high)}) in 4 weeks"


def flag_text(flag: Flag) -> str:
    """A reason in a few words: `knee pain`, `3 days missed`."""
    match flag.kind:
        case FlagKind.SIGN:
            return "warning sign" + ("" if flag.place is None else f", {flag.place}")
        case FlagKind.PAIN:
            where = "" if flag.exercise is None else f" at {flag.exercise}"
            return ("pain" if flag.place is None else f"{flag.place} pain") + where
        case FlagKind.CLEARANCE:
            return "waits for a clearance"
        case FlagKind.QUESTION:
            return "asked you something" if flag.count == 1 else f"asked you {flag.count} things"
        case FlagKind.MISSED:
            return f"{flag.count} days missed in a row"
        case FlagKind.FALLING:
            return f"strength {change_text(flag.change)}"
        case FlagKind.STUCK:
            return f"same loads and reps since {date_text(flag.since)}"
        case FlagKind.UNREACHABLE:
            return "can't be reached"
        case _:
            assert_never(flag.kind)


def flag_since(flag: Flag) -> str:
    """A reason and the day it goes back to: `knee pain, since Fri 27 Mar`."""
    return flag_text(flag) + ("" if flag.kind in LASTING else f", since {date_text(flag.since)}")


def _head(week: Which, monday: date) -> str:
    return f"{'This week' if week == 'this' else 'Last week'}, from {date_text(monday)}"


def _weekday(day: date) -> str:
    return DAY_NAMES[WEEK[day.weekday()]]


def _count(count: int, what: str) -> str:
    return f"{count} {what}{'' if count == 1 else 's'}"


def _times(count: int) -> str:
    return "once" if count == 1 else "twice" if count == 2 else f"{count} times"  # noqa: PLR2004 - as people say it


def _ago(days: int) -> str:
    return "yesterday" if days == 1 else f"{days} days ago"


def _tenths(value: Decimal) -> str:
    return number_text(round(value, 1))


def _some(names: Sequence[str], most: int) -> str:
    """`a, b and c`, or `a, b and 12 more`."""
    if len(names) <= most:
        return and_list(tuple(names))
    return f"{', '.join(names[:most])} and {len(names) - most} more"


def _cut(lines: Sequence[str]) -> tuple[str, ...]:
    """The lines, or the first of them and how many more there are."""
    if len(lines) <= LINES:
        return tuple(lines)
    return (*lines[:LINES], f'and {len(lines) - LINES} more: say "sheet"')


def _strengths(message: WeekTold) -> str:
    """`up Ana, down Bo, not clear for 9`."""
    parts = [
        f"up {_some(message.stronger, NAMES)}" if message.stronger else "",
        f"down {_some(message.weaker, NAMES)}" if message.weaker else "",
        f"not clear for {message.unclear}" if message.unclear else "",
    ]
    return ", ".join(filter(None, parts))


def _moves(loads: Sequence[LoadWeek]) -> str:
    """`Up: Goblet squat 14 kg (12 kg before). Down: …`."""
    words = []
    for way, step in (("Up", 1), ("Down", -1)):
        moved = [
            f"{load.exercise} {load_text(load.top, load.loads_held)}"
            for load in loads
            if load.step == step and load.top is not None
        ]
        if moved:
            words.append(f"{way}: {_some(moved, NAMES)}.")
    return " ".join(words)
