"""What a coach is told of everyone's week or of one trainee, and a trainee of their own: each a message.

`zone` is that of who asks: their calendar says which Monday is meant; each trainee's days are those of their own clock.
"""

from __future__ import annotations

from datetime import timedelta
from decimal import Decimal
from typing import TYPE_CHECKING

from core.agenda import days_since
from core.body_effect import SETS_A_WEEK
from core.pictures import OwnWeekPicture
from core.plan import circuit_due
from core.progress import progress_of
from core.reminders import is_dark
from core.review.days import has_days, is_held
from core.review.flags import flags_of
from core.review.looking import look_at, look_at_all, roster_of, urgency_of
from core.review.paper import paper_of
from core.review.strength import strength_of
from core.review.week import week_asked, week_of
from core.review_messages import (
    ComingDay,
    HowIsTold,
    MissedLine,
    NeedLine,
    NeedWordTold,
    OwnWeek,
    SheetTold,
    TrainedLine,
    WeekTold,
    WhoMissedTold,
    WhoTrainedTold,
)

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence
    from datetime import date, datetime

    from core.review.looking import Looked
    from core.review.person import Person
    from core.review.week import PersonWeek, Which
    from core.review_facts import LoadWeek

LATEST = 3  # workouts whose effort says how it is now: common practice, no source
CHARTS = 2
OWN_LOADS = 5
DAY = timedelta(days=1)


def who_trained(people: Sequence[Person], week: Which, zone: str, now: datetime) -> WhoTrainedTold:
    """Who trained in a week, most days first, and who did not."""
    asked = week_asked(week, zone, now)
    weeks = [(person, week_of(person, asked, now)) for person in _on_roster(people)]
    trained = [_line(person, done) for person, done in weeks if done.trained]
    others = tuple(person.name for person, done in weeks if not done.trained)
    return WhoTrainedTold(week, asked.monday, tuple(sorted(trained, key=lambda line: -line.trained)), others)


def who_missed(people: Sequence[Person], week: Which, zone: str, now: datetime) -> WhoMissedTold:
    """Who missed training days in a week, most first."""
    asked = week_asked(week, zone, now)
    weeks = [(person, week_of(person, asked, now)) for person in _on_roster(people)]
    without = tuple(person.name for person, done in weeks if done.planned is None)
    return WhoMissedTold(week, asked.monday, _missed(weeks), without)


def who_needs_word(people: Sequence[Person], now: datetime) -> NeedWordTold:
    """Who needs a word, and why."""
    there = _on_roster(people)
    found = [NeedLine(person.name, flags) for person in there if (flags := flags_of(person, now))]
    return NeedWordTold(len(there), tuple(sorted(found, key=lambda line: urgency_of(line.flags))))


def how_is(person: Person, now: datetime) -> HowIsTold:
    """How one trainee is doing, with a picture of how it goes."""
    zone = person.trainee.zone
    this, last = (week_of(person, week_asked(which, zone, now), now) for which in ("this", "last"))
    came = person.came()
    efforts = [workout.effort for workout in came if workout.effort is not None][-LATEST:]
    change = strength_of(person, person.day(now))
    standing = person.diary.standing()
    return HowIsTold(
        name=person.name,
        this=_line(person, this),
        last=_line(person, last),
        days_since=days_since(came, zone, person.day(now)),
        running=person.running,
        sets=this.sets,
        change=change,
        effort=_mean(efforts),
        loads=_moved((this if this.loads else last).loads),
        flags=flags_of(person, now, change),
        picture=progress_of(person.trainee, standing, now, dict.fromkeys(one.exercise for one in standing), CHARTS),
    )


def week_told(people: Sequence[Person], week: Which, zone: str, now: datetime) -> WeekTold:
    """A week at a glance, with the picture of everyone."""
    asked = week_asked(week, zone, now)
    looked = look_at_all(people, asked, now)
    weeks = [(one.person, one.week) for one in looked]
    with_days = [done for _, done in weeks if done.planned is not None]
    loads = [load for _, done in weeks for load in done.loads]
    efforts = [workout.effort for _, done in weeks for workout in done.workouts if workout.effort is not None]
    return WeekTold(
        week=week,
        monday=asked.monday,
        people=len(looked),
        trained=sum(done.trained > 0 for _, done in weeks),
        days=sum(done.trained for _, done in weeks),
        kept=sum(done.kept for done in with_days),
        planned=sum(done.planned or 0 for done in with_days),
        up=sum(load.step > 0 for load in loads),
        down=sum(load.step < 0 for load in loads),
        stronger=_names(one for one in looked if one.change is not None and one.change.low > 0),
        weaker=_names(one for one in looked if one.change is not None and one.change.high < 0),
        unclear=sum(one.change is None or not one.change.clear for one in looked),
        effort=_mean(efforts),
        efforts=len(efforts),
        missed=_missed(weeks),
        needs=tuple(NeedLine(one.person.name, one.flags) for one in looked if one.flags),
        picture=roster_of(looked, asked, zone, now),
    )


def sheet_of(people: Sequence[Person], week: Which, zone: str, now: datetime) -> SheetTold:
    """The sheet of a week."""
    asked = week_asked(week, zone, now)
    looked = look_at_all(people, asked, now)
    return SheetTold(week, asked.monday, len(looked), paper_of(looked, asked, zone, now))


def own_week(person: Person, now: datetime) -> OwnWeek:
    """A trainee's own week so far, with its picture; nothing of it is a reproach."""
    zone = person.trainee.zone
    looked = look_at(person, week_asked("this", zone, now), now)
    done = looked.week
    minutes = tuple(_minutes(person, done, day) for day in done.week.days())
    return OwnWeek(
        days=_line(person, done),
        sets=done.sets,
        minutes=sum(minutes),
        effort=done.effort,
        change=looked.change,
        loads=_moved(done.loads),
        coming=_coming(person, now),
        picture=OwnWeekPicture(
            monday=done.week.monday,
            days=done.days,
            minutes=minutes,
            sets=done.sets,
            loads=tuple(sorted(done.loads, key=lambda load: load.top is None)[:OWN_LOADS]),
            groups=done.groups,
            advised=SETS_A_WEEK,
            change=looked.change,
            effort=done.effort,
            dark=is_dark(now, zone),
        ),
    )


def _on_roster(people: Iterable[Person]) -> list[Person]:
    return [person for person in people if person.trainee.ended_at is None]


def _line(person: Person, done: PersonWeek) -> TrainedLine:
    return TrainedLine(person.name, done.trained, done.planned)


def _missed(weeks: Iterable[tuple[Person, PersonWeek]]) -> tuple[MissedLine, ...]:
    lines = [MissedLine(person.name, done.missed) for person, done in weeks if done.missed]
    return tuple(sorted(lines, key=lambda line: -len(line.days)))


def _names(looked: Iterable[Looked]) -> tuple[str, ...]:
    return tuple(one.person.name for one in looked)


def _mean(values: Sequence[Decimal]) -> Decimal | None:
    return sum(values, Decimal(0)) / len(values) if values else None


def _moved(loads: Iterable[LoadWeek]) -> tuple[LoadWeek, ...]:
    """Those whose load went up or down, ups first."""
    return tuple(sorted((load for load in loads if load.step), key=lambda load: -load.step))


def _minutes(person: Person, done: PersonWeek, day: date) -> int:
    lasted = (
        workout.ended_at - workout.started_at
        for workout in done.workouts
        if workout.ended_at is not None and person.day(workout.started_at) == day
    )
    return round(sum(one.total_seconds() for one in lasted) / 60)


def _coming(person: Person, now: datetime) -> ComingDay | None:
    """The next training day, today's when nothing was done yet; None where none is set or comes, or the coach's pause holds."""
    today, trainee = person.day(now), person.trainee
    if not has_days(person) or is_held(person, today):
        return None
    if trainee.block is not None:
        due = circuit_due(trainee.block, person.diary, today, trainee.zone, trainee.reminders)
        return ComingDay(due.on, due.circuit.name)
    first = today + DAY if any(person.day(workout.started_at) == today for workout in person.came()) else today
    found = None if trainee.reminders is None else trainee.reminders.next_day(first)
    return None if found is None else ComingDay(found[0], person.circuit.name)
