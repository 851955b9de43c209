"""What is said without being asked, between workouts: each thing that is due is said once, or dropped for a reason."""

from __future__ import annotations

from typing import TYPE_CHECKING

from core.agenda import days_since
from core.diary import Unasked, UnaskedKind, UnaskedNoted
from core.exercise import Measure
from core.messages import ComeBack, FollowUp, NextChange, Reminder
from core.reminders import next_due, seen_to, worthless_after
from core.session.opening import opened, whole_s
from core.session.places import exercise_at
from core.session.prescription import advise
from core.session.states import Place, Running

if TYPE_CHECKING:
    from datetime import datetime

    from core.messages import Message
    from core.session.states import State, Workout
    from core.session.turn import Turn


def see_to(state: State, turn: Turn) -> datetime | None:
    """See to everything that is due by now; returns when the next thing is due (UTC), None when nothing is."""
    running = isinstance(state, Running)
    while True:
        trainee, history = turn.clock_setting()
        due = next_due(trainee, history)
        if due is None or due.at > turn.now:
            return None if due is None else due.at
        record = seen_to(due, trainee, history, turn.now, running=running)
        turn.keep(UnaskedNoted(record))
        if record.dropped is None:
            turn.say(_message(record, turn), worthless_after(record, trainee.zone))


def _message(record: Unasked, turn: Turn) -> Message:
    workout = opened(turn)
    circuit, minutes = workout.circuit, round(whole_s(workout)[1] / 60)
    match record.kind:
        case UnaskedKind.REMINDER | UnaskedKind.SNOOZE:
            return Reminder(circuit.name, circuit.rounds, minutes, _change(turn, workout))
        case UnaskedKind.FOLLOW_UP:
            return FollowUp(circuit.name, minutes)
        case UnaskedKind.COME_BACK:
            days_off = days_since(turn.history.workouts, turn.plan.trainee.zone, turn.today)
            return ComeBack(
                circuit.name, circuit.rounds, minutes, eased=circuit.rounds < turn.plan.circuit.rounds, days_off=days_off
            )


def _change(turn: Turn, workout: Workout) -> NextChange | None:
    """The one thing that is different from the last time: a heavier load first, else a lighter one."""
    changes, known = [], {record.exercise for record in turn.sets()}
    for station in range(1, len(workout.circuit.stations) + 1):
        movement = exercise_at(workout, Place(1, station))
        if movement.slug not in known or movement.measure is not Measure.REPS or not movement.loads_held:
            continue
        advice = advise(turn, workout, Place(1, station))
        load = advice.prescription.load
        if load is not None and advice.change in ("up", "down"):
            changes.append(NextChange(movement.name, load, advice.change, None))
    return next((change for change in changes if change.change == "up"), changes[0] if changes else None)
