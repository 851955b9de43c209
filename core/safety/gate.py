"""The gate: whether a workout may start or go on. Every way into a workout asks here, and only here."""

from __future__ import annotations

from typing import TYPE_CHECKING

from core.health import Bar, Branch, Outcome
from core.safety.screening import cleared_since, verdict

if TYPE_CHECKING:
    from core.diary import History, PainRecord
    from core.trainee import Trainee


def bar(trainee: Trainee, history: History) -> Bar | None:
    """What stands before a workout now, None when nothing does.

    A clearance that the trainee tells lifts the first two (that it is not told on the day of the sign is seen to where it is kept);
    the others wait for the coach.
    """
    if uncleared_sign(history) is not None:
        return Bar.URGENT
    health = trainee.health
    found = verdict(health)
    if found.outcome is Outcome.WAIT and cleared_since(history, health.decided_at, by_coach=True) is None:
        return Bar.YOUNG if found.branch is Branch.YOUNG else Bar.PREGNANT
    if found.outcome is Outcome.CLEARANCE and cleared_since(history, health.decided_at) is None:
        return Bar.CLEARANCE
    return None


def uncleared_sign(history: History) -> PainRecord | None:
    """The latest warning sign, when no clearance was told after it."""
    signs = [pain for pain in history.pains if pain.urgent]
    if not signs:
        return None
    cleared = cleared_since(history, signs[-1].at)
    return signs[-1] if cleared is None or cleared == signs[-1].at else None
