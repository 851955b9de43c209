"""The closing summary."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from core.diary import Ending
from core.messages.reports import SetLine
from core.tempo import Tempo
from core.units import Load


@dataclass(frozen=True)
class SummaryLine:
    """An exercise in the summary: its sets in the order done, the sets of the last time."""

    exercise: str
    sets: tuple[SetLine, ...]
    last_time: tuple[SetLine, ...]


@dataclass(frozen=True)
class BestSet:
    """The set that asked most strength."""

    exercise: str
    line: SetLine


@dataclass(frozen=True)
class NextChange:
    """What changes next time: the load, or the tempo."""

    exercise: str
    load: Load
    change: Literal["up", "same", "down"]
    tempo: Tempo | None


@dataclass(frozen=True)
class Summary:
    """The end of a workout: what was done. Times in seconds; `missing` counts sets asked about and not reported."""

    circuit: str
    ending: Ending
    lines: tuple[SummaryLine, ...]
    work_s: int
    total_s: int
    best: BestSet | None
    changes: tuple[NextChange, ...]
    missing: int
    first_time: bool
