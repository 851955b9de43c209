"""Asks that no line of `phrases.txt` says, in whatever order: by key words, what they are about, and nothing but filling besides.

Only for asks where the order of words does not matter, about people on the roster; one word too many and nothing is caught.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import date
from typing import TYPE_CHECKING

from core.coach.asks import Ask, HoldFor, PauseFor, Remove, SheetAsked, Whom
from core.coach.hearing.lists import listed
from core.coach.hearing.words import mended
from core.units import Load

if TYPE_CHECKING:
    from core.coach.hearing.slots import Gaps

_FILLING = listed("orders", "filling")
_PRONOUNS = listed("orders", "pronouns")
_SHEET = listed("orders", "sheet")
_SHEET_FILLING = listed("orders", "beside_sheet")
_HANDS_OVER = listed("orders", "hands_over")
"""What stands before somebody who is to get a thing: a sheet is for the coach alone."""
_PAUSE = listed("orders", "pause")
_PAUSE_FILLING = _PRONOUNS | listed("orders", "beside_pause")
_REMOVE = listed("orders", "remove")
_REMOVE_FILLING = _PRONOUNS | listed("orders", "beside_remove")
_CAPS = listed("orders", "caps")
_OVERS = listed("orders", "overs")
_HEAVIER = listed("orders", "heavier")
_HOLD_FILLING = listed("orders", "beside_hold")
_NEGATIONS = listed("orders", "denied")


@dataclass
class _Seen:
    """What a text names, and the words besides."""

    words: list[str] = field(default_factory=list)
    whom: list[Whom] = field(default_factory=list)
    until: list[date] = field(default_factory=list)
    exercises: list[str] = field(default_factory=list)
    loads: list[Load] = field(default_factory=list)


def framed(gaps: Gaps, first: int) -> Ask | None:
    """The ask that a text comes to by its words; None when it comes to none."""
    seen = _seen(gaps, first)
    if seen is None or len(set(seen.whom)) > 1:
        return None
    words = frozenset(seen.words)
    bare = not (seen.until or seen.exercises or seen.loads)
    whom = seen.whom[0] if seen.whom else None
    if words & _SHEET:
        there = words <= _SHEET | _SHEET_FILLING | _FILLING
        last = "last" in words
        return (
            SheetAsked(whom or Whom(everyone=True), "last" if last else "this")
            if there and bare and (not last or "week" in words)
            else None
        )
    if whom is None:
        return None
    if words & _PAUSE:
        there = words <= _PAUSE | _PAUSE_FILLING | _FILLING and len(seen.until) <= 1 and not seen.exercises and not seen.loads
        return PauseFor(whom, seen.until[0] if seen.until else None) if there else None
    if words & _REMOVE:
        return Remove(whom) if words <= _REMOVE | _REMOVE_FILLING | _FILLING and bare and not whom.everyone else None
    if (
        not words <= _CAPS | _OVERS | _HOLD_FILLING | _FILLING | _PRONOUNS
        or seen.until
        or len(seen.exercises) > 1
        or len(seen.loads) > 1
    ):
        return None
    denied, over = bool(words & _NEGATIONS), bool(words & _OVERS)
    if (over and not denied) or (denied and not over) or not (over or words & _CAPS):
        return None
    if not seen.loads and not words & _HEAVIER:
        return None
    return HoldFor(seen.exercises[0] if seen.exercises else None, seen.loads[0] if seen.loads else None, whom)


def _seen(gaps: Gaps, first: int) -> _Seen | None:
    """Everything in a text from a word on; None where a mark or a stranger stands in it."""
    known = (
        _SHEET | _SHEET_FILLING | _PAUSE | _PAUSE_FILLING | _REMOVE | _REMOVE_FILLING | _CAPS | _OVERS | _HOLD_FILLING | _FILLING
    )
    seen, at = _Seen(), first
    while at < gaps.ends:
        word = gaps.words[at]
        if word.mark:
            if not word.parts_only:
                return None
            at += 1
        elif (dated := _until(gaps, at)) is not None:
            at, day = dated
            seen.until.append(day)
        elif gaps.roster.known(at) is not None or word.says in {"everyone", "everybody", "all"}:
            found = gaps.roster.whom(at)
            if found is None or gaps.words[at - 1].says in _HANDS_OVER:
                return None
            at, said = found
            if said.many and at < gaps.ends and gaps.words[at].says == "'s":
                return None  # "Ana and Ben's gone"
            seen.whom.append(said.whom)
        elif load := gaps.find("load", at):
            at, value = load[0]
            seen.loads.append(value)  # type: ignore[arg-type]
        elif (says := mended(word.says, known)) in known:
            seen.words.append(says)
            at += 1
        elif exercise := [
            (end, name) for end, name in gaps.find("exercise", at) if not any(w.says in known for w in gaps.words[at + 1 : end])
        ]:
            at, name = exercise[0]
            seen.exercises.append(str(name))
        else:
            return None
    return seen


def _until(gaps: Gaps, at: int) -> tuple[int, date] | None:
    """A day on which a pause ends, with the word that says so."""
    match gaps.words[at].says:
        case "till" | "til" | "until" | "untill" | "upto":
            found = gaps.find("until", at + 1)
        case "through" | "thru":
            found = gaps.find("through", at + 1)
        case "back" | "returns" | "returning":
            found = gaps.find("until", at + 1 + (at + 1 < len(gaps.words) and gaps.words[at + 1].says == "on"))
        case _:
            found = gaps.find("lasting", at + (gaps.words[at].says == "for"))
    return None if not found else (found[0][0], found[0][1])  # type: ignore[return-value]
