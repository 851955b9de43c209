"""Quick replies as buttons. A button carries the row of its message and a number: short, opaque, never what somebody wrote."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from telegram import InlineKeyboardButton, InlineKeyboardMarkup

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from bot.ports import Letter

ROW_COLUMNS = 24  # characters that fit in a row of buttons on a narrow phone
ROW_BUTTONS = 5
Buttons = list[list[tuple[str, str]]]  # rows of labels, each with what pressing it sends
PRESSED = re.compile(r"([0-9a-f]{1,15})\.([0-9]{1,2})")


def buttons_of(letter: Letter) -> Buttons | None:
    """The buttons under a message, None when it offers nothing."""
    replies = letter.rendered.replies
    return _rows((reply, f"{letter.id:x}.{number}") for number, reply in enumerate(replies)) if replies else None


def markup_of(buttons: Buttons | None) -> InlineKeyboardMarkup | None:
    """Buttons as the library's object."""
    if buttons is None:
        return None
    return InlineKeyboardMarkup([[InlineKeyboardButton(label, callback_data=data) for label, data in row] for row in buttons])


def plain_markup(buttons: Buttons) -> dict[str, Sequence[Sequence[dict[str, str]]]]:
    """Buttons as the network's own structure."""
    return {"inline_keyboard": [[{"text": label, "callback_data": data} for label, data in row] for row in buttons]}


def read_press(data: str) -> tuple[int, int] | None:
    """The row and the number that a pressed button carries, None when it is none of ours."""
    found = PRESSED.fullmatch(data)
    return None if found is None else (int(found[1], 16), int(found[2]))


def _rows(buttons: Iterable[tuple[str, str]]) -> Buttons:
    rows: Buttons = []
    for reply, data in buttons:
        row = rows[-1] if rows else None
        fits = row is not None and len(row) < ROW_BUTTONS and sum(len(known) + 2 for known, _ in row) + len(reply) <= ROW_COLUMNS
        same_sort = row is not None and row[-1][0][0].isdigit() == reply[0].isdigit()
        if row is not None and fits and same_sort:
            row.append((reply, data))
        else:
            rows.append([(reply, data)])
    return rows
