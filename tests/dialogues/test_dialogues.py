"""Dialogues, word for word and second for second. Each file in fixtures/dialogues is a specification: read it as one."""

from __future__ import annotations

import asyncio
import io
import re

import pytest

from bot.bootstrap import play
from bot.channels.script import read_script
from tests.dialogues.playing import DIALOGUES, played, script_of

NAMES = sorted(path.stem for path in DIALOGUES.glob("*.txt"))
PHONE = 40
CLOCK = re.compile(r"^< \[(\d\d):(\d\d):(\d\d)\] (.*)$")


def transcript(name: str) -> str:
    """The dialogue as it is kept."""
    return (DIALOGUES / f"{name}.txt").read_text(encoding="utf-8")


@pytest.mark.parametrize("name", NAMES)
def test_a_dialogue_is_heard_as_it_is_written(name, tmp_path):
    """Every message, in its order, at its second."""
    written = transcript(name)
    assert played(script_of(written), tmp_path).splitlines() == written.splitlines()


def test_there_are_enough_dialogues():
    """At least twelve, among them those that matter most."""
    assert len(NAMES) >= 12
    assert {"whole-workout", "interrupted", "every-correction", "pounds", "late-reply", "killed"} <= set(NAMES)


@pytest.mark.parametrize("name", NAMES)
def test_no_message_is_wider_than_a_phone(name):
    """Forty columns, with the mark at its first line."""
    for line in transcript(name).splitlines():
        if line.startswith("< ["):
            assert len(line) - len("< [00:00:00] ") + 2 <= PHONE
        elif line.startswith(" "):
            assert len(line.strip()) + 2 <= PHONE


def test_playing_twice_gives_the_same_bytes(tmp_path):
    """Also into the same data folder: what a script left there is cleared for the same script."""
    script = read_script(script_of(transcript("sides")))
    heard = []
    for folder in (tmp_path, tmp_path, None):
        out = io.StringIO()
        asyncio.run(play(script, "Robin", None if folder is None else str(folder), {}, out))
        heard.append(out.getvalue())
    assert heard[0] == heard[1] == heard[2]


def calls(name: str, word: str) -> list[int]:
    """The seconds of the day at which messages begin with a word."""
    heard = [CLOCK.match(line) for line in transcript(name).splitlines()]
    return [int(m[1]) * 3600 + int(m[2]) * 60 + int(m[3]) for m in heard if m is not None and m[4].startswith(word)]


def test_the_clock_does_not_drift_over_three_rounds():
    """Once round 1 has begun, every start is exactly where the circuit puts it, whenever replies came.

    The demo circuit: work 60 s, twice at the station with sides; rests of 60 s, 90 s between rounds (their longest).
    """
    starts = calls("whole-workout", "GO!")
    assert len(starts) == 21
    expected = [starts[0]]
    for _ in range(3):
        for station in range(7):
            work_s = 120 if station == 1 else 60
            expected.append(expected[-1] + work_s + (90 if station == 6 else 60))
    assert starts == expected[:-1]


def test_a_work_minute_is_exact_to_the_second():
    """Half-way after 30 s, ten seconds left after 50 s, down (or the other side) after 60 s, at every station."""
    starts = sorted(calls("whole-workout", "GO!") + calls("whole-workout", "SWITCH!"))
    ends = sorted(calls("whole-workout", "DOWN.") + calls("whole-workout", "SWITCH!"))
    assert [end - start for start, end in zip(starts, ends, strict=True)] == [60] * 24
    assert [at - start for start, at in zip(starts, calls("whole-workout", "Half-way"), strict=True)] == [30] * 24
    assert [at - start for start, at in zip(starts, calls("whole-workout", "10 s left"), strict=True)] == [50] * 24


def test_the_emergency_number_of_the_settings_is_the_one_that_is_said():
    """In the warning itself, and while a clearance is waited for; without one, the local number is spoken of."""
    script, heard = read_script(script_of(transcript("urgent"))), []
    for environ in ({}, {"STATIONCALL_EMERGENCY_NUMBER": "112"}):
        out = io.StringIO()
        asyncio.run(play(script, "Robin", None, environ, out))
        heard.append(" ".join(out.getvalue().split()))
    assert heard[0].count("your local emergency number") == heard[1].count("call 112") >= 4
    assert "local emergency" not in heard[1]
