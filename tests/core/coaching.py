"""A talk with a coach over a desk that changes as the steps say; what the store does with rows is done here with values."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, date, datetime

from bot.bootstrap import demo
from core.coach.desk import (
    Assigned,
    CircuitKept,
    CircuitRemoved,
    Clearance,
    Client,
    ComesOn,
    Desk,
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
from core.coach.states import Quiet
from core.coach.step import step
from core.diary import WordKind
from core.health import NoteKind, SafetyNote
from core.session.events import Opened, Said, Woke
from core.trainee import Coming, Trainee

NOW = datetime(2026, 3, 4, 10, tzinfo=UTC)  # a Wednesday
TODAY = date(2026, 3, 4)
MONDAY = date(2026, 3, 9)
DEMO = demo(TODAY)
KITCHEN, STAIRS, MARKET = DEMO.circuit, *DEMO.others


class Talk:
    """A talk with Coach Wren; `said` and `changes` are those of the latest step, `words` all that is on its way or was said."""

    def __init__(self, *clients, now=NOW, **desk):
        self.desk = Desk("Coach Wren", "UTC", clients, (KITCHEN, STAIRS, MARKET), KITCHEN.name, **desk)
        self.state = Quiet()
        self.said = []
        self.changes = ()
        self.now = now
        self.wake_at = None

    def take(self, event):
        """Something happens."""
        taken = step(self.state, event, self.desk, self.now)
        self.state, self.changes, self.wake_at = taken.state, taken.changes, taken.wake_at
        self.said = [say.message for say in taken.messages]
        for change in taken.changes:
            self.desk = after(self.desk, change, self.now)
        return self

    def says(self, *texts):
        """The coach sends texts, one after the other."""
        for text in texts:
            self.take(Said(text))
        return self

    def opens(self):
        """The coach opens the chat."""
        return self.take(Opened())

    def woken(self, now):
        """The alarm rings."""
        self.now = now
        return self.take(Woke())

    def the(self, kind):
        """The one message of a kind in the latest step."""
        (found,) = [message for message in self.said if isinstance(message, kind)]
        return found

    def of(self, name):
        """The client of this name, on the roster or not any more."""
        return next(client for client in (*self.desk.clients, *self.desk.ended) if client.name == name)

    def words(self, name, kind=None):
        """What waits to be said to somebody."""
        waiting = [word for word in self.of(name).diary.words if word.told_at is None and word.taken_back_at is None]
        return [word.text for word in waiting if kind in (None, word.kind)]

    def hears(self, name):
        """Somebody is told what waits for them."""
        self.desk = _of(self.desk, self.of(name).id, lambda one: _diary(one, words=tuple(map(self._told, one.diary.words))))
        return self

    def _told(self, word):
        return word if word.taken_back_at is not None or word.told_at is not None else replace(word, told_at=self.now)


def after(desk, change, now):
    """The desk as the store leaves it."""
    match change:
        case CircuitKept(circuit):
            others = [other for other in desk.circuits if other.name != circuit.name]
            clients = tuple(_with_circuit(client, circuit) for client in desk.clients)
            return replace(desk, circuits=(*others, circuit), clients=clients)
        case CircuitRemoved(name):
            return replace(desk, circuits=tuple(circuit for circuit in desk.circuits if circuit.name != name))
        case NewcomersGet(name):
            return replace(desk, newcomers=name)
        case ReviewSet(day, clock):
            return replace(desk, review=replace(desk.review, day=day, at=clock, since=now))
        case WeekTold(at):
            return replace(desk, review=replace(desk.review, since=at))
        case NewsTold():
            return replace(desk, news=())
        case QuestionsTold():
            return replace(desk, asked=())
        case EndKept(number, at):
            desk = _of(desk, number, lambda one: told(one, ended_at=at))
            everybody = sorted((*desk.clients, *desk.ended), key=lambda one: one.id)
            there = tuple(one for one in everybody if one.trainee.ended_at is None)
            return replace(desk, clients=there, ended=tuple(one for one in everybody if one not in there))
        case _:
            return _of(desk, change.client, lambda one: _changed(one, change, desk, now))


def _changed(one, change, desk, now):
    """A client after a change that is about them alone."""
    match change:
        case Assigned(circuit=circuit, block=block):
            return replace(told(one, block=block), circuit=desk.circuit(circuit))
        case ComesOn(comes=None):
            return told(one, coming=None)
        case ComesOn(comes=name, from_on=from_on):
            return told(one, coming=Coming(desk.circuit(name), from_on))
        case WishesKept(wishes=wishes):
            return told(one, wishes=wishes)
        case PauseKept(pause=pause):
            return told(one, pause=pause)
        case Clearance(agreed=agreed):
            note = SafetyNote(now, NoteKind.CLEARED if agreed else NoteKind.TAKEN_BACK, "coach")
            return _diary(one, notes=(*one.diary.notes, note))
        case WordSent(word=word):
            assert word.number == len(one.diary.words) + 1
            return _diary(one, words=(*one.diary.words, word))
        case WordTakenBack(word_number=number):
            words = (replace(word, taken_back_at=now) if word.number == number else word for word in one.diary.words)
            return _diary(one, words=tuple(words))
        case QuestionsAnswered(questions=numbers, answered=answered):
            at = now if answered else None
            asked = (replace(one_, answered_at=at) if one_.number in numbers else one_ for one_ in one.diary.questions)
            return _diary(one, questions=tuple(asked))


def _of(desk, number, change):
    """The desk with one client changed, on the roster or not any more."""
    parts = ([change(one) if one.id == number else one for one in some] for some in (desk.clients, desk.ended))
    clients, ended = map(tuple, parts)
    return replace(desk, clients=clients, ended=ended)


def _diary(one, **parts):
    return replace(one, diary=replace(one.diary, **parts))


def _with_circuit(client_, circuit):
    """A client who has the new circuit wherever they had the one of that name."""
    block = client_.block
    if block is not None:
        turns = tuple(circuit if one.name == circuit.name else one for one in block.circuits)
        client_ = told(client_, block=replace(block, circuits=turns))
    return replace(client_, circuit=circuit) if client_.circuit.name == circuit.name else client_


def told(client_, **about):
    """The client with something else known of them as a trainee."""
    return replace(client_, trainee=replace(client_.trainee, **about))


OF_TRAINEE = ("block", "health", "reminders", "wishes", "coming", "pause", "zone")


def client(number, name, **more):
    """Somebody who trains with the demo circuit."""
    about = {key: more.pop(key) for key in OF_TRAINEE if key in more}
    return Client(number, Trainee(name, **about), **({"circuit": KITCHEN} | more))


ANA, BEN, CLEO = client(1, "Ana"), client(2, "Ben"), client(3, "Cleo")
MESSAGE, ANSWER, CHANGE = WordKind.MESSAGE, WordKind.ANSWER, WordKind.CHANGE
