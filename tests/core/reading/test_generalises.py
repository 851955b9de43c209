"""Rules for words nobody foresaw: what may stand beside a set, and what makes a number something else."""

from __future__ import annotations

import pytest

from tests.core.reading.reading import acts

AWAITED = {"awaiting": "reps"}
LAST = {"reps": 11, "load": 20, "unit": "kg"}
UNCLEAR = {"act": "unclear"}


@pytest.mark.parametrize(
    "around",
    [
        "{} while the neighbour drilled",
        "{} with a towel under my knee",
        "{}, same shirt as yesterday",
        "the toddler hung off my leg but {}",
        "could you please note {}",
        "may I report {}?",
        "{} x",
    ],
)
def test_unforeseen_words_do_not_spoil_a_full_set(around):
    """Words without numbers beside a set said in full change nothing, and an order said politely is no question."""
    said = acts(around.format("11 at 20kg"), **AWAITED)
    assert said == [{"act": "log", "reps": 11, "load": 20, "unit": "kg"}]


@pytest.mark.parametrize(
    "text",
    [
        "11 at 20kg, 3 stations to go",
        "11 at 20kg but only 9 clean",
        "11 at 20kg, 12 failed",
        "11 at 20kg x2",
        "11 at 20kg 8/10",
        "11 of 12 at 20kg",
        "11 at 20kg, 2 more than last time",
        "11 at 20kg 3 sec negatives",
        "my mate did 12 at 20kg",
        "too at ten kilos",
        "twenty to at ten kilos",
        "left for right five",
        "q1 at 20kg",
        "90s music",
        "woke up at 6",
        "I'm 60",
        "my son is 8",
        "turned 40 today",
        "4 of us today",
        "the 16 was too heavy",
        "+2",
        "5k run today",
    ],
)
def test_a_number_that_is_no_set_is_asked_about(text):
    """A number that counts something else, or was lost to dictation, never becomes a record."""
    said = acts(text, **AWAITED)
    assert UNCLEAR in said
    assert not [act for act in said if act["act"] in {"log", "amend"}]


@pytest.mark.parametrize(
    ("text", "reserve"),
    [
        ("11 at 20kg, no way I could do another", 0),
        ("11 at 20kg, not one more in me", 0),
        ("11 at 20kg, no juice left", 0),
        ("11 at 20kg close to failure", None),
        ("11 at 20kg just before failure", None),
        ("11 at 20kg stopped 1 short", 1),
        ("11 at 20kg one spare", 1),
    ],
)
def test_reserve_in_other_words(text, reserve):
    """Nothing left is a reserve of nought; close to failure says no number."""
    assert acts(text, **AWAITED)[0].get("reserve") == reserve


@pytest.mark.parametrize(
    ("text", "changed"),
    [
        ("11 should be 12", {"reps": 12}),
        ("20kg was wrong, it was 18kg", {"load": 18, "unit": "kg"}),
        ("the weight should be 18", {"load": 18}),
        ("I think it was actually 12 not 11", {"reps": 12}),
        ("could you amend that to 12 reps please", {"reps": 12}),
        ("had 2 left on that one", {"reserve": 2}),
        ("I used the 18s", {"load": 18}),
    ],
)
def test_corrections_name_what_they_give_up(text, changed):
    """A correction may say first what was wrong, politely or with a doubt, or complete the record; only what was said changes."""
    assert acts(text, awaiting="none", last=LAST) == [{"act": "amend", **changed}]


def test_manners_and_absence_are_no_correction():
    """Manners and the absence of something leave a record a record, and after an undo comes a new one."""
    assert acts("sorry it's only 12 today", **AWAITED) == [{"act": "log", "reps": 12}]
    assert acts("no pain, 12 at 18kg", awaiting="none", last=LAST)[-1]["act"] == "log"
    assert [act["act"] for act in acts("scratch that, it was 12 at 18kg", awaiting="none", last=LAST)] == ["undo", "log"]


@pytest.mark.parametrize(
    ("text", "act"),
    [
        ("how e dey go", {"act": "form"}),
        ("I need assistance", {"act": "help"}),
        ("how has my row been getting along", {"act": "progress", "exercise": "row"}),
        ("can i sub in goblet squats", {"act": "swap", "exercise": "goblet squats"}),
        ("swap lunges for squats", {"act": "swap", "exercise": "squats"}),
        ("how do I cook rice", UNCLEAR),
        ("my shoes are too light", UNCLEAR),
        ("I have a meeting today", UNCLEAR),
    ],
)
def test_what_a_message_is_after_shows_in_its_words(text, act):
    """A request no phrase foresaw is known by the words it is made of, unless they are about something else."""
    assert acts(text) == [act]


@pytest.mark.parametrize("text", ["tight chest, stopped at 8", "dizzy, passed the phone to my wife", "chest tight. 8 then stopped"])
def test_what_follows_an_urgent_sign_does_not_deny_it(text):
    """Only "has gone", "has stopped" deny a sign; a new clause that says "stopped" does not."""
    assert any(act.get("urgent") for act in acts(text, **AWAITED))


@pytest.mark.parametrize(
    ("text", "reps"),
    [
        ("ok done lol 12 😅 baby woke up halfway", 12),
        ("killer set 16", 16),
        ("shirt soaked lol 15", 15),
        ("got 10 before the monitor went off", 10),
        ("ten the phone started buzzing halfway", 10),
        ("stopped at 9", 9),
        ("the push-ups were 9", 9),
        ("the neighbour started drilling but I got to fourteen", 14),
        ("8 😩 she's teething so zero sleep", 8),
    ],
)
def test_a_bare_number_counts_whatever_else_is_said(text, reps):
    """Where reps are awaited, unknown words around a number do not make it something else."""
    assert acts(text, **AWAITED) == [{"act": "log", "reps": reps}]


@pytest.mark.parametrize(
    "text",
    [
        "11 missed calls",
        "3 hungry dogs",
        "gate 14 now boarding",
        "my bib number was 18",
        "table for 12",
        "the radio said 17",
        "we lost 14",
        "it's 12 here",
        "the postman did 12",
        "flatmate cranked out 20 at 10kg",
        "12 was the plan",
        "I can do 15 in my sleep",
        "if I had slept, 15",
        "12 and 3 assisted",
        "wykonalem 12",
        "stronger side 12, other one 10",
        "Managed nine. Bridge club at two.",
    ],
)
def test_what_stands_beside_a_number_can_make_it_something_else(text):
    """A thing counted, a name, a place, somebody else, a plan, another language: the number is asked about."""
    said = acts(text, **AWAITED, sides=True)
    assert UNCLEAR in said
    assert not [act for act in said if act["act"] in {"log", "amend"}]


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("twelve no thirteen at ten kilos", [{"act": "log", "reps": 13, "load": 10, "unit": "kg"}]),
        ("nine no wait ten", [{"act": "log", "reps": 10}]),
        ("eleven scratch that twelve", [{"act": "log", "reps": 12}]),
        (
            "twelve at ten kilos correction thirteen",
            [{"act": "log", "reps": 12, "load": 10, "unit": "kg"}, {"act": "amend", "reps": 13}],
        ),
    ],
)
def test_what_is_taken_back_in_the_same_breath_is_no_record(text, said):
    """Who corrects himself before the set is told in full has told one set; what was told in full is amended."""
    assert acts(text, **AWAITED) == said


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("popped in my knee, excruciating", [{"act": "pain", "place": "knee", "urgent": True}]),
        ("my chest is on fire", [{"act": "pain", "place": "chest", "urgent": True}]),
        ("legs on fire", [UNCLEAR]),
        ("cant feel left hand", [{"act": "pain", "place": "hand", "side": "left", "urgent": True}]),
        ("elbow's grumbling, the left one", [{"act": "pain", "place": "elbow", "side": "left"}]),
        ("10 reps but ouch something hurts", [{"act": "log", "reps": 10}, {"act": "pain"}]),
    ],
)
def test_pain_in_unforeseen_words(text, said):
    """A sudden strong pain is urgent where it is, a chest on fire is no figure of speech, a side may follow in its own clause."""
    assert acts(text, **AWAITED) == said


def test_what_is_owned_may_follow_a_set():
    """A set and then equipment in one message are both read."""
    said = acts("got 11 with 10kg, and I've also got a 16kg kettlebell now", **AWAITED)
    assert [act["act"] for act in said] == ["log", "have"]
