"""The sheet of a week: everyone's in full, health only as far as the trainee agreed."""

from __future__ import annotations

from datetime import timedelta
from typing import TYPE_CHECKING

from core.body_effect import DAYS_A_WEEK, SETS_A_WEEK
from core.catalogue import exercise
from core.progress import past_sets
from core.reminders import local_date
from core.safety.joints import watched
from core.safety.weeks import session_load
from core.sheet import (
    Sheet,
    SheetCurve,
    SheetHold,
    SheetNote,
    SheetPain,
    SheetPerson,
    SheetQuestion,
    SheetSwap,
    SheetWorkout,
)

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence
    from datetime import datetime

    from core.diary import WorkoutRecord
    from core.review.looking import Looked
    from core.review.person import Person, Week

CURVES = 3
CURVE_DAYS = timedelta(days=42)
DAY = timedelta(days=1)


def paper_of(looked: Sequence[Looked], week: Week, zone: str, now: datetime) -> Sheet:
    """The sheet of a week, in the order given."""
    return Sheet(
        monday=week.monday,
        sunday=week.sunday,
        made_on=local_date(now, zone),
        people=tuple(_person(one, week, now) for one in looked),
        sets_advised=SETS_A_WEEK,
        days_advised=DAYS_A_WEEK,
    )


def _person(looked: Looked, week: Week, now: datetime) -> SheetPerson:
    person, done = looked.person, looked.week
    wishes = person.trainee.wishes
    return SheetPerson(
        name=person.name,
        flags=looked.flags,
        days=done.days,
        trained=done.trained,
        planned=done.planned,
        missed=len(done.missed),
        workouts=tuple(_workout(person, workout) for workout in done.workouts),
        sets=done.sets,
        loads=done.loads,
        groups=done.groups,
        effort=done.effort,
        load=done.load,
        change=looked.change,
        curves=tuple(_curves(person, week)),
        swaps=tuple(SheetSwap(exercise(one.exercise).name, exercise(one.instead).name) for one in wishes.swaps),
        holds=tuple(SheetHold(_name(one.exercise), one.most) for one in wishes.holds),
        notes=tuple(SheetNote(_name(one.exercise), one.text) for one in wishes.notes),
        pains=tuple(_pains(person, week, now)),
        questions=tuple(
            SheetQuestion(person.day(one.at), one.text, _name(one.exercise), one.answered_at is not None)
            for one in person.diary.questions
            if one.answered_at is None or week.holds(person.day(one.at))
        ),
    )


def _name(slug: str | None) -> str | None:
    return None if slug is None else exercise(slug).name


def _workout(person: Person, workout: WorkoutRecord) -> SheetWorkout:
    minutes = None if workout.ended_at is None else round((workout.ended_at - workout.started_at).total_seconds() / 60)
    load = None if workout.effort is None else round(session_load(workout, float(workout.effort)))
    return SheetWorkout(person.day(workout.started_at), workout.circuit, workout.ending, minutes, workout.effort, load)


def _curves(person: Person, week: Week) -> Iterator[SheetCurve]:
    """The exercises done with a load on most days lately."""
    unit = person.trainee.unit
    past = past_sets(person.sets_since(week.sunday - CURVE_DAYS + DAY), unit, person.trainee.zone)
    lately = {slug: [one for one in sets if one.date <= week.sunday] for slug, sets in past.items()}
    days = {slug: sorted({one.date for one in sets}) for slug, sets in lately.items()}
    for slug in sorted((slug for slug in days if len(days[slug]) > 1), key=lambda slug: -len(days[slug]))[:CURVES]:
        points = tuple((day, max(one.load for one in lately[slug] if one.date == day)) for day in days[slug])
        yield SheetCurve(exercise(slug).name, unit, points)


def _pains(person: Person, week: Week, now: datetime) -> Iterator[SheetPain]:
    """Pains of the week, and older ones that are still watched."""
    share, still = person.trainee.health.share, watched(person.diary.pains, now)
    for pain in person.diary.pains:
        if week.holds(person.day(pain.at)) or pain in still:
            eased_on = None if pain.eased_at is None else person.day(pain.eased_at)
            yield SheetPain(person.day(pain.at), pain.urgent, pain.place if share else None, _name(pain.exercise), eased_on)
