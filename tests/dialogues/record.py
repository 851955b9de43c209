"""Write dialogues, and the README's, anew after a change that is meant: `python -m tests.dialogues.record [NAME ...]`.

Then read the difference: it is what trainees will read.
"""

from __future__ import annotations

import sys
import tempfile
from pathlib import Path

from tests.dialogues.playing import DIALOGUES, ROOT, played, script_of


def record(path: Path) -> None:
    """Play a dialogue's script and keep what was heard."""
    with tempfile.TemporaryDirectory() as folder:
        path.write_text(played(script_of(path.read_text(encoding="utf-8")), Path(folder)), encoding="utf-8")


def show_in_readme() -> None:
    """Put the marked part of the dialogue `readme` into the README."""
    part = (DIALOGUES / "readme.txt").read_text(encoding="utf-8").split("# README: from here\n")[1].split("# README: to here\n")[0]
    readme = ROOT / "README.md"
    before, _, rest = readme.read_text(encoding="utf-8").partition("```text\n")
    readme.write_text(f"{before}```text\n{part}```\n{rest.partition(chr(10) + '```' + chr(10))[2]}", encoding="utf-8")


if __name__ == "__main__":
    names = sys.argv[1:]
    for dialogue in sorted(DIALOGUES.glob("*.txt")):
        if not names or dialogue.stem in names:
            record(dialogue)
    show_in_readme()
