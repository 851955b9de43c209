"""Warning signs, pain now and since the last time, fear, feeling unwell."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class UrgentStop:
    """A sign that stops everything at once. `emergency` is the number to call, None for the local one."""

    place: str | None
    emergency: str | None
    coach: str


@dataclass(frozen=True)
class PainStop:
    """Pain stops a station; `asked`: sharp or dull, new or known?"""

    place: str | None
    exercise: str
    asked: bool = True


@dataclass(frozen=True)
class PainAdvice:
    """What follows from pain at a station: `swap` spares the place, None when the station is left out.

    `others` are the other stations that changed with it; `mild` is dull and known.
    """

    exercise: str
    swap: str | None
    others: tuple[str, ...]
    mild: bool


@dataclass(frozen=True)
class PainHeard:
    """Pain outside a station; sharp or dull, new or known?"""

    place: str | None


@dataclass(frozen=True)
class PainKept:
    """Pain outside a station is noted, as it was described."""

    mild: bool


@dataclass(frozen=True)
class PainGone:
    """Places that hurt are fine now: what was left out comes back, a step lighter."""

    places: tuple[str, ...]


@dataclass(frozen=True)
class PainStays:
    """Places still hurt: what troubles them stays out."""

    places: tuple[str, ...]


@dataclass(frozen=True)
class NothingSpared:
    """Every station would trouble what hurts: rest today."""

    places: tuple[str, ...]


@dataclass(frozen=True)
class FearHeard:
    """The trainee is afraid before anything was lifted."""

    coach: str


@dataclass(frozen=True)
class UnwellPause:
    """The trainee feels unwell or is frightened: the clock is stopped."""

    emergency: str | None


@dataclass(frozen=True)
class GoodToHear:
    """Nothing is wrong: signs or pain were denied, or muscles only burn with work (`burning`). No clock was changed."""

    burning: bool


PainMessage = (
    UrgentStop
    | PainStop
    | PainAdvice
    | PainHeard
    | PainKept
    | PainGone
    | PainStays
    | NothingSpared
    | FearHeard
    | UnwellPause
    | GoodToHear
)
