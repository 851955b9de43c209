"""What stands around the chats that `stationcall demo` prints. Chosen messages themselves are printed as they were said."""

from __future__ import annotations

import textwrap
from typing import TYPE_CHECKING

from bot.wording.days import date_text
from bot.wording.phrases import WIDTH

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence
    from datetime import datetime

PAGE = WIDTH + 2
INSET = "  "
FROM_US = "< "
TRAINED = "THE TWELVE"
REVIEWED = "THE COACH"
OWNED = "WHAT IS YOURS"


def head(coach: str, people: Sequence[tuple[str, str]], weeks: int, workouts: int, texts: int) -> Iterable[str]:
    """What follows, in a few lines: who took part, and how it came about."""
    yield f"{weeks} WEEKS WITH STATIONCALL"
    yield ""
    yield from _folded(
        f"{len(people)} invented people and {coach} lived this through the program itself, on a clock that"
        f" jumps: {workouts} workouts, {texts} texts read. Here is some of what was said."
    )
    yield ""
    for name, what in people:
        yield from _folded(f"{name}: {what}", hang=INSET)


def chapter(title: str) -> Iterable[str]:
    """The beginning of a part."""
    yield ""
    yield "=" * PAGE
    yield title
    yield "=" * PAGE


def scene(title: str, who: str, at: datetime) -> Iterable[str]:
    """The heading over a few messages."""
    yield ""
    yield from _folded(title)
    yield f"- {who}, {date_text(at.date())} {'-' * PAGE}"[:PAGE]


def sent(text: str, at: datetime) -> Iterable[str]:
    """What somebody texted."""
    yield from _folded(f"{at:%H:%M} > {text}", hang=" " * len("HH:MM > "))


def said(text: str, files: Sequence[str]) -> Iterable[str]:
    """What the assistant said, and where the picture or the file beside it lies."""
    for number, line in enumerate(text.splitlines()):
        yield f"{INSET if number else FROM_US}{line}"
    yield from (f"{INSET}{file}" for file in files)


def day(at: datetime) -> str:
    """Another day within a scene."""
    return f"- {date_text(at.date())}"


def end(folder: str) -> Iterable[str]:
    """Where everything lies, and how to look on."""
    yield ""
    yield from _folded("Pictures and files are kept as they were shown, and the diary of those who stayed. Its sets:")
    yield f"{INSET}stationcall records --data"
    yield f"{INSET}{folder}"


def _folded(text: str, hang: str = "") -> list[str]:
    return textwrap.wrap(text, PAGE, subsequent_indent=hang, break_on_hyphens=False)
