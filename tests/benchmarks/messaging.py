"""Stationcall beside a bare echo handler of the library, on the same stand-in network, in one run.

    PYTHONPATH=. python -m tests.benchmarks.messaging [--trainees 500] [--only saturated|steady|clocks]

- saturated: a backlog of one message from each trainee: messages handled to completion a second, CPU a message.
- steady: fifty messages a second: latency from the update being there to the (first) answer, CPU a message.
- clocks: every trainee is at work, the clocks of all in the same seconds: how late each call comes; one core.

The echo handler is the library's own way: `Application`, its client, `run_polling`. Stationcall reads "11 at 20kg", decides,
commits with synchronous=FULL and answers with two messages: the set read back, and the next card. The network's own limits are set
aside.
"""

from __future__ import annotations

import argparse
import asyncio
import os
import statistics
import subprocess
import sys
import tempfile
import time
from contextlib import asynccontextmanager
from datetime import UTC, datetime, timedelta
from pathlib import Path

from bot.assistant import on_duty
from bot.bootstrap import demo, rendered
from bot.channels.telegram.register import CHANNEL
from bot.clock import SimulatedClock
from bot.simulation import Simulation
from bot.store.people import Newcomer
from bot.store.store import Store
from core.trainee import Trainee
from tests.wire.standin import TOKEN, StandIn

T0 = datetime(2026, 3, 2, 6, 30, tzinfo=UTC)
TALK = ("hi", "yes", "kg", "a pair of 8s, 12s, 16s and 20s", "go", "go", "go")
COACH_CHAT, FIRST_CHAT = 999, 1000
EACH_S = 1 / 50
ROOT = Path(__file__).parents[2]
ECHO = """
import os
from telegram.ext import ApplicationBuilder, MessageHandler, filters

async def echo(update, context):
    await update.effective_message.reply_text(update.effective_message.text)

builder = ApplicationBuilder().token(os.environ["STATIONCALL_TOKEN"]).base_url(os.environ["STATIONCALL_API"] + "/bot")
app = builder.build()
app.add_handler(MessageHandler(filters.TEXT, echo))
app.run_polling(allowed_updates=["message"])
"""
OURS = """
import os, sys
from datetime import datetime
from bot import serving
from bot.clock import LiveClock
from bot.pace import NO_LIMITS
from bot.settings import read_serve_settings

async def clock_after(store):
    return LiveClock(1.0, datetime.fromisoformat(os.environ["BENCH_START"]))

on_network = serving.on_network
serving.clock_after = clock_after
serving.on_network = lambda *args, **more: on_network(*args, limits=NO_LIMITS, **more)
serving.run(read_serve_settings(None, os.environ), sys.stdout)
"""


class Bench(StandIn):
    """The stand-in, noting when each message was there and when it was answered."""

    def __init__(self):
        super().__init__()
        self.there: dict[int, float] = {}
        self.answered: dict[int, list[float]] = {}
        self.lates: list[tuple[str, float]] = []

    def _show(self, given, text, longest, **more):
        chat = int(given["chat_id"])
        self.answered.setdefault(chat, []).append(time.perf_counter())
        self.lates.append((text, time.time()))
        return super()._show(given, text, longest, **more)

    async def offer(self, chat, text):
        """A text is there from now on."""
        self.there[chat] = time.perf_counter()
        await self.text(chat, text)


def cpu_s(pid):
    """CPU seconds of a process so far."""
    fields = Path(f"/proc/{pid}/stat").read_text(encoding="ascii").rsplit(")", 1)[1].split()
    return (int(fields[11]) + int(fields[12])) / os.sysconf("SC_CLK_TCK")


async def make_database(file, trainees, seconds):
    """Everybody has come in and is at the first station, `seconds` after its start."""
    store, clock = await Store.open(f"sqlite:///{file}", rendered), SimulatedClock(T0)
    circuit = await store.save_circuit(demo().circuit)

    class Nowhere:
        async def send(self, _trainee, _letter):
            return

    async with on_duty(store, clock, Nowhere(), "Rosa") as assistant:
        expiry = T0 + timedelta(days=1)
        await store.people.invite_coach("COACH", T0, expiry)
        coach = await store.people.join("COACH", Newcomer(CHANNEL, str(COACH_CHAT), "Rosa"), circuit, T0, Trainee)
        await store.make_coach(coach.account.trainee_id)
        for number in range(trainees):
            code = f"CODE{number}"
            await store.people.invite(code, coach.account.trainee_id, None, T0, expiry)
            joined = await store.people.join(code, Newcomer(CHANNEL, str(FIRST_CHAT + number), f"T{number}"), circuit, T0, Trainee)
            for at, text in enumerate(TALK):
                await assistant.said(joined.account.trainee_id, text, f"{number}-{at}", "bench")
        await assistant.settled()
        await Simulation(assistant, clock).advance_to(T0 + timedelta(seconds=seconds))
    await store.close()
    return T0 + timedelta(seconds=seconds)


@asynccontextmanager
async def started(program, network, folder, begins=""):
    """A bot in a process of its own."""
    environment = os.environ | {
        "STATIONCALL_TOKEN": TOKEN,
        "STATIONCALL_API": network.url,
        "STATIONCALL_DATA": str(folder),
        "BENCH_START": str(begins),
        "PYTHONPATH": str(ROOT),
    }
    process = subprocess.Popen(  # noqa: ASYNC220 - nothing else runs meanwhile
        [sys.executable, "-c", program], env=environment, cwd=ROOT, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL
    )
    try:
        yield process
    finally:
        process.terminate()
        process.wait()


async def warm(network, trainees):
    """Everybody has written once to this process, and been answered: it has read what it remembers."""
    await network.until(lambda: network._waiting)
    for number in range(trainees):
        network._pending[number + 1] = {
            "update_id": number + 1,
            "message": network._body(FIRST_CHAT + number, 5) | {"text": "use kilos"},
        }
    await network._notify()
    await network.until(lambda: sum(map(len, network.answered.values())) >= trainees and network.all_confirmed)
    network.answered.clear()


async def saturated(program, trainees, answers, folder, begins=""):
    """Messages a second and CPU milliseconds a message, for a backlog; `answers` a message."""
    async with Bench() as network, started(program, network, folder, begins) as process:
        await warm(network, trainees)
        before, begun = cpu_s(process.pid), time.perf_counter()
        for number in range(trainees):
            network._pending[5000 + number] = {
                "update_id": 5000 + number,
                "message": network._body(FIRST_CHAT + number, 900 + number) | {"text": "11 at 20kg"},
            }
        await network._notify()
        await network.until(lambda: sum(map(len, network.answered.values())) >= trainees * answers and network.all_confirmed)
        spent, cpu = time.perf_counter() - begun, cpu_s(process.pid) - before
    return trainees / spent, cpu / trainees * 1000


async def steady(program, trainees, answers, folder, begins=""):
    """Latency (median, 99th percentile, in ms) and CPU milliseconds a message, at fifty a second."""
    async with Bench() as network, started(program, network, folder, begins) as process:
        await warm(network, trainees)
        before, begun = cpu_s(process.pid), time.perf_counter()
        for number in range(trainees):
            wait_s = begun + number * EACH_S - time.perf_counter()
            await asyncio.sleep(max(0.0, wait_s))
            await network.offer(FIRST_CHAT + number, "11 at 20kg")
        await network.until(lambda: sum(map(len, network.answered.values())) >= trainees * answers and network.all_confirmed)
        cpu = cpu_s(process.pid) - before
        took = sorted(
            (next(at for at in network.answered[chat] if at >= there) - there) * 1000 for chat, there in network.there.items()
        )
    return statistics.median(took), took[int(len(took) * 0.99)], cpu / trainees * 1000


async def clocks(trainees, folder, begins):
    """For each call of the clock, which is due for everybody at one instant: seconds from the first to the last; and CPU seconds.

    Half-way, ten seconds and the end of a minute's work, the edits of the clock's face between them; on one core.
    """
    calls = {"Half-way": [], "10 s": [], "<b>DOWN": []}
    async with Bench() as network, started(OURS, network, folder, begins) as process:
        os.sched_setaffinity(process.pid, {0})

        def all_out():
            for kind, instants in calls.items():
                instants[:] = [at for text, at in network.lates if text.startswith(kind)]
            return all(len(instants) >= trainees for instants in calls.values())

        await network.until(all_out, 90)
        cpu = cpu_s(process.pid)
    return {kind: max(instants) - min(instants) for kind, instants in calls.items()}, cpu


async def main():
    """Measure, and print a table."""
    parser = argparse.ArgumentParser(description=__doc__.split("\n")[0])
    parser.add_argument("--trainees", type=int, default=500)
    parser.add_argument("--only", choices=("saturated", "steady", "clocks"))
    parser.add_argument("--repeats", type=int, default=3)
    asked = parser.parse_args()
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)

        async def fresh(what, seconds):
            place = folder / what
            place.mkdir()
            made = folder / f"{seconds}.sqlite3"
            if not made.exists():
                await make_database(made, asked.trainees, seconds)
            (place / "stationcall.sqlite3").write_bytes(made.read_bytes())
            return place, (T0 + timedelta(seconds=seconds)).isoformat()

        for turn in range(asked.repeats):
            if asked.only in (None, "saturated"):
                place, begins = await fresh(f"saturated{turn}", 61)
                echo = await saturated(ECHO, asked.trainees, 1, folder)
                ours = await saturated(OURS, asked.trainees, 2, place, begins)
                print(
                    f"saturated  echo {echo[0]:7.0f}/s {echo[1]:6.2f} ms CPU   stationcall {ours[0]:7.0f}/s {ours[1]:6.2f} ms CPU"
                )
            if asked.only in (None, "steady"):
                place, begins = await fresh(f"steady{turn}", 61)
                echo = await steady(ECHO, asked.trainees, 1, folder)
                ours = await steady(OURS, asked.trainees, 2, place, begins)
                print(
                    f"steady 50/s  echo p50 {echo[0]:6.1f} p99 {echo[1]:6.1f} ms, {echo[2]:5.2f} ms CPU"
                    f"   stationcall p50 {ours[0]:6.1f} p99 {ours[1]:6.1f} ms, {ours[2]:5.2f} ms CPU"
                )
        if asked.only in (None, "clocks"):
            place, begins = await fresh("clocks", 25)
            late, cpu = await clocks(asked.trainees, place, begins)
            print(
                "clocks, first to last of one call, s:",
                {kind: round(late_s, 2) for kind, late_s in late.items()},
                f"CPU {cpu:.1f} s",
            )


if __name__ == "__main__":
    asyncio.run(main())
