"""What is due between workouts, and when. The only place that knows zones.

Nothing here is kept in a queue: what is due next follows from the trainee's days, the diary and the time, so it is the same after a
restart, a change of zone or new zone data. Each thing that falls due is seen to once: said, or dropped for a reason that is kept.

| due | when | dropped when |
|---|---|---|
| reminder | on a training day, at its time | a workout runs; trained that day; one a day; over 2 h late |
| snooze | when the trainee said | a workout runs; trained that day; over 2 h late |
| follow-up | the free day after a reminded day without a workout; once in a silence | as a reminder, but over 4 h late |
| come-back | instead of a reminder 7 days or more after the first unanswered one, or after 14 days | as a follow-up |

In a pause that the coach gives, and for somebody who no longer trains here, none is due. All are dropped while safety stands before
a workout (`core.safety.gate`). Late ones are dropped in quiet hours. After a come-back nothing is due until the trainee speaks.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import UTC, date, datetime, time, timedelta
from typing import TYPE_CHECKING
from zoneinfo import ZoneInfo

from core.diary import Reason, Unasked, UnaskedKind
from core.safety.gate import bar

if TYPE_CHECKING:
    from core.diary import History, WorkoutRecord
    from core.recurrence import Recurrence
    from core.trainee import Pause, Trainee

DAY = timedelta(days=1)
QUIET_FROM, QUIET_UNTIL = (
    "21:00",
    "08:00",
)  # 47 CFR 64.1200(c)(1), calls nobody asked for: not before 8 and not after 9 (from memory)
LATE = {
    UnaskedKind.REMINDER: timedelta(hours=2),
    UnaskedKind.SNOOZE: timedelta(hours=2),
    UnaskedKind.FOLLOW_UP: timedelta(hours=4),
    UnaskedKind.COME_BACK: timedelta(hours=4),
}
DARK_FROM, LIGHT_FROM = "19:00", "07:00"  # a bright picture hurts the eyes in a dark room: common practice, no source
PUNCTUAL = timedelta(minutes=10)  # later than this, quiet hours count even for a time that the trainee chose
SILENCE_DAYS = 7  # from the first reminder that was not answered: common practice, no source
LONG_SILENCE_DAYS = 14  # no training day came before


def local_date(instant: datetime, zone: str) -> date:
    """The date on the trainee's calendar at an instant (UTC)."""
    return instant.astimezone(ZoneInfo(zone)).date()


def clock_text(instant: datetime, zone: str) -> str:
    """The wall clock of the trainee at an instant, "HH:MM"."""
    return instant.astimezone(ZoneInfo(zone)).strftime("%H:%M")


def at_clock(day: date, at: str, zone: str) -> datetime:
    """The instant (UTC) when the wall clock of `zone` shows `at` ("HH:MM") on `day`.

    A time that the spring change leaves out is read with the offset before the change, one that the autumn change repeats is the
    first of the two (RFC 5545, section 3.3.5).
    """
    local = datetime.combine(day, time.fromisoformat(at), tzinfo=ZoneInfo(zone))
    return local.astimezone(UTC)


def next_time(at: str, zone: str, after: datetime) -> datetime:
    """The first instant later than `after` when the wall clock of `zone` shows `at`."""
    day = local_date(after, zone)
    while (instant := at_clock(day, at, zone)) <= after:
        day += DAY
    return instant


def next_training(reminders: Recurrence, zone: str, after: datetime) -> tuple[date, datetime] | None:
    """The first training day whose time is later than an instant, and that time (UTC); None when there is none."""
    day = local_date(after, zone) - DAY  # a zone that skipped a day can put yesterday's time after now
    while (found := reminders.next_day(day)) is not None:
        instant = at_clock(*found, zone)
        if instant > after:
            return found[0], instant
        day = found[0] + DAY
    return None


def offsets_of(zone: str, first: date, days: int) -> str:
    """What the zone's clocks will do, as a text that differs when new zone data change it: offsets day by day where they change."""
    seen, told = None, []
    for number in range(days):
        noon = datetime.combine(first + timedelta(days=number), time(12), tzinfo=ZoneInfo(zone))
        offset = noon.utcoffset()
        if offset != seen:
            told.append(f"{noon:%Y-%m-%d}{noon:%z}")
            seen = offset
    return " ".join(told)


@dataclass(frozen=True)
class Due:
    """What is due next: its kind, the instant (UTC), and the day it is for."""

    kind: UnaskedKind
    at: datetime
    day: date


def next_due(trainee: Trainee, history: History) -> Due | None:
    """What is due next, possibly in the past; None when there is nothing.

    In a pause that the coach gives nothing is due but what the trainee has put off; what comes after it counts from its end.
    """
    if trainee.ended_at is not None:
        return None
    trainee = _after_pause(trainee)
    found = []
    if trainee.snoozed_until is not None:
        found.append(Due(UnaskedKind.SNOOZE, trainee.snoozed_until, local_date(trainee.snoozed_until, trainee.zone)))
    if trainee.reminders is not None and trainee.reminders_since is not None and not _fallen_silent(trainee, history):
        reminder = _next_reminder(trainee, trainee.reminders, trainee.reminders_since, history)
        found += [due for due in (reminder, _follow_up(trainee, trainee.reminders, history, reminder)) if due is not None]
    return min(found, key=lambda due: due.at, default=None)


def rests(pause: Pause, today: date) -> bool:
    """Whether a pause that has begun still holds on the trainee's day."""
    return pause.until is None or today < pause.until


def pause_ends(trainee: Trainee) -> datetime | None:
    """When the pause that the coach gave ends (UTC), possibly in the past; None without one, or with one that has no end."""
    pause = trainee.pause
    return None if pause is None or pause.until is None else at_clock(pause.until, "00:00", trainee.zone)


def _after_pause(trainee: Trainee) -> Trainee:
    """The trainee as if they had set their days, and spoken, when their pause ends; without reminders when it has no end."""
    ends_at = pause_ends(trainee)
    if trainee.pause is None or trainee.reminders_since is None:
        return trainee
    if ends_at is None:
        return replace(trainee, reminders=None)
    heard_at = ends_at if trainee.heard_at is None else max(trainee.heard_at, ends_at)
    return replace(trainee, reminders_since=max(trainee.reminders_since, ends_at), heard_at=heard_at)


def word_due(trainee: Trainee, now: datetime) -> datetime:
    """When words of the coach's that wait may be said (UTC): now, or when the quiet hours end."""
    return next_time(QUIET_UNTIL, trainee.zone, now) if quiet(now, trainee.zone) else now


def seen_to(due: Due, trainee: Trainee, history: History, now: datetime, *, running: bool) -> Unasked:
    """What becomes of something that is due: said, or dropped for the first reason that holds."""
    return Unasked(due.kind, due.day, due.at, now, _reason(due, trainee, history, now, running=running))


def _reason(due: Due, trainee: Trainee, history: History, now: datetime, *, running: bool) -> Reason | None:
    late = now - due.at
    zone = trainee.zone
    if running:
        return Reason.WORKOUT
    if any(local_date(workout.started_at, zone) == due.day for workout in history.workouts):
        return Reason.TRAINED
    if bar(trainee, history) is not None:
        return Reason.UNWELL
    if late > LATE[due.kind] or (late > PUNCTUAL and local_date(now, zone) != due.day):
        return Reason.LATE
    if late > PUNCTUAL and quiet(now, zone) and not quiet(due.at, zone):
        return Reason.QUIET
    if due.kind is not UnaskedKind.SNOOZE and _said_on(local_date(now, zone), trainee, history):
        return Reason.ONE_A_DAY
    return None


def worthless_after(record: Unasked, zone: str) -> datetime:
    """When a message that was decided is better not sent any more (UTC): it would be too late, or fall into the quiet hours."""
    late = record.due_at + LATE[record.kind]
    if quiet(record.due_at, zone):
        return late
    return min(late, at_clock(local_date(record.due_at, zone), QUIET_FROM, zone))


def quiet(instant: datetime, zone: str) -> bool:
    """Whether the trainee's wall clock is in the quiet hours."""
    return not QUIET_UNTIL <= clock_text(instant, zone) < QUIET_FROM


def is_dark(instant: datetime, zone: str) -> bool:
    """Whether it is evening or night on the wall clock of a zone."""
    return not LIGHT_FROM <= clock_text(instant, zone) < DARK_FROM


def _said_on(day: date, trainee: Trainee, history: History) -> bool:
    """Whether something was said unasked on a day, since the trainee last said when to remind."""
    since = trainee.reminders_since
    return any(
        record.dropped is None and local_date(record.at, trainee.zone) == day
        for record in history.unasked
        if since is None or record.at > since
    )


def _of(history: History, *kinds: UnaskedKind) -> list[Unasked]:
    return [record for record in history.unasked if record.kind in kinds]


def _answered_at(trainee: Trainee) -> datetime:
    return trainee.heard_at or datetime.min.replace(tzinfo=UTC)


def _fallen_silent(trainee: Trainee, history: History) -> bool:
    """Whether the come-back was said, and the trainee has not spoken since."""
    return any(record.at >= _answered_at(trainee) and record.dropped is None for record in _of(history, UnaskedKind.COME_BACK))


def _next_reminder(trainee: Trainee, reminders: Recurrence, since: datetime, history: History) -> Due | None:
    """The next training day that was not seen to: its reminder, or the come-back in its place."""
    seen = [record for record in _of(history, UnaskedKind.REMINDER, UnaskedKind.COME_BACK) if record.at >= since]
    after = max(since, seen[-1].due_at) if seen else since
    found = next_training(reminders, trainee.zone, after)
    while found is not None and seen and found[0] <= seen[-1].day:  # the same day again, in another zone
        found = next_training(reminders, trainee.zone, found[1])
    silent_since = _silent_since(trainee, history)
    if silent_since is None or (found is not None and (found[0] - silent_since.day).days < SILENCE_DAYS):
        return None if found is None else Due(UnaskedKind.REMINDER, found[1], found[0])
    return _come_back(trainee, silent_since, found, seen[-1].day if seen else None)


def _come_back(trainee: Trainee, silent_since: Unasked, found: tuple[date, datetime] | None, seen: date | None) -> Due | None:
    """The come-back on the next training day, or after a long silence when that comes sooner."""
    latest = silent_since.day + timedelta(days=LONG_SILENCE_DAYS)
    if (found is None or found[0] > latest) and (seen is None or latest > seen):
        day, at = latest, silent_since.due_at
    elif found is not None:
        day, at = found
    else:
        return None
    return Due(UnaskedKind.COME_BACK, at_clock(day, _decent(clock_text(at, trainee.zone)), trainee.zone), day)


def _silent_since(trainee: Trainee, history: History) -> Unasked | None:
    """The first reminder that nobody answered, None when the last one was."""
    said = [record for record in _of(history, UnaskedKind.REMINDER) if record.dropped is None]
    return next((record for record in said if record.at >= _answered_at(trainee)), None)


def _follow_up(trainee: Trainee, reminders: Recurrence, history: History, coming: Due | None) -> Due | None:
    """One kind word the day after a training day that went by; never two in one silence, and not on a training day."""
    said = [record for record in _of(history, UnaskedKind.REMINDER) if record.dropped is None]
    if not said:
        return None
    missed = said[-1]
    day = missed.day + DAY
    earlier = _of(history, UnaskedKind.FOLLOW_UP)
    if (
        trainee.snoozed_until is not None
        or reminders.time_on(missed.day) is None
        or (coming is not None and coming.day <= day)
        or reminders.time_on(day) is not None
        or any(_makes_up_for(missed, workout, trainee.zone) for workout in history.workouts)
        or any(record.day == day or record.at >= _answered_at(trainee) for record in earlier)
        or (trainee.reminders_since is not None and missed.at < trainee.reminders_since)
    ):
        return None
    at = reminders.time_on(missed.day) or clock_text(missed.due_at, trainee.zone)
    return Due(UnaskedKind.FOLLOW_UP, at_clock(day, _decent(at), trainee.zone), day)


def _makes_up_for(missed: Unasked, workout: WorkoutRecord, zone: str) -> bool:
    """Whether a workout came on the day of a reminder or later; after a journey west that day may be yesterday on the new clock."""
    return workout.started_at >= missed.at or local_date(workout.started_at, zone) >= missed.day


def _decent(at: str) -> str:
    """A time of day outside the quiet hours, as near to `at` as may be."""
    if at < QUIET_UNTIL:
        return QUIET_UNTIL
    return min(at, "20:00")
