"""Which circuit is due: it follows from the block, the diary and the day."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, date, datetime, timedelta

import pytest

from bot.bootstrap import demo
from core.circuit import Circuit, Span, Station
from core.diary import Ending, History, SetRecord, WorkoutRecord
from core.plan import circuit_due, eased, weeks_of
from core.reasons import EasierWeek
from core.recurrence import Recurrence, Rule
from core.trainee import Block
from tests.walking import Walk

MONDAY = date(2026, 3, 2)
SQUAT = Station("goblet-squat", 60, None, None, sides=False, reserve=Span(1, 2))


def circuit(name, rounds=3):
    """A circuit of two stations."""
    return Circuit(name, rounds, Span(30, 60), Span(60, 60), 0, (SQUAT, SQUAT))


A, B, C = circuit("A"), circuit("B"), circuit("C")
SPLIT = Block((A, B, C), ("mon", "wed", "fri"), 4, (4,), MONDAY)


def day(week, weekday):
    """A day of the block: week from 1, weekday from Monday = 0."""
    return MONDAY + timedelta(weeks=week - 1, days=weekday)


def diary(*done):
    """A diary with workouts that were done to the end: pairs of a day and a circuit's name."""
    return History(workouts=tuple(workout(number, *one) for number, one in enumerate(done, start=1)))


def workout(number, on, name, ending=Ending.COMPLETE):
    """A workout in the evening."""
    at = datetime(on.year, on.month, on.day, 18, tzinfo=UTC)
    return WorkoutRecord(number, name, at, None if ending is None else at + timedelta(minutes=40), ending, 1000)


def due(history, on, block=SPLIT):
    """What is due, in short."""
    found = circuit_due(block, history, on)
    return found.circuit.name, found.on


def test_circuits_take_turns_on_the_training_days():
    """A on Monday, B on Wednesday, C on Friday, and A again."""
    done = []
    for on, name in ((day(1, 0), "A"), (day(1, 2), "B"), (day(1, 4), "C"), (day(2, 0), "A")):
        assert due(diary(*done), on) == (name, on)
        done.append((on, name))


def test_two_circuits_on_three_days_change_places_from_week_to_week():
    """A B A, then B A B."""
    block = replace(SPLIT, circuits=(A, B))
    assert [[one.name for one in week] for week in weeks_of(block)] == [["A", "B", "A"], ["B", "A", "B"]]


def test_a_missed_day_moves_what_comes_next_and_nothing_piles_up():
    """Wednesday's B is done on Friday, once; C follows on Monday, and no day has two."""
    history = diary((day(1, 0), "A"))
    assert due(history, day(1, 4)) == ("B", day(1, 4))
    assert due(diary((day(1, 0), "A"), (day(1, 4), "B")), day(2, 0)) == ("C", day(2, 0))


def test_the_day_after_a_missed_day_is_as_good_unless_the_next_one_follows_at_once():
    """Friday missed: Saturday makes up for it, Sunday leaves it to Monday."""
    history = diary((day(1, 0), "A"), (day(1, 2), "B"))
    assert circuit_due(SPLIT, history, day(1, 5)).missed == day(1, 4)
    assert due(history, day(1, 5)) == ("C", day(1, 5))
    assert due(history, day(1, 6)) == ("C", day(2, 0))


def test_a_day_between_is_for_rest_and_names_the_next():
    """Nothing was missed on Tuesday: B comes on Wednesday."""
    found = circuit_due(SPLIT, diary((day(1, 0), "A")), day(1, 1))
    assert (found.circuit.name, found.on, found.missed) == ("B", day(1, 2), None)


def test_after_todays_workout_the_next_day_is_named():
    """Done today: the next circuit, on the next training day."""
    found = circuit_due(SPLIT, diary((day(1, 0), "A")), day(1, 0))
    assert (found.done_today, found.circuit.name, found.on) == (True, "B", day(1, 2))


def test_a_workout_on_a_day_of_rest_takes_its_turn_too():
    """Who trains on Tuesday has B behind them on Wednesday."""
    assert due(diary((day(1, 0), "A"), (day(1, 1), "B")), day(1, 2)) == ("C", day(1, 2))


def test_before_the_block_begins_its_first_day_is_named():
    """A block that starts next week has nothing for today, and what was done before it is no turn."""
    found = circuit_due(replace(SPLIT, starts_on=day(2, 0)), diary((day(1, 0), "A")), day(1, 2))
    assert (found.circuit.name, found.on, found.week) == ("A", day(2, 0), 1)


@pytest.mark.parametrize(("reported", "name"), [(2, "A"), (3, "B")])
def test_a_workout_broken_off_counts_from_half_of_it(reported, name):
    """Of six stations in three rounds, three reported are a turn taken, two are not."""
    at = datetime(2026, 3, 2, 18, tzinfo=UTC)
    sets = tuple(SetRecord(number, 1, at, "A", number, 1, "goblet-squat", reps=10) for number in range(1, reported + 1))
    history = History(sets=sets, workouts=(workout(1, MONDAY, "A", Ending.EARLY),))
    assert circuit_due(SPLIT, history, day(1, 1)).circuit.name == name


def test_a_workout_that_still_runs_has_not_taken_its_turn():
    """What is under way is not done."""
    assert circuit_due(SPLIT, History(workouts=(workout(1, MONDAY, "A", None),)), MONDAY).circuit.name == "A"


def test_the_day_is_the_one_on_the_trainees_calendar():
    """Monday evening in California is Tuesday in UTC; the workout is Monday's all the same."""
    late = WorkoutRecord(1, "A", datetime(2026, 3, 3, 4, tzinfo=UTC), datetime(2026, 3, 3, 5, tzinfo=UTC), Ending.COMPLETE)
    assert circuit_due(SPLIT, History(workouts=(late,)), MONDAY, "America/Los_Angeles").done_today


def test_the_last_week_is_easier_and_then_the_block_begins_again():
    """Weeks 1 to 3 as written, week 4 with less, week 5 is week 1 again."""
    history = diary(*((day(week, 0), "A") for week in range(1, 5)))
    found = [circuit_due(SPLIT, history, day(week, 2)) for week in range(1, 6)]
    assert [(one.week, one.easier) for one in found] == [(1, False), (2, False), (3, False), (4, True), (1, False)]


def test_a_week_in_which_nothing_was_done_does_not_count():
    """Away in week 3: the week after it is week 3, and the easier week comes a week later."""
    history = diary((day(1, 0), "A"), (day(2, 0), "B"))
    assert circuit_due(SPLIT, history, day(4, 0)).week == 3
    assert due(history, day(4, 0)) == ("C", day(4, 0))


def test_an_easier_week_has_fewer_rounds_and_more_in_the_tank():
    """Two rounds of three, one of two, never none; two reps more in reserve, ten at most."""
    assert [eased(circuit("A", rounds)).rounds for rounds in (1, 2, 3, 4, 6)] == [1, 1, 2, 2, 4]
    assert eased(A).stations[0].reserve == Span(3, 4)
    full = replace(A, stations=(replace(SQUAT, reserve=Span(9, 10)),))
    assert eased(full).stations[0].reserve == Span(10, 10)


def test_an_easier_week_is_lighter_on_the_arms():
    """The card of the easier week names a load a tenth or more below the weeks before, says why, and has two rounds."""
    kitchen = demo().circuit
    block = Block((kitchen,), ("mon", "thu"), 2, (2,), date(2026, 3, 2))
    walk = Walk(known=True)
    walk.ledger = replace(walk.ledger, trainee=replace(walk.ledger.trainee, block=block))
    walk.says("go", "go", "go").waits(60)
    walk.says("12 at 12 kg, 1 left", "finish")
    walk.waits(7 * 86400)
    walk.says("today")
    assert walk.said[-1].rounds == 2
    assert (walk.said[-1].block.week, walk.said[-1].block.easier) == (2, True)
    walk.says("go", "go")
    card = walk.said[-1]
    assert (card.exercise, card.rounds, card.load.amount, card.why) == ("Goblet squat", 2, 8, EasierWeek())


def test_a_block_without_days_is_for_any_day():
    """Every day may be a training day, one workout each."""
    block = replace(SPLIT, days=())
    assert due(diary((day(1, 0), "A")), day(1, 1), block) == ("B", day(1, 1))
    assert due(diary((day(1, 0), "A")), day(1, 0), block) == ("B", day(1, 1))


def test_days_that_the_trainee_has_set_go_before_the_plans():
    """The coach said Monday, Wednesday, Friday; Ana trains on Tuesday and Saturday: there the circuits take their turns."""
    own = Recurrence((Rule(MONDAY, "07:00", days=("tue", "sat")),))
    found = circuit_due(SPLIT, diary((day(1, 1), "A")), day(1, 2), own_days=own)
    assert (found.circuit.name, found.on) == ("B", day(1, 5))
    assert circuit_due(SPLIT, History(), day(1, 2), own_days=own).missed == day(1, 1)


def test_when_her_own_days_have_come_to_their_end_the_plans_count_again():
    """A day is always named."""
    own = Recurrence((Rule(MONDAY, "07:00", days=("tue",), until=day(1, 6)),))
    assert circuit_due(SPLIT, diary((day(1, 1), "A")), day(1, 2), own_days=own).on == day(1, 2)
    assert circuit_due(SPLIT, diary((day(1, 1), "A")), day(1, 1), own_days=own).on == day(1, 2)
