"""How it goes, a chart an exercise: strength as a band with its middle, what was lifted as dots, reps beside them."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

from bot.pictures.paint import (
    BODY,
    DARK,
    LIGHT,
    MARGIN,
    NAME,
    SMALL,
    TITLE,
    WIDTH,
    Palette,
    Sheet,
    fitted,
    mixed,
    width_of,
)
from bot.wording import pictures as words

if TYPE_CHECKING:
    from collections.abc import Sequence

    from core.pictures import ProgressChart, ProgressPicture, ProgressPoint

CHART = 580  # height of one exercise's panel
PLOT_TOP, PLOT_BOTTOM = 196, 96  # what the words above and the days beneath take of it
INSET = 28
SCALE = 92  # room for the figures at the left
STEPS = (0.5, 1, 2, 2.5, 5, 10, 20, 25, 50, 100)
MARKS = 4  # lines across a chart, about
BESIDE = 40


def draw_progress(picture: ProgressPicture) -> bytes:
    """The charts as a PNG, one beneath the other."""
    palette = DARK if picture.dark else LIGHT
    head = 214
    sheet = Sheet(head + len(picture.charts) * (CHART + 24) + 70, palette)
    sheet.write(MARGIN, 116, words.PROGRESS, TITLE, palette.ink, "Bold")
    _key(sheet, 178)
    for index, chart in enumerate(picture.charts):
        _chart(sheet, head + index * (CHART + 24), chart)
    sheet.write(MARGIN, sheet.height - 34, words.NEVER_TEST, SMALL, palette.faint)
    return sheet.png()


def _key(sheet: Sheet, y: float) -> None:
    palette = sheet.palette
    sheet.dot(MARGIN + 14, y - 12, 13, palette.warm, palette.ground)
    sheet.write(MARGIN + 42, y, words.KEY_LOAD, SMALL, palette.ink)
    left = MARGIN + 42 + width_of(words.KEY_LOAD, SMALL) + 56
    sheet.box(left, y - 30, left + 56, y + 6, _band(palette), 8)
    sheet.lines([(left, y - 12), (left + 56, y - 12)], palette.legs, 6)
    sheet.write(left + 72, y, words.KEY_STRENGTH, SMALL, palette.ink)


def _band(palette: Palette) -> str:
    return mixed(palette.legs, palette.panel, 0.28)


@dataclass(frozen=True)
class _Frame:
    """Where days and loads lie on the sheet."""

    left: float
    right: float
    top: float
    bottom: float
    first: int
    days: int
    low: float
    high: float

    def x(self, point: ProgressPoint) -> float:
        """The place of a day; a single day stands in the middle."""
        share = 0.5 if not self.days else (point.day.toordinal() - self.first) / self.days
        return self.left + BESIDE + share * (self.right - self.left - 2 * BESIDE)

    def y(self, amount: float) -> float:
        """The place of a load."""
        return self.bottom - (amount - self.low) / (self.high - self.low) * (self.bottom - self.top)


def _chart(sheet: Sheet, top: float, chart: ProgressChart) -> None:
    palette, points = sheet.palette, chart.points
    sheet.box(MARGIN - 20, top, WIDTH - MARGIN + 20, top + CHART, palette.panel, 30)
    left, right = MARGIN + INSET - 12, WIDTH - MARGIN - INSET + 12
    size, name = fitted(chart.exercise, NAME, "Semibold", right - left, lines=1)
    sheet.write(left, top + 66, name[0], size, palette.ink, "Semibold")
    sheet.write(left, top + 118, words.latest(chart), BODY, palette.warm, "Semibold")
    sheet.write(left, top + 164, words.strength(chart), SMALL, palette.faint)
    low, high, step = _range(points)
    first = points[0].day.toordinal()
    days = points[-1].day.toordinal() - first
    frame = _Frame(left + SCALE, right, top + PLOT_TOP + 20, top + CHART - PLOT_BOTTOM, first, days, low, high)
    mark = low
    while mark <= high + step / 1000:
        sheet.lines([(frame.left, frame.y(mark)), (frame.right, frame.y(mark))], palette.line, 2)
        sheet.write(frame.left - 18, frame.y(mark), f"{mark:g}", SMALL, palette.faint, anchor="rm")
        mark += step
    _strength(sheet, frame, points)
    _lifted(sheet, frame, points)
    _days(sheet, frame, points)


def _range(points: Sequence[ProgressPoint]) -> tuple[float, float, float]:
    """The ends of the scale and its step, in round figures."""
    amounts = [float(amount) for point in points for amount in (point.load, point.low, point.high) if amount is not None]
    least, most = min(amounts), max(amounts)
    step = next((step for step in STEPS if (most - least) / step <= MARKS), STEPS[-1])
    low = max(0.0, math.floor(least / step) * step)
    if least - low < step / 2:
        low = max(0.0, low - step)
    return low, math.ceil(most / step + 0.01) * step, step


def _strength(sheet: Sheet, frame: _Frame, points: Sequence[ProgressPoint]) -> None:
    palette = sheet.palette
    known = [
        (frame.x(point), float(point.best), float(point.low), float(point.high))
        for point in points
        if point.best is not None and point.low is not None and point.high is not None
    ]
    if not known:
        return
    if len(known) == 1:
        x, best, low, high = known[0]
        known = [(x - BESIDE, best, low, high), (x + BESIDE, best, low, high)]
    band = [(x, frame.y(high)) for x, _, _, high in known] + [(x, frame.y(low)) for x, _, low, _ in reversed(known)]
    sheet.area(band, _band(palette))
    sheet.lines([(x, frame.y(best)) for x, best, _, _ in known], palette.legs, 6)


def _lifted(sheet: Sheet, frame: _Frame, points: Sequence[ProgressPoint]) -> None:
    """A dot a day; reps stand under it, as many as there is room for."""
    palette = sheet.palette
    places = [(frame.x(point), frame.y(float(point.load))) for point in points]
    if len(places) > 1:
        sheet.lines(places, palette.warm, 4)
    free_from = -math.inf
    for (x, y), point in reversed(list(zip(places, points, strict=True))):
        sheet.dot(x, y, 15, palette.warm, palette.panel)
        reps = str(max(point.reps))
        half = width_of(reps, SMALL, "Semibold") / 2
        if free_from == -math.inf or x + half < free_from:
            sheet.write(x, y + 48, reps, SMALL, palette.ink, "Semibold", "ms")
            free_from = x - half - 14


def _days(sheet: Sheet, frame: _Frame, points: Sequence[ProgressPoint]) -> None:
    """The first and the last day, and days between where there is room."""
    palette, y = sheet.palette, frame.bottom + 62
    last = words.day(points[-1].day)
    chosen = [(frame.x(points[-1]), last)]
    free_to = chosen[0][0] - width_of(last, SMALL) / 2 - 30
    free_from = -math.inf
    for point in points[:-1]:
        text, x = words.day(point.day), frame.x(point)
        half = width_of(text, SMALL) / 2
        if x - half > free_from and x + half < free_to:
            chosen.append((x, text))
            free_from = x + half + 30
    for x, text in chosen:
        sheet.write(min(max(x, frame.left), frame.right - width_of(text, SMALL) / 2), y, text, SMALL, palette.faint, anchor="ms")
