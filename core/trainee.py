"""Who trains: what the assistant must know of a trainee to decide anything."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from typing import Literal

from core.rack import Rack
from core.units import Unit

Weekday = Literal["mon", "tue", "wed", "thu", "fri", "sat", "sun"]


@dataclass(frozen=True)
class ReminderDays:
    """Days of the week to be reminded on, and the time of day ("HH:MM") in the trainee's zone."""

    days: tuple[Weekday, ...]
    at: str


@dataclass(frozen=True)
class Trainee:
    """A trainee as the diary knows them.

    `rack` is None until it was said, and empty for someone without weights. `zone` is an IANA name.
    """

    name: str
    zone: str = "UTC"
    unit: Unit = Unit.KG
    rack: Rack | None = None
    cautions_accepted_at: datetime | None = None
    reminder: ReminderDays | None = None
