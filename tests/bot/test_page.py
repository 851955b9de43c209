"""Folding the lines of a message to a phone's width."""

import textwrap

from hypothesis import given
from hypothesis import strategies as st

from bot.wording.phrases import TIED, TIES, WIDTH, page

ODD = st.text(st.sampled_from("ab9 \t\n\N{NO-BREAK SPACE}×kg-•é漢\N{ZERO WIDTH SPACE}\N{EM SPACE}"), max_size=60)


@given(st.lists(ODD, max_size=3))
def test_a_line_that_fits_is_left_as_the_folding_would_leave_it(lines):
    """The short way for short lines gives what the standard library's folding gives, for odd spaces and letters too."""
    folded = []
    for line in filter(None, lines):
        hang = "  " if line.startswith(("• ", "- ")) else ""
        folded += textwrap.wrap(TIES.sub(TIED, line), WIDTH, subsequent_indent=hang, break_on_hyphens=False)
    assert page(*lines) == "\n".join(folded).replace(TIED, " ")
