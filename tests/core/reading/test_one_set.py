"""One set, told with whatever stands beside it: that it was only so many, what could be done, what was left off."""

from __future__ import annotations

import pytest

from tests.core.reading.reading import acts

AWAITED = {"awaiting": "reps", "unit": "kg", "load": 20}
FULL = {"act": "log", "reps": 12, "load": 20, "unit": "kg"}
UNLOADED = {"act": "log", "reps": 12, "load": 0}
NONE_DONE = [{"act": "log", "reps": 0}]


@pytest.mark.parametrize(
    "text",
    [
        "I am afraid I could do only 12 with 20kg",
        "I could make 12 with 20 kilos in the hand",
        "Today I could do 12 reps at 20 kg",
        "I could not get beyond 12 with 20kg",
        "I could not do more than 12 with 20kg",
        "12 kg20",
        "12 reps over with 20 kg",
        "12 at 20kg. Just the 12.",
        "12 at 20kg, last one nearly did not go up",
        "knocked out 12 at 20 kegs... kgs. bloody autocorrect",
    ],
)
def test_what_could_be_done_was_done(text):
    """A set told as what could be done, or told twice, is the one set."""
    assert acts(text, **AWAITED) == [FULL]


@pytest.mark.parametrize("text", ["I could do 12 at 16kg", "I could do 12 at 20kg if I slept more", "I wan do 12 with 20kg"])
def test_what_could_be_done_some_other_time_is_asked_about(text):
    """Another load than the suggested one, a condition or a wish: nothing was done."""
    assert acts(text, **AWAITED) == [{"act": "unclear"}]


@pytest.mark.parametrize("text", ["in my dreams I did 12 with the 20kg", "I reckon I've got 12 at 20kg in me"])
def test_what_was_only_dreamt_of_is_no_record(text):
    """What somebody would be good for was not done."""
    assert acts(text, **AWAITED) == [{"act": "unclear"}]


@pytest.mark.parametrize(
    "text",
    [
        "I managed none of them, I regret to report.",
        "Regrettably I was unable to do any.",
        "Sadly, not one.",
        "couldn't even do one",
        "zilch, bar wouldn't move",
        "didnt manage any, had to break up a fight over a toy truck… 0",
    ],
)
def test_nought_in_words(text):
    """That none were done, in whatever words, is a set of nought."""
    assert acts(text, **AWAITED) == NONE_DONE


@pytest.mark.parametrize("text", ["Only the one, I fear.", "just one", "Only one repetition."])
def test_only_one(text):
    """A single repetition, in words."""
    assert acts(text, **AWAITED) == [{"act": "log", "reps": 1}]


@pytest.mark.parametrize(
    "text",
    [
        "12 squats w/o weights",
        "no wts today jus 12 reps",
        "Weight no dey, I use body only, 12 reps",
        "Didn't use any weight, 12 reps",
        "12, nothing in my hands",
        "12 with my own weight",
        "skipped the dumbbells and did 12",
    ],
)
def test_no_weight_in_words(text):
    """What was left off is a load of nought."""
    assert acts(text, **AWAITED) == [UNLOADED]


@pytest.mark.parametrize(
    "text",
    [
        "12 repetition and the weight was same",
        "The weight I left equal, 12 repetitions",
        "didn't change the weight, 12",
        "12, weight has stayed the same",
    ],
)
def test_a_weight_that_was_not_changed(text):
    """A weight left as it was is the same, and no correction of the last record."""
    last = {"reps": 10, "load": 20, "unit": "kg"}
    assert acts(text, last=last, **AWAITED) == [{"act": "log", "reps": 12, "same": True}]


@pytest.mark.parametrize(
    "ending",
    [
        ". Chai, I no fit add one more",
        ", cudnt get anuva 1",
        ", I had no power more",
        " and not one more",
        " was all I could manage",
        ", dats me limit",
        ", cnt do no mor",
    ],
)
def test_one_more_that_was_not_possible(ending):
    """Nothing was left, and no more was to come."""
    assert acts(f"12 at 20kg{ending}", **AWAITED) == [{**FULL, "reserve": 0}]


@pytest.mark.parametrize(
    "text", ["@8", "@ 20", "at 7 the door went so call it 7", "ran out of milk at 8", "walked 5k first so only 8"]
)
def test_a_number_that_may_be_something_else_is_asked_about(text):
    """An effort or a load by its sign alone, an hour, a distance: none of them is taken for reps."""
    assert acts(text, **AWAITED) == [{"act": "unclear"}]


@pytest.mark.parametrize("text", ["its 6.45 and im knackered", "it's 8 already", "its 8 and i'm shattered"])
def test_the_time_of_day_corrects_nothing(text):
    """What it is o'clock is no new number for the last record."""
    assert acts(text, awaiting="go", unit="kg", last={"reps": 10, "load": 20, "unit": "kg"}) == [{"act": "unclear"}]


@pytest.mark.parametrize(
    "text", ["12 this arvo", "only 12 this evening", "12 tonight", "only had time for 12", "ran out of puff at 12"]
)
def test_what_was_done_by_now_is_a_count(text):
    """A part of the day after a count, and what ended the set, leave it a count when reps are awaited."""
    assert acts(text, **AWAITED) == [{"act": "log", "reps": 12}]


@pytest.mark.parametrize(
    "text", ["stopped at 12, 20kg", "12 goblets with the 20kg kettlebell", "great set 12 @ 20kg", "12 with 20-kilos"]
)
def test_a_set_told_in_full_needs_no_question(text):
    """Where the set ended, what was counted and praise before it change nothing."""
    assert acts(text, **AWAITED) == [FULL]


@pytest.mark.parametrize(
    "text", ["12, 20kg, I was not able to do another", "12 20kg noting left", "12 at 20kg, left nothing in the tank"]
)
def test_nothing_was_left(text):
    """That no more could be done is a reserve of nought."""
    assert acts(text, **AWAITED) == [{**FULL, "reserve": 0}]


def test_a_rep_that_was_cheated_is_asked_about():
    """Whether it counts is the trainee's to say."""
    assert acts("12 at 20kg plus one I cheated", **AWAITED) == [{"act": "unclear"}]


@pytest.mark.parametrize(
    ("told", "reserve"),
    [
        ("one, maybe two left", 1.5),
        ("somewhere between two and three left", 2.5),
        ("could have got another couple out", 2),
        ("another two or three would have been possible", 2.5),
        ("two clean reps left", 2),
        ("in reserve maybe one", 1),
        ("I might have managed 2 further ones", 2),
        ("not 1 more", 0),
    ],
)
def test_what_was_left_in_looser_words(told, reserve):
    """Spans, hedges and words of praise around what was left change nothing of it."""
    assert acts(f"12 at 20kg, {told}", **AWAITED) == [FULL | {"reserve": reserve}]


@pytest.mark.parametrize(
    "text",
    [
        "12, more or less, at 20kg",
        "12 or more at 20kg",
        "12 at 20kg but is that per hand or total??",
        "12 reps at 20kg, tempo 3 seconds down",
        "our lad has 12 reps on me",
        "left side weaker by 2 reps",
        "12.99 for 20kg",
        "12 \u2192 20kg",
        "8... 9... lost it. 20kg",
        "12 at 20kg and a thirteenth I will not count",
    ],
)
def test_vague_counts_and_differences_are_asked_about(text):
    """A count that is only about so much, a difference, a tempo, a price: no record."""
    assert acts(text, **AWAITED) == [{"act": "unclear"}]


@pytest.mark.parametrize("text", ["40 seconds with the 20s", "farmers carry with the 20s for 40 seconds"])
def test_a_load_carried_for_a_time_is_a_load(text):
    """What "the 20s" are beside a time is what was carried, and no second time."""
    assert acts(text, **AWAITED)[0] == {"act": "log", "seconds": 40, "load": 20}


@pytest.mark.parametrize("text", ["zero. nothing. arms said no", "didn't get any, zero reps", "0 cudnt lift it"])
def test_a_nought_told_twice_is_one(text):
    """A nought said again is no bodyweight and no second set."""
    assert acts(text, **AWAITED) == NONE_DONE


@pytest.mark.parametrize(
    ("text", "load"),
    [
        ("I used 14kg there", 14),
        ("I used the 4 kg weights for that exercise.", 4),
        ("I take the 10 kg", 10),
        ("took 10 kgs instead", 10),
        ("9kg today", 9),
        ("12kg sha", 12),
        ("na 10kg I use o", 10),
        ("used 16kg for the goblet squats", 16),
    ],
)
def test_a_load_told_alone_in_a_sentence(text, load):
    """That this was what was used is a log of the load, without reps."""
    assert acts(text, **AWAITED) == [{"act": "log", "load": load, "unit": "kg"}]


@pytest.mark.parametrize(
    "text",
    [
        "I take 5kg off",
        "took 10kg of potatoes up the stairs",
        "thinking of taking the 14kg",
        "used 10kg last week",
        "my wife used 6kg",
        "I'm down to 68kg",
        "17.5kg instead, 20s are in the car",
    ],
)
def test_a_weight_that_was_not_used_now_is_asked_about(text):
    """What is carried, weighed, planned or used by others is no set."""
    assert acts(text, **AWAITED) == [{"act": "unclear"}]


@pytest.mark.parametrize(
    "text",
    [
        "I'm 58, 84 kg and ready for anything",
        "I am 84 kg",
        "I'm 72, 8 reps at 5kg",
        "17 Mill Lane, second door, knock loudly",
        "12 Church Street, back door",
        "1 4 reps at 1 8kg",
        "11 reps @ 1 5 kg",
        "a total of 24kg, 12 reps",
        "I want to train 3 times a week",
        "should be doing 12 at 14 by now",
    ],
)
def test_figures_that_look_like_a_set_are_asked_about(text):
    """An age, a body weight, a house number, a figure that a thumb has split, a total of both hands."""
    assert acts(text, **AWAITED) == [{"act": "unclear"}]


@pytest.mark.parametrize("text", ["I am 12 reps at 20kg", "12 at 20kg down the street", "a grand total of 12 with the 20kg"])
def test_figures_of_a_set_beside_such_words_are_read(text):
    """The words alone make no address and no age."""
    assert acts(text, **AWAITED) == [FULL]


@pytest.mark.parametrize(
    ("ending", "reserve"),
    [
        ("I do not think I could have done another.", 0),
        ("dont think i had another in me", 0),
        ("I doubt I could have managed another", 0),
        ("not one more was possible", 0),
        ("could not have lifted it another time", 0),
        ("no way there was a thirteenth", 0),
        ("the thirteenth was never going to happen", 0),
        ("My reserves were quite exhausted.", 0),
        ("Empty.", 0),
        ("after this I cannot", 0),
        ("my arms refused to go again", 0),
        ("and one I could still", 1),
        ("after that one more was still possible", 1),
        ("could have done another if the doorbell had not gone", 1),
        ("I might have found another", 1),
        ("still I am having power for 2", 2),
        ("I daresay a further two would have been within my powers", 2),
    ],
)
def test_what_was_left_in_roundabout_words(ending, reserve):
    """However long the way round, what was left is kept."""
    assert acts(f"12 at 20kg. {ending}", **AWAITED) == [{**FULL, "reserve": reserve}]


@pytest.mark.parametrize("ending", ["could still have pushed for more, who knows", "for one more I had not force"])
def test_what_was_left_is_never_lost(ending):
    """Words of what could still have been done, which nobody understands, are asked about."""
    assert acts(f"12 at 20kg, {ending}", **AWAITED) == [{"act": "unclear"}]


@pytest.mark.parametrize(
    "ending",
    [
        "Proper effort, 9 out of 10",
        "effort I will say 9 out of 10",
        "For effort, I would give it 9 out of 10",
        "my effort level was around 9 only",
    ],
)
def test_effort_in_a_sentence(ending):
    """An effort "out of 10" is one wherever the sentence names it."""
    assert acts(f"12 at 20kg. {ending}", **AWAITED) == [{**FULL, "rpe": 9}]


def test_a_count_after_an_effort_out_of_ten_is_not_the_ten_again():
    """The ten of the scale is none that the reps could repeat."""
    told = acts("I would put my effort at 8 out of 10. Ten repetitions, 20 kg.", **AWAITED)
    assert told == [{"act": "log", "reps": 10, "load": 20, "unit": "kg", "rpe": 8}]


@pytest.mark.parametrize(
    "text",
    [
        "12 at 20kg, mailbox got hit by the plow",
        "12 x 20kg by the pool at my sister's place",
        "12 x 20kg in me thongs on the verandah",
        "12 with 20kg, the grandchildren applauding each one",
        "12 at 20kg and the twins each spilled their juice",
        "12 at 20kg, both arms full of child",
        "12 at 20kg, one more rep and I'd have dropped it on the cat",
        "Used the old 20kg ones from the loft - 12 reps",
        "I lifted the 20 kg weight twelve times, much to my husband's amusement.",
        "I wish to report twelve repetitions with 20 kg",
        "12 reps at 20kg haha I mean 20kg",
        "12 reps 20 kegs haha I mean kgs",
        "12, at the weight of 20 (kg)",
        "only 12 o. 20kg",
    ],
)
def test_a_story_beside_a_plain_set_changes_nothing(text):
    """Whatever happened meanwhile, whoever had one each: it was the one set."""
    assert acts(text, **AWAITED) == [FULL]


@pytest.mark.parametrize(
    "text",
    [
        "none lol the baby woke up",
        "none mate, strap was round me neck",
        "couldn't do any none at all",
        "no reps at all, couldn't do any",
        "I could do zero, it did not move from floor",
        "couldn't do any, both arms full of child",
        "zero today, wrist strap snapped",
        "zero because I was on the phone",
        "zero mate",
        "None o, they took light",
        "not one. too tired to even start",
    ],
)
def test_a_nought_with_its_reason(text):
    """Why there were none changes nothing about it."""
    assert acts(text, **AWAITED) == NONE_DONE


def test_a_half_of_a_plural_belongs_to_the_load():
    """The "12 and a halfs" are dumbbells of 12.5."""
    assert acts("12 with the 12 and a halfs", awaiting="reps", unit="kg", load=12.5) == [{"act": "log", "reps": 12, "load": 12.5}]


@pytest.mark.parametrize("text", ["12, no sleep last night, 20kg", "12, no breakfast, 20kg", "12 no spotter 20kg"])
def test_what_was_lacking_takes_nothing_back(text):
    """A "no" that names what was not there corrects no figure."""
    assert acts(text, **AWAITED) == [FULL]


@pytest.mark.parametrize("text", ["12 at 20kg, no 11", "12 at 20kg no wait 11", "12 at 20kg, no actually 11"])
def test_a_no_before_a_figure_still_corrects(text):
    """A "no" that leads to another figure puts the first one right."""
    assert acts(text, **AWAITED) == [FULL, {"act": "amend", "reps": 11}]
