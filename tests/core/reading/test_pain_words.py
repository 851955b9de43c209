"""Pain in the words people have for it: the signs that stop everything in any order, figures of speech, places and sides."""

from __future__ import annotations

import pytest

from core.reading.signs import signs_in
from core.reading.tokens import tokenise
from tests.core.reading.reading import acts

AWAITED = {"awaiting": "reps", "unit": "kg"}


def _urgent(text: str) -> bool:
    return any(act.get("urgent") for act in acts(text, **AWAITED))


@pytest.mark.parametrize(
    "text",
    [
        "my left arm, i don't feel it anymore",
        "everythings gone black round the edges, going to lie down",
        "all becomes dark when I stand",
        "I get up and black",
        "dark at the edges of what i can see",
        "goes dark when i stand up too quick",
        "next thing i knew i was on the floor",
        "the world went dim",
        "chest pressing since the last set",
        "uneasy in the chest",
        "hand suddenly weak, dropped the weight",
        "i can't feel it anymore, my left hand",
        "fingers no feel",
        "in the right arm I don't feel nothing, it is asleep",
        "I feel nothing in my left hand",
        "my leg, the left one, I do not feel it any more",
        "my arm is without feeling",
        "barely any sensation in my toes",
        "my fingers are dead",
        "left arm isn't responding",
        "both my hands feel like they're not mine",
        "my head just started to spin",
        "my right hand is asleep",
        "left leg gone dead",
        "gasping and I'm just sat on the sofa",
        "panting and i havent started yet",
        "breathing is heavy even at rest",
        "breath no gree come",
        "haven't got my breath back and I sat down ages ago",
        "everything is going round",
        "darkness in front of eyes",
        "feeling chakkar",
        "the whole shed's spinning",
        "woke up on the floor",
        "body just dey shake and I wan collapse",
        "my heart makes jumps",
        "in the chest I have like a stone",
        "out of nowhere massive pain in my shoulder",
        "can't bear the pain in my back",
        "i have a pain in the chest",
        "there is a pressing feeling in my chest",
        "got real dizzy on that last squat",
        "the room did a little spin when i stood up",
        "i can't see out of my left eye",
        "cant get my words out",
        "leg just stopped working",
        "heart rate won't come down",
        "throat is closing up",
        "panting even though i am sat down",
        "gone weak down one side",
        "heart's going like the clappers and I'm only sitting down",
    ],
)
def test_a_sign_is_urgent_in_whatever_words_and_order(text):
    """Dialect, word order and a place in a clause of its own hide no urgent sign."""
    assert _urgent(text)


@pytest.mark.parametrize(
    "text",
    [
        "no I feel dizzy",
        "no my chest hurts",
        "never felt this dizzy",
        "chest day and now my chest hurts",
        "chest hurts like last time",
        "if i breathe in my chest hurts",
        "carrying the baby and chest hurts",
        "chest pain lol jk no really it hurts",
        "wallet fell on my toe and now im dizzy",
        "knee doesn't hurt but chest does",
        "room won't stop spinning",
    ],
)
def test_what_stands_beside_a_sign_does_not_take_it_away(text):
    """An answer, a figure of speech about something else, an earlier time that is compared, a baby that is carried."""
    assert _urgent(text)


@pytest.mark.parametrize(
    "text",
    [
        "my chest does not hurt",
        "no feeling of pain in my arm now",
        "i can't feel any difference in my arms",
        "my hand doesn't feel right on this",
        "arms are dead",
        "what if i get dizzy",
        "dizziness has passed",
        "do people get dizzy doing these?",
        "collapsed in a heap",
        "plank: 38 seconds before I collapsed on the rug",
        "everything is moving along nicely",
        "it's dark outside when I get up",
        "plate with black edges",
        "chest pressing 16s today",
        "these are so light and I can't feel it",
        "gasping after that set",
        "heart's at 142",
        "it was agony lol",
        "i'm numb to your jokes",
        "sprinting after the bus",
        "no air con in here",
        "chest press is too heavy",
        "i don't feel it in my glutes",
        "heart's going like the clappers",
        "my heart was in my boots",
        "that left me gasping",
        "I fainted once in 2009",
        "goblet squat, weight against my chest",
        "can't see the screen",
        "couldn't find the words",
    ],
)
def test_figures_rates_and_denials_are_no_sign(text):
    """A heart rate, the end of a set, a joke or something that is not there stops nothing."""
    assert not _urgent(text)


@pytest.mark.parametrize(
    ("text", "place", "side"),
    [
        ("right leg, pulled my hammy", "hamstring", "right"),
        ("sharp pain in my calf, right leg", "calf", "right"),
        ("my fingers are sore on the left hand", "finger", "left"),
        ("left one, my ankle, rolled it", "ankle", "left"),
        ("forearms screaming, left one properly sore", "forearm", "left"),
        ("my left knee is fine but the right one hurts", "knee", "right"),
        ("groin strain R", "groin", "right"),
        ("knee's a bit niggly, right one", "knee", "right"),
        ("ma r elbow is killin", "elbow", "right"),
        ("my shoulder blade is aching on the right side", "shoulder blade", "right"),
        ("lower left back pain", "lower back", "left"),
        ("pinged my hammy, righty", "hamstring", "right"),
        ("left knee, sharp", "knee", "left"),
        ("knee. left. sharp.", "knee", "left"),
        ("wrist hurts again leftone", "wrist", "left"),
        ("elbow grumbling a wee bit, left", "elbow", "left"),
        ("done something to my left groin, hurts to lift the leg", "groin", "left"),
        ("I have pain in the left shoulder when I lift the arm", "shoulder", "left"),
    ],
)
def test_the_side_may_be_told_anywhere(text, place, side):
    """Before the place or after it, of the limb it belongs to, or in a clause of its own; the place is told once."""
    assert acts(text, **AWAITED) == [{"act": "pain", "place": place, "side": side}]


def test_a_list_of_places_is_told_whole():
    """What a comma parts from the place that hurts hurts too."""
    assert [act["place"] for act in acts("pain in my elbow, shoulder and wrist", **AWAITED)] == ["elbow", "shoulder", "wrist"]


def test_two_places_keep_their_own_sides():
    """A clause that only names another place tells where else it hurts."""
    assert acts("on the right my shoulder hurts, on the left my hip", **AWAITED) == [
        {"act": "pain", "place": "shoulder", "side": "right"},
        {"act": "pain", "place": "hip", "side": "left"},
    ]


def test_the_side_of_a_pain_is_not_the_side_of_a_set():
    """What tells where it hurts tells nothing about the set beside it."""
    assert acts("11 with 16 kg but it makes pain in my elbow right side", **AWAITED) == [
        {"act": "log", "reps": 11, "load": 16, "unit": "kg"},
        {"act": "pain", "place": "elbow", "side": "right"},
    ]


def test_a_sign_needs_its_words_near_each_other():
    """Words of one sign that stand far apart in a long clause belong to different things."""
    near = tokenise("things going round")
    far = tokenise("things are as they were last monday in the old garage so i keep going round")
    assert list(signs_in(near, 0, len(near)))
    assert not list(signs_in(far, 0, len(far)))
