"""Who is due soon is read at the start, so that nobody's clock waits for the reading of the others."""

from datetime import timedelta

from sqlalchemy import event

from bot.assistant import SOON, on_duty
from bot.errors import Unreachable
from bot.store.store import READ_AT_ONCE
from core.session.states import Idle
from core.trainee import Trainee
from tests.bot.given import CIRCUIT, T0, after, always, tamper, waiting


class Nobody:
    """A channel without anybody."""

    async def send(self, _trainee, _letter):
        """Nothing arrives."""
        raise Unreachable


async def several(store, number):
    """So many trainees more; their ids."""
    circuit = await store.circuit_id(CIRCUIT.name)
    return [await store.add_trainee(Trainee(f"Trainee {one}", zone="Europe/Lisbon"), circuit) for one in range(number)]


def watched(store):
    """The tables that are read from now on."""
    tables = []
    event.listen(
        store._database.engine,  # noqa: SLF001
        "before_cursor_execute",
        lambda *given: tables.append(given[2].split("FROM ")[1].split()[0]) if "FROM " in given[2] else None,
    )
    return tables


async def test_who_was_read_beforehand_is_not_read_again(store, ana):
    """The step finds the diary in memory, and knows it by the revision."""
    await store.remember([ana])
    tables = watched(store)
    await store.handle(ana, None, always(), T0)
    assert tables == ["trainee"]


async def test_more_than_are_read_in_one_go(store):
    """Everybody is read, in parts between which a message may pass."""
    ids = await several(store, READ_AT_ONCE + 3)
    await store.remember(ids)
    assert [await store.state(one) for one in ids] == [await store.state(ids[0])] * len(ids)
    assert set(store._known) == set(ids)  # noqa: SLF001


async def test_a_broken_row_is_left_to_the_step_that_needs_it(store, file, ana):
    """One trainee that cannot be read does not keep the others from being read, nor the program from starting."""
    other, *_ = await several(store, 1)
    tamper(file, f"UPDATE trainee SET unit = 'stone' WHERE id = {ana}")  # noqa: S608
    await store.remember([ana, other])
    assert set(store._known) == {other}  # noqa: SLF001


async def test_the_start_reads_who_is_due_soon(store, clock):
    """Two minutes ahead: those at work, and not the thousands who sleep."""
    soon, later, never = await several(store, 3)
    await store.handle(soon, None, always(state=waiting(after(60)), wake_at=T0 + SOON), T0)
    await store.handle(later, None, always(state=waiting(after(999)), wake_at=T0 + SOON + timedelta(seconds=1)), T0)
    await store.handle(never, None, always(state=Idle()), T0)
    store._known.clear()  # noqa: SLF001 - as in a program that has just begun
    async with on_duty(store, clock, Nobody(), "Rosa"):
        assert set(store._known) == {soon}  # noqa: SLF001
