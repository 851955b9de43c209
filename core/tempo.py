"""Tempo: lowering, pause, lifting, pause, in seconds (the trade's four-number notation, as in `2-1-1-0`).

Whole reps in a station are floor(seconds / rep seconds): 3-1-1-0 is 5 s, 12 reps in 60 s (arithmetic).
"""

from __future__ import annotations

from dataclasses import dataclass

from core.errors import TempoUnreadable

PARTS = 4


@dataclass(frozen=True)
class Tempo:
    """Seconds for each phase of one rep."""

    lowering_s: float
    bottom_s: float
    lifting_s: float
    top_s: float

    @property
    def rep_s(self) -> float:
        """Seconds one rep takes."""
        return self.lowering_s + self.bottom_s + self.lifting_s + self.top_s

    def slower(self, extra_s: float) -> Tempo:
        """The same tempo with `extra_s` more seconds on the way down."""
        return Tempo(self.lowering_s + extra_s, self.bottom_s, self.lifting_s, self.top_s)

    def __str__(self) -> str:
        return "-".join(f"{part:g}" for part in (self.lowering_s, self.bottom_s, self.lifting_s, self.top_s))

    @staticmethod
    def parse(text: str) -> Tempo:
        """Read `2-1-1-0`; an explosive `X` counts one second, by convention.

        Raises:
            TempoUnreadable: when the text is not four numbers, or adds up to nothing.
        """
        parts = ["1" if part.strip().upper() == "X" else part.strip() for part in text.split("-")]
        try:
            numbers = [float(part) for part in parts]
        except ValueError:
            raise TempoUnreadable(text) from None
        if len(numbers) != PARTS or min(numbers) < 0 or not 0 < sum(numbers) < float("inf"):
            raise TempoUnreadable(text)
        return Tempo(*numbers)


def whole_reps(work_s: float, rep_s: float) -> int:
    """Whole reps that fit in `work_s` seconds at `rep_s` seconds each."""
    return int(work_s // rep_s)
