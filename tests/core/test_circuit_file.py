"""A circuit file: TOML in, a circuit or every fault out; and back."""

from decimal import Decimal
from pathlib import Path

import pytest

from core.circuit import Circuit, Span
from core.circuit_file import draft_circuit, parse_load, read_circuit, write_circuit
from core.tempo import Tempo
from core.units import BODYWEIGHT, Load, Unit

FIXTURES = Path(__file__).parents[2] / "fixtures"
BROKEN = sorted((FIXTURES / "circuits" / "broken").glob("*.toml"))
SMALL = """
name = "Small"
rounds = 2
rest_s = 45
rest_between_rounds_s = [60, 90]

[[station]]
exercise = "goblet squats"
"""


def circuit_of(text: str) -> Circuit:
    """The circuit of a text that has no faults."""
    circuit = read_circuit(text)
    assert isinstance(circuit, Circuit), circuit
    return circuit


def test_what_a_station_leaves_out():
    """A minute of work, the exercise's own tempo, both sides at once, the circuit's rest, one or two reps in reserve."""
    circuit = circuit_of(SMALL)
    station = circuit.stations[0]
    assert (circuit.name, circuit.rounds, circuit.rest_s, circuit.warm_up_s) == ("Small", 2, Span(45, 45), 0)
    assert circuit.rest_between_rounds_s == Span(60, 90)
    assert (station.exercise, station.work_s, station.reps, station.sides) == ("goblet-squat", 60, None, False)
    assert station.tempo == Tempo(3, 1, 1, 0)
    assert (station.reserve, station.rest_s, station.load_hint) == (Span(1, 2), None, None)
    assert (station.form, station.swap) == ((), ())


def test_all_a_station_may_say():
    """Every key is read as the design of circuit files says."""
    circuit = circuit_of(
        SMALL
        + """
        reps = 12
        tempo = "2-0-X-0"
        sides = true
        rest_s = [20, 40]
        reserve = [2, 3]
        load_hint = "17,5 kg"
        form = ["Heels down"]
        swap = ["air squat", "Wall sit"]
        [[station]]
        exercise = "plank"
        work_s = 40
        form = "One line"
        swap = "knee plank"
        """
    )
    squat, plank = circuit.stations
    assert (squat.work_s, squat.reps, squat.tempo, squat.sides) == (None, 12, Tempo(2, 0, 1, 0), True)
    assert (squat.rest_s, squat.reserve) == (Span(20, 40), Span(2, 3))
    assert squat.load_hint == Load(Decimal("17.5"), Unit.KG)
    assert (squat.form, squat.swap) == (("Heels down",), ("bodyweight-squat", "wall-sit"))
    assert (plank.work_s, plank.tempo, plank.form, plank.swap) == (40, None, ("One line",), ("knee-plank",))


def test_a_single_round_needs_no_rest_between_rounds():
    """With one round the rest between rounds may be left out; with more it may not."""
    single = SMALL.replace("rest_between_rounds_s = [60, 90]\n", "")
    assert isinstance(read_circuit(single.replace("rounds = 2", "rounds = 1")), Circuit)
    assert [fault.place for fault in draft_circuit(single).faults] == ["rest_between_rounds_s"]


@pytest.mark.parametrize(
    ("text", "load"),
    [
        ("20 kg", Load(Decimal(20), Unit.KG)),
        ("12.5kg", Load(Decimal("12.5"), Unit.KG)),
        ("17,5 kilos", Load(Decimal("17.5"), Unit.KG)),
        ("35 lb", Load(Decimal(35), Unit.LB)),
        ("Bodyweight", BODYWEIGHT),
        ("20", None),
        ("0 kg", None),
        ("-5 kg", None),
        ("201 kg", None),
        ("441 lb", None),
        ("heavy", None),
    ],
)
def test_a_load_has_a_unit_and_is_possible(text: str, load: Load | None):
    """A number without a unit is no load; neither is nothing, nor more than 200 kg in a hand."""
    assert parse_load(text) == load


def test_there_are_thirty_broken_files():
    """Thirty broken files at least, each with what is expected of it on top."""
    assert len(BROKEN) >= 30


@pytest.mark.parametrize("path", BROKEN, ids=lambda path: path.stem)
def test_a_broken_file_tells_every_fault(path: Path):
    """All faults at once, in the order of the file, each with its place, what it says, and a remedy."""
    text = path.read_text(encoding="utf-8")
    expected = [line.removeprefix("# expect: ").split(" | ") for line in text.splitlines() if line.startswith("# expect: ")]
    faults = read_circuit(text)
    assert isinstance(faults, tuple)
    assert [fault.place for fault in faults] == [place.strip() for place, _, _ in expected]
    for fault, (_, says, remedy) in zip(faults, expected, strict=True):
        assert says.strip() in {"", fault.says}
        assert remedy.strip() in fault.remedy
        assert "\n" not in fault.place + fault.says + fault.remedy


def test_a_misspelt_exercise_still_has_its_times():
    """A fault that does not touch the clock leaves the circuit to be measured; one that does leaves nothing."""
    misspelt = draft_circuit(SMALL.replace("goblet squats", "gobblet squad"))
    assert misspelt.faults
    assert misspelt.circuit is not None
    assert misspelt.circuit.stations[0].work_s == 60
    assert draft_circuit(SMALL + "work_s = 0").circuit is None
    assert draft_circuit(SMALL.replace("goblet squats", "gobblet squad") + "reps = 12").circuit is None


def test_a_demo_circuit_survives_printing():
    """Writing a circuit and reading it again changes nothing."""
    for path in sorted((FIXTURES / "demo").glob("circuit*.toml")):
        circuit = circuit_of(path.read_text(encoding="utf-8"))
        assert circuit_of(write_circuit(circuit)) == circuit
