"""Safety over the network: the coach is told at once, of the outcome and not of the answers."""

from core.health import NoteKind
from tests.wire.conftest import ANA, BEN, ROSA, open_house

ANSWERS = ("ok", "58", "no", "type 2 diabetes", "I get dizzy sometimes", "none", "no")


async def test_the_coach_is_told_of_a_warning_sign_at_once(house, network):
    """In the same second, by name; where it is stays with the trainee, who did not agree to have it seen."""
    await house.claimed()
    await house.ready(ANA, "Ana")
    await house.says(ANA, "go", "go", "go")
    await house.says(ANA, "11 at 12kg but my chest hurts")
    assert network.last(ANA).text.startswith("STOP.")
    told = " ".join(network.last(ROSA).text.split())
    assert told.startswith("Ana told me of a warning sign. I stopped everything")
    assert "chest" not in told
    assert await house.store.coach_notes.untold() == ()


async def test_the_coach_sees_the_outcome_and_not_the_answers(house, network):
    """A clearance first: that is all."""
    await house.claimed()
    await house.ready(ANA, "Ana")
    await house.says(ANA, *ANSWERS, "no")
    told = network.last(ROSA).text
    assert "a doctor's yes comes first" in " ".join(told.split())
    for answer in ("58", "diabetes", "dizzy", "64"):
        assert all(answer not in message for message in network.shown(ROSA))


async def test_the_coach_sees_a_place_where_the_trainee_agreed(house, network):
    """The last question of the health talk asks for it."""
    await house.claimed()
    await house.ready(ANA, "Ana")
    await house.says(ANA, "ok", "34", "no", "none", "none", "none", "yes", "no", "yes")
    await house.says(ANA, "chest pain")
    assert "warning sign (chest)" in " ".join(network.last(ROSA).text.split())


async def test_a_coach_who_trains_is_not_told_of_themselves(house, network):
    """And the note waits for nobody."""
    await house.claimed()
    await house.says(ROSA, "train")
    before = len(network.shown(ROSA))
    await house.says(ROSA, "chest pain")
    assert all("Rosa told me" not in message for message in network.shown(ROSA)[before:])


async def test_what_could_not_be_told_is_told_after_the_next_start(network, tmp_path, clock):
    """A note that was kept when the program stopped is told when it starts again, once."""
    file = tmp_path / "stationcall.sqlite3"
    async with open_house(network, file, clock) as first:
        await first.claimed()
        await first.ready(BEN, "Ben")
        first.assistant.when_news(lambda: None)
        await first.says(BEN, "chest pain")
        assert [note.note.kind for note in await first.store.coach_notes.untold()] == [NoteKind.URGENT]
        count = len(network.shown(ROSA))
    async with open_house(network, file, clock) as second:
        await second.settled()
        assert len(network.shown(ROSA)) == count + 1
        assert "Ben told me of a warning sign" in " ".join(network.last(ROSA).text.split())
        assert await second.store.coach_notes.untold() == ()


async def test_a_coach_who_was_away_is_told_when_they_are_back(house, network):
    """What came meanwhile is told once, with the first that shows that they can be reached."""
    await house.claimed()
    await house.ready(ANA, "Ana")
    await network.membership(ROSA, "kicked")
    await house.settled()
    await house.says(ANA, "chest pain")
    assert [note.note.kind for note in await house.store.coach_notes.untold()] == [NoteKind.URGENT]
    await network.membership(ROSA, "member")
    await house.settled()
    await house.says(ROSA, "/start")
    told = [text for text in network.shown(ROSA) if text.startswith("Ana told me of a warning")]
    assert len(told) == 1


async def test_a_coach_says_that_somebody_young_may_train(house, network):
    """Typed, shown, a yes with the button; then Ana's "go" begins."""
    await house.claimed()
    await house.ready(ANA, "Ana")
    await house.says(ANA, "ok", "16", "go")
    assert network.last(ANA).text.startswith("Under 18,")
    assert '"clear Ana"' in " ".join(network.last(ROSA).text.split())
    await house.says(ROSA, "clear Ana")
    await house.presses(ROSA, "yes")
    assert "Ana may train" in " ".join(network.last(ROSA).text.split())
    await house.says(ANA, "go")
    assert any("Warm-up" in text for text in network.shown(ANA)[-2:])
