"""Training days as recurrence rules: on which days they fall, exceptions, and what becomes of them when they change."""

from __future__ import annotations

from datetime import date, timedelta

from dateutil.rrule import rrulestr
from hypothesis import given, settings
from hypothesis import strategies as st

from core.recurrence import WEEK, Extra, Recurrence, Rule, recurrence_of, text_of, weekly

MONDAY = date(2026, 3, 2)
MWF = Recurrence((weekly(("mon", "wed", "fri"), "06:30", MONDAY),))
DAYS = st.lists(st.sampled_from(WEEK), min_size=1, max_size=7, unique=True).map(tuple)
STARTS = st.dates(date(2024, 1, 1), date(2032, 12, 31))
WEEKLY = st.builds(weekly, DAYS, st.sampled_from(["06:30", "18:00"]), STARTS, st.integers(1, 5))
DAILY = st.builds(Rule, STARTS, st.just("07:15"), st.integers(1, 9), st.just("day"))


def march(day):
    """A day of March 2026."""
    return date(2026, 3, day)


def days_of(recurrence, first, count=40):
    """The training days among so many days."""
    return [first + timedelta(days=n) for n in range(count) if recurrence.time_on(first + timedelta(days=n)) is not None]


@settings(derandomize=True, max_examples=150, deadline=None)
@given(rule=WEEKLY | DAILY, gone=st.none() | DAYS)
def test_a_rule_falls_on_the_days_that_dateutil_says(rule, gone):
    """Also after days of the week were taken out of it: the count goes on as before."""
    if gone is not None:
        rule = rule.without(gone)
    if rule is None:
        return
    text = "\n".join(text_of(Recurrence((rule,))).splitlines()[1:-1])
    theirs = {at.date() for at in rrulestr(text)[:30]}
    last = max(theirs)
    span = (last - rule.start).days + 1
    assert {rule.start + timedelta(days=n) for n in range(span) if rule.falls_on(rule.start + timedelta(days=n))} == theirs
    assert rule.falls_on(rule.start)


@settings(derandomize=True, max_examples=150, deadline=None)
@given(rules=st.lists(WEEKLY | DAILY, min_size=1, max_size=3).map(tuple), first=STARTS)
def test_the_next_day_is_the_first_that_is_one(rules, first):
    """Looked for one by one, it is never further away than a year of weeks."""
    recurrence = Recurrence(rules)
    found = recurrence.next_day(first)
    assert found is not None
    assert found[1] == recurrence.time_on(found[0])
    assert days_of(recurrence, first, (found[0] - first).days) == []


def test_rules_of_two_times_on_one_day_give_the_earlier():
    """One reminder a day is enough."""
    both = Recurrence((weekly(("mon",), "18:00", MONDAY), weekly(("mon", "sat"), "09:00", MONDAY)))
    assert both.time_on(march(9)) == "09:00"
    assert both.time_on(march(10)) is None


def test_every_other_day_goes_on_over_the_end_of_a_month_and_over_a_leap_day():
    """28 February 2028, 1 March would be wrong: the 29th lies between."""
    other = Recurrence((Rule(date(2028, 2, 26), "07:00", 2, "day"),))
    assert [f"{day:%d.%m.}" for day in days_of(other, date(2028, 2, 26), 8)] == ["26.02.", "28.02.", "01.03.", "03.03."]
    assert Recurrence((weekly(("tue",), "07:00", date(2028, 2, 28)),)).time_on(date(2028, 2, 29)) == "07:00"


def test_days_away_are_taken_out_and_come_back_after():
    """Only days that were training days are kept as exceptions."""
    away = MWF.without(march(3), march(14))
    assert away.excluded == (march(4), march(6), march(9), march(11), march(13))
    assert days_of(away, MONDAY, 20) == [march(2), march(16), march(18), march(20)]


def test_a_day_that_is_moved_keeps_its_time():
    """And can be moved back."""
    moved = MWF.moved(march(2), march(3))
    assert days_of(moved, MONDAY, 5) == [march(3), march(4), march(6)]
    assert moved.added == (Extra(march(3), "06:30"),)
    assert days_of(moved.moved(march(3), march(2)), MONDAY, 5) == [march(2), march(4), march(6)]


def test_moving_onto_a_training_day_leaves_one_training_day():
    """And moving a day that is none changes nothing."""
    assert days_of(MWF.moved(march(2), march(4)), MONDAY, 5) == [march(4), march(6)]
    assert MWF.moved(march(3), march(5)) == MWF


def test_exceptions_that_are_over_are_forgotten():
    """They would pile up for years."""
    assert MWF.without(march(3), march(14)).moved(march(16), march(17)).since(march(13)).excluded == (march(13), march(16))
    assert MWF.moved(march(2), march(3)).since(march(4)).added == ()


def test_days_of_the_week_can_be_taken_out():
    """Every other day but not on Sundays; when none is left there are no reminders."""
    other = Recurrence((Rule(MONDAY, "07:00", 2, "day"),)).without_weekdays(("sun",))
    assert days_of(other, MONDAY, 14) == [march(day) for day in (2, 4, 6, 10, 12, 14)]
    assert MWF.without_weekdays(("mon", "wed", "fri")) is None
    assert MWF.without(march(4), march(4)).without_weekdays(("wed",)).excluded == ()


def test_a_rule_with_an_end_has_no_day_after_it():
    """And the end is the last day of all."""
    ended = Recurrence((Rule(MONDAY, "06:30", days=("mon",), until=march(16)),))
    assert ended.next_day(march(17)) is None
    assert ended.ends_on() == march(16)
    assert MWF.ends_on() is None


@settings(derandomize=True, max_examples=150, deadline=None)
@given(
    rules=st.lists(WEEKLY | DAILY, min_size=1, max_size=3).map(tuple),
    away=st.lists(st.tuples(STARTS, st.integers(0, 20)), max_size=3),
    moves=st.lists(st.tuples(STARTS, STARTS), max_size=3),
)
def test_whatever_was_changed_is_kept_as_text_and_comes_back(rules, away, moves):
    """Rules, days out and days added; a day is never both out and added."""
    recurrence = Recurrence(rules)
    for first, count in away:
        recurrence = recurrence.without(first, first + timedelta(days=count))
    for day, to in moves:
        found = recurrence.next_day(day)
        recurrence = recurrence if found is None else recurrence.moved(found[0], to)
    assert recurrence_of(text_of(recurrence)) == recurrence
