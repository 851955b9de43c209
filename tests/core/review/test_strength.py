"""Strength up or down: the interval holds the truth as often as it says, and says nothing where nothing is known."""

from __future__ import annotations

import math
from dataclasses import replace
from datetime import date, timedelta
from decimal import Decimal

import numpy as np
import pytest
from scipy.stats import linregress

from core.strength.pace import LEAST_DAYS, pace
from core.suggestion import PastSet, TraineeFacts

TODAY = date(2026, 3, 29)
MAXIMA = {"goblet-squat": 36.0, "one-arm-row": 26.0, "floor-press": 22.0, "hammer-curl": 14.0}
WORK_S, REP_S = 60.0, 4.0
MONTHLY = {"falling": -0.06, "the same": 0.0, "rising": 0.05}
LIFTERS = 30


def lifter(seed, monthly, *, weeks=6, said=0.5):
    """Sets of a lifter whose strength changes evenly; loads follow the reps as a coach has them, reserve is told now and then."""
    dice = np.random.default_rng(seed)
    first, past = TODAY - timedelta(days=7 * weeks - 1), {slug: [] for slug in MAXIMA}
    loads = {slug: round(0.66 * most) for slug, most in MAXIMA.items()}
    for days in range(7 * weeks):
        day = first + timedelta(days=days)
        if day.weekday() not in {0, 2, 4}:
            continue
        form = dice.normal(0, 0.04)
        for slug, most in MAXIMA.items():
            shown = []
            for turn in (1, 2, 3):
                ratio = most * math.exp(monthly * days / 28 + form - 0.025 * (turn - 1) + dice.normal(0, 0.03)) / loads[slug]
                possible = int(31.5 * max(0.01, ratio - 1) ** 0.94)
                reps = min(possible, int(WORK_S / REP_S))
                left = float(round(0.8 * (possible - reps))) if dice.random() < said else None
                past[slug].append(PastSet(day, turn, Decimal(loads[slug]), reps, REP_S, left, work_s=WORK_S))
                shown.append(possible)
            loads[slug] += (min(shown) > 15) - (min(shown) < 11)
    return past


def found(past, today=TODAY):
    """What is said of it."""
    return pace(past, today, WORK_S, TraineeFacts())


@pytest.mark.parametrize("way", MONTHLY)
def test_the_interval_holds_the_true_change_about_eight_times_of_ten(way):
    """Thirty lifters each; with that many, 80 % shows as 19 to 30 of them 19 times of 20 (binomial distribution)."""
    true = 100 * math.expm1(MONTHLY[way])
    told = [found(lifter(seed, MONTHLY[way])) for seed in range(LIFTERS)]
    assert sum(one.low <= true <= one.high for one in told) >= 19
    assert abs(np.mean([one.best for one in told]) - true) < 1.5


@pytest.mark.parametrize("way", MONTHLY)
def test_a_clear_change_is_rarely_the_wrong_way(way):
    """What is told as clear is what happened; where nothing happens, eight of ten are not clear or nearly so."""
    told = [found(lifter(seed, MONTHLY[way])) for seed in range(LIFTERS)]
    up, down = sum(one.low > 0 for one in told), sum(one.high < 0 for one in told)
    wrong = {"falling": up, "rising": down, "the same": up + down}[way]
    assert wrong <= (0.3 if way == "the same" else 0.04) * LIFTERS
    if way != "the same":
        assert max(up, down) >= LIFTERS / 2


def test_it_agrees_with_a_straight_line_where_every_set_is_to_failure():
    """Against ordinary least squares (SciPy) on log maxima by the common equation load x (1 + reps / 30), named after Epley."""
    dice = np.random.default_rng(1)
    sets = [
        PastSet(
            TODAY - timedelta(days=days),
            1,
            Decimal(20),
            round(13 - days / 10 + dice.normal(0, 0.6)),
            REP_S,
            0.0,
            seconds=40,
            work_s=90,
        )
        for days in range(40, -1, -2)
    ]
    days = [(one.date - TODAY).days for one in sets]
    line = linregress(days, [math.log(float(one.load) * (1 + one.reps / 30)) for one in sets])
    assert found({"goblet-squat": sets}).best == pytest.approx(100 * math.expm1(28 * line.slope), abs=1.5)


def test_bounds_alone_lean_to_neither_side():
    """Whoever fills every minute with the same load and says nothing of reserve may have grown or not: it is not clear."""
    sets = [PastSet(TODAY - timedelta(days=days), 1, Decimal(10), 15, REP_S, work_s=WORK_S) for days in range(40, -1, -2)]
    told = found({"goblet-squat": sets, "floor-press": sets})
    assert told.low < -5
    assert told.high > 5
    assert abs(told.best) < 1


def test_a_lighter_week_is_no_loss():
    """Nine tenths of the loads, every minute filled: strength is not said to fall."""
    past = lifter(3, 0.0)
    lighter = {
        slug: [
            replace(one, load=one.load * Decimal("0.8"), reps=15, reserve=None) if (TODAY - one.date).days < 7 else one
            for one in sets
        ]
        for slug, sets in past.items()
    }
    assert found(lighter).high > 0


def test_the_seconds_of_each_station_count():
    """Half the reps in half the time is the same strength."""
    past = lifter(5, 0.0)
    shorter = {
        slug: [
            replace(one, reps=min(one.reps, 7), reserve=None, work_s=30.0) if (TODAY - one.date).days < 14 else one for one in sets
        ]
        for slug, sets in past.items()
    }
    assert found(shorter).high > 0


def test_nothing_is_said_of_too_little():
    """Too few days, days too close together, or exercises done once each."""
    past = lifter(2, 0.0)
    days = sorted({one.date for sets in past.values() for one in sets})
    few = {slug: [one for one in sets if one.date in days[: LEAST_DAYS - 1]] for slug, sets in past.items()}
    close = {slug: [replace(one, date=TODAY - (one.date - days[0]) / 6) for one in sets[:20]] for slug, sets in past.items()}
    once = {slug: [one for one in sets if one.date == day] for (slug, sets), day in zip(past.items(), days, strict=False)}
    assert (found(few, days[LEAST_DAYS]), found(close), found(once), found({})) == (None, None, None, None)
    assert found(past, TODAY + timedelta(days=42)) is None
