"""The `records` command: what it prints, to the letter."""

import io
from decimal import Decimal
from pathlib import Path

import pytest

from bot import records
from bot.errors import TraineeUnknown
from core.diary import SetUndone
from core.reading.acts import Side
from core.trainee import Trainee
from core.units import Load, Unit
from tests.bot.given import after, always, kg, noted, opened

PRINTED = Path(__file__).parents[2] / "fixtures" / "records"
JSON = (PRINTED / "printed.jsonl").read_text(encoding="utf-8")
PLAIN = (PRINTED / "printed.txt").read_text(encoding="utf-8")


@pytest.fixture
async def printed(store, ana):
    """What the command prints after a corrected, an undone and another trainee's set."""
    bea = await store.add_trainee(Trainee("Béa"), 1)
    reserve = Decimal("1.5")
    pounds = Load(Decimal("17.50"), Unit.LB)
    corrected = (opened(), noted(1, reserve=reserve), noted(2, reps=12, reserve=reserve, replaces=1))
    await store.handle(ana, None, always(*corrected, noted(3, at=after(9), station=2, reps=9, load=pounds)), after(9))
    await store.handle(ana, None, always(SetUndone(3, after(10))), after(10))
    hold = {"round": 2, "station": 2, "exercise": "side-plank", "side": Side.LEFT, "reps": None, "load": None}
    await store.handle(bea, None, always(opened(), noted(1, at=after(3), seconds=40, rpe=Decimal("8.0"), **hold)), after(3))

    async def run(name=None, *, as_json):
        out = io.StringIO()
        await records.run(store, name, as_json=as_json, out=out)
        return out.getvalue()

    return run


async def test_the_records_as_json(printed):
    """One object a line, newest last, every field always there; undone and replaced sets are listed and marked."""
    assert await printed(as_json=True) == JSON


async def test_the_records_in_plain_lines(printed):
    """One short line each, with only what was said."""
    assert await printed(as_json=False) == PLAIN


async def test_the_records_of_one_trainee(printed):
    """Nobody else's."""
    assert await printed("Béa", as_json=True) == JSON.splitlines(keepends=True)[2]


async def test_a_trainee_without_records_is_not_an_error(store, ana):  # noqa: ARG001 - Ana must be there
    """There is just nothing to list."""
    out = io.StringIO()
    await records.run(store, "Ana", as_json=True, out=out)
    assert out.getvalue() == ""


async def test_an_unknown_trainee_is_one(printed):
    """A misspelt name must not look like an empty diary."""
    with pytest.raises(TraineeUnknown):
        await printed("Anna", as_json=True)


async def test_bodyweight_is_a_load_of_nothing(store, ana):
    """0, and not left out: it was said or known."""
    await store.handle(ana, None, always(opened(), noted(1, load=kg("0"))), after(1))
    out = io.StringIO()
    await records.run(store, "Ana", as_json=True, out=out)
    assert '"load": 0, "unit": "kg"' in out.getvalue()
