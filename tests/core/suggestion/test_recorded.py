"""The same questions get the same answers as ever, however they are worked out."""

import json

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.strength.belief import _widths
from core.suggestion.chances import quantile
from core.suggestion.explain import Choice
from tests.core.suggestion.recorded import FILE, answered, questions

NUMBERS = st.lists(st.floats(-1e3, 1e3), min_size=1, max_size=100).map(np.array)


def test_answers_and_beliefs_are_those_that_were_recorded():
    """Loads, tempos, chances, and the numbers behind them to nine places."""
    recorded = [json.loads(line) for line in FILE.read_text(encoding="utf-8").splitlines()]
    for number, (ask, before) in enumerate(zip(questions(), recorded, strict=True), start=1):
        now = answered(ask)
        assert now["answer"] == before["answer"], f"question {number}"
        assert now["costs"] == pytest.approx(before["costs"], rel=0.0, abs=1e-9), f"question {number}"
        for name in ("mean", "spread", "chance"):
            assert now[name] == pytest.approx(before[name], rel=0.0, abs=1e-9), f"question {number}"


@given(values=NUMBERS, share=st.floats(0.0, 1.0))
def test_a_quantile_is_that_of_numpy(values, share):
    """Between neighbours on a straight line, digit for digit."""
    assert quantile(values, share) == float(np.quantile(values, share))


@given(values=NUMBERS)
def test_the_middle_is_numpys_median(values):
    """Of an even number of values, half-way between the two in the middle."""
    assert Choice(None, 4.0, values, 10).middle == float(np.median(values))


@given(values=st.lists(st.floats(-1e3, 1e3), min_size=2, max_size=100).map(np.array))
def test_widths_are_numpys_gradient(values):
    """Half-way to the neighbours, and to the only neighbour at the ends."""
    assert _widths(values).tolist() == np.gradient(values).tolist()
