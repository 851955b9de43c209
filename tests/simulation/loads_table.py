"""The table of policies by hand: `python -m tests.simulation.loads_table [lifters per rack and world] [policy ...]`."""

from __future__ import annotations

import sys
import zlib
from collections import defaultdict
from dataclasses import dataclass

from tests.simulation import policies
from tests.simulation.lifters import COUNTED_FROM, ON_TARGET, RACKS, WORLDS, Workouts, World, lifter


@dataclass
class Tally:
    """Stations counted."""

    stations: int = 0
    on_target: int = 0
    heavy: int = 0
    loss: float = 0.0

    def add(self, spare: float, loss: float) -> None:
        self.stations += 1
        self.on_target += ON_TARGET[0] <= spare <= ON_TARGET[1]
        self.heavy += spare < 0.0
        self.loss += loss

    def __str__(self) -> str:
        count = max(1, self.stations)
        return f"{100 * self.on_target / count:5.1f} {100 * self.heavy / count:5.1f} {self.loss / count:6.2f}"


def policy_for(name, who):
    if name in ("knows_all", "knows_all_but_form"):
        return getattr(policies, name)(who)
    return getattr(policies, name)


def tally(name: str, world: World, rack: str, seeds: range) -> Tally:
    total = Tally()
    for seed in seeds:
        own = seed * 1000 + zlib.crc32(f"{world.name} {rack}".encode()) % 1000
        who = lifter(world, own)
        best = policies.knows_all(who)
        for question, outcome in Workouts(who, rack, own).run(policy_for(name, who)):
            if question.workout < COUNTED_FROM:
                continue
            ideal = policies.cost(policies.spare(who, question, best(question)))
            true = policies.spare(who, question, (outcome.load, outcome.rep_s))
            total.add(true, policies.cost(true) - ideal)
    return total


def main(argv):
    lifters = int(argv[1]) if len(argv) > 1 else 2
    names = argv[2:] or ["coach_habit", "two_for_two", "knows_all", "knows_all_but_form", "engine"]
    for name in names:
        grand, by_rack = Tally(), defaultdict(Tally)
        print(name, " on-target% heavy% loss")
        for world in WORLDS:
            whole = Tally()
            for rack in RACKS:
                got = tally(name, world, rack, range(lifters))
                for total in (grand, by_rack[rack], whole):
                    total.stations += got.stations
                    total.on_target += got.on_target
                    total.heavy += got.heavy
                    total.loss += got.loss
            print(f"   {world.name:32s} {whole}")
        for rack, total in by_rack.items():
            print(f"   -- {rack:29s} {total}")
        print(f"   == all {'':25s} {grand}", flush=True)


if __name__ == "__main__":
    main(sys.argv)
