"""Equipment told and asked about outside the first talk."""

from __future__ import annotations

from decimal import Decimal

import pytest

from core.messages import NotNeeded, RackMoreAsked, RackNoted, ReminderNoted
from core.own_messages import RackShown
from core.rack import Kind, RackItem
from core.units import Load, Unit
from tests.walking import RACK, Walk


@pytest.mark.parametrize(
    "text", ["what weights have i got?", "my weights", "show my equipment please", "Which dumbbells do you have for me"]
)
def test_what_is_noted_can_be_seen(text):
    """As it was read back when it was told."""
    walk = Walk(known=True).says(text)
    assert walk.said == [RackShown(RACK.items)]


def test_whether_the_known_weights_are_still_there_is_asked_twice_at_most():
    """Then they are kept, and read back."""
    walk = Walk(known=True)
    walk.says("I have a band")
    assert isinstance(walk.said[0], RackMoreAsked)
    assert isinstance(walk.says("hmm").said[0], RackMoreAsked)
    assert isinstance(walk.says("hmm").said[0], RackNoted)
    assert [item.kind for item in walk.said[0].items][len(RACK.items) :] == [Kind.BAND]


def test_something_else_said_meanwhile_is_heard():
    """What was told is kept beside what is known."""
    walk = Walk(known=True).says("I have a band").says("remind me tue thu 6:30am")
    assert isinstance(walk.said[0], RackNoted)
    assert any(isinstance(one, ReminderNoted) for one in walk.said)


def test_what_no_station_is_done_with_is_not_kept_as_something_to_lift():
    """A bench is no dumbbell, a barbell neither."""
    walk = Walk(known=True).says("I have a bench")
    assert walk.said == [NotNeeded(("bench",))]
    walk = Walk(known=True).says("I have a barbell and a 10kg kettlebell").says("yes")
    assert walk.ledger.trainee.rack.items[len(RACK.items) :] == (RackItem(Kind.KETTLEBELL, Load(Decimal(10), Unit.KG), 1),)


def test_a_none_between_workouts_takes_no_weights_away():
    """It answers nothing, and what is known stays; "no weights" is asked about first."""
    walk = Walk(known=True).says("none", "nothing")
    assert walk.ledger.trainee.rack == RACK
    walk.says("no weights")
    assert isinstance(walk.said[0], RackMoreAsked)
    assert walk.says("no").ledger.trainee.rack.items == ()
