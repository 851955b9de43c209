"""The table of states in DEVELOPERS.md, made by taking every step: `python -m tests.house.state_table` writes it anew."""

from __future__ import annotations

import copy
import re
from pathlib import Path

from tests.walking import Walk

PAGE = Path(__file__).parents[2] / "DEVELOPERS.md"
START, END = "<!-- states: from here -->", "<!-- states: to here -->"
EVENTS = {
    "go": lambda walk: walk.says("go"),
    "11 at 12kg": lambda walk: walk.says("11 at 12kg"),
    "pause": lambda walk: walk.says("pause"),
    "back": lambda walk: walk.says("back"),
    "skip": lambda walk: walk.says("skip"),
    "again": lambda walk: walk.says("again"),
    "swap": lambda walk: walk.says("swap"),
    "undo": lambda walk: walk.says("undo"),
    "my knee hurts": lambda walk: walk.says("my knee hurts"),
    "chest pain": lambda walk: walk.says("chest pain"),
    "finish": lambda walk: walk.says("finish"),
    "the alarm": lambda walk: walk.waits(0) if walk.wake_at is None else walk.waits((walk.wake_at - walk.now).total_seconds()),
}


def examples() -> dict[str, Walk]:
    """A walk in each state, reached as a trainee reaches it."""
    found: dict[str, Walk] = {}

    def keep(walk: Walk) -> Walk:
        found.setdefault(name_of(walk), copy.deepcopy(walk))
        return walk

    walk = keep(Walk())
    keep(walk.opens())
    keep(walk.says("yes"))
    keep(walk.says("kg"))
    keep(walk.says("8, 12 and 16 kg dumbbells"))
    keep(walk.says("yes"))
    more = copy.deepcopy(walk)
    keep(more.says("I've got a pair of 20 kg dumbbells"))
    keep(walk.says("go"))
    keep(walk.says("go"))
    keep(walk.says("go"))
    keep(walk.waits(62))
    keep(copy.deepcopy(walk).says("pause"))
    keep(walk.says("finish"))
    return found


def name_of(walk: Walk) -> str:
    """The state's name in words."""
    return re.sub(r"(?<!^)(?=[A-Z])", " ", type(walk.state).__name__).lower()


def state_table() -> str:
    """For every state and event: the state after it; a dot where nothing moves."""
    rows = ["| state | " + " | ".join(EVENTS) + " |", "|---" * (len(EVENTS) + 1) + "|"]
    for name, walk in examples().items():
        cells = []
        for event in EVENTS.values():
            after = copy.deepcopy(walk)
            event(after)
            cells.append("·" if after.state == walk.state else name_of(after))
        rows.append(f"| {name} | " + " | ".join(cells) + " |")
    return "\n".join(rows)


def written(page: str) -> str:
    """A page of Markdown with the table between its marks made anew."""
    before, _, rest = page.partition(f"{START}\n")
    return f"{before}{START}\n\n{state_table()}\n\n{END}{rest.partition(END)[2]}"


if __name__ == "__main__":
    PAGE.write_text(written(PAGE.read_text(encoding="utf-8")), encoding="utf-8")
