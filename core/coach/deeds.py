"""Doing what was shown: what a deed changes for each of those it is for, what they are told of it, and when words arrive."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from core.catalogue import exercise
from core.changed import Changed, ChangeKind, changed_text
from core.coach.desk import (
    Assigned,
    ComesOn,
    EndKept,
    NewcomersGet,
    PauseKept,
    QuestionsAnswered,
    WishesKept,
    WordSent,
)
from core.coach.whom import circuits_of
from core.coach.wishing import wished
from core.deeds import Arrival, Deed, DeedAsked, DeedDone, DeedKind
from core.diary import CoachWord, WordKind
from core.reminders import local_date, quiet, rests
from core.trainee import Pause

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence
    from datetime import date, datetime

    from core.coach.desk import Change, Client

WORDS = (DeedKind.SAY, DeedKind.ANSWER)
OF_MOVEMENTS = (DeedKind.SWAP, DeedKind.HOLD, DeedKind.NOTE)
ENDINGS = (DeedKind.SWAP_ENDED, DeedKind.HOLD_ENDED, DeedKind.NOTE_ENDED, DeedKind.PAUSE_ENDED)


def spoken(deed: Deed) -> Deed:
    """The deed with its exercises by their names, as messages show it."""
    slug, other = deed.exercise, deed.other
    return replace(
        deed,
        exercise=None if slug is None else exercise(slug).name,
        other=None if other is None else exercise(other).name,
    )


def names_of(clients: Sequence[Client]) -> tuple[str, ...]:
    """Theirs, in order."""
    return tuple(client.name for client in clients)


def running_of(clients: Sequence[Client]) -> tuple[str, ...]:
    """Those in the middle of a workout."""
    return tuple(client.name for client in clients if client.running)


def arrival_of(deed: Deed, clients: Sequence[Client], now: datetime) -> Arrival | None:
    """When the words of a deed arrive, None for a deed without words."""
    if deed.kind not in WORDS:
        return None
    away = [client for client in clients if client.gone_at is not None or client.new]
    here = [client for client in clients if client not in away]
    trains = [client for client in here if client.running]
    sleeps = [client for client in here if not client.running and quiet(now, client.zone)]
    return Arrival(len(here) - len(trains) - len(sleeps), len(sleeps), len(trains), len(away))


def asked_of(deed: Deed, clients: Sequence[Client], now: datetime) -> DeedAsked:
    """May this be done for these?"""
    slug = deed.exercise
    elsewhere = [client for client in clients if slug is not None and deed.kind in OF_MOVEMENTS and not _has(client, slug, now)]
    planned = [client for client in clients if deed.kind is DeedKind.PUT_UP and client.on(now)[1] is not None]
    question = ""
    if deed.kind is DeedKind.ANSWER:
        question = next((one.text for client in clients for one in client.diary.questions if one.number == deed.about), "")
    arrival = arrival_of(deed, clients, now)
    return DeedAsked(spoken(deed), names_of(clients), arrival, names_of(elsewhere), names_of(planned), question)


def done_of(deed: Deed, clients: Sequence[Client], now: datetime) -> DeedDone:
    """This is done for these."""
    running = () if deed.kind in WORDS else running_of(clients)
    return DeedDone(spoken(deed), names_of(clients), arrival_of(deed, clients, now), running)


def _has(client: Client, slug: str, now: datetime) -> bool:
    """Whether an exercise is in what is on for a client, as the circuits are written."""
    return any(station.exercise == slug for circuit in circuits_of(client, now) for station in circuit.stations)


def concerns(deed: Deed, client: Client, now: datetime) -> bool:
    """Whether a deed changes anything for a client: what is ended must be there."""
    if deed.kind is DeedKind.PAUSE_ENDED:
        pause = client.trainee.pause
        return pause is not None and rests(pause, local_date(now, client.zone))
    return deed.kind not in ENDINGS or wished(client.trainee.wishes, deed) != client.trainee.wishes


def changes_of(deed: Deed, clients: Sequence[Client], now: datetime) -> Iterator[Change]:
    """What the deed changes, and the words that go with it."""
    if deed.kind is DeedKind.PUT_UP and deed.everyone:
        yield NewcomersGet(deed.text)
    for client in clients:
        yield from _for_one(deed, client, now)


def _for_one(deed: Deed, client: Client, now: datetime) -> Iterator[Change]:
    trainee, today = client.trainee, local_date(now, client.zone)
    match deed.kind:
        case DeedKind.SAY:
            yield sent(client, WordKind.MESSAGE, deed.text, now)
        case DeedKind.ANSWER:
            yield QuestionsAnswered(client.id, tuple(one.number for one in client.questions()), answered=True)
            yield sent(client, WordKind.ANSWER, deed.text, now, deed.about)
        case DeedKind.PUT_UP:
            yield from put_up(client, deed.text, deed.on if deed.on is not None and deed.on > today else None)
            yield from told(client, Changed(ChangeKind.CIRCUIT, deed.text, on=deed.on), now)
        case DeedKind.PAUSE:
            yield PauseKept(client.id, Pause(now, deed.on))
            yield from told(client, Changed(ChangeKind.PAUSE, on=deed.on), now)
        case DeedKind.PAUSE_ENDED:
            yield PauseKept(client.id, None if trainee.pause is None else replace(trainee.pause, until=today))
            yield from told(client, Changed(ChangeKind.PAUSE_ENDED), now)
        case DeedKind.REMOVE:
            yield EndKept(client.id, now)
            yield from told(client, Changed(ChangeKind.REMOVED), now)
        case DeedKind.SWAP | DeedKind.SWAP_ENDED | DeedKind.HOLD | DeedKind.HOLD_ENDED | DeedKind.NOTE | DeedKind.NOTE_ENDED:
            yield WishesKept(client.id, wished(trainee.wishes, deed))
            if deed.kind is DeedKind.SWAP:
                yield from told(client, Changed(ChangeKind.SWAP, deed.exercise, deed.other), now)
            if deed.kind is DeedKind.SWAP_ENDED:
                yield from told(client, Changed(ChangeKind.SWAP_ENDED, deed.exercise), now)


def put_up(client: Client, circuit: str, from_on: date | None) -> Iterator[Change]:
    """A circuit comes on for a client: at once in place of all that is on or coming, or from a day on."""
    if from_on is not None:
        yield ComesOn(client.id, circuit, from_on)
        return
    yield Assigned(client.id, circuit, None)
    yield from nothing_comes(client)


def nothing_comes(client: Client) -> Iterator[Change]:
    """What was coming for a client, or has come, gives way."""
    if client.trainee.coming is not None:
        yield ComesOn(client.id, None, None)


def told(client: Client, changed: Changed, now: datetime) -> Iterator[WordSent]:
    """A client is told of a change; who is not through the first talk sees it as it is then."""
    if not client.new:
        yield sent(client, WordKind.CHANGE, changed_text(changed), now)


def sent(client: Client, kind: WordKind, text: str, now: datetime, about: int | None = None) -> WordSent:
    """Words on their way to a client, under the next number."""
    number = max((word.number for word in client.diary.words), default=0) + 1
    return WordSent(client.id, CoachWord(number, now, kind, text, about))
