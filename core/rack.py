"""The rack: the loads a trainee can actually hold, in one hand or in both at once.

Plates go on a handle in twos, one each side, so a pair of dumbbells needs each plate four times (arithmetic).
"""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum
from typing import TYPE_CHECKING

from core.units import Load, Unit

if TYPE_CHECKING:
    from collections.abc import Sequence

HANDLE_KG = Decimal(2)  # an empty handle with its collars, when not said: common practice, no source
SIDES = 2
MOST_PLATES_A_SIDE = 5
"""What fits on the sleeve of a common handle (common practice, no source)."""


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
class Plate:
    """Plates of one size: `load` of one, and how many there are in all."""

    load: Decimal
    count: int


@dataclass(frozen=True)
class Setup:
    """One dumbbell put together: its load, and the plates on each side, largest first."""

    load: Decimal
    a_side: tuple[Decimal, ...]


def setups(handle: Decimal, plates: Sequence[Plate], *, hands: int, most_a_side: int = MOST_PLATES_A_SIDE) -> tuple[Setup, ...]:
    """Every dumbbell that `hands` hands can hold at once, lightest first; of two ways to a load the one with fewer plates.

    Args:
        handle: of one empty handle with its collars.
        plates: sizes and how many there are of each in all; a size may appear more than once.
        hands: 2 for a pair, 1 for a single.
        most_a_side: plates that fit on one side.
    """
    count: Counter[Decimal] = Counter()
    for plate in plates:
        count[plate.load] += max(0, plate.count)
    found: dict[Decimal, tuple[Decimal, ...]] = {handle: ()}
    for size in sorted((size for size in count if size > 0), reverse=True):
        for load, side in list(found.items()):
            most = min(count[size] // (SIDES * hands), most_a_side - len(side))
            for number in range(1, most + 1):
                heavier, longer = load + SIDES * number * size, (*side, *[size] * number)
                if heavier not in found or len(longer) < len(found[heavier]):
                    found[heavier] = longer
    return tuple(Setup(load, side) for load, side in sorted(found.items()))


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

    def plates(self, unit: Unit) -> tuple[Plate, ...]:
        """The plates, their loads in `unit`."""
        return tuple(
            Plate(item.load.in_unit(unit), item.count) for item in self.items if item.kind is Kind.PLATE and item.load is not None
        )

    def _built(self, hands: int) -> list[Load]:
        """Loads put together from handles and plates, in the unit of the plates."""
        if sum(item.count for item in self.items if item.kind is Kind.HANDLE) < hands:
            return []
        unit = next((item.load.unit for item in self.items if item.kind is Kind.PLATE and item.load is not None), Unit.KG)
        return [Load(setup.load, unit) for setup in setups(self.handle(unit), self.plates(unit), hands=hands)]
