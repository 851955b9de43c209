"""A trainee whose weeks go by: the real step, with what was said noted by the wall clock."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, date, datetime, timedelta
from zoneinfo import ZoneInfo

from bot.store.ledger import Ledger
from core.diary import Ending, WorkoutClosed, WorkoutOpened
from core.session.states import Idle
from tests.walking import MORNING, Walk

MONDAY = date(2026, 3, 2)
TIMED = {"Reminder", "FollowUp", "ComeBack"}  # what is said unasked, and what was put off


class Weeks(Walk):
    """One trainee from Sunday 1 March 2026, 20:00 of the zone on, with the cautions accepted and a rack."""

    def __init__(self, zone: str = "Europe/Lisbon", *, says: str = "remind me mon wed fri 6:30am") -> None:
        super().__init__(known=True)
        trainee = replace(self.ledger.trainee, zone=zone)
        self.ledger = Ledger(trainee, self.ledger.history)
        self.told: list[str] = []
        self.at("2026-03-01 20:00")
        if says:
            self.says(says)

    def _take(self, event):
        super()._take(event)
        zone = ZoneInfo(self.ledger.trainee.zone)
        self.told += [f"{self.now.astimezone(zone):%a %d %b %H:%M} {kind}" for kind in self.kinds() if kind in TIMED]
        return self

    def local(self, when: str) -> datetime:
        """The instant at which the trainee's wall clock shows this."""
        return datetime.fromisoformat(when).replace(tzinfo=ZoneInfo(self.ledger.trainee.zone)).astimezone(UTC)

    def at(self, when: str) -> Weeks:
        """Time goes on to this reading of the trainee's wall clock, with an alarm at every instant that was asked for."""
        instant = self.local(when)
        if self.now == MORNING and instant < MORNING:
            self.now = instant
        self.waits((instant - self.now).total_seconds())
        return self

    def away_until(self, when: str) -> Weeks:
        """Time goes on with the program away, and one alarm at the end."""
        return self.sleeps((self.local(when) - self.now).total_seconds())

    def trains(self, minutes: int = 30) -> Weeks:
        """A workout from now on, to its end."""
        number = len(self.history.workouts) + 1
        for entry in (
            WorkoutOpened(number, self.circuit, self.now),
            WorkoutClosed(number, self.now + timedelta(minutes=minutes), Ending.COMPLETE, 600),
        ):
            self.ledger = self.ledger.after(entry)
        self.now += timedelta(minutes=minutes)
        self.state = Idle()
        return self.says("help")

    def dropped(self) -> list[str]:
        """What fell due and was not said, and why."""
        return [f"{record.day:%a %d} {record.kind}: {record.dropped}" for record in self.history.unasked if record.dropped]
