"""Pain, step by step: what it stops, what stays out and how it comes back; denials, fear and feeling unwell."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from core import messages
from core.catalogue import all_exercises
from core.safety.joints import Hold, hold
from core.session.states import Idle, Paused, SettingUp
from tests.properties.test_session import TEXTS, take
from tests.walking import Walk, after_a_day, card, known_and_trained

NAMES = {movement.name: movement for movement in all_exercises().values()}


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


# Nothing wrong


@pytest.mark.parametrize(
    ("words", "burning"),
    [
        ("I'm not dizzy", False),
        ("no jaw pain", False),
        ("nope, no pain at all", False),
        ("not dizzy or breathless", False),
        ("my arms are on fire lol", True),
        ("legs are jelly haha", True),
        ("this is killing me lol", True),
    ],
)
def test_denied_or_figurative_pain_is_heard_and_no_clock_changes(words, burning):
    """A kind word in place of "I didn't catch that", at rest, at work, setting up, warming up and in a pause."""
    for before in [("go",), ("go", "go"), ("go", "go", "go"), ("go", "go", "go", "pause")]:
        walk = Walk(known=True).says(*before)
        state = walk.state
        assert walk.says(words).said == [messages.GoodToHear(burning)]
        assert walk.state == state
    walk = known_and_trained()
    state = walk.state
    assert (walk.says(words).said, walk.state) == ([messages.GoodToHear(burning)], state)


@pytest.mark.parametrize(
    "words",
    [
        "I'm not dizzy any more",
        "not dizzy yet",
        "am I not dizzy?",
        "not dizzy, feel weird",
        "I'm dying",
        "it burns",
        "my left arm is on fire",
    ],
)
def test_what_may_still_be_wrong_is_not_called_good(words):
    """One word more than a plain denial or a plain groan, and nobody is told that all is well."""
    assert "GoodToHear" not in Walk(known=True).says("go", "go", "go", words).kinds()


def test_a_sign_beside_a_denial_still_stops_everything():
    """Not dizzy, but pain in the chest: the chest counts."""
    assert Walk(known=True).says("go", "go", "go", "not dizzy, chest hurts").kinds() == ["UrgentStop"]


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


def test_a_set_told_after_its_exercise_was_swapped_is_of_what_was_done():
    """The squats that hurt were squats, though the station is a wall sit from now on."""
    walk = Walk(known=True).says("go", "go", "go").waits(62).says("my lower back hurts", "dull, had it before")
    assert walk.state.workout.exercises[0] == "wall-sit"
    walk.says("11 at 12kg")
    assert [(record.exercise, record.reps, record.seconds) for record in walk.history.standing()] == [("goblet-squat", 11, None)]
    walk.says("sorry 12 not 11")
    assert [(record.exercise, record.reps, record.seconds) for record in walk.history.standing()] == [("goblet-squat", 12, None)]
