"""The command itself, as a process: its first words, its end, a kill in the middle, and what it never says."""

import asyncio
import os
import signal
import socket
import subprocess
import sys
from contextlib import asynccontextmanager
from pathlib import Path

import pytest

from tests.bot.given import rows
from tests.wire.conftest import ANA, FIRST_TALK, ROSA
from tests.wire.standin import TOKEN, StandIn

ROOT = Path(__file__).parents[2]


@pytest.fixture
async def network():
    """The stand-in network, on the real clock."""
    async with StandIn() as standin:
        yield standin


FAST = """
import os, sys
from bot import serving
from bot.clock import LiveClock
from bot.settings import read_serve_settings

async def clock_after(store):  # twenty seconds in one, going on where the last process was
    latest = await store.latest_at()
    return LiveClock(20, latest)

serving.clock_after = clock_after
serving.run(read_serve_settings(None, os.environ), sys.stdout)
"""


@asynccontextmanager
async def serving(network, folder, run=None, **more):
    """`stationcall serve` in a process of its own; killed at the end if it is still there."""
    environment = os.environ | {"STATIONCALL_TOKEN": TOKEN, "STATIONCALL_API": network.url, "STATIONCALL_DATA": str(folder), **more}
    process = await asyncio.create_subprocess_exec(
        sys.executable,
        *(("-m", "bot", "serve") if run is None else ("-c", run)),
        cwd=ROOT,
        env=environment,
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
    )
    try:
        yield process
    finally:
        if process.returncode is None:
            process.kill()
        await process.communicate()


async def line(process):
    """The next line that the process prints."""
    return (await asyncio.wait_for(process.stdout.readline(), 30)).decode().strip()


async def says(network, chat, text, begins):
    """Somebody sends a text, and waits for an answer that begins so."""
    await network.text(chat, text)
    await network.until(lambda: network.all_confirmed and network.chats.get(chat) and network.last(chat).text.startswith(begins))


async def at_the_first_station(network, code):
    """Rosa is the coach; Ana is at work at the first station."""
    await says(network, ROSA, f"/start {code}", "Welcome, Rosa.")
    await says(network, ROSA, "invite Ana", "An invite for Ana.")
    invite = network.last(ROSA).text.rsplit(" ", 1)[1]
    await says(network, ANA, f"/start {invite}", "Before we start")
    for text, begins in zip(FIRST_TALK, ("Thank you.", "Which weights", "Today: Kitchen seven"), strict=True):
        await says(network, ANA, text, begins)
    for text, begins in (("go", "Warm-up"), ("go", "Round 1/3, station 1/7"), ("go", "GO! Goblet squat")):
        await says(network, ANA, text, begins)


async def test_from_the_first_start_to_sigterm(network, tmp_path):
    """The claim code is printed while there is nobody; SIGTERM ends it with 0; no token is kept anywhere.

    The next start has no code; one after more than a day says that messages may be lost.
    """
    async with serving(network, tmp_path) as process:
        first = await line(process)
        assert first.startswith("First start. To become the coach, open https://t.me/stationcall_standin_bot?start=")
        assert await line(process) == "Stationcall talks as @stationcall_standin_bot. Stop it with Ctrl-C."
        await says(network, ROSA, first.rsplit(" ", 1)[1], "Welcome, Rosa.")
        process.send_signal(signal.SIGTERM)
        out, err = await process.communicate()
        assert (process.returncode, out, err) == (0, b"", b"")
    async with serving(network, tmp_path) as again:
        assert await line(again) == "Stationcall talks as @stationcall_standin_bot. Stop it with Ctrl-C."
        await says(network, ROSA, "invite Ana", "An invite for Ana.")
        again.send_signal(signal.SIGINT)
        await again.communicate()
        assert again.returncode == 0
    os.utime(tmp_path / "last-heard", (0, 0))
    async with serving(network, tmp_path) as later:
        await network.until(lambda: network.last(ROSA).text.startswith("I was away for more than a day"))
        later.send_signal(signal.SIGTERM)
        await later.communicate()
    kept = b"".join(file.read_bytes() for file in tmp_path.iterdir() if file.is_file())
    assert TOKEN.split(":")[1].encode() not in kept


async def test_sigterm_finishes_what_is_in_hand(network, tmp_path):
    """Updates that were given out are answered before the process ends, or come again to the next."""
    async with serving(network, tmp_path) as process:
        await at_the_first_station(network, (await line(process)).rsplit(" ", 1)[1])
        for text in ("use pounds", "use kilos", "how long left", "pause"):
            await network.text(ANA, text)
        process.send_signal(signal.SIGTERM)
        await process.communicate()
        assert process.returncode == 0
    async with serving(network, tmp_path):
        await network.until(lambda: network.all_confirmed and any(text.startswith("Paused") for text in network.shown(ANA)))
    answers = [text for text in network.shown(ANA) if text.startswith(("Pounds", "Kilos", "Goblet squat:", "Paused at"))]
    assert [text.split(" ")[0] for text in answers][:4] == ["Pounds", "Kilos", "Goblet", "Paused"]
    assert len([text for text in answers if text.startswith(("Pounds", "Kilos"))]) == 2


def has_begun(network, words):
    """Whether a message to Ana that begins so was shown: the clock runs fast here, and the next one can be there already."""
    return any(text.startswith(words) for text in network.shown(ANA))


async def test_killed_in_the_middle_of_a_workout_and_again(network, tmp_path):
    """Killed in a work minute, and as a set is read back: the set is asked for once, noted once, and the workout goes on.

    The network has no key for a call, so what was being sent when the process died may come twice, except a countdown.
    """
    async with serving(network, tmp_path, run=FAST) as process:
        await at_the_first_station(network, (await line(process)).rsplit(" ", 1)[1])
        await network.until(lambda: has_begun(network, "Half-way"))
        process.kill()
        await process.wait()
    async with serving(network, tmp_path, run=FAST) as process:
        await network.until(lambda: has_begun(network, "DOWN"))
        await network.text(ANA, "11 at 12kg")
        await network.until(lambda: any("noted." in text for text in network.shown(ANA)))
        process.kill()
        await process.wait()
    async with serving(network, tmp_path, run=FAST) as process:
        await network.until(lambda: has_begun(network, "GO! One-arm row"))
        process.send_signal(signal.SIGTERM)
        await process.wait()
    began = [text.split("\n")[0].split(",")[0] for text in (shown.versions[0] for shown in network.chats[ANA])]
    assert [began.count(text) for text in ("GO! Goblet squat", "Half-way", "DOWN. How many?")] == [1, 1, 1]
    assert began.count("10 s left.") <= 1  # called, or left out where starting again took longer than it is worth
    assert 1 <= began.count("11 at 12 kg") <= 2
    assert 1 <= began.count("Round 1/3") - began[: began.index("GO! Goblet squat")].count("Round 1/3") <= 2
    database = tmp_path / "stationcall.sqlite3"
    assert [row["reps"] for row in rows(database, "set_record")] == [11]
    heard = [row["external_id"] for row in rows(database, "inbox")]
    assert len(heard) == len(set(heard))


async def test_a_wrong_token_is_said_in_one_line(network, tmp_path):
    """With what to check, and without the token."""
    wrong = "987654321:another-invented-token-that-nobody-has"
    async with serving(network, tmp_path, STATIONCALL_TOKEN=wrong) as process:
        out, err = await process.communicate()
        assert (process.returncode, out) == (2, b"")
        assert err.decode() == "stationcall: the network refuses the token: check STATIONCALL_TOKEN\n"


async def test_serving_by_webhook(network, tmp_path):
    """The webhook is set with its secret, what is brought to the listening address is answered, SIGTERM ends it with 0."""
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        port = free.getsockname()[1]
    settings = {
        "STATIONCALL_WEBHOOK": "https://coach.example/9f2c",
        "STATIONCALL_WEBHOOK_SECRET": "an-invented-secret-word",
        "STATIONCALL_LISTEN": f"127.0.0.1:{port}",
    }
    async with serving(network, tmp_path, **settings) as process:
        code = (await line(process)).rsplit(" ", 1)[1]
        await network.until(lambda: network.webhook is not None)
        network.webhook["front"] = f"http://127.0.0.1:{port}/9f2c"
        await says(network, ROSA, f"/start {code}", "Welcome, Rosa.")
        process.send_signal(signal.SIGTERM)
        await process.communicate()
        assert process.returncode == 0
