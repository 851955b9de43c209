"""One message, one transaction: what it keeps, what it refuses, and that it is all or nothing."""

from dataclasses import replace
from datetime import date
from decimal import Decimal

import pytest
from sqlalchemy import event

from bot.errors import DiaryConflict, RowBroken, TraineeUnknown
from bot.store.store import InboxKey, Store
from core.circuit import Span
from core.diary import (
    CautionsAccepted,
    Ending,
    Heard,
    PainNoted,
    PainRecord,
    RackSaid,
    Reason,
    ReminderSet,
    SetUndone,
    SnoozeSet,
    Unasked,
    UnaskedKind,
    UnaskedNoted,
    UnitChosen,
    WorkoutClosed,
    ZoneChosen,
)
from core.rack import Kind, Rack, RackItem
from core.reading.acts import Log, Side
from core.recurrence import Extra, Recurrence, Rule
from core.session.states import (
    AskingPairs,
    Choice,
    Closing,
    Cue,
    CueKind,
    Idle,
    New,
    Paused,
    Place,
    Prescription,
    Question,
    Resting,
    Working,
    Workout,
)
from core.tempo import Tempo
from core.trainee import Trainee
from core.units import Load, Unit
from tests.bot.given import CIRCUIT, T0, after, always, everything, kg, noted, opened, render, rows, say, tamper, waiting

DAYS = Recurrence((Rule(date(2026, 3, 2), "06:30", days=("mon", "thu")),), (date(2026, 3, 5),), (Extra(date(2026, 3, 6), "18:00"),))


class Watching:
    """A decision that remembers what it was last given, and how often it was asked."""

    def __init__(self, decide):
        self.decide = decide
        self.times = 0

    def __call__(self, trainee, state, history, circuit):
        """Remember, and decide."""
        self.trainee, self.state, self.history, self.circuit = trainee, state, history, circuit
        self.times += 1
        return self.decide(trainee, state, history, circuit)


async def seen_after(file, ana):
    """What a program that starts anew is given to decide from."""
    store = await Store.open(f"sqlite:///{file}", render)
    watching = Watching(always())
    try:
        await store.handle(ana, None, watching, T0)
    finally:
        await store.close()
    return watching


async def test_a_new_trainee_starts_in_the_new_state_with_the_circuit_that_is_on(store, ana):
    """The first decision sees a trainee nobody has spoken to, without a rack, and the coach's circuit."""
    watching = Watching(always())
    await store.handle(ana, None, watching, T0)
    assert watching.state == New()
    assert watching.trainee.name == "Ana"
    assert watching.trainee.rack is None
    assert watching.circuit == CIRCUIT
    assert watching.history.sets == ()


LOG = Log(reps=11, load=Decimal("17.5"), unit=Unit.LB, reserve=Decimal("1.5"))
WORKOUT = Workout(
    number=1,
    circuit=CIRCUIT,
    started_at=T0,
    place=Place(2, 1, Side.LEFT),
    exercises=("goblet-squat", "plank"),
    prescriptions=(Prescription("goblet-squat", kg("17.50"), Tempo(2, 1.5, 1, 0), 10, 12), None),
    open=(Place(1, 2),),
    question=Question(Place(1, 2), 1, choices=(Choice(LOG, Place(1, 2), replaces=3),)),
    felt=((1, "heavy"),),
)
STATES = [
    AskingPairs((RackItem(Kind.DUMBBELL, Load(Decimal("17.50"), Unit.LB), 2),)),
    Idle(last=WORKOUT, asked="zone"),
    Working(WORKOUT, T0, None, (Cue(CueKind.HALF, after(30)), Cue(CueKind.DOWN, after(60)))),
    Resting(WORKOUT, after(90), (), carded=True, work_left_s=12.345),
    Paused(WORKOUT, "working", 0.1 + 0.2, ()),
    Closing(WORKOUT, ()),
]


@pytest.mark.parametrize("state", STATES, ids=lambda state: state.kind)
async def test_a_state_comes_back_as_it_was_left(store, ana, file, state):
    """Exactly: instants to the microsecond, decimals digit for digit, floats to the last bit; after a restart as well."""
    await store.handle(ana, None, always(state=state), T0)
    assert (await seen_after(file, ana)).state == state


async def test_an_amount_keeps_its_digits(store, ana, file):
    """17.50 is not turned into 17.5, nor pounds into kilograms."""
    load = Load(Decimal("17.50"), Unit.LB)
    await store.handle(ana, None, always(opened(), noted(1, load=load, reserve=Decimal("1.5"), rpe=Decimal("8.50"))), T0)
    record = (await seen_after(file, ana)).history.sets[0]
    assert str(record.load.amount) == "17.50"
    assert record.load.unit is Unit.LB
    assert str(record.rpe) == "8.50"


async def test_every_kind_of_entry_is_kept(store, ana, file):
    """What a step keeps is what the next one is given, in this process and in one that starts anew."""
    entries = (
        CautionsAccepted(after(1)),
        UnitChosen(Unit.LB),
        RackSaid(Rack((RackItem(Kind.DUMBBELL, kg("8"), 2), RackItem(Kind.BAND, None, 1)))),
        ReminderSet(DAYS, T0),
        opened(),
        noted(1, side=Side.LEFT, seconds=40, work_s=60, rep_s=4.5),
        noted(2, side=Side.RIGHT, reps=None, load=None),
        PainNoted(PainRecord(after(5), "knee", Side.LEFT, urgent=False, exercise="goblet-squat")),
        WorkoutClosed(1, after(600), Ending.PAIN, 240),
        Heard(after(7)),
        ZoneChosen("Asia/Tokyo"),
        UnaskedNoted(Unasked(UnaskedKind.SNOOZE, date(2026, 3, 2), after(8), after(9), Reason.TRAINED)),
        SnoozeSet(after(3600)),
    )
    await store.handle(ana, None, always(*entries), T0)
    here = Watching(always())
    await store.handle(ana, None, here, after(700))
    for given in (here, await seen_after(file, ana)):
        trainee = given.trainee
        assert trainee.cautions_accepted_at == after(1)
        assert trainee.unit is Unit.LB
        assert trainee.rack == entries[2].rack
        assert (trainee.reminders, trainee.reminders_since) == (DAYS, T0)
        assert (trainee.heard_at, trainee.zone, trainee.snoozed_until) == (after(7), "Asia/Tokyo", after(3600))
        assert given.history.unasked == (entries[11].record,)
        assert given.history.sets == (entries[5].record, entries[6].record)
        assert given.history.pains == (entries[7].record,)
        workout = given.history.workouts[0]
        assert (workout.started_at, workout.ended_at, workout.ending, workout.work_s) == (T0, after(600), Ending.PAIN, 240)


async def test_a_rack_said_again_replaces_the_first_and_an_empty_one_is_known(store, ana, file):
    """Someone without weights has an empty rack, which is not the same as a rack that was never said."""
    await store.handle(ana, None, always(RackSaid(Rack((RackItem(Kind.DUMBBELL, kg("8"), 2),)))), T0)
    await store.handle(ana, None, always(RackSaid(Rack())), T0)
    assert (await seen_after(file, ana)).trainee.rack == Rack()
    await store.handle(ana, None, always(ReminderSet(None, T0)), T0)
    assert (await seen_after(file, ana)).trainee.reminders is None


async def test_a_message_that_comes_twice_changes_nothing(store, ana, file):
    """The second time nothing is decided, kept or said, also in a program that starts anew."""
    key = InboxKey("terminal", "7")
    watching = Watching(always(opened(), noted(1), state=waiting(after(60)), messages=say("11, noted"), wake_at=after(60)))
    first = await store.handle(ana, key, watching, T0)
    before = everything(file)
    again = await store.handle(ana, key, watching, after(1))
    anew = await Store.open(f"sqlite:///{file}", render)
    once_more = await anew.handle(ana, key, watching, after(2))
    await anew.close()
    assert not first.seen
    assert again.seen
    assert once_more.seen
    assert again.wake_at == once_more.wake_at == after(60)
    assert watching.times == 1
    assert everything(file) == before


async def test_the_same_id_from_another_channel_is_another_message(store, ana):
    """An id belongs to its channel."""
    watching = Watching(always())
    await store.handle(ana, InboxKey("terminal", "7"), watching, T0)
    await store.handle(ana, InboxKey("elsewhere", "7"), watching, T0)
    assert watching.times == 2


async def test_a_correction_is_a_new_row_and_the_old_one_no_longer_holds(store, ana, file):
    """Rows of sets are only ever added: the corrected row is not touched."""
    await store.handle(ana, None, always(opened(), noted(1)), T0)
    untouched = rows(file, "set_record")
    await store.handle(ana, None, always(noted(2, reps=12, replaces=1)), T0)
    assert rows(file, "set_record")[:1] == untouched
    history = (await seen_after(file, ana)).history
    assert [record.voided for record in history.sets] == [True, False]
    assert [record.reps for record in history.standing()] == [12]


async def test_an_undone_set_stays_in_the_diary_and_no_longer_holds(store, ana, file):
    """Undoing adds a row elsewhere; the set's own row is not touched."""
    await store.handle(ana, None, always(opened(), noted(1), noted(2)), T0)
    untouched = rows(file, "set_record")
    await store.handle(ana, None, always(SetUndone(2, after(9))), T0)
    assert rows(file, "set_record") == untouched
    assert rows(file, "set_void")[0]["number"] == 2
    history = (await seen_after(file, ana)).history
    assert [record.number for record in history.sets] == [1, 2]
    assert [record.number for record in history.standing()] == [1]


async def test_no_statement_ever_changes_or_deletes_a_set(store, ana):
    """Through noting, correcting, undoing and closing, the tables of sets only see rows added."""
    statements = []
    event.listen(store._database.engine, "before_cursor_execute", lambda *args: statements.append(args[2]))  # noqa: SLF001
    await store.handle(ana, None, always(opened(), noted(1), noted(2, replaces=1), SetUndone(2, T0)), T0)
    await store.handle(ana, None, always(noted(3), WorkoutClosed(1, after(9), Ending.EARLY, 60)), T0)
    about_sets = [statement for statement in statements if "set_record" in statement or "set_void" in statement]
    assert sum(statement.startswith("INSERT") for statement in about_sets) == 4
    assert all(statement.startswith(("INSERT", "SELECT")) for statement in about_sets)


CONFLICTS = [
    ([opened(), noted(2)], "a number that is not the next"),
    ([opened(), noted(1), noted(1)], "a number used twice"),
    ([noted(1)], "a set of no workout"),
    ([opened(), noted(1), noted(2, replaces=3)], "replacing what is not there"),
    ([opened(), noted(1), SetUndone(1, T0), SetUndone(1, T0)], "undone twice"),
    ([opened(), noted(1), noted(2, replaces=1), noted(3, replaces=1)], "replaced twice"),
    ([SetUndone(1, T0)], "undoing what is not there"),
    ([opened(2)], "a workout's number that is not the next"),
    ([WorkoutClosed(1, T0, Ending.EARLY, 0)], "closing what is not open"),
    ([opened(), WorkoutClosed(1, T0, Ending.EARLY, 0), WorkoutClosed(1, T0, Ending.EARLY, 0)], "closing twice"),
]


@pytest.mark.parametrize(("entries", "why"), CONFLICTS, ids=[why for _, why in CONFLICTS])
async def test_what_contradicts_the_diary_fails_the_whole_transaction(store, ana, file, entries, why):
    """Loudly, and nothing of the step is kept: neither its other entries, nor its state, nor its messages."""
    before = everything(file)
    with pytest.raises(DiaryConflict):
        await store.handle(ana, InboxKey("terminal", "1"), always(*entries, state=waiting(), messages=say(why)), T0)
    assert everything(file) == before
    assert (await seen_after(file, ana)).state == New()


IMPOSSIBLE = [
    {"reps": -1},
    {"reps": 1000},
    {"load": kg("-5")},
    {"load": kg("500")},
    {"load": kg("NaN")},
    {"seconds": -1},
    {"round": 0},
    {"station": 0},
    {"exercise": ""},
    {"rpe": Decimal(11)},
    {"reserve": Decimal(-1)},
    {"at": T0.replace(tzinfo=None)},
    {"rep_s": 0.0},
]


@pytest.mark.parametrize("fields", IMPOSSIBLE, ids=str)
async def test_an_impossible_set_is_never_stored(store, ana, file, fields):
    """A wrong record is the worst outcome."""
    before = everything(file)
    with pytest.raises(RowBroken):
        await store.handle(ana, None, always(opened(), noted(1, **fields)), T0)
    assert everything(file) == before


async def test_a_state_that_would_not_come_back_the_same_is_not_stored(store, ana, file):
    """A state is read back before it is written: here a text stands where seconds should."""
    before = everything(file)
    broken = replace(STATES[3], work_left_s="soon")
    with pytest.raises(RowBroken):
        await store.handle(ana, None, always(state=broken), T0)
    assert everything(file) == before


class Stumble(Exception):
    """The fault that is put in on purpose."""


def stumbling(engine, at):
    """Raise at the statement of this number, the commit counted too; return how to stop that."""
    count = 0

    def step(*_):
        nonlocal count
        count += 1
        if count == at:
            raise Stumble

    event.listen(engine, "before_cursor_execute", step)
    event.listen(engine, "commit", step)

    def stop():
        event.remove(engine, "before_cursor_execute", step)
        event.remove(engine, "commit", step)

    return stop


def rich_step():
    """A decision that touches every table."""
    return always(
        UnitChosen(Unit.LB),
        RackSaid(Rack((RackItem(Kind.DUMBBELL, kg("8"), 2),))),
        opened(),
        noted(1),
        noted(2, replaces=1),
        noted(3),
        SetUndone(3, T0),
        PainNoted(PainRecord(T0, "knee", None, urgent=False, exercise=None)),
        WorkoutClosed(1, after(9), Ending.EARLY, 60),
        state=waiting(after(60)),
        messages=say("one", "two"),
        wake_at=after(60),
    )


async def test_a_fault_at_any_point_of_the_transaction_leaves_nothing_of_it(store, ana, file):
    """The fault walks through every statement and the commit; each time nothing is left, and in the end everything is there."""
    before = everything(file)
    key = InboxKey("terminal", "1")
    at = 1
    while True:
        stop = stumbling(store._database.engine, at)  # noqa: SLF001
        try:
            await store.handle(ana, key, rich_step(), T0)
        except Stumble:
            assert everything(file) == before
            at += 1
        else:
            break
        finally:
            stop()
    assert at > 15  # the fault did walk
    history = (await seen_after(file, ana)).history
    assert [record.voided for record in history.sets] == [True, False, True]
    assert [row["text"] for row in rows(file, "outbox")] == ["one", "two"]


async def test_a_machine_that_stops_at_any_statement_finds_all_or_nothing(store, ana, file, tmp_path):
    """The files are copied as they lie on disk before each statement and after the commit; each copy opens to before or after."""
    copies = []

    def copy(*_):
        folder = tmp_path / f"copy-{len(copies)}"
        folder.mkdir()
        for name in (file.name, f"{file.name}-wal"):
            if (file.parent / name).exists():
                (folder / name).write_bytes((file.parent / name).read_bytes())
        copies.append(folder / file.name)

    before = everything(file)
    event.listen(store._database.engine, "before_cursor_execute", copy)  # noqa: SLF001
    await store.handle(ana, None, rich_step(), T0)
    event.remove(store._database.engine, "before_cursor_execute", copy)  # noqa: SLF001
    copy()
    after_all = everything(file)
    found = [everything(copied) for copied in copies]
    assert found[-1] == after_all
    assert all(state == before for state in found[:-1])
    assert len(found) > 15


async def test_a_failing_decision_leaves_everything_as_it_was(store, ana, file):
    """The message is not marked as handled: it can be handed in again, and is then handled."""

    def fail(*_):
        raise Stumble

    before = everything(file)
    key = InboxKey("terminal", "1")
    with pytest.raises(Stumble):
        await store.handle(ana, key, fail, T0)
    assert everything(file) == before
    assert not (await store.handle(ana, key, always(), T0)).seen


async def test_an_unreadable_state_starts_from_idle_with_the_diary_kept(store, ana, file, caplog):
    """A state of another version must not end the chat; the log names the trainee by id alone."""
    await store.handle(ana, None, always(opened(), noted(1), state=waiting(after(60))), T0)
    tamper(file, 'UPDATE trainee SET state = \'{"kind": "dancing", "with": "Ana"}\'')
    given = await seen_after(file, ana)
    assert given.state == Idle()
    assert len(given.history.sets) == 1
    assert f"trainee {ana}" in caplog.text
    assert "dancing" not in caplog.text
    assert "Ana" not in caplog.text


async def test_a_stored_value_that_cannot_be_is_refused_and_not_guessed(store, ana, file):
    """A row that was tampered with stops the step; it is never read as something else."""
    await store.handle(ana, None, always(opened(), noted(1)), T0)
    tamper(file, "UPDATE set_record SET amount = 'twenty'")
    with pytest.raises(RowBroken) as refused:
        await seen_after(file, ana)
    assert "twenty" not in str(refused.value)


async def test_nobody_of_that_name_or_id(store):
    """An unknown trainee is an error with the name or id in it."""
    with pytest.raises(TraineeUnknown):
        await store.trainee_id("Nobody")
    with pytest.raises(TraineeUnknown):
        await store.handle(99, None, always(), T0)


async def test_a_circuit_saved_again_is_the_one_that_is_on_from_now(store, ana):
    """Also for a trainee whose diary is remembered from the step before; there is still one circuit of the name."""
    watching = Watching(always())
    await store.handle(ana, None, watching, T0)
    changed = replace(CIRCUIT, rounds=4, rest_s=Span(30, 30))
    assert await store.save_circuit(changed) == await store.save_circuit(changed)
    await store.handle(ana, None, watching, T0)
    assert watching.circuit == changed


async def test_who_is_due_and_when(store, ana):
    """The wake-up of a step is found by a program that starts anew; no clock may start before the latest step."""
    assert await store.wakes() == {}
    assert await store.latest_at() is None
    await store.handle(ana, None, always(wake_at=after(60)), after(5))
    assert await store.wakes() == {ana: after(60)}
    assert await store.latest_at() == after(5)


async def test_only_the_latest_are_remembered_and_the_others_are_read_again(store, ana, monkeypatch):
    """What a step is given does not depend on how many others were seen to in between."""
    monkeypatch.setattr("bot.store.store.REMEMBERED", 2)
    await store.handle(ana, None, always(opened(), noted(1)), T0)
    others = [await store.add_trainee(Trainee(f"trainee {number}"), 1) for number in range(3)]
    for other in others:
        await store.handle(other, None, always(), T0)
    assert list(store._known) == others[1:]  # noqa: SLF001 - how much is held is the rule
    again = Watching(always())
    await store.handle(ana, None, again, after(1))
    assert [record.number for record in again.history.sets] == [1]
