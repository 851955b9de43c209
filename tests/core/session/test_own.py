"""What is the trainee's own, in the conversation: at any moment, beside the clock, and never a record."""

from dataclasses import replace

import pytest

from core.diary import Forgotten, Question
from core.messages import (
    NothingRuns,
    NotUnderstood,
    PainHeard,
    PainStop,
    SetNotRead,
    UrgentStop,
)
from core.own_messages import (
    CoachEnded,
    ForgetAsked,
    ForgetByHost,
    ForgetNot,
    ForgottenNow,
    QuestionPassedOn,
    QuestionWanted,
    RecordsHere,
    SeenBy,
)
from core.records_file import Form
from core.review_messages import OwnWeek
from core.session.events import Plan, Said, Step
from core.session.states import Idle, New
from core.session.step import step
from tests.walking import Walk

MOMENTS = {
    "before the first talk": lambda: Walk().opens(),
    "between workouts": lambda: Walk(known=True).opens(),
    "warming up": lambda: Walk(known=True).says("go"),
    "setting up": lambda: Walk(known=True).says("go", "go"),
    "under work": lambda: Walk(known=True).says("go", "go", "go").waits(10),
    "in a rest": lambda: Walk(known=True).says("go", "go", "go").waits(62).says("11 at 12kg"),
    "paused": lambda: Walk(known=True).says("go", "go", "go", "pause"),
}


@pytest.fixture(params=MOMENTS)
def walk(request):
    """A conversation at some moment."""
    return MOMENTS[request.param]()


def at_work():
    """A conversation ten seconds into the first station."""
    return MOMENTS["under work"]()


def said_by(walk, text, **plan):
    """The step that a text leads to, with something else in the plan; nothing of it is kept."""
    return step(
        walk.state, Said(text), replace(Plan(walk.ledger.trainee, walk.circuit, "Coach Wren"), **plan), walk.history, walk.now
    )


# Records, who sees this


def test_records_come_at_any_moment_and_leave_the_clock_alone(walk):
    """Both files, and the conversation is where it was."""
    before = walk.state
    walk.says("my records")
    assert [message.document.form for message in walk.said] == [Form.CSV, Form.JSON]
    assert walk.state == before


def test_a_file_holds_the_diary_as_it_is_then():
    """The table the sets alone, the other one everything."""
    walk = MOMENTS["in a rest"]().says("my records")
    table, whole = (message.document for message in walk.said)
    assert table.diary.sets == whole.diary.sets == walk.history.sets
    assert len(table.diary.sets) == 1
    assert (table.diary.workouts, whole.diary.workouts) == ((), walk.history.workouts)
    assert whole.trainee == walk.ledger.trainee


def test_who_sees_this_says_what_is_so_for_this_trainee(walk):
    """Places and answers only as far as they agreed."""
    assert walk.says("who sees this?").said == [SeenBy("Coach Wren", shared=False)]
    health = replace(walk.ledger.trainee.health, share=True)
    agreed = replace(walk.ledger.trainee, health=health)
    told = said_by(walk, "who sees this?", trainee=agreed)
    assert [say.message for say in told.messages] == [SeenBy("Coach Wren", shared=True)]


def test_my_week_is_told_at_any_moment_and_leaves_the_clock_alone(walk):
    """With its picture, and from this trainee's diary."""
    before = walk.state
    (week,) = walk.says("how was my week?").said
    assert isinstance(week, OwnWeek)
    assert week.picture is not None
    assert week.sets == len(walk.history.standing())
    assert walk.state == before


# A question to the coach


def test_a_question_is_kept_with_the_station_it_was_asked_at():
    """Under work: the circuit, round, station and exercise at hand; the clock goes on."""
    walk = at_work()
    before = walk.state
    walk.says("ask coach: elbows in or out on this?")
    first = walk.circuit.stations[0].exercise
    asked = Question(1, walk.now, "elbows in or out on this?", walk.circuit.name, 1, 1, first)
    assert walk.history.questions == (asked,)
    assert walk.said == [QuestionPassedOn("Coach Wren")]
    assert walk.state == before
    assert walk.waits(25).kinds() == ["HalfWay"]


def test_in_a_rest_it_is_about_the_card_that_is_shown():
    """Until the next card is shown, about the station that was done."""
    walk = Walk(known=True).says("go", "go", "go").waits(62)
    assert not walk.state.carded
    assert walk.says("ask coach: heels?").history.questions[-1].station == 1
    assert walk.says("11 at 12kg", "ask coach: which hand?").history.questions[-1].station == 2


def test_between_workouts_it_is_about_no_station():
    """Where nothing runs there is none."""
    walk = MOMENTS["between workouts"]().says("question for Coach Wren: may I swim on Sundays?")
    assert walk.history.questions == (Question(1, walk.now, "may I swim on Sundays?"),)


def test_nothing_in_a_question_becomes_a_record():
    """Numbers in it are part of the question."""
    walk = MOMENTS["in a rest"]()
    before = walk.history.sets
    walk.says("ask coach: is 15 at 20kg too much? 3 left")
    assert walk.history.sets == before
    assert walk.history.questions[-1].text == "is 15 at 20kg too much? 3 left"


def test_a_set_before_the_question_is_noted():
    """Told in the same breath, it is a report like any other."""
    walk = Walk(known=True).says("go", "go", "go").waits(62).says("11 at 12kg. Ask coach if that is enough")
    assert [record.reps for record in walk.history.sets] == [11]
    asked = walk.history.questions[-1]
    assert (asked.text, asked.station) == ("if that is enough", 1)


def test_an_urgent_sign_in_a_question_stops_everything_first():
    """Nothing is passed on: the warning is all that is said."""
    walk = at_work().says("ask coach: my chest hurts badly, is that normal?")
    assert isinstance(walk.said[0], UrgentStop)
    assert walk.history.questions == ()
    assert isinstance(walk.state, Idle)


def test_pain_in_a_question_counts_beside_it():
    """The question is passed on, and the clock stops for the pain as ever."""
    walk = at_work().says("ask coach: my knee hurts, what should I do?")
    assert walk.kinds() == ["QuestionPassedOn", "PainStop"]
    assert isinstance(walk.said[1], PainStop)
    assert len(walk.history.pains) == 1
    idle = MOMENTS["between workouts"]().says("ask coach: my knee hurts, what should I do?")
    assert isinstance(idle.said[1], PainHeard)


def test_a_question_that_is_only_announced_is_asked_for():
    """Nothing is kept yet."""
    walk = at_work().says("I have a question for my coach")
    assert walk.said == [QuestionWanted("Coach Wren")]
    assert walk.history.questions == ()


# Forget me


def erased(taken: Step) -> bool:
    """Whether a step erases everything, and then keeps and says nothing else."""
    if not any(isinstance(entry, Forgotten) for entry in taken.records):
        return False
    assert [type(entry) for entry in taken.records] == [Forgotten]
    assert [type(say.message) for say in taken.messages] == [ForgottenNow]
    assert (taken.state, taken.wake_at) == (New(), None)
    return True


def test_a_clear_yes_directly_after_erases_everything(walk):
    """At any moment, a workout's included: its clock stops with it."""
    before = walk.state
    walk.says("forget me")
    assert walk.said == [ForgetAsked()]
    assert walk.state == replace(before, forget_asked=True)
    assert erased(said_by(walk, "yes"))


@pytest.mark.parametrize("text", ["no", "ok", "yeah", "go", "11 at 12kg", "who sees this?", "hello?"])
def test_anything_else_keeps_everything(walk, text):
    """And a yes after that is a yes to nothing."""
    walk.says("forget me", text)
    assert not walk.state.forget_asked
    assert not erased(said_by(walk, "yes"))


def test_who_takes_a_copy_first_is_asked_again(walk):
    """As they were offered: the files, then the question, and a yes is to it."""
    assert [type(message) for message in walk.says("forget me", "my records").said] == [RecordsHere, RecordsHere, ForgetAsked]
    assert erased(said_by(walk, "yes"))


def test_a_no_is_answered(walk):
    """And the conversation goes on where it was."""
    before = walk.state
    assert walk.says("forget me", "no thanks").said == [ForgetNot()]
    assert walk.state == before


def test_the_calls_of_the_clock_do_not_come_between():
    """Half-way and ten seconds left ask nothing: a yes after them is still about that question."""
    walk = at_work().says("forget me").waits(45)
    assert "HalfWay" in [type(message).__name__ for message in walk.heard]
    assert walk.state.forget_asked
    assert erased(said_by(walk, "yes"))


def test_a_yes_to_what_was_asked_since_erases_nothing():
    """Such as "are you still there?" some minutes later."""
    walk = at_work().says("forget me").waits(8 * 60)
    assert "StillThere" in [type(message).__name__ for message in walk.heard]
    assert not walk.state.forget_asked
    assert not erased(said_by(walk, "yes"))


def test_opening_the_chat_again_closes_the_question(walk):
    """Whoever comes back has not just said so."""
    walk.says("forget me").opens()
    assert not erased(said_by(walk, "yes"))


def test_a_yes_to_something_else_erases_nothing(walk):
    """Without the question before it there is nothing to say yes to."""
    assert not erased(said_by(walk, "yes"))


def test_a_coach_who_trains_is_not_erased_by_a_word():
    """They are told who can; also when the question is open from before they coached."""
    walk = MOMENTS["between workouts"]()
    told = said_by(walk, "forget me", coaches=True)
    assert [say.message for say in told.messages] == [ForgetByHost()]
    assert not erased(said_by(walk.says("forget me"), "yes", coaches=True))


# Those whom the coach has taken off the roster


@pytest.fixture
def gone():
    """A conversation whose trainee was taken off the roster in the middle of a workout."""
    walk = at_work()
    walk.ledger = replace(walk.ledger, trainee=replace(walk.ledger.trainee, ended_at=walk.now))
    return walk


def test_a_workout_of_somebody_who_was_taken_off_is_closed_without_a_word(gone):
    """At the clock's next cue; what was done is kept, and nothing rings any more."""
    gone.waits(60)
    assert (gone.said, gone.wake_at) == ([], None)
    assert isinstance(gone.state, Idle)
    assert gone.history.workouts[0].ended_at is not None


@pytest.mark.parametrize(
    "text", ["go", "11 at 12kg", "remind me mon wed fri 6:30am", "what do I do today?", "who sees this?", "ask coach: why?"]
)
def test_whatever_they_say_is_answered_with_one_line(gone, text):
    """That their coach has ended it, and what is still theirs."""
    assert gone.says(text).said == [CoachEnded("Coach Wren")]
    assert gone.history.sets == gone.history.questions == ()
    assert gone.opens().said == [CoachEnded("Coach Wren")]
    assert gone.wake_at is None


def test_their_records_and_being_forgotten_still_work(gone):
    """What is theirs stays theirs."""
    assert [type(message) for message in gone.says("my records").said] == [RecordsHere, RecordsHere]
    assert gone.says("forget me").said == [ForgetAsked()]
    assert erased(said_by(gone, "yes"))


def test_a_warning_sign_is_still_answered_as_one(gone):
    """Whoever it is: stop, and call for help."""
    assert isinstance(gone.says("my chest hurts and my arm is numb").said[0], UrgentStop)


# What only a coach can say


@pytest.mark.parametrize(
    "text",
    [
        "who needs a word",
        "who trained this week?",
        "tell everyone to rest on Friday",
        "tell Mia well done",
        "remove Mia",
        "pause Mia for two weeks",
        "hold Mia's squat at 12 kg",
        "put Kitchen seven up from Monday for everyone",
        "the week",
        "how is Mia doing",
    ],
)
def test_a_trainee_who_says_what_a_coach_says_gets_a_trainees_answer(text):
    """Nothing of anybody else's is shown or changed, and no set is noted."""
    for moment in ("between workouts", "in a rest"):
        walk = MOMENTS[moment]()
        sets = walk.history.sets
        walk.says(text)
        assert walk.history.sets == sets
        assert "Mia" not in str(walk.said)
        assert not any(type(message).__module__ == "core.coach_messages" for message in walk.said)


def test_most_of_that_is_simply_not_understood():
    """As any other sentence that is about nothing here."""
    walk = MOMENTS["between workouts"]()
    for text in ("who needs a word", "tell everyone to rest on Friday"):
        assert isinstance(walk.says(text).said[0], NotUnderstood | NothingRuns | SetNotRead)
