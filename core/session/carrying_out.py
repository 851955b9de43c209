"""The acts of a text, carried out in the order written: what each one does between workouts and in one."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, assert_never

from core.catalogue import exercise, find
from core.diary import Ending, RackSaid, SetNoted, UnitChosen
from core.health import NoteKind
from core.messages import (
    DaySkipped,
    HelpShown,
    MannersReturned,
    NoHurry,
    NothingRuns,
    NotUnderstood,
    PainHeard,
    ProgressLine,
    ProgressShown,
    RackNoted,
    UnitNoted,
)
from core.progress import progress_of
from core.rack import Rack, RackItem
from core.reading.acts import (
    Again,
    Amend,
    Answer,
    Away,
    Feel,
    Finish,
    Form,
    HalfOfDay,
    Have,
    Help,
    InZone,
    Log,
    Move,
    MyReminders,
    Pain,
    Pause,
    Progress,
    Remind,
    Repeat,
    Resume,
    Skip,
    Snooze,
    Start,
    Swap,
    TimeLeft,
    Today,
    Unclear,
    Undo,
    Units,
)
from core.reading.manners import manners
from core.session import care, health, onboarding, talk
from core.session.belonging import place_asked, with_workout, workout_of
from core.session.closing import close
from core.session.corrections import undo
from core.session.idle import calendar, remind, skip_day, snooze
from core.session.lines import line_of
from core.session.opening import begin, say_today
from core.session.report import choose, correct, take_logs, take_unclear
from core.session.ring import say_where
from core.session.states import Asking, Closing, Idle, Paused, Resting, Running, SettingUp, WarmingUp, Working

if TYPE_CHECKING:
    from collections.abc import Sequence
    from typing import Literal

    from core.reading.acts import Act
    from core.session.states import State
    from core.session.turn import Turn


def carry_out(state: Running | Idle, acts: Sequence[Act], turn: Turn) -> State:
    """Carry out the acts of a text, in order. Logs go together, after what was said of the load they are about."""
    logs = tuple(act for act in acts if isinstance(act, Log))
    done_logs = False
    now: State = _here(state)
    felt = next((act.value for act in acts if isinstance(act, Feel) and act.value != "right"), None)
    for act in acts:
        if isinstance(act, Log):
            if not done_logs and isinstance(now, Running | Idle):
                now = _logs(now, logs, felt, turn)
                done_logs = True
            continue
        if isinstance(act, Feel) and logs:
            continue
        if isinstance(now, Idle):
            now = _while_idle(now, act, turn)
        elif isinstance(now, Running):
            now = _while_running(now, act, turn)
    return now


def _here(state: Running | Idle) -> Running | Idle:
    """The state once somebody has spoken: nobody is missing any more."""
    workout = workout_of(state)
    return state if workout is None else with_workout(state, replace(workout, unanswered=0))


def _logs(state: Running | Idle, logs: Sequence[Log], felt: Literal["heavy", "light"] | None, turn: Turn) -> Running | Idle:
    if isinstance(state, Idle) and place_asked(state, turn) is None:
        turn.say(NothingRuns(turn.plan.circuit.name))
        return state
    after = take_logs(state, logs, turn, felt)
    noted = any(isinstance(entry, SetNoted) for entry in turn.entries)
    return care.watch(after, turn) if noted and isinstance(after, Resting | SettingUp | Working) else after


def _while_idle(state: Idle, act: Act, turn: Turn) -> State:
    match act:
        case Start():
            return begin(turn, state)
        case Today() | Resume():
            say_today(turn)
            return health.offered(state, turn)
        case Amend():
            return correct(state, act, turn)
        case Undo():
            return undo(state, turn)
        case Answer(choice=int(number)):
            return choose(state, number, turn)
        case Remind():
            remind(turn, act)
        case Snooze():
            snooze(turn, act)
        case Skip(what="day"):
            skip_day(turn)
        case Repeat() | HalfOfDay() | Away() | Move() | InZone() | MyReminders():
            return calendar(turn, state, act)
        case Have():
            return onboarding.more_rack(state, act, turn)
        case Pain():
            turn.note_pain(act.place, act.side, None, urgent=False)
            turn.keep_note(NoteKind.PAIN, talk.told_place(act.place, turn))
            turn.say(PainHeard(act.place))
            return replace(state, asking=Asking.PAIN)
        case Pause():
            turn.say(NoHurry())
        case Finish() | Skip() | Swap() | Feel() | TimeLeft() | Again():
            turn.say(NothingRuns(turn.plan.circuit.name))
        case Unclear() | Answer() | Log():
            if place_asked(state, turn) is not None and isinstance(act, Unclear) and act.choices:
                return take_unclear(state, [log for one in act.choices for log in one if isinstance(log, Log)], turn)
            turn.say(NotUnderstood("today"))
        case Help() | Form() | Progress() | Units():
            _inform(state, act, turn)
        case _:
            assert_never(act)
    return state


def _while_running(state: Running, act: Act, turn: Turn) -> State:
    match act:
        case Start():
            return talk.start(state, turn)
        case Resume():
            if isinstance(state, Paused):
                return talk.back(state, turn)
            talk.tell_time(state, turn)
        case Pause():
            return talk.pause(state, turn)
        case Finish():
            return talk.finish(state, turn)
        case Skip(what="station"):
            return talk.skip(state, turn)
        case Skip():
            turn.say(DaySkipped())
            return close(state, Ending.EARLY, turn)
        case Again():
            return talk.again(state, turn)
        case Swap():
            return talk.swap(state, act, turn)
        case Feel(value):
            return talk.feel(state, value, turn)
        case Pain():
            return talk.pain(state, act, turn)
        case Amend():
            return correct(state, act, turn)
        case Undo():
            return undo(state, turn)
        case Answer(choice=int(number)):
            return choose(state, number, turn)
        case Unclear(choices):
            return _unclear(state, [log for one in choices for log in one if isinstance(log, Log)], turn)
        case Answer() | Log():
            return _unclear(state, [], turn)
        case TimeLeft():
            talk.tell_time(state, turn)
        case Today():
            say_where(state, turn)
        case Have():
            return _more_rack(state, act, turn)
        case Remind():
            remind(turn, act)
        case Snooze() | Repeat() | HalfOfDay() | Away() | Move() | InZone() | MyReminders():
            turn.say(NotUnderstood(_expected(state)))
        case Help() | Form() | Progress() | Units():
            _inform(state, act, turn)
        case _:
            assert_never(act)
    return state


def _unclear(state: Running, choices: Sequence[Log], turn: Turn) -> State:
    if place_asked(state, turn) is None or (isinstance(state, Working) and not state.workout.open):
        turn.say(NotUnderstood(_expected(state)))
        return state
    return take_unclear(state, choices, turn)


def return_manners(state: Running | Idle, text: str, turn: Turn) -> bool:
    """Answer thanks, a greeting or a nod in kind, and what is waited for; False when it is none, or one of two is to be picked."""
    said, workout = manners(text), workout_of(state)
    if said is None or (workout is not None and workout.question is not None and workout.question.choices):
        return False
    waits = isinstance(state, SettingUp | WarmingUp | Paused) or (workout is not None and bool(workout.open))
    expects = _expected(state) if isinstance(state, Running) and waits else None
    turn.say(MannersReturned(said, "today" if said == "hello" and isinstance(state, Idle) else expects))
    return True


def _expected(state: Running) -> Literal["reps", "go", "back", "today"]:
    match state:
        case SettingUp() | WarmingUp():
            return "go"
        case Paused():
            return "back"
        case Working() | Resting() | Closing():
            return "reps"


def _inform(state: Running | Idle, act: Help | Form | Progress | Units, turn: Turn) -> None:
    """What needs an answer and changes no clock."""
    match act:
        case Help():
            turn.say(HelpShown(running=not isinstance(state, Idle)))
        case Form(said):
            talk.show_form(state, said, turn)
        case Progress(said):
            turn.say(_progress(said, turn))
        case Units(unit):
            turn.keep(UnitChosen(unit))
            turn.say(UnitNoted(unit))


def _more_rack(state: Running, act: Have, turn: Turn) -> Running:
    """Something more to lift, said in the middle of a workout; one of each where no count was said."""
    known = (turn.plan.trainee.rack or Rack()).items
    items = onboarding.items_of(act, turn)
    if act.items and not items:
        return state
    rack = Rack((*known, *(RackItem(item.kind, item.load, item.count or 1) for item in items)))
    turn.keep(RackSaid(rack))
    turn.say(RackNoted(rack.items))
    return state


def _progress(said: str | None, turn: Turn) -> ProgressShown:
    wanted = None if said is None else find(said)
    done = [record for record in turn.sets() if record.reps is not None and (wanted is None or record.exercise == wanted.slug)]
    slugs = dict.fromkeys(record.exercise for record in done)
    lines = []
    for slug in slugs:
        latest = next(record for record in reversed(done) if record.exercise == slug)
        own = [record for record in done if record.exercise == slug and record.side is latest.side]  # like with like
        lines.append(ProgressLine(exercise(slug).name, line_of(own[0]), line_of(own[-1])))
    return ProgressShown(
        len({record.workout for record in done}), tuple(lines), progress_of(turn.plan.trainee, turn.sets(), turn.now, slugs)
    )
