"""Who is who on the network, and the coach's films: kept in memory beside the database, which is asked once, at the start."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from datetime import datetime

    from bot.store.people import Account, People

CHANNEL = "telegram"


class Register:
    """Everybody with an account, by address and by trainee."""

    def __init__(self, people: People) -> None:
        self.people = people
        self.clips: dict[str, str] = {}
        self._by_address: dict[str, Account] = {}
        self._by_trainee: dict[int, Account] = {}

    async def load(self) -> None:
        """Read everybody from the database."""
        for account in await self.people.accounts(CHANNEL):
            self.enter(account)
        self.clips = await self.people.clips(CHANNEL)

    def everybody(self) -> tuple[Account, ...]:
        """Every account."""
        return tuple(self._by_trainee.values())

    def coaches(self) -> tuple[Account, ...]:
        """The coaches who can be reached, the first of them first."""
        return tuple(account for account in self.everybody() if account.coach and not account.gone)

    def at(self, address: str) -> Account | None:
        """Who writes from an address."""
        return self._by_address.get(address)

    def of_trainee(self, trainee_id: int) -> Account | None:
        """The account of a trainee."""
        return self._by_trainee.get(trainee_id)

    def enter(self, account: Account) -> None:
        """Somebody is new, or changed."""
        self._by_trainee[account.trainee_id] = account
        if not account.leaving:  # who writes from there is a stranger, and a goodbye still goes there
            self._by_address[account.address] = account

    def leave(self, trainee_id: int) -> Account | None:
        """Somebody had everything erased: they are a stranger from now on."""
        account = self._by_trainee.get(trainee_id)
        if account is None:
            return None
        self._by_address.pop(account.address, None)
        self.enter(replace(account, name="", leaving=True))
        return account

    def remove(self, trainee_id: int) -> None:
        """Nothing is left of somebody."""
        self._by_trainee.pop(trainee_id, None)

    async def wish(self, account: Account, *, fewer: bool) -> None:
        """Keep a wish for fewer messages, or for all."""
        await self.people.wish_fewer(account, fewer=fewer)
        self.enter(replace(account, fewer=fewer))

    async def mark(self, account: Account, gone_at: datetime | None) -> None:
        """Keep since when nothing can be sent to somebody; None: they are back."""
        await self.people.mark_gone(account, gone_at)
        self.enter(replace(account, gone=gone_at is not None))

    async def keep_clip(self, exercise: str, file_id: str, now: datetime) -> None:
        """Keep a film of an exercise."""
        await self.people.keep_clip(CHANNEL, exercise, file_id, now)
        self.clips[exercise] = file_id
