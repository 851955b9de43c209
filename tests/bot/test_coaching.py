"""The coach's side of the store: who coaches, one transaction a message, and that trainees get what is in force."""

import sqlite3
from contextlib import closing
from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest
from sqlalchemy import event

from bot.assistant import on_duty
from bot.bootstrap import demo, rendered, trainee_in
from bot.store.store import InboxKey, Store
from core.coach.desk import Assigned, CircuitKept, CircuitRemoved, Clearance, NewcomersGet, NewsTold
from core.coach.states import CircuitReviewed, ClearanceReviewed, CoachStep, Quiet, WayBack
from core.diary import HealthSaid, SafetyNoted
from core.health import COACH_KINDS, AgeBand, Health, NoteKind, Outcome, SafetyNote
from core.trainee import Block, Trainee
from tests.bot.given import CIRCUIT, T0, Phone, after, always, everything, kg, render, rows, say, tamper

DUMPS = Path(__file__).parents[2] / "fixtures" / "databases"
OTHER = replace(CIRCUIT, name="Garden")
BLOCK = Block((CIRCUIT, OTHER), ("mon", "thu"), 3, (3,), date(2026, 3, 2))


def changes(*what, state=None, messages=()):
    """A coach's decision that does not depend on anything."""
    step = CoachStep(Quiet() if state is None else state, tuple(what), tuple(messages))
    return lambda _state, _desk: step


class Desk:
    """A coach's decision that remembers what it was given."""

    def __call__(self, state, desk):
        """Remember, and change nothing."""
        self.state, self.desk = state, desk
        return CoachStep(state, (), ())


@pytest.fixture
async def wren(store):
    """A coach's id."""
    person_id = await store.add_trainee(Trainee("Coach Wren"), await store.save_circuit(CIRCUIT))
    await store.make_coach(person_id)
    return person_id


async def given_to(store, trainee_id):
    """The trainee and the circuit that a trainee's step would be given now."""
    got = []
    await store.handle(trainee_id, None, lambda trainee, *rest: got.extend((trainee, rest[-1])) or always()(trainee, *rest), T0)
    return got


async def desk_of(store, coach_id):
    """What a coach's step would be given now."""
    seen = Desk()
    await store.handle_coach(coach_id, None, seen, T0)
    return seen


async def test_a_coach_is_told_from_a_trainee(store, ana, wren):
    """Whoever was made a coach is one, at once and after the program was started again."""
    assert [await store.is_coach(person) for person in (ana, wren)] == [False, True]
    await store.make_coach(wren)
    assert [await store.is_coach(person) for person in (ana, wren)] == [False, True]


async def test_the_desk_holds_trainees_and_circuits_and_no_coach(store, ana, wren):
    """Ana is on it with her circuit; coaches are not among those who train."""
    seen = await desk_of(store, wren)
    assert [(client.id, client.name, client.circuit.name, client.block) for client in seen.desk.clients] == [
        (ana, "Ana", CIRCUIT.name, None)
    ]
    assert (seen.desk.coach, seen.desk.newcomers, seen.desk.circuits) == ("Coach Wren", CIRCUIT.name, (CIRCUIT,))


async def test_what_is_in_force_reaches_a_trainee_who_is_remembered(store, ana, wren):
    """Though the store remembers Ana, her next step is decided with the plan, and after it is taken back without."""
    await given_to(store, ana)
    await store.handle_coach(wren, None, changes(CircuitKept(OTHER), Assigned(ana, OTHER.name, BLOCK)), T0)
    trainee, circuit = await given_to(store, ana)
    assert (trainee.block, circuit) == (BLOCK, OTHER)
    await store.handle_coach(wren, None, changes(Assigned(ana, CIRCUIT.name, None), CircuitRemoved(OTHER.name)), T0)
    trainee, circuit = await given_to(store, ana)
    assert (trainee.block, circuit) == (None, CIRCUIT)
    assert [row["name"] for row in rows(store_file(store), "circuit")] == [CIRCUIT.name]


def store_file(store):
    """The file of a store."""
    return store._database.engine.url.database  # noqa: SLF001


async def test_a_circuit_kept_anew_is_the_one_in_every_plan_that_has_it(store, ana, wren):
    """Ana's plan goes on with the new one, though she is remembered."""
    await store.handle_coach(wren, None, changes(CircuitKept(OTHER), Assigned(ana, CIRCUIT.name, BLOCK)), T0)
    await given_to(store, ana)
    shorter = replace(OTHER, rounds=1)
    await store.handle_coach(wren, None, changes(CircuitKept(shorter)), T0)
    assert (await given_to(store, ana))[0].block.circuits == (CIRCUIT, shorter)


async def test_a_circuit_that_somebody_has_is_not_removed(store, ana, wren):
    """Whoever came in the meantime keeps what they have, and the rest of the step is kept too."""
    await store.handle_coach(wren, None, changes(CircuitKept(OTHER), Assigned(ana, OTHER.name, None)), T0)
    await store.handle_coach(wren, None, changes(CircuitRemoved(OTHER.name), NewcomersGet(OTHER.name)), T0)
    assert (await given_to(store, ana))[1] == OTHER
    assert (await desk_of(store, wren)).desk.newcomers == OTHER.name


async def test_a_talk_goes_on_after_a_new_start(file, store, wren):
    """The state, with its way back, is read again as it was."""
    state = CircuitReviewed(OTHER, (1,), WayBack("Garden", (Assigned(1, CIRCUIT.name, BLOCK), NewcomersGet("Garden"))))
    await store.handle_coach(wren, None, changes(state=state), T0)
    again = await Store.open(f"sqlite:///{file}", render)
    assert await again.is_coach(wren)
    assert (await desk_of(again, wren)).state == state
    await again.close()


async def test_a_state_of_another_version_begins_anew(file, store, wren):
    """Only an open question is lost."""
    tamper(file, 'UPDATE coach SET state = \'{"kind": "dreaming"}\'')
    assert (await desk_of(store, wren)).state == Quiet()


async def test_a_message_counts_once(store, wren, ana):
    """Handed in twice, it is decided once."""
    key = InboxKey("terminal", "7")
    decide = changes(Assigned(ana, CIRCUIT.name, None), messages=say("in force"))
    first = await store.handle_coach(wren, key, decide, T0)
    before = everything(store_file(store))
    second = await store.handle_coach(wren, key, decide, T0)
    assert (first.messages, second.seen) == (1, True)
    assert everything(store_file(store)) == before


async def test_a_fault_anywhere_leaves_nothing(store, ana, wren):
    """At every statement on the way; then it is simply done again."""
    decide = changes(CircuitKept(OTHER), Assigned(ana, OTHER.name, BLOCK), NewcomersGet(OTHER.name), messages=say("one", "two"))
    before = everything(store_file(store))
    at, count = 1, 0

    def stumble(*_):
        nonlocal count
        count += 1
        if count == at:
            raise Stumble

    event.listen(store._database.engine, "before_cursor_execute", stumble)  # noqa: SLF001
    while True:
        count = 0
        try:
            await store.handle_coach(wren, InboxKey("terminal", "1"), decide, T0)
        except Stumble:
            assert everything(store_file(store)) == before
            at += 1
        else:
            break
    assert at > 12
    event.remove(store._database.engine, "before_cursor_execute", stumble)  # noqa: SLF001
    assert (await given_to(store, ana))[0].block == BLOCK


class Stumble(Exception):
    """The fault that is put in on purpose."""


async def test_a_coach_and_a_trainee_talk_to_the_same_assistant(tmp_path, clock):
    """Typed, a yes, and the trainee's next question is answered with the new circuit; whoever comes later gets it too."""
    store = await Store.open(f"sqlite:///{tmp_path / 'new.sqlite3'}", rendered)
    scenario = demo()
    ana = await trainee_in(store, "Ana", "UTC", scenario)
    wren = await trainee_in(store, scenario.coach, "UTC", scenario)
    phone = Phone()
    async with on_duty(store, clock, phone, scenario.coach) as assistant:
        await assistant.opened(ana)
        for text in ("yes", "kg", "no weights"):
            await assistant.said(ana, text, text, "test")
        await assistant.said(wren, "name: Spring / plank / push-up / 40 work 20 rest, 2 rounds", "1", "test")
        await assistant.said(wren, "yes", "2", "test")
        await assistant.said(ana, "what do I do today?", "3", "test")
        await assistant.settled()
    assert "Today: Spring" in [text for person, text in phone.heard if person == ana][-1]
    ben = await trainee_in(store, "Ben", "UTC", scenario)
    assert (await given_to(store, ben))[1].name == "Spring"
    assert await trainee_in(store, "Ana", "UTC", scenario) == ana
    assert (await given_to(store, ana))[1].name == "Spring"
    await store.close()


async def test_plans_coaches_and_pictures_of_an_old_database_are_read_as_what_they_were(tmp_path):
    """The dump of the newest shape: Ana has a plan, a third person coaches, a waiting message has its picture."""
    file = tmp_path / "released.sqlite3"
    with closing(sqlite3.connect(file)) as connection:
        connection.executescript(max(DUMPS.glob("*.sql")).read_text(encoding="utf-8"))
    store = await Store.open(f"sqlite:///{file}", render)
    trainee, _ = await given_to(store, 1)
    assert (trainee.block.days, trainee.block.weeks, trainee.block.easier_weeks) == (("mon", "thu"), 4, (4,))
    assert [await store.is_coach(person) for person in (1, 2, 3)] == [False, False, True]
    await store.outgoing.recover()
    letters = await store.outgoing.take(1, T0)
    assert letters[0].rendered.shows.lines[0].load == kg("20")
    await store.close()


async def test_a_clearance_reaches_a_trainee_who_is_remembered_and_is_no_news(store, ana, wren):
    """A note of the coach's, read again at the next step; taken back with a later note; the coach is not told of it."""
    await given_to(store, ana)
    await store.handle_coach(wren, None, changes(Clearance(ana, agreed=True)), T0)
    await store.handle_coach(wren, None, changes(Clearance(ana, agreed=False)), after(60))
    given = []
    await store.handle(ana, None, lambda *values: given.extend(values) or always()(*values), T0)
    assert given[2].notes == (
        SafetyNote(T0, NoteKind.CLEARED, "coach"),
        SafetyNote(after(60), NoteKind.TAKEN_BACK, "coach"),
    )
    assert await store.coach_notes.untold(COACH_KINDS) == ()


async def test_an_open_question_about_a_clearance_and_its_way_back_are_read_again(store, ana, wren):
    """Whether it is given or taken back is not mixed up."""
    state = ClearanceReviewed(ana, Outcome.WAIT, T0, WayBack("Ana", (Clearance(ana, agreed=False),)))
    await store.handle_coach(wren, None, changes(state=state), T0)
    assert (await desk_of(store, wren)).state == state


async def test_news_lies_on_the_desk_until_it_is_told(store, ana, wren):
    """What the coach is to know at once, with the trainee's answers beside it; not what a coach told of themselves."""
    young = Health(age=AgeBand.UNDER_18, decided_at=T0)
    note = SafetyNote(T0, NoteKind.OUTCOME, Outcome.WAIT)
    await store.handle(ana, None, always(HealthSaid(young), SafetyNoted(note), SafetyNoted(SafetyNote(T0, NoteKind.PAIN))), T0)
    await store.handle(wren, None, always(SafetyNoted(SafetyNote(T0, NoteKind.URGENT))), T0)
    desk = (await desk_of(store, wren)).desk
    assert [(one.trainee, one.note) for one in desk.news] == [("Ana", note)]
    assert [client.trainee.health for client in desk.clients] == [young]
    await store.handle_coach(wren, None, changes(NewsTold((desk.news[0].number,))), T0)
    assert (await desk_of(store, wren)).desk.news == ()


async def test_a_coach_who_opens_the_chat_is_told_once_of_the_outcome_and_not_of_the_answers(tmp_path, clock):
    """In the terminal it was only kept until now."""
    store = await Store.open(f"sqlite:///{tmp_path / 'new.sqlite3'}", rendered)
    scenario = demo()
    ana = await trainee_in(store, "Ana", "UTC", scenario)
    wren = await trainee_in(store, scenario.coach, "UTC", scenario)
    phone = Phone()
    async with on_duty(store, clock, phone, scenario.coach) as assistant:
        await assistant.opened(ana)
        texts = ("yes", "kg", "no weights", "ok", "67", "no", "type 2 diabetes", "I get dizzy sometimes", "none", "no", "no")
        for number, text in enumerate(texts):
            await assistant.said(ana, text, str(number), "test")
        for _ in range(2):
            await assistant.opened(wren)
        await assistant.settled()
    await store.close()
    told = " ".join(" ".join(text.split()) for person, text in phone.heard if person == wren)
    assert told.count("Health questions of Ana: a doctor's yes comes first") == 1
    assert not [answer for answer in ("67", "65", "diabetes", "dizzy") if answer in told]
