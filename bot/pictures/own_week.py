"""A trainee's own week: days and minutes, loads beside what they were, sets by muscle group beside the advice."""

from __future__ import annotations

from typing import TYPE_CHECKING

from bot.pictures.paint import BODY, DARK, LIGHT, MARGIN, NAME, SMALL, TITLE, WIDTH, Sheet, fitted, mixed, width_of
from bot.pictures.roster import draw_change, draw_days, draw_key, key_height
from bot.wording import pictures as words

if TYPE_CHECKING:
    from core.pictures import OwnWeekPicture
    from core.review_facts import LoadWeek

HEAD, DAYS, SECTION = 214, 180, 92
LOAD, GROUP = 116, 66
FOOT = 120
LEFT, RIGHT = MARGIN + 10, WIDTH - MARGIN - 10
BAR_FROM, BAR_TO = 320, RIGHT - 90


def draw_own_week(picture: OwnWeekPicture) -> bytes:
    """The week as a PNG."""
    palette = DARK if picture.dark else LIGHT
    loads = SECTION + LOAD * len(picture.loads) + 24 if picture.loads else 0
    groups = SECTION + GROUP * len(picture.groups) + 84 if picture.sets else 0
    sheet = Sheet(HEAD + DAYS + 24 + loads + groups + key_height(set(picture.days)) + FOOT, palette)
    sheet.write(MARGIN, 116, words.OWN_WEEK, TITLE, palette.ink, "Bold")
    sheet.write(MARGIN, 178, f"{words.week_from(picture.monday)}: {words.own_head(picture)}", BODY, palette.faint, "Semibold")
    _days(sheet, HEAD, picture)
    top = HEAD + DAYS + 24
    if picture.loads:
        _panel(sheet, top, loads - 24, words.BEST_LOADS)
        draw_change(sheet, RIGHT, top + 62, picture.change, words.STRENGTH)
        for number, load in enumerate(picture.loads):
            _load(sheet, top + SECTION + number * LOAD, load)
        top += loads
    if picture.sets:
        _groups(sheet, top, groups, picture)
        top += groups
    draw_key(sheet, top + 50, set(picture.days))
    sheet.write(MARGIN, sheet.height - 40, words.KEY_CHANGE if picture.change else "", SMALL, palette.faint)
    return sheet.png()


def _panel(sheet: Sheet, top: float, height: float, title: str) -> None:
    sheet.box(MARGIN - 20, top, WIDTH - MARGIN + 20, top + height, sheet.palette.panel, 26)
    sheet.write(LEFT, top + 64, title, BODY, sheet.palette.ink, "Bold")


def _days(sheet: Sheet, top: float, picture: OwnWeekPicture) -> None:
    """The days' marks, minutes beneath those with a workout."""
    palette = sheet.palette
    sheet.box(MARGIN - 20, top, WIDTH - MARGIN + 20, top + DAYS, palette.panel, 26)
    pitch = (RIGHT - LEFT) / 7
    draw_days(sheet, LEFT + pitch / 2, top + 70, pitch, picture.days)
    for number, minutes in enumerate(picture.minutes):
        sheet.write(LEFT + (number + 0.5) * pitch, top + 148, words.minutes(minutes), SMALL, palette.ink, "Regular", "ms")


def _load(sheet: Sheet, top: float, load: LoadWeek) -> None:
    palette = sheet.palette
    figure = words.top(load)
    size, name = fitted(load.exercise, NAME, "Semibold", RIGHT - LEFT - width_of(figure, NAME, "Bold") - 30, lines=1)
    sheet.write(LEFT, top + 40, name[0], size, palette.ink, "Semibold")
    sheet.write(RIGHT, top + 40, figure, NAME, palette.ink, "Bold", "rs")
    colour = palette.legs if load.step > 0 else palette.faint
    sheet.write(LEFT, top + 88, words.before(load), SMALL, colour, "Semibold" if load.step > 0 else "Regular")


def _groups(sheet: Sheet, top: float, height: float, picture: OwnWeekPicture) -> None:
    """Bars of sets, with a line at what is advised."""
    palette = sheet.palette
    _panel(sheet, top, height - 24, words.MUSCLES)
    most = max(float(picture.advised) * 1.2, *(float(group.sets) for group in picture.groups))
    scale = (BAR_TO - BAR_FROM) / most
    for number, group in enumerate(picture.groups):
        y = top + SECTION + number * GROUP
        sheet.write(LEFT, y + 42, group.group, BODY, palette.ink)
        sheet.box(BAR_FROM, y + 12, BAR_TO, y + 46, mixed(palette.line, palette.panel, 0.5), 8)
        end = BAR_FROM + float(group.sets) * scale
        if group.sets:
            sheet.box(BAR_FROM, y + 12, end, y + 46, palette.legs, 8)
        sheet.write(RIGHT, y + 42, f"{float(group.sets):g}", BODY, palette.ink, "Semibold", "rs")
    line = BAR_FROM + picture.advised * scale
    bottom = top + SECTION + len(picture.groups) * GROUP
    sheet.lines([(line, top + SECTION), (line, bottom)], palette.warm, 5)
    sheet.write(LEFT, bottom + 44, words.advised(picture.advised), SMALL, palette.faint)
