"""The outbox: messages that are committed go out in order within a chat, each chat on its own, at the pace the network allows."""

from __future__ import annotations

import asyncio
import logging
from collections import deque
from dataclasses import dataclass, field
from datetime import datetime, timedelta
from typing import TYPE_CHECKING

from bot.errors import Gone, Unreachable, Unsure
from bot.pace import NO_LIMITS, Pace, rank_of
from bot.ports import Letter
from bot.store.outgoing import STALE, is_countdown, is_stale

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable

    from bot.ports import Channel, Clock
    from bot.store.outgoing import Outgoing

FIRST_WAIT_S = 2.0
LONGEST_WAIT_S = 300.0

_log = logging.getLogger(__name__)


def backoff_s(failures: int, first_s: float, longest_s: float) -> float:
    """How long to wait after so many failures in a row: doubling from `first_s`, never above `longest_s`, in seconds."""
    return float(min(longest_s, first_s * 2.0 ** min(failures - 1, 30)))


@dataclass
class _Chat:
    """One chat's messages on their way.

    Attributes:
        letters: rows marked as sending, in order.
        more: rows wait in the database behind them.
        sender: the task that sends, None while nothing is being sent.
        failures: tries in a row that failed.
        until: nothing is tried before this instant; None: the chat may be tried.
        told: the network itself asked for that wait.
        interrupted: the database failed under this chat; its rows are seen to as after a restart.
    """

    letters: deque[Letter] = field(default_factory=deque)
    more: bool = False
    sender: asyncio.Task[None] | None = None
    failures: int = 0
    until: datetime | None = None
    told: bool = False
    interrupted: bool = False


class Outbox:
    """Sends waiting rows through a channel: one task a chat that has something to send, none that waits.

    A row is marked as sending, sent, and marked as sent. When the program dies in between, the row is sent again after the start,
    unless it is a countdown (it has an expiry): of those, rather none than two. The marks of several chats share a commit.
    """

    def __init__(self, rows: Outgoing, clock: Clock, channel: Channel, pace: Pace | None = None) -> None:
        self._rows = rows
        self._clock = clock
        self._channel = channel
        self._pace = pace or Pace(NO_LIMITS)
        self._chats: dict[int, _Chat] = {}
        self._sent: list[tuple[int, asyncio.Future[None]]] = []
        self._unmarked: list[int] = []
        self._marking: asyncio.Task[None] | None = None
        self._delayed: Callable[[], None] = lambda: None
        self._gone: Callable[[int], None] = lambda _: None
        self._clear: Callable[[int], None] = lambda _: None

    def when_delayed(self, call: Callable[[], None]) -> None:
        """Call this when a chat has to wait, so that the alarm can be set for `retry_at`."""
        self._delayed = call

    def when_gone(self, call: Callable[[int], None]) -> None:
        """Call this with the trainee's id when the network says that nothing can be sent to them any more."""
        self._gone = call

    def when_clear(self, call: Callable[[int], None]) -> None:
        """Call this with the trainee's id when nothing is left to be sent to them."""
        self._clear = call

    async def recover(self) -> None:
        """After a start: see to rows that were being sent, and send what waits."""
        for trainee_id in await self._rows.recover():
            self.post(trainee_id)

    def is_clear(self, trainee_id: int) -> bool:
        """Whether nothing waits or is being sent in this chat, so that the next messages may be handed over as they are."""
        return trainee_id not in self._chats

    def post(self, trainee_id: int, claimed: Iterable[Letter] = ()) -> None:
        """Send what waits for this trainee, without waiting for it here; not while the chat has to wait.

        `claimed` are marked as sending already, and go first; the chat must be clear. Without them the database is asked.
        """
        chat, letters = self._chats.setdefault(trainee_id, _Chat()), tuple(claimed)
        chat.letters.extend(letters)
        chat.more = chat.more or not letters
        self._start(trainee_id, chat)

    def heard_from(self, trainee_id: int) -> None:
        """The trainee is there: what could not be sent is worth another try at once, unless the network said how long to wait."""
        if (chat := self._chats.get(trainee_id)) is not None and chat.failures and not chat.told:
            chat.until = None

    def retry_at(self) -> datetime | None:
        """When the next chat that has to wait is worth another try, None when there is none."""
        waiting = [chat.until for chat in self._chats.values() if chat.sender is None and chat.until is not None]
        return min(waiting, default=None)

    def retry(self) -> None:
        """Try the chats whose wait is over, the most urgent first."""
        now = self._clock.now()
        ready = [
            (rank_of(chat.letters[0].rendered.kind) if chat.letters else rank_of(""), chat.until or now, trainee_id)
            for trainee_id, chat in self._chats.items()
            if chat.sender is None and (chat.until is None or chat.until <= now)
        ]
        for _, _, trainee_id in sorted(ready):
            self._start(trainee_id, self._chats[trainee_id])

    async def idle(self) -> None:
        """Return when nothing is being sent or marked: what is left waits for its time."""
        while working := [chat.sender for chat in self._chats.values() if chat.sender is not None] + [
            task for task in (self._marking,) if task is not None
        ]:
            await asyncio.wait(working)

    def _start(self, trainee_id: int, chat: _Chat) -> None:
        if chat.sender is not None or (chat.until is not None and chat.until > self._clock.now()):
            return
        if chat.letters and (until := self._paced(trainee_id, chat)) is not None:
            chat.until = until
            self._delayed()
            return
        chat.until = None
        chat.sender = asyncio.create_task(self._run(trainee_id, chat))

    def _paced(self, trainee_id: int, chat: _Chat) -> datetime | None:
        """When the chat's next message may go out, None: at once."""
        now = self._clock.now()
        ready_at = self._pace.ready_at(trainee_id, rank_of(chat.letters[0].rendered.kind), now)
        return None if ready_at <= now else ready_at

    async def _run(self, trainee_id: int, chat: _Chat) -> None:
        try:
            if chat.interrupted:
                await self._rows.recover(trainee_id)
                chat.interrupted, chat.more = False, True
            await self._send_all(trainee_id, chat)
        except Exception:  # noqa: BLE001 - a fault of the database must not end the sending for good
            _log.exception("trainee %d: the outbox could not be worked off", trainee_id)
            chat.interrupted = True
            chat.letters.clear()
            self._wait(trainee_id, chat, None)
        finally:
            chat.sender = None
        if chat.until is not None:
            self._delayed()
        elif chat.letters or chat.more:
            self._start(trainee_id, chat)
        else:
            self._chats.pop(trainee_id, None)
            self._clear(trainee_id)

    async def _send_all(self, trainee_id: int, chat: _Chat) -> None:
        while True:
            if not chat.letters:
                if not chat.more:
                    return
                chat.more = False
                chat.letters.extend(await self._rows.take(trainee_id, self._clock.now()))
                continue
            letter, now = chat.letters[0], self._clock.now()
            if is_stale(letter.expires_at, now):
                await self._rows.drop(letter, STALE)
            elif (until := self._paced(trainee_id, chat)) is not None:
                chat.until = until
                return
            elif not await self._send(trainee_id, chat, letter, now):
                return
            chat.letters.popleft()
            if chat.letters and self._marking is not None:  # so that at most one message of a chat is ever sent and not marked
                await asyncio.wait([self._marking])

    async def _send(self, trainee_id: int, chat: _Chat, letter: Letter, now: datetime) -> bool:
        """Send one message; false when the chat has to wait, or is over."""
        self._pace.count(trainee_id, now)
        try:
            await self._channel.send(trainee_id, letter)
        except Gone as gone:
            _log.info("trainee %d: the chat is gone", trainee_id)
            chat.letters.clear()
            chat.more, chat.failures = False, 0
            await self._rows.drop_all(trainee_id, gone.reason)
            self._gone(trainee_id)
            return False
        except Unsure:
            if is_countdown(letter.expires_at, now):  # it may be out already: rather none than two
                await self._rows.drop(letter, STALE)
                return True
            await self._put_back(trainee_id, chat, None)
            return False
        except Unreachable as unreachable:
            await self._put_back(trainee_id, chat, unreachable.retry_after_s)
            return False
        except Exception:  # noqa: BLE001 - a fault of the channel: the message keeps its place
            _log.exception("trainee %d: message %d could not be sent", trainee_id, letter.id)
            await self._put_back(trainee_id, chat, None)
            return False
        chat.failures = 0
        marked = asyncio.get_running_loop().create_future()
        self._sent.append((letter.id, marked))
        if self._marking is None:
            self._marking = asyncio.create_task(self._mark())
        await marked  # before the next one of this chat: so that at most one can come twice
        return True

    async def _mark(self) -> None:
        """Mark what was sent, in all chats at once; what cannot be marked is kept for the next time."""
        while self._sent:
            sent, self._sent = self._sent, []
            try:
                await self._rows.sent([*self._unmarked, *(number for number, _ in sent)], self._clock.now())
                self._unmarked = []
            except Exception:  # noqa: BLE001 - nobody waits for this task; after a restart these messages come twice
                _log.exception("%d messages could not be marked as sent", len(sent))
                self._unmarked += [number for number, _ in sent]
            for _, marked in sent:
                if not marked.done():
                    marked.set_result(None)
        self._marking = None

    async def _put_back(self, trainee_id: int, chat: _Chat, retry_after_s: float | None) -> None:
        self._wait(trainee_id, chat, retry_after_s)
        letters = tuple(chat.letters)
        chat.letters.clear()
        chat.more = True
        await self._rows.again(letters)

    def _wait(self, trainee_id: int, chat: _Chat, retry_after_s: float | None) -> None:
        chat.failures += 1
        chat.told = retry_after_s is not None
        wait_s = max(retry_after_s or 0.0, backoff_s(chat.failures, FIRST_WAIT_S, LONGEST_WAIT_S))
        chat.until = self._clock.now() + timedelta(seconds=wait_s)
        if chat.told:
            self._pace.hold(trainee_id, chat.until)
