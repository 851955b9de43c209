"""One step of the talk with a coach: a state, an event and the desk in; a state, changes and messages out.

What is typed is shown first, with everything that follows from it; only a yes changes what is on for somebody or goes out, and the
last change can be taken back. Trainees in the middle of a workout finish it as it was.
"""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, assert_never

from core.coach import board, clearing, steering
from core.coach.deeds import spoken
from core.coach.desk import Clearance
from core.coach.looking import look, news_of, next_look, told_at_once
from core.coach.put_up import heard
from core.coach.showing import list_circuits, show_circuit, show_plans
from core.coach.states import (
    Choosing,
    CircuitReviewed,
    ClearanceReviewed,
    CoachState,
    CoachStep,
    DeedReviewed,
    PlanReviewed,
    Quiet,
)
from core.coach.steering import Heard
from core.coach.typing import CircuitTyped, ClearingTyped, Faulty, PlanTyped, Show, Simple, Yes, read_answer, read_coach
from core.coach.undoing import left_to_undo
from core.coach.whom import Meant, chosen
from core.coach_messages import (
    BoardHelp,
    CircuitUnknown,
    ClearanceTakenBack,
    CoachGreeting,
    CoachNotUnderstood,
    NothingAsked,
    NothingToTakeBack,
    PutAside,
    TakenBack,
    ToMend,
)
from core.deeds import AskDropped, DeedTakenBack
from core.own_messages import ForgetByHost
from core.reading.own_talk import OwnWord, own_talk
from core.reminders import local_date
from core.session.events import Edited, Event, Opened, Said, Say, Woke

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence
    from datetime import datetime

    from core.coach.desk import Change, Desk
    from core.coach.states import Decided
    from core.coach_messages import CoachMessage
    from core.messages import Message


def step(state: CoachState, event: Event, desk: Desk, now: datetime) -> CoachStep:
    """Decide what an event means in a state. Never raises for anything a coach texts.

    Args:
        state: where the talk is.
        event: what happened.
        desk: who trains, and the circuits there are.
        now: the instant (UTC).
    """
    said: Sequence[Message] = ()
    changes: tuple[Change, ...] = ()
    match event:
        case Woke():
            changes, said = look(desk, now)
        case Opened():
            greeting = CoachGreeting(desk.coach, len(desk.clients), len(desk.circuits))
            said = [greeting, *news_of(desk, now), *_waiting(state, desk, now)]
            changes = told_at_once(desk)
        case Said(text) | Edited(text):  # a text that was changed is read as if it were sent now
            state, changes, said = _said(state, text, desk, now)
        case _:
            assert_never(event)
    return CoachStep(state, changes, tuple(Say(message) for message in said), next_look(desk, changes, now))


def _waiting(state: CoachState, desk: Desk, now: datetime) -> Iterator[CoachMessage]:
    """The question that is still open."""
    match state:
        case CircuitReviewed():
            yield board.circuit_asked(state, desk, now)
        case PlanReviewed():
            yield board.plan_asked_again(state, desk, now)
        case ClearanceReviewed():
            yield clearing.asked_again(state, desk)
        case DeedReviewed():
            yield steering.asked_again(state, desk, now)
        case Choosing():
            yield steering.who_again(state)
        case Quiet():
            return


def _said(state: CoachState, text: str, desk: Desk, now: datetime) -> Decided:
    """An answer to what was asked; else something to be done or told; else a circuit, a plan, or a question about them."""
    today = local_date(now, desk.zone)
    if isinstance(state, Choosing):
        name = chosen(text, state.names)
        if name is not None:
            return _chosen(state, name, desk, now)
    answer = read_answer(text, desk)
    match answer:
        case Simple("help", topic):
            return state, (), [BoardHelp(topic, desk.review.day, desk.review.at)]
        case Simple(what):
            return _simple(state, what, desk, now)
        case Yes(whom):
            return _yes(state, whom, desk, now)
        case Faulty(faults):
            return Quiet(state.way_back), (), [ToMend(faults)]
        case None:
            pass
    if own_talk(text, desk.coach) == OwnWord("forget"):
        return state, (), [ForgetByHost()]
    ask = heard(text, desk, today)
    if ask is not None:
        return steering.act(state, Heard(ask, text, today), desk, now)
    return _typed(state, text, desk, now)


def _typed(state: CoachState, text: str, desk: Desk, now: datetime) -> Decided:
    """A circuit, a plan, a clearance, or the name of a circuit to look at."""
    typed = read_coach(text, desk, local_date(now, desk.zone))
    match typed:
        case Faulty(faults):  # a yes that follows must not be about what was shown before
            return Quiet(state.way_back), (), [ToMend(faults)]
        case CircuitTyped(circuit, whom, minutes, from_on):
            return board.show_and_review(circuit, whom, from_on, minutes, desk, now, state.way_back)
        case PlanTyped(block, whom):
            return board.show_and_review_plan(block, whom, desk, now, state.way_back)
        case Show(name):
            there = desk.circuit(name)
            if there is None:
                return state, (), [CircuitUnknown(name, tuple(circuit.name for circuit in desk.circuits))]
            return Quiet(state.way_back, there.name), (), list(show_circuit(there, desk, now))
        case ClearingTyped(name):
            return clearing.ask(state, name, desk)
        case None if isinstance(state, Choosing):
            return state, (), [steering.who_again(state)]
        case None:
            return state, (), [CoachNotUnderstood()]
    assert_never(typed)


def _chosen(state: Choosing, name: str, desk: Desk, now: datetime) -> Decided:
    """Who was meant is settled: go on with what was asked for."""
    ask = heard(state.text, desk, state.day)
    if ask is None:
        return Quiet(state.way_back), (), [CoachNotUnderstood()]
    meant = Meant((*state.meant, (state.said, name)))
    return steering.act(Quiet(state.way_back), Heard(ask, state.text, state.day, meant), desk, now)


def _simple(state: CoachState, what: str, desk: Desk, now: datetime) -> Decided:
    match what:
        case "list":
            return state, (), [list_circuits(desk)]
        case "plans":
            return state, (), list(show_plans(desk, now))
        case "no":
            return _no(state, desk)
        case _:
            return _undo(state, desk, now)


def _no(state: CoachState, desk: Desk) -> Decided:
    """What was shown is dropped."""
    match state:
        case Quiet():
            return state, (), [NothingAsked()]
        case ClearanceReviewed():
            return clearing.left(state, desk)
        case DeedReviewed():
            return steering.dropped(state)
        case Choosing():
            return Quiet(state.way_back), (), [AskDropped()]
        case CircuitReviewed(circuit):
            return Quiet(state.way_back, circuit.name), (), [PutAside(circuit.name)]
        case PlanReviewed(block):
            return Quiet(state.way_back), (), [PutAside(board.plan_name(block))]


def _yes(state: CoachState, whom: tuple[int, ...] | None, desk: Desk, now: datetime) -> Decided:
    """Do what was shown, and keep the way back."""
    match state:
        case Quiet():
            return state, (), [NothingAsked()]
        case ClearanceReviewed():
            return clearing.agreed(state, whom, desk, now)
        case CircuitReviewed():
            return board.circuit_agreed(state, whom, desk, now)
        case PlanReviewed():
            return board.plan_agreed(state, whom, desk, now)
        case DeedReviewed():
            return steering.agreed(state, whom, desk, now)
        case Choosing():
            return state, (), [steering.who_again(state)]


def _undo(state: CoachState, desk: Desk, now: datetime) -> Decided:
    """Take back what was done last, as far as it has not gone out."""
    way_back = state.way_back
    if way_back is None:
        return state, (), [NothingToTakeBack()]
    changes, out = left_to_undo(way_back.changes, desk, now)
    quiet = replace(state, way_back=None)
    if way_back.deed is not None:
        return quiet, changes, [DeedTakenBack(spoken(way_back.deed), way_back.of, out)]
    of_clearance = any(isinstance(change, Clearance) for change in changes)
    return quiet, changes, [ClearanceTakenBack(way_back.name) if of_clearance else TakenBack(way_back.name)]
