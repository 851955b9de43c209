"""For any circuit: printing it and reading it again changes nothing, in both forms; any text at all is answered."""

import string
from decimal import Decimal

from hypothesis import given, settings
from hypothesis import strategies as st

from core import catalogue, timeline
from core.circuit import Circuit, Span, Station
from core.circuit_file import draft_circuit, read_circuit, write_circuit
from core.circuit_text import draft_typed, read_typed, write_typed
from core.exercise import Measure
from core.tempo import Tempo
from core.units import BODYWEIGHT, Load, Unit

SLUGS = sorted(catalogue.all_exercises())
EVEN = settings(derandomize=True, deadline=None, max_examples=150)


def spans(low: int, high: int) -> st.SearchStrategy[Span]:
    """Ranges within these limits, single numbers among them."""
    return st.tuples(st.integers(low, high), st.integers(low, high)).map(lambda pair: Span(min(pair), max(pair)))


def words(length: int) -> st.SearchStrategy[str]:
    """Printable texts without blanks at their ends, with all the signs that could be mistaken for ours."""
    letters = st.sampled_from(string.ascii_letters + string.digits + " /,;:.-–\"'“”\\[]#=½é\N{HEAVY CHECK MARK}")
    return st.text(letters, min_size=1, max_size=length).map(str.strip).filter(bool)


LOADS = st.one_of(
    st.none(),
    st.just(BODYWEIGHT),
    st.builds(lambda quarters, unit: Load(Decimal(quarters) / 4, unit), st.integers(1, 320), st.sampled_from([Unit.KG, Unit.LB])),
)
PHASES = st.integers(0, 8).map(lambda halves: halves / 2)


@st.composite
def stations(draw: st.DrawFn) -> Station:
    """Any station that a circuit file can hold."""
    exercise = catalogue.exercise(draw(st.sampled_from(SLUGS)))
    counts = exercise.measure is Measure.REPS
    reps = draw(st.integers(1, 200)) if counts and draw(st.booleans()) else None
    tempo = exercise.tempo
    if counts and draw(st.booleans()):
        tempo = Tempo(*draw(st.tuples(PHASES, PHASES, PHASES, PHASES).filter(any)))
    return Station(
        exercise=exercise.slug,
        work_s=draw(st.integers(20, 600)) if reps is None else None,
        reps=reps,
        tempo=tempo,
        sides=draw(st.booleans()),
        reserve=draw(spans(0, 10)),
        rest_s=draw(st.one_of(st.none(), spans(0, 900))),
        load_hint=draw(LOADS),
        form=tuple(draw(st.lists(words(60), max_size=3))),
        swap=tuple(draw(st.lists(st.sampled_from(SLUGS).filter(lambda slug: slug != exercise.slug), max_size=3, unique=True))),
    )


CIRCUITS = st.builds(
    Circuit,
    name=words(40),
    rounds=st.integers(1, 20),
    rest_s=spans(0, 900),
    rest_between_rounds_s=spans(0, 900),
    warm_up_s=st.integers(0, 3600),
    plate_change_s=st.integers(5, 300),
    stations=st.lists(stations(), min_size=1, max_size=6).map(tuple),
)


@EVEN
@given(CIRCUITS)
def test_a_file_round_trip_changes_nothing(circuit: Circuit):
    """TOML out and in."""
    assert read_circuit(write_circuit(circuit)) == circuit


@EVEN
@given(CIRCUITS)
def test_a_text_round_trip_changes_nothing(circuit: Circuit):
    """Plain text out and in, and so both forms give the same circuit."""
    assert read_typed(write_typed(circuit)) == circuit


# fmt: off
SCRAPS = st.sampled_from([
    "goblet squat", "row", "plank", "push-up x12", "12", "40", "1:99", "3-1-1-0", "tempo", "30-60", "each side",
    "12 kg", "1/2", "½", "2 left", "rest", "work", "rounds", "3 rounds", "between", "warm-up", "min", "s", "or",
    "swap", "name:", "form", '"', "“", "”", "\\", "/", ",", ";", "\n", ":", "x", "-", "5-", "99999999999999999999",
    ".5", "bodyweight", "0", "40/20",
])
# fmt: on


@EVEN
@given(st.lists(SCRAPS, max_size=14).map(" ".join))
def test_scraps_of_a_circuit_are_answered(text: str):
    """Pieces of the typed form in any order: a circuit or faults; and a circuit that comes out survives printing."""
    circuit = read_typed(text)
    if isinstance(circuit, Circuit):
        assert read_typed(write_typed(circuit)) == circuit
    else:
        assert circuit


@EVEN
@given(st.text(max_size=200))
def test_any_text_is_answered(text: str):
    """Whatever is typed or stands in a file: a circuit or faults, never an error and never neither."""
    for draft in (draft_typed(text), draft_circuit(text)):
        assert draft.circuit is not None or draft.faults


@EVEN
@given(CIRCUITS, st.integers(0, 20_000))
def test_times_add_up(circuit: Circuit, available_s: int):
    """The shortest is never longer than the longest; what fits, fits; a round is its work and its rests."""
    once_s, total_s = timeline.round_s(circuit), timeline.total_s(circuit)
    assert once_s.low <= once_s.high
    assert circuit.rounds * once_s.low <= total_s.low <= total_s.high
    fits = timeline.fit(circuit, available_s)
    assert fits.rounds == 0 or fits.total_s <= available_s
