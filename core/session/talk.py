"""What may be said at any moment of a workout: pause, back, go, skip, again, swap, form, how long, done."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from core.catalogue import exercise, find, nearest
from core.circuit import Side
from core.diary import Ending
from core.health import NoteKind
from core.messages import (
    AlreadyGoing,
    BackNow,
    FeltRight,
    FormShown,
    FormUnknown,
    LoadChanged,
    NoOtherLoad,
    NoSwap,
    PainStays,
    PainStop,
    PausedNow,
    Skipped,
    StillMissing,
    Swapped,
    TimeTold,
    UrgentStop,
)
from core.safety.joints import Hold, hold
from core.session import cues
from core.session.cards import show
from core.session.closing import close
from core.session.places import (
    entering,
    exercise_at,
    following,
    rest_after_s,
    seconds_after,
    station_at,
    station_s,
    whole,
    with_exercises,
)
from core.session.prescription import advise
from core.session.ring import asked_for, clock_of, left_s, say_where, show_in_rest, start_work, worked_s
from core.session.sparing import doable
from core.session.states import Asking, Closing, Idle, Paused, Resting, Running, SettingUp, WarmingUp, Working
from core.session.wished import most_load

if TYPE_CHECKING:
    from typing import Literal

    from core.exercise import Exercise
    from core.reading.acts import Pain, Swap
    from core.session.states import Place, Workout
    from core.session.turn import Turn

LEAD_S = 10  # to get set again after a pause


def start(state: Running, turn: Turn) -> Running:
    """Go: whatever waits begins now."""
    match state:
        case WarmingUp(workout=workout):
            return cues.setting_up(show(turn, workout, None), turn.now)
        case SettingUp() | Resting():
            return start_work(state, turn.now, turn)
        case Paused():
            return back(state, turn)
        case Working(ends_at=ends_at):
            turn.say(AlreadyGoing(None if ends_at is None else left_s(ends_at, turn)))
            return state
        case Closing():
            return _ask_last(state, turn)


def _ask_last(state: Closing, turn: Turn) -> Closing:
    if state.workout.open:
        place = state.workout.open[-1]
        turn.say(StillMissing(exercise_at(state.workout, place).name, asked_for(state.workout, place)))
    return state


def pause(state: Running, turn: Turn) -> Running:
    """Stop the clock."""
    workout = state.workout
    match state:
        case WarmingUp(cues=calls):
            stopped = cues.paused(workout, turn.now, "warming_up", (calls[0].at - turn.now).total_seconds())
        case SettingUp():
            stopped = cues.paused(workout, turn.now, "setting_up", 0, carded=True)
        case Working(ends_at=None):
            stopped = cues.paused(workout, turn.now, "setting_up", 0, carded=True)
        case Working(ends_at=ends_at):
            done = replace(workout, work_s=workout.work_s + worked_s(state, turn.now))
            stopped = cues.paused(done, turn.now, "working", 0 if ends_at is None else (ends_at - turn.now).total_seconds())
        case Resting(ends_at=ends_at, carded=carded):
            stopped = cues.paused(workout, turn.now, "resting", (ends_at - turn.now).total_seconds(), carded=carded)
        case Paused() | Closing():
            return state
    turn.say(PausedNow(stopped.during, round(stopped.left_s), exercise_at(workout, workout.place).name))
    return stopped


def back(state: Paused, turn: Turn) -> Running:
    """Go on where the pause began: the rest of the rest, or the rest of the work after a short lead."""
    workout, name = state.workout, exercise_at(state.workout, state.workout.place).name
    match state.during:
        case "warming_up":
            turn.say(BackNow(name, 0, round(state.left_s)))
            return cues.warming_up(workout, turn.now, state.left_s)
        case "setting_up":
            return cues.setting_up(show(turn, workout, None), turn.now)
        case "working":
            turn.say(BackNow(name, LEAD_S, round(state.left_s)))
            return cues.resting(workout, turn.now, LEAD_S, carded=True, work_left_s=state.left_s)
        case "resting":
            left_s = max(state.left_s, LEAD_S)
            turn.say(BackNow(name, round(left_s), None))
            return cues.resting(workout, turn.now, left_s, carded=state.carded)


def finish(state: Running, turn: Turn) -> Running | Idle:
    """Done for today: the last report first if it is missing, then the summary."""
    if isinstance(state, Closing):
        return close(state, state.ending, turn)
    workout = state.workout
    if isinstance(state, Working):
        workout = replace(workout, work_s=workout.work_s + worked_s(state, turn.now))
    closing = cues.closing(workout, turn.now, Ending.EARLY)
    if workout.open:
        return _ask_last(closing, turn)
    return close(closing, Ending.EARLY, turn)


def skip(state: Running, turn: Turn) -> Running | Idle:
    """Leave a station out: the one under work, or the one announced; while a report is missing, only the report."""
    workout = state.workout
    match state:
        case WarmingUp():
            return cues.setting_up(show(turn, workout, None), turn.now)
        case Closing():
            return close(state, state.ending, turn)
        case Resting(carded=False) if workout.open:
            place = workout.open[-1]
            turn.say(Skipped(exercise_at(workout, place).name))
            return replace(state, workout=_skipped(workout, place))
        case Working():
            here = whole(workout.place)
            turn.say(Skipped(exercise_at(workout, here).name))
            done = replace(workout, work_s=workout.work_s + worked_s(state, turn.now))
            return _onward(replace(done, skipped=(*done.skipped, here)), turn, rest=True)
        case SettingUp() | Resting() | Paused():
            turn.say(Skipped(exercise_at(workout, workout.place).name))
            return _onward(replace(workout, skipped=(*workout.skipped, whole(workout.place))), turn, rest=False)


def _skipped(workout: Workout, place: Place) -> Workout:
    kept = tuple(spot for spot in workout.open if spot != place)
    return replace(workout, open=kept, skipped=(*workout.skipped, *(spot for spot in workout.open if spot == place)))


def _onward(workout: Workout, turn: Turn, *, rest: bool) -> Running | Idle:
    """To the station after this one, after its rest or as soon as the trainee is set."""
    coming = following(workout)
    if coming is None:
        closing = cues.closing(workout, turn.now, Ending.COMPLETE)
        return _ask_last(closing, turn) if workout.open else close(closing, Ending.COMPLETE, turn)
    rest_s = rest_after_s(workout, workout.place).high
    moved = replace(workout, place=coming)
    if rest:
        return cues.resting(show(turn, moved, rest_s), turn.now, rest_s, carded=True)
    return cues.setting_up(show(turn, moved, None), turn.now)


def again(state: Running, turn: Turn) -> Running:
    """Say it again; under work, do the station again from its start."""
    workout = state.workout
    match state:
        case Working():
            done = replace(workout, work_s=workout.work_s + worked_s(state, turn.now))
            done = replace(done, place=entering(done, done.place))
            return cues.setting_up(show(turn, done, None), turn.now)
        case Resting():
            return show_in_rest(state, turn)
        case SettingUp():
            return replace(state, workout=show(turn, workout, None))
        case WarmingUp() | Paused():
            say_where(state, turn)
            return state
        case Closing():
            return _ask_last(state, turn)


def swap(state: Running, act: Swap, turn: Turn) -> Running:
    """Another exercise at this station: the one named, else the coach's swaps, an easier one, one without a load."""
    workout = state.workout
    place, movement = workout.place, exercise_at(workout, workout.place)
    if isinstance(state, Closing):
        return _ask_last(state, turn)
    if act.exercise is not None:
        wanted = find(act.exercise)
        if wanted is None:
            turn.say(FormUnknown(act.exercise, tuple(close_one.name for close_one in nearest(act.exercise))))
            return state
    else:
        wanted = _other(workout, movement, turn)
    held = None if wanted is None else hold(wanted, turn.diary.pains, turn.sets(), turn.now)
    if held is not None and held[0] is Hold.OUT:
        turn.say(PainStays((held[1].place or "",)))
        return state
    if wanted is None or wanted.slug == movement.slug:
        turn.say(NoSwap(movement.name))
        return state
    return _take_swap(state, replace(workout, place=entering(workout, place)), wanted, turn)


def _other(workout: Workout, movement: Exercise, turn: Turn) -> Exercise | None:
    """What may stand in for an exercise here and can be done with this rack; goes round if asked again."""
    station = station_at(workout, workout.place)
    slugs = [station.exercise, *station.swap]
    slugs += [slug for slug in (movement.easier, movement.swap_load, movement.harder) if slug is not None]
    ring = [slug for slug in dict.fromkeys(slugs) if _fits(slug, turn)]
    if movement.slug in ring:
        ring = ring[ring.index(movement.slug) + 1 :] + ring[: ring.index(movement.slug)]
    return exercise(ring[0]) if ring else None


def _take_swap(state: Running, workout: Workout, wanted: Exercise, turn: Turn) -> Running:
    """Put an exercise on the station for the rest of the workout; a station under work starts over."""
    before = exercise_at(workout, workout.place)
    index = workout.place.station - 1
    slugs = (*workout.exercises[:index], wanted.slug, *workout.exercises[index + 1 :])
    workout = replace(with_exercises(workout, slugs), felt=tuple(pair for pair in workout.felt if pair[0] != index + 1))
    turn.say(Swapped(before.name, wanted.name))
    match state:
        case Resting():
            return show_in_rest(replace(state, workout=workout), turn)
        case Working():
            done = replace(workout, work_s=workout.work_s + worked_s(state, turn.now))
            return cues.setting_up(show(turn, done, None), turn.now)
        case _:
            return cues.setting_up(show(turn, workout, None), turn.now)


def show_form(state: Running | Idle, said: str | None, turn: Turn) -> None:
    """How an exercise is done: the one named, else the one at hand."""
    if said is not None:
        movement = find(said)
        if movement is None:
            turn.say(FormUnknown(said, tuple(near.name for near in nearest(said))))
            return
    elif isinstance(state, Idle):
        movement = exercise(turn.plan.circuit.stations[0].exercise)
    else:
        movement = exercise_at(state.workout, state.workout.place)
    turn.say(FormShown(movement.name, movement.set_up, movement.form, movement.fault, movement.cure, movement.careful))


def tell_time(state: Running, turn: Turn) -> None:
    """How long left: on the running clock, and in all."""
    workout = state.workout
    during, on_clock_s = clock_of(state, turn)
    all_s = 0 if isinstance(state, Closing) else _here_s(state, on_clock_s or 0) + seconds_after(workout)
    turn.say(TimeTold(during, exercise_at(workout, workout.place).name, on_clock_s, -(-all_s // 60)))


def _here_s(state: Running, on_clock_s: int) -> int:
    """Seconds to the end of the present station."""
    whole_s = station_s(state.workout, state.workout.place)
    if not isinstance(state, Working):
        return on_clock_s + whole_s
    return on_clock_s + (whole_s // 2 if state.workout.place.side is Side.LEFT else 0)


def feel(state: Running, value: Literal["heavy", "light", "right"], turn: Turn) -> Running:
    """How the load feels, without a report: the next load at that station follows.

    Under work and while setting up it is about the station at hand, and changes it now; else about the station reported last.
    """
    workout = state.workout
    if value == "right":
        turn.say(FeltRight())
        return state
    now = isinstance(state, SettingUp | WarmingUp | Working)
    station = workout.place.station if now else _station_reported(workout, turn)
    workout = replace(workout, felt=(*(pair for pair in workout.felt if pair[0] != station), (station, value)))
    place = replace(workout.place, station=station, side=None)
    movement, before = exercise_at(workout, place), workout.prescriptions[station - 1]
    advice = advise(turn, workout, place).prescription
    if not movement.loads_held or advice.load is None or before is None or before.load is None or advice.load.kg == before.load.kg:
        most = None if value == "heavy" else most_load(turn, workout, movement)
        turn.say(NoOtherLoad(movement.name, "lighter" if value == "heavy" else "heavier", held=most is not None))
        return replace(state, workout=workout)
    turn.say(LoadChanged(movement.name, advice.load, "now" if now else "next"))
    if now:
        shown = (*workout.prescriptions[: station - 1], advice, *workout.prescriptions[station:])
        kept = tuple(pair for pair in workout.felt if pair[0] != station)
        workout = replace(workout, prescriptions=shown, felt=kept)
    return replace(state, workout=workout)


def _station_reported(workout: Workout, turn: Turn) -> int:
    """The station last asked about or reported."""
    if workout.open:
        return workout.open[-1].station
    done = turn.sets_of(workout)
    return done[-1].station if done else workout.place.station


def _fits(slug: str, turn: Turn) -> bool:
    """Whether the rack has what it needs, and nothing that hurts keeps it out."""
    held = hold(exercise(slug), turn.diary.pains, turn.sets(), turn.now)
    return doable(slug, turn.plan.trainee.rack) and (held is None or held[0] is not Hold.OUT)


def urgent(state: Running | Idle, act: Pain, turn: Turn) -> Idle:
    """A sign to stop everything at once, whatever else was said; the coach is told."""
    slug = None if isinstance(state, Idle) else exercise_at(state.workout, state.workout.place).slug
    turn.note_pain(act.place, act.side, slug, urgent=True)
    turn.keep_note(NoteKind.URGENT, told_place(act.place, turn))
    turn.say(UrgentStop(act.place, turn.plan.emergency, turn.plan.coach))
    return replace(state, asking=None) if isinstance(state, Idle) else close(state, Ending.PAIN, turn, quietly=True)


def told_place(place: str | None, turn: Turn) -> str:
    """The place of a pain as the coach may see it: only when the trainee agreed that health details may be seen."""
    return place or "" if turn.plan.trainee.health.share else ""


def pain(state: Running, act: Pain, turn: Turn) -> Running:
    """Pain stops the clock at once. What gives way to it is worked out when its kind is told."""
    workout = state.workout
    station = workout.place.station
    if not isinstance(state, Working | SettingUp | WarmingUp):
        station = _station_reported(workout, turn)
    slug = workout.exercises[station - 1]
    turn.note_pain(act.place, act.side, slug, urgent=False)
    turn.keep_note(NoteKind.PAIN, told_place(act.place, turn))
    turn.say(PainStop(act.place, exercise(slug).name))
    workout = replace(workout, asking=Asking.PAIN)
    if isinstance(state, Closing):
        return replace(state, workout=workout)
    if isinstance(state, Working):
        workout = replace(workout, work_s=workout.work_s + worked_s(state, turn.now))
    return cues.setting_up(replace(workout, place=entering(workout, workout.place)), turn.now)
