"""Driving an assistant on a simulated clock: the same alarm, store and outbox, with time set instead of waited for."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from datetime import datetime

    from bot.assistant import Assistant
    from bot.clock import SimulatedClock


class Simulation:
    """Moves the clock from one due instant to the next; what happens at each is over before the clock moves on."""

    def __init__(self, assistant: Assistant, clock: SimulatedClock) -> None:
        self._assistant = assistant
        self._clock = clock

    async def advance_to(self, instant: datetime) -> None:
        """Let everything happen that is due up to `instant`, each at its own time, and set the clock to `instant`."""
        while (due := self._assistant.next_due()) is not None and due <= instant:
            await self._at(max(due, self._clock.now()))
        await self._at(instant)

    async def _at(self, instant: datetime) -> None:
        self._clock.set(instant)
        self._assistant.rearm()
        await self._assistant.settled()
