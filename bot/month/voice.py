"""What a card asks for, read off its text as a phone shows it, and a set as somebody texts it."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import TYPE_CHECKING

from bot.month.lifter import USUAL_REP_S
from core.units import KG_PER_LB

if TYPE_CHECKING:
    import random

    from bot.month.cast import Voice

ROUND = re.compile(r"Round (\d+)/")
LOAD = re.compile(r"(\d+(?:\.\d+)?) (kg|lb)")
SECONDS_A_PHASE = re.compile(r"(?:[Dd]own|[Hh]old|[Uu]p) (\d+(?:\.\d+)?) s")
EXPECTED = re.compile(r"Expect (?:\d+-)?(\d+) reps|(\d+) reps(?: a side)?, no clock")
HELD = re.compile(r"Hold for (?:(\d+) min ?)?(?:(\d+) s)?")
ONES = (
    *("no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve", "thirteen"),
    *("fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen"),
)
TENS = {2: "twenty", 3: "thirty", 4: "forty", 5: "fifty"}
LEFT_AT_MOST = 5  # people do not tell six in reserve from seven


@dataclass(frozen=True)
class Seen:
    """A station's card as somebody reads it.

    Attributes:
        exercise: its slug.
        round: from 1.
        load, unit: per hand, as written; None without a load.
        rep_s: seconds a rep.
        most: reps that the tempo allows in the time, None where reps do not count.
        hold_s: how long to hold, None where reps count.
    """

    exercise: str
    round: int
    load: str | None
    unit: str | None
    rep_s: float
    most: int | None
    hold_s: int | None

    @property
    def load_kg(self) -> float | None:
        """The load in kilograms."""
        return None if self.load is None else float(self.load) * (1.0 if self.unit == "kg" else float(KG_PER_LB))


def read_card(exercise: str, text: str) -> Seen:
    """A card as it is read on a phone."""
    lines = " ".join(text.split())
    head, *_ = re.split(r"(?:Down|Hold for) \d", lines, maxsplit=1)
    load, held = LOAD.search(head), HELD.search(lines)
    counted, turn = EXPECTED.search(lines), ROUND.match(lines)
    phases = [float(seconds) for seconds in SECONDS_A_PHASE.findall(lines)]
    return Seen(
        exercise,
        1 if turn is None else int(turn[1]),
        None if load is None else load[1],
        None if load is None else load[2],
        sum(phases) or USUAL_REP_S,
        None if counted is None else int(counted[1] or counted[2]),
        None if held is None or counted is not None else 60 * int(held[1] or 0) + int(held[2] or 0),
    )


def in_words(number: int) -> str:
    """A number below sixty in words."""
    if number < len(ONES):
        return ONES[number]
    tens, ones = divmod(number, 10)
    return TENS[tens] + (f"-{ONES[ones]}" if ones else "")


def set_said(voice: Voice, card: Seen, reps: int, left: int, luck: random.Random, *, sides: bool) -> str:
    """A set of repetitions as it is texted."""
    side = " each side" if sides else ""
    words = f"{in_words(reps)}{side}"
    form = luck.choice(voice.bare if card.load is None else voice.loaded)
    return form.format(
        reps=f"{reps}{side}",
        words=words,
        Words=words.capitalize(),
        load=card.load,
        unit=card.unit,
        left=min(left, LEFT_AT_MOST),
    )


def hold_said(voice: Voice, seconds: int, luck: random.Random) -> str:
    """A hold as it is texted."""
    return luck.choice(voice.held).format(seconds=seconds)
