"""A set is missing when the next station is over: a report goes to the one asked about last; what was said of one stays its own."""

from __future__ import annotations

from decimal import Decimal

from tests.walking import Walk


def missing() -> Walk:
    """The squat was not told; the row was."""
    walk = Walk(known=True).says("go", "go", "go").waits(62)
    return walk.waits(60 + 125)


def sets(walk: Walk) -> list[tuple[str, int | None, Decimal | None]]:
    """What stands: exercise, reps, load."""
    return [(one.exercise, one.reps, None if one.load is None else one.load.amount) for one in walk.history.standing()]


def test_a_report_goes_to_the_station_that_is_over_now_whatever_was_asked_before():
    """Half a report of the squat does not make the row a squat."""
    walk = Walk(known=True).says("go", "go", "go").waits(62).says("8kg").waits(60 + 125).says("13 each at 6kg")
    assert sets(walk) == [("one-arm-row", 13, Decimal(6))]
    assert sets(walk.says("12"))[1:] == [("goblet-squat", 12, Decimal(8))]  # what was said of it is not forgotten


def test_which_of_two_it_was_is_asked_no_more_when_the_next_station_is_over():
    """It would be about the wrong set."""
    walk = Walk(known=True).says("go", "go", "go").waits(62).says("16 8").waits(60 + 125).says("the first")
    assert sets(walk) == []
    assert sets(walk.says("13 each")) == [("one-arm-row", 13, Decimal(12))]


def test_a_load_alone_after_a_set_is_of_that_set_though_an_earlier_one_is_missing():
    """Ten, and a moment later: at 12 kg."""
    walk = missing().says("10 each", "at 12kg")
    assert sets(walk) == [("one-arm-row", 10, Decimal(12))]


def test_a_load_said_before_stays_said_while_the_reps_are_asked_for():
    """Neither a word that cannot be read nor silence takes it away."""
    walk = Walk(known=True).says("go", "go", "go").waits(62).says("12kg", "blorp", "11")
    assert sets(walk) == [("goblet-squat", 11, Decimal(12))]
    walk = Walk(known=True).says("go", "go", "go").waits(62).says("12kg", "blorp", "blorp", "11")
    assert sets(walk) == [("goblet-squat", 11, Decimal(12))]


def test_nobody_is_asked_to_pick_one_of_two_that_are_the_same():
    """Ten ten: how many, then?"""
    walk = Walk(known=True).says("go", "go", "go").waits(62).says("10 10")
    assert walk.kinds() == ["SetNotRead"]


def test_a_report_that_names_its_exercise_goes_there():
    """Two are missing, and the squats are told first."""
    walk = missing().says("12 squats at 8kg")
    assert sets(walk) == [("goblet-squat", 12, Decimal(8))]
    assert sets(walk.says("10 rows each side"))[1:] == [("one-arm-row", 10, Decimal(12))]
    assert sets(missing().says("12, three in a row today"))[:1] != [("goblet-squat", 12, Decimal(12))]


def test_a_load_that_nobody_owns_is_no_meaning():
    """Of 16 at 8 kg and 8 at 16 kg both could be; of 10 at 8 kg and 8 at 10 kg only one."""
    walk = Walk(known=True).says("go", "go", "go").waits(62).says("10 8")
    assert sets(walk) == [("goblet-squat", 10, Decimal(8))]
    assert Walk(known=True).says("go", "go", "go").waits(62).says("16 8").kinds() == ["WhichOne"]


def test_a_load_without_its_unit_may_follow_the_set():
    """Eleven; at 8."""
    walk = Walk(known=True).says("go", "go", "go").waits(62).says("11", "at 8")
    assert sets(walk) == [("goblet-squat", 11, Decimal(8))]


def test_a_report_that_names_the_station_under_work_goes_there_while_another_is_missing():
    """The squat stays missing; the row is told early."""
    walk = Walk(known=True).says("go", "go", "go").waits(62).waits(60 + 10).says("12 rows at 8kg")
    assert [(exercise, reps) for exercise, reps, _ in sets(walk)] == [("one-arm-row", 12)]
    walk.waits(125)
    assert [(exercise, reps) for exercise, reps, _ in sets(walk.says("10"))] == [("one-arm-row", 12), ("goblet-squat", 10)]
    walk = Walk(known=True).says("go", "go", "go").waits(62).says("11").waits(60 + 10).says("12 rows at 8kg")
    assert [(exercise, reps) for exercise, reps, _ in sets(walk)] == [("goblet-squat", 11), ("one-arm-row", 12)]


def test_sides_go_to_the_station_that_has_some():
    """The row and the push-up are missing; what is told left and right is the row."""
    walk = Walk(known=True).says("go", "go", "go").waits(62).says("11 at 8kg").waits(60 + 125).waits(60 + 62)
    walk.says("left 10 right 9")
    assert [(one.exercise, one.side, one.reps) for one in walk.history.standing()][1:] == [
        ("one-arm-row", "left", 10),
        ("one-arm-row", "right", 9),
    ]
    assert [one.exercise for one in walk.says("14").history.standing()][3:] == ["push-up"]


def test_a_set_asked_about_twice_is_asked_about_no_more():
    """Whatever else cannot be read; it can be told at any time."""
    walk = Walk(known=True).says("go", "go", "go").waits(62).says("blorp", "blorp", "blorp")
    assert walk.kinds() == ["LeftOpen"]
    assert walk.says("blorp").kinds() == walk.says("ehm").kinds() == ["NotUnderstood"]
    assert sets(walk.says("11 at 8kg")) == [("goblet-squat", 11, Decimal(8))]
