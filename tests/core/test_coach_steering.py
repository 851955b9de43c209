"""What a coach changes for one, some or all: wishes, rests, circuits from a day on. Shown, done after a yes, undone."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta
from decimal import Decimal

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from core.changed import Changed, ChangeKind, read_changed
from core.coach.desk import NewcomersGet
from core.coach.states import CircuitReviewed, DeedReviewed, Quiet
from core.coach_messages import CircuitUnknown, InForce, InForceAsked, NothingAsked, PlansShown
from core.deeds import (
    ClipElsewhere,
    DeedAsked,
    DeedDone,
    DeedKind,
    DeedTakenBack,
    InviteElsewhere,
    MovementUnknown,
    NameTaken,
    NoOtherMovement,
    NothingToEnd,
    ReviewNoted,
    WhoMeant,
)
from core.trainee import Coming, Pause
from core.units import Load, Unit
from core.wishes import CardNote, HeldLoad, Swapped, Wishes
from tests.core.coaching import ANA, BEN, CHANGE, CLEO, DEMO, KITCHEN, MARKET, MONDAY, NOW, STAIRS, Talk, client, told

TYPED = "name: Spring / goblet squat / one-arm row, each side / plank / 60 work 45 rest, 3 rounds"
SQUAT, ROW = "goblet-squat", "one-arm-row"


def kg(amount):
    """A load in kilograms."""
    return Load(Decimal(amount), Unit.KG)


def changes_told(talk, name):
    """What somebody is told of changes, in order."""
    return [read_changed(text) for text in talk.words(name, CHANGE)]


@pytest.mark.parametrize(
    ("text", "wishes"),
    [
        ("swap goblet squats for glute bridges for Ana", Wishes(swaps=(Swapped(SQUAT, "glute-bridge"),))),
        ("keep Ana at 12kg on the row", Wishes(holds=(HeldLoad(ROW, kg(12)),))),
        ("hold Ana back", Wishes(holds=(HeldLoad(None, None),))),
        ("note on Ana's row: elbows in, you know why", Wishes(notes=(CardNote(ROW, "elbows in, you know why"),))),
        ("note for Ana: new shoes!", Wishes(notes=(CardNote(None, "new shoes!"),))),
    ],
)
def test_a_wish_for_one_person_is_shown_kept_after_a_yes_and_undone(text, wishes):
    """Ana's alone, Ben has none of it; an undo leaves her without."""
    talk = Talk(ANA, BEN).says(text)
    assert talk.the(DeedAsked).whom == ("Ana",)
    assert talk.changes == ()
    talk.says("yes")
    assert talk.the(DeedDone).whom == ("Ana",)
    assert (talk.of("Ana").trainee.wishes, talk.of("Ben").trainee.wishes) == (wishes, Wishes())
    talk.says("undo")
    assert talk.the(DeedTakenBack)
    assert talk.of("Ana").trainee.wishes == Wishes()


def test_an_exercise_is_the_one_in_their_circuit():
    """A row is the one-arm row where the circuit has only that; the look says so by its whole name."""
    asked = Talk(ANA).says("keep Ana at 12kg on the row").the(DeedAsked)
    assert (asked.deed.exercise, asked.deed.load, asked.not_on) == ("One-arm row", kg(12), ())


def test_an_exercise_that_is_not_on_for_somebody_is_said():
    """Ben does another circuit: the wish is kept for when it comes."""
    talk = Talk(ANA, replace(BEN, circuit=replace(KITCHEN, name="Two", stations=KITCHEN.stations[-1:])))
    assert talk.says("note on the goblet squat for everyone: sit back").the(DeedAsked).not_on == ("Ben",)


def test_a_swap_without_another_exercise_takes_the_catalogues_kinder_one():
    """The easier one of its line, shown by its name before the yes."""
    talk = Talk(ANA).says("swap out the push-ups for Ana")
    assert talk.the(DeedAsked).deed.other == "Knee push-up"


def test_an_exercise_that_nobody_knows_is_asked_about():
    """The nearest are offered, and nothing is changed."""
    talk = Talk(ANA).says("swap goblet squats for flying carpets for Ana")
    assert isinstance(talk.said[0], MovementUnknown)
    assert talk.says("yes").the(NothingAsked)


def test_a_swap_for_the_same_exercise_is_none():
    """It is asked what instead."""
    assert Talk(ANA).says("swap goblet squats for goblet squats for Ana").the(NoOtherMovement).exercise == "Goblet squat"


def test_the_latest_wish_about_an_exercise_counts_and_the_others_stay():
    """Two notes on one card are one; the swap beside them is left alone."""
    talk = Talk(ANA).says("swap goblet squats for glute bridges for Ana", "yes")
    talk.says("note on Ana's row: slow", "yes", "note on Ana's row: elbows in", "yes")
    assert talk.of("Ana").trainee.wishes == Wishes((Swapped(SQUAT, "glute-bridge"),), (), (CardNote(ROW, "elbows in"),))


@pytest.mark.parametrize(
    ("text", "left"),
    [
        ("put Ana back on goblet squats", Wishes((), (HeldLoad(ROW, kg(12)),), (CardNote(ROW, "slow"),))),
        ("let Ana go up again", Wishes((Swapped(SQUAT, "glute-bridge"),), (), (CardNote(ROW, "slow"),))),
        ("take the note off Ana's row", Wishes((Swapped(SQUAT, "glute-bridge"),), (HeldLoad(ROW, kg(12)),), ())),
    ],
)
def test_a_wish_is_ended_as_it_was_made(text, left):
    """Only that one, after a yes; ending what is not there changes nothing and says so."""
    wishes = Wishes((Swapped(SQUAT, "glute-bridge"),), (HeldLoad(ROW, kg(12)),), (CardNote(ROW, "slow"),))
    talk = Talk(told(ANA, wishes=wishes), BEN).says(text, "yes")
    assert talk.of("Ana").trainee.wishes == left
    assert talk.says(text.replace("Ana", "Ben")).the(NothingToEnd).whom == ("Ben",)


def test_a_rest_until_a_day_and_its_end():
    """Kept with when it began; "Ana is back" ends it today, and only where one is on."""
    talk = Talk(ANA, BEN).says("pause Ana until the 14th")
    assert talk.the(DeedAsked).deed.on == date(2026, 3, 14)
    talk.says("yes")
    assert talk.of("Ana").trainee.pause == Pause(NOW, date(2026, 3, 14))
    assert changes_told(talk, "Ana") == [Changed(ChangeKind.PAUSE, on=date(2026, 3, 14))]
    talk.says("ana is back", "yes")
    assert talk.of("Ana").trainee.pause == Pause(NOW, date(2026, 3, 4))
    assert talk.says("ben is back").the(NothingToEnd).kind is DeedKind.PAUSE_ENDED


def test_somebody_who_is_removed_is_off_the_roster_and_an_undo_brings_them_back():
    """Nobody of that name trains any more; all that was kept of them is there again after the undo."""
    talk = Talk(ANA, BEN).says("remove Ben", "yes")
    assert [one.name for one in talk.desk.clients] == ["Ana"]
    assert changes_told(talk, "Ben") == [Changed(ChangeKind.REMOVED)]
    assert talk.says("tell everyone: hello").the(DeedAsked).whom == ("Ana",)
    talk.says("no", "undo")
    assert [one.name for one in talk.desk.clients] == ["Ana", "Ben"]
    assert talk.words("Ben") == []


def test_an_undo_after_a_change_was_told_is_told_too():
    """Whoever has read it reads that it is taken back; whoever has not, hears nothing of either."""
    talk = Talk(ANA, BEN).says("pause Ana and Ben", "yes").hears("Ana").says("undo")
    assert changes_told(talk, "Ana") == [Changed(ChangeKind.UNDONE)]
    assert changes_told(talk, "Ben") == []
    assert talk.of("Ana").trainee.pause is None


def test_somebody_in_their_first_talk_is_told_of_no_change():
    """They see what is on when they are through it."""
    talk = Talk(replace(ANA, new=True)).says("swap goblet squats for glute bridges for Ana", "yes")
    assert talk.words("Ana") == []
    assert talk.of("Ana").trainee.wishes.swaps


def test_a_circuit_of_the_board_comes_on_a_day():
    """From Monday for Ana and Cleo; until then nothing changes, and the plans say what comes."""
    talk = Talk(ANA, BEN, told(CLEO, block=DEMO.plan)).says("put Staircase six up from Monday for Ana and Cleo")
    asked = talk.the(DeedAsked)
    assert (asked.deed.text, asked.deed.on, asked.whom, asked.instead) == (STAIRS.name, MONDAY, ("Ana", "Cleo"), ("Cleo",))
    talk.says("yes")
    assert talk.of("Ana").trainee.coming == Coming(STAIRS, MONDAY)
    assert (talk.of("Ana").circuit, talk.of("Ben").trainee.coming) == (KITCHEN, None)
    assert changes_told(talk, "Ana") == [Changed(ChangeKind.CIRCUIT, STAIRS.name, on=MONDAY)]
    plans = talk.says("plans").the(PlansShown).trainees
    assert [one.comes for one in plans] == [(STAIRS.name, MONDAY), None, (STAIRS.name, MONDAY)]
    talk.now += timedelta(days=5)
    assert [one.circuits[0] for one in talk.says("plans").the(PlansShown).trainees] == [STAIRS.name, KITCHEN.name, STAIRS.name]


def test_a_circuit_of_the_board_for_everyone_is_for_newcomers_too():
    """At once where no day is said; an undo brings back what newcomers got."""
    talk = Talk(ANA, BEN).says("put Market day up for everyone", "yes")
    assert NewcomersGet(MARKET.name) in talk.changes
    assert {one.circuit.name for one in talk.desk.clients} == {MARKET.name}
    talk.says("undo")
    assert ({one.circuit.name for one in talk.desk.clients}, talk.desk.newcomers) == ({KITCHEN.name}, KITCHEN.name)


def test_what_is_put_up_at_once_takes_the_place_of_what_was_coming():
    """The latest word counts; an undo brings back what was coming."""
    talk = Talk(told(ANA, coming=Coming(STAIRS, MONDAY))).says("put Market day up for Ana", "yes")
    assert (talk.of("Ana").circuit, talk.of("Ana").trainee.coming) == (MARKET, None)
    talk.says("undo")
    assert (talk.of("Ana").circuit, talk.of("Ana").trainee.coming) == (KITCHEN, Coming(STAIRS, MONDAY))


def test_a_plan_takes_the_place_of_what_was_coming():
    """And of what has come."""
    talk = Talk(told(ANA, coming=Coming(STAIRS, date(2026, 3, 2)))).says("plan Market day on mon, 3 weeks", "yes")
    assert talk.of("Ana").on(NOW)[1].circuits == (MARKET,)


@pytest.mark.parametrize("text", ["put the new circuit up from Monday", "put it up from Monday for everyone"])
def test_the_new_circuit_is_the_one_that_was_just_shown(text):
    """Typed, looked at, and put up from Monday with the next message: asked again with the day."""
    talk = Talk(ANA, BEN).says(TYPED, text)
    assert talk.the(InForceAsked).from_on == MONDAY
    talk.says("yes")
    assert talk.the(InForce).from_on == MONDAY
    assert [one.trainee.coming.circuit.name for one in talk.desk.clients] == ["Spring", "Spring"]
    assert [one.circuit for one in talk.desk.clients] == [KITCHEN, KITCHEN]


def test_the_new_circuit_is_also_the_one_that_was_put_in_force_or_looked_at():
    """After the yes, or after "show Market day"."""
    talk = Talk(ANA, BEN).says(f"{TYPED}, for Ana", "yes", "put the new circuit up from Monday for Ben")
    assert (talk.the(DeedAsked).deed.text, talk.the(DeedAsked).whom) == ("Spring", ("Ben",))
    assert Talk(ANA).says("show Market day", "put it up from Monday").the(DeedAsked).deed.text == MARKET.name


def test_the_new_circuit_without_any_is_asked_about():
    """Which are there is said."""
    assert Talk(ANA).says("put the new circuit up from Monday").the(CircuitUnknown).there_are


@pytest.mark.parametrize(
    ("ending", "whom"),
    [
        (", from Monday", ("Ana", "Ben")),
        (", for everyone from Monday", ("Ana", "Ben")),
        (", from Monday for Ana", ("Ana",)),
        ("\nfrom the 9th\nfor Ben", ("Ben",)),
    ],
)
def test_a_typed_circuit_can_begin_on_a_day(ending, whom):
    """On the board now, on for these from Monday; an undo takes both away."""
    talk = Talk(ANA, BEN).says(TYPED + ending)
    asked = talk.the(InForceAsked)
    assert (asked.whom, asked.from_on) == (whom, MONDAY)
    talk.says("yes")
    assert talk.desk.circuit("Spring") is not None
    assert tuple(one.name for one in talk.desk.clients if one.trainee.coming is not None) == whom
    talk.says("undo")
    assert talk.desk.circuit("Spring") is None
    assert not any(one.trainee.coming for one in talk.desk.clients)


@pytest.mark.parametrize(("day", "first"), [("Wednesday", date(2026, 3, 11)), ("the 6th", date(2026, 3, 6)), ("next week", MONDAY)])
def test_a_day_of_the_week_that_is_today_is_the_next_one(day, first):
    """From Wednesday, said on a Wednesday, is in a week; any other day is the first that is so called."""
    assert Talk(ANA).says(f"put it up from {day}", f"{TYPED}, from {day}").the(InForceAsked).from_on == first


def test_a_circuit_that_is_there_cannot_begin_later_under_its_own_name():
    """It would change at once for whoever has it: another name is asked for."""
    talk = Talk(ANA).says("name: Kitchen seven / plank / push-up / 40 work 20 rest, 2 rounds, from Monday")
    assert talk.the(NameTaken) == NameTaken(KITCHEN.name, MONDAY)
    assert talk.state == Quiet()


def test_a_day_that_is_today_is_at_once():
    """From today is from the next workout on."""
    talk = Talk(ANA).says("put Market day up from today for Ana", "yes")
    assert (talk.of("Ana").circuit, talk.of("Ana").trainee.coming) == (MARKET, None)


def test_a_circuit_typed_for_a_name_that_two_bear_is_a_fault():
    """It is said which Mias there are, and nothing is shown to a wrong one."""
    talk = Talk(client(4, "Mia Berg"), client(5, "Mia Lund")).says(f"{TYPED}, for Mia")
    (fault,) = [fault for message in talk.said for fault in message.faults]
    assert fault.remedy == "say which: Mia Berg or Mia Lund"
    assert isinstance(Talk(client(4, "Mia Berg"), BEN).says(f"{TYPED}, for Mia").state, CircuitReviewed)


def test_what_changes_for_them_is_told_to_those_who_train():
    """A circuit put in force, a plan, a swap: each in a word of its own."""
    talk = Talk(ANA, BEN).says(f"{TYPED}, for Ana", "yes")
    assert changes_told(talk, "Ana") == [Changed(ChangeKind.CIRCUIT, "Spring")]
    assert changes_told(talk, "Ben") == []
    talk.says("plan Market day on mon, 2 weeks, for Ben", "yes")
    assert changes_told(talk, "Ben") == [Changed(ChangeKind.PLAN, MARKET.name)]


def test_somebody_in_the_middle_of_a_workout_is_named_after_the_yes():
    """Their workout goes on as it was."""
    talk = Talk(replace(ANA, running=True), BEN).says("swap goblet squats for glute bridges for everyone", "yes")
    assert talk.the(DeedDone).running == ("Ana",)


def test_when_the_week_is_told_is_chosen_in_a_word():
    """Another day keeps the time; off is off."""
    talk = Talk(ANA).says("send me the week on mondays at 07:30")
    assert talk.the(ReviewNoted) == ReviewNoted("mon", "07:30")
    assert talk.says("move the week to fridays").the(ReviewNoted) == ReviewNoted("fri", "07:30")
    assert talk.says("stop sending me the week").the(ReviewNoted).day is None
    assert talk.wake_at is None


def test_what_only_the_network_can_do_is_said_honestly():
    """Invites need a link, films a film."""
    assert Talk(ANA).says("could you invite Zoe").the(InviteElsewhere)
    assert Talk(ANA).says("take this clip for the goblet squat").the(ClipElsewhere)


SAID = st.sampled_from(
    [
        "swap goblet squats for glute bridges for Ana",
        "swap out the push-ups for Mia",
        "tell everyone: hello",
        "pause Bem",
        "remove Ben",
        "put Market day up from Monday",
        "keep Ana at 12kg on the row",
        "let Ana go up again",
        "how is Ana",
        "the first",
        "Ben",
        TYPED,
        "yes",
        "no",
        "undo",
    ]
)


@settings(derandomize=True, max_examples=40, deadline=None)
@given(st.lists(SAID, max_size=7))
def test_whatever_is_said_only_a_yes_or_an_undo_changes_anything(texts):
    """Nothing raises, everything is answered, and a name in doubt is never acted on."""
    talk = Talk(ANA, BEN, client(4, "Mia Berg"), client(5, "Mia Lund"))
    for text in texts:
        asked, before = talk.state, talk.desk
        talk.says(text)
        assert talk.said
        if text not in {"yes", "undo"} or (text == "yes" and isinstance(asked, Quiet)):
            assert talk.desk == before
        if any(isinstance(message, WhoMeant) for message in talk.said):
            assert talk.changes == ()
    assert isinstance(talk.state, Quiet | DeedReviewed | CircuitReviewed) or talk.state.names
