"""The rack: the loads a trainee can actually hold, in one hand or in both at once."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum
from itertools import product

from core.units import Load, Unit

HANDLE_KG = Decimal(2)  # an empty handle with its collars, when not said: common practice, no source
PLATES_A_SIDE = 6  # of one size; more does not fit on a short handle: common practice, no source


class Kind(StrEnum):
    """What stands on the rack."""

    DUMBBELL = "dumbbell"
    KETTLEBELL = "kettlebell"
    HANDLE = "handle"
    PLATE = "plate"
    BAND = "band"


@dataclass(frozen=True)
class RackItem:
    """`count` equal things; `load` is what one of them weighs, None when it was not said (bands, bare handles)."""

    kind: Kind
    load: Load | None
    count: int


@dataclass(frozen=True)
class Rack:
    """Everything a trainee owns to lift; empty for bodyweight only."""

    items: tuple[RackItem, ...] = ()

    def loads(self, hands: int) -> tuple[Load, ...]:
        """Every load that `hands` hands (1 or 2) can hold at once, per hand, ascending, each once."""
        fixed = [
            item.load
            for item in self.items
            if item.kind in (Kind.DUMBBELL, Kind.KETTLEBELL) and item.load is not None and item.count >= hands
        ]
        by_kg: dict[Decimal, Load] = {}
        for load in fixed + self._built(hands):
            by_kg.setdefault(load.kg, load)
        return tuple(by_kg[kg] for kg in sorted(by_kg))

    def handle(self, unit: Unit) -> Decimal:
        """What an empty handle weighs, in `unit`, to a hundredth; the usual one when it was not said."""
        said = next((item.load for item in self.items if item.kind is Kind.HANDLE and item.load is not None), None)
        return round((said or Load(HANDLE_KG, Unit.KG)).in_unit(unit), 2)

    def _built(self, hands: int) -> list[Load]:
        """Loads built from handles and plates: the same plates on both ends of every handle."""
        handles = [item for item in self.items if item.kind is Kind.HANDLE]
        if sum(item.count for item in handles) < hands:
            return []
        plates = [item for item in self.items if item.kind is Kind.PLATE and item.load is not None]
        unit = next((item.load.unit for item in plates if item.load is not None), Unit.KG)
        base = self.handle(unit)
        steps = [range(min(PLATES_A_SIDE, item.count // (2 * hands)) + 1) for item in plates]
        return [
            Load(
                base
                + sum(
                    (
                        2 * pairs * item.load.in_unit(unit)
                        for pairs, item in zip(picked, plates, strict=True)
                        if item.load is not None
                    ),
                    Decimal(0),
                ),
                unit,
            )
            for picked in product(*steps)
        ]
