"""One step of the conversation."""

from __future__ import annotations

from typing import TYPE_CHECKING

from core.messages import Greeting
from core.session.events import Event, Plan, Say, Step
from core.session.states import Idle, State

if TYPE_CHECKING:
    from datetime import datetime

    from core.diary import History


def step(state: State, event: Event, plan: Plan, history: History, now: datetime) -> Step:
    """Decide what an event means in a state."""
    del event, history, now, state
    return Step(Idle(), (), (Say(Greeting(plan.trainee.name, plan.coach)),), None)
