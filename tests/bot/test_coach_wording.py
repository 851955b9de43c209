"""What coaches and trainees type is read as it was typed, in lines that fit a phone, whatever signs are in it."""

from html import unescape

import pytest

from bot.bootstrap import rendered
from bot.channels.telegram.sending import html_of, pieces
from bot.ports import Letter
from bot.wording.phrases import WIDTH
from core.deeds import Arrival, Deed, DeedAsked, DeedDone, DeedKind, NobodyCalled, QuestionPassed, WhoMeant
from core.messages import CoachAnswers, CoachWrites

HOSTILE = [
    "<b>bold</b> & </i> &amp; <script>alert(1)</script>",
    "W" * 300,
    "\N{RIGHT-TO-LEFT MARK}שלום \N{ARABIC LETTER MARK}مرحبا",
    "one\ntwo\n\nthree",
    "=HYPERLINK(1) \\ ` * _ [x](y) 😊",
]
NAME = "<b>Ana & Co</b> " + "x" * 60


def messages(text):
    """Every message that shows a text and a name."""
    deed = Deed(DeedKind.SAY, text=text)
    yield DeedAsked(deed, (NAME,), Arrival(1, 0, 0, 0))
    yield DeedDone(Deed(DeedKind.NOTE, text=text), (NAME,))
    yield DeedAsked(Deed(DeedKind.ANSWER, text=text), (NAME,), Arrival(0, 1, 0, 0), question=text)
    yield WhoMeant(text, (NAME, text), sure=False)
    yield NobodyCalled(text, (NAME,))
    yield QuestionPassed(NAME, text, "Kitchen seven", "Push-up", 1, 2)
    yield CoachWrites(NAME, text)
    yield CoachAnswers(NAME, text, text)


@pytest.mark.parametrize("text", HOSTILE, ids=["markup", "long", "right to left", "lines", "signs"])
def test_typed_words_fit_a_phone_and_are_shown_as_they_are(text):
    """No line is wider than a phone's; nothing in it is formatting, and nothing of it is lost on the network."""
    for message in messages(text):
        shown = rendered(message)
        lines = shown.text.split("\n")
        assert all(0 < len(line) <= WIDTH for line in lines), type(message).__name__
        html = "\n".join(pieces(html_of(Letter(1, shown))))
        assert unescape(html) == shown.text
        assert "<" not in html
        words = "".join(text.split())
        assert words in "".join(shown.text.split()), type(message).__name__
