"""The `serve` command: the messaging account, from the first call to the last.

The order at the end is what keeps everything acknowledged: first nothing new comes in and what is at hand is committed, then what
is being sent is sent, then the connections and the database are closed.
"""

from __future__ import annotations

import asyncio
import gc
import logging
import signal
import time
from contextlib import asynccontextmanager
from dataclasses import dataclass
from typing import TYPE_CHECKING, TextIO

import uvloop
from tzlocal import get_localzone_name

from bot.alarms import Alarms
from bot.assistant import Assistant, started
from bot.bootstrap import clock_after, demo, for_newcomers, opened_store
from bot.channels.telegram.desk import CLAIM_HOURS, Desk, House
from bot.channels.telegram.face import Faces
from bot.channels.telegram.network import Network
from bot.channels.telegram.polling import Polling
from bot.channels.telegram.register import Register
from bot.channels.telegram.sending import Sending
from bot.channels.telegram.webhook import Webhook
from bot.errors import Unreachable
from bot.lock import claimed
from bot.log import to_file
from bot.outbox import Outbox, backoff_s
from bot.pace import Limits, Pace
from bot.pictures.gallery import Gallery
from bot.ports import Clock
from bot.settings import ServeSettings, make_folder
from bot.tidying import Tidying
from bot.wording.network import CLAIM, COMMANDS, READY
from core.messages import MayHaveMissed
from core.reading import make_ready, read
from core.reading.acts import Context
from core.session.states import Working

if TYPE_CHECKING:
    from collections.abc import AsyncIterator, Awaitable, Callable
    from datetime import datetime
    from pathlib import Path

    from bot.store.store import Store

FIRST_WAIT_S, LONGEST_WAIT_S = 1.0, 60.0
LAST_HEARD = "last-heard"  # a file in the data folder, touched whenever the network has answered
KEPT_S = 24 * 3600.0  # how long the network keeps what was not asked for

_log = logging.getLogger(__name__)


def run(settings: ServeSettings, out: TextIO) -> None:
    """Serve, see `serve`, on an event loop that costs a third less for each call."""
    uvloop.run(serve(settings, out))


async def serve(settings: ServeSettings, out: TextIO) -> None:
    """Serve until SIGTERM or Ctrl-C.

    Raises:
        bot.errors.TokenRefused: the network does not know the token.
        bot.errors.DataFolderBusy: another process works on the data folder.
    """
    make_folder(settings.data)
    stop = asyncio.Event()
    loop = asyncio.get_running_loop()
    for number in (signal.SIGTERM, signal.SIGINT):
        loop.add_signal_handler(number, stop.set)
    with claimed(settings.data), to_file(settings.data):
        async with opened_store(settings) as store:
            network = Network(settings.token, settings.api)
            try:
                if await _reached(network.start, stop):
                    make_ready()  # before the clock is set: what is due does not wait for it
                    read("11 at 20kg", Context())
                    held, clock = settings.webhook is None, await clock_after(store)
                    async with on_network(
                        network, store, clock, held=held, pictures_in=settings.data, emergency=settings.emergency
                    ) as office:
                        _settle_memory()
                        await _announce(office, out)
                        await _say_missed(office, settings.data / LAST_HEARD)
                        await _listen(office, settings, stop)
            finally:
                await network.stop()


@dataclass(frozen=True)
class Office:
    """Everything that is at work: what comes in goes to the desk."""

    network: Network
    desk: Desk
    assistant: Assistant
    clock: Clock


@asynccontextmanager
async def on_network(
    network: Network,
    store: Store,
    clock: Clock,
    limits: Limits | None = None,
    *,
    held: bool = False,
    pictures_in: Path | None = None,
    emergency: str | None = None,
) -> AsyncIterator[Office]:
    """An assistant at work over an open store and a network that was started; stopped in good order at the end.

    `held`: no alarm is looked at before `Assistant.release`. `pictures_in` is the data folder, where pictures and documents are
    made; None for words alone.
    """
    scenario = demo()
    register = Register(store.people)
    await register.load()
    pace = Pace(limits or Limits())

    async def still_runs(trainee_id: int, ends_at: datetime) -> bool:
        state = await store.state(trainee_id)
        return isinstance(state, Working) and state.ends_at == ends_at

    faces = Faces(clock, pace, network.change, still_runs)
    sending = Sending(network, register, faces, store.state)
    outbox = Outbox(store.outgoing, clock, sending if pictures_in is None else Gallery(sending, pictures_in), pace)
    chores = (faces, Tidying(store.pruning, clock))
    assistant = Assistant(
        store, clock, outbox, Alarms(clock), coach=scenario.coach, emergency=emergency, chores=chores, data=pictures_in
    )
    faces.when_planned(assistant.rearm)
    for account in register.coaches():
        await store.make_coach(account.trainee_id)
    house = House(await for_newcomers(store, scenario), get_localzone_name())
    desk = Desk(network, register, store, assistant, clock, house, pace)
    outbox.when_gone(desk.gone)
    if held:
        assistant.hold()
    try:
        async with started(assistant):
            desk.news()  # what was left when the program stopped
            try:
                yield Office(network, desk, assistant, clock)
            finally:
                await desk.idle()
    finally:
        await desk.idle()


async def _reached(call: Callable[[], Awaitable[None]], stop: asyncio.Event) -> bool:
    """Call the network, again and again while there is none; false when stopped meanwhile."""
    failures = 0
    while not stop.is_set():
        try:
            await call()
        except Unreachable as unreachable:
            failures += 1
            wait_s = max(unreachable.retry_after_s or 0.0, backoff_s(failures, FIRST_WAIT_S, LONGEST_WAIT_S))
            _log.warning("the network cannot be reached; trying again in %.0f s", wait_s)
            try:
                await asyncio.wait_for(stop.wait(), wait_s)
            except TimeoutError:
                continue
        else:
            return True
    return False


def _settle_memory() -> None:
    """Spare the collector what stays for good."""
    gc.collect()
    gc.freeze()


async def _announce(office: Office, out: TextIO) -> None:
    code = await office.desk.claim_code()
    if code is not None:
        said = CLAIM.format(link=office.desk.link(code), bot=office.network.name, hours=CLAIM_HOURS, code=code)
        out.write(f"{said}\n")
    out.write(f"{READY.format(bot=office.network.name)}\n")
    out.flush()


def _age_s(file: Path) -> float:
    """Seconds since a file was touched, 0 when there is none."""
    try:
        return time.time() - file.stat().st_mtime
    except FileNotFoundError:
        return 0.0


async def _say_missed(office: Office, last_heard: Path) -> None:
    """Tell the coaches when we were away for longer than the network keeps what was written."""
    if _age_s(last_heard) > KEPT_S:
        await office.desk.tell_coaches(MayHaveMissed())


async def _listen(office: Office, settings: ServeSettings, stop: asyncio.Event) -> None:
    network, webhook = office.network, settings.webhook
    heard = (settings.data / LAST_HEARD).touch
    if not await _reached(lambda: network.name_commands(COMMANDS), stop):
        return
    if webhook is not None:
        front = Webhook(office.desk, webhook, heard)
        await front.start()
        try:
            if await _reached(lambda: network.listen_by_webhook(webhook.url, webhook.secret), stop):
                await stop.wait()
        finally:
            await front.stop()
        return
    if not await _reached(network.listen_by_polling, stop):
        return
    polling = Polling(network, office.desk, office.clock, office.assistant.release, heard)
    asking = asyncio.create_task(polling.run())
    stopping = asyncio.create_task(stop.wait())
    await asyncio.wait((asking, stopping), return_when=asyncio.FIRST_COMPLETED)
    polling.stop()
    stopping.cancel()
    await asking
