"""Rows that only carried messages go after a while; everything else stays."""

import logging
from datetime import timedelta

import pytest

from bot.alarms import Alarms
from bot.assistant import Assistant, started
from bot.outbox import Outbox
from bot.simulation import Simulation
from bot.store.outgoing import Status
from bot.store.pruning import AT_MOST, HEARD_DAYS, SENT_DAYS
from bot.store.store import InboxKey
from bot.tidying import EVERY, Tidying
from tests.bot.given import T0, always, everything, noted, opened, rows, say, tamper

DAY = timedelta(days=1)


class Everybody:
    """A channel that takes every message."""

    async def send(self, _trainee, _letter):
        """It is out."""


async def heard(store, ana, name, at):
    """A message that was handled at an instant, and answered."""
    await store.handle(ana, InboxKey("terminal", name), always(messages=say(name)), at)


async def test_what_was_heard_goes_after_thirty_days(store, ana, file):
    """To the second; one that comes again later than that would count anew, but no network brings it then."""
    old, young = T0 - HEARD_DAYS * DAY - timedelta(seconds=1), T0 - HEARD_DAYS * DAY
    await heard(store, ana, "old", old)
    await heard(store, ana, "young", young)
    assert await store.pruning.prune(T0) == 1
    assert [row["external_id"] for row in rows(file, "inbox")] == ["young"]
    assert await store.heard_at(InboxKey("terminal", "young")) == young
    assert await store.heard_at(InboxKey("terminal", "old")) is None


@pytest.mark.parametrize("status", Status)
async def test_what_was_sent_or_dropped_goes_after_ninety_days_and_what_waits_never(store, ana, file, status):
    """A quick reply under a younger message can still be pressed."""
    await store.handle(ana, None, always(messages=say("old")), T0 - (SENT_DAYS + 1) * DAY)
    await store.handle(ana, None, always(messages=say("young")), T0 - (SENT_DAYS - 1) * DAY)
    tamper(file, f"UPDATE outbox SET status = '{status.value}'")  # noqa: S608
    await store.pruning.prune(T0)
    left = ["young"] if status in (Status.SENT, Status.DROPPED) else ["old", "young"]
    assert [row["text"] for row in rows(file, "outbox")] == left
    assert await store.outgoing.offer(2) is not None


async def test_a_number_that_was_on_a_button_is_never_given_out_again(store, ana, file):
    """When everything is old the newest row stays, so that an old button cannot be taken for a new one."""
    await store.handle(ana, None, always(messages=say("one", "two")), T0 - (SENT_DAYS + 1) * DAY)
    tamper(file, "UPDATE outbox SET status = 'sent'")
    await store.pruning.prune(T0)
    await store.handle(ana, None, always(messages=say("three")), T0)
    assert [(row["id"], row["text"]) for row in rows(file, "outbox")] == [(2, "two"), (3, "three")]


async def test_many_rows_go_in_parts(store, ana, file):
    """More than fit into one transaction."""
    old = (T0 - 2 * SENT_DAYS * DAY).strftime("%Y-%m-%d %H:%M:%S.%f")
    many = f"WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < {AT_MOST * 2 + 1})"  # noqa: S608
    tamper(file, f"INSERT INTO inbox {many} SELECT 'terminal', i, {ana}, '{old}' FROM n")  # noqa: S608
    assert await store.pruning.prune(T0) == AT_MOST * 2 + 1
    assert rows(file, "inbox") == []


async def test_the_diary_is_not_touched(store, ana, file):
    """Sets, workouts and the trainee are as they were, however old."""
    await store.handle(ana, None, always(opened(), noted(1)), T0)
    before = everything(file)
    await store.pruning.prune(T0 + 10_000 * DAY)
    assert everything(file) == before


async def test_the_program_tidies_at_its_start_and_once_a_day(store, ana, clock, file, caplog):
    """What has grown old by then is gone each time, and the log says how much."""
    caplog.set_level(logging.INFO)
    await heard(store, ana, "old", T0 - (HEARD_DAYS + 1) * DAY)
    await heard(store, ana, "young", T0 - (HEARD_DAYS - 1) * DAY)
    outbox = Outbox(store.outgoing, clock, Everybody())
    chores = (Tidying(store.pruning, clock),)
    async with started(Assistant(store, clock, outbox, Alarms(clock), coach="Rosa", chores=chores)) as assistant:
        await assistant.settled()
        assert [row["external_id"] for row in rows(file, "inbox")] == ["young"]
        assert assistant.next_due() == T0 + EVERY
        await Simulation(assistant, clock).advance_to(T0 + 2 * DAY)
        assert rows(file, "inbox") == []
    assert [record.getMessage() for record in caplog.records if "let go" in record.getMessage()] == [
        "1 old rows let go",
        "0 old rows let go",
        "1 old rows let go",
    ]


async def test_a_fault_is_logged_and_it_is_tried_again_the_next_day(clock, caplog):
    """Nobody waits for it."""

    class Broken:
        async def prune(self, _now):
            raise OSError

    tidying = Tidying(Broken(), clock)
    tidying.look()
    await tidying.idle()
    assert "could not be let go" in caplog.text
    assert tidying.due_at() == T0 + EVERY
