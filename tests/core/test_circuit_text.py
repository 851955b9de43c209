"""A circuit typed on a phone gives the same circuit as a file."""

from decimal import Decimal

import pytest

from core.circuit import Circuit, Span
from core.circuit_file import read_circuit
from core.circuit_text import draft_typed, read_typed, write_typed
from core.tempo import Tempo
from core.units import BODYWEIGHT, Load, Unit


def typed(text: str) -> Circuit:
    """The circuit of a typed text that has no faults."""
    circuit = read_typed(text)
    assert isinstance(circuit, Circuit), circuit
    return circuit


def told(text: str) -> list[tuple[str, str]]:
    """Place and words of every fault of a typed text."""
    return [(fault.place, fault.says) for fault in draft_typed(text).faults]


def test_the_short_form():
    """Stations between slashes, work, rest and rounds at the end; the rest between rounds is the same rest."""
    circuit = typed("goblet squat / one-arm row, each side / plank / 60 work 45 rest, 3 rounds")
    assert [station.exercise for station in circuit.stations] == ["goblet-squat", "one-arm-row", "plank"]
    assert [station.sides for station in circuit.stations] == [False, True, False]
    assert {station.work_s for station in circuit.stations} == {60}
    assert (circuit.rounds, circuit.rest_s, circuit.rest_between_rounds_s) == (3, Span(45, 45), Span(45, 45))


def test_text_and_file_give_the_same_circuit():
    """What can be said in one form is said alike in the other."""
    file = read_circuit(
        """
        name = "Monday"
        rounds = 3
        rest_s = [30, 60]
        rest_between_rounds_s = 90
        warm_up_s = 300
        [[station]]
        exercise = "Goblet squat"
        work_s = 40
        tempo = "4-1-1-0"
        load_hint = "16 kg"
        reserve = 2
        form = ["Heels stay heavy"]
        swap = ["Bodyweight squat"]
        [[station]]
        exercise = "Push-up"
        reps = 12
        rest_s = 20
        [[station]]
        exercise = "One-arm row"
        work_s = 40
        sides = true
        load_hint = "17.5 kg"
        """
    )
    text = """name: Monday
        goblet squat 16kg 4-1-1-0, 2 left, or air squat, "Heels stay heavy"
        push-ups x12, 20 s rest
        db row each side @ 17 1/2 kg
        40 on 30-60 off, 3 rounds, 90 s between rounds, 5 min warm-up"""
    assert typed(text) == file


@pytest.mark.parametrize(
    "times",
    [
        "40 work 20 rest, 3 rounds",
        "work 40, rest 20, rounds 3",
        "40s on 20s off x 3 rounds",
        "3 rounds of 40/20",
        "40 sec work / 20 sec rest / 3 rounds",
        "3 rounds\n40 seconds work\n20 seconds rest",
        "0:40 work, 0:20 rest, 3 rounds",
    ],
)
def test_ways_to_say_the_times(times: str):
    """Number first or word first, with units or without, on one line or several."""
    circuit = typed(f"plank\npush-up\n{times}")
    assert [station.work_s for station in circuit.stations] == [40, 40]
    assert (circuit.rest_s, circuit.rounds) == (Span(20, 20), 3)


@pytest.mark.parametrize(
    ("says", "span"),
    [
        ("90", (90, 90)),
        ("60-90 s", (60, 90)),
        ("1-2 min", (60, 120)),
        ("1.5 min", (90, 90)),
        ("1:30", (90, 90)),
        ("60 to 90", (60, 90)),
    ],
)
def test_times_and_ranges(says: str, span: tuple[int, int]):
    """A unit after a range holds for both numbers; no unit is seconds."""
    circuit = typed(f"plank / 3 rounds, rest 30, between rounds {says}")
    assert circuit.rest_between_rounds_s == Span(*span)


@pytest.mark.parametrize(
    "text",
    [
        "1. goblet squat\n2. plank\n3 rounds, rest 30",
        "- goblet squat\n- plank\n3 rounds, rest 30",
        "• goblet squat\n\n• plank\n\n3 rounds, rest 30",
        "goblet squat, plank\n3 rounds, rest 30",
        "3 rounds of:\ngoblet squat\nplank\nrest 30",
        "3 rounds, rest 30 / Goblet Squats / PLANK",
    ],
)
def test_lists_and_lines(text: str):
    """Numbers and bullets of a list are no numbers of the circuit; commas part known exercises too."""
    circuit = typed(text)
    assert [station.exercise for station in circuit.stations] == ["goblet-squat", "plank"]
    assert (circuit.rounds, circuit.rest_s) == (3, Span(30, 30))


def test_a_heading_names_the_circuit():
    """A line that ends with a colon, or "name:", is the name; without one it is called a circuit."""
    assert typed("Monday legs:\nplank / 3 rounds, rest 30").name == "Monday legs"
    assert typed("name: Legs 2\nplank / 3 rounds, rest 30").name == "Legs 2"
    assert typed("plank / 3 rounds, rest 30").name == "Circuit"


def test_what_is_said_of_one_station_stays_there():
    """Work, rest, tempo and load beside an exercise are its own; those alone on a line are for all."""
    circuit = typed(
        "goblet squat, 30 s, rest 15 / push-up tempo 4-0-1-0 / curl, bodyweight\ncurl 8 reps, 12 lb\nwork 50, rest 40, 2 rounds"
    )
    squat, push, light, curl = circuit.stations
    assert (squat.work_s, squat.rest_s) == (30, Span(15, 15))
    assert (push.work_s, push.tempo, push.rest_s) == (50, Tempo(4, 0, 1, 0), None)
    assert (curl.reps, curl.work_s, curl.load_hint) == (8, None, Load(Decimal(12), Unit.LB))
    assert light.exercise == "curl"
    assert circuit.rest_s == Span(40, 40)


def test_bodyweight_after_a_comma_is_a_load():
    """The word bodyweight alone is a load; in a name it stays a name."""
    squat, push = typed("bodyweight squat / push-up, bodyweight / 3 rounds rest 30").stations
    assert (squat.exercise, squat.load_hint) == ("bodyweight-squat", None)
    assert (push.exercise, push.load_hint) == ("push-up", BODYWEIGHT)


@pytest.mark.parametrize(
    ("text", "faults"),
    [
        ("", [("rounds", "nothing"), ("rest", "nothing"), ("station", "0 stations")]),
        ("plank / rest 30", [("rounds", "nothing")]),
        ("plank / 3 rounds", [("rest", "nothing")]),
        ("gobblet squad / 3 rounds rest 30", [("station 1, exercise", '"gobblet squad"')]),
        ("row / plank 12 / 3 rounds rest 30", [("station 1, exercise", '"row"'), ("station 2, exercise", '"plank 12"')]),
        ("plank / 3 rounds / 4 rounds / rest 30", [("rounds", '"3 and 4"')]),
        ("curl 12 kg 16 kg / 3 rounds rest 30", [("station 1, load_hint", '"12 kg and 16 kg"')]),
        ("curl 12 reps 40 s / 3 rounds rest 30", [("station 1, reps", "work = 40 and reps = 12")]),
        ("plank 1:99 / 3 rounds rest 30", [("station 1, work", '"1:99"')]),
        ("curl tempo 3-1 / 3 rounds rest 30", [("station 1, tempo", '"3-1"')]),
        ("plank x12 / 3 rounds rest 30", [("station 1, reps", "reps = 12")]),
        ("curl 500 kg / 3 rounds rest 60-30", [("rest", "[60, 30]"), ("station 1, load_hint", '"500 kg"')]),
        ("plank or flank / 3 rounds rest 30", [("station 1, swap", '"flank"')]),
    ],
)
def test_faults_come_all_at_once_in_plain_words(text: str, faults: list[tuple[str, str]]):
    """Each fault has its place; a number that fits nowhere is never dropped; two numbers for one thing are a fault."""
    assert told(text) == faults


def test_a_form_point_may_hold_anything():
    """What stands in quotes is kept as it is: slashes, commas, numbers, quotes."""
    point = 'Down 1/2 way, "then" 3 rounds / rest 30'
    circuit = typed('curl, form "Down 1/2 way, \\"then\\" 3 rounds / rest 30" / 2 rounds, rest 45')
    assert circuit.stations[0].form == (point,)
    assert typed(write_typed(circuit)) == circuit
    assert typed("curl “Slow / down” / 2 rounds, rest 45").stations[0].form == ("Slow / down",)
