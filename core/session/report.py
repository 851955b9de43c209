"""Reports of sets: where each belongs, what is kept, what is asked back.

A report goes to the station asked about last; while a station is under work and nothing is missing, to that station. What could
mean two things is asked about with the likely meanings offered, at most twice; then the set stays open and can be given later.
"""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, Literal

from core.circuit import Side
from core.diary import SetRecord, SetUndone
from core.messages import (
    AlreadyNoted,
    ChoiceLine,
    Corrected,
    FormPoint,
    LeftOpen,
    Lighter,
    NoSuchNumber,
    Noted,
    NothingToCorrect,
    OtherSideAsked,
    PartMissing,
    SetLine,
    SetNotRead,
    Slower,
    TooManySets,
    Undone,
    WhichOne,
)
from core.reading import read
from core.reading.acts import Amend, Awaiting, Context, Log
from core.session.closing import close
from core.session.lines import line_of, log_line, record_of
from core.session.loads import change_of
from core.session.places import exercise_at, sided, station_at, whole
from core.session.prescription import advise
from core.session.ring import asked_for, finish_side, put_down, show_in_rest, worked_s
from core.session.states import (
    Choice,
    Closing,
    Idle,
    Place,
    Question,
    Resting,
    Running,
    Working,
    Workout,
)
from core.tempo import whole_reps
from core.units import Load

if TYPE_CHECKING:
    from collections.abc import Sequence
    from decimal import Decimal

    from core.session.turn import Turn
    from core.tempo import Tempo

ASKED_MAX = 2  # a question is asked at most twice
SIDES = 2


def place_asked(state: Running | Idle, turn: Turn) -> Place | None:
    """The place a report is for, None when there is none to report."""
    workout = workout_of(state)
    if workout is None:
        return None
    if workout.open:
        return workout.open[-1]
    if isinstance(state, Working) and _well_begun(state, turn):
        done = [record.side for record in turn.sets_at(workout, workout.place)]
        return None if workout.place.side in done or Side.EACH in done else workout.place
    return None


def _well_begun(state: Working, turn: Turn) -> bool:
    """Whether a report can be about the work under way: not before half of it is done."""
    if state.ends_at is None:
        return True
    return turn.now - state.started_at >= (state.ends_at - state.started_at) / 2


def workout_of(state: Running | Idle) -> Workout | None:
    """The workout under way, or the one that ended last."""
    return state.last if isinstance(state, Idle) else state.workout


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
        return _again(state, logs, turn)
    asked = workout.question
    if asked is not None and asked.part is not None and len(logs) == 1:
        logs = (_merged(asked.part, logs[0]),)
        place = asked.place
    logs = tuple(_filled(turn, workout, place, log) for log in logs)
    incomplete = next((log for log in logs if not _complete(workout, place, log)), None)
    if incomplete is not None:
        return _ask_part(state, place, incomplete, turn)
    spread = _spread(workout, place, logs)
    if spread is None:
        turn.say(TooManySets(exercise_at(workout, place).name, len(logs)))
        return state
    records = [turn.note(record_of(turn, workout, at, log)) for at, log in spread]
    workout = _closed_places(workout, spread, felt)
    return _read_back(with_workout(state, workout), records, turn)


def _merged(part: Log, log: Log) -> Log:
    """What was said before, with what is said now on top."""
    names = ("reps", "load", "unit", "side", "reserve", "rpe", "seconds")
    said = {name: getattr(log, name) for name in names if getattr(log, name) is not None}
    return replace(part, same=part.same or log.same, **said)


def _filled(turn: Turn, workout: Workout, place: Place, log: Log) -> Log:
    """Fill in what "same again" stands for, from the last set of this exercise."""
    if not log.same:
        return log
    slug = exercise_at(workout, place).slug
    last = next((record for record in reversed(turn.sets()) if record.exercise == slug), None)
    if last is None:
        return log
    load = log.load if log.load is not None or last.load is None else last.load.in_unit(log.unit or last.load.unit)
    return replace(
        log,
        reps=last.reps if log.reps is None else log.reps,
        load=load,
        unit=log.unit or (None if last.load is None else last.load.unit),
        seconds=last.seconds if log.seconds is None else log.seconds,
    )


def _complete(workout: Workout, place: Place, log: Log) -> bool:
    return log.reps is not None if asked_for(workout, place) == "reps" else log.seconds is not None


def _spread(workout: Workout, place: Place, logs: Sequence[Log]) -> list[tuple[Place, Log]] | None:
    """Which log belongs to which place; None when there are more sets than places to put them.

    One log, or one for each side, is for the place itself; several are for the open places, oldest first.
    """
    if len(logs) == 1 or (sided(workout, place) and {log.side for log in logs} == {Side.LEFT, Side.RIGHT} and len(logs) == SIDES):
        return [(place, log) for log in logs]
    if len(logs) == len(workout.open) and all(log.side in (None, Side.EACH) for log in logs):
        return list(zip(workout.open, logs, strict=True))
    return None


def _closed_places(workout: Workout, spread: Sequence[tuple[Place, Log]], felt: Literal["heavy", "light"] | None) -> Workout:
    """The workout with the reported places no longer open; with one side reported, the other stays open."""
    taken = [place for place, _ in spread]
    opened = []
    for place in workout.open:
        if place not in taken:
            opened.append(place)
            continue
        sides = [log.side for at, log in spread if at == place]
        if place.side is None and sided(workout, place) and sides in ([Side.LEFT], [Side.RIGHT]):
            other = Side.RIGHT if sides == [Side.LEFT] else Side.LEFT
            opened.append(replace(place, side=other))
    stations = {place.station for place in taken}
    said = [pair for pair in workout.felt if pair[0] not in stations]
    if felt is not None:
        said += [(station, felt) for station in stations]
    return replace(workout, open=tuple(opened), question=None, unanswered=0, felt=tuple(said))


def _read_back(state: Running | Idle, records: Sequence[SetRecord], turn: Turn) -> Running | Idle:
    """Read the records back with the next load and one reminder, and go on as the state allows."""
    workout = workout_of(state)
    if workout is None:
        return state
    record = records[-1]
    place = Place(record.round, record.station)
    half = next((spot for spot in workout.open if whole(spot) == place and spot.side is not None), None)
    if half is not None and half.side is not None:
        turn.say(OtherSideAsked(line_of(record), half.side))
        return state
    say_noted(turn, state, place, records)
    return after_report(state, place, turn)


def after_report(state: Running | Idle, place: Place, turn: Turn) -> Running | Idle:
    """Go on after a report: show the next card, end a station that was reported early, or end the workout."""
    match state:
        case Resting(carded=False):
            return show_in_rest(state, turn)
        case Working(workout=workout) if whole(workout.place) == place and workout.place.side is None:
            over = replace(workout, work_s=workout.work_s + worked_s(state, turn.now))
            left_s = 0.0 if state.ends_at is None else (state.ends_at - turn.now).total_seconds()
            rest = put_down(over, turn.now, turn, extra_rest_s=left_s)
            return after_report(rest, place, turn) if isinstance(rest, Resting) else rest
        case Working(workout=workout) if whole(workout.place) == place and state.ends_at is None:
            if Side.EACH in {record.side for record in turn.sets_at(workout, place)}:
                over = replace(workout, work_s=workout.work_s + worked_s(state, turn.now))
                return put_down(over, turn.now, turn)
            return finish_side(state, turn.now, turn)
        case Closing(workout=workout, ending=ending) if not workout.open:
            return close(state, ending, turn)
        case _:
            return state


def say_noted(turn: Turn, state: Running | Idle, place: Place, records: Sequence[SetRecord]) -> None:
    """Read sets back in one line, with what comes next at that station and one reminder that fits."""
    workout, record = workout_of(state), min(records, key=lambda kept: kept.reps or 0)
    if workout is None:
        return
    rounds_left = place.round < workout.circuit.rounds
    load: Load | None = None
    change: Literal["up", "same", "down"] | None = None
    tempo: Tempo | None = None
    movement = exercise_at(workout, place)
    if movement.loads_held and record.load is not None:
        coming = replace(place, round=place.round + 1) if rounds_left else place
        coming_up = advise(turn, workout, coming, next_workout=not rounds_left).prescription
        load, shown = coming_up.load, workout.prescriptions[place.station - 1]
        change = None if load is None else change_of(record.load, load)
        if shown is not None and shown.exercise == movement.slug and shown.tempo != coming_up.tempo:
            tempo = coming_up.tempo
    turn.say(
        Noted(
            sets=tuple(line_of(kept) for kept in records),
            exercise=None if isinstance(state, Resting | Closing) and whole(place) == _just_done(state) else movement.name,
            next_load=load,
            next_when=None if load is None else ("round" if rounds_left else "time"),
            change=change,
            next_tempo=tempo,
            reminder=_reminder(workout, place, record, load),
        )
    )


def _just_done(state: Resting | Closing) -> Place:
    """The place before the one announced, or the last of all."""
    here, stations = state.workout.place, len(state.workout.circuit.stations)
    if isinstance(state, Closing):
        return whole(here)
    return Place(here.round, here.station - 1) if here.station > 1 else Place(here.round - 1, stations)


def _reminder(workout: Workout, place: Place, record: SetRecord, load: Load | None) -> Slower | Lighter | FormPoint | None:
    """One reminder: slower above the tempo's ceiling, lighter when short of the minute, else a form point."""
    station, movement = station_at(workout, place), exercise_at(workout, place)
    prescribed = workout.prescriptions[place.station - 1]
    tempo = None if prescribed is None else prescribed.tempo
    if record.reps is not None and tempo is not None and station.work_s is not None and prescribed is not None:
        ceiling = whole_reps(station.work_s, tempo.rep_s)
        if record.reps > ceiling:
            return Slower(record.reps, ceiling, tempo)
        if (
            prescribed.reps_low is not None
            and record.reps < prescribed.reps_low
            and movement.loads_held
            and record.load is not None
        ):
            easier = load is not None and load.kg < record.load.kg
            return Lighter(record.reps, prescribed.reps_low, load if easier else None)
    points = (station.form if movement.slug == station.exercise else ()) + movement.form
    return FormPoint(points[place.round % len(points)])


def _again(state: Running | Idle, logs: Sequence[Log], turn: Turn) -> Running | Idle:
    """A report when nothing is missing: the same one twice, something to add, or a correction to ask about."""
    workout = workout_of(state)
    done = () if workout is None else turn.sets_of(workout)
    if workout is None or not done:
        turn.say(NothingToCorrect())
        return state
    last, log = done[-1], logs[-1]
    place = Place(last.round, last.station)
    if {said.side for said in logs} == {Side.LEFT, Side.RIGHT} and len(logs) == SIDES and sided(workout, place):
        return _sides_again(state, place, logs, turn)
    if log.side in (Side.LEFT, Side.RIGHT):
        return amend(state, Amend(log.reps, log.load, log.unit, log.side, log.reserve, log.rpe, log.seconds), turn)
    if log.reps is None and log.load is None and log.seconds is None and (log.reserve is not None or log.rpe is not None):
        return amend(state, Amend(reserve=log.reserve, rpe=log.rpe), turn)
    meant = record_of(turn, workout, place, _filled(turn, workout, place, log))
    if all(_equal_said(meant, last, name) for name in ("reps", "load", "seconds", "reserve")):
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
    return _ask(state, Question(place, 1, tuple(choices)), turn)


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
    """A few words that only mean something after a set, such as "2 left": the end of the last report. None when they are not."""
    workout = workout_of(state)
    done = () if workout is None else turn.sets_of(workout)
    if not done or done[-1].reps is None:
        return None
    match read(f"{done[-1].reps} reps, {text}", Context(unit=turn.plan.trainee.unit, awaiting=Awaiting.REPS)):
        case (Log(reps=reps, load=None, side=None, seconds=None, same=False) as log,) if reps == done[-1].reps:
            if log.reserve is not None or log.rpe is not None:
                return amend(state, Amend(reserve=log.reserve, rpe=log.rpe), turn)
    return None


def _equal_said(meant: SetRecord, last: SetRecord, name: str) -> bool:
    """Whether a field says nothing new."""
    said, known = getattr(meant, name), getattr(last, name)
    if isinstance(said, Load) and isinstance(known, Load):
        return said.kg == known.kg
    return said is None or said == known


def _ask_part(state: Running | Idle, place: Place, part: Log, turn: Turn) -> Running | Idle:
    workout = workout_of(state)
    if workout is None:
        return state
    times = 1 if workout.question is None else workout.question.times + 1
    if times > ASKED_MAX:
        return leave_open(state, place, turn)
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
        return leave_open(state, place, turn)
    return _ask(state, Question(place, times, tuple(Choice(log, place) for log in choices)), turn)


def _ask(state: Running | Idle, question: Question, turn: Turn) -> Running | Idle:
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


def leave_open(state: Running | Idle, place: Place, turn: Turn) -> Running | Idle:
    """Asked often enough: the set is not noted, and can be given later."""
    workout = workout_of(state)
    if workout is None:
        return state
    turn.say(LeftOpen(exercise_at(workout, place).name))
    rest = with_workout(state, replace(workout, question=None, unanswered=0))
    if isinstance(rest, Closing):
        return close(rest, rest.ending, turn)
    return rest


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
    if all(_equal_said(changed, last, name) for name in ("reps", "load", "seconds")):
        turn.say(AlreadyNoted(line_of(last)))
        return state
    return _replace(state, last, replace(changed, side=last.side), turn)


def _take_at(state: Running | Idle, choice: Choice, turn: Turn) -> Running | Idle:
    """Keep a report at the place that was picked for it."""
    workout = workout_of(state)
    if workout is None:
        return state
    record = turn.note(record_of(turn, workout, choice.place, choice.log))
    workout = _closed_places(workout, [(choice.place, choice.log)], None)
    return _read_back(with_workout(state, workout), [record], turn)


def amend(state: Running | Idle, act: Amend, turn: Turn) -> Running | Idle:
    """Correct the set noted last: a new record that replaces it."""
    workout = workout_of(state)
    done = () if workout is None else turn.sets_of(workout)
    if act.side is not None:
        done = tuple(record for record in done if record.side in (act.side, None, Side.EACH)) or done
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
    return _replace(state, last, changed, turn)


def _with_number(done: Sequence[SetRecord], rejected: Decimal, act: Amend) -> SetRecord | None:
    """The latest set that holds the number said to be wrong: its reps, or its load when that is what changes."""
    for record in reversed(done):
        known = record.reps if act.load is None else (None if record.load is None else record.load.amount)
        if known == rejected:
            return record
    return None


def _name_of(workout: Workout, record: SetRecord) -> str:
    return exercise_at(workout, Place(record.round, record.station)).name


def _replace(state: Running | Idle, last: SetRecord, changed: SetRecord, turn: Turn) -> Running | Idle:
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


def with_workout(state: Running | Idle, workout: Workout) -> Running | Idle:
    """The same state around another workout value."""
    if isinstance(state, Idle):
        return replace(state, last=workout)
    return replace(state, workout=workout)
