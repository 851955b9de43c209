"""What goes out as a coach's own words: cut out of the text as typed, or nothing where it could be meant for somebody else."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import TYPE_CHECKING

from core.coach.asks import Whom
from core.coach.hearing.lists import listed
from core.reading.dates import DAY_NAMES

if TYPE_CHECKING:
    from core.coach.hearing.whom import Roster, Said

_GAP = re.compile(r"[\s:,;.\-–—]*")
_CLEARLY = re.compile(r"[:;\-–—\n]")
CLOSING = {'"': '"', "“": "”", "„": "“", "«": "»", "'": "'", "‘": "’"}
"""Quotation marks, and what closes what they open."""

QUOTES = "".join({*CLOSING, *CLOSING.values()} - {"'", "’", "‘"})
"""Quotation marks that are no apostrophes."""

_VERBS = listed("own_words", "verbs")
"""Words that a subject stands before: after a list of names the last one may be it."""
_BEFORE = frozenset({"know", "saying", "says", "with"})
_PARTING = frozenset({"that", "to", "saying"})
_NO_START = listed("own_words", "never_first")
_NO_LOOSE_START = listed("own_words", "never_first_loosely")
_ASKS = listed("own_words", "asks")
_ORDERS = listed("own_words", "orders")
_INSTEAD = frozenset({"not", "only", "never", "also"})
_CORRECTS = listed("own_words", "corrects")
_TOO = frozenset({"too", "also", "likewise", "same"})
_SOON = frozenset({"today", "tomorrow", "tonight", "later", "again", "now", *DAY_NAMES})
_THEN = listed("own_words", "then")
_FIRST_WORDS = 6
_NAME_WITHIN = 3


@dataclass(frozen=True)
class OwnWords:
    """A coach's own words; `apart` when a colon, a dash, a quote, "that" or "to" parts them from the names before."""

    text: str
    first: int
    apart: bool


def message_at(roster: Roster, at: int, *, politely: bool, marked: bool) -> OwnWords | None:
    """The coach's own words from the end of a name to the end of the text; with `marked` only after a colon, a dash or a quote."""
    words, text = roster.words, roster.text
    begin = words[at - 1].end
    gap = _GAP.match(text, begin)
    start = begin if gap is None else gap.end()
    apart = _CLEARLY.search(text, begin, start) is not None
    end = len(text.rstrip())
    quoted = CLOSING.get(text[start : start + 1])
    if quoted is not None:
        apart = True
        if end - 1 > start and text[end - 1] == quoted and quoted not in text[start + 1 : end - 1]:
            start, end = start + 1, end - 1
    if marked and not apart:
        return None
    by_mark = apart
    apart = apart or words[at - 1].says in _BEFORE
    first = next((number for number, word in enumerate(words[at:], at) if word.start >= start), len(words))
    if not by_mark and first < len(words) and words[first].says in _NO_START:
        return None
    if not by_mark and first < len(words) - 1 and words[first].says in _PARTING and words[first + 1].says not in _VERBS:
        apart, first = True, first + 1
        start = words[first].start
    says = text[start:end]
    if politely and not by_mark and says.endswith("?") and first < len(words) and words[first].says not in _ASKS:
        says = says.rstrip("? ")
    if not any(character.isalnum() or ord(character) > 0x2000 for character in says) or _is_more(roster, first):  # noqa: PLR2004
        return None
    return OwnWords(says, first, apart)


def fits(own: OwnWords, said: Said, roster: Roster) -> bool:
    """Whether it is clear where the names end and the words begin."""
    words = roster.words
    if own.first >= len(words):
        return True
    if words[own.first].says == "(":  # "tell Ana (and Ben)"
        return own.apart and words[own.first + 1 : own.first + 2] != () and words[own.first + 1].says not in _NO_START
    begins = words[own.first].says
    if own.apart:
        return begins != "'s"
    if begins in _NO_START or begins in _NO_LOOSE_START or said.loose or said.but:
        return False
    if roster.known(own.first) is not None and said.whom != Whom(everyone=True):
        return False  # "tell Mia Ben can't come"
    if words[own.first].mark and not words[own.first].parts_only:
        return False  # "tell Mia/Ben"
    soon = [at for at in range(own.first + 1, min(own.first + 1 + _NAME_WITHIN, len(words))) if roster.known(at) is not None]
    if soon and (begins in _CORRECTS or said.whom.everyone):
        return False  # "tell Mia no Ben", "tell everyone expect Mia"
    if begins in _INSTEAD and roster.known(own.first + 1) is not None:
        return False  # "tell Mia not Ben"
    if said.many and begins in _VERBS:
        return False
    opening = words[own.first : own.first + _FIRST_WORDS]
    return not any(roster.text[word.start : word.end] == ":" for word in opening) and not (
        begins in _SOON and "that" in [word.says for word in opening[1:3]]
    )


def _is_more(roster: Roster, first: int) -> bool:
    """Whether a second order follows that names somebody: what is for whom is then not clear."""
    words = roster.words
    for at in range(first + 1, len(words)):
        before = words[at - 1]
        if not (before.says in _THEN or (before.parts_only and before.mark)):
            continue
        named = None if words[at].mark else roster.known(at)
        if named is not None and named < len(words) and words[named].says in _TOO:
            return True  # "well done. Ben too"
        order = at + 2 if (words[at].says, *(word.says for word in words[at + 1 : at + 2])) == ("do", "not") else at
        if order < len(words) and words[order].says in _ORDERS:
            near = range(order + 1, min(order + 1 + _NAME_WITHIN, len(words)))
            if any(not words[i].mark and roster.whom(i) is not None and _is_roster(roster, i) for i in near):
                return True
    return False


def _is_roster(roster: Roster, at: int) -> bool:
    """Whether somebody of the roster, or everyone, is named from a word on."""
    found = roster.whom(at)
    return roster.known(at) is not None or (found is not None and found[1].whom.everyone)
