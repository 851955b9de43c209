"""The chosen moments: found again in the chats that were lived, and laid out 40 columns wide."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING
from zoneinfo import ZoneInfo

from bot.errors import FixtureBroken
from bot.month.cast import FILE
from bot.pictures.gallery import Gallery
from bot.wording import month as words

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence
    from pathlib import Path

    from bot.month.cast import Excerpt
    from bot.month.living import Lived
    from bot.month.phones import Entry
    from bot.ports import Letter

CALLS = ("GetReady", "HalfWay", "SecondsLeft")  # of the clock: never shown


def chosen(excerpt: Excerpt, lived: Lived) -> Sequence[Entry]:
    """The messages of an excerpt.

    Raises:
        FixtureBroken: what it is about did not happen.
    """
    zone = ZoneInfo(lived.zones[excerpt.who])
    chat = [entry for entry in lived.chats[excerpt.who] if _kind(entry) not in (*CALLS, *excerpt.without)]
    for number, entry in enumerate(chat):
        if entry.at.astimezone(zone).date() >= excerpt.since and _begins(excerpt, entry):
            return chat[max(0, number - excerpt.before) : number + excerpt.entries]
    raise FixtureBroken(FILE, f"{excerpt.title}: it did not happen")


async def laid_out(excerpt: Excerpt, lived: Lived, folder: Path) -> list[str]:
    """The lines of an excerpt, each at most 40 columns wide; its pictures are drawn into the folder."""
    number = lived.numbers[excerpt.who]
    return list(_laid_out(excerpt, lived, [await _hung(entry, number, folder) for entry in chosen(excerpt, lived)], folder))


class _Wall:
    """A channel that keeps the last message as it would have gone out."""

    def __init__(self) -> None:
        self.letter: Letter | None = None

    async def send(self, trainee: int, letter: Letter) -> None:
        """Keep it, see `Channel`."""
        del trainee
        self.letter = letter


async def _hung(entry: Entry, number: int, folder: Path) -> Entry:
    """A message with its picture drawn, as it would have been sent."""
    if entry.letter is None or entry.letter.rendered.shows is None:
        return entry
    wall = _Wall()
    await Gallery(wall, folder).send(number, entry.letter)
    return replace(entry, letter=wall.letter)


def _laid_out(excerpt: Excerpt, lived: Lived, entries: Sequence[Entry], folder: Path) -> Iterator[str]:
    zone = ZoneInfo(lived.zones[excerpt.who])
    day = entries[0].at.astimezone(zone)
    yield from words.scene(excerpt.title, excerpt.who, day)
    for entry in entries:
        at = entry.at.astimezone(zone)
        if at.date() != day.date():
            day = at
            yield words.day(at)
        if entry.sent is not None:
            yield from words.sent(entry.sent, at)
        if entry.letter is not None:
            rendered = entry.letter.rendered
            files = [file.relative_to(folder).as_posix() for file in (rendered.picture, rendered.document) if file is not None]
            yield from words.said(rendered.text, files)


def _kind(entry: Entry) -> str | None:
    return None if entry.letter is None else entry.letter.rendered.kind


def _begins(excerpt: Excerpt, entry: Entry) -> bool:
    if entry.letter is None:
        return entry.sent == excerpt.begins
    return _kind(entry) == excerpt.begins and excerpt.has in " ".join(entry.letter.rendered.text.split())
