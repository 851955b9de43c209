"""Small invented values for the tests of the shell, and stand-ins for the parts outside it."""

import sqlite3
from contextlib import closing
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from decimal import Decimal

from bot.ports import Rendered
from core.circuit import Circuit, Span, Station
from core.diary import SetNoted, SetRecord, WorkoutOpened
from core.session.events import Say, Step
from core.session.states import Closing, Cue, CueKind, Idle, Place, Workout
from core.units import Load, Unit

T0 = datetime(2026, 3, 2, 6, 30, tzinfo=UTC)
SQUAT = Station("goblet-squat", 60, None, None, sides=False, reserve=Span(1, 2))
CIRCUIT = Circuit("Kitchen floor", 3, Span(20, 30), Span(60, 60), 60, (SQUAT, SQUAT))


@dataclass(frozen=True)
class Words:
    """A message that is its own wording."""

    text: str
    replies: tuple[str, ...] = ()


def render(message):
    """The wording of `Words`."""
    return Rendered(message.text, message.replies, "words")


def after(seconds):
    """The instant so many seconds after T0."""
    return T0 + timedelta(seconds=seconds)


def kg(amount):
    """A load in kilograms."""
    return Load(Decimal(amount), Unit.KG)


def noted(number, **fields):
    """An entry for a set record of workout 1."""
    usual = {
        "workout": 1,
        "at": after(number),
        "circuit": CIRCUIT.name,
        "round": 1,
        "station": 1,
        "exercise": "goblet-squat",
        "reps": 11,
        "load": kg("20"),
    }
    return SetNoted(SetRecord(number=number, **(usual | fields)))


def opened(number=1, at=T0):
    """An entry for a workout that begins."""
    return WorkoutOpened(number, CIRCUIT, at)


def say(*texts, expires_at=None):
    """Messages to send."""
    return tuple(Say(Words(text), expires_at) for text in texts)


def waiting(*instants):
    """A state of a workout with something for the clock to do at each instant."""
    place = Place(1, 1)
    workout = Workout(1, CIRCUIT, T0, place, ("goblet-squat", "goblet-squat"), (None, None))
    return Closing(workout, tuple(Cue(CueKind.NUDGE, instant) for instant in instants))


def always(*entries, state=None, messages=(), wake_at=None):
    """A decision that does not depend on anything."""
    step = Step(Idle() if state is None else state, tuple(entries), tuple(messages), wake_at)
    return lambda _trainee, _state, _history, _circuit: step


class Phone:
    """A channel that keeps what it was given to send; `errors` are raised one after the other instead of sending."""

    def __init__(self, *errors):
        self.heard = []
        self.errors = list(errors)

    async def send(self, trainee, letter):
        """Raise the next error, or keep the message."""
        if self.errors and (error := self.errors.pop(0)) is not None:
            raise error
        self.heard.append((trainee, letter.rendered.text))

    @property
    def texts(self):
        """The texts sent, to whomever."""
        return [text for _, text in self.heard]


def rows(file, table):
    """Every row of a table, as SQLite has it, read past the store."""
    with closing(sqlite3.connect(file)) as connection:
        connection.row_factory = sqlite3.Row
        return [dict(row) for row in connection.execute(f"SELECT * FROM {table}")]  # noqa: S608 - our own table names


def everything(file):
    """The whole database as SQL, read past the store."""
    with closing(sqlite3.connect(file)) as connection:
        return list(connection.iterdump())


def tamper(file, statement):
    """Change the database past the store."""
    with closing(sqlite3.connect(file)) as connection, connection:
        connection.execute(statement)
