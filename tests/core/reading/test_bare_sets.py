"""Figures and what joins them are read on a shorter way, which must end where the long one ends."""

import random
from itertools import product

import pytest

from core.reading import reader
from tests.core.reading.reading import acts

WORDS = ("11", "20", "2", "8", "12.5", "9½", "kg", "lb", "kilos", "at", "@", "x", "with", "rep", "reps")
CONTEXTS = (
    {"awaiting": "reps"},
    {"awaiting": "reps", "load": 20, "unit": "kg"},
    {"awaiting": "reps", "load": 8, "sides": True},
    {"awaiting": "reps", "target": 11, "last": {"reps": 11, "load": 20}},
)


@pytest.mark.parametrize("known", CONTEXTS)
def test_the_shorter_way_ends_where_the_long_one_ends(monkeypatch, known):
    """Every two of the words after a figure, and many longer texts."""
    rnd = random.Random(20260302)  # noqa: S311 - repeatable, no secret
    texts = [" ".join(("11", *words)) for words in product(WORDS, repeat=2)]
    texts += [" ".join(rnd.choices(WORDS, k=rnd.randint(4, 7))) for _ in range(200)]
    briefly = [acts(text, **known) for text in texts]
    monkeypatch.setattr(reader, "_LONGEST_BARE_SET", 0)
    assert briefly == [acts(text, **known) for text in texts]
