"""The table of policies over all worlds and racks, by hand.

    python -m tests.simulation.loads_table [lifters for each world and rack] [processes]

Five lifters for each pair take about twelve minutes on one core.
"""

from __future__ import annotations

import sys
import zlib
from collections import defaultdict
from dataclasses import dataclass
from math import log
from multiprocessing import Pool

from tests.simulation import policies
from tests.simulation.lifters import (
    COUNTED_FROM,
    ON_TARGET,
    RACKS,
    WORLDS,
    Lifter,
    Outcome,
    Question,
    Workouts,
    World,
    kg_per_unit,
    lifter,
)

POLICIES = ("coach_habit", "two_for_two", "knows_all", "knows_all_but_form", "engine")


@dataclass
class Tally:
    """Stations counted: on target, too heavy, reps lost against the one who knows all; spreads asked, and how many held."""

    stations: int = 0
    on_target: int = 0
    heavy: int = 0
    loss: float = 0.0
    spreads: int = 0
    held: int = 0

    def count(self, spare: float, loss: float) -> None:
        """One station with its true reps left."""
        self.stations += 1
        self.on_target += ON_TARGET[0] <= spare <= ON_TARGET[1]
        self.heavy += spare < 0.0
        self.loss += loss

    def merge(self, other: Tally) -> None:
        """Add another tally to this one."""
        for name in ("stations", "on_target", "heavy", "loss", "spreads", "held"):
            setattr(self, name, getattr(self, name) + getattr(other, name))

    @property
    def shares(self) -> tuple[float, float, float]:
        """Per cent on target, per cent too heavy, mean loss in reps."""
        count = max(1, self.stations)
        return 100 * self.on_target / count, 100 * self.heavy / count, self.loss / count

    @property
    def coverage(self) -> float:
        """Per cent of spreads that held the truth."""
        return 100 * self.held / max(1, self.spreads)

    def __str__(self) -> str:
        target, heavy, loss = self.shares
        coverage = f" {self.coverage:6.0f}" if self.spreads else ""
        return f"{target:8.1f} {heavy:8.1f} {loss:8.2f}{coverage}"


def seed_of(world: World, rack: str, number: int) -> int:
    """The seed of the lifter with this number in this world and at this rack."""
    return number * 100_000 + zlib.crc32(f"{world.name} {rack}".encode()) % 100_000


def tally(name: str, world: World, rack: str, numbers: range) -> Tally:
    """One policy over some lifters of a world at a rack, from the fourth workout on."""
    total = Tally()
    for number in numbers:
        seed = seed_of(world, rack, number)
        who = lifter(world, seed)
        best = policies.knows_all(who)
        policy = policies.named(name, who)
        for question, outcome in Workouts(who, rack, seed).run(policy):
            if question.workout < COUNTED_FROM:
                continue
            ideal = policies.cost(policies.spare(who, question, best(question)))
            spare = policies.spare(who, question, (outcome.load, outcome.rep_s))
            total.count(spare, policies.cost(spare) - ideal)
            if name == "engine" and question.round == 1:
                total.spreads += 1
                total.held += holds(who, question, outcome)
    return total


def holds(who: Lifter, question: Question, outcome: Outcome) -> bool:
    """Whether the 80 % interval asked at this station holds the true one-rep max."""
    spread = outcome.one_rep_max
    if spread is None:
        return False
    truth = log(who.max_kg[question.station.exercise]) + who.gain_per_day * question.day
    unit = kg_per_unit(question.unit)
    return log(float(spread.low) * unit) <= truth <= log(float(spread.high) * unit)


def _one(job: tuple[str, World, str, int]) -> tuple[str, str, str, Tally]:
    name, world, rack, lifters = job
    return name, world.name, rack, tally(name, world, rack, range(lifters))


def main(arguments: list[str]) -> None:
    """Print the table."""
    lifters = int(arguments[0]) if arguments else 1
    processes = int(arguments[1]) if len(arguments) > 1 else 1
    jobs = [(name, world, rack, lifters) for name in POLICIES for world in WORLDS for rack in RACKS]
    rows: dict[tuple[str, str], Tally] = defaultdict(Tally)
    with Pool(processes) as pool:
        for name, world, rack, found in pool.imap_unordered(_one, jobs):
            for row in ("all", f"rack: {rack}", f"world: {world}"):
                rows[name, row].merge(found)
    for name in POLICIES:
        lines = [f"   {row:38s} {rows[name, row]}" for row in sorted(row for policy, row in rows if policy == name)]
        title = f"{name:42s} target %  heavy %     loss  80 % holds"
        sys.stdout.write("\n".join([title, *lines, ""]))


if __name__ == "__main__":
    main(sys.argv[1:])
