"""What is said without being asked, on which day and at what time; and what is not said, and why."""

from dataclasses import replace
from datetime import timedelta

import pytest

from bot.store.ledger import Ledger
from core.diary import PainNoted, PainRecord, Reason, Unasked, UnaskedKind
from core.messages import Summary
from core.reminders import QUIET_FROM, QUIET_UNTIL, worthless_after
from core.session.events import Plan, Woke
from core.session.step import step
from tests.core.reminders.given import Weeks


def test_reminders_come_on_the_trainees_days_at_their_time():
    """Somebody who trains when reminded hears one message on each of their days, and nothing else."""
    weeks = Weeks()
    for day in ("02", "04", "06", "09", "11", "13"):
        weeks.at(f"2026-03-{day} 06:31").trains()
    assert weeks.told == [
        f"{day} 06:30 Reminder" for day in ("Mon 02 Mar", "Wed 04 Mar", "Fri 06 Mar", "Mon 09 Mar", "Wed 11 Mar", "Fri 13 Mar")
    ]


def test_a_missed_day_gets_one_kind_word_the_next_day_and_a_second_missed_day_none():
    """In one silence there is one follow-up; it waits for the end of the quiet hours."""
    weeks = Weeks().at("2026-03-07 12:00")
    assert weeks.told == [
        "Mon 02 Mar 06:30 Reminder",
        "Tue 03 Mar 08:00 FollowUp",
        "Wed 04 Mar 06:30 Reminder",
        "Fri 06 Mar 06:30 Reminder",
    ]


def test_after_a_week_of_silence_one_message_and_then_none():
    """A come-back in place of the first reminder a week after the first unanswered one; nothing for a year after it."""
    weeks = Weeks().at("2027-03-01 12:00")
    assert weeks.told[-2:] == ["Fri 06 Mar 06:30 Reminder", "Mon 09 Mar 08:00 ComeBack"]
    assert weeks.wake_at is None


def test_whoever_speaks_after_the_come_back_is_reminded_again():
    """Silence lasts until they speak, not longer."""
    weeks = Weeks().at("2026-04-01 12:00").says("hello")
    count = len(weeks.told)
    weeks.at("2026-04-04 00:00")
    assert weeks.told[count:] == ["Fri 03 Apr 06:30 Reminder"]


def test_whoever_opens_the_chat_is_there_too():
    """After the come-back it is enough to open the chat for reminders to go on."""
    weeks = Weeks().at("2026-04-01 12:00").opens()
    count = len(weeks.told)
    weeks.at("2026-04-04 00:00")
    assert weeks.told[count:] == ["Fri 03 Apr 06:30 Reminder"]


def test_somebody_with_one_day_a_week_is_not_taken_for_silent():
    """The silence is counted from the first reminder that went unanswered, not from the last word."""
    weeks = Weeks(says="sundays at 9")
    for day in ("2026-03-08", "2026-03-15", "2026-03-22"):
        weeks.at(f"{day} 09:05").trains()
    assert weeks.told == ["Sun 08 Mar 09:00 Reminder", "Sun 15 Mar 09:00 Reminder", "Sun 22 Mar 09:00 Reminder"]


def test_when_days_are_far_apart_the_come_back_comes_after_two_weeks():
    """With a day every three weeks, fourteen days after the one that went by."""
    weeks = Weeks(says="every third week on sunday at 09:00 from the 15th")
    weeks.at("2026-03-31 12:00")
    assert weeks.told == ["Sun 15 Mar 09:00 Reminder", "Mon 16 Mar 09:00 FollowUp", "Sun 29 Mar 09:00 ComeBack"]


def test_not_today_ends_the_day():
    """No snooze, no follow-up; the next of their days is as ever."""
    weeks = Weeks().at("2026-03-02 06:31").says("not today").at("2026-03-04 07:00")
    assert weeks.told == ["Mon 02 Mar 06:30 Reminder", "Wed 04 Mar 06:30 Reminder"]


def test_not_today_before_the_reminder_takes_it_out():
    """Who has said so is not asked."""
    weeks = Weeks().at("2026-03-02 06:00").says("not today").at("2026-03-03 12:00")
    assert weeks.told == []


def test_a_snooze_is_kept():
    """Half an hour later to the second, and again as often as it is asked for."""
    weeks = (
        Weeks().at("2026-03-02 06:32").says("later 30 min").at("2026-03-02 07:05").says("remind me at 7pm").at("2026-03-02 20:00")
    )
    assert weeks.told == ["Mon 02 Mar 06:30 Reminder", "Mon 02 Mar 07:02 Reminder", "Mon 02 Mar 19:00 Reminder"]


def test_a_snooze_over_midnight_is_kept_and_leaves_no_room_for_a_follow_up():
    """Tomorrow at nine is tomorrow at nine; it stands in for the kind word of that day."""
    weeks = Weeks().at("2026-03-02 20:00").says("remind me at 09:00").at("2026-03-03 23:00")
    assert weeks.told == ["Mon 02 Mar 06:30 Reminder", "Tue 03 Mar 09:00 Reminder"]


def test_a_snooze_that_was_said_stands_for_a_reminder_later_that_day():
    """Put off to half an hour before another day's time: one of the two is enough."""
    weeks = Weeks().at("2026-03-03 12:00").says("remind me at 06:00").at("2026-03-04 12:00")
    assert weeks.told[-1] == "Wed 04 Mar 06:00 Reminder"
    assert weeks.dropped() == ["Wed 04 reminder: one a day"]


def test_trained_already_needs_no_reminder():
    """Before the reminder's time, or before the end of a snooze."""
    weeks = Weeks().at("2026-03-02 06:00").trains(20).at("2026-03-02 12:00")
    assert weeks.dropped() == ["Mon 02 reminder: trained that day"]
    weeks.at("2026-03-04 06:31").says("later 30 min").trains(10).at("2026-03-04 12:00")
    assert weeks.dropped()[1:] == ["Wed 04 snooze: trained that day"]
    assert weeks.told == ["Wed 04 Mar 06:30 Reminder"]


def test_a_reminder_during_a_workout_is_dropped():
    """The real workout, begun five minutes before the time."""
    weeks = Weeks().at("2026-03-02 06:25").says("go").at("2026-03-02 06:31")
    assert weeks.told == []
    assert weeks.dropped() == ["Mon 02 reminder: a workout runs"]


def test_a_workout_at_any_hour_of_the_next_day_makes_up_for_a_missed_one():
    """No follow-up to somebody who has just trained."""
    weeks = Weeks().at("2026-03-03 07:00").trains().at("2026-03-03 12:00")
    assert weeks.told == ["Mon 02 Mar 06:30 Reminder"]


def test_a_text_that_comes_before_the_alarm_answers_the_reminder():
    """The alarm is seconds late and the trainee was faster: "go" starts, and no reminder falls into the warm-up."""
    weeks = Weeks().at("2026-03-02 06:29")
    weeks.now += timedelta(seconds=65)
    weeks.says("go")
    assert weeks.told == []
    assert weeks.kinds() == ["WarmUp"]
    assert weeks.dropped() == ["Mon 02 reminder: a workout runs"]


@pytest.mark.parametrize(
    ("back", "told"), [("06:45", ["Mon 02 Mar 06:45 Reminder"]), ("08:29", ["Mon 02 Mar 08:29 Reminder"]), ("08:31", [])]
)
def test_a_late_reminder_is_said_within_two_hours(back, told):
    """A host that slept: late is better than never, and never is better than noon."""
    weeks = Weeks().away_until(f"2026-03-02 {back}")
    assert weeks.told == told
    assert weeks.dropped() == ([] if told else ["Mon 02 reminder: too late"])


def test_a_host_that_was_away_for_days_says_one_thing_at_most():
    """Each day that went by is dropped with its reason; nothing is made up for."""
    weeks = Weeks().away_until("2026-03-09 06:40")
    assert weeks.told == ["Mon 09 Mar 06:40 Reminder"]
    assert weeks.dropped() == [f"{day} reminder: too late" for day in ("Mon 02", "Wed 04", "Fri 06")]


def test_a_late_reminder_is_not_said_at_night():
    """One for 20:30 that could only be said at 21:20 is dropped; one for 22:00, which the trainee chose, is said at 22:05."""
    assert Weeks(says="mon 20:30").away_until("2026-03-02 21:20").dropped() == ["Mon 02 reminder: quiet hours"]
    assert Weeks(says="mon 22:00").away_until("2026-03-02 22:05").told == ["Mon 02 Mar 22:05 Reminder"]


def test_what_nobody_asked_for_keeps_to_the_day():
    """Follow-up and come-back for a reminder at 22:00 come at 20:00, for one at 05:00 at 08:00."""
    late = Weeks(says="mon 22:00").at("2026-03-18 00:00").told
    assert late == ["Mon 02 Mar 22:00 Reminder", "Tue 03 Mar 20:00 FollowUp", "Mon 09 Mar 20:00 ComeBack"]
    early = Weeks(says="mon 05:00").at("2026-03-18 00:00").told
    assert early == ["Mon 02 Mar 05:00 Reminder", "Tue 03 Mar 08:00 FollowUp", "Mon 09 Mar 08:00 ComeBack"]
    assert (QUIET_FROM, QUIET_UNTIL) == ("21:00", "08:00")


def test_at_most_one_unasked_message_a_day():
    """Every second day, all of them missed: never two on one day of the wall clock."""
    told = Weeks(says="every other day at 19:00").at("2026-03-31 00:00").told
    days = [line[:10] for line in told]
    assert len(days) == len(set(days)) > 4


def test_nothing_is_said_after_stop():
    """Not a reminder, not a snooze, not a follow-up, not a come-back."""
    weeks = Weeks().at("2026-03-02 06:31").says("later 30 min", "stop the reminders").at("2027-01-01 00:00")
    assert weeks.told == ["Mon 02 Mar 06:30 Reminder"]
    assert weeks.wake_at is None


def test_after_a_warning_sign_nobody_is_called_to_train():
    """For a day after an urgent sign every reminder is dropped."""
    weeks = Weeks().at("2026-03-01 21:00")
    weeks.ledger = weeks.ledger.after(PainNoted(PainRecord(weeks.now, "chest", None, urgent=True, exercise=None)))
    weeks.at("2026-03-02 12:00")
    assert weeks.told == []
    assert weeks.dropped() == [f"Mon 02 reminder: {Reason.UNWELL}"]


def test_days_away_are_silent_and_do_not_count_as_silence():
    """Back from three weeks away, the first word is a plain reminder, and the come-back comes a week after it."""
    weeks = Weeks().says("I'm away till the 20th").at("2026-03-31 12:00")
    assert weeks.told[0] == "Mon 23 Mar 06:30 Reminder"
    assert weeks.told[-1] == "Mon 30 Mar 08:00 ComeBack"


def test_a_moved_day_is_reminded_of_where_it_went():
    """And no longer where it was; the word about the missed day is not sent for a day that moved."""
    weeks = Weeks().at("2026-03-02 06:31").says("move today to tomorrow").at("2026-03-03 06:31").trains().at("2026-03-04 00:00")
    assert weeks.told == ["Mon 02 Mar 06:30 Reminder", "Tue 03 Mar 06:30 Reminder"]


def test_days_said_again_count_from_now_on():
    """A new time later the same day is reminded of that day, since it was asked for; a time that has passed is not."""
    weeks = Weeks().at("2026-03-02 10:00").says("remind me mon wed fri 18:00").at("2026-03-02 18:01")
    assert weeks.told == ["Mon 02 Mar 06:30 Reminder", "Mon 02 Mar 18:00 Reminder"]
    weeks = Weeks().at("2026-03-02 10:00").says("remind me mon wed fri 7am").at("2026-03-02 23:00")
    assert weeks.told == ["Mon 02 Mar 06:30 Reminder"]


def test_somebody_in_the_middle_of_a_question_is_reminded_all_the_same():
    """The talk about weights, left unanswered, holds nothing up."""
    weeks = Weeks().says("I've got a pair of 20 kg dumbbells")
    assert weeks.kinds() == ["RackMoreAsked"]
    assert weeks.at("2026-03-02 07:00").told == ["Mon 02 Mar 06:30 Reminder"]


def test_another_zone_keeps_the_wall_clock_and_no_day_is_reminded_of_twice():
    """Monday's reminder was said in Lisbon at 06:30, when it is 01:30 in New York; when 06:30 comes there, no word."""
    weeks = Weeks().at("2026-03-02 06:35").says("I'm in New York now").at("2026-03-04 12:00")
    assert weeks.told == ["Mon 02 Mar 06:30 Reminder", "Tue 03 Mar 08:00 FollowUp", "Wed 04 Mar 06:30 Reminder"]


def test_a_workout_before_a_journey_west_is_not_forgotten():
    """Reminded and trained on Friday in Sydney, which is Thursday in Lisbon: on Saturday there is nothing to make up for."""
    weeks = Weeks("Australia/Sydney", says="fri sun 07:15").at("2026-03-06 07:20").says("I'm in Lisbon now").trains()
    weeks.at("2026-03-08 07:15")
    assert weeks.told == ["Fri 06 Mar 07:15 Reminder", "Sun 08 Mar 07:15 Reminder"]


def test_the_alarm_clock_is_right_after_new_zone_data():
    """A wake-up that was planned with other data says nothing too early, and asks for the right instant."""
    weeks = Weeks()
    planned = weeks.wake_at
    weeks.ledger = Ledger(replace(weeks.ledger.trainee, zone="Atlantic/Azores"), weeks.history)
    weeks.waits((planned - weeks.now).total_seconds())
    assert weeks.told == []
    assert weeks.wake_at == planned + timedelta(hours=1)


def test_the_reminder_says_one_thing_that_changed():
    """The first load that goes up since the last workout, or none."""
    weeks = Weeks().at("2026-03-02 06:31").says("go", "go", "go")
    weeks.waits(61).says("12", "finish")
    weeks.at("2026-03-04 06:30")
    reminder = weeks.said[-1]
    assert (reminder.circuit, reminder.rounds) == (weeks.circuit.name, weeks.circuit.rounds)
    assert (reminder.change.exercise, reminder.change.change) == ("Goblet squat", "up")


def test_coming_back_after_a_long_break_is_shorter_and_no_heavier():
    """A set that was easy would lead to more load: not in the first workout after ten days or more; in the second it may."""
    weeks = Weeks().at("2026-03-02 06:31").says("go", "go", "go")
    weeks.waits(61).says("12", "finish")
    assert next(message for message in weeks.said if isinstance(message, Summary)).changes[0].change == "up"
    weeks.at("2026-03-14 12:00").says("go", "go")
    card = weeks.said[0]
    assert (card.exercise, str(card.load.amount), card.rounds) == ("Goblet squat", "12", weeks.circuit.rounds - 1)
    weeks.says("go").waits(61).says("12", "finish").at("2026-03-16 12:00").says("go", "go")
    card = weeks.said[0]
    assert (str(card.load.amount), card.rounds) == ("16", weeks.circuit.rounds)


@pytest.mark.parametrize(
    ("kind", "due", "until"),
    [
        (UnaskedKind.REMINDER, "06:30", "08:30"),
        (UnaskedKind.REMINDER, "20:30", "21:00"),
        (UnaskedKind.REMINDER, "22:00", "00:00"),
        (UnaskedKind.FOLLOW_UP, "12:00", "16:00"),
        (UnaskedKind.COME_BACK, "20:00", "21:00"),
    ],
)
def test_a_message_that_cannot_be_sent_is_not_sent_too_late_or_at_night(kind, due, until):
    """A network that is away for hours: past its latest time, or at nine in the evening, it is dropped as stale on its row."""
    weeks = Weeks()
    due_at = weeks.local(f"2026-03-04 {due}")
    record = Unasked(kind, due_at.date(), due_at, due_at)
    ends = weeks.local(f"2026-03-0{5 if until == '00:00' else 4} {until}")
    assert worthless_after(record, "Europe/Lisbon") == ends


def test_the_words_on_their_way_carry_that_end():
    """What the step says goes out with it, so that the outbox can drop it."""
    weeks = Weeks()
    plan = Plan(weeks.ledger.trainee, weeks.circuit, "Coach Wren")
    taken = step(weeks.state, Woke(), plan, weeks.history, weeks.local("2026-03-02 06:30"))
    assert [say.expires_at for say in taken.messages] == [weeks.local("2026-03-02 08:30")]
