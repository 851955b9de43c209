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
from core.reading.naming import as_written
from core.reading.normal import LONGEST, normalise
from core.reading.pain import pains
from core.reading.quantities import HOLD_WORDS
from core.reading.records import records
from core.reading.tokens import Kind, Token, tokenise
from core.reading.when import REMIND_WORDS, when_acts
from core.units import Unit

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from core.reading.phrases import Said

_LONGEST_REPLY = 400
"""Words and marks; of a longer text only pain is read."""

_SENTENCE_ENDS = {".", "!", "?", ";"}
_CLAUSE_ENDS = {",", "but", "then", "though", "because", "although", "(", ")", "so"}
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


def _act(said: Said, text: str) -> Act:
    """The act of a set phrase."""
    make = _NAMING_ACTS.get(said.meaning)
    return make(as_written(said.exercise, text)) if make is not None else _PLAIN_ACTS[said.meaning]


@dataclass(slots=True)
class _Reading:
    """What has been found so far: acts with the index they begin at, and the tokens that are explained."""

    tokens: list[Token]
    context: Context
    text: str
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
    reading = _Reading(tokens, context, text[:LONGEST])
    sentences = _split(tokens, 0, len(tokens), _SENTENCE_ENDS)
    clauses = [clause for sentence in sentences for clause in _clauses(tokens, *sentence)]
    for at, pain, (first, last) in pains(tokens, clauses):
        if pain is not None:
            reading.add(at, pain)
        reading.explain(first, last)
    if len(tokens) > _LONGEST_REPLY or guards.gives_orders(tokens):
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
    owned = gear.gear(tokens, first, last, awaited=context.awaiting is Awaiting.REPS)
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
    correcting = any(one.meaning == "mark-amend" for one in said)
    for one in said:
        if correcting and one.meaning.startswith("units"):
            continue
        if one.meaning.startswith("mark"):
            reading.phrases[one.first] = one
        elif _stands(tokens, one, first, last):
            reading.add(one.first, _act(one, reading.text))
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
    tails: dict[tuple[int, int], bool] = {}
    number_near = any(token.kind is Kind.NUMBER for token in tokens)
    if whole is None:
        for start, end in list(spans):
            tails |= _around_numbers(tokens, start, end)
        spans += list(tails)
    for start, end in spans:
        if reading.explained & set(range(start, end)):
            continue
        alone = phrases.whole(tokens, start, end, wanted)
        marked = {i for one in reading.phrases.values() if one.meaning.startswith("mark") for i in range(one.first, one.last)}
        if alone is not None and ((start, end) in tails or number_near) and marked >= set(range(start, end)):
            continue
        if alone is not None and alone.meaning == "pause" and _goes_on(tokens, end):
            continue
        if alone is not None and alone.meaning == "finish" and number_near and "done" in {t.text for t in tokens[start:end]}:
            continue
        if alone is not None and alone.meaning in _FEELINGS and _asked(tokens, first, last):
            continue
        if alone is not None and (start, end) in tails and not _may_trail(alone, tails[start, end]):
            continue
        if alone is not None and alone.meaning == "have-nothing" and any(t.kind is Kind.NUMBER for t in tokens):
            reading.phrases[start] = replace(alone, meaning="mark-bodyweight")
        elif alone is not None and alone.meaning == "have-nothing" and context.awaiting is Awaiting.REPS and end - start < 2:
            continue
        elif alone is not None:
            reading.add(start, _act(alone, reading.text))
            reading.explain(start, end)
            reading.phrases = {at: one for at, one in reading.phrases.items() if not start <= at < end}
            reading.phrases[start] = alone


_OF_QUANTITIES = {
    "kg",
    "lb",
    "reps",
    "rep",
    "left",
    "right",
    "each",
    "side",
    "s",
    "rir",
    "hold",
    "plank",
    "minutes",
    "rest",
    "rpe",
    "more",
    "seconds",
    "x",
    "r",
    "l",
}


def _may_trail(said: Said, after: bool) -> bool:  # noqa: FBT001 - before or after the numbers
    """Whether a phrase counts beside numbers without a comma: a feeling before or after them, a command only after."""
    return said.meaning in _FEELINGS or (after and said.meaning in {"start", "pause", "resume", "finish"})


def _around_numbers(tokens: Sequence[Token], first: int, last: int) -> dict[tuple[int, int], bool]:
    """What a clause says before its first number (False) and after its last quantity (True): "11 at 20kg ready"."""
    numbers = [i for i in range(first, last) if tokens[i].kind is Kind.NUMBER]
    if not numbers:
        return {}
    after = numbers[-1] + 1
    while after < last and tokens[after].text in _OF_QUANTITIES:
        after += 1
    return {(a, b): trails for a, b, trails in ((first, numbers[0], False), (after, last, True)) if a < b}


def _read_times(reading: _Reading, first: int, last: int) -> bool:
    """Read reminders and "later": of the whole sentence, or else clause by clause; whether the whole sentence is told."""
    timed = reading.context.hold or reading.context.awaiting is Awaiting.REPS
    acts = when_acts(reading.tokens, first, last, timed=timed)
    if acts:
        for act in acts:
            reading.add(first, act)
        reading.explain(first, last)
        return True
    reminding = next((i for i in range(first, last) if reading.tokens[i].text in REMIND_WORDS), None)
    if reminding is not None:
        begin = reminding - (
            1 if reminding > first and reading.tokens[reminding - 1].text in {"the", "my", "stop", "no", "cancel"} else 0
        )
        begin -= 1 if begin > first and reading.tokens[begin - 1].text in {"stop", "cancel", "off", "no"} else 0
        acts = [act for act in when_acts(reading.tokens, begin, last, timed=timed) if not isinstance(act, Unclear)]
        if acts:
            for act in acts:
                reading.add(begin, act)
            reading.explain(begin, last)
            return False
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
    after = tokens[said.last] if said.last < last else None
    if said.meaning == "pause":
        counted = after is not None and (after.kind is Kind.NUMBER or after.text == "and")
        held = any(token.text in HOLD_WORDS - {"hold", "hang"} for token in tokens)
        held = held or (tokens[first].text == "i" and any(token.text == "hold" for token in tokens))
        return not counted and not held
    if said.meaning == "skip" and last < len(tokens) and tokens[last].text == "?":
        return not any(token.kind is Kind.NUMBER for token in tokens[first:last])
    if said.meaning in _FEELINGS:
        return not _asked(tokens, first, last) and not _of_something_else(tokens, said, first)
    return not _negated(tokens, said, first)


def _goes_on(tokens: Sequence[Token], index: int) -> bool:
    """Whether "and a half" or "and ten" follows: a length of time, not a wait."""
    following = [token for token in tokens[index : index + 2]]
    return (
        len(following) > 1
        and following[0].text == "and"
        and (following[1].text in {"a", "half"} or following[1].kind is Kind.NUMBER)
    )


def _asked(tokens: Sequence[Token], first: int, last: int) -> bool:
    """Whether the sentence is a question such as "is 16kg too heavy?"."""
    questions = {"is", "are", "was", "will", "would", "should", "do"}
    return last < len(tokens) and tokens[last].text == "?" and tokens[first].text in questions


def _of_something_else(tokens: Sequence[Token], said: Said, first: int) -> bool:
    """Whether the feeling is about the traffic, the shoes or a knee, and not about the load."""
    lead = [token.text for token in tokens[max(first, said.first - 2) : said.first]]
    if lead and lead[-1] in {"is", "are", "was", "were", "felt"}:
        lead.pop()
    return bool(lead) and (lead[-1] in PLACES or (lead[-1] in ENGLISH and lead[-1] not in VOCABULARY))


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
    if any(isinstance(act, Swap) for _, act in acts):
        acts = [(at, act) for at, act in acts if act != Skip()]
    if len(acts) > 1:
        acts = [(at, act) for at, act in acts if not isinstance(act, Again)] or acts
    ordered: list[Act] = []
    for _, act in sorted(acts, key=lambda one: one[0]):
        if act not in ordered or isinstance(act, Log | Amend):
            ordered.append(act)
    return tuple(ordered) or (Unclear(),)
