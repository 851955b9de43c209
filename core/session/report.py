"""Reports of sets, as they are told or picked from the meanings offered: what is kept."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from core.messages import AlreadyNoted, NothingToCorrect, TooManySets
from core.rack import Rack
from core.reading.acts import Amend, Log
from core.session.asking_back import ask_part, ask_unclear, part_of
from core.session.belonging import closed_places, place_asked, spread_out, with_workout, workout_of
from core.session.corrections import amend, equal_said, put_right, said_again
from core.session.lines import filled, line_of, record_of
from core.session.places import exercise_at, sided
from core.session.read_back import read_back
from core.session.ring import asked_for
from core.units import Load

if TYPE_CHECKING:
    from collections.abc import Sequence
    from typing import Literal

    from core.session.states import Choice, Idle, Place, Running, Workout
    from core.session.turn import Turn


def take_logs(
    state: Running | Idle, logs: Sequence[Log], turn: Turn, felt: Literal["heavy", "light"] | None = None
) -> Running | Idle:
    """Keep what was reported, or ask about it; the clock goes on meanwhile.

    `felt` is what was said of the load in the same breath; it counts for the next time at that station.
    """
    workout = workout_of(state)
    place = place_asked(state, turn)
    if workout is None:
        return state
    if place is None:
        return said_again(state, logs, turn)
    place = _place_with_sides(workout, place, logs)
    part = part_of(workout, place)
    if part is not None and len(logs) == 1:
        logs = (_merged(part, logs[0]),)
    elif len(logs) == 1 and _is_of_the_last(workout, place, logs[0], turn):
        return amend(state, Amend(load=logs[0].load, unit=logs[0].unit), turn)
    logs = tuple(filled(turn, workout, place, log) for log in logs)
    incomplete = next((log for log in logs if not _complete(workout, place, log)), None)
    if incomplete is not None:
        return ask_part(state, place, incomplete, turn)
    spread = spread_out(workout, place, logs)
    if spread is None:
        turn.say(TooManySets(exercise_at(workout, place).name, len(logs)))
        return state
    records = [turn.note(record_of(turn, workout, at, log)) for at, log in spread]
    workout = closed_places(workout, spread, felt)
    return read_back(with_workout(state, workout), records, turn)


def correct(state: Running | Idle, act: Amend, turn: Turn) -> Running | Idle:
    """Take a correction: of the report that is asked about, when one is; else of the set noted last."""
    workout, place = workout_of(state), place_asked(state, turn)
    if workout is None or place is None:
        return amend(state, act, turn)
    log = Log(act.reps, act.load, act.unit, act.side, act.reserve, act.rpe, act.seconds)
    asked = workout.question is not None and all(choice.replaces is None for choice in workout.question.choices)
    first = not turn.sets_of(workout)  # "11 not 12", and there is no set to put right
    if first or (asked and act.rejected is None and log.side in (None, place.side)) or _tells_a_side(workout, place, act, turn):
        return take_logs(state, (log,), turn)
    return amend(state, act, turn)


def _tells_a_side(workout: Workout, place: Place, act: Amend, turn: Turn) -> bool:
    """Whether a side is told where sides are missing, and the set noted last has none: "oh, I meant ten on the left"."""
    done = turn.sets_of(workout)
    return act.side is not None and sided(workout, place) and not (done and done[-1].side)


def take_unclear(state: Running | Idle, choices: Sequence[Log], turn: Turn) -> Running | Idle:
    """A report with several meanings: kept when only one of them has a load that the trainee owns, else asked about."""
    owned = {load.kg for load in (turn.plan.trainee.rack or Rack()).loads(1)}
    unit = turn.plan.trainee.unit
    ours = [log for log in choices if log.load is not None and Load(log.load, log.unit or unit).kg in owned]
    if len(ours) == 1 and all(log.load is not None for log in choices):
        return take_logs(state, ours, turn)
    return ask_unclear(state, choices, turn)


def _place_with_sides(workout: Workout, place: Place, logs: Sequence[Log]) -> Place:
    """The place a report is for: sides are of a station that has some, when one is missing and the one asked about has none."""
    if sided(workout, place) or all(log.side is None for log in logs):
        return place
    return next((one for one in reversed(workout.open) if sided(workout, one)), place)


def _is_of_the_last(workout: Workout, place: Place, log: Log, turn: Turn) -> bool:
    """Whether a load alone is of the set noted last: the place that is still missing came before it."""
    done = turn.sets_of(workout)
    later = bool(done) and (done[-1].round, done[-1].station) > (place.round, place.station)
    return later and log == Log(load=log.load, unit=log.unit)


def _merged(part: Log, log: Log) -> Log:
    """What was said before, with what is said now on top."""
    names = ("reps", "load", "unit", "side", "reserve", "rpe", "seconds")
    said = {name: getattr(log, name) for name in names if getattr(log, name) is not None}
    return replace(part, same=part.same or log.same, **said)


def _complete(workout: Workout, place: Place, log: Log) -> bool:
    return log.reps is not None if asked_for(workout, place) == "reps" else log.seconds is not None


def choose(state: Running | Idle, number: int, turn: Turn) -> Running | Idle:
    """One of the offered meanings was picked (from 1)."""
    workout = workout_of(state)
    question = None if workout is None else workout.question
    if workout is None or question is None or not 1 <= number <= len(question.choices):
        return state
    choice = question.choices[number - 1]
    state = with_workout(state, replace(workout, question=None, unanswered=0))
    if choice.replaces is None:
        return _take_at(state, choice, turn)
    last = next((record for record in turn.sets() if record.number == choice.replaces), None)
    if last is None:  # corrected or taken away since it was asked
        turn.say(NothingToCorrect())
        return state
    changed = record_of(turn, workout, choice.place, choice.log, replaces=last.number)
    if all(equal_said(changed, last, name) for name in ("reps", "load", "seconds")):
        turn.say(AlreadyNoted(line_of(last)))
        return state
    return put_right(state, last, replace(changed, side=last.side), turn)


def _take_at(state: Running | Idle, choice: Choice, turn: Turn) -> Running | Idle:
    """Keep a report at the place that was picked for it."""
    workout = workout_of(state)
    if workout is None:
        return state
    record = turn.note(record_of(turn, workout, choice.place, choice.log))
    workout = closed_places(workout, [(choice.place, choice.log)], None)
    return read_back(with_workout(state, workout), [record], turn)
