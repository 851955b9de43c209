"""One step of the conversation: a state and an event in; a state, entries for the diary, messages and a wake-up out.

What is due by a workout's clock is done first, so that a text is always read in the state it was written in. A text is read once,
in the light of what is awaited (`awaited`); its acts are then carried out in the order written (`carrying_out`). An urgent sign
goes before everything else. Reminders that are due come last: a text that starts the workout or puts the day off answers them
before they are said. What is the trainee's own (`own`) goes before everything but an urgent sign, and changes no clock.
"""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, assert_never

from core.diary import Heard
from core.health import Bar
from core.messages import WelcomeBack
from core.own_messages import ForgetNot
from core.reading import read
from core.reading.acts import Log, Pain, Unclear
from core.reading.own_talk import ForCoach, own_talk
from core.session import care, edited, health, onboarding, own, talk, unasked
from core.session.awaited import context_of, read_in
from core.session.belonging import place_asked
from core.session.carrying_out import carry_out, return_manners
from core.session.corrections import add_to_last
from core.session.cues import just_stopped
from core.session.events import Edited, Opened, Said, Step, Woke
from core.session.named_place import with_named_last
from core.session.opening import say_today
from core.session.report import take_logs
from core.session.ring import ring, say_where
from core.session.standing import bar_now, guarded, needed
from core.session.states import AskingCautions, AskingMore, AskingPairs, AskingRack, AskingUnit, Idle, New, Paused, Running, wake_at
from core.session.turn import Turn
from core.session.words import say_words

if TYPE_CHECKING:
    from collections.abc import Sequence
    from datetime import datetime

    from core.diary import History, SetRecord
    from core.reading.acts import Act
    from core.reading.own_talk import OwnTalk
    from core.session.events import Event, Plan
    from core.session.states import State


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
    state, acts = _read(state, text, turn)
    alarm = None if health.is_telling_history(state, text, turn) else _urgent(acts)
    said = own_talk(text, turn.plan.coach)
    if alarm is None and said is not None:
        return _own(state, said, turn)
    if isinstance(state, New | AskingCautions | AskingUnit | AskingRack | AskingPairs | AskingMore):
        if alarm is not None:
            talk.urgent(Idle(), alarm, turn)  # the question that was open stays open
            return state
        if isinstance(state, AskingMore) and onboarding.is_left(acts):
            now = onboarding.keep_more(state, turn)
            return _said(now, text, turn) if isinstance(now, Idle) else now
        return _before_all(state, text, acts, turn)
    if alarm is not None:
        health.keep_symptoms(state, text, turn)
        return _stop_everything(state, acts, alarm, turn)
    answered = health.heard(state, text, acts, turn) or care.heard(state, text, acts, turn)
    if answered is not None:
        return answered
    if all(isinstance(act, Unclear) for act in acts):
        added = add_to_last(state, text, turn)
        if added is not None:
            return added
        if return_manners(state, text, turn):
            return state
    return care.told_at_once(carry_out(state, acts, turn), text, turn)


def _read(state: State, text: str, turn: Turn) -> tuple[State, tuple[Act, ...]]:
    """The acts of a text; a report is read for the set that it names, where it names one."""
    if isinstance(state, Running | Idle):
        named = with_named_last(state, text, turn)
        acts = read_in(named, text, turn)
        if named is state or any(isinstance(act, Log) for act in acts):
            return named, acts
    return state, read_in(state, text, turn)


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
    return carry_out(after, pains, turn)


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
    if logs and place_asked(state, turn) is not None:
        take_logs(state, logs, turn)
        turn.messages.clear()
    return talk.urgent(state, alarm, turn)
