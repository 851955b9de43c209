"""How hard it is: too much for today, and the effort of the whole workout."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from typing import Literal

from core.health import TooMuch


@dataclass(frozen=True)
class TooMuchSeen:
    """It looks like too much today: more rest, lighter, or the end?"""

    sign: TooMuch


@dataclass(frozen=True)
class ReliefTaken:
    """What was chosen; `rest_s` are the seconds that rests are longer by."""

    choice: Literal["rest", "lighter", "on"]
    rest_s: int


@dataclass(frozen=True)
class EffortAsked:
    """How hard was it as a whole?"""


@dataclass(frozen=True)
class EffortNoted:
    """The effort was noted. `jump_percent`: how far the week is above usual, if far; `alike`: no day differs from another."""

    effort: Decimal
    jump_percent: int | None
    alike: bool


EffortMessage = TooMuchSeen | ReliefTaken | EffortAsked | EffortNoted
