"""Plain messages in everyday words: sets told side by side, with an end, a pause or a reason, and talk that is no set."""

from __future__ import annotations

import pytest

from tests.core.reading.reading import acts

UNCLEAR = [{"act": "unclear"}]


def told(reps, load=None, **more):
    """One set as the contract prints it, in kilograms when it has a load."""
    return {"act": "log", "reps": reps} | ({"load": load, "unit": "kg"} if load is not None else {}) | more


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        ("9 at 14kg by the end", [told(9, 14)]),
        ("did 8 at 20kg but I was blowing by the end", [told(8, 20)]),
        ("it was 11 in the end", [told(11)]),
        ("10 at 12kg with a short pause to open the door", [told(10, 12)]),
        ("12 at 16kg with a little break halfway", [told(12, 16)]),
        ("sorry 4 the delay, 10 at 12kg", [told(10, 12)]),
        ("soz 4 the wait, 11 @ 16kg", [told(11, 16)]),
        ("12 with 8kg ho gaya", [told(12, 8)]),
        ("did the 10 you set me at 12kg", [told(10, 12)]),
        ("did the 10 you suggested with 12kg", [told(10, 12)]),
        ("got the 12 you asked for, 14kg", [told(12, 14)]),
    ],
)
def test_words_around_a_set(text, wanted):
    """An end, a rest taken inside the set, manners and who asked for it change nothing."""
    assert acts(text, awaiting="reps", unit="kg") == wanted


@pytest.mark.parametrize("text", ["you asked for 12 but I did 10 at 14kg", "12 by the end of the week", "12 by the window"])
def test_ends_that_are_not_of_the_set(text):
    """Another number, another time or a place keep the number from being a set."""
    assert acts(text, awaiting="reps", unit="kg") == UNCLEAR


def test_a_place_that_hurts_beside_what_is_moved():
    """What is told after an "and" is a sign of its own, and is never lost."""
    told_of = acts("back hurts when I stand and my leg goes numb", awaiting="none")
    assert {"act": "pain", "place": "leg", "urgent": True} in told_of


@pytest.mark.parametrize("text", ["12 at 20kg and hit 9 on the watch", "10 at 20kg, hit 150", "none, I'll do it tomorrow"])
def test_numbers_and_noughts_of_other_things(text):
    """What else was reached, or is put off, is no set."""
    assert acts(text, awaiting="reps", unit="kg") == UNCLEAR


@pytest.mark.parametrize("text", ["10 reps, 20s rest", "10 reps, 45 seconds rest", "12 reps with 30s rest"])
def test_a_rest_is_no_hold(text):
    """The seconds of a rest are never recorded as work."""
    assert not any("seconds" in act for act in acts(text, awaiting="reps", unit="kg"))


@pytest.mark.parametrize("text", ["none, the baby woke up", "none. my grip went straight away", "none, kid climbed on me 😂"])
def test_none_with_a_reason(text):
    """Nothing was done, and why is only told."""
    assert acts(text, awaiting="reps", unit="kg") == [told(0)]


@pytest.mark.parametrize(("text", "load"), [("25s, 12 reps", 25), ("30s, 12 reps, phew", 30), ("20s 12 reps to be exact", 20)])
def test_the_suggested_pair_before_named_reps(text, load):
    """The "25s" beside named reps are the pair that was suggested, not a hold."""
    assert acts(text, awaiting="reps", unit="lb", load=load) == [{"act": "log", "reps": 12, "load": load}]


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        ("left arm ten right arm eight with ten kilos", [told(10, 10, side="left"), told(8, 10, side="right")]),
        (
            "left leg 12 right leg 11 with 10kg and my knee hurts",
            [told(12, 10, side="left"), told(11, 10, side="right"), {"act": "pain", "place": "knee"}],
        ),
        ("left hand 10 reps 12kg, right hand 9", [told(10, 12, side="left"), told(9, 12, side="right")]),
        ("left arm 10 hurts", [{"act": "pain", "place": "arm", "side": "left"}]),
    ],
)
def test_sides_that_are_counted(text, wanted):
    """A limb named for its number does not hurt, whatever else does."""
    assert acts(text, awaiting="reps", unit="kg", sides=True) == wanted


@pytest.mark.parametrize("link", [", then ", " then ", " and then "])
def test_nothing_left_in_the_second_set(link):
    """What was left belongs to the set it follows, "with" or without."""
    wanted = [told(10, 20, reserve=1), told(8, 20, reserve=0)]
    assert acts(f"10 at 20kg with 1 left{link}8 with nothing left", awaiting="reps", unit="kg") == wanted


@pytest.mark.parametrize("done", ["completed", "squeezed out", "performed", "got"])
def test_two_sets_with_a_verb_between(done):
    """Whatever word says that the second set was done, it has the load said before it."""
    for change in ("", "changed to ", "dropped to "):
        text = f"I began with 8 kg for ten repetitions, then {change}6 kg and {done} twelve."
        assert acts(text, awaiting="reps", unit="kg", load=8) == [told(10, 8), told(12, 6)], text


@pytest.mark.parametrize("text", ["8 reps, the 9 was a typo", "sorry, 8 reps, the 9 was wrong", "8 reps, the 9 was a mistake typo"])
def test_the_wrong_number_named_last(text):
    """The number that is called wrong is given up for the other."""
    last = {"reps": 9, "load": 10, "unit": "kg"}
    assert acts(text, awaiting="none", unit="kg", last=last) == [{"act": "amend", "reps": 8}]


@pytest.mark.parametrize(
    ("text", "pain"),
    [
        ("my neck aches when I turn my head", {"place": "neck"}),
        ("my shoulder hurts when I lift my arm", {"place": "shoulder"}),
        ("my elbow hurts as I straighten my arm", {"place": "elbow"}),
        ("chest feels tight right now", {"place": "chest", "urgent": True}),
        ("my hip hurts right here", {"place": "hip"}),
        ("left calf's sore", {"place": "calf", "side": "left"}),
        ("left hammy sore af", {"place": "hamstring", "side": "left"}),
    ],
)
def test_where_it_hurts(text, pain):
    """What is moved does not hurt, "right now" is no side, and one sore side is more than work."""
    assert acts(text, awaiting="none", unit="kg") == [{"act": "pain"} | pain]


@pytest.mark.parametrize(
    "text",
    [
        "The wife's got a bad back again",
        "hubby has his bad back again",
        "My lad's got a sore back again",
        "My shift is till 9 pm today",
        "our meeting is till 5pm",
        "Our Dave's got a 32kg kettlebell, lucky sod",
        "Our Kev has got a pair of 20kg dumbbells",
    ],
)
def test_what_is_told_of_others(text):
    """Other people's backs, hours and dumbbells ask for nothing."""
    assert acts(text, awaiting="none", unit="kg") == UNCLEAR


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        ("any chance of glute bridges instead?", {"act": "swap", "exercise": "glute bridges"}),
        ("is there a chance I could do lunges instead", {"act": "swap", "exercise": "lunges"}),
        ("coach how I dey do so far?", {"act": "progress"}),
        ("how i dey perform lately", {"act": "progress"}),
    ],
)
def test_what_is_asked_for(text, wanted):
    """A swap and progress, asked in other words."""
    assert acts(text, awaiting="none", unit="kg") == [wanted]


def test_a_unit_wished_for_after_what_is_owned():
    """What follows a "so" is a wish of its own."""
    owned = {"act": "have", "items": [{"kind": "kettlebell", "load": 16, "unit": "kg", "count": 1}]}
    said = acts("I've got a 16kg kettlebell, so use kg please", awaiting="none")
    assert said == [owned, {"act": "units", "unit": "kg"}]


@pytest.mark.parametrize("text", ["right arm 12 left arm 10 pain in left arm", "11 at 20kg, pain 7/10 in my left knee"])
def test_a_set_beside_a_pain_with_a_number_in_it_is_asked_about(text):
    """The pain comes through; a record with a number missing does not."""
    said = acts(text, awaiting="reps", sides=True)
    assert {act["act"] for act in said} == {"unclear", "pain"}
