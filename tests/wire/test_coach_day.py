"""A coach's day on the network: words, changes and answers reach those they are for, when they may, and nobody else."""

from datetime import timedelta

from tests.wire.conftest import ANA, BEN, ROSA, T0, open_house

MORNING = 2 * 3600.0  # from half past six to half past eight


def texts(network, chat):
    """Everything in a chat, each message in one line."""
    return [" ".join(text.split()) for text in network.shown(chat)]


def heard(network, chat, words):
    """How many messages in a chat hold some words."""
    return sum(words in text for text in texts(network, chat))


async def ready(house):
    """Rosa coaches Ana and Ben, and it is half past eight."""
    await house.claimed()
    await house.ready(ANA, "Ana")
    await house.ready(BEN, "Ben")
    await house.after(MORNING)


async def test_a_message_to_all_is_looked_at_sent_and_read_by_all(house, network):
    """Nothing before the yes; then each reads it once, with the coach's name."""
    await ready(house)
    await house.says(ROSA, "tell everyone: See you Monday, 8pm!")
    assert "To Ana and Ben (2):" in texts(network, ROSA)[-1]
    assert heard(network, ANA, "See you Monday") == 0
    await house.presses(ROSA, "yes")
    for chat in (ANA, BEN):
        assert heard(network, chat, "says: See you Monday, 8pm!") == 1
    assert "On its way to Ana and Ben (2). Now to 2." in texts(network, ROSA)[-1]


async def test_words_wait_for_the_morning(house, network):
    """At half past six nobody is woken; at eight it is there."""
    await house.claimed()
    await house.ready(ANA, "Ana")
    await house.says(ROSA, "tell Ana: well done", "yes")
    assert "Arrives after quiet hours." in texts(network, ROSA)[-1]
    assert heard(network, ANA, "well done") == 0
    await house.after(MORNING)
    assert heard(network, ANA, "well done") == 1


async def test_words_wait_for_the_end_of_a_workout(house, network):
    """Between two stations nothing is said but what belongs there."""
    await ready(house)
    await house.says(ANA, "go", "go", "go")
    await house.says(ROSA, "tell Ana: well done", "yes")
    await house.after(120)
    assert heard(network, ANA, "well done") == 0
    await house.says(ANA, "finish", "finish")
    assert heard(network, ANA, "well done") == 1


async def test_an_undo_before_the_morning_takes_it_back(house, network):
    """Nobody has read it, and nobody will."""
    await house.claimed()
    await house.ready(ANA, "Ana")
    await house.says(ROSA, "tell Ana: well done", "yes", "undo")
    assert "nobody has read it" in texts(network, ROSA)[-1]
    await house.after(24 * 3600)
    assert heard(network, ANA, "well done") == 0


async def test_words_on_their_way_survive_a_new_start(network, tmp_path, clock):
    """Sent off before the program stopped, said after it has started, once."""
    file = tmp_path / "house.sqlite3"
    async with open_house(network, file, clock) as house:
        await house.claimed()
        await house.ready(ANA, "Ana")
        await house.says(ROSA, "tell Ana: well done", "yes")
    clock.set(T0 + timedelta(hours=4))
    async with open_house(network, file, clock) as house:
        await house.settled()
        assert heard(network, ANA, "well done") == 1
        await house.after(3600)
    assert heard(network, ANA, "well done") == 1


async def test_a_typo_reaches_nobody(house, network):
    """It is asked who is meant, with the name as a button; the message goes on to the one who is pressed."""
    await ready(house)
    await house.says(ROSA, "tell Bem: your knee is fine")
    assert heard(network, BEN, "knee") + heard(network, ANA, "knee") == 0
    await house.presses(ROSA, "Ben")
    await house.presses(ROSA, "yes")
    assert (heard(network, BEN, "your knee is fine"), heard(network, ANA, "knee")) == (1, 0)


async def test_a_question_goes_to_the_coach_and_the_answer_back(house, network):
    """With the station it was asked at; the answer comes with what was asked, after the workout."""
    await ready(house)
    await house.says(ANA, "go", "go", "ask coach: heels down or up?")
    assert 'Ana asks: "heels down or up?" At Goblet squat (station 1, round 1 of Kitchen seven).' in texts(network, ROSA)[-1]
    await house.says(ROSA, "answer: down <b>&amp; slow", "yes")
    await house.says(ANA, "finish", "finish")
    assert any('You asked: "heels down or up?"' in text and "down <b>&amp; slow" in text for text in texts(network, ANA))


async def test_what_was_asked_while_the_coach_was_away_is_told_on_their_return(house, network):
    """Nothing is lost while nothing can be sent to them."""
    await ready(house)
    await network.membership(ROSA, "kicked")
    await house.settled()
    await house.says(ANA, "ask coach: may I swap?")
    await network.membership(ROSA, "member")
    await house.settled()
    assert heard(network, ROSA, "may I swap?") == 1


async def test_a_swap_is_told_shown_and_undone(house, network):
    """Ana is told and does the other exercise; Ben does what he did; an undo after that is told too."""
    await ready(house)
    await house.says(ROSA, "swap goblet squats for glute bridges for Ana", "yes")
    assert heard(network, ANA, "Glute bridge instead of Goblet squat") == 1
    await house.says(ANA, "today")
    assert "1 Glute bridge" in texts(network, ANA)[-1]
    await house.says(BEN, "today")
    assert "1 Goblet squat" in texts(network, BEN)[-1]
    await house.says(ROSA, "undo")
    assert heard(network, ANA, "has taken back the last change") == 1
    await house.says(ANA, "today")
    assert "1 Goblet squat" in texts(network, ANA)[-1]


async def test_the_new_circuit_from_a_day_on(house, network):
    """Typed, put up from Wednesday for everyone; on Tuesday it is the old one, on Wednesday the new one."""
    await ready(house)
    await house.says(
        ROSA, "name: Spring\nplank\npush-up\n40 work 20 rest, 2 rounds", "put the new circuit up from Wednesday", "yes"
    )
    assert heard(network, ANA, "From Wed 4 Mar on") == 1
    await house.after(24 * 3600)
    await house.says(ANA, "today")
    assert "Kitchen seven" in texts(network, ANA)[-1]
    await house.after(24 * 3600)
    await house.says(ANA, "today")
    assert "Spring" in texts(network, ANA)[-1]


async def test_a_note_is_on_the_card_as_it_was_typed(house, network):
    """Escaped: what looks like formatting is read as it is."""
    await ready(house)
    await house.says(ROSA, "note for Ana: <b>elbows</b> & knees", "yes")
    await house.says(ANA, "go", "go")
    assert any("Rosa: <b>elbows</b> & knees" in text for text in texts(network, ANA))


async def test_a_rest_keeps_reminders_quiet_until_it_ends(house, network):
    """Paused until Thursday: Tuesday and Wednesday say nothing, Thursday does."""
    await ready(house)
    await house.says(ANA, "remind me every day at 10:00")
    await house.says(ROSA, "pause Ana until Thursday", "yes")
    before = len(texts(network, ANA))
    await house.after(2 * 24 * 3600)
    assert texts(network, ANA)[before:] == []
    await house.after(26 * 3600)
    assert len(texts(network, ANA)) == before + 1


async def test_whoever_is_removed_hears_it_kindly_and_is_off_the_list(house, network):
    """And is back after an undo, as if nothing had been."""
    await ready(house)
    await house.says(ROSA, "remove Ben", "yes")
    assert heard(network, BEN, "has ended") == 1
    await house.says(ROSA, "tell everyone: hello")
    assert "To Ana:" in texts(network, ROSA)[-1]
    await house.says(ROSA, "no", "undo", "tell everyone: hello")
    assert "To Ana and Ben (2):" in texts(network, ROSA)[-1]
    await house.says(BEN, "today")
    assert "Kitchen seven" in texts(network, BEN)[-1]


async def test_a_trainee_cannot_do_what_a_coach_can(house, network):
    """What a coach says is a trainee's own word from a trainee: nothing changes for anybody."""
    await ready(house)
    before = [len(texts(network, chat)) for chat in (ROSA, BEN)]
    await house.says(
        ANA, "tell everyone: hello", "yes", "remove Ben", "yes", "pause Ben", "yes", "swap squats for bridges for Ben", "yes"
    )
    assert [len(texts(network, chat)) for chat in (ROSA, BEN)] == before


async def test_the_week_is_told_on_sunday_evening_once(house, network):
    """At six in the coach's zone, and not again before the next Sunday; also across a new start."""
    await ready(house)
    before = len(texts(network, ROSA))
    await house.after(timedelta(days=6, hours=9, minutes=29).total_seconds())
    assert len(texts(network, ROSA)) == before
    await house.after(60 * 60)
    assert len(texts(network, ROSA)) == before + 1
    await house.after(timedelta(days=5).total_seconds())
    assert len(texts(network, ROSA)) == before + 1


async def test_a_week_that_was_missed_is_told_up_to_a_day_later(network, tmp_path, clock):
    """The program was away on Sunday evening: on Monday morning it is told; a week later the missed one is not."""
    file = tmp_path / "house.sqlite3"
    async with open_house(network, file, clock) as house:
        await house.claimed()
        await house.ready(ANA, "Ana")
        before = len(texts(network, ROSA))
    clock.set(T0 + timedelta(days=7))
    async with open_house(network, file, clock) as house:
        await house.settled()
        assert len(texts(network, ROSA)) == before + 1
    clock.set(T0 + timedelta(days=16))
    async with open_house(network, file, clock) as house:
        await house.settled()
        assert len(texts(network, ROSA)) == before + 1


async def test_the_week_waits_for_the_end_of_the_coachs_own_workout(house, network):
    """A coach who trains on Sunday evening reads it when they are done."""
    await ready(house)
    await house.says(ROSA, "train", "yes", "kg", "a pair of 8s, 12s and a 16")
    await house.after(timedelta(days=6, hours=9, minutes=20).total_seconds())
    await house.says(ROSA, "go", "go", "go")
    await house.after(15 * 60)
    assert heard(network, ROSA, "trained") == 0
    await house.says(ROSA, "finish", "finish")
    await house.settled()
    assert any("Ana" in text or "trained" in text for text in texts(network, ROSA)[-2:])


async def test_an_invite_in_other_words(house, network):
    """Could you invite Zoe: a code made out to her."""
    await house.claimed()
    await house.says(ROSA, "could you invite Zoe")
    assert "An invite for Zoe" in texts(network, ROSA)[-1]


async def test_names_with_signs_in_them_are_shown_as_they_are(house, network):
    """A name that looks like formatting changes nothing of what is around it."""
    await house.claimed()
    await house.ready(ANA, "<b>Ana & Co</b>")
    await house.after(MORNING)
    await house.says(ROSA, "tell everyone: hello")
    assert "To <b>Ana & Co</b>:" in texts(network, ROSA)[-1]


async def test_what_was_shown_is_still_asked_after_a_new_start(network, tmp_path, clock):
    """A yes to it does it, once."""
    file = tmp_path / "house.sqlite3"
    async with open_house(network, file, clock) as house:
        await ready(house)
        await house.says(ROSA, "tell everyone: hello")
    async with open_house(network, file, clock) as house:
        await house.says(ROSA, "yes")
        assert heard(network, ANA, "hello") == 1
