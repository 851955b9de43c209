"""Colours, letters and simple shapes: what every picture is made of. The one door to Pillow."""

from __future__ import annotations

import io
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from typing import TYPE_CHECKING, Literal

from PIL import Image, ImageDraw, ImageFont

if TYPE_CHECKING:
    from core.pictures import Group

WIDTH = 1080  # pixels; on a phone of 390 points one point is 2.8 of them, so that 34 is the smallest size to read
MARGIN = 56
SMALL, BODY, NAME, FIGURE, TITLE = 36, 42, 52, 58, 84
Weight = Literal["Regular", "Semibold", "Bold"]
Colour = str


@dataclass(frozen=True)
class Palette:
    """The colours of a picture; contrast of text on its ground is at least 4.5 to 1 (WCAG 2.2, 1.4.3), which a test holds."""

    ground: Colour
    panel: Colour
    ink: Colour
    faint: Colour
    line: Colour
    warm: Colour
    legs: Colour
    push: Colour
    pull: Colour
    middle: Colour
    other: Colour
    on_mark: Colour

    def of(self, group: Group) -> Colour:
        """The colour of a group of exercises."""
        colours = {"legs": self.legs, "push": self.push, "pull": self.pull, "middle": self.middle, "other": self.other}
        return colours[group]


LIGHT = Palette(
    ground="#F6F1E7",
    panel="#FFFDF8",
    ink="#1F2A30",
    faint="#5C676B",
    line="#DDD4C3",
    warm="#A8481F",
    legs="#1F6E79",
    push="#A8481F",
    pull="#4C6B22",
    middle="#6B4C8F",
    other="#8A5A12",
    on_mark="#FFFDF8",
)
DARK = Palette(
    ground="#12191D",
    panel="#1C262B",
    ink="#F3EDE0",
    faint="#A3AFB2",
    line="#35434A",
    warm="#F0986B",
    legs="#63C3CE",
    push="#F0986B",
    pull="#A9CC6E",
    middle="#C3A5E6",
    other="#E5BC6A",
    on_mark="#12191D",
)


@cache
def letters(size: int, weight: Weight = "Regular") -> ImageFont.FreeTypeFont:
    """The typeface in a size (pixels) and weight."""
    with files("font_source_sans_pro").joinpath("files", f"SourceSansPro-{weight}.ttf").open("rb") as file:
        return ImageFont.truetype(io.BytesIO(file.read()), size)


class Sheet:
    """A sheet of paper of a fixed width on which things are drawn; lengths are pixels, from the upper left corner."""

    def __init__(self, height: int, palette: Palette) -> None:
        self.palette = palette
        self.height = height
        self._image = Image.new("RGB", (WIDTH, height), palette.ground)
        self._draw = ImageDraw.Draw(self._image)

    def png(self) -> bytes:
        """The sheet as a PNG file; the same drawing gives the same bytes."""
        out = io.BytesIO()
        self._image.save(out, "PNG", optimize=True)
        return out.getvalue()

    def write(
        self,
        x: float,
        y: float,
        text: str,
        size: int,
        colour: Colour,
        weight: Weight = "Regular",
        anchor: str = "ls",
    ) -> None:
        """Write on the line at `y`; `anchor` as Pillow names it: l, m or r, then s (on the line) or m (middle)."""
        self._draw.text((x, y), text, font=letters(size, weight), fill=colour, anchor=anchor)

    def box(self, left: float, top: float, right: float, bottom: float, colour: Colour, radius: float = 0) -> None:
        """A filled box, its corners rounded."""
        self._draw.rounded_rectangle((left, top, right, bottom), radius, fill=colour)

    def dot(self, x: float, y: float, radius: float, colour: Colour, ring: Colour | None = None) -> None:
        """A filled circle, with a ring of another colour."""
        self._draw.ellipse((x - radius, y - radius, x + radius, y + radius), fill=colour, outline=ring, width=5 if ring else 0)

    def lines(self, points: list[tuple[float, float]], colour: Colour, width: int) -> None:
        """A line through points."""
        self._draw.line(points, fill=colour, width=width, joint="curve")

    def area(self, points: list[tuple[float, float]], colour: Colour) -> None:
        """A filled polygon."""
        self._draw.polygon(points, fill=colour)


def width_of(text: str, size: int, weight: Weight = "Regular") -> float:
    """How wide a text is, in pixels."""
    return letters(size, weight).getlength(text)


def fitted(text: str, size: int, weight: Weight, room: float, lines: int = 2) -> tuple[int, tuple[str, ...]]:
    """The size, and the text in at most so many lines, that fit into `room` pixels; smaller where it must be, then cut."""
    for smaller in range(size, SMALL - 1, -2):
        folded = _folded(text, smaller, weight, room)
        if len(folded) <= lines and all(width_of(line, smaller, weight) <= room for line in folded):
            return smaller, folded
    folded = _folded(text, SMALL, weight, room)
    kept = (*folded[: lines - 1], " ".join(folded[lines - 1 :]))
    return SMALL, tuple(_cut(line, weight, room) for line in kept if line)


def _folded(text: str, size: int, weight: Weight, room: float) -> tuple[str, ...]:
    lines = [""]
    for word in text.split():
        longer = f"{lines[-1]} {word}".strip()
        if not lines[-1] or width_of(longer, size, weight) <= room:
            lines[-1] = longer
        else:
            lines.append(word)
    return tuple(lines)


def _cut(line: str, weight: Weight, room: float) -> str:
    if width_of(line, SMALL, weight) <= room:
        return line
    while line and width_of(f"{line}…", SMALL, weight) > room:
        line = line[:-1]
    return f"{line}…"


def mixed(one: Colour, other: Colour, share: float) -> Colour:
    """A colour between two: `share` of the first."""
    parts = [(int(one[at : at + 2], 16), int(other[at : at + 2], 16)) for at in (1, 3, 5)]
    return "#" + "".join(f"{round(share * a + (1 - share) * b):02X}" for a, b in parts)
