"""Several sets in one message: what is said of one of them, what is only remarked on a side, and what is put right afterwards."""

from __future__ import annotations

import pytest

from tests.core.reading.reading import RECORDS, acts

AWAITED = {"awaiting": "reps", "unit": "kg", "load": 16}
LAST = {"reps": 11, "load": 16, "unit": "kg", "side": "left"}


def log(**fields):
    """A log with these fields."""
    return {"act": "log", **fields}


@pytest.mark.parametrize(
    ("text", "more"),
    [
        ("3x8 16kg, last one 0 rir", [{}, {}, {"reserve": 0}]),
        ("3x8 16kg, last 0 left", [{}, {}, {"reserve": 0}]),
        ("3 sets of 8 with 16kg, failed on the last one", [{}, {}, {"reserve": 0}]),
        ("3 sets of 8 at 16kg. final set RPE 9", [{}, {}, {"rpe": 9}]),
        ("3x8 16kg, 2 left on the first set", [{"reserve": 2}, {}, {}]),
        ("3x8 16kg, 1 rir", [{"reserve": 1}] * 3),
        ("8 8 8 at 16kg, 1 rir on all", [{"reserve": 1}] * 3),
        ("8, 8, 8 at 16kg, 1 rir each set", [{"reserve": 1}] * 3),
        ("8, 8, 8 at 16kg, 1 rir", [{}, {}, {"reserve": 1}]),
        ("8, 8, 8 at 16kg, second set 2 rir", [{}, {"reserve": 2}, {}]),
        ("3x8 16kg, last set was to failure", [{}, {}, {"reserve": 0}]),
        ("3x8 16kg, the last one was a grind, nothing left", [{}, {}, {"reserve": 0}]),
        ("8 then 8, 16kg for both, 2 left on the second", [{}, {"reserve": 2}]),
        ("8 then 8, 16kg for both. could have done 2 more on the first", [{"reserve": 2}, {}]),
        ("8 at 16kg and then 8, 1 rep in reserve both times", [{"reserve": 1}] * 2),
    ],
)
def test_a_reserve_is_of_the_set_that_is_named(text, more):
    """The last, the first, the second one; of all when none is named."""
    assert acts(text, **AWAITED) == [log(reps=8, load=16, unit="kg") | fields for fields in more]


@pytest.mark.parametrize(
    ("text", "left", "right"),
    [
        ("8 left arm, 8 right arm, 16kg, to failure on the right", {}, {"reserve": 0}),
        ("8L/8R 16kg, 1 rir on L", {"reserve": 1}, {}),
        ("8 on the left, 8 on the right, 16kg, right side had one left", {}, {"reserve": 1}),
        ("8 left 8 right 16kg. left side had 1 in reserve", {"reserve": 1}, {}),
        ("left 8, right 8, 16kg, rpe 7 both", {"rpe": 7}, {"rpe": 7}),
        ("8 left, 8 right, 16kg, one in the tank on both", {"reserve": 1}, {"reserve": 1}),
        ("left 8, right 8, each with 16kg", {}, {}),
        ("8 & 8 (left & right) 16kg", {}, {}),
        ("8repsleft8repsright16kg", {}, {}),
        ("8 reps left hand, 8 reps right hand, 16kg", {}, {}),
        ("8 left, 8 right, 16kg, left hand weak", {}, {}),
        ("Only eight on the left, dear, but eight on the right. Both with 16 kg.", {}, {}),
        ("L8 R8 16kg", {}, {}),
        ("(L) 8 (R) 8 16kg", {}, {}),
        ("L arm 8, R arm 8, 16kg", {}, {}),
        ("left side ate right side eight at sixteen kilos", {}, {}),
        ("left side 8 done, right side 8 done, 16 kg", {}, {}),
        ("8 left, right the same, 16kg", {}, {}),
        ("8 on left, same on right, 16kg", {}, {}),
        ("8 with left, with right only 8, the weight 16 kilos", {}, {}),
        ("left was 8, 8 on the right, 16kg", {}, {}),
        ("started on my left, got 8, then right, got 8, 16kg", {}, {}),
        ("my left could do only 8, my right gave up at 8, 16kg", {}, {}),
        ("left 8 right 8 16kg left was cleaner", {}, {}),
        ("8 for left, 8 for right, 16kg each hand, I try abi?", {}, {}),
        ("left 8, right 8, 16kg, not kidding", {}, {}),
        ("left: 8, 16kg. right: 8, 16kg. both to failure", {"reserve": 0}, {"reserve": 0}),
    ],
)
def test_what_is_said_of_a_side(text, left, right):
    """A reserve of one side belongs to it, "both" to both; a remark on a side is no third set."""
    sets = [log(reps=8, load=16, unit="kg", side="left") | left, log(reps=8, load=16, unit="kg", side="right") | right]
    assert acts(text, **AWAITED, sides=True) == sets


@pytest.mark.parametrize(
    "text",
    [
        "9 p/s 16kg",
        "9 left and right, 16kg",
        "9 on both 16kg",
        "9 reps each hand, weight 16kg",
        "9 each side, 16kg, right side easier",
        "9 by arm with 16kg",
        "9 with each hand, 16kg",
        "9 reps for each hand, 16kg",
        "each hand 9 reps, 16kg",
        "9 reps 16kg eack side",
    ],
)
def test_one_count_for_both_sides(text):
    """One log, of each side; what is easier on one side tells nothing of the load."""
    assert acts(text, **AWAITED, sides=True) == [log(reps=9, load=16, unit="kg", side="each")]


@pytest.mark.parametrize("text", ["only did left, 9 at 16kg", "9 at 16kg (left)", "9 16kg L", "9 at 16kg, left"])
def test_a_side_that_stands_apart_from_its_count(text):
    """It is not lost; "all right" is none."""
    assert acts(text, **AWAITED, sides=True) == [log(reps=9, load=16, unit="kg", side="left")]
    assert acts("all right, 9 at 16kg", **AWAITED, sides=True) == [log(reps=9, load=16, unit="kg")]


@pytest.mark.parametrize(
    "text",
    [
        "9 on the good leg... I mean the right, 6 on the left, 16kg",
        "9 on my good arm (right), 6 on the bad one, 16kg",
        "right arm 9, other arm 6, 16kg",
        "9 on the right, 6 on the other side, 16kg",
    ],
)
def test_a_side_told_by_what_it_is_like(text):
    """The side that is named settles it; where none is, nobody knows which."""
    sets = [log(reps=9, load=16, unit="kg", side="right"), log(reps=6, load=16, unit="kg", side="left")]
    assert acts(text, **AWAITED, sides=True) == sets
    assert acts("9 on my good side and 6 on my bad side, 16kg", **AWAITED, sides=True) == [{"act": "unclear"}]


def test_that_side_is_the_one_named_last():
    """A pain "that side" is on the side of the set before it."""
    *_, hurt = acts("9 on the left, 7 on the right, wrist sore that side. 16kg", **AWAITED, sides=True)
    assert hurt == {"act": "pain", "place": "wrist", "side": "right"}


def test_in_fact_puts_right_only_a_number_beside_it():
    """A feeling "in fact" leaves the set that follows a record of its own."""
    felt, done = acts("I found it just right in fact. Twelve repetitions.", **AWAITED)
    assert (felt["act"], done) == ("feel", log(reps=12))
    assert acts("14 reps in fact", awaiting="go", last=LAST) == [{"act": "amend", "reps": 14}]


@pytest.mark.parametrize("told_again", ["it was in fact 9", "that was actually 9", "it was 8, in fact 9", "actually it was 9"])
def test_what_is_told_again_puts_the_set_right(told_again):
    """What follows an "it was" right after a set is no second set."""
    assert acts(f"8 at 16kg, {told_again}", **AWAITED) == [log(reps=8, load=16, unit="kg"), {"act": "amend", "reps": 9}]


@pytest.mark.parametrize("remark", ["left side little weak", "right was wobbly", "although my left arm is a bit weaker"])
def test_a_remark_on_a_side_is_no_side(remark):
    """What was done on each side stays so."""
    assert acts(f"8 each side, 16kg, {remark}", **AWAITED, sides=True) == [log(reps=8, load=16, unit="kg", side="each")]


@pytest.mark.parametrize(
    ("text", "sets"),
    [
        ("3x10 at 16kg, 2x8 at 20kg", [(10, 16)] * 3 + [(8, 20)] * 2),
        ("2 sets of 10 at 16kg and 2 sets of 8 at 20kg", [(10, 16)] * 2 + [(8, 20)] * 2),
        ("2x10 at 16kg then 8 at 20kg", [(10, 16)] * 2 + [(8, 20)]),
        ("Total 3 sets done: 12, 12, 10 at 16 kg", [(12, 16), (12, 16), (10, 16)]),
        ("did 9, then had a brew, then 8. both on 16kg", [(9, 16), (8, 16)]),
        ("twelve in the first round and ten in the second, with 16 kg throughout", [(12, 16), (10, 16)]),
        ("s1 10 s2 9, 16kg", [(10, 16), (9, 16)]),
        ("r1: 10 r2: 9, 16kg", [(10, 16), (9, 16)]),
        ("rd1-10, rd2-9 16kg", [(10, 16), (9, 16)]),
        ("#1 10 #2 9 16kg", [(10, 16), (9, 16)]),
        ("1- 10 2- 9, 16kg", [(10, 16), (9, 16)]),
        ("1. 10\n2. 9\n16kg", [(10, 16), (9, 16)]),
        ("lap 1 10 lap 2 9 16kg", [(10, 16), (9, 16)]),
        ("I use 16kg do 10, then 18kg do 9", [(10, 16), (9, 18)]),
        ("two lots of ten with the 16 kg", [(10, 16)] * 2),
        ("10 twice at 16kg", [(10, 16)] * 2),
        ("10 for all 3 sets 16kg", [(10, 16)] * 3),
        ("10 reps x 3 at 16kg", [(10, 16)] * 3),
        ("did two: 10 and 9 with 16kg", [(10, 16), (9, 16)]),
        ("done with the round: 14, 12, 11 using 16kg", [(14, 16), (12, 16), (11, 16)]),
        ("12/10/8 at 16/18/20kg", [(12, 16), (10, 18), (8, 20)]),
        ("12, 11 and a scrappy 9 at 16kg", [(12, 16), (11, 16), (9, 16)]),
        ("one more set, 8 at 16kg", [(8, 16)]),
        ("one set 10 reps, second set 9 reps, 16 kg", [(10, 16), (9, 16)]),
        ("one set done, 10 at 16kg", [(10, 16)]),
        ("one set of 12 and two sets of 10 with 16kg", [(12, 16), (10, 16), (10, 16)]),
        ("two sets, 12 and 10, 16kg both times", [(12, 16), (10, 16)]),
        ("three sets of it: 12, 11, 9, all three at 16kg", [(12, 16), (11, 16), (9, 16)]),
        ("12 at 16kg, 10 at 16kg, 8", [(12, 16), (10, 16), (8, 16)]),
        ("12 at 16, 10 at 18, 8 at 20, all kilos", [(12, 16), (10, 18), (8, 20)]),
        ("8 with 20 then 10 with 16 kg", [(8, 20), (10, 16)]),
        ("8 with 20 kg and then I took the 16 kg and did 6 more", [(8, 20), (6, 16)]),
        ("first set eleven second set ten third set ate all with sixteen kilos", [(11, 16), (10, 16), (8, 16)]),
        ("12 before the baby woke and 8 after, 16kg", [(12, 16), (8, 16)]),
        ("10 then 9 then stopped at 6, 16kg", [(10, 16), (9, 16), (6, 16)]),
        ("10,9,8 - 16,16,14kg", [(10, 16), (9, 16), (8, 14)]),
        ("sets 1 and 2: 10 at 14kg, 8 at 16kg", [(10, 14), (8, 16)]),
        ("set a 12, set b 10, 16kg", [(12, 16), (10, 16)]),
        ("nine the first round and ate the second, sixteen kilos", [(9, 16), (8, 16)]),
        ("8 reps thrice at 16kg", [(8, 16)] * 3),
        ("ten and then nine, each of them with 16 kg", [(10, 16), (9, 16)]),
    ],
)
def test_groups_and_counts_of_sets(text, sets):
    """Each number of sets has its own count and load; a total of sets is none of reps."""
    assert acts(text, **AWAITED) == [log(reps=reps, load=load, unit="kg") for reps, load in sets]


@pytest.mark.parametrize(
    "text",
    [
        "12/10 at 16/18/20kg",
        "12 and 10, 16 and 18 kg",
        "10 at 14kg, failed at 6 with 16kg",
        "5x5 16kg, last set 4",
        "total 30 reps over 3 sets at 16kg",
        "8,7,6 16kg rpe 7,8,9",
        "12 at 16kg, same again for set 2",
        "12 at 16kg, 10 at 18kg, 8",
        "first set 12 second set 10 third set aye all with 16kg",
        "12/2, 10/1",
        "two sets of ten at 16kg, third one eight",
        "ten, same again, sixteen kilos",
        "12 stopped at 10",
        "first set 12, second set to come",
    ],
)
def test_a_table_of_sets_that_leaves_a_doubt(text):
    """No set is made up, and none is left out."""
    assert not [act for act in acts(text, **AWAITED) if act["act"] in RECORDS]


@pytest.mark.parametrize(
    ("text", "changed"),
    [
        ("wrong side sorry, that was the right", {"side": "right"}),
        ("it was right side, not left", {"side": "right"}),
        ("I logged left, should've been right", {"side": "right"}),
        ("R not L", {"side": "right"}),
        ("that should have been each side", {"side": "each"}),
        ("I put kg, should be pounds", {"unit": "lb"}),
        ("*lbs", {"unit": "lb"}),
        ("kg should be lb", {"unit": "lb"}),
        ("oops 16 was the old one. 20kg", {"load": 20, "unit": "kg"}),
        ("I put 16, it was 12.5kg", {"load": 12.5, "unit": "kg"}),
        ("it is 10 reps only, by mistake 11 I typed", {"reps": 10}),
        ("no not eleven i said sixteen reps", {"reps": 16}),
        ("hit 11 instead of 21", {"reps": 21}),
        ("change 16kg to 18kg", {"load": 18, "unit": "kg"}),
        ("I mixed that up. 12 reps", {"reps": 12}),
        ("my bad, it was pounds not kilos", {"unit": "lb"}),
        ("could you be a dear and put it down as the right leg, not the left", {"side": "right"}),
        ("wrong leg, sorry", {"side": "right"}),
        ("I mixed up my left and right", {"side": "right"}),
        ("could you change my last one to 12 please?", {"reps": 12}),
        ("that was 18s not 16s", {"load": 18}),
        ("soryr 12nit 11", {"reps": 12}),
        ("put 12 instead", {"reps": 12}),
        ("Actually left side was 12, my bad", {"reps": 12}),
        ("please put it down as 12", {"reps": 12}),
        ("it needs to be 12", {"reps": 12}),
        ("oops no, 12. typed 11", {"reps": 12}),
        ("meant 6kg, autocorrect turned it into 16", {"load": 6, "unit": "kg"}),
        ("I told you 16 kg earlier but it was in fact 6 kg", {"load": 6, "unit": "kg"}),
        ("I logged the wrong dumbbell, should be 14", {"load": 14}),
        ("chnge last 2 14kg pls", {"load": 14, "unit": "kg"}),
        ("I believe I told you kilograms when I meant pounds.", {"unit": "lb"}),
        ("umm undo that last 1, i put 11 ment 12", {"reps": 12}),
        ("you've put 11 but I did 14", {"reps": 14}),
        ("you have 16kg down, I lifted 18kg", {"load": 18, "unit": "kg"}),
        ("soory ment 14 no t11", {"reps": 14}),
        ("it was right arm not left", {"side": "right"}),
    ],
)
def test_what_is_put_right(text, changed):
    """A side, a unit, or a number for the one that the record holds."""
    assert acts(text, awaiting="go", sides=True, last=LAST) == [{"act": "amend", **changed}]


@pytest.mark.parametrize(
    "text",
    [
        "Please take that last entry away, I pressed the wrong button.",
        "ignore what i just sent, thumb slipped",
        "strike out the last figure I sent",
        "abeg no count that one",
        "can you bin what I just put",
        "sry ignore last",
        "dlt dat pls",
        "Oga abeg cancel am",
        "take that one back out, hadn't even started",
        "ignore the last msg, wrong number lol",
        "I'd like the last entry removed, if you please.",
        "that last message wasn't meant for you",
        "sorry, my youngest pressed send on that... bin the last one",
        "nix that last entry",
        "the last one doesn't count, I was interrupted",
    ],
)
def test_what_is_taken_back(text):
    """The last record, in whatever words."""
    assert acts(text, awaiting="go", last=LAST) == [{"act": "undo"}]


@pytest.mark.parametrize(
    "text",
    [
        "the right arm of the sofa is broken",
        "not sure if it was left or right",
        "wrong door, sorry",
        "forget the last bus",
        "left is weaker, not right",
        "sorry, which is the other side",
        "the one before the last one was 10 not 11",
        "you got it down as 12kg, was 14",
        "wrong chat, milk and bread please",
    ],
)
def test_what_puts_nothing_right(text):
    """A sofa has arms, too; a doubt and a bus change no record."""
    assert acts(text, awaiting="go", last=LAST) == [{"act": "unclear"}]


@pytest.mark.parametrize(
    "text",
    [
        "scratch that last one, I read the plate wrong. 9 with 14 kg",
        "scrap that, miscounted. 9 at 14kg",
        "delete that set and log 9 at 14kg",
    ],
)
def test_a_set_told_in_full_after_what_is_taken_back(text):
    """It is a record of its own, whatever the mistake is called; a set taken back in the midst stands in its place."""
    assert acts(text, awaiting="go", last=LAST) == [{"act": "undo"}, log(reps=9, load=14, unit="kg")]
    done, undone, again = acts("8 at 14kg, scratch that, 9 at 14kg", **AWAITED)
    assert (done["reps"], undone["act"], again["reps"]) == (8, "undo", 9)


@pytest.mark.parametrize(
    ("text", "beside"),
    [
        ("11 at 16kg, can I skip the next one?", {"act": "skip", "what": "station"}),
        ("11 at 16kg. Next one please skip", {"act": "skip", "what": "station"}),
        ("11 at 16 kilos stop the clock a minute", {"act": "pause"}),
        ("11 at 16kg, piece o cake", {"act": "feel", "value": "light"}),
        ("11 at 16kg and thats me, bath time", {"act": "finish"}),
        ("11 at 16kg one min please", {"act": "pause"}),
        ("11 at 16kg, how do I do the next one, the woodchop", {"act": "form", "exercise": "woodchop"}),
        ("11 at 16kg and I think I tweaked my back", {"act": "pain", "place": "back"}),
        ("11 at 16kg, wait no, 12 not 11", {"act": "amend", "reps": 12}),
    ],
)
def test_a_request_in_the_breath_of_a_set(text, beside):
    """Both are read."""
    assert acts(text, **AWAITED) == [log(reps=11, load=16, unit="kg"), beside]


@pytest.mark.parametrize(
    "beside",
    [
        "easier since I quit welding",
        "I quit sugar last week",
        "I'm off work today",
        "I'm done with this exercise",
        "had to sit down for a minute",
        "old injury, no pain now",
    ],
)
def test_what_is_only_told_beside_a_set_asks_for_nothing(beside):
    """Another thing was given up, a rest is over, and what is not there takes nothing back."""
    assert log(reps=11, load=16, unit="kg") in (told := acts(f"11 at 16kg, {beside}", **AWAITED))
    assert not {"finish", "pause", "amend", "undo"} & {act["act"] for act in told}


@pytest.mark.parametrize("text", ["right side weaker by 2 reps", "13 at 16kg is doable innit?", "12 at 16kg is what it says"])
def test_no_set_is_made_of_talk(text):
    """A difference, a question and a plan are none."""
    assert acts(text, **AWAITED, sides=True) == [{"act": "unclear"}]


@pytest.mark.parametrize(
    "before",
    [
        "held on to the rail.",
        "hung up on a salesman, then",
        "kept it tidy.",
        "my husband held the baby.",
        "grip held,",
        "carried the shopping up.",
        "put the phone on hold.",
    ],
)
def test_what_else_was_held_makes_no_hold_of_a_set(before):
    """Nothing but the time, or a thing that is held for a time, makes seconds of a count."""
    assert acts(f"{before} 9 at 16kg", **AWAITED) == [log(reps=9, load=16, unit="kg")]


@pytest.mark.parametrize(
    "text", ["held the plank for 40", "held on for 40", "held on to the bar for 40 seconds", "plank held well, 40", "lasted 40"]
)
def test_a_hold_is_told_in_seconds(text):
    """As long as it was held."""
    assert acts(text, awaiting="reps", unit="kg") == [log(seconds=40)]
