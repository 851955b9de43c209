"""The lists of words in `words.toml`, read once."""

from __future__ import annotations

import tomllib
from importlib.resources import files
from typing import Any

_DATA: dict[str, Any] = tomllib.loads(files("core.coach.hearing").joinpath("words.toml").read_text("utf-8"))

SHORT_FORMS: dict[str, tuple[str, ...]] = {short: tuple(says.split()) for short, says in _DATA["short_forms"].items()}
"""Short forms and the words they stand for."""


def listed(table: str, entry: str) -> frozenset[str]:
    """The words of an entry."""
    return frozenset(_DATA[table][entry].split())


def ways(table: str, entry: str) -> tuple[tuple[str, ...], ...]:
    """The lines of an entry, each as its words; the longer ones first."""
    lines = [tuple(line.split()) for line in _DATA[table][entry].splitlines() if line]
    return tuple(sorted(lines, key=len, reverse=True))
