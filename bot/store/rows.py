"""Adding rows that the database numbers."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from sqlalchemy import insert

from bot.store.forgetting import unused_number
from bot.store.tables import TRAINEE
from bot.store.values import state_text, trainee_columns
from core.session.states import New

if TYPE_CHECKING:
    from sqlalchemy import Connection, Table

    from core.trainee import Trainee


def insert_numbered(connection: Connection, table: Table, columns: dict[str, Any]) -> int:
    """Add a row to a table that numbers its rows; return the number."""
    key = connection.execute(insert(table).values(columns)).inserted_primary_key
    assert key is not None  # noqa: S101 - these tables number their rows
    number: int = key[0]
    return number


def add_trainee(connection: Connection, trainee: Trainee, circuit_id: int) -> int:
    """Add a trainee to whom nobody has spoken yet; return their id."""
    row = {**trainee_columns(trainee), "circuit_id": circuit_id, "state": state_text(New()), "revision": 0}
    row["rack_said"] = False  # a rack is said in the chat
    if (number := unused_number(connection)) is not None:
        row["id"] = number
    return insert_numbered(connection, TRAINEE, row)
