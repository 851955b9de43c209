"""A sheet as a page. The one door to Jinja; everything that people typed is escaped where it is put in."""

from __future__ import annotations

import base64
import hashlib
from functools import cache
from importlib.resources import files
from typing import TYPE_CHECKING

from jinja2 import Environment, StrictUndefined

from bot.sheet import shapes
from bot.wording import sheet as words

if TYPE_CHECKING:
    from jinja2 import Template

    from core.sheet import Sheet


@cache
def _template() -> Template:
    environment = Environment(autoescape=True, undefined=StrictUndefined, trim_blocks=True, lstrip_blocks=True)
    return environment.from_string(_text("page.html"))


@cache
def _text(name: str) -> str:
    return files("bot.sheet").joinpath(name).read_text(encoding="utf-8")


def page_of(sheet: Sheet) -> bytes:
    """The sheet as an HTML file in UTF-8; the same values give the same bytes.

    Its own rules forbid it to load or run anything: the style is known by its hash.
    """
    style = _text("page.css")
    known = base64.b64encode(hashlib.sha256(style.encode()).digest()).decode()
    return _template().render(sheet=sheet, style=style, style_hash=known, words=words, shapes=shapes).encode()
