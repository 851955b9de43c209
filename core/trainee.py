"""Who trains: what the assistant must know of a trainee to decide anything."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime

from core.rack import Rack
from core.recurrence import Recurrence
from core.recurrence import Weekday as Weekday  # noqa: PLC0414 - messages and acts speak of weekdays
from core.units import Unit


@dataclass(frozen=True)
class Trainee:
    """A trainee as the diary knows them.

    `rack` is None until it was said, and empty for someone without weights. `zone` is an IANA name.

    `reminders` are the days to train, None when the trainee wants no reminders; `reminders_since` is when they were said: what lies
    before is not due. `snoozed_until` is when a reminder that was put off comes again, `heard_at` when the trainee last wrote.
    """

    name: str
    zone: str = "UTC"
    unit: Unit = Unit.KG
    rack: Rack | None = None
    cautions_accepted_at: datetime | None = None
    reminders: Recurrence | None = None
    reminders_since: datetime | None = None
    snoozed_until: datetime | None = None
    heard_at: datetime | None = None
