"""Messages on their way: in order, none lost, a countdown never late and never twice."""

from datetime import timedelta

import pytest

from bot.errors import Gone, Unreachable, Unsure
from bot.outbox import Outbox, backoff_s
from bot.ports import Rendered
from bot.store.store import Store
from core.session.events import Say
from core.trainee import Trainee
from tests.bot.given import T0, Phone, Words, after, always, render, rows, say


@pytest.fixture
def send(store, ana, clock):
    """Commit messages for Ana and send them with an outbox, claimed ahead or not."""

    async def run(outbox, *messages, claim=True):
        handled = await store.handle(ana, None, always(messages=messages), clock.now(), claim=claim and outbox.is_clear(ana))
        outbox.post(ana, handled.letters)
        await outbox.idle()

    return run


def ways(file):
    """How each message fared: its text, status and reason."""
    return [(row["text"], row["status"], row["reason"]) for row in rows(file, "outbox")]


@pytest.mark.parametrize("claim", [True, False])
async def test_messages_go_out_in_the_order_they_were_decided(store, clock, send, file, claim):
    """Whether the first was claimed in the step's own transaction or not."""
    phone = Phone()
    outbox = Outbox(store.outgoing, clock, phone)
    await send(outbox, *say("one", "two", "three"), claim=claim)
    await send(outbox, *say("four"), claim=claim)
    assert phone.texts == ["one", "two", "three", "four"]
    assert [(row["status"], row["sent_at"] is not None) for row in rows(file, "outbox")] == [("sent", True)] * 4


async def test_quick_replies_go_along(store, ana, clock):
    """The channel gets the text, the replies to offer and the kind."""
    given = []

    class Keeping:
        async def send(self, _trainee, letter):
            given.append(letter.rendered)

    outbox = Outbox(store.outgoing, clock, Keeping())
    message = Say(Words("How many?", ("10", "11 – ½")))
    for claim in (True, False):
        handled = await store.handle(ana, None, always(messages=[message]), T0, claim=claim)
        outbox.post(ana, handled.letters)
        await outbox.idle()
    assert given == [Rendered("How many?", ("10", "11 – ½"), "words")] * 2


async def test_a_countdown_that_comes_too_late_is_skipped_and_a_question_is_not(store, clock, send, file):
    """Past its expiry a countdown is worth nothing; at its expiry it still goes out."""
    phone = Phone(Unreachable())
    outbox = Outbox(store.outgoing, clock, phone)
    await send(outbox, *say("ten", expires_at=after(3)), *say("five", expires_at=after(60)), *say("How many?"))
    assert phone.texts == []
    clock.set(after(60))
    outbox.retry()
    await outbox.idle()
    assert phone.texts == ["five", "How many?"]
    assert ways(file) == [("ten", "dropped", "stale"), ("five", "sent", None), ("How many?", "sent", None)]


async def test_a_countdown_that_is_stale_when_it_is_decided_is_never_sent(store, clock, send, file):
    """After an outage, cues are worked off late."""
    phone = Phone()
    outbox = Outbox(store.outgoing, clock, phone)
    await send(outbox, *say("ten", expires_at=T0 - timedelta(seconds=1)), *say("How many?"))
    assert phone.texts == ["How many?"]
    assert ways(file)[0] == ("ten", "dropped", "stale")


async def test_unreachable_keeps_the_order_and_waits_longer_each_time(store, clock, send):
    """Nothing overtakes the message that could not be sent; the delay doubles; success forgets it."""
    phone = Phone(*[Unreachable()] * 3)
    outbox = Outbox(store.outgoing, clock, phone)
    await send(outbox, *say("one"))
    waits = []
    for text in ("two", "three"):
        await send(outbox, *say(text))  # not tried before the delay is over
        waits.append((outbox.retry_at() - clock.now()).total_seconds())
        clock.set(outbox.retry_at())
        outbox.retry()
        await outbox.idle()
    assert phone.texts == []
    clock.set(outbox.retry_at())
    outbox.retry()
    await outbox.idle()
    assert waits == [2, 4]
    assert phone.texts == ["one", "two", "three"]
    assert outbox.retry_at() is None


async def test_the_wait_that_the_network_asks_for_is_kept(store, ana, clock, send):
    """Nothing sent before then would pass."""
    outbox = Outbox(store.outgoing, clock, Phone(Unreachable(retry_after_s=90)))
    await send(outbox, *say("one"))
    outbox.heard_from(ana)  # nor does it help that the trainee writes
    assert outbox.retry_at() == after(90)


def test_the_wait_doubles_up_to_a_limit():
    """And never overflows."""
    assert [backoff_s(failures, 2, 300) for failures in (1, 2, 3, 8, 9, 5000)] == [2, 4, 8, 256, 300, 300]


async def test_hearing_from_the_trainee_ends_the_wait(store, ana, clock, send):
    """They are there: what waits goes first, then the answer."""
    phone = Phone(Unreachable())
    outbox = Outbox(store.outgoing, clock, phone)
    await send(outbox, *say("one"))
    outbox.heard_from(ana)
    await send(outbox, *say("two"))
    assert phone.texts == ["one", "two"]


async def test_gone_drops_what_waits_with_the_reason_and_the_next_message_is_tried(store, clock, send, file):
    """A trainee who comes back is talked to again."""
    phone = Phone(Gone("blocked"))
    outbox = Outbox(store.outgoing, clock, phone)
    await send(outbox, *say("one", "two"))
    await send(outbox, *say("three"))
    assert phone.texts == ["three"]
    assert ways(file) == [("one", "dropped", "blocked"), ("two", "dropped", "blocked"), ("three", "sent", None)]


async def test_a_fault_of_the_channel_loses_nothing(store, ana, clock, send, caplog):
    """It is logged by ids, and the message keeps its place."""
    phone = Phone(RuntimeError("no idea"))
    outbox = Outbox(store.outgoing, clock, phone)
    await send(outbox, *say("one", "two"))
    assert f"trainee {ana}: message 1 could not be sent" in caplog.text
    clock.set(outbox.retry_at())
    outbox.retry()
    await outbox.idle()
    assert phone.texts == ["one", "two"]


async def test_one_chat_that_cannot_be_reached_does_not_hold_up_another(store, ana, clock):
    """Each chat has its own order and its own delay."""

    class OnlyBea:
        def __init__(self):
            self.texts = []

        async def send(self, trainee, letter):
            if trainee == ana:
                raise Unreachable
            self.texts.append(letter.rendered.text)

    bea = await store.add_trainee(Trainee("Bea"), 1)
    phone = OnlyBea()
    outbox = Outbox(store.outgoing, clock, phone)
    for trainee in (ana, bea):
        await store.handle(trainee, None, always(messages=say("hello")), T0)
        outbox.post(trainee)
    await outbox.idle()
    assert phone.texts == ["hello"]


async def test_after_a_restart_everything_that_waited_is_sent(store, ana, file, clock):
    """The program stopped after the commit and before the sending."""
    await store.handle(ana, None, always(messages=say("one", "two")), T0)
    phone = Phone()
    anew = await Store.open(f"sqlite:///{file}", render)
    outbox = Outbox(anew.outgoing, clock, phone)
    await outbox.recover()
    await outbox.idle()
    await anew.close()
    assert phone.texts == ["one", "two"]


@pytest.mark.parametrize("claim", [True, False])
async def test_a_message_that_was_being_sent_is_sent_again_but_not_a_countdown(store, ana, file, clock, claim):
    """Nobody knows whether it went out: of a question rather two than none, of a countdown rather none than two."""
    for messages in (say("How many?"), say("ten", expires_at=after(60))):
        handled = await store.handle(ana, None, always(messages=messages), T0, claim=claim)
        if not claim:
            await store.outgoing.take(ana, T0)
        assert bool(handled.letters) == claim
    assert [row["status"] for row in rows(file, "outbox")] == ["sending", "sending"]
    phone = Phone()
    outbox = Outbox(store.outgoing, clock, phone)
    await outbox.recover()
    await outbox.idle()
    assert phone.texts == ["How many?"]
    assert ways(file) == [("How many?", "sent", None), ("ten", "dropped", "stale")]


async def test_what_could_not_be_marked_as_sent_is_marked_later_and_not_sent_again(store, send, file, clock, monkeypatch, caplog):
    """The database failed for a moment: the next message's mark takes the one before along."""
    phone = Phone()
    outbox = Outbox(store.outgoing, clock, phone)
    sent = store.outgoing.sent

    async def failing(*_):
        raise OSError("disk full")

    monkeypatch.setattr(store.outgoing, "sent", failing)
    await send(outbox, *say("one"))
    assert ways(file) == [("one", "sending", None)]
    assert "1 messages could not be marked as sent" in caplog.text
    monkeypatch.setattr(store.outgoing, "sent", sent)
    await send(outbox, *say("two"))
    assert phone.texts == ["one", "two"]
    assert ways(file) == [("one", "sent", None), ("two", "sent", None)]


async def test_a_fault_of_the_database_does_not_end_the_sending(store, ana, clock, send, monkeypatch):
    """What could not be read is seen to as after a restart, when the delay is over."""
    phone = Phone()
    outbox = Outbox(store.outgoing, clock, phone)
    take = store.outgoing.take

    async def failing(*_):
        raise OSError("disk full")

    monkeypatch.setattr(store.outgoing, "take", failing)
    await send(outbox, *say("one"), claim=False)
    monkeypatch.setattr(store.outgoing, "take", take)
    assert not outbox.is_clear(ana)
    clock.set(outbox.retry_at())
    outbox.retry()
    await outbox.idle()
    assert phone.texts == ["one"]
    assert outbox.is_clear(ana)


async def test_a_connection_that_breaks_may_double_a_question_but_never_a_countdown(store, clock, send, file):
    """Nobody knows whether it is out: a countdown is dropped, a question is sent again."""
    phone = Phone(Unsure())
    outbox = Outbox(store.outgoing, clock, phone)
    await send(outbox, *say("ten", expires_at=after(5)), *say("How many?"))
    assert ways(file) == [("ten", "dropped", "stale"), ("How many?", "sent", None)]
    phone.errors = [Unsure()]
    await send(outbox, *say("And then?"))
    clock.set(outbox.retry_at())
    outbox.retry()
    await outbox.idle()
    assert phone.texts == ["How many?", "And then?"]
