"""Who needs a word, and why: the most urgent first.

| flag | when | source |
|---|---|---|
| warning sign | one was reported, and the trainee has told no clearance after it | `core.safety.gate` |
| pain | reported in the last six weeks and not said to be gone | `core.safety.joints` |
| clearance | the health answers ask for one, or for the coach's and a clinician's word | `core.safety.screening` |
| question | one of the trainee's is not answered | |
| missed | the last three training days or more, none of them made up for | common practice, no source |
| falling | the 80 % interval of `core.strength.pace` is all below zero | that 80 % is enough: common practice, no source |
| stuck | on every exercise done with a load on three days or more the same top load, no more reps, for three weeks | the same |
| unreachable | nothing can be sent | |

Coming back after a break is none: they are back. An interval of 80 % is all below zero for one of ten whose strength stands still,
so that falling strength is a reason to look and never a verdict.
"""

from __future__ import annotations

from datetime import date, datetime, timedelta
from typing import TYPE_CHECKING

from core.catalogue import exercise
from core.health import Bar
from core.progress import past_sets
from core.review.days import is_held, missed_in_a_row
from core.review.strength import strength_of
from core.review_facts import URGENCY, Change, Flag, FlagKind
from core.safety.gate import bar, uncleared_sign
from core.safety.joints import watched

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from core.review.person import Person
    from core.suggestion import PastSet

IN_A_ROW = 3
STUCK = timedelta(days=21)
LOOKED_BACK = timedelta(days=42)
LATELY = timedelta(days=10)  # longer ago, and nobody trains it any more
MAIN_DAYS = 3


def flags_of(person: Person, now: datetime, strength: Change | None = None) -> tuple[Flag, ...]:
    """Why somebody needs a word now; `strength` when it was worked out already."""
    found = [*_safety(person, now), *_asked(person), *_training(person, now, strength), *_gone(person)]
    return tuple(sorted(found, key=lambda flag: URGENCY.index(flag.kind)))


def _safety(person: Person, now: datetime) -> Iterator[Flag]:
    diary, trainee = person.diary, person.trainee
    share = trainee.health.share
    sign = uncleared_sign(diary)
    if sign is not None:
        yield Flag(FlagKind.SIGN, person.day(sign.at), place=sign.place if share else None)
    for pain in watched(diary.pains, now):
        where = None if pain.exercise is None else exercise(pain.exercise).name
        yield Flag(FlagKind.PAIN, person.day(pain.at), exercise=where, place=pain.place if share else None)
    decided = trainee.health.decided_at
    if decided is not None and bar(trainee, diary) in {Bar.CLEARANCE, Bar.YOUNG, Bar.PREGNANT}:
        yield Flag(FlagKind.CLEARANCE, person.day(decided))


def _asked(person: Person) -> Iterator[Flag]:
    open_ones = [question for question in person.diary.questions if question.answered_at is None]
    if open_ones:
        first = open_ones[0]
        where = None if first.exercise is None else exercise(first.exercise).name
        yield Flag(FlagKind.QUESTION, person.day(first.at), exercise=where, count=len(open_ones))


def _training(person: Person, now: datetime, strength: Change | None) -> Iterator[Flag]:
    missed = missed_in_a_row(person, now)
    if len(missed) >= IN_A_ROW:
        yield Flag(FlagKind.MISSED, missed[0], count=len(missed))
    today = person.day(now)
    change = strength or strength_of(person, today)
    stuck = () if is_held(person, today) else _stuck(person, today)
    if change is not None and change.high < 0:
        yield Flag(FlagKind.FALLING, today - timedelta(days=28), change=change)
    elif stuck:
        yield Flag(FlagKind.STUCK, min(since for _, since in stuck), exercise=stuck[0][0], count=len(stuck))


def _gone(person: Person) -> Iterator[Flag]:
    if person.gone_at is not None:
        yield Flag(FlagKind.UNREACHABLE, person.day(person.gone_at))


def _stuck(person: Person, today: date) -> tuple[tuple[str, date], ...]:
    """The names of the exercises trained most, and since when each stands still; none unless all of them do."""
    past = past_sets(person.sets_since(today - LOOKED_BACK), person.trainee.unit, person.trainee.zone)
    main: list[tuple[str, date | None]] = []
    for slug, sets in past.items():
        days = sorted({one.date for one in sets})
        if len(days) >= MAIN_DAYS and today - days[-1] <= LATELY:
            main.append((exercise(slug).name, _still_since(sets, today)))
    if any(since is None for _, since in main):
        return ()
    return tuple((name, since) for name, since in main if since is not None)


def _still_since(sets: Sequence[PastSet], today: date) -> date | None:
    """The day since which neither the top load nor the reps with it grew, None when that is not three weeks ago."""
    then = max((one.date for one in sets if one.date <= today - STUCK), default=None)
    if then is None:
        return None
    best = max((one.load, one.reps) for one in sets if one.date == then)
    since = [one for one in sets if one.date > then]
    top = max(((one.load, one.reps) for one in since), default=None)
    return then if top is not None and top[0] == best[0] and top[1] <= best[1] else None
