"""Pictures: drawn from values, readable on a phone, kept in the data folder; a message goes out with or without its picture."""

import io
from dataclasses import replace
from datetime import date, timedelta
from decimal import Decimal

import pytest
from PIL import Image

from bot.errors import Unreachable
from bot.pictures import drawn
from bot.pictures.gallery import Gallery
from bot.pictures.paint import DARK, LIGHT, SMALL, WIDTH, fitted, mixed, width_of
from bot.ports import Letter, Rendered
from core.catalogue import all_exercises
from core.circuit import Span
from core.exercise import Measure
from core.pictures import Board, BoardLine, BoardWeek, ProgressChart, ProgressPicture, ProgressPoint
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


@pytest.mark.parametrize("picture", [BOARD, PROGRESS], ids=["board", "progress"])
def test_the_same_values_give_the_same_bytes(picture):
    """So a picture need not be drawn twice."""
    assert drawn(picture) == drawn(picture)


@pytest.mark.parametrize("picture", [BOARD, PROGRESS], ids=["board", "progress"])
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
