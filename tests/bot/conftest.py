"""A database of the newest shape for each test, with one trainee in it."""

import asyncio
import shutil

import pytest

from bot.clock import SimulatedClock
from bot.store.store import Store
from core.trainee import Trainee
from tests.bot.given import CIRCUIT, T0, render


async def _make(file):
    store = await Store.open(f"sqlite:///{file}", render)
    await store.add_trainee(Trainee("Ana", zone="Europe/Lisbon"), await store.save_circuit(CIRCUIT))
    await store.close()


@pytest.fixture(scope="session")
def template(tmp_path_factory):
    """A database file made once: Ana and her circuit."""
    file = tmp_path_factory.mktemp("template") / "template.sqlite3"
    asyncio.run(_make(file))
    return file


@pytest.fixture
def file(template, tmp_path):
    """This test's own database file."""
    return shutil.copy(template, tmp_path / "stationcall.sqlite3")


@pytest.fixture
async def store(file):
    """The store over this test's database."""
    store = await Store.open(f"sqlite:///{file}", render)
    yield store
    await store.close()


@pytest.fixture
async def ana(store):
    """Ana's id."""
    return await store.trainee_id("Ana")


@pytest.fixture
def clock():
    """A clock that stands at T0."""
    return SimulatedClock(T0)
