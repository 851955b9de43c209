"""The belief: against brute-force integration of the same model, and in what it learns."""

from datetime import date, timedelta
from decimal import Decimal

import numpy as np
import pytest
from scipy import stats

from core.strength import belief as model
from core.strength.curve import EXPONENT, REPS_AT_HALF, headroom
from core.strength.evidence import SAID_NOISE, SAID_NOISE_PER_REP, PastSet, gather
from core.strength.priors import TraineeFacts, person_log_factor, prior_for
from core.suggestion.chances import sampled

MONDAY = date(2026, 3, 2)
FACTS = TraineeFacts()


def learned(*sets, others=None, today=MONDAY, round_number=1):
    """Today's belief about a floor press after some sets."""
    evidence = gather("floor press", sets, others or {}, today=today, work_s=60.0, kg_per_unit=1.0)
    return model.learn(evidence, round_number=round_number, trainee=FACTS)


def done(reps, *, day=MONDAY, load=10, rep_s=4.0, round_number=1, **said):
    """One set."""
    return PastSet(day, round_number, Decimal(load), reps, rep_s, **said)


def brute_force(sets):
    """Mean and SD of log strength in this form today, by summing the same model over a grid of everything unknown.

    All sets are of today's first round at the usual tempo, so that strength and form act as one sum; what is left are c and
    the habit of saying too few. The noise is the model's, taken where the belief is most plausible.
    """
    evidence = gather("floor press", sets, {}, today=MONDAY, work_s=60.0, kg_per_unit=1.0)
    prior, person = prior_for("floor press"), person_log_factor(FACTS)
    centre, wide = np.log(prior.one_rep_max_kg) + person[0], np.hypot(np.hypot(prior.spread, person[1]), model.DAY_FORM)
    strength = np.linspace(centre - 1.6, centre + 2.4, 401)
    curve = np.linspace(-0.9, 0.9, 31)
    under = np.linspace(-1.6, 3.2, 25)
    grid = np.meshgrid(strength, curve, under, indexing="ij")
    density = (
        stats.norm.logpdf(grid[0], centre, wide)
        + stats.norm.logpdf(grid[1], 0.0, model.CURVE_SPREAD)
        + stats.norm.logpdf(grid[2], *model.UNDERCLAIM_REPS)
    )
    peak = model.learn(evidence, round_number=1, trainee=FACTS)
    for row in range(len(evidence.reps)):
        soft, _ = headroom(grid[0] - evidence.log_load[row])
        log_reps = np.log(REPS_AT_HALF) + grid[1] + EXPONENT * np.log(soft)
        there, _ = headroom(np.array([peak.mean[0] - evidence.log_load[row]]))
        likely = REPS_AT_HALF * np.exp(peak.mean[1]) * there[0] ** EXPONENT
        left = max(likely - 0.8 - evidence.done[row], 0.0)
        reps_noise = SAID_NOISE + SAID_NOISE_PER_REP * left if evidence.said[row] else evidence.noise[row]
        read = np.maximum(evidence.reps[row] + evidence.said[row] * grid[2], 0.3)
        near = evidence.reps[row] + evidence.said[row] * 0.8
        error = log_reps - np.log(read)
        if evidence.bound[row]:
            scale = np.hypot(model.SET_NOISE, 0.5 / near) / model.LOGISTIC
            density = density + stats.logistic.logcdf(error, scale=scale)
        else:
            density = density + stats.t.logpdf(error, model.TAIL, scale=np.hypot(model.SET_NOISE, reps_noise / near))
    chance = np.exp(density - density.max()).sum(axis=(1, 2))
    chance = chance / chance.sum()
    mean = float(chance @ strength)
    return mean, float(np.sqrt(chance @ (strength - mean) ** 2))


@pytest.mark.parametrize(
    "sets",
    [
        (done(11),),
        (done(15),),
        (done(15, reserve=3),),
        (done(15, load=8), done(15, load=12), done(9, load=16)),
        (done(15, load=12, reserve=2), done(15, load=12, reserve=1), done(13, load=14)),
        (done(15, load=10), done(15, load=12), done(15, load=14), done(15, load=16)),
    ],
    ids=["a failure", "a bound", "a reading", "bounds and a failure", "readings and a failure", "bounds only"],
)
def test_the_belief_is_the_integral_of_its_model(sets):
    """Mean within 0.3 and spread within a quarter of the brute-force integration's (scipy.stats, all unknowns on a grid)."""
    mean, deviation = brute_force(sets)
    found = sampled(learned(*sets))[0]
    assert found.mean() == pytest.approx(mean, abs=0.3 * deviation)
    assert found.std() == pytest.approx(deviation, rel=0.25)


def test_the_steps_settle():
    """Ten times as many steps change the most plausible strength by less than a fiftieth of its spread."""
    sets = [done(15, day=MONDAY - timedelta(days=2 * back), load=8 + 2 * (back % 4)) for back in range(14, -1, -1)]
    few = learned(*sets)
    steps, close = model.STEPS, model.CLOSE
    try:
        model.STEPS, model.CLOSE = 10 * steps, 1e-9
        many = learned(*sets)
    finally:
        model.STEPS, model.CLOSE = steps, close
    assert abs(few.mean[0] - many.mean[0]) < 0.02 * many.covariance[0, 0] ** 0.5


def test_a_bound_leaves_the_way_up_open():
    """After a filled minute, being much stronger stays likelier than being much weaker."""
    values = sampled(learned(done(15)))[0]
    low, middle, high = np.quantile(values, (0.05, 0.5, 0.95))
    assert high - middle > 1.3 * (middle - low)


def test_other_exercises_tell_of_the_body():
    """Failing early at three other stations today lowers the belief about this one."""
    others = {name: [done(15, day=MONDAY - timedelta(days=3), load=10, reserve=2)] for name in ("row", "lunge", "curl")}
    before = [done(15, day=MONDAY - timedelta(days=3), load=10, reserve=2)]
    usual = learned(*before, others=others)
    bad_day = learned(*before, others={name: (*sets, done(10, load=10)) for name, sets in others.items()})
    assert bad_day.mean[0] < usual.mean[0] - 0.02
    assert bad_day.form is not None
    assert bad_day.form < 0


def test_a_first_guess_follows_the_other_exercises():
    """Someone strong everywhere else is believed stronger at an exercise never done."""
    strong = learned(others={name: [done(15, load=30, reserve=1)] for name in ("row", "shoulder press")})
    weak = learned(others={name: [done(15, load=4, reserve=1)] for name in ("row", "shoulder press")})
    assert strong.mean[3] > weak.mean[3] + 0.5


def test_people_who_always_say_too_few_are_found_out():
    """One left at each lighter load, but filling the minute with heavier ones: the habit is learned, and strength with it."""
    modest = [done(15, day=MONDAY - timedelta(days=9 - step), load=10 + step, reserve=1) for step in range(8)]
    last = learned(*modest, done(15, load=20))
    assert np.exp(last.mean[3]) > 1.15 * np.exp(learned(*modest).mean[3])


def test_later_rounds_are_expected_to_be_weaker():
    """The belief for round three is below the one for round one."""
    assert learned(done(12), round_number=3).mean[0] < learned(done(12), round_number=1).mean[0]


def test_a_break_widens_the_belief_and_lowers_it():
    """Five weeks off: lower by 3 to 9 %, and less sure (entries 28-30: 0 to 9 % after five or six weeks)."""
    sets = [done(12, day=MONDAY - timedelta(days=35 + back)) for back in (9, 7, 4, 2, 0)]
    after = learned(*sets)
    fresh = learned(*sets, today=MONDAY - timedelta(days=34))
    assert 0.03 <= fresh.mean[3] - after.mean[3] <= 0.09
    assert after.covariance[3, 3] > fresh.covariance[3, 3]


def test_one_strange_record_moves_little():
    """Ten sets of about twelve and one typing error of 1: less than 5 % of strength."""
    sets = [done(12, day=MONDAY - timedelta(days=2 * back)) for back in range(10, 0, -1)]
    assert learned(*sets, done(1)).mean[3] == pytest.approx(learned(*sets).mean[3], abs=0.05)
