"""Adjustable dumbbells: which loads a handle and plates make, and which to use over a whole circuit.

Plates go on a handle in twos, one each side, so a pair of dumbbells needs each plate four times (arithmetic). A change
of plates takes time (40 s a pair unless the coach says otherwise; common practice, no source) and must fit into the
rest before the station. `plan` gives up as little as possible on the targets: three stations, rests of 60, 15 and 15 s,
best at 12, 14 and 12 kg a hand, come out as 12, 12, 12 when 14 does not fit between them.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal
from itertools import pairwise
from typing import Final

from core.rack import SIDES, Plate, Setup, setups

PAIR = 2
USUAL_CHANGE_S: Final = 40.0
EACH_CHANGE: Final = 0.25
"""A change costs a quarter of a rep, so that it is only made when it helps."""
MOST_CHOICES: Final = 6
"""Loads looked at for one station: its best ones."""
DOES_NOT_FIT: Final = 1000.0


@dataclass(frozen=True)
class PlateStation:
    """One station as the plan sees it.

    Attributes:
        rest_before_s: seconds before it, for the first station the rest between rounds.
        hands: dumbbells held: 2, 1, or 0 where none is used.
        costs: for each load that may be used, the expected distance from the target in reps.
    """

    rest_before_s: float
    hands: int
    costs: Mapping[Decimal, float]


@dataclass(frozen=True)
class PlannedStation:
    """What to hold at one station.

    Attributes:
        setup: None where no dumbbell is used.
        change: plates are changed before it (in every round but the first, for the first station).
        change_s: how long that takes.
        fits: it fits into the rest.
    """

    setup: Setup | None
    change: bool
    change_s: float
    fits: bool


@dataclass(frozen=True)
class RackPlan:
    """The plan for one round, the same in every round; `given_up` is in reps over all stations."""

    stations: tuple[PlannedStation, ...]
    given_up: float

    @property
    def changes(self) -> int:
        """Changes of plates in one round."""
        return sum(station.change for station in self.stations)

    @property
    def stretches(self) -> tuple[tuple[Setup, int, int], ...]:
        """Runs of stations with one setup: (setup, first, last), numbered from 1; stations without load belong to them."""
        runs: list[tuple[Setup, int, int]] = []
        for number, station in enumerate(self.stations, start=1):
            if station.setup is None:
                continue
            if runs and runs[-1][0] == station.setup:
                runs[-1] = (station.setup, runs[-1][1], number)
            else:
                runs.append((station.setup, number, number))
        return tuple(runs)


def plan(
    stations: Sequence[PlateStation],
    handle: Decimal,
    plates: Sequence[Plate],
    *,
    rounds: int,
    change_s: float = USUAL_CHANGE_S,
) -> RackPlan:
    """The loads of one round that give up least while changes fit the rests, for two handles alike.

    Args:
        stations: in order.
        handle: as in `setups`.
        plates: as in `setups`.
        rounds: more than one makes the way back to the first station count.
        change_s: seconds to change a pair; a single takes half.
    """
    choices = [_choices(station, handle, plates) for station in stations]
    loaded = [index for index, options in enumerate(choices) if options]
    if not loaded:
        return RackPlan(tuple(PlannedStation(None, change=False, change_s=0.0, fits=True) for _ in stations), 0.0)
    route = _Route(tuple(stations), tuple(choices), tuple(loaded), change_s, rounds, _stock(plates))
    return route.planned(route.cheapest())


def _choices(station: PlateStation, handle: Decimal, plates: Sequence[Plate]) -> tuple[Setup, ...]:
    """The best setups for one station."""
    if station.hands < 1:
        return ()
    made = [setup for setup in setups(handle, plates, hands=station.hands) if setup.load in station.costs]
    return tuple(sorted(made, key=lambda setup: station.costs[setup.load])[:MOST_CHOICES])


def _stock(plates: Sequence[Plate]) -> Counter[Decimal]:
    stock: Counter[Decimal] = Counter()
    for plate in plates:
        stock[plate.load] += plate.count
    return stock


Hands = tuple[Setup, Setup]
"""What is on the two handles."""


@dataclass(frozen=True)
class _Route:
    """The search for the cheapest way through the stations that use a load."""

    stations: tuple[PlateStation, ...]
    choices: tuple[tuple[Setup, ...], ...]
    loaded: tuple[int, ...]
    change_s: float
    rounds: int
    stock: Counter[Decimal]

    def cheapest(self) -> tuple[Hands, ...]:
        """What is on the handles at each loaded station."""
        best: tuple[float, tuple[Hands, ...]] | None = None
        for start in self._starts():
            found = self._from(start)
            if best is None or found[0] < best[0]:
                best = found
        assert best is not None  # noqa: S101 - a loaded station has a choice, and a choice is a start
        return best[1]

    def _starts(self) -> list[Hands]:
        first = self.loaded[0]
        if self.stations[first].hands == PAIR:
            return [(setup, setup) for setup in self.choices[first]]
        every = dict.fromkeys(setup for options in self.choices for setup in options)
        return [(setup, other) for setup in self.choices[first] for other in every if self._possible((setup, other))]

    def _from(self, start: Hands) -> tuple[float, tuple[Hands, ...]]:
        """Cost and way of the cheapest round that begins with `start`."""
        first = self.loaded[0]
        ways: dict[Hands, tuple[float, tuple[Hands, ...]]] = {start: (self._cost(first, start), (start,))}
        for before, index in pairwise(self.loaded):
            rest_s = self._rest_s(before, index)
            nexts: dict[Hands, tuple[float, tuple[Hands, ...]]] = {}
            for held, (cost, way) in ways.items():
                for then in self._options(index, held):
                    total = cost + self._cost(index, then) + self._change_cost(held, then, rest_s)
                    if then not in nexts or total < nexts[then][0]:
                        nexts[then] = (total, (*way, then))
            ways = nexts
        if self.rounds > 1:
            rest_s = self._rest_s(self.loaded[-1], first)
            ways = {held: (cost + self._change_cost(held, start, rest_s), way) for held, (cost, way) in ways.items()}
        return min(ways.values(), key=lambda found: found[0])

    def _options(self, index: int, held: Hands) -> list[Hands]:
        if self.stations[index].hands == PAIR:
            return [(setup, setup) for setup in self.choices[index]]
        left, right = held
        both = [(setup, right) for setup in self.choices[index]] + [(left, setup) for setup in self.choices[index]]
        return [hands for hands in both if self._possible(hands)] or [(setup, setup) for setup in self.choices[index][:1]]

    def _possible(self, hands: Hands) -> bool:
        """Whether there are plates enough for both handles."""
        used: Counter[Decimal] = Counter()
        for setup in hands:
            for size in setup.a_side:
                used[size] += SIDES
        return all(self.stock[size] >= number for size, number in used.items())

    def _rest_s(self, before: int, index: int) -> float:
        """Seconds between two loaded stations; what lies between them without load is not used for changing."""
        count = len(self.stations)
        steps = (index - before) % count or count
        return sum(self.stations[(before + step) % count].rest_before_s for step in range(1, steps + 1))

    def _cost(self, index: int, held: Hands) -> float:
        costs = self.stations[index].costs
        return min(costs[setup.load] for setup in held if setup in self.choices[index])

    def _takes_s(self, held: Hands, then: Hands) -> float:
        return self.change_s / PAIR * sum(now != later for now, later in zip(held, then, strict=True))

    def _change_cost(self, held: Hands, then: Hands, rest_s: float) -> float:
        takes_s = self._takes_s(held, then)
        if takes_s == 0.0:
            return 0.0
        return EACH_CHANGE + (DOES_NOT_FIT if takes_s > rest_s else 0.0)

    def planned(self, way: tuple[Hands, ...]) -> RackPlan:
        """The plan that a way means."""
        planned = [PlannedStation(None, change=False, change_s=0.0, fits=True) for _ in self.stations]
        given_up = 0.0
        for place, index in enumerate(self.loaded):
            held, before = way[place], way[place - 1]
            takes_s = self._takes_s(before, held) if place or self.rounds > 1 else 0.0
            costs = self.stations[index].costs
            setup = min((setup for setup in held if setup in self.choices[index]), key=lambda setup: costs[setup.load])
            given_up += costs[setup.load] - min(costs[option.load] for option in self.choices[index])
            fits = takes_s <= self._rest_s(self.loaded[place - 1], index)
            planned[index] = PlannedStation(setup, change=takes_s > 0, change_s=takes_s, fits=fits)
        return RackPlan(tuple(planned), given_up)
