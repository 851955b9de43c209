"""Time arithmetic: exact seconds, as ranges where the rests are ranges."""

import pytest

from core.circuit import Circuit, Span, Station
from core.tempo import Tempo
from core.timeline import (
    changes,
    fit,
    reps_each,
    reps_in,
    rest_s_per_round,
    round_s,
    station_work_s,
    total_s,
    work_s_per_round,
)


def station(**said) -> Station:
    """A station of a minute, unless said otherwise."""
    given = {"exercise": "goblet-squat", "work_s": 60, "reps": None, "tempo": Tempo(3, 0, 1, 0), "sides": False}
    return Station(**{**given, "reserve": Span(1, 2), **said})


def circuit(*stations: Station, **said) -> Circuit:
    """Three rounds, rests of 30 to 60 s, unless said otherwise."""
    given = {"rounds": 3, "rest_s": Span(30, 60), "rest_between_rounds_s": Span(60, 90), "warm_up_s": 0}
    return Circuit(name="Given", stations=stations, **{**given, **said})


def test_sides_work_twice_without_rest_between():
    """A per-side minute is two minutes of work."""
    assert station_work_s(station(sides=True)) == 120


def test_reps_take_their_tempo():
    """Twelve reps of 4 s are 48 s; 5 reps of 3.3 s are 16.5 s, counted as 17; each side again with sides."""
    assert station_work_s(station(work_s=None, reps=12)) == 48
    assert station_work_s(station(work_s=None, reps=5, tempo=Tempo(1, 1, 1.3, 0))) == 17
    assert station_work_s(station(work_s=None, reps=12, sides=True)) == 96


def test_no_rest_after_the_last_station():
    """Two stations have one rest, and a station's own rest goes before the circuit's."""
    given = circuit(station(rest_s=Span(10, 20)), station(), station(rest_s=Span(500, 500)))
    assert rest_s_per_round(given) == Span(10 + 30, 20 + 60)
    assert round_s(given) == Span(180 + 40, 180 + 80)


def test_the_whole_workout():
    """Warm-up, three rounds, two rests between rounds."""
    given = circuit(station(), station(), warm_up_s=300)
    assert work_s_per_round(given) == 120
    assert total_s(given) == Span(300 + 3 * 150 + 2 * 60, 300 + 3 * 180 + 2 * 90)


def test_a_single_station_in_a_single_round():
    """One station once is its work and nothing else."""
    given = circuit(station(), rounds=1)
    assert (rest_s_per_round(given), total_s(given)) == (Span(0, 0), Span(60, 60))


@pytest.mark.parametrize(
    ("work_s", "rep_s", "span"),
    [(60, 4, (12, 15)), (60, 5, (10, 12)), (60, 6, (8, 10)), (45, 4, (9, 11)), (30, 4, (6, 7)), (5, 4, (1, 1)), (5, 6, (0, 0))],
)
def test_reps_from_tempo(work_s: int, rep_s: float, span: tuple[int, int]):
    """4 s gives 12-15 in a minute, 5-6 s about 10 (common practice, no source); no rep fits in less than its own time."""
    assert reps_in(work_s, rep_s) == Span(*span)


def test_reps_at_a_station():
    """Each side by itself; a station in reps says them itself; a hold has none."""
    assert reps_each(station(sides=True)) == Span(12, 15)
    assert reps_each(station(work_s=None, reps=8)) == Span(8, 8)
    assert reps_each(station(exercise="plank", tempo=None)) is None


def test_the_most_rounds_and_then_the_longest_rests():
    """Two stations: a round is 150 to 180 s. In 10 minutes fit three rounds with 60 s of rest and 30 s to spare between."""
    given = circuit(station(), station())
    fits = fit(given, 600)
    assert (fits.rounds, fits.rest_s, fits.rest_between_rounds_s, fits.total_s) == (3, 40, 60, 600)
    longer = fit(given, 690)
    assert (longer.rounds, longer.rest_s, longer.rest_between_rounds_s, longer.total_s) == (3, 60, 75, 690)


def test_what_fits_is_never_longer_than_the_time_there_is():
    """For every time, the rounds fit, and one more would not."""
    given = circuit(station(), station(sides=True, rest_s=Span(15, 25)), station(), warm_up_s=120)
    for available_s in range(0, 4000, 7):
        fits = fit(given, available_s)
        if not fits.rounds:
            assert available_s < fits.total_s == 120 + round_s(given).low
            continue
        assert fits.total_s <= available_s
        assert 30 <= fits.rest_s <= 60
        assert 60 <= fits.rest_between_rounds_s <= 90
        one_more = 120 + (fits.rounds + 1) * round_s(given).low + fits.rounds * 60
        assert one_more > available_s


def test_changes_between_floor_and_standing():
    """Getting down and getting up again count; seated and standing do not."""
    given = circuit(
        station(),
        station(exercise="push-up"),
        station(exercise="plank"),
        station(exercise="curl"),
        station(exercise="turning-press"),
    )
    assert changes(given) == (0, 2)
