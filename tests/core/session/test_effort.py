"""Too much for today, how hard it was, and the training load that follows."""

from __future__ import annotations

import pytest

from core import messages
from core.diary import Ending
from core.safety.weeks import session_load
from tests.walking import Walk, known_and_trained


def test_over_the_ceiling_the_load_does_not_rise():
    """Slower, not heavier: 20 squats in a minute in which 12 fit."""
    walk = Walk(known=True).says("go", "go", "go").waits(61).says("20 at 8kg")
    noted = next(message for message in walk.said if isinstance(message, messages.Noted))
    assert isinstance(noted.reminder, messages.Slower)
    assert noted.next_load.kg <= 8


def test_relief_is_offered_once_a_round():
    """Nobody is asked after every station."""
    walk = Walk(known=True).says("go", "go", "go")
    offers = 0
    for reps in ("5", "5 each", "5", "5", "5"):
        walk.waits(125 if "each" in reps else 61).says(reps)
        offers += sum(isinstance(message, messages.TooMuchSeen) for message in walk.said)
        walk.says("go")
    assert offers == 1


def test_effort_is_asked_after_a_workout_with_sets_only():
    """Not after one that was left before its first set, nor after one that was stopped for safety."""
    assert "EffortAsked" not in Walk(known=True).says("go", "finish").kinds()
    done = Walk(known=True).says("go", "go", "go").waits(61).says("12", "finish")
    assert done.kinds()[-1] == "EffortAsked"
    assert done.says("7").history.workouts[-1].effort == 7


def test_a_number_after_the_end_is_a_set_while_one_is_missing():
    """A wrong record is the worst outcome: reps that are still missing go before effort."""
    walk = Walk(known=True).says("go", "go", "go").waits(61).says("finish")
    walk.waits(400).says("9")
    assert [record.reps for record in walk.history.standing()] == [9]
    assert walk.history.workouts[-1].effort is None


# Pauses and training load


@pytest.mark.parametrize("ending", [("back", "finish"), ("finish",)])
def test_pauses_are_no_minutes_of_training_load(ending):
    """Effort 5 for the minutes between start and end, without the twenty of a pause."""
    walk = known_and_trained("pause").waits(20 * 60).says(*ending, "5")
    record = walk.history.workouts[-1]
    assert record.paused_s == 1200
    assert (record.ended_at - record.started_at).total_seconds() == 1261
    assert session_load(record, 5) == pytest.approx(5 * 61 / 60)


def test_a_pause_that_nobody_ends_does_not_count_either():
    """The workout ends by itself after half an hour, and all of that was pause."""
    record = known_and_trained("pause").waits(3600).history.workouts[-1]
    assert (record.ending, record.paused_s) == (Ending.SILENT, 1800)


def test_two_pauses_add_up():
    """Each is counted once, whatever was said in between."""
    walk = known_and_trained("pause").waits(300).says("how long left", "back", "pause").waits(120).says("back", "finish", "5")
    assert walk.history.workouts[-1].paused_s == 420


def test_days_alike_are_spoken_of_once_a_week():
    """Six equal days of seven are alike (Foster 1998, from memory); the word comes then, and a week later again."""
    walk = Walk(known=True)
    heard = []
    for _ in range(14):
        start = walk.now
        walk.says("go", "go", "go").waits(61).says("11, 2 left", "finish", "5")
        heard.append(walk.said[0].alike)
        walk.waits(86_400 - (walk.now - start).total_seconds())
    assert [day for day, alike in enumerate(heard, start=1) if alike] == [6, 13]
