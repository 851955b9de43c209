"""What a coach asks or tells in a text: one thing, every word of it accounted for, or nothing."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from core.coach.asks import (
    AnswerTo,
    Ask,
    HoldEnded,
    HoldFor,
    HowIs,
    Invite,
    NoteEnded,
    NoteFor,
    PauseEnded,
    PauseFor,
    PutUp,
    Remove,
    ReviewOff,
    ReviewOn,
    SayTo,
    SheetAsked,
    SwapEnded,
    SwapFor,
    TakeClip,
    WeekAsked,
    Whom,
    WhoMissed,
    WhoNeedsWord,
    WhoTrained,
)
from core.coach.hearing.days import time_named
from core.coach.hearing.frames import framed
from core.coach.hearing.lists import listed, ways
from core.coach.hearing.message import fits
from core.coach.hearing.pattern import matches, phrases, skipped, words_said
from core.coach.hearing.questions import question_in
from core.coach.hearing.slots import Gaps
from core.coach.hearing.whom import Said
from core.coach.hearing.words import words_in
from core.reading.normal import LONGEST

if TYPE_CHECKING:
    from datetime import date

    from core.coach.hearing.pattern import Filled
    from core.coach.hearing.words import Word

_LEADS = ways("courtesies", "before")
_POLITE = frozenset({"can", "could", "would", "will", "do"})
_TAILS = ways("courtesies", "after")
_QUESTION_WORDS = listed("questions", "first_words")
_ANYWAY = frozenset(
    {"who-trained", "who-missed", "who-needs-word", "how-is", "week-asked", "sheet-asked", "say-to", "answer-to", "note-for"}
)
"""What may be asked with a question mark; there the mark of a message is its own."""


def hear(text: str, names: tuple[str, ...], today: date) -> Ask | None:
    """What a coach's text asks or tells; None when it is no such thing, when it says more than one, or when any word is left over.

    Args:
        text: as typed; one longer than a message can be asks nothing.
        names: of everyone who trains with this coach.
        today: the coach's day, from which "Monday" and "for two weeks" are counted (`core.coach.hearing.days`).
    """
    if len(text) > LONGEST:
        return None
    words = words_in(text, names)
    begin, politely = _begin(words)
    ends, questioned = _end(words, begin)
    gaps = Gaps(text, words, names, today, ends, politely)
    found: list[Ask] = []
    said = words_said(words)
    for phrase in phrases():
        if any(said.isdisjoint(needed) for needed in phrase.needs) or (questioned and not politely and phrase.asks not in _ANYWAY):
            continue
        for end, filled in matches(phrase.tree, gaps, begin):
            if end < ends and skipped(words, end) < ends:
                continue
            ask = _ask(phrase.asks, filled, gaps)
            if ask is not None and ask not in found:
                found.append(ask)
    if found:
        return found[0] if len(found) == 1 else None
    asked = begin < ends and words[begin].says in _QUESTION_WORDS and _run(words, begin, 2) != ("do", "not")
    asked = asked and gaps.roster.known(begin) is None
    if politely or not (questioned or asked):
        framed_ask = framed(gaps, begin)
        if framed_ask is not None:
            return framed_ask
    return question_in(gaps.roster, begin, ends, questioned=questioned or asked)


def _begin(words: tuple[Word, ...]) -> tuple[int, bool]:
    """Where a text begins after its courtesies, and whether it asks politely."""
    at, politely = skipped(words, 0), False
    while True:
        lead = next((lead for lead in _LEADS if _run(words, at, len(lead)) == lead), None)
        if lead is None:
            return at, politely
        politely = politely or (len(lead) > 1 and lead[0] in _POLITE)
        at = skipped(words, at + len(lead))


def _end(words: tuple[Word, ...], begin: int) -> tuple[int, bool]:
    """Where a text ends before its courtesies, and whether a question mark stands there."""
    end, questioned = len(words), False
    while end > begin:
        if words[end - 1].mark and (words[end - 1].parts_only or words[end - 1].says == "?"):
            questioned = questioned or words[end - 1].says == "?"
            end -= 1
            continue
        tail = next((tail for tail in _TAILS if end - len(tail) > begin and _run(words, end - len(tail), len(tail)) == tail), None)
        if tail is None:
            break
        end -= len(tail)
    return end, questioned


def _run(words: tuple[Word, ...], at: int, length: int) -> tuple[str, ...]:
    return tuple(word.says for word in words[at : at + length])


def _ask(asks: str, filled: Filled, gaps: Gaps) -> Ask | None:
    """The value that a line with its gaps filled asks for; None when what fills them does not go together."""
    got: dict[str, Any] = dict(filled)
    said: Said = next((got[gap] for gap in ("whom", "anyone", "people") if gap in got), Said(Whom()))
    whom = said.whom
    if [value for gap, value in filled if gap in {"whom", "people"} and value != said]:
        return None  # "Ben is ill, pause Ana"
    own = next((got[gap] for gap in ("message", "words", "inside", "reminded") if gap in got), None)
    if own is not None and not fits(own, said, gaps.roster):
        return None
    return _value(asks, got, whom, "" if own is None else own.text)


def _value(asks: str, got: dict[str, Any], whom: Whom, text: str) -> Ask | None:
    week = got.get("week", got.get("lastweek", "this"))
    exercise = got.get("exercise", got.get("thing"))
    until = got.get("until", got.get("through", got.get("lasting")))
    match asks:
        case "who-trained":
            return WhoTrained(week)
        case "who-missed":
            return WhoMissed(week)
        case "who-needs-word":
            return WhoNeedsWord()
        case "how-is":
            return HowIs(got["known"])
        case "week-asked":
            return WeekAsked(week)
        case "sheet-asked":
            return SheetAsked(whom if whom != Whom() else Whom(everyone=True), week)
        case "review-on":
            day, part = got["day"]
            at = time_named(got["time"], part) if "time" in got else None
            return None if at is None and "time" in got else ReviewOn(day, at)
        case "review-off":
            return ReviewOff()
        case "swap-for":
            return SwapFor(got.get("exercise", got.get("thing", "")), got.get("instead"), whom)
        case "swap-ended":
            return SwapEnded(exercise, whom)
        case "hold-for":
            return HoldFor(exercise, got.get("load"), whom)
        case "hold-ended":
            return HoldEnded(exercise, whom)
        case "note-for":
            return NoteFor(text, exercise, whom)
        case "note-ended":
            return NoteEnded(exercise, whom)
        case "say-to":
            return SayTo(text, whom)
        case "answer-to":
            return AnswerTo(text, got.get("name"))
        case "put-up":
            return PutUp(got["circuit"], whom, got.get("from", got.get("soon")))
        case "invite":
            return Invite(got.get("newcomer", got.get("stranger")))
        case "pause-for":
            return PauseFor(whom, until)
        case "pause-ended":
            return PauseEnded(whom)
        case "remove":
            return Remove(whom)
        case _:
            return TakeClip(got["exercise"])
