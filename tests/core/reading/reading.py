"""How these tests say a message and its meaning: acts as the contract prints them."""

from __future__ import annotations

import json
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any

from bot.reading_io import act_json, context_of
from core.reading import read

if TYPE_CHECKING:
    from collections.abc import Iterator

FIXTURES = Path(__file__).resolve().parents[3] / "fixtures"
RECORDS = {"log", "amend"}

Acts = list[dict[str, Any]]


def acts(text: str, **context: Any) -> Acts:
    """What a message means, with its context as the contract writes it."""
    return [act_json(act) for act in read(text, context_of(context))]


@dataclass(frozen=True)
class Reply:
    """One labelled line of the corpus."""

    text: str
    context: dict[str, Any]
    wanted: Acts

    @property
    def read(self) -> Acts:
        """What the reader makes of it."""
        return acts(self.text, **self.context)


def replies(name: str) -> Iterator[Reply]:
    """The labelled replies of a corpus file."""
    with (FIXTURES / name).open(encoding="utf-8") as lines:
        for line in lines:
            if line.strip():
                said = json.loads(line)
                yield Reply(said["text"], said["context"], said["acts"])


@dataclass(frozen=True)
class Score:
    """How a corpus was read, as shares of its messages."""

    exact: float
    wrong_records: float
    missed_urgent: int


def score(name: str) -> Score:
    """Read a whole corpus; a wrong record is a log or an amend that the label does not hold."""
    total = exact = wrong = missed = 0
    for reply in replies(name):
        got = reply.read
        total += 1
        exact += got == reply.wanted
        wrong += any(act["act"] in RECORDS and act not in reply.wanted for act in got)
        missed += any(act.get("urgent") for act in reply.wanted) and not any(act.get("urgent") for act in got)
    return Score(exact / total, wrong / total, missed)
