"""Short answers, read in the light of what was asked."""

from __future__ import annotations

from decimal import Decimal

import pytest

from core.reading import Answer, Awaiting, Context, Have, Item, Log, Pain, Unclear, Units, read
from core.units import Unit


@pytest.mark.parametrize("text", ["yes", "y", "yep", "ok", "sure", "I do", "agreed", "yes please", "YES!", "👍"])
def test_yes(text):
    """A yes in its many forms, while one is awaited."""
    assert read(text, Context(awaiting=Awaiting.YES)) == (Answer(yes=True),)


@pytest.mark.parametrize("text", ["no", "nope", "n", "no thanks", "not really", "I don't", "👎"])
def test_no(text):
    """A no in its many forms, while one is awaited."""
    assert read(text, Context(awaiting=Awaiting.YES)) == (Answer(yes=False),)


@pytest.mark.parametrize(
    ("text", "choice"), [("1", 1), ("the first", 1), ("2nd one", 2), ("second", 2), ("number 2", 2), ("the last", 3)]
)
def test_a_choice(text, choice):
    """One of the choices just offered, by number or by place."""
    assert read(text, Context(awaiting=Awaiting.CHOICE, choices=3)) == (Answer(choice=choice),)


@pytest.mark.parametrize(("text", "unit"), [("pounds", Unit.LB), ("kg", Unit.KG), ("lbs please", Unit.LB), ("kilos", Unit.KG)])
def test_a_unit(text, unit):
    """The unit asked for."""
    assert read(text, Context(awaiting=Awaiting.UNIT)) == (Units(unit),)


@pytest.mark.parametrize(
    ("text", "items"),
    [
        ("8 12 16", (Item(load=Decimal(8)), Item(load=Decimal(12)), Item(load=Decimal(16)))),
        ("8s 12s and a 16", (Item(load=Decimal(8)), Item(load=Decimal(12)), Item(load=Decimal(16), count=1))),
        ("10, 15 and 25 lb", tuple(Item(load=Decimal(n), unit=Unit.LB) for n in (10, 15, 25))),
        ("none", ()),
    ],
)
def test_a_rack(text, items):
    """Bare lists are the rack, while it is awaited."""
    assert read(text, Context(awaiting=Awaiting.RACK)) == (Have(items),)


def test_a_hold_is_counted_in_seconds():
    """At a station that is held a bare number is seconds, and holding it all is the target."""
    held = Context(awaiting=Awaiting.REPS, hold=True, target=45)
    assert read("40", held) == (Log(seconds=40),)
    assert read("held it all", held) == (Log(seconds=45),)


def test_what_is_unclear_offers_the_likely_meanings():
    """Two bare numbers that nothing settles come with both readings."""
    (unclear,) = read("11 20", Context(awaiting=Awaiting.REPS))
    assert isinstance(unclear, Unclear)
    assert unclear.choices == ((Log(reps=11, load=Decimal(20)),), (Log(reps=20, load=Decimal(11)),))


@pytest.mark.parametrize("awaiting", list(Awaiting))
def test_urgent_pain_comes_before_any_answer(awaiting):
    """Whatever is awaited, urgent pain is read."""
    assert any(isinstance(act, Pain) and act.urgent for act in read("yes but my chest hurts", Context(awaiting=awaiting)))
