"""Days, times of day and spans of time, as people text them; and what they ask for: a reminder plan, or "later".

A time that may be morning or evening ("at 7", "half six") is not settled: `Moment.settled` is false and the act is unclear.
"""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from typing import TYPE_CHECKING, get_args

from core.reading.acts import Act, Remind, Snooze, Unclear, Weekday
from core.reading.lexicon import listed
from core.reading.tokens import Kind, Token

if TYPE_CHECKING:
    from collections.abc import Sequence

WEEK: tuple[Weekday, ...] = get_args(Weekday)
_DAY_WORDS: dict[str, Weekday] = {word: day for day in WEEK for word in listed("when", day)}
_GROUPS: dict[str, tuple[Weekday, ...]] = {
    **dict.fromkeys(listed("when", "weekdays"), WEEK[:5]),
    **dict.fromkeys(listed("when", "weekends"), WEEK[5:]),
    **dict.fromkeys(listed("when", "every_day"), WEEK),
}
_MORNING = {"am", "morning", "mornings", "a"}
_LATE = {"pm", "evening", "evenings", "afternoon", "afternoons", "tonight", "night", "nights", "p"}
_OFF = {
    "stop",
    "cancel",
    "off",
    "no",
    "not",
    "disable",
    "remove",
    "without",
    "mute",
    "end",
    "quit",
    "kill",
    "unsubscribe",
    "delete",
    "silence",
    "never",
    "skip",
    "except",
    "enough",
}
_REMIND = {
    "remind",
    "reminder",
    "reminders",
    "reminding",
    "nudge",
    "nudges",
    "alert",
    "alerts",
    "notify",
    "notification",
    "notifications",
    "alarm",
    "alarms",
    "ping",
    "pings",
    "pinging",
    "buzz",
    "message",
    "messages",
    "text",
    "texts",
    "messaging",
    "texting",
}
_HOURS_A_DAY = 24
_NOON_H = 12
_FOUR_DIGITS = 4
_DAY_MINUTES = 24 * 60


@dataclass(frozen=True, slots=True)
class Moment:
    """A time of day in minutes after midnight; `settled` is false when morning or evening was not said."""

    minute: int
    settled: bool

    @property
    def text(self) -> str:
        """The time as HH:MM."""
        return f"{self.minute // 60:02d}:{self.minute % 60:02d}"


def when_act(tokens: Sequence[Token], first: int, last: int) -> Act | None:
    """The reminder or snooze that tokens `[first, last)`, one sentence, ask for; None when they ask for neither."""
    words = [token.text for token in tokens[first:last]]
    reminds = any(word in _REMIND for word in words)
    days, off_days = _days(tokens, first, last)
    moments, used = _moments(tokens, first, last)
    minutes, spans = _span(tokens, first, last, used)
    loose = [i for i in range(first, last) if _is_number(tokens[i]) and i not in used and i not in spans]
    later = _says_later(words) or (minutes is not None and _in_span(words))
    off = _says_off(words)
    if not (reminds or days or off_days or later):
        return None
    days_said = days or off_days
    if not (reminds or later) and not (
        days_said and (moments or off) and _only_when(tokens, first, last, used)
    ):
        return None
    if loose or len(moments) > 1 or (moments and minutes is not None):
        return Unclear()
    if reminds or days or off_days:
        return _remind(words, days, off_days, moments, minutes, off=off)
    return _snooze(moments, minutes)


def _remind(
    words: Sequence[str],
    days: tuple[Weekday, ...],
    off_days: tuple[Weekday, ...],
    moments: Sequence[Moment],
    minutes: int | None,
    *,
    off: bool,
) -> Act | None:
    if "other" in words or "month" in words:
        return Unclear()
    if off and not (days and off_days):
        return Remind(days=off_days or days, off=True)
    if off_days:
        days = tuple(day for day in (days or WEEK) if day not in off_days)
    if moments and not moments[0].settled:
        return Unclear()
    at = moments[0].text if moments else None
    if days:
        return Unclear() if minutes is not None else Remind(days=days, at=at)
    if minutes is not None:
        return Snooze(minutes=minutes)
    if at is not None:
        plan = "reminders" in words or (
            {"change", "move", "set", "shift"} & set(words) and "reminder" in words and "my" in words
        )
        return Remind(at=at) if plan else Snooze(at=at)
    if "later" in words:
        return Snooze()
    return Unclear() if {"remind", "reminders", "reminder"} & set(words) else None


def _snooze(moments: Sequence[Moment], minutes: int | None) -> Act:
    if moments:
        return Snooze(at=moments[0].text) if moments[0].settled else Unclear()
    return Snooze(minutes=minutes)


def _says_later(words: Sequence[str]) -> bool:
    line = " ".join(words)
    return (
        "snooze" in words
        or "postpone" in words
        or line in {"later", "not now later", "later please", "maybe later", "do it later"}
        or ("later" in words and not {"see", "talk", "speak"} & set(words))
        or "in a while" in line
        or "in a bit" in line
        and len(words) < 6
    )


def _in_span(words: Sequence[str]) -> bool:
    """Whether a span of time is one to wait: "in 30 minutes", "give me an hour", "30 more minutes"."""
    line = " " + " ".join(words) + " "
    done = {"held", "did", "hold", "plank", "reps", "done", "lasted", "got"} & set(words)
    return not done and any(
        f" {lead} " in line
        for lead in (
            "in",
            "give me",
            "need",
            "after",
            "more",
            "ask me",
            "come back",
            "wait",
            "again in",
            "another",
            "push",
            "delay",
        )
    )


def _says_off(words: Sequence[str]) -> bool:
    return any(word in _OFF for word in words)


def _only_when(tokens: Sequence[Token], first: int, last: int, used: set[int]) -> bool:
    """Whether the sentence is days and times and little else."""
    small = {
        "on",
        "at",
        "and",
        "the",
        "in",
        "to",
        "please",
        "every",
        "each",
        "ok",
        "not",
        "no",
        "do",
        "for",
        "me",
        "i",
        "lets",
        "train",
        "training",
        "can",
        "will",
        "would",
        "like",
        "am",
        "pm",
        "morning",
        "mornings",
        "evening",
        "evenings",
        "except",
        "but",
        "through",
        "thru",
        "until",
        "till",
        "from",
        "yes",
        "is",
        "best",
        "good",
        "works",
        "prefer",
        "thanks",
        "all",
        "days",
        "day",
        "my",
        "workout",
    }
    return all(
        i in used
        or tokens[i].kind is Kind.MARK
        or tokens[i].text in small
        or tokens[i].text in _DAY_WORDS
        or tokens[i].text in _GROUPS
        for i in range(first, last)
    )


def _days(tokens: Sequence[Token], first: int, last: int) -> tuple[tuple[Weekday, ...], tuple[Weekday, ...]]:
    """The days named, and those named after "not" or "except", in week order."""
    named: set[Weekday] = set()
    off: set[Weekday] = set()
    into = named
    index = first
    while index < last:
        word = tokens[index].text
        if word in {"not", "except", "no", "excluding", "without", "skip", "minus"}:
            into = off
        elif word in {"but", "and"} and index + 1 < last and tokens[index + 1].text in _OFF:
            pass
        elif word in _GROUPS:
            into.update(_GROUPS[word])
        elif (
            word in {"every", "each", "all"}
            and index + 1 < last
            and tokens[index + 1].text
            in {"day", "days", "morning", "mornings", "evening", "evenings", "night", "week", "single"}
        ):
            into.update(WEEK)
        elif word == "mwf":
            into.update({"mon", "wed", "fri"})
        elif word in _DAY_WORDS:
            day = _DAY_WORDS[word]
            through = _day_through(tokens, index + 1, last)
            if through is not None:
                until, index = through
                into.update(_range(day, until))
            else:
                into.add(day)
        index += 1
    if {"every", "each"} & {tokens[i].text for i in range(first, last)} and named == set(WEEK):
        explicit = {
            _DAY_WORDS[tokens[i].text] for i in range(first, last) if tokens[i].text in _DAY_WORDS
        } - off
        if explicit:
            named = explicit
    return tuple(day for day in WEEK if day in named), tuple(day for day in WEEK if day in off)


def _day_through(tokens: Sequence[Token], index: int, last: int) -> tuple[Weekday, int] | None:
    """The day after "to", "-" or "through" at `index`, and its index."""
    if (
        index + 1 < last
        and tokens[index].text in {"to", "-", "through", "thru", "till", "until", "2"}
        and tokens[index + 1].text in _DAY_WORDS
    ):
        return _DAY_WORDS[tokens[index + 1].text], index + 1
    return None


def _range(start: Weekday, until: Weekday) -> tuple[Weekday, ...]:
    begin, end = WEEK.index(start), WEEK.index(until)
    return WEEK[begin : end + 1] if begin <= end else (*WEEK[begin:], *WEEK[: end + 1])


def _is_number(token: Token) -> bool:
    return token.kind in {Kind.NUMBER, Kind.CLOCK, Kind.ODD}


def _moments(tokens: Sequence[Token], first: int, last: int) -> tuple[list[Moment], set[int]]:
    """The times of day named, and the indices of the tokens that name them."""
    found: list[Moment] = []
    used: set[int] = set()
    index = first
    while index < last:
        read = _moment(tokens, index, first, last)
        if read is None:
            index += 1
            continue
        moment, after = read
        found.append(moment)
        used.update(range(index, after))
        index = after
    return found, used


def _text(tokens: Sequence[Token], index: int, last: int) -> str:
    return tokens[index].text if index < last else ""


def _moment(tokens: Sequence[Token], index: int, first: int, last: int) -> tuple[Moment, int] | None:
    """The time of day that begins at `index`, and the index after it."""
    token = tokens[index]
    if token.text in {"noon", "midday"}:
        return Moment(_NOON_H * 60, settled=True), index + 1
    if token.text == "midnight":
        return Moment(0, settled=True), index + 1
    before_hour = _minutes_beside_hour(tokens, index, last)
    if before_hour is not None:
        offset, hour_at = before_hour
        hour = tokens[hour_at]
        if hour.kind is Kind.NUMBER and 1 <= hour.value <= _HOURS_A_DAY and hour.value % 1 == 0:
            return _with_period(
                tokens, int(hour.value) * 60 + offset, hour_at + 1, first, last, sure=hour.value > _NOON_H
            )
        if hour.text in {"noon", "midday"}:
            return Moment(_NOON_H * 60 + offset, settled=True), hour_at + 1
        return None
    return _plain_moment(tokens, index, first, last)


def _plain_moment(tokens: Sequence[Token], index: int, first: int, last: int) -> tuple[Moment, int] | None:
    """ "6:30", "0630", "7pm", "7 o'clock", "at 7"."""
    token = tokens[index]
    following = _text(tokens, index + 1, last)
    if token.kind is Kind.CLOCK:
        hours, minutes = (int(part) for part in token.text.split(":")[:2])
        if hours >= _HOURS_A_DAY or minutes >= 60:
            return None
        sure = token.text.startswith("0") or hours >= _NOON_H
        return _with_period(tokens, hours * 60 + minutes, index + 1, first, last, sure=sure)
    if token.kind is not Kind.NUMBER:
        return None
    if token.text.isdigit() and len(token.text) == _FOUR_DIGITS:
        hours, minutes = int(token.text[:2]), int(token.text[2:])
        if hours < _HOURS_A_DAY and minutes < 60:
            after = index + 2 if following in {"hours", "h"} else index + 1
            return _with_period(tokens, hours * 60 + minutes, after, first, last, sure=True)
        return None
    if following in {"minutes", "hours", "h", "reps", "kg", "lb", "seconds", "days", "times", "x", "half"}:
        if (
            following == "h"
            and index + 2 < last
            and tokens[index + 2].glued
            and tokens[index + 2].text.isdigit()
        ):
            return _with_period(
                tokens,
                int(token.value) * 60 + int(tokens[index + 2].value),
                index + 3,
                first,
                last,
                sure=token.value > _NOON_H,
            )
        return None
    hours, minutes = int(token.value), 0
    if token.value % 1:
        digits = token.text.partition(".")[2]
        if len(digits) != 2 or int(digits) >= 60:
            return None
        minutes = int(digits)
    elif (
        index + 1 < last
        and tokens[index + 1].kind is Kind.NUMBER
        and tokens[index + 1].worded
        and 0 < tokens[index + 1].value < 60
        and token.worded
    ):
        minutes = int(tokens[index + 1].value)
        index += 1
    if not 0 <= hours <= _HOURS_A_DAY:
        return None
    after = index + 1
    if _text(tokens, after, last) in {"o'clock", "oclock", "clock"}:
        return _with_period(tokens, hours * 60 + minutes, after + 1, first, last, sure=hours > _NOON_H)
    if _period(tokens, after, last) is not None or _text(
        tokens, index - 1 if not minutes or token.value % 1 else index - 2, last
    ) in {"at", "@", "by", "around", "until", "till", "to", "for", "after"}:
        return _with_period(tokens, hours * 60 + minutes, after, first, last, sure=hours > _NOON_H)
    return None


def _minutes_beside_hour(tokens: Sequence[Token], index: int, last: int) -> tuple[int, int] | None:
    """ "half past", "half", "quarter to", "ten past" at `index`: minutes to add, and the index of the hour."""
    if tokens[index].text == "a" and _text(tokens, index + 1, last) == "quarter":
        index += 1
    word, following = tokens[index].text, _text(tokens, index + 1, last)
    if word == "half":
        if following == "past":
            return 30, index + 2
        if index + 1 < last and tokens[index + 1].kind is Kind.NUMBER:
            return 30, index + 1
        return None
    minutes = 15 if word == "quarter" else None
    if tokens[index].kind is Kind.NUMBER and tokens[index].value in {5, 10, 15, 20, 25}:
        minutes = int(tokens[index].value)
        if following == "minutes":
            index += 1
            following = _text(tokens, index + 1, last)
    if minutes is None or index + 2 >= last:
        return None
    if following in {"past", "after"}:
        return minutes, index + 2
    if following in {"to", "before", "of", "till", "two"} and tokens[index + 2].kind is Kind.NUMBER:
        return -minutes, index + 2
    return None


def _period(tokens: Sequence[Token], index: int, last: int) -> tuple[bool, int] | None:
    """Whether am or pm stands at `index` (True: late), and the index after it."""
    words = [_text(tokens, index + n, last) for n in range(4)]
    if words[0] in {"am", "pm"}:
        return words[0] == "pm", index + 1
    if words[0] in {"a", "p"} and (words[1] == "m" or words[1:3] == [".", "m"]):
        return words[0] == "p", index + (2 if words[1] == "m" else 3)
    skip = 0
    while words[skip] in {"in", "the", "at", "of", "every", "each", "this"} and skip < 3:
        skip += 1
    if words[skip] in _MORNING - {"a", "am"}:
        return False, index + skip + 1
    if words[skip] in _LATE - {"p", "pm"}:
        return True, index + skip + 1
    return None


def _with_period(
    tokens: Sequence[Token], minute: int, after: int, first: int, last: int, *, sure: bool
) -> tuple[Moment, int]:
    """The moment with its morning or evening, said right after it or elsewhere in the sentence."""
    period = _period(tokens, after, last)
    if period is not None:
        late, after = period
    else:
        words = {token.text for token in tokens[first:last]}
        is_late, is_early = bool(words & (_LATE - {"p"})), bool(words & (_MORNING - {"a", "am"}))
        if is_late == is_early:
            return Moment(minute % _DAY_MINUTES, settled=sure), after
        late = is_late
    noon = _NOON_H * 60
    if not sure or minute < noon:
        if late and minute < noon:
            minute += noon
        elif not late and minute >= noon and minute < noon + 60:
            minute -= noon
        elif (
            late
            and minute >= noon
            and any(token.text in {"night", "midnight"} for token in tokens[first:last])
            and minute < noon + 60
        ):
            minute -= noon
    return Moment(minute % _DAY_MINUTES, settled=True), after


def _span(tokens: Sequence[Token], first: int, last: int, used: set[int]) -> tuple[int | None, set[int]]:
    """A span of time in minutes ("half an hour", "1 h 30"), and the indices of its tokens."""
    words = [token.text for token in tokens[first:last]]
    line = " ".join(words)
    spans: set[int] = set()
    total = Decimal(0)
    for index in range(first, last):
        following = _text(tokens, index + 1, last)
        if tokens[index].kind is not Kind.NUMBER or index in used:
            continue
        if following in {"minutes", "m"}:
            total += tokens[index].value
            spans.add(index)
        elif following in {"hours", "h", "hr"}:
            total += tokens[index].value * 60
            spans.add(index)
            if (
                index + 2 < last
                and tokens[index + 2].kind is Kind.NUMBER
                and _text(tokens, index + 3, last) != "minutes"
            ):
                total += tokens[index + 2].value
                spans.add(index + 2)
    if "half an hours" in line:
        total += 30
    elif "quarter of an hours" in line:
        total += 15
    elif any(f" {article} hours" in f" {line}" for article in ("an", "a", "one", "another")) and not spans:
        total += 60
        if "hours and a half" in line:
            total += 30
        if "hours and a quarter" in line:
            total += 15
    elif "couple of hours" in line:
        total += 120
    if not total and not spans:
        bare = [i for i in range(first, last) if tokens[i].kind is Kind.NUMBER and i not in used]
        if (
            len(bare) == 1
            and bare[0] > first
            and tokens[bare[0] - 1].text in {"in", "snooze", "for", "later"}
            and tokens[bare[0]].value > 4
        ):
            return int(tokens[bare[0]].value), {bare[0]}
        return None, spans
    if total != total.to_integral_value() or not 0 < total <= _DAY_MINUTES:
        return None, set()
    return int(total), spans
