"""Letting go of rows that only served to carry messages. The diary is never touched."""

from __future__ import annotations

from datetime import timedelta
from typing import TYPE_CHECKING, Any, Final

from sqlalchemy import delete, func, select, tuple_

from bot.store.outgoing import Status
from bot.store.tables import INBOX, OUTBOX

if TYPE_CHECKING:
    from datetime import datetime

    from sqlalchemy import Connection, Delete

    from bot.store.database import Database

HEARD_DAYS: Final = 30
"""How long an incoming message is known again. The network brings one again for a day, and lets people change one for two."""
SENT_DAYS: Final = 90
"""How long a message that is out keeps its row: a quick reply under it can be pressed until then."""
AT_MOST: Final = 500
"""Rows in one transaction: a message that comes in meanwhile does not wait for more."""


class Pruning:
    """Lets go of old rows, a part at a time, so that nothing waits long."""

    def __init__(self, database: Database) -> None:
        self._database = database

    async def prune(self, now: datetime) -> int:
        """Let go of what was heard and what was sent (or dropped) long ago; return how many rows that were.

        What still waits or is being sent stays, however old. The newest row of the outbox stays too: its number, which buttons
        carry, must not be given out again.
        """
        heard_before, sent_before = now - timedelta(days=HEARD_DAYS), now - timedelta(days=SENT_DAYS)
        heard = select(INBOX.c.channel, INBOX.c.external_id).where(INBOX.c.at < heard_before).limit(AT_MOST)
        over = OUTBOX.c.status.in_((Status.SENT.value, Status.DROPPED.value))
        old = over & (OUTBOX.c.created_at < sent_before) & (OUTBOX.c.id < select(func.max(OUTBOX.c.id)).scalar_subquery())
        sent = select(OUTBOX.c.id).where(old).order_by(OUTBOX.c.id).limit(AT_MOST)
        return sum(
            [
                await self._all(delete(INBOX).where(tuple_(INBOX.c.channel, INBOX.c.external_id).in_(heard))),
                await self._all(delete(OUTBOX).where(OUTBOX.c.id.in_(sent))),
            ]
        )

    async def _all(self, statement: Delete) -> int:
        gone = 0
        while number := await self._database.write(lambda connection: _rows_of(connection, statement)):
            gone += number
        return gone


def _rows_of(connection: Connection, statement: Delete) -> int:
    result: Any = connection.execute(statement)
    number: int = result.rowcount
    return number
