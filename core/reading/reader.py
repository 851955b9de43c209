"""One message becomes its acts, in the order written.

Text → tokens → sentences and clauses → what each says: pain first, then reminders and gear, then set phrases, and last the
numbers, every one of which must be accounted for or the message is unclear.
"""

from __future__ import annotations

from itertools import pairwise

from core.reading import gear, guards
from core.reading.acts import (
    Act,
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
    Remind,
    Resume,
    Skip,
    Snooze,
    Start,
    Swap,
    Today,
    Unclear,
    Units,
)
from core.reading.answers import answer
from core.reading.field_corrections import field_corrected
from core.reading.gist import gist, says_go_at_last
from core.reading.lexicon import HURT
from core.reading.normal import LONGEST, normalise
from core.reading.pain import how_long, pains
from core.reading.reading_so_far import Reading, act_of
from core.reading.records import records
from core.reading.second_look import as_meant
from core.reading.sentences import read_sentence
from core.reading.side_by_side import only_to_be_shown, side_by_side
from core.reading.spans import SENTENCE_ENDS, clauses_of, parted, split
from core.reading.token import Kind, Token
from core.reading.tokens import tokenise

_LONGEST_REPLY = 400
"""Words and marks; of a longer text only pain is read."""

_LONGEST_BARE_SET = 9
_TO_BE_SHOWN = frozenset({"help", "today", "progress", "progress-on"})
_LOOKED_AT_AGAIN = frozenset({Awaiting.NONE, Awaiting.GO, Awaiting.REPS})
_REQUESTED = (Start, Pause, Resume, Finish, Today, Help, Form, Skip, Swap, Snooze, Remind, Have, Progress, Units)
"""What a message with mistyped words is taken to ask for: nothing that is kept as done or felt."""

_OF_BARE_SETS = frozenset({"at", "@", "x", "with", "kg", "lb", "reps"})


def read(text: str, context: Context = Context()) -> tuple[Act, ...]:  # noqa: B008 - a frozen value
    """The acts of one message, in the order written; never empty, never raises.

    Args:
        text: the message as typed; at most 4096 characters of it are read.
        context: what the conversation knows; see `Context`.

    Returns:
        The acts. `Unclear` stands for anything a careful coach would ask about.
    """
    plain = normalise(text)
    acts = _read(plain, text, context)
    if acts != (Unclear(),) or context.awaiting not in _LOOKED_AT_AGAIN:
        return acts
    for meant in as_meant(plain):
        again = _read(meant, meant, context)
        if all(isinstance(act, _REQUESTED) for act in again):
            return again
    return acts


def _read(plain: str, text: str, context: Context) -> tuple[Act, ...]:
    """The acts of a text in plain characters; `text` is the same as typed, for what is named in it."""
    tokens = gear.on_one_line(tokenise(plain))
    reading = Reading(tokens, context, text[:LONGEST])
    sentences = split(tokens, 0, len(tokens), SENTENCE_ENDS)
    clauses = [clause for sentence in sentences for clause in clauses_of(tokens, *sentence)]
    if context.awaiting is Awaiting.REPS and _is_bare_set(tokens):
        for at, act in records(tokens, sentences, clauses, {}, (), context):
            reading.add(at, act)
        if reading.acts:
            return _closed(reading)
    swallowed: set[int] = set()
    for at, pain, (first, last) in pains(tokens, clauses):
        if pain is not None:
            reading.add(at, pain)
            reading.explain(_with_its_doubt(tokens, first), first)
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
        if changed.side is not None and not any(token.text in HURT for token in tokens):
            return (changed,)  # "it was left arm not right": nothing is not right with the arm
        return (*(act for _, act in reading.acts), changed)
    if reading.acts and (changed := field_corrected(_before_the_pain(tokens, reading.explained), context)) is not None:
        return (changed, *(act for _, act in reading.acts))
    for first, last in sentences:
        read_sentence(reading, first, last)
    for at in range(1, len(tokens)):
        if tokens[at].text == "1" and tokens[at - 1].text in {"this", "that"} and not _goes_with_a_figure(tokens, at):
            reading.explain(at, at + 1)  # "don't like this 1"
    for at, act in records(tokens, sentences, clauses, reading.phrases, reading.explained, context):
        if act == Log(same=True) and reading.acts and _is_likened_to_days(tokens):
            continue  # "my knee hurts, same as last week"
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
    elif [act for _, act in reading.acts] == [Form()] and only_to_be_shown(reading, reading.acts[0][0]):
        shown = [gist(tokens[first:last]) for first, last in sentences if not first <= reading.acts[0][0] < last]
        if (meant := next((one for one in shown if one is not None and one.meaning in _TO_BE_SHOWN), None)) is not None:
            reading.acts = [(0, act_of(meant, reading.text))]  # "what you can do? Please explain me"
    if any(isinstance(act, Unclear) for _, act in reading.acts) and (supposed or _is_no_set(tokens)):
        reading.acts = [(at, act) for at, act in reading.acts if not isinstance(act, Feel)]
    if ready and not reading.acts and says_go_at_last(tokens):
        reading.add(len(tokens) - 1, Start())
    return _closed(reading)


_DOUBTING = frozenset({"think", "believe", "reckon", "might", "may", "suspect", "guess", "suppose", "fear"})
_LONGEST_DOUBT = 8


def _before_the_pain(tokens: list[Token], explained: set[int]) -> list[Token]:
    """The tokens up to the "and" or comma that leads to a pain: "that was left, not right | and my left hip hurts"."""
    end = next((at for at, token in enumerate(tokens) if token.text in {"and", "but", ".", ","} and at + 1 in explained), 0)
    return [] if any(token.text in HURT for token in tokens[:end]) else tokens[:end]


def _with_its_doubt(tokens: list[Token], first: int) -> int:
    """Where a pain begins with the "I think" that is about it, and not about the number before: "eleven and I think I felt"."""
    for at in range(first - 1, max(first - _LONGEST_DOUBT, 0), -1):
        if tokens[at].kind is not Kind.WORD or tokens[at + 1].apart:
            break
        if tokens[at].text == "i" and tokens[at + 1].text in _DOUBTING and tokens[at - 1].text in {"and", "but", ",", ".", "then"}:
            return at
    return first


def _is_bare_set(tokens: list[Token]) -> bool:
    """Whether a message is figures and what joins them and nothing else: most are, and hold no other act to look for."""
    if not tokens or len(tokens) > _LONGEST_BARE_SET or tokens[0].kind is not Kind.NUMBER:
        return False
    return all(token.kind is Kind.NUMBER or token.text in _OF_BARE_SETS for token in tokens)


def _is_likened_to_days(tokens: list[Token]) -> bool:
    """Whether "the same" is what was felt on other days, and no set: "same as last week"."""
    at = next((i for i, token in enumerate(tokens) if token.text == "same"), len(tokens))
    return bool({token.text for token in tokens[at : at + len(_SAME_AS_A_DAY)]} & _OTHER_DAYS)


_SAME_AS_A_DAY = ("same", "as", "last", "week")
_OTHER_DAYS = frozenset({"week", "weeks", "month", "year", "yesterday"})
_MANY_REPS = 1000
_DISTANCES = frozenset({"km", "miles", "mile", "metres", "meters"})


def _is_no_set(tokens: list[Token]) -> bool:
    """Whether a figure belongs to no set that was lifted, so that "easy" tells of no load: "5000 reps easy", "ran 5k, felt ok"."""
    return any(
        token.kind is Kind.NUMBER and (token.value >= _MANY_REPS or after.text in _DISTANCES)
        for token, after in pairwise([*tokens, tokens[-1]])
    )


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
    if len(acts) > 1 or any(act == Swap() for _, act in acts):
        acts = side_by_side(acts, reading)
    ordered: list[Act] = []
    for _, act in sorted(acts, key=lambda one: one[0]):
        if act not in ordered or isinstance(act, Log | Amend):
            ordered.append(act)
    return tuple(gear.as_one_list(ordered)) or (Unclear(),)
