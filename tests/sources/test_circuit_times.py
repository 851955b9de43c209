"""Times and reps against what can be worked out by hand or read in a table."""

import csv
import io
from decimal import Decimal
from pathlib import Path

import pint
import pytest

from core.circuit import Circuit
from core.circuit_file import read_circuit
from core.tempo import Tempo
from core.timeline import reps_in, rest_s_per_round, round_s, total_s, work_s_per_round

FIXTURES = Path(__file__).parents[2] / "fixtures"
TEMPO_TABLE = """tempo,seconds_per_rep,whole_reps_in_60_s,whole_reps_in_40_s
2-0-1-0,3,20,13
2-0-2-0,4,15,10
3-0-1-0,4,15,10
3-1-1-0,5,12,8
3-0-2-0,5,12,8
3-1-2-0,6,10,6
4-0-1-0,5,12,8
4-0-2-0,6,10,6
3-1-3-1,8,7,5
5-0-3-0,8,7,5
6-0-4-0,10,6,4
"""
"""Arithmetic from the definition of tempo (Wilk et al. 2018 for the notation): no other source is needed."""


def demo() -> Circuit:
    """The first circuit of the demo: seven stations of a minute, one per side, rests of 30 to 60 s."""
    circuit = read_circuit((FIXTURES / "demo" / "circuit.toml").read_text(encoding="utf-8"))
    assert isinstance(circuit, Circuit)
    return circuit


def test_the_worked_example():
    """Seven minutes of stations, one per side, is 8 minutes of work; with its six rests 11 to 14 minutes (common practice)."""
    unit = pint.UnitRegistry()
    circuit = demo()
    assert len(circuit.stations) == 7
    assert [station.sides for station in circuit.stations].count(True) == 1
    assert work_s_per_round(circuit) * unit.second == 8 * unit.minute
    assert rest_s_per_round(circuit).low * unit.second == 3 * unit.minute
    assert rest_s_per_round(circuit).high * unit.second == 6 * unit.minute
    assert round_s(circuit).low * unit.second == 11 * unit.minute
    assert round_s(circuit).high * unit.second == 14 * unit.minute


def test_three_rounds_do_not_fit_in_half_an_hour():
    """Even with the shortest rests, and without warm-up and rests between rounds, three rounds take 33 minutes."""
    circuit = demo()
    assert 3 * round_s(circuit).low == 33 * 60 > 30 * 60
    assert total_s(circuit).low > 30 * 60


@pytest.mark.parametrize("row", list(csv.DictReader(io.StringIO(TEMPO_TABLE))), ids=lambda row: row["tempo"])
def test_whole_reps_from_tempo(row: dict[str, str]):
    """Seconds of a rep are the sum of the four numbers; the most reps are the whole reps that fit."""
    rep_s = Tempo.parse(row["tempo"]).rep_s
    assert rep_s == Decimal(row["seconds_per_rep"])
    assert reps_in(60, rep_s).high == int(row["whole_reps_in_60_s"])
    assert reps_in(40, rep_s).high == int(row["whole_reps_in_40_s"])


def test_a_minute_at_the_usual_tempos():
    """4 s a rep gives 12 to 15 reps in a minute, 5 and 6 s about 10 (common practice, no source)."""
    assert (reps_in(60, 4).low, reps_in(60, 4).high) == (12, 15)
    for rep_s in (5, 6):
        assert reps_in(60, rep_s).low <= 10 <= reps_in(60, rep_s).high
