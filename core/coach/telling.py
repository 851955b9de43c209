"""What a coach asks of how it goes, answered from everyone's diaries."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, assert_never

from core.coach.asks import HowIs, SheetAsked, WeekAsked, WhoMissed, WhoNeedsWord, WhoTrained
from core.review.person import Person
from core.review.telling import how_is, sheet_of, week_told, who_missed, who_needs_word, who_trained

if TYPE_CHECKING:
    from collections.abc import Sequence
    from datetime import datetime

    from core.coach.desk import Client, Desk
    from core.messages import Message

Question = WhoTrained | WhoMissed | WhoNeedsWord | HowIs | WeekAsked | SheetAsked


def tell(ask: Question, clients: Sequence[Client], desk: Desk, now: datetime) -> Message:
    """The answer, about these."""
    people = tuple(person_of(client, now) for client in clients)
    match ask:
        case WhoTrained(week):
            return who_trained(people, week, desk.zone, now)
        case WhoMissed(week):
            return who_missed(people, week, desk.zone, now)
        case WhoNeedsWord():
            return who_needs_word(people, now)
        case HowIs():
            return how_is(people[0], now)
        case WeekAsked(week):
            return week_told(people, week, desk.zone, now)
        case SheetAsked(week=week):
            return sheet_of(people, week, desk.zone, now)
        case _:
            assert_never(ask)


def person_of(client: Client, now: datetime) -> Person:
    """A client as a review sees them: with what is on for them now."""
    circuit, block = client.on(now)
    trainee = replace(client.trainee, block=block)
    return Person(client.name, trainee, circuit, client.diary, client.gone_at, client.running)
