"""A wish for kilos or pounds in whatever words: "please count for me in kg, not in pounds", "might I have kilos?"."""

from __future__ import annotations

from typing import TYPE_CHECKING

from core.reading.lexicon import COURTESY, listed
from core.reading.spans import CLAUSE_ENDS, split
from core.reading.token import Kind, Token
from core.units import Unit

if TYPE_CHECKING:
    from collections.abc import Sequence

_UNIT_WORDS: dict[str, Unit] = {word: unit for unit in Unit for word in listed("words_unit_talk", unit.value)}
_ASKING = listed("words_unit_talk", "asking")
_SMALL = listed("words_unit_talk", "small") | COURTESY
_OTHERWISE = listed("words_unit_talk", "otherwise")
_WONDERING = frozenset({"is", "are", "was", "were", "what", "which", "how", "why", "do", "does", "did", "when", "who"})
_LASTING = listed("words_unit_talk", "lasting")
_LONGEST = 16
_MOST_STRANGE = 2
_DENIAL_REACH = 4


def unit_wished(
    tokens: Sequence[Token], first: int, last: int, *, recorded: bool = False
) -> tuple[Unit, list[tuple[int, int]]] | None:
    """The unit that tokens `[first, last)`, one sentence, ask for, and the clauses that do; None for none.

    `recorded` says that a set was just logged, so that "lbs not kg" alone corrects it.
    """
    words = [token.text for token in tokens[first:last]]
    if len(words) > _LONGEST or not set(words) & set(_UNIT_WORDS) or set(words) & _OTHERWISE or words[0] in _WONDERING:
        return None
    if any(token.kind not in {Kind.WORD, Kind.MARK} for token in tokens[first:last]):
        return None
    wanted: set[Unit] = set()
    clauses: list[tuple[int, int]] = []
    asked = denied = verbs = False
    for begin, end in split(tokens, first, last, CLAUSE_ENDS):
        clause = [token.text for token in tokens[begin:end]]
        named = [at for at, word in enumerate(clause) if word in _UNIT_WORDS]
        wishes = [at for at in named if not _is_denied(clause, at)]
        wanted |= {_UNIT_WORDS[clause[at]] for at in wishes}
        asked = asked or (bool(wishes) and _is_asked(clause, wishes[0], lasting=bool(set(words) & _LASTING)))
        denied = denied or len(wishes) < len(named)
        verbs = verbs or bool(wishes and set(clause) & _ASKING - {"be", "please"})
        clauses += [(begin, end)] if named else []
    settled = asked and len(wanted) == 1 and (verbs or not (recorded and denied))
    return (next(iter(wanted)), clauses) if settled else None


def _is_denied(clause: Sequence[str], at: int) -> bool:
    """Whether the unit at `at` is the one that is not wanted: "not in pounds", "instead of kilos", "from lbs to kg"."""
    before = clause[max(0, at - _DENIAL_REACH) : at]
    for place, word in enumerate(before):
        if word in _UNIT_WORDS:
            continue
        between = before[place + 1 :]
        if set(between) & set(_UNIT_WORDS) or (word != "not" and "to" in between):
            continue
        if word in {"not", "no", "never", "than", "without", "hate", "stop", "drop", "ditch", "lose", "nor"}:
            return True
        if word in {"from", "of"} and (word == "from" or "instead" in before):
            return True
    return False


def _is_asked(clause: Sequence[str], wish: int, *, lasting: bool) -> bool:
    """Whether the words around a unit ask for it, with few words that say something else."""
    strange = sum(word not in _SMALL | _ASKING and word not in _UNIT_WORDS for word in clause)
    between = 0
    for at in range(wish - 1, -1, -1):
        if clause[at] in _ASKING:
            return between == 0 and strange <= _MOST_STRANGE
        between += clause[at] not in _SMALL
    return strange == 0 and (len(clause) <= len(("in", "kg")) or lasting or clause[:1] == ["in"] or "for me" in " ".join(clause))
