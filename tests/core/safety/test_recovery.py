"""Coming back, easier weeks, 48 hours. Sources beside each test; what has none says so."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta

import pytest

from bot.bootstrap import demo
from core.diary import History
from core.health import EasierWhy, Feeling, NoteKind, SafetyNote
from core.safety.day import extra_reserve, rounds_left
from core.safety.recovery import after_break, after_fever, easier_week, easier_week_due, recently_hard
from tests.core.safety.given import NOW, day, kg, noted, trained, workout


@pytest.mark.parametrize(
    ("days_away", "share", "reserve"),
    [(3, None, None), (13, None, None), (15, 0.8, 1), (27, 0.8, 1), (29, 0.5, 2), (120, 0.5, 2)],
)
def test_the_first_day_back_is_shorter_by_how_long_the_break_was(days_away, share, reserve):
    """Nothing under two weeks (entries 28, 32); then the guarded steps of entry 32, fewer of them under four weeks (caution)."""
    step = after_break(trained(days_away), NOW)
    assert (step.share, step.reserve) == (share, reserve) if share else step is None


@pytest.mark.parametrize(("days_back", "share"), [(0.5, 0.5), (8, 0.7), (15, 0.8), (22, 0.9), (29, None)])
def test_the_steps_after_a_month_go_up_week_by_week(days_back, share):
    """Volume down by 50, 30, 20, 10 % over four weeks (entry 32; the weekly split from memory); it caps rounds, not load."""
    recent = [ago for ago in range(int(days_back), 0, -3) if ago < days_back]
    step = after_break(trained(days_back + 60, days_back, *recent), NOW)
    assert (step.share if step else None) == share


def test_fever_is_built_up_from_workout_by_workout():
    """Build up after (entry 46, read); how much is our caution."""
    ill = SafetyNote(day(5), NoteKind.FEELING, Feeling.FEVER)
    assert after_fever(replace(trained(9), notes=(ill,))).share == 0.5
    assert after_fever(replace(trained(9, 2), notes=(ill,))).share == 0.7
    assert after_fever(replace(trained(9, 3, 1), notes=(ill,))) is None


def test_an_easier_week_comes_after_six_weeks_in_a_row_and_once():
    """About every six weeks (entry 34, from memory): due on the day six weeks after the first, then not again at once."""
    history = trained(*range(43, 0, -3))
    assert easier_week_due(history, NOW) is EasierWhy.PLAN
    begun = replace(history, notes=(SafetyNote(day(2), NoteKind.EASIER_WEEK, EasierWhy.PLAN),))
    assert easier_week(begun, NOW) is EasierWhy.PLAN
    assert easier_week_due(begun, NOW) is None
    assert easier_week(begun, NOW + timedelta(days=6)) is None


def test_no_easier_week_where_a_longer_gap_was_rest_enough():
    """Ten days without training end the row (common practice, no source)."""
    days = [ago for ago in range(60, 0, -3) if not 20 <= ago <= 32]
    assert easier_week_due(trained(*days), NOW) is None


def falling(loads, efforts):
    """Three workouts of two exercises at these loads and efforts."""
    history = trained(6, 4, 2, efforts=efforts)
    sets = [
        noted(2 * i + j + 1, i + 1, 6 - 2 * i, exercise=slug, load=kg(load))
        for i, load in enumerate(loads)
        for j, slug in enumerate(("goblet-squat", "one-arm-row"))
    ]
    return replace(history, sets=tuple(sets))


@pytest.mark.parametrize(
    ("loads", "efforts", "due"),
    [
        ((16, 14, 12), (6, 7, 8), EasierWhy.FALLING),
        ((16, 14, 12), (8, 7, 6), None),
        ((12, 14, 16), (6, 7, 8), None),
        ((16, 14, 12), (6, None, 8), None),
        ((16, 14, 14), (6, 7, 8), None),
    ],
)
def test_an_easier_week_when_strength_falls_while_effort_rises(loads, efforts, due):
    """Over three workouts, both; one alone, or an effort not said, is no reason (common practice, no source)."""
    assert easier_week_due(falling(loads, efforts), NOW) is due


def hard_yesterday(hours, effort=None, sets=4):
    """A workout that ended so many hours before NOW, with squats in it."""
    done = workout(1, (hours + 40 / 60) / 24, effort=effort)
    return History(workouts=(done,), sets=tuple(noted(number, 1, hours / 24) for number in range(1, sets + 1)))


def test_the_same_muscles_within_48_hours_are_said():
    """At least 48 hours for a muscle group (entry 26, from memory)."""
    circuit = demo().circuit
    assert recently_hard(circuit, hard_yesterday(47), NOW).hours == 47
    assert "quads" in recently_hard(circuit, hard_yesterday(20), NOW).muscles
    assert recently_hard(circuit, hard_yesterday(48), NOW) is None


def test_an_easy_day_before_is_not_spoken_of():
    """Effort below 5, or hardly a set: it was no hard day (common practice, no source)."""
    circuit = demo().circuit
    assert recently_hard(circuit, hard_yesterday(20, effort=4), NOW) is None
    assert recently_hard(circuit, hard_yesterday(20, effort=7), NOW) is not None
    assert recently_hard(circuit, hard_yesterday(20, sets=3), NOW) is None


def test_no_reason_leaves_everything_and_a_circuit_keeps_a_round():
    """No reason: no reps more in reserve and all rounds; however short the day, one round is left."""
    assert extra_reserve(()) == 0
    assert rounds_left(3, ()) == 3
    assert rounds_left(1, [after_break(trained(90), NOW)]) == 1
