"""The parts of what is said in numbers, as `grammar.lark` makes them of terminals."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from functools import cache
from importlib.resources import files
from typing import TYPE_CHECKING

from lark import Lark, Transformer
from lark import Token as Terminal
from lark.lexer import Lexer

from core.units import Unit

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator


_NUMBERS = {"NUM", "PLURAL", "DURATION"}


@dataclass(frozen=True, slots=True)
class Part:
    """A quantity, a mark or a link: its kind as the grammar names it, its numbers, its unit, the index of its first token.

    `dropped` holds the words passed over since the part before: words that change nothing by themselves. `word` is how a label, an
    "each" or an "and" was said.
    """

    kind: str
    numbers: tuple[Decimal, ...] = ()
    unit: Unit | None = None
    at: int = 0
    dropped: frozenset[str] = frozenset()
    word: str = ""


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


def _part(kind: str, children: list[Terminal]) -> Part:
    numbers = tuple(Decimal(child.value) for child in children if child.type in _NUMBERS)
    unit = next((Unit(child.value) for child in children if child.type in {"UNIT", "UNIT_IS", "UNIT_ONLY"}), None)
    word = str(children[0].value) if children[0].type in {"LABEL", "EACH", "AND", "BY", "FAILURE", "SAME"} else ""
    return Part(kind, numbers, unit, min(child.start_pos or 0 for child in children), word=word)


def grammar(*, strict: bool = False) -> Lark:
    """The parser of `grammar.lark`; `strict` has lark report conflicts that it would otherwise settle silently."""
    text = files("core.reading").joinpath("grammar.lark").read_text("utf-8")
    return Lark(text, start="sets", parser="lalr", lexer=_Given, transformer=_Parts(), strict=strict)


@cache
def cached_grammar() -> Lark:
    """The parser, made once."""
    return grammar()
