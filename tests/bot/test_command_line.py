"""The command line: exit codes, one line for an error, and the commands as they are promised."""

from __future__ import annotations

import io
import json
import subprocess
import sys
from pathlib import Path

import pytest

from bot.__main__ import main
from bot.lock import claimed

ROOT = Path(__file__).parents[2]
SCRIPT = "> yes\n> kg\n> a pair of 8s, 12s and a 16\n> go\n> go\n> go\n+ 62s\n> 11 at 12kg\n"


@pytest.fixture(autouse=True)
def _no_data_folder_from_outside(monkeypatch):
    """Tests must not touch anybody's real data."""
    monkeypatch.delenv("STATIONCALL_DATA", raising=False)


def complaint(capsys) -> str:
    """The one line on stderr."""
    told = capsys.readouterr().err
    assert told.count("\n") == 1, told
    return told


@pytest.mark.parametrize(
    "argv",
    [
        ["chat", "--script", "no-such-file.txt"],
        ["chat", "--speed", "0"],
        ["chat", "--speed", "fast"],
        ["fly"],
        [],
        ["circuit", "check", "no-such-file.toml"],
    ],
    ids=" ".join,
)
def test_bad_input_is_one_line_and_code_2(argv, capsys, tmp_path, monkeypatch):
    """A wrong word, a wrong number, a file that is not there."""
    monkeypatch.chdir(tmp_path)
    try:
        code = main(argv)
    except SystemExit as left:
        code = left.code
    assert code == 2
    assert complaint(capsys).startswith("stationcall: ")


def test_a_line_that_is_no_script_is_named(capsys, tmp_path):
    """With its number and what a line may be."""
    script = tmp_path / "odd.txt"
    script.write_text("> yes\nhello\n", encoding="utf-8")
    assert main(["chat", "--script", str(script)]) == 2
    assert "line 2" in complaint(capsys)


def test_a_script_that_sets_the_clock_back_is_named(capsys, tmp_path):
    """Time does not run backwards."""
    script = tmp_path / "back.txt"
    script.write_text("> yes\n@ 2026-03-01 06:30\n", encoding="utf-8")
    assert main(["chat", "--script", str(script)]) == 2
    assert "line 2" in complaint(capsys)


def test_records_prints_what_a_script_kept(capsys, tmp_path):
    """One JSON object a line, every field of the contract, newest last."""
    script = tmp_path / "short.txt"
    script.write_text(SCRIPT, encoding="utf-8")
    data = str(tmp_path / "data")
    assert main(["chat", "--as", "Robin", "--script", str(script), "--data", data]) == 0
    capsys.readouterr()
    assert main(["--data", data, "records", "--json"]) == 0
    rows = [json.loads(line) for line in capsys.readouterr().out.splitlines()]
    assert len(rows) == 1
    assert set(rows[0]) == {
        "trainee", "at", "circuit", "round", "station", "exercise", "side", "reps", "load", "unit",
        "reserve", "rpe", "seconds", "voided", "replaces",
    }  # fmt: skip
    assert (rows[0]["trainee"], rows[0]["reps"], rows[0]["load"], rows[0]["unit"]) == ("Robin", 11, 12, "kg")
    assert rows[0]["at"] == "2026-03-02T06:31:02+00:00"


def test_nobody_of_that_name_is_said(capsys, tmp_path):
    """Asking for records of somebody unknown is bad input."""
    assert main(["records", "--trainee", "Nobody", "--data", str(tmp_path)]) == 2
    assert "Nobody" in complaint(capsys)


def test_a_script_never_writes_to_a_real_diary(capsys, tmp_path, monkeypatch):
    """A data folder that a chat has used is refused."""
    monkeypatch.setattr("sys.stdin", io.StringIO("yes\n"))
    assert main(["chat", "--data", str(tmp_path)]) == 0
    capsys.readouterr()
    script = tmp_path / "short.txt"
    script.write_text(SCRIPT, encoding="utf-8")
    assert main(["chat", "--script", str(script), "--data", str(tmp_path)]) == 2
    assert "real diary" in complaint(capsys)


def test_a_second_chat_on_a_folder_in_use_is_refused(capsys, tmp_path):
    """With the folder's name and what to do."""
    with claimed(tmp_path):
        assert main(["chat", "--data", str(tmp_path)]) == 1
    assert str(tmp_path) in complaint(capsys)


def test_read_and_suggest_stream_line_by_line():
    """An answer comes before the next line is sent."""
    for command, line in (("read", "11 at 20kg"), ("suggest", "{}")):
        with subprocess.Popen(
            [sys.executable, "-m", "bot", command], cwd=ROOT, stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True
        ) as running:
            running.stdin.write(line + "\n")
            running.stdin.flush()
            assert json.loads(running.stdout.readline())
            running.stdin.close()
            assert running.wait(30) == 0
