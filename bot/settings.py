"""Where the data live, and which database keeps them. Read once, at start."""

from __future__ import annotations

import re
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from platformdirs import user_data_path

from bot.errors import DataFolderUnusable, EmergencyNumberUnreadable

if TYPE_CHECKING:
    from collections.abc import Mapping

DATA_VARIABLE = "STATIONCALL_DATA"
DATABASE_VARIABLE = "STATIONCALL_DATABASE"
EMERGENCY_VARIABLE = "STATIONCALL_EMERGENCY_NUMBER"
SQLITE_NAME = "stationcall.sqlite3"
EMERGENCY_NUMBER = re.compile(r"\+?[0-9][0-9 ()/-]{1,18}")


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
    """The data folder, the database's URL (a secret: its password is in it), the number to call in an emergency, if named."""

    data: Path
    database: Secret
    emergency: str | None = None


def read_settings(data: str | None, environ: Mapping[str, str]) -> Settings:
    """Settings from the command line's `--data`, then the environment, then the platform's user data folder.

    `STATIONCALL_DATABASE` may name a PostgreSQL database (`postgresql://…`); without it a SQLite file in the data folder is used.
    `STATIONCALL_EMERGENCY_NUMBER` is the number that trainees are told to call; without it, their local one.

    Raises:
        EmergencyNumberUnreadable: when that is not a telephone number: a wrong one is worse than none.
    """
    folder = Path(data or environ.get(DATA_VARIABLE) or user_data_path("stationcall", appauthor=False)).expanduser().resolve()
    url = environ.get(DATABASE_VARIABLE) or f"sqlite:///{folder / SQLITE_NAME}"
    return Settings(folder, Secret(url), _emergency(environ))


def _emergency(environ: Mapping[str, str]) -> str | None:
    number = " ".join(environ.get(EMERGENCY_VARIABLE, "").split())
    if number and EMERGENCY_NUMBER.fullmatch(number) is None:
        raise EmergencyNumberUnreadable(number)
    return number or None


def make_folder(folder: Path) -> None:
    """Make the data folder, readable by its owner alone: it holds health data.

    Raises:
        DataFolderUnusable: when it cannot be made.
    """
    try:
        folder.mkdir(mode=0o700, parents=True, exist_ok=True)
    except OSError as error:
        raise DataFolderUnusable(folder, error.strerror or type(error).__name__) from error
