"""Texts read past the library's objects are what the library would have read."""

import pytest
from telegram import Update

from bot.channels.telegram.incoming import Group, Nothing, Text, _message, _plain_text, read_update

CHAT = {"id": 42, "type": "private", "first_name": "Zoë", "last_name": "van  den\tBerg", "username": "zoe"}
MESSAGE = {"message_id": 7, "date": 1772433000, "chat": CHAT, "from": CHAT | {"is_bot": False}, "text": "11 at 20kg"}


def by_the_library(raw):
    """What the library reads."""
    update = Update.de_json(raw, None)
    return _message(update.message, update.update_id, edited=False)


@pytest.mark.parametrize(
    "message",
    [
        MESSAGE,
        MESSAGE | {"chat": {"id": 42, "type": "private", "first_name": "Ana"}},
        MESSAGE | {"chat": {"id": 42, "type": "private", "first_name": "A" * 60}},
        MESSAGE | {"chat": {"id": 42, "type": "private", "first_name": ""}},
        MESSAGE | {"chat": {"id": 42, "type": "private", "first_name": " ", "last_name": ""}},
        MESSAGE | {"text": ""},
        MESSAGE | {"entities": [{"type": "bold", "offset": 0, "length": 2}], "via_nobody": 1},
        MESSAGE | {"reply_to_message": MESSAGE},
    ],
)
def test_a_plain_text_is_what_the_library_reads(message):
    """Names of every length, what else comes along, and the instant: the library is the measure."""
    raw = {"update_id": 5, "message": message}
    assert _plain_text(raw) == by_the_library(raw) == read_update(raw)
    assert isinstance(read_update(raw), Text)


@pytest.mark.parametrize(
    "raw",
    [
        {"update_id": 5, "edited_message": MESSAGE | {"edit_date": 1772433060}},
        {"update_id": 5, "message": MESSAGE, "callback_query": {}},
        {"update_id": "5", "message": MESSAGE},
        {"update_id": 5, "message": {**MESSAGE, "text": None}},
        {"update_id": 5, "message": {**MESSAGE, "date": "soon"}},
        {"update_id": 5, "message": {**MESSAGE, "chat": CHAT | {"type": "group"}}},
        {"update_id": 5, "message": {**MESSAGE, "chat": {"id": 42, "type": "private"}}},
        {"update_id": 5, "message": {**MESSAGE, "chat": None}},
        {"update_id": 5, "message": None},
        {"update_id": 5},
    ],
)
def test_anything_else_is_left_to_the_library(raw):
    """Edits, groups, and whatever has another shape."""
    assert _plain_text(raw) is None


def test_what_the_library_reads_is_still_read():
    """An update of nothing, and a text in a group."""
    assert read_update({"update_id": 5}) == Nothing()
    group = MESSAGE | {"chat": {"id": -9, "type": "group", "title": "Gym"}}
    assert read_update({"update_id": 5, "message": group}) == Group("-9", present=True)
