"""One step of the talk with a coach: a state, an event and the desk in; a state, changes and messages out.

What is typed is shown first, with everything that follows from it; only a yes changes the desk, and the last change can be taken
back. Trainees in the middle of a workout finish it as it was.
"""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, assert_never

from core.coach import clearing
from core.coach.desk import Assigned, Change, CircuitKept, CircuitRemoved, Clearance, NewcomersGet, NewsTold
from core.coach.showing import list_circuits, show_circuit, show_plan, show_plans
from core.coach.states import CircuitReviewed, ClearanceReviewed, CoachState, CoachStep, PlanReviewed, Quiet, WayBack
from core.coach.typing import CircuitTyped, ClearingTyped, Faulty, PlanTyped, Show, Simple, Yes, read_coach
from core.coach_messages import (
    BoardHelp,
    CircuitUnknown,
    ClearanceTakenBack,
    CoachGreeting,
    CoachNotUnderstood,
    InForce,
    InForceAsked,
    NothingAsked,
    NothingToTakeBack,
    PutAside,
    TakenBack,
    ToMend,
)
from core.messages import SafetyNews
from core.reminders import local_date
from core.session.events import Edited, Event, Opened, Said, Say, Woke

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence
    from datetime import datetime

    from core.circuit import Circuit
    from core.coach.desk import Client, Desk
    from core.coach_messages import CoachMessage
    from core.trainee import Block


def step(state: CoachState, event: Event, desk: Desk, now: datetime) -> CoachStep:
    """Decide what an event means in a state. Never raises for anything a coach texts.

    Args:
        state: where the talk is.
        event: what happened.
        desk: who trains, and the circuits there are.
        now: the instant (UTC).
    """
    said: Sequence[CoachMessage | SafetyNews] = ()
    changes: tuple[Change, ...] = ()
    match event:
        case Woke():
            pass
        case Opened():
            greeting = CoachGreeting(desk.coach, len(desk.clients), len(desk.circuits))
            said = [greeting, *_news(desk, now), *_waiting(state, desk)]
            changes = (NewsTold(tuple(one.number for one in desk.news)),) if desk.news else ()
        case Said(text) | Edited(text):  # a text that was changed is read as if it were sent now
            state, changes, said = _said(state, text, desk, now)
        case _:
            assert_never(event)
    return CoachStep(state, changes, tuple(Say(message) for message in said))


Outcome = tuple[CoachState, tuple[Change, ...], list["CoachMessage"]]


def _waiting(state: CoachState, desk: Desk) -> Iterator[CoachMessage]:
    """The question that is still open."""
    match state:
        case CircuitReviewed(circuit, whom):
            yield _circuit_asked(circuit, _gets(circuit, whom, desk), desk)
        case PlanReviewed(block, whom):
            yield _plan_asked(block, _clients(whom, desk))
        case ClearanceReviewed():
            yield clearing.asked_again(state, desk)
        case Quiet():
            return


def _news(desk: Desk, now: datetime) -> Iterator[SafetyNews]:
    """What no coach was told yet, with the day where it is not of today."""
    today = local_date(now, desk.zone)
    for one in desk.news:
        day = local_date(one.note.at, desk.zone)
        yield SafetyNews(one.trainee, one.note.kind, one.note.value, None if day == today else day)


def _said(state: CoachState, text: str, desk: Desk, now: datetime) -> Outcome:
    typed = read_coach(text, desk, local_date(now, desk.zone))
    match typed:
        case Faulty(faults):  # a yes that follows must not be about what was shown before
            return Quiet(state.way_back), (), [ToMend(faults)]
        case CircuitTyped(circuit, whom, minutes):
            shown = [*show_circuit(circuit, desk, now, minutes), _circuit_asked(circuit, _gets(circuit, whom, desk), desk)]
            return CircuitReviewed(circuit, whom, state.way_back), (), shown
        case PlanTyped(block, whom):
            return (
                PlanReviewed(block, whom, state.way_back),
                (),
                [*show_plan(block), _plan_asked(block, _clients(whom, desk))],
            )
        case Show(name):
            circuit_there = desk.circuit(name)
            if circuit_there is None:
                return state, (), [CircuitUnknown(name, tuple(circuit.name for circuit in desk.circuits))]
            return Quiet(state.way_back), (), list(show_circuit(circuit_there, desk, now))
        case ClearingTyped(name):
            return clearing.ask(state, name, desk)
        case Yes(whom):
            return _yes(state, whom, desk)
        case Simple(what):
            return _simple(state, what, desk, now)
        case None:
            return state, (), [CoachNotUnderstood()]
    assert_never(typed)


def _simple(state: CoachState, what: str, desk: Desk, now: datetime) -> Outcome:
    match what:
        case "help":
            return state, (), [BoardHelp()]
        case "list":
            return state, (), [list_circuits(desk)]
        case "plans":
            return state, (), list(show_plans(desk, now))
        case "no":
            if isinstance(state, Quiet):
                return state, (), [NothingAsked()]
            if isinstance(state, ClearanceReviewed):
                return clearing.left(state, desk)
            return Quiet(state.way_back), (), [PutAside(_name(state))]
        case _:
            if state.way_back is None:
                return state, (), [NothingToTakeBack()]
            name, undoing = state.way_back.name, state.way_back.changes
            of_clearance = any(isinstance(change, Clearance) for change in undoing)
            return replace(state, way_back=None), undoing, [ClearanceTakenBack(name) if of_clearance else TakenBack(name)]


def _name(state: CircuitReviewed | PlanReviewed) -> str:
    return state.circuit.name if isinstance(state, CircuitReviewed) else plan_name(state.block)


def plan_name(block: Block) -> str:
    """What a plan is called: its circuits."""
    return ", ".join(dict.fromkeys(circuit.name for circuit in block.circuits))


def _yes(state: CoachState, whom: tuple[int, ...] | None, desk: Desk) -> Outcome:
    """Put what was shown in force, and keep the way back."""
    match state:
        case Quiet():
            return state, (), [NothingAsked()]
        case ClearanceReviewed():
            return clearing.agreed(state, whom, desk)
        case CircuitReviewed(circuit, asked, _):
            gets = _gets(circuit, asked if whom is None else whom, desk)
            changes = tuple(_circuit_changes(circuit, gets, desk, everyone=asked is None and whom is None))
            done: CoachMessage = InForce(circuit.name, plan=False, whom=_names(gets), running=_running(gets))
        case PlanReviewed(block, asked, _):
            gets = _clients(asked if whom is None else whom, desk)
            changes = tuple(Assigned(client.id, block.circuits[0].name, block) for client in gets)
            done = InForce(plan_name(block), plan=True, whom=_names(gets), running=_running(gets))
    return Quiet(WayBack(_name(state), tuple(_way_back(changes, desk)))), changes, [done]


def _names(clients: tuple[Client, ...]) -> tuple[str, ...]:
    return tuple(client.name for client in clients)


def _running(clients: tuple[Client, ...]) -> tuple[str, ...]:
    """Those in the middle of a workout."""
    return tuple(client.name for client in clients if client.running)


def _clients(whom: tuple[int, ...] | None, desk: Desk) -> tuple[Client, ...]:
    return tuple(client for client in desk.clients if whom is None or client.id in whom)


def _has(client: Client, name: str) -> bool:
    """Whether a circuit is on for somebody, alone or in their plan."""
    if client.block is None:
        return client.circuit.name == name
    return any(circuit.name == name for circuit in client.block.circuits)


def _gets(circuit: Circuit, whom: tuple[int, ...] | None, desk: Desk) -> tuple[Client, ...]:
    """For whom a circuit would be: whoever has one of that name, and those named; a new one without names is for everyone."""
    there = desk.circuit(circuit.name)
    if whom is None and there is None:
        return desk.clients
    has = {client.id for client in desk.clients if there is not None and _has(client, there.name)}
    return _clients((*has, *(whom or ())), desk)


def _circuit_changes(circuit: Circuit, gets: tuple[Client, ...], desk: Desk, *, everyone: bool) -> Iterator[Change]:
    there = desk.circuit(circuit.name)
    kept = circuit if there is None else replace(circuit, name=there.name)
    yield CircuitKept(kept)
    for client in gets:
        if not _has(client, kept.name):
            yield Assigned(client.id, kept.name, None)
    if there is None and everyone:
        yield NewcomersGet(kept.name)


def _way_back(changes: tuple[Change, ...], desk: Desk) -> Iterator[Change]:
    """The changes that undo these, the last first: so a circuit is taken away when nobody has it any more."""
    by_id = {client.id: client for client in desk.clients}
    for change in reversed(changes):
        match change:
            case Assigned(client):
                yield Assigned(client, by_id[client].circuit.name, by_id[client].block)
            case NewcomersGet():
                yield NewcomersGet(desk.newcomers)
            case CircuitKept(circuit):
                there = desk.circuit(circuit.name)
                yield CircuitRemoved(circuit.name) if there is None else CircuitKept(there)
            case CircuitRemoved() | Clearance() | NewsTold():  # none of these is what a circuit or a plan changes
                pass
            case _:
                assert_never(change)


def _circuit_asked(circuit: Circuit, gets: tuple[Client, ...], desk: Desk) -> InForceAsked:
    return InForceAsked(
        circuit.name,
        plan=False,
        replaces=desk.circuit(circuit.name) is not None,
        whom=_names(gets),
        instead=tuple(client.name for client in gets if client.block is not None and not _has(client, circuit.name)),
    )


def _plan_asked(block: Block, gets: tuple[Client, ...]) -> InForceAsked:
    had = tuple(client.name for client in gets if client.block is not None)
    return InForceAsked(plan_name(block), plan=True, replaces=False, whom=_names(gets), instead=had)
