"""The labelled replies of fixtures/, read."""

from __future__ import annotations

from tests.core.reading.reading import score


def test_development_replies_are_read_exactly():
    """Above the bar of the contract (97 % right in every act and field, at most 0.3 % wrong records): these replies were seen."""
    got = score("replies.jsonl")
    assert got.exact >= 0.99
    assert got.wrong_records <= 0.001
    assert got.missed_urgent == 0


def test_replies_kept_aside_do_not_get_worse():
    """Replies nobody looks at while writing rules: where they stood when last measured, so that no change loses ground unseen."""
    got = score("replies_aside.jsonl")
    assert got.exact >= 0.96
    assert got.wrong_records <= 0.004
