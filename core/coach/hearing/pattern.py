r"""The lines of `phrases.txt`: compiled once, and matched against the words of a text, gaps and all.

| notation | means |
|---|---|
| `(a\|b c)` | one of these |
| `[a]` | may be there |
| `@name` | what a line `@name = ...` further up stands for |
| `{gap}` | what `core.coach.hearing.slots` finds there |

Marks that only part words may stand between any two of them, courtesies too.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from typing import TYPE_CHECKING, Protocol

from core.coach.hearing.lists import listed
from core.coach.hearing.words import mended

if TYPE_CHECKING:
    from collections.abc import Iterator

    from core.coach.hearing.words import Word

_PARTS = re.compile(r"[()\[\]|]|\{[a-z]+\}|[^\s()\[\]|]+")
_IS = frozenset({"is", "has", "are", "'s"})
_BETWEEN = listed("courtesies", "between")
_SOUNDS = {"4": "for", "2": "to"}


@dataclass(frozen=True)
class Exactly:
    """This word."""

    word: str


@dataclass(frozen=True)
class Gap:
    """Whatever `slots` finds under this name."""

    name: str


@dataclass(frozen=True)
class Then:
    """These, one after the other."""

    nodes: tuple[Node, ...]


@dataclass(frozen=True)
class OneOf:
    """One of these."""

    nodes: tuple[Node, ...]


Node = Exactly | Gap | Then | OneOf
Filled = tuple[tuple[str, object], ...]


@dataclass(frozen=True)
class Phrase:
    """One line: what it asks, its tree, and sets of words of each of which a text must have one."""

    asks: str
    tree: Node
    needs: tuple[frozenset[str], ...]


class Slots(Protocol):
    """What finds the contents of gaps."""

    words: tuple[Word, ...]

    def find(self, gap: str, at: int) -> tuple[tuple[int, object], ...]:
        """Every way to fill a gap from a word on: where it ends, and the value."""
        ...


def matches(node: Node, slots: Slots, at: int, filled: Filled = ()) -> Iterator[tuple[int, Filled]]:
    """Every way to match a tree from a word on: where it ends, and what stands in the gaps."""
    match node:
        case Exactly(word):
            at = skipped(slots.words, at)
            if at < len(slots.words) and _says(slots.words[at], word):
                yield at + 1, filled
        case Gap(name):
            for end, value in slots.find(name, at):
                yield end, (*filled, (name, value))
        case OneOf(nodes):
            for one in nodes:
                yield from matches(one, slots, at, filled)
        case Then(nodes):
            if not nodes:
                yield at, filled
                return
            for end, so_far in matches(nodes[0], slots, at, filled):
                yield from matches(Then(nodes[1:]), slots, end, so_far)


def skipped(words: tuple[Word, ...], at: int) -> int:
    """The place of the next word that means something."""
    while at < len(words) and (words[at].parts_only or words[at].says in _BETWEEN):
        at += 1
    return at


def _says(word: Word, wanted: str) -> bool:
    if wanted in {word.says, _SOUNDS.get(word.says)} or (word.says == "'s" and wanted in _IS):
        return True
    return not word.mark and mended(word.says, literals()) == wanted


@cache
def phrases() -> tuple[Phrase, ...]:
    """Every line, in the order of the file."""
    found: list[Phrase] = []
    named: dict[str, Node] = {}
    asks = ""
    for line in files("core.coach.hearing").joinpath("phrases.txt").read_text("utf-8").splitlines():
        if not line.strip() or line.startswith("#"):
            continue
        if heading := re.fullmatch(r"\[([a-z-]+)\]", line):
            asks = heading[1]
        elif definition := re.fullmatch(r"(@[a-z]+) = (.+)", line):
            named[definition[1]] = _compiled(definition[2], named)
        else:
            tree = _compiled(line, named)
            found.append(Phrase(asks, tree, tuple(_needs(tree))))
    return tuple(found)


def words_said(words: tuple[Word, ...]) -> frozenset[str]:
    """Every word of a text, as typed and as most likely meant, to compare with what phrases need."""
    said = {word.says for word in words} | {mended(word.says, literals()) for word in words if not word.mark}
    said |= {_SOUNDS[word] for word in said & _SOUNDS.keys()}
    return frozenset(said | _IS if "'s" in said else said)


def _needs(node: Node) -> Iterator[frozenset[str]]:
    """Sets of words of each of which one must be said for a tree to match."""
    match node:
        case Exactly(word):
            yield frozenset({word})
        case Then(nodes):
            for one in nodes:
                yield from _needs(one)
        case OneOf(nodes):
            firsts = [next(_needs(one), None) for one in nodes]
            if None not in firsts:
                yield frozenset().union(*(first for first in firsts if first is not None))
        case Gap():
            pass


@cache
def literals() -> frozenset[str]:
    """Every word that a line names."""
    found: set[str] = set()
    open_nodes: list[Node] = [phrase.tree for phrase in phrases()]
    while open_nodes:
        match open_nodes.pop():
            case Exactly(word):
                found.add(word)
            case Then(nodes) | OneOf(nodes):
                open_nodes += nodes
            case Gap():
                pass
    return frozenset(found)


def _compiled(line: str, named: dict[str, Node]) -> Node:
    parts = _PARTS.findall(line)
    node, at = _choice(parts, 0, named)
    if at != len(parts):
        raise ValueError(line)
    return node


def _choice(parts: list[str], at: int, named: dict[str, Node]) -> tuple[Node, int]:
    one, at = _sequence(parts, at, named)
    nodes = [one]
    while at < len(parts) and parts[at] == "|":
        one, at = _sequence(parts, at + 1, named)
        nodes.append(one)
    return (nodes[0] if len(nodes) == 1 else OneOf(tuple(nodes))), at


def _sequence(parts: list[str], at: int, named: dict[str, Node]) -> tuple[Node, int]:
    nodes: list[Node] = []
    while at < len(parts) and parts[at] not in ")]|":
        part, at = parts[at], at + 1
        if part in "([":
            inner, at = _choice(parts, at, named)
            nodes.append(inner if part == "(" else OneOf((inner, Then(()))))
            at += 1  # the closing bracket
        elif part.startswith("{"):
            nodes.append(Gap(part[1:-1]))
        else:
            nodes.append(named[part] if part.startswith("@") else Exactly(part))
    return Then(tuple(nodes)), at
