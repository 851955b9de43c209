"""A circuit as a TOML file, both ways: text to a circuit or to every fault in it, and a circuit to text.

A coach mends a file once, not fault by fault: reading goes on to the end and each fault says where it is,
what it says there, and what it may say.
"""

from __future__ import annotations

import re
import tomllib
from dataclasses import dataclass
from decimal import Decimal
from typing import TYPE_CHECKING, TypeGuard

from rapidfuzz import process

from core import catalogue
from core.circuit import PLATE_CHANGE_S, WORK_S, Circuit, Span, Station
from core.errors import TempoUnreadable
from core.exercise import Measure
from core.tempo import Tempo
from core.units import BODYWEIGHT, Load, Unit, amount_text

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping, Sequence

    from core.exercise import Exercise

RESERVE = Span(1, 2)
"""Reps to leave in the tank when the coach does not say (common practice, no source)."""
TOP_KEYS = ("name", "rounds", "rest_s", "rest_between_rounds_s", "warm_up_s", "plate_change_s", "station")
STATION_KEYS = (
    "exercise",
    "work_s",
    "reps",
    "tempo",
    "sides",
    "rest_s",
    "reserve",
    "load_hint",
    "form",
    "swap",
)
NAME_LENGTH = 40
FORM_LENGTH = 160
ROUNDS = Span(1, 20)
STATIONS = Span(1, 30)
WORK = Span(5, 600)
REPS = Span(1, 200)
REST = Span(0, 900)
WARM_UP = Span(0, 3600)
PLATE_CHANGE = Span(5, 300)
RESERVES = Span(0, 10)
HEAVIEST_KG = Decimal(200)
"""No hand holds more at home; a larger number is a slip of the finger."""
LIKE_A_KEY = 60.0
"""Likeness (0 to 100) from which an unknown key is taken for a misspelt one when a remedy is offered."""
LOAD = re.compile(r"(\d+(?:[.,]\d+)?)\s*(kgs?|kilos?|lbs?|pounds?)", re.IGNORECASE)


@dataclass(frozen=True)
class Fault:
    """One thing wrong with a circuit: where it stands, what it says there, and what it may say instead."""

    place: str
    says: str
    remedy: str


@dataclass(frozen=True)
class Draft:
    """A circuit file read to its end: every fault, and the circuit as far as its times are sound.

    `circuit` is there even with faults as long as none of them touches the clock, so that a coach who
    misspelt an exercise still learns how long the circuit takes. Such a circuit must not be put in force: see
    `read_circuit`.
    """

    circuit: Circuit | None
    faults: tuple[Fault, ...]


def read_circuit(text: str) -> Circuit | tuple[Fault, ...]:
    """The circuit written in `text` (TOML), or every fault in it, never an empty tuple.

    An exercise may be written by its slug, its name or a nickname; the circuit holds the slug. What a station
    may leave out: 60 s of work, the exercise's own tempo, both sides at once, the circuit's rest, 1 to 2 reps
    in reserve.
    """
    draft = draft_circuit(text)
    if draft.circuit is None or draft.faults:
        return draft.faults
    return draft.circuit


def draft_circuit(text: str) -> Draft:
    """The circuit written in `text` as far as it can be read, with every fault."""
    try:
        table = tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        where = re.search(r"line \d+", str(error))
        return Draft(
            None,
            (
                Fault(
                    where.group() if where else "the end of the file",
                    str(error),
                    "write it as TOML: key = value, texts in quotes, [[station]] above each station",
                ),
            ),
        )
    return read_table(table)


def read_table(table: Mapping[str, object]) -> Draft:
    """The circuit in a table with the keys of a circuit file, as far as it can be read, with every fault."""
    return _Reader().circuit(table)


def shown(value: object) -> str:
    """A value of a TOML file as a person would write it there."""
    match value:
        case bool():
            return "true" if value else "false"
        case str():
            return f'"{"".join(letter if letter.isprintable() else repr(letter)[1:-1] for letter in value)}"'
        case list():
            return f"[{', '.join(shown(item) for item in value)}]"
        case dict():
            return f"{{{', '.join(f'{key} = {shown(item)}' for key, item in value.items())}}}"
        case _:
            return str(value)


def nearest_names(text: str) -> str:
    """A remedy for an exercise nobody knows: the nearest names."""
    near = " or ".join(f'"{exercise.name}"' for exercise in catalogue.nearest(text))
    return f"write an exercise of the catalogue, such as {near}" if near else "write an exercise of the catalogue"


def parse_load(text: str) -> Load | None:
    """A load per hand such as "20 kg", "12.5kg", "35 lb" or "bodyweight"; None when it is none of these."""
    if text.strip().lower() == "bodyweight":
        return BODYWEIGHT
    found = LOAD.fullmatch(text.strip())
    if found is None:
        return None
    unit = Unit.KG if found[2].lower().startswith("k") else Unit.LB
    load = Load(Decimal(found[1].replace(",", ".")), unit)
    return load if 0 < load.kg <= HEAVIEST_KG else None


def load_text(load: Load) -> str:
    """A load as `parse_load` reads it."""
    return "bodyweight" if load == BODYWEIGHT else f"{amount_text(load.amount)} {load.unit}"


class _Reader:
    """Reads one file and collects its faults; `timed` turns false with a fault that touches the clock."""

    def __init__(self) -> None:
        self.faults: list[Fault] = []
        self.timed = True

    def fault(self, place: str, says: str, remedy: str, *, clock: bool = False) -> None:
        self.faults.append(Fault(place, says, remedy))
        self.timed = self.timed and not clock

    def circuit(self, table: Mapping[str, object]) -> Draft:
        self.unknown_keys(table, TOP_KEYS, "")
        name = self.circuit_name(table)
        rounds = self.whole(table, "rounds", ROUNDS, "", needed=True)
        rest_s = self.span(table, "rest_s", REST, "", needed=True)
        between_s = self.span(table, "rest_between_rounds_s", REST, "", needed=rounds != 1)
        warm_up_s = self.whole(table, "warm_up_s", WARM_UP, "") if "warm_up_s" in table else 0
        change_s = self.whole(table, "plate_change_s", PLATE_CHANGE, "") if "plate_change_s" in table else PLATE_CHANGE_S
        stations = tuple(
            station
            for number, entry in enumerate(self.station_tables(table), start=1)
            if (station := self.station(entry, f"station {number}")) is not None
        )
        if not self.timed or rounds is None or rest_s is None or warm_up_s is None or change_s is None:
            return Draft(None, tuple(self.faults))
        return Draft(Circuit(name, rounds, rest_s, between_s or rest_s, warm_up_s, stations, change_s), tuple(self.faults))

    def unknown_keys(self, table: Mapping[str, object], known: Sequence[str], where: str) -> None:
        for key in table:
            if key not in known:
                near = process.extractOne(key, known, score_cutoff=LIKE_A_KEY)
                remedy = f"write {near[0]}" if near else f"leave it out; known are {', '.join(known)}"
                self.fault(_at(where, key), f"{key} = {shown(table[key])}", remedy)

    def circuit_name(self, table: Mapping[str, object]) -> str:
        name = table.get("name")
        if isinstance(name, str) and 0 < len(name.strip()) <= NAME_LENGTH and name.isprintable():
            return name.strip()
        remedy = f'a name in quotes on one line, up to {NAME_LENGTH} characters, such as "Monday whole body"'
        self.fault("name", _said(table, "name"), remedy)
        return ""

    def station_tables(self, table: Mapping[str, object]) -> list[Mapping[str, object]]:
        entries = table.get("station")
        if not isinstance(entries, list) or not all(isinstance(entry, dict) for entry in entries):
            self.fault("station", _said(table, "station"), "write [[station]] above each station", clock=True)
            return []
        if not STATIONS.low <= len(entries) <= STATIONS.high:
            remedy = f"{STATIONS.low} to {STATIONS.high} stations"
            self.fault("station", f"{len(entries)} stations", remedy, clock=True)
        return entries

    def station(self, table: Mapping[str, object], where: str) -> Station | None:
        self.unknown_keys(table, STATION_KEYS, where)
        exercise = self.exercise(table, "exercise", table.get("exercise"), where)
        work_s, reps = self.work(table, where, exercise)
        tempo = self.tempo(table, where, exercise, work_s)
        sides = self.flag(table, "sides", where)
        reserve = self.span(table, "reserve", RESERVES, where, clock=False)
        rest_s = self.span(table, "rest_s", REST, where)
        load_hint = self.load(table, where)
        form = self.form(table, where)
        swap = self.swap(table, where, exercise)
        if work_s is None and reps is None:
            return None
        return Station(
            exercise=exercise.slug if exercise else str(table.get("exercise", "")),
            work_s=work_s,
            reps=reps,
            tempo=tempo,
            sides=sides,
            reserve=reserve or RESERVE,
            rest_s=rest_s,
            load_hint=load_hint,
            form=form,
            swap=swap,
        )

    def exercise(self, table: Mapping[str, object], key: str, name: object, where: str) -> Exercise | None:
        if not isinstance(name, str) or not name.strip():
            self.fault(_at(where, key), _said(table, key), 'an exercise in quotes, such as "goblet squat"')
            return None
        exercise = catalogue.named(name)
        if exercise is None:
            self.fault(_at(where, key), shown(name), nearest_names(name))
        return exercise

    def work(self, table: Mapping[str, object], where: str, exercise: Exercise | None) -> tuple[int | None, int | None]:
        """The seconds or the reps of a station: one of the two, or neither when what it says is no use."""
        if "reps" not in table:
            if "work_s" not in table:
                return WORK_S, None
            return self.whole(table, "work_s", WORK, where), None
        reps = self.whole(table, "reps", REPS, where)
        if "work_s" in table:
            says = f"work_s = {shown(table['work_s'])} and reps = {shown(table['reps'])}"
            self.fault(_at(where, "reps"), says, "keep one of the two", clock=True)
            return None, None
        if exercise is not None and exercise.measure is not Measure.REPS:
            says = f"reps = {shown(table['reps'])}"
            remedy = f"write work_s: a {exercise.measure} is counted in seconds"
            self.fault(_at(where, "reps"), says, remedy, clock=True)
            return None, None
        if exercise is None and "tempo" not in table:
            self.timed = False
        return None, reps

    def tempo(self, table: Mapping[str, object], where: str, exercise: Exercise | None, work_s: int | None) -> Tempo | None:
        own = exercise.tempo if exercise else None
        if "tempo" not in table:
            return own
        says = table["tempo"]
        if exercise is not None and exercise.measure is not Measure.REPS:
            self.fault(_at(where, "tempo"), shown(says), f"leave it out: a {exercise.measure} has no tempo")
            return None
        try:
            tempo = Tempo.parse(says if isinstance(says, str) else "")
        except TempoUnreadable:
            remedy = 'four numbers of seconds in quotes: lowering, pause, lifting, pause, such as "3-1-1-0"'
            self.fault(_at(where, "tempo"), shown(says), remedy, clock="reps" in table)
            return own
        if work_s is not None and tempo.rep_s > work_s:
            remedy = f"a rep of {tempo.rep_s:g} s does not fit in {work_s} s: a quicker tempo or more work_s"
            self.fault(_at(where, "tempo"), shown(says), remedy)
        return tempo

    def flag(self, table: Mapping[str, object], key: str, where: str) -> bool:
        value = table.get(key, False)
        if isinstance(value, bool):
            return value
        self.fault(_at(where, key), shown(value), "true for one side after the other, or false", clock=True)
        return False

    def whole(self, table: Mapping[str, object], key: str, allowed: Span, where: str, *, needed: bool = False) -> int | None:
        value = table.get(key)
        if _is_whole(value, allowed):
            return value
        if key in table or needed:
            remedy = f"a whole number from {allowed.low} to {allowed.high}"
            self.fault(_at(where, key), _said(table, key), remedy, clock=True)
        return None

    def span(
        self,
        table: Mapping[str, object],
        key: str,
        allowed: Span,
        where: str,
        *,
        needed: bool = False,
        clock: bool = True,
    ) -> Span | None:
        """One whole number or [min, max]; None when the file is silent, or wrong and told so."""
        value = table.get(key)
        match value:
            case [low, high] if _is_whole(low, allowed) and _is_whole(high, allowed) and low <= high:
                return Span(low, high)
            case _ if _is_whole(value, allowed):
                return Span(value, value)
        if key in table or needed:
            remedy = f"a whole number from {allowed.low} to {allowed.high}, or two as [min, max]"
            self.fault(_at(where, key), _said(table, key), remedy, clock=clock)
        return None

    def load(self, table: Mapping[str, object], where: str) -> Load | None:
        if "load_hint" not in table:
            return None
        value = table["load_hint"]
        load = parse_load(value) if isinstance(value, str) else None
        if load is None:
            remedy = 'the load per hand with its unit in quotes, such as "16 kg", or "bodyweight"'
            self.fault(_at(where, "load_hint"), shown(value), remedy)
        return load

    def form(self, table: Mapping[str, object], where: str) -> tuple[str, ...]:
        """The coach's own words: one text or a list of texts."""
        value = table.get("form", [])
        points = [value] if isinstance(value, str) else value
        if isinstance(points, list) and all(_is_form_point(point) for point in points):
            return tuple(point.strip() for point in points)
        remedy = f"a list of short texts, each on one line of up to {FORM_LENGTH} characters"
        self.fault(_at(where, "form"), shown(value), remedy)
        return ()

    def swap(self, table: Mapping[str, object], where: str, exercise: Exercise | None) -> tuple[str, ...]:
        value = table.get("swap", [])
        names = [value] if isinstance(value, str) else value
        if not isinstance(names, list):
            self.fault(_at(where, "swap"), shown(value), 'a list of exercises, such as ["push-up"]')
            return ()
        found = [self.exercise(table, "swap", name, where) for name in names]
        if exercise is not None and exercise in found:
            self.fault(_at(where, "swap"), shown(value), f"another exercise than {exercise.name} itself")
        return tuple(dict.fromkeys(swap.slug for swap in found if swap is not None))


def _is_whole(value: object, allowed: Span) -> TypeGuard[int]:
    return isinstance(value, int) and not isinstance(value, bool) and allowed.low <= value <= allowed.high


def _is_form_point(value: object) -> bool:
    return isinstance(value, str) and 0 < len(value.strip()) <= FORM_LENGTH and value.strip().isprintable()


def _at(where: str, key: str) -> str:
    return f"{where}, {key}" if where else key


def _said(table: Mapping[str, object], key: str) -> str:
    return shown(table[key]) if key in table else "nothing"


def write_circuit(circuit: Circuit) -> str:
    """The circuit as TOML; reading it gives the same circuit."""
    lines = [
        f"name = {_quoted(circuit.name)}",
        f"rounds = {circuit.rounds}",
        f"rest_s = {_span_text(circuit.rest_s)}",
        f"rest_between_rounds_s = {_span_text(circuit.rest_between_rounds_s)}",
        f"warm_up_s = {circuit.warm_up_s}",
        f"plate_change_s = {circuit.plate_change_s}",
    ]
    for station in circuit.stations:
        lines += ["", "[[station]]", *_station_lines(station)]
    return "\n".join(lines) + "\n"


def _station_lines(station: Station) -> Iterable[str]:
    yield f"exercise = {_quoted(catalogue.exercise(station.exercise).name)}"
    if station.reps is not None:
        yield f"reps = {station.reps}"
    else:
        yield f"work_s = {station.work_s}"
    if station.tempo is not None:
        yield f"tempo = {_quoted(str(station.tempo))}"
    if station.sides:
        yield "sides = true"
    if station.rest_s is not None:
        yield f"rest_s = {_span_text(station.rest_s)}"
    if station.reserve != RESERVE:
        yield f"reserve = {_span_text(station.reserve)}"
    if station.load_hint is not None:
        yield f"load_hint = {_quoted(load_text(station.load_hint))}"
    if station.form:
        yield f"form = [{', '.join(map(_quoted, station.form))}]"
    if station.swap:
        yield f"swap = [{', '.join(_quoted(catalogue.exercise(slug).name) for slug in station.swap)}]"


def _span_text(span: Span) -> str:
    return str(span.low) if span.low == span.high else f"[{span.low}, {span.high}]"


def _quoted(text: str) -> str:
    """A TOML basic string (TOML 1.0): backslash and quote escaped; control characters never come here."""
    escaped = text.replace("\\", "\\\\").replace('"', '\\"')
    return f'"{escaped}"'
