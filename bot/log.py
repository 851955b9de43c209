"""The log: a file in the data folder. Ids only: never what somebody wrote, never a name.

Errors of libraries often quote the values they stumbled over. So an exception is logged as its type and the places it went
through, and other libraries' sentences are left out.
"""

from __future__ import annotations

import logging
import traceback
from contextlib import contextmanager
from logging.handlers import RotatingFileHandler
from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterator
    from types import TracebackType

LOG_NAME = "stationcall.log"
OURS = "bot"
BYTES_KEPT = 1_000_000
DEPTH = 8  # places of a trail, the innermost ones


def trail(error: BaseException) -> str:
    """An exception as its type and the places it went through, innermost first; not what it says."""
    places = [f"{Path(frame.filename).name}:{frame.lineno}" for frame in traceback.extract_tb(error.__traceback__)]
    said = f"{type(error).__name__} at {' < '.join(reversed(places[-DEPTH:]))}"
    cause = error.__cause__
    return said if cause is None else f"{said}, from {trail(cause)}"


class IdsOnly(logging.Formatter):
    """Formats a record of ours with its message, any other with its place alone."""

    def __init__(self) -> None:
        super().__init__("%(asctime)s %(levelname)s %(name)s: %(message)s")

    def format(self, record: logging.LogRecord) -> str:
        """One line, or two with an exception."""
        hidden: dict[str, object] = {"exc_text": None, "stack_info": None}  # another handler may have formatted the exception
        if record.name.split(".")[0] != OURS:
            hidden |= {"msg": f"at {record.module}:{record.lineno}", "args": None}
        return super().format(logging.makeLogRecord(record.__dict__ | hidden))

    def formatException(  # noqa: N802 - the library's name
        self,
        ei: tuple[type[BaseException], BaseException, TracebackType | None] | tuple[None, None, None],
    ) -> str:
        """The trail of an exception."""
        return "" if ei[1] is None else trail(ei[1])


@contextmanager
def to_file(folder: Path) -> Iterator[None]:
    """Send everything that is logged to a file in `folder`, and nothing to the terminal."""
    handler = RotatingFileHandler(folder / LOG_NAME, maxBytes=BYTES_KEPT, backupCount=1, encoding="utf-8")
    handler.setFormatter(IdsOnly())
    root, ours = logging.getLogger(), logging.getLogger(OURS)
    level = ours.level
    root.addHandler(handler)
    ours.setLevel(logging.INFO)
    try:
        yield
    finally:
        ours.setLevel(level)
        root.removeHandler(handler)
        handler.close()
