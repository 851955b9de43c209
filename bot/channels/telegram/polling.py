"""Asking for updates: a batch is confirmed by the next call, and that is made only when every update of it is committed."""

from __future__ import annotations

import asyncio
import logging
from collections import defaultdict
from typing import TYPE_CHECKING, Any, Literal

from bot.channels.telegram.incoming import address_of, update_id_of
from bot.errors import TwoAtOnce, Unreachable
from bot.outbox import backoff_s

if TYPE_CHECKING:
    from collections.abc import Callable

    from bot.channels.telegram.desk import Desk
    from bot.channels.telegram.network import Network
    from bot.ports import Clock

FIRST_WAIT_S = 1.0
LONGEST_WAIT_S = 30.0
CONFLICT_WAIT_S = 3.0
GAP_S = 5.0  # after so long without an answer, what comes lay at the network

_log = logging.getLogger(__name__)


class Polling:
    """Asks again and again until it is stopped.

    It calls `caught_up` once, when what lay there at the start has come in, and `heard` whenever the network has answered.
    """

    def __init__(
        self,
        network: Network,
        desk: Desk,
        clock: Clock,
        caught_up: Callable[[], None],
        heard: Callable[[], None] = lambda: None,
    ) -> None:
        self._heard = heard
        self._network = network
        self._desk = desk
        self._clock = clock
        self._stopping = asyncio.Event()
        self._failures = 0
        self._caught_up: Callable[[], None] | None = caught_up

    def stop(self) -> None:
        """Ask no more; the batch at hand is finished."""
        self._stopping.set()

    async def run(self) -> None:
        """Ask until stopped.

        An empty answer means that all is confirmed; after it no offset is given, for after a quiet week the network may go on with
        lower numbers.
        """
        stopping = asyncio.create_task(self._stopping.wait())
        try:
            await self._ask_and_take(stopping)
        finally:
            stopping.cancel()

    async def _ask_and_take(self, stopping: asyncio.Task[Literal[True]]) -> None:
        offset: int | None = None
        answered_at = None
        while not self._stopping.is_set():
            asked_at = self._clock.now()
            batch = await self._ask(offset, stopping)
            if batch is None:
                self._begin()
                continue
            backlog = self._caught_up is not None or answered_at is None or (asked_at - answered_at).total_seconds() > GAP_S
            if not batch:
                self._begin()
                offset, answered_at = None, self._clock.now()
                continue
            if await self._take(batch, backlog=backlog):
                offset = max(update_id_of(raw) for raw in batch) + 1
                answered_at = self._clock.now()

    def _begin(self) -> None:
        if self._caught_up is not None:
            self._caught_up()
            self._caught_up = None

    async def _ask(self, offset: int | None, stopping: asyncio.Task[Literal[True]]) -> list[dict[str, Any]] | None:
        """One call; None when it was cut short, or failed and a while has passed."""
        asking = asyncio.create_task(self._network.updates(offset, wait=self._caught_up is None))
        try:
            await asyncio.wait((asking, stopping), return_when=asyncio.FIRST_COMPLETED)
            if not asking.done():
                return None
            batch = asking.result()
        except TwoAtOnce:
            _log.error("another program asks for this account's messages, or a webhook is set: only one may")
            await self._pause(CONFLICT_WAIT_S)
            return None
        except Unreachable as unreachable:
            self._failures += 1
            wait_s = max(unreachable.retry_after_s or 0.0, backoff_s(self._failures, FIRST_WAIT_S, LONGEST_WAIT_S))
            _log.info("no updates just now; asking again in %.0f s", wait_s)
            await self._pause(wait_s)
            return None
        finally:
            if not asking.done():
                asking.cancel()
                await asyncio.gather(asking, return_exceptions=True)
        self._failures = 0
        self._heard()
        return batch

    async def _take(self, batch: list[dict[str, Any]], *, backlog: bool) -> bool:
        """Take a batch in, each chat in order, the chats side by side; false when the database did not keep it."""
        chats: dict[str, list[dict[str, Any]]] = defaultdict(list)
        for raw in sorted(batch, key=update_id_of):
            chats[address_of(raw)].append(raw)
        done = await asyncio.gather(*(self._in_order(chat, backlog=backlog) for chat in chats.values()), return_exceptions=True)
        fault = next((error for error in done if error is not None), None)
        if fault is None:
            return True
        if not isinstance(fault, Exception):
            raise fault
        self._failures += 1
        _log.error("a batch could not be kept; taking it again later", exc_info=fault)
        await self._pause(backoff_s(self._failures, FIRST_WAIT_S, LONGEST_WAIT_S))
        return False

    async def _in_order(self, chat: list[dict[str, Any]], *, backlog: bool) -> None:
        for raw in chat:
            await self._desk.take(raw, backlog=backlog)

    async def _pause(self, seconds: float) -> None:
        """Wait, not longer than until stopped."""
        try:
            await asyncio.wait_for(self._stopping.wait(), seconds)
        except TimeoutError:
            return
