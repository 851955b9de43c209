"""What people type, against general-purpose libraries and published factors."""

from __future__ import annotations

from datetime import time
from decimal import Decimal

import dateparser
import pint
import pytest
from dateutil import parser as dateutil_parser
from dateutil.rrule import FR, MO, SA, SU, TH, TU, WE
from text_to_num import text2num

from core.reading import Awaiting, Context, Remind, read
from core.reading.clock import DAY_WORDS
from core.reading.lexicon import NUMBER_WORDS
from core.reading.normal import normalise
from core.reading.tokens import Kind, tokenise
from core.units import KG_PER_LB

UNITS = pint.UnitRegistry()
AWAITED = Context(awaiting=Awaiting.REPS)
ONES = ["one", "two", "three", "four", "five", "six", "seven", "eight", "nine"]
TENS = ["twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"]


@pytest.mark.parametrize(
    "words",
    [
        *sorted(set(NUMBER_WORDS) - {"dozen", "nil", "nought"}),
        *(f"{ten} {one}" for ten in TENS for one in ONES),
        "one hundred and twelve",
    ],
)
def test_number_words_are_what_text2num_says(words):
    """Whole numbers in words, against text2num 3 (a general-purpose library)."""
    (token,) = tokenise(normalise(words))
    assert token.kind is Kind.NUMBER
    assert token.value == text2num(words, "en")


@pytest.mark.parametrize("word", ["kg", "kilogram", "kilograms", "lb", "pound", "pounds"])
def test_units_are_what_pint_says(word):
    """The unit read is the one pint knows by that word."""
    (log,) = read(f"11 at 20 {word}", AWAITED)
    assert UNITS.parse_units(word) == UNITS.parse_units(log.unit.value)


def test_the_pound_is_what_nist_says():
    """1 lb = 0.453 592 37 kg exactly: NIST Special Publication 811 (2008), Appendix B.8; pint has the same."""
    assert Decimal("0.45359237") == KG_PER_LB
    assert UNITS("1 pound").to("kilogram").magnitude == pytest.approx(float(KG_PER_LB), rel=1e-12)


@pytest.mark.parametrize(
    "said", ["6:30am", "6am", "7pm", "12pm", "12am", "12:15am", "18:30", "06:15", "7:05 pm", "11.45pm", "noon"]
)
def test_times_of_day_are_what_dateutil_says(said):
    """Times with their half of the day said, against dateutil's parser (dateparser for the word "noon")."""
    (act,) = read(f"remind me every day at {said}")
    assert isinstance(act, Remind)
    expected = dateparser.parse("12:00") if said == "noon" else dateutil_parser.parse(said.replace(".", ":"))
    assert time.fromisoformat(act.at or "") == expected.time()


@pytest.mark.parametrize("said", sorted(word for word in DAY_WORDS if not word.endswith("s") or word in {"tues", "thurs"}))
def test_weekdays_are_what_dateutil_says(said):
    """Names of days and their short forms, against dateutil's; those it does not know by their first three letters."""
    days = dict(zip(("mon", "tue", "wed", "thu", "fri", "sat", "sun"), (MO, TU, WE, TH, FR, SA, SU), strict=True))
    number = dateutil_parser.parserinfo().weekday(said)
    assert days[DAY_WORDS[said]].weekday == (number if number is not None else dateutil_parser.parserinfo().weekday(said[:3]))


@pytest.mark.parametrize(
    ("said", "minutes"),
    [("in 20 minutes", 20), ("in half an hour", 30), ("in an hour", 60), ("in 2 hours", 120), ("in 1 hour 30 minutes", 90)],
)
def test_spans_are_what_dateparser_says(said, minutes):
    """Spans of time to wait, against dateparser (except "half", which it does not read)."""
    (act,) = read(f"remind me {said}")
    assert act.minutes == minutes
    if "half" not in said:
        now = dateparser.parse("2026-03-02 06:00")
        then = dateparser.parse(said, settings={"RELATIVE_BASE": now})
        assert (then - now).total_seconds() == minutes * 60
