"""The next load and tempo: what a coach would say, and why."""

from dataclasses import replace
from decimal import Decimal

import pytest

from core import reasons
from core.suggestion import load_costs, suggest
from core.units import Unit
from tests.core.suggestion.given import BELLS, FINE, ask, past


def test_two_sessions_well_above_the_target_go_up():
    """15 and 6 left, twice: the next load, and the reason says so with its numbers."""
    sets = [past(15, 16, days_ago=days, reserve=6) for days in (5, 2)]
    answer = suggest(ask(*sets, loads=(12, 16, 18, 20)))
    assert (answer.load, answer.change) == (18, "up")
    assert isinstance(answer.why, reasons.StepUp)
    assert (answer.why.last.reps, answer.why.last.left, answer.why.last.times) == (15, 6, 2)


def test_a_bell_that_would_fail_waits_however_often_the_target_was_passed():
    """15 and 4 left with 16 means about ten with 20 (1/f - 1 on any named curve): the rule allows it, the belief does not."""
    sets = [past(15, 16, days_ago=days, reserve=4) for days in (7, 5, 2)]
    assert suggest(ask(*sets)).load == 16


def test_short_of_the_minute_goes_down():
    """9 of 15 with the last load: lighter, because failing early is worse than finishing easily."""
    answer = suggest(ask(past(9, 20, days_ago=0), round_number=2))
    assert (answer.load, answer.change) == (16, "down")
    assert isinstance(answer.why, reasons.StepDown)


def test_on_target_stays():
    """15 and 2 left: the same again."""
    answer = suggest(ask(*[past(15, 16, days_ago=days, reserve=2) for days in (6, 4, 2)]))
    assert (answer.load, answer.change, answer.lever) == (16, "same", None)
    assert answer.why.next_load == 20


def test_where_the_next_bell_is_too_far_slower_reps_are_the_step():
    """16 leaves 8, and fifteen with 20 would fail: with a slower tempo, and so fewer reps, 20 is right."""
    sets = [past(15, 16, days_ago=days, reserve=8) for days in (6, 4, 2)]
    fixed = suggest(ask(*sets))
    free = suggest(ask(*sets, allowed=(4.0, 6.0)))
    assert (fixed.load, fixed.rep_s, fixed.lever) == (16, 4.0, None)
    assert (free.load, free.lever) == (20, "tempo")
    assert free.rep_s > 4.0
    assert free.finish_chance > suggest(ask(*sets, loads=(20,))).finish_chance
    assert isinstance(free.why, reasons.OtherTempo)


def test_the_tempo_stays_within_the_coachs_range():
    """Never quicker than the fastest or slower than the slowest the coach allows, in half seconds."""
    for reserve in (0, 2, 4, 8):
        answer = suggest(ask(past(15, 16, reserve=reserve), allowed=(3.0, 5.0)))
        assert answer.rep_s in (3.0, 3.5, 4.0, 4.5, 5.0)


def test_the_first_set_starts_where_failing_is_unlikely():
    """Nothing known: a load that most people finish, at the coach's own tempo."""
    answer = suggest(ask(loads=FINE, allowed=(3.0, 6.0)))
    assert (answer.change, answer.rep_s) == ("first", 4.0)
    assert answer.finish_chance >= 0.8
    assert answer.why == reasons.StartLight(answer.load, Unit.KG, known=True)


def test_an_exercise_nobody_knows_starts_light_and_says_so():
    """The name says nothing to us: lighter than a known squat, and the reason admits it."""
    answer = suggest(ask(loads=FINE, exercise="zercher wobble"))
    assert answer.why == reasons.StartLight(answer.load, Unit.KG, known=False)
    assert answer.load < suggest(ask(loads=FINE)).load


def test_a_first_guess_from_other_exercises():
    """Someone who presses 20s for fifteen starts a squat heavier than a stranger does."""
    others = {"floor press": (past(15, 20, reserve=2), past(15, 20, round_number=2, reserve=1))}
    answer = suggest(ask(loads=FINE, others=others))
    assert answer.load > suggest(ask(loads=FINE)).load
    assert answer.why == reasons.StartFromOthers(answer.load, Unit.KG, 1)


def test_a_clearly_easy_round_steps_up_in_the_same_workout():
    """Eight left in round one: round two is heavier at once."""
    answer = suggest(ask(past(15, 12, days_ago=0, reserve=8), round_number=2, loads=FINE))
    assert (answer.load, answer.change) == (14, "up")


def test_a_bad_day_seen_at_other_stations_lowers_this_one():
    """The last set was right; everything else today fell short: lighter, and the reason names the day."""
    usual = [past(15, 20, days_ago=days, reserve=1.5) for days in (7, 5, 2)]
    names = ("row", "floor press", "lunge", "curl")
    good = {name: tuple(past(15, 10, days_ago=days, reserve=1.5) for days in (7, 5, 2)) for name in names}
    bad = {name: (*sets, past(9, 10, days_ago=0)) for name, sets in good.items()}
    answer = suggest(ask(*usual, loads=FINE, others=bad))
    assert answer.load < suggest(ask(*usual, loads=FINE, others=good)).load
    assert isinstance(answer.why, reasons.TodaysForm)
    assert answer.why.percent < 0


def test_a_year_off_comes_back_lighter():
    """A gap of a year is answered with a lighter load, and the days are named."""
    answer = suggest(ask(*[past(15, 20, days_ago=365 + back, reserve=2) for back in (7, 4, 0)]))
    assert answer.change == "down"
    assert answer.why == reasons.AfterBreak(answer.load, Unit.KG, 365)


def test_the_rack_ends_too_early():
    """The heaviest bell leaves far too much: a harder variant is the lever."""
    answer = suggest(ask(*[past(15, 24, days_ago=days, reserve=12) for days in (4, 2)]))
    assert (answer.load, answer.lever) == (24, "variant")
    assert isinstance(answer.why, reasons.HeaviestIsLight)


def test_the_rack_starts_too_late():
    """The lightest bell fails at six of fifteen: an easier variant, and what to expect."""
    answer = suggest(ask(past(6, 8), past(6, 8, round_number=2), exercise="lateral raise"))
    assert (answer.load, answer.lever) == (8, "variant")
    assert isinstance(answer.why, reasons.LightestIsHeavy)


def test_tired_in_a_later_round_with_nothing_lighter_asks_for_rest():
    """The lightest bell went well in round one and fails in round two: more rest is the lever."""
    sets = (past(15, 8, days_ago=0, reserve=0), past(10, 8, days_ago=0, round_number=2))
    answer = suggest(ask(*sets, exercise="shoulder press", round_number=3))
    assert (answer.load, answer.lever) == (8, "rest")


def test_one_lonely_heavy_dumbbell():
    """A single 40 kg dumbbell: nothing to hold for a lateral raise, a warning for a squat; never an exception."""
    raised = suggest(ask(loads=(40,), exercise="lateral raise"))
    assert (raised.load, raised.lever) == (None, "variant")
    squatted = suggest(ask(loads=(40,)))
    assert squatted.lever == "variant"
    assert isinstance(squatted.why, reasons.LightestIsHeavy)


def test_an_empty_rack():
    """No load at all: no number, the variant without."""
    answer = suggest(ask(loads=()))
    assert (answer.load, answer.lever, answer.why) == (None, "variant", reasons.NothingToHold())


def test_the_bodys_own_weight():
    """A rack with only 0 is the body's own weight; easy twice running asks for a harder variant."""
    assert suggest(ask(past(12, 0, reserve=2), loads=(0,))).lever is None
    answer = suggest(ask(past(12, 0, reserve=5), past(12, 0, reserve=4), loads=(0,)))
    assert (answer.load, answer.lever, answer.why) == (0, "variant", reasons.BodyOnly(12, 4))


def test_a_load_that_is_not_in_the_rack_still_counts():
    """The records are of a 14 that is gone: the answer is from the rack, near it."""
    answer = suggest(ask(*[past(15, 14, days_ago=days, reserve=2) for days in (6, 4, 2)]))
    assert answer.load in (12, 16)


def test_pounds_and_kilograms_are_the_same_strength():
    """The same body asked in pounds gets the same one-rep max, in pounds (1 lb = 0.45359237 kg, NIST SP 811)."""
    kilograms = suggest(ask(past(11, 20), loads=(20,)))
    pounds = suggest(ask(past(11, Decimal(20) / Decimal("0.45359237")), loads=(44,), unit=Unit.LB))
    ratio = pounds.one_rep_max.best / kilograms.one_rep_max.best
    assert float(ratio) == pytest.approx(2.2046, rel=0.005)


def test_contradictory_reports_get_an_answer_between():
    """Two left at 20 and failing at eight with 20 on the same day: an answer, and a belief between the two."""
    answer = suggest(ask(past(15, 20, reserve=2), past(8, 20, round_number=2)))
    strong = suggest(ask(past(15, 20, reserve=2), past(15, 20, round_number=2, reserve=2)))
    weak = suggest(ask(past(8, 20), past(8, 20, round_number=2)))
    assert weak.one_rep_max.best < answer.one_rep_max.best < strong.one_rep_max.best


def test_zero_reps_is_a_set():
    """Not one repetition with 24: lighter next time."""
    assert suggest(ask(past(0, 24))).load < 24


def test_the_reps_to_expect_end_at_the_clock():
    """At 4 s a rep the minute holds fifteen; the expected range ends there."""
    answer = suggest(ask(past(15, 16, reserve=2)))
    assert answer.reps[1] == 15
    assert 0 <= answer.reps[0] <= 15


def test_the_one_rep_max_has_its_spread_and_tightens_with_evidence():
    """Low below best below high; ten sets know more than one."""
    one = suggest(ask(past(11, 20))).one_rep_max
    ten = suggest(ask(*[past(11, 20, days_ago=days) for days in range(20, 0, -2)])).one_rep_max
    assert one.low < one.best < one.high
    assert ten.high / ten.low < one.high / one.low


def test_costs_name_what_the_guards_allow():
    """For planning plates: each allowed load has its cost, and the suggested one is cheapest."""
    question = ask(*[past(15, 16, days_ago=days, reserve=2) for days in (6, 4, 2)])
    costs = load_costs(question)
    assert set(costs) <= {Decimal(load) for load in BELLS}
    assert min(costs, key=costs.get) == suggest(question).load
    assert load_costs(replace(question, loads=())) == {}
