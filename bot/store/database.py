"""Whole transactions, each in one go: SQLite in one thread of its own, PostgreSQL by URL.

A transaction is a plain function that takes a connection. On SQLite it runs from its first statement to its commit in one thread,
so that a message costs the event loop one errand and not one a statement. What waits there when the thread is free shares a
commit: one writing to disk for all of it. One of these that fails leaves nothing and does not harm the others.
"""

from __future__ import annotations

import asyncio
import queue
import sqlite3
import threading
from collections.abc import Callable
from contextlib import closing, suppress
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any, Protocol, TypeVar

from sqlalchemy import Connection

if TYPE_CHECKING:
    from collections.abc import Sequence

    from sqlalchemy import Engine
    from sqlalchemy.ext.asyncio import AsyncEngine

T = TypeVar("T")
READING = "reading"
SCRUB_WAIT_S = 5.0
AT_MOST = 64  # transactions that share a commit: the first of them waits for the last


class Database(Protocol):
    """Where transactions are run."""

    @property
    def engine(self) -> Engine:
        """The engine beneath, for those who watch its statements."""

    async def write(self, work: Callable[[Connection], T]) -> T:
        """Run a function in a transaction; return what it returns once that is committed. What it raises leaves nothing of it."""

    async def read(self, work: Callable[[Connection], T]) -> T:
        """The same for a function that changes nothing: it does not wait for another process that writes."""

    async def scrub(self) -> None:
        """Leave nothing of what was deleted in the files, as far as they are ours."""

    async def close(self) -> None:
        """Close every connection, after what has been begun."""


@dataclass(frozen=True)
class _Errand:
    """A function to run, whether it writes, and where its result is awaited."""

    work: Callable[[Connection], Any]
    writes: bool
    loop: asyncio.AbstractEventLoop
    result: asyncio.Future[Any]


class OneFile:
    """SQLite: it takes one writer at a time anyway, so one thread with one connection does all, in the order asked for.

    That order also keeps simulated time repeatable.
    """

    def __init__(self, engine: Engine) -> None:
        self.engine = engine
        self._errands: queue.SimpleQueue[_Errand | None] = queue.SimpleQueue()
        self._thread: threading.Thread | None = None
        self._connection: Connection | None = None

    async def write(self, work: Callable[[Connection], T]) -> T:
        """See `Database`."""
        return await self._run(work, writes=True)

    async def read(self, work: Callable[[Connection], T]) -> T:
        """See `Database`."""
        return await self._run(work, writes=False)

    async def scrub(self) -> None:
        """See `Database`."""
        await asyncio.to_thread(_scrub, str(self.engine.url.database))

    async def close(self) -> None:
        """See `Database`."""
        if self._thread is not None:
            self._errands.put(None)
            await asyncio.to_thread(self._thread.join)
            self._thread = None
        self._let_go()
        self.engine.dispose()

    async def _run(self, work: Callable[[Connection], T], *, writes: bool) -> T:
        if self._thread is None:
            self._thread = threading.Thread(target=self._serve, name="stationcall-database", daemon=True)
            self._thread.start()
        loop = asyncio.get_running_loop()
        result: asyncio.Future[T] = loop.create_future()
        self._errands.put(_Errand(work, writes, loop, result))
        return await result

    def _serve(self) -> None:
        going = True
        while going:
            together = [self._errands.get()]
            while len(together) < AT_MOST:
                try:
                    together.append(self._errands.get_nowait())
                except queue.Empty:
                    break
            errands = [errand for errand in together if errand is not None]
            going = len(errands) == len(together)
            if errands:
                self._do(errands)

    def _do(self, errands: Sequence[_Errand]) -> None:
        try:
            outcome = self._in_one(errands)
        except BaseException as error:  # noqa: BLE001 - whatever it was, it belongs to those who asked
            outcome = [(None, error)] * len(errands)
            self._let_go()  # the next one begins on a connection that nothing has happened to
        loops: dict[asyncio.AbstractEventLoop, list[tuple[_Errand, Any, BaseException | None]]] = {}
        for errand, (given, fault) in zip(errands, outcome, strict=True):
            loops.setdefault(errand.loop, []).append((errand, given, fault))
        for loop, done in loops.items():
            if not loop.is_closed():
                loop.call_soon_threadsafe(_hand_back, done)

    def _in_one(self, errands: Sequence[_Errand]) -> list[tuple[Any, BaseException | None]]:
        """Everything in one transaction; what is alone in it fails with it."""
        if self._connection is None:
            self._connection = self.engine.connect()
        connection = self._connection
        connection.info[READING] = not any(errand.writes for errand in errands)
        with connection.begin():
            if len(errands) == 1:
                return [(errands[0].work(connection), None)]
            return [_apart(connection, errand) for errand in errands]

    def _let_go(self) -> None:
        """Give the connection back, which rolls back what it may have begun; the thread goes on whatever comes of that."""
        connection, self._connection = self._connection, None
        if connection is not None:
            with suppress(Exception):
                connection.close()


def _apart(connection: Connection, errand: _Errand) -> tuple[Any, BaseException | None]:
    """One of several in a transaction: what it did is taken back when it fails, and only that."""
    driver = connection.connection.cursor()  # past SQLAlchemy, which takes longer over these than the database
    driver.execute("SAVEPOINT errand")
    try:
        given = errand.work(connection)
    except Exception as error:  # noqa: BLE001 - it belongs to whoever asked
        driver.execute("ROLLBACK TO errand")
        return None, error
    driver.execute("RELEASE errand")
    return given, None


def _hand_back(done: Sequence[tuple[_Errand, Any, BaseException | None]]) -> None:
    for errand, given, fault in done:
        if errand.result.cancelled():
            continue
        if fault is None:
            errand.result.set_result(given)
        else:
            errand.result.set_exception(fault)


def _scrub(file: str) -> None:
    """Write the database anew without its gaps, and empty the log beside it.

    On a connection of its own: neither may be in a transaction.

    Raises:
        sqlite3.Error: when another process holds it for too long, or the disk is full.
    """
    with closing(sqlite3.connect(file, timeout=SCRUB_WAIT_S, isolation_level=None)) as connection:
        connection.execute("VACUUM")
        connection.execute("PRAGMA wal_checkpoint(TRUNCATE)")


class Server:
    """PostgreSQL: a connection a transaction, as many at a time as the pool has."""

    def __init__(self, engine: AsyncEngine) -> None:
        self._engine = engine
        self.engine = engine.sync_engine

    async def write(self, work: Callable[[Connection], T]) -> T:
        """See `Database`."""
        async with self._engine.begin() as connection:
            return await connection.run_sync(work)

    async def read(self, work: Callable[[Connection], T]) -> T:
        """See `Database`."""
        return await self.write(work)

    async def scrub(self) -> None:
        """See `Database`: a server's files are its own, and it sees to them."""

    async def close(self) -> None:
        """See `Database`."""
        await self._engine.dispose()
