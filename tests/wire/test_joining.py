"""Who comes in, and how: the first coach's code, invites, strangers, groups."""

from tests.wire.conftest import ANA, BEN, FIRST_TALK, ROSA, open_house


async def test_the_first_coach_comes_in_by_the_code_once(house, network):
    """Whoever hands in the code of the first start is the coach; then it is worth nothing."""
    code = await house.desk.claim_code()
    await house.says(ROSA, f"/start {code}")
    assert network.last(ROSA).text.startswith("Welcome, Rosa. You are the coach here.")
    assert await house.desk.claim_code() is None
    await house.says(ANA, f"/start {code}")
    assert network.shown(ANA)[0].startswith("Hello! I only talk with people")


async def test_a_new_start_before_the_claim_makes_a_new_code(house, network):
    """The code printed last is the one that counts."""
    first, second = await house.desk.claim_code(), await house.desk.claim_code()
    await house.says(ANA, first)
    await house.says(ROSA, second.lower())
    assert network.shown(ANA)[0].startswith("Hello! I only talk with people")
    assert network.last(ROSA).text.startswith("Welcome, Rosa.")


async def test_a_coach_invites_by_chat_and_is_told_who_has_come(house, network):
    """The link holds the code; the trainee has the name that the coach gave, and is greeted in the coach's name."""
    await house.claimed()
    await house.says(ROSA, "invite  Ana   Maria")
    invite = network.last(ROSA).text
    code = invite.rsplit(" ", 1)[1]
    assert f"https://t.me/{house.network_name}?start={code}" in invite.split("\n")
    await house.says(ANA, f"/start {code}")
    assert network.shown(ANA)[0].startswith("Hello! I call Rosa's circuit for you")
    assert network.last(ROSA).text == "Ana Maria is in."


async def test_an_invite_lets_one_person_in(house, network):
    """Forwarded to somebody else it is worth nothing."""
    await house.claimed()
    await house.says(ROSA, "invite")
    code = network.last(ROSA).text.rsplit(" ", 1)[1]
    await house.says(ANA, code)
    await house.says(BEN, code)
    assert "Rosa's circuit" in network.shown(ANA)[0]
    assert network.shown(BEN) == [network.shown(BEN)[0]]
    assert network.shown(BEN)[0].startswith("Hello! I only talk with people")


async def test_an_invite_ends_after_three_days(house, network):
    """A link found in an old chat opens nothing."""
    await house.claimed()
    await house.says(ROSA, "invite Ana")
    code = network.last(ROSA).text.rsplit(" ", 1)[1]
    await house.after(72 * 3600 + 1)
    await house.says(ANA, code)
    assert network.shown(ANA)[0].startswith("Hello! I only talk with people")


async def test_a_stranger_gets_one_line_and_nothing_else(network, tmp_path, clock):
    """However much they write, and after a restart as well; no guess at a code is answered."""
    file = tmp_path / "stationcall.sqlite3"
    async with open_house(network, file, clock) as house:
        await house.claimed()
        await house.says(99, "hi", "who are you?", "ABCDEFGHJK", "/start ABCDEFGHJK", "11 at 20kg")
        await network.send(99, voice={"file_id": "V", "file_unique_id": "v", "duration": 3})
        await house.settled()
        assert len(network.shown(99)) == 1
    async with open_house(network, file, clock) as again:
        await again.says(99, "hello?")
    assert len(network.shown(99)) == 1


async def test_a_group_is_told_so_and_left(house, network):
    """Nobody's training is anybody else's business."""
    await house.claimed()
    await network.send(-100, kind="supergroup", text="hello all")
    await house.settled()
    assert network.left == [-100]
    assert network.shown(-100) == ["I only talk one to one, so I leave\nthis group. Text me directly!"]
    await network.membership(-100, "kicked", kind="supergroup")
    await house.settled()
    assert len(network.shown(-100)) == 1


async def test_names_that_collide_get_a_number(house, network):
    """Two trainees of one name are two trainees."""
    await house.claimed()
    await house.invited(ANA, "Kim")
    await house.invited(BEN, "kim")
    assert network.last(ROSA).text == "kim 2 is in."


async def test_a_coach_may_train_too(house, network):
    """Until then what a coach writes is not taken for a trainee's; afterwards both work."""
    await house.claimed()
    await house.says(ROSA, "11 at 20kg")
    assert network.last(ROSA).text.startswith("I didn't catch that.")
    await house.says(ROSA, "train", *FIRST_TALK)
    assert network.last(ROSA).text.startswith("Today: Kitchen seven")
    await house.says(ROSA, "invite Ben")
    assert network.last(ROSA).text.startswith("An invite for Ben.")


async def test_a_trainee_cannot_invite_or_set_films(house, network):
    """They get a trainee's answer."""
    await house.claimed()
    await house.ready(ANA)
    await house.says(ANA, "invite Ben")
    assert network.last(ANA).text.startswith("I didn't catch that.")
    film = {"file_id": "F", "file_unique_id": "f", "width": 1, "height": 1, "duration": 3}
    await network.send(ANA, video=film, caption="goblet squat")
    await house.settled()
    assert network.last(ANA).text.startswith("I can't watch films.")
    assert await house.store.people.clips("telegram") == {}


async def test_a_link_opened_again_is_a_greeting_for_who_is_in_already(house, network):
    """And the same update brought twice is one."""
    await house.claimed()
    await house.invited(ANA)
    before = len(network.shown(ANA))
    await house.says(ANA, "/start")
    assert len(network.shown(ANA)) == before + 1
    assert "Have you read this" in network.last(ANA).text
