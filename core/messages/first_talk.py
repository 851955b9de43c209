"""The first talk: greeting, unit, rack."""

from __future__ import annotations

from dataclasses import dataclass

from core.rack import RackItem
from core.units import Load, Unit


@dataclass(frozen=True)
class Greeting:
    """The first message to a new trainee."""

    coach: str


@dataclass(frozen=True)
class HowItWorks:
    """The second: what to text."""

    unit: Unit


@dataclass(frozen=True)
class UnitAsked:
    """Kilograms or pounds?"""


@dataclass(frozen=True)
class RackAsked:
    """Which weights do you own?"""

    unit: Unit


@dataclass(frozen=True)
class RackNotRead:
    """The answer about weights could not be read."""

    unit: Unit


@dataclass(frozen=True)
class PairsAsked:
    """Loads were named without a count."""

    loads: tuple[Load, ...]


@dataclass(frozen=True)
class RackMoreAsked:
    """Weights were named when others were known: are those still there?"""

    known: tuple[RackItem, ...]


@dataclass(frozen=True)
class NotNeeded:
    """Things were named that no station is done with: "bench", "barbell"."""

    kinds: tuple[str, ...]


@dataclass(frozen=True)
class RackNoted:
    """What the trainee owns, read back."""

    items: tuple[RackItem, ...]


FirstTalkMessage = Greeting | HowItWorks | UnitAsked | RackAsked | RackNotRead | PairsAsked | RackMoreAsked | RackNoted | NotNeeded
