"""What a circuit is: stations in order, rests between, rounds. All times in seconds."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from core.tempo import Tempo
from core.units import Load

WORK_S = 60
PLATE_CHANGE_S = 40
"""Seconds to change the plates on a pair of handles, where the coach does not say (common practice, no source)."""


class Side(StrEnum):
    """The side a set was done on, or that both were."""

    LEFT = "left"
    RIGHT = "right"
    EACH = "each"


@dataclass(frozen=True)
class Span:
    """A range of seconds (or reps), both ends included; `low` equals `high` when one number was given."""

    low: int
    high: int


@dataclass(frozen=True)
class Station:
    """One exercise for `work_s` seconds, or for `reps` repetitions, inside a circuit.

    Exactly one of `work_s` and `reps` is set. With `sides` the station runs left and right back to back with no rest between,
    `work_s` (or `reps`) for each. `rest_s` is the rest after it, None for the circuit's own. `tempo` is None for holds and carries.
    """

    exercise: str
    work_s: int | None
    reps: int | None
    tempo: Tempo | None
    sides: bool
    reserve: Span
    rest_s: Span | None = None
    load_hint: Load | None = None
    form: tuple[str, ...] = ()
    swap: tuple[str, ...] = ()


@dataclass(frozen=True)
class Circuit:
    """Stations in order, done `rounds` times, with rests between stations and between rounds.

    `plate_change_s` is how long changing the plates on a pair of handles takes.
    """

    name: str
    rounds: int
    rest_s: Span
    rest_between_rounds_s: Span
    warm_up_s: int
    stations: tuple[Station, ...]
    plate_change_s: int = PLATE_CHANGE_S

    def rest_after_s(self, station: int) -> Span:
        """The rest after the station at this index, in seconds."""
        own = self.stations[station].rest_s
        return self.rest_s if own is None else own
