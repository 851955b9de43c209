"""Live some weeks from a seed: `python -m tests.simulation.weeks --seed 7 --weeks 4 [--tell]`."""

from __future__ import annotations

import argparse
import asyncio
import logging
import tempfile
from pathlib import Path

from tests.simulation.weeks.world import Weeks, World


def lived(seed: int, weeks: int, folder: Path) -> Weeks:
    """Some weeks from a seed, with the program's complaints about being killed left out."""
    logging.disable(logging.CRITICAL)
    try:
        return asyncio.run(World(seed, weeks, folder).live())
    finally:
        logging.disable(logging.NOTSET)


def main() -> int:
    """Print what was wrong, and how much happened; 1 when anything was wrong."""
    parser = argparse.ArgumentParser(prog="python -m tests.simulation.weeks")
    parser.add_argument("--seed", type=int, default=1, help="which weeks")
    parser.add_argument("--weeks", type=int, default=3, help="how many")
    parser.add_argument("--tell", action="store_true", help="print everything that reached a phone")
    asked = parser.parse_args()
    with tempfile.TemporaryDirectory() as folder:
        weeks = lived(asked.seed, asked.weeks, Path(folder))
    if asked.tell:
        print("\n".join(weeks.heard))  # noqa: T201 - a command
    much = f"{len(weeks.heard)} lines, {weeks.unasked} unasked messages, {weeks.sets} sets, {weeks.kills} kills"
    told = f"seed {asked.seed}, {asked.weeks} weeks: {much}, {len(weeks.faults)} faults"
    print("\n".join([*weeks.faults, told]))  # noqa: T201 - a command
    return 1 if weeks.faults else 0


if __name__ == "__main__":
    raise SystemExit(main())
