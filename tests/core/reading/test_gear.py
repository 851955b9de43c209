"""What a trainee owns: every way to list things, crossed with every way to say that they are there."""

from __future__ import annotations

from typing import Any

import pytest

from tests.core.reading.reading import RECORDS, acts

UNCLEAR = [{"act": "unclear"}]


def thing(kind: str | None = None, load: float | None = None, unit: str | None = None, count: int | None = None) -> dict[str, Any]:
    """An item as the contract prints it."""
    said = {"kind": kind, "load": load, "unit": unit, "count": count}
    return {key: value for key, value in said.items() if value is not None}


LISTS = {
    "8, 12 and 16 kg dumbbells": [thing("dumbbell", load, "kg") for load in (8, 12, 16)],
    "dumbbells of 5, 7.5 and 10 kg": [thing("dumbbell", load, "kg") for load in (5, 7.5, 10)],
    "dumbbells at 12, 14 and 16 kg": [thing("dumbbell", load, "kg") for load in (12, 14, 16)],
    "dumbbells 5, 7,5 and 10 kg": [thing("dumbbell", load, "kg") for load in (5, 7.5, 10)],
    "a pair of 8kg dumbbells": [thing("dumbbell", 8, "kg", 2)],
    "a pair of 8s and a pair of 12s, in kilos": [thing("dumbbell", 8, "kg", 2), thing("dumbbell", 12, "kg", 2)],
    "pairs of 25s, 35s and 45s, dumbbells, lbs": [thing("dumbbell", load, "lb", 2) for load in (25, 35, 45)],
    "two pairs: 8 kg and 12 kg": [thing("dumbbell", 8, "kg", 2), thing("dumbbell", 12, "kg", 2)],
    "two pairs of 8kg dumbbells": [thing("dumbbell", 8, "kg", 4)],
    "a pair each of 5 and 8 kg dumbbells": [thing("dumbbell", 5, "kg", 2), thing("dumbbell", 8, "kg", 2)],
    "4s, 6s and 8s in dumbbells, kg": [thing("dumbbell", load, "kg") for load in (4, 6, 8)],
    "8kg dumbbells x2 and 14kg dumbbells x2": [thing("dumbbell", 8, "kg", 2), thing("dumbbell", 14, "kg", 2)],
    "2x5kg and 2x8kg dumbbells": [thing("dumbbell", 5, "kg", 2), thing("dumbbell", 8, "kg", 2)],
    "one dumbbell 6 kg and one dumbbell 8 kg": [thing("dumbbell", 6, "kg", 1), thing("dumbbell", 8, "kg", 1)],
    "two dumbbells, of 1.5 kg each": [thing("dumbbell", 1.5, "kg", 2)],
    "4 dumbbells: 2 of 5kg and 2 of 10kg": [thing("dumbbell", 5, "kg", 2), thing("dumbbell", 10, "kg", 2)],
    "5kg dumbbells (pair) and 8kg dumbbells (pair)": [thing("dumbbell", 5, "kg", 2), thing("dumbbell", 8, "kg", 2)],
    "a kettlebell, 12kg": [thing("kettlebell", 12, "kg", 1)],
    "kettlebell 16 kg and 20 kg, and dumbbell 10 kg": [
        thing("kettlebell", 16, "kg"),
        thing("kettlebell", 20, "kg"),
        thing("dumbbell", 10, "kg"),
    ],
    "one 12kg kettlebell as well as a rubber band": [thing("kettlebell", 12, "kg", 1), thing("band", count=1)],
    "a bench and two 10kg dumbbells": [thing("bench", count=1), thing("dumbbell", 10, "kg", 2)],
    "5kg and 8kg dumbbells, two each": [thing("dumbbell", 5, "kg", 2), thing("dumbbell", 8, "kg", 2)],
    "5kg and 8kg dumbbells, one pair each": [thing("dumbbell", 5, "kg", 2), thing("dumbbell", 8, "kg", 2)],
    "dumbbells 5kg, 8kg, every by two pieces": [thing("dumbbell", 5, "kg", 2), thing("dumbbell", 8, "kg", 2)],
    "two of each: 5kg and 8kg dumbbells": [thing("dumbbell", 5, "kg", 2), thing("dumbbell", 8, "kg", 2)],
    "dumbbells of 6 kg - 2 pieces, 8 kg - 2 pieces": [thing("dumbbell", 6, "kg", 2), thing("dumbbell", 8, "kg", 2)],
    "two 20kg dumbbells, two 15kg, one 24kg kettlebell": [
        thing("dumbbell", 20, "kg", 2),
        thing("dumbbell", 15, "kg", 2),
        thing("kettlebell", 24, "kg", 1),
    ],
    "a lone 20kg kettlebell": [thing("kettlebell", 20, "kg", 1)],
    "a rusty old 16kg kettlebell and a 12kg pair": [thing("kettlebell", 16, "kg", 1), thing("dumbbell", 12, "kg", 2)],
    "a barbell and 4x5kg plates": [thing("barbell", count=1), thing("plate", 5, "kg", 4)],
}
OPENERS = [
    "I have {}",
    "I've got {} at home",
    "we own {}",
    "there is {} in the shed",
    "just bought {}",
    "in my room I have {}",
    "onboard we have {}",
    "equipment: {}",
    "I found {} in the attic",
    "{} is what I own",
    "at the caravan with {}",
    "I should mention that I own {}",
    "my daughter gave me {}",
    "{}",
]


@pytest.mark.parametrize("opener", OPENERS)
@pytest.mark.parametrize("told", LISTS)
def test_a_list_means_the_same_however_it_is_opened(told, opener):
    """A kind or a unit said once covers the list, and a count is there only when it was said."""
    assert acts(opener.format(told)) == [{"act": "have", "items": LISTS[told]}]


@pytest.mark.parametrize(
    "text",
    [
        "my kit:\n- 2x8kg dumbbells\n- a 16kg kettlebell\n- bench",
        "my kit: 2x8kg dumbbells. And a 16kg kettlebell. And a bench... ",
    ],
)
def test_a_list_goes_on_over_lines_and_sentences(text):
    """One list is one act, wherever its lines end."""
    (have,) = acts(text)
    assert [(item["kind"], item.get("load")) for item in have["items"]] == [("dumbbell", 8), ("kettlebell", 16), ("bench", None)]


@pytest.mark.parametrize("gap", [". nothing between 5 and 10", ". None between 5kg and 10kg.", ", nothing heavier"])
def test_a_gap_in_the_rack_is_no_thing(gap):
    """The loads that are not there are accounted for, and not owned."""
    assert acts("my dumbbells: 5 and 10 kg" + gap) == [
        {"act": "have", "items": [thing("dumbbell", 5, "kg"), thing("dumbbell", 10, "kg")]}
    ]


@pytest.mark.parametrize(
    "text",
    [
        "There are no weights in this house at all.",
        "I do not own any dumbbells",
        "no dumbbells here, sorry",
        "not a single weight in this flat",
        "we've no equipment at the moment",
        "sir no dumbbells are there in hostel",
    ],
)
def test_no_weights_at_all_is_an_empty_list(text):
    """Owning nothing is an answer too."""
    assert acts(text) == [{"act": "have", "items": []}]


def test_what_is_missing_is_left_out_of_the_list():
    """A bench that is not there is no thing that is."""
    (have,) = acts("I don't have a bench, just two 10kg dumbbells")
    assert have["items"] == [thing("dumbbell", 10, "kg", 2)]


@pytest.mark.parametrize(
    "text",
    [
        "might buy a 20kg kettlebell",
        "I want two 10kg dumbbells for Christmas",
        "hoping to get a 50 lb kettlebell",
        "my brother has 60 lb dumbbells",
        "he's got two 20kg dumbbells and a bench",
        "should I get a 16 or a 20kg kettlebell?",
        "dumbbells from 5 to 25kg",
        "up to 20kg dumbbells here",
        "I don't have the 12kg dumbbells any more",
        "gave away my two 6kg dumbbells",
        "saw a pair of 10kg dumbbells in town",
        "eyeing up a 24kg kettlebell on the market",
        "I had a 20kg kettlebell but the movers lost it",
        "swapped my 20kg dumbbells for a pair of 24s",
        "these 8kg dumbbells are my husband's",
        "the 10kg dumbbells are in the loft at my mum's",
        "my 10kg dumbbells come tuesday",
        "a bench and 40kg of plates",
        "a 20kg barbell, two 5s and two 2.5s",
        "only 1 of my 10kg dumbbells is here",
        "pair of socks, size 8",
        "my kettle weighs 2kg",
        "write me a poem about 12 dumbbells",
    ],
)
def test_what_is_wished_for_gone_or_somebody_elses_is_asked_about(text):
    """A wish, a question, a span, a loss and other people's things are no list of what is there."""
    assert acts(text) == UNCLEAR


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        ("12 with two dumbbells of 8 kilo", {"act": "log", "reps": 12, "load": 8, "unit": "kg"}),
        ("used the 10kg dumbbells, got 12", {"act": "log", "reps": 12, "load": 10, "unit": "kg"}),
        ("10 kettlebell 12kg", {"act": "log", "reps": 10, "load": 12, "unit": "kg"}),
    ],
)
def test_a_set_done_with_dumbbells_stays_a_set(text, wanted):
    """When reps are awaited, naming what was lifted makes no list of it."""
    assert acts(text, awaiting="reps") == [wanted]


@pytest.mark.parametrize(
    "text",
    [
        "got new 24kg dumbbells for my birthday, two of them",
        "dumbbells of 12 kg I have, two",
        "in house I have 2 piece dumbbell 5 kg",
        "my dumbbells: 2 pcs 7,5kg, 2 pcs 10kg",
        "I have 3 things: 8kg dumbbells, 5 bananas, and 2 hopes",
    ],
)
def test_what_is_owned_never_becomes_a_record(text):
    """Counts and loads of things are neither reps nor loads of a set, whether the list is understood or not."""
    assert not [act for act in acts(text) if act["act"] in RECORDS]
