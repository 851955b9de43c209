"""The network at its worst: limits, faults, cut connections, blocked chats, updates twice, late, out of order, unreadable."""

from datetime import UTC, datetime, timedelta

from bot.channels.telegram import polling
from core.session.states import Idle, Resting
from tests.bot.given import rows, tamper
from tests.wire.conftest import ANA, BEN, ROSA, open_house
from tests.wire.standin import Fault

CUT_AFTER, CUT_BEFORE = Fault(cut="after"), Fault(cut="before")


def to(chat, part=""):
    """Whether a call goes to a chat, and has a part of a text in it."""
    return lambda given: int(given.get("chat_id", 0)) == chat and part in str(given.get("text", ""))


async def at_work(house):
    """Ana is at work at the first station, with a minute to go."""
    await house.claimed()
    await house.ready(ANA)
    await house.says(ANA, "go", "go")
    await house.after(5)
    await house.network.text(ANA, "go")
    await house.settled()


# What the network says to a call


async def test_a_429_waits_as_told_and_loses_nothing(house, network):
    """Nothing is tried in that chat before; countdowns that became stale are left out, the question is not."""
    await at_work(house)
    network.fail(Fault(429, "Too Many Requests: retry after 40", retry_after=40), when=to(ANA, "Half-way"))
    before = len(network.sends(ANA))
    await house.after(69)  # half-way was at 30: the chat is mute until 70
    assert len(network.sends(ANA)) == before + 1
    await house.after(1)
    assert [text.split("\n")[0] for text in network.shown(ANA)[-1:]] == ["DOWN. How many?"]
    await house.says(ANA, "11 at 12kg")
    assert len(await house.sets(ANA)) == 1


async def test_a_429_for_the_clocks_face_makes_the_chat_wait_too(house, network):
    """The limit is the chat's, not the method's; the face is given up, the calls come when the wait is over."""
    await at_work(house)
    network.fail(Fault(429, "Too Many Requests: retry after 26", retry_after=26), "editMessageText", to(ANA))
    await house.after(34)
    assert network.last(ANA).text.startswith("GO!")
    await house.after(30)
    assert [text.split("\n")[0] for text in network.shown(ANA)[-2:]] == ["10 s left.", "DOWN. How many?"]


async def test_a_429_in_one_chat_holds_up_no_other(house, network):
    """Ben is answered while Ana's chat has to wait."""
    await house.claimed()
    await house.ready(ANA)
    await house.ready(BEN)
    network.fail(Fault(429, "Too Many Requests: retry after 300", retry_after=300), when=to(ANA))
    await network.text(ANA, "today")
    await house.says(BEN, "today")
    assert network.last(BEN).text.startswith("Today: Kitchen seven")
    assert len(network.sends(BEN)) == len(network.shown(BEN))


async def test_a_500_is_tried_again_in_order(house, network):
    """Nothing overtakes the message that failed."""
    await house.claimed()
    await house.ready(ANA)
    network.fail(Fault(500, "Internal Server Error"), when=to(ANA), times=2)
    await network.text(ANA, "today")
    await house.settled()
    await network.text(ANA, "help")
    await house.settled()
    await house.after(10)
    assert [text.split("\n")[0] for text in network.shown(ANA)[-2:]] == ["Today: Kitchen seven", "You can say:"]


async def test_a_question_whose_answer_was_cut_off_comes_again_and_a_countdown_does_not(house, network):
    """The network has no key for a call: of a question rather two than none, of a countdown rather none than two."""
    await at_work(house)
    network.fail(CUT_AFTER, when=to(ANA, "Half-way"))
    network.fail(CUT_AFTER, when=to(ANA, "DOWN"))
    await house.after(75)
    shown = [text.split("\n")[0] for text in network.shown(ANA)]
    assert shown.count("Half-way, 30 s left.") == 1
    assert shown.count("DOWN. How many?") == 2
    await house.says(ANA, "11 at 12kg")
    assert len(await house.sets(ANA)) == 1


async def test_a_connection_cut_before_the_call_arrives_loses_no_question(house, network):
    """It looks the same from here: it is sent again, and is there once."""
    await at_work(house)
    network.fail(CUT_BEFORE, when=to(ANA, "DOWN"))
    await house.after(75)
    assert [text.split("\n")[0] for text in network.shown(ANA)].count("DOWN. How many?") == 1


async def test_an_edit_whose_answer_was_cut_off_does_no_harm(house, network):
    """The face is given up; every call of the clock comes."""
    await at_work(house)
    network.fail(CUT_AFTER, "editMessageText", to(ANA))
    await house.after(61)
    assert [text.split("\n")[0] for text in network.shown(ANA)[-3:]] == ["Half-way, 30 s left.", "10 s left.", "DOWN. How many?"]


async def test_who_blocks_us_is_marked_and_the_coach_is_told_once(house, network, tmp_path):
    """Their clock stops, nothing more is tried, and what waited is dropped with the reason."""
    await at_work(house)
    await network.block(ANA)
    await house.after(300)
    assert [call.code for call in network.sends(ANA)].count(403) == 1
    assert (
        network.shown(ROSA).count("I can't reach Trainee 11 any more: they\nhave blocked me or left.\nA word from you may help.")
        <= 1
    )
    assert network.last(ROSA).text.startswith("I can't reach Ana any more")
    reasons = {row["reason"] for row in rows(tmp_path / "stationcall.sqlite3", "outbox") if row["trainee_id"] == 2}
    assert reasons <= {None, "blocked"}
    assert house.assistant.next_due() == datetime(2026, 3, 3, 6, 30, tzinfo=UTC)  # the daily tidying, and nothing of theirs


async def test_who_comes_back_is_talked_to_again(house, network):
    """The workout stands where it was stopped; the coach is told."""
    await at_work(house)
    await network.block(ANA)
    await house.after(300)
    await network.block(ANA, blocked=False)
    await house.says(ANA, "hi")
    assert network.last(ROSA).text == "Ana is back."
    assert any("Paused at Goblet squat" in text for text in network.shown(ANA)[-2:])


async def test_the_network_says_itself_that_somebody_blocked_us(house, network):
    """Without anything being sent; a second such update changes nothing."""
    await house.claimed()
    await house.ready(ANA)
    await network.block(ANA)
    await network.membership(ANA, "kicked")
    await house.settled()
    await network.membership(ANA, "kicked")
    await house.settled()
    assert [text.split("\n")[0] for text in network.shown(ROSA)].count("I can't reach Ana any more: they have") == 1
    assert all(call.code == 200 for call in network.calls)


# What comes in


async def test_updates_that_come_twice_count_once(house, network):
    """The same numbers again, as after an answer that got lost: nothing is noted, said or asked again."""
    await at_work(house)
    await house.after(61)
    brought = []
    keep = network.update

    async def update(update_id=None, **content):
        number = await keep(update_id, **content)
        brought.append({"update_id": number, **content})
        return number

    network.update = update
    await house.says(ANA, "11 at 12kg")
    await house.presses(ANA, "go")
    shown = network.shown(ANA)
    await network.again(*brought)
    await house.settled()
    assert network.shown(ANA) == shown
    assert [record.reps for record in await house.sets(ANA)] == [11]


async def test_updates_of_a_chat_are_taken_in_the_order_of_their_numbers(house, network):
    """However they lie in a batch."""
    await house.claimed()
    await house.ready(ANA)
    body = network._body(ANA, 500)  # noqa: SLF001
    late = {"update_id": 5001, "message": body | {"message_id": 501, "text": "use kilos"}}
    early = {"update_id": 5000, "message": body | {"text": "use pounds"}}
    await network.again(late, early)
    await house.settled()
    assert [text.split(" ")[0] for text in network.shown(ANA)[-2:]] == ["Pounds", "Kilos"]


async def test_lower_numbers_after_a_quiet_week_are_heard(house, network):
    """The network may begin anew anywhere: what was seen is known by itself, not by being higher."""
    await house.claimed()
    await house.ready(ANA)
    await network.update(5, message=network._body(ANA, 900) | {"text": "today"})  # noqa: SLF001
    await house.settled()
    assert network.last(ANA).text.startswith("Today: Kitchen seven")


async def test_an_update_that_cannot_be_read_is_parked_and_holds_up_nobody(house, network, tmp_path):
    """It is kept as it came, confirmed, and the next ones are handled."""
    await house.claimed()
    await house.ready(ANA)
    await network.update(message={"message_id": "?", "chat": 7})
    await network.update(surprise={"of": "a newer network"})
    await house.says(ANA, "today")
    assert network.last(ANA).text.startswith("Today: Kitchen seven")
    (parked,) = rows(tmp_path / "stationcall.sqlite3", "parked")
    assert '"message_id": "?"' in parked["body"]


async def test_a_message_that_breaks_something_inside_is_parked_and_its_sender_told(house, network, tmp_path):
    """They are asked to send it again; everybody else goes on."""
    await house.claimed()
    await house.ready(ANA)
    await house.ready(BEN)
    tamper(tmp_path / "stationcall.sqlite3", "UPDATE trainee SET revision = revision + 1, unit = 'stone' WHERE id = 2")
    await house.says(ANA, "today")
    await house.says(BEN, "today")
    assert network.last(ANA).text == "Something went wrong in here. That\nmessage is not kept; please send it\nagain."
    assert network.last(BEN).text.startswith("Today: Kitchen seven")
    assert len(rows(tmp_path / "stationcall.sqlite3", "parked")) == 1


async def test_nothing_is_confirmed_that_is_not_committed(house, network, monkeypatch):
    """While the database refuses everything the offset stays; then all is handled, in order."""
    await house.claimed()
    await house.ready(ANA)
    monkeypatch.setattr(polling, "FIRST_WAIT_S", 0.0)
    write, refused = house.store._database.write, 0  # noqa: SLF001

    async def failing(work):
        nonlocal refused
        refused += 1
        if refused <= 6:
            raise OSError("disk full")
        return await write(work)

    monkeypatch.setattr(house.store._database, "write", failing)  # noqa: SLF001
    confirmed = len(network.delivered)
    await network.update(message=network._body(ANA, 800) | {"text": "use pounds"})  # noqa: SLF001
    await network.until(lambda: refused >= 5)
    assert len(network.delivered) == confirmed
    await house.settled()
    assert network.last(ANA).text == "Pounds from now on."


async def test_polling_outlives_faults_and_a_second_program(house, network, monkeypatch):
    """It asks again after a 500, a cut and a 409; what was written meanwhile is answered."""
    monkeypatch.setattr(polling, "FIRST_WAIT_S", 0.0)
    monkeypatch.setattr(polling, "CONFLICT_WAIT_S", 0.0)
    await house.claimed()
    conflict = "Conflict: terminated by other getUpdates request; make sure that only one bot instance is running"
    for fault in (Fault(500, "Internal Server Error"), Fault(409, conflict), Fault(502, "Bad Gateway")):
        network.fail(fault, "getUpdates")
    await house.says(ROSA, "invite Ana")
    assert network.last(ROSA).text.startswith("An invite for Ana.")


async def test_what_was_written_while_we_were_away_counts_as_of_then(network, tmp_path, clock):
    """A report of that minute belongs to the station of that minute, and the workout is found stopped, not lost."""
    file = tmp_path / "stationcall.sqlite3"
    async with open_house(network, file, clock) as house:
        await at_work(house)
        await house.after(62)
        assert isinstance(await house.store.state(2), Resting)
    clock.set(clock.now() + timedelta(seconds=8))
    await network.text(ANA, "11 at 12kg")
    clock.set(clock.now() + timedelta(minutes=20))
    async with open_house(network, file, clock) as again:
        await again.settled()
        (record,) = await again.sets(ANA)
        assert (record.reps, record.station, record.at) == (11, 1, clock.now() - timedelta(minutes=20))
        assert "Paused at One-arm row" in network.last(ANA).text
        assert not isinstance(await again.store.state(2), Idle)
