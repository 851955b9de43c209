"""One message becomes its acts, in the order written.

Text → tokens → sentences and clauses → what each says: pain first, then reminders and gear, then set phrases, and last the
numbers, every one of which must be accounted for or the message is unclear.
"""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from typing import TYPE_CHECKING

from core.reading import gear, guards, phrases
from core.reading.acts import (
    Act,
    Again,
    Amend,
    Awaiting,
    Context,
    Feel,
    Finish,
    Form,
    Have,
    Help,
    Log,
    Pause,
    Progress,
    Resume,
    Skip,
    Start,
    Swap,
    TimeLeft,
    Today,
    Unclear,
    Undo,
    Units,
)
from core.reading.answers import answer
from core.reading.lexicon import ENGLISH, PLACES, VOCABULARY
from core.reading.normal import normalise
from core.reading.pain import pains
from core.reading.records import records
from core.reading.tokens import Kind, Token, tokenise
from core.reading.when import when_acts
from core.units import Unit

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from core.reading.phrases import Said

_SENTENCE_ENDS = {".", "!", "?", ";"}
_CLAUSE_ENDS = {",", "but", "then", "though", "because", "although", "(", ")", "so"}
_PRONOUNS = frozenset(
    "it this that these those them one something anything else another other different easier things same me again what you i the do "
    "a way move exercise station help thing everything".split()
)

_ACTS: dict[str, Callable[[Said], Act]] = {
    "undo": lambda _: Undo(),
    "start": lambda _: Start(),
    "start-if-go": lambda _: Start(),
    "pause": lambda _: Pause(),
    "resume": lambda _: Resume(),
    "finish": lambda _: Finish(),
    "today": lambda _: Today(),
    "help": lambda _: Help(),
    "form": lambda said: Form(_exercise(said)),
    "form-here": lambda _: Form(),
    "skip": lambda _: Skip(),
    "skip-day": lambda _: Skip("day"),
    "swap": lambda said: Swap(_exercise(said)),
    "swap-here": lambda _: Swap(),
    "progress": lambda _: Progress(),
    "progress-on": lambda said: Progress(_exercise(said)),
    "heavy": lambda _: Feel("heavy"),
    "light": lambda _: Feel("light"),
    "right": lambda _: Feel("right"),
    "units-kg": lambda _: Units(Unit.KG),
    "units-lb": lambda _: Units(Unit.LB),
    "have-nothing": lambda _: Have(),
    "time-left": lambda _: TimeLeft(),
    "again": lambda _: Again(),
}


def _exercise(said: Said) -> str | None:
    """The exercise as written, None when it is only pointed at."""
    if said.exercise is None or set(said.exercise.split()) <= _PRONOUNS:
        return None
    return said.exercise


@dataclass(slots=True)
class _Reading:
    """What has been found so far: acts with the index they begin at, and the tokens that are explained."""

    tokens: list[Token]
    context: Context
    acts: list[tuple[int, Act]] = field(default_factory=list)
    explained: set[int] = field(default_factory=set)
    phrases: dict[int, Said] = field(default_factory=dict)

    def add(self, at: int, act: Act) -> None:
        self.acts.append((at, act))

    def explain(self, first: int, last: int) -> None:
        self.explained.update(range(first, last))


def read(text: str, context: Context = Context()) -> tuple[Act, ...]:  # noqa: B008 - a frozen value
    """The acts of one message, in the order written; never empty, never raises.

    Args:
        text: the message as typed; at most 4096 characters of it are read.
        context: what the conversation knows; see `Context`.

    Returns:
        The acts. `Unclear` stands for anything a careful coach would ask about.
    """
    tokens = tokenise(normalise(text))
    reading = _Reading(tokens, context)
    sentences = _split(tokens, 0, len(tokens), _SENTENCE_ENDS)
    clauses = [clause for sentence in sentences for clause in _clauses(tokens, *sentence)]
    for at, pain, (first, last) in pains(tokens, clauses):
        if pain is not None:
            reading.add(at, pain)
        reading.explain(first, last)
    if guards.gives_orders(tokens):
        return _closed(reading, unclear_at=0)
    if not reading.acts:
        answered = answer(tokens, context)
        if answered is not None:
            return (answered,)
    for first, last in sentences:
        _read_sentence(reading, first, last)
    for at, act in records(tokens, sentences, clauses, reading.phrases, reading.explained, context):
        reading.add(at, act)
    return _closed(reading)


def _split(tokens: Sequence[Token], first: int, last: int, ends: set[str]) -> list[tuple[int, int]]:
    """The spans between the ends, without empty ones."""
    spans: list[tuple[int, int]] = []
    start = first
    for index in range(first, last):
        if tokens[index].text in ends:
            spans.append((start, index))
            start = index + 1
    spans.append((start, last))
    return [(a, b) for a, b in spans if a < b]


def _clauses(tokens: Sequence[Token], first: int, last: int) -> list[tuple[int, int]]:
    return _split(tokens, first, last, _CLAUSE_ENDS)


def _read_sentence(reading: _Reading, first: int, last: int) -> None:
    tokens, context = reading.tokens, reading.context
    owned = gear.gear(tokens, first, last)
    if owned is not None:
        reading.add(first, owned)
        reading.explain(first, last)
        return
    if _read_times(reading, first, last):
        return
    said = [
        one
        for one in phrases.find(tokens, first, last, _is_conversation)
        if not (reading.explained & set(range(one.first, one.last)))
    ]
    for one in said:
        if one.meaning.startswith("mark"):
            reading.phrases[one.first] = one
        elif _stands(tokens, one, first, last):
            reading.add(one.first, _ACTS[one.meaning](one))
            reading.phrases[one.first] = one
            reading.explain(one.first, one.last)
    if any(token.kind is Kind.NUMBER for token in tokens[first:last]):
        for one in said:
            if one.meaning == "have-nothing":
                reading.acts = [(at, act) for at, act in reading.acts if at != one.first or not isinstance(act, Have)]
                reading.explained -= set(range(one.first, one.last))
                reading.phrases[one.first] = replace(one, meaning="mark-bodyweight")
    wanted = _alone(context)
    whole = phrases.whole(tokens, first, last, wanted) if not said else None
    spans = [(first, last)] if whole is not None else _split(tokens, first, last, _CLAUSE_ENDS | {"and", "-"})
    if whole is None:
        spans += [tail for start, end in spans for tail in _around_numbers(tokens, start, end)]
    for start, end in spans:
        if reading.explained & set(range(start, end)):
            continue
        alone = phrases.whole(tokens, start, end, wanted)
        if alone is not None:
            reading.add(start, _ACTS[alone.meaning](alone))
            reading.explain(start, end)
            reading.phrases = {at: one for at, one in reading.phrases.items() if not start <= at < end}
            reading.phrases[start] = alone


_OF_QUANTITIES = {"kg", "lb", "reps", "rep", "left", "right", "each", "side", "s", "rir", "rpe", "more", "seconds", "x", "r", "l"}


def _around_numbers(tokens: Sequence[Token], first: int, last: int) -> list[tuple[int, int]]:
    """What a clause says before its first number and after its last quantity ("11 at 20kg ready")."""
    numbers = [i for i in range(first, last) if tokens[i].kind is Kind.NUMBER]
    if not numbers:
        return []
    after = numbers[-1] + 1
    while after < last and tokens[after].text in _OF_QUANTITIES:
        after += 1
    return [(a, b) for a, b in ((first, numbers[0]), (after, last)) if a < b]


def _read_times(reading: _Reading, first: int, last: int) -> bool:
    """Read reminders and "later": of the whole sentence, or else clause by clause; whether the whole sentence is told."""
    timed = reading.context.hold or reading.context.awaiting is Awaiting.REPS
    acts = when_acts(reading.tokens, first, last, timed=timed)
    if acts:
        for act in acts:
            reading.add(first, act)
        reading.explain(first, last)
        return True
    for start, end in _split(reading.tokens, first, last, _CLAUSE_ENDS | {"and"}):
        for act in when_acts(reading.tokens, start, end, timed=timed):
            if isinstance(act, Unclear):
                continue
            reading.add(start, act)
            reading.explain(start, end)
    return False


def _is_conversation(meaning: str) -> bool:
    return meaning != "pain" and not meaning.startswith(("urgent", "answer"))


def _alone(context: Context) -> Callable[[str], bool]:
    """Which phrases may stand alone: "ok" starts only when the conversation waits for it."""

    def wanted(meaning: str) -> bool:
        if meaning == "start-if-go":
            return context.awaiting is Awaiting.GO
        return meaning != "pain" and not meaning.startswith("answer")

    return wanted


_FEELINGS = {"heavy", "light", "right"}


def _stands(tokens: Sequence[Token], said: Said, first: int, last: int) -> bool:
    """Whether the phrase means what it says where it stands."""
    before = tokens[said.first - 1] if said.first > first else None
    if said.meaning.startswith("units") and before is not None and before.kind is Kind.NUMBER:
        return False
    if said.meaning in _FEELINGS:
        asked = last < len(tokens) and tokens[last].text == "?" and tokens[first].text in {"is", "are", "was", "will", "would", "should", "do"}
        lead = [token.text for token in tokens[max(first, said.first - 2) : said.first]]
        of_something_else = any(word in PLACES or (word in ENGLISH and word not in VOCABULARY) for word in lead)
        return not asked and not of_something_else
    return not _negated(tokens, said, first)


def _negated(tokens: Sequence[Token], said: Said, first: int) -> bool:
    """Whether "not" or "should I" stands right before the phrase."""
    before = [token.text for token in tokens[max(first, said.first - 3) : said.first]]
    if before[-2:] in (["should", "i"], ["shall", "i"], ["do", "not"], ["did", "not"]) or before[-3:-1] == [
        "do",
        "not",
    ]:
        return True
    return bool(before) and before[-1] in {"not", "never", "nobody"} and tokens[said.first].text != "not"


def _closed(reading: _Reading, unclear_at: int | None = None) -> tuple[Act, ...]:
    """The acts in order, each said once; `Unclear` when there are none."""
    acts = list(reading.acts)
    if unclear_at is not None:
        acts.append((unclear_at, Unclear()))
    if any(isinstance(act, Amend) for _, act in acts):
        acts = [(at, act) for at, act in acts if not isinstance(act, Pause)]
    if len(acts) > 1:
        acts = [(at, act) for at, act in acts if not isinstance(act, Again)] or acts
    ordered: list[Act] = []
    for _, act in sorted(acts, key=lambda one: one[0]):
        if act not in ordered or isinstance(act, Log | Amend):
            ordered.append(act)
    return tuple(ordered) or (Unclear(),)
