"""What a good coach would say about a circuit that is sound but not yet good."""

from core.circuit import Circuit
from core.circuit_text import read_typed
from core.circuit_warnings import warnings_of

GOOD = "goblet squat 12kg / one-arm row each side 12kg / push-up / rdl 12kg / overhead press 8kg / hammer curl 8kg / plank"


def said(stations: str, *, times: str = "60 work 60 rest, 3 rounds", minutes: int | None = None) -> list[str]:
    """All advice on a typed circuit, place and words in one."""
    circuit = read_typed(f"{stations} / {times}")
    assert isinstance(circuit, Circuit), circuit
    return [f"{advice.place}: {advice.says}" for advice in warnings_of(circuit, minutes)]


def test_a_good_circuit_needs_no_advice():
    """Push and pull, squat and hinge taking turns, floor and standing mixed: nothing to say."""
    assert said(GOOD) == []


def test_the_same_prime_mover_twice_in_a_row():
    """Two stations in a row whose main muscle is the same are told; parted by another they are not."""
    assert "stations 1 and 2: Push-up, then Floor press: the same prime mover twice" in said(
        "push-up / floor press / row with band"
    )
    assert not said("push-up / band row / floor press")


def test_a_grip_without_rest():
    """Two stations in a row that hold on hard are told."""
    assert "stations 1 and 2: Romanian deadlift, then Hammer curl: the grip gets no rest" in said("rdl / hammer curl")


def test_sides_forgotten():
    """A one-sided exercise without sides trains one side."""
    assert said("one-arm row / plank") == ["station 1: One-arm row works one side, and sides is not set"]


def test_too_many_pushes():
    """One pull for two pushes at least."""
    told = said("push-up / plank / overhead press / glute bridge / pike push-up or raised push-up")
    assert "the circuit: 3 pushes, pulls: 0" in told
    assert not [one for one in said(GOOD) if "pushes" in one]


def test_a_hinge_never_trained():
    """A circuit of five or more without a hinge is told; a short one may have it on another day."""
    without = GOOD.replace("rdl 12kg", "calf raise")
    assert "the circuit: no hinge" in said(without)
    assert "the circuit: no hinge" not in said("goblet squat / push-up")


def test_everything_in_one_posture():
    """Four stations or more all standing, or all on the floor."""
    assert "the circuit: everything standing" in said("goblet squat / one-arm row each side / rdl / overhead press / calf raise")
    assert "the circuit: everything on the floor" in said("push-up / glute bridge / dead bug / band row")


def test_a_hard_core_row_for_a_beginner():
    """An exercise for the practised is told, unless an easier one stands beside it as a swap."""
    assert "station 1: Plank row is for the practised" in said("plank row 8kg / glute bridge")
    assert said("plank row 8kg or one-arm row / glute bridge") == []


def test_a_press_where_the_load_does_not_fit():
    """An overhead press goes lighter than a row or floor press, and lighter again right after another push."""
    told = said("band row / overhead press 12kg / glute bridge / floor press 10kg")
    assert told == ["station 2: Overhead press heavier than Floor press (station 4)"]
    told = said("push-up / overhead press 8kg")
    assert "station 2: Overhead press with a load right after Push-up" in told


def test_plates_need_time():
    """Two loads in a row with less rest than a plate change takes (40 s unless the coach says otherwise) do not suit handles."""
    told = said("goblet squat 12kg / overhead press 8kg", times="rest 20-35, 3 rounds")
    assert told == ["stations 1 and 2: another load after 35 s of rest"]
    assert said("goblet squat 12kg / overhead press 12kg", times="rest 20-35, 3 rounds") == []
    assert said("goblet squat 12kg / overhead press 8kg", times="rest 20-45, 3 rounds") == []
    slow = said("goblet squat 12kg / overhead press 8kg", times="rest 20-45, plate change 60 s, 3 rounds")
    assert slow == ["stations 1 and 2: another load after 45 s of rest"]


def test_getting_up_needs_time():
    """Less than ten seconds between floor and standing is told."""
    assert said("push-up / calf raise", times="rest 5, 3 rounds") == ["stations 1 and 2: 5 s of rest between floor and standing"]


def test_a_total_far_from_what_was_asked():
    """Too long says how many rounds fit; much too short says how many would."""
    circuit = read_typed(f"{GOOD} / rest 30-60, 3 rounds")
    assert isinstance(circuit, Circuit)
    (long,) = warnings_of(circuit, 30)
    assert (long.says, long.remedy) == ("at least 34 min, asked for 30 min", "2 rounds fit")
    (short,) = warnings_of(circuit, 90)
    assert (short.says, short.remedy) == ("at most 44 min, asked for 90 min", "7 rounds would fit")
    assert warnings_of(circuit, 40) == ()
