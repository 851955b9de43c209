"""One step of the conversation: a state and an event in; a state, entries for the diary, messages and a wake-up out.

What is due by a workout's clock is done first, so that a text is always read in the state it was written in. A text is read once,
in the light of what is awaited; its acts are then carried out in the order written. An urgent sign goes before everything else.
Reminders that are due come last: a text that starts the workout or puts the day off answers them before they are said.
What is the trainee's own (`own`) goes before everything but an urgent sign, and changes no clock.
"""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, assert_never

from core.catalogue import exercise, find
from core.diary import Ending, Heard, RackSaid, SetNoted, UnitChosen
from core.exercise import Measure
from core.health import Bar, NoteKind
from core.messages import (
    DaySkipped,
    HelpShown,
    NothingRuns,
    NotUnderstood,
    PainHeard,
    ProgressLine,
    ProgressShown,
    RackNoted,
    UnitNoted,
    WelcomeBack,
)
from core.own_messages import ForgetNot
from core.progress import progress_of
from core.rack import Rack, RackItem
from core.reading import read
from core.reading.acts import (
    Act,
    Again,
    Amend,
    Answer,
    Awaiting,
    Away,
    Context,
    Feel,
    Finish,
    Form,
    HalfOfDay,
    Have,
    Help,
    InZone,
    LastSet,
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
from core.reading.calendar_talk import calendar_talk
from core.reading.own_talk import ForCoach, own_talk
from core.session import care, edited, health, onboarding, own, report, talk, unasked
from core.session.closing import close
from core.session.cues import just_stopped
from core.session.events import Edited, Event, Opened, Plan, Said, Step, Woke
from core.session.idle import calendar, remind, skip_day, snooze
from core.session.lines import line_of
from core.session.opening import begin, say_today
from core.session.places import exercise_at, sided
from core.session.ring import ring, say_where
from core.session.standing import bar_now, guarded, needed
from core.session.states import (
    Asking,
    AskingCautions,
    AskingMore,
    AskingPairs,
    AskingRack,
    AskingUnit,
    Closing,
    Idle,
    New,
    Paused,
    Resting,
    Running,
    SettingUp,
    State,
    WarmingUp,
    Working,
    wake_at,
)
from core.session.turn import Turn
from core.session.words import say_words

if TYPE_CHECKING:
    from collections.abc import Sequence
    from datetime import datetime
    from typing import Literal

    from core.diary import History, SetRecord
    from core.reading.own_talk import OwnTalk


def step(state: State, event: Event, plan: Plan, history: History, now: datetime) -> Step:
    """Decide what an event means in a state.

    Args:
        state: where the conversation is.
        event: what happened.
        plan: who trains, and the day's circuit.
        history: the trainee's diary, oldest first, voided records included.
        now: the instant (UTC) of the event.

    Returns:
        The new state, what to keep, what to say in this order, and when to look again. Never raises for anything a person texts.
    """
    turn = Turn(plan, history, now)
    forget_asked, state = state.forget_asked, replace(state, forget_asked=False) if state.forget_asked else state
    answered = own.answered(event.text, turn) if forget_asked and isinstance(event, Said) else None
    if answered is True:
        return own.forgotten(turn)
    if plan.trainee.ended_at is not None:
        state = own.ended(state, event, _alarm(state, event, turn), turn)
        own.take_up(turn, asked=forget_asked)
        due_at = None
    else:
        state = _happened(ring(state, turn), event, turn, kept=answered is False)
        own.take_up(turn, asked=forget_asked)
        due_at = unasked.see_to(state, turn)
        state = guarded(state, turn, heard=not isinstance(event, Woke))
    words_at = say_words(state, turn)
    if own.is_asked(event, turn, before=forget_asked):
        state = replace(state, forget_asked=True)
    alarms = [at for at in (wake_at(state), due_at, words_at) if at is not None]
    return Step(state, tuple(turn.entries), tuple(turn.messages), min(alarms, default=None))


def _happened(state: State, event: Event, turn: Turn, *, kept: bool) -> State:
    """What an event makes of a state; `kept` when it is a no to having everything erased."""
    match event:
        case Woke():
            return state
        case Opened():
            turn.keep(Heard(turn.now))
            return _opened(state, turn)
        case Said(text):
            turn.keep(Heard(turn.now))
            if kept:
                turn.say(ForgetNot())
                return state
            return _said(state, text, turn)
        case Edited(text, first_at):
            turn.keep(Heard(turn.now))
            return _edited(state, text, edited.noted_at(turn, first_at), turn)
        case _:
            assert_never(event)


def _alarm(state: State, event: Event, turn: Turn) -> Pain | None:
    """A sign in what was said that stops everything."""
    return _urgent(read(event.text, context_of(state, turn))) if isinstance(event, Said | Edited) else None


def _opened(state: State, turn: Turn) -> State:
    match state:
        case New():
            return onboarding.greet(turn)
        case AskingCautions() | AskingUnit() | AskingRack() | AskingPairs() | AskingMore():
            return onboarding.ask_again(state, turn)
        case Idle():
            turn.say(WelcomeBack(turn.plan.trainee.name))
            say_today(turn)
            return health.offered(state, turn) if state.asking is None else state
        case Paused() if just_stopped(state, turn.now):
            return state
        case _:
            if not turn.messages:  # the clock has not just said so
                say_where(state, turn)
            return state


def _said(state: State, text: str, turn: Turn) -> State:
    acts = _read(state, text, turn)
    alarm = None if health.is_telling_history(state, text, turn) else _urgent(acts)
    said = own_talk(text, turn.plan.coach)
    if alarm is None and said is not None:
        return _own(state, said, turn)
    if isinstance(state, New | AskingCautions | AskingUnit | AskingRack | AskingPairs | AskingMore):
        if alarm is not None:
            talk.urgent(Idle(), alarm, turn)  # the question that was open stays open
            return state
        return _before_all(state, text, acts, turn)
    if alarm is not None:
        health.keep_symptoms(state, text, turn)
        return _stop_everything(state, acts, alarm, turn)
    answered = health.heard(state, text, acts, turn) or care.heard(state, text, acts, turn)
    if answered is not None:
        return answered
    if all(isinstance(act, Unclear) for act in acts):
        added = report.add_to_last(state, text, turn)
        if added is not None:
            return added
    return care.told_at_once(_carry_out(state, acts, turn), text, turn)


def _own(state: State, said: OwnTalk, turn: Turn) -> State:
    """What is the trainee's own; what was said before a question to the coach counts, and so does pain inside it."""
    if not isinstance(said, ForCoach):
        own.heard(state, said, turn)
        return state
    after = _said(state, said.before, turn) if said.before else state
    own.heard(state, said, turn)
    if said.question is None or not isinstance(after, Running | Idle):
        return after
    pains = [act for act in read(said.question, context_of(after, turn)) if isinstance(act, Pain)]
    return _carry_out(after, pains, turn)


def _edited(state: State, text: str, records: tuple[SetRecord, ...], turn: Turn) -> State:
    """A changed text corrects the sets it had noted; one that had noted none counts as said now."""
    if not records or not isinstance(state, Running | Idle):
        return _said(state, text, turn)
    alarm = _urgent(read(text, context_of(state, turn)))
    if alarm is not None:
        return _stop_everything(state, (alarm,), alarm, turn)
    edited.correct(records, text, turn)
    return state


def _urgent(acts: Sequence[Act]) -> Pain | None:
    """A sign that stops everything; pain in the jaw is one whatever else is known of it (entry 45)."""
    return next((act for act in acts if isinstance(act, Pain) and (act.urgent or act.place == "jaw")), None)


def _before_all(state: New | onboarding.First, text: str, acts: Sequence[Act], turn: Turn) -> State:
    """The first talk; after a warning sign it goes on once the trainee is cleared."""
    if bar_now(turn) is Bar.URGENT:
        told = health.heard(state, text, acts, turn)
        if told is None:
            turn.say(needed(turn, Bar.URGENT))
            return state
        if bar_now(turn) is Bar.URGENT:
            return told
    elif not isinstance(state, New):
        return onboarding.answer(state, acts, turn)
    return onboarding.greet(turn) if isinstance(state, New) else onboarding.ask_again(state, turn)


def _stop_everything(state: Running | Idle, acts: Sequence[Act], alarm: Pain, turn: Turn) -> Idle:
    """Stop for an urgent sign; a set reported in the same breath is kept, and nothing but the warning is said."""
    logs = [act for act in acts if isinstance(act, Log)]
    if logs and report.place_asked(state, turn) is not None:
        report.take_logs(state, logs, turn)
        turn.messages.clear()
    return talk.urgent(state, alarm, turn)


def _read(state: State, text: str, turn: Turn) -> tuple[Act, ...]:
    """Read a text in the light of what is awaited; a full report also counts where a choice was offered.

    Between workouts what is said of days and zones is looked for first; a bare place answers "where are you?" when it is nothing
    else.
    """
    if isinstance(state, Idle) and (said := calendar_talk(text, turn.today)) is not None:
        return (said,)
    workout = report.workout_of(state) if isinstance(state, Running | Idle) else None
    if workout is not None and workout.question is not None and workout.question.choices:
        count = len(workout.question.choices)
        acts = read(text, Context(unit=turn.plan.trainee.unit, awaiting=Awaiting.CHOICE, choices=count))
        if any(isinstance(act, Answer) and act.choice is not None for act in acts):
            return acts
    acts = read(text, context_of(state, turn))
    if isinstance(state, Idle) and state.asked == "zone" and all(isinstance(act, Unclear) for act in acts):
        place = calendar_talk(text, turn.today, zone_asked=True)
        return acts if place is None else (place,)
    return acts


def context_of(state: State, turn: Turn) -> Context:
    """What is awaited in a state, for the reader."""
    unit = turn.plan.trainee.unit
    match state:
        case New() | AskingCautions():
            return Context(awaiting=Awaiting.YES)
        case AskingUnit():
            return Context(awaiting=Awaiting.UNIT)
        case AskingRack():
            return Context(unit=unit, awaiting=Awaiting.RACK)
        case AskingPairs() | AskingMore():
            return Context(unit=unit, awaiting=Awaiting.YES)
        case _:
            return _workout_context(state, turn)


def _workout_context(state: Running | Idle, turn: Turn) -> Context:
    unit, zone = turn.plan.trainee.unit, turn.plan.trainee.zone
    workout, place = report.workout_of(state), report.place_asked(state, turn)
    quiet = Awaiting.GO if isinstance(state, Idle | SettingUp | Paused | WarmingUp) else Awaiting.NONE
    if workout is None:
        return Context(unit=unit, awaiting=quiet, today=turn.today.isoformat(), zone=zone)
    done = turn.sets_of(workout)
    last = None
    if done:
        load = done[-1].load
        last = LastSet(done[-1].reps, None if load is None else load.amount, None if load is None else load.unit, done[-1].side)
    if place is None:
        told = Awaiting.REPS if done and isinstance(state, Resting | Working) else quiet  # a bare number corrects, or comes twice
        return Context(unit=unit, awaiting=told, last=last, today=turn.today.isoformat(), zone=zone)
    prescribed = workout.prescriptions[place.station - 1]
    movement = exercise_at(workout, place)
    wanted = None if prescribed is None or prescribed.load is None else prescribed.load.in_unit(unit)
    hold = movement.measure is not Measure.REPS
    station = workout.circuit.stations[place.station - 1]
    return Context(
        unit=unit,
        load=wanted or None,
        target=station.work_s if hold else (None if prescribed is None else prescribed.reps_high),
        sides=sided(workout, place),
        awaiting=Awaiting.REPS if workout.open or not isinstance(state, Idle) else quiet,
        last=last,
        today=turn.today.isoformat(),
        zone=zone,
        hold=hold,
    )


def _carry_out(state: Running | Idle, acts: Sequence[Act], turn: Turn) -> State:
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
    workout = report.workout_of(state)
    return state if workout is None else report.with_workout(state, replace(workout, unanswered=0))


def _logs(state: Running | Idle, logs: Sequence[Log], felt: Literal["heavy", "light"] | None, turn: Turn) -> Running | Idle:
    if isinstance(state, Idle) and report.place_asked(state, turn) is None:
        turn.say(NothingRuns(turn.plan.circuit.name))
        return state
    after = report.take_logs(state, logs, turn, felt)
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
            return report.amend(state, act, turn)
        case Undo():
            return report.undo(state, turn)
        case Answer(choice=int(number)):
            return report.choose(state, number, turn)
        case Remind():
            remind(turn, act)
        case Snooze():
            snooze(turn, act)
        case Skip(what="day"):
            skip_day(turn)
        case Repeat() | HalfOfDay() | Away() | Move() | InZone() | MyReminders():
            return calendar(turn, state, act)
        case Have():
            return onboarding.more_rack(act, turn)
        case Pain():
            turn.note_pain(act.place, act.side, None, urgent=False)
            turn.keep_note(NoteKind.PAIN, talk.told_place(act.place, turn))
            turn.say(PainHeard(act.place))
            return replace(state, asking=Asking.PAIN)
        case Pause() | Finish() | Skip() | Swap() | Feel() | TimeLeft() | Again():
            turn.say(NothingRuns(turn.plan.circuit.name))
        case Unclear() | Answer() | Log():
            if report.place_asked(state, turn) is not None and isinstance(act, Unclear) and act.choices:
                return report.ask_unclear(state, [log for one in act.choices for log in one if isinstance(log, Log)], turn)
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
            return report.amend(state, act, turn)
        case Undo():
            return report.undo(state, turn)
        case Answer(choice=int(number)):
            return report.choose(state, number, turn)
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
        case Remind() | Snooze() | Repeat() | HalfOfDay() | Away() | Move() | InZone() | MyReminders():
            turn.say(NotUnderstood(_expected(state)))
        case Help() | Form() | Progress() | Units():
            _inform(state, act, turn)
        case _:
            assert_never(act)
    return state


def _unclear(state: Running, choices: Sequence[Log], turn: Turn) -> State:
    if report.place_asked(state, turn) is None or (isinstance(state, Working) and not state.workout.open):
        turn.say(NotUnderstood(_expected(state)))
        return state
    return report.ask_unclear(state, choices, turn)


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
    items = tuple(onboarding.item_of(item, turn.plan.trainee.unit) for item in act.items)
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
