"""What a trainee reads of their days: short, and every answer that is offered is understood."""

from __future__ import annotations

from datetime import date
from decimal import Decimal

import pytest

from bot.wording import worded
from bot.wording.days import date_text, rule_text
from core import messages
from core.reading.calendar_talk import calendar_talk
from core.recurrence import Extra, Recurrence, Rule, weekly
from core.units import Load, Unit
from tests.core.reminders.given import Weeks

MONDAY = date(2026, 3, 2)
WORDS_IN_3_S = 12  # silent reading of 238 words a minute (Brysbaert 2019, from memory)


def test_a_reminder_is_read_in_three_seconds():
    """Circuit, rounds, minutes and the one change, before the answers that are offered."""
    change = messages.NextChange("Goblet squat", Load(Decimal(16), Unit.KG), "up", None)
    text = worded(messages.Reminder("Kitchen seven", 3, 50, change)).text
    *told, offered = text.split("\n")
    assert len(" ".join(told).split()) <= WORDS_IN_3_S
    assert offered == '"go", "later 30 min" or "not today"?'


@pytest.mark.parametrize(
    ("rule", "words"),
    [
        (weekly(("fri", "mon", "wed"), "06:30", MONDAY), "Mon, Wed, Fri at 06:30"),
        (weekly(("mon", "tue", "wed", "thu", "fri", "sat", "sun"), "07:00", MONDAY), "every day at 07:00"),
        (Rule(MONDAY, "07:00", 1, "day"), "every day at 07:00"),
        (Rule(MONDAY, "07:00", 2, "day"), "every other day at 07:00"),
        (Rule(MONDAY, "07:00", 3, "day"), "every third day at 07:00"),
        (Rule(MONDAY, "07:00", 9, "day"), "every 9th day at 07:00"),
        (Rule(MONDAY, "07:00", 2, "day", ("mon", "tue")), "every other day that is Mon, Tue at 07:00"),
        (weekly(("tue",), "18:30", MONDAY, 2), "every other week on Tue at 18:30"),
        (Rule(MONDAY, "07:00", days=("mon",), until=date(2026, 4, 6)), "Mon at 07:00, until Mon 6 Apr"),
    ],
)
def test_a_rule_is_shown_in_words(rule, words):
    """As people would say it."""
    assert rule_text(rule) == words


def test_exceptions_are_shown_in_words():
    """The days that are off, the days more, and the next one."""
    days = Recurrence((weekly(("mon",), "06:30", MONDAY),), (date(2026, 3, 9),), (Extra(date(2026, 3, 10), "06:30"),))
    text = worded(messages.ReminderNoted(days, messages.DayAt(date(2026, 3, 10), "06:30"))).text
    assert text.split("\n") == [
        "I'll remind you: Mon at 06:30.",
        "Not on Mon 9 Mar.",
        "Also on Tue 10 Mar.",
        "Next: Tue 10 Mar at 06:30.",
    ]
    assert date_text(date(2028, 2, 29)) == "Tue 29 Feb"


@pytest.mark.parametrize(
    ("setting", "reply", "answer"),
    [
        ("2026-03-02 06:30", "go", "WarmUp"),
        ("2026-03-02 06:30", "later 30 min", "Snoozed"),
        ("2026-03-02 06:30", "not today", "DaySkipped"),
        ("2026-03-03 08:00", "go", "WarmUp"),
        ("2026-03-03 08:00", "not today", "DaySkipped"),
        ("2026-03-09 08:00", "go", "WarmUp"),
        ("2026-03-09 08:00", "stop the reminders", "RemindersOff"),
    ],
)
def test_every_answer_that_is_offered_is_understood(setting, reply, answer):
    """Tapped as it stands, right after the reminder, the follow-up or the come-back."""
    weeks = Weeks().at(setting)
    assert reply in worded(weeks.said[-1]).replies
    assert weeks.says(reply).kinds()[0] == answer


def test_the_answers_to_morning_or_evening_are_understood():
    """Each is a whole message that sets the days."""
    weeks = Weeks(says="mon wed at 7")
    for reply in worded(weeks.said[0]).replies:
        assert weeks.says(reply).kinds() == ["ReminderNoted"]


def test_places_that_are_offered_are_understood():
    """The nearest names to a misspelt city are answers to "where are you?"."""
    weeks = Weeks(says="I'm in another time zone now").says("Lisbonn")
    offered = worded(weeks.said[0]).replies
    assert "Lisbon" in offered
    for place in offered:
        assert calendar_talk(place, MONDAY, zone_asked=True).zone is not None
