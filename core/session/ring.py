"""What the clock does: every cue that is due, in order, each on the grid of the one before it."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime, timedelta
from typing import TYPE_CHECKING, Literal, assert_never

from core.circuit import Side
from core.diary import Ending
from core.exercise import Measure
from core.messages import (
    Down,
    GetReady,
    Go,
    HalfWay,
    SecondsLeft,
    StillMissing,
    StillThere,
    SwitchSides,
    WhereWeWere,
)
from core.session import cues
from core.session.cards import show
from core.session.closing import close
from core.session.places import ends_round, entering, exercise_at, following, rest_after_s, sided, station_at, whole
from core.session.states import (
    Closing,
    Cue,
    CueKind,
    Idle,
    Paused,
    Resting,
    Running,
    SettingUp,
    State,
    WarmingUp,
    Working,
)

if TYPE_CHECKING:
    from core.session.states import Place, Workout
    from core.session.turn import Turn

LATE_S = 30  # later than this the program was away: the clock is stopped and says so
GONE_S = 2 * 60 * 60  # later than this the workout is over
STALE_S = 5  # a call of the clock that comes later than this is worth nothing
LIKELY = 4  # likely answers offered
UNANSWERED_MAX = 3  # stations in a row that nobody reported, before the clock stops


def ring(state: State, turn: Turn) -> State:
    """Do everything that is due by now."""
    while (calls := cues_of(state)) and calls[0].at <= turn.now:
        state = _ring(state, calls[0], turn)
    return state


def cues_of(state: State) -> tuple[Cue, ...]:
    """What the clock will do next in a state."""
    match state:
        case WarmingUp(cues=calls) | SettingUp(cues=calls) | Working(cues=calls):
            return calls
        case Resting(cues=calls) | Paused(cues=calls) | Closing(cues=calls):
            return calls
        case _:
            return ()


def _ring(state: State, cue: Cue, turn: Turn) -> State:
    late_s = (turn.now - cue.at).total_seconds()
    match state:
        case WarmingUp() | Working() | Resting() if late_s > LATE_S:
            return _away(state, late_s, turn)
        case WarmingUp():
            return cues.setting_up(show(turn, state.workout, None), cue.at)
        case Resting():
            return _ring_rest(state, cue, turn)
        case Working():
            return _ring_work(state, cue, turn)
        case SettingUp() | Paused() | Closing():
            return _ring_wait(state, cue, turn)
        case _:
            return state


def _ring_rest(state: Resting, cue: Cue, turn: Turn) -> State:
    match cue.kind:
        case CueKind.CARD:
            return show_in_rest(state, turn)
        case CueKind.READY:
            if _fresh(cue, turn):
                turn.say(GetReady(exercise_at(state.workout, state.workout.place).name, cues.TEN_S), _stale_at(cue))
            return replace(state, cues=state.cues[1:])
        case _:
            return start_work(state, cue.at, turn)


def show_in_rest(state: Resting, turn: Turn) -> Resting:
    """Show the next station's card now; the clock will not show it again."""
    calls = tuple(cue for cue in state.cues if cue.kind is not CueKind.CARD)
    return replace(state, workout=show(turn, state.workout, left_s(state.ends_at, turn)), cues=calls, carded=True)


def start_work(state: Resting | SettingUp, at: datetime, turn: Turn) -> Working | Paused:
    """Leave a rest or a set-up for the work, at an instant."""
    workout = state.workout
    if isinstance(state, Resting) and not state.carded:
        workout = show(turn, workout, 0)
    if isinstance(state, Resting) and workout.open and state.work_left_s is None:
        workout = replace(workout, unanswered=workout.unanswered + 1)
        if workout.unanswered >= UNANSWERED_MAX:
            turn.say(StillThere(exercise_at(workout, workout.place).name))
            return cues.paused(workout, at, "resting", cues.TEN_S, carded=True)
    begun = cues.working(workout, at, state.work_left_s if isinstance(state, Resting) else None)
    station = station_at(workout, workout.place)
    shown_s = None if begun.ends_at is None else round((begun.ends_at - max(turn.now, at)).total_seconds())
    turn.say(Go(exercise_at(workout, workout.place).name, workout.place.side, shown_s, station.reps))
    return begun


def _ring_work(state: Working, cue: Cue, turn: Turn) -> State:
    rest = replace(state, cues=state.cues[1:])
    match cue.kind:
        case CueKind.HALF:
            if _fresh(cue, turn) and state.ends_at is not None:
                turn.say(HalfWay(round((state.ends_at - cue.at).total_seconds())), _stale_at(cue))
            return rest
        case CueKind.TEN:
            if _fresh(cue, turn):
                turn.say(SecondsLeft(cues.TEN_S), _stale_at(cue))
            return rest
        case CueKind.ASK:
            turn.say(StillMissing(exercise_at(state.workout, state.workout.place).name, "reps"))
            return rest
        case CueKind.CLOSE:
            return close(state, Ending.SILENT, turn)
        case _:
            return finish_side(state, cue.at, turn)


def worked_s(state: Working, at: datetime) -> int:
    """Seconds under work in a state, up to an instant."""
    return max(0, round((at - state.started_at).total_seconds()))


def finish_side(state: Working, at: datetime, turn: Turn) -> Running | Idle:
    """The work is over at an instant: the other side at once, or down."""
    workout = replace(state.workout, work_s=state.workout.work_s + worked_s(state, at))
    if workout.place.side is Side.LEFT:
        workout = replace(workout, place=replace(workout.place, side=Side.RIGHT))
        begun = cues.working(workout, at)
        station = station_at(workout, workout.place)
        turn.say(SwitchSides(Side.RIGHT, station.work_s, station.reps))
        return begun
    return put_down(workout, at, turn)


def put_down(workout: Workout, at: datetime, turn: Turn, *, extra_rest_s: float = 0) -> Resting | Closing | Idle:
    """A station is over: ask what was done, and rest (or close) from that instant."""
    here = workout.place
    missing = not turn.sets_at(workout, here) and whole(here) not in workout.skipped
    if missing:
        asked = workout.question  # which of two it was is asked no more: "the first" would be about this set
        asked = None if asked is not None and asked.choices else asked
        workout = replace(workout, open=(*(place for place in workout.open if place != whole(here)), whole(here)), question=asked)
    coming = following(workout)
    rest_s = None if coming is None else rest_after_s(workout, here).high
    likely, again = likely_reps(workout, here, turn)
    turn.say(
        Down(
            ask=asked_for(workout, here) if missing else None,
            likely=likely,
            again=again,
            sides=sided(workout, here),
            rest_s=None if rest_s is None else round(rest_s + extra_rest_s),
            upcoming=None if coming is None else exercise_at(workout, coming).name,
            round_over=here.round if ends_round(workout, here) else None,
            rounds=workout.circuit.rounds,
        )
    )
    if coming is None or rest_s is None:
        closing = cues.closing(workout, at, Ending.COMPLETE)
        return closing if workout.open else close(closing, Ending.COMPLETE, turn)
    return cues.resting(replace(workout, place=coming), at, rest_s + extra_rest_s)


def likely_reps(workout: Workout, place: Place, turn: Turn) -> tuple[tuple[int, ...], bool]:
    """Reps that are likely at a place, around the last set of the exercise or else as the card had it; whether there was one."""
    slug, prescribed = workout.exercises[place.station - 1], workout.prescriptions[place.station - 1]
    if asked_for(workout, place) != "reps":
        return (), False
    last = next((record.reps for record in reversed(turn.sets()) if record.exercise == slug and record.reps), None)
    if last is not None:
        return tuple(reps for reps in (last - 2, last - 1, last, last + 1) if reps > 0), True
    if prescribed is None or prescribed.reps_low is None or prescribed.reps_high is None:
        return (), False
    return tuple(range(max(1, prescribed.reps_high - LIKELY + 1), prescribed.reps_high + 1)), False


def asked_for(workout: Workout, place: Place) -> Literal["reps", "seconds"]:
    """What is asked for at a place: reps, or seconds held or carried."""
    return "reps" if exercise_at(workout, place).measure is Measure.REPS else "seconds"


def _ring_wait(state: SettingUp | Paused | Closing, cue: Cue, turn: Turn) -> State:
    if cue.kind is CueKind.CLOSE:
        return close(state, state.ending if isinstance(state, Closing) else Ending.SILENT, turn)
    if isinstance(state, Closing) and state.workout.open:
        place = state.workout.open[-1]
        turn.say(StillMissing(exercise_at(state.workout, place).name, asked_for(state.workout, place)))
    else:
        turn.say(StillThere(exercise_at(state.workout, state.workout.place).name))
    return replace(state, cues=state.cues[1:])


def _away(state: WarmingUp | Working | Resting, late_s: float, turn: Turn) -> State:
    """The program was away while the clock ran: stop it where it was, or end what is long over."""
    if late_s > GONE_S:
        return close(state, Ending.SILENT, turn)
    workout = state.workout
    match state:
        case WarmingUp():
            stopped = cues.paused(workout, turn.now, "warming_up", cues.TEN_S)
        case Working():
            over = replace(workout, place=entering(workout, workout.place))
            stopped = cues.paused(over, turn.now, "setting_up", 0)
        case Resting():
            stopped = cues.paused(workout, turn.now, "resting", cues.TEN_S, carded=state.carded)
        case _:
            assert_never(state)
    say_where(stopped, turn)
    return stopped


Clock = Literal["warming_up", "setting_up", "working", "resting", "paused", "closing"]


def clock_of(state: Running, turn: Turn) -> tuple[Clock, int | None]:
    """Which clock runs, and the seconds on it; None where none runs."""
    match state:
        case WarmingUp(cues=calls):
            return "warming_up", left_s(calls[0].at, turn)
        case SettingUp():
            return "setting_up", None
        case Working(ends_at=ends_at):
            return "working", None if ends_at is None else left_s(ends_at, turn)
        case Resting(ends_at=ends_at):
            return "resting", left_s(ends_at, turn)
        case Paused():
            return "paused", None
        case Closing():
            return "closing", None


def left_s(until: datetime, turn: Turn) -> int:
    """Whole seconds until an instant, never less than none."""
    return max(0, round((until - turn.now).total_seconds()))


def say_where(state: Running, turn: Turn) -> None:
    """Say where the workout stands."""
    workout = state.workout
    during, left_s = clock_of(state, turn)
    turn.say(
        WhereWeWere(
            round=workout.place.round,
            rounds=workout.circuit.rounds,
            station=workout.place.station,
            stations=len(workout.circuit.stations),
            exercise=exercise_at(workout, workout.place).name,
            during=during,
            left_s=left_s,
            missing=exercise_at(workout, workout.open[-1]).name if workout.open else None,
        )
    )


def _fresh(cue: Cue, turn: Turn) -> bool:
    return turn.now <= _stale_at(cue)


def _stale_at(cue: Cue) -> datetime:
    return cue.at + timedelta(seconds=STALE_S)
