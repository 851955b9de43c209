"""Trainees with habits: when they train, what they answer, how long they are away. They know messages, and nothing else."""

from __future__ import annotations

import random
from dataclasses import dataclass, field
from datetime import datetime, timedelta

DAYS = ("mon", "tue", "wed", "thu", "fri", "sat", "sun")
TIMES = ("06:30", "07:15", "12:00", "18:45", "20:30")
PLACES = {"Lisbon": "Europe/Lisbon", "New York": "America/New_York", "Tokyo": "Asia/Tokyo", "Sydney": "Australia/Sydney"}
REPS = range(5, 14)


@dataclass(frozen=True)
class Text:
    """Something a trainee types, so many seconds after what made them; `means` is what they mean by it, for the auditor."""

    after_s: float
    words: str
    means: tuple = ()


@dataclass
class Person:
    """A trainee: a name, a place, days and a time, and a character.

    `keen` is how often a reminder is followed, `forgetful` how often it is ignored; what is left is put off or called off.
    `reported` counts the sets told in this workout, `on_the_way` the texts that their phone does not show as delivered.
    """

    number: int
    chance: random.Random
    zone: str
    days: tuple[str, ...]
    at: str
    keen: float
    forgetful: float
    gone_until: datetime | None = None
    heard_last: tuple[str, str] = ("", "")
    reps: list[int] = field(default_factory=list)
    reported: int = 0
    on_the_way: int = 0
    training: bool = False
    settled: bool = False

    def hears(self, kind: str, text: str, now: datetime) -> list[Text]:
        """What they answer to a message; the same message twice in a row is a slip of the network, and gets one answer."""
        if (kind, text) == self.heard_last:
            return []
        self.heard_last = (kind, text)
        first_talk = {"Cautions": "yes", "CautionsNeeded": "yes", "UnitAsked": "kg", "RackAsked": "a pair of 8s, 12s and a 16"}
        if kind in first_talk:
            return [Text(self._soon(), first_talk[kind])]
        if kind == "TodayPlan" and not self.settled:
            self.settled = True
            return [Text(self._soon(), f"remind me {' '.join(self.days)} {self.at}", ("set", self.days, self.at))]
        if kind in ("Reminder", "FollowUp", "ComeBack"):
            return self._is_reminded(kind, now)
        return self._trains(kind, text)

    def _is_reminded(self, kind: str, now: datetime) -> list[Text]:
        if self.gone_until is not None and now < self.gone_until:
            return []
        roll = self.chance.random()
        if roll < self.keen or kind == "ComeBack":
            return [Text(self.chance.uniform(5, 2000), "go", ("go",))]
        if roll < self.keen + self.forgetful:
            return []
        answers = [("later 30 min", ("later", 30)), ("not today", ("not today",)), ("move today to tomorrow", ("move",))]
        return [Text(self._soon(), *self.chance.choice(answers))]

    def _trains(self, kind: str, text: str) -> list[Text]:
        match kind:
            case "Card" if 'Say "go"' in text:
                self.training = True
                return [Text(self._soon(), "go")]
            case "Down" if "How many" in text:
                return [self._reports()]
            case "StillThere" | "WhereWeWere":
                return [Text(self._soon(), "back")]
            case "Summary":
                self.training, reported, self.reported = False, self.reported, 0
                if reported and not self.on_the_way and self.chance.random() < 0.3:
                    wrong, right = self.reps[-1], self._other_reps()
                    return [Text(self._soon(), f"sorry {right} not {wrong}", ("amend", wrong, right))]
                return []
            case _:
                return []

    def _reports(self) -> Text:
        self.reps.append(self._other_reps())
        self.reported += 1
        return Text(self._soon(), str(self.reps[-1]), ("reps", self.reps[-1]))

    def _other_reps(self) -> int:
        return self.chance.choice([reps for reps in REPS if reps not in self.reps[-6:]])

    def _soon(self) -> float:
        return self.chance.uniform(2, 14)

    def plans_a_day(self, now: datetime) -> list[Text]:
        """What they think of by themselves in the evening: mostly nothing."""
        if not self.settled or self.training or (self.gone_until is not None and now < self.gone_until):
            return []
        roll = self.chance.random()
        if roll < 0.03:
            self.gone_until = now + timedelta(days=self.chance.randint(9, 25))  # without a word
            return []
        if roll < 0.06:
            place = self.chance.choice(sorted(PLACES))
            return [Text(0, f"I'm in {place} now", ("zone", PLACES[place]))]
        if roll < 0.09:
            return [Text(0, "I'm away for 6 days", ("away", 6))]
        if roll < 0.11:
            return [
                Text(0, "stop the reminders", ("stop",)),
                Text(86_400 * 4, f"remind me {' '.join(self.days)} {self.at}", ("set", self.days, self.at)),
            ]
        if roll < 0.25:
            return [Text(0, "what do I do today?", ("ask",))]
        if roll < 0.40:
            return [Text(self.chance.uniform(0, 12 * 3600), "go", ("go",))]  # unreminded, perhaps before tomorrow's reminder
        return []


def a_person(number: int, seed: int) -> Person:
    """The so-manieth trainee of a seed."""
    chance = random.Random(seed * 1000 + number)  # noqa: S311 - a game, not a secret
    days = tuple(day for day in DAYS if chance.random() < 0.5) or ("thu",)
    keen = chance.choice([0.9, 0.7, 0.4])
    return Person(number, chance, PLACES[chance.choice(sorted(PLACES))], days, chance.choice(TIMES), keen, (1 - keen) / 2)
