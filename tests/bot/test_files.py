"""A trainee's records as files: read back by programs that are not ours, and as the `records` command prints them."""

import csv
import io
import json
from dataclasses import fields, replace
from datetime import date, timedelta
from decimal import Decimal
from types import SimpleNamespace

import pandas as pd
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bot import records
from bot.bootstrap import rendered
from bot.channels.script import Transcript
from bot.channels.terminal import Terminal
from bot.files import file_of
from bot.files.records import COLUMNS, FORMULA
from bot.pictures.gallery import Gallery
from bot.ports import Letter, Rendered
from bot.store.values import rendered_columns, rendered_of
from core.circuit import Side
from core.diary import (
    CoachWord,
    Ending,
    History,
    PainRecord,
    Question,
    SetRecord,
    SetUndone,
    Unasked,
    UnaskedKind,
    WordKind,
    WorkoutRecord,
)
from core.health import AgeBand, Condition, Health, Injury, NoteKind, Quality, SafetyNote
from core.own_messages import RecordsHere
from core.rack import Kind, Rack, RackItem
from core.records_file import Form, RecordsFile
from core.recurrence import Extra, Recurrence, Rule
from core.trainee import Block, Coming, Pause, Trainee
from core.units import Load, Unit
from core.wishes import CardNote, Wishes
from tests.bot.given import CIRCUIT, T0, Phone, after, always, kg, noted, opened

JOSE = Trainee(
    '=José, "the" Núñez',
    zone="Europe/Madrid",
    rack=Rack((RackItem(Kind.DUMBBELL, kg("17.5"), 2),)),
    cautions_accepted_at=T0,
    reminders=Recurrence((Rule(date(2026, 3, 2), "06:30", days=("mon", "thu")),), (), (Extra(date(2026, 3, 6), "18:00"),)),
    reminders_since=T0,
    health=Health(
        open=(),
        age=AgeBand.MIDDLE,
        pregnant=False,
        conditions=(Condition.HEART,),
        symptoms=(),
        injuries=(Injury("knee", Side.LEFT),),
        active=True,
        share=True,
    ),
    block=Block((CIRCUIT,), ("mon",), 4, (4,), date(2026, 3, 2)),
    wishes=Wishes(notes=(CardNote("goblet-squat", "Elbows in, you know why"),)),
    coming=Coming(CIRCUIT, date(2026, 3, 9)),
    pause=Pause(T0, date(2026, 3, 5)),
)
SETS = (
    replace(noted(1).record, voided=True),
    noted(2, reps=12, replaces=1, reserve=Decimal("1.5")).record,
    noted(3, station=2, exercise="side-plank", side=Side.LEFT, reps=None, load=None, seconds=40, rpe=Decimal(8)).record,
    noted(4, load=Load(Decimal("17.50"), Unit.LB), circuit="+ Küche @ home").record,
)
DIARY = History(
    SETS,
    (WorkoutRecord(1, CIRCUIT.name, T0, after(900), Ending.EARLY, 240, Decimal("6.5"), 30),),
    (PainRecord(after(60), "knee", Side.LEFT, urgent=False, exercise="goblet-squat", quality=Quality.DULL, known=True),),
    (Unasked(UnaskedKind.REMINDER, date(2026, 3, 2), T0, T0),),
    (SafetyNote(T0, NoteKind.OUTCOME, "go"),),
    (CoachWord(1, T0, WordKind.MESSAGE, "Well done!"),),
    (Question(1, T0, "Elbows in or out?", CIRCUIT.name, 1, 2, "goblet-squat"),),
)


def file(form, trainee=JOSE, diary=DIARY):
    """The bytes of a records file."""
    return file_of(RecordsFile(form, T0, trainee, CIRCUIT.name, diary))[1]


def read_csv(content):
    """A table as the standard library reads it, a dictionary a line."""
    return list(csv.DictReader(io.StringIO(content.decode("utf-8-sig"), newline="")))


# The table


def test_the_table_is_read_by_a_program_that_is_not_ours():
    """Pandas finds the columns, the numbers as numbers, and nothing where nothing was said."""
    table = pd.read_csv(io.BytesIO(file(Form.CSV)))
    assert list(table.columns) == list(COLUMNS)
    assert table.reps.sum() == 11 + 12 + 11
    assert list(table.load.dropna()) == [20, 20, 17.5]
    assert list(table.seconds.dropna()) == [40]
    assert list(table.voided) == [True, False, False, False]
    assert table.reserve[1] == 1.5
    assert table.side[2] == "left"
    assert pd.to_datetime(table["at"])[0] == after(1)
    assert table.trainee[0] == f"'{JOSE.name}"


def test_the_table_is_as_its_standard_says():
    """RFC 4180 (from memory): CRLF, a header, as many fields in each line; a byte order mark before it, for spreadsheets."""
    content = file(Form.CSV)
    assert content.startswith(b"\xef\xbb\xbftrainee,at,circuit,")
    lines = content.decode("utf-8-sig").split("\r\n")
    assert lines[-1] == ""
    assert len(lines) == 1 + len(SETS) + 1
    assert not any("\n" in line or "\r" in line for line in lines)
    assert {len(row) for row in csv.reader(lines[:-1])} == {len(COLUMNS)}


@pytest.mark.parametrize("begins", FORMULA)
def test_no_text_is_a_formula(begins):
    """What a spreadsheet would work out has an apostrophe before it (the usual guard against it; from memory)."""
    row = read_csv(file(Form.CSV, replace(JOSE, name=f"{begins}1+1")))[0]
    assert row["trainee"] == f"'{begins}1+1"


def test_a_number_has_no_apostrophe():
    """Only texts are guarded."""
    assert [row["load"] for row in read_csv(file(Form.CSV))] == ["20", "20", "", "17.5"]


def test_nobody_with_no_sets_still_gets_a_header():
    """An empty table is a table."""
    assert read_csv(file(Form.CSV, diary=History())) == []
    assert list(pd.read_csv(io.BytesIO(file(Form.CSV, diary=History()))).columns) == list(COLUMNS)


TEXTS = st.text(st.characters(codec="utf-8", exclude_characters="\0"), min_size=1, max_size=20)
RECORDS = st.builds(
    SetRecord,
    number=st.integers(1, 99),
    workout=st.just(1),
    at=st.integers(0, 10**6).map(lambda seconds: T0 + timedelta(seconds=seconds)),
    circuit=TEXTS,
    round=st.integers(1, 9),
    station=st.integers(1, 9),
    exercise=st.sampled_from(["goblet-squat", "plank"]),
    side=st.none() | st.sampled_from(list(Side)),
    reps=st.none() | st.integers(0, 99),
    load=st.none() | st.sampled_from([kg("20"), Load(Decimal("17.50"), Unit.LB)]),
    reserve=st.none() | st.sampled_from([Decimal(2), Decimal("1.5")]),
    rpe=st.none(),
    seconds=st.none() | st.integers(0, 99),
    voided=st.booleans(),
)


@settings(max_examples=60, derandomize=True, deadline=None)
@given(name=TEXTS, sets=st.lists(RECORDS, max_size=5).map(tuple))
def test_whatever_is_in_a_text_comes_back_and_begins_no_formula(name, sets):
    """Quotes, commas, line ends, other scripts: both files hold what was there."""
    table = read_csv(file(Form.CSV, Trainee(name), History(sets)))
    whole = json.loads(file(Form.JSON, Trainee(name), History(sets)))
    for row, record, told in zip(table, sets, whole["sets"], strict=True):
        for was, cell in ((name, row["trainee"]), (record.circuit, row["circuit"])):
            assert cell in (was, f"'{was}")
            assert not cell.startswith(FORMULA)
        assert (told["trainee"], told["circuit"]) == (name, record.circuit)
        assert row["reps"] == ("" if record.reps is None else str(record.reps))
        assert row["voided"] == str(record.voided).lower()


# Everything


def test_everything_that_is_kept_is_in_the_other_file():
    """Each field of a trainee and of a diary by its name, so that what is added to them later is in it too."""
    whole = json.loads(file(Form.JSON))
    assert (whole["format"], whole["version"], whole["exported_at"]) == ("stationcall records", 1, T0.isoformat())
    assert set(whole["trainee"]) == {field.name for field in fields(Trainee)}
    assert {field.name for field in fields(History)} <= set(whole)
    for record, told in zip(SETS, whole["sets"], strict=True):
        assert {field.name for field in fields(record)} | {"trainee", "unit"} == set(told)
    assert whole["circuit"] == CIRCUIT.name


def test_it_says_what_was_said():
    """A look at each part."""
    whole = json.loads(file(Form.JSON))
    trainee = whole["trainee"]
    assert trainee["name"] == JOSE.name
    assert trainee["rack"]["items"] == [{"kind": "dumbbell", "load": {"amount": 17.5, "unit": "kg"}, "count": 2}]
    assert (trainee["health"]["age"], trainee["health"]["conditions"]) == ("40-64", ["heart"])
    assert trainee["health"]["injuries"] == [{"place": "knee", "side": "left"}]
    assert trainee["reminders"]["rules"][0]["days"] == ["mon", "thu"]
    assert trainee["block"]["circuits"][0]["name"] == CIRCUIT.name
    assert [one["number"] for one in whole["sets"]] == [1, 2, 3, 4]
    assert [one["voided"] for one in whole["sets"]] == [True, False, False, False]
    assert whole["workouts"][0]["ending"] == "early"
    assert (whole["pains"][0]["place"], whole["pains"][0]["quality"]) == ("knee", "dull")
    assert whole["notes"][0]["kind"] == "outcome"
    assert whole["questions"][0]["text"] == "Elbows in or out?"
    assert whole["words"][0]["text"] == "Well done!"
    assert whole["unasked"][0]["kind"] == "reminder"


async def test_both_say_what_the_records_command_says(store, ana):
    """The same fields with the same values, for a diary as it is stored."""
    await store.handle(ana, None, always(opened(), noted(1), noted(2, reps=12, replaces=1), noted(3, reps=9)), after(9))
    await store.handle(ana, None, always(SetUndone(3, after(10))), after(10))
    out = io.StringIO()
    await records.run(store, "Ana", as_json=True, out=out)
    printed = [json.loads(line) for line in out.getvalue().splitlines()]
    diary = await store.diary(ana)
    told = json.loads(file(Form.JSON, Trainee("Ana"), diary))["sets"]
    assert [{name: one[name] for name in COLUMNS} for one in told] == printed
    table = pd.read_csv(io.BytesIO(file(Form.CSV, Trainee("Ana"), diary))).astype(object)
    assert table.where(table.notna(), None).to_dict("records") == printed


# On the way


def sent_by(form):
    """A message with a file, as a row gives it back."""
    return rendered(RecordsHere(RecordsFile(form, T0, JOSE, CIRCUIT.name, DIARY)))


@pytest.mark.parametrize("form", list(Form))
async def test_a_document_waits_in_its_row_and_goes_out_as_a_file(tmp_path, form):
    """From the row's JSON to the file in the trainee's own folder, readable by its owner alone; a later one takes its place."""
    words = rendered_of(SimpleNamespace(id=1, **rendered_columns(sent_by(form))))
    assert words.shows == RecordsFile(form, T0, JOSE, CIRCUIT.name, DIARY)
    phone, sent = Phone(), []

    async def send(_, letter):
        sent.append(letter.rendered.document)

    phone.send = send
    for _ in range(2):
        await Gallery(phone, tmp_path).send(7, Letter(1, words))
    assert sent[0] == sent[1] == tmp_path / "files" / "7" / f"records-2026-03-02.{form.value}"
    assert sent[0].read_bytes() == file(form)
    assert sent[0].stat().st_mode & 0o077 == 0
    assert [found.name for found in sent[0].parent.iterdir()] == [sent[0].name]


async def test_the_words_go_when_the_file_cannot_be_written(tmp_path, caplog):
    """The log tells the message by its number, and nobody by name."""
    (tmp_path / "files").write_text("in the way")
    phone = Phone()
    await Gallery(phone, tmp_path).send(7, Letter(31, sent_by(Form.CSV)))
    assert phone.heard == [(7, "Your sets as a table, for any\nspreadsheet.")]
    assert "message 31" in caplog.text
    assert "José" not in caplog.text


async def test_the_terminal_and_a_script_tell_where_the_file_is(tmp_path, capsys, clock):
    """As they do of a picture."""
    there = tmp_path / "files" / "7" / "records.csv"
    letter = Letter(1, Rendered("Yours.", (), "RecordsHere", document=there))
    await Terminal(7).send(7, letter)
    assert capsys.readouterr().out == f"▸ Yours.\n  As a file:\n  {there}\n"
    out = io.StringIO()
    await Transcript(clock, out, tmp_path).send(7, letter)
    assert out.getvalue().split("\n")[1:3] == ["             As a file:", "             files/7/records.csv"]
