"""Handles and plates: what can be built, and what to leave on over a circuit."""

from collections import Counter
from decimal import Decimal
from itertools import product

import pytest

from core.rack import Plate, Setup, setups
from core.rack_plan import PlateStation, plan

PLATES = (Plate(Decimal("1.25"), 8), Plate(Decimal("2.5"), 4), Plate(Decimal(5), 4), Plate(Decimal("0.5"), 4))
HANDLE = Decimal(2)


def brute_loads(hands):
    """Every load, by trying every number of plates a side."""
    counts = [plate.count // (2 * hands) for plate in PLATES]
    ways = product(*(range(count + 1) for count in counts))
    return {
        HANDLE + 2 * sum(number * plate.load for number, plate in zip(way, PLATES, strict=True)) for way in ways if sum(way) <= 5
    }


@pytest.mark.parametrize("hands", [1, 2])
def test_every_load_that_can_be_built_is_found(hands):
    """The same loads as by trying every combination (arithmetic: plates go on in twos, a pair needs four)."""
    assert {setup.load for setup in setups(HANDLE, PLATES, hands=hands)} == brute_loads(hands)


@pytest.mark.parametrize("hands", [1, 2])
def test_every_setup_weighs_what_it_says_from_plates_that_exist(hands):
    """Handle plus twice the side is the load, and no plate is used more often than there are."""
    for setup in setups(HANDLE, PLATES, hands=hands):
        assert HANDLE + 2 * sum(setup.a_side) == setup.load
        used = Counter(setup.a_side)
        assert all(used[plate.load] * 2 * hands <= plate.count for plate in PLATES)


def test_three_odd_plates_make_no_pair():
    """Three plates of a size do for one dumbbell, not for two."""
    odd = (Plate(Decimal(5), 3),)
    assert [setup.load for setup in setups(HANDLE, odd, hands=1)] == [2, 12]
    assert [setup.load for setup in setups(HANDLE, odd, hands=2)] == [2]


def near(best, hands=2):
    """Costs that grow with the distance from the best load."""
    return {setup.load: abs(float(setup.load) - best) for setup in setups(HANDLE, PLATES, hands=hands)}


def station(best, *, rest_s=60.0, hands=2):
    """A station with its best load."""
    return PlateStation(rest_s, hands, near(best, hands) if hands else {})


def loads(planned):
    """The loads of a plan."""
    return [None if station.setup is None else station.setup.load for station in planned.stations]


def test_changes_that_fit_are_made():
    """A minute's rest leaves forty seconds for a pair: each station gets its best load."""
    planned = plan([station(12), station(17), station(7)], HANDLE, PLATES, rounds=3)
    assert loads(planned) == [12, 17, 7]
    assert planned.given_up == 0
    assert planned.changes == 3


def test_a_change_that_does_not_fit_is_not_made():
    """Fifteen seconds between the stations: the same plates stay on, at the load that gives up least."""
    planned = plan([station(12), station(14.5, rest_s=15), station(12, rest_s=15)], HANDLE, PLATES, rounds=3)
    assert loads(planned) == [12, 12, 12]
    assert planned.given_up == pytest.approx(2.5)
    assert all(station.fits for station in planned.stations)


def test_a_change_for_next_to_nothing_is_not_made():
    """Half a kilogram is not worth unscrewing two dumbbells."""
    assert loads(plan([station(12), station(12.2)], HANDLE, PLATES, rounds=1)) == [12, 12]


def test_the_way_back_to_the_first_station_counts():
    """With rounds, the rest before station one must hold the change back; with one round there is none."""
    back_is_short = [station(12, rest_s=10), station(17, rest_s=60)]
    assert len(set(loads(plan(back_is_short, HANDLE, PLATES, rounds=3)))) == 1
    assert loads(plan(back_is_short, HANDLE, PLATES, rounds=1)) == [12, 17]


def test_a_station_without_load_lends_its_rest():
    """Two short rests around a plank are long enough together."""
    planned = plan([station(12, rest_s=90), station(0, rest_s=25, hands=0), station(17, rest_s=25)], HANDLE, PLATES, rounds=2)
    assert loads(planned) == [12, None, 17]


def test_a_single_uses_one_handle_and_half_the_time():
    """A goblet squat between two pair stations: one handle changes in twenty seconds."""
    planned = plan([station(7, rest_s=90), station(17, hands=1, rest_s=25), station(7, rest_s=25)], HANDLE, PLATES, rounds=2)
    assert loads(planned) == [7, 17, 7]
    assert planned.stations[1].change_s == 20


def test_both_handles_share_the_plates():
    """No plan puts more on the two handles than there are plates."""
    few = (Plate(Decimal(5), 4),)
    costs = {setup.load: abs(float(setup.load) - 22) for setup in setups(HANDLE, few, hands=1)}
    pair = {setup.load: abs(float(setup.load) - 12) for setup in setups(HANDLE, few, hands=2)}
    stations = [PlateStation(90, 2, pair), PlateStation(90, 1, costs), PlateStation(90, 2, pair)]
    assert loads(plan(stations, HANDLE, few, rounds=1)) == [12, 12, 12]


def test_where_nothing_fits_the_plan_says_so():
    """Two stations that share no load and no rest: a change that does not fit is marked."""
    only = [PlateStation(10, 2, {Decimal(12): 0.0}), PlateStation(10, 2, {Decimal(7): 0.0})]
    planned = plan(only, HANDLE, PLATES, rounds=2)
    assert [station.fits for station in planned.stations] == [False, False]


def test_runs_of_one_setup_are_told_together():
    """Leave the 12s on for stations 2 to 4: a plank in between belongs to the run."""
    stations = [station(17, rest_s=90), station(12), station(0, hands=0), station(12, rest_s=20)]
    planned = plan(stations, HANDLE, PLATES, rounds=3)
    assert [(setup.load, first, last) for setup, first, last in planned.stretches] == [(17, 1, 1), (12, 2, 4)]


def test_the_plan_is_the_cheapest_there_is():
    """Against trying every way through four pair stations (brute force)."""
    wanted, rests = [12, 14.5, 9.5, 13], [50, 30, 45, 20]
    stations = [station(best, rest_s=rest) for best, rest in zip(wanted, rests, strict=True)]
    options = setups(HANDLE, PLATES, hands=2)

    def total(way: tuple[Setup, ...]) -> float:
        cost = sum(stations[index].costs[setup.load] for index, setup in enumerate(way))
        for index, setup in enumerate(way):
            if setup != way[index - 1]:
                cost += 0.25 + (1000 if rests[index] < 40 else 0)
        return cost

    planned = plan(stations, HANDLE, PLATES, rounds=3)
    found = total(tuple(station.setup for station in planned.stations))
    assert found == pytest.approx(min(total(way) for way in product(options, repeat=4)))


def test_nothing_to_hold_anywhere():
    """A circuit without loads has an empty plan."""
    assert plan([station(0, hands=0)], HANDLE, PLATES, rounds=3).stretches == ()
