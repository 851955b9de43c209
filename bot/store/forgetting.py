"""Erasing a trainee: every row of theirs in one transaction, and what names them elsewhere; the bare row goes with the last word.

What stays is a count. The bare row and the account are kept until the goodbye is out, so that it has somewhere to go; `bury` takes
these too. Other people's own rows are not searched, except the coaches' messages and talk.
"""

from __future__ import annotations

import json
import re
from dataclasses import dataclass
from typing import TYPE_CHECKING

from sqlalchemy import delete, func, insert, or_, select, update

from bot.store import tables
from bot.store.values import coach_state_text
from core.coach.states import Quiet

if TYPE_CHECKING:
    from collections.abc import Iterator
    from datetime import datetime

    from sqlalchemy import Connection

    from bot.store.database import Database

FORGOTTEN = "forgotten"  # the tally of everybody who had themselves erased
HIGHEST = "highest trainee"  # the tally that keeps a number from being given twice
ERASED = "erased"  # the reason of a coach's message that named somebody who is gone
UNSENT = ("waiting", "sending")
POINTS_AT = r'"(?:client|clients|whom)":(?:\[[\d,]*\b)?{id}\b'  # in a coach's stored talk

# Everything that belongs to a trainee, each table before those it refers to.
OF_TRAINEE = (
    tables.SET_VOID,
    tables.SET_RECORD,
    tables.WORKOUT,
    tables.PAIN_RECORD,
    tables.SAFETY_NOTE,
    tables.UNASKED,
    tables.COACH_WORD,
    tables.QUESTION,
    tables.RACK_ITEM,
    tables.COMING,
    tables.BLOCK_CIRCUIT,
    tables.BLOCK,
    tables.INBOX,
    tables.OUTBOX,
)


@dataclass(frozen=True)
class Leaver:
    """Somebody who is erased, with the bare row still there; `reachable` while there is an account to say goodbye to."""

    id: int
    reachable: bool


@dataclass(frozen=True)
class _Whom:
    """Who is to be erased, as others' rows may name them."""

    name: str
    longer: tuple[str, ...]  # names of others that hold this one, the longest first
    addresses: frozenset[str]

    def is_named(self, *texts: str | None) -> bool:
        """Whether a text names them, whatever the lines are folded to, and not only somebody with a longer name."""
        said = " ".join(" ".join(text for text in texts if text is not None).split()).casefold()
        for other in self.longer:
            said = said.replace(other, "\0")
        return re.search(rf"(?<!\w){re.escape(self.name)}(?!\w)", said) is not None


class Forgetting:
    """Those who had everything erased, as rows of one database; one short transaction a call."""

    def __init__(self, database: Database) -> None:
        self._database = database

    async def leaving(self) -> tuple[Leaver, ...]:
        """Everybody who is erased and not buried yet."""
        accounts = select(tables.ACCOUNT.c.trainee_id)
        rows = select(tables.TRAINEE.c.id, tables.TRAINEE.c.id.in_(accounts).label("reachable"))
        found = rows.where(tables.TRAINEE.c.forgotten_at.is_not(None)).order_by(tables.TRAINEE.c.id)
        return await self._database.read(
            lambda connection: tuple(Leaver(row.id, bool(row.reachable)) for row in connection.execute(found))
        )

    async def bury(self, trainee_id: int) -> None:
        """Take the bare row and the account of somebody who was erased: the goodbye is out, or cannot be sent."""
        await self._database.write(lambda connection: bury(connection, trainee_id))

    async def scrub(self) -> None:
        """Leave nothing of what was deleted in the database's files."""
        await self._database.scrub()

    async def owners(self) -> tuple[frozenset[int], frozenset[int]]:
        """The ids of everybody who may have files, and those of the coaches among them."""

        def work(connection: Connection) -> tuple[frozenset[int], frozenset[int]]:
            there = select(tables.TRAINEE.c.id).where(tables.TRAINEE.c.forgotten_at.is_(None))
            return frozenset(connection.execute(there).scalars()), frozenset(coaches(connection))

        return await self._database.read(work)


def coaches(connection: Connection) -> tuple[int, ...]:
    """The ids of the coaches."""
    return tuple(connection.execute(select(tables.COACH.c.person_id).order_by(tables.COACH.c.person_id)).scalars())


def nameless(trainee_id: int, at: datetime) -> str:
    """What the bare row of somebody who was erased is called: nothing, but like nobody else."""
    return f"(erased {trainee_id} {at.isoformat()})"


def erase(connection: Connection, trainee_id: int, at: datetime) -> None:
    """Erase everything of a trainee but the bare row and the account, inside the caller's transaction; count one more.

    The columns of the bare row that a trainee's value fills are the caller's to write.
    """
    whom = _whom(connection, trainee_id)
    for table in OF_TRAINEE:
        connection.execute(delete(table).where(table.c.trainee_id == trainee_id))
    _erase_invites(connection, trainee_id, whom)
    connection.execute(delete(tables.STRANGER).where(tables.STRANGER.c.address.in_(whom.addresses)))
    parked = tables.PARKED
    lost = [row.id for row in connection.execute(select(parked)) if _holds(row.body, whom)]
    connection.execute(delete(parked).where(parked.c.id.in_(lost)))
    for coach_id in coaches(connection):
        _blank(connection, coach_id, whom)
        _calm(connection, coach_id, trainee_id, whom)
    connection.execute(update(tables.TRAINEE).where(tables.TRAINEE.c.id == trainee_id).values(forgotten_at=at))
    _tally(connection, FORGOTTEN, forgotten_so_far(connection) + 1)


def forgotten_so_far(connection: Connection) -> int:
    """How many people had everything erased."""
    return _total(connection, FORGOTTEN)


def bury(connection: Connection, trainee_id: int) -> None:
    """Delete what was left of somebody who was erased; their number is never given again."""
    for table in (tables.OUTBOX, tables.INBOX, tables.ACCOUNT):
        connection.execute(delete(table).where(table.c.trainee_id == trainee_id))
    connection.execute(delete(tables.TRAINEE).where(tables.TRAINEE.c.id == trainee_id))
    _tally(connection, HIGHEST, max(trainee_id, _total(connection, HIGHEST)))


def unused_number(connection: Connection) -> int | None:
    """The number for a new trainee where the database would give one of somebody erased; None: it numbers well by itself."""
    highest = _total(connection, HIGHEST)
    if not highest or connection.dialect.name != "sqlite":
        return None
    there: int | None = connection.execute(select(func.max(tables.TRAINEE.c.id))).scalar_one_or_none()
    return max(highest, there or 0) + 1


def _whom(connection: Connection, trainee_id: int) -> _Whom:
    names = {row.id: row.name.casefold() for row in connection.execute(select(tables.TRAINEE.c.id, tables.TRAINEE.c.name))}
    name = names.pop(trainee_id)
    longer = sorted((other for other in names.values() if name in other and name != other), key=len, reverse=True)
    addresses = select(tables.ACCOUNT.c.address).where(tables.ACCOUNT.c.trainee_id == trainee_id)
    return _Whom(" ".join(name.split()), tuple(longer), frozenset(connection.execute(addresses).scalars()))


def _erase_invites(connection: Connection, trainee_id: int, whom: _Whom) -> None:
    """The code that they came in by, and codes made out to their name."""
    invite = tables.INVITE
    theirs = (invite.c.used_by == trainee_id) | (invite.c.used_by.is_(None) & (func.lower(invite.c.name) == whom.name))
    connection.execute(delete(invite).where(theirs))


def _holds(body: str, whom: _Whom) -> bool:
    """Whether what came in and could not be handled is from their address, or names them."""
    try:
        values = tuple(_values(json.loads(body)))
    except ValueError:
        values = (body,)
    return any(str(value) in whom.addresses or (isinstance(value, str) and whom.is_named(value)) for value in values)


def _values(body: object) -> Iterator[object]:
    """Every single value of a JSON text, at any depth."""
    match body:
        case dict():
            for value in body.values():
                yield from _values(value)
        case list():
            for value in body:
                yield from _values(value)
        case _:
            yield body


def _blank(connection: Connection, coach_id: int, whom: _Whom) -> None:
    """Blank a coach's messages that name them. The rows stay, so that a button pressed later is not another message's."""
    outbox, first = tables.OUTBOX, whom.name.split()[0]
    maybe = or_(*(column.icontains(first, autoescape=True) for column in (outbox.c.text, outbox.c.replies, outbox.c.shows)))
    rows = connection.execute(select(outbox).where((outbox.c.trainee_id == coach_id) & maybe)).all()
    naming = [row for row in rows if whom.is_named(row.text, row.replies, row.shows)]
    nothing = {"text": "", "replies": "[]", "shows": None, "moment": None}
    for unsent in (False, True):
        ids = [row.id for row in naming if (row.status in UNSENT) is unsent]
        columns = nothing | ({"status": "dropped", "reason": ERASED} if unsent else {})
        connection.execute(update(outbox).where(outbox.c.id.in_(ids)).values(columns))


def _calm(connection: Connection, coach_id: int, trainee_id: int, whom: _Whom) -> None:
    """Let a coach's talk that is about them begin anew: what was shown, and what would take it back."""
    of_coach = tables.COACH.c.person_id == coach_id
    state = connection.execute(select(tables.COACH.c.state).where(of_coach)).scalar_one()
    if whom.is_named(state) or re.search(POINTS_AT.format(id=trainee_id), state) is not None:
        connection.execute(update(tables.COACH).where(of_coach).values(state=coach_state_text(Quiet())))


def _total(connection: Connection, name: str) -> int:
    found: int | None = connection.execute(select(tables.TALLY.c.total).where(tables.TALLY.c.name == name)).scalar_one_or_none()
    return found or 0


def _tally(connection: Connection, name: str, total: int) -> None:
    connection.execute(delete(tables.TALLY).where(tables.TALLY.c.name == name))
    connection.execute(insert(tables.TALLY), {"name": name, "total": total})
