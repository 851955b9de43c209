"""Statements of every message, made ready once: SQLAlchemy takes ten times as long over each of them as SQLite does.

On SQLite such a statement goes to the driver as its text and its values, turned by the types of its columns as SQLAlchemy would
turn them. Who watches the engine's statements sees it like any other. On PostgreSQL it takes the usual way.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from sqlalchemy.dialects import sqlite

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping, Sequence

    from sqlalchemy import Connection, Delete, Insert, Select, Update
    from sqlalchemy.sql.compiler import SQLCompiler

    Statement = Select[Any] | Insert | Update | Delete

_DIALECT = sqlite.dialect()


class Prepared:
    """A statement, and the names of the values that it is given each time."""

    def __init__(self, statement: Statement, names: Iterable[str] = ()) -> None:
        self._statement = statement
        compiled: SQLCompiler = statement.compile(dialect=_DIALECT, column_keys=list(names))
        self._text = str(compiled)
        places = [(name, compiled.binds[name]) for name in compiled.positiontup or ()]
        self._turns = [(name, place.type.dialect_impl(_DIALECT).bind_processor(_DIALECT)) for name, place in places]
        self._always = {name: place.value for name, place in places if not place.required}

    def run(self, connection: Connection, values: Mapping[str, Any]) -> Any:  # noqa: ANN401 - whatever the statement selects
        """Run it; return the first column of its first row as the driver has it, None when it gives no row.

        An instant selected this way would be text: select whole numbers and texts only.
        """
        if connection.dialect.name != _DIALECT.name:
            result = connection.execute(self._statement, values)
            return result.scalar() if result.returns_rows else None
        ready = self._ready(values)
        cursor = connection.connection.cursor()
        self._show(connection, cursor, ready, many=False)
        cursor.execute(self._text, ready)
        row = cursor.fetchone()
        cursor.close()
        return None if row is None else row[0]

    def run_all(self, connection: Connection, rows: Sequence[Mapping[str, Any]]) -> None:
        """Run it once for each of some rows; it gives none back."""
        if connection.dialect.name != _DIALECT.name:
            connection.execute(self._statement, rows)
            return
        ready = [self._ready(values) for values in rows]
        cursor = connection.connection.cursor()
        self._show(connection, cursor, ready, many=True)
        cursor.executemany(self._text, ready)
        cursor.close()

    def _ready(self, values: Mapping[str, Any]) -> list[Any]:
        given = {**self._always, **values} if self._always else values
        return [given[name] if turn is None else turn(given[name]) for name, turn in self._turns]

    def _show(self, connection: Connection, cursor: object, ready: object, *, many: bool) -> None:
        """Tell those who watch the engine's statements."""
        for watch in connection.dispatch.before_cursor_execute:
            watch(connection, cursor, self._text, ready, None, many)
