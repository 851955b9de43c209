"""A trainee's own records as a file, as a value. The shell writes it just before it is sent, see `bot.files`."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from enum import StrEnum

from core.diary import History
from core.trainee import Trainee


class Form(StrEnum):
    """How the records are written down."""

    CSV = "csv"  # the sets, a line each, for a spreadsheet
    JSON = "json"  # everything that is kept of the trainee, for a program


@dataclass(frozen=True)
class RecordsFile:
    """What is kept of a trainee at an instant (UTC); of `diary` a table of sets holds the sets alone.

    `circuit` is the name of the circuit that is on for them.
    """

    form: Form
    at: datetime
    trainee: Trainee
    circuit: str
    diary: History
