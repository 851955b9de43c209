"""Training load of weeks: session effort (0-10) times minutes (Foster et al. 2001, entry 41).

Monotony is the mean daily load over seven days divided by its standard deviation, rest days counted as 0; strain is the week's load
times monotony (Foster 1998, entry 42, second-hand). Which standard deviation is not settled there; here it is that of the sample.
Seven equal days have none: monotony is undefined, and None here. How much of a jump is too much is debated: half more than the
weeks before is a plain warning by common practice (from memory, disputed), never a verdict.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import timedelta
from statistics import fmean, median, stdev
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Sequence
    from datetime import datetime

    from core.diary import History, WorkoutRecord

DAYS = 7
WEEKS_BEFORE = 3
JUMP = 1.5
WARNED_FOR = timedelta(days=7)  # one word a week is enough
ALIKE = 2.0  # monotony above this is a warning in Foster 1998 (from memory)


@dataclass(frozen=True)
class Week:
    """The last seven days against the weeks before.

    Attributes:
        load: of the last seven days, in effort times minutes.
        usual: mean week of the three before (of those in which there was training, at least two); None when too little is known.
        monotony: None when it is undefined: every day alike, rest days included, or no training.
    """

    load: float
    usual: float | None
    monotony: float | None

    @property
    def strain(self) -> float | None:
        """The week's load times monotony; None when that is undefined."""
        return None if self.monotony is None else self.load * self.monotony

    @property
    def jump_percent(self) -> int | None:
        """How far above usual, when it is far enough for a word; else None."""
        if not self.usual or self.load < self.usual * JUMP:
            return None
        return round(100 * (self.load / self.usual - 1))

    @property
    def days_alike(self) -> bool:
        """Whether hardly one day differs from another, though there was training."""
        return self.load > 0 and (self.monotony is None or self.monotony > ALIKE)


def session_load(record: WorkoutRecord, effort: float) -> float:
    """Effort (0-10) times minutes from start to end; with the clock stopped nobody trains, so pauses do not count."""
    seconds = ((record.ended_at or record.started_at) - record.started_at).total_seconds()
    return effort * max(0.0, seconds - record.paused_s) / 60


def monotony(daily: Sequence[float]) -> float | None:
    """Mean over standard deviation of daily loads, None where the deviation is 0."""
    spread = stdev(daily)
    return fmean(daily) / spread if spread > 0 else None


def week(history: History, now: datetime) -> Week:
    """The week that ends now.

    A workout whose effort was not said counts with the median of those said, and with none said as nothing.
    """
    done = [record for record in history.workouts if record.ended_at is not None]
    said = [float(record.effort) for record in done if record.effort is not None]
    usual_effort = median(said) if said else 0.0
    daily = [0.0] * (DAYS * (WEEKS_BEFORE + 1))
    for record in done:
        days_ago = (now - record.started_at) // timedelta(days=1)
        if 0 <= days_ago < len(daily):
            daily[days_ago] += session_load(record, usual_effort if record.effort is None else float(record.effort))
    weeks = [sum(daily[start : start + DAYS]) for start in range(0, len(daily), DAYS)]
    before = [load for load in weeks[1:] if load]
    return Week(weeks[0], fmean(before) if len(before) > 1 else None, monotony(daily[:DAYS]))
