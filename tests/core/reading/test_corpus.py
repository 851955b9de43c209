"""The labelled replies of fixtures/, read."""

from __future__ import annotations

from tests.core.reading.reading import score


def test_development_replies_are_read_exactly():
    """At least 97 % of the development replies are read with every act and field right, at most 0.3 % give a wrong record, no
    urgent pain is missed (the bar of the reading contract)."""
    got = score("replies.jsonl")
    assert got.exact >= 0.97
    assert got.wrong_records <= 0.003
    assert got.missed_urgent == 0


def test_replies_kept_aside_do_not_get_worse():
    """Replies nobody looks at while writing rules: where they stood when last measured, so that no change loses ground unseen."""
    got = score("replies_aside.jsonl")
    assert got.exact >= 0.91
    assert got.wrong_records <= 0.01
