"""What lies on a coach's desk: the people who train, the circuits there are; and what may be changed there."""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import date, datetime
from typing import TYPE_CHECKING

from core.circuit import Circuit
from core.diary import CoachWord, History, Question
from core.health import SafetyNote
from core.plan import in_force
from core.recurrence import Weekday
from core.reminders import local_date
from core.trainee import Block, Pause, Trainee
from core.wishes import Wishes

if TYPE_CHECKING:
    from collections.abc import Iterable


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
        new: true until they are through the first talk.
    """

    id: int
    trainee: Trainee
    circuit: Circuit
    running: bool = False
    diary: History = field(default_factory=History)
    gone_at: datetime | None = None
    new: bool = False

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
        """Their plan, None without one; something else may have taken its place (`on`)."""
        return self.trainee.block

    def on(self, now: datetime) -> tuple[Circuit, Block | None]:
        """What is on for them now: a circuit where there is no plan, and the plan."""
        return in_force(self.trainee, self.circuit, local_date(now, self.zone))

    def questions(self) -> tuple[Question, ...]:
        """What they asked and have no answer to, oldest first."""
        return tuple(one for one in self.diary.questions if one.answered_at is None)


@dataclass(frozen=True)
class News:
    """Something of a trainee's safety that no coach was told yet: its number, the trainee's name, the note."""

    number: int
    trainee: str
    note: SafetyNote


@dataclass(frozen=True)
class Asked:
    """A question that no coach was told yet, by its number among those of a client."""

    client: int
    number: int


@dataclass(frozen=True)
class Review:
    """When the week is told: a day of the coach's calendar (None: never) and a time; what fell due until `since` is seen to."""

    day: Weekday | None = "sun"
    at: str = "18:00"
    since: datetime | None = None


SUNDAY_EVENING = Review()


@dataclass(frozen=True)
class Desk:
    """What a step rests on.

    Attributes:
        coach, zone: theirs.
        clients: who trains with them, and `ended` who no longer does.
        circuits: every one, oldest first.
        newcomers: the name of the one that new trainees get.
        news, asked: what no coach was told yet, oldest first.
        review: when the week is told.
    """

    coach: str
    zone: str
    clients: tuple[Client, ...]
    circuits: tuple[Circuit, ...]
    newcomers: str
    news: tuple[News, ...] = ()
    asked: tuple[Asked, ...] = ()
    review: Review = SUNDAY_EVENING
    ended: tuple[Client, ...] = ()

    @property
    def names(self) -> tuple[str, ...]:
        """Of those who train."""
        return tuple(client.name for client in self.clients)

    def those(self, ids: Iterable[int]) -> tuple[Client, ...]:
        """The clients with these ids, in the order of the roster; those who have ended after them."""
        wanted = frozenset(ids)
        return tuple(client for client in (*self.clients, *self.ended) if client.id in wanted)

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


@dataclass(frozen=True)
class ComesOn:
    """The circuit, by its name, that takes the place of what is on for a trainee from a day on; None: nothing is coming."""

    client: int
    comes: str | None
    from_on: date | None


@dataclass(frozen=True)
class WishesKept:
    """All that is wished for one trainee from now on."""

    client: int
    wishes: Wishes


@dataclass(frozen=True)
class PauseKept:
    """The rest that is given to a trainee, None for none."""

    client: int
    pause: Pause | None


@dataclass(frozen=True)
class EndKept:
    """When a trainee was taken off the roster, None when they are on it."""

    client: int
    ended_at: datetime | None


@dataclass(frozen=True)
class WordSent:
    """Words on their way to a trainee."""

    client: int
    word: CoachWord


@dataclass(frozen=True)
class WordTakenBack:
    """The words of this number are not said to a trainee, if they have not been yet."""

    client: int
    word_number: int


@dataclass(frozen=True)
class QuestionsAnswered:
    """The trainee's questions of these numbers are answered (`answered`), or open again."""

    client: int
    questions: tuple[int, ...]
    answered: bool


@dataclass(frozen=True)
class QuestionsTold:
    """A coach was told these questions."""

    questions_told: tuple[Asked, ...]


@dataclass(frozen=True)
class ReviewSet:
    """When the week is told from now on; day None: never."""

    day: Weekday | None
    clock: str


@dataclass(frozen=True)
class WeekTold:
    """The week was told, or is not told any more, at an instant (UTC): until then it is seen to."""

    told_at: datetime


Change = (
    CircuitKept
    | CircuitRemoved
    | Assigned
    | NewcomersGet
    | Clearance
    | NewsTold
    | ComesOn
    | WishesKept
    | PauseKept
    | EndKept
    | WordSent
    | WordTakenBack
    | QuestionsAnswered
    | QuestionsTold
    | ReviewSet
    | WeekTold
)
