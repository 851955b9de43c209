"""Who writes under which address of a messaging network: accounts, invites, strangers; clips; what could not be handled."""

from __future__ import annotations

from dataclasses import dataclass
from hashlib import sha256
from typing import TYPE_CHECKING

from sqlalchemy import delete, func, insert, select, update

from bot.store.rows import add_trainee
from bot.store.tables import ACCOUNT, CLIP, INVITE, PARKED, STRANGER, TRAINEE

if TYPE_CHECKING:
    from collections.abc import Callable
    from datetime import datetime

    from sqlalchemy import ColumnElement, Connection

    from bot.store.database import Database
    from core.trainee import Trainee


@dataclass(frozen=True)
class Account:
    """A person on a messaging network.

    Attributes:
        channel, address: the network, and its own address of the person there.
        trainee_id: their row; a coach has one too, and may train.
        name: what they are called here.
        coach: whether they are a coach.
        fewer: whether they wish for fewer messages.
        gone: whether nothing can be sent to them just now.
        leaving: whether they had everything erased, and only a goodbye still goes out.
    """

    channel: str
    address: str
    trainee_id: int
    name: str
    coach: bool = False
    fewer: bool = False
    gone: bool = False
    leaving: bool = False


@dataclass(frozen=True)
class Newcomer:
    """Somebody with a code: their address, and what the network calls them."""

    channel: str
    address: str
    called: str


@dataclass(frozen=True)
class Joined:
    """Somebody who has come in, and the coach who invited them (None: nobody did, they are the first coach)."""

    account: Account
    invited_by: int | None


def fingerprint(code: str) -> str:
    """What is kept of a code: letters count the same, small or capital."""
    return sha256(code.strip().upper().encode()).hexdigest()


class People:
    """Accounts and what belongs to them, one short transaction a call."""

    def __init__(self, database: Database) -> None:
        self._database = database

    async def accounts(self, channel: str) -> tuple[Account, ...]:
        """Everybody on a network."""
        both = select(ACCOUNT, TRAINEE.c.name, TRAINEE.c.forgotten_at).join(TRAINEE, TRAINEE.c.id == ACCOUNT.c.trainee_id)
        statement = both.where(ACCOUNT.c.channel == channel).order_by(ACCOUNT.c.trainee_id)

        def work(connection: Connection) -> tuple[Account, ...]:
            return tuple(
                Account(
                    row.channel,
                    row.address,
                    row.trainee_id,
                    row.name,
                    row.coach,
                    row.fewer,
                    row.gone_at is not None,
                    row.forgotten_at is not None,
                )
                for row in connection.execute(statement)
            )

        return await self._database.read(work)

    async def invite(self, code: str, invited_by: int, name: str | None, now: datetime, expires_at: datetime) -> None:
        """Keep a code that lets one trainee in; `name` is what the coach calls them."""
        row = _invite(code, now, expires_at) | {"coach": False, "invited_by": invited_by, "name": name}
        await self._database.write(lambda connection: connection.execute(insert(INVITE), row).close())

    async def invite_coach(self, code: str, now: datetime, expires_at: datetime) -> None:
        """Keep the code that makes a coach, instead of one that was not used."""

        def work(connection: Connection) -> None:
            connection.execute(delete(INVITE).where(INVITE.c.coach & INVITE.c.used_by.is_(None)))
            connection.execute(insert(INVITE), _invite(code, now, expires_at) | {"coach": True})

        await self._database.write(work)

    async def join(
        self, code: str, newcomer: Newcomer, circuit_id: int, now: datetime, make: Callable[[str], Trainee]
    ) -> Joined | None:
        """Let somebody in by a code, which is used up by it; None when it is unknown, used or expired, and nothing changes.

        `make` gives the trainee of a name. A name that is taken gets a number behind it.
        """

        def work(connection: Connection) -> Joined | None:
            valid = (INVITE.c.fingerprint == fingerprint(code)) & INVITE.c.used_by.is_(None) & (INVITE.c.expires_at >= now)
            found = connection.execute(select(INVITE).where(valid).with_for_update()).one_or_none()
            if found is None:
                return None
            name = _free_name(connection, found.name or newcomer.called)
            trainee_id = add_trainee(connection, make(name), circuit_id)
            account = Account(newcomer.channel, newcomer.address, trainee_id, name, coach=found.coach)
            row = {"channel": account.channel, "address": account.address, "trainee_id": trainee_id, "coach": found.coach}
            _make_way(connection, account)
            connection.execute(insert(ACCOUNT), row | {"fewer": False, "joined_at": now})
            connection.execute(update(INVITE).where(INVITE.c.fingerprint == found.fingerprint).values(used_by=trainee_id))
            return Joined(account, found.invited_by)

        return await self._database.write(work)

    async def wish_fewer(self, account: Account, *, fewer: bool) -> None:
        """Keep a wish for fewer messages, or for all."""
        await self._change(account, fewer=fewer)

    async def mark_gone(self, account: Account, at: datetime | None) -> None:
        """Note since when nothing can be sent to somebody; None: they are back."""
        await self._change(account, gone_at=at)

    async def first_seen(self, channel: str, address: str, now: datetime) -> bool:
        """Note a stranger; true when they were not noted before."""
        same = (STRANGER.c.channel == channel) & (STRANGER.c.address == address)

        def work(connection: Connection) -> bool:
            if connection.execute(select(STRANGER.c.at).where(same)).first() is not None:
                return False
            connection.execute(insert(STRANGER), {"channel": channel, "address": address, "at": now})
            return True

        return await self._database.write(work)

    async def keep_clip(self, channel: str, exercise: str, file_id: str, now: datetime) -> None:
        """Keep the coach's film of an exercise (a slug), instead of an earlier one."""
        same = (CLIP.c.channel == channel) & (CLIP.c.exercise == exercise)

        def work(connection: Connection) -> None:
            connection.execute(delete(CLIP).where(same))
            connection.execute(insert(CLIP), {"channel": channel, "exercise": exercise, "file_id": file_id, "at": now})

        await self._database.write(work)

    async def clips(self, channel: str) -> dict[str, str]:
        """The network's id of the coach's film, by exercise."""
        statement = select(CLIP.c.exercise, CLIP.c.file_id).where(CLIP.c.channel == channel)
        return await self._database.read(lambda connection: {row.exercise: row.file_id for row in connection.execute(statement)})

    async def park(self, channel: str, body: str, reason: str, now: datetime) -> None:
        """Keep what came in and could not be handled."""
        row = {"channel": channel, "body": body, "reason": reason, "at": now}
        await self._database.write(lambda connection: connection.execute(insert(PARKED), row).close())

    async def _change(self, account: Account, **columns: object) -> None:
        of_account = (ACCOUNT.c.channel == account.channel) & (ACCOUNT.c.address == account.address)
        statement = update(ACCOUNT).where(of_account).values(**columns)
        await self._database.write(lambda connection: connection.execute(statement).close())


def _invite(code: str, now: datetime, expires_at: datetime) -> dict[str, object]:
    return {"fingerprint": fingerprint(code), "made_at": now, "expires_at": expires_at}


def _make_way(connection: Connection, account: Account) -> None:
    """Take the account of somebody who had everything erased and comes back before the goodbye is out."""
    erased = select(TRAINEE.c.id).where(TRAINEE.c.forgotten_at.is_not(None))
    there = (ACCOUNT.c.channel == account.channel) & (ACCOUNT.c.address == account.address)
    connection.execute(delete(ACCOUNT).where(there & ACCOUNT.c.trainee_id.in_(erased)))


def _free_name(connection: Connection, wanted: str) -> str:
    """The name, or the name with the first number that is free."""
    name, number = wanted, 1
    while connection.execute(select(func.count()).select_from(TRAINEE).where(_named(name))).scalar_one():
        number += 1
        name = f"{wanted} {number}"
    return name


def _named(name: str) -> ColumnElement[bool]:
    return func.lower(TRAINEE.c.name) == name.lower()
