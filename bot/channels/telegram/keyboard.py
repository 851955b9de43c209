"""Quick replies as buttons. A button carries the row of its message and a number: short, opaque, never what somebody wrote."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from telegram import InlineKeyboardButton, InlineKeyboardMarkup

if TYPE_CHECKING:
    from collections.abc import Iterable

    from bot.ports import Letter

ROW_COLUMNS = 24  # characters that fit in a row of buttons on a narrow phone
ROW_BUTTONS = 5
PRESSED = re.compile(r"([0-9a-f]{1,15})\.([0-9]{1,2})")


def buttons_of(letter: Letter) -> InlineKeyboardMarkup | None:
    """The buttons under a message, None when it offers nothing."""
    replies = letter.rendered.replies
    if not replies:
        return None
    numbered = [(reply, f"{letter.id:x}.{number}") for number, reply in enumerate(replies)]
    return InlineKeyboardMarkup(
        [[InlineKeyboardButton(reply, callback_data=data) for reply, data in row] for row in _rows(numbered)]
    )


def read_press(data: str) -> tuple[int, int] | None:
    """The row and the number that a pressed button carries, None when it is none of ours."""
    found = PRESSED.fullmatch(data)
    return None if found is None else (int(found[1], 16), int(found[2]))


def _rows(buttons: Iterable[tuple[str, str]]) -> list[list[tuple[str, str]]]:
    rows: list[list[tuple[str, str]]] = []
    for reply, data in buttons:
        row = rows[-1] if rows else None
        fits = row is not None and len(row) < ROW_BUTTONS and sum(len(known) + 2 for known, _ in row) + len(reply) <= ROW_COLUMNS
        same_sort = row is not None and row[-1][0][0].isdigit() == reply[0].isdigit()
        if row is not None and fits and same_sort:
            row.append((reply, data))
        else:
            rows.append([(reply, data)])
    return rows
