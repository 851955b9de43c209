"""What holds for any conversation: nobody's words, in any order and at any time, can break it."""

from __future__ import annotations

from hypothesis import given, settings
from hypothesis import strategies as st
from pydantic import TypeAdapter

from bot.wording import worded
from core.session.states import Idle, State
from tests.walking import Walk

STATES = TypeAdapter(State)
TEXTS = [
    "go",
    "yes",
    "no",
    "kg",
    "pounds",
    "a pair of 8s, 12s and a 16",
    "no weights",
    "11",
    "11 at 12kg",
    "12 each",
    "left 10",
    "10 left 9 right",
    "11 9",
    "12, 11 and 10 at 8kg",
    "at 12kg",
    "45 seconds",
    "same again",
    "2 left",
    "1",
    "the second",
    "sorry 12 not 11",
    "that was 14kg",
    "undo",
    "pause",
    "back",
    "skip",
    "again",
    "swap",
    "can I do floor press instead",
    "how do I do it",
    "too heavy",
    "too easy",
    "just right",
    "my knee hurts",
    "my shoulder hurts",
    "chest pain",
    "how long left",
    "what do I do today?",
    "how am I doing?",
    "help",
    "remind me mon wed fri 6:30am",
    "stop the reminders",
    "later 30 min",
    "not today",
    "use pounds",
    "I've got a pair of 20s",
    "finish",
    "blorp",
]
EVENTS = st.one_of(
    st.sampled_from(TEXTS).map(lambda text: ("says", text)),
    st.sampled_from([1, 7, 15, 30, 61, 125, 700]).map(lambda seconds: ("waits", seconds)),
    st.sampled_from([3, 45, 400, 9000]).map(lambda seconds: ("sleeps", seconds)),
    st.just(("opens",)),
)


def take(walk: Walk, event: tuple) -> None:
    """One thing that happens."""
    getattr(walk, event[0])(*event[1:])


@settings(derandomize=True, max_examples=120, deadline=None)
@given(known=st.booleans(), events=st.lists(EVENTS, min_size=1, max_size=40))
def test_any_conversation_keeps_the_diary_sound(known, events):
    """No exception; entries never contradict the diary (the ledger refuses those); the next alarm is never in the past."""
    walk = Walk(known=known)
    for event in events:
        take(walk, event)
        assert walk.wake_at is None or walk.wake_at > walk.now
        assert all(worded(message).text for message in walk.said)


@settings(derandomize=True, max_examples=60, deadline=None)
@given(events=st.lists(EVENTS, min_size=1, max_size=30))
def test_a_state_is_the_same_after_it_was_stored(events):
    """Every state that can be reached comes back from JSON as it was."""
    walk = Walk(known=True)
    walk.says("go", "go", "go")
    for event in events:
        take(walk, event)
        assert STATES.validate_json(STATES.dump_json(walk.state)) == walk.state


@settings(derandomize=True, max_examples=60, deadline=None)
@given(events=st.lists(EVENTS, min_size=1, max_size=40))
def test_at_most_one_workout_is_open_and_it_is_the_one_under_way(events):
    """A workout opens once, closes once, and is open exactly while the state is one of a workout."""
    walk = Walk(known=True)
    for event in events:
        take(walk, event)
        open_ones = [workout for workout in walk.history.workouts if workout.ended_at is None]
        running = hasattr(walk.state, "workout")
        assert len(open_ones) == (1 if running else 0)


@settings(derandomize=True, max_examples=60, deadline=None)
@given(events=st.lists(EVENTS, min_size=1, max_size=30))
def test_nothing_starts_without_a_yes_to_the_cautions(events):
    """Before the yes is kept, no workout opens and no set is noted."""
    walk = Walk()
    for event in events:
        take(walk, event)
        if walk.ledger.trainee.cautions_accepted_at is None:
            assert not walk.history.workouts
            assert not walk.history.sets
            assert not isinstance(walk.state, Idle)
