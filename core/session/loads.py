"""Steps along a rack: the loads up to one, the next one, how two differ. Loads are ascending; there is at least one."""

from __future__ import annotations

from typing import TYPE_CHECKING, Literal

if TYPE_CHECKING:
    from decimal import Decimal

    from core.units import Load


def up_to(loads: tuple[Load, ...], most: Load) -> tuple[Load, ...]:
    """The loads that are not above another; the lightest when all are."""
    return tuple(load for load in loads if load.kg <= most.kg) or loads[:1]


def at_most(loads: tuple[Load, ...], kg: Decimal) -> Load:
    """The heaviest load that is not above `kg`, else the lightest there is."""
    return next((load for load in reversed(loads) if load.kg <= kg), loads[0])


def one_step(loads: tuple[Load, ...], base: Load, felt: Literal["heavy", "light"]) -> Load | None:
    """The load one step away, None at the end of the rack."""
    if felt == "heavy":
        return next((load for load in reversed(loads) if load.kg < base.kg), None)
    return next((load for load in loads if load.kg > base.kg), None)


def change_of(base: Load, load: Load) -> Literal["up", "same", "down"]:
    """How a load differs from another."""
    if load.kg == base.kg:
        return "same"
    return "up" if load.kg > base.kg else "down"
