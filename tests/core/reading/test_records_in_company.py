"""Rules for sets told beside other things: what makes a number no record, and what leaves it one."""

from __future__ import annotations

import pytest

from tests.core.reading.reading import RECORDS, acts

AWAITED = {"awaiting": "reps", "unit": "kg"}
LAST = {"reps": 11, "load": 20, "unit": "kg"}
FULL = {"act": "log", "reps": 12, "load": 20, "unit": "kg"}


def log(**fields):
    """A log with these fields."""
    return {"act": "log", **fields}


@pytest.mark.parametrize(
    "text",
    [
        # somebody else
        "my training partner 9 @ 22kg",
        "my neighbour manages twenty with the 16 kg",
        "the lad next to me did 12 at 30kg",
        "my wife: 12 at 8kg",
        "hubby 12 at 20kg",
        "dad's 12 at 20kg",
        "12 at 20kg for my brother",
        "my mate benched 12 at 20kg",
        "my physio would like me to do 12 at 20kg",
        "my trainer is telling 12 at 20kg",
        "my son counted to 12",
        # meant, wished, ordered, imagined
        "meant to do 12 at 10kg",
        "I'd like to do 12 at 20kg",
        "goal: 12 at 20kg",
        "set my record for lunges to 50 reps",
        "12 at 20kg would kill me",
        "no way 12 at 20kg",
        "12 at 20kg if you count the bad ones",
        # another time, a best
        "back in college I did 15 at 30kg",
        "12 at 20kg but that was yesterday",
        "12 at 20kg. Forgot to send it on monday",
        "12 at 20kg is the plan",
        "I go do 12 at 20kg later",
        "if the cat weighs enough then 12 at 20kg",
        "my PB is 12 at 24kg",
        "record is 15 at 20kg",
        # about so many
        "minimum 10 I must have done",
        "hardly 12 at 20kg",
        # something else that is measured
        "down 3kg",
        "waited 30 seconds",
        "30 seconds left",
        "must be 30 in here",
        "it was 12 at noon",
        "should be there at 6",
        "done in 10",
        # a number that is only taken away, or only called wrong
        "remove the 12 at 20kg",
        "ignore 12",
        "12 was a typo",
        "12 is wrong",
        "2 fewer",
        "plus 1",
        "put 16 instead",
        "12 at 20kg, 13 didn't happen",
        # what is usual, what is next, what is asked, what is counted along
        "average 12 at 20kg",
        "I always do 12 at 20kg",
        "coach had me on 12 at 20kg last month",
        "next up 12 at 20kg",
        "I should be able to get 12 at 20kg",
        "20kg seems too much for 12",
        "is 20kg for 12 ok",
        "no more 20kg",
        "stood on the scale, 82kg",
        "bw 82",
        "5 6 7 8",
        "3 2 1",
        "same again?",
        "same exercise again? give some other one",
        "is it the same again",
        "not the same again",
    ],
)
def test_what_was_not_done_here_and_now_by_the_writer_is_no_record(text):
    """Others, plans, other times and other measures never become a record, however full they are told."""
    assert not [act for act in acts(text, **AWAITED) if act["act"] in RECORDS]


@pytest.mark.parametrize(
    "text",
    [
        "12 at 20kg but the last 2 were half",
        "12 at 20kg, 3 with help",
        "12 at 20kg, last 2 were wobbly",
        "12 at 20kg, the dog on my back for the final three",
        "12 at 20kg, first 8 were quick",
        "12 with 8kg in each hand so 16",
        "12 at 20kg, dinner at 7",
        "12 at 20kg, see you at 6",
        "12 at 20kg, up 2",
        "12 plus 2 at 20kg",
        "20kg 12/15",
        "12 at 20kg instead of 15",
        "12 at 20kg, supposed to be 15",
        "12 at 20kg no 22",
        "12 per side, 10 on the left at 20kg",
    ],
)
def test_a_second_number_that_may_be_no_set_is_asked_about(text):
    """A number that fits nowhere beside a set makes the whole record unclear."""
    assert acts(text, **AWAITED) == [{"act": "unclear"}]


@pytest.mark.parametrize(
    "text",
    [
        "was meant to rest but 12 at 20kg done",
        "the kids woke me but 12 at 20kg",
        "while my training partner watched, 12 at 20kg",
        "thanks to my partner 12 at 20kg",
        "could only find the 20kg pair. 12 reps",
        "did it between school run and dinner: 12 at 20kg",
        "round 3 over, 12 reps w 20kg",
        "swapped up to 20kg, got 12",
        "I want to report 12 at 20kg",
        "only 12, I'm sorry to say, with the 20kg weights",
        "12 with both dumbbells at 20kg",
        "two 20 kg dumbbells, twelve reps",
        "20kg 12x, my arms are dead",
        "12 r @ 20kg",
        "12 at 20kg, form was clean",
        "12 at 20kg, last couple were slow",
        "12 at 20kg didn't fail",
        "12 wraps at 20kg",
        "12 reaps, 20 kgh",
        "12repsat20kfg",
        "twenty kilos four twelve reps",
        "12! twelve! with 20kg",
        "soz 4 late reply, 12 at 20kg",
        "knocked over my beer grabbing the bells, 12 at 20kg",
        "my son counted for me and he says 12, 20kg",
        "no worries got 12 at 20kg",
        "I try 12 reps with 20kg",
        "total 12 reps I have done, 20kg",
        "12 at 20kg nearly failed",
        "12 reps 20 kg finish",
    ],
)
def test_words_around_a_full_set_change_nothing(text):
    """A story, a courtesy or a denial beside a set leaves the one set, no more and no less."""
    assert acts(text, **AWAITED) == [FULL]


@pytest.mark.parametrize(
    ("text", "reps"),
    [
        ("a respectable 10", 10),
        ("you can put me down for 13", 13),
        ("I got up to nine before the alarm rang", 9),
        ("eight of the squats", 8),
        ("Eleven. Bit grim but eleven", 11),
        ("seven... just seven", 7),
        ("15 pieces... I mean reps", 15),
        ("did none, the floor was too comfy", 0),
        ("None I'm afraid, the telephone rang.", 0),
        ("nil. the dog sat on the mat. so 0 reps", 0),
        ("zero, total failure", 0),
    ],
)
def test_a_count_told_in_a_sentence(text, reps):
    """A bare count in a whole sentence is the reps; none at all has no reserve."""
    assert acts(text, **AWAITED) == [log(reps=reps)]


@pytest.mark.parametrize(
    ("text", "sides"),
    [
        ("left=12, right=11, load=16kg", [("left", 12), ("right", 11)]),
        ("left first 12, then right 11, with 16kg", [("left", 12), ("right", 11)]),
        ("my strong arm (left) got 12, the useless right 11, both on 16kg", [("left", 12), ("right", 11)]),
        ("left 12, right 11, each time 16 kg", [("left", 12), ("right", 11)]),
        ("left only so far: 12 at 16kg", [("left", 12)]),
        ("12 at 16kg, right only", [("right", 12)]),
        ("right now 12 at 16kg", [(None, 12)]),
        ("right then, 12 at 16kg", [(None, 12)]),
    ],
)
def test_a_side_is_neither_lost_nor_made_up(text, sides):
    """The side said belongs to its count, a few small words away; "right now" is no side."""
    wanted = [log(reps=reps, load=16, unit="kg") | ({"side": side} if side else {}) for side, reps in sides]
    assert acts(text, **AWAITED, sides=True) == wanted


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        ("twelve reps at for teen kilos", {"reps": 12, "load": 14, "unit": "kg"}),
        ("for ty five pounds nine reps", {"reps": 9, "load": 45, "unit": "lb"}),
        ("22.5kgx8rpe9", {"reps": 8, "load": 22.5, "unit": "kg", "rpe": 9}),
        ("20kgx11rir1", {"reps": 11, "load": 20, "unit": "kg", "reserve": 1}),
        ("seven with the new 26s", {"reps": 7, "load": 26}),
    ],
)
def test_a_number_in_two_words_or_two_numbers_in_one(text, wanted):
    """A dictated number in two pieces is one; letters glued between two numbers name the one after them."""
    assert acts(text, **AWAITED) == [log(**wanted)]


def test_holds_of_both_sides():
    """A "25s" after a side is a time, and a reserve after a right side leaves the side."""
    assert acts("left 25s right 30s", **AWAITED, sides=True) == [log(side="left", seconds=25), log(side="right", seconds=30)]
    assert acts("9 right 2 in reserve", **AWAITED, sides=True) == [log(reps=9, side="right", reserve=2)]


@pytest.mark.parametrize(
    ("text", "more"),
    [
        ("could've squeezed out another one", {"reserve": 1}),
        ("had another one in me", {"reserve": 1}),
        ("could have done another set", {}),
        ("cudnt get anotha", {"reserve": 0}),
        ("effort a 6 out of 10", {"rpe": 6}),
        ("effort was an 8", {"rpe": 8}),
        ("roe 9", {"rpe": 9}),
        ("RPE 8,5.", {"rpe": 8.5}),
        ("difficulty 8 of 10", {"rpe": 8}),
        ("an 8 on the RPE scale", {"rpe": 8}),
        ("two was still possible", {"reserve": 2}),
        ("e remain one before failure", {"reserve": 1}),
        ("got another one in the tank", {"reserve": 1}),
        ("zero reserve", {"reserve": 0}),
    ],
)
def test_reserve_and_effort_in_other_words(text, more):
    """One more, an effort told in a sentence, a slip in "rpe", a decimal comma."""
    assert acts(f"12 at 20kg, {text}", **AWAITED) == [FULL | more]


@pytest.mark.parametrize(
    ("text", "sets"),
    [
        ("set one twelve set too eleven set three ten at 20 kilos", [(12, 20), (11, 20), (10, 20)]),
        ("I did too sets of ten at twenty kilos", [(10, 20), (10, 20)]),
        ("did it between school run and dinner: 12, 12, 10 w 20kg", [(12, 20), (12, 20), (10, 20)]),
        ("10 at 20kg, dropped to 14kg for 8 more", [(10, 20), (8, 14)]),
        ("12 at 20kg, drop set 8 at 14kg", [(12, 20), (8, 14)]),
    ],
)
def test_lists_of_sets_in_other_words(text, sets):
    """Sets numbered by dictation, a list after a story, drop sets."""
    assert acts(text, **AWAITED) == [log(reps=reps, load=load, unit="kg") for reps, load in sets]


def test_sets_joined_by_a_word_and_bodyweight_beside_a_load():
    """Two counts joined by "then" are sets when neither is the load; a unit said later is not that of bodyweight."""
    assert acts("10 then 8", **AWAITED, load=22) == [log(reps=10), log(reps=8)]
    assert acts("12 bodyweight, 10 with 6kg", **AWAITED) == [log(reps=12, load=0), log(reps=10, load=6, unit="kg")]
    assert acts("9 at 20 kg, ok ready for more", **AWAITED)[0] == log(reps=9, load=20, unit="kg")


@pytest.mark.parametrize(
    "text",
    ["no 14s here", "dinner at 7 so make it quick", "the mastiff was 71 kg today", "should be using 22kg", "make it 5 minutes"],
)
@pytest.mark.parametrize("context", [{}, {"awaiting": "none", "last": LAST}], ids=["nothing recorded", "a record"])
def test_what_is_about_something_else_corrects_nothing(text, context):
    """A correction speaks of the record; absence, dinner, a dog and a wish do not."""
    assert not [act for act in acts(text, **context) if act["act"] in RECORDS]


@pytest.mark.parametrize(
    ("text", "changed"),
    [
        ("the correct is 10 kg, no 20", {"load": 10, "unit": "kg"}),
        ("Correction: 12.5 kg instead of 20 kg", {"load": 12.5, "unit": "kg"}),
        ("Correction from sir: 11 should read 12", {"reps": 12}),
        ("sory 12 noy 11", {"reps": 12}),
        ("right not left", {"side": "right"}),
        ("I should have said nine repetitions", {"reps": 9}),
    ],
)
def test_what_a_correction_gives_up(text, changed):
    """What "no", "instead of", "should read" and "not" give up is no part of what was meant."""
    assert acts(text, awaiting="none", last=LAST) == [{"act": "amend", **changed}]


def test_a_load_that_is_pointed_at_is_a_log_where_nothing_was_recorded():
    """The words "it was the 12 kg" tell the load of the set that is asked about, or correct the last one."""
    assert acts("it was the 12 kg", **AWAITED) == [log(load=12, unit="kg")]
    assert acts("it was the 12 kg", awaiting="none", last=LAST) == [{"act": "amend", "load": 12, "unit": "kg"}]


@pytest.mark.parametrize("text", ["same again says grandpa", "same again my friend", "same weight same reps boss"])
def test_same_again_said_to_somebody(text):
    """Who is spoken to, or speaks, is not whose set it was; "same as my brother" is."""
    assert acts(text, **AWAITED) == [log(same=True)]
    assert acts("same as my brother", **AWAITED) == [{"act": "unclear"}]


@pytest.mark.parametrize("text", ["omg undo undo", "please take away the last record, is mistake"])
def test_taking_back_in_other_words(text):
    """A doubled word and a foreign turn of phrase take the last record back."""
    assert acts(text, awaiting="none", last=LAST) == [{"act": "undo"}]
