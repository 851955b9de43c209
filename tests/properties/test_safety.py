"""Nothing leads past the safety outcome: whole conversations of random words, moments and absences."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bot.wording import worded
from core import messages
from core.diary import Ending
from core.health import Bar, Health, NoteKind, Symptom
from core.safety.gate import bar
from core.session.states import Idle
from tests.properties.test_session import TEXTS, take
from tests.walking import MORNING, Walk

URGENT = [
    "chest pain",
    "I feel dizzy",
    "11 at 12kg but my chest feels tight",
    "i fainted",
    "sudden bad headache",
    "I can't breathe",
    "my left arm went numb",
    "go, oh and my jaw hurts and chest pain",
]
CARE = [
    "ok",
    "health",
    "change my health answers",
    "34",
    "none",
    "skip",
    "later",
    "no",
    "1 and 3",
    "left knee",
    "slept badly",
    "ill",
    "fever",
    "fine now",
    "still hurts",
    "sharp, new",
    "dull, known",
    "more rest",
    "lighter",
    "7",
    "just kidding",
    "am I cleared?",
    "I will be cleared soon",
    "not cleared",
]
LEADING = (
    messages.TodayPlan,
    messages.Reminder,
    messages.WarmUp,
    messages.Card,
    messages.Go,
    messages.HalfWay,
    messages.SecondsLeft,
    messages.SwitchSides,
    messages.Down,
    messages.GetReady,
    messages.BackNow,
    messages.AlreadyGoing,
    messages.LoadChanged,
    messages.Swapped,
    messages.NothingRuns,
    messages.HelpShown,
    messages.NotUnderstood,
    messages.FormShown,
    messages.StillThere,
    messages.WhereWeWere,
    messages.Summary,
    messages.PainStop,
    messages.PainAdvice,
    messages.TooMuchSeen,
    messages.HealthOffered,
    messages.ClearanceNoted,
)
SAYS_GO = re.compile(r'"go"|\bGO!')
EVENTS = st.one_of(
    st.sampled_from([*TEXTS, *CARE]).map(lambda text: ("says", text)),
    st.sampled_from([1, 15, 61, 700, 90_000]).map(lambda seconds: ("waits", seconds)),
    st.sampled_from([3, 400, 9000, 200_000]).map(lambda seconds: ("sleeps", seconds)),
    st.just(("opens",)),
)


def leads_on(message: messages.Message) -> bool:
    """Whether a message names a load to use, says "go", or shows the way to a station."""
    if isinstance(message, LEADING):
        return True
    if isinstance(message, messages.Noted) and message.next_load is not None:
        return True
    return bool(SAYS_GO.search(worded(message).text.replace("\n", " "))) or "go" in worded(message).replies


@settings(derandomize=True, max_examples=150, deadline=None)
@given(
    known=st.booleans(),
    before=st.lists(EVENTS, max_size=12),
    sign=st.sampled_from(URGENT),
    after=st.lists(EVENTS, min_size=1, max_size=30),
)
def test_after_an_urgent_sign_nothing_leads_on_until_cleared(known, before, sign, after):
    """From the message that answers the sign on: no load, no "go", no next station, no workout, whatever is said, however long."""
    walk = Walk(known=known)
    for event in before:
        take(walk, event)
    walk.says(sign)
    assert walk.kinds()[-1] == "UrgentStop"
    assert not any(leads_on(message) for message in walk.said)
    workouts = len(walk.history.workouts)
    for event in after:
        take(walk, event)
        assert not any(leads_on(message) for message in walk.said), walk.said
        assert not hasattr(walk.state, "workout")
        assert len(walk.history.workouts) == workouts
        assert bar(walk.ledger.trainee, walk.history) is Bar.URGENT


@settings(derandomize=True, max_examples=100, deadline=None)
@given(events=st.lists(st.one_of(EVENTS, st.sampled_from([*URGENT, "I am cleared"]).map(lambda text: ("says", text))), max_size=40))
def test_no_workout_runs_while_anything_stands_before_it(events):
    """Over any conversation, clearances included: while a bar stands no workout is open and nothing leads on."""
    walk = Walk(known=True)
    for event in events:
        take(walk, event)
        if bar(walk.ledger.trainee, walk.history) is not None:
            assert not hasattr(walk.state, "workout")
            assert not any(leads_on(message) for message in walk.said), walk.said


@settings(derandomize=True, max_examples=100, deadline=None)
@given(events=st.lists(st.one_of(EVENTS, st.just(("says", "I am cleared"))), max_size=25))
def test_a_clearance_is_never_taken_on_the_day_of_the_sign(events):
    """Whatever is said within eight hours of the sign, it still stands."""
    walk = Walk(known=True)
    walk.says("go", "go", "go", "chest pain")
    at = walk.now
    for event in events:
        take(walk, event)
        if (walk.now - at).total_seconds() < 8 * 3600:
            assert bar(walk.ledger.trainee, walk.history) is Bar.URGENT


def test_a_sign_at_the_very_instant_of_a_clearance_stands():
    """A clearance counts for signs told before it, never for one told with it or after."""
    walk = Walk(known=True).says("chest pain").waits(86_400).says("I am cleared")
    assert walk.kinds()[0] == "ClearanceNoted"
    walk.says("I feel dizzy", "go")
    assert walk.kinds() == ["ClearanceNeeded"]
    walk.waits(86_400)
    assert walk.says("go").kinds() == ["ClearanceNeeded"]
    assert walk.says("I am cleared").kinds()[0] == "ClearanceNoted"


@pytest.mark.parametrize("sign", URGENT)
@pytest.mark.parametrize(
    "way", [(), ("go",), ("go", "go"), ("go", "go", "go"), ("go", "go", "go", "pause"), ("go", "go", "finish")]
)
def test_a_sign_stops_every_state_in_the_same_message(sign, way):
    """Idle, warming up, setting up, working, paused, after the end: one message, the workout closed, the coach's note kept."""
    walk = Walk(known=True).says(*way, sign)
    assert walk.kinds() == ["UrgentStop"]
    assert isinstance(walk.state, Idle)
    assert [note.kind for note in walk.history.notes if note.kind is NoteKind.URGENT] == [NoteKind.URGENT]
    assert all(workout.ended_at is not None for workout in walk.history.workouts)


@pytest.mark.parametrize("answers", [(), ("yes",), ("yes", "kg"), ("yes", "kg", "8, 12 and 16 kg dumbbells")])
def test_a_sign_in_the_first_talk_stops_it_and_cleared_goes_on_with_it(answers):
    """From the very first message on; the question that was open comes back when the trainee is cleared, not before."""
    walk = Walk().opens().says(*answers, "chest pain")
    assert walk.kinds() == ["UrgentStop"]
    state = walk.state
    assert walk.says("yes").kinds() == ["ClearanceNeeded"]
    walk.waits(86_400)
    assert walk.says("yes").kinds() == ["ClearanceNeeded"]
    assert walk.says("I am cleared").kinds()[0] == "ClearanceNoted"
    assert walk.state == state


def test_a_running_workout_is_closed_by_the_last_look_whoever_raised_the_bar():
    """Should something stand before a workout that runs (an older program's state), the step ends it and says nothing else."""
    walk = Walk(known=True).says("go", "go", "go")
    plan_health = Health(symptoms=(Symptom.CHEST,), decided_at=MORNING)
    walk.ledger = replace(walk.ledger, trainee=replace(walk.ledger.trainee, health=plan_health))
    walk.waits(61)
    assert isinstance(walk.state, Idle)
    assert walk.said == []
    assert walk.history.workouts[-1].ending is Ending.PAIN
    assert walk.says("go").kinds() == ["ClearanceNeeded"]
