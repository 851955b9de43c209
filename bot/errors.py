"""Every error of the shell, as a tree under `core.errors.StationcallError`. Each carries facts and builds its own one line.

ShellError
├── DataFolderBusy       another process works on the data folder
├── DataFolderUnusable   the data folder cannot be made or written
├── TraineeUnknown       no trainee of that name, or with that id
├── FixtureBroken        a file that ships with the program was changed and cannot be read
├── ScriptBroken         a line of a script that is none, or that sets the clock back
├── NotAScriptFolder     a script may not write to a folder with a real diary
├── NotADemoFolder       the demo may not write to a folder that it did not make
├── SettingsWrong        settings that are missing or cannot be; all of them at once
├── TokenRefused         the messaging network does not know the token
├── StoreError
│   ├── DatabaseUnusable the database cannot be opened
│   ├── DatabaseTooNew   written by a newer program than this one
│   ├── RowBroken        a value that no row may hold, on its way in or out
│   └── DiaryConflict    an entry that contradicts the diary: a number used twice, a record that is not there
└── ChannelError
    ├── Gone             the chat is over: blocked, deleted
    ├── TwoAtOnce        another program asks for the same account's messages
    └── Unreachable      nobody can be reached just now; worth another try
        └── Unsure       the connection broke: the message may be out, or not
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from core.errors import StationcallError

if TYPE_CHECKING:
    from pathlib import Path


class ShellError(StationcallError):
    """The root of the shell's errors."""


class DataFolderBusy(ShellError):
    """Another process works on the data folder."""

    def __init__(self, folder: Path) -> None:
        super().__init__(
            f"the data folder {folder} is in use by another stationcall: close that one, or give --data another folder"
        )
        self.folder = folder


class DataFolderUnusable(ShellError):
    """The data folder cannot be made or written."""

    def __init__(self, folder: Path, why: str) -> None:
        super().__init__(f"the data folder {folder} cannot be used ({why}): give --data a folder you can write to")
        self.folder = folder
        self.why = why


class TraineeUnknown(ShellError):
    """No trainee of that name, or with that id."""

    def __init__(self, who: str | int) -> None:
        super().__init__(f"no trainee {who!r} in this data folder")
        self.who = who


class FixtureBroken(ShellError):
    """A file that ships with the program was changed and cannot be read."""

    def __init__(self, name: str, says: str) -> None:
        super().__init__(f"the demo file {name} cannot be read ({says}): put the original back")
        self.name = name


class ScriptBroken(ShellError):
    """A line of a script that is none, or that sets the clock back."""

    def __init__(self, number: int, says: str) -> None:
        super().__init__(
            f"line {number} of the script, {says!r}: a line is '> text', '+ 45s', '@ 2026-03-02 06:30' (never back), or '# comment'"
        )
        self.number = number
        self.says = says


class NotAScriptFolder(ShellError):
    """A script may not write to a folder with a real diary."""

    def __init__(self, folder: Path) -> None:
        super().__init__(f"the data folder {folder} holds a real diary: give --data another folder for scripts, or none")
        self.folder = folder


class NotADemoFolder(ShellError):
    """The demo may not write to a folder that it did not make."""

    def __init__(self, folder: Path) -> None:
        super().__init__(f"the folder {folder} holds something else than a demo: give --data another folder")
        self.folder = folder


class SettingsWrong(ShellError):
    """Settings that are missing or cannot be: each as its variable and what it must be; values are not quoted."""

    def __init__(self, faults: tuple[str, ...]) -> None:
        super().__init__("; ".join(faults))
        self.faults = faults


class TokenRefused(ShellError):
    """The messaging network does not know the token."""

    def __init__(self) -> None:
        super().__init__("the network refuses the token: check STATIONCALL_TOKEN")


class StoreError(ShellError):
    """The root of the store's errors."""


class DatabaseUnusable(StoreError):
    """The database cannot be opened; `why` never holds its URL, in which there may be a password."""

    def __init__(self, why: str) -> None:
        super().__init__(f"the database cannot be opened: {why}")
        self.why = why


class DatabaseTooNew(StoreError):
    """The database was written by a newer program than this one."""

    def __init__(self, revision: str, newest_known: str) -> None:
        super().__init__(
            f"the database is of revision {revision}, newer than {newest_known} of this program: install a newer stationcall",
        )
        self.revision = revision
        self.newest_known = newest_known


class RowBroken(StoreError):
    """A value that no row may hold; `where` names the table and the key, never what the trainee wrote."""

    def __init__(self, where: str, fault: str) -> None:
        super().__init__(f"{where}: {fault}")
        self.where = where
        self.fault = fault


class DiaryConflict(StoreError):
    """An entry that contradicts the diary it is to join."""

    def __init__(self, entry: str, number: int, fault: str) -> None:
        super().__init__(f"{entry} {number}: {fault}")
        self.entry = entry
        self.number = number
        self.fault = fault


class ChannelError(ShellError):
    """The root of what a channel may raise while sending."""


class Gone(ChannelError):
    """The chat is over and nothing can be sent to it; `reason` is kept on the rows that are dropped."""

    def __init__(self, reason: str) -> None:
        super().__init__(f"the chat is gone: {reason}")
        self.reason = reason


class TwoAtOnce(ChannelError):
    """Another program asks for the same account's messages, or a webhook is set."""

    def __init__(self) -> None:
        super().__init__("another program asks for this account's messages: only one may")


class Unreachable(ChannelError):
    """Nobody can be reached just now; `retry_after_s` is how long the network asks to wait, None when it does not say."""

    def __init__(self, retry_after_s: float | None = None) -> None:
        super().__init__("the chat cannot be reached just now")
        self.retry_after_s = retry_after_s


class Unsure(Unreachable):
    """The connection broke before the network answered: the message may be out, or not."""
