"""Signs in a workout that it is too much today: stations failing in a row, reps falling by half. Common practice, no source."""

from __future__ import annotations

from typing import TYPE_CHECKING

from core.health import TooMuch

if TYPE_CHECKING:
    from collections.abc import Sequence

    from core.diary import SetRecord

FAILING_SHARE = 0.8  # of the reps that the minute allows at the tempo
IN_A_ROW = 3


def is_short(record: SetRecord) -> bool:
    """Whether a set ended well before its time did."""
    if record.reps is None or record.work_s is None or record.rep_s is None:
        return False
    return record.reps < FAILING_SHARE * int(record.work_s / record.rep_s + 1e-9)


def is_over(record: SetRecord) -> bool:
    """Whether more reps were done than the tempo allows: it was not kept, so the load must not rise for it."""
    if record.reps is None or record.work_s is None or record.rep_s is None:
        return False
    return record.reps > int(record.work_s / record.rep_s + 1e-9)


def _share(record: SetRecord) -> float:
    """Reps as a share of what the time allows at the tempo, 1 at most; bare reps where nothing says what it allows."""
    reps = float(record.reps or 0)
    if record.work_s is None or record.rep_s is None:
        return reps
    return min(1.0, reps / max(1, int(record.work_s / record.rep_s + 1e-9)))


def too_much(sets: Sequence[SetRecord]) -> TooMuch | None:
    """What the sets of a workout so far, in the order done, give away."""
    stations: dict[tuple[int, int], SetRecord] = {}
    for record in sets:  # of two sides the weaker counts
        spot = (record.round, record.station)
        if spot not in stations or (record.reps or 0) < (stations[spot].reps or 0):
            stations[spot] = record
    done = [stations[spot] for spot in sorted(stations)]
    if not done:
        return None
    last = done[-1]
    before = stations.get((last.round - 1, last.station))
    if before is not None and before.exercise == last.exercise and before.reps and last.reps is not None:
        heavier = before.load is not None and last.load is not None and last.load.kg > before.load.kg
        if 2 * _share(last) <= _share(before) and not heavier:
            return TooMuch.HALVED
    row = done[-IN_A_ROW:]
    return TooMuch.FAILING if len(row) == IN_A_ROW and all(is_short(record) for record in row) else None
