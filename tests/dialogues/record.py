"""Write dialogues anew after a change that is meant: `python -m tests.dialogues.record [NAME ...]`. Then read the difference."""

from __future__ import annotations

import sys
import tempfile
from pathlib import Path

from tests.dialogues.playing import DIALOGUES, played, script_of


def record(path: Path) -> None:
    """Play a dialogue's script and keep what was heard."""
    with tempfile.TemporaryDirectory() as folder:
        path.write_text(played(script_of(path.read_text(encoding="utf-8")), Path(folder)), encoding="utf-8")


if __name__ == "__main__":
    names = sys.argv[1:]
    for dialogue in sorted(DIALOGUES.glob("*.txt")):
        if not names or dialogue.stem in names:
            record(dialogue)
