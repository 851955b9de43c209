"""What has been made of a message so far."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from core.reading.acts import (
    Act,
    Again,
    Context,
    Feel,
    Finish,
    Form,
    Have,
    Help,
    Pause,
    Progress,
    Resume,
    Skip,
    Start,
    Swap,
    TimeLeft,
    Today,
    Undo,
    Units,
)
from core.reading.naming import as_written
from core.reading.phrases import Said
from core.reading.token import Token
from core.units import Unit

if TYPE_CHECKING:
    from collections.abc import Callable

_PLAIN_ACTS: dict[str, Act] = {
    "undo": Undo(),
    "start": Start(),
    "start-if-go": Start(),
    "pause": Pause(),
    "resume": Resume(),
    "finish": Finish(),
    "today": Today(),
    "help": Help(),
    "form-here": Form(),
    "skip": Skip(),
    "skip-day": Skip("day"),
    "swap-here": Swap(),
    "progress": Progress(),
    "heavy": Feel("heavy"),
    "light": Feel("light"),
    "right": Feel("right"),
    "units-kg": Units(Unit.KG),
    "units-lb": Units(Unit.LB),
    "have-nothing": Have(),
    "time-left": TimeLeft(),
    "again": Again(),
}
_NAMING_ACTS: dict[str, Callable[[str | None], Act]] = {"form": Form, "swap": Swap, "progress-on": Progress}


@dataclass(slots=True)
class Reading:
    """What has been found so far: acts with the index they begin at, and the tokens that are explained."""

    tokens: list[Token]
    context: Context
    text: str
    acts: list[tuple[int, Act]] = field(default_factory=list)
    explained: set[int] = field(default_factory=set)
    phrases: dict[int, Said] = field(default_factory=dict)

    def add(self, at: int, act: Act) -> None:
        """Take an act that begins at token `at`."""
        self.acts.append((at, act))

    def explain(self, first: int, last: int) -> None:
        """Account for tokens `[first, last)`."""
        self.explained.update(range(first, last))

    def words_at(self, at: int) -> set[str]:
        """The words of the phrase that begins at token `at`; none when no phrase does."""
        said = self.phrases.get(at)
        return {token.text for token in self.tokens[said.first : said.last]} if said is not None else set()


def act_of(said: Said, text: str) -> Act:
    """The act of a set phrase."""
    make = _NAMING_ACTS.get(said.meaning)
    return make(as_written(said.exercise, text)) if make is not None else _PLAIN_ACTS[said.meaning]
