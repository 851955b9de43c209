"""What holds for any message."""

from __future__ import annotations

import re
from decimal import Decimal

from hypothesis import example, given, settings
from hypothesis import strategies as st

from bot.reading_io import act_json
from core.reading import Amend, Awaiting, Context, LastSet, Log, Unclear, read
from core.reading.normal import LONGEST
from core.units import Unit

STEADY = settings(derandomize=True, max_examples=300, deadline=None)
AWAITED = Context(awaiting=Awaiting.REPS)

WORDS = st.sampled_from(
    [
        "at",
        "kg",
        "lbs",
        "x",
        "reps",
        "left",
        "right",
        "each",
        "side",
        "and",
        "then",
        "2",
        "11",
        "20",
        "12.5",
        "17½",
        "nine",
        "twenty",
        "a",
        "of",
        "with",
        "the",
        "my",
        "knee",
        "hurts",
        "not",
        "sorry",
        "same",
        "rpe",
        "rir",
        "in",
        "tank",
        "remind",
        "me",
        "monday",
        "7pm",
        "half",
        "past",
        "later",
        "minutes",
        "how",
        "do",
        "i",
        "squat",
        "instead",
        "of",
        "dumbbells",
        "pair",
        ",",
        ".",
        "?",
        "!",
        "-",
        "/",
        "@",
        "#",
        "*",
        "(",
        ")",
        ":",
        "%",
        "£",
        "more",
        "or",
        "to",
        "for",
        "failure",
        "held",
        "seconds",
        "one",
        "two",
        "dizzy",
        "chest",
        "6:30",
        "1st",
        "round",
        "set",
        "was",
        "it",
        "no",
        "only",
        "got",
    ]
)
CONTEXTS = st.builds(
    Context,
    unit=st.sampled_from([None, Unit.KG, Unit.LB]),
    load=st.sampled_from([None, Decimal(20), Decimal("12.5")]),
    target=st.sampled_from([None, 11]),
    sides=st.booleans(),
    awaiting=st.sampled_from(list(Awaiting)),
    last=st.sampled_from([None, LastSet(11, Decimal(20), Unit.KG)]),
    hold=st.booleans(),
    choices=st.integers(0, 3),
)


@STEADY
@given(st.text(max_size=LONGEST), CONTEXTS)
@example("1," * 2048, AWAITED)
@example("\ud800\U000e0001\u202e11", AWAITED)
def test_reading_never_raises(text, context):
    """Any Unicode string is answered with at least one act."""
    assert read(text, context)


@STEADY
@given(st.lists(WORDS, max_size=14).map(" ".join), CONTEXTS)
def test_words_in_any_order_never_raise(text, context):
    """The words of the trade, shuffled, are answered and print."""
    assert all(act_json(act)["act"] for act in read(text, context))


def numbers_of(act):
    """Every number an act holds."""
    fields = ("reps", "load", "reserve", "rpe", "seconds")
    return [Decimal(value) for field in fields if (value := getattr(act, field)) is not None]


DIGITS = st.lists(
    st.sampled_from(
        ["11", "20", "9", "14", "30", "kg", "at", "x", ",", "and", "left", "reps", "with", "then", "lb", "rpe", "felt", "ok"]
    ),
    min_size=1,
    max_size=9,
).map(" ".join)


@STEADY
@given(DIGITS)
@example("11 at 20kg hr 145")
@example("12 at 14kg, failed on 13")
def test_every_number_is_in_an_act_or_the_message_is_unclear(text):
    """No number is dropped: it ends in a record, or the message is unclear."""
    got = read(text, AWAITED)
    records = [act for act in got if isinstance(act, Log | Amend)]
    if not records or any(isinstance(act, Unclear) for act in got):
        return
    held = [number for act in records for number in numbers_of(act)]
    for number in re.findall(r"\d+", text):
        repeats = text.split().count(number)
        assert Decimal(number) in held or repeats == 0, (text, got)


@STEADY
@given(DIGITS)
def test_no_act_holds_a_number_that_is_not_in_the_text(text):
    """A number that was not said is never guessed; failure alone is said without a number."""
    said = {Decimal(number) for number in re.findall(r"\d+", text)}
    for act in read(text, AWAITED):
        if isinstance(act, Log | Amend):
            assert set(numbers_of(act)) <= said, (text, act)


SAID = st.sampled_from(
    [
        "11 at 20kg",
        "20kg x 11, 2 left",
        "eleven at twenty kilos",
        "11 reps",
        "10 left 9 right",
        "too heavy",
        "skip this one",
        "my left knee hurts",
        "remind me mon wed fri 6:30am",
        "12 with the 16s",
        "11, 10 and 9 at 20kg",
        "scratch that",
        "what do I do today?",
    ]
)
FILLER_BEFORE = st.sampled_from(["", "ok ", "hi coach, ", "Hey! ", "phew ", "😅 ", "please ", "  "])
FILLER_AFTER = st.sampled_from(["", " thanks", " please", " 💪", "!", " 🙏🏽", "  ", " cheers mate", "."])


@STEADY
@given(SAID, FILLER_BEFORE, FILLER_AFTER, st.booleans())
def test_filler_case_spaces_and_emoji_change_nothing(text, before, after, upper):
    """Polite filler, case, spaces and emoji leave the meaning as it was."""
    dressed = before + text + after
    assert read(dressed.upper() if upper else dressed, AWAITED) == read(text, AWAITED)


@STEADY
@given(
    st.integers(1, 60),
    st.integers(1, 60),
    st.sampled_from([("kg", "kilos"), ("kg", "KGS"), ("lb", "pounds"), ("lbs", "#"), ("kg", " kilograms")]),
)
def test_a_unit_said_differently_reads_the_same(reps, load, units):
    """Kilos and kg, lb and pounds are the same unit."""
    one, other = (read(f"{reps} at {load}{unit}", AWAITED) for unit in units)
    assert one == other


@STEADY
@given(st.integers(0, 199), st.integers(1, 200))
def test_a_plain_record_is_read_in_every_order(reps, load):
    """Reps and a load with its unit are read alike whichever comes first."""
    meant = (Log(reps=reps, load=Decimal(load), unit=Unit.KG),)
    assert read(f"{reps} at {load}kg", AWAITED) == meant
    assert read(f"{load} kg for {reps} reps", AWAITED) == meant
