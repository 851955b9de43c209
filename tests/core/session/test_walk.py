"""The walk through a workout, where a dialogue would be too long to say it: counted reps, rests, pauses, swaps, late alarms."""

from __future__ import annotations

from datetime import timedelta

import pytest

from core.circuit_file import read_circuit
from core.diary import Ending
from core.messages import Card, Down, Go, Noted, StillMissing, Summary, SwitchSides, TimeTold, WhereWeWere
from core.session.states import Closing, Idle, Paused, Resting, SettingUp, Working
from tests.walking import Walk

COUNTED = """
name = "Ten each"
rounds = 2
rest_s = [20, 40]
rest_between_rounds_s = 60

[[station]]
exercise = "Goblet squat"
reps = 10
tempo = "2-0-1-0"

[[station]]
exercise = "One-arm row"
reps = 8
tempo = "2-0-1-0"
sides = true
"""


def counted() -> Walk:
    """A circuit that counts reps, at its first station, under way."""
    circuit = read_circuit(COUNTED)
    assert not isinstance(circuit, tuple)
    return Walk(circuit, known=True).says("go", "go")


def begun() -> Walk:
    """The demo circuit at its first station, under way."""
    return Walk(known=True).says("go", "go", "go")


def last(walk: Walk, kind: type):
    """The latest message of a kind."""
    return next(message for message in reversed(walk.heard) if isinstance(message, kind))


def test_counted_reps_have_no_clock_and_end_with_the_report():
    """The report of a counted station puts it down and begins its rest."""
    walk = counted()
    assert last(walk, Go).left_s is None
    assert last(walk, Go).reps == 10
    walk.waits(25).says("10 at 12kg")
    assert isinstance(walk.state, Resting)
    assert last(walk, Down).ask is None
    assert walk.history.sets[-1].reps == 10


def test_counted_reps_that_take_long_are_asked_about_once():
    """After the time that the tempo asks for and twenty seconds more, one question."""
    walk = counted().waits(10 * 3 + 19)
    assert not any(isinstance(message, StillMissing) for message in walk.said)
    walk.waits(2)
    assert any(isinstance(message, StillMissing) for message in walk.said)


def test_a_counted_station_with_sides_goes_to_the_other_side_with_the_report():
    """Left is reported, right begins at once; then the rest between rounds."""
    walk = counted().waits(25).says("10 at 12kg").waits(41)
    assert last(walk, Go).side == "left"
    walk.waits(20).says("8 at 12kg")
    assert isinstance(walk.said[-1], SwitchSides)
    walk.waits(20).says("7 at 12kg")
    assert [(record.side, record.reps) for record in walk.history.sets[1:]] == [("left", 8), ("right", 7)]
    assert last(walk, Down).round_over == 1


def test_both_sides_told_at_the_first_side_end_a_counted_station():
    """Who did both before texting is not sent to the other side."""
    walk = counted().waits(25).says("10 at 12kg").waits(41 + 40).says("8 each at 12kg")
    assert isinstance(walk.state, Resting)
    assert last(walk, Down).round_over == 1


def test_go_in_the_rest_starts_the_station_early_and_the_grid_moves_with_it():
    """Who is ready sooner starts sooner; the next rest begins when that work ends."""
    walk = begun().waits(70).says("11 at 12kg", "go")
    assert isinstance(walk.state, Working)
    assert walk.state.started_at == walk.now


def test_a_pause_in_the_rest_keeps_the_rest_that_was_left():
    """Thirty seconds were left; after the pause thirty seconds are left."""
    walk = begun().waits(90).says("pause").waits(300).says("back")
    assert isinstance(walk.state, Resting)
    assert walk.state.ends_at == walk.now + timedelta(seconds=30)


def test_a_pause_under_work_is_not_counted_as_work():
    """Twenty seconds before and forty after make one minute of work."""
    walk = begun().waits(20).says("pause").waits(120).says("back").waits(51)
    assert isinstance(walk.state, Resting)
    assert walk.state.workout.work_s == 60


def test_an_alarm_a_few_seconds_late_moves_nothing_after_it():
    """The rest still begins where the work ended; a call that is stale is not said."""
    walk = begun().waits(55).sleeps(7)
    assert walk.kinds() == ["Down"]
    assert isinstance(walk.state, Resting)
    assert walk.state.ends_at == walk.now + timedelta(seconds=58)


def test_after_a_minute_away_the_clock_is_stopped_and_says_where():
    """Nobody was called, so the station is done again from its start after a "go"."""
    walk = begun().sleeps(200)
    assert isinstance(walk.state, Paused)
    assert isinstance(walk.said[-1], WhereWeWere)
    walk.says("back")
    assert isinstance(walk.state, SettingUp)
    assert walk.state.workout.place.station == 1


def test_after_hours_away_the_workout_is_over_and_kept():
    """What was told is in the summary."""
    walk = begun().waits(62).says("11 at 12kg").sleeps(3 * 60 * 60)
    assert isinstance(walk.state, Idle)
    assert last(walk, Summary).ending is Ending.SILENT
    assert walk.history.workouts[-1].ended_at is not None
    assert len(walk.history.standing()) == 1


def test_a_skipped_station_is_not_asked_about():
    """Skip under work goes to the rest with the next card shown, and nothing is missing."""
    walk = begun().waits(10).says("skip")
    assert isinstance(walk.state, Resting)
    assert not walk.state.workout.open
    assert last(walk, Card).station == 2


def test_skipping_everything_ends_the_workout():
    """Twenty-one skips, no sets, a summary."""
    walk = Walk(known=True).says("go", "go")
    for _ in range(21):
        walk.says("skip")
    assert isinstance(walk.state, Idle)
    assert last(walk, Summary).lines == ()


def test_a_swap_without_sides_is_done_and_reported_without_sides():
    """The exercise that takes a station brings its own way of being done."""
    walk = begun().waits(62).says("11 at 12kg", "can I do hammer curl instead")
    assert last(walk, Card).sides is False
    walk.waits(60)
    assert last(walk, Go).side is None


def test_finish_with_a_report_missing_asks_for_it_first():
    """Then the summary holds it."""
    walk = begun().waits(65).says("finish")
    assert isinstance(walk.state, Closing)
    walk.says("11 at 12kg")
    assert isinstance(walk.state, Idle)
    assert last(walk, Summary).lines[0].sets[0].reps == 11


def test_finish_twice_leaves_the_missing_set_open_and_takes_it_later():
    """Nothing is lost, nothing is insisted on."""
    walk = begun().waits(65).says("finish", "finish")
    assert last(walk, Summary).missing == 1
    walk.waits(3600).says("11 at 12kg")
    assert walk.history.standing()[-1].reps == 11
    assert walk.history.standing()[-1].station == 1


def test_a_correction_long_after_the_workout_still_counts():
    """The last set can be put right between workouts."""
    walk = begun().waits(65).says("11 at 12kg", "finish").waits(7200).says("sorry 12 not 11")
    assert [record.reps for record in walk.history.standing()] == [12]
    assert walk.history.standing()[0].replaces == 1


def test_reps_above_the_ceiling_call_for_slower_and_not_for_heavier():
    """At 3-1-1-0, 12 reps fit into a minute; 18 do not."""
    walk = begun().waits(65).says("18 at 12kg")
    noted = last(walk, Noted)
    assert type(noted.reminder).__name__ == "Slower"
    assert noted.reminder.reps_ceiling == 12


def test_far_short_of_the_minute_calls_for_lighter():
    """Five at 12 kg where ten were expected: the lighter one next."""
    walk = begun().waits(65).says("5 at 12kg")
    noted = last(walk, Noted)
    assert type(noted.reminder).__name__ == "Lighter"
    assert noted.change == "down"


def test_how_long_left_counts_the_whole_way():
    """Half a minute into the first station of three rounds."""
    walk = begun().waits(30).says("how long left")
    told = last(walk, TimeTold)
    assert told.left_s == 30
    assert told.minutes_all == 45  # 30 s, then 23 sides of a minute, 18 rests of a minute and 2 of a minute and a half


def test_a_load_the_rack_does_not_hold_in_both_hands_is_never_named():
    """One 16 kg bell: good for a goblet squat, never for two-handed stations."""
    walk = begun()
    for _ in range(120):
        walk.waits(62).says("20, 8 left", "20 each, 8 left", "60 s")
    for card in walk.heard:
        if isinstance(card, Card) and card.load is not None and card.loads_held == 2:
            assert card.load.amount in (8, 12)


@pytest.mark.parametrize("text", ["", " ", "\u200b", "?" * 4096, "\U0001f4aa", "DROP TABLE set_record;--"])
def test_odd_texts_are_answered_and_change_nothing(text):
    """Whatever is sent, the walk goes on."""
    walk = begun().waits(62)
    before = walk.history
    walk.says(text)
    assert walk.history == before
    assert isinstance(walk.state, Resting)
