"""A message four times as long takes four times as much work, not sixteen times: nobody can hold the reader up with a long text."""

import pytest

from core.reading import read
from core.reading.normal import LONGEST
from tests.counting import calls

SHORTER = LONGEST // 4
PIECES = (
    "9 ",
    "1,",
    "a ",
    "to ",
    "20kg x ",
    "2 left ",
    "the 16s ",
    "set to 5 ",
    "for left right ",
    "10 left 9 right, ",
    "half six ",
    "remind me mon at 7 ",
    "my chest hurts ",
    "is it 5? ",
)


@pytest.mark.parametrize("piece", PIECES)
def test_work_grows_with_the_length_of_a_message_and_no_faster(piece):
    """What is looked up once and remembered from then on is no part of it."""
    longest = (piece * LONGEST)[:LONGEST]
    assert calls(lambda: read(longest)) <= 4.5 * calls(lambda: read(longest[:SHORTER]))
