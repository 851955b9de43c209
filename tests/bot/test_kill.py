"""A process that is killed: what it had said is kept, once; what it had not is not half there."""

import os
import signal
import subprocess
import sys
from pathlib import Path

from bot.store.store import Store
from tests.bot.given import render, rows

KILLS = (1, 4, 2)  # after so many answers
NOTING = """
import asyncio, sys
from bot.store.store import InboxKey, Store
from tests.bot.given import T0, always, noted, opened, render, say

async def main():
    store = await Store.open(f"sqlite:///{sys.argv[1]}", render)
    history = await store.diary(1)
    if not history.workouts:
        await store.handle(1, None, always(opened()), T0)
    number = len(history.sets)
    while True:  # the message that was handled last comes again, as a network would send it
        decide = always(noted(number), messages=say(f"{number}, noted"))
        handled = await store.handle(1, InboxKey("terminal", str(number)), decide, T0) if number else None
        print(number, handled.seen if handled else None, flush=True)
        number += 1

asyncio.run(main())
"""


async def test_killed_again_and_again_nothing_is_lost_or_doubled(file):
    """Three processes one after the other, each killed while it works, each message handed in again to the next."""
    answered = 0
    for answers in KILLS:
        with subprocess.Popen(  # noqa: ASYNC220 - our own interpreter; nothing else runs in this test
            [sys.executable, "-c", NOTING, str(file)],
            stdout=subprocess.PIPE,
            text=True,
            cwd=Path(__file__).parents[2],
        ) as process:
            number, seen = process.stdout.readline().split()
            assert int(number) >= answered
            assert seen == ("True" if int(number) else "None")
            for _ in range(answers):
                number, seen = process.stdout.readline().split()
                assert seen == "False"
            answered = int(number)
            os.kill(process.pid, signal.SIGKILL)
    store = await Store.open(f"sqlite:///{file}", render)
    numbers = [record.number for record in (await store.diary(1)).sets]
    await store.close()
    assert numbers == list(range(1, len(numbers) + 1))
    assert len(numbers) >= answered
    assert sorted(int(row["external_id"]) for row in rows(file, "inbox")) == numbers
    assert [row["text"] for row in rows(file, "outbox")] == [f"{number}, noted" for number in numbers]
