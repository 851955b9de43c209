"""A coach's words to one, some or all: looked at first, to nobody by a typo, taken back as long as they are not said."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, datetime

import pytest

from core.coach.desk import Asked, QuestionsTold, WordSent
from core.coach.states import Choosing, DeedReviewed, Quiet
from core.coach_messages import CoachNotUnderstood, NothingAsked, NothingToTakeBack
from core.deeds import (
    Arrival,
    AskDropped,
    DeedAsked,
    DeedDone,
    DeedDropped,
    DeedKind,
    DeedTakenBack,
    ForWhomAsked,
    NobodyCalled,
    NoQuestionOpen,
    QuestionPassed,
    WhichQuestion,
    WhoMeant,
    WordsTooLong,
)
from core.diary import History, Question
from tests.core.coaching import ANA, ANSWER, BEN, CLEO, MESSAGE, NOW, Talk, client, told

MIA_BERG, MIA_LUND = client(4, "Mia Berg"), client(5, "Mia Lund")


def sent(talk):
    """To whom words went in the latest step."""
    return [change.client for change in talk.changes if isinstance(change, WordSent) and change.word.kind is MESSAGE]


def test_a_message_is_looked_at_before_it_goes_out():
    """Who, and what, word for word; nothing is on its way before the yes."""
    talk = Talk(ANA, BEN, CLEO).says("tell Ana and Ben: See you Monday, 8pm!")
    asked = talk.the(DeedAsked)
    assert (asked.whom, asked.deed.text, asked.arrival) == (("Ana", "Ben"), "See you Monday, 8pm!", Arrival(2, 0, 0, 0))
    assert talk.changes == ()
    talk.says("yes")
    assert sent(talk) == [1, 2]
    assert talk.words("Ana", MESSAGE) == ["See you Monday, 8pm!"]
    assert talk.words("Cleo") == []
    assert talk.the(DeedDone).whom == ("Ana", "Ben")


def test_a_message_to_everyone_names_everyone():
    """And leaves out who is left out."""
    talk = Talk(ANA, BEN, CLEO).says("tell everyone but Ben: well done")
    assert talk.the(DeedAsked).whom == ("Ana", "Cleo")
    assert sent(talk.says("yes")) == [1, 3]


def test_when_words_arrive_is_said_by_each_ones_own_clock():
    """It is night elsewhere, a workout is not broken into, and who is gone or new gets them later."""
    far = client(4, "Dov", zone="Pacific/Auckland")
    gone = client(5, "Eve", gone_at=NOW)
    talk = Talk(ANA, replace(BEN, running=True), far, gone, client(6, "Flo", new=True)).says("tell everyone: hello")
    assert talk.the(DeedAsked).arrival == Arrival(now=1, quiet=1, workout=1, away=2)


def test_a_no_sends_nothing():
    """And a yes after it is about nothing."""
    talk = Talk(ANA).says("tell Ana: hello", "no")
    assert talk.the(DeedDropped).deed.kind is DeedKind.SAY
    assert talk.says("yes").the(NothingAsked)
    assert talk.words("Ana") == []


@pytest.mark.parametrize("answer", ["the second", "Mia Lund", "2", "lund", "mia lund."])
def test_a_name_that_two_bear_is_asked_about_and_the_answer_goes_on(answer):
    """Which Mia? By the name or by its place; then the message is looked at as any other."""
    talk = Talk(MIA_BERG, MIA_LUND).says("tell Mia: well done")
    assert talk.the(WhoMeant) == WhoMeant("Mia", ("Mia Berg", "Mia Lund"), sure=True)
    talk.says(answer)
    assert talk.the(DeedAsked).whom == ("Mia Lund",)
    assert talk.changes == ()
    assert sent(talk.says("yes")) == [5]


def test_a_typo_is_asked_about_and_never_guessed():
    """Nobody is called Bem; Ben is asked about, by name, and only a word for him goes on."""
    talk = Talk(ANA, BEN).says("tell Bem: your knee is fine")
    assert talk.the(WhoMeant) == WhoMeant("Bem", ("Ben",), sure=False)
    assert talk.says("no").the(AskDropped)
    assert (talk.words("Ben"), talk.words("Ana"), talk.state) == ([], [], Quiet())
    assert talk.says("tell Bem: your knee is fine", "yes").the(DeedAsked).whom == ("Ben",)


def test_a_yes_to_who_is_meant_by_two_is_no_answer():
    """It is asked again."""
    talk = Talk(MIA_BERG, MIA_LUND).says("tell Mia: well done", "yes")
    assert talk.the(WhoMeant)
    assert isinstance(talk.state, Choosing)


def test_two_names_in_doubt_are_asked_about_one_after_the_other():
    """Each answer settles one."""
    talk = Talk(MIA_BERG, MIA_LUND, BEN).says("tell Mia and Bem: hello")
    assert talk.the(WhoMeant).said == "Mia"
    assert talk.says("the first").the(WhoMeant).said == "Bem"
    assert talk.says("Ben").the(DeedAsked).whom == ("Mia Berg", "Ben")


def test_another_wish_takes_the_place_of_the_question():
    """Whoever goes on to something else is not held up."""
    talk = Talk(MIA_BERG, MIA_LUND, BEN).says("tell Mia: hello", "tell Ben: hello")
    assert talk.the(DeedAsked).whom == ("Ben",)


def test_nobody_of_that_name_changes_nothing():
    """Who is there is said."""
    talk = Talk(ANA, BEN).says("tell Wolfgang: hello")
    assert talk.the(NobodyCalled) == NobodyCalled("Wolfgang", ("Ana", "Ben"))
    assert talk.says("yes").the(NothingAsked)


def test_a_yes_can_be_for_some_of_those_who_were_shown_and_for_nobody_else():
    """Yes for Ana goes to Ana; yes for somebody who was not looked at is asked again."""
    talk = Talk(ANA, BEN, CLEO).says("tell Ana and Ben: hello", "yes for Cleo")
    assert talk.the(DeedAsked).whom == ("Ana", "Ben")
    assert sent(talk.says("yes for Ana")) == [1]


def test_an_undo_takes_back_what_is_not_said_and_says_how_many_have_it():
    """Ana has read it, Ben and Cleo have not."""
    talk = Talk(ANA, BEN, CLEO).says("tell everyone: at 7", "yes").hears("Ana").says("undo")
    assert talk.the(DeedTakenBack).of == 3
    assert talk.the(DeedTakenBack).out == 1
    assert (talk.words("Ben"), talk.words("Cleo")) == ([], [])
    assert talk.says("undo").the(NothingToTakeBack)


def test_whoever_has_left_between_the_look_and_the_yes_gets_nothing():
    """The words go to those who were looked at and are still there."""
    talk = Talk(ANA, BEN).says("tell everyone: hello")
    talk.desk = replace(talk.desk, clients=(ANA,), ended=(told(BEN, ended_at=NOW),))
    assert sent(talk.says("yes")) == [1]


def test_whoever_comes_between_the_look_and_the_yes_gets_nothing():
    """They were not looked at."""
    talk = Talk(ANA).says("tell everyone: hello")
    talk.desk = replace(talk.desk, clients=(ANA, BEN))
    assert sent(talk.says("yes")) == [1]


def test_words_that_turn_the_line_around_and_words_that_are_too_long():
    """Signs that reverse what follows are left out; what fits no message is told."""
    talk = Talk(ANA).says("tell Ana: well \u202edone\u202c <b>&amp;")
    assert talk.the(DeedAsked).deed.text == "well done <b>&amp;"
    assert talk.says(f"tell Ana: {'word ' * 500}").the(WordsTooLong)


def asking(one, *texts):
    """Somebody who has asked."""
    questions = tuple(Question(number, NOW, text) for number, text in enumerate(texts, start=1))
    return replace(one, diary=History(questions=questions))


def test_an_answer_goes_to_the_one_who_asked():
    """Shown under the question, sent after a yes, and the question is open no more; taken back it is open again."""
    talk = Talk(asking(ANA, "Heels down?"), BEN).says("answer: Yes, both")
    asked = talk.the(DeedAsked)
    assert (asked.whom, asked.question, asked.deed.text) == (("Ana",), "Heels down?", "Yes, both")
    talk.says("yes")
    assert talk.words("Ana", ANSWER) == ["Yes, both"]
    assert talk.of("Ana").questions() == ()
    talk.says("undo")
    assert talk.words("Ana") == []
    assert len(talk.of("Ana").questions()) == 1


def test_an_answer_that_was_read_stays_one():
    """Taking it back comes too late, and the question stays answered."""
    talk = Talk(asking(ANA, "Heels down?")).says("answer: Yes", "yes").hears("Ana").says("undo")
    assert talk.the(DeedTakenBack).out == 1
    assert talk.of("Ana").questions() == ()


def test_with_several_questions_it_is_asked_whose_is_answered():
    """By name; or the name is said at once."""
    talk = Talk(asking(ANA, "Heels?"), asking(BEN, "Elbows?"))
    assert talk.says("answer: yes").the(WhichQuestion).names == ("Ana", "Ben")
    assert talk.says("Ben").the(DeedAsked).question == "Elbows?"
    assert talk.says("answer Ana: yes").the(DeedAsked).question == "Heels?"


def test_an_answer_without_a_question():
    """Nothing is sent; what can be said instead is."""
    talk = Talk(ANA)
    assert talk.says("answer: yes").the(NoQuestionOpen).name is None
    assert talk.says("answer Ana: yes").the(NoQuestionOpen).name == "Ana"
    assert talk.state == Quiet()


def test_a_question_that_another_coach_has_answered_meanwhile_is_not_answered_twice():
    """The yes finds it closed."""
    talk = Talk(asking(ANA, "Heels?")).says("answer: yes")
    talk.desk = replace(talk.desk, clients=(ANA,))
    assert talk.says("yes").the(NoQuestionOpen)
    assert talk.words("Ana") == []


def test_questions_that_came_meanwhile_are_told_when_the_chat_opens():
    """With the station they were asked at; once."""
    question = Question(1, NOW, "Elbows in?", "Kitchen seven", 2, 3, "push-up")
    talk = Talk(replace(ANA, diary=History(questions=(question,))), asked=(Asked(1, 1),)).opens()
    assert talk.the(QuestionPassed) == QuestionPassed("Ana", "Elbows in?", "Kitchen seven", "Push-up", 3, 2)
    assert talk.changes == (QuestionsTold((Asked(1, 1),)),)


def test_what_nobody_was_named_for_is_asked():
    """A note for nobody has nowhere to go."""
    talk = Talk(ANA)
    talk.says("note: elbows in")
    assert isinstance(talk.said[0], ForWhomAsked | CoachNotUnderstood)
    assert talk.state == Quiet()


def test_the_question_that_is_open_is_shown_again_when_the_chat_opens():
    """Whatever it is."""
    assert Talk(ANA).says("tell Ana: hello").opens().the(DeedAsked)
    assert Talk(MIA_BERG, MIA_LUND).says("tell Mia: hello").opens().the(WhoMeant).sure
    assert not Talk(BEN).says("tell Bem: hello").opens().the(WhoMeant).sure
    assert Talk(asking(ANA, "Heels?"), asking(BEN, "Elbows?")).says("answer: yes").opens().the(WhichQuestion)
    assert isinstance(Talk(ANA).says("tell Ana: hello").state, DeedReviewed)


def test_it_is_night_for_everyone_at_night():
    """At eleven in the evening everything waits for the morning."""
    talk = Talk(ANA, BEN, now=datetime(2026, 3, 4, 23, tzinfo=UTC)).says("tell everyone: sleep well")
    assert talk.the(DeedAsked).arrival == Arrival(0, 2, 0, 0)
