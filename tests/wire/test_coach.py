"""The coach on the network: circuits typed and put in force there, buttons that still fit, boards as pictures."""

from tests.wire.conftest import ANA, BEN, FIRST_TALK, ROSA, open_house

TYPED = "name: Spring\nplank\npush-up\n40 work 20 rest, 2 rounds"


async def test_a_circuit_typed_on_the_network_is_in_force_two_messages_later(house, network):
    """In lines, as a phone has them; a trainee who is there and one who comes later both get it."""
    await house.claimed()
    await house.ready(ANA)
    await house.says(ROSA, TYPED)
    assert network.last(ROSA).text.startswith("For ")
    await house.presses(ROSA, "yes")
    assert network.last(ROSA).text.startswith("In force for ")
    await house.says(ANA, "what do I do today?")
    assert "Today: Spring" in network.last(ANA).text
    await house.ready(BEN)
    assert "Today: Spring" in network.last(BEN).text


async def test_a_yes_pressed_under_an_older_circuit_does_nothing(house, network):
    """What was asked there is not what would be put in force now."""
    await house.claimed()
    await house.says(ROSA, TYPED)
    old = network.last(ROSA)
    await house.says(ROSA, TYPED.replace("Spring", "Autumn"))
    await house.presses(ROSA, "yes", old)
    assert await house.store.circuit_id("Spring") is None
    assert await house.store.circuit_id("Autumn") is None
    await house.presses(ROSA, "yes")
    assert await house.store.circuit_id("Autumn") is not None


async def test_a_coach_who_trains_is_a_trainee_until_the_workout_is_over(house, network):
    """During it a set is a set; after it circuits are circuits again, and "go" starts another workout."""
    await house.claimed()
    await house.says(ROSA, "train", *FIRST_TALK, "go", "go", "go")
    await house.after(60)
    await house.says(ROSA, "11 at 12 kg")
    assert len(await house.sets(ROSA)) == 1
    await house.says(ROSA, "finish", TYPED, "yes")
    assert await house.store.circuit_id("Spring") is not None
    await house.says(ROSA, "go")
    assert "Warm-up" in network.last(ROSA).text or "Round 1" in network.last(ROSA).text


async def test_help_tells_a_coach_both_halves(house, network):
    """Invites and films, then circuits and plans."""
    await house.claimed()
    await house.says(ROSA, "help")
    texts = network.shown(ROSA)
    assert "invite Mia" in texts[-2]
    assert "a circuit" in texts[-1]


async def test_the_board_is_sent_as_a_picture_with_the_words_under_it(network, tmp_path, clock):
    """One message: the picture, its caption the words, its buttons with it."""
    async with open_house(network, tmp_path / "house.sqlite3", clock, pictures_in=tmp_path) as house:
        await house.claimed()
        await house.ready(ANA)
        shown = network.last(ANA)
        assert shown.text.startswith("Today: Kitchen seven")
        assert shown.picture > 10_000  # bytes


async def test_a_board_whose_words_are_too_long_for_a_caption_goes_before_them(network, tmp_path, clock):
    """First the picture, then every word."""
    async with open_house(network, tmp_path / "house.sqlite3", clock, pictures_in=tmp_path) as house:
        await house.claimed()
        stations = "\n".join(["rear-foot-raised split squat, each side, 40 s, 16 kg", "overhead triceps extension, 8 kg"] * 12)
        number = await house.says(ROSA, f"{stations}\n30 work 20 rest, 1 round")
        assert number
        texts = network.shown(ROSA)
        at = next(index for index, text in enumerate(texts) if text.startswith("Circuit of"))
        assert texts[at - 1] == ""
        assert "24 Overhead triceps extension" in texts[at].replace("\n", " ")
