"""What holds for every text: hearing never breaks, stays fast, and never makes up a word or a name."""

from datetime import date

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from core.coach.asks import AnswerTo, Ask, HowIs, Invite, NoteFor, SayTo
from core.coach.hearing import hear
from core.reading.normal import LONGEST
from tests.core.coach.messages import Message, everything
from tests.counting import calls

NAMES = ("Ana", "Ben", "Mia Berg", "Mia Chen", "Will", "Seán O'Dea", "静香")
TODAY = date(2026, 11, 25)
HEARD = [message for message in everything() if message.ask is not None]

PIECES = [
    *NAMES, "mia", "Zoe", "everyone", "everyone but", "and", "or", "not", "don't", "please", "thanks", "that", "to", "for", "on",
    "is", "'s", ",", "-", "\n", "?", "!", "(", ")", "💪", "tell", "message", "let", "know", "give", "put", "note on", "reply to",
    ":", "answer", "invite", "pause", "remove", "swap", "hold", "back", "instead of", "until", "from", "monday", "the 14th",
    "two weeks", "10kg", "row", "burpees", "squats", "sheet", "the week", "who", "missed", "how",
]  # fmt: skip
spoken = st.lists(st.sampled_from(PIECES), max_size=14).map(" ".join)


def names_of(ask: Ask) -> tuple[str, ...]:
    """Every name in an ask."""
    match ask:
        case HowIs(name) | Invite(str() as name) | AnswerTo(_, str() as name):
            return (name,)
        case _:
            return getattr(ask, "whom", None).names if getattr(ask, "whom", None) else ()


@settings(deadline=None)
@given(text=st.text(max_size=LONGEST))
def test_any_text_can_be_heard(text: str):
    """Whatever signs it is made of."""
    hear(text, NAMES, TODAY)


@settings(deadline=None, max_examples=400)
@given(text=spoken)
def test_names_and_own_words_stand_in_the_text(text: str):
    """Nobody is meant who was not named, and nothing goes out that was not typed."""
    heard = hear(text, NAMES, TODAY)
    if heard is not None:
        assert [name for name in names_of(heard) if name not in text] == []
    if isinstance(heard, SayTo | NoteFor | AnswerTo):
        assert heard.text in text
        assert heard.text.strip()


@settings(deadline=None, max_examples=300)
@given(text=spoken)
def test_everybody_named_is_in_the_ask(text: str):
    """A name of the roster is among those meant, or in the coach's own words; else nothing is heard."""
    heard = hear(text, NAMES, TODAY)
    if heard is None:
        return
    own = getattr(heard, "text", "")
    outside = text.replace(own, " ", 1) if own else text
    meant = " ".join(names_of(heard))
    for name in ("Ana", "Ben", "静香"):
        assert outside.count(name) == 0 or name in meant


@settings(deadline=None, max_examples=200)
@given(message=st.sampled_from(HEARD), how=st.sampled_from(["lower", "upper"]))
def test_capitals_do_not_change_what_is_heard(message: Message, how: str):
    """But for those of what is kept as typed."""
    turned = getattr(message.text, how)()
    heard = hear(turned, message.names, message.today)
    if how == "upper" and heard is None:
        return  # a stranger's name is told from a word by its capital
    assert type(heard) is type(hear(message.text, message.names, message.today)) or (heard is None and "Z" in message.text)
    if heard is not None and not isinstance(heard, SayTo | NoteFor | AnswerTo):
        assert str(heard).lower() == str(hear(message.text, message.names, message.today)).lower()


@pytest.mark.parametrize("before", ["please ", "hey coach, could you please ", "good morning! can you kindly "])
def test_courtesies_before_do_not_change_what_is_heard(before: str):
    """For everything but a name with a question mark alone."""
    changed = []
    for message in HEARD:
        plain = message.ask
        asked = hear(before + message.text[0].lower() + message.text[1:], message.names, message.today)
        if isinstance(asked, type(plain)) and names_of(asked) == names_of(plain):
            continue
        if (
            asked is not None
            and names_of(asked)
            and [name.lower() for name in names_of(asked)] != [name.lower() for name in names_of(plain)]
        ) or asked is None:
            changed.append(message.text)
    assert len(changed) <= 0.03 * len(HEARD), changed


@pytest.mark.parametrize("after", [" please", " thanks!", ", thank you so much", " cheers mate"])
def test_courtesies_after_do_not_change_what_is_heard(after: str):
    """Where no own words of the coach run to the end: there they belong to them."""
    changed = [
        message.text
        for message in HEARD
        if not isinstance(message.ask, SayTo | NoteFor | AnswerTo)
        and not message.text.rstrip().endswith((".", "?", "!", "Thank you"))
        if hear(message.text + after, message.names, message.today) != message.ask
    ]
    assert len(changed) <= 0.02 * len(HEARD), changed


@pytest.mark.parametrize(
    "text",
    [
        "tell Ana " * 455,
        "put " + "row on ana's row card " * 185,
        "swap burpees for step ups for " * 136,
        "Ana, " * 800,
        "Ana and " * 500,
        "a" * LONGEST,
        "pause " + "ana " * 1000,
        "note on ana's row: " + "ben and " * 500,
        "who " * 1000,
        "?" * LONGEST,
        "mia berg's " * 370,
        "let everyone but " * 240,
    ],
)
def test_work_grows_with_the_length_of_a_text_and_no_faster(text: str):
    """Four times as long, four times the work; an expression that tries every way would not come to an end here."""
    longest = text[:LONGEST]
    assert calls(lambda: hear(longest, NAMES, TODAY)) <= 4.5 * calls(lambda: hear(longest[: LONGEST // 4], NAMES, TODAY))


def test_a_text_longer_than_a_message_is_not_heard():
    """Part of a coach's own words would go out for the whole."""
    assert hear("tell Ana: " + "x" * LONGEST, NAMES, TODAY) is None
