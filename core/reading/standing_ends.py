"""Whether words of an end end the session: not a set, a station, a habit, or somebody else's work."""

from __future__ import annotations

from typing import TYPE_CHECKING

from core.reading.around_phrases import AUXILIARIES, OF_THE_SESSION, asked
from core.reading.lexicon import listed
from core.reading.objects import OF_TRAINING
from core.reading.token import Kind, Token

if TYPE_CHECKING:
    from collections.abc import Sequence

    from core.reading.phrases import Said


_HOW_DEEP = frozenset({"deep", "low", "high", "far", "wide", "fast", "slow", "slowly", "heavy", "down", "where", "light"})
_LEADING_TO_IT = frozenset({"the", "my", "our", "his", "her"})
_PARTS_OF_DAY = frozenset({"day", "arvo", "night", "week", "weekend", "moment", "minute", "time", "month"})
_OVER_ELSEWHERE = listed("words_standing", "over_elsewhere")
_OFF = listed("words_standing", "off")
_LESS = frozenset({"exercise", "one", "station", "set", "move", "movement", "round", "side", "leg", "arm", "1"})
_AGO = frozenset({"since", "when", "after", "before", "once", "until", "till"})
_OF_TRAINING = frozenset({"training", "exercising", "working", "lifting", "going", "being"})
_HABITS = listed("words_standing", "habits")
_CALLED = frozenset({"stop", "stopped", "call", "called", "finish", "finished", "end", "ended", "quit"})


def end_stands(tokens: Sequence[Token], said: Said, first: int, last: int) -> bool:
    """Whether words of an end end the session where they stand."""
    words = {token.text for token in tokens[said.first : said.last]}
    lead = [token.text for token in tokens[max(first, said.first - 3) : said.first]]
    if "go" in words and _HOW_DEEP & set(lead[-2:]):
        return False  # "explain how deep I must go"
    if words & {"last", "final"} and not _is_told_before(tokens, said):
        return False  # "ready for the last one for today"
    if "enough" in words and (asked(tokens, first, last) or {"was", "were"} & set(lead)):
        return False  # "is 14kg enough for a woman of my age?", "six reps were quite enough for me"
    if (
        any(token.kind is Kind.NUMBER for token in tokens[said.last : last])
        and not words & OF_THE_SESSION
        and not _ends_here(tokens, said)
    ):
        return False
    if _names_what_is_over(tokens, said, last):
        return False  # "all done with the tax forms", "I pack it in the car tomorrow"
    if _is_over_elsewhere(tokens, said, first):
        return False  # "work don finish for today"
    if _gives_up_a_habit(tokens, said, first) or ends_a_set(tokens, said, first):
        return False  # "my right's weaker since I quit welding", "8 reps, radio called so I stop there"
    return said.last == last or not _is_done_with_less(tokens, said, tokens[said.last])  # "I'm off to hers", "I'm off sick"


def _ends_here(tokens: Sequence[Token], said: Said) -> bool:
    """Whether a clause ends with where the session ends, and a set is told behind it: "finishing here, 12 with the 6kg"."""
    words = [token.text for token in tokens[said.first : said.last + 1]]
    return words[0].endswith("ing") and words[-2:] in (["here", ","], ["now", ","])


def _names_what_is_over(tokens: Sequence[Token], said: Said, last: int) -> bool:
    """Whether words of an end lead to a thing that is no part of a session: "done with my ex", "pack it in the car"."""
    at = next(
        (
            i
            for i in range(said.first + 1, min(said.last + 1, last))
            if tokens[i].text in _LEADING_TO_IT and tokens[i - 1].text in {"with", "in", "for"}
        ),
        None,
    )
    return (
        at is not None
        and at + 1 < last
        and tokens[at + 1].kind is Kind.WORD
        and tokens[at + 1].text not in OF_TRAINING | _PARTS_OF_DAY
    )


def _is_over_elsewhere(tokens: Sequence[Token], said: Said, first: int) -> bool:
    """Whether it is work or school that is over: "work don finish for today", "school is out for today"."""
    at = said.first - 1
    while at >= first and tokens[at].text in AUXILIARIES | {"don", "dey"}:
        at -= 1
    return first <= at < said.first - 1 and tokens[at].text in _OVER_ELSEWHERE


def _is_told_before(tokens: Sequence[Token], said: Said) -> bool:
    """Whether a set is told before the phrase, and nothing leads from there to another: "12 with 6kg, last one for today"."""
    told = next((i for i in range(said.first - 1, -1, -1) if tokens[i].kind is Kind.NUMBER), None)
    return told is not None and not {token.text for token in tokens[told:]} & {"ready", "next", "go", "then", "now", "start"}


def _is_done_with_less(tokens: Sequence[Token], said: Said, after: Token) -> bool:
    """Whether what follows words of an end names what is over instead of the session: "I'm off work", "done with this exercise"."""
    if after.text in {"to", "of", "sick", "ill"}:
        return True
    ends = [token.text for token in tokens[max(0, said.last - 2) : said.last]]
    return (ends[-1] == "off" and after.text in _OFF) or (ends in (["with", "this"], ["with", "that"]) and after.text in _LESS)


def _gives_up_a_habit(tokens: Sequence[Token], said: Said, first: int) -> bool:
    """Whether "I quit" tells of something else that was given up, or of long ago: "since I quit welding", "I quit sugar"."""
    if tokens[said.last - 1].text != "quit":
        return False
    led = {token.text for token in tokens[max(first, said.first - 2) : said.first]} & _AGO
    after = tokens[said.last].text if said.last < len(tokens) and not tokens[said.last].apart else ""
    return bool(led) or after in _HABITS or (after.endswith("ing") and after not in _OF_TRAINING)


def ends_a_set(tokens: Sequence[Token], said: Said, first: int) -> bool:
    """Whether it is the set told before that was stopped: "9 reps so call it", "the phone rang so I stop there"."""
    verb = said.first + (tokens[said.first].text == "i")
    if {token.text for token in tokens[said.first : said.last]} & OF_THE_SESSION or tokens[verb].text not in _CALLED:
        return False
    lead = [token.text for token in tokens[max(first, verb - 2) : verb]]
    return lead in (["so", "i"], ["then", "i"]) and any(token.kind is Kind.NUMBER for token in tokens[:verb])
