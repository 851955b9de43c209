"""Which steps are allowed, whatever the belief says.

- Add 2-10 % where the rack has such a step (American College of Sports Medicine 2009, entry 21).
- A larger step only after two sessions running ended two or more reps above the target (two-for-two, entry 23), or
  when a slower tempo eases it, or inside a workout when the last set was clearly too easy.
- What was lifted before in the last two training days is no step up.
- A first set starts where failing is unlikely.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from math import floor
from typing import TYPE_CHECKING, Final

import numpy as np

if TYPE_CHECKING:
    from core.strength.evidence import Marks, PastSet
    from core.suggestion.asks import Ask
    from core.suggestion.chances import Chances

LARGEST_STEP: Final = Decimal("1.10")
ABOVE_TARGET: Final = 2.0
"""Two or more reps above the target."""
CLEARLY_EASY: Final = 4.0
"""Reps left, as said, that make a set clearly too easy for its round."""
ALMOST_SURELY: Final = 0.7
WIDE_STEP: Final = Decimal("1.35")
FIRST_FINISH: Final = 0.80


@dataclass(frozen=True)
class LastLoad:
    """The last set of the exercise, and what it allows.

    Attributes:
        date, load, reps, rep_s: of the last set.
        left: reps left as said (or 10 - rpe), None when not said.
        times: how many sessions running ended two or more above the target at this load.
        ceiling: the heaviest load of the last two training days.
    """

    date: date
    load: Decimal
    reps: int
    rep_s: float
    left: float | None
    times: int
    ceiling: Decimal


def left_said(past: PastSet) -> float | None:
    """Reps left as the trainee said, from reserve or effort."""
    if past.reserve is not None:
        return past.reserve
    return None if past.rpe is None else 10.0 - past.rpe


def last_load(ask: Ask) -> LastLoad | None:
    """The last set with a load, None when there is none."""
    loaded = [past for past in ask.history if past.load > 0 and past.date <= ask.today and past.rep_s > 0]
    if not loaded:
        return None
    last = loaded[-1]
    days = sorted({past.date for past in loaded})[-2:]
    recent = [past for past in loaded if past.date in days]
    ends = [[past for past in recent if past.date == day][-1] for day in days]
    above = min(ask.station.reserve) + ABOVE_TARGET
    times = 0
    for end in reversed(ends):
        left = left_said(end)
        full = end.reps >= floor(ask.station.work_s / end.rep_s + 1e-9)
        if end.load < last.load or not full or (left is not None and left < above):
            break
        times += 1
    return LastLoad(last.date, last.load, last.reps, last.rep_s, left_said(last), times, max(past.load for past in recent))


def allowed(ask: Ask, held: tuple[Decimal, ...], tempos: tuple[float, ...], last: LastLoad | None, outcome: Chances) -> Marks:
    """Which choices are allowed, axes (load, tempo); at least one always is."""
    marks = np.zeros((len(held), len(tempos)), dtype=np.bool_)
    if last is None:
        marks = np.asarray(outcome.finish >= FIRST_FINISH)
    else:
        easy = last.date == ask.today and _clearly_easy(last, held, tempos, outcome)
        above = [load for load in held if load > last.ceiling]
        next_up = above[0] if above else None
        for row, load in enumerate(held):
            if load <= max(last.ceiling, last.load * LARGEST_STEP) or (easy and load <= last.load * WIDE_STEP):
                marks[row] = True
            elif load == next_up:
                slower = np.array([tempo > last.rep_s for tempo in tempos])
                marks[row] = True if last.times >= 2 or easy else slower  # noqa: PLR2004 - two for two
    if not marks.any():
        marks[0, :] = True
    return marks


def _clearly_easy(last: LastLoad, held: tuple[Decimal, ...], tempos: tuple[float, ...], outcome: Chances) -> bool:
    """Whether the last set left far too much: as said, or almost surely by the belief when nothing was said."""
    if last.left is not None:
        return last.left >= CLEARLY_EASY
    if last.load not in held:
        return False
    tempo = min(range(len(tempos)), key=lambda index: abs(tempos[index] - last.rep_s))
    return bool((outcome.spare[held.index(last.load), tempo] >= CLEARLY_EASY).mean() >= ALMOST_SURELY)
