"""The outbox: messages that are committed go out in order within a chat, each chat on its own."""

from __future__ import annotations

import asyncio
import logging
from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from typing import TYPE_CHECKING

from bot.errors import Gone, Unreachable

if TYPE_CHECKING:
    from collections.abc import Callable

    from bot.ports import Channel, Clock
    from bot.store.outgoing import Letter, Outgoing

FIRST_WAIT_S = 2.0
LONGEST_WAIT_S = 300.0

_log = logging.getLogger(__name__)


def backoff_s(failures: int, first_s: float, longest_s: float) -> float:
    """How long to wait after so many failures in a row: doubling from `first_s`, never above `longest_s`, in seconds."""
    return float(min(longest_s, first_s * 2.0 ** min(failures - 1, 30)))


@dataclass(frozen=True)
class _Delay:
    """A chat that could not be reached: how often in a row, and when to try again."""

    failures: int
    until: datetime


class Outbox:
    """Sends waiting rows through a channel: one task a chat that has something to send, none that waits.

    A row is marked as sending, sent, and marked as sent. When the program dies in between, the row is sent again after the start,
    unless it is a countdown (it has an expiry): of those, rather none than two.
    """

    def __init__(self, rows: Outgoing, clock: Clock, channel: Channel) -> None:
        self._rows = rows
        self._clock = clock
        self._channel = channel
        self._senders: dict[int, asyncio.Task[None]] = {}
        self._asked_again: set[int] = set()
        self._interrupted: set[int] = set()
        self._delays: dict[int, _Delay] = {}
        self._delayed: Callable[[], None] = lambda: None

    def when_delayed(self, call: Callable[[], None]) -> None:
        """Call this when a chat could not be reached, so that the alarm can be set for `retry_at`."""
        self._delayed = call

    async def recover(self) -> None:
        """After a start: see to rows that were being sent, and send what waits."""
        for trainee_id in await self._rows.recover():
            self.post(trainee_id)

    def is_clear(self, trainee_id: int) -> bool:
        """Whether nothing waits or is being sent in this chat, so that the next message may go first."""
        return trainee_id not in self._senders and trainee_id not in self._delays

    def post(self, trainee_id: int, claimed: Letter | None = None) -> None:
        """Send what waits for this trainee, without waiting for it here; not while the chat's delay lasts.

        `claimed` is marked as sending already, and goes first; the chat must be clear.
        """
        if trainee_id in self._senders:
            self._asked_again.add(trainee_id)
        elif (delay := self._delays.get(trainee_id)) is None or delay.until <= self._clock.now():
            self._senders[trainee_id] = asyncio.create_task(self._run(trainee_id, claimed))

    def heard_from(self, trainee_id: int) -> None:
        """The trainee is there: what could not be sent is worth another try at once."""
        if (delay := self._delays.get(trainee_id)) is not None:
            self._delays[trainee_id] = replace(delay, until=self._clock.now())

    def retry_at(self) -> datetime | None:
        """When the next chat that could not be reached is worth another try, None when there is none."""
        waiting = [delay.until for trainee_id, delay in self._delays.items() if trainee_id not in self._senders]
        return min(waiting, default=None)

    def retry(self) -> None:
        """Try the chats whose delay is over."""
        for trainee_id in [trainee_id for trainee_id, delay in self._delays.items() if delay.until <= self._clock.now()]:
            self.post(trainee_id)

    async def idle(self) -> None:
        """Return when nothing is being sent: what is left waits for a delay to end."""
        while self._senders:
            await asyncio.wait(tuple(self._senders.values()))

    async def _run(self, trainee_id: int, claimed: Letter | None) -> None:
        """Send until there is no more, and once more when asked meanwhile."""
        try:
            if trainee_id in self._interrupted:
                await self._rows.recover(trainee_id)
                self._interrupted.discard(trainee_id)
            await self._send_all(trainee_id, claimed)
            while trainee_id in self._asked_again and trainee_id not in self._delays:
                self._asked_again.discard(trainee_id)
                await self._send_all(trainee_id, None)
        except Exception:  # noqa: BLE001 - a fault of the database must not end the sending for good
            _log.exception("trainee %d: the outbox could not be worked off", trainee_id)
            self._interrupted.add(trainee_id)
            self._delay(trainee_id, None)
        finally:
            del self._senders[trainee_id]
            self._asked_again.discard(trainee_id)
        if trainee_id in self._delays:
            self._delayed()

    async def _send_all(self, trainee_id: int, claimed: Letter | None) -> None:
        letter = claimed or await self._rows.turn(trainee_id, None, self._clock.now())
        while letter is not None:
            try:
                await self._channel.send(trainee_id, letter.rendered)
            except Gone as gone:
                _log.info("trainee %d: the chat is gone", trainee_id)
                await self._rows.drop_all(trainee_id, gone.reason)
                self._delays.pop(trainee_id, None)
                return
            except Unreachable as unreachable:
                await self._put_back(trainee_id, letter, unreachable.retry_after_s)
                return
            except Exception:  # noqa: BLE001 - a fault of the channel: the message keeps its place
                _log.exception("trainee %d: message %d could not be sent", trainee_id, letter.id)
                await self._put_back(trainee_id, letter, None)
                return
            letter = await self._rows.turn(trainee_id, letter, self._clock.now())
        self._delays.pop(trainee_id, None)

    async def _put_back(self, trainee_id: int, letter: Letter, retry_after_s: float | None) -> None:
        self._delay(trainee_id, retry_after_s)
        await self._rows.again(letter)

    def _delay(self, trainee_id: int, retry_after_s: float | None) -> None:
        before = self._delays.get(trainee_id)
        failures = 1 if before is None else before.failures + 1
        wait_s = max(retry_after_s or 0.0, backoff_s(failures, FIRST_WAIT_S, LONGEST_WAIT_S))
        self._delays[trainee_id] = _Delay(failures, self._clock.now() + timedelta(seconds=wait_s))
