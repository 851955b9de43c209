"""What each number of a message is: tokens become the terminals of `grammar.lark`, the grammar makes quantities of them."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from functools import cache
from importlib.resources import files
from typing import TYPE_CHECKING

from lark import Lark, Transformer
from lark import Token as Terminal
from lark.lexer import Lexer

from core.reading.lexicon import AMOUNTS
from core.reading.tokens import Kind, Token
from core.units import Unit

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator, Mapping, Sequence

    from core.reading.phrases import Said


@dataclass(frozen=True, slots=True)
class Part:
    """A quantity, a mark or a link: its kind as the grammar names it, its numbers, its unit, the index of its first token."""

    kind: str
    numbers: tuple[Decimal, ...] = ()
    unit: Unit | None = None
    at: int = 0


_MARKS = {
    "mark-reserve": "RESERVE", "mark-could": "COULD", "mark-failure": "FAILURE", "mark-bodyweight": "BODYWEIGHT",
    "mark-each": "EACH", "mark-hands": "HANDS", "mark-same": "SAME", "mark-held": "HELD", "mark-label": "LABEL",
    "mark-not": "NOT",
}  # fmt: skip
_LINKS = {
    "x": "BY", "by": "BY", "*": "BY", "times": "BY", "at": "AT", "@": "AT_SIGN", "for": "FOR", "with": "WITH", "using": "WITH",
    "and": "AND", "plus": "AND", "&": "AND", "+": "AND", "then": "AND", "or": "OR", ",": "COMMA", "/": "SLASH", "-": "DASH",
    ";": "BREAK", ".": "BREAK", "!": "BREAK", "?": "BREAK", "in": "IN", "of": "OF", "on": "WITH", "|": "BREAK",
}  # fmt: skip
_LOAD_BEFORE_PLURAL = {"with", "the", "using", "my", "at", "@", "pair", "on", "those", "x", "of"}
_SIXTY = Decimal(60)
_SHORTEST_HOLD_S = 15


class _Given(Lexer):
    """Hands the terminals that are ready to the parser."""

    def __init__(self, _conf: object) -> None:
        pass

    def lex(self, data: list[Terminal]) -> Iterator[Terminal]:  # type: ignore[override]
        """The terminals themselves."""
        yield from data


def _named(kind: str) -> Callable[[_Parts, list[Terminal]], Part]:
    return lambda _, children: _part(kind, children)


class _Parts(Transformer[Terminal, list[Part]]):
    """Makes a `Part` of each branch of the grammar."""

    load = _named("load")
    reps = _named("reps")
    reserve = _named("reserve")
    more = _named("more")
    effort = _named("effort")
    set_count = _named("set_count")
    label = _named("label")
    either = _named("either")
    bare = _named("bare")

    def sets(self, children: list[Part]) -> list[Part]:
        """All parts."""
        return children

    def mark(self, children: list[Terminal]) -> Part:
        """A mark by its own name."""
        return _part(children[0].type.lower(), children)

    link = mark


_NUMBERS = {"NUM", "PLURAL", "DURATION"}


def _part(kind: str, children: list[Terminal]) -> Part:
    numbers = tuple(Decimal(child.value) for child in children if child.type in _NUMBERS)
    unit = next((Unit(child.value) for child in children if child.type in {"UNIT", "UNIT_IS"}), None)
    return Part(kind, numbers, unit, min(child.start_pos or 0 for child in children))


@cache
def _grammar() -> Lark:
    text = files("core.reading").joinpath("grammar.lark").read_text("utf-8")
    return Lark(text, start="sets", parser="lalr", lexer=_Given, transformer=_Parts())


def quantities(tokens: Sequence[Token], skip: Mapping[int, Said], *, hold: bool = False) -> list[Part]:
    """The parts of a message in order.

    `skip` says which set phrase, if any, begins at a token: marks become terminals, other phrases are passed over with
    every number in them. `hold` makes a clock ("1:10") a duration.
    """
    return _grammar().parse(list(_terminals(tokens, skip, hold=hold)))  # type: ignore[arg-type, return-value]


def _terminals(tokens: Sequence[Token], skip: Mapping[int, Said], *, hold: bool) -> Iterator[Terminal]:
    index = 0
    while index < len(tokens):
        token = tokens[index]
        if said := skip.get(index):
            yield from _mark(tokens, said)
            index = max(said.last, index + 1)
        elif token.kind is Kind.NUMBER:
            index = yield from _number(tokens, index, skip, hold=hold)
        elif token.kind is Kind.CLOCK and hold:
            minutes, seconds = token.text.split(":")[:2]
            yield _terminal("DURATION", index, Decimal(minutes) * _SIXTY + Decimal(seconds))
            index += 1
        elif token.kind is Kind.ORDINAL:
            yield _terminal("LABEL", index)
            index += 1
        else:
            name = _word_terminal(tokens, index)
            if name is not None:
                yield _terminal(name, index, token.text)
            index += 1


def _terminal(name: str, index: int, value: object = "") -> Terminal:
    return Terminal(name, str(value), start_pos=index)


def _mark(tokens: Sequence[Token], said: Said) -> Iterator[Terminal]:
    name = _MARKS.get(said.meaning)
    if name is None:
        if said.meaning == "mark-amend":
            return
        yield _terminal("BREAK", said.first)
        return
    if name == "RESERVE" and not _number_before(tokens, said.first) and _is_number(tokens, said.last):
        name = "RESERVE_IS"
    if name == "RESERVE" and not _number_before(tokens, said.first):
        return
    yield _terminal(name, said.first)


def _is_number(tokens: Sequence[Token], index: int) -> bool:
    return 0 <= index < len(tokens) and tokens[index].kind is Kind.NUMBER


def _number_before(tokens: Sequence[Token], index: int) -> bool:
    return _is_number(tokens, index - 1)


def _text(tokens: Sequence[Token], index: int) -> str:
    return tokens[index].text if 0 <= index < len(tokens) else ""


def _number(
    tokens: Sequence[Token], index: int, skip: Mapping[int, Said], *, hold: bool
) -> Iterator[Terminal]:
    """The terminals of the number at `index` and of what it is said with; returns the index after them."""
    token = tokens[index]
    after = index + 1
    following = _text(tokens, after)
    if following == "minutes":
        return (yield from _minutes(tokens, index))
    if following == "seconds" or (
        following == "s" and tokens[after].glued and not _is_load_plural(tokens, index, hold=hold)
    ):
        yield _terminal("DURATION", index, token.value)
        return after + 1
    if following == "s" and tokens[after].glued:
        yield _terminal("PLURAL", index, token.value)
        return after + 1
    yield _terminal("NUM", index, token.value)
    if after in skip:
        return after
    return (yield from _after_number(tokens, after))


def _after_number(tokens: Sequence[Token], after: int) -> Iterator[Terminal]:
    """What stands right after a number: its unit, "reps", "sets", "rpe", "more"."""
    following = tokens[after] if after < len(tokens) else None
    if following is None or following.kind not in {Kind.WORD, Kind.MARK}:
        return after
    word = following.text
    if word in {"kg", "lb"}:
        yield _terminal("UNIT", after, word)
        return after + 1
    if word == "k" and (following.glued or after + 1 == len(tokens)):
        yield _terminal("UNIT", after, "kg")
        return after + 1
    if word == "times" and _is_number(tokens, after + 1):
        return after
    if word == "r" and following.glued and not _is_number(tokens, after + 1):
        yield _terminal("REPS", after)
        return after + 1
    if word in AMOUNTS["reps"]:
        yield _terminal("REPS", after)
        return after + 1
    if word in AMOUNTS["sets"] and word != "set":
        yield _terminal("SETS", after)
        return after + 1
    if word in AMOUNTS["rpe"] and not _is_number(tokens, after + 1):
        yield _terminal("EFFORT", after)
        return after + 1
    if word == "more":
        yield _terminal("MORE", after)
        return after + 2 if _text(tokens, after + 1) in AMOUNTS["reps"] else after + 1
    return after


def _is_load_plural(tokens: Sequence[Token], index: int, *, hold: bool) -> bool:
    """Whether "16s" is a pair of dumbbells rather than seconds."""
    before = _text(tokens, index - 1)
    if before in {"in", "held", "hold", "for", "plank", "lasted"} or hold:
        return False
    after = _text(tokens, index + 2)
    if (
        before in _LOAD_BEFORE_PLURAL
        or after in {"x", "for", "dumbbells", "dumbbell"}
        or _number_before(tokens, index)
    ):
        return True
    return tokens[index].value < _SHORTEST_HOLD_S


def _minutes(tokens: Sequence[Token], index: int) -> Iterator[Terminal]:
    """ "1 minute 10 seconds", "1 min 10", "a minute": one duration."""
    seconds, after = tokens[index].value * _SIXTY, index + 2
    skip = 1 if _text(tokens, after) == "and" else 0
    if _is_number(tokens, after + skip) and tokens[after + skip].value < _SIXTY:
        closing = _text(tokens, after + skip + 1)
        if closing in {"seconds", "s"} or (
            closing not in {"kg", "lb", "reps", "rep", "x", "at"} and not skip
        ):
            seconds += tokens[after + skip].value
            after += skip + (2 if closing in {"seconds", "s"} else 1)
    elif _text(tokens, after) == "and" and _text(tokens, after + 1) in {"half", "a"}:
        half_at = after + 1 if _text(tokens, after + 1) == "half" else after + 2
        if _text(tokens, half_at) == "half":
            seconds, after = seconds + 30, half_at + 1
    yield _terminal("DURATION", index, seconds)
    return after


def _word_terminal(tokens: Sequence[Token], index: int) -> str | None:
    """The terminal of a word or mark that stands before a number or between two; None when it changes nothing."""
    word = tokens[index].text
    ahead = index + 1
    while _text(tokens, ahead) in {":", "=", "was", "is", "of", "-", "about", "used"}:
        ahead += 1
    number_ahead = _is_number(tokens, ahead)
    directly = number_ahead and (
        ahead == index + 1 or _text(tokens, ahead - 1) in {":", "=", "was", "is", "used", "of"}
    )
    if word in {"kg", "lb"}:
        return (
            "UNIT_IS"
            if _is_number(tokens, index + 1) or _text(tokens, index + 1) in {":", "="} and number_ahead
            else None
        )
    if directly and word in AMOUNTS["reps"] and not _number_before(tokens, index) and word != "times":
        return "REPS_IS"
    if directly and word in {"weight", "load"}:
        return "LOAD_IS"
    if directly and word in AMOUNTS["rpe"]:
        return "EFFORT_IS"
    if number_ahead and word in AMOUNTS["rounds"]:
        return "ROUND_IS"
    if word in {"left", "l", "lhs", "lft"}:
        return "LEFT" if word != "l" or _beside_number(tokens, index) else None
    if word in {"right", "r", "rhs", "rt"}:
        return "RIGHT" if word != "r" or _beside_number(tokens, index) else None
    if word == "each":
        return "EACH"
    if word == "both":
        return "EACH"
    return _LINKS.get(word)


def _beside_number(tokens: Sequence[Token], index: int) -> bool:
    return _number_before(tokens, index) or _is_number(tokens, index + 1) or _is_number(tokens, index + 2)
