"""The outbox's rows: waiting → sending → sent, or dropped with a reason."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime, timedelta
from enum import StrEnum
from typing import TYPE_CHECKING

from sqlalchemy import bindparam, insert, select, update

from bot.ports import Letter, Rendered
from bot.store.prepared import Prepared
from bot.store.tables import OUTBOX
from bot.store.values import rendered_columns, rendered_of

if TYPE_CHECKING:
    from collections.abc import Sequence

    from sqlalchemy import Connection

    from bot.ports import Render
    from bot.store.database import Database
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
class Offer:
    """A message that was sent with quick replies: to whom, what they were, and where the conversation was."""

    trainee_id: int
    rendered: Rendered
    moment: str | None
    at: datetime


_NEW = (
    "trainee_id",
    "created_at",
    "kind",
    "text",
    "replies",
    "shows",
    "expires_at",
    "status",
    "reason",
    "exercise",
    "moment",
)
_ADD = Prepared(insert(OUTBOX).returning(OUTBOX.c.id), _NEW)
_SENT = Prepared(
    update(OUTBOX)
    .where(OUTBOX.c.id == bindparam("of_id"))
    .values(status=Status.SENT.value, sent_at=bindparam("at"), shows=None)  # what a file held is not kept twice
)


class Outbound:
    """The messages of one step, in words, on their way into the outbox."""

    def __init__(self, trainee_id: int, messages: Sequence[Say], render: Render, now: datetime, moment: str | None = None) -> None:
        self._letters = [(render(say.message), say.expires_at) for say in messages]
        self._trainee_id = trainee_id
        self._moment = moment
        self._now = now

    def put(self, connection: Connection, *, claim: bool) -> tuple[Letter, ...]:
        """Add the rows, in order, inside the caller's transaction.

        With `claim`, for a chat in which nothing waits, the rows are marked as sending at once and returned, which saves a
        transaction. One that is stale already is dropped.
        """
        claimed = []
        for rendered, expires_at in self._letters:
            stale = is_stale(expires_at, self._now)
            status = Status.DROPPED if stale else Status.SENDING if claim else Status.WAITING
            row = {
                "trainee_id": self._trainee_id,
                "created_at": self._now,
                "expires_at": expires_at,
                "status": status.value,
                "reason": STALE if stale else None,
                "moment": self._moment if rendered.replies else None,
                **rendered_columns(rendered),
            }
            number: int = _ADD.run(connection, row)
            if status is Status.SENDING:
                claimed.append(Letter(number, rendered, expires_at))
        return tuple(claimed)


class Outgoing:
    """The outbox's rows, one short transaction a call; nothing is sent inside one."""

    def __init__(self, database: Database) -> None:
        self._database = database

    async def take(self, trainee_id: int, now: datetime) -> tuple[Letter, ...]:
        """Mark what waits for a trainee as sending and return it in order; what is stale is dropped."""

        def work(connection: Connection) -> tuple[Letter, ...]:
            waiting = (OUTBOX.c.trainee_id == trainee_id) & (OUTBOX.c.status == Status.WAITING.value)
            rows = connection.execute(select(OUTBOX).where(waiting).order_by(OUTBOX.c.id)).all()
            stale = [row.id for row in rows if is_stale(row.expires_at, now)]
            fresh = [row for row in rows if not is_stale(row.expires_at, now)]
            _mark(connection, stale, Status.DROPPED, reason=STALE)
            _mark(connection, [row.id for row in fresh], Status.SENDING)
            return tuple(Letter(row.id, rendered_of(row), row.expires_at) for row in fresh)

        return await self._database.write(work)

    async def sent(self, ids: Sequence[int], now: datetime) -> None:
        """Mark rows as sent."""

        def work(connection: Connection) -> None:
            _SENT.run_all(connection, [{"of_id": number, "at": now} for number in ids])

        await self._database.write(work)

    async def again(self, letters: Sequence[Letter]) -> None:
        """Give rows that could not be sent their places back."""
        await self._database.write(lambda connection: _mark(connection, [letter.id for letter in letters], Status.WAITING))

    async def drop(self, letter: Letter, reason: str) -> None:
        """Drop a row that is not to be sent any more."""
        await self._database.write(lambda connection: _mark(connection, [letter.id], Status.DROPPED, reason=reason))

    async def drop_all(self, trainee_id: int, reason: str) -> None:
        """Drop every row of the trainee that is not sent: the chat is over."""
        unsent = OUTBOX.c.status.in_((Status.WAITING.value, Status.SENDING.value))
        statement = (
            update(OUTBOX).where((OUTBOX.c.trainee_id == trainee_id) & unsent).values(status=Status.DROPPED.value, reason=reason)
        )
        await self._database.write(lambda connection: connection.execute(statement).close())

    async def recover(self, trainee_id: int | None = None) -> tuple[int, ...]:
        """After a start, or a fault in one chat: rows in sending wait again; countdowns may have been sent and are dropped.

        A reminder has an expiry too, hours away: rather two of those than none.

        Returns:
            The ids of the trainees who have messages waiting.
        """
        sending = OUTBOX.c.status == Status.SENDING.value
        if trainee_id is not None:
            sending &= OUTBOX.c.trainee_id == trainee_id

        def work(connection: Connection) -> tuple[int, ...]:
            lives = connection.execute(select(OUTBOX.c.id, OUTBOX.c.created_at, OUTBOX.c.expires_at).where(sending))
            short = [row.id for row in lives if is_countdown(row.expires_at, row.created_at)]
            _mark(connection, short, Status.DROPPED, reason=STALE)
            connection.execute(update(OUTBOX).where(sending).values(status=Status.WAITING.value))
            waiting = select(OUTBOX.c.trainee_id).where(OUTBOX.c.status == Status.WAITING.value).distinct()
            return tuple(connection.execute(waiting.order_by(OUTBOX.c.trainee_id)).scalars())

        return await self._database.write(work)

    async def offer(self, number: int) -> Offer | None:
        """The message of this row, None when there is none."""

        def work(connection: Connection) -> Offer | None:
            row = connection.execute(select(OUTBOX).where(OUTBOX.c.id == number)).one_or_none()
            return None if row is None else Offer(row.trainee_id, rendered_of(row), row.moment, row.created_at)

        return await self._database.read(work)


def is_stale(expires_at: datetime | None, now: datetime) -> bool:
    """Whether a message is past its time."""
    return expires_at is not None and expires_at < now


def is_countdown(expires_at: datetime | None, since: datetime) -> bool:
    """Whether a message lives so short that it is a call of a clock."""
    return expires_at is not None and expires_at - since <= COUNTDOWN


def _mark(connection: Connection, ids: Sequence[int], status: Status, **columns: object) -> None:
    if ids:
        connection.execute(update(OUTBOX).where(OUTBOX.c.id.in_(ids)).values(status=status.value, **columns))
