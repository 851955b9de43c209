"""The pictures' place in the data folder, and a channel that draws what a message shows before it goes out."""

from __future__ import annotations

import asyncio
import hashlib
import logging
from dataclasses import replace
from typing import TYPE_CHECKING

from bot.pictures import drawn
from core.pictures import Board, OwnWeekPicture, ProgressPicture, RosterWeek

if TYPE_CHECKING:
    from pathlib import Path

    from bot.ports import Channel, Letter
    from core.pictures import Picture

FOLDER = "pictures"
KINDS = {Board: "board", ProgressPicture: "progress", RosterWeek: "roster", OwnWeekPicture: "week"}

_log = logging.getLogger(__name__)


class Gallery:
    """A channel before another: it draws, that one sends. A picture that cannot be drawn is left out, the words go."""

    def __init__(self, channel: Channel, data: Path) -> None:
        self._channel = channel
        self._folder = data / FOLDER

    async def send(self, trainee: int, letter: Letter) -> None:
        """Send a message with its picture, see `Channel`."""
        if letter.rendered.shows is not None:
            try:
                file = await asyncio.to_thread(self._hang, trainee, letter.rendered.shows)
            except Exception:  # noqa: BLE001 - a full disk must not keep the words back
                _log.exception("trainee %d: a picture could not be drawn", trainee)
            else:
                letter = replace(letter, rendered=replace(letter.rendered, picture=file))
        await self._channel.send(trainee, letter)

    def _hang(self, trainee: int, picture: Picture) -> Path:
        """The picture's file, drawn when it is not there yet; each trainee has a folder, for their owner's eyes alone."""
        folder = self._folder / str(trainee)
        name = f"{KINDS[type(picture)]}-{hashlib.sha256(repr(picture).encode()).hexdigest()[:10]}.png"
        file = folder / name
        if not file.exists():
            folder.mkdir(mode=0o700, parents=True, exist_ok=True)
            unfinished = file.with_suffix(".part")
            unfinished.touch(mode=0o600)
            unfinished.write_bytes(drawn(picture))
            unfinished.replace(file)
        return file
