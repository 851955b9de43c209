"""Pictures: drawn from values, readable on a phone, kept in the data folder; a message goes out with or without its picture."""

import io
from dataclasses import replace
from datetime import date, timedelta
from decimal import Decimal

import pytest
from PIL import Image
from pydantic import TypeAdapter

from bot.errors import Unreachable
from bot.pictures import drawn
from bot.pictures.gallery import Gallery
from bot.pictures.paint import DARK, LIGHT, SMALL, WIDTH, fitted, mixed, width_of
from bot.ports import Letter, Rendered
from core.catalogue import all_exercises
from core.circuit import Span
from core.exercise import Measure
from core.pictures import (
    Board,
    BoardLine,
    BoardWeek,
    OwnWeekPicture,
    Picture,
    ProgressChart,
    ProgressPicture,
    ProgressPoint,
    RosterRow,
    RosterWeek,
)
from core.review.looking import ROWS
from core.review_facts import Change, DayKind, Flag, FlagKind, GroupSets, LoadWeek
from core.units import Load, Unit
from tests.bot.given import Phone

LONGEST = max((exercise.name for exercise in all_exercises().values()), key=len)
SQUAT = BoardLine(
    exercise=LONGEST,
    group="legs",
    load=Load(Decimal("112.5"), Unit.LB),
    loads_held=2,
    sides=True,
    work_s=60,
    reps=Span(10, 12),
    measure=Measure.REPS,
    clock_s=120,
    rest_s=30,
)
PLANK = replace(
    SQUAT,
    exercise="Plank",
    group="middle",
    load=None,
    loads_held=0,
    sides=False,
    reps=None,
    measure=Measure.HOLD,
    clock_s=60,
    rest_s=0,
)
BOARD = Board("Kitchen seven", 3, (SQUAT, PLANK), Span(30, 60), Span(60, 90), 300, Span(900, 1200))
DAY = ProgressPoint(date(2026, 3, 2), Decimal(12), (11, 10), Decimal(22), Decimal(15), Decimal(31))
PROGRESS = ProgressPicture((ProgressChart("Goblet squat", Unit.KG, (DAY,)),))
CHANGE = Change(Decimal("-10.4"), Decimal("-16.2"), Decimal("-4.1"))
WEEK = (DayKind.TRAINED, DayKind.MISSED, DayKind.MOVED, DayKind.PAUSED, DayKind.AHEAD, DayKind.FREE, DayKind.FREE)
FLAG = Flag(FlagKind.PAIN, date(2026, 3, 5), LONGEST, "right shoulder blade")
ROW = RosterRow("Maximiliane-Josephine von Hohenfels-Langenburg", WEEK, FLAG, CHANGE, Decimal("7.25"), 12, 10)
ROSTER = RosterWeek(date(2026, 3, 2), (ROW, replace(ROW, name="Bo", flag=None, change=None, effort=None)))
HEAVY = LoadWeek(LONGEST, 2, 9, Load(Decimal("112.5"), Unit.LB), (12,) * 9, Load(Decimal(105), Unit.LB))
GROUPS = (GroupSets("legs", Decimal("13.5"), 3), GroupSets("belly", Decimal(0), 0))
OWN = OwnWeekPicture(date(2026, 3, 2), WEEK, (38, 0, 0, 0, 0, 0, 0), 36, (HEAVY, HEAVY), GROUPS, 10, CHANGE, Decimal(7))
PICTURES = pytest.mark.parametrize("picture", [BOARD, PROGRESS, ROSTER, OWN], ids=["board", "progress", "roster", "own week"])
READABLE = 4.5  # WCAG 2.2, success criterion 1.4.3, for text of any size (from memory)
POINTS_WIDE = 390  # a usual phone in portrait
SMALLEST_POINTS = 12  # common practice, no source


def image(picture):
    """What a drawn picture shows."""
    return Image.open(io.BytesIO(drawn(picture)))


def luminance(colour):
    """Relative luminance of a colour, by the formula of WCAG 2.2 (from memory)."""
    shares = [int(colour[at : at + 2], 16) / 255 for at in (1, 3, 5)]
    red, green, blue = (share / 12.92 if share <= 0.04045 else ((share + 0.055) / 1.055) ** 2.4 for share in shares)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one, other):
    """The contrast of two colours, 1 to 21."""
    light, dark = sorted((luminance(one), luminance(other)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


@pytest.mark.parametrize("palette", [LIGHT, DARK], ids=["light", "dark"])
def test_everything_written_stands_out_from_its_ground(palette):
    """Text on paper and panels, coloured figures on panels, numbers on their marks."""
    groups = [palette.of(group) for group in ("legs", "push", "pull", "middle", "other")]
    pairs = [(ink, ground) for ink in (palette.ink, palette.faint, palette.warm) for ground in (palette.ground, palette.panel)]
    pairs += [(colour, palette.panel) for colour in groups] + [(palette.on_mark, colour) for colour in groups]
    assert min(contrast(*pair) for pair in pairs) >= READABLE


def test_the_smallest_letters_are_readable_on_a_phone():
    """A picture is shown as wide as the phone."""
    assert SMALL * POINTS_WIDE / WIDTH >= SMALLEST_POINTS


@pytest.mark.parametrize("room", [250, 620])
def test_no_name_runs_into_the_column_beside_it(room):
    """The longest name gets smaller, then takes two lines; a single endless word is cut with a sign that it is."""
    for text in (LONGEST, "Wednesday evening at the very long wall", "x" * 90):
        size, lines = fitted(text, 58, "Bold", room)
        assert 1 <= len(lines) <= 2
        assert all(width_of(line, size, "Bold") <= room for line in lines)
    assert lines[0].endswith("…")
    _, (line,) = fitted("Maximiliane-Josephine von Hohenfels and her sister", 58, "Bold", room, lines=1)
    assert line.endswith("…")


@PICTURES
def test_the_same_values_give_the_same_bytes(picture):
    """So a picture need not be drawn twice."""
    assert drawn(picture) == drawn(picture)


@PICTURES
def test_what_a_picture_shows_is_kept_and_read_back(picture):
    """The outbox keeps it as JSON until it is sent; one kind is never taken for another."""
    kinds = TypeAdapter(Picture)
    assert kinds.validate_json(kinds.dump_json(picture)) == picture


@PICTURES
def test_dark_and_light_are_told_apart_by_their_ground(picture):
    """Dark for a dark room, light by day; both as wide as a phone wants them."""
    light, dark = image(picture), image(replace(picture, dark=True))
    assert light.size == dark.size
    assert light.width == WIDTH
    assert light.getpixel((2, 2)) == tuple(bytes.fromhex(LIGHT.ground[1:]))
    assert dark.getpixel((2, 2)) == tuple(bytes.fromhex(DARK.ground[1:]))


def test_a_board_grows_with_its_stations_and_its_week():
    """Every station gets a row of its own, and a block's week a line."""
    plain = image(BOARD).height
    assert image(replace(BOARD, lines=(SQUAT, SQUAT, PLANK))).height > plain
    assert image(replace(BOARD, week=BoardWeek(4, 4, easier=True))).height > plain


def test_a_station_is_drawn_in_the_colour_of_what_it_trains():
    """The colour of its group is on the board, and goes with it."""
    for board, there in ((BOARD, True), (replace(BOARD, lines=(PLANK,)), False)):
        colours = {colour for _, colour in image(board).getcolors(1 << 20)}
        assert (tuple(bytes.fromhex(LIGHT.legs[1:])) in colours) is there


def test_a_chart_shows_the_spread_as_a_band():
    """Where strength is known there is a band in its colour; where it is not, there is none."""
    band = tuple(bytes.fromhex(mixed(LIGHT.legs, LIGHT.panel, 0.28)[1:]))
    unknown = ProgressPicture((ProgressChart("Plank", Unit.KG, (ProgressPoint(DAY.day, DAY.load, DAY.reps),)),))
    areas = [{colour: count for count, colour in image(one).getcolors(1 << 20)}.get(band, 0) for one in (PROGRESS, unknown)]
    assert areas[0] > areas[1] + 1000  # what is left is the key


@pytest.mark.parametrize("count", [1, 2, 40])
def test_a_chart_takes_one_day_or_many(count):
    """Odd loads, days far apart, the same load throughout: always a picture."""
    points = tuple(replace(DAY, day=DAY.day + timedelta(days=3 * number), load=Decimal("17.5")) for number in range(count))
    assert image(ProgressPicture((ProgressChart(LONGEST, Unit.LB, points),))).width == WIDTH


def areas(picture):
    """How many pixels of each colour."""
    return {colour: count for count, colour in image(picture).getcolors(1 << 20)}


@pytest.mark.parametrize("palette", [LIGHT, DARK], ids=["light", "dark"])
def test_a_day_that_was_missed_or_is_to_come_is_seen_as_one(palette):
    """Rings are no text: 3 to 1 is enough for them (WCAG 2.2, 1.4.11, from memory)."""
    assert min(contrast(colour, palette.panel) for colour in (palette.warm, palette.legs, palette.faint)) >= 3


@pytest.mark.parametrize("count", [1, ROWS])
def test_a_coachs_week_grows_with_its_people(count):
    """A row each; somebody who needs a word gets a line more; what has no room is said below. A chat still takes the picture."""
    row = replace(ROW, flag=None)
    plain = RosterWeek(date(2026, 3, 2), (row,) * count)
    high = image(plain).height
    assert high < image(replace(plain, rows=(*plain.rows, row))).height
    assert high < image(replace(plain, rows=(ROW, *plain.rows[1:]))).height
    assert high < image(replace(plain, more=34)).height
    assert image(replace(plain, more=34)).height + WIDTH <= 10_000  # the network's limit for both together, from memory


def test_days_trained_are_filled_and_days_missed_are_rings():
    """Seven days trained have more of the colour than seven missed."""
    teal = tuple(bytes.fromhex(LIGHT.legs[1:]))
    filled, rings = (
        areas(RosterWeek(date(2026, 3, 2), (replace(ROW, days=(kind,) * 7, flag=None, change=None),)))
        for kind in (DayKind.TRAINED, DayKind.MISSED)
    )
    assert filled[teal] > 7 * 1000
    assert teal not in rings


def test_strength_that_is_not_clear_has_no_arrow_and_no_colour():
    """An interval that holds no change is written in the colour of small things, in words."""
    teal = tuple(bytes.fromhex(LIGHT.legs[1:]))
    quiet = replace(ROW, days=(DayKind.FREE,) * 7, flag=None)
    unclear, clear = (
        areas(RosterWeek(date(2026, 3, 2), (replace(quiet, change=Change(Decimal(4), Decimal(low), Decimal(7))),)))
        for low in (-1, 1)
    )
    assert teal in clear
    assert teal not in unclear


def test_a_weeks_own_picture_leaves_out_what_there_is_nothing_of():
    """Without sets neither loads nor muscle groups; without a load up, nothing in its colour there."""
    empty = replace(OWN, sets=0, loads=(), minutes=(0,) * 7, change=None)
    assert image(empty).height < image(OWN).height


async def test_a_message_goes_out_with_its_picture_as_a_file(tmp_path):
    """The file lies in the trainee's own folder, readable by its owner alone; sent again, it is not drawn again."""
    phone, sent = Phone(), []
    phone.send = lambda _, letter: keep(sent, letter.rendered)
    gallery = Gallery(phone, tmp_path)
    for _ in range(2):
        await gallery.send(7, Letter(1, Rendered("Today", (), "TodayPlan", shows=BOARD)))
    assert sent[0] == sent[1]
    file = sent[0].picture
    assert file.parent == tmp_path / "pictures" / "7"
    assert file.read_bytes() == drawn(BOARD)
    assert file.stat().st_mode & 0o077 == 0
    assert [found.name for found in file.parent.iterdir()] == [file.name]


async def keep(kept, rendered):
    """Send by keeping."""
    kept.append(rendered)


async def test_words_go_out_even_when_the_picture_cannot_be_drawn(tmp_path):
    """A full disk, a file where the folder should be: the words are sent without a picture."""
    (tmp_path / "pictures").write_text("in the way")
    phone = Phone()
    await Gallery(phone, tmp_path).send(1, Letter(1, Rendered("Today", (), "TodayPlan", shows=BOARD)))
    assert phone.heard == [(1, "Today")]


async def test_a_chat_that_cannot_be_reached_is_still_said_to_be_so(tmp_path):
    """What the channel raises comes through."""
    with pytest.raises(Unreachable):
        await Gallery(Phone(Unreachable()), tmp_path).send(1, Letter(1, Rendered("Today", (), "TodayPlan")))
