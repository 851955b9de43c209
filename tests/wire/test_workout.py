"""A whole workout over the wire: what a phone shows and sounds, and what is kept."""

from tests.wire.conftest import ANA


async def test_a_station_from_go_to_noted(house, network):
    """The clock sounds at the start, half-way, ten seconds and the end; the report is read and the next card shown."""
    await house.claimed()
    await house.ready(ANA)
    await house.says(ANA, "go", "go")
    card = network.last(ANA)
    assert card.text.startswith("Round 1/3, station 1/7\nGoblet squat")
    assert "<b>Goblet squat" in card.html
    await house.presses(ANA, "go")
    before = len(network.chats[ANA])
    await house.after(61)
    assert [text.split("\n")[0] for text in network.shown(ANA)[before:]] == ["Half-way, 30 s left.", "10 s left.", "DOWN. How many?"]
    await house.says(ANA, "11 at 12kg")
    assert [(record.reps, str(record.load.amount)) for record in await house.sets(ANA)] == [(11, "12")]
    assert network.shown(ANA)[-2].startswith("11 at 12 kg, noted.")
    assert network.shown(ANA)[-1].startswith("Round 1/3, station 2/7")
