"""The `read` command: one JSON line for each line, whatever comes."""

from __future__ import annotations

import io
import json
import tracemalloc

import pytest

from bot.reading_io import run


def printed(*lines):
    """What the command prints for these lines."""
    out = io.StringIO()
    run(lines, out)
    return [json.loads(line) for line in out.getvalue().splitlines()]


def test_a_line_is_an_object_or_the_text_itself():
    """An object gives text and context; anything else is the message."""
    log = {"act": "log", "reps": 11, "load": 20, "unit": "kg"}
    assert printed('{"text": "11 at 20kg", "context": {"awaiting": "reps"}}', "11 at 20kg") == [{"acts": [log]}] * 2


@pytest.mark.parametrize(
    "line", ["{", "[]", "null", '{"text": 3}', '{"text": "11", "context": 4}', "", "\x00", '{"text":"\\ud800"}', "{" * 5000]
)
def test_bad_lines_are_answered(line):
    """A line that is no such object prints as what it says, never as an error."""
    (answer,) = printed(line)
    assert set(answer) == {"acts"}


def test_context_that_makes_no_sense_is_not_told():
    """Fields of a wrong kind are passed over."""
    line = {"text": "11", "context": {"awaiting": "reps", "unit": "stone", "load": "x", "last": 4, "sides": 1, "target": True}}
    assert printed(json.dumps(line)) == [{"acts": [{"act": "log", "reps": 11}]}]


def test_acts_outside_the_contract_print_as_unclear():
    """So "How long left?" is the conversation's own."""
    assert printed("how long left?") == [{"acts": [{"act": "unclear"}]}]


def test_numbers_print_as_people_write_them():
    """20 and not 20.0; 17.5 as it is; bodyweight is 0."""
    assert '"load": 20,' in json.dumps(printed("11 at 20.0 kg"))
    assert printed("9 at 17.5kg")[0]["acts"][0]["load"] == 17.5
    assert printed("12 bodyweight")[0]["acts"] == [{"act": "log", "reps": 12, "load": 0}]


class _Flushed(io.StringIO):
    """Counts its flushes and keeps nothing."""

    flushes = 0

    def write(self, text: str) -> int:
        return len(text)

    def flush(self) -> None:
        self.flushes += 1


def test_thousands_of_lines_flushed_in_flat_memory():
    """Each line is flushed, and ten times the lines take no more memory."""

    def grown_by(lines):
        out = _Flushed()
        tracemalloc.start()
        run((f"{n % 30} at {n % 40}kg" for n in range(lines)), out)
        _, peak = tracemalloc.get_traced_memory()
        tracemalloc.stop()
        assert out.flushes == lines
        return peak

    grown_by(100)
    assert grown_by(3000) < 3 * grown_by(300) + 1_000_000
