"""Playing a script on a simulated clock and printing the transcript.

A script's lines: `> text` is what the trainee sends, `+ 45s` (or `2m`, `1h`, `3d`, or several: `1m 30s`) moves the clock,
`@ 2026-03-02 06:30` sets it, `# …` is a comment. The transcript repeats them and prints each message as `< [HH:MM:SS] text`,
its further lines set in. The same script gives the same bytes.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from types import MappingProxyType
from typing import TYPE_CHECKING, TextIO

from bot.errors import ScriptBroken
from bot.simulation import Simulation
from bot.wording.terminal import DOCUMENT, PICTURE, TO

if TYPE_CHECKING:
    from collections.abc import Mapping
    from pathlib import Path

    from bot.assistant import Assistant
    from bot.clock import SimulatedClock
    from bot.ports import Letter

CHANNEL = "script"
START = datetime(2026, 3, 2, 6, 30, tzinfo=UTC)  # a Monday, where a script does not set the clock itself
SECONDS = {"s": 1, "m": 60, "h": 3600, "d": 86400}
NOBODY_ELSE: Mapping[int, str] = MappingProxyType({})
SPAN = re.compile(r"(\d+)\s*([smhd])")


@dataclass(frozen=True)
class Say:
    """The trainee sends a text."""

    text: str


@dataclass(frozen=True)
class Move:
    """The clock goes on by so many seconds."""

    seconds: int


@dataclass(frozen=True)
class Set:
    """The clock is set to an instant (UTC)."""

    at: datetime


Command = Say | Move | Set | None


@dataclass(frozen=True)
class Line:
    """A line of a script as written, and what it does; None does nothing."""

    written: str
    command: Command


def read_script(text: str) -> tuple[Line, ...]:
    """Read a script whole.

    Raises:
        ScriptBroken: with the number of the first line that is none of the four kinds.
    """
    return tuple(_line(number, written.rstrip()) for number, written in enumerate(text.splitlines(), start=1))


def _line(number: int, written: str) -> Line:
    mark, rest = written[:1], written[1:].strip()
    if mark in ("", "#"):
        return Line(written, None)
    if mark == ">":
        return Line(written, Say(rest))
    if mark == "+" and rest and not SPAN.sub("", rest).strip():
        return Line(written, Move(sum(int(count) * SECONDS[unit] for count, unit in SPAN.findall(rest))))
    if mark == "@":
        try:
            return Line(written, Set(datetime.fromisoformat(rest).replace(tzinfo=UTC)))
        except ValueError:
            pass
    raise ScriptBroken(number, written)


def starts_at(script: tuple[Line, ...]) -> datetime:
    """When the chat of a script opens: at the clock it sets before anything else happens, else at `START`."""
    first = next((line.command for line in script if line.command is not None), None)
    return first.at if isinstance(first, Set) else START


class Transcript:
    """The channel of a script: prints messages with the simulated time at which they came."""

    def __init__(self, clock: SimulatedClock, out: TextIO, folder: Path) -> None:
        self._clock = clock
        self._out = out
        self._folder = folder
        self._others: Mapping[int, str] = {}

    async def send(self, trainee: int, letter: Letter) -> None:
        """Print a message; a picture or a document by its place in the data folder. One to somebody else says to whom."""
        head = f"< [{self._clock.now():%H:%M:%S}] "
        text = letter.rendered.text
        if trainee in self._others:
            text = f"{TO.format(name=self._others[trainee])}\n{text}"
        for words, file in ((PICTURE, letter.rendered.picture), (DOCUMENT, letter.rendered.document)):
            if file is not None:
                text += f"\n{words}\n{file.relative_to(self._folder).as_posix()}"
        self._out.write(head + text.replace("\n", "\n" + " " * len(head)) + "\n")

    async def play(
        self, script: tuple[Line, ...], trainee_id: int, assistant: Assistant, others: Mapping[int, str] = NOBODY_ELSE
    ) -> None:
        """Play a script from its opening to its last line; `others` are the names of those who are not at the program.

        Raises:
            ScriptBroken: a line sets the clock back.
        """
        self._others = others
        simulation = Simulation(assistant, self._clock)
        opened = False
        for number, line in enumerate(script, start=1):
            if line.command is not None and not opened and not isinstance(line.command, Set):
                opened = True
                await assistant.opened(trainee_id)
                await assistant.settled()
            self._out.write(line.written + "\n")
            match line.command:
                case Say(text):
                    key = f"{self._clock.now().isoformat()} {number}"
                    await assistant.said(trainee_id, text, key, CHANNEL)
                    await assistant.settled()
                case Move(seconds):
                    await simulation.advance_to(self._clock.now() + timedelta(seconds=seconds))
                case Set(at):
                    if at < self._clock.now():
                        raise ScriptBroken(number, line.written)
                    await simulation.advance_to(at)
                case None:
                    pass
