"""What a good coach would say about a circuit that is sound but not yet good: advice, never a refusal.

All rules are common practice without a source unless one is named beside them.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise
from typing import TYPE_CHECKING

from core import catalogue, timeline
from core.circuit import Station
from core.exercise import Exercise, Pattern

if TYPE_CHECKING:
    from collections.abc import Iterator

    from core.circuit import Circuit

PUSHES = frozenset({Pattern.HORIZONTAL_PUSH, Pattern.VERTICAL_PUSH})
PULLS = frozenset({Pattern.HORIZONTAL_PULL, Pattern.VERTICAL_PULL})
WHOLE_BODY = 5
"""Stations from which a circuit is expected to train the whole body."""
ALL_ALIKE = 4
"""Stations from which "everything standing" or "everything on the floor" is worth saying."""
PUSHES_A_PULL = 2
PRACTISED = 3
"""The skill of an exercise that a beginner should not meet in a first round."""
FAR_SHORT = 0.75
"""A circuit that fills less than this share of the time asked for is far from it."""


@dataclass(frozen=True)
class Advice:
    """One thing to think about: where, what is so there, and what would be better."""

    place: str
    says: str
    remedy: str


@dataclass(frozen=True)
class _Placed:
    """A station with its number and what the catalogue knows about it."""

    number: int
    station: Station
    exercise: Exercise

    @property
    def place(self) -> str:
        return f"station {self.number}"


def warnings_of(circuit: Circuit, minutes: int | None = None) -> tuple[Advice, ...]:
    """All advice on a circuit, station by station, then on the whole; `minutes` is the time asked for.

    Raises:
        ExerciseUnknown: when a station's exercise is not in the catalogue.
    """
    placed = [
        _Placed(number, station, catalogue.exercise(station.exercise)) for number, station in enumerate(circuit.stations, start=1)
    ]
    return (
        *_stations(placed),
        *(advice for one, two in pairwise(placed) for advice in _neighbours(circuit, one, two)),
        *_heavy_presses(placed),
        *_balance(placed),
        *_length(circuit, minutes),
    )


def _stations(placed: list[_Placed]) -> Iterator[Advice]:
    """Advice on a station looked at alone."""
    for here in placed:
        name = here.exercise.name
        if here.exercise.sides and not here.station.sides:
            says = f"{name} works one side, and sides is not set"
            yield Advice(here.place, says, "write sides = true, or it trains one side only")
        easier = here.exercise.easier
        if here.exercise.skill >= PRACTISED and not any(catalogue.exercise(slug).skill < PRACTISED for slug in here.station.swap):
            other = catalogue.exercise(easier).name if easier else "an easier exercise"
            yield Advice(here.place, f"{name} is for the practised", f"for beginners give {other} or name it as a swap")


def _neighbours(circuit: Circuit, one: _Placed, two: _Placed) -> Iterator[Advice]:
    """Advice on two stations in a row."""
    place = f"stations {one.number} and {two.number}"
    names = f"{one.exercise.name}, then {two.exercise.name}"
    rest_s = circuit.rest_after_s(one.number - 1)
    if _same_mover(one.exercise, two.exercise):
        yield Advice(place, f"{names}: the same prime mover twice", "put a station for another muscle between")
    if _grips(one.exercise) and _grips(two.exercise):
        yield Advice(place, f"{names}: the grip gets no rest", "put a station with free hands between")
    if one.number - 1 in timeline.changes(circuit) and rest_s.low < timeline.CHANGE_S:
        says = f"{rest_s.low} s of rest between floor and standing"
        yield Advice(place, says, f"getting up or down takes about {timeline.CHANGE_S} s: rest at least that")
    hints = [placed.station.load_hint for placed in (one, two)]
    if all(hint and hint.kg for hint in hints) and hints[0] != hints[1] and rest_s.high < circuit.plate_change_s:
        says = f"another load after {rest_s.high} s of rest"
        remedy = f"changing plates takes about {circuit.plate_change_s} s: one load for both, or a longer rest"
        yield Advice(place, says, remedy)


def _same_mover(one: Exercise, two: Exercise) -> bool:
    """True when the first of an exercise's main muscles does main work in the other too."""
    return one.main[0] in two.main or two.main[0] in one.main


def _grips(exercise: Exercise) -> bool:
    """True when the hands hold on hard: something is held and the forearms work."""
    return exercise.loads_held > 0 and "forearms" in (*exercise.main, *exercise.helping)


def _heavy_presses(placed: list[_Placed]) -> Iterator[Advice]:
    """A press overhead moves less than a press from the floor, and less again right after another push."""
    for before, here in pairwise([None, *placed]):
        if here is None or here.exercise.pattern is not Pattern.VERTICAL_PUSH or not here.station.load_hint:
            continue
        load_kg = here.station.load_hint.kg
        if not load_kg:
            continue
        if before is not None and before.exercise.pattern in PUSHES:
            says = f"{here.exercise.name} with a load right after {before.exercise.name}"
            yield Advice(here.place, says, "press first, or expect a lighter weight to fit")
        lighter = [
            other
            for other in placed
            if other.exercise.pattern in {Pattern.HORIZONTAL_PUSH, Pattern.HORIZONTAL_PULL}
            and other.station.load_hint
            and 0 < other.station.load_hint.kg < load_kg
        ]
        for other in lighter:
            says = f"{here.exercise.name} heavier than {other.exercise.name} (station {other.number})"
            yield Advice(here.place, says, "an overhead press goes lighter than a row or a floor press")


def _balance(placed: list[_Placed]) -> Iterator[Advice]:
    """Advice on what the circuit trains as a whole."""
    patterns = [here.exercise.pattern for here in placed]
    pushes = sum(pattern in PUSHES for pattern in patterns)
    pulls = sum(pattern in PULLS for pattern in patterns)
    if pushes >= PUSHES_A_PULL and pulls * PUSHES_A_PULL < pushes:
        yield Advice("the circuit", f"{pushes} pushes, pulls: {pulls}", "at least one row for two pushes")
    if len(placed) >= WHOLE_BODY and Pattern.HINGE not in patterns:
        yield Advice("the circuit", "no hinge", "add a hinge such as the Romanian deadlift or the bridge")
    postures = {here.exercise.posture for here in placed}
    if len(placed) >= ALL_ALIKE and len(postures) == 1:
        posture = postures.pop()
        says = "everything on the floor" if posture == "floor" else f"everything {posture}"
        yield Advice("the circuit", says, "mix standing and floor, the pulse and the legs will thank you")


def _length(circuit: Circuit, minutes: int | None) -> Iterator[Advice]:
    """Advice on a total far from the time asked for."""
    if minutes is None:
        return
    total_s, asked_s = timeline.total_s(circuit), minutes * 60
    if total_s.low > asked_s:
        fits = timeline.fit(circuit, asked_s)
        remedy = f"{fits.rounds} rounds fit" if fits.rounds else "fewer stations or less work"
        yield Advice("the circuit", f"at least {minutes_text(total_s.low)}, asked for {minutes} min", remedy)
    elif total_s.high < FAR_SHORT * asked_s:
        fits = timeline.fit(circuit, asked_s)
        says = f"at most {minutes_text(total_s.high)}, asked for {minutes} min"
        yield Advice("the circuit", says, f"{fits.rounds} rounds would fit")


def minutes_text(seconds: int) -> str:
    """Seconds as minutes and seconds: `690` is `11 min 30 s`."""
    whole, rest = divmod(seconds, 60)
    if not whole:
        return f"{rest} s"
    return f"{whole} min {rest} s" if rest else f"{whole} min"
