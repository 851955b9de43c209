"""Safety in the store: what is kept comes back as it was, and the coach is told once, of the outcome and not of the answers."""

from dataclasses import replace
from decimal import Decimal

import pytest

from bot.errors import DiaryConflict, RowBroken
from bot.store.ledger import Ledger
from bot.store.store import Store
from bot.wording import worded
from core.circuit import Side
from core.diary import (
    EffortSaid,
    HealthSaid,
    History,
    PainDescribed,
    PainEased,
    PainNoted,
    PainRecord,
    SafetyNoted,
)
from core.health import (
    COACH_KINDS,
    AgeBand,
    Condition,
    Health,
    Injury,
    NoteKind,
    Outcome,
    Quality,
    SafetyNote,
    Symptom,
    Topic,
    outcome_value,
)
from core.messages import SafetyNews
from core.trainee import Trainee
from tests.bot.given import T0, after, always, opened, render

HEALTH = Health(
    open=(Topic.SHARE,),
    age=AgeBand.OLDER,
    pregnant=False,
    conditions=(Condition.KIDNEY,),
    symptoms=(Symptom.ANKLES, Symptom.MURMUR),
    injuries=(Injury("knee", Side.LEFT),),
    active=False,
    medicine=True,
    decided_at=T0,
)
KNEE = PainRecord(after(1), "knee", Side.LEFT, urgent=False, exercise="goblet-squat")
CHEST = PainRecord(after(2), "chest", None, urgent=True, exercise=None)
ENTRIES = (
    opened(),
    HealthSaid(HEALTH),
    PainNoted(KNEE),
    PainNoted(CHEST),
    PainDescribed(after(1), Quality.SHARP, known=False),
    PainEased("knee", after(9)),
    EffortSaid(1, Decimal("7.5")),
    *(SafetyNoted(SafetyNote(after(number), kind, "go")) for number, kind in enumerate(NoteKind)),
)


async def read_anew(file, trainee_id):
    """The trainee and the diary as a program reads them that was not there when they were written."""
    given = []
    store = await Store.open(f"sqlite:///{file}", render)
    await store.handle(trainee_id, None, lambda *values: given.extend(values) or always()(*values), T0)
    await store.close()
    return given[0], given[2]


async def test_what_is_kept_of_safety_comes_back_as_it_was(store, file, ana):
    """Answers, pain described and gone, effort, every kind of note: the rows say what the entries said."""
    await store.handle(ana, None, always(*ENTRIES), T0)
    ledger = Ledger(Trainee("Ana", zone="Europe/Lisbon"), History())
    for entry in ENTRIES:
        ledger = ledger.after(entry)
    trainee, history = await read_anew(file, ana)
    assert trainee == ledger.trainee
    assert history == ledger.history
    assert history.pains == (replace(KNEE, quality=Quality.SHARP, known=False, eased_at=after(9)), CHEST)


async def test_pain_gone_takes_only_that_place_and_no_warning_sign(store, file, ana):
    """A sign to stop everything is lifted by a clearance alone."""
    wrist = replace(KNEE, at=after(3), place="wrist")
    unnamed = replace(KNEE, at=after(4), place=None)
    await store.handle(
        ana,
        None,
        always(
            *(PainNoted(pain) for pain in (KNEE, wrist, unnamed, CHEST)), PainEased("chest", after(9)), PainEased(None, after(9))
        ),
        T0,
    )
    _, history = await read_anew(file, ana)
    assert [pain.eased_at for pain in history.pains] == [None, None, after(9), None]


async def test_the_coach_is_told_each_note_once(store, ana):
    """Untold until told; only the kinds that are for the coach."""
    await store.handle(ana, None, always(*ENTRIES), T0)
    waiting = await store.coach_notes.untold(COACH_KINDS)
    assert [note.note.kind for note in waiting] == [kind for kind in NoteKind if kind in COACH_KINDS]
    assert NoteKind.FEELING not in COACH_KINDS
    assert {note.trainee for note in waiting} == {"Ana"}
    await store.coach_notes.told([note.number for note in waiting[:2]], after(60))
    assert await store.coach_notes.untold(COACH_KINDS) == waiting[2:]
    assert [note.note.kind for note in await store.coach_notes.untold()] == [NoteKind.URGENT]


@pytest.mark.parametrize("effort", [Decimal(-1), Decimal(11)])
async def test_an_effort_off_its_scale_is_refused(store, ana, effort):
    """0 to 10."""
    with pytest.raises(RowBroken):
        await store.handle(ana, None, always(opened(), EffortSaid(1, effort)), T0)


async def test_an_effort_of_no_workout_is_refused(store, ana):
    """It would contradict the diary."""
    with pytest.raises(DiaryConflict):
        await store.handle(ana, None, always(EffortSaid(1, Decimal(5))), T0)


async def test_a_note_never_carries_a_whole_text(store, ana):
    """A place, an outcome, a number: what somebody typed does not belong there."""
    with pytest.raises(RowBroken):
        await store.handle(ana, None, always(SafetyNoted(SafetyNote(T0, NoteKind.PAIN, "x" * 201))), T0)


@pytest.mark.parametrize("agreed", [True, False])
async def test_the_coach_reads_the_answers_in_words_only_of_who_agreed(store, ana, agreed):
    """Kept with the step, handed to the coach as it was: signs, disease, places in words, or the outcome alone."""
    kept = SafetyNote(T0, NoteKind.OUTCOME, outcome_value(Outcome.CLEARANCE, HEALTH, answers=agreed))
    await store.handle(ana, None, always(HealthSaid(replace(HEALTH, share=agreed)), SafetyNoted(kept)), T0)
    (told,) = await store.coach_notes.untold()
    lines = worded(SafetyNews(told.trainee, told.note.kind, told.note.value)).text.split("\n")
    heard = " ".join(line.strip() for line in lines)
    assert "Health questions of Ana: a doctor's yes comes first" in heard
    answers = (
        "• age: 65 or over • pregnant, or birth in the last 6 months: no • known disease: kidneys • signs lately: swollen ankles,"
        " a heart murmur • injuries: left knee • active for 3 months: no • medicine that changes the heart rate: yes"
    )
    assert (answers in heard) is agreed
    assert ("knee" in heard or "ankles" in heard) is agreed


async def test_an_agreement_taken_back_holds_for_notes_not_told_yet(store, ana):
    """The note was kept with the answers; told later, it holds the outcome alone."""
    kept = SafetyNote(T0, NoteKind.OUTCOME, outcome_value(Outcome.CLEARANCE, HEALTH, answers=True))
    await store.handle(ana, None, always(HealthSaid(replace(HEALTH, share=True)), SafetyNoted(kept)), T0)
    await store.handle(ana, None, always(HealthSaid(replace(HEALTH, share=False))), after(5))
    (told,) = await store.coach_notes.untold()
    assert told.note.value == Outcome.CLEARANCE.value
