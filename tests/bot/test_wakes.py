"""Who is due next, against the plainest way to find out."""

from datetime import timedelta

from hypothesis import given, settings
from hypothesis import strategies as st

from bot.wakes import Wakes
from tests.bot.given import T0, after

PLANS = st.lists(st.tuples(st.integers(1, 6), st.none() | st.integers(0, 50)), max_size=60)


@settings(derandomize=True, max_examples=200, deadline=None)
@given(start=st.dictionaries(st.integers(1, 6), st.integers(0, 50)), plans=PLANS, now=st.integers(0, 50))
def test_a_heap_and_a_search_find_the_same(start, plans, now):
    """After any changes of plan: the earliest instant, and who is due, in the order of time and then of ids, each once."""
    plain = {trainee: after(seconds) for trainee, seconds in start.items()}
    wakes = Wakes(plain)
    for trainee, seconds in plans:
        at = None if seconds is None else after(seconds)
        wakes.plan(trainee, at)
        plain.pop(trainee, None)
        if at is not None:
            plain[trainee] = at
        assert wakes.next_at() == min(plain.values(), default=None)
        assert wakes.planned(trainee) == at
    due = [trainee for at, trainee in sorted((at, trainee) for trainee, at in plain.items()) if at <= after(now)]
    assert wakes.due(after(now)) == due
    assert wakes.due(after(now)) == due  # they stay due until they are planned anew
    assert wakes.next_at() == min(plain.values(), default=None)


def test_old_plans_do_not_pile_up():
    """A workout plans a new instant every few seconds: the heap stays as long as twice those who are planned."""
    wakes = Wakes({trainee: T0 + timedelta(days=1) for trainee in range(100)})
    for seconds in range(10_000):
        wakes.plan(7, after(seconds))
    assert len(wakes._heap) <= 2 * 100 + 17  # noqa: SLF001 - how long it is, is the rule
