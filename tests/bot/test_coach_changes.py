"""What a coach's step changes, in rows: read back as it was kept, whoever remembers it reads anew, and who must be looked at."""

from dataclasses import replace
from datetime import date, timedelta

import pytest
from sqlalchemy import event

from core.coach.desk import (
    Asked,
    CircuitKept,
    ComesOn,
    EndKept,
    PauseKept,
    QuestionsAnswered,
    QuestionsTold,
    Review,
    ReviewSet,
    WeekTold,
    WishesKept,
    WordSent,
    WordTakenBack,
)
from core.coach.states import Choosing, CoachStep, DeedReviewed, Quiet, WayBack
from core.deeds import Deed, DeedKind
from core.diary import CoachWord, Question, QuestionAsked, WordKind, WordSaid
from core.session.states import Idle
from core.trainee import Coming, Pause, Trainee
from core.wishes import CardNote, HeldLoad, Swapped, Wishes
from tests.bot.given import CIRCUIT, T0, after, always, kg, noted, opened, rows
from tests.bot.test_coaching import changes, desk_of, given_to, store_file

OTHER = replace(CIRCUIT, name="Garden")
NINE = T0 + timedelta(hours=2, minutes=30)  # nine in the morning, in Lisbon too
WISHES = Wishes((Swapped("goblet-squat", "glute-bridge"),), (HeldLoad(None, kg("12")),), (CardNote(None, "<b>slow</b>"),))


@pytest.fixture
async def wren(store):
    """A coach's id."""
    person_id = await store.add_trainee(Trainee("Coach Wren"), await store.save_circuit(CIRCUIT))
    await store.make_coach(person_id)
    return person_id


async def changed(store, coach_id, *what, now=NINE, state=None):
    """A coach's step with these changes."""
    return await store.handle_coach(coach_id, None, changes(*what, state=state), now)


def word(number=1, text="Well done", kind=WordKind.MESSAGE, **more):
    """A word on its way."""
    return CoachWord(number, NINE, kind, text, **more)


@pytest.mark.parametrize(
    ("change", "field", "value"),
    [
        (lambda ana: WishesKept(ana, WISHES), "wishes", WISHES),
        (lambda ana: PauseKept(ana, Pause(NINE, date(2026, 3, 9))), "pause", Pause(NINE, date(2026, 3, 9))),
        (lambda ana: PauseKept(ana, Pause(NINE, None)), "pause", Pause(NINE, None)),
        (lambda ana: EndKept(ana, NINE), "ended_at", NINE),
        (lambda ana: ComesOn(ana, OTHER.name, date(2026, 3, 9)), "coming", Coming(OTHER, date(2026, 3, 9))),
    ],
    ids=["wishes", "a rest", "a rest without an end", "the end", "what is coming"],
)
async def test_what_is_wished_for_a_trainee_is_what_their_next_step_rests_on(store, ana, wren, change, field, value):
    """Though the store remembers Ana; and taken back it is gone."""
    await given_to(store, ana)
    await changed(store, wren, CircuitKept(OTHER), change(ana))
    assert getattr((await given_to(store, ana))[0], field) == value
    back = {
        "wishes": WishesKept(ana, Wishes()),
        "pause": PauseKept(ana, None),
        "ended_at": EndKept(ana, None),
        "coming": ComesOn(ana, None, None),
    }
    await changed(store, wren, back[field])
    assert getattr((await given_to(store, ana))[0], field) == getattr(Trainee("Ana"), field)


async def test_somebody_who_has_left_is_off_the_roster_and_still_there(store, ana, wren):
    """Their row and their diary stay; an undo finds them."""
    await changed(store, wren, EndKept(ana, NINE))
    desk = (await desk_of(store, wren)).desk
    assert ([one.id for one in desk.clients], [one.id for one in desk.ended]) == ([], [ana])
    await changed(store, wren, EndKept(ana, None))
    assert [one.id for one in (await desk_of(store, wren)).desk.clients] == [ana]


async def test_words_wake_whom_they_are_for_when_they_may_be_said(store, ana, wren):
    """At nine at once, at half past six when the quiet hours end; one who is due sooner stays so."""
    handled = await changed(store, wren, WordSent(ana, word()))
    assert handled.wakes == ((ana, NINE),)
    assert (await store.wakes())[ana] == NINE
    assert (await store.diary(ana)).words == (word(),)
    handled = await changed(store, wren, WordSent(ana, word(2)), now=T0)
    assert handled.wakes == ((ana, T0 + timedelta(hours=1, minutes=30)),)
    assert (await store.wakes())[ana] == T0 + timedelta(hours=1, minutes=30)
    assert (await changed(store, wren, WordSent(ana, word(3)))).wakes == ((ana, NINE),)
    assert (await store.wakes())[ana] == T0 + timedelta(hours=1, minutes=30)


async def test_words_that_were_said_are_not_taken_back(store, ana, wren):
    """Of two, the one that waits is; it is not said any more."""
    await changed(store, wren, WordSent(ana, word()), WordSent(ana, word(2)))
    await store.handle(ana, None, always(WordSaid(1, NINE)), NINE)
    await changed(store, wren, WordTakenBack(ana, 1), WordTakenBack(ana, 2), now=after(20_000))
    first, second = (await store.diary(ana)).words
    assert (first.told_at, first.taken_back_at) == (NINE, None)
    assert (second.told_at, second.taken_back_at) == (None, after(20_000))


async def test_words_for_somebody_who_is_gone_for_good_are_not_kept(store, wren):
    """Whoever had everything erased between the look and the yes gets nothing, and the rest of the step is kept."""
    gone = (WordSent(99, word()), WishesKept(99, WISHES), PauseKept(99, None))
    handled = await changed(store, wren, *gone, ReviewSet("mon", "07:30"))
    assert handled.wakes == ()
    assert rows(store_file(store), "coach_word") == []
    assert (await desk_of(store, wren)).desk.review.day == "mon"


async def test_a_question_lies_on_the_desk_until_it_is_told_and_is_open_until_it_is_answered(store, ana, wren):
    """Asked in a trainee's step; told and answered in a coach's; open again after an undo."""
    asked = Question(1, NINE, "Heels down?", CIRCUIT.name, 1, 2, "goblet-squat")
    handled = await store.handle(ana, None, always(QuestionAsked(asked)), NINE)
    assert handled.for_coach
    assert [one.question for one in await store.questions.untold()] == [asked]
    assert (await desk_of(store, wren)).desk.asked == (Asked(ana, 1),)
    await changed(store, wren, QuestionsTold((Asked(ana, 1),)), QuestionsAnswered(ana, (1,), answered=True))
    assert await store.questions.untold() == ()
    assert (await store.diary(ana)).questions[0].answered_at == NINE
    await changed(store, wren, QuestionsAnswered(ana, (1,), answered=False))
    assert (await store.diary(ana)).questions == (asked,)


async def test_when_the_week_is_told_is_kept_and_nothing_from_before_the_first_word_is_due(store, wren):
    """Sunday evening unless another day is chosen; what lies before is seen to."""
    await changed(store, wren)
    assert (await desk_of(store, wren)).desk.review == Review("sun", "18:00", NINE)
    await changed(store, wren, ReviewSet("mon", "07:30"), now=after(20_000))
    assert (await desk_of(store, wren)).desk.review == Review("mon", "07:30", after(20_000))
    await changed(store, wren, WeekTold(after(30_000)))
    assert (await desk_of(store, wren)).desk.review.since == after(30_000)
    await changed(store, wren, ReviewSet(None, "07:30"))
    assert (await desk_of(store, wren)).desk.review.day is None


async def test_when_a_coach_is_to_be_looked_at_is_kept(store, wren):
    """With the step."""
    step = CoachStep(Quiet(), (), (), wake_at=after(600))
    handled = await store.handle_coach(wren, None, lambda _state, _desk: step, NINE)
    assert handled.wake_at == after(600)
    assert await store.coach_wake(wren, NINE) == after(600)


async def test_a_coach_without_any_step_is_looked_at_at_once(store, wren):
    """So that what is due from then on is known."""
    assert await store.coach_wake(wren, NINE) == NINE


@pytest.mark.parametrize(
    "state",
    [
        DeedReviewed(Deed(DeedKind.HOLD, "goblet-squat", load=kg("12")), (1, 2), WayBack("say", (WordTakenBack(1, 1),))),
        DeedReviewed(Deed(DeedKind.PUT_UP, text="Garden", on=date(2026, 3, 9), everyone=True), (1,)),
        Choosing("tell Mia: hello", date(2026, 3, 2), "Mia", ("Mia Berg", "Mia Lund"), (("Bem", "Ben"),)),
        Quiet(
            WayBack(
                "swap",
                (
                    WishesKept(1, WISHES),
                    PauseKept(1, Pause(NINE, date(2026, 3, 9))),
                    PauseKept(2, None),
                    EndKept(1, None),
                    EndKept(2, NINE),
                    ComesOn(1, "Garden", date(2026, 3, 9)),
                    ComesOn(2, None, None),
                    QuestionsAnswered(1, (1, 2), answered=False),
                    WordTakenBack(1, 2),
                ),
                Deed(DeedKind.SWAP, "goblet-squat", "glute-bridge"),
                2,
            ),
            "Garden",
        ),
    ],
    ids=["a deed", "a circuit", "who is meant", "a way back"],
)
async def test_where_a_talk_is_comes_back_as_it_was(store, wren, state):
    """Every kind of question and every way back."""
    await changed(store, wren, state=state)
    assert (await desk_of(store, wren)).state == state


async def test_a_desk_with_many_sets_reads_none_of_them_twice(store, ana, wren):
    """After words for Ana her sets are not read again, as long as there are no more of them."""
    entries = [opened(), *(noted(number) for number in range(1, 4))]
    await store.handle(ana, None, always(*entries, state=Idle()), T0)
    assert len((await desk_of(store, wren)).desk.clients[0].diary.sets) == 3
    seen = []
    engine = store._database.engine  # noqa: SLF001
    event.listen(engine, "before_cursor_execute", lambda *args: seen.append(args[2]))
    await changed(store, wren, WordSent(ana, word()))
    desk = (await desk_of(store, wren)).desk
    assert (len(desk.clients[0].diary.sets), desk.clients[0].diary.words) == (3, (word(),))
    assert not [statement for statement in seen if "set_record.reps" in statement]
    await store.handle(ana, None, always(noted(4)), after(50))
    assert len((await desk_of(store, wren)).desk.clients[0].diary.sets) == 4
