"""New zone data: whoever's clocks will do something else is looked at anew; the others' wake-ups stay as they are."""

from bot.store.store import Store
from core.trainee import Trainee
from tests.bot.given import T0, after, always, render, rows, tamper, waiting

LATER = after(86_400)


async def started(file, now):
    """A program starts over the database; when everybody is to be woken."""
    store = await Store.open(f"sqlite:///{file}", render)
    await store.notice_zones(now)
    wakes = await store.wakes()
    await store.close()
    return wakes


async def test_a_zone_whose_clocks_changed_is_looked_at_anew(store, ana, file):
    """Ana in Lisbon, Bea in Tokyo, Cleo in Lisbon without a wake-up: the data for Lisbon change between two starts."""
    bea = await store.add_trainee(Trainee("Bea", zone="Asia/Tokyo"), 1)
    await store.add_trainee(Trainee("Cleo", zone="Europe/Lisbon"), 1)
    for trainee in (ana, bea):
        await store.handle(trainee, None, always(state=waiting(LATER), wake_at=LATER), T0)
    assert await started(file, after(1)) == {ana: LATER, bea: LATER}  # seen for the first time: planned with the data there are
    assert await started(file, after(2)) == {ana: LATER, bea: LATER}
    tamper(file, "UPDATE zone_seen SET offsets = '2026-01-01+0000' WHERE zone = 'Europe/Lisbon'")
    assert await started(file, after(3)) == {ana: after(3), bea: LATER}
    assert "+0100" in {row["zone"]: row["offsets"] for row in rows(file, "zone_seen")}["Europe/Lisbon"]
