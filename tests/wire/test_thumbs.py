"""Buttons, formatting, films, wishes, and what cannot be read."""

import pytest

from tests.wire.conftest import ANA, BEN, ROSA
from tests.wire.standin import Fault

FILM = {"file_id": "FILM-1", "file_unique_id": "f", "width": 9, "height": 16, "duration": 5}


async def test_a_button_of_a_moment_that_has_passed_does_nothing(house, network):
    """Old buttons stay on a phone for ever; pressed late they say so, and leave the message."""
    await house.claimed()
    await house.ready(ANA)
    await house.says(ANA, "go", "go")
    card = network.last(ANA)
    skip = card.buttons["skip"]
    await house.presses(ANA, "go")
    await house.after(61)
    await house.says(ANA, "11 at 12kg")
    before, state = network.shown(ANA), await house.store.state(2)
    card.buttons["skip"] = skip
    assert await house.presses(ANA, "skip", card) == "That moment has passed."
    assert network.shown(ANA) == before
    assert await house.store.state(2) == state
    assert card.buttons == {}


async def test_a_likely_answer_fits_until_the_set_is_reported(house, network):
    """Pressed after the next card, even during the next station, it is still that set; pressed twice it counts once."""
    await house.claimed()
    await house.ready(ANA)
    await house.says(ANA, "go", "go", "go")
    await house.after(80)
    asked = next(message for message in network.chats[ANA] if message.text.startswith("DOWN"))
    buttons = dict(asked.buttons)
    assert list(buttons) == ["9", "10", "11", "12", "too heavy"]
    assert await house.presses(ANA, "11", asked) is None
    asked.buttons.update(buttons)
    assert await house.presses(ANA, "12", asked) == "That moment has passed."
    assert [(record.reps, record.station) for record in await house.sets(ANA)] == [(11, 1)]


async def test_the_same_again_is_offered_once_there_is_something_to_repeat(house, network):
    """In the second round the likely reps are around what was done in the first."""
    await house.claimed()
    await house.ready(ANA)
    await house.says(ANA, "go", "go", "go")
    asked = []
    for _ in range(8):
        while not network.last(ANA).text.startswith("DOWN"):
            await house.after(5)
        asked.append(list(network.last(ANA).buttons))
        await house.says(ANA, "13 at 8kg")
    assert asked[0] == ["9", "10", "11", "12", "too heavy"]
    assert asked[7] == ["11", "12", "13", "14", "same again", "too heavy"]


async def test_nobody_presses_anothers_button(house, network):
    """A button carries a row and a number; with somebody else's row, or with nonsense, nothing happens."""
    await house.claimed()
    await house.ready(ANA)
    await house.ready(BEN)
    theirs = network.last(ANA)
    mine = network.last(BEN)
    before = await house.store.state(3)
    for data in (theirs.buttons["go"], "ffffff.0", "0.99", "go", "'; --", "1.0.0", "-1.0"):
        mine.buttons["go"] = data
        assert await house.presses(BEN, "go", mine) == "That moment has passed."
    assert await house.store.state(3) == before


async def test_what_people_typed_is_escaped_where_it_is_shown(house, network):
    """A name with angle brackets and an ampersand is shown as it was typed, and never refused."""
    await house.claimed()
    await house.invited(BEN, "Ben <b> & Co")
    assert network.last(ROSA).text == "Ben <b> & Co is in."
    await house.invited(ANA, "</b><a href='x'>")
    assert network.last(ROSA).text == "</b><a href='x'> is in."
    assert all(call.code == 200 for call in network.calls)


async def test_a_card_is_formatted_modestly(house, network):
    """One line strong, nothing else."""
    await house.claimed()
    await house.ready(ANA)
    await house.says(ANA, "go", "go")
    assert network.last(ANA).html.count("<b>") == 1
    assert "<b>Goblet squat, 8 kg</b>" in network.last(ANA).html


async def test_a_text_that_the_network_cannot_format_is_sent_without(house, network):
    """A fault in formatting must not cost the message."""
    await house.claimed()
    network.fail(Fault(400, "Bad Request: can't parse entities: character '<' is reserved"))
    await house.says(ROSA, "help me")
    assert network.last(ROSA).text.startswith("I didn't catch that.")


async def test_the_coachs_film_is_on_the_card_from_then_on(house, network):
    """Captioned with the exercise's name, or asked for in words; sent again it takes the place of the first."""
    await house.claimed()
    await house.ready(ANA)
    for number, caption in (("FILM-1", "Goblet squat"), ("FILM-2", "take this clip for the goblet squat")):
        await network.send(ROSA, video=FILM | {"file_id": number}, caption=caption)
        await house.settled()
        await house.after(3)
    assert network.last(ROSA).text.startswith("Kept. It shows on every card of Goblet")
    await house.says(ANA, "go", "go")
    card = network.last(ANA)
    assert card.film == "FILM-2"
    assert card.text.startswith("Round 1/3, station 1/7")
    assert list(card.buttons) == ["go", "skip", "swap"]


async def test_a_film_without_an_exercises_name_is_asked_about(house, network):
    """The nearest names are offered, none is assumed."""
    await house.claimed()
    for caption in ("", "squat thing"):
        await network.send(ROSA, video=FILM, caption=caption)
        await house.settled()
        assert network.last(ROSA).text.startswith("Which exercise is it?")
    assert await house.store.people.clips("telegram") == {}


async def test_a_film_that_the_network_no_longer_has_does_not_cost_the_card(house, network):
    """The card comes without it."""
    await house.claimed()
    await house.ready(ANA)
    await network.send(ROSA, video=FILM, caption="goblet squat")
    await house.settled()
    network.fail(Fault(400, "Bad Request: wrong file identifier/HTTP URL specified"), "sendVideo")
    await house.says(ANA, "go", "go")
    assert network.last(ANA).text.startswith("Round 1/3, station 1/7")
    assert network.last(ANA).film is None


async def test_fewer_messages_is_kept_over_a_workout_and_taken_back(house, network):
    """Start and end remain; the calls between do not come."""
    await house.claimed()
    await house.ready(ANA)
    await house.says(ANA, "Fewer messages!", "go", "go", "go")
    await house.after(61)
    assert not [text for text in network.shown(ANA) if text.startswith(("Half-way", "10 s left"))]
    await house.says(ANA, "11 at 12kg", "all messages")
    await house.after(120)
    assert "Half-way, 30 s left." in network.shown(ANA)


NOT_TEXT = [
    ({"voice": {"file_id": "V", "file_unique_id": "v", "duration": 3}}, "I can't listen to voice messages"),
    (
        {
            "sticker": {
                "file_id": "S",
                "file_unique_id": "s",
                "width": 1,
                "height": 1,
                "is_animated": False,
                "is_video": False,
                "type": "regular",
            }
        },
        "Nice one!",
    ),
    ({"location": {"latitude": 1.0, "longitude": 2.0}}, "I don't need to know where you are."),
    ({"document": {"file_id": "D", "file_unique_id": "d"}}, "I can't open files."),
    ({"photo": [{"file_id": "P", "file_unique_id": "p", "width": 1, "height": 1}]}, "I can't see pictures."),
    ({"video": FILM}, "I can't watch films."),
    ({"dice": {"emoji": "🎲", "value": 3}}, "I can't read that."),
]


@pytest.mark.parametrize(("content", "answer"), NOT_TEXT, ids=[next(iter(content)) for content, _ in NOT_TEXT])
async def test_what_is_not_text_gets_a_short_honest_answer(house, network, content, answer):
    """One line, and the conversation stays where it was."""
    await house.claimed()
    await house.invited(ANA)
    before = await house.store.state(2)
    await network.send(ANA, **content)
    await house.settled()
    assert network.last(ANA).text.startswith(answer)
    assert await house.store.state(2) == before


async def test_the_menus_commands_are_words(house, network):
    """A command of the network's menu is what it stands for."""
    await house.claimed()
    await house.ready(ANA)
    await house.says(ANA, "/today", "/help@stationcall_standin_bot", "/progress")
    assert [text.split("\n")[0] for text in network.shown(ANA)[-3:]] == [
        "Today: Kitchen seven",
        "You can say:",
        "Nothing noted yet. After your first",
    ]
