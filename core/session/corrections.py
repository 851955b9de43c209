"""What is noted already, said anew: the same again, something added, put right, or taken away."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from core.circuit import Side
from core.diary import SetUndone
from core.messages import AlreadyNoted, Corrected, NoSuchNumber, NotDoneYet, NothingToCorrect, NotUnderstood, Undone
from core.reading import read
from core.reading.acts import Amend, Awaiting, Context, Log
from core.session.asking_back import ask_about
from core.session.belonging import SIDES, with_workout, workout_of
from core.session.lines import filled, line_of, record_of
from core.session.places import exercise_at, sided, whole
from core.session.read_back import say_noted
from core.session.states import Choice, Closing, Paused, Place, Question, Working
from core.units import Load

if TYPE_CHECKING:
    from collections.abc import Sequence
    from decimal import Decimal

    from core.diary import SetRecord
    from core.session.states import Idle, Running, Workout
    from core.session.turn import Turn


def amend(state: Running | Idle, act: Amend, turn: Turn) -> Running | Idle:
    """Correct the set noted last: a new record that replaces it."""
    workout = workout_of(state)
    done = () if workout is None else turn.sets_of(workout)
    if act.side is not None:
        sided_ones = tuple(record for record in done if record.side in (act.side, Side.EACH))
        if done and not sided_ones:
            turn.say(NotUnderstood("reps"))  # "10 on the left" of a set without sides
            return state
        done = sided_ones
    if workout is None or not done:
        turn.say(NothingToCorrect())
        return state
    last = done[-1]
    if act.rejected is not None:
        found = _with_number(done, act.rejected, act)
        if found is None:
            turn.say(NoSuchNumber(act.rejected, _name_of(workout, last), line_of(last)))
            return state
        last = found
    load = last.load
    if act.load is not None:
        load = Load(act.load, act.unit or turn.plan.trainee.unit)
    changed = replace(
        last,
        at=turn.now,
        reps=last.reps if act.reps is None else act.reps,
        load=load,
        reserve=last.reserve if act.reserve is None else act.reserve,
        rpe=last.rpe if act.rpe is None else act.rpe,
        seconds=last.seconds if act.seconds is None else act.seconds,
        replaces=last.number,
    )
    if act == Amend(reserve=act.reserve, rpe=act.rpe) and last.reserve is None and last.rpe is None:
        place = Place(last.round, last.station)
        say_noted(turn, state, place, [turn.note(changed)])  # something added, nothing put right
        return state
    if act.side in (Side.LEFT, Side.RIGHT) and last.side is Side.EACH:
        return _side_apart(state, last, replace(changed, side=act.side), turn)
    return put_right(state, last, changed, turn)


def _side_apart(state: Running | Idle, last: SetRecord, changed: SetRecord, turn: Turn) -> Running | Idle:
    """One side of a set told for both is put right: the other side stays what it was, in a record of its own."""
    turn.keep(SetUndone(last.number, turn.now))
    other = replace(last, side=Side.RIGHT if changed.side is Side.LEFT else Side.LEFT)
    told = sorted((changed, other), key=lambda record: record.side is Side.RIGHT)
    records = [turn.note(replace(record, number=0, at=turn.now, replaces=None)) for record in told]
    say_noted(turn, state, Place(last.round, last.station), records)
    workout = workout_of(state)
    return state if workout is None else with_workout(state, replace(workout, question=None))


def _with_number(done: Sequence[SetRecord], rejected: Decimal, act: Amend) -> SetRecord | None:
    """The latest set that holds the number said to be wrong: its reps, or its load when that is what changes."""
    for record in reversed(done):
        known = record.reps if act.load is None else (None if record.load is None else record.load.amount)
        if known == rejected:
            return record
    return None


def _name_of(workout: Workout, record: SetRecord) -> str:
    return exercise_at(workout, Place(record.round, record.station)).name


def put_right(state: Running | Idle, last: SetRecord, changed: SetRecord, turn: Turn) -> Running | Idle:
    """Keep the changed record in the place of the last, and read both back."""
    workout = workout_of(state)
    turn.note(changed)
    state = state if workout is None else with_workout(state, replace(workout, question=None))
    if workout is not None:
        turn.say(Corrected(_name_of(workout, last), line_of(last), line_of(changed)))
    return state


def undo(state: Running | Idle, turn: Turn) -> Running | Idle:
    """Take the set noted last away; its place is open again."""
    workout = workout_of(state)
    done = () if workout is None else turn.sets_of(workout)
    if workout is None or not done:
        turn.say(NothingToCorrect())
        return state
    last = done[-1]
    place = Place(last.round, last.station, last.side if last.side in (Side.LEFT, Side.RIGHT) else None)
    turn.keep(SetUndone(last.number, turn.now))
    turn.say(Undone(exercise_at(workout, place).name, line_of(last)))
    return with_workout(state, replace(workout, open=(*workout.open, place), question=None))


def said_again(state: Running | Idle, logs: Sequence[Log], turn: Turn) -> Running | Idle:
    """A report when nothing is missing: the same one twice, something to add, or a correction to ask about."""
    workout = workout_of(state)
    done = () if workout is None else turn.sets_of(workout)
    if workout is None:
        return state
    if not done:
        running = isinstance(state, Working | Paused)
        first = NotDoneYet(exercise_at(workout, whole(workout.place)).name, running)
        turn.say(NothingToCorrect() if isinstance(state, Closing) else first)
        return state
    last, log = done[-1], logs[-1]
    place = Place(last.round, last.station)
    if {said.side for said in logs} == {Side.LEFT, Side.RIGHT} and len(logs) == SIDES and sided(workout, place):
        return _sides_again(state, place, logs, turn)
    if log.side in (Side.LEFT, Side.RIGHT):
        return amend(state, Amend(log.reps, log.load, log.unit, log.side, log.reserve, log.rpe, log.seconds), turn)
    if log.reps is None and log.load is None and log.seconds is None and (log.reserve is not None or log.rpe is not None):
        return amend(state, Amend(reserve=log.reserve, rpe=log.rpe), turn)
    meant = record_of(turn, workout, place, filled(turn, workout, place, log))
    if all(equal_said(meant, last, name) for name in ("reps", "load", "seconds", "reserve")):
        turn.say(AlreadyNoted(line_of(last)))
        return state
    log = replace(log, reps=last.reps if log.reps is None else log.reps)
    if log.load is None and last.load is not None:
        log = replace(log, load=last.load.amount, unit=last.load.unit)
    kept = Log(
        reps=last.reps,
        load=None if last.load is None else last.load.amount,
        unit=None if last.load is None else last.load.unit,
        seconds=last.seconds,
        side=last.side,
    )
    choices = [Choice(log, place, last.number), Choice(kept, place, last.number)]
    if isinstance(state, Working):
        choices.append(Choice(logs[-1], whole(workout.place)))
    return ask_about(state, Question(place, 1, tuple(choices)), turn)


def _sides_again(state: Running | Idle, place: Place, logs: Sequence[Log], turn: Turn) -> Running | Idle:
    """Both sides told apart after the set was noted: that is the better report, and takes the place of the first."""
    workout = workout_of(state)
    if workout is None:
        return state
    for record in turn.sets_at(workout, place):
        turn.keep(SetUndone(record.number, turn.now))
    say_noted(turn, state, place, [turn.note(record_of(turn, workout, place, log)) for log in logs])
    return state


def add_to_last(state: Running | Idle, text: str, turn: Turn) -> Running | Idle | None:
    """A few words that only mean something after a set ("2 left", "at 12kg") end the last report; None when they do not."""
    workout = workout_of(state)
    done = () if workout is None else turn.sets_of(workout)
    if not done or done[-1].reps is None:
        return None
    match read(f"{done[-1].reps} reps, {text}", Context(unit=turn.plan.trainee.unit, awaiting=Awaiting.REPS)):
        case (Log(reps=reps, side=None, seconds=None, same=False) as log,) if reps == done[-1].reps:
            if log.load is not None and not _is_a_load_alone(text):
                return None  # "hold her squat at 12 kg"
            if not (log.load is None and log.reserve is None and log.rpe is None):
                return amend(state, Amend(load=log.load, unit=log.unit, reserve=log.reserve, rpe=log.rpe), turn)
    return None


def _is_a_load_alone(text: str) -> bool:
    """Whether a text is nothing but a load led in: "at 12 kg", "with 12s"."""
    words = text.lower().split()
    return words[0] in {"at", "@", "with", "w/", "using"} and len(words) <= len(("at", "12", "kg"))


def equal_said(meant: SetRecord, last: SetRecord, name: str) -> bool:
    """Whether a field says nothing new."""
    said, known = getattr(meant, name), getattr(last, name)
    if isinstance(said, Load) and isinstance(known, Load):
        return said.kg == known.kg
    return said is None or said == known
