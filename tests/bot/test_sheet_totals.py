"""What the sheet says is what an independent calculation (pandas) makes of the records as they are given out."""

from __future__ import annotations

import asyncio
import io
import json
from datetime import date, timedelta

import pandas as pd
import pytest

from bot import records
from core.body_effect import MAJOR_GROUPS
from core.catalogue import all_exercises, exercise
from core.review.telling import sheet_of
from core.units import Unit
from tests.reviewing import EVENING, month

KG_PER_LB = 0.45359237  # NIST Special Publication 811, Appendix B.8
ENDS = EVENING + timedelta(hours=12)
SUNDAY = date(2026, 3, 29)


class Shelf:
    """Stands for the store: gives the records of these diaries."""

    def __init__(self, books):
        self._books = books

    async def records(self, _):
        """Every record with its trainee's name."""
        return [(book.trainee.name, record) for book in self._books for record in book.history.sets]


@pytest.fixture(scope="module")
def books():
    """A month of twelve people: corrections, undone sets, sides told apart and not, pounds, three zones."""
    made = month(12)
    sets = [record for book in made for record in book.history.sets]
    assert any(record.replaces for record in sets)
    assert any(record.voided and not any(other.replaces == record.number for other in sets) for record in sets)
    assert {record.side and record.side.value for record in sets} == {None, "left", "right", "each"}
    assert {record.load.unit for record in sets} == set(Unit)
    return made


@pytest.fixture(scope="module")
def frame(books):
    """The exported lines as a table, one row a set: a station once in a round, both sides together, the weaker one's reps."""
    out = io.StringIO()
    asyncio.run(records.run(Shelf(books), None, as_json=True, out=out))
    lines = pd.DataFrame([json.loads(line) for line in out.getvalue().splitlines()])
    lines = lines[~lines["voided"]]
    zones = {book.trainee.name: book.trainee.zone for book in books}
    lines["day"] = [pd.Timestamp(at).tz_convert(zones[name]).date() for at, name in zip(lines["at"], lines["trainee"], strict=True)]
    lines["kg"] = lines["load"].where(lines["unit"] == "kg", lines["load"] * KG_PER_LB)
    sets = lines.groupby(["trainee", "day", "round", "station", "exercise"], sort=False)
    return sets.agg(reps=("reps", "min"), kg=("kg", "max")).reset_index()


def sheet(books, week):
    """Everyone's week, by name."""
    told = sheet_of([book.person for book in books], week, "Europe/Lisbon", EVENING)
    return told.document.monday, {person.name: person for person in told.document.people}


def of_week(frame, monday):
    """The sets of a calendar week."""
    return frame[(frame["day"] >= monday) & (frame["day"] < monday + timedelta(days=7))]


WEEKS = pytest.mark.parametrize("week", ["this", "last"])


@WEEKS
def test_sets_and_days_are_the_same(books, frame, week):
    """Of each person, in each of two weeks."""
    monday, people = sheet(books, week)
    own = of_week(frame, monday)
    counted = own.groupby("trainee").agg(sets=("exercise", "size"), days=("day", "nunique"))
    assert len(people) == len(books)
    for name, person in people.items():
        sets, days = counted.loc[name] if name in counted.index else (0, 0)
        assert (person.sets, person.trained) == (sets, days)


@WEEKS
def test_sets_and_loads_of_each_exercise_are_the_same(books, frame, week):
    """Sets, the heaviest load, the reps with it in order, and the heaviest load of the last day before."""
    monday, people = sheet(books, week)
    slugs = {one.name: one.slug for one in all_exercises().values()}
    checked = 0
    for name, person in people.items():
        mine = frame[frame["trainee"] == name]
        assert {slugs[load.exercise] for load in person.loads} == set(of_week(mine, monday)["exercise"])
        for load in person.loads:
            own = mine[mine["exercise"] == slugs[load.exercise]]
            now, earlier = of_week(own, monday), own[own["day"] < monday]
            assert load.sets == len(now)
            assert float(load.top.kg) == pytest.approx(now["kg"].max())
            assert list(load.reps) == now[now["kg"] == now["kg"].max()]["reps"].tolist()
            before = earlier[earlier["day"] == earlier["day"].max()]["kg"].max()
            assert (load.before is None) == pd.isna(before)
            assert load.before is None or float(load.before.kg) == pytest.approx(before)
            checked += 1
    assert checked > 40


@WEEKS
def test_sets_of_each_muscle_group_are_the_same(books, frame, week):
    """A main muscle counts one, a helping one a half; a group counts with its most trained muscle, and days of main work."""
    monday, people = sheet(books, week)
    parts = pd.DataFrame(
        [(slug, muscle, 1.0) for slug in set(frame["exercise"]) for muscle in exercise(slug).main]
        + [(slug, muscle, 0.5) for slug in set(frame["exercise"]) for muscle in exercise(slug).helping],
        columns=["exercise", "muscle", "share"],
    )
    parts["group"] = parts["muscle"].map({muscle: group for group, muscles in MAJOR_GROUPS.items() for muscle in muscles})
    worked = of_week(frame, monday).merge(parts, on="exercise")
    sets = worked.groupby(["trainee", "group", "muscle"])["share"].sum().groupby(["trainee", "group"]).max()
    days = worked[worked["share"] == 1].groupby(["trainee", "group"])["day"].nunique()
    for name, person in people.items():
        assert {group.group for group in person.groups} == set(MAJOR_GROUPS)
        for group in person.groups:
            assert float(group.sets) == sets.get((name, group.group), 0)
            assert group.days == days.get((name, group.group), 0)


@WEEKS
def test_the_curves_are_the_heaviest_load_of_each_day(books, frame, week):
    """Over six weeks up to the week's end, in the trainee's own unit."""
    monday, people = sheet(books, week)
    slugs = {one.name: one.slug for one in all_exercises().values()}
    for name, person in people.items():
        for curve in person.curves:
            own = frame[(frame["trainee"] == name) & (frame["exercise"] == slugs[curve.exercise]) & (frame["kg"] > 0)]
            heaviest = own[own["day"] < monday + timedelta(days=7)].groupby("day")["kg"].max()
            assert [day for day, _ in curve.points] == list(heaviest.index)
            in_kg = [float(amount) * (KG_PER_LB if curve.unit is Unit.LB else 1) for _, amount in curve.points]
            assert in_kg == pytest.approx(heaviest.tolist())
