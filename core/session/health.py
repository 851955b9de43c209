"""The health talk: one question a message, each of which can be left out; it can be left, gone on with, and gone through again."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, Any

from core.diary import PainEased, PainNoted, PainRecord
from core.health import Bar, Branch, Health, Injury, NoteKind, Topic, outcome_value
from core.messages import ClearanceNoted, ClearanceTooSoon, HealthAsked, HealthLater, HealthOffered, HealthOutcome, TodayPlan
from core.reading import health_answers
from core.reading.acts import Answer, Have, Log, Skip, Start, Unclear
from core.reading.health_answers import Left, Stopped
from core.reading.whole_words import says_start
from core.safety.screening import DECIDING, due, next_topic, verdict
from core.session.standing import bar_now, needed, too_soon
from core.session.states import Asking, Closing, Idle, Paused, Resting, SettingUp, State, WarmingUp, Working

if TYPE_CHECKING:
    from collections.abc import Sequence

    from core.reading.acts import Act
    from core.session.turn import Turn

FIELDS = {
    Topic.AGE: "age",
    Topic.PREGNANCY: "pregnant",
    Topic.CONDITIONS: "conditions",
    Topic.SYMPTOMS: "symptoms",
    Topic.INJURIES: "injuries",
    Topic.ACTIVITY: "active",
    Topic.CHECKED: "checked",
    Topic.MEDICINE: "medicine",
    Topic.SHARE: "share",
}
NO_ANSWER = (Answer, Have, Log, Skip, Start, Unclear)


def offered(state: Idle, turn: Turn) -> Idle:
    """Offer the questions, when they are to be asked (again); the day's plan may have said so already."""
    if not wanting(turn) or bar_now(turn) is not None:
        return state
    if not any(isinstance(say.message, TodayPlan) and say.message.offer for say in turn.messages):
        turn.say(HealthOffered())
    return replace(state, asking=Asking.OFFER)


def wanting(turn: Turn) -> bool:
    """Whether the questions are to be asked, or asked again."""
    health = turn.plan.trainee.health
    return due(health, turn.history, turn.now) or verdict(health).branch is Branch.UNANSWERED


def heard(state: State, text: str, acts: Sequence[Act], turn: Turn) -> State | None:
    """What a text means for the health talk; None when it means nothing there and is to be read as usual."""
    running = isinstance(state, WarmingUp | SettingUp | Working | Resting | Paused | Closing)
    wanted = health_answers.wants_health(text)
    if running:
        if wanted is None:
            return None
        turn.say(HealthLater(running=True, free=True))
        return state
    if health_answers.says_cleared(text) and (told := _cleared(state, turn)) is not None:
        return told
    if not isinstance(state, Idle):
        return None
    if wanted is not None:
        return _begin(state, turn, again=wanted == "change")
    if state.asking is Asking.OFFER:
        return _answer_offer(state, text, turn)
    if state.asking is Asking.HEALTH:
        return _answer_topic(state, text, acts, turn)
    return None


def is_telling_history(state: State, text: str, turn: Turn) -> bool:
    """Whether a sign is told as an answer of the health talk, and as one that comes and goes: then it is no alarm."""
    if not isinstance(state, Idle) or state.asking is not Asking.HEALTH:
        return False
    return next_topic(turn.plan.trainee.health) is Topic.SYMPTOMS and health_answers.is_history(text)


def _begin(state: Idle, turn: Turn, *, again: bool) -> Idle:
    """Start, or go on with, the questions: those still open, those left out; all anew when it is time, or `again` is asked for.

    Old answers stay until each is given anew.
    """
    health = turn.plan.trainee.health
    if again or (health.finished_at is not None and due(health, turn.history, turn.now)):
        turn.keep_health(replace(health, open=tuple(Topic)))
    elif not health.open:
        left_out = tuple(topic for topic in Topic if getattr(health, FIELDS[topic]) is None)
        turn.keep_health(replace(health, open=left_out))
    return _ask(state, turn)


def _ask(state: Idle, turn: Turn, *, again: bool = False) -> Idle:
    """Ask the next question, or say what the answers come to."""
    health = turn.plan.trainee.health
    topic = next_topic(health)
    if topic is None:
        return _finish(state, turn)
    turn.say(HealthAsked(topic, turn.plan.coach, again))
    return replace(state, asking=Asking.HEALTH, topic=topic)


def _finish(state: Idle, turn: Turn) -> Idle:
    before = turn.plan.trainee.health
    agreed = before.share and Topic.SHARE not in before.open  # asked since these answers began
    health = replace(before, open=(), finished_at=turn.now)
    turn.keep_health(health)
    found = verdict(health)
    turn.keep_note(NoteKind.OUTCOME, outcome_value(found.outcome, health, answers=agreed))
    places = tuple(injury.place for injury in health.injuries or ())
    turn.say(HealthOutcome(found.outcome, found.branch, turn.plan.coach, places, bool(health.medicine)))
    return replace(state, asking=None, topic=None)


def _answer_offer(state: Idle, text: str, turn: Turn) -> Idle | None:
    if says_start(text):
        return None
    said = health_answers.read_topic(text, Topic.SHARE)
    if said is True:
        return _begin(state, turn, again=False)
    if said is False or isinstance(said, Left | Stopped):
        turn.say(HealthLater(running=False, free=bar_now(turn) is None))
        return replace(state, asking=None)
    return None


def _answer_topic(state: Idle, text: str, acts: Sequence[Act], turn: Turn) -> Idle | None:
    health = turn.plan.trainee.health
    topic = next_topic(health)
    if topic is None or says_start(text):
        return None
    said = health_answers.read_topic(text, topic)
    if isinstance(said, Stopped):
        turn.say(HealthLater(running=False, free=bar_now(turn) is None))
        return replace(state, asking=None)
    if said is None:
        if acts and not all(isinstance(act, NO_ANSWER) for act in acts):
            return None
        return _ask(state, turn, again=True)
    _keep_answer(health, topic, said, turn)
    return _ask(state, turn)


def _keep_answer(health: Health, topic: Topic, said: object, turn: Turn) -> None:
    """Keep an answer, or that it was left out."""
    rest = replace(health, open=tuple(other for other in health.open if other is not topic))
    if isinstance(said, Left):
        turn.keep_health(replace(rest, share=rest.share and topic is not Topic.SHARE))  # silence is no agreement
        return
    field = FIELDS[topic]
    changed = getattr(health, field) != said
    given: dict[str, Any] = {field: said}
    answered = replace(rest, **given)
    if changed and topic in DECIDING:
        answered = replace(answered, decided_at=turn.now)
    turn.keep_health(answered)
    if topic is Topic.INJURIES:
        _watch_injuries(health.injuries or (), answered.injuries or (), turn)


def _watch_injuries(before: Sequence[Injury], now: Sequence[Injury], turn: Turn) -> None:
    """An injury is watched as pain is: what troubles it stays out until the trainee says that it is fine, or names it no more."""
    for injury in before:
        if injury not in now:
            turn.keep(PainEased(injury.place, turn.now))
    for injury in now:
        if injury not in before:
            turn.keep(PainNoted(PainRecord(turn.now, injury.place, injury.side, urgent=False, exercise=None, known=True)))


def keep_symptoms(state: State, text: str, turn: Turn) -> None:
    """A sign told now, while the question about signs was open, is its answer too."""
    if not isinstance(state, Idle) or state.asking is not Asking.HEALTH:
        return
    health = turn.plan.trainee.health
    if next_topic(health) is Topic.SYMPTOMS and isinstance(said := health_answers.read_topic(text, Topic.SYMPTOMS), tuple) and said:
        _keep_answer(health, Topic.SYMPTOMS, said, turn)


def _cleared(state: State, turn: Turn) -> State | None:
    """The trainee is cleared: kept where it can count, refused on the day of a warning sign; None when nothing waits for it."""
    found = bar_now(turn)
    health = turn.plan.trainee.health
    if found is None:
        if verdict(health).branch is not Branch.DISEASE_ACTIVE or not isinstance(state, Idle):
            return None
        turn.keep_health(replace(health, checked=True, decided_at=turn.now))
    elif too_soon(turn):
        turn.say(ClearanceTooSoon())
        return state
    elif found in (Bar.YOUNG, Bar.PREGNANT, Bar.FEVER):
        turn.say(needed(turn, found))
        return state
    turn.keep_note(NoteKind.CLEARED, "trainee")
    still = bar_now(turn)
    if still is not None:  # the sign is lifted, and the coach's word is still to come
        turn.say(needed(turn, still))
        return state
    turn.say(ClearanceNoted(first_talk=not isinstance(state, Idle)))
    return offered(replace(state, asking=None), turn) if isinstance(state, Idle) else state
