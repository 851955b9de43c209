"""The terminal: a chat with one trainee. Messages arrive above the line being typed and leave it as it is."""

from __future__ import annotations

import asyncio
import sys
import uuid
from typing import TYPE_CHECKING

from prompt_toolkit import PromptSession
from prompt_toolkit.patch_stdout import patch_stdout

from bot.errors import Unreachable
from bot.wording.terminal import DOCUMENT, GOODBYE, HOW_TO_LEAVE, NOT_KEPT, PICTURE, QUIT_WORDS

if TYPE_CHECKING:
    from collections.abc import AsyncIterator

    from bot.assistant import Assistant
    from bot.ports import Letter

CHANNEL = "terminal"
FIRST_LINE, OTHER_LINES = "▸ ", "  "


def on_screen(text: str) -> str:
    """A message as the terminal shows it: a mark at its first line, the others set in."""
    return FIRST_LINE + text.replace("\n", f"\n{OTHER_LINES}")


class Terminal:
    """The channel of one trainee; anyone else's messages wait until they open their own chat."""

    def __init__(self, trainee_id: int) -> None:
        self._trainee_id = trainee_id
        self._left = False

    async def send(self, trainee: int, letter: Letter) -> None:
        """Print a message above the line being typed.

        Raises:
            Unreachable: the message is for somebody else.
        """
        if trainee != self._trainee_id:
            raise Unreachable
        rendered = letter.rendered
        picture = "" if rendered.picture is None else f"\n{PICTURE}\n{rendered.picture}"
        document = "" if rendered.document is None else f"\n{DOCUMENT}\n{rendered.document}"
        print(on_screen(rendered.text + picture + document), flush=True)  # noqa: T201 - this is the terminal

    async def hold(self, assistant: Assistant) -> None:
        """Talk until the trainee leaves (end of input, Ctrl-C, a word of leaving), or had everything erased."""
        print(HOW_TO_LEAVE, flush=True)  # noqa: T201
        await assistant.opened(self._trainee_id)
        async for text in _typed_lines() if sys.stdin.isatty() else _piped_lines():
            if text.strip().lower() in QUIT_WORDS:
                break
            if text.strip() and not await assistant.said(self._trainee_id, text, uuid.uuid4().hex, CHANNEL):
                print(on_screen(NOT_KEPT), flush=True)  # noqa: T201
            if assistant.has_left(self._trainee_id):
                self._left = True
                break

    def part(self) -> None:
        """Say goodbye, after the last message is out; who had everything erased has been told so."""
        if not self._left:
            print(on_screen(GOODBYE), flush=True)  # noqa: T201


async def _typed_lines() -> AsyncIterator[str]:
    session: PromptSession[str] = PromptSession("> ")
    with patch_stdout():
        while True:
            try:
                yield await session.prompt_async()
            except (EOFError, KeyboardInterrupt):
                return


async def _piped_lines() -> AsyncIterator[str]:
    """Lines from a pipe or a file, read beside the event loop so that the clock goes on."""
    while line := await asyncio.to_thread(sys.stdin.readline):
        yield line.rstrip("\n")
