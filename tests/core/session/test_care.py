"""What safety does to a workout, step by step: how one is today, pain, too much, effort."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from core import messages
from core.catalogue import all_exercises
from core.health import AgeBand, Condition, Feeling, Health, NoteKind, Outcome, Topic
from core.safety.joints import Hold, hold
from core.session.moment import moment, still_fits
from core.session.states import Idle, Paused, SettingUp, WarmingUp
from tests.properties.test_session import TEXTS, take
from tests.walking import MORNING, Walk

NAMES = {movement.name: movement for movement in all_exercises().values()}


def card(walk):
    """The card said in the latest step."""
    return next(message for message in walk.said if isinstance(message, messages.Card))


def after_a_day(walk, days=2):
    """The same trainee some days later."""
    return walk.waits(days * 86_400)


# The health questions


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


def test_a_button_of_an_earlier_question_is_no_answer_to_a_later_one():
    """A "no" that was offered for one topic does not fit the next."""
    walk = Walk().opens().says("yes", "kg", "no weights", "ok", "34")
    then = moment(walk.state)
    assert still_fits("HealthAsked", then, moment(walk.state))
    walk.says("no")
    assert not still_fits("HealthAsked", then, moment(walk.state))


# How are you today?


@pytest.mark.parametrize(
    "words", [(), ("slept badly",), ("slept badly and sore",), ("a bit ill",), ("it's hot in here",), ("all good",)]
)
def test_the_readiness_question_never_stops_a_go(words):
    """Whatever was answered, the next "go" leads on."""
    walk = Walk(known=True).says("go", *words)
    assert isinstance(walk.state, WarmingUp)
    assert walk.says("go").kinds() == ["Card"]


@pytest.mark.parametrize(
    ("words", "ease", "rounds"),
    [
        ("slept badly", 1, 3),
        ("sore", 1, 3),
        ("slept badly and sore", 2, 2),
        ("runny nose", 2, 2),
        ("all good", 0, 3),
        ("not sore, slept well", 0, 3),
    ],
)
def test_how_one_is_lowers_the_day(words, ease, rounds):
    """One thing a bit, two or being ill more, with a round less (common practice, no source)."""
    workout = Walk(known=True).says("go", words).state.workout
    assert (workout.ease, workout.circuit.rounds) == (ease, rounds)


def test_a_lighter_day_names_lighter_loads():
    """The coach's start is a step lighter on a light day."""
    usual = card(Walk(known=True).says("go", "go")).load
    light = card(Walk(known=True).says("go", "slept badly and sore", "go")).load
    assert light.kg < usual.kg


def test_what_is_said_after_the_card_shows_it_anew():
    """The load on the card is the one that holds."""
    walk = Walk(known=True).says("go", "go")
    before = card(walk).load
    assert card(walk.says("slept badly and sore")).load.kg < before.kg


@pytest.mark.parametrize("words", [("fever",), ("ill with a fever",), ("stomach bug",), ("ill", "yes")])
def test_fever_ends_the_day(words):
    """No workout while feverish or ill below the neck (entry 46), not again on that day, and the way back begins with less."""
    walk = Walk(known=True).says("go", *words)
    assert walk.kinds() == ["FeverRest"]
    assert walk.says("go").kinds() == ["ClearanceNeeded"]
    after_a_day(walk).says("go")
    assert walk.kinds() == ["LighterDay", "WarmUp"]
    assert walk.state.workout.circuit.rounds == 2


def test_heat_makes_rests_longer():
    """Shade or fan, water, longer rests (entry 49, from memory)."""
    walk = Walk(known=True).says("go")
    usual = walk.state.workout.circuit.rest_s
    assert walk.says("it's boiling in here").said[0].feelings == (Feeling.HOT,)
    assert walk.state.workout.circuit.rest_s.high > usual.high


# Pain


def hurt(*said):
    """A workout in which a knee hurt at the squat, described so."""
    return Walk(known=True).says("go", "go", "go", "my knee hurts", *said)


def test_pain_stops_the_clock_and_asks_one_question():
    """The clock does not run while it is open."""
    walk = hurt()
    assert walk.kinds() == ["PainStop"]
    assert isinstance(walk.state, SettingUp)
    assert walk.waits(200).said == []


def test_what_a_pain_is_like_is_not_asked_when_it_was_said():
    """Told in the same message: the swap comes at once."""
    walk = Walk(known=True).says("go", "go", "go", "sharp new pain in my knee")
    assert walk.kinds() == ["PainStop", "PainAdvice", "Card"]
    assert not walk.said[0].asked


@pytest.mark.parametrize("answer", ["go", "skip", "swap", "back", "sharp, new", "the usual, dull"])
def test_no_answer_goes_on_with_what_hurts(answer):
    """Whatever is answered, the exercise that hurt is not the next."""
    walk = hurt(answer)
    assert card(walk).exercise != "Goblet squat"


@pytest.mark.parametrize("answer", ["what?", "again", "hm", "yes", "maybe", "12 or so?"])
def test_what_is_no_answer_shows_no_card(answer):
    """Asked again, and the clock stays stopped."""
    walk = hurt(answer)
    assert not any(isinstance(message, messages.Card | messages.Go) for message in walk.said)


def test_a_pause_in_the_question_leads_back_to_a_spare():
    """Not to the exercise that hurt."""
    walk = hurt("pause")
    assert isinstance(walk.state, Paused)
    assert card(walk.says("back")).exercise != "Goblet squat"


def test_what_no_swap_is_known_for_is_left_out_of_every_round():
    """The station does not come back in the next round."""
    walk = Walk(known=True).says("go", "go", "go", "pulled my hamstring", "sharp, new")
    assert walk.state.workout.left_out == (1,)
    seen = []
    for _ in range(6 * 3 + 1):
        walk.says("skip")
        seen += [message.station for message in walk.said if isinstance(message, messages.Card)]
    assert 1 not in seen
    assert isinstance(walk.state, Idle)


def test_it_is_asked_about_before_it_comes_back():
    """The next warm-up asks; without an answer it stays out; with "fine now" it comes back a step lighter."""
    walk = hurt("sharp, new", "go")
    walk.waits(61).says("12", "finish")
    quiet = after_a_day(walk).says("go")
    assert quiet.said[-1].places == ("knee",)
    assert card(quiet.says("go")).exercise != "Goblet squat"
    quiet.says("finish", "go", "fine now", "go")
    assert card(quiet).exercise == "Goblet squat"
    assert card(quiet).load.kg == 8


def test_what_stays_out_cannot_be_asked_for():
    """A swap to what hurts is declined, and the station stays what it is."""
    walk = hurt("sharp, new")
    state = walk.state
    assert walk.says("can I do goblet squats instead").kinds() == ["PainStays"]
    assert walk.state == state


EVENTS = st.one_of(
    st.sampled_from(
        [
            *TEXTS,
            "can I do goblet squats instead",
            "go",
            "go",
            "sharp, new",
            "dull, known",
            "fine now",
            "still hurts",
            "my lower back hurts",
            "my wrist hurts",
            "lighter",
        ]
    ).map(lambda text: ("says", text)),
    st.sampled_from([15, 61, 125, 700, 90_000]).map(lambda seconds: ("waits", seconds)),
)


@settings(derandomize=True, max_examples=120, deadline=None)
@given(events=st.lists(EVENTS, min_size=5, max_size=45))
def test_no_card_ever_shows_what_is_to_stay_out(events):
    """Over any conversation: an exercise that pain keeps out is on no card, and one that pain holds is not above the last load."""
    walk = Walk(known=True)
    for event in events:
        pains = walk.history.pains
        take(walk, event)
        if walk.history.pains != pains:
            continue  # told or eased in this very step
        for shown in (message for message in walk.said if isinstance(message, messages.Card)):
            movement = NAMES[shown.exercise]
            held = hold(movement, pains, walk.history.standing(), walk.now)
            assert held is None or held[0] is not Hold.OUT, (shown.exercise, event)


# Too much, and how hard it was


def test_over_the_ceiling_the_load_does_not_rise():
    """Slower, not heavier: 20 squats in a minute in which 12 fit."""
    walk = Walk(known=True).says("go", "go", "go").waits(61).says("20 at 8kg")
    noted = next(message for message in walk.said if isinstance(message, messages.Noted))
    assert isinstance(noted.reminder, messages.Slower)
    assert noted.next_load.kg <= 8


def test_relief_is_offered_once_a_round():
    """Nobody is asked after every station."""
    walk = Walk(known=True).says("go", "go", "go")
    offers = 0
    for reps in ("5", "5 each", "5", "5", "5"):
        walk.waits(125 if "each" in reps else 61).says(reps)
        offers += sum(isinstance(message, messages.TooMuchSeen) for message in walk.said)
        walk.says("go")
    assert offers == 1


def test_effort_is_asked_after_a_workout_with_sets_only():
    """Not after one that was left before its first set, nor after one that was stopped for safety."""
    assert "EffortAsked" not in Walk(known=True).says("go", "finish").kinds()
    done = Walk(known=True).says("go", "go", "go").waits(61).says("12", "finish")
    assert done.kinds()[-1] == "EffortAsked"
    assert done.says("7").history.workouts[-1].effort == 7


def test_a_number_after_the_end_is_a_set_while_one_is_missing():
    """A wrong record is the worst outcome: reps that are still missing go before effort."""
    walk = Walk(known=True).says("go", "go", "go").waits(61).says("finish")
    walk.waits(400).says("9")
    assert [record.reps for record in walk.history.standing()] == [9]
    assert walk.history.workouts[-1].effort is None


# Fear, and feeling unwell


def test_feeling_unwell_stops_the_clock_and_keeps_the_set():
    """No named sign, and taken seriously."""
    walk = Walk(known=True).says("go", "go", "go").waits(61).says("11, I feel sick")
    assert walk.kinds() == ["UnwellPause"]
    assert isinstance(walk.state, Paused)
    assert [record.reps for record in walk.history.standing()] == [11]


@pytest.mark.parametrize(
    "words",
    ["I feel weird", "is that normal?", "I'm so out of breath", "I dropped the dumbbell on my foot", "it's bleeding", "I'm scared"],
)
def test_what_a_frightened_beginner_says_is_heard(words):
    """Under work the clock stops, calmly; it is no pain of an exercise, and nothing is held back for it."""
    walk = Walk(known=True).says("go", "go", "go", words)
    assert walk.kinds() == ["UnwellPause"]
    assert walk.history.pains == ()


@pytest.mark.parametrize(
    "words", ["I feel sick of squats lol", "not scared", "I was nervous last week", "haha i'm scared of burpees"]
)
def test_a_joke_about_it_stops_nothing(words):
    """Nor does what is over, or denied."""
    walk = Walk(known=True).says("go", "go", "go", words)
    assert "UnwellPause" not in walk.kinds()


def test_fear_before_anything_was_lifted_is_answered_and_pushes_nobody():
    """The clock and the state stay what they are."""
    walk = Walk(known=True).says("go")
    state = walk.state
    assert walk.says("I'm scared").kinds() == ["FearHeard"]
    assert walk.state == state


@pytest.mark.parametrize("words", ["my legs are on fire", "that killed me", "my arms are dead lol", "this burns", "I'm dying haha"])
def test_ordinary_effort_is_no_pain(words):
    """The clock runs on, and nothing is kept of it."""
    walk = Walk(known=True).says("go", "go", "go")
    state = walk.state
    walk.says(words)
    assert walk.state == state
    assert walk.history.pains == ()
