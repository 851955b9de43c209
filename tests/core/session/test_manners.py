"""Thanks, a greeting or a nod get a word in kind, at any moment, and never "I didn't catch that"."""

from __future__ import annotations

import pytest

from core.messages import MannersReturned, NoHurry, Noted, ReminderNoted, SetNotRead, WhichOne
from core.reading.manners import manners
from tests.walking import Walk


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("thanks", "thanks"),
        ("Thank you so much, coach!", "thanks"),
        ("ta", "thanks"),
        ("ok thanks", "thanks"),
        ("good morning", "hello"),
        ("Hi coach 👋", "hello"),
        ("ok cool", "nod"),
        ("👍", "nod"),
        ("will do", "nod"),
        ("cheers coach see ya", "bye"),
        ("see you soon", "bye"),
        ("ya", None),
        ("next", None),
        ("ok?", None),
        ("thanks for the 12s", None),
        ("thanks, no", None),
        ("that is it", None),
        ("🤕", None),
        ("", None),
    ],
)
def test_manners_are_told_from_all_else(text, said):
    """A question, a number, a no or a sore head is no manners."""
    assert manners(text) == said


def test_thanks_after_a_set_is_answered_and_changes_nothing():
    """The rest goes on."""
    walk = Walk(known=True).says("go", "go", "go").waits(62).says("11 at 8kg")
    assert isinstance(walk.said[-2], Noted) or any(isinstance(one, Noted) for one in walk.said)
    before = walk.history
    walk.says("thanks!")
    assert walk.said == [MannersReturned("thanks", None)]
    assert walk.history.sets == before.sets


def test_a_nod_while_a_set_is_missing_says_what_is_waited_for():
    """And does not count as an answer that could not be read."""
    walk = Walk(known=True).says("go", "go", "go").waits(62).says("ok", "great", "cool")
    assert walk.said == [MannersReturned("nod", "reps")]
    assert isinstance(walk.says("blorp").said[0], SetNotRead)


def test_a_nod_does_not_pick_one_of_two():
    """What could be two sets is asked again."""
    walk = Walk(known=True).says("go", "go", "go").waits(62).says("16 8")
    assert isinstance(walk.said[-1], WhichOne)
    assert not any(isinstance(one, MannersReturned) for one in walk.says("ok").said)


def test_days_of_reminders_may_be_told_in_a_workout():
    """Nobody has to wait for its end."""
    walk = Walk(known=True).says("go", "go", "go").waits(62).says("remind me tue thu 6:30am")
    assert any(isinstance(one, ReminderNoted) for one in walk.said)


def test_who_asks_to_wait_before_a_workout_is_told_to_take_their_time():
    """There is no clock to stop."""
    assert Walk(known=True).says("give me 5 minutes").said == [NoHurry()]
