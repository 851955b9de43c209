"""The points of the sheet's small charts, in the units of their view boxes."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from core.review_facts import Change
    from core.sheet import SheetCurve

CURVE_WIDE, CURVE_HIGH, EDGE = 300.0, 60.0, 7.0
CHANGE_WIDE, CHANGE_MOST = 300.0, 20.0  # per cent at either end; what is beyond ends there


def curve(of: SheetCurve) -> tuple[tuple[float, float], ...]:
    """Each day of an exercise: how far along, and how high."""
    first, last = of.points[0][0].toordinal(), of.points[-1][0].toordinal()
    amounts = [float(amount) for _, amount in of.points]
    low, high = min(amounts), max(amounts)
    return tuple(
        (
            _along((day.toordinal() - first) / max(1, last - first), CURVE_WIDE),
            round(CURVE_HIGH - EDGE - (0.5 if high == low else (amount - low) / (high - low)) * (CURVE_HIGH - 2 * EDGE), 1),
        )
        for (day, _), amount in zip(of.points, amounts, strict=True)
    )


def change(of: Change) -> tuple[float, float, float]:
    """Where the low end, the middle and the high end of a change stand; no change is in the middle."""
    low, best, high = ((float(value) / CHANGE_MOST + 1) / 2 for value in (of.low, of.best, of.high))
    return _along(low, CHANGE_WIDE), _along(best, CHANGE_WIDE), _along(high, CHANGE_WIDE)


def share(sets: float, advised: int) -> float:
    """The length of a bar of 100, when what is advised is at 60."""
    return round(min(100.0, 60.0 * sets / advised), 1)


def _along(part: float, wide: float) -> float:
    return round(EDGE + min(1.0, max(0.0, part)) * (wide - 2 * EDGE), 1)
