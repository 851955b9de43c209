"""Wiring: a data folder, a database with the demo circuit in it, a clock, a channel, and the assistant over them."""

from __future__ import annotations

import shutil
import tempfile
import tomllib
from contextlib import asynccontextmanager, contextmanager
from dataclasses import dataclass
from importlib.resources import files
from pathlib import Path
from typing import TYPE_CHECKING, TextIO

from tzlocal import get_localzone_name

from bot import records
from bot.assistant import on_duty
from bot.channels.script import START, Line, Transcript, starts_at
from bot.channels.terminal import Terminal
from bot.clock import LiveClock, SimulatedClock
from bot.errors import FixtureBroken, NotAScriptFolder, TraineeUnknown
from bot.files.folders import FOLDERS
from bot.lock import claimed
from bot.log import to_file
from bot.pictures.gallery import Gallery
from bot.ports import Rendered
from bot.settings import DATA_VARIABLE, SQLITE_NAME, Settings, make_folder, read_settings
from bot.store.store import Store
from bot.wording import worded
from core.circuit import Circuit
from core.circuit_file import read_circuit
from core.coach.typing import read_plan
from core.messages import Card
from core.trainee import Block, Trainee

if TYPE_CHECKING:
    from collections.abc import AsyncIterator, Iterator, Mapping
    from datetime import date, datetime

    from core.messages import Message

FIRST_DAY = START.date()
SCRIPT_MARK = "played-by-a-script"  # a file in a data folder that only scripts write to


@dataclass(frozen=True)
class Demo:
    """The scenario that goes along with the program.

    Attributes:
        coach: their name.
        circuit: what is on for somebody who comes without a plan.
        others: more circuits on the board.
        plan: a plan with all of them, from `starts_on` of the day it was read with.
    """

    coach: str
    circuit: Circuit
    others: tuple[Circuit, ...]
    plan: Block


def demo(plan_starts_on: date = FIRST_DAY) -> Demo:
    """The scenario, from the installed package or from the checkout, its plan from a day on.

    Raises:
        FixtureBroken: it was changed and can no longer be read.
    """
    scenario = tomllib.loads(demo_text("scenario.toml"))
    circuit, others = _demo_circuit(scenario["circuit"]), tuple(map(_demo_circuit, scenario["others"]))
    plan = read_plan(scenario["plan"], (circuit, *others), plan_starts_on)
    if isinstance(plan, tuple):
        raise FixtureBroken("scenario.toml", plan[0].says)
    return Demo(scenario["coach"], circuit, others, plan)


def _demo_circuit(name: str) -> Circuit:
    circuit = read_circuit(demo_text(name))
    if isinstance(circuit, tuple):
        raise FixtureBroken(name, circuit[0].says)
    return circuit


def demo_text(name: str) -> str:
    """A file of the scenario."""
    packaged = files("bot").joinpath("demo", name)
    if packaged.is_file():
        return packaged.read_text(encoding="utf-8")
    return (Path(__file__).parents[1] / "fixtures" / "demo" / name).read_text(encoding="utf-8")


def rendered(message: Message) -> Rendered:
    """A message in words, as rows and channels carry it."""
    words = worded(message)
    return Rendered(
        words.text,
        words.replies,
        type(message).__name__,
        message.slug if isinstance(message, Card) else None,
        getattr(message, "picture", None) or getattr(message, "document", None),
    )


@asynccontextmanager
async def opened_store(settings: Settings) -> AsyncIterator[Store]:
    """The database of the settings, brought to its newest shape, closed at the end."""
    store = await Store.open(settings.database.reveal(), rendered)
    try:
        yield store
    finally:
        await store.close()


async def trainee_in(store: Store, name: str, zone: str, scenario: Demo) -> int:
    """Whoever has this name, added when they are new: the scenario's coach, or a trainee with the newcomers' circuit."""
    try:
        return await store.trainee_id(name)
    except TraineeUnknown:
        pass
    person_id = await store.add_trainee(Trainee(name, zone), await for_newcomers(store, scenario))
    if name == scenario.coach:
        await store.make_coach(person_id)
    return person_id


async def for_newcomers(store: Store, scenario: Demo) -> int:
    """The id of the circuit that new trainees start with: what a coach has said, else the scenario's.

    The scenario's circuits are put on the board where they are missing; what a coach makes of them stays.
    """
    first, *_ = [await _on_the_board(store, circuit) for circuit in (scenario.circuit, *scenario.others)]
    return await store.newcomer_circuit() or first


async def _on_the_board(store: Store, circuit: Circuit) -> int:
    known = await store.circuit_id(circuit.name)
    return await store.save_circuit(circuit) if known is None else known


async def chat(settings: Settings, name: str, speed: float) -> None:
    """A chat in the terminal, until the trainee leaves."""
    make_folder(settings.data)
    with claimed(settings.data), to_file(settings.data):
        async with opened_store(settings) as store:
            scenario = demo()
            trainee_id = await trainee_in(store, name, get_localzone_name(), scenario)
            clock = await clock_after(store, speed)
            terminal = Terminal(trainee_id)
            async with on_duty(
                store, clock, Gallery(terminal, settings.data), scenario.coach, emergency=settings.emergency, data=settings.data
            ) as assistant:
                await terminal.hold(assistant)
            terminal.part()


async def print_records(settings: Settings, name: str | None, out: TextIO, *, as_json: bool) -> None:
    """Print the set records of one trainee, or of all.

    Raises:
        TraineeUnknown: there is nobody of that name.
    """
    make_folder(settings.data)
    async with opened_store(settings) as store:
        await records.run(store, name, as_json=as_json, out=out)


async def clock_after(store: Store, speed: float = 1.0) -> LiveClock:
    """A clock that never shows an instant earlier than what is kept."""
    clock, latest = LiveClock(speed), await store.latest_at()
    return clock if latest is None or latest <= clock.now() else LiveClock(speed, latest)


async def play(script: tuple[Line, ...], name: str, data: str | None, environ: Mapping[str, str], out: TextIO) -> None:
    """Play a script. With a data folder given its diary is kept there, for a script that goes on later; else it is gone at the end.

    Raises:
        ScriptBroken: a line sets the clock back.
        NotAScriptFolder: the data folder holds a real diary.
    """
    emergency = read_settings(data, environ).emergency
    with _script_folder(data, environ) as folder, claimed(folder), to_file(folder):
        await _make_room(folder, starts_at(script))
        async with opened_store(_sqlite_in(folder)) as store:
            scenario = demo()
            trainee_id = await trainee_in(store, name, "UTC", scenario)
            clock = SimulatedClock(starts_at(script))
            transcript = Transcript(clock, out, folder)
            gallery = Gallery(transcript, folder)
            async with on_duty(store, clock, gallery, scenario.coach, emergency=emergency, data=folder) as assistant:
                others = {number: other for number, other in (await store.names()).items() if number != trainee_id}
                await transcript.play(script, trainee_id, assistant, others)


@contextmanager
def _script_folder(data: str | None, environ: Mapping[str, str]) -> Iterator[Path]:
    """The data folder that was named, if only scripts have written to it; a passing one when none was named."""
    if data is None and not environ.get(DATA_VARIABLE):
        with tempfile.TemporaryDirectory(prefix="stationcall-") as passing:
            yield Path(passing)
        return
    folder = read_settings(data, environ).data
    make_folder(folder)
    if (folder / SQLITE_NAME).exists() and not (folder / SCRIPT_MARK).exists():
        raise NotAScriptFolder(folder)
    (folder / SCRIPT_MARK).touch()
    yield folder


def _sqlite_in(folder: Path) -> Settings:
    return read_settings(str(folder), {})


async def _make_room(folder: Path, start: datetime) -> None:
    """Clear the diary that an earlier script left, unless this one goes on after it: so the same script gives the same bytes."""
    async with opened_store(_sqlite_in(folder)) as store:
        latest = await store.latest_at()
    if latest is None or latest >= start:
        _clear(folder)


def _clear(folder: Path) -> None:
    for left in folder.glob(f"{SQLITE_NAME}*"):
        left.unlink()
    for drawn in FOLDERS:
        shutil.rmtree(folder / drawn, ignore_errors=True)
