"""One life of the program over a database file: it can be killed at any commit, and begun anew on what it left.

It is a kill of the process as far as anything outside can tell: from that commit on nothing more is written, and nothing sent.
"""

from __future__ import annotations

import asyncio
import contextlib
from typing import TYPE_CHECKING, Literal

from sqlalchemy import event

from bot.alarms import Alarms
from bot.assistant import Assistant
from bot.bootstrap import rendered
from bot.errors import Unreachable
from bot.outbox import Outbox
from bot.store.store import Store
from core.circuit import Circuit, Span, Station
from core.tempo import Tempo

if TYPE_CHECKING:
    from datetime import datetime
    from pathlib import Path

    from bot.clock import SimulatedClock

When = Literal["before", "after"]
SHORT = Circuit(
    "Kitchen two",
    2,
    Span(20, 20),
    Span(30, 30),
    0,
    (
        Station("goblet-squat", 40, None, Tempo(2, 0, 1, 0), sides=False, reserve=Span(1, 2)),
        Station("hammer-curl", 40, None, Tempo(2, 0, 1, 0), sides=False, reserve=Span(1, 2)),
    ),
)  # short, so that a whole day has few commits


class Killed(Exception):
    """The process is no more."""


class Life:
    """From a start to a kill or to the end. `commits` counts the transactions that wrote something and came to their end."""

    def __init__(self, file: Path, clock: SimulatedClock, messenger) -> None:
        self._file = file
        self._clock = clock
        self._messenger = messenger
        self._kill_at: tuple[When, int] | None = None
        self._wrote = False
        self.commits = 0
        self.dead = False

    def kill_at(self, when: When, commit: int) -> None:
        """Die before or after this commit, counted from the start of this life."""
        self._kill_at = (when, commit)

    async def begin(self) -> bool:
        """Open the database and start; False when the program died of it."""
        self.store = await Store.open(f"sqlite:///{self._file}", rendered)
        engine = self.store._database.engine  # noqa: SLF001 - where every transaction passes
        self._commit = engine.dialect.do_commit
        engine.dialect.do_commit = self._do_commit
        event.listen(engine, "before_cursor_execute", self._before_statement)
        self._outbox = Outbox(self.store.outgoing, self._clock, self)
        self._alarms = Alarms(self._clock)
        self.assistant = Assistant(self.store, self._clock, self._outbox, self._alarms, coach="Coach Wren")
        with contextlib.suppress(Killed):
            await self.assistant.start()
            await self.assistant.settled()
        return not self.dead

    async def send(self, trainee: int, letter) -> None:
        """Send through the messenger, unless the process is no more."""
        if self.dead:
            raise Unreachable
        await self._messenger.send(trainee, letter)

    async def advance_to(self, instant: datetime) -> None:
        """Let everything happen that is due up to an instant, or up to the kill; the clock stands where it ended."""
        while not self.dead and (due := self.assistant.next_due()) is not None and due <= instant:
            await self._at(max(due, self._clock.now()))
        if not self.dead:
            await self._at(instant)

    async def _at(self, instant: datetime) -> None:
        self._clock.set(instant)
        self.assistant.rearm()
        await self.assistant.settled()

    async def said(self, trainee: int, text: str, message_id: str) -> bool:
        """Hand in a text; True when the messenger heard that it is kept."""
        kept = await self.assistant.said(trainee, text, message_id, "weeks")
        await self.assistant.settled()
        return kept and not self.dead

    async def end(self) -> None:
        """Close the files, as the end of a process does, with nothing said goodbye to when it was killed."""
        if not self.dead:
            await self.assistant.stop()
        else:
            if self._alarms._scheduler.running:  # noqa: SLF001 - it may have died before
                await self._alarms.stop()
            for sender in [chat.sender for chat in self._outbox._chats.values() if chat.sender is not None]:  # noqa: SLF001
                sender.cancel()  # it died with the process
            await asyncio.sleep(0)
        await self.store.close()

    def _before_statement(self, _connection, _cursor, statement, *_) -> None:
        if self.dead:
            raise Killed
        self._wrote = self._wrote or statement.startswith(("INSERT", "UPDATE", "DELETE"))

    def _do_commit(self, connection) -> None:
        if self.dead:
            raise Killed
        if not self._wrote:
            self._commit(connection)
            return
        self._wrote = False
        self.commits += 1
        when = self._kill_at[0] if self._kill_at is not None and self._kill_at[1] == self.commits else None
        if when == "before":
            self.dead = True
            raise Killed
        self._commit(connection)
        if when == "after":
            self.dead = True
            raise Killed
