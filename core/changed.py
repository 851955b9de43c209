"""What a coach has changed for a trainee, as the coach's words of that kind carry it: a value, and the text it is kept as."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from enum import StrEnum


class ChangeKind(StrEnum):
    """What was changed."""

    CIRCUIT = "circuit"  # another circuit is on, or comes on a day
    PLAN = "plan"
    SWAP = "swap"
    SWAP_ENDED = "swap ended"  # of one exercise, or of all
    PAUSE = "pause"
    PAUSE_ENDED = "pause ended"
    CLEARED = "cleared"
    REMOVED = "removed"
    UNDONE = "undone"  # what was told last is taken back


@dataclass(frozen=True)
class Changed:
    """A change: `name` is the circuit or the exercise (a slug), `other` what is done instead (a slug).

    `on` is the day it begins, or ends.
    """

    kind: ChangeKind
    name: str | None = None
    other: str | None = None
    on: date | None = None


def changed_text(changed: Changed) -> str:
    """A change as the text of a coach's word: four lines."""
    return "\n".join((changed.kind.value, changed.name or "", changed.other or "", "" if changed.on is None else f"{changed.on}"))


def read_changed(text: str) -> Changed:
    """What `changed_text` wrote.

    Raises:
        ValueError: when it wrote no such thing.
    """
    kind, name, other, on = text.split("\n")
    return Changed(ChangeKind(kind), name or None, other or None, date.fromisoformat(on) if on else None)
