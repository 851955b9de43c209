"""What a circuit, or a week of circuits, does for the body: sets a muscle, time under tension, energy.

All of it is an estimate for a coach to look at, and is to be shown as one.

Sources:
    Sets a week: about 10 or more a muscle group a week for size (American College of Sports Medicine, 2026,
    second-hand). Days a week: all major groups on 2 or more days (World Health Organization, 2020,
    second-hand). A helping muscle counts half a set (common practice, no source).
    Energy: 1 MET is 1 kcal a kilogram and hour by convention. METs of the 2011 Compendium (second-hand):
    weight training, several exercises, 8-15 reps 3.5; circuit training, moderate effort 4.3; weight lifting,
    vigorous 6.0. Two measured light free-weight circuits lie between: 4.5 and 3.9 MET (Beckham and Earnest,
    2000).
"""

from __future__ import annotations

from collections import Counter, defaultdict
from dataclasses import dataclass
from decimal import Decimal
from typing import TYPE_CHECKING

from core import catalogue, timeline
from core.circuit import Span

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping, Sequence

    from core.circuit import Circuit

SETS_A_WEEK = 10
DAYS_A_WEEK = 2
HELPING = Decimal("0.5")
MET_LOW = Decimal("3.5")
MET_USUAL = Decimal("4.3")
MET_HIGH = Decimal("6.0")
HOUR_S = 3600
MAJOR_GROUPS: Mapping[str, frozenset[str]] = {
    "legs": frozenset({"quads", "hamstrings", "calves", "adductors"}),
    "hips": frozenset({"glutes", "hip abductors", "hip flexors"}),
    "back": frozenset({"lats", "upper back", "lower back"}),
    "belly": frozenset({"abs", "obliques"}),
    "chest": frozenset({"chest"}),
    "shoulders": frozenset({"shoulders", "rear shoulders"}),
    "arms": frozenset({"biceps", "triceps", "forearms"}),
}
"""The seven major groups of the public-health advice (from memory), and the muscles in each."""


@dataclass(frozen=True)
class GroupWeek:
    """A major muscle group over a week: sets of its most trained muscle, days of main work."""

    sets: Decimal
    days: int

    @property
    def days_enough(self) -> bool:
        """True when the group is trained on as many days as the advice asks for."""
        return self.days >= DAYS_A_WEEK

    @property
    def sets_enough(self) -> bool:
        """True when the sets reach what the advice gives for growing muscle."""
        return self.sets >= SETS_A_WEEK


@dataclass(frozen=True)
class Energy:
    """Energy of a workout in kilocalories, resting share included: an estimate."""

    low_kcal: int
    usual_kcal: int
    high_kcal: int


def sets_a_muscle(days: Sequence[Circuit]) -> Mapping[str, Decimal]:
    """Sets for each muscle over the circuits of a week, one for each training day.

    A station is one set a round, per side or not: each side's muscles get one. Main muscles count one,
    helping ones a half.

    Raises:
        ExerciseUnknown: when a station's exercise is not in the catalogue.
    """
    return _muscles(_sets_of(circuit) for circuit in days)


def _sets_of(circuit: Circuit) -> Counter[str]:
    """The sets of each exercise (by slug) in a circuit."""
    sets: Counter[str] = Counter()
    for station in circuit.stations:
        sets[station.exercise] += circuit.rounds
    return sets


def _muscles(days: Iterable[Mapping[str, int]]) -> Mapping[str, Decimal]:
    sets: defaultdict[str, Decimal] = defaultdict(Decimal)
    for done in days:
        for slug, count in done.items():
            exercise = catalogue.exercise(slug)
            for muscle in exercise.main:
                sets[muscle] += count
            for muscle in exercise.helping:
                sets[muscle] += count * HELPING
    return dict(sets)


def week_of(days: Sequence[Circuit]) -> Mapping[str, GroupWeek]:
    """Each major group over the circuits of a week, one for each training day.

    Raises:
        ExerciseUnknown: when a station's exercise is not in the catalogue.
    """
    return groups_of([_sets_of(circuit) for circuit in days])


def groups_of(days: Sequence[Mapping[str, int]]) -> Mapping[str, GroupWeek]:
    """Each major group over the days of a week, each given as the sets of each exercise (by slug).

    Raises:
        ExerciseUnknown: when an exercise is not in the catalogue.
    """
    sets = _muscles(days)
    trained = [{muscle for slug in done for muscle in catalogue.exercise(slug).main} for done in days]
    return {
        group: GroupWeek(
            sets=max(sets.get(muscle, Decimal(0)) for muscle in sorted(muscles)),  # in order: of 4 and 4.0 the first is taken
            days=sum(not muscles.isdisjoint(day) for day in trained),
        )
        for group, muscles in MAJOR_GROUPS.items()
    }


def average_week(weeks: Sequence[Sequence[Circuit]]) -> Mapping[str, GroupWeek]:
    """Each major group in a usual one of several weeks: the mean of its sets, and the days that every week has at least.

    Raises:
        ExerciseUnknown: when a station's exercise is not in the catalogue.
    """
    each = [week_of(days) for days in weeks]
    return {
        group: GroupWeek(
            sets=sum((week[group].sets for week in each), Decimal(0)) / len(each),
            days=min(week[group].days for week in each),
        )
        for group in MAJOR_GROUPS
    }


def tension_s(circuit: Circuit) -> Span:
    """Seconds under tension in a workout: reps times the seconds of a rep; all of a hold or carry."""
    low = high = 0.0
    for station in circuit.stations:
        sides = 2 if station.sides else 1
        reps = timeline.reps_each(station)
        if reps is None:
            held_s = timeline.station_work_s(station)
            low, high = low + held_s, high + held_s
        else:
            rep_s = station.tempo.rep_s if station.tempo else timeline.REP_S
            low, high = low + sides * reps.low * rep_s, high + sides * reps.high * rep_s
    return Span(round(circuit.rounds * low), round(circuit.rounds * high))


def energy(circuit: Circuit, body_mass_kg: Decimal) -> Energy:
    """Energy of a workout: MET x kilograms x hours, over the shortest and the longest it may take.

    The usual figure takes the middle of the two times.
    """
    lasts_s = timeline.total_s(circuit)
    usual_s = Decimal(lasts_s.low + lasts_s.high) / 2
    return Energy(
        low_kcal=_kcal(MET_LOW, body_mass_kg, Decimal(lasts_s.low)),
        usual_kcal=_kcal(MET_USUAL, body_mass_kg, usual_s),
        high_kcal=_kcal(MET_HIGH, body_mass_kg, Decimal(lasts_s.high)),
    )


def _kcal(met: Decimal, body_mass_kg: Decimal, lasts_s: Decimal) -> int:
    return round(met * body_mass_kg * lasts_s / HOUR_S)
