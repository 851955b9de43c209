"""Slips of the thumb are mended only where that is safe."""

from __future__ import annotations

import pytest

from core.reading.lexicon import ENGLISH, NUMBER_WORDS, UNITS
from core.reading.parts import grammar
from core.reading.spelling import lie_beside, respell


@pytest.mark.parametrize(
    ("typed", "meant"), [("twleve", "twelve"), ("elven", "eleven"), ("sholder", "shoulder"), ("fourtteen", "fourteen")]
)
def test_a_slip_is_mended(typed, meant):
    """Letters swapped, left out or doubled."""
    assert respell(typed) == (meant,)


@pytest.mark.parametrize(
    ("typed", "meant"),
    [("todya", "today"), ("momday", "monday"), ("sundees", "sundays"), ("thrus", "thurs"), ("shouldder", "shoulder")],
)
def test_one_word_damaged_is_not_two_run_together(typed, meant):
    """What is one slip from a word is that word, though it could be parted: no "to do you" for "todya", no "mom day"."""
    assert respell(typed) == (meant,)


@pytest.mark.parametrize(
    ("typed", "meant"),
    [("leftinthetank", ("left", "in", "the", "tank")), ("repsbodywieght", ("reps", "bodyweight")), ("manandhar", ("manandhar",))],
)
def test_words_run_together_are_parted(typed, meant):
    """Several words without a space are parted where a word of a set begins or ends them; a name stays whole."""
    assert respell(typed) == meant


def test_a_known_number_or_unit_is_never_changed():
    """No correction turns one number or unit into another: a word that is one stays what it is."""
    assert all(respell(word) == (word,) for word in NUMBER_WORDS)
    assert all(respell(word) == (unit.value,) for word, unit in UNITS.items())


def test_a_slip_between_two_numbers_stays():
    """A word as near to two numbers as to each other is not made one of them."""
    assert respell("fift") == ("fift",)
    assert respell("sxity") == ("sixty",)


def test_plain_english_is_left_alone():
    """A word of plain English never becomes a number."""
    assert not [word for word in ENGLISH - set(NUMBER_WORDS) if respell(word)[0] in NUMBER_WORDS]


def test_what_is_no_letter_lies_beside_none():
    """An apostrophe or an accent has no place on the keyboard, and breaks nothing off."""
    assert lie_beside("s", "d")
    assert not lie_beside("'", "s")
    assert not lie_beside("e", "é")


def test_grammar_has_no_conflicts():
    """The grammar is free of the conflicts that lark would otherwise settle silently (its strict mode)."""
    assert grammar(strict=True).parser is not None
