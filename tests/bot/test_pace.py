"""How fast messages go out: a second a chat, thirty over all, and the clocks of workouts first."""

from datetime import timedelta

import pytest

from bot.clock import SimulatedClock
from bot.outbox import Outbox
from bot.pace import Limits, Pace, Rank, rank_of
from bot.ports import Rendered
from core.session.events import Say
from core.trainee import Trainee
from tests.bot.given import T0, Phone, Words, after, always

LIMITS = Limits(chat_s=1.0, chat_burst=2.0, all_s=10.0, all_burst=10.0)


def test_a_chat_has_a_short_burst_and_then_a_message_a_second():
    """Each waits for the second after the one before; a quiet second gives one back."""
    pace = Pace(LIMITS)
    now, sent = T0, []
    for _ in range(5):
        now = pace.ready_at(1, Rank.ANSWER, now)
        pace.count(1, now)
        sent.append((now - T0).total_seconds())
    assert sent == [0, 0, 1, 2, 3]


def test_one_chats_pace_is_not_anothers():
    """The limit is a chat's own; the one over all is another."""
    pace = Pace(LIMITS)
    for _ in range(2):
        pace.count(1, T0)
    assert pace.ready_at(1, Rank.ANSWER, T0) > T0
    assert pace.ready_at(2, Rank.ANSWER, T0) == T0


def test_over_all_chats_no_more_go_out_than_the_network_takes():
    """Fifty chats with one message each take four seconds at ten a second after a burst of ten."""
    pace, now = Pace(LIMITS), T0
    for chat in range(50):
        now = max(now, pace.ready_at(chat, Rank.ANSWER, now))
        pace.count(chat, now)
    assert (now - T0).total_seconds() == pytest.approx(4.0)


def test_a_broadcast_leaves_room_for_clocks():
    """Reminders take only the first of the burst over all; a workout's clock goes out at once."""
    pace, chat = Pace(Limits()), 0
    while pace.ready_at(chat, Rank.UNASKED, T0) == T0:
        pace.count(chat, T0)
        chat += 1
    assert 10 <= chat <= 28
    assert pace.ready_at(1000, Rank.CLOCK, T0) == T0
    assert pace.ready_at(1000, Rank.UNASKED, T0) > T0


def test_a_wait_that_the_network_asks_for_is_the_chats():
    """For every rank, until it is over."""
    pace = Pace(LIMITS)
    pace.hold(1, after(40))
    assert pace.ready_at(1, Rank.CLOCK, T0) == after(40)
    assert pace.ready_at(1, Rank.CLOCK, after(41)) == after(41)
    assert pace.ready_at(2, Rank.CLOCK, T0) == T0


def test_a_running_workout_ranks_before_answers_and_those_before_reminders():
    """By the kind of message."""
    assert rank_of("Go") < rank_of("ProgressShown") < rank_of("Reminder")
    assert rank_of("UrgentStop") is Rank.CLOCK


async def test_when_not_everything_can_go_out_the_clock_goes_first(store, ana, file):
    """Six reminders waited before it, and it is the next."""
    del file
    clock, phone = SimulatedClock(T0), Phone()
    outbox = Outbox(store.outgoing, clock, phone, Pace(Limits(chat_s=1, chat_burst=1, all_s=1, all_burst=1)))
    kinds = {}
    store._render = lambda message: kinds[message.text]  # noqa: SLF001
    others = [await store.add_trainee(Trainee(f"T{number}"), 1) for number in range(6)]
    for trainee in [*others, ana]:
        kind = "Go" if trainee == ana else "Reminder"
        kinds[f"{kind} {trainee}"] = Rendered(f"{kind} {trainee}", (), kind)
        messages = [Say(Words(f"{kind} {trainee}"))]
        handled = await store.handle(trainee, None, always(messages=messages), T0, claim=True)
        outbox.post(trainee, handled.letters)
    await outbox.idle()
    while (due := outbox.retry_at()) is not None:
        clock.set(max(due, clock.now()) + timedelta(milliseconds=1))
        outbox.retry()
        await outbox.idle()
    assert phone.texts.index(f"Go {ana}") == 1
    assert len(phone.texts) == 7
