"""One message becomes its acts, in the order written.

Text → tokens → sentences and clauses → what each says: pain first, then reminders and gear, then set phrases, and last the
numbers, every one of which must be accounted for or the message is unclear.
"""

from __future__ import annotations

from dataclasses import replace

from core.reading import gear, guards
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
    Pain,
    Pause,
    Progress,
    Remind,
    Resume,
    Skip,
    Snooze,
    Start,
    Swap,
    TimeLeft,
    Today,
    Unclear,
    Undo,
    Units,
)
from core.reading.answers import answer
from core.reading.field_corrections import field_corrected
from core.reading.gist import gist, says_go_at_last
from core.reading.named_only import without_what_is_only_named
from core.reading.normal import LONGEST, normalise
from core.reading.pain import how_long, pains
from core.reading.records import records
from core.reading.sentences import Reading, act_of, read_sentence
from core.reading.spans import SENTENCE_ENDS, clauses_of, parted, split
from core.reading.standing import OF_WAITING
from core.reading.token import Kind, Token
from core.reading.tokens import tokenise

_LONGEST_REPLY = 400
"""Words and marks; of a longer text only pain is read."""


def read(text: str, context: Context = Context()) -> tuple[Act, ...]:  # noqa: B008 - a frozen value
    """The acts of one message, in the order written; never empty, never raises.

    Args:
        text: the message as typed; at most 4096 characters of it are read.
        context: what the conversation knows; see `Context`.

    Returns:
        The acts. `Unclear` stands for anything a careful coach would ask about.
    """
    tokens = gear.on_one_line(tokenise(normalise(text)))
    reading = Reading(tokens, context, text[:LONGEST])
    sentences = split(tokens, 0, len(tokens), SENTENCE_ENDS)
    clauses = [clause for sentence in sentences for clause in clauses_of(tokens, *sentence)]
    swallowed: set[int] = set()
    for at, pain, (first, last) in pains(tokens, clauses):
        if pain is not None:
            reading.add(at, pain)
            for number in how_long(tokens, sentences, at):
                reading.explain(number, number + 1)
        swallowed |= {i for i in range(first, last) if tokens[i].kind is Kind.NUMBER and i not in reading.explained}
        reading.explain(first, last)
    if len(tokens) > _LONGEST_REPLY or guards.gives_orders(tokens):
        return _closed(reading, unclear_at=0)
    if not reading.acts:
        answered = answer(tokens, context)
        if answered is not None:
            return (answered,)
    if (changed := field_corrected(tokens, context)) is not None:
        return (*(act for _, act in reading.acts), changed)
    for first, last in sentences:
        read_sentence(reading, first, last)
    for at in range(1, len(tokens)):
        if tokens[at].text == "1" and tokens[at - 1].text in {"this", "that"} and not _goes_with_a_figure(tokens, at):
            reading.explain(at, at + 1)  # "don't like this 1"
    for at, act in records(tokens, sentences, clauses, reading.phrases, reading.explained, context):
        reading.add(at, Unclear() if swallowed and isinstance(act, Log) else act)  # a set in the midst of a pain is not half kept
    ready = context.awaiting is Awaiting.GO
    supposed = tokens[:1] and tokens[0].text == "if"  # "if my back started hurting, what would you do?"
    if not reading.acts and not reading.explained and (after := gist(tokens, ready=ready)) is not None:
        reading.add(after.first, act_of(after, reading.text))
    elif not reading.acts:
        for first, last in parted(tokens, clauses):
            told = reading.explained & set(range(first, last))
            if (
                not told
                and (after := gist(tokens[first:last], ready=ready and not _is_asked(tokens, last))) is not None
                and not (supposed and after.meaning == "help")
            ):
                reading.add(first, act_of(after, reading.text))
    if ready and not reading.acts and says_go_at_last(tokens):
        reading.add(len(tokens) - 1, Start())
    return _closed(reading)


def _is_asked(tokens: list[Token], last: int) -> bool:
    """Whether a clause ends in a question mark: "do I go all the way down?" starts nothing."""
    return tokens[last : last + 1] != [] and tokens[last].text == "?"


def _goes_with_a_figure(tokens: list[Token], at: int) -> bool:
    """Whether the figure at `at` is a number with something after it that it counts or weighs, and not "one"."""
    after = tokens[at + 1] if at + 1 < len(tokens) else None
    lone = after is None or (after.kind is not Kind.NUMBER and after.text not in {"x", "kg", "lb", "reps", "rep", "/", "left", "%"})
    return tokens[at].worded or not lone


def _closed(reading: Reading, unclear_at: int | None = None) -> tuple[Act, ...]:
    """The acts in order, each said once; `Unclear` when there are none."""
    acts = list(reading.acts)
    if unclear_at is not None:
        acts.append((unclear_at, Unclear()))
    if len(acts) > 1:
        acts = _side_by_side(acts, reading)
    ordered: list[Act] = []
    for _, act in sorted(acts, key=lambda one: one[0]):
        if act not in ordered or isinstance(act, Log | Amend):
            ordered.append(act)
    return tuple(gear.as_one_list(ordered)) or (Unclear(),)


def _side_by_side(acts: list[tuple[int, Act]], reading: Reading) -> list[tuple[int, Act]]:
    """The acts of one message without those that another of them takes the sense from."""
    if any(isinstance(act, Pause) for _, act in acts) and not any(token.kind is Kind.NUMBER for token in reading.tokens):
        acts = [(at, act) for at, act in acts if not isinstance(act, Log) or act.seconds is None]  # "hold it there a minute"
    if any(isinstance(act, Amend | Undo) for _, act in acts):
        acts = [(at, act) for at, act in acts if not isinstance(act, Pause)]
    if any(isinstance(act, Swap) for _, act in acts):
        acts = [(at, act) for at, act in acts if act != Skip()]
    if any(isinstance(act, Units) for _, act in acts):
        acts = [(at, act) for at, act in acts if act != Swap()]  # "I only think in lbs, change it to that"
    if any(isinstance(act, Snooze) and act != Snooze() for _, act in acts):
        acts = [(at, act) for at, act in acts if act != Snooze() and not isinstance(act, Pause)]
        latest = max(at for at, act in acts if isinstance(act, Snooze))
        acts = [(at, act) for at, act in acts if not isinstance(act, Snooze) or at == latest]  # "in an hour... say 75 minutes"
    if reading.context.awaiting is Awaiting.GO and any(act == Start() for _, act in acts):
        acts = [
            (at, act) for at, act in acts if not isinstance(act, Resume) or "here" not in reading.words_at(at)
        ]  # "I'm here. go"
    if any(isinstance(act, _ASKED) for _, act in acts):
        acts = [(at, act) for at, act in acts if not isinstance(act, Pause) or not _only_begins(reading.tokens, at)]
    paused = min((at for at, act in acts if isinstance(act, Pause)), default=None)
    if paused is not None:
        acts = [(at, act) for at, act in acts if not (isinstance(act, Resume) and at > paused)]  # "wait small, I dey come"
    if any(isinstance(act, Resume | Snooze | Skip) for _, act in acts):
        acts = [(at, act) for at, act in acts if not isinstance(act, Start)]
    acts = _at_one_time(acts, reading.tokens)
    if any(act == Skip("day") for _, act in acts):
        acts = [(at, act) for at, act in acts if act not in {Skip(), Finish()}]  # "no training today, skip it", "so let's leave it"
    if any(isinstance(act, Log | Amend) for _, act in acts):
        acts = [(at, act) for at, act in acts if act != Have()]
        weighed = {act.unit for _, act in acts if isinstance(act, Log | Amend)}
        wished = any(token.text in _OF_SWITCHING for token in reading.tokens)
        acts = [(at, act) for at, act in acts if wished or not (isinstance(act, Units) and act.unit in weighed)]  # "14 keg, kgs"
    if any(isinstance(act, Finish) for _, act in acts):
        acts = [
            (at, act) for at, act in acts if not isinstance(act, Pause) or reading.words_at(at) & OF_WAITING
        ]  # "baby's up, I'll stop"
    if any(isinstance(act, Pause) for _, act in acts):
        acts = [(at, act) for at, act in acts if not isinstance(act, Finish)]  # "have to go, pause it"
    if any(act == Skip() for _, act in acts):
        acts = [
            (at, act) for at, act in acts if act != Today() or "next" not in reading.words_at(at)
        ]  # "not this one, what's next"
    if any(isinstance(act, Pain) and act.urgent for _, act in acts):
        acts = [(at, act) for at, act in acts if not isinstance(act, Help)]  # a cry
        if not any(isinstance(act, Log | Amend) for _, act in acts):
            acts = [(at, act) for at, act in acts if not isinstance(act, Feel)]  # "sudden terrible pain, can't move it"
    acts = without_what_is_only_named(acts, reading.tokens)
    if any(isinstance(act, Help | Progress | Today | Swap) for _, act in acts):
        acts = [(at, act) for at, act in acts if act != Form() or not _only_to_be_shown(reading, at)]
    if any(isinstance(act, Snooze) and act != Snooze() for _, act in acts):
        acts = [
            (at, act) for at, act in acts if act != Skip("day") or "today" in reading.words_at(at)
        ]  # "feeling rough, at 10 then"
    if any(act == Skip("day") for _, act in acts) and not _speaks_of_loads(reading.tokens):
        acts = [(at, act) for at, act in acts if not isinstance(act, Feel)]  # "can't train today, work is too much"
    for asking in (Form, Swap, Progress):
        if any(isinstance(act, asking) and act != asking() for _, act in acts):
            acts = [(at, act) for at, act in acts if act != asking()]
    return [(at, act) for at, act in acts if not isinstance(act, Again | TimeLeft)] or acts


def _at_one_time(acts: list[tuple[int, Act]], tokens: list[Token]) -> list[tuple[int, Act]]:
    """The acts, with a time that is told right after its days taken into them: "Mon, Wed, Fri. 5:50am."."""
    if len(acts) != 2 or {"today", "tonight", "tomorrow"} & {token.text for token in tokens}:  # noqa: PLR2004 - days and a time
        return acts
    (at, days), (_, time) = sorted(acts, key=lambda one: one[0])
    planned = isinstance(days, Remind) and days.days and days.at is None and not days.off
    if planned and isinstance(days, Remind) and isinstance(time, Snooze) and time.at is not None:
        return [(at, replace(days, at=time.at))]
    return acts


def _only_to_be_shown(reading: Reading, at: int) -> bool:
    """Whether "show" or "explain" at `at` only asks for what stands beside it: "how much I have improved, please show"."""
    return reading.words_at(at) <= {"show", "explain", "tell", "me", "please", "it", "this", "that", "kindly"}


_OF_SWITCHING = frozenset({"use", "switch", "change", "show", "set", "in", "prefer", "speak", "display", "convert", "want", "put"})
_ASKED = (Form, Swap, Help, Progress, Today)
_CALLS = (["wait"], ["hang", "on"], ["hold", "on"])


def _only_begins(tokens: list[Token], at: int) -> bool:
    """Whether a word of waiting at `at` only begins a question: "wait, how do I do this?"."""
    words = [token.text for token in tokens[at : at + 4]]
    call = next((call for call in _CALLS if words[: len(call)] == call), None)
    if call is None:
        return False
    rest = words[len(call) :]
    return (rest[1:2] if rest[:1] == [","] else rest[:1]) in (["how"], ["what"], ["which"], ["where"], ["can"], ["am"], ["is"])


_OF_LOADS = frozenset({"weight", "weights", "load", "dumbbell", "dumbbells", "kettlebell", "kg", "lb"})


def _speaks_of_loads(tokens: list[Token]) -> bool:
    """Whether a number or a word names what was lifted, so that a feeling can be about it."""
    return any(token.kind is Kind.NUMBER or token.text in _OF_LOADS for token in tokens)
