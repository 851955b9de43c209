"""A correction finds the set that holds the number it rejects, and changes nothing when there is none."""

from __future__ import annotations

from core.messages import Corrected, NoSuchNumber, NotDoneYet
from tests.walking import Walk


def told() -> Walk:
    """Two sets: 5 goblet squats, then 13 rows each side."""
    walk = Walk(known=True).says("go", "go", "go").waits(65).says("5 at 8kg")
    return walk.waits(60 + 125).says("13 each at 8kg")


def test_the_number_rejected_tells_which_set_is_meant():
    """Six not five is about the set of five, though another came later."""
    walk = told().says("sorry 6 not 5")
    assert isinstance(walk.said[-1], Corrected)
    assert [record.reps for record in walk.history.standing()] == [13, 6]
    assert walk.history.sets[-1].replaces == 1


def test_a_number_that_no_set_holds_changes_nothing():
    """Nothing is guessed: it is said that there is none."""
    before = told().history
    walk = told().says("sorry 9 not 7")
    assert isinstance(walk.said[-1], NoSuchNumber)
    assert walk.history == before


def test_a_set_told_before_the_first_station_is_done_is_not_kept_and_says_what_to_do():
    """Nobody is told that there is nothing to change when they changed nothing."""
    walk = Walk(known=True).says("go", "11 at 8kg")
    assert walk.said == [NotDoneYet("Goblet squat", started=False)]
    walk.says("go", "go").waits(10).says("11 at 8kg")
    assert walk.said == [NotDoneYet("Goblet squat", started=True)]
    assert walk.history.standing() == ()


def test_a_set_told_after_half_of_the_first_station_is_kept():
    """Some put the weights down early."""
    walk = Walk(known=True).says("go", "go", "go").waits(45).says("11 at 8kg")
    assert [record.reps for record in walk.history.standing()] == [11]


def test_a_correction_after_a_hold_is_of_its_seconds():
    """A plank has no reps to put right."""
    walk = Walk(known=True).says("go", "go", *["skip"] * 6, "go").waits(62).says("40", "sorry 45")
    assert [(record.reps, record.seconds) for record in walk.history.standing()] == [(None, 45)]


def test_a_counted_set_is_put_right_while_a_hold_is_asked_for():
    """The curls before the plank stay curls."""
    walk = Walk(known=True).says("go", "go", *["skip"] * 5, "go").waits(62).says("11 at 8kg", "go").waits(62)
    walk.says("sorry 12 not 11")
    assert [(record.reps, record.seconds) for record in walk.history.standing()] == [(12, None)]
    assert walk.says("sorry, 40").kinds() == ["SetNotRead"]


def test_one_side_of_a_set_told_for_both_is_put_right_and_the_other_stays():
    """Thirteen each, and then: eleven on the left."""
    walk = told().says("make that 11 on the left")
    assert [(record.side, record.reps) for record in walk.history.standing()][1:] == [("left", 11), ("right", 13)]
    walk.says("sorry the right was 12")
    assert [(record.side, record.reps) for record in walk.history.standing()][1:] == [("left", 11), ("right", 12)]


def test_a_correction_of_what_could_not_be_read_is_no_correction_of_the_set_before():
    """While it is asked about, "I meant" is about that."""
    walk = Walk(known=True).says("go", "go", "go").waits(65).says("5 at 8kg").waits(60 + 125)
    walk.says("eleventy each", "sorry I meant 11 at 8kg")
    assert [(record.exercise, record.reps) for record in walk.history.standing()] == [("goblet-squat", 5), ("one-arm-row", 11)]
    walk = Walk(known=True).says("go", "go", "go").waits(65).says("5 at 8kg").waits(60 + 125)
    walk.says("8kg", "no, 12kg", "11")
    assert [int(record.load.amount) for record in walk.history.standing()] == [8, 12]


def test_a_side_is_no_correction_of_a_set_without_sides():
    """It belongs to the station that has some and is missing."""
    walk = (
        Walk(known=True).says("go", "go", "go").waits(65).says("5 at 8kg").waits(60 + 125).says("oh dear, I meant ten on the left")
    )
    assert [(record.exercise, record.reps) for record in walk.history.standing()] == [("goblet-squat", 5), ("one-arm-row", 10)]
    walk = Walk(known=True).says("go", "go", "go").waits(65).says("5 at 8kg", "sorry, left was 4")
    assert [record.reps for record in walk.history.standing()] == [5]


def test_a_correction_before_any_set_is_the_set():
    """There is nothing to put right."""
    walk = Walk(known=True).says("go", "go", "go").waits(65).says("11 not 12")
    assert [record.reps for record in walk.history.standing()] == [11]
