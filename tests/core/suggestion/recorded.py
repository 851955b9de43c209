"""Answers as they were recorded: `python -m tests.core.suggestion.recorded` records them anew.

They are there for changes that are to change nothing, such as faster arithmetic. Who changes what is believed or suggested reads
the difference that recording makes.
"""

from __future__ import annotations

import json
from pathlib import Path

from bot.suggest_io import written
from core.strength.belief import learn
from core.suggestion import Ask, load_costs, suggest
from core.suggestion.trend import evidence_of
from tests.simulation.lifters import RACKS, WORLDS, Workouts, lifter
from tests.simulation.policies import coach_habit

FILE = Path(__file__).with_name("recorded.jsonl")
EVERY = 41


def questions():
    """Questions from the workouts of invented lifters of every sort, whose loads follow a coach's habit and not the answers."""
    for seed, world in enumerate(WORLDS):
        rack = list(RACKS)[seed % len(RACKS)]
        for number, (asked, _) in enumerate(Workouts(lifter(world, seed), rack, seed).run(coach_habit)):
            if number % EVERY == seed:
                facts = (asked.station, asked.round, asked.today, asked.history, asked.trainee, dict(asked.others))
                yield Ask(asked.unit, asked.loads, *facts)


def answered(ask):
    """The answer, what each load would cost, and the belief behind them, as JSON values."""
    belief = learn(evidence_of(ask), round_number=ask.round, trainee=ask.trainee)
    numbers = {"mean": belief.mean.tolist(), "spread": belief.covariance.diagonal().tolist(), "chance": belief.chance.tolist()}
    costs = {str(load): cost for load, cost in load_costs(ask).items()}
    answer = {name: value for name, value in written(suggest(ask)).items() if name != "why"}  # words may change
    return {"answer": answer, "costs": costs, **numbers}


def main():
    """Write the file."""
    lines = [json.dumps(answered(ask), ensure_ascii=False) for ask in questions()]
    FILE.write_text("\n".join(lines) + "\n", encoding="utf-8")


if __name__ == "__main__":
    main()
