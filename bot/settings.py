"""Where the data live, and which database keeps them. Read once, at start."""

from __future__ import annotations

import re
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING
from urllib.parse import urlsplit

from platformdirs import user_data_path

from bot.errors import DataFolderUnusable, SettingsWrong

if TYPE_CHECKING:
    from collections.abc import Mapping

DATA_VARIABLE = "STATIONCALL_DATA"
DATABASE_VARIABLE = "STATIONCALL_DATABASE"
EMERGENCY_VARIABLE = "STATIONCALL_EMERGENCY_NUMBER"
SQLITE_NAME = "stationcall.sqlite3"
EMERGENCY_NUMBER = re.compile(r"\+?[0-9][0-9 ()/-]{1,18}")
TOKEN_VARIABLE = "STATIONCALL_TOKEN"  # noqa: S105 - a variable's name
API_VARIABLE = "STATIONCALL_API"
WEBHOOK_VARIABLE = "STATIONCALL_WEBHOOK"
SECRET_VARIABLE = "STATIONCALL_WEBHOOK_SECRET"  # noqa: S105 - the same
LISTEN_VARIABLE = "STATIONCALL_LISTEN"
API = "https://api.telegram.org"
LISTEN = "127.0.0.1:8080"
TOKEN = re.compile(r"\d{3,20}:[A-Za-z0-9_-]{20,100}")
SECRET = re.compile(r"[A-Za-z0-9_-]{16,256}")  # the network's letters; shorter ones can be guessed
PORTS = (443, 80, 88, 8443)  # where the network brings updates to
PORT_MAX = 65_535


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
    emergency: str | None


def read_settings(data: str | None, environ: Mapping[str, str]) -> Settings:
    """Settings from the command line's `--data`, then the environment, then the platform's user data folder.

    `STATIONCALL_DATABASE` may name a PostgreSQL database (`postgresql://…`); without it a SQLite file in the data folder is used.
    `STATIONCALL_EMERGENCY_NUMBER` is the number that trainees are told to call; without it, their local one.

    Raises:
        SettingsWrong: when that is not a telephone number: a wrong one is worse than none.
    """
    folder = Path(data or environ.get(DATA_VARIABLE) or user_data_path("stationcall", appauthor=False)).expanduser().resolve()
    url = environ.get(DATABASE_VARIABLE) or f"sqlite:///{folder / SQLITE_NAME}"
    emergency = " ".join(environ.get(EMERGENCY_VARIABLE, "").split())
    if emergency and EMERGENCY_NUMBER.fullmatch(emergency) is None:
        raise SettingsWrong((f"{EMERGENCY_VARIABLE} is no number: give it as one dials it, such as 112, or leave it out",))
    return Settings(folder, Secret(url), emergency or None)


def make_folder(folder: Path) -> None:
    """Make the data folder, readable by its owner alone: it holds health data.

    Raises:
        DataFolderUnusable: when it cannot be made.
    """
    try:
        folder.mkdir(mode=0o700, parents=True, exist_ok=True)
    except OSError as error:
        raise DataFolderUnusable(folder, error.strerror or type(error).__name__) from error


@dataclass(frozen=True)
class WebhookSettings:
    """Where the network brings updates to, the secret it brings along, and where this machine listens for whoever is in front."""

    url: str
    secret: Secret
    host: str
    port: int


@dataclass(frozen=True)
class ServeSettings(Settings):
    """What `serve` needs beside: the account's token, where the network is, and a webhook when updates are not asked for."""

    token: Secret
    api: str
    webhook: WebhookSettings | None


def read_serve_settings(data: str | None, environ: Mapping[str, str]) -> ServeSettings:
    """Settings for `serve`, from the environment alone beside the data folder.

    Raises:
        SettingsWrong: with everything that is missing or cannot be, at once.
    """
    faults: list[str] = []
    token, api = environ.get(TOKEN_VARIABLE, ""), environ.get(API_VARIABLE) or API
    if not token:
        faults.append(f"{TOKEN_VARIABLE} is missing: the account's token")
    elif TOKEN.fullmatch(token) is None:
        faults.append(f"{TOKEN_VARIABLE} is no token: digits, a colon, letters")
    if urlsplit(api).scheme not in ("http", "https") or not urlsplit(api).netloc:
        faults.append(f"{API_VARIABLE} is no address: it must be like {API}")
    webhook = _webhook(environ, faults)
    try:
        common = read_settings(data, environ)
    except SettingsWrong as wrong:
        raise SettingsWrong((*faults, *wrong.faults)) from None
    if faults:
        raise SettingsWrong(tuple(faults))
    return ServeSettings(common.data, common.database, common.emergency, Secret(token), api, webhook)


def _webhook(environ: Mapping[str, str], faults: list[str]) -> WebhookSettings | None:
    url, secret = environ.get(WEBHOOK_VARIABLE, ""), environ.get(SECRET_VARIABLE, "")
    host, _, port = (environ.get(LISTEN_VARIABLE) or LISTEN).rpartition(":")
    if not url:
        faults += [
            f"{name} needs {WEBHOOK_VARIABLE}: without it updates are asked for"
            for name in (SECRET_VARIABLE, LISTEN_VARIABLE)
            if environ.get(name)
        ]
        return None
    if not _reachable(url):
        faults.append(f"{WEBHOOK_VARIABLE} must be https://NAME/PATH on port {', '.join(map(str, PORTS[:-1]))} or {PORTS[-1]}")
    if SECRET.fullmatch(secret) is None:
        faults.append(f"{SECRET_VARIABLE} must be 16 to 256 of A-Z a-z 0-9 _ -")
    if not host or not port.isdecimal() or int(port) > PORT_MAX:
        faults.append(f"{LISTEN_VARIABLE} must be HOST:PORT, like {LISTEN}")
        return None
    return WebhookSettings(url, Secret(secret), host, int(port))


def _reachable(url: str) -> bool:
    try:
        parts = urlsplit(url)
        port = parts.port or 443
    except ValueError:
        return False
    return parts.scheme == "https" and bool(parts.hostname) and port in PORTS
