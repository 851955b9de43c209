"""Statements made ready once: the same rows as by SQLAlchemy's own way, and as visible."""

import sqlite3
from contextlib import closing
from datetime import datetime, timedelta, timezone

import pytest
from sqlalchemy import event, insert, select, update
from sqlmodel.sql.sqltypes import UTCDateTime

from bot.store.engine import open_database
from bot.store.outgoing import _ADD, _NEW
from bot.store.prepared import Prepared
from bot.store.tables import INBOX, OUTBOX, SET_RECORD, TRAINEE, UNASKED, Row
from tests.bot.given import T0

TABLES = (INBOX, OUTBOX, SET_RECORD, TRAINEE, UNASKED)


@pytest.fixture
async def database(tmp_path):
    """An empty database of the newest shape, without its foreign keys."""
    opened = open_database(f"sqlite:///{tmp_path / 'prepared.sqlite3'}")
    Row.metadata.create_all(opened.engine)
    opened.engine.dispose()
    event.listen(opened.engine, "connect", lambda connection, _: connection.execute("PRAGMA foreign_keys=OFF"))
    yield opened
    await opened.close()


def value(column, number):
    """Something for a column: an instant of another zone, a day, a number, a text; nothing at all where that may be."""
    if column.nullable and number % 3 == 0:
        return None
    kind = datetime if isinstance(column.type, UTCDateTime) else column.type.python_type
    east = timezone(timedelta(hours=5, minutes=30))
    known = {"datetime": T0.astimezone(east) + timedelta(seconds=number), "date": T0.date(), "int": number, "bool": number % 2 == 0}
    return known.get(kind.__name__, number + 0.5 if kind is float else f"ünï {number}")


def stored(file, table):
    """The rows as SQLite has them, with the type of each value."""
    with closing(sqlite3.connect(file)) as connection:
        return [[(type(one), one) for one in row] for row in connection.execute(f'SELECT * FROM "{table.name}" ORDER BY 1, 2')]  # noqa: S608


@pytest.mark.parametrize("table", TABLES, ids=lambda table: table.name)
async def test_the_rows_are_those_of_sqlalchemy(database, table):
    """Instants, days, marks, numbers, texts and nothing, byte for byte, whoever puts them in; SQLAlchemy 2.1 is the measure."""
    rows = [{column.name: value(column, 100 * place + number) for place, column in enumerate(table.c)} for number in range(1, 7)]
    ready, file = Prepared(insert(table), table.c.keys()), database.engine.url.database
    await database.write(lambda connection: connection.execute(insert(table), rows).close())
    theirs = stored(file, table)
    await database.write(lambda connection: connection.execute(table.delete()).close())
    await database.write(lambda connection: [ready.run(connection, row) for row in rows])
    assert stored(file, table) == theirs
    await database.write(lambda connection: connection.execute(table.delete()).close())
    await database.write(lambda connection: ready.run_all(connection, rows))
    assert stored(file, table) == theirs


async def test_it_gives_the_number_of_a_new_row_and_finds_what_is_there(database):
    """An insert with `returning` gives the number, a select its first column, both nothing where there is no row."""
    row = {name: value(OUTBOX.c[name], 1) for name in _NEW}
    find = Prepared(select(OUTBOX.c.text).where(OUTBOX.c.id == 2))
    assert await database.write(lambda connection: [_ADD.run(connection, row) for _ in range(2)]) == [1, 2]
    assert await database.read(lambda connection: find.run(connection, {})) == row["text"]
    await database.write(lambda connection: connection.execute(OUTBOX.delete()).close())
    assert await database.read(lambda connection: find.run(connection, {})) is None


async def test_values_that_are_part_of_the_statement_need_not_be_given(database):
    """A status that is always the same is given once, when the statement is made."""
    row = {name: value(OUTBOX.c[name], 1) for name in _NEW}
    close = Prepared(update(OUTBOX).where(OUTBOX.c.id == 1).values(status="closed"))
    await database.write(lambda connection: _ADD.run(connection, row))
    await database.write(lambda connection: close.run(connection, {}))
    assert await database.read(lambda connection: connection.execute(select(OUTBOX.c.status)).scalar_one()) == "closed"


async def test_a_value_that_was_not_given_is_refused(database):
    """A forgotten value is an error, never an empty column."""
    add = Prepared(insert(INBOX), INBOX.c.keys())
    with pytest.raises(KeyError):
        await database.write(lambda connection: add.run(connection, {"channel": "a", "external_id": "b", "at": T0}))
    assert stored(database.engine.url.database, INBOX) == []


async def test_who_watches_statements_sees_it(database):
    """The engine's watchers see the text, as they do for every other statement."""
    seen = []
    event.listen(database.engine, "before_cursor_execute", lambda *given: seen.append(given[2]))
    row = {name: value(OUTBOX.c[name], 1) for name in _NEW}
    await database.write(lambda connection: _ADD.run(connection, row))
    assert [text.split(" (")[0] for text in seen if text.startswith("INSERT")] == ["INSERT INTO outbox"]


async def test_after_a_fault_the_next_transaction_begins_anew(database):
    """What a transaction that failed had begun is rolled back, and the next one does not see it."""

    def stumbling(connection):
        _ADD.run(connection, {name: value(OUTBOX.c[name], 1) for name in _NEW})
        connection.exec_driver_sql("SELECT nothing FROM nowhere")

    with pytest.raises(Exception, match="nowhere"):
        await database.write(stumbling)
    assert await database.write(lambda connection: connection.execute(select(OUTBOX.c.id)).all()) == []
