"""Adjustable dumbbells over a whole round: which plates to leave on, so that changes fit the rests.

Planned anew at the first station of every round, from what is known by then. Fixed dumbbells need no plan.
"""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from core.messages import PlatePlan, PlateStretch
from core.rack import Kind, Rack
from core.rack_plan import PlateStation, plan
from core.reasons import AsSaid, CoachSays, GoingLight, HeldBack, TempoFirst
from core.session.places import exercise_at, from_now_on, rest_after_s
from core.session.prescription import advise, ask_at
from core.session.states import Place, Workout
from core.suggestion import load_costs
from core.units import Load

if TYPE_CHECKING:
    from decimal import Decimal

    from core.rack_plan import RackPlan
    from core.session.turn import Turn

PAIR = 2


def planned(turn: Turn, workout: Workout) -> Workout:
    """The workout with loads planned for the round its place is in; the plan is said when it is new."""
    rack = turn.plan.trainee.rack or Rack()
    if not adjustable(rack):
        return workout
    found = _plan(turn, workout, rack)
    unit = turn.plan.trainee.unit
    loads = tuple(None if station.setup is None else Load(station.setup.load, unit) for station in found.stations)
    if loads != workout.planned:
        turn.say(_message(found, turn))
    return replace(workout, planned=loads)


def adjustable(rack: Rack) -> bool:
    """Whether the rack is handles and plates, and nothing that is fixed: those need no changing."""
    kinds = {item.kind for item in rack.items if item.load is not None or item.kind is Kind.HANDLE}
    return {Kind.HANDLE, Kind.PLATE} <= kinds and not kinds & {Kind.DUMBBELL, Kind.KETTLEBELL}


def _plan(turn: Turn, workout: Workout, rack: Rack) -> RackPlan:
    circuit, unit = workout.circuit, turn.plan.trainee.unit
    workout, stations = replace(from_now_on(workout), planned=()), []
    for number in range(1, len(circuit.stations) + 1):
        place = Place(workout.place.round, number)
        before = Place(1, number - 1 if number > 1 else len(circuit.stations))
        costs = _costs(turn, workout, place)
        hands = exercise_at(workout, place).loads_held if costs else 0
        stations.append(PlateStation(float(rest_after_s(workout, before).high), hands, costs))
    change_s = float(circuit.plate_change_s)
    return plan(stations, rack.handle(unit), rack.plates(unit), rounds=circuit.rounds, change_s=change_s)


def _costs(turn: Turn, workout: Workout, place: Place) -> dict[Decimal, float]:
    """What each load costs at a place, in reps off the target; a load that somebody named has no other beside it."""
    ask, advice = ask_at(turn, workout, place), advise(turn, workout, place)
    if ask is None:
        return {}
    if advice.prescription.load is not None and isinstance(advice.why, AsSaid | CoachSays | GoingLight | HeldBack | TempoFirst):
        return {advice.prescription.load.in_unit(ask.unit): 0.0}
    return load_costs(ask)


def _message(found: RackPlan, turn: Turn) -> PlatePlan:
    unit = turn.plan.trainee.unit
    stretches = tuple(
        PlateStretch(Load(setup.load, unit), tuple(Load(size, unit) for size in setup.a_side), first, last)
        for setup, first, last in found.stretches
    )
    slow = tuple(number for number, station in enumerate(found.stations, start=1) if not station.fits)
    return PlatePlan(stretches, slow)
