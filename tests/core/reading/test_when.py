"""Reminders, putting off and units of speech, in words that no list foresaw."""

from __future__ import annotations

import pytest

from tests.core.reading.reading import acts

UNCLEAR = [{"act": "unclear"}]
WORKDAYS = ["mon", "tue", "wed", "thu", "fri"]


@pytest.mark.parametrize(
    "text",
    [
        "knock the reminders on the head",
        "I should be grateful if you stopped the reminders altogether",
        "ditch the reminders",
        "pls no more messages about training",
        "please suppress the reminders",
        "leave me alone with the reminders",
        "stop bugging me",
        "no more notifs",
    ],
)
def test_reminders_end_in_many_words(text):
    """Whatever ends reminders ends all of them when no day is named."""
    assert acts(text) == [{"act": "remind", "off": True}]


@pytest.mark.parametrize(
    ("text", "days", "at"),
    [
        ("Reminder for every saturday, hour 10:00 of morning", ["sat"], "10:00"),
        ("monwedfri 7pm remidners plz", ["mon", "wed", "fri"], "19:00"),
        ("mon-wed-fri 5:45am", ["mon", "wed", "fri"], "05:45"),
        ("I wish reminder the tuesday and the thursday at 19 h", ["tue", "thu"], "19:00"),
        ("please remind me on school days at 4pm", WORKDAYS, "16:00"),
        ("No reminders during the week, only Saturday at 9am", ["sat"], "09:00"),
        ("Remind me arvos at 4 on Monday and Wednesday", ["mon", "wed"], "16:00"),
    ],
)
def test_days_and_times_make_a_plan(text, days, at):
    """Days in week order, the time in 24 hours."""
    assert acts(text) == [{"act": "remind", "days": days, "at": at}]


@pytest.mark.parametrize(
    "text",
    [
        "remind me on weekdays at 6am and on sunday at 9am",
        "remind me at 6am on weekdays and at 9am on sunday",
        "6am weekdays, 9am sun - remind me",
    ],
)
def test_each_time_goes_with_its_own_days(text):
    """Whether the days are said before their time or after it."""
    assert acts(text) == [
        {"act": "remind", "days": WORKDAYS, "at": "06:00"},
        {"act": "remind", "days": ["sun"], "at": "09:00"},
    ]


@pytest.mark.parametrize(
    "text",
    [
        "remind me mon, wxd and fri 7am",
        "remind me on fzday and sunday at 6pm",
        "remind me moan days and fry days at six am",
    ],
)
def test_no_day_is_lost(text):
    """A day that cannot be read is asked about, whatever else is plain."""
    assert acts(text) == [{"act": "unclear"}]


@pytest.mark.parametrize(
    ("text", "minutes"),
    [
        ("not yet, remind me in 2 hours", 120),
        ("latr 20 min", 20),
        ("in thirty minutes please I am on the phone with my sister", 30),
        ("not yet!! in an hour", 60),
        ("give us a yell in 15, just having a cuppa", 15),
        ("shovelling the driveway, give me 45", 45),
        ("hold on 20 mins", 20),
        ("half hr", 30),
        ("can we start in 20?", 20),
    ],
)
def test_a_length_of_time_puts_the_workout_off(text, minutes):
    """A number that can only be minutes is minutes."""
    assert acts(text, awaiting="go") == [{"act": "snooze", "minutes": minutes}]


@pytest.mark.parametrize(
    ("text", "at"),
    [
        ("hit me up 8 tonight", "20:00"),
        ("in a meeting until 4pm", "16:00"),
        ("got a lecture til 3pm", "15:00"),
        ("not before 7pm", "19:00"),
        ("now I work, at 20:00 write me", "20:00"),
        ("remember me at 18h please", "18:00"),
    ],
)
def test_a_time_of_day_puts_the_workout_off(text, at):
    """Being busy until a time is being asked again then."""
    assert acts(text, awaiting="go") == [{"act": "snooze", "at": at}]


@pytest.mark.parametrize(
    "text",
    ["stop buzzing me on fridays", "no more nudges on fridays, choir", "please no texts on Friday", "drop fridays, I work late"],
)
def test_one_day_is_left_out_in_many_words(text):
    """A day named beside the end of reminders ends those of that day."""
    assert acts(text) == [{"act": "remind", "days": ["fri"], "off": True}]


@pytest.mark.parametrize(
    "text",
    [
        "mon and fri at 5am, I go church on Sunday",
        "I do my shopping on Thursday so remind me Monday and Friday at 5am",
        "remind me monday and friday 5am, wednesday we have swimming",
        "Monday, Friday. 5am. thanks",
        "Mon, Fri mornings 5.00, remind us eh",
        "remind me every Monday and Friday 5am, weekend traffic no gree me",
    ],
)
def test_a_day_that_is_only_a_reason_is_no_day_of_training(text):
    """What else is on, and when, changes nothing of the plan beside it; a time may follow its days."""
    assert acts(text) == [{"act": "remind", "days": ["mon", "fri"], "at": "05:00"}]


@pytest.mark.parametrize(
    "text",
    [
        "gimme 5 minutes, delivery guy's here",
        "need 4 minutes, baby's been sick",
        "hold on 3 mins sink is overflowing",
        "five minutes please, the washing machine is dancing",
        "30 secs, tying my laces",
        "two minutes the kettle is boiling over",
    ],
)
def test_a_short_wait_is_a_pause(text):
    """Up to five minutes are waited for; longer, or with "more" or "in", is being asked again."""
    assert acts(text, awaiting="go") == [{"act": "pause"}]


def test_a_short_wait_stands_beside_a_set():
    """The minutes of the wait are no part of the set."""
    wanted = [{"act": "log", "reps": 10, "load": 12, "unit": "kg"}, {"act": "pause"}]
    assert acts("10 at 12kg. wait 2 minutes, plumber", awaiting="reps") == wanted


@pytest.mark.parametrize(
    "text",
    [
        "it's 7pm",
        "choir is tuesdays at 7pm",
        "dentist thursday 2pm",
        "the kids have karate tue and thu 5pm",
        "I go to bed at 9pm every day",
        "granddaughter's recital, saturday at 3pm",
        "is 6am on weekdays too early?",
        "remind my husband on mondays 7pm",
        "dinner is at 8pm",
        "the gym opens 6am on weekdays",
        "the wedding is on saturday at 2pm",
        "see you monday at 7am coach",
        "remind me mon or tue at 6pm",
        "I slept 8 hours",
    ],
)
def test_times_that_are_only_told_are_asked_about(text):
    """A time that something else happens at is neither a reminder nor a delay, and one of two days is not settled."""
    assert acts(text) == UNCLEAR


@pytest.mark.parametrize(
    "text",
    [
        "please count for me in {kg}, not in {lb}",
        "{kg} please, I'm no good with {lb}",
        "might I have the weights in {kg}?",
        "I would rather you used {kg}, I never learned {lb}",
        "flick it over to {kg}, ta",
        "{kg} not those {lb} please",
        "stop using {lb}, {kg} please",
        "{kg} suit me better",
        "from {lb} to {kg} please",
    ],
)
@pytest.mark.parametrize(("kg", "lb", "unit"), [("kilos", "pounds", "kg"), ("lbs", "kgs", "lb")])
def test_a_unit_is_wished_for_in_many_words(text, kg, lb, unit):
    """The unit that is wanted counts, not the one that is given up."""
    assert acts(text.format(kg=kg, lb=lb)) == [{"act": "units", "unit": unit}]


@pytest.mark.parametrize(
    "text",
    ["I lost some pounds", "I want to lose a few pounds", "is it in pounds or kilos?", "the pound is down against the dollar"],
)
def test_weight_lost_or_money_is_no_unit(text):
    """Units of other things set nothing."""
    assert acts(text) == UNCLEAR


def test_a_unit_after_a_record_corrects_it():
    """Right after a set, "kilos, not pounds" is about that set."""
    last = {"reps": 12, "load": 8, "unit": "lb"}
    assert acts("Kilos, not pounds.", last=last) == [{"act": "amend", "unit": "kg"}]
    assert acts("please count for me in kg, not in pounds", last=last) == [{"act": "units", "unit": "kg"}]


@pytest.mark.parametrize("text", ["my", "the", "monday", "remind", "10kg dumbbells, but it is my", "sold, i have a pair of 8s"])
def test_a_broken_off_message_is_read_without_harm(text):
    """Whatever is cut short is still read."""
    assert acts(text)
