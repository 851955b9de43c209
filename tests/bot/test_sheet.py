"""The sheet as a file: sound, closed, escaped, readable on a phone and on paper."""

from __future__ import annotations

import os
import re
import shutil
from dataclasses import replace
from datetime import timedelta
from decimal import Decimal
from html.parser import HTMLParser

import html5lib
import pytest

from bot.sheet import page_of
from core.catalogue import all_exercises
from core.review.telling import sheet_of
from core.units import Load, Unit
from core.wishes import CardNote, HeldLoad, Swapped, Wishes
from tests.browser import PROGRAM, VARIABLE, browser, needs_browser
from tests.reviewing import EVENING, Book, month

HOSTILE = (
    "<img src=x onerror=alert(1)>",
    '=cmd|"/c calc"!A1',
    "</style><script>alert(1)</script>",
    "\"' onload=alert(1) x='",
    "{{ 7*7 }}",
    "Wolfeschlegelsteinhausenbergerdorffwelchevoralternwarengewissenhaftschafers",
)
LONGEST = max(all_exercises().values(), key=lambda exercise: len(exercise.name))
LOADING = {"script", "img", "link", "iframe", "object", "embed", "form", "base", "video", "audio"}
PHONE, SMALLEST_PX = 375, 16


def busy(count=12):
    """People with everything that a sheet can show, the longest exercise name and hostile words among it."""
    books = month(count)
    for book, text in zip(books, HOSTILE, strict=False):
        swaps, holds = (Swapped("goblet-squat", LONGEST.slug),), (HeldLoad(None, Load(Decimal(14), Unit.KG)),)
        book.trainee = replace(book.trainee, name=text, wishes=Wishes(swaps, holds, (CardNote("one-arm-row", text),)))
        book.hurts(EVENING.date() - timedelta(days=1), text, "goblet-squat")
        book.asks(EVENING.date(), text, "floor-press")
    books[-1].trains(EVENING.date(), (LONGEST.slug, 12, 112.5), ("plank", None, None), effort=10)
    return books


def page(books):
    """Their sheet as text."""
    return page_of(sheet_of([book.person for book in books], "this", "UTC", EVENING).document).decode()


class Parts(HTMLParser):
    """Every tag with its attributes, and every piece of text."""

    def __init__(self, text):
        super().__init__(convert_charrefs=True)
        self.tags, self.texts = [], []
        self.feed(text)

    def handle_starttag(self, tag, attrs):
        """A tag."""
        self.tags.append((tag, dict(attrs)))

    def handle_data(self, data):
        """Text."""
        self.texts.append(data)


@pytest.mark.parametrize("books", [busy(), month(1), [Book()], []], ids=["busy", "one", "nothing done", "nobody"])
def test_it_is_sound_html(books):
    """A strict parser made from the standard's own algorithm (html5lib) finds no fault; it names its language and fits a phone."""
    tree = html5lib.HTMLParser(strict=True, namespaceHTMLElements=False).parse(page(books))
    assert tree.get("lang") == "en"
    assert tree.findtext(".//title") == "The week of 23 to 29 Mar 2026"
    metas = {meta.get("name"): meta.get("content") for meta in tree.iter("meta")}
    assert metas["viewport"] == "width=device-width, initial-scale=1"


def test_it_loads_and_runs_nothing():
    """No script, no handler, no address but places within itself, and a policy that forbids all but its own style."""
    parts = Parts(page(busy()))
    assert not {tag for tag, _ in parts.tags} & {
        "script",
        "img",
        "link",
        "iframe",
        "object",
        "embed",
        "form",
        "base",
        "video",
        "audio",
    }
    names = {name for _, attributes in parts.tags for name in attributes}
    assert not {name for name in names if name.startswith("on")} | (names & {"src", "srcset", "style", "action", "xlink:href"})
    assert all(attributes["href"].startswith("#p") for tag, attributes in parts.tags if "href" in attributes)
    style = page(busy()).split("<style>")[1].split("</style>")[0]
    assert not re.search(r"url\(|@import|https?:", style)
    policy = next(
        attributes["content"] for _, attributes in parts.tags if attributes.get("http-equiv") == "Content-Security-Policy"
    )
    assert policy.startswith("default-src 'none'; style-src 'sha256-")
    assert "unsafe" not in policy


def test_every_place_it_points_to_is_there_once():
    """The names at the top lead to the people."""
    tags = Parts(page(busy())).tags
    ids = [attributes["id"] for _, attributes in tags if "id" in attributes]
    assert len(ids) == len(set(ids)) == 12
    assert {attributes["href"][1:] for _, attributes in tags if "href" in attributes} == set(ids)


@pytest.mark.parametrize("text", HOSTILE)
def test_what_people_typed_stands_there_as_text(text):
    """A name, a note, a question and a place of pain are shown letter for letter, whatever they look like."""
    shown = [piece for piece in Parts(page(busy())).texts if text in piece]
    assert len(shown) >= 4


def test_a_place_of_pain_is_there_only_where_that_was_agreed():
    """The sheet is what a coach prints and leaves lying about."""
    open_hearted, reserved = Book("Ana"), Book("Bo")
    open_hearted.trainee = replace(open_hearted.trainee, health=replace(open_hearted.trainee.health, share=True))
    for book, place in ((open_hearted, "left knee"), (reserved, "lower back")):
        book.hurts(EVENING.date(), place)
    text = page((open_hearted, reserved))
    assert "left knee" in text
    assert "lower back" not in text
    assert "Pain, Sun 29 Mar" in text


def test_the_same_week_gives_the_same_bytes():
    """So a sheet can be compared with another."""
    assert page(busy()) == page(busy())


@needs_browser
async def test_a_real_browser_finds_nothing_to_complain_about(tmp_path):
    """No error, no word in the log, no finding of the policy's, and no other request than for the file itself."""
    file = tmp_path / "week.html"
    file.write_text(page(busy()), encoding="utf-8")
    async with browser(tmp_path / "profile") as window:
        await window.opens(file, PHONE)
        assert [request["request"]["url"] for request in window.told("Network.requestWillBeSent")] == [file.as_uri()]
        for complaint in ("Runtime.exceptionThrown", "Runtime.consoleAPICalled", "Log.entryAdded", "Audits.issueAdded"):
            assert window.told(complaint) == []
        assert await window.works_out("document.title") == "The week of 23 to 29 Mar 2026"
        assert await window.works_out("document.styleSheets.length") == 1


@needs_browser
@pytest.mark.parametrize("dark", [False, True], ids=["light", "dark"])
async def test_it_is_readable_on_a_phone(tmp_path, dark):
    """375 points wide: nothing to scroll sideways, no letter under 16 pixels, text apart from its ground by 4.5 to 1 (WCAG 2.2)."""
    file = tmp_path / "week.html"
    file.write_text(page(busy()), encoding="utf-8")
    async with browser(tmp_path / "profile") as window:
        await window.opens(file, PHONE, dark=dark)
        assert await window.works_out("document.scrollingElement.scrollWidth") <= PHONE
        assert await window.works_out(WIDEST) <= PHONE
        sizes, contrasts = await window.works_out(LETTERS)
        assert min(sizes) >= SMALLEST_PX
        assert min(contrasts) >= 4.5


@needs_browser
async def test_it_prints_on_a4_two_people_a_page_and_no_row_is_cut(tmp_path):
    """Twelve people are at most eight pages of 210 x 297 mm; on paper the ground is white."""
    file = tmp_path / "week.html"
    file.write_text(page(month(12)), encoding="utf-8")
    async with browser(tmp_path / "profile") as window:
        await window.opens(file, 900, dark=True)
        paper = await window.pdf()
    boxes = re.findall(rb"/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]", paper)
    assert {(round(float(wide) / 72 * 25.4), round(float(high) / 72 * 25.4)) for wide, high in boxes} == {(210, 297)}
    assert 5 <= len(boxes) <= 8


def test_a_browser_that_is_named_must_be_there():
    """Where the variable names a program, the tests above are not left out: they fail without it."""
    if os.environ.get(VARIABLE):
        assert shutil.which(PROGRAM)


WIDEST = "Math.max(...[...document.querySelectorAll('body *')].map(one => one.getBoundingClientRect().right))"
LETTERS = """
(() => {
  const parts = colour => colour.match(/[\\d.]+/g).map(Number);
  const light = colour => {
    const [r, g, b] = parts(colour).slice(0, 3).map(v => v / 255).map(v => v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4);
    return 0.2126 * r + 0.7152 * g + 0.0722 * b;
  };
  const ground = one => {
    for (; one; one = one.parentElement) {
      const colour = getComputedStyle(one).backgroundColor;
      if (parts(colour).length < 4 || parts(colour)[3] > 0) return colour;
    }
  };
  const texts = [...document.querySelectorAll('body *')].filter(
    one => [...one.childNodes].some(node => node.nodeType === 3 && node.data.trim()));
  const contrast = one => {
    const [a, b] = [light(getComputedStyle(one).color), light(ground(one))].sort((x, y) => y - x);
    return (a + 0.05) / (b + 0.05);
  };
  return [texts.map(one => parseFloat(getComputedStyle(one).fontSize)), texts.map(contrast)];
})()
"""
