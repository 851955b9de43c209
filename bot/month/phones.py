"""The phones of the month: a channel that keeps every chat as it is read, and has people answer."""

from __future__ import annotations

from collections import defaultdict
from dataclasses import dataclass
from datetime import datetime
from typing import TYPE_CHECKING

from bot.ports import Letter

if TYPE_CHECKING:
    from collections.abc import Callable

    from bot.clock import SimulatedClock


@dataclass(frozen=True)
class Entry:
    """A message in a chat: when (UTC), the text that was sent, or the letter that came."""

    at: datetime
    sent: str | None = None
    letter: Letter | None = None


class Phones:
    """A channel whose messages are all kept, by whose chat it is."""

    def __init__(self, clock: SimulatedClock, arrived: Callable[[int, Letter], None]) -> None:
        self._clock = clock
        self._arrived = arrived
        self.chats: defaultdict[int, list[Entry]] = defaultdict(list)

    async def send(self, trainee: int, letter: Letter) -> None:
        """Keep a message, and let its reader know, see `Channel`."""
        self.chats[trainee].append(Entry(self._clock.now(), letter=letter))
        self._arrived(trainee, letter)

    def sent(self, trainee: int, text: str) -> None:
        """Somebody sends a text."""
        self.chats[trainee].append(Entry(self._clock.now(), sent=text))
