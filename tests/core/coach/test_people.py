"""Who is meant by a name as typed: found only without a doubt, else asked about."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from rapidfuzz.distance import OSA

from core.coach.people import Found, Near, Nobody, Several, called, find, name_words

ROSTER = (
    "Mia Berg",
    "Mia Chen",
    "Anne-Marie Dubois",
    "Seán O'Dea",
    "José Ruiz",
    "Ольга Петрова",
    "静香",
    "Ana",
    "Anna",
    "Tom",
    "Tim",
    "Priya Nair",
)


@pytest.mark.parametrize(
    ("typed", "name"),
    [
        ("Mia Berg", "Mia Berg"),
        ("mia berg", "Mia Berg"),
        ("berg", "Mia Berg"),
        ("Mia B", "Mia Berg"),
        ("mia ch.", "Mia Chen"),
        ("anne marie", "Anne-Marie Dubois"),
        ("Anne-Marie", "Anne-Marie Dubois"),
        ("sean o’dea", "Seán O'Dea"),
        ("Sean ODea's", "Seán O'Dea"),
        ("jose", "José Ruiz"),
        ("ОЛЬГА", "Ольга Петрова"),
        ("静香", "静香"),
        ("ana", "Ana"),
        ("Anna's", "Anna"),
        ("  Priya  Nair ", "Priya Nair"),
    ],
)
def test_a_name_or_a_whole_part_of_it_finds_who_alone_bears_it(typed: str, name: str):
    """Capitals, accents, apostrophes, hyphens and a possessive make no difference."""
    assert find(typed, ROSTER) == Found(name)


@pytest.mark.parametrize(
    ("typed", "names"),
    [("Mia", ("Mia Berg", "Mia Chen")), ("Tam", ("Tom", "Tim")), ("mai", ("Mia Berg", "Mia Chen"))],
)
def test_several_who_match_as_well_are_all_named(typed: str, names: tuple[str, ...]):
    """A first name that two share, and a slip that two explain as well."""
    assert find(typed, ROSTER) == Several(names)


@pytest.mark.parametrize(
    ("typed", "name"),
    [
        ("Pirya", "Priya Nair"),
        ("Jos", "José Ruiz"),
        ("priya nayr", "Priya Nair"),
        ("Olga", None),
        ("Mia Breg", "Mia Berg"),
        ("Dubios", "Anne-Marie Dubois"),
    ],
)
def test_a_slip_or_a_beginning_is_only_near(typed: str, name: str | None):
    """Somebody else may be called just so."""
    assert find(typed, ROSTER) == (Nobody() if name is None else Near(name))


@pytest.mark.parametrize("typed", ["", " ", "'", "-", "x", "Zebedee", "Bo", "💪", "a" * 5000, "Mia Berg Mia Chen"])
def test_nobody_is_called_so(typed: str):
    """Nothing near enough, or no name at all."""
    assert find(typed, ROSTER) == Nobody()


def test_who_is_called_exactly_so_comes_before_who_bears_it_as_a_part():
    """Else nobody could ever be meant whose name is a part of another."""
    assert find("mia", ("Mia", "Mia Berg")) == Found("Mia")


def test_two_of_one_name_are_told_apart_by_how_they_are_written_or_not_at_all():
    """José and Jose: as typed to the letter, else both."""
    assert find("Jose", ("José", "Jose")) == Found("Jose")
    assert find("jose", ("José", "Jose")) == Several(("José", "Jose"))
    assert find("Mia", ("Mia", "Mia")) == Several(("Mia", "Mia"))


names = st.text(alphabet="abimnot Äé'-", min_size=1, max_size=12).filter(lambda name: bool(name_words(name)))


@given(typed=names, roster=st.lists(names, min_size=1, max_size=6, unique=True))
def test_nobody_is_found_by_a_slip(typed: str, roster: list[str]):
    """Who is found bears every word typed, as a whole word or, past the first, as its beginning: no letter is ever changed."""
    found = find(typed, tuple(roster))
    if isinstance(found, Found):
        said, bears = " ".join(name_words(typed)), " ".join(name_words(found.name))
        assert said in bears or said.replace(" ", "") in bears.replace(" ", "")
        assert OSA.distance(said.split()[0], min(bears.split(), key=lambda word: OSA.distance(said.split()[0], word))) == 0 or (
            said == bears.replace(" ", "")
        )


@given(typed=st.text(max_size=4096), roster=st.lists(st.text(max_size=64), max_size=5))
def test_any_text_may_be_asked_about(typed: str, roster: list[str]):
    """Nothing that can be typed breaks it, and only names of the roster come back."""
    match find(typed, tuple(roster)):
        case Found(name) | Near(name):
            assert name in roster
        case Several(several):
            assert set(several) <= set(roster)
            assert len(several) > 1
        case Nobody():
            assert called(typed, tuple(roster)) == ()
