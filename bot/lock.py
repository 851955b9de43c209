"""One process a data folder. The only door to filelock."""

from __future__ import annotations

from contextlib import contextmanager
from typing import TYPE_CHECKING

from filelock import FileLock, Timeout

from bot.errors import DataFolderBusy

if TYPE_CHECKING:
    from collections.abc import Iterator
    from pathlib import Path

LOCK_NAME = "in-use.lock"


@contextmanager
def claimed(folder: Path) -> Iterator[None]:
    """Hold the folder for this process; the operating system frees it when the process ends, however it ends.

    Raises:
        DataFolderBusy: at once, when another process holds it.
    """
    lock = FileLock(folder / LOCK_NAME)
    try:
        lock.acquire(timeout=0)
    except Timeout:
        raise DataFolderBusy(folder) from None
    try:
        yield
    finally:
        lock.release()
