"""Walking through a conversation in memory: the real step, a diary that refuses what contradicts it, and a clock that is set."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta
from decimal import Decimal
from typing import TYPE_CHECKING

from bot.bootstrap import demo
from bot.store.ledger import Ledger
from core.diary import History
from core.health import AgeBand, Health
from core.messages import Card
from core.rack import Kind, Rack, RackItem
from core.session.events import Opened, Plan, Said, Woke
from core.session.states import Idle, New
from core.session.step import step
from core.trainee import Trainee
from core.units import Load, Unit

if TYPE_CHECKING:
    from core.circuit import Circuit
    from core.messages import Message
    from core.session.states import State

MORNING = datetime(2026, 3, 2, 6, 30, tzinfo=UTC)
RACK = Rack(
    (
        RackItem(Kind.DUMBBELL, Load(Decimal(8), Unit.KG), 2),
        RackItem(Kind.DUMBBELL, Load(Decimal(12), Unit.KG), 2),
        RackItem(Kind.DUMBBELL, Load(Decimal(16), Unit.KG), 1),
    )
)

HEALTHY = Health(
    open=(),
    age=AgeBand.ADULT,
    pregnant=False,
    conditions=(),
    symptoms=(),
    injuries=(),
    active=True,
    medicine=False,
    decided_at=MORNING,
    finished_at=MORNING,
)


class Walk:
    """One trainee's conversation; `known` for one who has answered everything, and whom nothing holds back.

    `heard` holds every message said, `said` those of the latest step.
    """

    def __init__(self, circuit: Circuit | None = None, *, known: bool = False) -> None:
        trainee = Trainee("Robin", cautions_accepted_at=MORNING, rack=RACK, health=HEALTHY) if known else Trainee("Robin")
        self.circuit = circuit or demo().circuit
        self.ledger = Ledger(trainee, History())
        self.state: State = Idle() if known else New()
        self.now = MORNING
        self.wake_at: datetime | None = None
        self.heard: list[Message] = []
        self.said: list[Message] = []

    @property
    def history(self) -> History:
        """The diary so far."""
        return self.ledger.history

    def _take(self, event: Opened | Said | Woke) -> Walk:
        plan = Plan(self.ledger.trainee, self.circuit, "Coach Wren")
        taken = step(self.state, event, plan, self.history, self.now)
        for entry in taken.records:
            self.ledger = self.ledger.after(entry)
        self.state, self.wake_at = taken.state, taken.wake_at
        self.said = [say.message for say in taken.messages]
        self.heard += self.said
        return self

    def opens(self) -> Walk:
        """The chat is opened."""
        return self._take(Opened())

    def says(self, *texts: str) -> Walk:
        """The trainee sends texts, one after the other."""
        for text in texts:
            self._take(Said(text))
        return self

    def waits(self, seconds: float) -> Walk:
        """Time goes on, with an alarm at every instant that was asked for; `said` holds all that came meanwhile."""
        until, said = self.now + timedelta(seconds=seconds), []
        while self.wake_at is not None and self.wake_at <= until:
            self.now = max(self.now, self.wake_at)
            said += self._take(Woke()).said
        self.now, self.said = until, said
        return self

    def sleeps(self, seconds: float) -> Walk:
        """Time goes on with the program away, and one alarm at the end."""
        self.now += timedelta(seconds=seconds)
        return self._take(Woke())

    def kinds(self) -> list[str]:
        """The names of the messages of the latest step."""
        return [type(message).__name__ for message in self.said]


def card(walk: Walk) -> Card:
    """The card said in the latest step."""
    return next(message for message in walk.said if isinstance(message, Card))


def after_a_day(walk: Walk, days: int = 2) -> Walk:
    """The same trainee some days later."""
    return walk.waits(days * 86_400)


def known_and_trained(*texts: str) -> Walk:
    """Somebody who has answered everything, and has trained once."""
    return Walk(known=True).says("go", "go", "go").waits(61).says("11, 2 left", *texts)
