"""What lies on a coach's desk: the people who train, the circuits there are; and what may be changed there."""

from __future__ import annotations

from dataclasses import dataclass, field

from core.circuit import Circuit
from core.diary import History
from core.recurrence import Recurrence
from core.trainee import Block


@dataclass(frozen=True)
class Client:
    """A trainee of this coach.

    Attributes:
        id: the store's number for them.
        name: theirs.
        zone: an IANA name.
        circuit: the name of the circuit that is on where there is no block.
        block: their plan, None without one.
        own_days: the days they have set for themselves, None without.
        running: true in the middle of a workout.
        diary: theirs, for what is due.
    """

    id: int
    name: str
    zone: str
    circuit: str
    block: Block | None
    own_days: Recurrence | None = None
    running: bool = False
    diary: History = field(default_factory=History)


@dataclass(frozen=True)
class Desk:
    """The coach, their zone, the trainees, every circuit, and the name of the one that new trainees get."""

    coach: str
    zone: str
    clients: tuple[Client, ...]
    circuits: tuple[Circuit, ...]
    newcomers: str

    def circuit(self, name: str) -> Circuit | None:
        """The circuit of this name, capitals aside."""
        return next((circuit for circuit in self.circuits if circuit.name.lower() == name.lower()), None)


@dataclass(frozen=True)
class CircuitKept:
    """A circuit under its name, in place of what was there; plans that have it go on with it."""

    circuit: Circuit


@dataclass(frozen=True)
class CircuitRemoved:
    """The circuit of this name is no longer wanted; it stays as long as somebody has it."""

    name: str


@dataclass(frozen=True)
class Assigned:
    """What is on for a trainee: a circuit by its name, and the block, None for no plan. The block's circuits go by their names."""

    client: int
    circuit: str
    block: Block | None


@dataclass(frozen=True)
class NewcomersGet:
    """The circuit, by its name, that new trainees start with."""

    circuit: str


Change = CircuitKept | CircuitRemoved | Assigned | NewcomersGet
