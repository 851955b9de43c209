"""Where the data live, and which database keeps them. Read once, at start."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from platformdirs import user_data_path

from bot.errors import DataFolderUnusable

if TYPE_CHECKING:
    from collections.abc import Mapping

DATA_VARIABLE = "STATIONCALL_DATA"
DATABASE_VARIABLE = "STATIONCALL_DATABASE"
SQLITE_NAME = "stationcall.sqlite3"


@dataclass(frozen=True)
class Secret:
    """A text that prints as stars."""

    _text: str

    def reveal(self) -> str:
        """The text itself."""
        return self._text

    def __repr__(self) -> str:
        return "Secret('***')"

    __str__ = __repr__


@dataclass(frozen=True)
class Settings:
    """The data folder, and the database's URL (its password is why it is a secret)."""

    data: Path
    database: Secret


def read_settings(data: str | None, environ: Mapping[str, str]) -> Settings:
    """Settings from the command line's `--data`, then the environment, then the platform's user data folder.

    `STATIONCALL_DATABASE` may name a PostgreSQL database (`postgresql://…`); without it a SQLite file in the data folder is used.
    """
    folder = Path(data or environ.get(DATA_VARIABLE) or user_data_path("stationcall", appauthor=False)).expanduser().resolve()
    url = environ.get(DATABASE_VARIABLE) or f"sqlite:///{folder / SQLITE_NAME}"
    return Settings(folder, Secret(url))


def make_folder(folder: Path) -> None:
    """Make the data folder, readable by its owner alone: it holds health data.

    Raises:
        DataFolderUnusable: when it cannot be made.
    """
    try:
        folder.mkdir(mode=0o700, parents=True, exist_ok=True)
    except OSError as error:
        raise DataFolderUnusable(folder, error.strerror or type(error).__name__) from error
