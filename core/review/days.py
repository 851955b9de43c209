"""What each day was: trained, planned, missed. All rules are common practice without a source.

- Planned are the days that the trainee has set for reminders, and else the block's days. Where there are neither, nothing was
  planned and nothing can be missed.
- A planned day counts from when the days were set and the cautions accepted: nobody misses what they had not begun.
- A day is missed when it has gone by without a workout, and no workout on a free day of the same week makes up for it.
- Days in the coach's pause, and days on which a warning sign or a clearance stood before a workout, are not missed.
"""

from __future__ import annotations

from datetime import date, datetime, timedelta
from typing import TYPE_CHECKING

from core.health import NoteKind, Outcome
from core.plan import is_training_day, monday_of
from core.reminders import at_clock
from core.review.person import Week
from core.review_facts import DayKind
from core.safety.screening import cleared_since, verdict

if TYPE_CHECKING:
    from core.review.person import Person

RUN_WEEKS = 6  # how far back a run of missed days is looked for; exceptions to a trainee's days are kept as long
DAY = timedelta(days=1)


def days_of_week(person: Person, week: Week, now: datetime) -> tuple[DayKind, ...]:
    """What the seven days of a week were, or are to be."""
    today = person.day(now)
    trained = {person.day(workout.started_at) for workout in person.came()}
    planned = [day for day in week.days() if is_planned(person, day)]
    free = sum(day in trained and day not in planned for day in week.days())
    kinds: dict[date, DayKind] = dict.fromkeys(planned, DayKind.AHEAD)
    for day in planned:
        if is_held(person, day):
            kinds[day] = DayKind.PAUSED
        elif day < today and day not in trained:
            kinds[day] = DayKind.MOVED if free else DayKind.MISSED
            free -= 1 if free else 0
    return tuple(DayKind.TRAINED if day in trained else kinds.get(day, DayKind.FREE) for day in week.days())


def has_days(person: Person) -> bool:
    """Whether days are planned for them at all."""
    return person.trainee.reminders is not None or bool(person.trainee.block and person.trainee.block.days)


def is_planned(person: Person, day: date) -> bool:
    """Whether a day is, or was, a training day."""
    trainee = person.trainee
    begun = trainee.cautions_accepted_at
    if begun is None or day < person.day(begun):
        return False
    if trainee.reminders is not None:
        at, since = trainee.reminders.time_on(day), trainee.reminders_since
        return at is not None and (since is None or at_clock(day, at, trainee.zone) > since)
    block = trainee.block
    return block is not None and bool(block.days) and day >= block.starts_on and is_training_day(block, day, None)


def is_held(person: Person, day: date) -> bool:
    """Whether the coach's pause, a warning sign or a clearance stood before a workout on a day."""
    pause = person.trainee.pause
    spans = [] if pause is None else [(person.day(pause.since), pause.until)]
    spans += [(person.day(since), None if until is None else person.day(until)) for since, until in _safety(person)]
    return any(first <= day and (until is None or day < until) for first, until in spans)


def _safety(person: Person) -> list[tuple[datetime, datetime | None]]:
    """From when until when safety stood before a workout, None: it still does."""
    diary = person.diary
    told = [note.at for note in diary.notes if note.kind is NoteKind.CLEARED]
    signs = [(sign.at, next((at for at in told if at > sign.at), None)) for sign in diary.pains if sign.urgent]
    health = person.trainee.health
    if health.decided_at is None or verdict(health).outcome not in {Outcome.CLEARANCE, Outcome.WAIT}:
        return signs
    return [*signs, (health.decided_at, cleared_since(diary, health.decided_at))]


def missed_in_a_row(person: Person, now: datetime) -> tuple[date, ...]:
    """The planned days that were missed since the last workout, oldest first; none while they rest with the coach's word."""
    today = person.day(now)
    if is_held(person, today):
        return ()
    run: list[date] = []
    for back in range(RUN_WEEKS):
        week = Week(monday_of(today) - 7 * back * DAY)
        days = [(day, kind) for day, kind in zip(week.days(), days_of_week(person, week, now), strict=True) if day <= today]
        for day, kind in reversed(days):
            if kind is DayKind.TRAINED:
                return tuple(reversed(run))
            if kind is DayKind.MISSED:
                run.append(day)
    return tuple(reversed(run))
