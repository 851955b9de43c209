"""The coach's side: a circuit or a plan is typed, shown, put in force with a yes, and taken back with an undo."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from decimal import Decimal

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from core.circuit import Span
from core.coach.showing import week_shown
from core.coach.states import CircuitReviewed
from core.coach.step import step
from core.coach.typing import read_plan
from core.coach_messages import (
    BoardHelp,
    CircuitAdvice,
    CircuitShown,
    CircuitsListed,
    CircuitUnknown,
    CoachNotUnderstood,
    InForce,
    InForceAsked,
    NothingAsked,
    NothingToTakeBack,
    PlanShown,
    PlansShown,
    PutAside,
    TakenBack,
    ToMend,
    WeekShown,
)
from core.session.events import Opened, Woke
from core.trainee import Block
from tests.core.coaching import ANA, BEN, DEMO, KITCHEN, MARKET, NOW, STAIRS, TODAY, Talk, client, told

TYPED = "goblet squat / one-arm row, each side / push-up / plank / 60 work 45 rest, 3 rounds"


def test_a_typed_circuit_is_in_force_two_messages_later():
    """Typed, shown with its times, and with a yes it is on for everyone and for whoever comes."""
    talk = Talk(ANA, BEN).says(f"name: Spring / {TYPED}")
    shown = talk.the(CircuitShown)
    assert (shown.work_s, shown.rest_s, shown.total_s) == (300, Span(135, 135), Span(1395, 1395))
    assert talk.changes == ()
    talk.says("yes")
    assert {one.circuit.name for one in talk.desk.clients} == {"Spring"}
    assert talk.desk.newcomers == "Spring"
    assert talk.the(InForce).whom == ("Ana", "Ben")


def test_all_faults_come_at_once_and_nothing_changes():
    """Three mistakes are three remarks, each with a remedy; a yes after that is about nothing."""
    talk = Talk(ANA).says(TYPED, "goblet sqat / flying carpet / 60 work, 3 rounds, for Zoe")
    places = [remark.place for remark in talk.the(ToMend).faults]
    assert places == ["rest", "station 1, exercise", "station 2, exercise", "for whom"]
    assert all(remark.remedy for remark in talk.the(ToMend).faults)
    assert talk.says("yes").the(NothingAsked)
    assert talk.desk == Talk(ANA).desk


def test_advice_is_given_and_refuses_nothing():
    """The same grip twice is worth a thought; a yes puts it in force all the same."""
    talk = Talk(ANA).says("one-arm row, each side / suitcase carry, each side / 40 work 30 rest, 3 rounds, 5 min warm-up")
    assert any("grip" in remark.says for remark in talk.the(CircuitAdvice).remarks)
    assert talk.says("yes").changes


def test_a_circuit_without_a_warm_up_is_noticed():
    """Starting cold is advised against; with a warm-up nothing is said of it."""
    assert [one.says for one in Talk().says(TYPED).the(CircuitAdvice).remarks] == ["no warm-up"]
    assert not [one for one in Talk().says(f"{TYPED}, 5 min warm-up").said if isinstance(one, CircuitAdvice)]


def test_a_total_far_from_the_minutes_asked_for_is_told():
    """Ten minutes are too few for three rounds of this; half an hour is well enough."""
    for minutes, said in ((10, True), (30, False)):
        talk = Talk().says(f"{TYPED}, 5 min warm-up, in {minutes} min")
        remarks = [remark for one in talk.said if isinstance(one, CircuitAdvice) for remark in one.remarks]
        assert any(f"asked for {minutes} min" in remark.says for remark in remarks) is said
        assert talk.the(CircuitShown).total_s == Span(1695, 1695)


def test_a_no_drops_what_was_shown():
    """And nothing has changed."""
    talk = Talk(ANA).says(TYPED, "no")
    assert talk.the(PutAside).name == "Circuit of 4 Mar"
    assert talk.desk == Talk(ANA).desk
    assert talk.says("no").the(NothingAsked)


def test_a_known_name_replaces_the_circuit_for_those_who_have_it():
    """Ana and Ben have the kitchen circuit, Cleo another: hers stays, and newcomers get what they got."""
    cleo = client(3, "Cleo", circuit=STAIRS)
    talk = Talk(ANA, BEN, cleo).says("name: kitchen seven / goblet squat / plank / 40 work 20 rest, 2 rounds")
    asked = talk.the(InForceAsked)
    assert (asked.replaces, asked.whom) == (True, ("Ana", "Ben"))
    talk.says("yes")
    assert [one.circuit.name for one in talk.desk.clients] == [KITCHEN.name, KITCHEN.name, STAIRS.name]
    assert len(talk.desk.circuit(KITCHEN.name).stations) == 2
    assert len(talk.desk.circuits) == 3


@pytest.mark.parametrize("texts", [(f"{TYPED}, for Ana", "yes"), (TYPED, "yes, for Ana"), (f"{TYPED}, for Ben", "yes for ana")])
def test_a_circuit_can_be_for_one_person(texts):
    """Said with the circuit or with the yes; who is named last counts."""
    talk = Talk(ANA, BEN).says(*texts)
    assert [one.circuit.name for one in talk.desk.clients] == ["Circuit of 4 Mar", KITCHEN.name]
    assert talk.desk.newcomers == KITCHEN.name


def test_an_undo_brings_everything_back():
    """Circuits, plans and what newcomers get are as before, whatever was put in force last."""
    planned = told(BEN, block=DEMO.plan)
    for texts in (
        (TYPED, "yes"),
        ("name: Kitchen seven / plank / 40 work 20 rest, 2 rounds", "yes"),
        ("plan Market day on tue sat, 6 weeks", "yes"),
    ):
        talk = Talk(ANA, planned)
        before = talk.desk
        talk.says(*texts)
        assert talk.desk != before
        talk.says("undo")
        assert talk.the(TakenBack)
        assert [(one.trainee, one.circuit) for one in talk.desk.clients] == [(one.trainee, one.circuit) for one in before.clients]
        assert not any(talk.words(one.name) for one in talk.desk.clients)
        assert talk.desk.newcomers == before.newcomers
        assert set(talk.desk.circuits) == set(before.circuits)
        assert talk.says("undo").the(NothingToTakeBack)


def test_an_undo_leaves_an_open_question_open():
    """What was shown and not yet answered can still be put in force."""
    talk = Talk(ANA).says(TYPED, "yes", "plan Market day on tue, 3 weeks", "undo", "yes")
    assert talk.desk.clients[0].block.circuits == (MARKET,)


def test_a_new_circuit_says_whose_plan_it_ends_and_a_replaced_one_stays_in_the_plan():
    """A plan is not lost without a word."""
    planned = told(ANA, block=DEMO.plan)
    talk = Talk(planned).says(TYPED)
    assert talk.the(InForceAsked).instead == ("Ana",)
    talk.says("name: Market day / plank / 40 work 20 rest, 2 rounds")
    assert talk.the(InForceAsked).instead == ()
    talk.says("yes")
    assert [len(circuit.stations) for circuit in talk.desk.clients[0].block.circuits] == [7, 6, 1]


def test_somebody_in_the_middle_of_a_workout_is_named():
    """Their workout goes on as it was; the coach is told."""
    assert Talk(replace(ANA, running=True), BEN).says(TYPED, "yes").the(InForce).running == ("Ana",)


def test_a_plan_is_shown_day_by_day_with_its_week_and_given_with_a_yes():
    """Three circuits take turns on three days for four weeks, the last one easier."""
    talk = Talk(ANA, BEN).says("plan: Kitchen seven, Staircase six then Market day on Monday, Wednesday and Friday, for Ana")
    shown = talk.the(PlanShown)
    assert (shown.weeks, shown.easier_weeks) == (4, (4,))
    assert [(turn.day, turn.circuit) for turn in shown.turns] == [
        ("mon", KITCHEN.name),
        ("wed", STAIRS.name),
        ("fri", MARKET.name),
    ]
    assert talk.the(WeekShown).days == 3
    talk.says("yes")
    assert talk.desk.clients[0].block == Block((KITCHEN, STAIRS, MARKET), ("mon", "wed", "fri"), 4, (4,), TODAY)
    assert talk.desk.clients[1].block is None


@pytest.mark.parametrize(
    ("text", "days", "weeks", "easier", "starts"),
    [
        ("Kitchen seven on tue thu sat", ("tue", "thu", "sat"), 4, (4,), TODAY),
        ("kitchen seven, tuesdays and thursdays, six weeks", ("tue", "thu"), 6, (6,), TODAY),
        ("Kitchen seven any day, 3 weeks, no easier week", (), 3, (), TODAY),
        ("8 weeks of Kitchen seven on mon, easier weeks 4 and 8", ("mon",), 8, (4, 8), TODAY),
        ("Kitchen seven on sun, 1 week", ("sun",), 1, (), TODAY),
        ("Kitchen seven on wed from next week", ("wed",), 4, (4,), date(2026, 3, 9)),
    ],
)
def test_a_plan_is_read_as_coaches_type_it(text, days, weeks, easier, starts):
    """Days and weeks in any order, in words or figures; four weeks with an easier one at the end unless said otherwise."""
    assert read_plan(text, (KITCHEN, STAIRS), TODAY) == Block((KITCHEN,), days, weeks, easier, starts)


@pytest.mark.parametrize(
    ("text", "places"),
    [
        ("Kitchen seven", ["the days"]),
        ("Kitchen sevn, Staircase six on mon, 40 weeks", ["the weeks", "the plan"]),
        ("on mon wed", ["the plan"]),
        ("Kitchen seven on mon, easier week 9", ["the easier week"]),
        ("Kitchen seven on mon at 7pm", ["the plan"]),
        ("four weeks", ["the days"]),
    ],
)
def test_what_a_plan_does_not_say_well_is_told_all_at_once(text, places):
    """Nothing is guessed: no days, an unknown circuit, weeks that are none, words left over."""
    faults = read_plan(text, (KITCHEN, STAIRS), TODAY)
    assert [fault.place for fault in faults] == places


def test_the_demo_has_three_circuits_and_a_plan_of_four_weeks():
    """Three different circuits on three days, the fourth week easier."""
    assert (len(DEMO.plan.circuits), DEMO.plan.days, DEMO.plan.weeks, DEMO.plan.easier_weeks) == (3, ("mon", "wed", "fri"), 4, (4,))
    assert len({circuit.name for circuit in DEMO.plan.circuits}) == 3


def test_a_week_of_two_circuits_on_three_days_is_the_mean_of_its_two_weeks():
    """By hand: a squat in A is 3 sets for the quads, a plank in B 3 halves. A B A is 7.5 and B A B 6, so 6.75; one day at least."""
    legs = replace(KITCHEN, name="A", stations=(replace(KITCHEN.stations[0], load_hint=None),))
    none = replace(KITCHEN, name="B", stations=(KITCHEN.stations[-1],))
    shown = week_shown([(legs, none, legs), (none, legs, none)], assumed=False)
    (line,) = [line for line in shown.groups if line.group == "legs"]
    assert (line.sets, line.days, shown.days) == (Decimal("6.75"), 1, 3)
    assert "legs" in shown.few_sets
    assert "legs" in shown.few_days


def test_questions_are_answered_and_change_nothing():
    """Help, the list, plans, one circuit, and one that is not there."""
    talk = Talk(ANA, told(BEN, block=DEMO.plan))
    assert talk.says("help").the(BoardHelp)
    assert len(talk.says("circuits").the(CircuitsListed).circuits) == 3
    assert [one.week for one in talk.says("plans").the(PlansShown).trainees] == [None, 1]
    assert talk.the(WeekShown).circuits == (KITCHEN.name, STAIRS.name, MARKET.name)
    assert talk.says("show market day").the(CircuitShown).name == MARKET.name
    assert talk.says("Market day").the(CircuitShown)
    assert talk.says("show me the moon").the(CircuitUnknown).said == "the moon"
    assert talk.desk == Talk(ANA, told(BEN, block=DEMO.plan)).desk


def test_looking_at_another_circuit_closes_the_question():
    """A yes after that must not put in force what was shown before it."""
    assert Talk(ANA).says(TYPED, "show market day", "yes").the(NothingAsked)


def test_opening_the_chat_again_shows_the_open_question():
    """And an alarm says nothing."""
    talk = Talk(ANA).says(TYPED)
    said = [say.message for say in step(talk.state, Opened(), talk.desk, NOW).messages]
    assert isinstance(said[-1], InForceAsked)
    assert step(talk.state, Woke(), talk.desk, NOW).messages == ()
    assert isinstance(talk.state, CircuitReviewed)


def test_small_talk_is_no_circuit():
    """A sentence without stations or times is not understood, and says so."""
    for text in ("banana", "the weather is nice, isn't it", "?"):
        assert Talk(ANA).says(text).the(CoachNotUnderstood)


@settings(derandomize=True, max_examples=150, deadline=None)
@given(
    st.lists(
        st.sampled_from([TYPED, "yes", "no", "undo", "plan Market day on mon, 2 weeks", "plans", "for Ana", "plank"]), max_size=7
    )
)
def test_whatever_is_said_only_a_yes_or_an_undo_changes_the_desk(texts):
    """Nothing raises, and every other word leaves the desk alone."""
    talk = Talk(ANA, BEN)
    for text in texts:
        before = talk.desk
        talk.says(text)
        assert talk.said
        if text not in {"yes", "undo"}:
            assert talk.desk == before


@settings(derandomize=True, max_examples=200, deadline=None)
@given(st.text(max_size=60))
def test_no_text_raises(text):
    """Anything may be typed, and is answered."""
    assert Talk(ANA).says(text).said
