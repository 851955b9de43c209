"""When a quick reply that is pressed late still fits."""

from dataclasses import replace
from datetime import UTC, datetime

from core.circuit import Circuit, Span, Station
from core.session.moment import ABOUT_A_SET, moment, still_fits
from core.session.states import AskingUnit, Idle, Place, Question, Resting, Working, Workout

T0 = datetime(2026, 3, 2, 6, 30, tzinfo=UTC)
SQUAT = Station("goblet-squat", 60, None, None, sides=False, reserve=Span(1, 2))
CIRCUIT = Circuit("Kitchen floor", 3, Span(20, 30), Span(60, 60), 60, (SQUAT, SQUAT))
WORKOUT = Workout(4, CIRCUIT, T0, Place(1, 2), ("goblet-squat",) * 2, (None, None), open=(Place(1, 1),))
RESTING = Resting(WORKOUT, T0, ())


def after(**changes):
    """The moment of a rest in the same workout, with changes."""
    return moment(Resting(replace(WORKOUT, **changes), T0, ()))


def test_a_report_fits_until_its_set_is_reported_wherever_the_clock_is():
    """During the rest, the next station's work and the rest after it; not when the set is closed or asked about otherwise."""
    offered = moment(RESTING)
    assert still_fits("Down", offered, moment(Working(WORKOUT, T0, T0, ())))
    assert still_fits("Down", offered, after(place=Place(2, 1)))
    assert not still_fits("Down", offered, after(open=()))
    assert not still_fits("Down", offered, after(open=(Place(1, 1), Place(1, 2))))
    assert not still_fits("Down", offered, after(question=Question(Place(1, 1), 1)))
    assert not still_fits("Down", offered, after(number=5))


def test_a_word_to_the_clock_fits_while_the_station_is_the_same():
    """Whatever became of the set before it."""
    offered = moment(RESTING)
    assert still_fits("Card", offered, after(open=()))
    assert not still_fits("Card", offered, after(place=Place(2, 1)))
    assert not still_fits("Card", offered, moment(Idle(last=WORKOUT)))


def test_an_answer_of_the_first_talk_fits_that_question():
    """And no other."""
    assert still_fits("UnitAsked", moment(AskingUnit()), moment(AskingUnit()))
    assert not still_fits("UnitAsked", moment(AskingUnit()), moment(Idle()))


def test_every_kind_that_asks_for_a_set_is_named():
    """They are classes of messages that exist."""
    assert "Down" in ABOUT_A_SET
    assert "Card" not in ABOUT_A_SET
