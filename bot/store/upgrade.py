"""Running the migrations. With `migrations`, the only door to Alembic."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from alembic import command
from alembic.config import Config
from alembic.script import ScriptDirectory

from bot.errors import DatabaseTooNew
from bot.store.revision import NEWEST, stored_revision

if TYPE_CHECKING:
    from sqlalchemy import Connection

MIGRATIONS = Path(__file__).parent / "migrations"


def configuration(connection: Connection | None = None) -> Config:
    """Alembic's configuration: the migrations that ship with the package, over this connection."""
    config = Config()
    config.set_main_option("script_location", str(MIGRATIONS).replace("%", "%%"))
    config.attributes["connection"] = connection
    return config


def upgrade(connection: Connection) -> None:
    """Bring the database to the newest revision, inside the caller's transaction.

    Raises:
        DatabaseTooNew: when its revision is unknown here.
    """
    config = configuration(connection)
    revision = stored_revision(connection)
    known = {script.revision for script in ScriptDirectory.from_config(config).walk_revisions()}
    if revision is not None and revision not in known:
        raise DatabaseTooNew(revision, NEWEST)
    command.upgrade(config, "head")
