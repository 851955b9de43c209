"""Whatever is said of days, in any order and at any time: what is kept can be stored, and no two reminders come on one day."""

from __future__ import annotations

from collections import Counter

from hypothesis import given, settings
from hypothesis import strategies as st

from bot.wording import worded
from core.recurrence import recurrence_of, text_of
from tests.core.reminders.given import Weeks

TEXTS = [
    "remind me mon wed fri 6:30am", "every other day at 19:00", "weekends at 9", "mon 07:00 and sat 10:00",
    "tue 06:30 until friday",
    "mon fri 07:00 from the 20th till the 30th", "every second week on sunday 08:30", "weekdays at 7",
    "change my reminders to 18:00",
    "not this week", "not next week", "I'm away till the 14th", "from monday", "back on friday", "skip tomorrow", "not today",
    "move today to tomorrow", "move friday to saturday", "tomorrow instead", "not on sundays", "no reminders on wednesdays",
    "later 30 min", "remind me at 7pm", "I'm in Tokyo now", "I'm in New York now", "I'm in another time zone now", "Sydney",
    "nowhere",
    "my reminders", "what do I do today?", "stop the reminders", "go", "finish", "help", "blorp",
]  # fmt: skip
HOUR = 3600
EVENTS = st.one_of(
    st.sampled_from(TEXTS).map(lambda text: ("says", text)),
    st.sampled_from([1, 60, HOUR, 9 * HOUR, 25 * HOUR, 80 * HOUR, 400 * HOUR]).map(lambda seconds: ("waits", seconds)),
    st.sampled_from([HOUR, 30 * HOUR]).map(lambda seconds: ("sleeps", seconds)),
)


@settings(derandomize=True, max_examples=150, deadline=None)
@given(events=st.lists(EVENTS, min_size=1, max_size=25))
def test_any_talk_leaves_days_that_can_be_kept(events):
    """Days come back from their text as they were; every answer has words; the next alarm lies ahead."""
    weeks = Weeks(says="")
    for name, what in events:
        getattr(weeks, name)(what)
        reminders = weeks.ledger.trainee.reminders
        assert reminders is None or recurrence_of(text_of(reminders)) == reminders
        assert weeks.wake_at is None or weeks.wake_at > weeks.now
        assert all(worded(message).text for message in weeks.said)


@settings(derandomize=True, max_examples=100, deadline=None)
@given(events=st.lists(EVENTS.filter(lambda event: event[0] != "sleeps"), min_size=5, max_size=30))
def test_what_is_said_unasked_is_one_message_a_day(events):
    """In one zone, between two settings of the days; what was put off by the trainee does not count."""
    weeks = Weeks()
    for name, what in events:
        if "I'm in" in str(what) or what in ("Sydney", "nowhere"):
            continue
        getattr(weeks, name)(what)
    said = [record for record in weeks.history.unasked if record.dropped is None and record.kind != "snooze"]
    since = weeks.ledger.trainee.reminders_since
    per_day = Counter(record.day for record in said if since is None or record.at > since)
    assert all(count == 1 for count in per_day.values())


def test_days_that_end_before_they_begin_are_asked_for_again():
    """As "tuesdays until monday", said on a Wednesday, holds no day."""
    weeks = Weeks(says="").at("2026-03-04 10:00").says("tue 06:30 until monday")
    assert weeks.kinds() == ["ReminderPartMissing"]
    assert weeks.ledger.trainee.reminders is None


def test_after_the_last_day_there_is_silence_and_the_plan_is_said_to_be_over():
    """The agenda says so when asked."""
    weeks = (
        Weeks(says="mon wed 06:30 until friday")
        .at("2026-03-02 06:31")
        .trains()
        .at("2026-03-04 06:31")
        .trains()
        .at("2026-03-20 12:00")
    )
    assert weeks.told == ["Mon 02 Mar 06:30 Reminder", "Wed 04 Mar 06:30 Reminder"]
    assert weeks.wake_at is None
    assert weeks.says("what do I do today?").kinds() == ["PlanOver"]
