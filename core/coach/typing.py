"""What coaches type: a yes or a no, for whom, a circuit as plain lines, a plan, a question. All faults come at once."""

from __future__ import annotations

import re
from dataclasses import dataclass, field, replace
from datetime import date
from typing import TYPE_CHECKING, Literal

from core.catalogue import named
from core.circuit import Circuit
from core.circuit_text import UNNAMED, draft_typed
from core.coach.clearing import read_clearing
from core.coach.put_up import EVERYONE, FOR, NAMES, from_day
from core.coach.whom import person
from core.coach_messages import HelpTopic, Remark
from core.deeds import NobodyCalled, WhoMeant
from core.recurrence import WEEK
from core.trainee import Block

if TYPE_CHECKING:
    from collections.abc import Sequence

    from core.coach.desk import Desk
    from core.recurrence import Weekday

YES = {"yes", "y", "yep", "yeah", "ok", "okay", "sure", "go", "do it", "use it", "put it in force", "yes please"}
NO = {"no", "n", "nope", "drop it", "leave it", "cancel", "forget it", "no thanks"}
UNDO = {"undo", "undo that", "take it back", "take that back", "scratch that"}
HELP = {"help", "what can i say", "hi", "hello", "start"}
TOPICS: dict[str, HelpTopic] = {
    "people": "people",
    "week": "people",
    "words": "words",
    "messages": "words",
    "changes": "changes",
    "circuits": "circuits",
    "plans": "circuits",
}
HELP_ON = re.compile(rf"help\s+(?:me\s+)?(?:with\s+|on\s+|about\s+)?(?:the\s+)?(?P<topic>{'|'.join(TOPICS)})")
LIST = {"circuits", "list", "list circuits", "my circuits", "show circuits"}
PLANS = {"plan", "plans", "show plan", "show plans", "the plan", "show the plan", "who does what"}
ANY_DAY = re.compile(r"\b(?:any|every) day\b|\bdaily\b", re.IGNORECASE)
A_SPAN = re.compile(r"\b(?:weeks?|rounds?|minutes?|mins?|seconds?|secs?)\b", re.IGNORECASE)
IN_MINUTES = re.compile(
    r"(?:^|[\s,;/])(?:in|within)\s+(?P<minutes>[1-9]\d{0,2})\s*(?:minutes|mins?)\b(?:\s+in all)?", re.IGNORECASE
)
PLAN = re.compile(r"plan\b[:,]?\s*(?P<rest>.+)", re.IGNORECASE | re.DOTALL)
SHOW = re.compile(r"(?:show|see)(?:\s+me)?\s+(?P<name>.+)", re.IGNORECASE)
NUMBERS = ("one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve")
WEEKS = re.compile(rf"\b(?P<count>\d+|{'|'.join(NUMBERS)})[\s-]*weeks?\b", re.IGNORECASE)
NO_EASIER = re.compile(r"\b(?:no|without an?)\s+easier\s+weeks?\b", re.IGNORECASE)
EASIER = re.compile(r"\beasier\s+weeks?\s*:?\s*(?P<weeks>\d+(?:\s*(?:,|and)\s*\d+)*)", re.IGNORECASE)
BETWEEN = re.compile(r"\s*(?:[,;/\n]|\bthen\b|\band\b|\bof\b|\bon\b|\bfor\b|\bin\b|\bwith\b)\s*", re.IGNORECASE)
LIKE_A_CIRCUIT = re.compile(r"[/\n]|\d\s*(?:s\s*)?(?:work|rest|rounds?)\b", re.IGNORECASE)
DEFAULT_WEEKS = 4
WEEKS_MAX = 26


@dataclass(frozen=True)
class Simple:
    """A word or two that ask for one thing; `topic` is what help is wanted on."""

    what: Literal["no", "undo", "help", "list", "plans"]
    topic: HelpTopic = "all"


@dataclass(frozen=True)
class Yes:
    """A yes; `whom` when it says for whom."""

    whom: tuple[int, ...] | None = None


@dataclass(frozen=True)
class Show:
    """Show me the circuit of this name."""

    name: str


@dataclass(frozen=True)
class CircuitTyped:
    """A circuit without faults, for whom, the minutes it is to fit in, and the day it begins; None for what was not said."""

    circuit: Circuit
    whom: tuple[int, ...] | None
    minutes: int | None = None
    from_on: date | None = None


@dataclass(frozen=True)
class PlanTyped:
    """A plan without faults, and for whom."""

    block: Block
    whom: tuple[int, ...] | None


@dataclass(frozen=True)
class Faulty:
    """Something that must be mended first: every fault."""

    faults: tuple[Remark, ...]


@dataclass(frozen=True)
class ClearingTyped:
    """Somebody may train, the coach says: their name as it was typed."""

    name: str


Typed = Show | ClearingTyped | CircuitTyped | PlanTyped | Faulty | None


def read_answer(text: str, desk: Desk) -> Simple | Yes | Faulty | None:
    """A yes or a no, an undo, a list, help: what is said in a word or two; None for everything else."""
    plain = " ".join(text.lower().split()).strip(" .!?")
    simple: dict[Literal["no", "undo", "help", "list", "plans"], set[str]]
    simple = {"no": NO, "undo": UNDO, "help": HELP, "list": LIST, "plans": PLANS}
    for what, words in simple.items():
        if plain in words:
            return Simple(what)
    topic = HELP_ON.fullmatch(plain)
    if topic is not None:
        return Simple("help", TOPICS[topic["topic"]])
    rest, whom, faults = _for_whom(text, desk)
    if rest.lower().strip(" ,.!") not in YES:
        return None
    return Faulty(tuple(faults)) if faults else Yes(whom)


def read_coach(text: str, desk: Desk, today: date) -> Typed:
    """What a coach types of circuits, plans and clearances; None when it cannot be read."""
    plain = " ".join(text.lower().split()).strip(" .!?")
    cleared = read_clearing(text)
    if cleared is not None and desk.circuit(plain) is None:
        return ClearingTyped(cleared)
    plan = PLAN.fullmatch(text.strip())
    if plan is not None:
        rest, whom, faults = _for_whom(plan["rest"], desk)
        block = read_plan(rest, desk.circuits, today)
        if isinstance(block, tuple) or faults:
            return Faulty((*(block if isinstance(block, tuple) else ()), *faults))
        return PlanTyped(block, whom)
    asked = SHOW.fullmatch(plain)
    if asked is not None or desk.circuit(plain) is not None:
        return Show(plain if asked is None else asked["name"])
    dated, from_on = from_day(text, today)
    rest, whom, faults = _for_whom(dated, desk)
    circuit = _circuit(rest, today, whom, faults)
    return replace(circuit, from_on=from_on) if isinstance(circuit, CircuitTyped) else circuit


def _for_whom(text: str, desk: Desk) -> tuple[str, tuple[int, ...] | None, list[Remark]]:
    """The text without its "for Ana and Ben", their ids (None when nobody is named), and a fault for each name in doubt."""
    found = FOR.search(text)
    if found is None or A_SPAN.search(found["who"]):
        return text, None, []
    who, rest = found["who"].strip(), text[: found.start()]
    if who.lower() in EVERYONE:
        return rest, tuple(client.id for client in desk.clients), []
    ids, faults = [], []
    for name in NAMES.split(who):
        match person(name, desk):
            case WhoMeant(names=names):
                faults.append(Remark("for whom", f'"{name}"', f"say which: {' or '.join(names)}"))
            case NobodyCalled():
                there = ", ".join(desk.names) or "nobody trains with you yet"
                faults.append(Remark("for whom", f'"{name}"', f"these train with you: {there}"))
            case client:
                ids.append(client.id)
    return rest, tuple(dict.fromkeys(ids)), faults


def _circuit(text: str, today: date, whom: tuple[int, ...] | None, faults: list[Remark]) -> CircuitTyped | Faulty | None:
    """A circuit as plain lines, when the text looks like one."""
    asked = IN_MINUTES.search(text)
    if asked is not None:
        text = f"{text[: asked.start()]}, {text[asked.end() :]}"
    draft = draft_typed(text)
    known = any(named(part.split(",")[0]) is not None for part in re.split(r"[/\n]", text))
    if not known and LIKE_A_CIRCUIT.search(text) is None:
        return None
    everything = [*(Remark(fault.place, fault.says, fault.remedy) for fault in draft.faults), *faults]
    if everything or draft.circuit is None:
        return Faulty(tuple(everything))
    circuit = draft.circuit
    if circuit.name == UNNAMED:  # the day tells it from the next one that has no name
        circuit = replace(circuit, name=f"{UNNAMED} of {today.day} {today:%b}")
    return CircuitTyped(circuit, whom, None if asked is None else int(asked["minutes"]))


@dataclass
class _Said:
    """A plan's text, from which what was understood is taken out."""

    rest: str
    faults: list[Remark] = field(default_factory=list)

    def take(self, pattern: re.Pattern[str]) -> re.Match[str] | None:
        """The first place where a pattern stands, taken out of the text."""
        found = pattern.search(self.rest)
        if found is not None:
            self.rest = f"{self.rest[: found.start()]} , {self.rest[found.end() :]}"
        return found

    def fault(self, place: str, says: str, remedy: str) -> None:
        """Note one more fault."""
        self.faults.append(Remark(place, says, remedy))


def read_plan(text: str, there_are: Sequence[Circuit], today: date) -> Block | tuple[Remark, ...]:
    """A plan as a coach types it, or every fault in it: circuits by their names, days, weeks, in any order.

    Four weeks unless it says otherwise, the last of them easier; it starts today.
    """
    said = _Said(text)
    circuits = _circuits(said, there_are)
    none_easier = said.take(NO_EASIER) is not None
    easier = said.take(EASIER)
    weeks = _weeks(said)
    any_day = said.take(ANY_DAY) is not None
    said.rest, from_on = from_day(said.rest, today)
    starts_on = from_on or today
    days = _days(said)
    if not days and not any_day:
        said.fault("the days", "nothing", 'say them: "on mon wed fri", or "any day"')
    easier_weeks: tuple[int, ...] = (weeks,) if weeks > 1 else ()
    if none_easier:
        easier_weeks = ()
    elif easier is not None:
        easier_weeks = tuple(sorted({int(week) for week in re.findall(r"\d+", easier["weeks"])}))
        if not all(1 <= week <= weeks for week in easier_weeks):
            said.fault("the easier week", easier.group(), f"a week from 1 to {weeks}")
    there = ", ".join(circuit.name for circuit in there_are)
    for left in filter(None, (part.strip(" .:") for part in BETWEEN.split(said.rest))):
        said.fault("the plan", f'"{left}"', f"name circuits that are there: {there}")
    if not circuits and not said.faults:
        said.fault("the plan", "no circuit", f"name one or more: {there}")
    return tuple(said.faults) or Block(circuits, days, weeks, easier_weeks, starts_on)


def _circuits(said: _Said, there_are: Sequence[Circuit]) -> tuple[Circuit, ...]:
    """The circuits named, in the order in which they stand; the longest names are looked for first."""
    found: list[tuple[int, Circuit]] = []
    for circuit in sorted(there_are, key=lambda circuit: -len(circuit.name)):
        pattern = re.compile(rf"(?<!\w){re.escape(circuit.name)}(?!\w)", re.IGNORECASE)
        while (match := pattern.search(said.rest)) is not None:
            found.append((match.start(), circuit))
            said.rest = said.rest[: match.start()] + "," * len(match.group()) + said.rest[match.end() :]
    return tuple(circuit for _, circuit in sorted(found, key=lambda pair: pair[0]))


def _weeks(said: _Said) -> int:
    """How many weeks; four when nothing is said."""
    found = said.take(WEEKS)
    if found is None:
        return DEFAULT_WEEKS
    word = found["count"].lower()
    weeks = int(word) if word.isdigit() else NUMBERS.index(word) + 1
    if not 1 <= weeks <= WEEKS_MAX:
        said.fault("the weeks", found.group(), f"1 to {WEEKS_MAX} weeks")
        return DEFAULT_WEEKS
    return weeks


def _days(said: _Said) -> tuple[Weekday, ...]:
    """The days of the week named, in week order."""
    days = []
    for day in WEEK:
        while said.take(re.compile(rf"\b{day}(?:r|rs)?(?:day|sday|nesday|urday)?s?\b", re.IGNORECASE)) is not None:
            days.append(day)
    return tuple(dict.fromkeys(days))
