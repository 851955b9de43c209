"""What to do at a station: the load from this house's rack, the tempo, the reps to expect, and why."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import timedelta
from typing import TYPE_CHECKING, Literal

from core.catalogue import exercise
from core.exercise import Exercise, Measure
from core.rack import Rack
from core.reasons import AsLastTime, AsSaid, CarryStart, CoachSays, EmptyHands, HeldBack, Reason
from core.reminders import local_date
from core.safety import pain_held_against
from core.session.states import Prescription
from core.suggestion import Ask, PastSet, StationAsk, suggest
from core.tempo import whole_reps
from core.units import BODYWEIGHT, Load

if TYPE_CHECKING:
    from decimal import Decimal

    from core.circuit import Circuit, Station
    from core.diary import SetRecord
    from core.session.turn import Turn
    from core.tempo import Tempo

LOW_SHARE = 0.8  # of the reps the tempo allows: common practice, no source
TEMPO_LEVER_S = 2.0  # how much slower a rep may be asked for before the coach says otherwise: common practice, no source
NEXT_WORKOUT = timedelta(days=2)  # the day a workout's "next time" is worked out for

Change = Literal["first", "up", "same", "down"]


@dataclass(frozen=True)
class Advice:
    """A prescription, the reason for its load, and how that differs from the last set."""

    prescription: Prescription
    why: Reason | None
    change: Change


def advise(
    turn: Turn,
    circuit: Circuit,
    index: int,
    slug: str,
    round_: int,
    felt: Literal["heavy", "light"] | None = None,
    *,
    next_workout: bool = False,
) -> Advice:
    """What to do at the station with this index (from 0), doing the exercise `slug` in `round_`.

    `felt` is what the trainee said of the load since the last set there. `next_workout`: for the first round of another day.
    """
    station, movement = circuit.stations[index], exercise(slug)
    done = [record for record in turn.sets() if record.exercise == slug]
    if movement.measure is not Measure.REPS:
        return _held(turn, station, movement, done)
    tempo = station.tempo if slug == station.exercise and station.tempo is not None else movement.tempo
    if movement.loads_held == 0 or tempo is None:
        return Advice(Prescription(slug, BODYWEIGHT, tempo, *_reps(station, tempo)), None, "same" if done else "first")
    loads = _rack(turn).loads(movement.loads_held)
    if not loads:
        return Advice(Prescription(slug, None, tempo, *_reps(station, tempo)), EmptyHands(), "first")
    last = next((record.load for record in reversed(done) if record.load is not None), None)
    if last is None and station.load_hint is not None and slug == station.exercise:
        hint = _at_most(loads, station.load_hint.kg)
        return Advice(Prescription(slug, hint, tempo, *_reps(station, tempo)), CoachSays(), "first")
    pain = pain_held_against(slug, turn.history, turn.sets(), turn.now)
    if last is not None and pain is not None:
        return _moved(slug, station, tempo, loads, last, "heavy", HeldBack(pain.place))
    if last is not None and felt is not None:
        return _moved(slug, station, tempo, loads, last, felt, AsSaid(felt))
    return _worked_out(turn, station, movement, tempo, loads, round_, next_workout=next_workout)


def _rack(turn: Turn) -> Rack:
    return turn.plan.trainee.rack or Rack()


def _reps(station: Station, tempo: Tempo | None) -> tuple[int | None, int | None]:
    """Reps to expect from the tempo alone."""
    if station.work_s is None:
        return station.reps, station.reps
    if tempo is None:
        return None, None
    high = whole_reps(station.work_s, tempo.rep_s)
    return round(high * LOW_SHARE), high


def _at_most(loads: tuple[Load, ...], kg: Decimal) -> Load:
    """The heaviest load that is not above `kg`, else the lightest there is."""
    return next((load for load in reversed(loads) if load.kg <= kg), loads[0])


def _step(loads: tuple[Load, ...], last: Load, felt: Literal["heavy", "light"]) -> Load | None:
    """The load one step away from the last, None at the end of the rack."""
    if felt == "heavy":
        return next((load for load in reversed(loads) if load.kg < last.kg), None)
    return next((load for load in loads if load.kg > last.kg), None)


def _moved(
    slug: str, station: Station, tempo: Tempo, loads: tuple[Load, ...], last: Load, felt: Literal["heavy", "light"], why: Reason
) -> Advice:
    moved = _step(loads, last, felt)
    change: Change = "same" if moved is None else ("down" if felt == "heavy" else "up")
    load = _at_most(loads, last.kg) if moved is None else moved
    return Advice(Prescription(slug, load, tempo, *_reps(station, tempo)), why, change)


def _held(turn: Turn, station: Station, movement: Exercise, done: list[SetRecord]) -> Advice:
    """A hold or a carry: no reps; a carry keeps the load it had, and starts from the middle of the rack."""
    loads = _rack(turn).loads(movement.loads_held) if movement.loads_held else ()
    if not loads:
        return Advice(Prescription(movement.slug, None, None, None, None), None, "same" if done else "first")
    last = next((record.load for record in reversed(done) if record.load is not None), None)
    if last is not None:
        return Advice(Prescription(movement.slug, _at_most(loads, last.kg), None, None, None), AsLastTime(), "same")
    if station.load_hint is not None:
        hint = _at_most(loads, station.load_hint.kg)
        return Advice(Prescription(movement.slug, hint, None, None, None), CoachSays(), "first")
    return Advice(Prescription(movement.slug, loads[(len(loads) - 1) // 2], None, None, None), CarryStart(), "first")


def _worked_out(
    turn: Turn, station: Station, movement: Exercise, tempo: Tempo, loads: tuple[Load, ...], round_: int, *, next_workout: bool
) -> Advice:
    unit = turn.plan.trainee.unit
    by_amount = {load.in_unit(unit): load for load in loads}
    work_s = float(station.work_s or round((station.reps or 0) * tempo.rep_s))
    past = _past_sets(turn)
    answer = suggest(
        Ask(
            unit=unit,
            loads=tuple(sorted(by_amount)),
            station=StationAsk(
                exercise=movement.slug,
                work_s=work_s,
                rep_s=tempo.rep_s,
                rep_s_range=(tempo.rep_s, tempo.rep_s + TEMPO_LEVER_S),
                sides=station.sides,
                reserve=(station.reserve.low, station.reserve.high),
            ),
            round=1 if next_workout else round_,
            today=turn.today + NEXT_WORKOUT if next_workout else turn.today,
            history=past.pop(movement.slug, ()),
            others=past,
        )
    )
    load = None if answer.load is None else by_amount[answer.load]
    slower = tempo.slower(answer.rep_s - tempo.rep_s)
    low, high = answer.reps if station.reps is None else (station.reps, station.reps)
    return Advice(Prescription(movement.slug, load, slower, low, high), answer.why, answer.change)


def _past_sets(turn: Turn) -> dict[str, tuple[PastSet, ...]]:
    """Every set with reps and a load, by exercise, loads in the trainee's unit; of two sides the weaker counts."""
    unit, zone = turn.plan.trainee.unit, turn.plan.trainee.zone
    gathered: dict[str, dict[tuple[int, int, int, int], PastSet]] = {}
    for record in turn.sets():
        if record.reps is None or record.load is None or record.rep_s is None or record.load.amount == 0:
            continue
        spot = (record.workout, record.round, record.station, 0 if record.side is not None else record.number)
        sets = gathered.setdefault(record.exercise, {})
        past = PastSet(
            date=local_date(record.at, zone),
            round=record.round,
            load=record.load.in_unit(unit),
            reps=record.reps,
            rep_s=record.rep_s,
            reserve=None if record.reserve is None else float(record.reserve),
            rpe=None if record.rpe is None else float(record.rpe),
            seconds=None if record.seconds is None else float(record.seconds),
        )
        if spot not in sets or past.reps < sets[spot].reps:
            sets[spot] = past
    return {slug: tuple(sets.values()) for slug, sets in gathered.items()}
