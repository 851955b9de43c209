"""Three seeds of three weeks: no set lost or doubled, nothing after "stop", nothing at night, no reminder missing."""

from __future__ import annotations

import pytest

from tests.simulation.weeks.__main__ import lived

WEEKS = 3


@pytest.mark.parametrize("seed", [3, 5, 8])
def test_weeks_with_a_program_that_dies_and_a_messenger_that_fails(seed, tmp_path):
    """The auditor finds nothing; and enough happened for that to mean something."""
    weeks = lived(seed, WEEKS, tmp_path)
    assert not weeks.faults, "\n".join(
        [*weeks.faults, f"repeat it: python -m tests.simulation.weeks --seed {seed} --weeks {WEEKS}"]
    )
    assert weeks.kills >= 5
    assert weeks.sets >= 20
    assert weeks.unasked >= 12


def test_a_seed_lives_the_same_weeks_twice(tmp_path):
    """To the second, so that a failure can be repeated."""
    heard = []
    for name in ("first", "second"):
        (tmp_path / name).mkdir()
        heard.append(lived(5, 1, tmp_path / name).heard)
    assert heard[0] == heard[1]
    assert len(heard[0]) > 50
