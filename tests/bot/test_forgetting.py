"""Having everything erased: no row, no text, no file and no byte of it is left, but a count."""

import io
import json
import os
import signal
import sqlite3
import subprocess
import sys
from contextlib import closing
from pathlib import Path

import pytest

from bot.__main__ import main
from bot.assistant import on_duty
from bot.bootstrap import rendered
from bot.errors import Gone, Unreachable
from bot.pictures.gallery import Gallery
from bot.simulation import Simulation
from bot.store.revision import NEWEST
from bot.store.store import InboxKey, Store
from bot.store.tables import Row
from bot.store.values import coach_state_text
from core.coach.desk import Assigned
from core.coach.states import Quiet, WayBack
from core.diary import Forgotten
from core.own_messages import ForgottenNow
from core.session.events import Say
from core.session.states import New
from core.trainee import Trainee
from tests.bot.given import CIRCUIT, T0, Phone, after, always, rows, tamper

ROOT = Path(__file__).parents[2]
DUMP = ROOT / "fixtures" / "databases" / f"{NEWEST}.sql"
ANA, BEA, WREN = 1, 2, 3  # in the dump: Bea has a coach's account, Coach Wren coaches
ADDRESS = "701"
OF_COACHES = {("coach", "person_id"), ("invite", "invited_by")}  # a coach is never erased by a word
BARE = {("trainee", "id"), ("account", "trainee_id"), ("outbox", "trainee_id")}  # what stays until the goodbye is out
FORGETS = always(Forgotten(T0), state=New(), messages=(Say(ForgottenNow()),))


def points_at_a_trainee(column):
    """Whether a column holds a trainee's id, by the tables it refers to or by its name."""
    if (column.table.name, column.name) == ("trainee", "id") or column.name == "trainee_id":
        return True
    return any(points_at_a_trainee(key.column) for key in column.foreign_keys)


POINTERS = sorted(
    (table.name, column.name)
    for table in Row.metadata.tables.values()
    for column in table.columns
    if points_at_a_trainee(column) and (table.name, column.name) not in OF_COACHES
)


@pytest.fixture
def released(tmp_path):
    """The database of the newest dump, which has a row in every table."""
    file = tmp_path / "stationcall.sqlite3"
    with closing(sqlite3.connect(file)) as connection:
        connection.executescript(DUMP.read_text(encoding="utf-8"))
    return file


@pytest.fixture
async def full(released):
    """The store over it."""
    store = await Store.open(f"sqlite:///{released}", rendered)
    yield store
    await store.close()


def held(file, trainee_id):
    """The columns in which a trainee's id stands."""
    with closing(sqlite3.connect(file)) as connection:
        return {
            (table, column)
            for table, column in POINTERS
            if connection.execute(f"SELECT 1 FROM {table} WHERE {column} = ?", (trainee_id,)).fetchone()  # noqa: S608 - our own names
        }


def texts(file):
    """Every text in every table, as SQLite has them."""
    with closing(sqlite3.connect(file)) as connection:
        names = [name for (name,) in connection.execute("SELECT name FROM sqlite_master WHERE type = 'table'")]
        cells = [cell for name in names for row in connection.execute(f"SELECT * FROM {name}") for cell in row]  # noqa: S608
    return "\n".join(cell for cell in cells if isinstance(cell, str))


def put(file, table, **columns):
    """Add a row past the store."""
    names, marks = ", ".join(columns), ", ".join("?" * len(columns))
    with closing(sqlite3.connect(file)) as connection, connection:
        connection.execute(f"INSERT INTO {table} ({names}) VALUES ({marks})", tuple(columns.values()))  # noqa: S608 - our own names


def message(file, text, status):
    """Put a message into Coach Wren's outbox."""
    at = "2026-03-02 06:00:00"
    put(file, "outbox", trainee_id=WREN, created_at=at, kind="words", text=text, replies="[]", status=status)


def in_folder(folder, word):
    """The files of a folder that hold a word, in their names or in their bytes."""
    return [
        file.relative_to(folder).as_posix()
        for file in folder.rglob("*")
        if word in file.name or (file.is_file() and word.encode() in file.read_bytes())
    ]


# Every row


def test_the_dump_has_something_of_a_trainees_in_every_table_that_can_hold_it(released):
    """Whoever adds a table with a trainee in it gives the dump a row of Ana's, and erases it (`bot/store/forgetting.py`)."""
    assert held(released, ANA) == set(POINTERS)


async def test_no_row_is_left_but_the_bare_one_until_the_goodbye_is_out(full, released):
    """Every table that refers to a trainee, by whatever way, is empty of them; then the rest of it too."""
    others = held(released, BEA)
    await full.handle(ANA, InboxKey("terminal", "2"), FORGETS, T0)
    assert held(released, ANA) == BARE
    assert [row["kind"] for row in rows(released, "outbox") if row["trainee_id"] == ANA] == ["ForgottenNow"]
    await full.bury(ANA)
    assert held(released, ANA) == set()
    assert held(released, BEA) == others
    with closing(sqlite3.connect(released)) as connection:
        assert connection.execute("PRAGMA foreign_key_check").fetchall() == []


async def test_the_bare_row_says_nothing(full, released):
    """No name, no answers, no days, no state: like somebody who has never spoken, but for when it was."""
    await full.handle(ANA, None, FORGETS, T0)
    bare = next(row for row in rows(released, "trainee") if row["id"] == ANA)
    said = {name: value for name, value in bare.items() if value not in (None, 0)}
    assert set(said) == {"id", "name", "zone", "unit", "circuit_id", "state", "seen_at", "revision", "forgotten_at"}
    assert (said["zone"], said["unit"]) == ("UTC", "kg")
    assert "Ana" not in str(said)


PARKED = {"update_id": 9, "message": {"chat": {"id": 701}, "text": "?"}}
NAMING = ("Ana had pain today.", "For Ana\nthis week", "ANA, Bea: trained", "Was it Ana?")


async def test_no_text_names_them_any_more(full, released):
    """Coaches' messages, sent or waiting, with line ends anywhere; parked updates; an older self as a stranger; unused codes."""
    for number, text in enumerate(NAMING):
        message(released, text, ("sent", "waiting")[number % 2])
    put(released, "parked", channel="telegram", body=json.dumps(PARKED), reason="x", at="2026-03-02 06:00:00")
    put(released, "stranger", channel="telegram", address=ADDRESS, at="2026-03-01 06:22:00")
    made = {"made_at": "2026-03-02 06:21:00", "expires_at": "2026-03-05 06:21:00"}
    put(released, "invite", fingerprint="cd", coach=False, name="ana", invited_by=BEA, **made)
    before = [row["id"] for row in rows(released, "outbox") if row["trainee_id"] != ANA]
    await full.handle(ANA, None, FORGETS, T0)
    await full.bury(ANA)
    said = texts(released)
    for word in ("Ana", "ana\n", ADDRESS, "Elbows", "knee"):
        assert word not in said
    assert set(before) <= {row["id"] for row in rows(released, "outbox")}  # blank, but there: a button knows its row by number
    assert {row["status"] for row in rows(released, "outbox") if row["id"] in before[1:]} == {"sent", "dropped"}
    assert rows(released, "stranger") == [{"channel": "telegram", "address": "703", "at": "2026-03-02 06:22:00.000000"}]
    assert len(rows(released, "parked")) == 1


async def test_somebody_with_a_longer_name_is_not_erased_with_them(full, released):
    """What the coach is still to hear of Ana Berg, or of bananas, waits as before."""
    await full.add_trainee(Trainee("Ana Berg"), 1)
    kept = ("Ana Berg: chest pain!", "Ana\nBerg again", "Bananas help")
    for text in kept:
        message(released, text, "waiting")
    await full.handle(ANA, None, FORGETS, T0)
    waiting = [row["text"] for row in rows(released, "outbox") if row["trainee_id"] == WREN and row["status"] == "waiting"]
    assert waiting[:3] == list(kept)


@pytest.mark.parametrize(
    ("state", "calm"),
    [
        (Quiet(WayBack("x", (Assigned(ANA, "Kitchen floor", None),))), True),
        (Quiet(WayBack("Ana's circuit", ())), True),
        (Quiet(WayBack("x", (Assigned(BEA, "Kitchen floor", None),))), False),
        (Quiet(WayBack("x", (Assigned(11, "Kitchen floor", None),))), False),
    ],
)
async def test_a_coachs_talk_about_them_begins_anew(full, released, state, calm):
    """What would change or take back something of theirs is gone; a talk about others stays."""
    text = coach_state_text(state)
    with closing(sqlite3.connect(released)) as connection, connection:
        connection.execute("UPDATE coach SET state = ?", (text,))
    await full.handle(ANA, None, FORGETS, T0)
    assert (rows(released, "coach")[0]["state"] == coach_state_text(Quiet())) is calm
    assert (rows(released, "coach")[0]["state"] == text) is not calm


async def test_a_number_is_never_given_twice(full):
    """What still points at somebody who is gone must not come to point at somebody new."""
    last = await full.add_trainee(Trainee("Cleo"), 1)
    await full.handle(last, None, FORGETS, T0)
    await full.bury(last)
    assert await full.add_trainee(Trainee("Dov"), 1) == last + 1
    assert await full.add_trainee(Trainee("Cleo"), 1) == last + 2


async def test_a_coach_is_told_a_count_and_nothing_else(full, released):
    """In the same transaction; the dump has two already."""
    handled = await full.handle(ANA, None, FORGETS, T0)
    assert (handled.forgotten, handled.coaches) == (True, (WREN,))
    told = [row["text"] for row in rows(released, "outbox") if row["trainee_id"] == WREN]
    assert told == ["Somebody had everything about them\nerased. 3 people so far."]
    await full.handle(BEA, None, FORGETS, T0)
    assert {row["name"]: row["total"] for row in rows(released, "tally")}["forgotten"] == 4


async def test_all_or_nothing(full, released, monkeypatch):
    """A fault at its end leaves everything as it was."""
    before = texts(released)
    monkeypatch.setattr(full, "_tell_forgotten", lambda *_: 1 / 0)
    with pytest.raises(ZeroDivisionError):
        await full.handle(ANA, None, FORGETS, T0)
    assert texts(released) == before


async def test_nobody_who_is_erased_is_on_a_coachs_desk(full):
    """Between the erasing and the goodbye there is a bare row, and it is no client."""
    seen = []
    await full.handle(ANA, None, FORGETS, T0)
    await full.handle_coach(WREN, None, lambda _, desk: seen.extend(client.id for client in (*desk.clients, *desk.ended)), T0)
    assert seen == [BEA]


# The conversation


def talk(store, clock, phone, folder, coach="Coach Wren"):
    """An assistant over the real conversation, with files in a folder."""
    return on_duty(store, clock, Gallery(phone, folder), coach, data=folder)


FIRST_TALK = ("yes", "kg", "a pair of 8s, 12s and a 16")
WORD = "zanzibar"


@pytest.fixture
async def living(tmp_path):
    """A store of the real conversation: a coach, and a trainee with an uncommon name."""
    store = await Store.open(f"sqlite:///{tmp_path / 'stationcall.sqlite3'}", rendered)
    circuit = await store.save_circuit(CIRCUIT)
    await store.make_coach(await store.add_trainee(Trainee("Coach Wren"), circuit))
    await store.add_trainee(Trainee("Quirinius"), circuit)
    yield store
    await store.close()


async def says(assistant, trainee, *said):
    """Somebody sends texts; everything settles in between."""
    for text in said:
        assert await assistant.said(trainee, text, f"{trainee} {text} {assistant.next_due()}", "script")
        await assistant.settled()


async def test_no_byte_of_them_is_left_in_the_data_folder(living, clock, tmp_path):
    """Not in the database's pages, not in its log, not in a file or its name; while the program runs on."""
    phone = Phone()
    quirinius, wren = await living.trainee_id("Quirinius"), await living.trainee_id("Coach Wren")
    async with talk(living, clock, phone, tmp_path) as assistant:
        await assistant.opened(quirinius)
        await says(assistant, quirinius, *FIRST_TALK, "today", "go", "go", f"ask coach: like in {WORD}?")
        await Simulation(assistant, clock).advance_to(after(60))
        await says(assistant, quirinius, "11 at 12kg", "my records")
        (tmp_path / "pictures" / str(wren)).mkdir(parents=True, exist_ok=True)
        (tmp_path / "pictures" / str(wren) / "week.png").write_text("Quirinius", encoding="utf-8")
        assert in_folder(tmp_path, "Quirinius")
        assert in_folder(tmp_path, WORD)
        await says(assistant, quirinius, "forget me", "yes")
        assert phone.texts[-1].startswith("Somebody had") or phone.texts[-1].startswith("Done.")
        assert in_folder(tmp_path, "Quirinius") == in_folder(tmp_path, WORD) == []
        assert not (tmp_path / "files" / str(quirinius)).exists()
        assert not (tmp_path / "pictures" / str(quirinius)).exists()
        assert [row["name"] for row in rows(tmp_path / "stationcall.sqlite3", "trainee")] == ["Coach Wren"]


async def test_in_the_middle_of_a_workout_the_clock_stops(living, clock, tmp_path):
    """Nothing is called, asked or planned for them any more, and what they still say goes nowhere."""
    phone = Phone()
    quirinius = await living.trainee_id("Quirinius")
    async with talk(living, clock, phone, tmp_path) as assistant:
        await assistant.opened(quirinius)
        await says(assistant, quirinius, *FIRST_TALK, "go", "go", "go")
        assert assistant.next_due() is not None
        await says(assistant, quirinius, "forget me", "yes")
        heard = list(phone.heard)
        assert [text for whom, text in heard if whom == quirinius][-1].startswith("Done. Everything about you")
        assert assistant.next_due() is None
        assert assistant.has_left(quirinius)
        await says(assistant, quirinius, "11 at 12kg")
        await Simulation(assistant, clock).advance_to(after(86_400))
        assert phone.heard == heard


async def test_a_coach_cannot_be_erased_by_a_word(living, clock, tmp_path):
    """Neither as a coach nor while they train."""
    phone = Phone()
    wren = await living.trainee_id("Coach Wren")
    async with talk(living, clock, phone, tmp_path) as assistant:
        await assistant.opened(wren)
        await says(assistant, wren, "forget me", "yes")
        assert "Whoever hosts me can remove" in " ".join(phone.texts[-2].split())
        await assistant.trains(wren)
        await says(assistant, wren, *FIRST_TALK, "go", "forget me", "yes")
    assert "Coach Wren" in [row["name"] for row in rows(tmp_path / "stationcall.sqlite3", "trainee")]


@pytest.mark.parametrize("error", [Gone("blocked"), None])
async def test_the_last_of_them_goes_when_the_goodbye_is_out_or_cannot_be_sent(living, clock, tmp_path, error):
    """A blocked chat is no reason to keep the row."""
    phone = Phone()
    quirinius = await living.trainee_id("Quirinius")
    async with talk(living, clock, phone, tmp_path) as assistant:
        await assistant.opened(quirinius)
        await says(assistant, quirinius, "forget me")
        phone.errors = [error]
        await says(assistant, quirinius, "yes")
        assert [row["id"] for row in rows(tmp_path / "stationcall.sqlite3", "trainee")] == [1]


async def test_it_stays_while_the_goodbye_waits(living, clock, tmp_path):
    """Nobody can be reached just now: the bare row waits with it, and goes after the next try."""
    phone, file = Phone(), tmp_path / "stationcall.sqlite3"
    quirinius = await living.trainee_id("Quirinius")
    async with talk(living, clock, phone, tmp_path) as assistant:
        await assistant.opened(quirinius)
        await says(assistant, quirinius, "forget me")
        phone.send = refusing(phone, quirinius)
        await says(assistant, quirinius, "yes")
        assert len(rows(file, "trainee")) == 2
        assert "Quirinius" not in texts(file)
        del phone.send
        await Simulation(assistant, clock).advance_to(after(10))
        assert phone.texts[-1].startswith("Done.")
        assert len(rows(file, "trainee")) == 1


def refusing(phone, trainee):
    """A way to send that reaches everybody but one."""
    reach = phone.send

    async def send(whom, letter):
        if whom == trainee:
            raise Unreachable
        await reach(whom, letter)

    return send


# Killed in between


KILLED = """
import asyncio, sys
from bot.bootstrap import rendered
from bot.store.store import Store
from tests.bot.given import T0
from tests.bot.test_forgetting import ANA, FORGETS

async def main():
    store = await Store.open(f"sqlite:///{sys.argv[1]}", rendered)
    await store.handle(ANA, None, FORGETS, T0)
    print("erased", flush=True)
    await asyncio.Event().wait()

asyncio.run(main())
"""


@pytest.mark.parametrize("account", [True, False], ids=["with an account", "at the terminal"])
async def test_killed_between_the_erasing_and_the_goodbye_the_next_start_does_the_rest(released, tmp_path, clock, account):
    """The goodbye goes out if there is somewhere to send it; files, row and account go in any case."""
    if not account:
        tamper(released, "DELETE FROM account WHERE trainee_id = 1")
    for kind, owner in (("pictures", ANA), ("files", ANA), ("files", WREN), ("pictures", 77), ("pictures", BEA)):
        folder = tmp_path / kind / str(owner)
        folder.mkdir(parents=True)
        (folder / "one.txt").write_text("Ana", encoding="utf-8")
    with subprocess.Popen(  # noqa: ASYNC220 - our own interpreter; nothing else runs in this test
        [sys.executable, "-c", KILLED, str(released)], stdout=subprocess.PIPE, text=True, cwd=ROOT
    ) as process:
        assert process.stdout.readline() == "erased\n"
        os.kill(process.pid, signal.SIGKILL)
    phone = Phone()
    store = await Store.open(f"sqlite:///{released}", rendered)
    async with talk(store, clock, phone, tmp_path) as assistant:
        await assistant.settled()
        assert held(released, ANA) == set()
        assert in_folder(tmp_path, "Ana") == ["pictures/2/one.txt"]  # Bea's own
    await store.close()
    assert [text.split("\n")[0] for whom, text in phone.heard if whom == ANA] == (
        ["Done. Everything about you is erased."] if account else []
    )


# At the terminal


def test_the_terminal_ends_kindly_and_the_name_is_free_again(tmp_path, monkeypatch, capsys):
    """Nothing is said after the goodbye, not even that all is kept; the next start greets somebody new."""
    monkeypatch.delenv("STATIONCALL_DATA", raising=False)
    monkeypatch.setattr(sys, "stdin", io.StringIO(f"forget me\nyes\n{WORD}\n"))
    assert main(["chat", "--as", "Quirinius", "--data", str(tmp_path)]) == 0
    said = " ".join(capsys.readouterr().out.split())
    assert said.endswith("Take good care of yourself.")
    assert in_folder(tmp_path, "Quirinius") == []
    monkeypatch.setattr(sys, "stdin", io.StringIO(""))
    assert main(["chat", "--as", "Quirinius", "--data", str(tmp_path)]) == 0
    assert "All is kept" in capsys.readouterr().out
    assert len(in_folder(tmp_path, "Quirinius")) >= 1
