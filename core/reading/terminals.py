"""The terminals of `grammar.lark` that a message is made into, and the words passed over on the way."""

from __future__ import annotations

from dataclasses import dataclass, field
from decimal import Decimal

from lark import Token as Terminal

from core.reading.surroundings import Surroundings


@dataclass(slots=True)
class Terminals(Surroundings):
    """Terminals in order, each with the words passed over before it."""

    timed: bool = False
    terminals: list[Terminal] = field(default_factory=list)
    dropped: dict[int, frozenset[str]] = field(default_factory=dict)
    passed: set[str] = field(default_factory=set)
    minutes: Decimal = Decimal(0)
    broken: bool = False

    def _emit(self, name: str, index: int, value: object = "") -> None:
        if self.passed:
            self.dropped[index] = frozenset(self.passed)
            self.passed = set()
        self.terminals.append(Terminal(name, str(value), start_pos=index))
