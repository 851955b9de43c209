"""Living the month: people, their coach and the program on one simulated clock. The same file lives the same month."""

from __future__ import annotations

import heapq
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from datetime import UTC, datetime, timedelta
from typing import TYPE_CHECKING
from zoneinfo import ZoneInfo

from bot.assistant import on_duty
from bot.bootstrap import trainee_in
from bot.clock import SimulatedClock
from bot.month.phones import Entry, Phones
from bot.month.player import BETWEEN_S, Player, Script
from bot.simulation import Simulation

if TYPE_CHECKING:
    from pathlib import Path

    from bot.assistant import Assistant
    from bot.bootstrap import Demo
    from bot.month.cast import Month, Saying
    from bot.ports import Letter
    from bot.store.store import Store
    from core.trainee import Block

CHANNEL = "month"
JOIN_AFTER = timedelta(minutes=7)  # one after the other
LOOKS_AFTER = timedelta(minutes=1)  # at news
OPENS = None  # in place of a text: the chat is opened


@dataclass(frozen=True)
class Lived:
    """What came of it: every chat by name, the numbers of the people by name, and everybody's zone."""

    chats: Mapping[str, Sequence[Entry]]
    numbers: Mapping[str, int]
    zones: Mapping[str, str]


@dataclass(order=True)
class _Coming:
    """A text on its way."""

    at: datetime
    number: int
    who: int = field(compare=False)
    words: str | None = field(compare=False)


class Living:
    """One month."""

    def __init__(self, month: Month, scenario: Demo, folder: Path) -> None:
        self._month = month
        self._scenario = scenario
        self._began = _instant(month.begins, month.zone)
        self._until = _instant(month.ends, month.zone)
        self._folder = folder
        self._clock = SimulatedClock(self._began)
        self._phones = Phones(self._clock, self._read)
        self._players: dict[int, Player | Script] = {}
        self._zones: dict[int, str] = {}
        self._coach = 0
        self._news_seen = False  # by the coach, and not looked at yet
        self._coming: list[_Coming] = []
        self._count = 0

    async def live(self, store: Store) -> Lived:
        """The month, in a store that is empty."""
        month, scenario = self._month, self._scenario
        self._coach = await trainee_in(store, scenario.coach, month.zone, scenario)
        self._zones[self._coach] = month.zone
        numbers = {scenario.coach: self._coach}
        self._send(self._began, self._coach, OPENS)
        joins_at = self._began + JOIN_AFTER
        for person in month.people:
            zone = person.zone or month.zone
            number = numbers[person.name] = await trainee_in(store, person.name, zone, scenario)
            self._zones[number] = zone
            self._players[number] = Player(person, month, self._began.astimezone(ZoneInfo(zone)))
            self._send(joins_at, number, OPENS)
            joins_at += JOIN_AFTER
            self._plan(number, person.sayings)
        self._players[self._coach] = Script(month.coach.answers, scenario.coach)
        self._plan(self._coach, month.coach.sayings)
        async with on_duty(store, self._clock, self._phones, scenario.coach, data=self._folder) as assistant:
            assistant.when_news(self._news)
            for person in month.people:
                assistant.wishes(numbers[person.name], fewer=person.fewer)
            await self._go_on(assistant)
        chats = {name: self._phones.chats[number] for name, number in numbers.items()}
        return Lived(chats, numbers, {name: self._zones[number] for name, number in numbers.items()})

    async def _go_on(self, assistant: Assistant) -> None:
        """Whatever comes first, the program's next alarm or a text, until the end."""
        simulation = Simulation(assistant, self._clock)
        while True:
            due = assistant.next_due()
            text_at = self._coming[0].at if self._coming else None
            at = min((instant for instant in (due, text_at) if instant is not None), default=self._until)
            if at >= self._until:
                await simulation.advance_to(self._until)
                return
            if at == due:
                await simulation.advance_to(max(at, self._clock.now()))
            else:
                await self._hand_in(assistant, heapq.heappop(self._coming))

    async def _hand_in(self, assistant: Assistant, text: _Coming) -> None:
        self._clock.set(max(text.at, self._clock.now()))
        if text.words is OPENS:
            self._news_seen = False
            await assistant.opened(text.who)
            await assistant.settled()
            return
        self._phones.sent(text.who, text.words)
        await assistant.said(text.who, text.words, f"{text.number}", CHANNEL)
        await assistant.settled()

    def _plan(self, number: int, sayings: Sequence[Saying]) -> None:
        for saying in sayings:
            at = _instant(saying.at, self._zones[number])
            for words in saying.says:
                self._send(at, number, words.format(plan=_typed(self._scenario.plan)))
                at += timedelta(seconds=BETWEEN_S)

    def _read(self, number: int, letter: Letter) -> None:
        now = self._clock.now()
        text = self._players[number].hears(letter.rendered, now.astimezone(ZoneInfo(self._zones[number])))
        if text is not None and text.words:
            self._send(now + timedelta(seconds=text.after_s), number, text.words)

    def _news(self) -> None:
        """The coach's phone shows that there is something to know: they look at it a little later, at all of it."""
        if not self._news_seen:
            self._news_seen = True
            self._send(self._clock.now() + LOOKS_AFTER, self._coach, OPENS)

    def _send(self, at: datetime, number: int, words: str | None) -> None:
        self._count += 1
        heapq.heappush(self._coming, _Coming(at, self._count, number, words))


def _typed(plan: Block) -> str:
    """A plan as a coach types it."""
    circuits = ", ".join(circuit.name for circuit in plan.circuits)
    return f"{circuits} on {' '.join(plan.days)}, {plan.weeks} weeks"


def _instant(local: datetime, zone: str) -> datetime:
    return local.replace(tzinfo=ZoneInfo(zone)).astimezone(UTC)
