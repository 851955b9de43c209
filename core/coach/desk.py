"""What lies on a coach's desk: the people who train, the circuits there are; and what may be changed there."""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import datetime

from core.circuit import Circuit
from core.diary import History
from core.health import SafetyNote
from core.trainee import Block, Trainee


@dataclass(frozen=True)
class Client:
    """A trainee of this coach.

    Attributes:
        id: the store's number for them.
        trainee: what is known of them; of their health a coach is never shown more than what it comes to.
        circuit: the circuit that is on where there is no block.
        running: true in the middle of a workout.
        diary: theirs, for what is due, and for what stands before a workout.
        gone_at: since when nothing can be sent to them (UTC), None while it can.
    """

    id: int
    trainee: Trainee
    circuit: Circuit
    running: bool = False
    diary: History = field(default_factory=History)
    gone_at: datetime | None = None

    @property
    def name(self) -> str:
        """Theirs."""
        return self.trainee.name

    @property
    def zone(self) -> str:
        """The IANA name of their clock's zone."""
        return self.trainee.zone

    @property
    def block(self) -> Block | None:
        """Their plan, None without one."""
        return self.trainee.block


@dataclass(frozen=True)
class News:
    """Something of a trainee's safety that no coach was told yet: its number, the trainee's name, the note."""

    number: int
    trainee: str
    note: SafetyNote


@dataclass(frozen=True)
class Desk:
    """The coach, their zone, the trainees, every circuit, the name of the one that new trainees get, and news, oldest first."""

    coach: str
    zone: str
    clients: tuple[Client, ...]
    circuits: tuple[Circuit, ...]
    newcomers: str
    news: tuple[News, ...] = ()

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


@dataclass(frozen=True)
class Clearance:
    """The coach and the clinician agree that a trainee may train (`agreed`), or that is taken back."""

    client: int
    agreed: bool


@dataclass(frozen=True)
class NewsTold:
    """The coach was told the news of these numbers."""

    numbers: tuple[int, ...]


Change = CircuitKept | CircuitRemoved | Assigned | NewcomersGet | Clearance | NewsTold
