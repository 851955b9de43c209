"""A messenger that delays, repeats, loses and refuses; and that hands a text in again until it hears that it is kept."""

from __future__ import annotations

import random
from datetime import datetime, timedelta
from typing import TYPE_CHECKING, Protocol

from bot.errors import Gone, Unreachable, Unsure

if TYPE_CHECKING:
    from bot.clock import SimulatedClock

REFUSES, FORGETS, BLOCKED = (
    0.01,
    0.02,
    0.002,
)  # of the messages: one starts a time of refusing, one is delivered without a word of it

DOUBTFUL = timedelta(hours=5)  # what was in doubt comes again soon, or not at all


class Hearing(Protocol):
    """Who hears what is delivered."""

    def delivered(self, trainee: int, kind: str, text: str, sent_at: datetime, heard_at: datetime, *, again: bool) -> None:
        """A message reached a phone; `again` when the program could not know that it had reached it before."""


class Messenger:
    """Sends to phones. Each chat has a fate of its own, so that the order between chats decides nothing."""

    def __init__(self, seed: int, clock: SimulatedClock, hearing: Hearing) -> None:
        self._seed = seed
        self._clock = clock
        self._hearing = hearing
        self._chance: dict[int, random.Random] = {}
        self._refuses_until: dict[int, datetime] = {}
        self._heard_at: dict[int, datetime] = {}
        self._doubt: dict[int, tuple[str, datetime]] = {}
        self._last: dict[int, tuple[str, datetime]] = {}
        self.refused: list[tuple[int, datetime, datetime]] = []
        self._blocked_until: dict[int, datetime] = {}

    def program_died(self) -> None:
        """What was sent at this very instant may not have been noted: it may come again."""
        for trainee, (text, sent_at) in self._last.items():
            if sent_at == self._clock.now():
                self._doubt[trainee] = (text, sent_at)

    async def send(self, trainee: int, letter) -> None:
        """Deliver a message, or raise what a network raises."""
        message = letter.rendered
        now = self._clock.now()
        chance = self._chance.setdefault(trainee, random.Random(self._seed * 77 + trainee))  # noqa: S311 - a game
        if now < self._blocked_until.get(trainee, now):
            raise Gone("blocked")
        if now < self._refuses_until.get(trainee, now):
            raise Unreachable(chance.choice([None, 3.0, 20.0]))
        roll = chance.random()
        if roll < REFUSES:
            until = now + timedelta(seconds=chance.choice([4, 30, 600, 4000]))
            self._refuses_until[trainee] = until
            self.refused.append((trainee, now, until))
            raise Unreachable(chance.choice([None, 3.0, 20.0]))
        if roll < REFUSES + BLOCKED:
            self._blocked_until[trainee] = now + timedelta(days=chance.randint(1, 4))
            self.refused.append((trainee, now, self._blocked_until[trainee]))
            raise Gone("blocked")
        heard_at = max(now + timedelta(seconds=chance.choice([0, 0.3, 1, 6])), self._heard_at.get(trainee, now))
        self._heard_at[trainee] = heard_at
        doubted, since = self._doubt.pop(trainee, ("", now))
        again = doubted == message.text and now - since < DOUBTFUL
        self._last[trainee] = (message.text, now)
        self._hearing.delivered(trainee, message.kind, message.text, now, heard_at, again=again)
        if chance.random() < FORGETS:
            self._doubt[trainee] = (message.text, now)
            raise Unsure
