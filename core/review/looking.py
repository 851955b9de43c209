"""One person looked at: their week, their strength, and why they need a word; and everyone in the order they need one."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from core.pictures import RosterRow, RosterWeek
from core.reminders import is_dark
from core.review.flags import flags_of
from core.review.person import Person
from core.review.strength import strength_of
from core.review.week import PersonWeek, week_of
from core.review_facts import URGENCY, Change, Flag

if TYPE_CHECKING:
    from collections.abc import Sequence
    from datetime import datetime

    from core.review.person import Week

ROWS = 16  # on one picture: more get too small where a chat shows a tall picture whole


@dataclass(frozen=True)
class Looked:
    """Somebody's week, how their strength goes, and why they need a word, the most urgent first."""

    person: Person
    week: PersonWeek
    change: Change | None
    flags: tuple[Flag, ...]


def look_at(person: Person, week: Week, now: datetime) -> Looked:
    """What a week shows of somebody; flags are those of now, strength is that of the week's end."""
    today = person.day(now)
    change = strength_of(person, today)
    flags = flags_of(person, now, change)
    if week.sunday < today:
        change = strength_of(person, week.sunday)
    return Looked(person, week_of(person, week, now), change, flags)


def look_at_all(people: Sequence[Person], week: Week, now: datetime) -> tuple[Looked, ...]:
    """Everyone still on the roster, those who need a word first, the others as they come on the roster."""
    looked = (look_at(person, week, now) for person in people if person.trainee.ended_at is None)
    return tuple(sorted(looked, key=lambda one: urgency_of(one.flags)))


def urgency_of(flags: Sequence[Flag]) -> tuple[int, int]:
    """What sorts the most urgent first: the worst flag, then more flags."""
    return (URGENCY.index(flags[0].kind), -len(flags)) if flags else (len(URGENCY), 0)


def roster_of(looked: Sequence[Looked], week: Week, zone: str, now: datetime) -> RosterWeek | None:
    """The picture of everyone, in their order; None when there is nobody."""
    rows = tuple(
        RosterRow(
            one.person.name,
            one.week.days,
            one.flags[0] if one.flags else None,
            one.change,
            one.week.effort,
            sum(load.step > 0 for load in one.week.loads),
            sum(load.step < 0 for load in one.week.loads),
        )
        for one in looked
    )
    return RosterWeek(week.monday, rows[:ROWS], max(0, len(rows) - ROWS), is_dark(now, zone)) if rows else None
