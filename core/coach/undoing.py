"""The way back: the changes that undo changes, and what is left to undo when words have gone out meanwhile."""

from __future__ import annotations

from typing import TYPE_CHECKING, assert_never

from core.changed import Changed, ChangeKind
from core.coach.deeds import told
from core.coach.desk import (
    Assigned,
    CircuitKept,
    CircuitRemoved,
    Clearance,
    ComesOn,
    EndKept,
    NewcomersGet,
    NewsTold,
    PauseKept,
    QuestionsAnswered,
    QuestionsTold,
    ReviewSet,
    WeekTold,
    WishesKept,
    WordSent,
    WordTakenBack,
)
from core.diary import WordKind

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence
    from datetime import datetime

    from core.coach.desk import Change, Desk
    from core.diary import CoachWord

UNDONE = Changed(ChangeKind.UNDONE)


def way_back_of(changes: Sequence[Change], desk: Desk) -> Iterator[Change]:
    """The changes that undo these, the last first: so a circuit is taken away when nobody has it any more."""
    by_id = {client.id: client for client in desk.clients}
    for change in reversed(changes):
        match change:
            case Assigned(client):
                yield Assigned(client, by_id[client].circuit.name, by_id[client].block)
            case ComesOn(client):
                coming = by_id[client].trainee.coming
                yield ComesOn(client, None, None) if coming is None else ComesOn(client, coming.circuit.name, coming.from_on)
            case NewcomersGet():
                yield NewcomersGet(desk.newcomers)
            case CircuitKept(circuit):
                there = desk.circuit(circuit.name)
                yield CircuitRemoved(circuit.name) if there is None else CircuitKept(there)
            case WishesKept(client):
                yield WishesKept(client, by_id[client].trainee.wishes)
            case PauseKept(client):
                yield PauseKept(client, by_id[client].trainee.pause)
            case EndKept(client):
                yield EndKept(client, by_id[client].trainee.ended_at)
            case WordSent(client, word):
                yield WordTakenBack(client, word.number)
            case QuestionsAnswered(client, numbers, answered):
                yield QuestionsAnswered(client, numbers, not answered)
            case Clearance(client, agreed):
                yield Clearance(client, not agreed)
            case CircuitRemoved() | NewsTold() | QuestionsTold() | ReviewSet() | WeekTold() | WordTakenBack():
                pass  # none of these is what a yes does
            case _:
                assert_never(change)


def left_to_undo(changes: Sequence[Change], desk: Desk, now: datetime) -> tuple[tuple[Change, ...], int]:
    """Which of the undoing changes can still be made, and how many people have had the words.

    An answer that was said stays one. Who was told of a change is told that it is taken back.
    """
    left: list[Change] = []
    said: set[int] = set()
    for change in changes:
        words = _words_of(change, desk) if isinstance(change, WordTakenBack) else ()
        if isinstance(change, WordTakenBack) and any(word.told_at is not None for word in words):
            said.add(change.client)
            if any(word.kind is WordKind.CHANGE for word in words):
                left += [word for client in desk.those([change.client]) for word in told(client, UNDONE, now)]
        elif not (isinstance(change, QuestionsAnswered) and change.client in said):
            left.append(change)
    return tuple(left), len(said)


def _words_of(change: WordTakenBack, desk: Desk) -> tuple[CoachWord, ...]:
    """The words that a change takes back, none when whoever they were for has gone for good."""
    clients = desk.those([change.client])
    return tuple(word for client in clients for word in client.diary.words if word.number == change.word_number)
