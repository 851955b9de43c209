"""The coach says that somebody who waits may train; asked first, kept with a yes, taken back with an undo."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from core.coach.clearing import read_clearing, stands_before
from core.coach.desk import Clearance, News, NewsTold, WordTakenBack
from core.coach.states import ClearanceReviewed, Quiet, WayBack
from core.coach.step import step
from core.coach_messages import (
    ClearanceAsked,
    ClearanceKept,
    ClearanceLeft,
    ClearanceTakenBack,
    ClearanceUnknown,
    ClearanceWho,
    CoachGreeting,
    CoachNotUnderstood,
    InForceAsked,
    NothingAsked,
    NotWaiting,
    SignStands,
)
from core.diary import History, PainRecord
from core.health import AgeBand, Bar, Condition, Health, NoteKind, Outcome, SafetyNote
from core.messages import SafetyNews
from core.session.events import Opened
from tests.core.coaching import BEN, NOW, Talk, client, told
from tests.core.test_coach import TYPED

EARLIER = NOW - timedelta(days=2)
YOUNG = Health(age=AgeBand.UNDER_18, decided_at=EARLIER)
PREGNANT = Health(age=AgeBand.ADULT, pregnant=True, decided_at=EARLIER)
KIDNEY = Health(age=AgeBand.ADULT, pregnant=False, conditions=(Condition.KIDNEY,), symptoms=(), active=False, decided_at=EARLIER)
MIA = client(3, "Mia", health=YOUNG)


def sign(at):
    """A diary with a warning sign at an instant."""
    return PainRecord(at, "chest", None, urgent=True, exercise=None)


def own_word(at):
    """The trainee says that they are cleared."""
    return SafetyNote(at, NoteKind.CLEARED, "trainee")


def bar_of(talk, number=3):
    """What stands before a client's workout."""
    return next(stands_before(one) for one in talk.desk.clients if one.id == number)


@pytest.mark.parametrize(
    "text", ["clear Mia", "Mia is cleared", "Mia may train", "mia can train again.", "I clear mia to train", "yes, Mia's cleared!"]
)
@pytest.mark.parametrize(("health", "outcome"), [(YOUNG, Outcome.WAIT), (PREGNANT, Outcome.WAIT), (KIDNEY, Outcome.CLEARANCE)])
def test_somebody_who_waits_may_train_after_a_yes(text, health, outcome):
    """Shown first and nothing changed; with the yes nothing holds them back any more."""
    talk = Talk(BEN, told(MIA, health=health)).says(text)
    assert talk.the(ClearanceAsked) == ClearanceAsked("Mia", outcome, ())
    assert talk.changes == ()
    assert bar_of(talk) is not None
    assert talk.says("yes").the(ClearanceKept).trainee == "Mia"
    assert talk.changes[0] == Clearance(3, agreed=True)
    assert bar_of(talk) is None


@pytest.mark.parametrize(
    "text",
    [
        "Mia is not cleared",
        "Mia may not train",
        "Mia can't train",
        "is Mia cleared?",
        "Mia is cleared?",
        "may Mia train?",
        "don't clear Mia",
        "never clear Mia",
        "Mia will be cleared",
        "I am cleared",
        "I can train",
        "we may train",
        "clear",
        "Mia",
        TYPED,
    ],
)
def test_a_no_a_question_and_oneself_are_no_clearance(text):
    """Only a plain statement about somebody else is one."""
    assert read_clearing(text) is None


def test_a_no_leaves_them_waiting():
    """And a yes after it is about nothing."""
    talk = Talk(MIA).says("clear Mia", "no")
    assert talk.the(ClearanceLeft).trainee == "Mia"
    assert talk.says("yes").the(NothingAsked)
    assert bar_of(talk) is Bar.YOUNG


def test_an_undo_makes_them_wait_again():
    """A later note takes it back; cleared anew they may train again, in the same instant too."""
    talk = Talk(MIA).says("clear Mia", "yes", "undo")
    assert talk.the(ClearanceTakenBack).trainee == "Mia"
    assert bar_of(talk) is Bar.YOUNG
    assert [note.kind for note in talk.desk.clients[0].diary.notes] == [NoteKind.CLEARED, NoteKind.TAKEN_BACK]
    talk.says("clear Mia", "yes")
    assert bar_of(talk) is None


def test_an_undo_leaves_what_the_trainee_said_themselves():
    """A doctor's yes that the trainee told stands by itself."""
    talk = Talk(told(MIA, health=KIDNEY)).says("clear Mia", "yes")
    mia = talk.desk.clients[0]
    talk.desk = replace(talk.desk, clients=(replace(mia, diary=replace(mia.diary, notes=(*mia.diary.notes, own_word(NOW)))),))
    talk.says("undo")
    assert bar_of(talk) is None


def test_two_of_a_name_are_asked_about():
    """A first name of two people is none; the whole name is, and says who is not meant where it is part of another."""
    berg, holm = client(4, "Mia Berg", health=YOUNG), client(5, "Mia Holm", health=YOUNG)
    talk = Talk(berg, holm).says("clear mia")
    assert talk.the(ClearanceWho).names == ("Mia Berg", "Mia Holm")
    assert talk.says("yes").the(NothingAsked)
    assert talk.says("clear holm").the(ClearanceAsked).trainee == "Mia Holm"
    assert Talk(MIA, berg).says("clear mia").the(ClearanceAsked) == ClearanceAsked("Mia", Outcome.WAIT, ("Mia Berg",))


def test_nobody_who_waits_is_said_so():
    """Ben is not waiting, Zoe is not there; those who wait are named."""
    assert Talk(BEN).says("clear Ben").the(NotWaiting) == NotWaiting("Ben", ())
    assert Talk(BEN, MIA).says("Ben may train").the(NotWaiting).waiting == ("Mia",)
    assert Talk(BEN, MIA).says("clear Zoe").the(ClearanceUnknown) == ClearanceUnknown("Zoe", ("Mia",))
    talk = Talk(MIA).says("clear Mia", "yes", "clear Mia")
    assert talk.the(NotWaiting)
    assert talk.says("yes").the(NothingAsked)


@pytest.mark.parametrize("since", [timedelta(0), timedelta(minutes=5), timedelta(days=3)])
@pytest.mark.parametrize("health", [Health(), YOUNG])
def test_the_coach_never_lifts_a_warning_sign(since, health):
    """Not on the day, not later: that waits for the trainee's own word."""
    talk = Talk(replace(told(MIA, health=health), diary=History(pains=(sign(NOW - since),)))).says("clear Mia")
    assert talk.the(SignStands).trainee == "Mia"
    assert talk.says("yes").the(NothingAsked)
    assert bar_of(talk) is Bar.URGENT


def test_a_sign_between_the_question_and_the_yes_counts():
    """The yes is refused; a note kept all the same would not lift the sign."""
    talk = Talk(MIA).says("clear Mia")
    talk.desk = replace(talk.desk, clients=(replace(MIA, diary=History(pains=(sign(NOW),))),))
    assert talk.says("yes").the(SignStands)
    assert talk.changes == ()
    kept = History(pains=(sign(NOW),), notes=(SafetyNote(NOW + timedelta(minutes=1), NoteKind.CLEARED, "coach"),))
    assert stands_before(replace(told(MIA, health=Health()), diary=kept)) is Bar.URGENT


def test_after_a_sign_the_coach_is_asked_anew():
    """An agreement from before the sign is over, though the trainee says that they are cleared."""
    agreed = SafetyNote(NOW - timedelta(days=2), NoteKind.CLEARED, "coach")
    diary = History(pains=(sign(NOW - timedelta(days=1)),), notes=(agreed, own_word(NOW)))
    talk = Talk(replace(MIA, diary=diary))
    assert bar_of(talk) is Bar.YOUNG
    talk.now = NOW + timedelta(minutes=1)
    talk.says("clear Mia", "yes")
    assert bar_of(talk) is None


@pytest.mark.parametrize(("health", "outcome"), [(KIDNEY, Outcome.CLEARANCE), (PREGNANT, Outcome.WAIT)])
def test_other_answers_in_between_are_asked_about_anew(health, outcome):
    """A yes is about what was asked: a new answer that decides is shown first, though it comes to the same."""
    talk = Talk(MIA).says("clear Mia")
    talk.desk = replace(talk.desk, clients=(told(MIA, health=replace(health, decided_at=NOW)),))
    assert talk.says("yes").the(ClearanceAsked).outcome is outcome
    assert talk.changes == ()
    assert talk.says("yes").changes[0] == Clearance(3, agreed=True)


def test_a_yes_for_somebody_else_clears_nobody():
    """Mia was asked about, "yes for Ben" asks again."""
    talk = Talk(BEN, MIA).says("clear Mia", "yes for Ben")
    assert talk.the(ClearanceAsked).trainee == "Mia"
    assert talk.changes == ()
    assert talk.says("yes for Mia").changes[0] == Clearance(3, agreed=True)


def test_a_clearance_closes_what_was_shown_before():
    """A yes after an unknown name must not put a circuit in force, and the other way round."""
    assert Talk(BEN).says(TYPED, "clear Zoe", "yes").the(NothingAsked)
    assert Talk(BEN, MIA).says("clear Mia", TYPED).the(InForceAsked)
    assert isinstance(Talk(BEN, MIA).says("clear Mia", "circuits").state, ClearanceReviewed)


def test_news_is_told_when_the_chat_is_opened():
    """Oldest first, with its day where that is not today, and marked as told; then the open question."""
    talk = Talk(MIA).says("clear Mia")
    early, late = SafetyNote(EARLIER, NoteKind.OUTCOME, Outcome.WAIT), SafetyNote(NOW, NoteKind.URGENT)
    desk = replace(talk.desk, news=(News(7, "Mia", early), News(9, "Ben", late)))
    taken = step(talk.state, Opened(), desk, NOW)
    greeting, first, second, asked = [say.message for say in taken.messages]
    assert isinstance(greeting, CoachGreeting)
    assert (first, second) == (
        SafetyNews("Mia", NoteKind.OUTCOME, Outcome.WAIT, EARLIER.date()),
        SafetyNews("Ben", NoteKind.URGENT, "", None),
    )
    assert isinstance(asked, ClearanceAsked)
    assert taken.changes == (NewsTold((7, 9)),)
    assert step(talk.state, Opened(), talk.desk, NOW).changes == ()


@settings(derandomize=True, max_examples=150, deadline=None)
@given(
    st.lists(
        st.sampled_from(["clear Mia", "Mia may train", "clear Zoe", "yes", "no", "undo", "circuits", "banana", TYPED]), max_size=8
    )
)
def test_whatever_is_said_only_a_yes_clears(texts):
    """What holds Mia back falls with a yes to the question about her, and with nothing else."""
    talk = Talk(MIA)
    for text in texts:
        asked = isinstance(talk.state, ClearanceReviewed)
        before = bar_of(talk)
        talk.says(text)
        if before is not None and bar_of(talk) is None:
            assert asked
            assert text == "yes"


def test_small_talk_about_a_trainee_is_not_understood():
    """Nothing is guessed from a sentence that only sounds like one."""
    for text in ("Mia trained well", "Mia is not cleared"):
        talk = Talk(MIA).says(text)
        assert talk.the(CoachNotUnderstood)
    back = (WordTakenBack(3, 1), Clearance(3, agreed=False))
    assert Talk(MIA).says("clear Mia", "yes").state == Quiet(WayBack("Mia", back))
