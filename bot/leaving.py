"""Seeing off those who had everything erased: their files at once, and the last of them when the goodbye is out.

The rows are erased in the step's own transaction (`bot.store.forgetting`). What is left is done here, and again at the next start
when the program ends in between: files, what the database's own files still hold, and the bare row.
"""

from __future__ import annotations

import asyncio
import logging
from typing import TYPE_CHECKING

from bot.files.folders import clear, owners

if TYPE_CHECKING:
    from collections.abc import Callable
    from pathlib import Path

    from bot.store.store import Store

_log = logging.getLogger(__name__)


class Leaving:
    """Everybody who has had everything erased since the start, or was not seen off before it. `data` is None for words alone."""

    def __init__(self, store: Store, data: Path | None) -> None:
        self._store = store
        self._data = data
        self._left: set[int] = set()
        self._cleaned: set[int] = set()
        self._said_goodbye: set[int] = set()
        self._one_at_a_time = asyncio.Lock()
        self._tasks: set[asyncio.Task[None]] = set()
        self._leaves: Callable[[int], object] = lambda _: None
        self._gone: Callable[[int], object] = lambda _: None

    def when(self, leaves: Callable[[int], object], gone: Callable[[int], object]) -> None:
        """Call the first with a trainee's id once everything of theirs is erased, the second once nothing is left of them."""
        self._leaves, self._gone = leaves, gone

    def has(self, trainee_id: int) -> bool:
        """Whether somebody had everything erased: nothing that comes for them is handled any more."""
        return trainee_id in self._left

    async def resume(self) -> tuple[int, ...]:
        """At a start: go on with those who were not seen off, and remove files of people who are no longer there.

        Returns:
            The ids of those to whom a goodbye may still go out.
        """
        there, _ = await self._store.forgetting.owners()
        if self._data is not None:
            data = self._data
            await asyncio.to_thread(lambda: clear(data, owners(data) - there))
        leaving = await self._store.forgetting.leaving()
        for one in leaving:
            if not one.reachable:
                self._said_goodbye.add(one.id)
            self.begin(one.id)
        await self.idle()
        return tuple(one.id for one in leaving if one.reachable)

    def begin(self, trainee_id: int) -> None:
        """Somebody's rows are erased."""
        self._left.add(trainee_id)
        self._leaves(trainee_id)
        self._see_off(trainee_id)

    def goodbye_is_out(self, trainee_id: int) -> None:
        """Nothing more goes out to a trainee: everything is sent, or cannot be."""
        if trainee_id in self._left and trainee_id not in self._said_goodbye:
            self._said_goodbye.add(trainee_id)
            self._see_off(trainee_id)

    async def idle(self) -> None:
        """Return when what was begun is over."""
        while self._tasks:
            await asyncio.wait(tuple(self._tasks))

    def _see_off(self, trainee_id: int) -> None:
        task = asyncio.create_task(self._go_on(trainee_id))
        self._tasks.add(task)
        task.add_done_callback(self._tasks.discard)

    async def _go_on(self, trainee_id: int) -> None:
        try:
            async with self._one_at_a_time:
                if trainee_id not in self._cleaned:
                    await self._clean(trainee_id)
                    self._cleaned.add(trainee_id)
                if trainee_id in self._said_goodbye:
                    await self._store.bury(trainee_id)
                    await self._clean(trainee_id)
                    self._gone(trainee_id)
        except Exception:  # noqa: BLE001 - nobody waits for this task; the next start goes on
            _log.exception("trainee %d: what is left of them could not be removed", trainee_id)

    async def _clean(self, trainee_id: int) -> None:
        """Remove their files, and the coaches', on which they may be seen; then scrub the database."""
        if self._data is not None:
            _, coaches = await self._store.forgetting.owners()
            await asyncio.to_thread(clear, self._data, (trainee_id, *coaches))
        await self._store.forgetting.scrub()
