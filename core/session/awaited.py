"""What is awaited in a state, and a text read in that light."""

from __future__ import annotations

from typing import TYPE_CHECKING

from core.exercise import Measure
from core.reading import read
from core.reading.acts import Answer, Awaiting, Context, LastSet, Unclear
from core.reading.calendar_talk import calendar_talk
from core.session.belonging import place_asked, workout_of
from core.session.places import exercise_at, sided
from core.session.states import (
    AskingCautions,
    AskingMore,
    AskingPairs,
    AskingRack,
    AskingUnit,
    Idle,
    New,
    Paused,
    Resting,
    Running,
    SettingUp,
    WarmingUp,
    Working,
)

if TYPE_CHECKING:
    from core.diary import SetRecord
    from core.reading.acts import Act
    from core.session.states import State
    from core.session.turn import Turn


def read_in(state: State, text: str, turn: Turn) -> tuple[Act, ...]:
    """Read a text in the light of what is awaited; a full report also counts where a choice was offered.

    Between workouts what is said of days and zones is looked for first; a bare place answers "where are you?" when it is nothing
    else.
    """
    if isinstance(state, Idle) and (said := calendar_talk(text, turn.today)) is not None:
        return (said,)
    workout = workout_of(state) if isinstance(state, Running | Idle) else None
    if workout is not None and workout.question is not None and workout.question.choices:
        count = len(workout.question.choices)
        acts = read(text, Context(unit=turn.plan.trainee.unit, awaiting=Awaiting.CHOICE, choices=count))
        if any(isinstance(act, Answer) and act.choice is not None for act in acts):
            return acts
    acts = read(text, context_of(state, turn))
    if isinstance(state, Idle) and state.asked == "zone" and all(isinstance(act, Unclear) for act in acts):
        place = calendar_talk(text, turn.today, zone_asked=True)
        return acts if place is None else (place,)
    return acts


def context_of(state: State, turn: Turn) -> Context:
    """What is awaited in a state, for the reader."""
    unit = turn.plan.trainee.unit
    match state:
        case New() | AskingCautions():
            return Context(awaiting=Awaiting.YES)
        case AskingUnit():
            return Context(awaiting=Awaiting.UNIT)
        case AskingRack():
            return Context(unit=unit, awaiting=Awaiting.RACK)
        case AskingPairs() | AskingMore():
            return Context(unit=unit, awaiting=Awaiting.YES)
        case _:
            return _workout_context(state, turn)


def _last_set(record: SetRecord) -> LastSet:
    load = record.load
    return LastSet(
        record.reps, None if load is None else load.amount, None if load is None else load.unit, record.side, record.seconds
    )


def _workout_context(state: Running | Idle, turn: Turn) -> Context:
    unit, zone = turn.plan.trainee.unit, turn.plan.trainee.zone
    workout, place = workout_of(state), place_asked(state, turn)
    quiet = Awaiting.GO if isinstance(state, Idle | SettingUp | Paused | WarmingUp) else Awaiting.NONE
    if workout is None:
        return Context(unit=unit, awaiting=quiet, today=turn.today.isoformat(), zone=zone)
    done = turn.sets_of(workout)
    last = _last_set(done[-1]) if done else None
    if place is None:
        told = Awaiting.REPS if done and isinstance(state, Resting | Working) else quiet  # a bare number corrects, or comes twice
        held = last is not None and last.reps is None
        return Context(unit=unit, awaiting=told, last=last, today=turn.today.isoformat(), zone=zone, hold=held)
    prescribed = workout.prescriptions[place.station - 1]
    movement = exercise_at(workout, place)
    wanted = None if prescribed is None or prescribed.load is None else prescribed.load.in_unit(unit)
    hold = movement.measure is not Measure.REPS
    station = workout.circuit.stations[place.station - 1]
    return Context(
        unit=unit,
        load=wanted or None,
        target=station.work_s if hold else (None if prescribed is None else prescribed.reps_high),
        sides=sided(workout, place),
        awaiting=Awaiting.REPS if workout.open or not isinstance(state, Idle) else quiet,
        last=last,
        today=turn.today.isoformat(),
        zone=zone,
        hold=hold,
    )
