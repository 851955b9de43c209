"""A message that says nothing as typed is looked at again: a request in mistyped or joined words is read, never a record."""

from __future__ import annotations

import pytest

from core.reading.lexicon import NUMBER_PLURALS, NUMBER_WORDS, SECOND_LOOK, UNITS
from core.reading.second_look import as_meant
from tests.core.reading.reading import acts

UNCLEAR = [{"act": "unclear"}]


@pytest.mark.parametrize(
    ("text", "meant"),
    [
        ("hoe do i do this one agian", [{"act": "form"}]),
        ("redy lets gp", [{"act": "start"}]),
        ("laterr 15 mni", [{"act": "snooze", "minutes": 15}]),
        ("remindme tuesdyas at 6pmm", [{"act": "remind", "days": ["tue"], "at": "18:00"}]),
        ("skipthisone", [{"act": "skip", "what": "station"}]),
        ("swpa this oen", [{"act": "swap"}]),
        ("caling itthhere coach", [{"act": "finish"}]),
        ("swiitch to kilps", [{"act": "units", "unit": "kg"}]),
        ("how i go dotgis one?", [{"act": "form"}]),
    ],
)
def test_a_mistyped_request_is_read(text, meant):
    """Slips of the thumb, words run together and real words that thumbs make of others."""
    assert acts(text, awaiting="go", unit="kg") == meant


def test_a_letter_on_the_wrong_side_of_a_space_goes_back():
    """A space in the wrong place changes no number."""
    items = [{"kind": "dumbbell", "load": load, "unit": "kg"} for load in (8, 12)]
    assert acts("ive got 8kg an d12kg dunbbells", awaiting="none", unit="kg") == [{"act": "have", "items": items}]


@pytest.mark.parametrize("text", ["3 ses of 10 at 12kg", "rigthleg 10, letf leg 8", "I did ten of tem"])
def test_a_second_look_never_makes_a_record(text):
    """What a damaged set was is asked, however near a good one lies."""
    assert list(as_meant(text))
    assert acts(text, awaiting="reps", load=20, unit="kg") == UNCLEAR


@pytest.mark.parametrize("text", ["remind me at sveen tongiht", "latr 3o mni", "ive got eigth kgg dunbbells adn twlve"])
def test_no_word_becomes_a_number_or_a_unit(text):
    """The texts that are tried hold no number and no unit that the text as typed did not hold."""
    counting = {*NUMBER_WORDS, *NUMBER_PLURALS, *UNITS}
    typed = set(text.split())
    assert not [word for meant in as_meant(text) for word in set(meant.split()) - typed if word in counting]


def test_no_word_of_its_own_is_taken_for_a_number_or_a_unit():
    """Nor does the list of real words that stand for others."""
    assert not {word for meant in SECOND_LOOK.values() for word in meant} & {*NUMBER_WORDS, *NUMBER_PLURALS, *UNITS}


@pytest.mark.parametrize(
    "text",
    [
        "the cta is abck",
        "the twisn turneed 5",
        "I'm starving",
        "hola como estas",
        "hey laurn can u grab milk",
        "My progress report from work is due",
        "the gras is redy to cut agian",
        "how do I cancle my subscrption",
    ],
)
def test_mistyped_small_talk_asks_for_nothing(text):
    """A mistyped word is no request because one lies near it."""
    assert acts(text, awaiting="go", unit="kg") == UNCLEAR
