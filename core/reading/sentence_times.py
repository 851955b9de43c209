"""The reminders and delays of one sentence: of the whole of it, of what follows "remind", or of its clauses."""

from __future__ import annotations

from typing import TYPE_CHECKING

from core.reading.acts import Awaiting, Pause, Snooze, Unclear
from core.reading.around_phrases import WHEN
from core.reading.clock import DAY_WORDS, GROUPS
from core.reading.lexicon import listed
from core.reading.occasions import is_an_occasion
from core.reading.spans import CLAUSE_ENDS, split
from core.reading.token import Kind
from core.reading.when import REMIND_WORDS, SMALL, asks_about_reminders, when_acts

if TYPE_CHECKING:
    from collections.abc import Sequence

    from core.reading.acts import Act
    from core.reading.reading_so_far import Reading
    from core.reading.token import Token

_BEFORE_REMINDING = frozenset(
    {
        "the",
        "my",
        "these",
        "those",
        "any",
        "all",
        "more",
        "stop",
        "no",
        "not",
        "do",
        "cancel",
        "off",
        "quit",
        "please",
        "turn",
        "drop",
    }
)

_COMFORT = listed("words_when", "comfort")
_LONGEST_ABSENCE_MINUTES = 10
_GATHERING = frozenset({"all", "both"})
"""Words that lead to what several sets have in common."""


def read_times(reading: Reading, first: int, last: int) -> bool:
    """Read reminders and "later": of the whole sentence, or else clause by clause; whether the whole sentence is told."""
    timed = reading.context.hold or reading.context.awaiting is Awaiting.REPS
    acts = when_acts(reading.tokens, first, last, timed=timed)
    if any(isinstance(act, Snooze | Unclear) for act in acts) and reading.explained & set(range(first, last)):
        acts = []  # "still out of breath after 5 minutes"
    elif _is_only_away(reading, first, last, acts):
        reading.add(first, Pause())
        reading.explain(first, last)
        return True
    elif acts and not (timed and acts == [Unclear()] and _is_of_a_set(reading.tokens, first, last)):
        for act in acts:
            reading.add(first, act)
        reading.explain(first, last)
        return True
    reminding = next((i for i in range(first, last) if reading.tokens[i].text in REMIND_WORDS), None)
    if reminding is not None and not asks_about_reminders([token.text for token in reading.tokens[first:last]]):
        begin = reminding
        while begin > first and reading.tokens[begin - 1].text in _BEFORE_REMINDING:
            begin -= 1
        acts = [act for act in when_acts(reading.tokens, begin, last, timed=timed) if not isinstance(act, Unclear)]
        if acts:
            for act in acts:
                reading.add(begin, act)
            reading.explain(begin, last)
            return False
    spans = split(reading.tokens, first, last, CLAUSE_ENDS)
    spans += [(start, cut) for start, end in spans if (cut := _told_until(reading.tokens, start, end)) < end]
    if is_an_occasion([token.text for token in reading.tokens[first:last]]):
        spans = [span for span in spans if not _names_days(reading.tokens, *span)]  # "her recital, saturday at 3pm"
    else:
        spans += split(reading.tokens, first, last, CLAUSE_ENDS | {"and"})
    for start, end in dict.fromkeys(span for span in spans if span != (first, last)):  # what the whole says is told above
        if reading.explained & set(range(start, end)) or (timed and reading.tokens[start].text in _GATHERING):
            continue  # "12, 10 and 8 reps, all at 20"
        for act in when_acts(reading.tokens, start, end, timed=timed):
            if isinstance(act, Unclear) or (isinstance(act, Snooze) and _counts_beside(reading.tokens, start, end)):
                continue
            reading.add(start, act)
            reading.explain(start, end)
    return False


def _is_only_away(reading: Reading, first: int, last: int, acts: Sequence[Act]) -> bool:
    """Whether somebody only leaves for a few minutes, and says what for: "toilet, back in 2 minutes"."""
    minutes = acts[0].minutes if len(acts) == 1 and isinstance(acts[0], Snooze) else None
    if minutes is None or minutes > _LONGEST_ABSENCE_MINUTES or all(token.text != "back" for token in reading.tokens[first:last]):
        return False
    return any(token.text in _COMFORT for token in reading.tokens[:last])


def _names_days(tokens: Sequence[Token], first: int, last: int) -> bool:
    return any(tokens[i].text in DAY_WORDS or tokens[i].text in GROUPS for i in range(first, last))


def _is_of_a_set(tokens: Sequence[Token], first: int, last: int) -> bool:
    """Whether a sentence of several clauses names no day and no reminder, so that its number may be a set: "12, back in a bit"."""
    words = {token.text for token in tokens[first:last]}
    return len(split(tokens, first, last, CLAUSE_ENDS)) > 1 and not words & (REMIND_WORDS | set(DAY_WORDS) | set(GROUPS))


def _told_until(tokens: Sequence[Token], first: int, last: int) -> int:
    """Where a clause goes on to tell why, after its last number: "in 90 minutes as the bin lorry went past"."""
    numbers = [i for i in range(first, last) if tokens[i].kind in {Kind.NUMBER, Kind.CLOCK}]
    begin = numbers[-1] + 1 if numbers else first + 1
    return next((i for i in range(begin, last) if tokens[i].text in WHEN or tokens[i].apart), last)


def _counts_beside(tokens: Sequence[Token], first: int, last: int) -> bool:
    """Whether a set is told beside a clause that says "later" among unknown words: "8 with 24kg, I go explain later"."""
    beside = any(token.kind is Kind.NUMBER for token in (*tokens[:first], *tokens[last:]))
    words = {token.text for token in tokens[first:last] if token.kind is Kind.WORD}
    return beside and not words <= SMALL and not words & {"remind", "ask", "snooze", "ping", "try", "back"}
