"""Answers of the health talk: numbers in words count as figures do; the quick way to a phrase finds what the plain way finds."""

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.health import AgeBand, Condition, Topic
from core.reading.health_answers import read_topic
from core.reading.health_talk import is_afraid, read_effort
from core.reading.whole_words import _alike, place_of

SAID = "no not sharp shrp sharpp slept badly slpet fever feverish chest chets 11 at 20kg . .. ok. tight"
WORDS = st.sampled_from(SAID.split(" "))
TEXTS = st.lists(WORDS, max_size=8).map(" ".join)
PHRASES = st.lists(WORDS.filter(lambda word: word.strip(".")), min_size=1, max_size=3).map(" ".join)


@given(said=TEXTS, phrase=PHRASES)
def test_a_phrase_is_found_where_its_words_stand(said, phrase):
    """Word by word from every place on, a slip in a longer word let pass."""
    words, wanted = [word.strip(".") for word in said.split()], phrase.split()
    places = range(len(words) - len(wanted) + 1)
    plainly = (at for at in places if all(_alike(words[at + i], word) for i, word in enumerate(wanted)))
    assert place_of(said, phrase) == next(plainly, None)


@pytest.mark.parametrize(
    ("said", "band"),
    [
        ("fifty two", AgeBand.MIDDLE),
        ("I'm thirty-nine, forty in May", None),  # two numbers: asked again
        ("mid fifties", AgeBand.MIDDLE),
        ("in my 40s", AgeBand.MIDDLE),
        ("late thirties", AgeBand.ADULT),
        ("sixties", None),  # either side of 65
        ("60s", None),
        ("I am sixty-six years of age", AgeBand.OLDER),
        ("seventeen", AgeBand.UNDER_18),
        ("1", None),
        ("no one's business", None),
    ],
)
def test_an_age_may_be_said_in_words(said, band):
    """Nobody is guessed to be a child, or on one side of 65."""
    assert read_topic(said, Topic.AGE) == band


def test_a_list_is_picked_from_in_words():
    """As the figures before its lines."""
    assert read_topic("two and three", Topic.CONDITIONS) == read_topic("2 and 3", Topic.CONDITIONS) != ()
    assert read_topic("one", Topic.CONDITIONS) == (Condition.HEART,)


@pytest.mark.parametrize(
    ("said", "effort"),
    [
        ("eight", 8),
        ("about seven", 7),
        ("six out of ten", 6),
        ("seven and a half", "7.5"),
        ("8/10", 8),
        ("eleven", None),
        ("I would say six", 6),
    ],
)
def test_how_hard_it_was_may_be_said_in_words(said, effort):
    """Nought to ten."""
    assert read_effort(said) == (None if effort is None else Decimal(effort))


@pytest.mark.parametrize(
    ("said", "afraid"),
    [
        ("I am afraid I could only do seven.", False),
        ("afraid not", False),
        ("I'm afraid that was all", False),
        ("I'm afraid", True),
        ("I am afraid of falling", True),
        ("I'm afraid I will drop it", True),
    ],
)
def test_a_regret_is_no_fear(said, afraid):
    """The clock stops for somebody who is frightened, not for good manners."""
    assert is_afraid(said) is afraid


@pytest.mark.parametrize(
    ("said", "takes"),
    [
        ("I take a small blood pressure tablet, a beta blocker", True),
        ("beta blockers", True),
        ("on thyroid meds since last year", True),
        ("no tablets", False),
        ("I don't take any pills", False),
        ("I take the bus", None),
        ("statins?", None),
    ],
)
def test_a_medicine_told_is_a_yes(said, takes):
    """No name is needed, and none is held against it."""
    assert read_topic(said, Topic.MEDICINE) is takes
