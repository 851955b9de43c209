"""Opening the database: SQLite with every guard on, or PostgreSQL by URL.

Every transaction on SQLite begins at once as a writing one (`BEGIN IMMEDIATE`): the driver's default begins only at the first
write, so what was read before could have changed.
"""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Any

from sqlalchemy import create_engine, event
from sqlalchemy.engine import URL, make_url
from sqlalchemy.exc import ArgumentError
from sqlalchemy.ext.asyncio import create_async_engine

from bot.errors import DatabaseUnusable
from bot.store.database import READING, OneFile, Server

if TYPE_CHECKING:
    from sqlalchemy import Connection

    from bot.store.database import Database

BUSY_MS = 5_000  # how long to wait for another process, such as one that lists the records
PRAGMAS = (
    "PRAGMA journal_mode=WAL",
    "PRAGMA synchronous=FULL",
    "PRAGMA foreign_keys=ON",
    "PRAGMA secure_delete=ON",  # what is deleted is overwritten: it was health data
    f"PRAGMA busy_timeout={BUSY_MS}",
)
NO_SUCH_URL = "its URL must be sqlite:///FILE or postgresql://…"


def open_database(url: str) -> Database:
    """The database at `sqlite:///FILE` or `postgresql://…`; nothing is connected before the first use.

    Errors never quote the values of a statement. A new SQLite file is its owner's alone: it holds health data.

    Raises:
        DatabaseUnusable: when the URL is none of these, or the driver for PostgreSQL is not installed.
        OSError: when the file cannot be made.
    """
    try:
        parsed = make_url(url)
    except ArgumentError:
        raise DatabaseUnusable(NO_SUCH_URL) from None
    match parsed.get_backend_name(), parsed.database:
        case "postgresql", _:
            return _open_postgresql(parsed)
        case "sqlite", str(file) if file:
            Path(file).touch(mode=0o600)
            return _open_sqlite(parsed)
        case _:
            raise DatabaseUnusable(NO_SUCH_URL)


def _open_postgresql(url: URL) -> Server:
    try:
        return Server(create_async_engine(url.set(drivername="postgresql+asyncpg"), hide_parameters=True))
    except ModuleNotFoundError as error:
        raise DatabaseUnusable("PostgreSQL needs the package asyncpg, which is not installed") from error


def _open_sqlite(url: URL) -> OneFile:
    engine = create_engine(
        url.set(drivername="sqlite+pysqlite"),
        hide_parameters=True,
        pool_size=1,
        max_overflow=0,
        connect_args={"check_same_thread": False},  # one thread works with it; another one closes it
    )
    event.listen(engine, "connect", _prepare)
    event.listen(engine, "begin", _begin)
    return OneFile(engine)


def _prepare(connection: Any, _record: object) -> None:  # noqa: ANN401 - the driver's connection
    connection.isolation_level = None  # the driver begins nothing by itself; `_begin` does
    cursor = connection.cursor()
    for pragma in PRAGMAS:
        cursor.execute(pragma)
    cursor.close()


def _begin(connection: Connection) -> None:
    connection.connection.cursor().execute("BEGIN" if connection.info.get(READING) else "BEGIN IMMEDIATE")
