"""The `suggest` command: a JSON object a line in, one a line out, whatever comes."""

import io
import json

import pytest

from bot.suggest_io import run

QUESTION = {
    "unit": "kg",
    "loads": [8, 12, 16, 20],
    "station": {"exercise": "goblet squat", "work_s": 60, "rep_s": 4, "rep_s_range": [3, 6], "sides": False, "reserve": [1, 2]},
    "round": 1,
    "today": "2026-03-02",
    "history": [{"date": "2026-02-28", "round": 1, "load": 16, "reps": 15, "rep_s": 4, "reserve": 2}],
    "trainee": {"experience": "new"},
    "others": {"one-arm row": [{"date": "2026-02-28", "round": 1, "load": 12.5, "reps": 12, "rep_s": 5, "rpe": 8}]},
}


def answers(*lines):
    """What the command prints for some lines."""
    out = io.StringIO()
    run([line if isinstance(line, str) else json.dumps(line) for line in lines], out)
    return [json.loads(line) for line in out.getvalue().splitlines()]


def changed(**fields):
    """The question with some fields replaced; a field of None is left out."""
    return {key: value for key, value in {**QUESTION, **fields}.items() if value is not None}


def test_a_question_is_answered_with_the_agreed_keys():
    """The keys of the contract, and nothing else."""
    (answer,) = answers(QUESTION)
    assert set(answer) == {
        "load",
        "unit",
        "rep_s",
        "reps",
        "reserve",
        "finish_chance",
        "change",
        "lever",
        "why",
        "one_rep_max",
    }
    assert (answer["load"], answer["unit"], answer["change"]) == (16, "kg", "same")
    assert set(answer["one_rep_max"]) == {"best", "low", "high"}


def test_the_least_that_can_be_asked():
    """Loads, a station's exercise and tempo, and the day are enough."""
    (answer,) = answers({"loads": [8], "station": {"exercise": "row", "rep_s": 4}, "today": "2026-03-02"})
    assert answer["load"] == 8


def test_each_line_is_flushed_before_the_next_is_read():
    """A program on the other end of the pipe gets each answer at once."""
    flushed = []

    class Pipe(io.StringIO):
        def flush(self):
            flushed.append(self.getvalue().count("\n"))

    def lines():
        for number in range(3):
            assert flushed[-1:] == ([number] if number else [])
            yield json.dumps(QUESTION)

    run(lines(), Pipe())
    assert flushed == [1, 2, 3]


def test_a_bad_line_does_not_stop_the_next():
    """An error line for the bad one, an answer for the good one; an empty line is passed over."""
    first, second = answers("{", "", QUESTION)
    assert set(first) == {"error"}
    assert second["load"] == 16


STATION = QUESTION["station"]
SET = QUESTION["history"][0]
BAD = {
    "not JSON": "11 at 20kg",
    "a list": [1, 2],
    "too deep": "[" * 100_000,
    "no loads": changed(loads=None),
    "loads no list": changed(loads=8),
    "a load in words": changed(loads=["eight"]),
    "a load that is no number": '{"loads": [NaN], "station": {"exercise": "row", "rep_s": 4}, "today": "2026-03-02"}',
    "a negative load": changed(loads=[-8]),
    "true is no load": changed(loads=[True]),
    "no station": changed(station=None),
    "no tempo": changed(station={"exercise": "row"}),
    "no time for a rep": changed(station={**STATION, "rep_s": 0}),
    "an exercise without name": changed(station={**STATION, "exercise": "  "}),
    "three tempos": changed(station={**STATION, "rep_s_range": [1, 2, 3]}),
    "a day that is not": changed(today="2026-02-30"),
    "a day in words": changed(today="tomorrow"),
    "another unit": changed(unit="stone"),
    "a set without reps": changed(history=[{key: value for key, value in SET.items() if key != "reps"}]),
    "reps below zero": changed(history=[{**SET, "reps": -1}]),
    "a history in words": changed(history="none"),
    "an effort of eleven": changed(history=[{**SET, "rpe": 11}]),
    "an experience of our own": changed(trainee={"experience": "godlike"}),
    "a number beyond everything": '{"loads": [1e999], "station": {"exercise": "row", "rep_s": 4}, "today": "2026-03-02"}',
    "a whole number beyond everything": changed(loads=[10**400]),
}


@pytest.mark.parametrize("line", BAD.values(), ids=BAD.keys())
def test_a_line_that_is_no_question_gets_one_plain_sentence(line):
    """Never a traceback, never an answer to something that was not asked."""
    (answer,) = answers(line)
    assert set(answer) == {"error"}
    assert answer["error"].endswith(".")
    assert "\n" not in answer["error"]


def test_records_in_the_other_unit_are_converted():
    """A set of 35.27 lb (1 lb = 0.45359237 kg, NIST SP 811) is one of 16 kg."""
    pounds = changed(history=[{**SET, "load": 35.2739619, "unit": "lb"}])
    (mixed,), (plain,) = answers(pounds), answers(QUESTION)
    assert mixed["one_rep_max"] == plain["one_rep_max"]


ODD = {
    "zero reps": changed(history=[{**SET, "reps": 0}]),
    "a gap of a year": changed(history=[{**SET, "date": "2025-03-01"}]),
    "tomorrow's set": changed(history=[{**SET, "date": "2026-03-03"}]),
    "loads not in the rack": changed(history=[{**SET, "load": 14}]),
    "contradictory reports": changed(history=[{**SET, "reserve": 8, "rpe": 10}, {**SET, "reps": 3}]),
    "one lonely 40 kg dumbbell": changed(loads=[40]),
    "an empty rack": changed(loads=[]),
    "only the body": changed(loads=[0]),
    "loads in any order, twice": changed(loads=[20, 8, 8, 12, 16]),
    "a station of one second": changed(station={**STATION, "work_s": 1}),
    "the target as one number": changed(station={**STATION, "reserve": 2}),
    "an unknown exercise": changed(station={**STATION, "exercise": "zercher wobble"}),
}


@pytest.mark.parametrize("line", ODD.values(), ids=ODD.keys())
def test_odd_but_possible_questions_get_an_answer(line):
    """A load from the rack or none, and a sentence."""
    (answer,) = answers(line)
    assert "error" not in answer
    assert answer["load"] is None or answer["load"] in line["loads"]
    assert answer["why"].endswith(".")
