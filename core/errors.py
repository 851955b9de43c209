"""Every error of this package, as a tree. Each carries facts; what a trainee reads is in `bot.wording`.

StationcallError
├── TempoUnreadable      a tempo that is not four numbers
├── CatalogueBroken      the exercise catalogue that ships with the package contradicts itself
├── ExerciseUnknown      a slug the catalogue does not hold
└── CircuitBroken        a circuit file with faults (the faults are values, all of them)
"""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Sequence


class StationcallError(Exception):
    """The root of the family."""


class TempoUnreadable(StationcallError):
    """A tempo that is not four numbers of seconds."""

    def __init__(self, says: str) -> None:
        super().__init__(f"tempo {says!r} is not four numbers such as 2-1-1-0")
        self.says = says


class CatalogueBroken(StationcallError):
    """The catalogue contradicts itself; only a programmer can mend this."""

    def __init__(self, faults: Sequence[str]) -> None:
        super().__init__("; ".join(faults))
        self.faults = tuple(faults)


class ExerciseUnknown(StationcallError):
    """A slug that the catalogue does not hold."""

    def __init__(self, slug: str) -> None:
        super().__init__(f"no exercise {slug!r} in the catalogue")
        self.slug = slug


class CircuitBroken(StationcallError):
    """A circuit with faults; `faults` holds a sentence for each, with its place."""

    def __init__(self, faults: Sequence[str]) -> None:
        super().__init__("; ".join(faults))
        self.faults = tuple(faults)
