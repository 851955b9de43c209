"""How much lighter today is, and why: the screening, breaks, illness, easier weeks, how one feels.

Lighter means more reps left at the end of each set, and rounds left out; several reasons do not add up, the strongest counts.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from core.health import Branch, EasierWhy, Feeling, LightWhy
from core.safety.recovery import EASIER_SHARE, after_break, after_fever, easier_week, ended
from core.safety.screening import cleared_since, due, verdict

if TYPE_CHECKING:
    from collections.abc import Sequence
    from datetime import datetime

    from core.diary import History
    from core.trainee import Trainee

LIGHT = 2  # reps to leave beyond the usual: common practice, no source
BIT_LIGHTER = 1
LIGHT_WORKOUTS = 6  # for those who begin, or come with a clearance: common practice, no source
ROUND_LESS = 0.67


@dataclass(frozen=True)
class Lighter:
    """One reason: reps to leave beyond the usual, the share of the rounds, days away for a break."""

    why: LightWhy
    reserve: int
    share: float = 1.0
    days: int | None = None


def lighter_today(trainee: Trainee, history: History, now: datetime) -> tuple[Lighter, ...]:
    """Every reason for a lighter day that is known before the workout, the screening's first."""
    found = [_screened(trainee, history, now)]
    back, fever, easier = after_break(history, now), after_fever(history), easier_week(history, now)
    if back is not None and (back.reserve or back.share < 1):
        found.append(Lighter(LightWhy.BREAK, back.reserve, back.share, back.days_away))
    if fever is not None:
        found.append(Lighter(LightWhy.FEVER, fever.reserve, fever.share))
    if easier is not None:
        why = LightWhy.EASIER_PLAN if easier is EasierWhy.PLAN else LightWhy.EASIER_FALLING
        found.append(Lighter(why, BIT_LIGHTER, EASIER_SHARE))
    return tuple(lighter for lighter in found if lighter is not None)


def _screened(trainee: Trainee, history: History, now: datetime) -> Lighter | None:
    health, done = trainee.health, ended(history)
    signs = [pain.at for pain in history.pains if pain.urgent]
    cleared = cleared_since(history, signs[-1] if signs else health.decided_at)
    since = sum(record.started_at > cleared for record in done) if cleared is not None else LIGHT_WORKOUTS
    match verdict(health).branch:
        case Branch.UNANSWERED:
            return Lighter(LightWhy.UNANSWERED, LIGHT)
        case Branch.DISEASE_ACTIVE:
            return Lighter(LightWhy.DISEASE, LIGHT)
        case Branch.YOUNG | Branch.PREGNANT:  # only with the coach's word
            return Lighter(LightWhy.CLEARED, LIGHT)
        case _ if since < LIGHT_WORKOUTS:
            return Lighter(LightWhy.CLEARED, LIGHT)
        case Branch.STARTING if len(done) < LIGHT_WORKOUTS:
            return Lighter(LightWhy.STARTING, LIGHT)
        case _:
            return Lighter(LightWhy.UNANSWERED, LIGHT) if due(health, history, now) else None


def lighter_for(feelings: Sequence[Feeling]) -> tuple[Lighter, ...]:
    """What is said before a workout: one thing makes it a bit lighter; two, or being ill, lighter and a round less.

    Common practice, no source.
    """
    named = {Feeling.BAD_SLEEP: LightWhy.SLEEP, Feeling.SORE: LightWhy.SORE, Feeling.ILL: LightWhy.ILL, Feeling.COLD: LightWhy.ILL}
    whys = tuple(dict.fromkeys(named[feeling] for feeling in feelings if feeling in named))
    strong = len(whys) > 1 or LightWhy.ILL in whys
    return tuple(Lighter(why, LIGHT if strong else BIT_LIGHTER, ROUND_LESS if strong else 1.0) for why in whys)


def extra_reserve(reasons: Sequence[Lighter]) -> int:
    """Reps to leave beyond the usual."""
    return max((reason.reserve for reason in reasons), default=0)


def rounds_left(rounds: int, reasons: Sequence[Lighter]) -> int:
    """The rounds to do, at least one."""
    share = min((reason.share for reason in reasons), default=1.0)
    return max(1, int(rounds * share + 0.5))
