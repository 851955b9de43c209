"""What a coach is told unasked: news of safety and questions, and the week on its day and at its time, once."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta
from typing import TYPE_CHECKING

from core.catalogue import exercise
from core.coach.asks import WeekAsked
from core.coach.desk import NewsTold, QuestionsTold, ReviewSet, WeekTold
from core.coach.telling import tell
from core.deeds import QuestionPassed
from core.messages import SafetyNews
from core.recurrence import WEEK
from core.reminders import at_clock, local_date

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator
    from datetime import datetime

    from core.coach.desk import Change, Desk, Review
    from core.diary import Question
    from core.messages import Message

LATE = timedelta(days=1)  # a week that could not be told at its time is told up to a day later: common practice, no source
EARLY = ("mon", "tue", "wed")  # on these the week that is over is the one to look at: common practice, no source
DAY = timedelta(days=1)


def look(desk: Desk, now: datetime) -> tuple[tuple[Change, ...], list[Message]]:
    """Tell the week when it is due; each time it falls due it is seen to once."""
    due_at = week_due(desk.review, desk.zone, now)
    if due_at is None or due_at > now:
        return (), []
    if not desk.clients or now - due_at > LATE:
        return (WeekTold(now),), []
    return (WeekTold(now),), [tell(WeekAsked("last" if desk.review.day in EARLY else "this"), desk.clients, desk, now)]


def next_look(desk: Desk, changes: Iterable[Change], now: datetime) -> datetime | None:
    """When to look at the coach again, once these changes are made (UTC)."""
    review = desk.review
    for change in changes:
        match change:
            case ReviewSet(day, clock):
                review = replace(review, day=day, at=clock, since=now)
            case WeekTold(at):
                review = replace(review, since=at)
            case _:
                pass
    return week_due(review, desk.zone, now)


def week_due(review: Review, zone: str, now: datetime) -> datetime | None:
    """When the week is told next (UTC), in the past when that was missed; None for a coach who does not wish for it."""
    if review.day is None:
        return None
    since = review.since or now
    day = local_date(since, zone) - DAY  # a zone that skipped a day can put yesterday's time after now
    while WEEK[day.weekday()] != review.day or at_clock(day, review.at, zone) <= since:
        day += DAY
    return at_clock(day, review.at, zone)


def told_at_once(desk: Desk) -> tuple[Change, ...]:
    """That the coach was told the news and the questions that lie on the desk."""
    news = (NewsTold(tuple(one.number for one in desk.news)),) if desk.news else ()
    return (*news, QuestionsTold(desk.asked)) if desk.asked else news


def news_of(desk: Desk, now: datetime) -> Iterator[SafetyNews | QuestionPassed]:
    """What no coach was told yet, with the day where it is not of today."""
    today = local_date(now, desk.zone)
    for one in desk.news:
        day = local_date(one.note.at, desk.zone)
        yield SafetyNews(one.trainee, one.note.kind, one.note.value, None if day == today else day)
    for asked in desk.asked:
        for client in desk.those([asked.client]):
            yield from (passed(client.name, one) for one in client.diary.questions if one.number == asked.number)


def passed(trainee: str, question: Question) -> QuestionPassed:
    """A trainee's question as a coach is told of it."""
    name = None if question.exercise is None else exercise(question.exercise).name
    return QuestionPassed(trainee, question.text, question.circuit, name, question.station, question.round)
