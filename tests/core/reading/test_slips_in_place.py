"""A mistyped word is read by the place it stands in; what may change a set is never dropped in silence."""

from __future__ import annotations

import pytest

from tests.core.reading.reading import acts

AWAITED = {"awaiting": "reps", "unit": "kg", "load": 20, "sides": True}
FULL = {"act": "log", "reps": 12, "load": 20, "unit": "kg"}
ASKED = [{"act": "unclear"}]


@pytest.mark.parametrize(
    ("text", "field"),
    [
        ("12 at 20kg eack side", {"side": "each"}),
        ("12 at 20kg bith sides", {"side": "each"}),
        ("12 pet leg with 20kg", {"side": "each"}),
        ("12 per keg with 20kg", {"side": "each"}),
        ("12 at 20kg mothing left", {"reserve": 0}),
        ("12 at 20kg nothing oeft", {"reserve": 0}),
        ("12 at 20kg, gwo left", {"reserve": 2}),
        ("12 at 20kg, tree in reserve", {"reserve": 3}),
        ("12 at 20kg, on more in me", {"reserve": 1}),
        ("12 at 20kg rpee 9", {"rpe": 9}),
        ("12 at 20kg effort hine", {"rpe": 9}),
        ("twlve reps with thr 20 kg", {}),
    ],
)
def test_the_place_of_a_slip_tells_the_word(text, field):
    """A side, a reserve and an effort are read though they are mistyped."""
    assert acts(text, **AWAITED) == [FULL | field]


def test_two_sets_joined_by_a_slip_are_two():
    """Between a load and the next count stands "then"."""
    assert acts("12 at 20kg rhen 9 at 20kg", **AWAITED | {"sides": False}) == [FULL, FULL | {"reps": 9}]


@pytest.mark.parametrize(
    "text", ["12 at 20kg xqch side", "left 12 right xight at 20kg", "12 at 20kg effort zzq", "12 at 20kg nithinh lfft"]
)
def test_what_may_change_a_set_is_asked_about(text):
    """Where no word is near enough, or one is near that nothing has used, nothing is recorded."""
    assert acts(text, **AWAITED) == ASKED


@pytest.mark.parametrize("text", ["12 at 20kg, dog on my side", "12 at 20kg then tea", "12 at 20kg, zonked"])
def test_other_words_are_left_alone(text):
    """A word that is none of these changes nothing."""
    assert acts(text, **AWAITED) == [FULL]
