"""Playing a dialogue: a transcript is its own script, with the assistant's lines taken out.

After a line `# --- as Coach Wren ---` somebody else is at the program, with the same data; the clock must be set first. A line
`# --- the program is killed here ---` ends a part: that part is played by a process that is then killed, with nothing closed
and nothing said goodbye to, and the next part goes on with what it left on the disk.
"""

from __future__ import annotations

import asyncio
import io
import os
import re
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
    return f"{KILLED}\n".join([*heard, _by_turns(parts[-1], folder)])


def _by_turns(script: str, folder: Path) -> str:
    """The transcript of a script in which people take turns at the same program, Robin first."""
    pieces = re.split(r"^(# --- as .+ ---\n)", script, flags=re.MULTILINE)
    out = io.StringIO()
    for mark, piece in zip(["", *pieces[1::2]], pieces[::2], strict=True):
        name = mark.removeprefix("# --- as ").removesuffix(" ---\n") or "Robin"
        out.write(mark)
        asyncio.run(play(read_script(piece), name, str(folder), {}, out))
    return out.getvalue()


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

    async def play_then_die(self, *what):
        await whole(self, *what)
        sys.stdout.flush()
        os.kill(os.getpid(), signal.SIGKILL)

    Transcript.play = play_then_die
    await play(read_script(part), "Robin", folder, {}, sys.stdout)


if __name__ == "__main__":
    asyncio.run(_play_and_die(sys.stdin.read(), sys.argv[1]))
