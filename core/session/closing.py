"""The end of a workout: what was done, against the last time, and what changes next."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from core.catalogue import exercise
from core.diary import Ending, SetRecord, WorkoutClosed
from core.messages import BestSet, EffortAsked, NextChange, Summary, SummaryLine
from core.session.cues import going_on
from core.session.lines import line_of
from core.session.loads import change_of
from core.session.places import exercise_at, from_now_on
from core.session.prescription import advise
from core.session.states import Asking, Idle, Place, Running, Working

if TYPE_CHECKING:
    from core.session.states import Workout
    from core.session.turn import Turn


def close(state: Running, ending: Ending, turn: Turn, *, quietly: bool = False) -> Idle:
    """End the workout, keeping everything; `quietly` leaves the summary out."""
    workout = state.workout
    if isinstance(state, Working):
        until = turn.now if state.ends_at is None else min(turn.now, state.ends_at)
        workout = replace(workout, work_s=workout.work_s + max(0, round((until - state.started_at).total_seconds())))
    workout = going_on(workout, turn.now)
    turn.keep(WorkoutClosed(workout.number, turn.now, ending, workout.work_s, workout.paused_s))
    asking = None
    if not quietly:
        turn.say(_summary(turn, workout, ending))
        if ending in (Ending.COMPLETE, Ending.EARLY) and turn.sets_of(workout):
            turn.say(EffortAsked())
            asking = Asking.EFFORT
    return Idle(replace(workout, question=None, asking=None), asking)


def _summary(turn: Turn, workout: Workout, ending: Ending) -> Summary:
    done = turn.sets_of(workout)
    slugs = list(dict.fromkeys(record.exercise for record in sorted(done, key=lambda record: record.station)))
    lines = tuple(_line(turn, workout, slug, done) for slug in slugs)
    return Summary(
        circuit=workout.circuit.name,
        ending=ending,
        lines=lines,
        work_s=workout.work_s,
        total_s=round((turn.now - workout.started_at).total_seconds()),
        best=_best(done),
        changes=_changes(turn, workout, done),
        missing=len(workout.open),
        first_time=all(record.workout == workout.number for record in turn.sets()),
    )


def _line(turn: Turn, workout: Workout, slug: str, done: tuple[SetRecord, ...]) -> SummaryLine:
    before = [record for record in turn.sets() if record.exercise == slug and record.workout < workout.number]
    last = [record for record in before if record.workout == before[-1].workout]
    return SummaryLine(
        exercise(slug).name,
        tuple(line_of(record) for record in sorted(done, key=_order) if record.exercise == slug),
        tuple(line_of(record) for record in sorted(last, key=_order)),
    )


def _order(record: SetRecord) -> tuple[int, int, int]:
    return (record.round, record.station, record.number)


def _best(done: tuple[SetRecord, ...]) -> BestSet | None:
    """The set that asks most strength: load times (1 + reps / 30), Epley's form; only loaded sets compare."""
    loaded = [record for record in done if record.load is not None and record.load.amount and record.reps]
    if not loaded:
        return None
    best = max(loaded, key=lambda record: 0 if record.load is None else record.load.kg * (30 + (record.reps or 0)))
    return BestSet(exercise(best.exercise).name, line_of(best))


def _changes(turn: Turn, workout: Workout, done: tuple[SetRecord, ...]) -> tuple[NextChange, ...]:
    """The loads and tempos that will differ from the last set of this workout."""
    workout, changes = from_now_on(workout), []
    for station in range(1, len(workout.circuit.stations) + 1):
        movement = exercise_at(workout, Place(1, station))
        last = next((record.load for record in reversed(done) if record.exercise == movement.slug and record.reps), None)
        if last is None or not last.amount:
            continue
        coming, shown = advise(turn, workout, Place(1, station), next_workout=True), workout.prescriptions[station - 1]
        load, tempo = coming.prescription.load, coming.prescription.tempo
        paced = None if shown is None or shown.exercise != movement.slug or shown.tempo == tempo else tempo
        if load is not None and (load.kg != last.kg or paced is not None):
            changes.append(NextChange(movement.name, load, change_of(last, load), paced))
    return tuple(changes)
