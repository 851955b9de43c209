"""What a coach is shown of a circuit or a plan: times, advice, a board, and what a week of it does."""

from __future__ import annotations

from decimal import Decimal
from typing import TYPE_CHECKING

from core import timeline
from core.body_effect import DAYS_A_WEEK, SETS_A_WEEK, average_week, energy, tension_s
from core.catalogue import exercise
from core.circuit import Span
from core.circuit_warnings import warnings_of
from core.coach_messages import (
    CircuitAdvice,
    CircuitShown,
    CircuitsListed,
    GroupLine,
    ListedCircuit,
    PlanShown,
    PlansShown,
    Remark,
    TraineePlan,
    Turning,
    TypedLine,
    WeekShown,
)
from core.pictures import Board, BoardLine, group_of, rests_s
from core.plan import circuit_due, weeks_of
from core.reminders import is_dark, local_date

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence
    from datetime import datetime

    from core.circuit import Circuit
    from core.coach.desk import Client, Desk
    from core.coach_messages import CoachMessage
    from core.trainee import Block

BODY_MASS_KG = 70  # the energy shown is for a body of this mass; common practice, no source
USUAL_DAYS = 3  # workouts a week where no plan says how many: common practice, no source


def show_circuit(circuit: Circuit, desk: Desk, now: datetime, minutes: int | None = None) -> Iterator[CoachMessage]:
    """A circuit with its times and board, advice on it, and a week of it; `minutes` is what it was to fit in."""
    yield CircuitShown(
        name=circuit.name,
        rounds=circuit.rounds,
        stations=tuple(_lines(circuit)),
        work_s=timeline.work_s_per_round(circuit),
        rest_s=timeline.rest_s_per_round(circuit),
        round_s=timeline.round_s(circuit),
        warm_up_s=circuit.warm_up_s,
        total_s=timeline.total_s(circuit),
        picture=board_of_circuit(circuit, dark=is_dark(now, desk.zone)),
    )
    remarks = [Remark(advice.place, advice.says, advice.remedy) for advice in warnings_of(circuit, minutes)]
    if not circuit.warm_up_s:
        remarks.append(Remark("the circuit", "no warm-up", 'say how long, such as "5 min warm-up"'))
    if remarks:
        yield CircuitAdvice(tuple(remarks))
    yield week_shown([[circuit] * USUAL_DAYS], assumed=True)


def show_plan(block: Block) -> Iterator[CoachMessage]:
    """A plan day by day, and a usual week of it."""
    weeks = weeks_of(block)
    turns = (zip(block.days, week, strict=True) for week in weeks[:2] if block.days)
    yield PlanShown(
        circuits=tuple(circuit.name for circuit in block.circuits),
        days=block.days,
        weeks=block.weeks,
        easier_weeks=block.easier_weeks,
        turns=tuple(Turning(day, circuit.name) for week in turns for day, circuit in week),
    )
    yield week_shown(weeks, assumed=not block.days)


def week_shown(weeks: Sequence[Sequence[Circuit]], *, assumed: bool) -> WeekShown:
    """What a usual one of these weeks does, beside what is advised."""
    groups = average_week(weeks)
    tension = [tension_s(circuit) for week in weeks for circuit in week]
    burnt = [energy(circuit, Decimal(BODY_MASS_KG)) for circuit in dict.fromkeys(circuit for week in weeks for circuit in week)]
    return WeekShown(
        circuits=tuple(dict.fromkeys(circuit.name for week in weeks for circuit in week)),
        days=len(weeks[0]),
        assumed=assumed,
        groups=tuple(GroupLine(group, line.sets, line.days) for group, line in groups.items()),
        few_sets=tuple(group for group, line in groups.items() if not line.sets_enough),
        few_days=tuple(group for group, line in groups.items() if not line.days_enough),
        sets_advised=SETS_A_WEEK,
        days_advised=DAYS_A_WEEK,
        tension_s=Span(sum(one.low for one in tension) // len(weeks), sum(one.high for one in tension) // len(weeks)),
        kcal=Span(min(one.low_kcal for one in burnt), max(one.high_kcal for one in burnt)),
        body_mass_kg=BODY_MASS_KG,
    )


def _lines(circuit: Circuit) -> Iterator[TypedLine]:
    for station in circuit.stations:
        movement = exercise(station.exercise)
        reps = timeline.reps_each(station)
        yield TypedLine(
            movement.name, station.sides, station.work_s, reps, movement.measure, station.load_hint, movement.loads_held
        )


def board_of_circuit(circuit: Circuit, *, dark: bool) -> Board:
    """The board of a circuit with the coach's own loads."""
    lines = (
        BoardLine(
            exercise=line.exercise,
            group=group_of(exercise(station.exercise)),
            load=line.load if line.loads_held else None,
            loads_held=line.loads_held,
            sides=line.sides,
            work_s=line.work_s,
            reps=line.reps,
            measure=line.measure,
            clock_s=timeline.station_work_s(station),
            rest_s=rest_s,
        )
        for line, station, rest_s in zip(_lines(circuit), circuit.stations, rests_s(circuit), strict=True)
    )
    return Board(
        circuit=circuit.name,
        rounds=circuit.rounds,
        lines=tuple(lines),
        rest_s=circuit.rest_s,
        rest_between_rounds_s=circuit.rest_between_rounds_s,
        warm_up_s=circuit.warm_up_s,
        total_s=timeline.total_s(circuit),
        dark=dark,
    )


def list_circuits(desk: Desk) -> CircuitsListed:
    """Every circuit in a line."""
    return CircuitsListed(tuple(map(_listed, desk.circuits)))


def _listed(circuit: Circuit) -> ListedCircuit:
    total_s = timeline.total_s(circuit)
    return ListedCircuit(circuit.name, len(circuit.stations), circuit.rounds, round(total_s.low / 60), round(total_s.high / 60))


def show_plans(desk: Desk, now: datetime) -> Iterator[CoachMessage]:
    """What is on for everyone, and a week of each plan that somebody has."""
    yield PlansShown(tuple(_plan_of(client, now) for client in desk.clients))
    blocks = [client.on(now)[1] for client in desk.clients]
    for weeks in dict.fromkeys(weeks_of(block) for block in blocks if block is not None):
        yield week_shown(weeks, assumed=False)


def _plan_of(client: Client, now: datetime) -> TraineePlan:
    circuit, block = client.on(now)
    today, coming = local_date(now, client.zone), client.trainee.coming
    comes = None if coming is None or coming.from_on <= today else (coming.circuit.name, coming.from_on)
    if block is None:
        return TraineePlan(client.name, (circuit.name,), (), None, None, circuit.name, None, comes)
    due = circuit_due(block, client.diary, today, client.zone, client.trainee.reminders)
    names = tuple(circuit.name for circuit in block.circuits)
    return TraineePlan(client.name, names, block.days, due.week, due.weeks, due.circuit.name, due.on, comes)
