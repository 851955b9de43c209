"""The database's shape: made, recognised, brought to the newest without losing a row."""

import asyncio
import sqlite3
import stat
import subprocess
import sys
from contextlib import closing
from datetime import date, timedelta
from decimal import Decimal
from pathlib import Path

import pytest
from alembic.autogenerate import compare_metadata
from alembic.migration import MigrationContext
from alembic.script import ScriptDirectory
from sqlalchemy import create_engine, event

from bot.errors import DatabaseTooNew, DatabaseUnusable
from bot.store.engine import open_database
from bot.store.revision import NEWEST, bring_to_newest
from bot.store.store import Store
from bot.store.tables import Row
from bot.store.upgrade import configuration
from core.diary import WordKind
from core.health import AgeBand, Health, Injury, NoteKind, Quality, SafetyNote
from core.reading.acts import Side
from core.session.states import Working
from core.trainee import Pause
from core.wishes import CardNote, HeldLoad, Swapped, Wishes
from tests.bot.given import T0, always, everything, kg, render, tamper

RELEASED = sorted((Path(__file__).parents[2] / "fixtures" / "databases").glob("*.sql"))
WISHES = Wishes(
    (Swapped("goblet-squat", "wall-sit"),),
    (HeldLoad("goblet-squat", kg("16")),),
    (CardNote("goblet-squat", "Elbows in, you know why"),),
)
OPENING = """
import asyncio, sys
from bot.store.store import Store
async def main():
    store = await Store.open(sys.argv[1], None)
    await store.close()
asyncio.run(main())
print("alembic" in sys.modules)
"""


def counts(file):
    """How many rows each table has."""
    with closing(sqlite3.connect(file)) as connection:
        names = [name for (name,) in connection.execute("SELECT name FROM sqlite_master WHERE type = 'table'")]
        return {name: connection.execute(f"SELECT count(*) FROM {name}").fetchone()[0] for name in names}  # noqa: S608 - table names


@pytest.fixture
def released(tmp_path):
    """A function that makes a database from a dump."""

    def make(dump):
        file = tmp_path / "released.sqlite3"
        with closing(sqlite3.connect(file)) as connection:
            connection.executescript(dump.read_text(encoding="utf-8"))
        return file

    return make


@pytest.mark.parametrize("dump", RELEASED, ids=lambda dump: dump.stem)
async def test_every_released_shape_is_brought_to_the_newest_without_losing_a_row(released, dump):
    """A dump of each shape that was ever released is kept; its rows are still there, and read as what they were."""
    file = released(dump)
    before = counts(file)
    store = await Store.open(f"sqlite:///{file}", render)
    given = []
    await store.handle(1, None, lambda *values: given.extend(values) or always()(*values), T0)
    records = await store.records(None)
    waiting = await store.outgoing.recover()
    await store.close()
    assert all(count >= before[table] for table, count in counts(file).items() if table in before)
    assert all(count > 0 for count in before.values())  # a dump leaves no table untried
    trainee, state, history, circuit = given
    assert (trainee.name, trainee.zone, len(trainee.rack.items)) == ("Ana", "Europe/Lisbon", 2)
    assert isinstance(state, Working)
    assert circuit.name == "Kitchen floor"
    assert [record.voided for record in history.sets] == [True, False, True, False]
    assert history.sets[0].load == kg("17.50")
    assert history.pains[0].side is Side.LEFT
    assert [workout.work_s for workout in history.workouts] == [240, 0]
    assert [workout.paused_s for workout in history.workouts] == ([95, 0] if dump.stem >= "0006" else [0, 0])
    if dump.stem >= "0005":
        assert (trainee.health.age, trainee.health.injuries) == (AgeBand.MIDDLE, (Injury("knee", Side.LEFT),))
        assert (history.pains[0].quality, history.pains[0].known) == (Quality.DULL, True)
        assert history.pains[0].eased_at == T0 + timedelta(minutes=11)
        assert history.workouts[0].effort == Decimal("6.5")
        assert history.notes == (SafetyNote(T0, NoteKind.OUTCOME, "go"),)
    else:
        assert (trainee.health, history.notes) == (Health(), ())
    if dump.stem >= "0007":
        assert trainee.wishes == WISHES
        assert (trainee.pause, trainee.ended_at) == (Pause(T0 + timedelta(minutes=10), date(2026, 3, 9)), None)
        assert (trainee.coming.circuit.name, trainee.coming.from_on) == ("Kitchen floor", date(2026, 3, 16))
        assert [(word.kind, word.text, word.about, word.told_at) for word in history.words] == [
            (WordKind.ANSWER, "Keep the elbows in.", 1, None)
        ]
        assert [(one.text, one.round, one.station, one.exercise) for one in history.questions] == [
            ("Elbows in or out?", 1, 2, "goblet-squat")
        ]
    else:
        assert (trainee.wishes, trainee.pause, trainee.coming, history.words, history.questions) == (Wishes(), None, None, (), ())
    assert [name for name, _ in records] == ["Ana"] * 4
    assert waiting == (1,)


def test_there_is_a_dump_of_the_newest_shape():
    """Whoever adds a revision adds its dump, so that the next one is tried on it."""
    assert RELEASED[-1].stem == NEWEST


def test_the_tables_are_what_the_migrations_make(file):
    """A table that was changed without a migration is found here."""
    engine = create_engine(f"sqlite:///{file}")
    with engine.connect() as connection:
        assert compare_metadata(MigrationContext.configure(connection), Row.metadata) == []
    engine.dispose()


def test_the_newest_revision_is_the_last_migration():
    """`NEWEST` is written down so that Alembic need not be imported; it must be right."""
    assert ScriptDirectory.from_config(configuration()).get_current_head() == NEWEST


async def test_a_database_of_a_newer_program_is_refused_in_one_line(file):
    """It says what is wrong and what to do, and touches nothing."""
    tamper(file, "UPDATE alembic_version SET version_num = '9000'")
    before = everything(file)
    with pytest.raises(DatabaseTooNew) as refused:
        await Store.open(f"sqlite:///{file}", render)
    assert (
        str(refused.value) == f"the database is of revision 9000, newer than {NEWEST} of this program: install a newer stationcall"
    )
    assert everything(file) == before


@pytest.mark.parametrize("exists", [True, False])
def test_alembic_is_imported_only_when_there_is_something_to_migrate(file, tmp_path, exists):
    """It takes a third of a second; opening a database of the newest shape must not."""
    url = f"sqlite:///{file if exists else tmp_path / 'new.sqlite3'}"
    run = subprocess.run([sys.executable, "-c", OPENING, url], capture_output=True, text=True, check=True)
    assert run.stdout == f"{not exists}\n"


class Stumble(Exception):
    """The fault that is put in on purpose."""


async def test_a_migration_that_fails_leaves_the_database_as_it_was(tmp_path):
    """At every statement on the way; afterwards it is simply done again."""
    file = tmp_path / "new.sqlite3"
    at = 1
    while True:
        count = 0

        def stumble(*_, fail_at=at):
            nonlocal count
            count += 1
            if count == fail_at:
                raise Stumble

        database = open_database(f"sqlite:///{file}")
        event.listen(database.engine, "before_cursor_execute", stumble)
        try:
            await bring_to_newest(database)
        except Stumble:
            assert not file.exists() or counts(file) == {}
            at += 1
        else:
            break
        finally:
            await database.close()
    assert at > len(Row.metadata.tables)
    assert set(counts(file)) == {*Row.metadata.tables, "alembic_version"}


async def test_a_file_that_is_no_database_is_refused_in_one_line(tmp_path):
    """And left as it is."""
    file = tmp_path / "letter.txt"
    file.write_text("Dear Ana,\n" * 200)
    with pytest.raises(DatabaseUnusable) as refused:
        await Store.open(f"sqlite:///{file}", render)
    assert str(refused.value) == "the database cannot be opened: file is not a database"
    assert file.read_text().startswith("Dear Ana,")


@pytest.mark.parametrize("url", ["open-sesame", "mysql://ana:open-sesame@db/x", "sqlite://", "ana:open-sesame@db"])
async def test_a_url_that_is_none_is_refused_without_quoting_it(url):
    """There may be a password in it."""
    with pytest.raises(DatabaseUnusable) as refused:
        await Store.open(url, render)
    assert "postgresql://" in str(refused.value)
    assert "open-sesame" not in str(refused.value)


async def test_a_new_database_is_its_owners_alone(tmp_path):
    """The file and what SQLite keeps beside it, whatever folder it lies in."""
    file = tmp_path / "new.sqlite3"
    store = await Store.open(f"sqlite:///{file}", render)
    modes = {found.name: stat.S_IMODE(found.stat().st_mode) for found in tmp_path.iterdir()}
    await store.close()
    assert modes == {"new.sqlite3": 0o600, "new.sqlite3-wal": 0o600, "new.sqlite3-shm": 0o600}


async def test_sqlite_is_opened_with_every_guard_on(file):
    """Commits survive a power cut (synchronous 2 is FULL), foreign keys hold, and a writer from outside is waited for."""
    database = open_database(f"sqlite:///{file}")

    def work(connection):
        names = ("journal_mode", "synchronous", "foreign_keys", "busy_timeout")
        return {name: connection.exec_driver_sql(f"PRAGMA {name}").scalar_one() for name in names}

    found = await database.read(work)
    await database.close()
    assert found == {"journal_mode": "wal", "synchronous": 2, "foreign_keys": 1, "busy_timeout": 5000}


async def test_another_process_may_read_while_this_one_writes(file):
    """`records` works while a chat is open, and sees the last commit."""
    store = await Store.open(f"sqlite:///{file}", render)
    other = await Store.open(f"sqlite:///{file}", render)

    def work(connection):
        connection.exec_driver_sql("UPDATE trainee SET name = 'Anna'")
        return asyncio.run(other.trainee_id("Ana"))

    assert await store._database.write(work) == 1  # noqa: SLF001
    await store.close()
    await other.close()
