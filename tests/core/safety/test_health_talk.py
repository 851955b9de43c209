"""Answers about health, as people type them. What is not plainly an answer is none."""

from __future__ import annotations

from decimal import Decimal

import pytest

from core.circuit import Side
from core.health import AgeBand, Condition, Feeling, Injury, Quality, Symptom, Topic
from core.reading.health_answers import Left, Stopped, is_history, read_topic, says_cleared, wants_health
from core.reading.health_talk import read_effort, read_feelings, read_gone, read_quality, read_relief
from core.reading.whole_words import says_start, yes_or_no

CLEARED = [
    "I am cleared",
    "I'm cleared",
    "i'm cleared by my doctor",
    "im cleared now",
    "Cleared by my doctor",
    "cleared",
    "my doctor cleared me",
    "doctor has cleared me to train",
    "I have been cleared",
    "I've been fully cleared",
    "got the all clear",
    "i have clearance",
    "my cardiologist gave me the all clear",
]
NOT_CLEARED = [
    "am I cleared?",
    "I am not cleared",
    "I'm not cleared yet",
    "I will be cleared tomorrow",
    "just kidding I am cleared",
    "I am cleared lol",
    "I am cleared, haha",
    "do I need to be cleared",
    "when I am cleared",
    "if I'm cleared can I go",
    "I hope I am cleared soon",
    "I'm fine",
    "it was nothing",
    "it's gone",
    "go",
    "yes",
    "false alarm",
    "I cleared the table",
    "the floor is cleared",
    "clear",
    "I am almost cleared",
    "nobody cleared me",
    "I feel ok now, let me train",
]


@pytest.mark.parametrize("text", CLEARED)
def test_a_clear_clearance_is_heard(text):
    """In the words people use for it."""
    assert says_cleared(text)


@pytest.mark.parametrize("text", NOT_CLEARED)
def test_hope_jokes_questions_and_feeling_fine_are_no_clearance(text):
    """Nothing but a plain statement counts."""
    assert not says_cleared(text)


@pytest.mark.parametrize(
    ("text", "topic", "answer"),
    [
        ("34", Topic.AGE, AgeBand.ADULT),
        ("I'm 41 years old", Topic.AGE, AgeBand.MIDDLE),
        ("65", Topic.AGE, AgeBand.OLDER),
        ("65+", Topic.AGE, AgeBand.OLDER),
        ("over 65", Topic.AGE, AgeBand.OLDER),
        ("18-39", Topic.AGE, AgeBand.ADULT),
        ("40 to 64", Topic.AGE, AgeBand.MIDDLE),
        ("17", Topic.AGE, AgeBand.UNDER_18),
        ("under 18", Topic.AGE, AgeBand.UNDER_18),
        ("old enough", Topic.AGE, None),
        ("300", Topic.AGE, None),
        ("12 at 20", Topic.AGE, None),
        ("no", Topic.PREGNANCY, False),
        ("I'm a man lol", Topic.PREGNANCY, False),
        ("yes 20 weeks along", Topic.PREGNANCY, True),
        ("pregnant", Topic.PREGNANCY, True),
        ("not pregnant", Topic.PREGNANCY, False),
        ("gave birth in spring", Topic.PREGNANCY, True),
        ("maybe", Topic.PREGNANCY, None),
        ("none", Topic.CONDITIONS, ()),
        ("no", Topic.CONDITIONS, ()),
        ("1", Topic.CONDITIONS, (Condition.HEART,)),
        ("1 and 3", Topic.CONDITIONS, (Condition.HEART, Condition.KIDNEY)),
        ("2, 3", Topic.CONDITIONS, (Condition.METABOLIC, Condition.KIDNEY)),
        ("diabetes type 2", Topic.CONDITIONS, (Condition.METABOLIC,)),
        ("I had a stent two years ago", Topic.CONDITIONS, (Condition.HEART,)),
        ("no heart trouble but diabetes", Topic.CONDITIONS, (Condition.METABOLIC,)),
        ("just high blood pressure", Topic.CONDITIONS, ()),
        ("healthy as an ox", Topic.CONDITIONS, ()),
        ("yes", Topic.CONDITIONS, None),
        ("4", Topic.CONDITIONS, None),
        ("11 at 20kg", Topic.CONDITIONS, None),
        ("none of those", Topic.SYMPTOMS, ()),
        ("nope", Topic.SYMPTOMS, ()),
        ("yes", Topic.SYMPTOMS, None),
        ("5", Topic.SYMPTOMS, (Symptom.ANKLES,)),
        ("2 9", Topic.SYMPTOMS, (Symptom.BREATH, Symptom.FATIGUE)),
        ("I get dizzy sometimes", Topic.SYMPTOMS, (Symptom.DIZZY,)),
        ("palpitations now and then", Topic.SYMPTOMS, (Symptom.HEARTBEAT,)),
        ("my ankles swell", Topic.SYMPTOMS, (Symptom.ANKLES,)),
        ("no chest pain", Topic.SYMPTOMS, ()),
        ("no chest pain, no dizziness", Topic.SYMPTOMS, ()),
        ("left knee", Topic.INJURIES, (Injury("knee", Side.LEFT),)),
        ("my right shoulder and lower back", Topic.INJURIES, (Injury("lower back"), Injury("shoulder", Side.RIGHT))),
        ("both knees", Topic.INJURIES, (Injury("knee"),)),
        ("none", Topic.INJURIES, ()),
        ("no", Topic.INJURIES, ()),
        ("yes", Topic.INJURIES, None),
        ("yes", Topic.ACTIVITY, True),
        ("not really", Topic.ACTIVITY, False),
        ("i don't know", Topic.MEDICINE, None),
        ("nah", Topic.SHARE, False),
        ("sure", Topic.SHARE, True),
        ("skip", Topic.SYMPTOMS, Left()),
        ("I'd rather not say", Topic.PREGNANCY, None),
        ("rather not", Topic.PREGNANCY, Left()),
        ("later", Topic.AGE, Stopped()),
    ],
)
def test_an_answer_to_a_health_question(text, topic, answer):
    """Numbers, words, denials; a bare yes to a list is no answer, and nothing is guessed."""
    assert read_topic(text, topic) == answer


@pytest.mark.parametrize(
    ("text", "feelings"),
    [
        ("slept badly", (Feeling.BAD_SLEEP,)),
        ("didn't sleep, sore legs", (Feeling.BAD_SLEEP, Feeling.SORE)),
        ("I'm a bit tired", (Feeling.BAD_SLEEP,)),
        ("ill", (Feeling.ILL,)),
        ("feeling sick", (Feeling.ILL,)),
        ("ill, with a fever", (Feeling.FEVER,)),
        ("38.6 this morning", (Feeling.FEVER,)),
        ("temp was 101.2", (Feeling.FEVER,)),
        ("36.8", None),
        ("a bit ill but no fever", (Feeling.COLD,)),
        ("runny nose", (Feeling.COLD,)),
        ("sore throat", (Feeling.COLD,)),
        ("stomach bug", (Feeling.FEVER,)),
        ("had the flu last month", None),
        ("it's boiling in here", (Feeling.HOT,)),
        ("32 degrees, so hot", (Feeling.HOT,)),
        ("not sore", ()),
        ("all good", ()),
        ("great", ()),
        ("go", None),
        ("11 at 12kg", None),
        ("my legs are on fire", None),
        ("blorp", None),
    ],
)
def test_how_somebody_is_today(text, feelings):
    """Sleep, soreness, illness and whether it is fever or below the neck, heat; over 38.0 °C or 100.4 °F is fever (entry 46)."""
    assert read_feelings(text) == feelings


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("sharp, new", (Quality.SHARP, False)),
        ("dull, known", (Quality.DULL, True)),
        ("dull and I know it", (Quality.DULL, True)),
        ("just a dull ache, had it before", (Quality.DULL, True)),
        ("stabbing", (Quality.SHARP, None)),
        ("not sharp", (Quality.DULL, None)),
        ("sharp and dull", (Quality.SHARP, None)),
        ("the usual", (None, True)),
        ("never had it before", (None, False)),
        ("go", None),
        ("12", None),
    ],
)
def test_what_a_pain_is_like(text, said):
    """Of sharp and dull the one to be careful about counts; what was not said stays unsaid."""
    assert read_quality(text) == said


@pytest.mark.parametrize(
    ("text", "gone"),
    [
        ("fine now", True),
        ("knee is fine now", True),
        ("it's gone", True),
        ("doesn't hurt any more", True),
        ("still hurts", False),
        ("almost gone", False),
        ("better, but still there", False),
        ("not better", False),
        ("a bit", False),
        ("go", None),
        ("yes", None),
    ],
)
def test_whether_what_hurt_is_gone(text, gone):
    """Anything half is not gone, and a bare yes says neither."""
    assert read_gone(text) is gone


@pytest.mark.parametrize(
    ("text", "effort"),
    [
        ("7", 7), ("7/10", 7), ("about 8", 8), ("6.5", Decimal("6.5")), ("10", 10), ("0", 0), ("hard", 7), ("it was easy", 3),
        ("11", None), ("12 at 20", None), ("go", None),
    ],
)  # fmt: skip
def test_how_hard_it_was(text, effort):
    """A number from 0 to 10, or a word of the scale."""
    assert read_effort(text) == effort


@pytest.mark.parametrize(
    ("text", "choice"),
    [("more rest", "rest"), ("rest", "rest"), ("lighter please", "lighter"), ("carry on", "on"), ("no thanks", "on"), ("12", None)],
)
def test_what_would_help(text, choice):
    """More rest, lighter, or on as it is."""
    assert read_relief(text) == choice


@pytest.mark.parametrize(
    ("text", "history"),
    [
        ("chest pain sometimes on stairs", True),
        ("dizzy now and then", True),
        ("I get dizzy when I stand up", True),
        ("chest pain", False),
        ("my chest hurts right now", False),
        ("I used to faint", True),
        ("chest pain for the last hour", False),
        ("it started ten minutes ago", False),
        ("chest pain sometimes, and now too", False),
    ],
)
def test_a_sign_that_comes_and_goes_is_told_apart_from_one_that_is_here(text, history):
    """In doubt it is here: a stop too many is the smaller harm."""
    assert is_history(text) is history


def test_plain_words_around_the_questions():
    """Yes and no, a start, and asking for the questions or a change of them."""
    assert yes_or_no("yeah") is True
    assert yes_or_no("not sure") is None
    assert says_start("go")
    assert not says_start("ok")
    assert wants_health("health") == "ask"
    assert wants_health("I want to change my health answers") == "change"
    assert wants_health("is this healthy") is None
