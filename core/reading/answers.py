"""Short answers to what the conversation has just asked: yes or no, a unit, a rack, one of a few choices."""

from __future__ import annotations

from typing import TYPE_CHECKING

from core.reading import gear, phrases
from core.reading.acts import Act, Answer, Awaiting, Context, Have, Units
from core.reading.gear_words import KINDS
from core.reading.lexicon import listed
from core.reading.token import Kind, Token
from core.units import Unit

if TYPE_CHECKING:
    from collections.abc import Sequence

_LONGEST_NOTHING = 3
_CHOICES = {
    "first": 1,
    "second": 2,
    "third": 3,
    "fourth": 4,
    "one": 1,
    "former": 1,
    "latter": 2,
    "1st": 1,
    "2nd": 2,
    "3rd": 3,
    "4th": 4,
}
_AROUND = listed("words_answers", "around")


def answer(tokens: Sequence[Token], context: Context) -> Act | None:
    """The answer that the whole message is, or None when it is something else."""
    match context.awaiting:
        case Awaiting.YES:
            return _yes(tokens)
        case Awaiting.UNIT:
            return _unit(tokens)
        case Awaiting.RACK:
            return _rack(tokens)
        case Awaiting.CHOICE:
            return _choice(tokens, context.choices)
        case _:
            return None


def _yes(tokens: Sequence[Token]) -> Act | None:
    first = _first_clause(tokens)
    for last in (len(tokens), first):
        said = phrases.whole(tokens, 0, last, lambda meaning: meaning.startswith("answer"))
        if said is not None:
            return Answer(yes=said.meaning == "answer-yes")
    return None


def _first_clause(tokens: Sequence[Token]) -> int:
    return next((i for i, token in enumerate(tokens) if token.kind is Kind.MARK), len(tokens))


def _unit(tokens: Sequence[Token]) -> Act | None:
    units = {token.text for token in tokens if token.text in {"kg", "lb"}}
    words = {token.text for token in tokens}
    units |= {"kg"} if "metric" in words else set()
    units |= {"lb"} if "imperial" in words else set()
    if len(units) != 1 or any(token.kind is not Kind.WORD and token.kind is not Kind.MARK for token in tokens):
        return None
    if {"not", "no"} & words:
        return None
    return Units(Unit(units.pop()))


def _rack(tokens: Sequence[Token]) -> Act | None:
    words = {token.text for token in tokens}
    if not any(token.kind is Kind.NUMBER for token in tokens) and not words & set(KINDS):
        nothing = phrases.find(tokens, 0, len(tokens), lambda meaning: meaning == "have-nothing")
        short = words & {"none", "nothing", "no"} and len(tokens) <= _LONGEST_NOTHING
        return Have() if nothing or short else None
    have = gear.items(tokens, 0, len(tokens))
    return have if have is not None and have.items else None


def _choice(tokens: Sequence[Token], offered: int) -> Act | None:
    picked: set[int] = set()
    for token in tokens:
        if token.kind is Kind.NUMBER and token.value % 1 == 0:
            picked.add(int(token.value))
        elif token.text in _CHOICES and not (token.text == "one" and len(tokens) > 1):
            picked.add(_CHOICES[token.text])
        elif token.text == "last" and offered:
            picked.add(offered)
        elif token.text not in _AROUND:
            return None
    if len(picked) != 1:
        return None
    choice = picked.pop()
    return Answer(choice=choice) if 1 <= choice <= (offered or 9) else None
