"""The gate: whether a workout may start or go on. Every way into a workout asks here, and only here."""

from __future__ import annotations

from typing import TYPE_CHECKING

from core.health import Bar, Branch, Outcome
from core.safety.screening import cleared_since, verdict

if TYPE_CHECKING:
    from datetime import datetime

    from core.diary import History, PainRecord
    from core.trainee import Trainee


def bar(trainee: Trainee, history: History) -> Bar | None:
    """What stands before a workout now, None when nothing does.

    A clearance that the trainee tells lifts the first two (that it is not told on the day of the sign is seen to where it is kept);
    the others wait for the coach, and after a warning sign for the coach again.
    """
    if uncleared_sign(history) is not None:
        return Bar.URGENT
    health = trainee.health
    found = verdict(health)
    if found.outcome is Outcome.WAIT and not _agreed(history, health.decided_at):
        return Bar.YOUNG if found.branch is Branch.YOUNG else Bar.PREGNANT
    if found.outcome is Outcome.CLEARANCE and cleared_since(history, health.decided_at) is None:
        return Bar.CLEARANCE
    return None


def uncleared_sign(history: History) -> PainRecord | None:
    """The latest warning sign, when the trainee told no clearance after it: nobody else knows how they are."""
    signs = _signs(history)
    if not signs:
        return None
    cleared = cleared_since(history, signs[-1].at, by="trainee")
    return signs[-1] if cleared is None or cleared == signs[-1].at else None


def _agreed(history: History, decided_at: datetime | None) -> bool:
    """Whether the coach has said that they and the clinician agree, on what is known now."""
    agreed = cleared_since(history, decided_at, by="coach")
    return agreed is not None and all(sign.at < agreed for sign in _signs(history))


def _signs(history: History) -> list[PainRecord]:
    return [pain for pain in history.pains if pain.urgent]
