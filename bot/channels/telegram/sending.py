"""The way out: a message of the outbox as a message of the network."""

from __future__ import annotations

import logging
from html import escape
from typing import TYPE_CHECKING

from telegram.error import BadRequest

from bot.channels.telegram.keyboard import buttons_of
from bot.channels.telegram.network import NotFormatted
from bot.errors import Unreachable
from core.catalogue import exercise
from core.session.states import Resting, SettingUp, WarmingUp, Working

if TYPE_CHECKING:
    from collections.abc import Awaitable, Callable
    from pathlib import Path

    from bot.channels.telegram.face import Faces
    from bot.channels.telegram.keyboard import Buttons
    from bot.channels.telegram.network import Network
    from bot.channels.telegram.register import Register
    from bot.ports import Letter
    from core.session.states import State

SOUNDS = frozenset(
    {"Down", "Go", "HalfWay", "PainStop", "SafetyNews", "SecondsLeft", "StillMissing", "StillThere", "SwitchSides", "UrgentStop"}
)
BEGINS = frozenset({"Go", "SwitchSides"})
STRONG_LINE = {"Card": 1, "Down": 0, "Go": 0, "SwitchSides": 0, "TodayPlan": 0, "UrgentStop": 0}
TEXT_MAX, CAPTION_MAX = 4096, 1024  # the network's limits

_log = logging.getLogger(__name__)


class Sending:
    """The channel: sends to everybody who has an account here; anyone else's messages wait."""

    def __init__(self, network: Network, register: Register, faces: Faces, state_of: Callable[[int], Awaitable[State]]) -> None:
        self._network = network
        self._register = register
        self._faces = faces
        self._state_of = state_of

    async def send(self, trainee: int, letter: Letter) -> None:
        """Send one message.

        Raises:
            Gone, Unsure, Unreachable: see `bot.ports.Channel`.
        """
        account = self._register.of_trainee(trainee)
        if account is None:
            raise Unreachable
        state = await self._state_of(trainee)
        kind = letter.rendered.kind
        silent = isinstance(state, WarmingUp | SettingUp | Working | Resting) and kind not in SOUNDS
        message_id = await self._send(account.address, letter, silent=silent)
        if kind in BEGINS and isinstance(state, Working) and state.ends_at is not None:
            here = state.workout.exercises[state.workout.place.station - 1]
            self._faces.begin(trainee, account.address, message_id, exercise(here).name, state.ends_at, buttons_of(letter))

    async def _send(self, address: str, letter: Letter, *, silent: bool) -> int:
        html, buttons = html_of(letter), buttons_of(letter)
        film = None if letter.rendered.exercise is None else self._register.clips.get(letter.rendered.exercise)
        try:
            if letter.rendered.kind == "Card" and film is not None and len(html) <= CAPTION_MAX:
                return await self._film(address, film, html, silent=silent, buttons=buttons)
            beside = letter.rendered.picture or letter.rendered.document
            if beside is not None and len(html) <= CAPTION_MAX:
                return await self._with_file(address, letter, beside, html, silent=silent, buttons=buttons)
            return await self._in_pieces(address, letter, html, silent=silent, buttons=buttons)
        except NotFormatted:
            _log.warning("message %d: the network could not read its formatting", letter.id)
            return await self._network.send_plain(address, letter.rendered.text[:TEXT_MAX], silent=silent, buttons=buttons)

    async def _in_pieces(self, address: str, letter: Letter, html: str, *, silent: bool, buttons: Buttons | None) -> int:
        """A text alone, in as many messages as it needs; its picture goes before it, its document after it."""
        picture, document = letter.rendered.picture, letter.rendered.document
        if picture is not None:
            await self._with_file(address, letter, picture, "", silent=True, buttons=None)
        *before, last = pieces(html)
        for piece in before:
            await self._network.send(address, piece, silent=True)
        message_id = await self._network.send(address, last, silent=silent, buttons=buttons)
        if document is not None:
            await self._with_file(address, letter, document, "", silent=True, buttons=None)
        return message_id

    async def _with_file(
        self, address: str, letter: Letter, file: Path, html: str, *, silent: bool, buttons: Buttons | None
    ) -> int:
        """A message under its picture or document; without it when the network does not take it. 0: there was neither."""
        send = self._network.send_picture if file == letter.rendered.picture else self._network.send_document
        try:
            return await send(address, file, html, silent=silent, buttons=buttons)
        except BadRequest:
            _log.warning("message %d: what was beside it was not taken", letter.id)
            return await self._network.send(address, html, silent=silent, buttons=buttons) if html else 0

    async def _film(self, address: str, film: str, html: str, *, silent: bool, buttons: Buttons | None) -> int:
        """A card with the coach's film; without it when the network no longer has it."""
        try:
            return await self._network.send_film(address, film, html, silent=silent, buttons=buttons)
        except BadRequest:
            _log.warning("a film is no longer there")
            return await self._network.send(address, html, silent=silent, buttons=buttons)


def html_of(letter: Letter) -> str:
    """A message with modest formatting: one line strong where there is one to see at a glance; everything else as it is."""
    lines = [escape(line, quote=False) for line in letter.rendered.text.split("\n")]
    strong = STRONG_LINE.get(letter.rendered.kind)
    if strong is not None and strong < len(lines):
        lines[strong] = f"<b>{lines[strong]}</b>"
    return "\n".join(lines)


def pieces(html: str) -> list[str]:
    """A text in pieces that the network takes, cut between lines."""
    found = [""]
    for line in html.split("\n"):
        if len(found[-1]) + len(line) + 1 > TEXT_MAX:
            found.append("")
        found[-1] = f"{found[-1]}\n{line}" if found[-1] else line[:TEXT_MAX]
    return found
