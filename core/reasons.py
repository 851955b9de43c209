"""Why a load was named, as numbers; the sentences are in `bot.wording.reasons`."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from core.suggestion.reasons import Reason as WorkedOut


@dataclass(frozen=True)
class CoachSays:
    """The coach put a load on the station and nothing was done there yet."""


@dataclass(frozen=True)
class CarryStart:
    """A first load to carry: from the middle of the rack."""


@dataclass(frozen=True)
class AsLastTime:
    """As carried the last time."""


@dataclass(frozen=True)
class HeldBack:
    """Held lighter after pain."""

    place: str | None


@dataclass(frozen=True)
class AsSaid:
    """The trainee said it felt heavy or light."""

    felt: Literal["heavy", "light"]


@dataclass(frozen=True)
class EmptyHands:
    """No rack, or nothing on it that the hands can hold for this."""


Reason = CoachSays | CarryStart | AsLastTime | HeldBack | AsSaid | EmptyHands | WorkedOut
