"""Updates that are brought: refused without the secret, answered when they are committed, brought again when they are not."""

import asyncio
from contextlib import asynccontextmanager

import aiohttp
import pytest

from bot.bootstrap import rendered
from bot.channels.telegram.network import Network
from bot.channels.telegram.webhook import Webhook
from bot.serving import on_network
from bot.settings import Secret, WebhookSettings
from bot.store.store import Store
from tests.bot.given import rows
from tests.wire.conftest import ANA, BEN, FIRST_TALK, ROSA, House
from tests.wire.standin import TOKEN

SECRET = "an-invented-secret-word"  # noqa: S105 - nobody's
URL = "https://coach.example/stationcall/9f2c"


@asynccontextmanager
async def listening(network, file, clock):
    """The program by webhook, as `serve` wires it."""
    store = await Store.open(f"sqlite:///{file}", rendered)
    client = Network(Secret(TOKEN), network.url)
    await client.start()
    async with on_network(client, store, clock) as office:
        front = Webhook(office.desk, WebhookSettings(URL, Secret(SECRET), "127.0.0.1", 0))
        await front.start()
        await client.listen_by_webhook(URL, Secret(SECRET))
        network.webhook["front"] = f"http://127.0.0.1:{front.port}/stationcall/9f2c"
        yield House(network, office, store, clock)
        await front.stop()
    await client.stop()
    await store.close()


@pytest.fixture
async def house(network, tmp_path, clock):
    """The program at work, by webhook."""
    async with listening(network, tmp_path / "stationcall.sqlite3", clock) as opened:
        yield opened


async def test_a_workout_begins_by_webhook(house, network):
    """The same as by polling: the coach, an invite, the first talk, a station, a set."""
    await house.claimed()
    await house.ready(ANA)
    await house.says(ANA, "go", "go")
    await house.presses(ANA, "go")
    await house.after(61)
    await house.says(ANA, "11 at 12kg")
    assert [record.reps for record in await house.sets(ANA)] == [11]
    assert network.webhook["url"] == URL
    assert network.webhook["secret_token"] == SECRET


@pytest.mark.parametrize("secret", ["", "an-invented-secret-wore", SECRET + "x", SECRET.upper(), "ünïcode"])
async def test_without_the_secret_nothing_comes_in(house, network, secret):
    """It is refused before it is read, whatever it says."""
    await house.claimed()
    body = {"update_id": 1, "message": network._body(ROSA, 77) | {"text": "invite Eve"}}  # noqa: SLF001
    before = network.shown(ROSA)
    assert await network.bring(body, secret=secret) == [403]
    await house.settled()
    assert network.shown(ROSA) == before


async def test_another_path_is_not_there(house, network):
    """The path is part of what only the network knows."""
    del house
    async with aiohttp.ClientSession() as session:
        front = network.webhook["front"]
        async with session.post(front[:-1], json={}, headers={"X-Telegram-Bot-Api-Secret-Token": SECRET}) as answer:
            assert answer.status == 404
        async with session.get(front, headers={"X-Telegram-Bot-Api-Secret-Token": SECRET}) as answer:
            assert answer.status == 405


@pytest.mark.parametrize("body", [b"", b"{", b"[]", b"7", b"\xff\xfe"])
async def test_what_is_no_update_is_refused(house, network, body):
    """And nothing of it is kept."""
    del house
    headers = {"X-Telegram-Bot-Api-Secret-Token": SECRET}
    async with aiohttp.ClientSession() as session, session.post(network.webhook["front"], data=body, headers=headers) as answer:
        assert answer.status == 400


async def test_an_update_that_cannot_be_read_is_parked_and_not_brought_again(house, network, tmp_path):
    """A refusal would hold that chat up for a day."""
    assert await network.bring({"update_id": 3, "message": {"chat": 7}}) == [200]
    await house.settled()
    assert len(rows(tmp_path / "stationcall.sqlite3", "parked")) == 1


async def test_what_is_not_committed_is_brought_again_and_counts_once(house, network, monkeypatch):
    """The answer is 500 until the database has it; brought once more after that, it changes nothing."""
    await house.claimed()
    await house.ready(ANA)
    write, refused = house.store._database.write, 0  # noqa: SLF001

    async def failing(work):
        nonlocal refused
        refused += 1
        if refused <= 4:
            raise OSError("disk full")
        return await write(work)

    monkeypatch.setattr(house.store._database, "write", failing)  # noqa: SLF001
    update = {"update_id": 9000, "message": network._body(ANA, 800) | {"text": "use pounds"}}  # noqa: SLF001
    assert await network.bring(update) == [500, 500, 200]
    assert await network.bring(update) == [200]
    await house.settled()
    assert [text for text in network.shown(ANA) if "Pounds" in text] == ["Pounds from now on."]


async def test_chats_are_brought_side_by_side(house, network):
    """As the network does it: each chat one at a time, the chats in parallel."""
    await house.claimed()
    for chat in (ANA, BEN):
        await house.invited(chat)
    await asyncio.gather(*(_talk(network, chat) for chat in (ANA, BEN)))
    await house.after(10)
    assert network.last(ANA).text == network.last(BEN).text
    assert network.last(ANA).text.startswith("Today: Kitchen seven")


async def _talk(network, chat):
    for text in FIRST_TALK:
        await network.text(chat, text)
