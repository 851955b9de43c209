"""Where a conversation can be, and where each thing said leads."""

from __future__ import annotations

import typing

from core.session.states import State
from tests.house.state_table import PAGE, examples, written


def test_the_table_of_states_is_what_the_steps_do():
    """The table in DEVELOPERS.md is made from the code: `python -m tests.house.state_table` writes it anew."""
    page = PAGE.read_text(encoding="utf-8")
    assert page == written(page)


def test_every_state_is_reached_in_the_table():
    """Each state is one that a trainee can be in."""
    reached = {type(walk.state) for walk in examples().values()}
    assert reached == set(typing.get_args(State))
