"""Which steps are allowed, whatever the belief says.

- Add 2-10 % where the rack has such a step (American College of Sports Medicine 2009, entry 21).
- A larger step, and then only the next load in the rack, after two sessions running that ended two or more reps above
  the target (two-for-two, entry 23), or with a slower tempo to ease it, or inside a workout when the last set was
  clearly too easy.
- What was lifted in the last two training days is no step up.
- A first set is at the coach's tempo, where failing is unlikely.
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
TWICE: Final = 2
CLEARLY_EASY: Final = 4.0
"""Reps left that make a set clearly too easy for its round (common practice, no source)."""
ALMOST_SURELY: Final = 0.7
WIDE_STEP: Final = Decimal("1.35")
FIRST_FINISH: Final = 0.80


@dataclass(frozen=True)
class LastLoad:
    """The last set of the exercise, and what it allows.

    Attributes:
        date, load, reps, rep_s: of the last set.
        left: reps left as said (or 10 - rpe), None when not said.
        times: sessions running, newest first, whose last set filled the time at this load or more, and left two above
            the target as far as anything was said (at most two are looked at).
        heaviest: the heaviest load of the last two training days.
    """

    date: date
    load: Decimal
    reps: int
    rep_s: float
    left: float | None
    times: int
    heaviest: Decimal


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
    days = sorted({past.date for past in loaded})[-TWICE:]
    recent = [past for past in loaded if past.date in days]
    times = 0
    for day in reversed(days):
        end = [past for past in recent if past.date == day][-1]
        if end.load < last.load or not _above_target(ask, end):
            break
        times += 1
    return LastLoad(last.date, last.load, last.reps, last.rep_s, left_said(last), times, max(past.load for past in recent))


def _above_target(ask: Ask, end: PastSet) -> bool:
    """Whether a set filled its time, and nothing said speaks against two reps above the target."""
    left = left_said(end)
    full = end.reps >= floor(ask.station.work_s / end.rep_s + 1e-9)
    return full and (left is None or left >= min(ask.station.reserve) + ABOVE_TARGET)


def allowed(ask: Ask, held: tuple[Decimal, ...], tempos: tuple[float, ...], last: LastLoad | None, outcome: Chances) -> Marks:
    """Which choices are allowed, axes (load, tempo); at least one always is."""
    marks = np.zeros((len(held), len(tempos)), dtype=np.bool_)
    if last is None:
        usual = min(range(len(tempos)), key=lambda index: abs(tempos[index] - ask.station.rep_s))
        marks[:, usual] = outcome.finish[:, usual] >= FIRST_FINISH
    else:
        easy = last.date == ask.today and _clearly_easy(last, held, tempos, outcome)
        free = max(last.heaviest, last.load * (WIDE_STEP if easy else LARGEST_STEP))
        next_up = next((load for load in held if load > last.heaviest), None)
        for row, load in enumerate(held):
            if load <= free:
                marks[row] = True
            elif load == next_up:
                marks[row] = easy or last.times >= TWICE or np.array(tempos) > last.rep_s
    if not marks.any():
        marks[0] = True
    return marks


def _clearly_easy(last: LastLoad, held: tuple[Decimal, ...], tempos: tuple[float, ...], outcome: Chances) -> bool:
    """Whether the last set left far too much: as said, or most likely by the belief when nothing was said."""
    if last.left is not None:
        return last.left >= CLEARLY_EASY
    if last.load not in held:
        return False
    tempo = min(range(len(tempos)), key=lambda index: abs(tempos[index] - last.rep_s))
    return bool((outcome.spare[held.index(last.load), tempo] >= CLEARLY_EASY).mean() >= ALMOST_SURELY)
