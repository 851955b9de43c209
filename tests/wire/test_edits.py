"""A text that is changed after it was sent corrects what it had noted."""

from tests.wire.conftest import ANA


async def noted(house, text="11 at 12kg"):
    """The first station is done and reported; returns the id of the report."""
    await house.claimed()
    await house.ready(ANA)
    await house.says(ANA, "go", "go", "go")
    await house.after(61)
    return await house.says(ANA, text)


async def edited(house, message, text):
    """A text is changed."""
    await house.network.edit(ANA, message, text)
    await house.settled()
    await house.after(3)


async def test_an_edit_corrects_the_set_it_had_noted(house, network):
    """The old record stays and no longer holds; a second edit corrects the correction."""
    message = await noted(house)
    await edited(house, message, "12 at 12kg")
    await edited(house, message, "12 at 16kg, 2 left")
    (record,) = await house.sets(ANA)
    assert (record.reps, str(record.load.amount), str(record.reserve)) == (12, "16", "2")
    assert len((await house.store.diary(2)).sets) == 3
    assert network.last(ANA).text.startswith("Goblet squat: 12 at 16 kg")


async def test_an_edit_corrects_the_set_it_had_noted_and_not_the_last_one(house):
    """Also when other sets were noted since."""
    message = await noted(house)
    await house.after(180)
    await house.says(ANA, "10 each side at 8kg")
    await edited(house, message, "12")
    assert [(record.station, record.reps) for record in await house.sets(ANA)] == [(2, 10), (1, 12)]


async def test_an_edit_that_changes_nothing_says_nothing(house, network):
    """A blank more is no correction."""
    message = await noted(house)
    before = network.shown(ANA)
    await edited(house, message, "11  at 12 kg")
    assert network.shown(ANA) == before


async def test_an_edit_that_cannot_be_read_changes_nothing_and_says_so(house, network):
    """A wrong record is the worst outcome."""
    message = await noted(house)
    await edited(house, message, "purple")
    assert network.last(ANA).text.startswith("I couldn't read your change.\nGoblet squat stays 11 at 12 kg.")
    assert [record.reps for record in await house.sets(ANA)] == [11]


async def test_a_text_that_had_noted_nothing_counts_when_it_is_changed(house):
    """A slip that was not understood is mended by an edit."""
    message = await noted(house, "a few purple ones")
    assert await house.sets(ANA) == ()
    await edited(house, message, "11 at 12kg")
    assert [record.reps for record in await house.sets(ANA)] == [11]


async def test_an_urgent_sign_in_an_edit_stops_everything(house, network):
    """Wherever it is said."""
    message = await noted(house)
    await edited(house, message, "11 at 12kg, my chest hurts")
    assert network.last(ANA).text.startswith("STOP.")
