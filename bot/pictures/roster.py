"""A coach's week: a row a person, those who need a word first; days as dots, strength with its spread, effort."""

from __future__ import annotations

from typing import TYPE_CHECKING

from bot.pictures.paint import BODY, DARK, LIGHT, MARGIN, NAME, SMALL, TITLE, WIDTH, Sheet, fitted, width_of
from bot.wording import pictures as words
from bot.wording.review import flag_text
from core.review_facts import DayKind

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from bot.pictures.paint import Palette
    from core.pictures import RosterRow, RosterWeek
    from core.review_facts import Change

ROW, FLAGGED = 148, 204  # a row's height, without and with a line of why
GAP = 14
HEAD, FOOT = 214, 132
KEY_LINE = 66
DOT, PITCH = 27, 66  # a day's radius, and from one to the next
INSET = 28
ARROW = 15


def draw_roster(week: RosterWeek) -> bytes:
    """The week of everyone as a PNG."""
    palette = DARK if week.dark else LIGHT
    heights = [FLAGGED if row.flag else ROW for row in week.rows]
    more = 70 if week.more else 0
    kinds = {kind for row in week.rows for kind in row.days}
    sheet = Sheet(HEAD + sum(heights) + GAP * len(heights) + more + key_height(kinds) + FOOT, palette)
    sheet.write(MARGIN, 116, words.ROSTER, TITLE, palette.ink, "Bold")
    sheet.write(MARGIN, 178, words.roster_head(week), BODY, palette.faint, "Semibold")
    top = float(HEAD)
    for row, height in zip(week.rows, heights, strict=True):
        _row(sheet, top, height, row)
        top += height + GAP
    if week.more:
        sheet.write(MARGIN, top + 44, words.more_in_sheet(week.more), BODY, palette.ink, "Semibold")
        top += more
    draw_key(sheet, top + 62, kinds)
    sheet.write(MARGIN, sheet.height - 40, words.KEY_CHANGE, SMALL, palette.faint)
    return sheet.png()


def _row(sheet: Sheet, top: float, height: int, row: RosterRow) -> None:
    palette = sheet.palette
    sheet.box(MARGIN - 20, top, WIDTH - MARGIN + 20, top + height, palette.panel, 26)
    left, right = MARGIN + INSET - 18, WIDTH - MARGIN - INSET + 18
    if row.flag is not None:
        sheet.box(MARGIN - 20, top + 26, MARGIN - 8, top + height - 26, palette.warm, 6)
        size, why = fitted(flag_text(row.flag), BODY, "Semibold", right - left, lines=1)
        sheet.write(left, top + height - 26, why[0], size, palette.warm, "Semibold")
    size, name = fitted(row.name, NAME, "Semibold", right - left - draw_change(sheet, right, top + 54, row.change) - 24, lines=1)
    sheet.write(left, top + 56, name[0], size, palette.ink, "Semibold")
    draw_days(sheet, left + DOT, top + 106, PITCH, row.days)
    sheet.write(right, top + 119, words.loads_and_effort(row), SMALL, palette.faint, anchor="rs")


def draw_change(sheet: Sheet, right: float, y: float, change: Change | None, label: str = "") -> float:
    """How strength goes, up to the right edge, after a label; returns its width."""
    palette, text = sheet.palette, words.change(change)
    clear = change is not None and change.clear
    colour = palette.faint if not clear else palette.legs if change is not None and change.low > 0 else palette.warm
    sheet.write(right, y, text, SMALL, colour, "Semibold" if clear else "Regular", "rs")
    wide = width_of(text, SMALL, "Semibold" if clear else "Regular")
    if clear and change is not None:
        x, up = right - wide - 2 * ARROW - 2, change.low > 0
        tip, foot = (y - 30, y - 2) if up else (y, y - 28)
        sheet.area([(x - ARROW, foot), (x + ARROW, foot), (x, tip)], colour)
        wide += 3 * ARROW + 2
    sheet.write(right - wide - 12, y, label, SMALL, palette.faint, anchor="rs")
    return wide


def draw_days(sheet: Sheet, x: float, y: float, pitch: float, days: Sequence[DayKind]) -> None:
    """Monday to Sunday as dots with their letters."""
    for letter, kind in zip(words.DAY_LETTERS, days, strict=True):
        draw_day(sheet, x, y, kind)
        colour = sheet.palette.on_mark if kind is DayKind.TRAINED else sheet.palette.faint
        sheet.write(x, y, letter, SMALL, colour, "Bold" if kind is DayKind.TRAINED else "Regular", "mm")
        x += pitch


def draw_day(sheet: Sheet, x: float, y: float, kind: DayKind) -> None:
    """The mark of a day; a free one has none."""
    palette = sheet.palette
    if kind is DayKind.TRAINED:
        sheet.dot(x, y, DOT, palette.legs)
    elif kind is not DayKind.FREE:
        sheet.dot(x, y, DOT, *_ring(palette, kind))
    if kind is DayKind.PAUSED:
        sheet.lines([(x - DOT + 8, y + DOT - 8), (x + DOT - 8, y - DOT + 8)], palette.faint, 4)


def _ring(palette: Palette, kind: DayKind) -> tuple[str, str]:
    colours = {DayKind.MISSED: palette.warm, DayKind.MOVED: palette.legs}
    return palette.panel, colours.get(kind, palette.faint)


def draw_key(sheet: Sheet, y: float, kinds: set[DayKind]) -> None:
    """What the marks mean, those that are there."""
    for x, line, kind in _key(kinds):
        draw_day(sheet, x + DOT, y + line * KEY_LINE, kind)
        sheet.write(x + 2 * DOT + 14, y + line * KEY_LINE + 13, words.KEY_DAYS[kind], SMALL, sheet.palette.ink)


def key_height(kinds: set[DayKind]) -> int:
    """How much room the key takes."""
    return KEY_LINE * (1 + max((line for _, line, _ in _key(kinds)), default=0))


def _key(kinds: set[DayKind]) -> Iterator[tuple[float, int, DayKind]]:
    """Where each mark of the key stands: from the left, and on which line."""
    x, line = float(MARGIN), 0
    for kind, word in words.KEY_DAYS.items():
        if kind not in kinds:
            continue
        wide = 2 * DOT + 14 + width_of(word, SMALL)
        if x + wide > WIDTH - MARGIN:
            x, line = float(MARGIN), line + 1
        yield x, line, kind
        x += wide + 34
