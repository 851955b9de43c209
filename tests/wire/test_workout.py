"""A whole workout over the wire: what a phone shows and sounds, and what is kept."""

from core.session.states import Idle
from tests.wire.conftest import ANA

STATIONS, ROUNDS = 7, 3
SOUNDS = ("GO!", "Half-way", "10 s left", "DOWN", "SWITCH!")


async def test_a_station_from_go_to_noted(house, network):
    """The clock sounds at the start, half-way, ten seconds and the end, and only there; the report is read, the next card shown."""
    await house.claimed()
    await house.ready(ANA)
    await house.says(ANA, "go", "go")
    card = network.last(ANA)
    assert card.text.startswith("Round 1/3, station 1/7\nGoblet squat")
    before = len(network.chats[ANA])
    await house.presses(ANA, "go")
    await house.after(61)
    await house.says(ANA, "11 at 12kg")
    assert [(record.reps, str(record.load.amount)) for record in await house.sets(ANA)] == [(11, "12")]
    during = network.chats[ANA][before:]
    assert [(message.versions[0].split("\n")[0], message.silent) for message in during] == [
        ("GO! Goblet squat, 1 min.", False),
        ("Half-way, 30 s left.", False),
        ("10 s left.", False),
        ("DOWN. How many?", False),
        ("11 at 12 kg, noted.", True),
        ("Round 1/3, station 2/7", True),
    ]


async def test_the_clock_is_one_message_edited_now_and_then(house, network):
    """Four edits a minute, none with a sound, the buttons kept until it has run down."""
    await house.claimed()
    await house.ready(ANA)
    await house.says(ANA, "go", "go", "go")
    clock = network.last(ANA)
    assert list(clock.buttons) == ["pause", "too heavy"]
    await house.after(40)
    assert list(clock.buttons) == ["pause", "too heavy"]
    await house.after(20)
    assert [version.split("▓")[-1].strip("░ ") for version in clock.versions[1:]] == ["50 s", "40 s", "20 s", "done"]
    assert clock.buttons == {}


async def test_a_clock_that_is_paused_is_edited_no_more(house, network):
    """The face stays as it was when the work stopped."""
    await house.claimed()
    await house.ready(ANA)
    await house.says(ANA, "go", "go", "go")
    clock = network.last(ANA)
    await house.after(20)
    await house.presses(ANA, "pause")
    shown = list(clock.versions)
    await house.after(60)
    assert clock.versions == shown


async def test_a_whole_workout_leaves_every_set_once_and_asks_every_question_once(house, network):
    """Three rounds of seven stations, answered by button or by text: as the network's own log tells it."""
    await house.claimed()
    await house.ready(ANA)
    await house.says(ANA, "go", "go")
    await house.presses(ANA, "go")
    answered = 0
    while not isinstance(await house.store.state(2), Idle):
        last = network.last(ANA)
        if last.text.startswith("DOWN."):
            answered += 1
            await _answer(house, last, answered)
        await house.after(1)
    sends = [call.given["text"].split("\n")[0] for call in network.sends(ANA)]
    assert answered == STATIONS * ROUNDS == len(await house.sets(ANA))
    assert sum(text.startswith("<b>DOWN") for text in sends) == STATIONS * ROUNDS
    assert sum("noted." in text for text in sends) == STATIONS * ROUNDS
    assert sum(text.startswith("Round") and "station" in text for text in sends) == STATIONS * ROUNDS
    assert all(call.code == 200 for call in network.calls)
    loud = [text for text in network.sounds(ANA) if text.startswith(SOUNDS)]
    assert loud.count("Half-way, 30 s left.") == (STATIONS + 1) * ROUNDS  # the row is done on each side


async def _answer(house, asked, number):
    """A number by button where one is offered, every other time by text."""
    offered = [label for label in asked.buttons if label[0].isdigit()]
    if offered and number % 2:
        await house.presses(ANA, offered[0], asked)
    elif offered:
        await house.says(ANA, offered[-1])
    else:
        await house.says(ANA, "45 s")
