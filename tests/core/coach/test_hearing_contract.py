"""What hearing promises whatever the wording: the dangers named one by one, and days counted from the coach's today."""

from datetime import date
from decimal import Decimal

import pytest

from core.coach.asks import AnswerTo, HoldFor, HowIs, NoteFor, PauseFor, PutUp, Remove, ReviewOn, SayTo, SwapFor, Whom, WhoMissed
from core.coach.hearing import hear
from core.units import Load, Unit
from tests.core.coach.messages import ASIDE, messages_in

NAMES = ("Ana", "Ben", "Cleo", "Joan", "Mia", "Sam", "Tom")
WEDNESDAY = date(2026, 11, 25)


@pytest.mark.parametrize(
    ("text", "ask"),
    [
        ("tell me about Mia", HowIs("Mia")),
        ("tell me who missed", WhoMissed()),
        ("don't message Ana", None),
        ("should I tell Ben to rest?", None),
        ("tell Ana that Ben can't come", SayTo("Ben can't come", Whom(("Ana",)))),
        ("tell Ana Ben can't come", None),
        ("tell Ana (and Ben) it is off", None),
        ("tell everyone but Ana: see you", SayTo("see you", Whom(("Ana",), everyone=True))),
        ("tell Ana not Ben it is off", None),
        ("tell Ana no Ben it is off", None),
        ("tell Ana/Ben it is off", None),
        ("tell Ana well done. Ben too", None),
        ("tell everyone exept ana hi", SayTo("hi", Whom(("ana",), everyone=True))),
        ("tell everyone bra ana hi", None),
        ("tell everyone else hi", None),
        ("tell all the new people hi", None),
        ("Ana not pause", None),
        ("is Ana on pause", None),
        ("tell everyone who missed: come back", None),
        ("tell Ana well done and tell Ben to rest", None),
        ("message Ana and the others: hi", None),
        ("remove everyone", None),
        ("remove Ana?", None),
        ("Ana's back hurts", None),
        ("keep Sam at 10 on the press", None),
        ("sub step ups for burpees for Joan", None),
        ("pause Ana until Monday or Tuesday", None),
    ],
)
def test_dangers(text: str, ask: object):
    """A question is better than a wrong word to somebody."""
    assert hear(text, NAMES, WEDNESDAY) == ask


@pytest.mark.parametrize(
    ("said", "day"),
    [
        ("today", date(2026, 11, 25)),
        ("tomorrow", date(2026, 11, 26)),
        ("Monday", date(2026, 11, 30)),
        ("wednesday", date(2026, 12, 2)),
        ("thurs", date(2026, 11, 26)),
        ("next week", date(2026, 11, 30)),
        ("next Friday", date(2026, 12, 4)),
        ("the 25th", date(2026, 11, 25)),
        ("the 24th", date(2026, 12, 24)),
        ("7 Dec", date(2026, 12, 7)),
        ("December 7th", date(2026, 12, 7)),
        ("14/12", date(2026, 12, 14)),
        ("2026-12-01", date(2026, 12, 1)),
        ("1 January 2027", date(2027, 1, 1)),
        ("next month", date(2026, 12, 1)),
    ],
)
def test_a_circuit_comes_on_from_a_day_counted_from_today(said: str, day: date):
    """A weekday is the next one after today, "next" the one of the week that comes; a date the next such date, today too."""
    assert hear(f"put Market day up for Ana from {said}", NAMES, WEDNESDAY) == PutUp("Market day", Whom(("Ana",)), day)


@pytest.mark.parametrize(
    "said", ["yesterday", "last Monday", "mondays", "3/12", "30 Feb", "1 October", "2026-11-24", "sometime", "monday or friday"]
)
def test_a_day_that_is_gone_or_in_doubt_is_none(said: str):
    """A date that could be two, is over, or lies more than 300 days ahead, is asked about."""
    assert hear(f"put Market day up for Ana from {said}", NAMES, WEDNESDAY) is None


@pytest.mark.parametrize(
    ("said", "until"),
    [
        ("till the 14th", date(2026, 12, 14)),
        ("until wednesday", date(2026, 12, 2)),
        ("through the 14th", date(2026, 12, 15)),
        ("until the end of the week", date(2026, 11, 30)),
        ("this week", date(2026, 11, 30)),
        ("for two weeks", date(2026, 12, 9)),
        ("for a fortnight", date(2026, 12, 9)),
        ("for 10 days", date(2026, 12, 5)),
        ("for a month", date(2026, 12, 25)),
        ("until the end of the month", date(2026, 12, 1)),
        ("until the end of december", date(2027, 1, 1)),
        ("until March", date(2027, 3, 1)),
        ("until the new year", date(2027, 1, 1)),
        ("", None),
    ],
)
def test_a_pause_ends_when_a_day_begins(said: str, until: date | None):
    """The day named is the first to train again; after "through" the day that follows."""
    assert hear(f"pause Ana {said}", NAMES, WEDNESDAY) == PauseFor(Whom(("Ana",)), until)


def test_a_month_ends_with_its_last_day():
    """A month from the 31st of January is the 28th of February."""
    assert hear("pause Ana for a month", NAMES, date(2027, 1, 31)) == PauseFor(Whom(("Ana",)), date(2027, 2, 28))


@pytest.mark.parametrize(
    ("said", "at"),
    [
        ("at 6pm", "18:00"),
        ("at 6.30 pm", "18:30"),
        ("at 18:00", "18:00"),
        ("at noon", "12:00"),
        ("at 12am", "00:00"),
        ("at 06:15", "06:15"),
        ("", None),
    ],
)
def test_a_time_of_day_is_read_where_it_can_only_be_one(said: str, at: str | None):
    """Morning or evening must be clear."""
    assert hear(f"send me the week on sundays {said}", NAMES, WEDNESDAY) == ReviewOn("sun", at)


@pytest.mark.parametrize("said", ["at 6", "at 6:30", "at 25:00", "at 6pm or 7pm", "at 13pm", "at 6:75pm"])
def test_a_time_in_doubt_is_asked_about(said: str):
    """Nothing is set for a time that could be two, or is none."""
    assert hear(f"send me the week on sundays {said}", NAMES, WEDNESDAY) is None


@pytest.mark.parametrize(
    "text",
    [
        "tell Mia   Well   DONE!!  💪\n\nSee you, Ben…",
        "tell Mia: “ok”, she said; u r gr8 (rly)",
        "tell Mia - it's 3/4 done & dusted?",
        "tell mia yor form is exelent",
    ],
)
def test_a_coachs_own_words_are_never_corrected(text: str):
    """Case, spaces, signs and slips stay."""
    heard = hear(text, NAMES, WEDNESDAY)
    assert isinstance(heard, SayTo)
    assert heard.text == text.split(maxsplit=2)[2].removeprefix("- ").strip()


@pytest.mark.parametrize(
    ("text", "names"),
    [
        ("tell Will he is doing well", ("Will", "Mia")),
        ("tell may she can start in june", ("May", "Mia")),
        ("tell Grace and Joy: hi", ("Grace", "Joy")),
        ("tell Mark: mark the day", ("Mark",)),
    ],
)
def test_names_that_are_words_are_names_where_somebody_is_called_so(text: str, names: tuple[str, ...]):
    """And words elsewhere."""
    heard = hear(text, names, WEDNESDAY)
    assert isinstance(heard, SayTo)
    assert all(name in text for name in heard.whom.names)


def test_a_typed_name_is_handed_on_as_typed():
    """Who is meant by it is settled against the roster, or asked about."""
    assert hear("pause jaon", NAMES, WEDNESDAY) == PauseFor(Whom(("jaon",)))
    assert hear("remove Toom", NAMES, WEDNESDAY) == Remove(Whom(("Toom",)))
    assert hear("answer Zoe: yes", NAMES, WEDNESDAY) == AnswerTo("yes", "Zoe")


def test_what_somebody_cannot_do_is_a_swap_only_where_it_is_an_exercise():
    """A Thursday is none."""
    assert isinstance(hear("Tom can't do burpees", NAMES, WEDNESDAY), SwapFor)
    assert hear("Tom can't do Thursdays", NAMES, WEDNESDAY) is None


def test_a_load_needs_its_unit_and_one_hand():
    """Two hands in one number, or a total, are asked about."""
    ten = Load(Decimal(10), Unit.KG)
    assert hear("keep Sam at 10kg", NAMES, WEDNESDAY) == HoldFor(None, ten, Whom(("Sam",)))
    assert hear("keep Sam at 10 kg per hand", NAMES, WEDNESDAY) == HoldFor(None, ten, Whom(("Sam",)))
    assert hear("keep Sam at 2x10kg", NAMES, WEDNESDAY) is None
    assert hear("keep Sam at 10kg total", NAMES, WEDNESDAY) is None


def test_an_unknown_roster_never_changes_who_is_meant():
    """With nobody on the roster, what is heard is for the same names or the first words of them, or it is nothing."""
    for message in messages_in(ASIDE):
        heard = hear(message.text, (), message.today)
        meant = [name.lower() for name in getattr(message.ask, "whom", Whom()).names]
        if meant and isinstance(heard, SayTo | NoteFor | PauseFor | Remove | SwapFor | HoldFor | PutUp):
            assert [name for name in heard.whom.names if not any(one.startswith(name.lower()) for one in meant)] == [], message
