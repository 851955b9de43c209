"""What a coach wishes for one trainee, in that trainee's workouts: swaps, held loads, notes, what is coming, a rest, words."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, date, datetime, timedelta
from decimal import Decimal

import pytest

from bot.bootstrap import demo
from core.catalogue import exercise
from core.circuit import Span, Station
from core.diary import CoachWord, PainRecord, Question, WordKind
from core.exercise import Measure
from core.health import NoteKind, SafetyNote
from core.messages import Card, CoachAnswers, CoachWrites, NoOtherLoad, RestGiven, TodayPlan
from core.reasons import CoachHolds
from core.session.states import Idle
from core.session.wished import with_swaps
from core.tempo import Tempo
from core.trainee import Coming, Pause
from core.units import Load, Unit
from core.wishes import CardNote, HeldLoad, Swapped, Wishes
from tests.walking import MORNING, Walk

DEMO = demo()
SQUAT, ROW = "goblet-squat", "one-arm-row"


def kg(amount: int) -> Load:
    """A load in kilograms."""
    return Load(Decimal(amount), Unit.KG)


def walk_with(wishes: Wishes = Wishes(), **more) -> Walk:  # noqa: B008 - a frozen value
    """Robin, known, with what the coach wishes."""
    walk = Walk(known=True)
    walk.ledger = replace(walk.ledger, trainee=replace(walk.ledger.trainee, wishes=wishes, **more))
    return walk


def cards(walk: Walk) -> list[Card]:
    """Every card shown so far."""
    return [message for message in walk.heard if isinstance(message, Card)]


def test_a_swapped_exercise_is_what_today_the_board_and_the_card_show():
    """Wherever the circuit has it; under the circuit's own name, done the other exercise's own way."""
    walk = walk_with(Wishes(swaps=(Swapped(SQUAT, "glute-bridge"),)))
    walk.says("today")
    other = exercise(walk.ledger.trainee.wishes.swaps[0].instead).name
    (today,) = [message for message in walk.said if isinstance(message, TodayPlan)]
    assert (today.circuit, today.stations[0].exercise) == (DEMO.circuit.name, other)
    assert today.picture is not None
    assert today.picture.lines[0].exercise == other
    walk.says("go", "go")
    assert cards(walk)[0].exercise == other


def test_a_swap_changes_no_workout_that_runs():
    """The workout keeps what it began with; the next one has the swap."""
    walk = walk_with().says("go", "go", "go")
    walk.ledger = replace(walk.ledger, trainee=replace(walk.ledger.trainee, wishes=Wishes(swaps=(Swapped(SQUAT, "glute-bridge"),))))
    assert walk.state.workout.circuit.stations[0].exercise == SQUAT
    walk.says("again")
    assert cards(walk)[-1].exercise == exercise(SQUAT).name


def test_a_swapped_station_keeps_its_seconds_and_takes_the_rest_from_the_other():
    """Seconds and reserve stay; sides, tempo and form are the other's, and no load of the first one is left."""
    station = Station(
        SQUAT, 45, None, Tempo(3, 1, 1, 0), sides=False, reserve=Span(1, 2), load_hint=kg(20), form=("elbows in",), swap=(ROW,)
    )
    circuit = replace(DEMO.circuit, stations=(station,))
    (swapped,) = with_swaps(circuit, Wishes(swaps=(Swapped(SQUAT, ROW),))).stations
    row = exercise(ROW)
    assert swapped == Station(ROW, 45, None, row.tempo, sides=row.sides, reserve=Span(1, 2))


def test_counted_reps_of_something_that_is_held_become_the_seconds_they_would_take():
    """Ten reps of four seconds are forty seconds of a plank."""
    station = Station(SQUAT, None, 10, Tempo(2, 1, 1, 0), sides=False, reserve=Span(1, 2))
    (swapped,) = with_swaps(replace(DEMO.circuit, stations=(station,)), Wishes(swaps=(Swapped(SQUAT, "plank"),))).stations
    assert exercise("plank").measure is not Measure.REPS
    assert (swapped.work_s, swapped.reps) == (40, None)


def test_swaps_do_not_chain():
    """Squat for row and row for squat change places; neither comes back to itself."""
    circuit = replace(DEMO.circuit, stations=DEMO.circuit.stations[:2])
    both = Wishes(swaps=(Swapped(SQUAT, ROW), Swapped(ROW, SQUAT)))
    assert [station.exercise for station in with_swaps(circuit, both).stations] == [ROW, SQUAT]


@pytest.mark.parametrize("wishes", [Wishes(), Wishes(swaps=(Swapped("dead-bug", SQUAT),))], ids=["none", "of another exercise"])
def test_a_circuit_without_the_exercise_is_as_it_was(wishes):
    """The very same value."""
    assert with_swaps(DEMO.circuit, wishes) is DEMO.circuit


def strong(wishes: Wishes) -> Walk:
    """Robin, who did twenty easy reps at 12 kg two days ago, and could go on to 16."""
    walk = walk_with(wishes).says("go", "go", "go")
    walk.waits(60).says("20 at 12kg, 6 left", "finish")
    return walk.waits(2 * 86400)


def test_no_load_above_what_the_coach_allows_and_the_card_says_so():
    """Without the hold it would be 16; with it 12, and the reason is the coach's."""
    free = cards(strong(Wishes()).says("go", "go"))[-1]
    held = cards(strong(Wishes(holds=(HeldLoad(SQUAT, kg(12)),))).says("go", "go"))[-1]
    assert free.load == kg(16)
    assert (held.load, held.why) == (kg(12), CoachHolds())


@pytest.mark.parametrize("hold", [HeldLoad(SQUAT, None), HeldLoad(None, None)], ids=["of the exercise", "of all"])
def test_not_above_the_last_one_means_the_heaviest_of_the_last_workout_with_it(hold):
    """12 was the heaviest two days ago, so it is 12 again."""
    held = cards(strong(Wishes(holds=(hold,))).says("go", "go"))[-1]
    assert (held.load, held.why) == (kg(12), CoachHolds())


def test_what_was_said_of_an_exercise_goes_before_what_was_said_of_all():
    """All are held where they were, the squat may go up to 16."""
    held = cards(strong(Wishes(holds=(HeldLoad(None, None), HeldLoad(SQUAT, kg(16))))).says("go", "go"))[-1]
    assert held.load == kg(16)


def test_too_light_does_not_lift_a_held_load():
    """The trainee is told why, and kindly how to make it harder."""
    walk = strong(Wishes(holds=(HeldLoad(SQUAT, kg(12)),))).says("go", "go", "too light")
    (told,) = [message for message in walk.said if isinstance(message, NoOtherLoad)]
    assert told.held


def test_a_note_is_on_the_card_in_round_one_only():
    """The coach's words at that exercise; those for none are on the first card of all."""
    notes = Wishes(notes=(CardNote(SQUAT, "elbows in, you know why"), CardNote(None, "new shoes!"), CardNote(ROW, "slow")))
    walk = walk_with(notes).says("go", "go", "go")
    walk.waits(60 * 60 * 2)
    shown = {(card.round, card.station): card.notes for card in cards(walk)}
    assert shown[1, 1] == ("elbows in, you know why", "new shoes!")
    assert shown[1, 2] == ("slow",)
    assert not any(said for (number, _), said in shown.items() if number > 1)
    assert all(card.coach == "Coach Wren" for card in cards(walk))


def test_what_is_coming_is_on_from_its_day_on_and_not_before():
    """On Wednesday it is still the old one, on Thursday the new one, plan or not."""
    walk = walk_with(coming=Coming(DEMO.others[0], date(2026, 3, 4)), block=DEMO.plan)
    walk.says("today")
    assert [message.circuit for message in walk.said if isinstance(message, TodayPlan)] == [DEMO.plan.circuits[0].name]
    walk.waits(2 * 86400).says("today")
    (today,) = [message for message in walk.said if isinstance(message, TodayPlan)]
    assert (today.circuit, today.block) == (DEMO.others[0].name, None)


def test_in_a_rest_that_the_coach_gives_today_says_so_and_training_is_possible():
    """Until Wednesday; "go" starts all the same, and on Wednesday it is as before."""
    walk = walk_with(pause=Pause(MORNING, date(2026, 3, 4))).says("what do I do today?")
    assert [message for message in walk.said if isinstance(message, RestGiven)] == [
        RestGiven("Coach Wren", date(2026, 3, 4), DEMO.circuit.name)
    ]
    assert walk.says("go").state.kind == "warming_up"
    walk.says("finish").waits(2 * 86400).says("today")
    assert "TodayPlan" in walk.kinds()


def with_words(*words: CoachWord, **more) -> Walk:
    """Robin, with words of the coach's on their way."""
    walk = walk_with(**more)
    walk.ledger = replace(walk.ledger, history=replace(walk.history, words=words))
    return walk


def word(number: int = 1, text: str = "Well done", kind: WordKind = WordKind.MESSAGE, **more) -> CoachWord:
    """A word that waits."""
    return CoachWord(number, MORNING, kind, text, **more)


NINE = datetime(2026, 3, 2, 9, tzinfo=UTC)


def test_words_wait_for_the_end_of_the_quiet_hours_and_come_in_order_once():
    """At half past six nothing is said; at eight both are, the first one first, and never again."""
    walk = with_words(word(1, "first"), word(2, "second")).sleeps(0)
    assert walk.said == []
    assert walk.wake_at == datetime(2026, 3, 2, 8, tzinfo=UTC)
    walk.waits(3 * 3600)
    assert walk.said == [CoachWrites("Coach Wren", "first"), CoachWrites("Coach Wren", "second")]
    assert [told.told_at for told in walk.history.words] == [datetime(2026, 3, 2, 8, tzinfo=UTC)] * 2
    assert walk.waits(3 * 86400).said == []


def test_words_wait_for_the_end_of_a_workout():
    """Not between two sets; after the summary."""
    walk = with_words()
    walk.now = NINE
    walk.says("go", "go", "go")
    walk.ledger = replace(walk.ledger, history=replace(walk.history, words=(word(),)))
    walk.waits(300)
    assert not any(isinstance(message, CoachWrites) for message in walk.heard)
    walk.says("finish", "finish")
    assert CoachWrites("Coach Wren", "Well done") in walk.heard


def test_an_answer_comes_with_what_was_asked():
    """So that it is understood days later."""
    walk = with_words(word(1, "Yes, both", WordKind.ANSWER, about=1))
    walk.ledger = replace(walk.ledger, history=replace(walk.history, questions=(Question(1, MORNING, "Heels down?"),)))
    walk.now = NINE
    assert walk.sleeps(0).said == [CoachAnswers("Coach Wren", "Heels down?", "Yes, both")]


def test_what_was_taken_back_is_not_said():
    """And nothing is due for it."""
    walk = with_words(word(taken_back_at=MORNING)).sleeps(4 * 3600)
    assert (walk.said, walk.wake_at) == ([], None)


def test_words_are_no_reminder_and_do_not_take_its_place():
    """A reminder of that day still comes: the coach's words are not the one message a day."""
    walk = with_words()
    walk.says("remind me every day at 10:00")
    walk.ledger = replace(walk.ledger, history=replace(walk.history, words=(word(),)))
    walk.sleeps(0).waits(4 * 3600)
    assert [type(message).__name__ for message in walk.said] == ["CoachWrites", "Reminder"]


def test_words_that_end_a_workout_are_said_at_once():
    """A clearance is taken back in the middle of one: it is closed, and the trainee hears why in the same step."""
    walk = with_words()
    walk.now = NINE
    walk.says("go", "go", "go")
    note = SafetyNote(NINE, NoteKind.URGENT)
    walk.ledger = replace(walk.ledger, history=replace(walk.history, words=(word(),), notes=(note,), pains=(urgent(),)))
    walk.sleeps(1)
    assert isinstance(walk.state, Idle)
    assert walk.said == [CoachWrites("Coach Wren", "Well done")]


def urgent() -> PainRecord:
    """A sign that stops everything."""
    return PainRecord(NINE, "chest", None, urgent=True, exercise=None)


def test_words_reach_somebody_whom_safety_holds_back():
    """A trainee who waits for a clearance hears their coach all the same."""
    walk = with_words()
    walk.now = NINE
    walk.says("I have chest pain")
    walk.ledger = replace(walk.ledger, history=replace(walk.history, words=(word(),)))
    assert walk.waits(1).sleeps(1).said == [CoachWrites("Coach Wren", "Well done")]


def test_nothing_is_due_in_a_rest_and_it_ends_by_itself():
    """Reminders every day at ten: none until Thursday, then one that day, and no word of the days between."""
    walk = walk_with()
    walk.says("remind me every day at 10:00")
    walk.ledger = replace(walk.ledger, trainee=replace(walk.ledger.trainee, pause=Pause(MORNING, date(2026, 3, 5))))
    walk.sleeps(0)
    assert walk.wake_at == datetime(2026, 3, 5, 10, tzinfo=UTC)
    walk.waits(timedelta(days=3, hours=4).total_seconds())
    assert walk.kinds() == ["Reminder"]


def test_a_rest_without_an_end_has_nothing_due():
    """Until the coach says so."""
    walk = walk_with()
    walk.says("remind me every day at 10:00")
    walk.ledger = replace(walk.ledger, trainee=replace(walk.ledger.trainee, pause=Pause(MORNING, None)))
    assert walk.sleeps(0).wake_at is None


def test_what_the_trainee_puts_off_in_a_rest_comes():
    """It is their own wish."""
    walk = walk_with(pause=Pause(MORNING, None))
    walk.now = NINE
    walk.says("remind me in 30 minutes")
    assert walk.wake_at == NINE + timedelta(minutes=30)


def test_nobody_who_has_left_is_reminded():
    """Whoever is no longer trained here hears nothing unasked."""
    walk = walk_with()
    walk.says("remind me every day at 10:00")
    walk.ledger = replace(walk.ledger, trainee=replace(walk.ledger.trainee, ended_at=MORNING))
    assert walk.sleeps(0).wake_at is None
