"""A circuit as a board: stations in order with load, reps and clock, and one round as a strip of time."""

from __future__ import annotations

from typing import TYPE_CHECKING

from bot.pictures.paint import (
    BODY,
    DARK,
    FIGURE,
    LIGHT,
    MARGIN,
    NAME,
    SMALL,
    TITLE,
    WIDTH,
    Sheet,
    fitted,
    width_of,
)
from bot.wording import pictures as words

if TYPE_CHECKING:
    from core.pictures import Board, BoardLine

ROW, ROW_CLOSE = 158, 132  # a row's height; where there are many stations the lower one
MANY = 9
GAP = 14
STRIP = 64
MARK = 40  # radius of a station's number
FIGURES = 250  # the column of load and clock


def draw_board(board: Board) -> bytes:
    """The board as a PNG."""
    palette = DARK if board.dark else LIGHT
    row = ROW if len(board.lines) <= MANY else ROW_CLOSE
    size, title = fitted(board.circuit, TITLE, "Bold", WIDTH - 2 * MARGIN)
    head = 48 + round(len(title) * size * 1.1) + 150 + (70 if board.week else 0)
    height = head + len(board.lines) * (row + GAP) + 250
    sheet = Sheet(height, palette)
    y = 30.0
    for line in title:
        y += size * 1.1
        sheet.write(MARGIN, y, line, size, palette.ink, "Bold")
    y += 70
    sheet.write(MARGIN, y, words.rounds_and_minutes(board), BODY, palette.ink, "Semibold")
    y += 54
    sheet.write(MARGIN, y, words.rests(board), SMALL, palette.faint)
    if board.week:
        y += 62
        _week(sheet, y, board)
    y = head
    for number, station in enumerate(board.lines, start=1):
        _row(sheet, y, row, number, station)
        y += row + GAP
    _strip(sheet, y + 62, board)
    return sheet.png()


def _week(sheet: Sheet, y: float, board: Board) -> None:
    """A bar of the block's weeks, this one filled, and its words."""
    if board.week is None:
        return
    palette, left = sheet.palette, float(MARGIN)
    for week in range(1, board.week.weeks + 1):
        colour = palette.warm if week == board.week.week else palette.line
        sheet.box(left, y - 24, left + 54, y - 6, colour, 9)
        left += 66
    sheet.write(left + 14, y, words.week(board.week), SMALL, palette.warm, "Semibold")


def _row(sheet: Sheet, top: float, height: int, number: int, station: BoardLine) -> None:
    palette = sheet.palette
    colour, middle = palette.of(station.group), top + height / 2
    sheet.box(MARGIN - 20, top, WIDTH - MARGIN + 20, top + height, palette.panel, 26)
    sheet.dot(MARGIN + 36, middle, MARK, colour)
    sheet.write(MARGIN + 36, middle, str(number), BODY, palette.on_mark, "Bold", "mm")
    left, right = MARGIN + 104, WIDTH - MARGIN - 4
    room = right - left - FIGURES
    load, clock, detail = words.load(station), words.clock(station), words.reps(station)
    size, name = fitted(station.exercise, NAME, "Semibold", room)
    block = len(name) * size + 44
    y = middle - block / 2 + size * 0.82
    for line in name:
        sheet.write(left, y, line, size, palette.ink, "Semibold")
        y += size
    sheet.write(left, y + 2, detail, SMALL, palette.faint)
    if station.load is not None and station.load.amount:
        size, folded = fitted(load, FIGURE, "Bold", FIGURES - 10, lines=1)
        sheet.write(right, middle - 6, folded[0], size, palette.ink, "Bold", "rs")
    else:
        sheet.write(right, middle - 8, load, BODY, palette.faint, "Regular", "rs")
    sheet.write(right, middle + 48, clock, BODY, colour, "Semibold", "rs")


def _strip(sheet: Sheet, top: float, board: Board) -> None:
    """One round from left to right: work in the stations' colours, rests as gaps, the time beneath."""
    palette = sheet.palette
    whole_s = sum(line.clock_s + line.rest_s for line in board.lines)
    scale = (WIDTH - 2 * MARGIN) / whole_s
    sheet.write(MARGIN, top - 22, words.ONE_ROUND, SMALL, palette.ink, "Semibold")
    sheet.write(WIDTH - MARGIN, top - 22, words.round_time(board), SMALL, palette.faint, anchor="rs")
    sheet.box(MARGIN, top, WIDTH - MARGIN, top + STRIP, palette.line, 14)
    x = float(MARGIN)
    for number, line in enumerate(board.lines, start=1):
        end = x + line.clock_s * scale
        sheet.box(x, top, end, top + STRIP, palette.of(line.group), 14)
        if end - x > width_of(str(number), SMALL, "Bold") + 8:
            sheet.write((x + end) / 2, top + STRIP / 2, str(number), SMALL, palette.on_mark, "Bold", "mm")
        x = end + line.rest_s * scale
    sheet.write(MARGIN, top + STRIP + 48, words.WORK_AND_REST, SMALL, palette.faint)
