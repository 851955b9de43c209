"""Who lives through the month, and what they were going to say: the file `fixtures/demo/month.toml` as values."""

from __future__ import annotations

import tomllib
from dataclasses import dataclass, field
from datetime import date, datetime
from typing import ClassVar

from pydantic import ConfigDict, TypeAdapter, ValidationError

from bot.errors import FixtureBroken

FILE = "month.toml"


class Strict:
    """A part of the file: a key that it does not have is a fault."""

    __pydantic_config__: ClassVar = ConfigDict(extra="forbid")


@dataclass(frozen=True)
class Answer(Strict):
    """What somebody says to a message.

    Attributes:
        to: the kind of the message.
        says: the text; empty for silence.
        has: words that the message must hold.
        on: the only days of their calendar for it; none: every day.
        then: further texts, each said to the message after the text before it.
        once: it is used up when it was said.
        after_s: seconds until it is said, None for soon.
    """

    to: str
    says: str
    has: str = ""
    on: tuple[date, ...] = ()
    then: tuple[str, ...] = ()
    once: bool = False
    after_s: float | None = None


@dataclass(frozen=True)
class Saying(Strict):
    """Texts that are sent at a time of the sender's own clock, one after the other."""

    at: datetime
    says: tuple[str, ...]


@dataclass(frozen=True)
class Voice(Strict):
    """How somebody texts a set: with a load, without one, a hold. Taken in turn."""

    loaded: tuple[str, ...]
    bare: tuple[str, ...]
    held: tuple[str, ...]


@dataclass(frozen=True)
class Person(Strict):
    """Somebody who trains.

    Attributes:
        name: a given name.
        what: who they are, in a few words.
        age, unit, rack, days: what they answer to the first questions.
        voice: how they text.
        strength: against the middling person.
        weekly: by how much the logarithm of it changes a week.
        zone: where they live, None for where the coach does.
        fewer: they wish for fewer messages.
        effort: how hard a workout feels to them, 0 to 10.
        answers: what they say besides, before what everybody says.
        sayings: what they say unprompted.
    """

    name: str
    what: str
    age: int
    rack: str
    days: str
    voice: str
    strength: float
    weekly: float
    zone: str | None = None
    unit: str = "kg"
    fewer: bool = True
    effort: int = 6
    answers: tuple[Answer, ...] = ()
    sayings: tuple[Saying, ...] = ()


@dataclass(frozen=True)
class Coach(Strict):
    """What the coach says, unprompted and to what they are told."""

    sayings: tuple[Saying, ...]
    answers: tuple[Answer, ...] = ()


@dataclass(frozen=True)
class Excerpt(Strict):
    """A few messages of one chat that are shown.

    Attributes:
        title: what it is about.
        who: whose chat.
        begins: the kind of the message it begins with, or the text that was sent.
        has: words that this first message holds.
        entries: how many messages are shown from there on.
        before: how many messages before that one are shown, too.
        since: not before this day.
        without: kinds that are left out.
    """

    title: str
    who: str
    begins: str
    entries: int
    has: str = ""
    before: int = 0
    since: date = date.min
    without: tuple[str, ...] = ()


@dataclass(frozen=True)
class Month(Strict):
    """The whole of it. Times are of the coach's clock."""

    begins: datetime
    ends: datetime
    zone: str
    once_kg: dict[str, float]
    most_reps: dict[str, float]
    longest_s: dict[str, float]
    voices: dict[str, Voice]
    usual: tuple[Answer, ...]
    people: tuple[Person, ...]
    coach: Coach
    trained: tuple[Excerpt, ...] = field(default=())
    reviewed: tuple[Excerpt, ...] = field(default=())
    owned: tuple[Excerpt, ...] = field(default=())


_months = TypeAdapter(Month)


def read_month(text: str) -> Month:
    """The month as its file tells it.

    Raises:
        FixtureBroken: it was changed and can no longer be read.
    """
    try:
        return _months.validate_python(tomllib.loads(text))
    except ValidationError as error:
        fault = error.errors()[0]
        raise FixtureBroken(FILE, f"{'.'.join(map(str, fault['loc']))}: {fault['msg']}") from error
