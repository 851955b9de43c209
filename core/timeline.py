"""How long a circuit takes, and what fits: exact seconds, as ranges where the rests are ranges.

Seven stations of a minute, one of them per side, with rests of 30 to 60 s, make one round of

    work 60, rest 30-60, left 60, right 60, rest 30-60, work 60, rest 30-60, … work 60

which is 8 minutes of work and six rests, 11 to 14 minutes (arithmetic). Three such rounds do not fit in half
an hour. No rest is counted after the last station: between rounds the rest between rounds takes its place. A
station counted in reps takes reps times the seconds of a rep, rounded up.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

from core import catalogue
from core.circuit import Span
from core.exercise import Posture
from core.tempo import whole_reps

if TYPE_CHECKING:
    from core.circuit import Circuit, Station

REP_S = 4.0
"""Seconds of a rep where no tempo is known (common practice, no source)."""
CHANGE_S = 10
"""Seconds to get down to the floor or up from it and set up, unhurried (common practice, no source)."""


@dataclass(frozen=True)
class Fit:
    """What fits in a given time: rounds, and the longest rests the circuit allows that still fit.

    `rest_s` is the rest between stations (a station's own rest stays at its shortest),
    `rest_between_rounds_s` the rest between rounds, `total_s` all of it, warm-up included. With no round that
    fits, all are 0 but `total_s`, which is the shortest a single round would take.
    """

    rounds: int
    rest_s: int
    rest_between_rounds_s: int
    total_s: int


def station_work_s(station: Station) -> int:
    """Seconds of work at a station in one round, both sides when it has sides."""
    if station.work_s is not None:
        once_s = station.work_s
    else:
        rep_s = station.tempo.rep_s if station.tempo else REP_S
        once_s = math.ceil((station.reps or 0) * rep_s)
    return 2 * once_s if station.sides else once_s


def work_s_per_round(circuit: Circuit) -> int:
    """Seconds of work in one round."""
    return sum(map(station_work_s, circuit.stations))


def rest_s_per_round(circuit: Circuit) -> Span:
    """Seconds of rest inside one round: after every station but the last."""
    rests = [circuit.rest_after_s(index) for index in range(len(circuit.stations) - 1)]
    return Span(sum(rest.low for rest in rests), sum(rest.high for rest in rests))


def round_s(circuit: Circuit) -> Span:
    """Seconds of one round, from the first station's work to the end of the last one's."""
    work_s, rest_s = work_s_per_round(circuit), rest_s_per_round(circuit)
    return Span(work_s + rest_s.low, work_s + rest_s.high)


def total_s(circuit: Circuit) -> Span:
    """Seconds of the whole workout: warm-up, rounds, and the rests between rounds."""
    once_s, between_s, gaps = round_s(circuit), circuit.rest_between_rounds_s, circuit.rounds - 1
    return Span(
        circuit.warm_up_s + circuit.rounds * once_s.low + gaps * between_s.low,
        circuit.warm_up_s + circuit.rounds * once_s.high + gaps * between_s.high,
    )


def reps_in(work_s: int, rep_s: float) -> Span:
    """The reps to expect in `work_s` seconds at `rep_s` seconds each.

    High is what the clock allows; low is about four fifths of it, for the set-up and for breaths between
    reps. So 4 s gives 12 to 15 in a minute, 5 s 10 to 12, 6 s 8 to 10 (common practice, no source).
    """
    high = whole_reps(work_s, rep_s)
    return Span(max(min(1, high), (8 * high + 5) // 10), high)


def reps_each(station: Station) -> Span | None:
    """The reps to expect at a station, on each side when it has sides; None for a hold or a carry.

    An exercise that nobody knows, in a draft, is taken to be counted in reps.
    """
    if station.reps is not None or station.work_s is None:
        return Span(station.reps or 0, station.reps or 0)
    if station.tempo is not None:
        return reps_in(station.work_s, station.tempo.rep_s)
    return None if station.exercise in catalogue.all_exercises() else reps_in(station.work_s, REP_S)


def fit(circuit: Circuit, available_s: int) -> Fit:
    """The most rounds that fit in `available_s` seconds, and then the longest rests that still do.

    Rests between stations grow first, then those between rounds, within what the circuit allows. The
    circuit's own number of rounds does not matter here.
    """
    shortest_s, rest_s, between_s = round_s(circuit).low, circuit.rest_s, circuit.rest_between_rounds_s
    rounds = (available_s - circuit.warm_up_s + between_s.low) // (shortest_s + between_s.low)
    if rounds < 1:
        return Fit(0, 0, 0, circuit.warm_up_s + shortest_s)
    used_s = circuit.warm_up_s + rounds * shortest_s + (rounds - 1) * between_s.low
    rests = rounds * sum(station.rest_s is None for station in circuit.stations[:-1])
    longer_s = _stretch_s(rest_s, rests, available_s - used_s)
    used_s += rests * longer_s
    longer_between_s = _stretch_s(between_s, rounds - 1, available_s - used_s)
    used_s += (rounds - 1) * longer_between_s
    return Fit(rounds, rest_s.low + longer_s, between_s.low + longer_between_s, used_s)


def _stretch_s(rest_s: Span, rests: int, spare_s: int) -> int:
    """Seconds by which each of `rests` rests can grow within its range and the seconds to spare."""
    return min(rest_s.high - rest_s.low, spare_s // rests if rests else 0)


def changes(circuit: Circuit) -> tuple[int, ...]:
    """The stations (by index) after which the trainee gets down to the floor or up, within one round."""
    on_floor = [_on_floor(station) for station in circuit.stations]
    return tuple(index for index in range(len(on_floor) - 1) if on_floor[index] != on_floor[index + 1])


def _on_floor(station: Station) -> bool:
    known = catalogue.all_exercises().get(station.exercise)
    return known is not None and known.posture is Posture.FLOOR
