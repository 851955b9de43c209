"""What is called at the network, and what its errors mean here."""

from __future__ import annotations

import json
from contextlib import contextmanager
from datetime import timedelta
from typing import TYPE_CHECKING, Any
from urllib.parse import urlencode

from telegram import Bot, BotCommand
from telegram.constants import ParseMode
from telegram.error import (
    BadRequest,
    ChatMigrated,
    Conflict,
    Forbidden,
    InvalidToken,
    NetworkError,
    RetryAfter,
    TelegramError,
)

from bot.channels.telegram.incoming import KINDS
from bot.channels.telegram.keyboard import markup_of, plain_markup
from bot.channels.telegram.request import Carrier, NotSent
from bot.errors import Gone, SettingsWrong, TokenRefused, TwoAtOnce, Unreachable, Unsure
from bot.settings import WEBHOOK_VARIABLE

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping
    from pathlib import Path

    from bot.channels.telegram.keyboard import Buttons
    from bot.settings import Secret

POLL_S = 50  # the longest the network holds a call for updates
POLL_SLACK_S = 10.0
BATCH = 100  # updates a call, the network's limit
GONE_WORDS = ("chat not found", "user is deactivated", "peer_id_invalid", "user not found")
SAME = "message is not modified"
UNPARSED = "can't parse entities"
NO_PREVIEW = {"is_disabled": True}


class NotFormatted(TelegramError):
    """The network could not read the formatting of a text."""


@contextmanager
def translated() -> Iterator[None]:
    """Turn the library's errors into the shell's.

    Raises:
        Gone, Unsure, Unreachable, TokenRefused, TwoAtOnce: see `bot.errors`.
        NotFormatted: the text may be sent without formatting.
    """
    try:
        yield
    except RetryAfter as error:
        told = error.retry_after
        raise Unreachable(told.total_seconds() if isinstance(told, timedelta) else float(told)) from None
    except Forbidden:
        raise Gone("blocked") from None
    except ChatMigrated:
        raise Gone("the chat has moved") from None
    except InvalidToken:
        raise TokenRefused from None
    except Conflict:
        raise TwoAtOnce from None
    except NotSent:
        raise Unreachable from None
    except BadRequest as error:
        said = error.message.lower()
        if any(words in said for words in GONE_WORDS):
            raise Gone("no such chat") from None
        if UNPARSED in said:
            raise NotFormatted(UNPARSED) from None
        raise
    except NetworkError:
        raise Unsure from None


class Network:
    """The calls this program makes, over the library's `Bot`."""

    def __init__(self, token: Secret, api: str) -> None:
        base = api.rstrip("/")
        self._poll, self._carrier = Carrier(POLL_S + POLL_SLACK_S), Carrier()
        self._bot = Bot(
            token.reveal(),
            base_url=f"{base}/bot",
            base_file_url=f"{base}/file/bot",
            request=self._carrier,
            get_updates_request=self._poll,
        )

    @property
    def name(self) -> str:
        """Our own name on the network, known after `start`."""
        return self._bot.username

    async def start(self) -> None:
        """Open the connections, and ask who we are.

        Raises:
            TokenRefused: the network does not know the token.
            Unreachable: there is no network just now.
        """
        with translated():
            await self._bot.initialize()

    async def stop(self) -> None:
        """Close the connections."""
        await self._bot.shutdown()

    async def listen_by_polling(self) -> None:
        """Have the network keep updates until they are asked for; what waits there is kept."""
        with translated():
            await self._bot.delete_webhook(drop_pending_updates=False)

    async def listen_by_webhook(self, url: str, secret: Secret) -> None:
        """Have the network bring updates to a URL, with a secret in each; what waits there is kept.

        Raises:
            SettingsWrong: the network takes no such URL.
        """
        with translated():
            try:
                await self._bot.set_webhook(
                    url, secret_token=secret.reveal(), allowed_updates=list(KINDS), drop_pending_updates=False
                )
            except BadRequest:
                raise SettingsWrong((f"{WEBHOOK_VARIABLE} is refused by the network",)) from None

    async def name_commands(self, commands: Mapping[str, str]) -> None:
        """Tell the network which commands to offer."""
        with translated():
            await self._bot.set_my_commands([BotCommand(command, says) for command, says in commands.items()])

    async def updates(self, offset: int | None, *, wait: bool) -> list[dict[str, Any]]:
        """Updates as they came; those below `offset` are confirmed by this and gone for good. With `wait`, until there are some."""
        asked = {"timeout": POLL_S if wait else 0, "limit": BATCH, "allowed_updates": json.dumps(KINDS)}
        query = urlencode(asked if offset is None else asked | {"offset": offset})
        with translated():
            answer = await self._poll.retrieve(f"{self._bot.base_url}/getUpdates?{query}", read_timeout=POLL_S + POLL_SLACK_S)
        found: list[dict[str, Any]] = json.loads(answer)["result"]
        return found

    async def send(self, address: str, html: str, *, silent: bool, buttons: Buttons | None = None) -> int:
        """Send a text; return the network's id for it."""
        said = {"chat_id": int(address), "text": html, "parse_mode": ParseMode.HTML, "link_preview_options": NO_PREVIEW}
        with translated():
            sent = await self._call("sendMessage", said | {"disable_notification": silent}, buttons)
        message_id: int = sent["message_id"]
        return message_id

    async def send_plain(self, address: str, text: str, *, silent: bool, buttons: Buttons | None = None) -> int:
        """Send a text without formatting; return the network's id for it."""
        with translated():
            sent = await self._bot.send_message(int(address), text, disable_notification=silent, reply_markup=markup_of(buttons))
        return sent.message_id

    async def send_film(self, address: str, file_id: str, html: str, *, silent: bool, buttons: Buttons | None = None) -> int:
        """Send a film that the network has, with a text under it; return the network's id for the message."""
        with translated():
            sent = await self._bot.send_video(
                int(address),
                file_id,
                caption=html,
                parse_mode=ParseMode.HTML,
                disable_notification=silent,
                reply_markup=markup_of(buttons),
            )
        return sent.message_id

    async def send_picture(self, address: str, picture: Path, html: str, *, silent: bool, buttons: Buttons | None = None) -> int:
        """Send a picture with a text under it; return the network's id for the message."""
        with translated():
            sent = await self._bot.send_photo(
                int(address),
                picture,
                caption=html,
                parse_mode=ParseMode.HTML,
                disable_notification=silent,
                reply_markup=markup_of(buttons),
            )
        return sent.message_id

    async def send_document(self, address: str, document: Path, html: str, *, silent: bool, buttons: Buttons | None = None) -> int:
        """Send a file with a text under it; return the network's id for the message."""
        with translated():
            sent = await self._bot.send_document(
                int(address),
                document,
                caption=html,
                parse_mode=ParseMode.HTML,
                disable_notification=silent,
                reply_markup=markup_of(buttons),
            )
        return sent.message_id

    async def change(self, address: str, message_id: int, html: str, buttons: Buttons | None = None) -> None:
        """Change a text that was sent, and its buttons; changing it to what it is already is no error."""
        said = {"chat_id": int(address), "message_id": message_id, "text": html, "parse_mode": ParseMode.HTML}
        with translated(), _same_is_well():
            await self._call("editMessageText", said, buttons)

    async def take_buttons(self, address: str, message_id: int) -> None:
        """Take the quick replies off a message."""
        with translated(), _same_is_well():
            await self._bot.edit_message_reply_markup(int(address), message_id)

    async def answer_press(self, press_id: str, text: str | None = None) -> None:
        """Tell the network that a press has arrived; `text` is shown for a moment. Too late is no error."""
        with translated():
            try:
                await self._bot.answer_callback_query(press_id, text)
            except BadRequest:
                return

    async def leave(self, address: str) -> None:
        """Leave a group."""
        with translated():
            await self._bot.leave_chat(int(address))

    async def _call(self, method: str, given: dict[str, Any], buttons: Buttons | None) -> Any:  # noqa: ANN401 - as the network has it
        """One of the calls that every message makes: the library's objects for it would cost as much as the call itself."""
        markup = {} if buttons is None else {"reply_markup": plain_markup(buttons)}
        return await self._carrier.call(f"{self._bot.base_url}/{method}", given | markup)


@contextmanager
def _same_is_well() -> Iterator[None]:
    try:
        yield
    except BadRequest as error:
        if SAME not in error.message.lower():
            raise
