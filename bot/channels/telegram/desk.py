"""The desk: who has written, and who may say what. Strangers get one line, groups are left, trainees talk about themselves."""

from __future__ import annotations

import asyncio
import json
import logging
import re
import secrets
from dataclasses import dataclass
from datetime import timedelta
from typing import TYPE_CHECKING, Any

from telegram.error import TelegramError

from bot.channels.telegram.incoming import (
    Film,
    Group,
    Incoming,
    Nothing,
    NotText,
    Presence,
    Press,
    Text,
    read_update,
)
from bot.channels.telegram.keyboard import read_press
from bot.channels.telegram.register import CHANNEL
from bot.errors import ChannelError
from bot.pace import Rank
from bot.store.people import Newcomer
from bot.store.store import InboxKey
from bot.wording import network as words
from core.catalogue import find, nearest
from core.coach.asks import Invite, TakeClip
from core.coach.hearing import hear
from core.coach.looking import passed
from core.messages import (
    ClipKept,
    ClipUnnamed,
    CoachHelp,
    CoachWelcome,
    FewerNoted,
    InviteMade,
    SafetyNews,
    TextOnly,
    TraineeBack,
    TraineeGone,
    TraineeJoined,
)
from core.session.states import Idle, New, Running
from core.trainee import Trainee

if TYPE_CHECKING:
    from datetime import datetime

    from bot.assistant import Assistant
    from bot.channels.telegram.network import Network
    from bot.channels.telegram.register import Register
    from bot.pace import Pace
    from bot.ports import Clock
    from bot.store.outgoing import Offer
    from bot.store.people import Account
    from bot.store.store import Store
    from core.coach.asks import Ask
    from core.messages import Message

ALPHABET = "ABCDEFGHJKLMNPQRSTUVWXYZ23456789"  # no letter looks like a digit
CODE = re.compile(rf"(?:/start\s+)?([{ALPHABET}]{{10}})", re.IGNORECASE)
CODE_LENGTH = 10
INVITE_HOURS = 72
CLAIM_HOURS = 24
LATE_S = 5.0  # a text that lay longer than this after a pause is read as of when it was written
NAMED = re.compile(r"/?invite[\s:,]*(.*)", re.IGNORECASE | re.DOTALL)
NAME_MAX = 40
STRANGERS_REMEMBERED = 10_000

_log = logging.getLogger(__name__)


@dataclass(frozen=True)
class House:
    """What somebody new comes into: the circuit that is on, and the zone of the house."""

    circuit_id: int
    zone: str


def new_code() -> str:
    """A code that cannot be guessed: ten letters and digits, fifty bits."""
    return "".join(secrets.choice(ALPHABET) for _ in range(CODE_LENGTH))


class Desk:
    """Takes in one update at a time and returns when it is kept; updates of one chat must come one after the other."""

    def __init__(
        self,
        network: Network,
        register: Register,
        store: Store,
        assistant: Assistant,
        clock: Clock,
        house: House,
        pace: Pace,
    ) -> None:
        self._pace = pace
        self._network = network
        self._register = register
        self._store = store
        self._assistant = assistant
        self._clock = clock
        self._house = house
        self._strangers: set[str] = set()
        self._aside: set[asyncio.Task[None]] = set()
        self._telling = asyncio.Lock()
        assistant.when_news(self.news)
        assistant.when_forgotten(self._leave_off, register.remove)
        for account in register.everybody():
            assistant.wishes(account.trainee_id, fewer=account.fewer)
            assistant.away(account.trainee_id, away=account.gone)
        for account in register.coaches():
            assistant.attend(account.trainee_id)
        if register.coaches():
            assistant.called(register.coaches()[0].name)

    async def claim_code(self) -> str | None:
        """A new one-time code for the first coach; None when there is a coach."""
        if any(account.coach for account in self._register.everybody()):
            return None
        code, now = new_code(), self._clock.now()
        await self._store.people.invite_coach(code, now, now + timedelta(hours=CLAIM_HOURS))
        return code

    def link(self, code: str) -> str:
        """The link that opens a chat with us and hands in a code."""
        return f"https://t.me/{self._network.name}?start={code}"

    async def take(self, raw: dict[str, Any], *, backlog: bool) -> None:
        """Take in an update as it came; `backlog` says that it lay at the network for some time.

        What cannot be read or handled is parked, and somebody whom we know is told. Returns when everything is committed.

        Raises:
            Exception: the database does not even keep it parked.
        """
        try:
            came = read_update(raw)
        except Exception as error:  # noqa: BLE001 - whatever the library cannot read must not hold up the others
            _log.warning("update %s cannot be read", raw.get("update_id"))
            await self._park(raw, type(error).__name__)
            return
        try:
            kept = await self._receive(came, backlog=backlog)
        except ChannelError:
            kept = True  # the network was not there for something said beside any conversation
        except Exception:  # noqa: BLE001 - the same for a fault in here
            _log.exception("update %s could not be handled", raw.get("update_id"))
            kept = False
        if not kept:
            await self._park(raw, "not handled")
            address = getattr(came, "address", None)
            if address is not None and self._register.at(address) is not None:
                self._beside(self._say(address, words.NOT_KEPT))

    def gone(self, trainee_id: int) -> None:
        """The network says that nothing can be sent to somebody: stop their clock, and tell the coach."""
        account = self._register.of_trainee(trainee_id)
        if account is not None and not account.gone and not account.leaving:
            self._assistant.away(trainee_id, away=True)
            self._beside(self._lose(account))

    def news(self) -> None:
        """Tell the coaches what they are to know at once: news of safety, and what was asked of them."""
        self._beside(self._tell_news())

    def _leave_off(self, trainee_id: int) -> None:
        """Somebody had everything erased: whoever writes from their address is a stranger, and is told so once."""
        account = self._register.leave(trainee_id)
        if account is not None:
            self._strangers.discard(account.address)

    async def tell_coaches(self, message: Message) -> None:
        """Tell every coach who can be reached."""
        for coach in self._register.coaches():
            await self._assistant.tell(coach.trainee_id, (message,))

    async def idle(self) -> None:
        """Return when nothing is done beside the conversations any more."""
        while self._aside:
            await asyncio.wait(tuple(self._aside))

    async def _receive(self, came: Incoming, *, backlog: bool) -> bool:
        match came:
            case Nothing():
                return True
            case Group():
                return await self._decline(came)
            case Presence():
                return await self._presence(came)
            case Text() | Film() | NotText() | Press():
                account = self._register.at(came.address)
                if account is None:
                    return await self._stranger(came)
                if account.gone:
                    await self._regain(account)
                return await self._known(account, came, backlog=backlog)

    # Those who have no account

    async def _stranger(self, came: Text | Film | NotText | Press) -> bool:
        if isinstance(came, Text) and not came.edited and (found := CODE.fullmatch(came.text.strip())) is not None:
            newcomer = Newcomer(CHANNEL, came.address, came.called)
            joined = await self._store.people.join(
                found[1].upper(),
                newcomer,
                await self._store.newcomer_circuit() or self._house.circuit_id,
                self._clock.now(),
                lambda name: Trainee(name, self._house.zone),
            )
            if joined is not None:
                if joined.account.coach:
                    await self._store.make_coach(joined.account.trainee_id)
                self._register.enter(joined.account)
                return await self._welcome(joined.account, joined.invited_by, _key(came))
        if came.address in self._strangers:
            return True
        if len(self._strangers) >= STRANGERS_REMEMBERED:
            self._strangers.clear()
        self._strangers.add(came.address)
        if await self._store.people.first_seen(CHANNEL, came.address, self._clock.now()):
            self._beside(self._say(came.address, words.STRANGER))
        return True

    async def _welcome(self, account: Account, invited_by: int | None, key: InboxKey) -> bool:
        if account.coach:
            self._assistant.called(account.name)
            self._assistant.attend(account.trainee_id)
            return await self._assistant.tell(account.trainee_id, (CoachWelcome(account.name),), key)
        if invited_by is not None:
            await self._assistant.tell(invited_by, (TraineeJoined(account.name),))
        return await self._assistant.opened(account.trainee_id, key)

    async def _decline(self, came: Group) -> bool:
        if came.present:
            self._beside(self._leave(came.address))
        return True

    async def _leave(self, address: str) -> None:
        await self._network.send(address, words.GROUP, silent=True)
        await self._network.leave(address)

    # Those who have one

    async def _known(self, account: Account, came: Text | Film | NotText | Press, *, backlog: bool) -> bool:
        match came:
            case Press():
                return await self._press(account, came)
            case Film() if account.coach:
                return await self._film(account, came)
            case Film():
                return await self._assistant.tell(account.trainee_id, (TextOnly("film"),), _key(came))
            case NotText(what=what):
                return await self._assistant.tell(account.trainee_id, (TextOnly(what),), _key(came))
            case Text(edited=True):
                return await self._edited(account, came)
            case Text():
                late = backlog and (self._clock.now() - came.written_at).total_seconds() > LATE_S
                return await self._text(account, came.text, _key(came), came.written_at if late else None)

    async def _text(self, account: Account, text: str, key: InboxKey, written_at: datetime | None = None) -> bool:
        said = _as_typed(text)
        plain = " ".join(said.lower().split()).rstrip("!. ")
        if plain in words.FEWER_WORDS or plain in words.ALL_WORDS:
            fewer = plain in words.FEWER_WORDS
            await self._register.wish(account, fewer=fewer)
            self._assistant.wishes(account.trainee_id, fewer=fewer)
            return await self._assistant.tell(account.trainee_id, (FewerNoted(fewer),), key)
        if account.coach:
            return await self._coach(account, text, plain, key, written_at)
        if text.startswith("/start"):
            return await self._assistant.opened(account.trainee_id, key)
        return await self._assistant.said(account.trainee_id, said, key.external_id, CHANNEL, written_at=written_at)

    async def _coach(self, account: Account, text: str, plain: str, key: InboxKey, written_at: datetime | None) -> bool:
        """A coach invites, types circuits and plans, and may train; a coach's own step and the assistant tell these apart."""
        invites = await self._invited(account, text)
        if invites is not None:
            return await self._invite(account, " ".join((invites.name or "").split())[:NAME_MAX] or None, key)
        if plain in words.TRAIN_WORDS:
            return await self._assistant.trains(account.trainee_id, key)
        if plain in words.HELP_WORDS and isinstance(await self._store.state(account.trainee_id), New | Idle):
            first = InboxKey(key.channel, f"{key.external_id}:help")
            await self._assistant.tell(account.trainee_id, (CoachHelp(),), first)
        return await self._assistant.said(account.trainee_id, _as_typed(text), key.external_id, CHANNEL, written_at=written_at)

    async def _invited(self, account: Account, text: str) -> Invite | None:
        """The invite that a coach asks for, None when the text asks for something else; in a workout only a plain word is one."""
        plain = NAMED.fullmatch(text.strip())
        if plain is not None:
            return Invite(plain[1])
        if isinstance(await self._store.state(account.trainee_id), Running):
            return None
        ask = self._heard(text)
        return ask if isinstance(ask, Invite) else None

    def _heard(self, text: str) -> Ask | None:
        """What a coach asks for, as far as it is this network's own to do."""
        names = tuple(account.name for account in self._register.everybody() if not account.coach)
        return hear(text, names, self._clock.now().date())

    async def _invite(self, account: Account, name: str | None, key: InboxKey) -> bool:
        if await self._store.heard_at(key) is not None:
            return True
        code, now = new_code(), self._clock.now()
        await self._store.people.invite(code, account.trainee_id, name, now, now + timedelta(hours=INVITE_HOURS))
        made = InviteMade(name, self.link(code), code, INVITE_HOURS)
        return await self._assistant.tell(account.trainee_id, (made,), key)

    async def _film(self, account: Account, came: Film) -> bool:
        ask = self._heard(came.caption)
        said = ask.exercise if isinstance(ask, TakeClip) else came.caption.strip()
        found = find(said) if said else None
        if found is None:
            near = tuple(exercise.name for exercise in nearest(said)) if said else ()
            return await self._assistant.tell(account.trainee_id, (ClipUnnamed(near),), _key(came))
        await self._register.keep_clip(found.slug, came.file_id, self._clock.now())
        return await self._assistant.tell(account.trainee_id, (ClipKept(found.name),), _key(came))

    async def _edited(self, account: Account, came: Text) -> bool:
        key = InboxKey(CHANNEL, f"{came.address}:{came.message_id}:{came.update_id}")
        if account.coach and isinstance(await self._store.state(account.trainee_id), New):
            return await self._text(account, came.text, key)
        return await self._assistant.edited(
            account.trainee_id, _as_typed(came.text), key.external_id, CHANNEL, f"{came.address}:{came.message_id}"
        )

    async def _press(self, account: Account, came: Press) -> bool:
        pressed = read_press(came.data)
        offer = None if pressed is None else await self._store.outgoing.offer(pressed[0])
        taken: bool | None = None
        if pressed is not None and offer is not None:
            key = InboxKey(CHANNEL, f"{came.address}:press:{came.press_id}")
            if account.coach and await self._is_coachs(account, offer):
                taken = await self._text(account, offer.rendered.replies[pressed[1]], key)
            else:
                taken = await self._assistant.pressed(account.trainee_id, offer, pressed[1], key.external_id, CHANNEL)
        self._beside(self._answer(account, came, words.TOO_LATE if taken is None else None))
        return taken is not False

    async def _is_coachs(self, account: Account, offer: Offer) -> bool:
        """Whether a quick reply was offered to a coach as a coach, and still means what it meant."""
        if offer.trainee_id != account.trainee_id:
            return False
        if offer.rendered.kind in ("CoachHelp", "CoachWelcome"):
            return True
        return offer.moment is not None and offer.moment == await self._store.coach_moment(account.trainee_id)

    async def _answer(self, account: Account, came: Press, text: str | None) -> None:
        """Show that the press has arrived, and take the buttons away if the chat has room for that: they are checked anyway."""
        await self._network.answer_press(came.press_id, text)
        now = self._clock.now()
        if came.message_id is not None and self._pace.ready_at(account.trainee_id, Rank.ORNAMENT, now) <= now:
            self._pace.count(account.trainee_id, now)
            await self._network.take_buttons(came.address, came.message_id)

    # Coming and going

    async def _presence(self, came: Presence) -> bool:
        account = self._register.at(came.address)
        if account is None or account.gone is not came.here:
            return True
        if came.here:
            await self._regain(account)
        else:
            self._assistant.away(account.trainee_id, away=True)
            await self._lose(account)
        return True

    async def _lose(self, account: Account) -> None:
        await self._register.mark(account, self._clock.now())
        await self.tell_coaches(TraineeGone(account.name))

    async def _regain(self, account: Account) -> None:
        await self._register.mark(account, None)
        self._assistant.away(account.trainee_id, away=False)
        if account.coach:
            self._assistant.attend(account.trainee_id)
            self.news()
        else:
            await self.tell_coaches(TraineeBack(account.name))

    async def _tell_news(self) -> None:
        """News of safety, then questions, that no coach was told yet; kept until there is one who can be reached.

        After a crash in between they are told again.
        """
        async with self._telling:
            coaches = self._register.coaches()
            notes = await self._store.coach_notes.untold() if coaches else ()
            for one in notes:
                if self._assistant.has_left(one.trainee_id):
                    continue
                message = SafetyNews(one.trainee, one.note.kind, one.note.value)
                for coach in coaches:
                    if coach.trainee_id != one.trainee_id:
                        await self._assistant.tell(coach.trainee_id, (message,))
                await self._store.coach_notes.told([one.number], self._clock.now())
            for asked in await self._store.questions.untold() if coaches else ():
                if self._assistant.has_left(asked.trainee_id):
                    continue
                await self.tell_coaches(passed(asked.trainee, asked.question))
                await self._store.questions.told(asked, self._clock.now())

    # Beside

    async def _say(self, address: str, text: str) -> None:
        await self._network.send_plain(address, text, silent=False)

    async def _park(self, raw: dict[str, Any], reason: str) -> None:
        await self._store.people.park(CHANNEL, json.dumps(raw, ensure_ascii=False), reason, self._clock.now())

    def _beside(self, work: Any) -> None:  # noqa: ANN401 - a coroutine of our own
        task = asyncio.create_task(self._alone(work))
        self._aside.add(task)
        task.add_done_callback(self._aside.discard)

    async def _alone(self, work: Any) -> None:  # noqa: ANN401 - the same
        try:
            await work
        except (ChannelError, TelegramError):
            _log.info("something said beside any conversation did not arrive")
        except Exception:  # noqa: BLE001 - nobody waits for this task
            _log.exception("something done beside any conversation failed")


def _key(came: Text | Film | NotText) -> InboxKey:
    return InboxKey(CHANNEL, f"{came.address}:{came.message_id}")


def _as_typed(text: str) -> str:
    """A command of the network's menu as the words it stands for."""
    if not text.startswith("/"):
        return text
    command = text[1:].split("@", maxsplit=1)[0].strip().lower()
    return words.COMMANDS.get(command, text[1:])
