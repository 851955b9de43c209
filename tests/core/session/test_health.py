"""The health questions step by step: what they come to, who reads the answers, when they are asked again."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bot.store.diary_values import ANSWERS_MAX
from core import messages
from core.health import AgeBand, Condition, Health, NoteKind, Outcome, Topic, answers_of, outcome_value, read_outcome
from core.session.moment import moment, still_fits
from tests.house.test_messages import HEALTHS
from tests.walking import MORNING, Walk, after_a_day, known_and_trained


def test_the_first_talk_reaches_the_warm_up_in_four_messages():
    """Whoever leaves the questions out is not slowed down: yes, kg, rack, go."""
    walk = Walk().opens().says("yes", "kg", "a pair of 8s, 12s and a 16", "go")
    assert walk.kinds() == ["WarmUp"]
    assert walk.state.workout.ease > 0
    assert walk.says("go").kinds() == ["Card"]
    assert walk.says("go").kinds() == ["Go"]


def test_left_out_questions_are_light_and_asked_again_next_time():
    """The second workout says why it is lighter, and the end of the first offers the questions again."""
    walk = Walk().opens().says("yes", "kg", "a pair of 8s, 12s and a 16", "go", "go", "go")
    walk.waits(61).says("12", "finish", "7")
    assert walk.kinds() == ["EffortNoted", "HealthOffered"]
    after_a_day(walk).says("go")
    assert walk.kinds() == ["LighterDay", "WarmUp"]
    assert walk.says("what do I do today?").said
    assert walk.says("finish", "what do I do today?").said[-1].offer


def test_the_questions_are_gone_on_with_where_they_were_left():
    """Also after a workout in between; an answer is asked for once."""
    walk = Walk().opens().says("yes", "kg", "no weights", "ok", "34", "no", "go", "go", "finish", "health")
    assert walk.said == [messages.HealthAsked(Topic.CONDITIONS, "Coach Wren", again=False)]


def test_under_18_ends_the_questions_and_nothing_starts():
    """No more is asked than is needed, and only the coach's word counts."""
    walk = Walk().opens().says("yes", "kg", "no weights", "ok", "16")
    assert walk.said[-1].outcome is Outcome.WAIT
    assert walk.says("go").kinds() == ["ClearanceNeeded"]
    assert walk.says("I am cleared").kinds() == ["ClearanceNeeded"]


def test_new_answers_cannot_be_used_to_slip_past_a_clearance():
    """Asking to change the answers frees nothing until the deciding one is changed, and a skipped one keeps the old."""
    walk = Walk().opens().says("yes", "kg", "no weights", "ok", "58", "no", "none", "3 sometimes", "1", "none", "no", "no")
    walk.says("go")
    assert walk.kinds() == ["ClearanceNeeded"]
    assert walk.says("change my health answers", "go").kinds() == ["ClearanceNeeded"]
    walk.says("health", "skip", "skip", "skip", "skip", "skip", "skip", "skip")
    assert walk.says("go").kinds() == ["ClearanceNeeded"]


def test_a_clearance_counts_for_the_answers_it_was_told_after():
    """A sign that is new since then needs one of its own."""
    health = Health(open=(), age=AgeBand.MIDDLE, conditions=(Condition.HEART,), decided_at=MORNING, finished_at=MORNING)
    walk = Walk(known=True)
    walk.ledger = replace(walk.ledger, trainee=replace(walk.ledger.trainee, health=health))
    assert walk.says("go").kinds() == ["ClearanceNeeded"]
    assert walk.says("I am cleared", "go").kinds() == ["LighterDay", "WarmUp"]
    after_a_day(walk.says("finish")).says("change my health answers", "52", "no", "1", "I get dizzy now and then")
    assert walk.says("go").kinds() == ["ClearanceNeeded"]


def test_the_coach_gets_the_outcome_and_no_answer():
    """The notes of a whole health talk hold the outcome, and nothing that was answered."""
    walk = Walk().opens().says("yes", "kg", "no weights", "ok", "58", "no", "2", "none", "left knee", "no", "no", "no")
    assert [(note.kind, note.value) for note in walk.history.notes] == [(NoteKind.OUTCOME, Outcome.CLEARANCE)]


def test_the_coach_gets_the_answers_of_who_agreed():
    """With a yes to the last question the note holds every answer given, and none that was left out."""
    walk = Walk().opens().says("yes", "kg", "no weights", "ok", "58", "skip", "2", "none", "left knee", "no", "no", "yes")
    assert [read_outcome(note.value) for note in walk.history.notes] == [
        (
            Outcome.CLEARANCE,
            (
                (Topic.AGE, ("40-64",)),
                (Topic.CONDITIONS, ("metabolic",)),
                (Topic.SYMPTOMS, ()),
                (Topic.INJURIES, ("left knee",)),
                (Topic.ACTIVITY, ("no",)),
                (Topic.MEDICINE, ("no",)),
            ),
        )
    ]


def test_an_agreement_does_not_reach_answers_that_end_before_it_is_asked_again():
    """Whoever agreed once, and answers anew up to where the talk ends early, has not agreed to these answers."""
    walk = Walk().opens().says("yes", "kg", "no weights", "ok", "34", "no", "none", "none", "none", "yes", "no", "yes")
    walk.says("change my health answers", "34", "yes")
    assert [note.value for note in walk.history.notes][-1] == Outcome.WAIT


@pytest.mark.parametrize("answer", ["no", "skip"])
def test_an_agreement_is_taken_back_by_a_no_or_by_leaving_it_out(answer):
    """The note after it holds the outcome alone."""
    walk = Walk().opens().says("yes", "kg", "no weights", "ok", "34", "no", "none", "none", "none", "yes", "no", "yes")
    walk.says("change my health answers", "34", "no", "none", "none", "none", "yes", "no", answer)
    assert [note.value for note in walk.history.notes][-1] == Outcome.GO


@settings(derandomize=True, deadline=None)
@given(HEALTHS, st.sampled_from(list(Outcome)))
def test_a_note_on_an_outcome_is_read_as_it_was_written(health, outcome):
    """Every set of answers, empty lists and those left out included; longer than may be stored is none."""
    value = outcome_value(outcome, health, answers=True)
    assert read_outcome(value) == (outcome, answers_of(health))
    assert len(value) <= ANSWERS_MAX


# Asked again


@pytest.mark.parametrize(("days", "asked"), [(88, False), (91, True)])
def test_the_questions_are_asked_again_after_90_days_away(days, asked):
    """Common practice, no source: as long as what counts as being active takes (entry 43)."""
    walk = after_a_day(known_and_trained("finish", "5"), days).opens()
    assert walk.said[-1].offer is asked
    assert (walk.says("ok").kinds() == ["HealthAsked"]) is asked


@pytest.mark.parametrize(("days", "asked"), [(364, False), (365, True)])
def test_the_questions_are_asked_again_after_a_year(days, asked):
    """Common practice, no source: also of somebody who never stayed away for long."""
    walk = known_and_trained("finish", "5")
    for _ in range(6):
        after_a_day(walk, 60).says("go", "go", "go").waits(61).says("9, 2 left", "finish", "5")
    walk.waits((MORNING + timedelta(days=days) - walk.now).total_seconds()).opens()
    assert walk.said[-1].offer is asked


def test_asked_again_every_question_comes_anew_and_old_answers_hold_until_then():
    """The first question first; breaking off frees nobody and changes nothing."""
    walk = after_a_day(known_and_trained("finish", "5"), 91).opens().says("ok")
    assert walk.said == [messages.HealthAsked(Topic.AGE, "Coach Wren", again=False)]
    assert walk.says("later").ledger.trainee.health.age is AgeBand.ADULT


def test_a_button_of_an_earlier_question_is_no_answer_to_a_later_one():
    """A "no" that was offered for one topic does not fit the next."""
    walk = Walk().opens().says("yes", "kg", "no weights", "ok", "34")
    then = moment(walk.state)
    assert still_fits("HealthAsked", then, moment(walk.state))
    walk.says("no")
    assert not still_fits("HealthAsked", then, moment(walk.state))
