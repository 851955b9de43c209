"""The world: people, a messenger and a program that dies, on one clock. The same seed lives the same weeks."""

from __future__ import annotations

import heapq
import random
from dataclasses import dataclass, field
from datetime import UTC, datetime, timedelta
from typing import TYPE_CHECKING

from bot.bootstrap import rendered
from bot.clock import SimulatedClock
from bot.store.store import Store
from core.trainee import Trainee
from tests.simulation.weeks.auditor import Auditor
from tests.simulation.weeks.messenger import Messenger
from tests.simulation.weeks.people import Text, a_person
from tests.simulation.weeks.program import SHORT, Life

if TYPE_CHECKING:
    from pathlib import Path

    from tests.simulation.weeks.people import Person

START = datetime(2026, 3, 8, 12, 0, tzinfo=UTC)  # a Sunday; clocks change in New York that day, in Lisbon three weeks later
PEOPLE = 3
KILLS_A_DAY = 1.5


@dataclass
class Weeks:
    """What came of some weeks: the faults the auditor found, and how much happened."""

    faults: list[str]
    sets: int
    heard: list[str]
    kills: int
    unasked: int


@dataclass(order=True)
class Happening:
    """Something that happens at an instant: a text on its way, a message heard, an evening, a kill, a host that falls asleep."""

    at: datetime
    number: int
    what: str = field(compare=False)
    trainee: int = field(compare=False, default=0)
    said: Text | None = field(compare=False, default=None)
    heard: tuple[str, str] = field(compare=False, default=("", ""))
    key: str = field(compare=False, default="")


class World:
    """Lives some weeks from a seed."""

    def __init__(self, seed: int, weeks: int, folder: Path) -> None:
        self._chance = random.Random(seed)  # noqa: S311 - a game
        self._file = folder / "weeks.sqlite3"
        self._end = START + timedelta(weeks=weeks)
        self._clock = SimulatedClock(START)
        self._auditor = Auditor()
        self._messenger = Messenger(seed, self._clock, self)
        self._people: dict[int, Person] = {number: a_person(number, seed) for number in range(1, PEOPLE + 1)}
        self._coming: list[Happening] = []
        self._count = 0
        self._up_at = START
        self._life: Life | None = None
        self._asleep_until: datetime | None = None
        self._heard: list[str] = []
        self._kills = 0

    async def live(self) -> Weeks:
        """The weeks, and the auditor's verdict at their end."""
        store = await Store.open(f"sqlite:///{self._file}", rendered)
        circuit = await store.save_circuit(SHORT)
        for number, person in self._people.items():
            await store.add_trainee(Trainee(f"trainee {number}", person.zone), circuit)
            self._auditor.joins(number, person.zone)
            self._answers(number, [Text(number, "hello")], START)
        await store.close()
        self._plan_troubles()
        while self._coming and self._coming[0].at <= self._end:
            await self._next()
        await self._program_to(self._end, to_the_end=True)
        if self._life is not None:
            await self._life.end()
        faults = self._auditor.verdict(self._file, self._end, self._messenger.refused)
        pages = self._auditor.pages.values()
        return Weeks(
            faults, sum(page.told.total() for page in pages), self._heard, self._kills, sum(len(page.heard) for page in pages)
        )

    def delivered(self, trainee: int, kind: str, text: str, sent_at: datetime, heard_at: datetime, *, again: bool) -> None:
        """A message reaches a phone."""
        self._heard.append(f"{sent_at:%m-%d %H:%M:%S} {trainee} {kind}{' again' if again else ''}")
        self._auditor.delivered(trainee, kind, sent_at, again=again)
        self._plan(heard_at, "hear", trainee, heard=(kind, text))

    def _plan(self, at: datetime, what: str, trainee: int = 0, said: Text | None = None, **more) -> None:
        self._count += 1
        heapq.heappush(self._coming, Happening(at, self._count, what, trainee, said, **more))

    def _later(self, coming: Happening, at: datetime) -> None:
        """The same text again, under the same id."""
        self._plan(at, "text", coming.trainee, coming.said, key=self._key(coming))

    @staticmethod
    def _key(coming: Happening) -> str:
        return coming.key or str(coming.number)

    def _plan_troubles(self) -> None:
        """Evenings on which people think of something, kills, and nights on which the host sleeps."""
        days = (self._end - START).days
        for day in range(days):
            for number in self._people:
                self._plan(START + timedelta(days=day, hours=self._chance.uniform(4, 9)), "evening", number)
            for _ in range(round(KILLS_A_DAY + self._chance.uniform(-0.5, 0.5))):
                self._plan(START + timedelta(days=day, hours=self._chance.uniform(0, 24)), "kill")
            if self._chance.random() < 0.1:
                self._plan(START + timedelta(days=day, hours=self._chance.uniform(0, 24)), "sleep")

    async def _next(self) -> None:
        """Whatever comes first: what the program has to do, or what happens around it."""
        coming = self._coming[0]
        if not await self._program_to(coming.at):
            return  # the program did something: something nearer may be coming now
        heapq.heappop(self._coming)
        match coming.what:
            case "text":
                await self._hand_in(coming)
            case "hear":
                self._answers(coming.trainee, self._people[coming.trainee].hears(*coming.heard, coming.at), coming.at)
            case "evening":
                self._answers(coming.trainee, self._people[coming.trainee].plans_a_day(coming.at), coming.at)
            case "kill" if self._life is not None:
                self._life.kill_at(self._chance.choice(["before", "after"]), self._life.commits + self._chance.randint(1, 40))
            case "sleep" if self._life is not None and self._asleep_until is None:
                self._asleep_until = coming.at + timedelta(hours=self._chance.uniform(0.2, 4))
                self._auditor.program_away(coming.at, self._asleep_until)
            case _:
                pass

    def _answers(self, trainee: int, texts: list[Text], now: datetime) -> None:
        self._people[trainee].on_the_way += len(texts)
        for text in texts:
            self._plan(now + timedelta(seconds=text.after_s), "text", trainee, text)

    async def _hand_in(self, coming: Happening) -> None:
        """Hand a text in, now and then twice; again later, when the program is away or did not say that it is kept."""
        assert coming.said is not None
        if self._life is None or self._asleep_until is not None:
            self._later(coming, max(self._up_at, self._asleep_until or self._up_at) + timedelta(seconds=1))
            return
        self._auditor.tried(coming.trainee, coming.said.means, self._clock.now())
        if await self._life.said(coming.trainee, coming.said.words, self._key(coming)):
            self._heard.append(f"{self._clock.now():%m-%d %H:%M:%S} {coming.trainee} > {coming.said.words}")
            self._people[coming.trainee].on_the_way -= 1
            self._auditor.handled(coming.trainee, coming.said.means, self._clock.now())
            if self._chance.random() < 0.05:
                await self._life.said(coming.trainee, coming.said.words, self._key(coming))
        else:
            self._later(coming, self._clock.now() + timedelta(seconds=5))
        await self._see_the_dead()

    async def _see_the_dead(self) -> None:
        life = self._life
        if life is None or not life.dead:
            return
        self._messenger.program_died()
        await life.end()
        away = self._chance.choice([2, 5, 20, 60, 60, 1200, 10_800])
        self._up_at = self._clock.now() + timedelta(seconds=away)
        self._auditor.program_away(self._clock.now(), self._up_at)
        self._life = None
        self._kills += 1

    async def _program_to(self, instant: datetime, *, to_the_end: bool = False) -> bool:
        """Let the program live up to an instant; False when it did something before, unless it is to go on to the end."""
        while True:
            if self._life is None:
                if self._up_at > instant:
                    self._clock.set(max(self._clock.now(), instant))
                    return True
                self._clock.set(max(self._clock.now(), self._up_at))
                self._life = Life(self._file, self._clock, self._messenger)
                await self._life.begin()
            elif self._asleep_until is not None:
                if self._asleep_until > instant:
                    return True
                self._clock.set(self._asleep_until)
                self._asleep_until = None
                await self._life.advance_to(self._clock.now())
            else:
                due = self._life.assistant.next_due()
                if due is None or due > instant:
                    await self._life.advance_to(instant)
                    await self._see_the_dead()
                    return self._life is not None or self._up_at > instant
                await self._life.advance_to(max(due, self._clock.now()))
            await self._see_the_dead()
            if not to_the_end:
                return False
