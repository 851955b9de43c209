"""What people say about days, times away and zones, as acts. Read on Tuesday 3 March 2026."""

from datetime import date

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from core.reading.acts import Away, Days, HalfOfDay, InZone, Move, MyReminders, Repeat
from core.reading.calendar_talk import calendar_talk

TUESDAY = date(2026, 3, 3)
ALL = ("mon", "tue", "wed", "thu", "fri", "sat", "sun")


def march(day):
    """A day of March 2026."""
    return date(2026, 3, day)


def weekly(days, at, every=1):
    """Days of the week with their time."""
    return Days("week", every, tuple(days.split()), at)


RULES = {
    "mon wed fri 6:30am": weekly("mon wed fri", "06:30"),
    "remind me mon wed fri 6:30am": weekly("mon wed fri", "06:30"),
    "Remind me on Mondays, Wednesdays and Fridays at 6.30 in the morning, please": weekly("mon wed fri", "06:30"),
    "weekends at 9": weekly("sat sun", "09:00"),
    "weekends 9 in the morning": weekly("sat sun", "09:00"),
    "weekdays 18:30": weekly("mon tue wed thu fri", "18:30"),
    "mon to fri quarter to 7 in the morning": weekly("mon tue wed thu fri", "06:45"),
    "I train mondays and thursdays at 19:00": weekly("mon thu", "19:00"),
    "every day at half past six in the evening": Days("week", 1, ALL, "18:30"),
    "daily 07:00": Days("week", 1, ALL, "07:00"),
    "at 6pm every tuesday": weekly("tue", "18:00"),
    "tuesdays at noon": weekly("tue", "12:00"),
    "tuesdays at 4": weekly("tue", "16:00"),
    "every other day": Days("day", 2),
    "remind me every other day at 7am": Days("day", 2, (), "07:00"),
    "every third day at 18:00": Days("day", 3, (), "18:00"),
    "every 4 days 18:00": Days("day", 4, (), "18:00"),
    "every other week on monday and thursday at 18:30": weekly("mon thu", "18:30", 2),
    "every second tuesday at 12:15": weekly("tue", "12:15", 2),
    "remind me sundays": weekly("sun", None),
}


@pytest.mark.parametrize("text", RULES)
def test_days_and_times_become_rules(text):
    """However they are put, in whatever order."""
    assert calendar_talk(text, TUESDAY) == Repeat((RULES[text],))


def test_several_times_go_with_the_days_beside_them():
    """One message can hold several rules."""
    assert calendar_talk("mon wed 6:30am, sat 9am", TUESDAY) == Repeat((weekly("mon wed", "06:30"), weekly("sat", "09:00")))
    assert calendar_talk("tue thu 07:00 and sun 10:00", TUESDAY) == Repeat((weekly("tue thu", "07:00"), weekly("sun", "10:00")))
    assert calendar_talk("mon 07:00 18:00", TUESDAY) is None


def test_a_first_day_may_be_named():
    """Said "from monday", with days and a time begins there."""
    assert calendar_talk("mon wed fri 6:30am from monday", TUESDAY) == Repeat((weekly("mon wed fri", "06:30"),), march(9))
    assert calendar_talk("every other day at 7am from the 9th", TUESDAY) == Repeat((Days("day", 2, (), "07:00"),), march(9))
    assert calendar_talk("every other day at 7am starting tomorrow", TUESDAY) == Repeat((Days("day", 2, (), "07:00"),), march(4))


def test_a_last_day_may_be_named():
    """With or without a first one; one before the first is nothing that can be read."""
    assert calendar_talk("mon fri 6:30am until 27 march", TUESDAY) == Repeat((weekly("mon fri", "06:30"),), None, march(27))
    assert calendar_talk("remind me mon 18:00 from the 9th till the 30th", TUESDAY) == Repeat(
        (weekly("mon", "18:00"),), march(9), march(30)
    )
    assert calendar_talk("mon 18:00 from the 20th till the 10th", TUESDAY) is None


def test_a_time_that_may_be_morning_or_evening_is_asked_about():
    """Both answers are whole messages that are settled."""
    asked = calendar_talk("weekdays at 7", TUESDAY)
    assert asked == HalfOfDay("weekdays at 07:00", "weekdays at 19:00")
    assert calendar_talk(asked.morning, TUESDAY) == Repeat((weekly("mon tue wed thu fri", "07:00"),))
    assert calendar_talk(asked.evening, TUESDAY) == Repeat((weekly("mon tue wed thu fri", "19:00"),))


AWAY = {
    "not this week": (3, 8),
    "No training this week": (3, 8),
    "take this week off": (3, 8),
    "I'm off this week": (3, 8),
    "not next week": (9, 15),
    "I am away next week": (9, 15),
    "I'm away till the 14th": (3, 14),
    "I’m away until the 14th of March": (3, 14),
    "away until March 14": (3, 14),
    "away till 2026-03-14": (3, 14),
    "on holiday till sunday": (3, 8),
    "I'm ill until friday": (3, 6),
    "pause the reminders until monday": (3, 8),
    "no reminders until the 10th": (3, 9),
    "from monday": (3, 8),
    "start again on monday": (3, 8),
    "I'm back on the 20th": (3, 19),
    "I'm away from the 10th to the 14th": (10, 14),
    "away for two weeks": (3, 16),
    "I'm travelling for 10 days": (3, 12),
    "skip tomorrow": (4, 4),
    "Not this Thursday, I am away.": (5, 5),
    "not tomorrow": (4, 4),
    "not this friday": (6, 6),
    "I can't train on friday": (6, 6),
    "no training on the 9th": (9, 9),
}


@pytest.mark.parametrize("text", AWAY)
def test_times_away_become_days_without_training(text):
    """Said "away till the 14th" is away on the 14th; "pause until monday" is back on monday."""
    first, last = AWAY[text]
    assert calendar_talk(text, TUESDAY) == Away(march(first), march(last))


def test_a_date_that_has_passed_is_next_months():
    """Said "the 2nd" on the 3rd, is in April; a day that a month lacks is looked for in the next that has it."""
    assert calendar_talk("I'm away till the 2nd", TUESDAY) == Away(TUESDAY, date(2026, 4, 2))
    assert calendar_talk("I'm away till the 31st", date(2026, 4, 5)) == Away(date(2026, 4, 5), date(2026, 5, 31))


def test_the_29th_of_february_is_taken_only_where_it_is_near():
    """Nobody is away for two years."""
    assert calendar_talk("I'm away till 29 february", TUESDAY) is None
    assert calendar_talk("I'm away till 29 february", date(2028, 2, 1)) == Away(date(2028, 2, 1), date(2028, 2, 29))


MOVES = {
    "move today to tomorrow": (3, 4),
    "Can you move today's workout to tomorrow?": (3, 4),
    "move it to saturday": (3, 7),
    "move friday to saturday": (6, 7),
    "shift wednesday to the 6th": (4, 6),
    "saturday instead of friday": (6, 7),
    "can we do thursday instead of wednesday": (4, 5),
    "tomorrow instead": (3, 4),
    "not today, tomorrow": (3, 4),
    "move friday to wednesday": (6, 4),
}


@pytest.mark.parametrize("text", MOVES)
def test_one_day_moves_to_another(text):
    """Days of the week are the next ones; a day can be moved forward and back, never into the past."""
    day, to = MOVES[text]
    assert calendar_talk(text, TUESDAY) == Move(march(day), march(to))


ZONES = {
    "I'm in another time zone now": InZone(),
    "change my time zone": InZone(),
    "my time zone changed": InZone(),
    "I'm in Tokyo now": InZone("Asia/Tokyo"),
    "I've moved to New York": InZone("America/New_York"),
    "I'm in Japan": InZone("Asia/Tokyo"),
    "my time zone is Europe/Lisbon": InZone("Europe/Lisbon"),
    "time zone: sao paulo": InZone("America/Sao_Paulo"),
    "I'm in another time zone now, Auckland": InZone("Pacific/Auckland"),
    "my time zone is narnia": InZone(None, "narnia"),
}


@pytest.mark.parametrize("text", ZONES)
def test_a_zone_is_taken_from_a_place(text):
    """A city, a country with one zone, or the zone's own name; a place that is not known is asked about."""
    assert calendar_talk(text, TUESDAY) == ZONES[text]


def test_a_bare_place_is_an_answer_only_when_it_was_asked_for():
    """Else it could be anything."""
    assert calendar_talk("Lisbon", TUESDAY) is None
    assert calendar_talk("Lisbon", TUESDAY, zone_asked=True) == InZone("Europe/Lisbon")
    assert calendar_talk("I'm in Lisbon", TUESDAY, zone_asked=True) == InZone("Europe/Lisbon")
    assert calendar_talk("Lisbom", TUESDAY, zone_asked=True) == InZone(None, "lisbom")


def test_the_days_can_be_asked_for():
    """What is set is shown."""
    assert calendar_talk("what are my reminders?", TUESDAY) == MyReminders()
    assert calendar_talk("When do you remind me?", TUESDAY) == MyReminders()
    assert calendar_talk("When is my next training?", TUESDAY) == MyReminders()


LEFT = (
    "go", "11", "11 at 20kg", "20 x 11", "12 not 11", "sorry 12 not 11", "not 12 but 11", "later", "later 30 min",
    "remind me at 7pm", "not today", "can't train today", "skip this one", "skip", "stop", "stop the reminders", "monday", "next",
    "today?", "tomorrow", "what do I do today?", "my knee hurts", "I'm in pain", "I'm in bed", "i'm done for today", "hold on",
    "back", "I'm back", "pause", "rest", "same again", "every rep was hard", "use pounds", "how am I doing?", "not on sundays",
    "start", "11 on monday at 20kg", "remind me mon 25:00", "mon 6:75", "every 99 days at 7am", "remind me every month on the 5th",
    "I'm away till whenever", "", "move", "move today to today", "move yesterday to tomorrow", "change dumbbells to 12s",
    "swap squat for lunge", "6:30am",
)  # fmt: skip


@pytest.mark.parametrize("text", LEFT)
def test_what_is_something_else_is_left_to_the_reader(text):
    """Every word must have its place, or nothing is read."""
    assert calendar_talk(text, TUESDAY) is None


LIKELY = (
    "i'm away till until from to the 14th monday mon fri and at 7 7am 19:00 every other second day week weeks not this next move"
    " today tomorrow instead of remind me in time zone is tokyo now for two 11 20kg half past quarter skip on back off 29 february"
)
WORDS = st.sampled_from(LIKELY.split())


@settings(derandomize=True, max_examples=400, deadline=None)
@given(st.lists(WORDS, max_size=14), st.dates(date(2024, 1, 1), date(2036, 12, 31)))
def test_nothing_that_is_said_breaks_and_no_day_lies_in_the_past(words, today):
    """Whatever the order of the words; days away and moved days are today or later, and a span does not end before it begins."""
    match calendar_talk(" ".join(words), today):
        case Away(first, last):
            assert today <= first <= last
        case Move(day, to):
            assert min(day, to) >= today
            assert day != to
        case Repeat(rules, first, last):
            assert rules
            assert last is None or last > today
            assert first is None or first >= today
        case _:
            pass
