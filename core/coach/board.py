"""Circuits and plans on the board: what was typed is shown, a yes puts it in force at once or from a day on."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from core.changed import Changed, ChangeKind
from core.coach.deeds import names_of, nothing_comes, put_up, running_of, told
from core.coach.desk import Assigned, CircuitKept, NewcomersGet
from core.coach.showing import show_circuit, show_plan
from core.coach.states import CircuitReviewed, PlanReviewed, Quiet, WayBack
from core.coach.undoing import way_back_of
from core.coach_messages import InForce, InForceAsked
from core.deeds import NameTaken
from core.reminders import local_date

if TYPE_CHECKING:
    from collections.abc import Iterator
    from datetime import date, datetime

    from core.circuit import Circuit
    from core.coach.desk import Change, Client, Desk
    from core.coach.states import Decided
    from core.trainee import Block


def review_circuit(
    circuit: Circuit, whom: tuple[int, ...] | None, from_on: date | None, desk: Desk, now: datetime, way_back: WayBack | None
) -> Decided:
    """Ask whether a circuit that was shown may be put in force; one that is on the board changes at once, on no other day."""
    if from_on is not None and from_on <= local_date(now, desk.zone):
        from_on = None
    there = desk.circuit(circuit.name)
    if from_on is not None and there is not None:
        return Quiet(way_back), (), [NameTaken(there.name, from_on)]
    state = CircuitReviewed(circuit, whom, way_back, from_on)
    return state, (), [circuit_asked(state, desk, now)]


def show_and_review(
    circuit: Circuit,
    whom: tuple[int, ...] | None,
    from_on: date | None,
    minutes: int | None,
    desk: Desk,
    now: datetime,
    way_back: WayBack | None,
) -> Decided:
    """Show a circuit that was typed, and ask."""
    state, changes, asked = review_circuit(circuit, whom, from_on, desk, now, way_back)
    return state, changes, [*show_circuit(circuit, desk, now, minutes), *asked]


def show_and_review_plan(
    block: Block, whom: tuple[int, ...] | None, desk: Desk, now: datetime, way_back: WayBack | None
) -> Decided:
    """Show a plan that was typed, and ask."""
    return PlanReviewed(block, whom, way_back), (), [*show_plan(block), plan_asked(block, _clients(whom, desk), now)]


def circuit_agreed(state: CircuitReviewed, whom: tuple[int, ...] | None, desk: Desk, now: datetime) -> Decided:
    """A yes to a circuit, for those named with it, else for those it was asked about."""
    circuit, from_on = state.circuit, state.from_on
    gets = _gets(circuit, state.whom if whom is None else whom, desk, now)
    everyone = state.whom is None and whom is None
    changes = tuple(_circuit_changes(circuit, gets, from_on, desk, now, everyone=everyone))
    running = () if from_on is not None else running_of(gets)
    done = InForce(circuit.name, plan=False, whom=names_of(gets), running=running, from_on=from_on)
    return Quiet(WayBack(circuit.name, tuple(way_back_of(changes, desk))), circuit.name), changes, [done]


def plan_agreed(state: PlanReviewed, whom: tuple[int, ...] | None, desk: Desk, now: datetime) -> Decided:
    """A yes to a plan, for those named with it, else for those it was asked about."""
    block, gets = state.block, _clients(state.whom if whom is None else whom, desk)
    changes: list[Change] = []
    for client in gets:
        changes += [Assigned(client.id, block.circuits[0].name, block), *nothing_comes(client)]
        changes += told(client, Changed(ChangeKind.PLAN, plan_name(block)), now)
    done = InForce(plan_name(block), plan=True, whom=names_of(gets), running=running_of(gets))
    return Quiet(WayBack(plan_name(block), tuple(way_back_of(changes, desk)))), tuple(changes), [done]


def plan_name(block: Block) -> str:
    """What a plan is called: its circuits."""
    return ", ".join(dict.fromkeys(circuit.name for circuit in block.circuits))


def circuit_asked(state: CircuitReviewed, desk: Desk, now: datetime) -> InForceAsked:
    """May this circuit come into force?"""
    circuit, gets = state.circuit, _gets(state.circuit, state.whom, desk, now)
    return InForceAsked(
        circuit.name,
        plan=False,
        replaces=desk.circuit(circuit.name) is not None,
        whom=names_of(gets),
        instead=tuple(client.name for client in gets if client.on(now)[1] is not None and not _has(client, circuit.name, now)),
        from_on=state.from_on,
    )


def plan_asked(block: Block, gets: tuple[Client, ...], now: datetime) -> InForceAsked:
    """May this plan come into force?"""
    had = tuple(client.name for client in gets if client.on(now)[1] is not None)
    return InForceAsked(plan_name(block), plan=True, replaces=False, whom=names_of(gets), instead=had)


def plan_asked_again(state: PlanReviewed, desk: Desk, now: datetime) -> InForceAsked:
    """The question that is still open."""
    return plan_asked(state.block, _clients(state.whom, desk), now)


def _clients(whom: tuple[int, ...] | None, desk: Desk) -> tuple[Client, ...]:
    return tuple(client for client in desk.clients if whom is None or client.id in whom)


def _has(client: Client, name: str, now: datetime) -> bool:
    """Whether a circuit is on for somebody, alone or in their plan."""
    circuit, block = client.on(now)
    return circuit.name == name if block is None else any(one.name == name for one in block.circuits)


def _gets(circuit: Circuit, whom: tuple[int, ...] | None, desk: Desk, now: datetime) -> tuple[Client, ...]:
    """For whom a circuit would be: whoever has one of that name, and those named; a new one without names is for everyone."""
    there = desk.circuit(circuit.name)
    if whom is None and there is None:
        return desk.clients
    has = {client.id for client in desk.clients if there is not None and _has(client, there.name, now)}
    return _clients((*has, *(whom or ())), desk)


def _circuit_changes(
    circuit: Circuit, gets: tuple[Client, ...], from_on: date | None, desk: Desk, now: datetime, *, everyone: bool
) -> Iterator[Change]:
    """The circuit on the board, and for each who gets it; whoever comes new gets it too, when it is for everyone."""
    there = desk.circuit(circuit.name)
    kept = circuit if there is None else replace(circuit, name=there.name)
    yield CircuitKept(kept)
    for client in gets:
        if not _has(client, kept.name, now):
            yield from put_up(client, kept.name, from_on)
        yield from told(client, Changed(ChangeKind.CIRCUIT, kept.name, on=from_on), now)
    if there is None and everyone:
        yield NewcomersGet(kept.name)
