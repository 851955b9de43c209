"""`circuit check FILE`: what a coach sees, and what a program reads."""

import io
import json
from pathlib import Path

import pytest

from bot.circuit_check import run

FIXTURES = Path(__file__).parents[2] / "fixtures"
DEMO = FIXTURES / "demo" / "circuit.toml"
KEYS = {"faults", "stations", "work_s_per_round", "rest_s_per_round", "round_s", "total_s", "reps_each", "fits"}


def printed(path: Path, minutes: int | None = None) -> tuple[int, dict]:
    """The exit code and what `--json` prints."""
    out = io.StringIO()
    code = run(path, minutes, as_json=True, out=out)
    return code, json.loads(out.getvalue())


def shown(path: Path, minutes: int | None = None) -> tuple[int, str]:
    """The exit code and what a coach reads."""
    out = io.StringIO()
    code = run(path, minutes, as_json=False, out=out)
    return code, out.getvalue()


def test_the_worked_example():
    """Seven one-minute stations, one per side: 8 min of work, 11 to 14 min a round; three rounds do not fit in 30 min."""
    code, report = printed(DEMO, minutes=30)
    assert code == 0
    assert report["faults"] == []
    assert report["stations"] == 7
    assert report["work_s_per_round"] == 480
    assert report["rest_s_per_round"] == [180, 360]
    assert report["round_s"] == [660, 840]
    assert report["total_s"] == [300 + 3 * 660 + 2 * 60, 300 + 3 * 840 + 2 * 90]
    assert report["reps_each"] == [[10, 12], [12, 15], [12, 15], [10, 12], [12, 15], [12, 15], [0, 0]]
    assert report["fits"]["rounds"] == 2
    assert report["fits"]["rest_s"] == 40
    assert report["fits"]["total_s"] <= 1800


def test_advice_is_shown_for_a_sound_circuit(tmp_path: Path):
    """Advice follows the times; a circuit with faults gets none, it has enough to mend."""
    path = tmp_path / "advice.toml"
    path.write_text(DEMO.read_text(encoding="utf-8").replace("sides = true\n", ""), encoding="utf-8")
    code, text = shown(path)
    assert code == 0
    assert "  station 2: One-arm row works one side, and sides is not set" in text.splitlines()
    path.write_text(path.read_text(encoding="utf-8").replace("rounds = 3", "rounds = 0"), encoding="utf-8")
    assert "Think about:" not in shown(path)[1]


def test_the_keys_are_always_the_same(tmp_path: Path):
    """With faults or without, with minutes or without, a program finds every key."""
    assert printed(DEMO)[1].keys() == KEYS
    assert printed(DEMO)[1]["fits"] is None
    nothing = tmp_path / "nothing.toml"
    nothing.write_text("", encoding="utf-8")
    code, report = printed(nothing, minutes=30)
    assert code == 2
    assert report.keys() == KEYS
    assert [fault.keys() for fault in report["faults"]] == [{"place", "says", "remedy"}] * 5
    assert report["total_s"] is None


def test_a_misspelt_exercise_is_told_with_the_nearest_and_the_times_stay(tmp_path: Path):
    """The fault comes with names to choose from; how long it takes is told all the same; the exit code is 2."""
    path = tmp_path / "misspelt.toml"
    path.write_text(DEMO.read_text(encoding="utf-8").replace('"Push-up"', '"Pushh up"', 1), encoding="utf-8")
    code, report = printed(path)
    assert code == 2
    (fault,) = report["faults"]
    assert (fault["place"], fault["says"]) == ("station 3, exercise", '"Pushh up"')
    assert '"Push-up"' in fault["remedy"]
    assert report["round_s"] == [660, 840]


def test_what_a_coach_reads():
    """Stations, times in minutes, what fits, and advice."""
    code, text = shown(DEMO, minutes=30)
    assert code == 0
    for line in (
        "Kitchen seven: 7 stations, 3 rounds",
        "  2. One-arm row, each side: 2 min, about 12-15 reps",
        "Work a round: 8 min",
        "A round: 11 min to 14 min",
        "In all: 40 min to 50 min",
        "3 rounds do not fit in 30 min",
        "Under tension: about 20 min to 24 min",
        "In 30 min fit 2 rounds, rest 40 s, 60 s between rounds: 30 min",
    ):
        assert line in text.splitlines()


def test_when_not_one_round_fits():
    """Says how long one round takes at least."""
    assert "Not one round fits in 10 min: it takes 16 min at least" in shown(DEMO, minutes=10)[1]
    assert printed(DEMO, minutes=10)[1]["fits"]["rounds"] == 0


@pytest.mark.parametrize("path", sorted((FIXTURES / "circuits" / "broken").glob("*.toml")), ids=lambda path: path.stem)
def test_every_broken_file_is_told_in_both_forms(path: Path):
    """Each fault of the file stands in the text and in the JSON, and the exit code is 2."""
    code, report = printed(path, minutes=30)
    text_code, text = shown(path, minutes=30)
    assert code == text_code == 2
    assert report["faults"]
    for fault in report["faults"]:
        assert f"  {fault['place']}: says {fault['says']}" in text.splitlines()
        assert f"    {fault['remedy']}" in text.splitlines()


def test_every_demo_circuit_is_sound():
    """The circuits that go along have no faults and no advice."""
    demos = sorted((FIXTURES / "demo").glob("circuit*.toml"))
    assert demos
    for path in demos:
        code, text = shown(path)
        assert code == 0
        assert "Think about:" not in text


def test_a_file_of_another_program(tmp_path: Path):
    """A byte order mark in front is no fault; bytes that are no text are an error for the command line to tell."""
    marked = tmp_path / "marked.toml"
    marked.write_text(DEMO.read_text(encoding="utf-8"), encoding="utf-8-sig")
    assert printed(marked)[0] == 0
    (tmp_path / "bytes.toml").write_bytes(b"\xff\xfe\x00")
    with pytest.raises(UnicodeDecodeError):
        run(tmp_path / "bytes.toml", None, as_json=False, out=io.StringIO())
    with pytest.raises(FileNotFoundError):
        run(tmp_path / "none.toml", None, as_json=False, out=io.StringIO())
