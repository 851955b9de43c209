"""How fast messages may go out: so many a second in one chat, so many over all, short bursts allowed; the clock of a workout first.

Networks publish such limits only roughly. A chat that is told to wait waits alone; a burst over all chats leaves room for clocks.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime, timedelta
from enum import IntEnum

KEPT_FOR_CLOCKS = 8.0  # of the burst over all chats: a broadcast never takes the last of it


class Rank(IntEnum):
    """What goes first when not everything can go at once."""

    CLOCK = 0  # a running workout, and anything urgent
    ANSWER = 1
    UNASKED = 2  # reminders, broadcasts
    ORNAMENT = 3  # the face of the work clock: it may as well not be sent


CLOCKS = frozenset(
    {"Card", "Down", "GetReady", "Go", "HalfWay", "PainStop", "SecondsLeft", "SwitchSides", "UnwellPause", "UrgentStop"}
)
UNASKED = frozenset({"FollowUp", "Reminder", "StillThere"})


def rank_of(kind: str) -> Rank:
    """The rank of a kind of message."""
    if kind in CLOCKS:
        return Rank.CLOCK
    return Rank.UNASKED if kind in UNASKED else Rank.ANSWER


@dataclass
class _Bucket:
    """Tokens that come back at `rate_s` a second up to `burst`; `tokens` is what there was at `at`."""

    rate_s: float
    burst: float
    tokens: float
    at: datetime

    def filled(self, now: datetime) -> float:
        return min(self.burst, self.tokens + max(0.0, (now - self.at).total_seconds()) * self.rate_s)

    def ready_at(self, now: datetime, keep: float) -> datetime:
        """When a token can be taken that leaves `keep` behind."""
        missing = 1.0 + keep - self.filled(now)
        return now if missing <= 0 else now + timedelta(seconds=missing / self.rate_s)

    def take(self, now: datetime) -> None:
        self.tokens, self.at = self.filled(now) - 1.0, max(now, self.at)


@dataclass(frozen=True)
class Limits:
    """Messages a second, and how many may follow at once: in a chat, and over all chats."""

    chat_s: float = 1.0
    chat_burst: float = 4.0
    all_s: float = 28.0  # a little under the thirty that the network documents
    all_burst: float = 28.0


NO_LIMITS = Limits(chat_s=1e6, chat_burst=1e6, all_s=1e6, all_burst=1e6)  # a channel of one's own, such as a terminal


class Pace:
    """Says when a chat may send, and counts what was sent."""

    def __init__(self, limits: Limits) -> None:
        self._limits = limits
        self._chats: dict[int, _Bucket] = {}
        self._all: _Bucket | None = None
        self._held: dict[int, datetime] = {}

    def ready_at(self, trainee_id: int, rank: Rank, now: datetime) -> datetime:
        """When a message of this rank may go out in a chat: `now`, or later."""
        limits = self._limits
        chat = self._chats.get(trainee_id)
        in_chat = now if chat is None else chat.ready_at(now, 1.0 if rank is Rank.ORNAMENT else 0.0)
        in_chat = max(in_chat, self._held.get(trainee_id, now))
        spare = min(KEPT_FOR_CLOCKS, limits.all_burst - 1.0) if rank >= Rank.UNASKED else 0.0
        return in_chat if self._all is None else max(in_chat, self._all.ready_at(now, spare))

    def hold(self, trainee_id: int, until: datetime) -> None:
        """The network wants to hear nothing for a chat before this instant."""
        self._held[trainee_id] = until

    def count(self, trainee_id: int, now: datetime) -> None:
        """A message goes out now."""
        limits = self._limits
        if trainee_id not in self._chats:
            self._chats[trainee_id] = _Bucket(limits.chat_s, limits.chat_burst, limits.chat_burst, now)
        if self._all is None:
            self._all = _Bucket(limits.all_s, limits.all_burst, limits.all_burst, now)
        self._chats[trainee_id].take(now)
        if self._held.get(trainee_id, now) < now:
            del self._held[trainee_id]
        self._all.take(now)
