"""What is asked back about a report: the part that is missing, or which of the likely meanings it has.

Asked at most twice; then the set stays open and can be given later.
"""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from core.messages import ChoiceLine, LeftOpen, NotUnderstood, PartMissing, SetLine, SetNotRead, WhichOne
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
    from core.session.states import Idle, Place, Running, Workout
    from core.session.turn import Turn

ASKED_MAX = 2  # a question is asked at most twice


def ask_part(state: Running | Idle, place: Place, part: Log, turn: Turn) -> Running | Idle:
    """Keep what was said of a set that came without its reps (or seconds), and ask for them."""
    workout = workout_of(state)
    if workout is None:
        return state
    times = _times(workout, place)
    if times > ASKED_MAX:
        return _leave_open(with_workout(state, replace(workout, question=Question(place, times, part=part))), place, turn)
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
    if not choices and place in workout.left_open:
        turn.say(NotUnderstood("reps"))
        return state
    times = _times(workout, place)
    if times > ASKED_MAX:
        return _leave_open(state, place, turn)
    part = None if choices else part_of(workout, place)
    return ask_about(state, Question(place, times, tuple(Choice(log, place) for log in choices), part), turn)


def part_of(workout: Workout, place: Place) -> Log | None:
    """What has been said already of the set that is missing at a place."""
    asked = _asked_at(workout, place)
    return None if asked is None else asked.part


def _times(workout: Workout, place: Place) -> int:
    """How often a place will have been asked about when it is asked about again."""
    asked = _asked_at(workout, place)
    return 1 if asked is None else asked.times + 1


def _asked_at(workout: Workout, place: Place) -> Question | None:
    """The question that is open, when it is about a place."""
    asked = workout.question
    same = asked is not None and (asked.place.round, asked.place.station) == (place.round, place.station)
    return asked if same else None


def _choice_line(turn: Turn, workout: Workout, choice: Choice) -> ChoiceLine:
    return ChoiceLine(exercise_at(workout, choice.place).name, log_line(turn, workout, choice.place, choice.log))


def ask_about(state: Running | Idle, question: Question, turn: Turn) -> Running | Idle:
    """Ask which of the likely meanings it is, or for the report anew where there are none."""
    workout = workout_of(state)
    if workout is None:
        return state
    movement = exercise_at(workout, question.place)
    apart = {_choice_line(turn, workout, choice): choice for choice in question.choices}
    question = replace(question, choices=tuple(apart.values()) if len(apart) > 1 else ())  # nobody picks one of two equals
    if question.choices:
        turn.say(WhichOne(tuple(_choice_line(turn, workout, choice) for choice in question.choices)))
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
    part = part_of(workout, place)  # "12kg" counts when the reps come later
    question = None if part is None else Question(place, 0, part=part)
    left = (*workout.left_open, place)
    rest = with_workout(state, replace(workout, question=question, left_open=left, unanswered=0))
    if isinstance(rest, Closing):
        return close(rest, rest.ending, turn)
    return rest
