"""The outbox's rows: waiting → sending → sent, or dropped with a reason."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime, timedelta
from enum import StrEnum
from typing import TYPE_CHECKING

from sqlalchemy import insert, select, update

from bot.ports import Rendered
from bot.store.engine import reading
from bot.store.tables import OUTBOX
from bot.store.values import rendered_columns, rendered_of

if TYPE_CHECKING:
    from collections.abc import Sequence

    from sqlalchemy.ext.asyncio import AsyncConnection, AsyncEngine

    from bot.ports import Render
    from core.session.events import Say

COUNTDOWN = timedelta(minutes=1)  # what lives no longer is a countdown: rather none than two of them
STALE = "stale"  # the reason of a countdown that came too late, or may have been sent before the program stopped


class Status(StrEnum):
    """Where a message is on its way."""

    WAITING = "waiting"
    SENDING = "sending"
    SENT = "sent"
    DROPPED = "dropped"


@dataclass(frozen=True)
class Letter:
    """A row that is marked as sending: its id, and the message in words; `last` when nothing waited behind it."""

    id: int
    rendered: Rendered
    last: bool


class Outbound:
    """The messages of one step, in words, on their way into the outbox."""

    def __init__(self, trainee_id: int, messages: Sequence[Say], render: Render, now: datetime) -> None:
        self._rendered = [render(say.message) for say in messages]
        self._rows = [
            {"trainee_id": trainee_id, "created_at": now, "expires_at": say.expires_at, "status": Status.WAITING.value}
            | rendered_columns(rendered)
            for say, rendered in zip(messages, self._rendered, strict=True)
        ]
        self._first_is_fresh = bool(messages) and not _stale(messages[0].expires_at, now)

    async def put(self, connection: AsyncConnection, *, claim: bool) -> Letter | None:
        """Add the rows, in order, inside the caller's transaction.

        With `claim`, for a chat in which nothing waits, the first row is marked as sending at once and returned, which saves a
        transaction. One that is stale already is left for `Outgoing.turn` to drop.
        """
        rows = self._rows
        letter = None
        if claim and self._first_is_fresh:
            first = insert(OUTBOX).values(rows[0] | {"status": Status.SENDING.value})
            key = (await connection.execute(first)).inserted_primary_key
            letter = None if key is None else Letter(key[0], self._rendered[0], last=len(rows) == 1)
            rows = rows[1:]
        if rows:
            await connection.execute(insert(OUTBOX), rows)
        return letter


class Outgoing:
    """The outbox's rows, one short transaction a call; nothing is sent inside one."""

    def __init__(self, engine: AsyncEngine) -> None:
        self._engine = engine

    async def turn(self, trainee_id: int, done: Letter | None, now: datetime) -> Letter | None:
        """Mark `done` as sent, drop what is stale, mark the next row of the trainee as sending and return it; None: no more."""
        async with self._engine.begin() as connection:
            if done is not None:
                await _mark(connection, [done.id], Status.SENT, sent_at=now)
                if done.last:
                    return None
            waiting = (OUTBOX.c.trainee_id == trainee_id) & (OUTBOX.c.status == Status.WAITING.value)
            rows = (await connection.execute(select(OUTBOX).where(waiting).order_by(OUTBOX.c.id))).all()
            stale = [row.id for row in rows if _stale(row.expires_at, now)]
            if stale:
                await _mark(connection, stale, Status.DROPPED, reason=STALE)
            fresh = [row for row in rows if row.id not in stale]
            if not fresh:
                return None
            await _mark(connection, [fresh[0].id], Status.SENDING)
            return Letter(fresh[0].id, rendered_of(fresh[0]), last=len(fresh) == 1)

    async def again(self, letter: Letter) -> None:
        """Give a row that could not be sent its place back."""
        async with self._engine.begin() as connection:
            await _mark(connection, [letter.id], Status.WAITING)

    async def drop_all(self, trainee_id: int, reason: str) -> None:
        """Drop every row of the trainee that is not sent: the chat is over."""
        unsent = OUTBOX.c.status.in_((Status.WAITING.value, Status.SENDING.value))
        async with self._engine.begin() as connection:
            await connection.execute(
                update(OUTBOX)
                .where((OUTBOX.c.trainee_id == trainee_id) & unsent)
                .values(status=Status.DROPPED.value, reason=reason),
            )

    async def recover(self, trainee_id: int | None = None) -> tuple[int, ...]:
        """After a start, or a fault in one chat: rows in sending wait again; countdowns may have been sent and are dropped.

        A reminder has an expiry too, hours away: rather two of those than none.

        Returns:
            The ids of the trainees who have messages waiting.
        """
        sending = OUTBOX.c.status == Status.SENDING.value
        if trainee_id is not None:
            sending &= OUTBOX.c.trainee_id == trainee_id
        async with self._engine.begin() as connection:
            lives = await connection.execute(select(OUTBOX.c.id, OUTBOX.c.created_at, OUTBOX.c.expires_at).where(sending))
            short = [row.id for row in lives if row.expires_at is not None and row.expires_at - row.created_at <= COUNTDOWN]
            if short:
                await _mark(connection, short, Status.DROPPED, reason=STALE)
            await connection.execute(update(OUTBOX).where(sending).values(status=Status.WAITING.value))
        async with reading(self._engine).begin() as connection:
            waiting = select(OUTBOX.c.trainee_id).where(OUTBOX.c.status == Status.WAITING.value).distinct()
            return tuple((await connection.execute(waiting.order_by(OUTBOX.c.trainee_id))).scalars())


def _stale(expires_at: datetime | None, now: datetime) -> bool:
    return expires_at is not None and expires_at < now


async def _mark(connection: AsyncConnection, ids: list[int], status: Status, **columns: object) -> None:
    await connection.execute(update(OUTBOX).where(OUTBOX.c.id.in_(ids)).values(status=status.value, **columns))
