"""The auditor keeps a diary of its own of what was said to whom, and compares. It shares no code with the program.

It knows what people mean by what they type, what their phones received, and when program and network were away. Local times are
worked out with pytz. It reads the program's database only for the sets that stand.
"""

from __future__ import annotations

import sqlite3
from collections import Counter
from contextlib import closing
from dataclasses import dataclass, field
from datetime import UTC, date, datetime, timedelta
from typing import TYPE_CHECKING

import pytz

if TYPE_CHECKING:
    from pathlib import Path

WEEK = ("mon", "tue", "wed", "thu", "fri", "sat", "sun")
UNASKED = ("Reminder", "FollowUp", "ComeBack")
DAY, HOUR, MINUTE = timedelta(days=1), timedelta(hours=1), timedelta(minutes=1)
LATEST = timedelta(hours=2)  # a reminder may be so late, and no later
SLACK = timedelta(minutes=6)  # a messenger that was refused is tried again after five minutes at most
NIGHT = (21, 8)


@dataclass(frozen=True)
class Wish:
    """What a trainee wants from an instant on: days, a time, the zone, days off, days more. No days: no reminders."""

    since: datetime
    days: tuple[str, ...]
    at: str
    zone: str
    off: frozenset[date] = frozenset()
    more: frozenset[date] = frozenset()

    def on(self, day: date) -> bool:
        """Whether a day is one of theirs."""
        return day in self.more or (WEEK[day.weekday()] in self.days and day not in self.off)

    def instant(self, day: date) -> datetime:
        """When the wall clock shows their time on a day; the offset before a gap, the first of two."""
        hours, minutes = (int(part) for part in self.at.split(":"))
        place, local = pytz.timezone(self.zone), datetime(day.year, day.month, day.day, hours, minutes)  # noqa: DTZ001
        try:
            return place.localize(local, is_dst=None).astimezone(UTC)
        except pytz.AmbiguousTimeError:
            return min(place.localize(local, is_dst=late).astimezone(UTC) for late in (True, False))
        except pytz.NonExistentTimeError:
            return (local - place.localize(local - DAY).utcoffset()).replace(tzinfo=UTC)


@dataclass
class Page:
    """One trainee's page: wishes, what was heard (kind and when it was sent), texts handled, workouts, sets told.

    `reminded` are days on which a reminder came, on the clock of then: after a journey it does not come again.
    `vague` are days on which nobody knows whether a text was handled before midnight or after.
    """

    zone: str
    wishes: list[Wish] = field(default_factory=list)
    heard: list[tuple[str, datetime]] = field(default_factory=list)
    handled: list[datetime] = field(default_factory=list)
    begun: list[datetime] = field(default_factory=list)
    ended: list[datetime] = field(default_factory=list)
    snoozed: list[datetime] = field(default_factory=list)
    came_back: datetime | None = None
    tried: list[datetime] = field(default_factory=list)
    vague: set[date] = field(default_factory=set)
    reminded: set[date] = field(default_factory=set)
    told: Counter = field(default_factory=Counter)


class Auditor:
    """Notes everything; `verdict` says what was wrong."""

    def __init__(self) -> None:
        self.pages: dict[int, Page] = {}
        self.away: list[tuple[datetime, datetime]] = []
        self.faults: list[str] = []

    def joins(self, trainee: int, zone: str) -> None:
        """A trainee whom nobody has spoken to."""
        self.pages[trainee] = Page(zone)

    def program_away(self, since: datetime, until: datetime) -> None:
        """The program was not there: killed, or its host asleep."""
        self.away.append((since, until))

    def delivered(self, trainee: int, kind: str, sent_at: datetime, *, again: bool) -> None:
        """A message reached a phone."""
        page = self.pages[trainee]
        if kind == "Card" and page.handled and (not page.begun or (page.ended and page.ended[-1] > page.begun[-1])):
            page.begun.append(sent_at)
        if kind == "Summary":
            page.ended.append(sent_at)
        if kind not in UNASKED or again:
            return
        wish = page.wishes[-1] if page.wishes else None
        if wish is None or not wish.days:
            self.faults.append(f"{trainee}: {kind} at {sent_at} after stop")
        if kind != "Reminder" and not page.tried and not NIGHT[1] <= sent_at.astimezone(pytz.timezone(page.zone)).hour < NIGHT[0]:
            self.faults.append(f"{trainee}: {kind} at {sent_at}, at night")
        if page.came_back is not None and not any(at >= page.came_back for at in page.tried + page.handled):
            self.faults.append(f"{trainee}: {kind} at {sent_at} after the come-back, to somebody who said nothing")
        page.came_back = sent_at if kind == "ComeBack" else page.came_back
        if page.begun and (not page.ended or page.ended[-1] < page.begun[-1]) and sent_at - page.begun[-1] < 20 * MINUTE:
            self.faults.append(f"{trainee}: {kind} at {sent_at} during a workout")
        if page.ended and page.begun and self._day(page, page.begun[-1]) == self._day(page, sent_at):
            self.faults.append(f"{trainee}: {kind} at {sent_at} after the day's workout")
        page.heard.append((kind, sent_at))
        if kind == "Reminder":
            page.reminded.add(self._day(page, sent_at))

    @staticmethod
    def _day(page: Page, at: datetime) -> date:
        return at.astimezone(pytz.timezone(page.zone)).date()

    def tried(self, trainee: int, means: tuple, now: datetime) -> None:
        """A text was handed in; it may have been handled, though nobody heard so."""
        page = self.pages[trainee]
        page.tried.append(now)
        if means[:1] == ("later",):
            page.snoozed.append(now + means[1] * MINUTE)

    def handled(self, trainee: int, means: tuple, now: datetime) -> None:
        """A text of a trainee was handled, at the latest now, and what they meant by it."""
        page = self.pages[trainee]
        page.handled.append(now)
        first = next((at for at in page.tried if now - at < 12 * HOUR), now)
        page.tried.clear()
        if means and first.astimezone(pytz.timezone(page.zone)).date() != now.astimezone(pytz.timezone(page.zone)).date():
            page.vague |= {moment.date() + number * DAY for moment in (first, now) for number in (-1, 0, 1, 2)}
        before = page.wishes[-1] if page.wishes else Wish(now, (), "00:00", page.zone)
        today = now.astimezone(pytz.timezone(page.zone)).date()
        match means:
            case ("set", days, at):
                page.wishes.append(Wish(now, days, at, page.zone))
            case ("stop",):
                page.wishes.append(Wish(now, (), "00:00", page.zone))
            case ("zone", zone):
                page.zone = zone
                page.wishes.append(Wish(now, before.days, before.at, zone, before.off, before.more))
            case ("away", days):
                gone = frozenset(today + number * DAY for number in range(days))
                page.wishes.append(Wish(now, before.days, before.at, page.zone, before.off | gone, before.more - gone))
            case ("not today",):
                page.wishes.append(Wish(now, before.days, before.at, page.zone, before.off | {today}, before.more - {today}))
            case ("move",) if before.on(today):
                to = today + DAY
                more = (before.more - {today}) | (frozenset() if before.on(to) else {to})
                page.wishes.append(Wish(now, before.days, before.at, page.zone, before.off | {today}, more))
            case ("reps", reps):
                page.told[reps] += 1
            case ("amend", wrong, right):
                page.told[wrong] -= 1
                page.told[right] += 1
            case _:
                pass

    def verdict(self, file: Path, end: datetime, refused: list) -> list[str]:
        """Everything that was wrong, one line each."""
        faults = list(self.faults)
        for trainee, page in self.pages.items():
            faults += self._sets(trainee, page, file)
            faults += self._days(trainee, page)
            faults += self._missing(trainee, page, end, refused)
            faults += self._uncalled_for(trainee, page)
            faults += self._put_off(trainee, page, end, refused)
        return faults

    def _sets(self, trainee: int, page: Page, file: Path) -> list[str]:
        with closing(sqlite3.connect(file)) as connection:
            rows = connection.execute(
                "SELECT reps FROM set_record WHERE trainee_id = ? AND number NOT IN"
                " (SELECT number FROM set_void WHERE trainee_id = ?) AND number NOT IN"
                " (SELECT replaces FROM set_record WHERE trainee_id = ? AND replaces IS NOT NULL)",
                (trainee,) * 3,
            ).fetchall()
        kept, told = Counter(reps for (reps,) in rows), +page.told
        lost, more = told - kept, kept - told
        return ([f"{trainee}: sets lost: {dict(lost)}"] if lost else []) + (
            [f"{trainee}: sets too many: {dict(more)}"] if more else []
        )

    def _days(self, trainee: int, page: Page) -> list[str]:
        """At most one unasked message a day; what was put off by the trainee does not count."""
        place = pytz.timezone(page.zone)
        own = [at for _, at in page.heard if not any(asked <= at <= asked + LATEST + SLACK for asked in page.snoozed)]
        moved = len({wish.zone for wish in page.wishes}) > 1  # days of two zones cannot be told apart here
        many = [day for day, count in Counter(at.astimezone(place).date() for at in own).items() if count > 1]
        return [] if moved else [f"{trainee}: more than one on {day}" for day in many]

    def _due(self, page: Page, end: datetime) -> list[tuple[datetime, Wish, date]]:
        """Every instant at which a reminder is wanted."""
        found = []
        for number, wish in enumerate(page.wishes):
            until = page.wishes[number + 1].since if number + 1 < len(page.wishes) else end
            day = wish.since.date() - 2 * DAY
            while day <= until.date() + 2 * DAY:
                if wish.days and wish.on(day) and wish.since < (instant := wish.instant(day)) < until:
                    found.append((instant, wish, day))
                day += DAY
        return found

    def _missing(self, trainee: int, page: Page, end: datetime, refused: list) -> list[str]:
        away = [*self.away, *((since, until) for who, since, until in refused if who == trainee)]
        missing = []
        for instant, wish, day in self._due(page, end - LATEST):
            latest = instant + LATEST
            place = pytz.timezone(wish.zone)
            heard = any(kind != "FollowUp" and instant <= at <= latest + SLACK for kind, at in page.heard)
            came_back = [at for kind, at in page.heard if kind == "ComeBack" and at < instant + 12 * HOUR]
            last_said = max((at for at in page.handled if at <= instant), default=wish.since)
            silent = bool(came_back) and came_back[-1] >= last_said
            silent = silent or any(until - since > DAY and until > last_said and since < instant for since, until in away)  # lost
            trained = any(at.astimezone(place).date() == day or at <= instant <= at + HOUR for at in page.begun if at <= latest)
            spoke = any(instant <= at <= latest for at in page.handled)  # a text that came first may have answered it
            hindered = self._hindered(away, instant, place)
            earlier = any(at.astimezone(place).date() == day and at < instant for _, at in page.heard)
            if not (day in page.vague or day in page.reminded or heard or silent or trained or spoke or hindered or earlier):
                missing.append(f"{trainee}: no reminder for {day} {wish.at} {wish.zone} ({instant})")
        return missing

    @staticmethod
    def _hindered(away: list[tuple[datetime, datetime]], instant: datetime, place: pytz.BaseTzInfo) -> bool:
        """Whether program or network were away for so long after an instant that nothing may have been said, or until the night."""
        missed = [(max(since, instant), min(until, instant + LATEST)) for since, until in away if until >= instant]
        missed = [(since, until) for since, until in missed if since < until or since <= instant]
        gone = sum((until - since for since, until in missed if since < until), timedelta())
        night = [until.astimezone(place) for _, until in missed if until - instant > 5 * MINUTE]
        late = any(not NIGHT[1] <= at.hour < NIGHT[0] or at.date() != instant.astimezone(place).date() for at in night)
        return gone > HOUR or late

    def _uncalled_for(self, trainee: int, page: Page) -> list[str]:
        """Each reminder is for an instant that was wanted, or was put off to then; a come-back ends a silence of a week."""
        found = []
        for kind, at in page.heard:
            wish = next((wish for wish in reversed(page.wishes) if wish.since <= at), None)
            earlier = [
                wish for wish in page.wishes if wish.since <= at and (wish.since >= at - LATEST - SLACK or wish is page.wishes[0])
            ]
            wishes = ([wish] if wish is not None else []) + earlier
            wanted = any(
                one.days and one.on(day) and one.instant(day) <= at <= one.instant(day) + LATEST + SLACK
                for one in wishes
                for day in (at.date() - DAY, at.date(), at.date() + DAY)
            )
            asked = any(until <= at <= until + LATEST + SLACK for until in page.snoozed)
            if kind == "Reminder" and not (wanted or asked or at.date() in page.vague):
                found.append(f"{trainee}: a reminder at {at} that nobody wanted")
            if kind == "ComeBack" and any(at - 7 * DAY < spoken < at for spoken in page.handled):
                found.append(f"{trainee}: a come-back at {at} to somebody who is there")
        return found

    def _put_off(self, trainee: int, page: Page, end: datetime, refused: list) -> list[str]:
        """What a trainee put off came at its time, unless they wrote or trained meanwhile."""
        away = [*self.away, *((since, until) for who, since, until in refused if who == trainee)]
        place, lost = pytz.timezone(page.zone), []
        for until in page.snoozed:
            said = until - 30 * MINUTE
            meanwhile = any(said + MINUTE < at <= until + LATEST for at in [*page.handled, *page.begun])
            heard = any(kind == "Reminder" and until <= at <= until + LATEST + SLACK for kind, at in page.heard)
            trained = any(self._day(page, at) == self._day(page, until) for at in page.begun)
            if not (meanwhile or heard or trained or until + LATEST > end or self._hindered(away, until, place)):
                lost.append(f"{trainee}: nothing came at {until}, to which it was put off")
        return lost
