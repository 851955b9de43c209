"""The sheet of a week as one file: HTML that needs nothing from elsewhere, opens on a phone and prints on paper.

`page` is the only door to the template library, `page.html` the template, `shapes` the points of the small charts.
"""

from bot.sheet.page import page_of

__all__ = ["page_of"]
