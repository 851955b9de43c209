"""Somebody at their phone: what they answer to what they read. They know the messages on it and their own body, nothing else."""

from __future__ import annotations

import random
from dataclasses import dataclass
from typing import TYPE_CHECKING

from bot.month.lifter import Bodies, Lifter
from bot.month.voice import Seen, hold_said, read_card, set_said

if TYPE_CHECKING:
    from collections.abc import Sequence
    from datetime import datetime

    from bot.month.cast import Answer, Month, Person
    from bot.ports import Rendered

SEED = 1
SOON_S = (3.0, 12.0)
BETWEEN_S = 15.0  # between texts that follow each other
DAY_S = 86_400.0
HOW_MANY, HOW_LONG, EACH, NO_CLOCK = "How many", "How long", "each side", "Text me when you are done"


@dataclass(frozen=True)
class Text:
    """Something that is sent so many seconds after what made somebody say it."""

    after_s: float
    words: str


def luck_of(name: str) -> random.Random:
    """Somebody's own chances, the same in every month."""
    return random.Random(f"{SEED} {name}")  # noqa: S311 - a play


class Script:
    """Answers that were written down, somebody's own: each message finds the first that fits."""

    def __init__(self, answers: Sequence[Answer], name: str) -> None:
        self._answers = answers
        self._luck = luck_of(name)
        self._used: set[int] = set()
        self._then: list[str] = []

    def hears(self, rendered: Rendered, now: datetime) -> Text | None:
        """What is said to a message, with no words where it is silence; None when nothing was written down for it."""
        if self._then:
            return Text(BETWEEN_S, self._then.pop(0))
        for number, answer in enumerate(self._answers):
            if number not in self._used and self._fits(answer, rendered, now):
                if answer.once:
                    self._used.add(number)
                self._then = list(answer.then)
                return Text(self._luck.uniform(*SOON_S) if answer.after_s is None else answer.after_s, answer.says)
        return None

    @staticmethod
    def _fits(answer: Answer, rendered: Rendered, now: datetime) -> bool:
        if answer.to != rendered.kind or (answer.on and now.date() not in answer.on):
            return False
        return answer.has in " ".join(rendered.text.split())


class Player:
    """Plays a person through the month."""

    def __init__(self, person: Person, month: Month, began: datetime) -> None:
        self._person = person
        self._voice = month.voices[person.voice]
        self._luck = luck_of(person.name)
        self._script = Script((*person.answers, *month.usual), person.name)
        self._lifter = Lifter(Bodies(month.once_kg, month.most_reps, month.longest_s), person.strength, person.weekly)
        self._began = began
        self._card: Seen | None = None
        self._heard: tuple[str, str] = ("", "")

    def hears(self, rendered: Rendered, now: datetime) -> Text | None:
        """What they text to a message, `now` on their own clock; the same message twice in a row gets one answer."""
        if (rendered.kind, rendered.text) == self._heard:
            return None
        self._heard = (rendered.kind, rendered.text)
        if rendered.kind == "Card" and rendered.exercise is not None:
            self._card = read_card(rendered.exercise, rendered.text)
        said = self._script.hears(rendered, now) or self._report(rendered, now)
        if said is None or not said.words:
            return None
        return Text(said.after_s, said.words.format_map(self._own()))

    def _own(self) -> dict[str, str | int]:
        person = self._person
        effort = max(0, min(10, person.effort + self._luck.choice((-1, 0, 0, 1))))
        return {"age": person.age, "unit": person.unit, "rack": person.rack, "days": person.days, "effort": effort}

    def _report(self, rendered: Rendered, now: datetime) -> Text | None:
        """The set just done, when it is asked for."""
        card = self._card
        if card is None:
            return None
        text = " ".join(rendered.text.split())
        asked_at_once = rendered.kind == "Go" and NO_CLOCK in text
        weeks = (now - self._began).total_seconds() / (7 * DAY_S)
        if rendered.kind == "Down" and HOW_LONG in text:
            most_s = self._lifter.seconds(card.exercise, weeks, self._luck)
            held_s = most_s if card.hold_s is None else min(most_s, card.hold_s)
            return Text(self._luck.uniform(*SOON_S), hold_said(self._voice, held_s, self._luck))
        if not asked_at_once and not (rendered.kind in {"Down", "StillMissing", "SetNotRead"} and HOW_MANY in text):
            return None
        able = self._lifter.reps(card.exercise, card.load_kg, card.rep_s, weeks, card.round - 1, self._luck)
        done = max(1, int(able) if card.most is None else min(int(able), card.most))
        words = set_said(self._voice, card, done, max(0, int(able) - done), self._luck, sides=EACH in text or self._sides(text))
        took_s = done * card.rep_s if asked_at_once else 0.0
        return Text(took_s + self._luck.uniform(*SOON_S), words)

    @staticmethod
    def _sides(text: str) -> bool:
        return "left side" in text or "Right side" in text
