"""What several acts of one message leave of each other: an act that another one takes the sense from is dropped."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from core.reading.acts import (
    Again,
    Amend,
    Awaiting,
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
    Undo,
    Units,
)
from core.reading.around_phrases import OF_THE_SESSION, OF_WAITING
from core.reading.exercise_runs import proposed
from core.reading.named_only import without_what_is_only_named
from core.reading.naming import as_written
from core.reading.token import Kind, Token

if TYPE_CHECKING:
    from core.reading.acts import Act
    from core.reading.reading_so_far import Reading

    _Acts = list[tuple[int, Act]]


def side_by_side(acts: _Acts, reading: Reading) -> _Acts:
    """The acts of one message, each with where it begins, without those that another of them takes the sense from."""
    acts = [(at, Swap(as_written(proposed(reading.tokens, at), reading.text)) if act == Swap() else act) for at, act in acts]
    for look in (_beside_corrections, _beside_waiting, _beside_an_end, _beside_pain, _beside_questions):
        acts = look(acts, reading)
    return [(at, act) for at, act in acts if not isinstance(act, Again | TimeLeft)] or acts


def _beside_corrections(acts: _Acts, reading: Reading) -> _Acts:
    """What a correction, a change of exercise or of unit leaves."""
    if any(isinstance(act, Pause) for _, act in acts) and not any(token.kind is Kind.NUMBER for token in reading.tokens):
        acts = [(at, act) for at, act in acts if not isinstance(act, Log) or act.seconds is None]  # "hold it there a minute"
    amended = max((at for at, act in acts if isinstance(act, Amend)), default=-1)
    acts = [(at, act) for at, act in acts if not (isinstance(act, Undo) and at < amended)]  # "undo that last one, I meant 12"
    if any(isinstance(act, Amend) for _, act in acts) and any(
        token.text in {"but", "correct", "wrong"} for token in reading.tokens
    ):
        acts = [(at, act) for at, act in acts if act != Feel("right")]  # "10 was right but the weight was 14kg"
    undone = next((at for at, act in acts if isinstance(act, Undo)), None)
    if any(isinstance(act, Amend | Undo) for _, act in acts):  # but "undo that please and hold on"
        acts = [(at, act) for at, act in acts if not isinstance(act, Pause) or (undone is not None and at > undone)]
    if any(isinstance(act, Pain) for _, act in acts):
        acts = [
            (at, act) for at, act in acts if act != Today() or not reading.words_at(at) <= _WHAT_NOW
        ]  # "my hip hurts, what now?"
    if any(isinstance(act, Swap) for _, act in acts):
        acts = [(at, act) for at, act in acts if act != Skip() and not (isinstance(act, Form) and _gives(reading, at))]
    if any(isinstance(act, Units) or act == Log(same=True) for _, act in acts):
        acts = [(at, act) for at, act in acts if act != Swap()]  # "I only think in lbs, change it to that"
    return acts


def _beside_waiting(acts: _Acts, reading: Reading) -> _Acts:
    """What being asked later, waiting and going on leave."""
    if any(isinstance(act, Snooze) and act != Snooze() for _, act in acts):
        acts = [(at, act) for at, act in acts if act != Snooze() and not isinstance(act, Pause)]
        latest = max(at for at, act in acts if isinstance(act, Snooze))
        acts = [(at, act) for at, act in acts if not isinstance(act, Snooze) or at == latest]  # "in an hour... say 75 minutes"
    if any(act == Snooze() for _, act in acts):
        acts = [(at, act) for at, act in acts if act != Pause() or reading.words_at(at) & OF_WAITING]  # "not now, remind me later"
    if reading.context.awaiting is Awaiting.GO and any(act == Start() for _, act in acts):
        acts = [
            (at, act) for at, act in acts if not isinstance(act, Resume) or "here" not in reading.words_at(at)
        ]  # "I'm here. go"
    if any(isinstance(act, _ASKED) for _, act in acts):
        acts = [(at, act) for at, act in acts if not isinstance(act, Pause) or not _only_begins(reading.tokens, at)]
    paused = min((at for at, act in acts if isinstance(act, Pause)), default=None)
    if paused is not None:
        acts = [(at, act) for at, act in acts if not (isinstance(act, Resume) and at > paused)]  # "wait small, I dey come"
    if any(isinstance(act, Start) for _, act in acts):
        acts = [(at, act) for at, act in acts if act != Skip() or not reading.words_at(at) <= _NEXT]  # "next one please I'm ready"
    if any(isinstance(act, Resume | Snooze | Skip) for _, act in acts):
        acts = [(at, act) for at, act in acts if not isinstance(act, Start)]
    acts = _at_one_time(acts, reading.tokens)
    if any(act == Skip("day") for _, act in acts):
        acts = [(at, act) for at, act in acts if act not in {Skip(), Finish()}]  # "no training today, skip it", "so let's leave it"
    return acts


def _beside_an_end(acts: _Acts, reading: Reading) -> _Acts:
    """What a record, the end and a skip leave."""
    if any(isinstance(act, Log | Amend) for _, act in acts):
        acts = [(at, act) for at, act in acts if act != Have()]
        acts = [(at, act) for at, act in acts if not isinstance(act, Start) or not _cheers(reading, at)]
        weighed = {act.unit for _, act in acts if isinstance(act, Log | Amend)}
        wished = any(token.text in _OF_SWITCHING for token in reading.tokens)
        acts = [(at, act) for at, act in acts if wished or not (isinstance(act, Units) and act.unit in weighed)]  # "14 keg, kgs"
    if any(isinstance(act, Have) and act.items for _, act in acts):
        acts = [
            (at, act) for at, act in acts if act != Finish() or not reading.words_at(at) & _THE_LOT or reading.words_at(at) & _ENDS
        ]  # "two dumbbells at 9kg. That's my lot"
    if any(isinstance(act, Log) and act.reps == 0 for _, act in acts):
        acts = [
            (at, act) for at, act in acts if act != Feel("heavy") or not reading.words_at(at) & _LIFTING
        ]  # "0, couldn't lift it"
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
    return acts


def _beside_pain(acts: _Acts, reading: Reading) -> _Acts:
    """What pain leaves."""
    if any(isinstance(act, Pain) for _, act in acts) and not _speaks_of_loads(reading.tokens):
        acts = [
            (at, act) for at, act in acts if act != Feel("heavy") or not {"can", "not"} <= reading.words_at(at)
        ]  # "terrible pain in my neck, can't move it"
    if any(isinstance(act, Pain) and act.urgent for _, act in acts):
        acts = [(at, act) for at, act in acts if not isinstance(act, Help) and not _cries_out(act, at, reading)]
    return acts


def _beside_questions(acts: _Acts, reading: Reading) -> _Acts:
    """What questions, and a day left out, leave."""
    acts = without_what_is_only_named(acts, reading.tokens)
    if any(isinstance(act, Help | Progress | Today | Swap) for _, act in acts):
        acts = [(at, act) for at, act in acts if act != Form() or not only_to_be_shown(reading, at)]
    if any(isinstance(act, Snooze) and act != Snooze() for _, act in acts):
        acts = [
            (at, act) for at, act in acts if act != Skip("day") or "today" in reading.words_at(at)
        ]  # "feeling rough, at 10 then"
    if any(act == Skip("day") for _, act in acts) and not _speaks_of_loads(reading.tokens):
        acts = [(at, act) for at, act in acts if not isinstance(act, Feel)]  # "can't train today, work is too much"
    for asking in (Form, Swap, Progress):
        if any(isinstance(act, asking) and act != asking() for _, act in acts):
            acts = [(at, act) for at, act in acts if act != asking()]
    return acts


def _cries_out(act: Act, at: int, reading: Reading) -> bool:
    """Whether a "stop stop" beside an urgent sign is a cry, and no wish to end."""
    return isinstance(act, Finish) and [token.text for token in reading.tokens[at : at + 2]] == ["stop", "stop"]


def _cheers(reading: Reading, at: int) -> bool:
    """Whether a drawn out "let's gooo" beside a set only cheers."""
    said = reading.phrases.get(at)
    return said is not None and any("ooo" in token.raw for token in reading.tokens[said.first : said.last])


def _at_one_time(acts: list[tuple[int, Act]], tokens: list[Token]) -> list[tuple[int, Act]]:
    """The acts, with a time that is told right after its days taken into them: "Mon, Wed, Fri. 5:50am."."""
    if len(acts) != 2 or {"today", "tonight", "tomorrow"} & {token.text for token in tokens}:  # noqa: PLR2004 - days and a time
        return acts
    (at, days), (_, time) = sorted(acts, key=lambda one: one[0])
    planned = isinstance(days, Remind) and days.days and days.at is None and not days.off
    if planned and isinstance(days, Remind) and isinstance(time, Snooze) and time.at is not None:
        return [(at, replace(days, at=time.at))]
    return acts


def _gives(reading: Reading, at: int) -> bool:
    """Whether an exercise at `at` is asked to be given and not to be shown: "give glute bridge"."""
    return reading.tokens[at].text == "give" and not reading.words_at(at) & {"form", "tips", "demo", "how", "technique", "video"}


def only_to_be_shown(reading: Reading, at: int) -> bool:
    """Whether "show" or "explain" at `at` only asks for what stands beside it: "how much I have improved, please show"."""
    return reading.words_at(at) <= {"show", "explain", "tell", "me", "please", "it", "this", "that", "kindly"}


_THE_LOT = frozenset({"lot", "all", "it", "everything"})
_ENDS = OF_THE_SESSION | {"me", "done", "stop", "call", "now"}
_LIFTING = frozenset({"lift", "move", "budge", "shift"})
_OF_SWITCHING = frozenset({"use", "switch", "change", "show", "set", "in", "prefer", "speak", "display", "convert", "want", "put"})
_ASKED = (Form, Swap, Help, Progress, Today)
_WHAT_NOW = frozenset({"what", "now", "next", "is", "then", "so"})
_NEXT = frozenset({"next", "one", "please", "the", "up", "on", "to", "exercise", "station"})
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
