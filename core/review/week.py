"""One trainee's calendar week, Monday to Sunday on their own clock: days, workouts, sets, loads, muscle groups, effort."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass
from datetime import date, datetime, timedelta
from decimal import Decimal
from typing import TYPE_CHECKING, Literal

from core.body_effect import groups_of
from core.catalogue import exercise
from core.diary import WorkoutRecord
from core.plan import monday_of
from core.reminders import local_date
from core.review.days import days_of_week, has_days, is_held, is_planned
from core.review.person import Week
from core.review_facts import DayKind, GroupSets, LoadWeek
from core.safety.weeks import session_load

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Mapping, Sequence

    from core.diary import SetRecord
    from core.review.person import Person
    from core.units import Load

Which = Literal["this", "last"]


@dataclass(frozen=True)
class PersonWeek:
    """What somebody did in a week.

    Attributes:
        week: which.
        days: what its seven days were.
        planned: how many of them were planned and not held back; None when no days are set: nothing is claimed then.
        workouts: those they came for, oldest first.
        sets: how many, a station once a round, per side or not.
        loads: an exercise each, the one with most sets first.
        groups: every major muscle group.
        effort: the mean of the workouts' own (0-10), None when none was said.
        load: effort times minutes over the workouts whose effort was said, None when none was.
    """

    week: Week
    days: tuple[DayKind, ...]
    planned: int | None
    workouts: tuple[WorkoutRecord, ...]
    sets: int
    loads: tuple[LoadWeek, ...]
    groups: tuple[GroupSets, ...]
    effort: Decimal | None
    load: int | None

    @property
    def trained(self) -> int:
        """Days with a workout."""
        return sum(kind is DayKind.TRAINED for kind in self.days)

    @property
    def kept(self) -> int:
        """Planned days that were trained, or made up for."""
        return min(self.trained, self.planned or 0)

    @property
    def missed(self) -> tuple[date, ...]:
        """The days that were missed."""
        return tuple(day for day, kind in zip(self.week.days(), self.days, strict=True) if kind is DayKind.MISSED)


def week_asked(which: Which, zone: str, now: datetime) -> Week:
    """This week or the last one on the calendar of a zone: who asks decides which Monday is meant."""
    monday = monday_of(local_date(now, zone))
    return Week(monday if which == "this" else monday - timedelta(days=7))


def week_of(person: Person, week: Week, now: datetime) -> PersonWeek:
    """What somebody did in a week, as far as it has gone."""
    starts = {workout.number: person.day(workout.started_at) for workout in person.diary.workouts}
    workouts = tuple(workout for workout in person.came() if week.holds(starts[workout.number]))
    standing = person.diary.standing()
    done = [record for record in standing if week.holds(starts[record.workout])]
    earlier = [record for record in standing if starts[record.workout] < week.monday]
    efforts = [workout.effort for workout in workouts if workout.effort is not None]
    burdens = [session_load(workout, float(workout.effort)) for workout in workouts if workout.effort is not None]
    planned = [day for day in week.days() if is_planned(person, day) and not is_held(person, day)]
    return PersonWeek(
        week=week,
        days=days_of_week(person, week, now),
        planned=len(planned) if has_days(person) else None,
        workouts=workouts,
        sets=sets_of(done).total(),
        loads=tuple(_loads(done, earlier)),
        groups=_groups(done, starts),
        effort=sum(efforts, Decimal(0)) / len(efforts) if efforts else None,
        load=round(sum(burdens)) if burdens else None,
    )


def sets_of(records: Iterable[SetRecord]) -> Counter[str]:
    """How many sets of each exercise (slug); both sides of a station in a round are one."""
    return Counter(record.exercise for record in _weaker_sides(records))


def _weaker_sides(records: Iterable[SetRecord]) -> list[SetRecord]:
    """A record a set: of two sides of a station in a round the one with fewer reps."""
    found: dict[tuple[int, int, int, str, int], SetRecord] = {}
    for record in records:
        spot = (record.workout, record.round, record.station, record.exercise, 0 if record.side is not None else record.number)
        if spot not in found or (record.reps or 0) < (found[spot].reps or 0):
            found[spot] = record
    return list(found.values())


def _loads(done: Sequence[SetRecord], earlier: Sequence[SetRecord]) -> Iterator[LoadWeek]:
    """The exercises of a week, the one with most sets first, in the order they were done where there are as many."""
    first_done = list(dict.fromkeys(record.exercise for record in done))
    for slug, sets in sorted(sets_of(done).items(), key=lambda one: (-one[1], first_done.index(one[0]))):
        movement = exercise(slug)
        own = [record for record in done if record.exercise == slug]
        before = [record for record in earlier if record.exercise == slug]
        top = heaviest(own) if movement.loads_held else None
        yield LoadWeek(
            exercise=movement.name,
            loads_held=movement.loads_held,
            sets=sets,
            top=top,
            reps=tuple(
                record.reps for record in _weaker_sides(own) if record.reps is not None and (top is None or _is(record.load, top))
            ),
            before=heaviest([record for record in before if record.workout == before[-1].workout]) if movement.loads_held else None,
        )


def heaviest(records: Iterable[SetRecord]) -> Load | None:
    """The heaviest load, None when none was said."""
    return max((record.load for record in records if record.load is not None), key=lambda load: load.kg, default=None)


def _is(load: Load | None, other: Load) -> bool:
    return load is not None and load.kg == other.kg


def _groups(done: Sequence[SetRecord], starts: Mapping[int, date]) -> tuple[GroupSets, ...]:
    """Every major group, a set of a main muscle counting one and of a helping one a half, as `core.body_effect` counts them."""
    days = sorted({starts[record.workout] for record in done})
    sets = [sets_of(record for record in done if starts[record.workout] == day) for day in days]
    return tuple(GroupSets(group, line.sets, line.days) for group, line in groups_of(sets).items())
