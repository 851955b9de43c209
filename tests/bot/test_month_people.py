"""The invented people of the month: what they read off a card, what they can do, and that their texts are read as meant."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

import pytest

from bot.bootstrap import demo_text
from bot.errors import FixtureBroken
from bot.month.cast import FILE, read_month
from bot.month.lifter import Bodies, Lifter
from bot.month.player import luck_of
from bot.month.voice import Seen, hold_said, in_words, read_card, set_said
from bot.wording import worded
from core.circuit import Side
from core.messages import Card, PutDown
from core.reading import read
from core.reading.acts import Awaiting, Context, Log
from core.tempo import Tempo
from core.units import Load, Unit

MONTH = read_month(demo_text(FILE))
ROW = Card(
    round=2,
    rounds=3,
    station=3,
    stations=4,
    exercise="Bent-over row",
    hold=False,
    sides=False,
    load=Load(Decimal("12.5"), Unit.KG),
    loads_held=2,
    why=None,
    tempo=Tempo(2, 0, 1, 1),
    work_s=45,
    target_reps=None,
    reps_low=9,
    reps_high=11,
    form=("Back flat",),
    set_up="A weight in each hand.",
    put_down=PutDown(Load(Decimal(20), Unit.KG), 1),
    starts_in_s=30,
    slug="bent-over-row",
)
MIDDLING = Bodies({"bent-over-row": 24.0}, {"usual": 20.0}, {"usual": 60.0})
KG = Context(unit=Unit.KG, awaiting=Awaiting.REPS)


@pytest.mark.parametrize(
    ("card", "seen"),
    [
        (ROW, Seen("bent-over-row", 2, "12.5", "kg", 4.0, 11, None)),
        (replace(ROW, load=Load(Decimal(25), Unit.LB), reps_low=11), Seen("bent-over-row", 2, "25", "lb", 4.0, 11, None)),
        (replace(ROW, load=None, put_down=None, sides=True), Seen("bent-over-row", 2, None, None, 4.0, 11, None)),
        (replace(ROW, load=None, hold=True, tempo=None, work_s=90), Seen("bent-over-row", 2, None, None, 4.0, None, 90)),
        (
            replace(ROW, work_s=None, target_reps=10, reps_low=None, reps_high=None),
            Seen("bent-over-row", 2, "12.5", "kg", 4.0, 10, None),
        ),
    ],
    ids=["two weights", "pounds", "no load, each side", "a hold", "counted reps"],
)
def test_a_card_is_read_as_it_is_worded(card, seen):
    """The load in the hands now, not the one put down; the tempo; the reps that fit; the seconds of a hold."""
    assert read_card(card.slug, worded(card).text) == seen


@pytest.mark.parametrize("voice", MONTH.voices)
def test_what_a_voice_says_is_read_as_meant(voice):
    """Every form of every voice, with a load and without, on one side and on each: one set, as it was meant."""
    forms, context = MONTH.voices[voice], KG if voice != "pounds" else replace(KG, unit=Unit.LB)
    heavy = Seen("bent-over-row", 1, "12", str(context.unit), 4.0, 11, None)
    for reps in (3, 7, 11, 21):
        for card, said in [*((heavy, form) for form in forms.loaded), *((replace(heavy, load=None), form) for form in forms.bare)]:
            for sides in (False, True):
                text = set_said(replace(forms, loaded=(said,), bare=(said,)), card, reps, 2, luck_of("Ana"), sides=sides)
                acts = read(text, replace(context, sides=sides))
                assert [type(act) for act in acts] == [Log], (text, acts)
                assert acts[0].reps == reps, text
                assert acts[0].load in {None, Decimal(12)}, text
                assert acts[0].side in {None, Side.EACH}, text
    for said in forms.held:
        (act,) = read(hold_said(replace(forms, held=(said,)), 40, luck_of("Ana")), replace(context, hold=True))
        assert isinstance(act, Log), said
        assert act.seconds == 40, said


def test_half_of_the_heaviest_load_goes_thirty_times():
    """At the usual tempo, fresh, within a set's luck (the plain equation with the factor 30: `core.strength.curve`)."""
    reps = Lifter(MIDDLING, 1.0, 0.0).reps("bent-over-row", 12.0, 4.0, 0.0, 0, luck_of("Ana"))
    assert reps == pytest.approx(30.0, rel=0.1)


def test_strength_that_falls_gives_fewer_repetitions():
    """And heavier loads, slower reps and later rounds do, too."""
    falling = Lifter(MIDDLING, 1.0, -0.05)

    def reps(load_kg: float = 12.0, rep_s: float = 4.0, weeks: float = 0.0, rounds: int = 0) -> float:
        return falling.reps("bent-over-row", load_kg, rep_s, weeks, rounds, luck_of("Ben"))

    fresh = reps()
    assert all(less < fresh for less in (reps(load_kg=14.0), reps(rep_s=6.0), reps(weeks=4.0), reps(rounds=2)))
    assert reps(load_kg=30.0) == 0.0


@pytest.mark.parametrize(("number", "words"), [(1, "one"), (13, "thirteen"), (20, "twenty"), (42, "forty-two")])
def test_numbers_are_spelled(number, words):
    """As people write them."""
    assert in_words(number) == words


@pytest.mark.parametrize(
    ("was", "is_now", "where"),
    [("age = 33", 'age = "young"', r"people\.0\.age"), ("age = 33", "age = 33\nheight = 170", r"people\.0\.height")],
)
def test_a_month_that_was_changed_says_where(was, is_now, where):
    """A value that cannot be, and a key that nobody knows, are named in one line."""
    with pytest.raises(FixtureBroken, match=where):
        read_month(demo_text(FILE).replace(was, is_now))
