"""Who trains: what the assistant must know of a trainee to decide anything."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, datetime

from core.circuit import Circuit
from core.health import Health
from core.rack import Rack
from core.recurrence import Recurrence
from core.recurrence import Weekday as Weekday  # noqa: PLC0414 - messages and acts speak of weekdays
from core.units import Unit
from core.wishes import Wishes

NOTHING_SAID = Health()
NOTHING_WISHED = Wishes()


@dataclass(frozen=True)
class Block:
    """What a coach has planned for a trainee: circuits that take turns on training days, over some weeks.

    Attributes:
        circuits: at least one, in the order they take turns.
        days: the training days, in week order; empty: any day.
        weeks: how many weeks; after the last it begins again.
        easier_weeks: the weeks (from 1) with less to do, as a rule the last.
        starts_on: the first day, on the trainee's calendar.
    """

    circuits: tuple[Circuit, ...]
    days: tuple[Weekday, ...]
    weeks: int
    easier_weeks: tuple[int, ...]
    starts_on: date


@dataclass(frozen=True)
class Coming:
    """A circuit that takes the place of what is on, plan or not, from a day on the trainee's calendar."""

    circuit: Circuit
    from_on: date


@dataclass(frozen=True)
class Pause:
    """A rest that the coach gives from an instant (UTC) on: nothing is said unasked. It ends before `until`, None: when told."""

    since: datetime
    until: date | None


@dataclass(frozen=True)
class Trainee:
    """A trainee as the diary knows them.

    `rack` is None until it was said, and empty for someone without weights. `zone` is an IANA name. `block` is None for someone who
    has one circuit and no plan. `health` holds nothing until the health talk has begun.

    `reminders` are the days to train, None when the trainee wants no reminders; `reminders_since` is when they were said: what lies
    before is not due. `snoozed_until` is when a reminder that was put off comes again, `heard_at` when the trainee last wrote.

    `wishes`, `coming` and `pause` are the coach's for this trainee alone; `ended_at` is when the coach took them off the roster,
    None while they are on it.
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
    health: Health = NOTHING_SAID
    block: Block | None = None
    wishes: Wishes = NOTHING_WISHED
    coming: Coming | None = None
    pause: Pause | None = None
    ended_at: datetime | None = None
