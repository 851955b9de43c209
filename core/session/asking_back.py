"""What is asked back about a report: the part that is missing, or which of the likely meanings it has.

Asked at most twice; then the set stays open and can be given later.
"""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from core.messages import ChoiceLine, LeftOpen, PartMissing, SetLine, SetNotRead, WhichOne
from core.session.belonging import place_asked, with_workout, workout_of
from core.session.closing import close
from core.session.lines import log_line
from core.session.places import exercise_at
from core.session.ring import asked_for
from core.session.states import Choice, Closing, Question
from core.units import Load

if TYPE_CHECKING:
    from collections.abc import Sequence

    from core.reading.acts import Log
    from core.session.states import Idle, Place, Running
    from core.session.turn import Turn

ASKED_MAX = 2  # a question is asked at most twice


def ask_part(state: Running | Idle, place: Place, part: Log, turn: Turn) -> Running | Idle:
    """Keep what was said of a set that came without its reps (or seconds), and ask for them."""
    workout = workout_of(state)
    if workout is None:
        return state
    times = 1 if workout.question is None else workout.question.times + 1
    if times > ASKED_MAX:
        return _leave_open(state, place, turn)
    turn.say(PartMissing(exercise_at(workout, place).name, _said_line(turn, part), asked_for(workout, place)))
    return with_workout(state, replace(workout, question=Question(place, times, part=part), unanswered=0))


def _said_line(turn: Turn, part: Log) -> SetLine:
    load = None if part.load is None else Load(part.load, part.unit or turn.plan.trainee.unit)
    return SetLine(part.reps, load, part.side, part.reserve, part.rpe, part.seconds)


def ask_unclear(state: Running | Idle, choices: Sequence[Log], turn: Turn) -> Running | Idle:
    """A report could mean several things, or could not be read: ask once, then once more, then leave it open."""
    workout, place = workout_of(state), place_asked(state, turn)
    if workout is None or place is None:
        return state
    times = 1 if workout.question is None else workout.question.times + 1
    if times > ASKED_MAX:
        return _leave_open(state, place, turn)
    return ask_about(state, Question(place, times, tuple(Choice(log, place) for log in choices)), turn)


def ask_about(state: Running | Idle, question: Question, turn: Turn) -> Running | Idle:
    """Ask which of the likely meanings it is, or for the report anew where there are none."""
    workout = workout_of(state)
    if workout is None:
        return state
    movement = exercise_at(workout, question.place)
    if question.choices:
        lines = [
            ChoiceLine(exercise_at(workout, choice.place).name, log_line(turn, workout, choice.place, choice.log))
            for choice in question.choices
        ]
        turn.say(WhichOne(tuple(lines)))
    else:
        prescribed = workout.prescriptions[question.place.station - 1]
        load = None if prescribed is None or not movement.loads_held else prescribed.load
        wanted = asked_for(workout, question.place)
        example = SetLine(reps=11, load=load) if wanted == "reps" else SetLine(seconds=40)
        turn.say(SetNotRead(movement.name, wanted, example))
    return with_workout(state, replace(workout, question=question, unanswered=0))


def _leave_open(state: Running | Idle, place: Place, turn: Turn) -> Running | Idle:
    """Asked often enough: the set is not noted, and can be given later."""
    workout = workout_of(state)
    if workout is None:
        return state
    turn.say(LeftOpen(exercise_at(workout, place).name))
    rest = with_workout(state, replace(workout, question=None, unanswered=0))
    if isinstance(rest, Closing):
        return close(rest, rest.ending, turn)
    return rest
