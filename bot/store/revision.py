"""Which shape the database has, and bringing it to the newest.

Alembic takes a third of a second to import, so it is left alone when the database is already of the newest shape.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from sqlalchemy import inspect, text

if TYPE_CHECKING:
    from sqlalchemy import Connection

    from bot.store.database import Database

NEWEST = "0007"


async def bring_to_newest(database: Database) -> None:
    """Upgrade the database to `NEWEST`, in one transaction; an empty one is made from nothing.

    Raises:
        bot.errors.DatabaseTooNew: when it is of a revision that this program does not know.
    """
    if await database.read(stored_revision) == NEWEST:
        return
    from bot.store.upgrade import upgrade  # noqa: PLC0415 - Alembic is slow to import, and seldom needed

    await database.write(upgrade)


def stored_revision(connection: Connection) -> str | None:
    """The revision that the database says it has, None for an empty one."""
    if not inspect(connection).has_table("alembic_version"):
        return None
    revision: str | None = connection.execute(text("SELECT version_num FROM alembic_version")).scalar_one_or_none()
    return revision
