"""How long one suggestion takes: `python -m tests.benchmarks.suggestion_speed`.

Beside it, as the baseline, the smallest honest reading of the same records: one named equation over each of them. The
suggestion is to stay under 2 ms with 300 past sets on one core, and to grow no faster than the number of sets.
"""

from __future__ import annotations

import sys
from dataclasses import replace
from datetime import timedelta
from os import environ
from statistics import median
from time import perf_counter

environ.setdefault("OMP_NUM_THREADS", "1")

from core.suggestion import Ask, PastSet, suggest
from tests.simulation.lifters import WORLDS, Workouts, lifter
from tests.simulation.policies import engine
from tests.sources.named_equations import epley

REPEATS = 200
WHO = lifter(WORLDS[0], 7)


def question(sets: int) -> Ask:
    """The next question after about that many sets of a simulated lifter: a rack of twenty loads and seven tempos."""
    workouts = Workouts(WHO, "full rack", 7)
    enough = (asked for asked, _ in workouts.run(engine) if sum(map(len, workouts.history.values())) > sets)
    asked = next(enough)
    facts = (asked.station, asked.round, asked.today, asked.history, asked.trainee, asked.others)
    return Ask(asked.unit, asked.loads, *facts)


def repeated(asked: Ask, times: int) -> Ask:
    """The same with the whole history repeated further and further back, for lengths that twelve workouts do not reach."""
    days = (asked.today - asked.history[0].date).days + 2

    def longer(sets: tuple[PastSet, ...]) -> tuple[PastSet, ...]:
        back = range(times - 1, -1, -1)
        return tuple(replace(past, date=past.date - timedelta(days=days * step)) for step in back for past in sets)

    others = {name: longer(sets) for name, sets in asked.others.items()}
    return replace(asked, history=longer(asked.history), others=others)


def median_ms(call) -> float:
    """Median of many calls, in milliseconds."""
    taken = []
    for _ in range(REPEATS):
        start = perf_counter()
        call()
        taken.append(1000 * (perf_counter() - start))
    return median(taken)


def main() -> None:
    """Print the times, and their ratio to the baseline's."""
    for sets, times in ((0, 1), (75, 1), (150, 1), (150, 2), (200, 3), (200, 6)):
        asked = repeated(question(sets), times) if times > 1 else question(sets)
        every = [past for sets in (asked.history, *asked.others.values()) for past in sets]
        ours = median_ms(lambda asked=asked: suggest(asked))
        plain = median_ms(lambda every=every: max((epley(float(past.load), past.reps) for past in every), default=0.0))
        beside = f"{plain:6.3f} ms one equation over all, ratio {ours / plain:6.1f}"
        sys.stdout.write(f"{len(every):5d} sets: {ours:6.2f} ms a suggestion, {beside}\n")


if __name__ == "__main__":
    main()
