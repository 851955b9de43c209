"""Playing a dialogue: a transcript is its own script, with the assistant's lines taken out.

A line `# --- the program is killed here ---` ends a part: that part is played by a process that is then killed, with nothing closed
and nothing said goodbye to, and the next part goes on with what it left on the disk.
"""

from __future__ import annotations

import asyncio
import io
import os
import signal
import subprocess
import sys
from pathlib import Path

from bot.bootstrap import play
from bot.channels.script import read_script

ROOT = Path(__file__).parents[2]
DIALOGUES = ROOT / "fixtures" / "dialogues"
KILLED = "# --- the program is killed here ---"


def script_of(transcript: str) -> str:
    """What the trainee and the clock do in a transcript."""
    return "".join(f"{line}\n" for line in transcript.splitlines() if not line.startswith(("<", " ")))


def played(script: str, folder: Path) -> str:
    """The transcript of a script, its data kept in `folder`."""
    parts = script.split(f"{KILLED}\n")
    heard = [_killed(part, folder) for part in parts[:-1]]
    out = io.StringIO()
    asyncio.run(play(read_script(parts[-1]), "Robin", str(folder), {}, out))
    return f"{KILLED}\n".join([*heard, out.getvalue()])


def _killed(part: str, folder: Path) -> str:
    """The transcript of a part whose process is killed at its end."""
    ended = subprocess.run(
        [sys.executable, "-m", "tests.dialogues.playing", str(folder)],
        input=part,
        cwd=ROOT,
        capture_output=True,
        text=True,
        check=False,
    )
    assert ended.returncode == -signal.SIGKILL, ended.stderr
    return ended.stdout


async def _play_and_die(part: str, folder: str) -> None:
    """Play a part, and kill this process before anything is closed."""
    from bot.channels.script import Transcript  # noqa: PLC0415 - only in the process that dies

    whole = Transcript.play

    async def play_then_die(self, script, trainee_id, assistant):
        await whole(self, script, trainee_id, assistant)
        sys.stdout.flush()
        os.kill(os.getpid(), signal.SIGKILL)

    Transcript.play = play_then_die
    await play(read_script(part), "Robin", folder, {}, sys.stdout)


if __name__ == "__main__":
    asyncio.run(_play_and_die(sys.stdin.read(), sys.argv[1]))
