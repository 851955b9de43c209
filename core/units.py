"""Loads, exactly: an amount in the unit it was said in, and what it is in kilograms.

Pound to kilogram is exact by definition: 1 lb = 0.45359237 kg (NIST Special Publication 811, Appendix B.8).
"""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum

KG_PER_LB = Decimal("0.45359237")


class Unit(StrEnum):
    """The unit a load was said in."""

    KG = "kg"
    LB = "lb"


@dataclass(frozen=True, order=False)
class Load:
    """A load per hand; 0 is bodyweight.

    `amount` is kept exactly as said, in `unit`; kilograms follow from it and are never stored.
    """

    amount: Decimal
    unit: Unit

    @property
    def kg(self) -> Decimal:
        """The load in kilograms, exact."""
        return self.amount if self.unit is Unit.KG else self.amount * KG_PER_LB

    def in_unit(self, unit: Unit) -> Decimal:
        """The load in `unit`; exact when it is the unit said, else exact for lb → kg and rounded to 28 digits back."""
        if unit is self.unit:
            return self.amount
        return self.kg if unit is Unit.KG else self.amount / KG_PER_LB


BODYWEIGHT = Load(Decimal(0), Unit.KG)


def amount_text(amount: Decimal) -> str:
    """An amount as people write it: `20`, `17.5`, never `20.0` or `2E+1`."""
    return f"{amount.normalize():f}"
