"""The place of pictures and documents in the data folder, and a channel that makes what a message shows before it goes out."""

from __future__ import annotations

import asyncio
import hashlib
import logging
from dataclasses import replace
from typing import TYPE_CHECKING

from bot.files import file_of
from bot.files.folders import FILES, PICTURES, written
from bot.pictures import drawn
from core.pictures import Board, OwnWeekPicture, ProgressPicture, RosterWeek

if TYPE_CHECKING:
    from pathlib import Path

    from bot.ports import Channel, Document, Letter, Rendered
    from core.pictures import Picture

KINDS = {Board: "board", ProgressPicture: "progress", RosterWeek: "roster", OwnWeekPicture: "week"}

_log = logging.getLogger(__name__)


class Gallery:
    """A channel before another: it draws and writes, that one sends. What cannot be made is left out, the words go."""

    def __init__(self, channel: Channel, data: Path) -> None:
        self._channel = channel
        self._data = data

    async def send(self, trainee: int, letter: Letter) -> None:
        """Send a message with its picture or document, see `Channel`."""
        shows = letter.rendered.shows
        if shows is not None:
            try:
                rendered = await asyncio.to_thread(self._made, trainee, letter.rendered, shows)
            except Exception:  # noqa: BLE001 - a full disk must not keep the words back
                _log.exception("trainee %d: what message %d shows could not be made", trainee, letter.id)
            else:
                letter = replace(letter, rendered=rendered)
        await self._channel.send(trainee, letter)

    def _made(self, trainee: int, rendered: Rendered, shows: Picture | Document) -> Rendered:
        """A message with the file of what it shows."""
        match shows:
            case Board() | ProgressPicture() | RosterWeek() | OwnWeekPicture():
                return replace(rendered, picture=self._hang(trainee, shows))
            case _:
                return replace(rendered, document=written(self._data / FILES / str(trainee), *file_of(shows)))

    def _hang(self, trainee: int, picture: Picture) -> Path:
        """The picture's file, drawn when it is not there yet."""
        name = f"{KINDS[type(picture)]}-{hashlib.sha256(repr(picture).encode()).hexdigest()[:10]}.png"
        folder = self._data / PICTURES / str(trainee)
        there = folder / name
        return there if there.exists() else written(folder, name, drawn(picture))
