"""Every message has exactly one wording, short enough for a phone, with its numbers in it."""

from __future__ import annotations

import dataclasses
import typing
from datetime import date
from decimal import Decimal

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bot.wording import entries, worded
from bot.wording.phrases import WIDTH
from core import messages
from core.catalogue import all_exercises
from core.changed import Changed, ChangeKind
from core.circuit import Side
from core.health import (
    AgeBand,
    Check,
    Condition,
    Health,
    Injury,
    LightWhy,
    Move,
    NoteKind,
    Outcome,
    Symptom,
    outcome_value,
)
from core.rack import Kind, RackItem
from core.review_facts import Flag
from core.review_messages import NeedLine
from core.sheet import Sheet
from core.tempo import Tempo
from core.units import Load, Unit

CLASSES = typing.get_args(messages.Message)
LONGEST_NAME = max((exercise.name for exercise in all_exercises().values()), key=len)
NAMES = st.sampled_from([LONGEST_NAME, "Plank", "One-arm row"])
LOADS = st.builds(Load, st.sampled_from([Decimal(8), Decimal("22.5"), Decimal("112.5")]), st.sampled_from(list(Unit)))
TEMPOS = st.sampled_from([Tempo(3, 1, 1, 0), Tempo(2.5, 0, 1, 1)])

st.register_type_strategy(str, NAMES)
st.register_type_strategy(int, st.integers(1, 59))
st.register_type_strategy(Decimal, st.sampled_from([Decimal(2), Decimal("1.5")]))
st.register_type_strategy(Load, LOADS)
st.register_type_strategy(Tempo, TEMPOS)
LINES = st.lists(st.from_type(messages.SetLine), min_size=1, max_size=3).map(tuple)
SUMMARY_LINES = st.builds(messages.SummaryLine, NAMES, LINES, st.just(()) | LINES)
CLOCKED = st.one_of(
    st.builds(messages.Go, NAMES, st.none() | st.sampled_from(list(Side)), st.integers(1, 59), st.none()),
    st.builds(messages.Go, NAMES, st.none(), st.none(), st.integers(1, 59)),
)
st.register_type_strategy(messages.SummaryLine, SUMMARY_LINES)
st.register_type_strategy(messages.PairsAsked, st.builds(messages.PairsAsked, st.lists(LOADS, min_size=1, max_size=4).map(tuple)))
st.register_type_strategy(messages.Go, CLOCKED)
HEALTHS = st.builds(
    Health,
    age=st.none() | st.from_type(AgeBand),
    pregnant=st.none() | st.booleans(),
    conditions=st.none() | st.lists(st.from_type(Condition), unique=True).map(tuple),
    symptoms=st.none() | st.lists(st.from_type(Symptom), unique=True).map(tuple),
    injuries=st.sampled_from([None, (), (Injury("lower back"), Injury("hamstring", Side.RIGHT))]),
    active=st.none() | st.booleans(),
    checked=st.none() | st.booleans(),
    medicine=st.none() | st.booleans(),
)
OUTCOMES = st.builds(
    lambda outcome, health, agreed: outcome_value(outcome, health, answers=agreed), st.from_type(Outcome), HEALTHS, st.booleans()
)
NEWS = st.one_of(
    st.builds(messages.SafetyNews, NAMES, st.just(NoteKind.URGENT), st.sampled_from(["", "chest"])),
    st.builds(messages.SafetyNews, NAMES, st.just(NoteKind.OUTCOME), OUTCOMES),
    st.builds(messages.SafetyNews, NAMES, st.just(NoteKind.CLEARED), st.just("trainee"), st.none() | st.just(date(2026, 3, 2))),
)
st.register_type_strategy(messages.SafetyNews, NEWS)
PLACES = st.lists(st.sampled_from(["", "knee", "lower back", "shoulder"]), min_size=1, max_size=3, unique=True).map(tuple)
MUSCLES = st.lists(st.sampled_from(["glutes", "upper back", "hip abductors", "quads"]), min_size=1, max_size=4).map(tuple)
st.register_type_strategy(messages.SameMuscles, st.builds(messages.SameMuscles, st.integers(0, 47), MUSCLES))
WHYS = st.lists(st.from_type(LightWhy), min_size=1, max_size=3, unique=True).map(tuple)
st.register_type_strategy(
    messages.LighterDay, st.builds(messages.LighterDay, WHYS, st.integers(14, 99), st.none() | st.integers(1, 5))
)
for kind in (messages.PainGone, messages.PainStays, messages.NothingSpared):
    st.register_type_strategy(kind, st.builds(kind, PLACES))
MOVES = st.lists(st.from_type(Move), min_size=1, max_size=4, unique=True).map(tuple)
CHECKS = st.lists(st.from_type(Check), min_size=2, max_size=7, unique=True).map(tuple)
st.register_type_strategy(
    messages.WarmUp, st.builds(messages.WarmUp, st.sampled_from([0, 45, 300]), MOVES, CHECKS, st.just(()) | PLACES)
)
st.register_type_strategy(
    messages.CoachChanged,
    st.builds(messages.CoachChanged, NAMES, st.builds(Changed, st.from_type(ChangeKind), NAMES, NAMES, st.none() | st.dates())),
)
SHEETS = st.just(Sheet(date(2026, 3, 2), date(2026, 3, 8), date(2026, 3, 8), (), 10, 2))
st.register_type_strategy(Sheet, SHEETS)
FLAGS = st.lists(st.from_type(Flag), min_size=1, max_size=3).map(tuple)
st.register_type_strategy(NeedLine, st.builds(NeedLine, NAMES, FLAGS))
st.register_type_strategy(RackItem, st.builds(RackItem, st.sampled_from([Kind.DUMBBELL, Kind.PLATE]), LOADS, st.integers(1, 8)))


def test_every_message_has_a_wording_and_no_wording_is_left_over():
    """The book and the union of messages name the same classes."""
    assert entries() == frozenset(CLASSES)


@pytest.mark.parametrize("kind", CLASSES, ids=lambda kind: kind.__name__)
@settings(derandomize=True, max_examples=20, deadline=None)
@given(data=st.data())
def test_no_line_is_longer_than_a_phone_and_none_is_empty(kind, data):
    """At most 40 columns with the terminal's margin, the longest names included."""
    message = data.draw(st.from_type(kind))
    lines = worded(message).text.split("\n")
    assert all(0 < len(line) <= WIDTH for line in lines), lines


SAID = {
    messages.Noted: ("reps", "reserve"),
    messages.Card: ("round", "rounds", "station", "stations", "reps_low", "reps_high", "target_reps"),
    messages.Go: ("left_s", "reps"),
    messages.HalfWay: ("left_s",),
    messages.SecondsLeft: ("left_s",),
    messages.GetReady: ("left_s",),
    messages.WhereWeWere: ("round", "rounds", "station", "stations"),
    messages.TimeTold: ("minutes_all",),
    messages.TodayPlan: ("rounds", "minutes_low", "minutes_high"),
    messages.Reminder: ("rounds", "minutes_high"),
    messages.AlreadyNoted: ("reps",),
    messages.Corrected: ("reps",),
    messages.Undone: ("reps",),
    messages.WhichOne: ("reps",),
    messages.Summary: ("missing",),
}


@pytest.mark.parametrize("kind", SAID, ids=lambda kind: kind.__name__)
@settings(derandomize=True, max_examples=20, deadline=None)
@given(data=st.data())
def test_the_numbers_of_a_message_are_in_its_words(kind, data):
    """What a message carries to be read is read in it, and loads always are."""
    message = data.draw(st.from_type(kind))
    text = worded(message).text.replace("\n", " ")
    for value in _numbers(message, SAID[kind]):
        assert f"{value:g}" in text


def _numbers(value, names):
    """The numbers of the named fields, at any depth, and every load's amount."""
    if isinstance(value, Load):
        yield float(value.amount)
    elif isinstance(value, tuple):
        for part in value:
            yield from _numbers(part, names)
    elif dataclasses.is_dataclass(value) and not isinstance(value, Tempo):
        for field in dataclasses.fields(value):
            part = getattr(value, field.name)
            if field.name in names and part is not None:
                if not isinstance(value, messages.Card) or _on_card(value, field.name):
                    yield float(part)
            elif field.name not in _unsaid(value):
                yield from _numbers(part, names)


def _unsaid(value):
    """Fields that words may leave out: a reason's and a picture's numbers are theirs, weights are put down only for others."""
    if isinstance(value, messages.Slower | messages.Lighter):
        return {field.name for field in dataclasses.fields(value)}
    if isinstance(value, messages.Card) and value.load is None:
        return {"why", "put_down"}
    return {"why", "picture"}


def _on_card(card, name):
    """A hold shows no reps, counted reps show no range, and a range needs both its ends."""
    if card.hold and "reps" in name:
        return False
    if card.target_reps is not None:
        return name not in {"reps_low", "reps_high"}
    return name not in {"reps_low", "reps_high"} or (card.reps_low is not None and card.reps_high is not None)


def test_a_side_is_said_where_sides_were_reported():
    """Left and right are told apart in what is read back."""
    line = messages.SetLine(10, None, Side.LEFT)
    assert "left 10" in worded(messages.AlreadyNoted(line)).text
