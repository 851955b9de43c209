"""A hundred thousand trainees with reminders, twenty thousand of them at 06:30 of one zone, beside a scheduler with a job for each.

`python -m tests.benchmarks.reminders_at_scale [--trainees N] [--due M]`. The database is real, on a file; the messenger takes every
message at once, so what is measured is the program: a real one takes some thirty messages a second, whatever the program does. The
scheduler's jobs do nothing but note when they ran.
"""

from __future__ import annotations

import argparse
import asyncio
import gc
import logging
import random
import sqlite3
import statistics
import subprocess
import sys
import tempfile
import time
from contextlib import closing
from datetime import UTC, datetime, timedelta
from pathlib import Path

from apscheduler.events import EVENT_JOB_EXECUTED, EVENT_JOB_MISSED
from apscheduler.schedulers.asyncio import AsyncIOScheduler
from apscheduler.triggers.cron import CronTrigger
from apscheduler.triggers.date import DateTrigger

from bot.assistant import on_duty
from bot.bootstrap import demo, rendered
from bot.clock import SimulatedClock
from bot.store.store import Store
from bot.wakes import Wakes
from core.trainee import Trainee

MONDAY = datetime(2026, 3, 2, 6, 30, tzinfo=UTC)  # in Lisbon, where it is the same in March
LISBON = "BEGIN:VEVENT\nDTSTART:20260302T063000\nRRULE:FREQ=WEEKLY;BYDAY=MO,WE,FR\nEND:VEVENT"
out = sys.stdout.write
FEW = 200
ASLEEP = (1_000, 10_000, 100_000)


def memory_mb() -> float:
    """What this process holds in memory, in megabytes."""
    pages = int(Path("/proc/self/statm").read_text(encoding="ascii").split()[1])
    return pages * 4096 / 1e6


class Post:
    """A messenger that takes everything at once and notes when."""

    def __init__(self) -> None:
        self.at: list[float] = []

    async def send(self, _trainee, _message) -> None:
        """Take a message."""
        self.at.append(time.perf_counter())


async def make(file: Path, trainees: int, due: int) -> None:
    """A database of so many trainees: those due at 06:30 in Lisbon, and the others at other hours of the week after."""
    store = await Store.open(f"sqlite:///{file}", rendered)
    await store.add_trainee(Trainee("trainee 1", zone="Europe/Lisbon"), await store.save_circuit(demo().circuit))
    await store.close()
    chance = random.Random(7)  # noqa: S311 - a spread of hours
    said = (MONDAY - timedelta(days=1)).strftime("%Y-%m-%d %H:%M:%S.%f")
    with closing(sqlite3.connect(file)) as connection, connection:
        connection.execute("DELETE FROM trainee")
        connection.executemany(
            "INSERT INTO trainee (id, name, zone, unit, rack_said, cautions_accepted_at, reminder, reminders_since, heard_at,"
            " circuit_id, state, wake_at, seen_at, revision) VALUES (?, ?, 'Europe/Lisbon', 'kg', 1, ?, ?, ?, ?, 1, ?, ?, ?, 1)",
            (
                (number, f"trainee {number}", said, LISBON, said, said, '{"kind":"idle"}', _wake(number, due, chance), said)
                for number in range(1, trainees + 1)
            ),
        )


def _wake(number: int, due: int, chance: random.Random) -> str:
    at = MONDAY if number <= due else MONDAY + timedelta(seconds=chance.randint(3_600, 6 * 86_400))
    if number <= FEW and not due:
        at = MONDAY + timedelta(seconds=number)  # the same few are woken, however many sleep
    return at.strftime("%Y-%m-%d %H:%M:%S.%f")


async def ours(file: Path, due: int) -> None:
    """Start over the database, then let 06:30 come."""
    before_mb, begun = memory_mb(), time.perf_counter()
    store = await Store.open(f"sqlite:///{file}", rendered)
    clock, post = SimulatedClock(MONDAY - timedelta(minutes=1)), Post()
    async with on_duty(store, clock, post, "Coach Wren") as assistant:
        started_s, gc_mb = time.perf_counter() - begun, memory_mb() - before_mb
        out(f"start, every wake-up read and planned     {started_s:8.2f} s  {gc_mb:7.1f} MB\n")
        begun = time.perf_counter()
        clock.set(MONDAY)
        assistant.rearm()
        await assistant.settled()
        late = [at - begun for at in post.at]
        rate = due / late[-1]
        out(f"{len(late):,} reminders at one instant            {late[-1]:8.2f} s, late by {_spread(late)}; {rate:,.0f} a second\n")
        out(f"memory after them                                    {memory_mb() - before_mb:7.1f} MB\n")
    await store.close()


def _spread(late: list[float]) -> str:
    ordered = sorted(late)
    return f"{statistics.median(ordered):.2f} s (half), {ordered[int(len(ordered) * 0.99)]:.2f} s (99 of 100)"


async def scheduler(trainees: int, due: int) -> None:
    """A job for each trainee in APScheduler's memory; then as many jobs due at one instant as there are reminders."""
    before_mb, begun = memory_mb(), time.perf_counter()
    plain = AsyncIOScheduler(timezone=UTC)
    plain.start(paused=True)
    chance = random.Random(7)  # noqa: S311
    for number in range(trainees):
        hour, minute = (6, 30) if number < due else (chance.randint(0, 23), chance.randint(0, 59))
        trigger = CronTrigger(day_of_week="mon,wed,fri", hour=hour, minute=minute, timezone="Europe/Lisbon")
        plain.add_job(_nothing, trigger, misfire_grace_time=None)
    out(f"scheduler, a job for each                  {time.perf_counter() - begun:8.2f} s  {memory_mb() - before_mb:7.1f} MB\n")
    plain.shutdown(wait=False)
    for name, grace in (("default grace of 1 s", 1), ("no limit to lateness", None)):
        ran: list[float] = []

        async def note(ran=ran) -> None:
            ran.append(time.perf_counter())

        seen, all_seen = [0], asyncio.Event()

        def count(_event, seen=seen, all_seen=all_seen) -> None:
            seen[0] += 1
            if seen[0] == due:
                all_seen.set()

        firing = AsyncIOScheduler(timezone=UTC)
        firing.add_listener(count, EVENT_JOB_EXECUTED | EVENT_JOB_MISSED)
        firing.start(paused=True)
        at = datetime.now(UTC) + timedelta(seconds=2 + due / 2_000)  # after all are added
        for _ in range(due):
            firing.add_job(note, DateTrigger(at), misfire_grace_time=grace)
        begun = time.perf_counter() + (at - datetime.now(UTC)).total_seconds()
        firing.resume()
        await all_seen.wait()
        firing.shutdown(wait=False)
        told = f"late by {_spread([at - begun for at in ran])}" if ran else "none ran"
        out(f"scheduler, {due:,} empty jobs at one instant, {name}: {len(ran):,} ran, {told}\n")


async def _nothing() -> None:
    pass


def one_wake_up(rounds: int = 2_000) -> None:
    """One trainee woken and planned anew, among more and more who sleep; beside a scan over all of them."""
    for asleep in ASLEEP:
        chance = random.Random(3)  # noqa: S311
        planned = {number: MONDAY + timedelta(seconds=chance.randint(1, 86_400)) for number in range(asleep)}
        gc.collect()
        wakes, now = Wakes(planned), MONDAY
        begun = time.perf_counter()
        for _ in range(rounds):
            now = wakes.next_at() or now
            for number in wakes.due(now):
                wakes.plan(number, now + timedelta(days=1))
        heap_us = (time.perf_counter() - begun) / rounds * 1e6
        begun = time.perf_counter()
        for _ in range(20):
            now = min(planned.values())
            number = next(number for number, at in planned.items() if at == now)
            planned[number] = now + timedelta(days=1)
        scan_us = (time.perf_counter() - begun) / 20 * 1e6
        times = f"{heap_us:6.1f} us by the heap, {scan_us:10.1f} us by a scan ({scan_us / heap_us:,.0f} times)"
        out(f"one wake-up among {asleep:7,} asleep: {times}\n")


async def whole_wake_up(file: Path, trainees: int) -> None:
    """One whole wake-up, transaction and all, among so many asleep."""
    store = await Store.open(f"sqlite:///{file}", rendered)
    clock, post = SimulatedClock(MONDAY - timedelta(minutes=1)), Post()
    async with on_duty(store, clock, post, "Coach Wren") as assistant:
        took = []
        for _ in range(FEW):
            due = assistant.next_due()
            begun = time.perf_counter()
            clock.set(due or clock.now())
            assistant.rearm()
            await assistant.settled()
            took.append(time.perf_counter() - begun)
        out(f"a whole wake-up among {trainees:7,} asleep: {statistics.median(took) * 1e3:5.2f} ms\n")
    await store.close()


def main() -> None:
    """Measure each part in a process of its own, so that memory is its own, and print."""
    parser = argparse.ArgumentParser()
    parser.add_argument("--trainees", type=int, default=100_000)
    parser.add_argument("--due", type=int, default=20_000)
    parser.add_argument("--part", choices=["planning", "asleep", "ours", "scheduler"], help="only this part, in this process")
    asked = parser.parse_args()
    match asked.part:
        case "planning":
            one_wake_up()
        case "asleep":
            with tempfile.TemporaryDirectory() as folder:
                file = Path(folder) / "asleep.sqlite3"
                asyncio.run(make(file, asked.trainees, 0))
                asyncio.run(whole_wake_up(file, asked.trainees))
        case "ours":
            with tempfile.TemporaryDirectory() as folder:
                file = Path(folder) / "scale.sqlite3"
                asyncio.run(make(file, asked.trainees, asked.due))
                asyncio.run(ours(file, asked.due))
        case "scheduler":
            logging.getLogger("apscheduler").setLevel(logging.ERROR)  # it has a line to say for every job that it drops
            asyncio.run(scheduler(asked.trainees, asked.due))
        case _:
            _run("planning", asked.trainees, asked.due)
            for trainees in (asked.trainees // 100, asked.trainees // 10, asked.trainees):
                _run("asleep", trainees, 0)
            _run("ours", asked.trainees, asked.due)
            _run("scheduler", asked.trainees, asked.due)


def _run(part: str, trainees: int, due: int) -> None:
    command = [sys.executable, "-m", "tests.benchmarks.reminders_at_scale", "--part", part]
    subprocess.run([*command, "--trainees", str(trainees), "--due", str(due)], check=True)


if __name__ == "__main__":
    main()
