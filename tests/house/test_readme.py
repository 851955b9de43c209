"""The README is true: its dialogue is what the program says, its commands exist."""

from __future__ import annotations

import contextlib
import re
from pathlib import Path

from bot.__main__ import main

ROOT = Path(__file__).parents[2]
README = (ROOT / "README.md").read_text(encoding="utf-8")


def test_the_sample_dialogue_is_printed_by_the_program():
    """The block is the marked part of fixtures/dialogues/readme.txt, which the dialogue tests play."""
    transcript = (ROOT / "fixtures" / "dialogues" / "readme.txt").read_text(encoding="utf-8")
    part = transcript.split("# README: from here\n")[1].split("# README: to here\n")[0]
    assert f"```text\n{part}```\n" in README


def test_the_job_is_told_in_one_paragraph_at_the_top():
    """A heading, one paragraph, then how to try it."""
    head, rest = README.split("\n\n", 1)
    assert head.startswith("# ")
    assert rest.split("\n\n")[1].startswith("## Try")


def test_every_command_in_the_table_is_known(capsys):
    """And every command that exists is in the table."""
    told = set(re.findall(r"^\| `([a-z]+)", README, re.MULTILINE))
    with contextlib.suppress(SystemExit):
        main(["--help"])
    known = set(re.findall(r"^    (\w+)\s", capsys.readouterr().out, re.MULTILINE))
    assert told == known


def test_the_two_scripts_exist_and_ci_runs_the_second():
    """CI runs the README's test command and nothing else."""
    assert "sh deploy/try.sh" in README
    assert "sh deploy/test.sh" in README
    assert "exec sh deploy/test.sh" in (ROOT / ".ci" / "run").read_text(encoding="utf-8")
