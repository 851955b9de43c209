"""How one is today: it makes the day lighter or ends it, and never stops a go."""

from __future__ import annotations

import pytest

from core.health import Feeling
from core.session.states import WarmingUp
from tests.walking import Walk, after_a_day, card


@pytest.mark.parametrize(
    "words", [(), ("slept badly",), ("slept badly and sore",), ("a bit ill",), ("it's hot in here",), ("all good",)]
)
def test_the_readiness_question_never_stops_a_go(words):
    """Whatever was answered, the next "go" leads on."""
    walk = Walk(known=True).says("go", *words)
    assert isinstance(walk.state, WarmingUp)
    assert walk.says("go").kinds() == ["Card"]


@pytest.mark.parametrize(
    ("words", "ease", "rounds"),
    [
        ("slept badly", 1, 3),
        ("sore", 1, 3),
        ("slept badly and sore", 2, 2),
        ("runny nose", 2, 2),
        ("all good", 0, 3),
        ("not sore, slept well", 0, 3),
    ],
)
def test_how_one_is_lowers_the_day(words, ease, rounds):
    """One thing a bit, two or being ill more, with a round less (common practice, no source)."""
    workout = Walk(known=True).says("go", words).state.workout
    assert (workout.ease, workout.circuit.rounds) == (ease, rounds)


def test_a_lighter_day_names_lighter_loads():
    """The coach's start is a step lighter on a light day."""
    usual = card(Walk(known=True).says("go", "go")).load
    light = card(Walk(known=True).says("go", "slept badly and sore", "go")).load
    assert light.kg < usual.kg


def test_what_is_said_after_the_card_shows_it_anew():
    """The load on the card is the one that holds."""
    walk = Walk(known=True).says("go", "go")
    before = card(walk).load
    assert card(walk.says("slept badly and sore")).load.kg < before.kg


@pytest.mark.parametrize("words", [("fever",), ("ill with a fever",), ("stomach bug",), ("ill", "yes")])
def test_fever_ends_the_day(words):
    """No workout while feverish or ill below the neck (entry 46), not again on that day, and the way back begins with less."""
    walk = Walk(known=True).says("go", *words)
    assert walk.kinds() == ["FeverRest"]
    assert walk.says("go").kinds() == ["ClearanceNeeded"]
    after_a_day(walk).says("go")
    assert walk.kinds() == ["LighterDay", "WarmUp"]
    assert walk.state.workout.circuit.rounds == 2


def test_heat_makes_rests_longer():
    """Shade or fan, water, longer rests (entry 49, from memory)."""
    walk = Walk(known=True).says("go")
    usual = walk.state.workout.circuit.rest_s
    assert walk.says("it's boiling in here").said[0].feelings == (Feeling.HOT,)
    assert walk.state.workout.circuit.rest_s.high > usual.high
