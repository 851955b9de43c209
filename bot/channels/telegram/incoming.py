"""What comes in, as values: one update read by itself, so that one that cannot be read holds up no other."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import UTC, datetime
from typing import TYPE_CHECKING, Any, Literal

from telegram import Update
from telegram.constants import ChatMemberStatus, ChatType

if TYPE_CHECKING:
    from telegram import CallbackQuery, ChatMemberUpdated, Message


KINDS = ("message", "edited_message", "callback_query", "my_chat_member")  # what is asked for
NAME_MAX = 40


@dataclass(frozen=True)
class Text:
    """A text; `edited` when an earlier one was changed, which has the same `message_id`."""

    address: str
    called: str
    message_id: int
    update_id: int
    written_at: datetime
    text: str
    edited: bool


@dataclass(frozen=True)
class Film:
    """A film with what is written under it."""

    address: str
    called: str
    message_id: int
    file_id: str
    caption: str


@dataclass(frozen=True)
class NotText:
    """Something that cannot be read."""

    address: str
    called: str
    message_id: int
    what: Literal["voice", "sticker", "place", "file", "picture", "film", "other"]


@dataclass(frozen=True)
class Press:
    """A pressed quick reply: which, under which message, and the network's id for the pressing."""

    address: str
    press_id: str
    data: str
    message_id: int | None


@dataclass(frozen=True)
class Presence:
    """Somebody has blocked us (`here` false) or is back."""

    address: str
    here: bool


@dataclass(frozen=True)
class Group:
    """Something from a chat that is not one to one; `told` when it was said there rather than that we were put there."""

    address: str
    present: bool


@dataclass(frozen=True)
class Nothing:
    """Nothing for us."""


Incoming = Text | Film | NotText | Press | Presence | Group | Nothing


def update_id_of(raw: dict[str, Any]) -> int:
    """The number of an update as it came; 0 when it has none that can be read."""
    number = raw.get("update_id")
    return number if isinstance(number, int) else 0


def address_of(raw: dict[str, Any]) -> str:
    """The chat an update as it came belongs to, "" when there is none; updates of one chat keep their order."""
    for kind in KINDS:
        part = raw.get(kind)
        if isinstance(part, dict):
            part = part.get("message", part) if kind == "callback_query" else part
            chat = part.get("chat") if isinstance(part, dict) else None
            return str(chat.get("id", "")) if isinstance(chat, dict) else ""
    return ""


def read_update(raw: dict[str, Any]) -> Incoming:
    """An update as it came, as a value.

    Raises:
        Exception: whatever the library raises for an update that it cannot read.
    """
    if (text := _plain_text(raw)) is not None:
        return text
    update = Update.de_json(raw, None)
    if update.callback_query is not None:
        return _press(update.callback_query)
    if update.my_chat_member is not None:
        return _presence(update.my_chat_member)
    if update.edited_message is not None:
        return _message(update.edited_message, update.update_id, edited=True)
    if update.message is not None:
        return _message(update.message, update.update_id, edited=False)
    return Nothing()


def _plain_text(raw: dict[str, Any]) -> Text | None:
    """A text in a chat of two, which nearly every update is; None for anything else, or when it looks in any way odd.

    The library's objects for one would cost more than all the rest of taking it in.
    """
    match raw:
        case {
            "update_id": int(update_id),
            "message": {"message_id": int(message_id), "date": int(date), "text": str(text), "chat": chat},
            **others,
        } if not others:
            pass
        case _:
            return None
    match chat:
        case {"id": int(address), "type": ChatType.PRIVATE, "first_name": str(first)}:
            last = chat.get("last_name", "")
        case _:
            return None
    called = f"{first} {last}" if isinstance(last, str) and last else first
    return Text(str(address), called_of(called), message_id, update_id, datetime.fromtimestamp(date, UTC), text, edited=False)


def called_of(full_name: str | None) -> str:
    """What somebody is called, on one short line."""
    return " ".join(full_name.split())[:NAME_MAX] if full_name else "You"


def _message(message: Message, update_id: int, *, edited: bool) -> Incoming:
    address = str(message.chat.id)
    if message.chat.type != ChatType.PRIVATE:
        return Group(address, present=message.left_chat_member is None)
    called = called_of(message.chat.full_name)
    if message.text is not None:
        written_at = message.edit_date if edited and message.edit_date is not None else message.date
        return Text(address, called, message.message_id, update_id, written_at, message.text, edited)
    if edited:
        return Nothing()
    film = message.video or message.animation or message.video_note
    if film is not None:
        return Film(address, called, message.message_id, film.file_id, message.caption or "")
    return NotText(address, called, message.message_id, _what(message))


def _what(message: Message) -> Literal["voice", "sticker", "place", "file", "picture", "film", "other"]:
    if message.voice or message.audio:
        return "voice"
    if message.sticker:
        return "sticker"
    if message.location or message.venue:
        return "place"
    if message.photo:
        return "picture"
    if message.document:
        return "file"
    return "other"


def _press(query: CallbackQuery) -> Incoming:
    message_id = None if query.message is None else query.message.message_id
    return Press(str(query.from_user.id), query.id, query.data or "", message_id)


def _presence(change: ChatMemberUpdated) -> Incoming:
    here = change.new_chat_member.status not in (ChatMemberStatus.BANNED, ChatMemberStatus.LEFT)
    if change.chat.type != ChatType.PRIVATE:
        return Group(str(change.chat.id), present=here)
    return Presence(str(change.chat.id), here)
