"""Beginning a workout."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from core.agenda import DayKind, agenda, days_of, days_since, eased
from core.diary import WorkoutOpened
from core.health import EasierWhy, LightWhy, NoteKind, SafetyNote
from core.messages import (
    DayAt,
    LighterDay,
    NothingSpared,
    PlanOver,
    RestDay,
    RestGiven,
    SameMuscles,
    StationLine,
    TodayInBlock,
    TodayPlan,
    WarmUp,
)
from core.plan import weekday
from core.reminders import rests
from core.safety.day import extra_reserve, lighter_today, rounds_left
from core.safety.joints import joint_of, watched
from core.safety.recovery import easier_week_due, recently_hard
from core.safety.setting import checks, warm_up_moves
from core.session import cues, health
from core.session.boards import board_of
from core.session.cards import show
from core.session.places import entering, exercise_at, seconds_after, sided, station_s
from core.session.prescription import advise
from core.session.sparing import as_written
from core.session.standing import bar_now, needed
from core.session.states import Asking, Idle, Place, State, Workout

if TYPE_CHECKING:
    from core.diary import History
    from core.plan import Due
    from core.session.turn import Turn


def opened(turn: Turn) -> Workout:
    """The day's workout, before its first station: as much lighter as the day asks for, without what hurts."""
    trainee, circuit, due = turn.plan.trainee, turn.plan.circuit, turn.plan.due
    reasons = lighter_today(trainee, _diary_if_begun(turn), turn.now)
    shorter = circuit
    if due is None or not due.easier:
        shorter = eased(circuit, days_since(turn.history.workouts, trainee.zone, turn.today))
    workout = Workout(
        number=len(turn.history.workouts) + 1,
        circuit=replace(circuit, rounds=min(shorter.rounds, rounds_left(circuit.rounds, reasons))),
        started_at=turn.now,
        place=Place(1, 1),
        exercises=tuple(station.exercise for station in circuit.stations),
        prescriptions=(None,) * len(circuit.stations),
        ease=extra_reserve(reasons),
        asking=Asking.READINESS,
        whole_rounds=circuit.rounds,
    )
    workout = as_written(workout, turn)
    first = next((number for number in range(1, len(circuit.stations) + 1) if number not in workout.left_out), 1)
    return replace(workout, place=entering(workout, Place(1, first)))


def _easier_due(turn: Turn) -> EasierWhy | None:
    """Why an easier week begins if a workout starts now; a coach's plan has its own planned ones."""
    why = easier_week_due(turn.diary, turn.now)
    return None if turn.plan.due is not None and why is EasierWhy.PLAN else why


def _diary_if_begun(turn: Turn) -> History:
    """The diary with the easier week in it that a workout started now would begin."""
    why = _easier_due(turn)
    if why is None:
        return turn.diary
    return replace(turn.diary, notes=(*turn.diary.notes, SafetyNote(turn.now, NoteKind.EASIER_WEEK, why.value)))


def begin(turn: Turn, idle: Idle) -> State:
    """Open the workout: what to know of today, the warm-up, then the card of the first station."""
    found = bar_now(turn)
    if found is not None:
        turn.say(needed(turn, found))
        return idle
    why = _easier_due(turn)
    if why is not None:
        turn.keep_note(NoteKind.EASIER_WEEK, why.value)
    workout = opened(turn)
    places = tuple(dict.fromkeys(pain.place or "" for pain in watched(turn.diary.pains, turn.now)))
    if len(workout.left_out) == len(workout.circuit.stations):
        turn.say(NothingSpared(places))
        return idle
    _say_lighter(workout, turn)
    turn.keep(WorkoutOpened(workout.number, workout.circuit, turn.now))
    done = [slug for number, slug in enumerate(workout.exercises, 1) if number not in workout.left_out]
    sore = [joint for place in places if (joint := joint_of(place)) is not None]
    warm_up_s = workout.circuit.warm_up_s
    turn.say(WarmUp(warm_up_s, warm_up_moves(done, sore), checks(done, turn.plan.trainee.rack), places))
    if warm_up_s:
        return cues.warming_up(workout, turn.now, warm_up_s)
    return cues.setting_up(show(turn, workout, None), turn.now)


def _say_lighter(workout: Workout, turn: Turn) -> None:
    """Why today is lighter, and that the same muscles worked hard lately.

    The first time, the offer of the questions has just said what no answers mean.
    """
    reasons = lighter_today(turn.plan.trainee, turn.diary, turn.now)
    whys = tuple(reason.why for reason in reasons if turn.history.workouts or reason.why is not LightWhy.UNANSWERED)
    fewer = workout.circuit.rounds if workout.circuit.rounds < workout.whole_rounds else None
    days_off = next((reason.days for reason in reasons if reason.days is not None), None)
    if fewer is not None and rounds_left(workout.whole_rounds, reasons) > fewer:  # a break that is shorter than those of `reasons`
        whys, days_off = (*whys, LightWhy.BREAK), days_since(turn.history.workouts, turn.plan.trainee.zone, turn.today)
    if whys:
        turn.say(LighterDay(whys, days_off, fewer))
    recent = recently_hard(turn.plan.circuit, turn.history, turn.now)
    if recent is not None:
        turn.say(SameMuscles(recent.hours, recent.muscles))


def whole_s(workout: Workout) -> tuple[int, int]:
    """Seconds a workout takes from its warm-up to its last station, with the shortest and the longest rests."""
    first_s = workout.circuit.warm_up_s + station_s(workout, workout.place)
    return first_s + seconds_after(workout, longest=False), first_s + seconds_after(workout)


def say_today(turn: Turn) -> None:
    """Say what today holds, whatever day it is."""
    trainee, circuit = turn.clock_setting()[0], turn.plan.circuit.name
    day = agenda(days_of(trainee.reminders, circuit, turn.today), turn.history.workouts, trainee.zone, turn.today)
    coming = None if day.coming is None or day.coming.at is None else DayAt(day.coming.day, day.coming.at)
    found = bar_now(turn)
    if found is not None:
        turn.say(needed(turn, found))
        return
    pause = turn.plan.trainee.pause
    if pause is not None and rests(pause, turn.today):
        turn.say(RestGiven(turn.plan.coach, pause.until, circuit))
        return
    due = turn.plan.due
    if due is not None and (due.done_today or due.on != turn.today):
        coming = DayAt(due.on, None if trainee.reminders is None else trainee.reminders.time_on(due.on))
        turn.say(RestDay(circuit, coming, taken_off=day.kind is DayKind.OFF, done=due.done_today))
        return
    if due is not None:
        _say_circuit(turn, done=False, days_off=day.days_off)
        return
    match day.kind:
        case DayKind.REST | DayKind.OFF:
            turn.say(RestDay(circuit, coming, taken_off=day.kind is DayKind.OFF))
        case DayKind.OVER:
            turn.say(PlanOver(circuit))
        case DayKind.OPEN | DayKind.TRAINING | DayKind.DONE:
            _say_circuit(turn, done=day.kind is DayKind.DONE, days_off=day.days_off)


def _say_circuit(turn: Turn, *, done: bool, days_off: int | None) -> None:
    """Say the day's circuit: stations with their loads, rounds, minutes."""
    workout = opened(turn)
    circuit, due = workout.circuit, turn.plan.due
    lines = []
    for place in (Place(1, number) for number in range(1, len(circuit.stations) + 1) if number not in workout.left_out):
        movement = exercise_at(workout, place)
        load = advise(turn, workout, place).prescription.load if movement.loads_held else None
        lines.append(StationLine(movement.name, load, movement.loads_held, sided(workout, place)))
    shortest_s, longest_s = whole_s(workout)
    turn.say(
        TodayPlan(
            circuit=circuit.name,
            rounds=circuit.rounds,
            stations=tuple(lines),
            minutes_low=round(shortest_s / 60),
            minutes_high=round(longest_s / 60),
            done_today=done,
            days_off=days_off if eased(turn.plan.circuit, days_off).rounds < turn.plan.circuit.rounds else None,
            offer=health.wanting(turn),
            picture=board_of(turn, workout, (shortest_s, longest_s)),
            block=None if due is None else _in_block(due),
        )
    )


def _in_block(due: Due) -> TodayInBlock:
    """Where in the block today's workout is."""
    return TodayInBlock(due.week, due.weeks, due.easier, None if due.missed is None else weekday(due.missed))
