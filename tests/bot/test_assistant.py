"""The assistant on a simulated clock: the real alarm, store and outbox; only time is set by hand."""

import asyncio
from dataclasses import replace
from datetime import timedelta

import pytest

from bot.alarms import Alarms
from bot.assistant import Assistant, on_duty
from bot.clock import LiveClock, SimulatedClock
from bot.errors import Unreachable
from bot.outbox import Outbox
from bot.simulation import Simulation
from bot.store.store import Store
from core.session.events import Opened, Said, Say, Step, Woke
from core.session.states import Idle
from core.trainee import Trainee
from tests.bot.given import T0, Phone, Words, after, everything, noted, opened, render, rows, say, waiting


def cued(state, event, plan, history, now):
    """A conversation that counts: opening plans a cue every ten seconds for a minute, a text is a set, an alarm tells the time."""
    match event:
        case Opened():
            cues = [now + timedelta(seconds=10 * n) for n in range(1, 7)]
            return Step(waiting(*cues), (opened(len(history.workouts) + 1, now),), say(f"hello {plan.trainee.name}"), cues[0])
        case Said(text):
            entry = noted(len(history.sets) + 1, at=now, reps=int(text))
            return Step(state, (entry,), say(f"{text}, noted"), min((cue.at for cue in getattr(state, "cues", ())), default=None))
        case Woke():
            due, *later = [cue.at for cue in state.cues]
            told = Say(Words(f"{due:%H:%M:%S} at {now:%H:%M:%S}"), due + timedelta(seconds=5))
            return Step(waiting(*later), (), (told,), later[0] if later else None)


async def test_the_simulated_clock_drives_the_alarm(store, ana, clock):
    """Every cue happens at its own instant to the second, however far the clock is moved in one go."""
    phone = Phone()
    async with on_duty(store, clock, phone, "Rosa", cued) as assistant:
        await assistant.opened(ana)
        await Simulation(assistant, clock).advance_to(after(3600))
    assert phone.texts == ["hello Ana", *[f"06:{at} at 06:{at}" for at in ("30:10", "30:20", "30:30", "30:40", "30:50", "31:00")]]
    assert clock.now() == after(3600)


async def test_what_is_not_due_does_not_happen(store, ana, clock):
    """A cue at the very instant happens; one a microsecond later does not."""
    phone = Phone()
    async with on_duty(store, clock, phone, "Rosa", cued) as assistant:
        await assistant.opened(ana)
        simulation = Simulation(assistant, clock)
        await simulation.advance_to(after(9.999999))
        assert phone.texts == ["hello Ana"]
        await simulation.advance_to(after(10))
        assert phone.texts == ["hello Ana", "06:30:10 at 06:30:10"]
        assert assistant.next_due() == after(20)


async def test_playing_twice_leaves_the_same_bytes(template, tmp_path):
    """Two trainees in step, cues and texts at the same instants: the same messages, the same database."""
    played = []
    for name in ("first", "second"):
        file = tmp_path / name
        file.write_bytes(template.read_bytes())
        store = await Store.open(f"sqlite:///{file}", render)
        clock, phone = SimulatedClock(T0), Phone()
        trainees = [1, await store.add_trainee(Trainee("Bea"), 1), await store.add_trainee(Trainee("Cleo"), 1)]
        async with on_duty(store, clock, phone, "Rosa", cued) as assistant:
            simulation = Simulation(assistant, clock)
            for trainee in trainees:
                await assistant.opened(trainee)
            for second in range(0, 70, 7):
                await simulation.advance_to(after(second))
                for trainee in trainees:
                    await assistant.said(trainee, str(second), f"{trainee}-{second}", "terminal")
        await store.close()
        played.append((phone.heard, everything(file)))
    assert played[0] == played[1]
    assert len(played[0][0]) == 3 * (1 + 6 + 10)


async def test_a_text_handed_in_twice_is_answered_once(store, ana, clock):
    """Both times the channel is told that it is kept."""
    phone = Phone()
    async with on_duty(store, clock, phone, "Rosa", cued) as assistant:
        await assistant.opened(ana)
        assert await assistant.said(ana, "11", "7", "terminal")
        assert await assistant.said(ana, "11", "7", "terminal")
        await assistant.settled()
    assert phone.texts == ["hello Ana", "11, noted"]
    assert len((await store.diary(ana)).sets) == 1


async def test_texts_of_one_trainee_are_taken_one_after_the_other(store, ana, clock):
    """Twenty at once become twenty records, in the order they came, each answered."""
    phone = Phone()
    async with on_duty(store, clock, phone, "Rosa", cued) as assistant:
        await assistant.opened(ana)
        await asyncio.gather(*(assistant.said(ana, str(n), str(n), "terminal") for n in range(20)))
        await assistant.settled()
    assert [record.reps for record in (await store.diary(ana)).sets] == list(range(20))
    assert phone.texts[1:] == [f"{n}, noted" for n in range(20)]


async def test_after_a_stop_everything_goes_on_where_it_was(store, ana, file, clock):
    """The alarms are rebuilt from the database; what fell due meanwhile happens at once, in order; a late countdown is not sent."""
    async with on_duty(store, clock, Phone(), "Rosa", cued) as assistant:
        await assistant.opened(ana)
        await Simulation(assistant, clock).advance_to(after(25))
    phone, later = Phone(), SimulatedClock(after(41))
    anew = await Store.open(f"sqlite:///{file}", render)
    async with on_duty(anew, later, phone, "Rosa", cued) as assistant:
        await assistant.settled()
        assert phone.texts == ["06:30:40 at 06:30:41"]
        await Simulation(assistant, later).advance_to(after(100))
    await anew.close()
    assert phone.texts == ["06:30:40 at 06:30:41", "06:30:50 at 06:30:50", "06:31:00 at 06:31:00"]
    dropped = [row["reason"] for row in rows(file, "outbox") if row["status"] == "dropped"]
    assert dropped == ["stale"]


class Broken:
    """A conversation that breaks on every alarm of one trainee, while it is told to."""

    def __init__(self, name):
        self.name = name
        self.mended = False
        self.times = 0

    def __call__(self, state, event, plan, history, now):
        """Break, or count."""
        if plan.trainee.name == self.name and event == Woke() and not self.mended:
            self.times += 1
            raise RuntimeError("my knee hurts")
        return cued(state, event, plan, history, now)


async def test_a_fault_in_one_conversation_does_not_stop_the_others(store, ana, clock, caplog):
    """It is tried again after a growing wait, never in a loop; the log has the id and nothing that was said."""
    bea = await store.add_trainee(Trainee("Bea"), 1)
    phone, step = Phone(), Broken("Ana")
    async with on_duty(store, clock, phone, "Rosa", step) as assistant:
        await assistant.opened(ana)
        await assistant.opened(bea)
        simulation = Simulation(assistant, clock)
        await simulation.advance_to(after(60))
        assert [text for trainee, text in phone.heard if trainee == bea][-1] == "06:31:00 at 06:31:00"
        assert step.times == 4  # at 10, 15, 25 and 45 seconds
        step.mended = True
        await simulation.advance_to(after(90))
        assert [text for trainee, text in phone.heard if trainee == ana] == ["hello Ana"]  # its countdowns are too old to send
    assert f"trainee {ana}: the alarm could not be handled" in caplog.text
    assert await store.wakes() == {}


async def test_a_text_that_breaks_is_kept_nowhere_and_the_channel_is_told(store, ana, clock, file):
    """It may be handed in again: then it counts."""
    phone = Phone()
    async with on_duty(store, clock, phone, "Rosa", cued) as assistant:
        await assistant.opened(ana)
        await assistant.settled()
        before = everything(file)
        assert not await assistant.said(ana, "eleven", "7", "terminal")
        await assistant.settled()
        assert everything(file) == before
        assert await assistant.said(ana, "11", "7", "terminal")
        await Simulation(assistant, clock).advance_to(after(10))
    assert phone.texts == ["hello Ana", "11, noted", "06:30:10 at 06:30:10"]


async def test_an_alarm_that_never_moves_on_does_not_spin(store, ana, clock, caplog):
    """A decision that always asks to be woken at once is slowed down."""
    times = 0

    def stuck(_state, _event, _plan, _history, now):
        nonlocal times
        times += 1
        return Step(Idle(), (), (), now)

    async with on_duty(store, clock, Phone(), "Rosa", stuck) as assistant:
        await assistant.opened(ana)
        await assistant.settled()
        assert times < 50
        await Simulation(assistant, clock).advance_to(after(60))
        assert times < 500
    assert f"trainee {ana}: the alarm rings for ever" in caplog.text


async def test_a_chat_that_cannot_be_reached_is_tried_again_by_the_alarm(store, ana, clock):
    """Two seconds later, without anybody sleeping; the clock goes on meanwhile."""
    phone = Phone(Unreachable())
    async with on_duty(store, clock, phone, "Rosa", cued) as assistant:
        await assistant.opened(ana)
        await assistant.settled()
        assert phone.texts == []
        assert assistant.next_due() == after(2)
        await Simulation(assistant, clock).advance_to(after(10))
    assert phone.texts == ["hello Ana", "06:30:10 at 06:30:10"]


async def test_a_channel_that_hangs_holds_up_nobody_else(store, ana, clock):
    """The clock and the other chats go on while one message is on its way."""
    bea = await store.add_trainee(Trainee("Bea"), 1)
    hanging, heard_by_bea = asyncio.Event(), asyncio.Event()

    class Slow(Phone):
        async def send(self, trainee, letter):
            if trainee == ana:
                await hanging.wait()
            await super().send(trainee, letter)
            if letter.rendered.text.startswith("06:30:10"):
                heard_by_bea.set()

    phone = Slow()
    async with on_duty(store, clock, phone, "Rosa", cued) as assistant:
        await assistant.opened(ana)
        await assistant.opened(bea)
        clock.set(after(10))
        assistant.rearm()
        await heard_by_bea.wait()
        assert [trainee for trainee, _ in phone.heard] == [bea, bea]
        hanging.set()
        await assistant.settled()
    assert [text for trainee, text in phone.heard if trainee == ana] == ["hello Ana", "06:30:10 at 06:30:10"]


async def test_a_cancelled_caller_does_not_cut_a_message_short(store, ana, clock):
    """Whoever hands a message in may be cancelled; the message is kept all the same."""
    phone = Phone()
    async with on_duty(store, clock, phone, "Rosa", cued) as assistant:
        await assistant.opened(ana)
        caller = asyncio.create_task(assistant.said(ana, "11", "7", "terminal"))
        await asyncio.sleep(0)
        caller.cancel()
        with pytest.raises(asyncio.CancelledError):
            await caller
    assert [record.reps for record in (await store.diary(ana)).sets] == [11]
    assert phone.texts == ["hello Ana", "11, noted"]


async def test_on_a_running_clock_the_alarm_rings_by_itself(store, ana):
    """Nobody sets anything: every cue comes, in order, none before its time."""
    over = asyncio.Event()

    class Listening(Phone):
        async def send(self, trainee, letter):
            await super().send(trainee, letter)
            if len(self.heard) == 7:
                over.set()

    def patient(state, event, plan, history, now):
        step = cued(state, event, plan, history, now)
        early = [cue.at for cue in getattr(state, "cues", ())[:1] if now < cue.at]
        return replace(step, messages=tuple(Say(Words(f"early: {early}")) for _ in step.messages))

    phone = Listening()
    async with on_duty(store, LiveClock(speed=2000, start=T0), phone, "Rosa", patient) as assistant:
        await assistant.opened(ana)
        await over.wait()
    assert phone.texts == ["early: []"] * 7


async def test_the_alarm_is_one_job_that_may_be_late(store, ana, clock):
    """One for everybody, never dropped for lateness, set to the earliest instant."""
    alarms = Alarms(clock)
    assistant = Assistant(store, clock, Outbox(store.outgoing, clock, Phone()), alarms, coach="Rosa", step=cued)
    await assistant.start()
    scheduler = alarms._scheduler  # noqa: SLF001
    assert scheduler.get_jobs() == []
    await assistant.opened(ana)
    assert scheduler.get_jobs() == []  # the simulated clock does not come to it by waiting
    clock.set(after(10))
    assistant.rearm()
    (job,) = scheduler.get_jobs()
    assert job.misfire_grace_time is None
    assert job.coalesce
    await assistant.settled()
    await assistant.stop()
    assert not scheduler.running
