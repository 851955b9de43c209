"""What to do at a station: the load from this house's rack, the tempo, the reps to expect, and why."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from datetime import timedelta
from decimal import Decimal
from typing import TYPE_CHECKING, Literal

from core.agenda import EASED_FROM_DAYS, days_since
from core.exercise import Measure
from core.plan import monday_of
from core.progress import past_sets
from core.rack import Rack
from core.reasons import (
    AsLastTime,
    AsSaid,
    CardReason,
    CarryStart,
    CoachHolds,
    CoachSays,
    EasierWeek,
    EmptyHands,
    GoingLight,
    HeaviestIsLight,
    HeldBack,
    TempoFirst,
)
from core.reminders import local_date
from core.safety.day import LIGHT
from core.safety.joints import hold
from core.safety.signs import is_over
from core.session.loads import at_most, change_of, one_step, up_to
from core.session.places import exercise_at, sided, station_at
from core.session.states import Prescription
from core.session.wished import most_load
from core.suggestion import Ask, StationAsk, Suggestion, suggest
from core.tempo import whole_reps
from core.units import BODYWEIGHT, Load

if TYPE_CHECKING:
    from core.circuit import Station
    from core.diary import SetRecord
    from core.exercise import Exercise
    from core.session.states import Place, Workout
    from core.session.turn import Turn
    from core.tempo import Tempo

LOW_SHARE = 0.8  # of the reps the tempo allows: common practice, no source
TEMPO_LEVER_S = 2.0  # how much slower a rep may be asked for before the coach says otherwise: common practice, no source
EASIER_SHARE = Decimal("0.9")  # of the load before, in an easier week: common practice, no source
NEXT_WORKOUT = timedelta(days=2)  # the day a workout's "next time" is worked out for

Change = Literal["first", "up", "same", "down"]


@dataclass(frozen=True)
class Advice:
    """A prescription, the reason for its load, and how that differs from the last set."""

    prescription: Prescription
    why: CardReason | None
    change: Change


def advise(turn: Turn, workout: Workout, place: Place, *, next_workout: bool = False) -> Advice:
    """What to do at a place of a workout, or at the same station on another day (`next_workout`).

    The order of what decides: what the trainee said of the load, the coach's start, then what strength suggests. Pain lately, and a
    tempo that was not kept, take the heavier loads off the rack first, and so does the coach who holds them back; a lighter day
    leaves more in reserve, and does not go up.
    """
    advice = _under_the_coach(turn, workout, place, next_workout=next_workout)
    told = isinstance(advice.why, HeldBack | AsSaid | EmptyHands | CoachHolds)
    shown = place.round == 1 or isinstance(advice.why, HeaviestIsLight)  # on a light day that is meant
    if not workout.ease or not shown or told or exercise_at(workout, place).measure is not Measure.REPS:
        return advice
    return replace(advice, why=GoingLight(station_at(workout, place).reserve.low + workout.ease))


def _under_the_coach(turn: Turn, workout: Workout, place: Place, *, next_workout: bool) -> Advice:
    """What to do with the loads that the coach allows; the reason is theirs where it would else be heavier."""
    movement = exercise_at(workout, place)
    loads, most = _owned(turn, movement), most_load(turn, workout, movement, next_workout=next_workout)
    free = _advice(turn, workout, place, loads, next_workout=next_workout)
    wanted = free.prescription.load
    if most is None or wanted is None or wanted.kg <= most.kg:
        return free
    advice = _advice(turn, workout, place, up_to(loads, most), next_workout=next_workout)
    return advice if isinstance(advice.why, HeldBack) else replace(advice, why=CoachHolds())


def _owned(turn: Turn, movement: Exercise) -> tuple[Load, ...]:
    """The loads on the trainee's rack for an exercise, none where none is held."""
    return (turn.plan.trainee.rack or Rack()).loads(movement.loads_held) if movement.loads_held else ()


def _advice(turn: Turn, workout: Workout, place: Place, loads: tuple[Load, ...], *, next_workout: bool) -> Advice:
    station, movement = station_at(workout, place), exercise_at(workout, place)
    done = [record for record in turn.sets() if record.exercise == movement.slug]
    if movement.measure is not Measure.REPS:
        return _held(turn, workout, station, movement, loads, done)
    asked = movement.slug == station.exercise
    tempo = station.tempo if asked and station.tempo is not None else movement.tempo
    if movement.loads_held == 0 or tempo is None:
        return Advice(Prescription(movement.slug, BODYWEIGHT, tempo, *_reps(station, tempo)), None, "same" if done else "first")
    if not loads:
        return Advice(Prescription(movement.slug, None, tempo, *_reps(station, tempo)), EmptyHands(), "first")
    last = next((record.load for record in reversed(done) if record.load is not None), None)
    hint = at_most(loads, station.load_hint.kg) if asked and station.load_hint is not None else None
    if hint is not None and workout.ease >= LIGHT:
        hint = one_step(loads, hint, "heavy") or hint
    held = hold(movement, turn.diary.pains, turn.sets(), turn.now)
    if held is not None:
        earlier = next((record.load for record in reversed(done) if record.load and record.workout != workout.number), None)
        base = earlier or _prescribed(workout, place) or hint
        most = loads[0] if base is None else one_step(loads, base, "heavy") or loads[0]
        free = _freely(turn, workout, place, tempo, up_to(loads, most), next_workout=next_workout, hint=hint)
        load = free.prescription.load
        change = free.change if base is None or load is None else change_of(base, load)
        return replace(free, why=HeldBack(held[1].place), change=change)
    today = [record.load for record in done if record.workout == workout.number and record.load is not None]
    if last is not None and done[-1].workout == workout.number and is_over(done[-1]):
        same = _freely(turn, workout, place, tempo, up_to(loads, last), next_workout=next_workout, hint=hint)
        return same if same.change == "down" else replace(same, why=TempoFirst())
    if today and workout.ease >= LIGHT and dict(workout.felt).get(place.station) != "light":
        loads = up_to(loads, max(today, key=lambda load: load.kg))
    return _freely(turn, workout, place, tempo, loads, next_workout=next_workout, hint=hint)


def _freely(
    turn: Turn, workout: Workout, place: Place, tempo: Tempo, loads: tuple[Load, ...], *, next_workout: bool, hint: Load | None
) -> Advice:
    """What to do with one of these loads, of which there is at least one."""
    station, movement = station_at(workout, place), exercise_at(workout, place)
    done = [record for record in turn.sets() if record.exercise == movement.slug]
    last = next((record.load for record in reversed(done) if record.load is not None), None)
    hint = None if hint is None else at_most(loads, hint.kg)
    base = last or _prescribed(workout, place) or hint
    felt = dict(workout.felt).get(place.station)
    moved = None if base is None or felt is None else one_step(loads, base, felt)
    if base is not None and felt is not None and (moved is not None or felt == "heavy"):
        load = moved or loads[0]
        return Advice(Prescription(movement.slug, load, tempo, *_reps(station, tempo)), AsSaid(felt), change_of(base, load))
    if last is None and hint is not None:
        return Advice(Prescription(movement.slug, hint, tempo, *_reps(station, tempo)), CoachSays(), "first")
    loads, easier = _for_the_week(turn, done, _no_heavier(turn, workout, loads, last))
    kept = workout.planned[place.station - 1] if workout.planned and not next_workout else None
    if kept is not None and any(load.kg == kept.kg for load in loads):
        loads = tuple(load for load in loads if load.kg == kept.kg)
    ask = _ask(turn, workout, place, tempo, loads, next_workout=next_workout)
    advice = _as_advice(movement.slug, station, tempo, _in_whole_seconds(ask), loads)
    if easier and last is not None and advice.prescription.load is not None:
        plain = Prescription(movement.slug, advice.prescription.load, tempo, *_reps(station, tempo))
        return Advice(plain, EasierWeek(), change_of(last, advice.prescription.load))
    return advice


def _for_the_week(turn: Turn, done: list[SetRecord], loads: tuple[Load, ...]) -> tuple[tuple[Load, ...], bool]:
    """The loads to choose from, and whether an easier week leaves the heavier ones out.

    In such a week none is above nine tenths of what was lifted last before it, where the rack has something below.
    """
    if turn.plan.due is None or not turn.plan.due.easier:
        return loads, False
    monday, zone = monday_of(turn.today), turn.plan.trainee.zone
    before = [record for record in done if record.load is not None and local_date(record.at, zone) < monday]
    if not before:
        return loads, False
    heaviest_kg = max(record.load.kg for record in before if record.load is not None and record.workout == before[-1].workout)
    lighter = tuple(load for load in loads if load.kg <= EASIER_SHARE * heaviest_kg)
    return lighter or loads, bool(lighter)


def _in_whole_seconds(ask: Ask) -> Suggestion:
    """A suggestion whose tempo people can count: asked again at the whole second below, where it fell on a half."""
    answer = suggest(ask)
    extra_s = answer.rep_s - ask.station.rep_s
    if extra_s == math.floor(extra_s):
        return answer
    paced_s = ask.station.rep_s + math.floor(extra_s)
    return suggest(replace(ask, station=replace(ask.station, rep_s_range=(paced_s, paced_s))))


def ask_at(turn: Turn, workout: Workout, place: Place) -> Ask | None:
    """What is asked of the suggestion at a place; None where no load applies."""
    station, movement = station_at(workout, place), exercise_at(workout, place)
    tempo = station.tempo if movement.slug == station.exercise and station.tempo is not None else movement.tempo
    loads, most = _owned(turn, movement), most_load(turn, workout, movement)
    if movement.measure is not Measure.REPS or tempo is None or not loads:
        return None
    loads = loads if most is None else up_to(loads, most)
    done = [record for record in turn.sets() if record.exercise == movement.slug]
    last = next((record.load for record in reversed(done) if record.load is not None), None)
    loads, _ = _for_the_week(turn, done, _no_heavier(turn, workout, loads, last))
    return _ask(turn, workout, place, tempo, loads, next_workout=False)


def _no_heavier(turn: Turn, workout: Workout, loads: tuple[Load, ...], last: Load | None) -> tuple[Load, ...]:
    """The loads for the first workout after a long break: none above the last one; the lightest where all are."""
    before = [record for record in turn.history.workouts if record.number < workout.number]
    zone = turn.plan.trainee.zone
    days_off = days_since(before, zone, local_date(workout.started_at, zone))
    if last is None or days_off is None or days_off < EASED_FROM_DAYS:
        return loads
    return up_to(loads, last)


def _prescribed(workout: Workout, place: Place) -> Load | None:
    """The load on the station's card, when it shows the exercise that is done there now."""
    shown = workout.prescriptions[place.station - 1]
    return shown.load if shown is not None and shown.exercise == workout.exercises[place.station - 1] else None


def _reps(station: Station, tempo: Tempo | None) -> tuple[int | None, int | None]:
    """Reps to expect from the tempo alone."""
    if station.work_s is None:
        return station.reps, station.reps
    if tempo is None:
        return None, None
    high = whole_reps(station.work_s, tempo.rep_s)
    return round(high * LOW_SHARE), high


def _held(
    turn: Turn, workout: Workout, station: Station, movement: Exercise, loads: tuple[Load, ...], done: list[SetRecord]
) -> Advice:
    """A hold or a carry: no reps; a carry keeps the load it had, and starts from the middle of the rack."""
    if not loads:
        return Advice(Prescription(movement.slug, None, None, None, None), None, "same" if done else "first")
    last = next((record.load for record in reversed(done) if record.load is not None), None)
    held = hold(movement, turn.diary.pains, turn.sets(), turn.now)
    if last is not None:
        load, why = at_most(loads, last.kg), None if held is None else HeldBack(held[1].place)
        if held is not None and all(record.workout != workout.number for record in done):
            load = one_step(loads, load, "heavy") or load
        return Advice(Prescription(movement.slug, load, None, None, None), why or AsLastTime(), change_of(last, load))
    if held is not None or workout.ease >= LIGHT:
        return Advice(Prescription(movement.slug, loads[0], None, None, None), None, "first")
    if station.load_hint is not None:
        hint = at_most(loads, station.load_hint.kg)
        return Advice(Prescription(movement.slug, hint, None, None, None), CoachSays(), "first")
    return Advice(Prescription(movement.slug, loads[(len(loads) - 1) // 2], None, None, None), CarryStart(), "first")


def _ask(turn: Turn, workout: Workout, place: Place, tempo: Tempo, loads: tuple[Load, ...], *, next_workout: bool) -> Ask:
    """The question to the suggestion, with every set the trainee has done."""
    station, movement, unit = station_at(workout, place), exercise_at(workout, place), turn.plan.trainee.unit
    ease = workout.ease
    past = past_sets(turn.sets(), unit, turn.plan.trainee.zone)
    return Ask(
        unit=unit,
        loads=tuple(sorted(load.in_unit(unit) for load in loads)),
        station=StationAsk(
            exercise=movement.slug,
            work_s=float(station.work_s or round((station.reps or 0) * tempo.rep_s)),
            rep_s=tempo.rep_s,
            rep_s_range=(tempo.rep_s, tempo.rep_s + (0.0 if ease >= LIGHT else TEMPO_LEVER_S)),
            sides=sided(workout, place),
            reserve=(station.reserve.low + ease, station.reserve.high + ease),
        ),
        round=1 if next_workout else place.round,
        today=turn.today + NEXT_WORKOUT if next_workout else turn.today,
        history=past.pop(movement.slug, ()),
        others=past,
    )


def _as_advice(slug: str, station: Station, tempo: Tempo, answer: Suggestion, loads: tuple[Load, ...]) -> Advice:
    """A suggestion as a card shows it: a load of the rack, a tempo, whole reps."""
    load = next((load for load in loads if load.in_unit(answer.unit) == answer.load), None)
    paced = tempo.slower(answer.rep_s - tempo.rep_s)
    low, high = (station.reps, station.reps) if station.reps is not None else answer.reps
    return Advice(Prescription(slug, load, paced, max(1, low), max(1, high)), answer.why, answer.change)
