"""Trainees' plans in rows: a block and its circuits in order. Plain functions over a connection, inside somebody's transaction."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sqlalchemy import delete, insert, select, update

from bot.store.rows import insert_numbered
from bot.store.tables import BLOCK, BLOCK_CIRCUIT, CIRCUIT, COMING, TRAINEE
from bot.store.values import block_columns, block_of, circuit_of, circuit_text
from core.trainee import Coming

if TYPE_CHECKING:
    from datetime import date

    from sqlalchemy import Connection

    from core.circuit import Circuit
    from core.trainee import Block


def read_block(connection: Connection, trainee_id: int) -> Block | None:
    """A trainee's plan with its circuits as they are now, None when there is none.

    Raises:
        bot.errors.RowBroken: when a value is none that may be stored.
    """
    row = connection.execute(select(BLOCK).where(BLOCK.c.trainee_id == trainee_id)).first()
    if row is None:
        return None
    turns = (
        select(CIRCUIT.c.id, CIRCUIT.c.body)
        .join(BLOCK_CIRCUIT, BLOCK_CIRCUIT.c.circuit_id == CIRCUIT.c.id)
        .where(BLOCK_CIRCUIT.c.trainee_id == trainee_id)
        .order_by(BLOCK_CIRCUIT.c.position)
    )
    return block_of(row, [circuit_of(turn.body, turn.id) for turn in connection.execute(turns)])


def read_coming(connection: Connection, trainee_id: int) -> Coming | None:
    """What takes the place of what is on for a trainee, and from when; None when nothing is coming."""
    both = select(COMING.c.from_on, CIRCUIT.c.id, CIRCUIT.c.body).join(CIRCUIT, CIRCUIT.c.id == COMING.c.circuit_id)
    row = connection.execute(both.where(COMING.c.trainee_id == trainee_id)).first()
    return None if row is None else Coming(circuit_of(row.body, row.id), row.from_on)


def put_coming(connection: Connection, trainee_id: int, circuit: str | None, from_on: date | None) -> None:
    """What comes for a trainee, by its name, from a day on; nothing any more without."""
    connection.execute(delete(COMING).where(COMING.c.trainee_id == trainee_id))
    if circuit is not None:
        row = {"trainee_id": trainee_id, "circuit_id": circuit_id(connection, circuit), "from_on": from_on}
        connection.execute(insert(COMING).values(row))
    connection.execute(update(TRAINEE).where(TRAINEE.c.id == trainee_id).values(revision=TRAINEE.c.revision + 1))


def assign(connection: Connection, trainee_id: int, circuit: str, block: Block | None) -> None:
    """What is on for a trainee from now on: a circuit by its name, and a plan or none; whoever remembers them reads them again."""
    connection.execute(delete(BLOCK_CIRCUIT).where(BLOCK_CIRCUIT.c.trainee_id == trainee_id))
    connection.execute(delete(BLOCK).where(BLOCK.c.trainee_id == trainee_id))
    if block is not None:
        connection.execute(insert(BLOCK).values(block_columns(trainee_id, block)))
        turns = [
            {"trainee_id": trainee_id, "position": position, "circuit_id": circuit_id(connection, turn.name)}
            for position, turn in enumerate(block.circuits, start=1)
        ]
        connection.execute(insert(BLOCK_CIRCUIT), turns)
    columns = {"circuit_id": circuit_id(connection, circuit), "revision": TRAINEE.c.revision + 1}
    connection.execute(update(TRAINEE).where(TRAINEE.c.id == trainee_id).values(columns))


def circuit_id(connection: Connection, name: str) -> int | None:
    """The id of the circuit of this name, None when there is none."""
    found: int | None = connection.execute(select(CIRCUIT.c.id).where(CIRCUIT.c.name == name)).scalar_one_or_none()
    return found


def keep_circuit(connection: Connection, circuit: Circuit) -> int:
    """Keep a circuit under its name, replacing what was there; return its id. Whoever has it reads it again."""
    columns = {"name": circuit.name, "body": circuit_text(circuit)}
    known = circuit_id(connection, circuit.name)
    if known is None:
        return insert_numbered(connection, CIRCUIT, columns)
    connection.execute(update(CIRCUIT).where(CIRCUIT.c.id == known).values(columns))
    planned = select(BLOCK_CIRCUIT.c.trainee_id).where(BLOCK_CIRCUIT.c.circuit_id == known)
    coming = select(COMING.c.trainee_id).where(COMING.c.circuit_id == known)
    told = (TRAINEE.c.circuit_id == known) | TRAINEE.c.id.in_(planned) | TRAINEE.c.id.in_(coming)
    connection.execute(update(TRAINEE).where(told).values(revision=TRAINEE.c.revision + 1))
    return known
