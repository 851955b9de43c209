"""Plain sets, in every usual shape crossed with loads and with what people add: what most messages are."""

from __future__ import annotations

import pytest

from tests.core.reading.reading import acts

LOADS = {"kg": ("{}kg", "{} kg", "{} kilos", "{}kgs", "{}"), "lb": ("{}lbs", "{} lb", "{} pounds", "{}#")}
SHAPES = (
    "{reps} at {load}",
    "{reps} @ {load}",
    "{reps} x {load}",
    "{reps}x{load}",
    "{reps} reps at {load}",
    "{reps} reps with {load}",
    "{reps} with {load}",
    "{reps} on {load}",
    "{reps} reps, {load}",
    "{load}, {reps} reps",
    "{load} x {reps}",
    "{load} for {reps} reps",
    "{reps} reps @ {load}",
    "did {reps} at {load}",
    "got {reps} with {load}",
    "managed {reps} at {load}",
    "I did {reps} reps with {load}",
    "that was {reps} at {load}",
    "just {reps} at {load} this time",
    "{reps} at {load} done",
)
SIDES = (
    "{reps} each side at {load}",
    "{reps} per side at {load}",
    "{reps} each side with {load}",
    "{reps} a side, {load}",
    "{reps} each arm at {load}",
    "{reps} each leg, {load}",
    "{reps} both sides at {load}",
    "{reps} at {load} each side",
    "{reps} with {load} per side",
    "{reps} reps each side at {load}",
)
RESERVES = (
    (", 2 left", 2),
    (", 1 left in the tank", 1),
    (" 2rir", 2),
    (", rir 1", 1),
    (", two in reserve", 2),
    (", nothing left", 0),
    (", to failure", 0),
    (", could have done 2 more", 2),
)
BESIDE = ("", "ok ", "phew ", "hi coach, ", "ok done, ", "right, ")
AFTER = ("", "!", " 😅", " thanks", ", legs are jelly", ". kids are shouting")


def wanted(reps, load, unit, **more):
    """The one set that is meant."""
    said = {"act": "log", "reps": reps, "load": load}
    return [said | ({"unit": unit} if unit else {}) | more]


def written():
    """Every way to write a load, with the unit it says."""
    for unit, ways in LOADS.items():
        for way in ways:
            yield way, unit if way != "{}" else None


@pytest.mark.parametrize("shape", SHAPES)
@pytest.mark.parametrize(("way", "unit"), list(written()))
def test_a_set_in_a_usual_shape(shape, way, unit):
    """Reps and load as they stand, also without a unit where the load is the one on the card."""
    for reps, load in ((12, 20), (8, 14), (11, 27.5)):
        text = shape.format(reps=reps, load=way.format(f"{load:g}"))
        context = {"awaiting": "reps", "load": load, "unit": unit or "kg"}
        assert acts(text, **context) == wanted(reps, load, unit), text


@pytest.mark.parametrize("shape", SIDES)
@pytest.mark.parametrize(("way", "unit"), list(written()))
def test_a_set_with_its_sides(shape, way, unit):
    """Both sides told in one number."""
    for reps, load in ((12, 20), (8, 14), (3, 12)):
        text = shape.format(reps=reps, load=way.format(f"{load:g}"))
        context = {"awaiting": "reps", "load": load, "unit": unit or "kg", "sides": True}
        assert acts(text, **context) == wanted(reps, load, unit, side="each"), text


@pytest.mark.parametrize(("ending", "reserve"), RESERVES)
@pytest.mark.parametrize("shape", SHAPES[:18])
def test_a_set_with_what_was_left(shape, ending, reserve):
    """A reserve said after a set belongs to it."""
    for load in ("20kg", "20 lb"):
        text = shape.format(reps=9, load=load) + ending
        unit = "kg" if "kg" in load else "lb"
        assert acts(text, awaiting="reps", load=20, unit=unit) == wanted(9, 20, unit, reserve=reserve), text


@pytest.mark.parametrize("shape", SHAPES)
@pytest.mark.parametrize("after", AFTER)
def test_a_set_among_other_words(shape, after):
    """What is said before and after it changes nothing."""
    for beside in BESIDE:
        text = beside + shape.format(reps=12, load="16kg") + after
        assert acts(text, awaiting="reps", load=16, unit="kg") == wanted(12, 16, "kg"), text


def test_a_side_before_a_comma_belongs_to_the_set_behind_it():
    """One side told alone, with a small word between."""
    for text in ("left only so far, 11 at 12kg", "left side only, 11 at 12kg", "left only so far: 11 at 12kg"):
        assert acts(text, awaiting="reps", load=12, unit="kg", sides=True) == wanted(11, 12, "kg", side="left"), text


@pytest.mark.parametrize(
    ("text", "act"),
    [
        ("sorry 9 nit 8", {"act": "amend", "reps": 9}),
        ("soryr 9 nit 8", {"act": "amend", "reps": 9}),
        ("sorry 9 at 8", {"act": "unclear"}),
    ],
)
def test_the_reps_that_were_are_no_new_load(text, act):
    """A slip of "not" is read; with "at" whoever corrects eight reps is asked, before eight becomes a load."""
    last = {"reps": 8, "load": 18, "unit": "kg"}
    assert acts(text, awaiting="none", unit="kg", last=last) == [act]
