"""How heavy a load was, in whatever words, and what people say beside it."""

import pytest

from tests.core.reading.reading import acts

GO = {"awaiting": "go"}
AWAITED = {"awaiting": "reps", "unit": "kg", "load": 16}


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("the weight is very less for me, kindly increase", "light"),
        ("this load too small for me o", "light"),
        ("could of gone heavier tbh", "light"),
        ("not exactly taxing that", "light"),
        ("felt like lifting air", "light"),
        ("heavier next time please", "light"),
        ("weight is not enough for me", "light"),
        ("heavy af", "heavy"),
        ("those bad boys are heavy as hell", "heavy"),
        ("she's a bit of a beast this weight", "heavy"),
        ("rather too much for my arms", "heavy"),
        ("this weight heavy pass me", "heavy"),
        ("kindly reduce the weight", "heavy"),
        ("not light enough for me", "heavy"),
        ("I need more lighter weight please", "heavy"),
        ("give something lighter", "heavy"),
        ("could I have more weight next time?", "light"),
        ("these feel like nothing in my hands", "light"),
        ("I should not like it any heavier.", "right"),
    ],
)
def test_a_clause_that_tells_only_how_heavy_it_was_is_a_feeling(text, value):
    """No list of sentences is needed: every word of the clause is one that may stand there."""
    assert acts(text, **GO) == [{"act": "feel", "value": value}]


@pytest.mark.parametrize(
    "beside",
    [
        "easy day at work",
        "light has gone here",
        "was heavy traffic today",
        "it's too light outside",
        "easy to forget the count at my age",
        "my kid thinks they're too heavy",
        "with the lighter ones",
        "the last was a fight",
    ],
)
def test_what_is_light_or_heavy_and_no_load_is_no_feeling(beside):
    """Traffic, daylight, a day's work, somebody else's opinion or the last rep tell nothing about the load."""
    assert [act["act"] for act in acts(f"11 at 16kg, {beside}", **AWAITED)] == ["log"]


@pytest.mark.parametrize(
    ("beside", "told"),
    [
        ("abeg make I drink water", ["pause"]),
        ("just nipping to the loo", ["pause"]),
        ("doorbell sir one minute", ["pause"]),
        ("then we're done", ["finish"]),
        ("I'm out 4 2day", ["finish"]),
        ("easy next one please", ["feel", "skip"]),
        ("way too heavy, swap please", ["feel", "swap"]),
        ("knee is hurting a little on the left side", ["pain"]),
        ("right forearm is aching, anything else I can do?", ["pain", "swap"]),
        ("had to stop for a second", []),
        ("the kids are getting me water", []),
    ],
)
def test_what_is_told_beside_a_set_is_read_and_the_set_stays_as_told(beside, told):
    """A wait, an end, a pain or a wish beside a full set adds its act and changes no figure of the set."""
    got = acts(f"11 at 16kg, {beside}", **AWAITED)
    assert got[0] == {"act": "log", "reps": 11, "load": 16, "unit": "kg"}
    assert [act["act"] for act in got[1:]] == told


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("woozy. stopping", ["pain", "finish"]),
        ("feel sick n dizzy stoppin", ["pain", "finish"]),
        ("everything went black for a moment", ["pain"]),
        ("2 hevy swap pls", ["feel", "swap"]),
        ("wait small, I dey come", ["pause"]),
        ("my quads are screaming", ["unclear"]),
    ],
)
def test_two_acts_without_a_set_are_both_read(text, told):
    """What stands right beside a pain or a feeling is read too, when it asks for something by itself."""
    assert [act["act"] for act in acts(text, **GO)] == told
