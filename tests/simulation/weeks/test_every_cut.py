"""A whole day, and the days after it, cut before and after every commit: what was said and kept is what it would have been.

The messenger hands in again what was not heard to be kept, as networks do.
"""

from __future__ import annotations

import logging
import shutil
import sqlite3
from collections import Counter
from contextlib import closing
from datetime import UTC, datetime

import pytest

from bot.bootstrap import rendered
from bot.clock import SimulatedClock
from bot.store.store import Store
from core.trainee import Trainee
from tests.simulation.weeks.program import SHORT, Life

START = datetime(2026, 3, 1, 20, 0, tzinfo=UTC)  # a Sunday
EVENING_BEFORE = (
    ("03-01 20:00:00", "yes"),
    ("03-01 20:00:01", "yes"),
    ("03-01 20:00:02", "kg"),
    ("03-01 20:00:03", "a pair of 8s, 12s and a 16"),
    ("03-01 20:00:04", "remind me mon wed fri 6:30am"),
)
STORY = (
    ("03-02 06:31:00", "later 30 min"),
    ("03-02 07:05:00", "go"),
    ("03-02 07:05:30", "go"),
    ("03-02 07:06:15", "11 at 8kg"),
    ("03-02 07:07:16", "10"),
    ("03-02 07:08:30", "9 at 8kg"),
    ("03-02 07:09:20", "8"),
    ("03-02 07:09:40", "sorry 7 not 8"),
    ("03-02 19:00:00", "what do I do today?"),
    ("03-04 06:30:00", "move friday to saturday"),
    ("03-05 12:00:00", "when do you remind me?"),
)  # Wednesday's reminder is due at the very instant of a text; Thursday has a follow-up
COUNTDOWNS = {"HalfWay", "SecondsLeft", "GetReady"}  # of these rather none than two


class Phone:
    """A phone that keeps what arrives."""

    def __init__(self) -> None:
        self.heard: list[tuple[str, str]] = []

    async def send(self, _trainee, letter) -> None:
        """Take a message."""
        self.heard.append((letter.rendered.kind, letter.rendered.text))


@pytest.fixture(scope="module")
def fresh(tmp_path_factory):
    """A function that gives a new database with one trainee, who said on the evening before when to be reminded."""
    template = tmp_path_factory.mktemp("template") / "template.sqlite3"
    made = []

    async def make(file):
        if not made:
            store = await Store.open(f"sqlite:///{template}", rendered)
            await store.add_trainee(Trainee("Robin", zone="UTC"), await store.save_circuit(SHORT))
            await store.close()
            await lived(template, story=EVENING_BEFORE)
            made.append(template)
        return shutil.copy(template, file)

    return make


async def lived(file, cut=None, *, story=STORY):
    """Live a story over a database file, killed at most once; returns what was heard, what was kept, and the commits."""
    clock, phone = SimulatedClock(START), Phone()
    life = Life(file, clock, phone)
    if cut is not None:
        life.kill_at(*cut)
    commits = 0
    await life.begin()
    for number, (at, text) in enumerate(story):
        instant = datetime.fromisoformat(f"2026-{at}").replace(tzinfo=UTC)
        while True:
            if life.dead:
                commits += life.commits
                await life.end()
                life = Life(file, clock, phone)
                await life.begin()
            await life.advance_to(instant)
            if not life.dead and await life.said(1, text, f"{at} {number}"):
                break
    commits += life.commits
    await life.end()
    return phone.heard, kept_in(file), commits


def kept_in(file):
    """The standing sets, what fell due, and the messages handled, as SQLite has them."""
    with closing(sqlite3.connect(file)) as connection:
        sets = connection.execute(
            "SELECT round, station, exercise, reps, amount, replaces FROM set_record"
            " WHERE number NOT IN (SELECT number FROM set_void)"
            " AND number NOT IN (SELECT replaces FROM set_record WHERE replaces IS NOT NULL) ORDER BY number"
        ).fetchall()
        due = connection.execute("SELECT kind, day, due_at, dropped FROM unasked ORDER BY id").fetchall()
        inbox = connection.execute("SELECT external_id FROM inbox ORDER BY external_id").fetchall()
        workouts = connection.execute("SELECT number, ending FROM workout").fetchall()
        waiting = connection.execute("SELECT count(*) FROM outbox WHERE status IN ('waiting', 'sending')").fetchall()
    return {"sets": sets, "due": due, "inbox": inbox, "workouts": workouts, "waiting": waiting}


async def test_a_day_cut_at_every_commit_is_kept_as_if_it_had_not_been_cut(fresh, tmp_path):
    """Before and after each commit: the same sets and days, each text handled once; every message heard, at most one twice."""
    logging.disable(logging.CRITICAL)  # a program that is being killed complains
    try:
        heard, kept, commits = await lived(await fresh(tmp_path / "whole"))
        assert [kind for kind, _ in heard].count("Reminder") == 3
        assert [kind for kind, _ in heard].count("FollowUp") == 1
        assert [row[3] for row in kept["sets"]] == [11, 10, 9, 7]
        for commit in range(1, commits + 1):
            for when in ("before", "after"):
                file = await fresh(tmp_path / f"{when}-{commit}")
                heard_too, kept_too, _ = await lived(file, (when, commit))
                where = f"cut {when} commit {commit}"
                assert kept_too == kept, where
                missing, more = Counter(heard) - Counter(heard_too), Counter(heard_too) - Counter(heard)
                assert {kind for kind, _ in missing} <= COUNTDOWNS, where
                assert more.total() <= 1, where
    finally:
        logging.disable(logging.NOTSET)
