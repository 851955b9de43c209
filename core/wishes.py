"""What a coach wishes for one trainee, beside the circuit that is on: swaps, loads held back, notes that go on a card."""

from __future__ import annotations

from dataclasses import dataclass

from core.units import Load


@dataclass(frozen=True)
class Swapped:
    """Wherever a circuit has an exercise (a slug), this trainee does another one instead."""

    exercise: str
    instead: str


@dataclass(frozen=True)
class HeldLoad:
    """No load above `most` at an exercise (a slug; None: at every one), per hand; `most` None: not above what was done last."""

    exercise: str | None
    most: Load | None


@dataclass(frozen=True)
class CardNote:
    """The coach's own words on the card of an exercise (a slug; None: on the first card of a workout)."""

    exercise: str | None
    text: str


@dataclass(frozen=True)
class Wishes:
    """All that a coach wishes for one trainee. Each exercise has at most one entry of a kind; the latest counts."""

    swaps: tuple[Swapped, ...] = ()
    holds: tuple[HeldLoad, ...] = ()
    notes: tuple[CardNote, ...] = ()
