"""A house on the stand-in network: a coach, trainees, a simulated clock, everything else real."""

import asyncio
from contextlib import asynccontextmanager
from datetime import UTC, datetime, timedelta

import pytest

from bot.bootstrap import rendered
from bot.channels.telegram.network import Network
from bot.channels.telegram.polling import Polling
from bot.clock import SimulatedClock
from bot.serving import on_network
from bot.settings import Secret
from bot.simulation import Simulation
from bot.store.store import Store
from tests.wire.standin import TOKEN, StandIn

T0 = datetime(2026, 3, 2, 6, 30, tzinfo=UTC)
ROSA, ANA, BEN = 1, 11, 12
READING_S = 3
FIRST_TALK = ("yes", "kg", "a pair of 8s, 12s and a 16")


class House:
    """The program at work on the network, and what a test does there. Everything settles before the next thing happens."""

    def __init__(self, network, office, store, clock):
        self.network, self.office, self.store, self.clock = network, office, store, clock
        self.network_name = office.network.name
        self.assistant, self.desk = office.assistant, office.desk
        self.simulation = Simulation(office.assistant, clock)

    async def settled(self):
        """Return when every update is confirmed, nothing is due and nothing is on its way."""
        calls = -1
        while calls != len(self.network.calls) or not self.network.all_confirmed:
            calls = len(self.network.calls)
            await self.network.until(lambda: self.network.all_confirmed)
            await self.assistant.settled()
            await self.desk.idle()
            await self.assistant.settled()

    async def says(self, chat, *texts):
        """Somebody sends texts, one after the other, as fast as people read and type; returns the id of the last."""
        number = 0
        for text in texts:
            number = await self.network.text(chat, text)
            await self.settled()
            await self.after(READING_S)
        return number

    async def presses(self, chat, label, message=None):
        """Somebody presses a button; returns what the network was told to show for a moment."""
        press = await self.network.press(chat, label, message)
        await self.settled()
        return self.network.answers[press]

    async def after(self, seconds):
        """The clock goes on."""
        await self.simulation.advance_to(self.clock.now() + timedelta(seconds=seconds))
        await self.settled()

    async def claimed(self):
        """Rosa has become the coach."""
        await self.says(ROSA, f"/start {await self.desk.claim_code()}")

    async def invited(self, chat, name=None):
        """Somebody has come in by Rosa's invite."""
        await self.says(ROSA, f"invite {name or ''}".strip())
        code = self.network.last(ROSA).text.rsplit(" ", 1)[1]
        await self.says(chat, f"/start {code}")

    async def ready(self, chat, name=None):
        """Somebody has come in and answered the first talk."""
        await self.invited(chat, name)
        await self.says(chat, *FIRST_TALK)

    async def sets(self, chat):
        """The standing sets of somebody."""
        account = self.desk._register.at(str(chat))  # noqa: SLF001
        return (await self.store.diary(account.trainee_id)).standing()


@pytest.fixture
def clock():
    """A clock that stands at T0."""
    return SimulatedClock(T0)


@pytest.fixture
async def network(clock):
    """The stand-in network."""
    async with StandIn(clock.now) as standin:
        yield standin


@asynccontextmanager
async def open_house(standin, file, clock, limits=None, *, polling=True, pictures_in=None):
    """The program over a database file, from its start to its clean end."""
    store = await Store.open(f"sqlite:///{file}", rendered)
    client = Network(Secret(TOKEN), standin.url)
    await client.start()
    async with on_network(client, store, clock, limits, held=polling, pictures_in=pictures_in) as office:
        asking = Polling(client, office.desk, clock, office.assistant.release)
        task = asyncio.create_task(asking.run()) if polling else None
        yield House(standin, office, store, clock)
        asking.stop()
        if task is not None:
            await task
    await client.stop()
    await store.close()


@pytest.fixture
async def house(network, tmp_path, clock):
    """The program at work, by polling, with a fresh database."""
    async with open_house(network, tmp_path / "stationcall.sqlite3", clock) as opened:
        yield opened
