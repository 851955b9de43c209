"""Finding an exercise by what people type."""

import pytest

from core import catalogue


@pytest.mark.parametrize(
    ("typed", "slug"),
    [
        ("goblet squat", "goblet-squat"),
        ("Goblet Squats", "goblet-squat"),
        ("GOBLETS", "goblet-squat"),
        ("a goblet squat", "goblet-squat"),
        ("gobletsquat", "goblet-squat"),
        ("kettlebell goblet squat", "goblet-squat"),
        ("kb goblet squat", "goblet-squat"),
        ("goblet squat with a dumbbell", "goblet-squat"),
        ("push ups", "push-up"),
        ("pushups", "push-up"),
        ("press-ups", "push-up"),
        ("rdl", "romanian-deadlift"),
        ("RDLs", "romanian-deadlift"),
        ("single leg rdl", "single-leg-deadlift"),
        ("one-legged deadlift", "single-leg-deadlift"),
        ("single-arm dumbbell row", "one-arm-row"),
        ("db row", "one-arm-row"),
        ("1 arm row", "one-arm-row"),
        ("farmer's walk", "farmer-carry"),
        ("bulgarians", "rear-foot-raised-split-squat"),
        ("ohp", "overhead-press"),
        ("shoulder press", "overhead-press"),
        ("pallof press", "band-press-out"),
        ("bicep curls", "curl"),
        ("lunges", "reverse-lunge"),
        ("kettle bell swings", "kettlebell-swing"),
        ("flies", "floor-fly"),
        ("child's pose", "child-rest"),
    ],
)
def test_names_nicknames_and_implements(typed: str, slug: str):
    """Capitals, hyphens, plurals, short forms and a word for the implement do not matter."""
    found = catalogue.find(typed)
    assert found is not None
    assert found.slug == slug
    assert catalogue.named(typed) is found


@pytest.mark.parametrize(
    ("typed", "slug"),
    [
        ("gobblet squats", "goblet-squat"),
        ("goblit sqat", "goblet-squat"),
        ("romainian deadlift", "romanian-deadlift"),
        ("planc", "plank"),
        ("side plnk", "side-plank"),
        ("hamer curl", "hammer-curl"),
        ("dumbell gobet squat", "goblet-squat"),
        ("bulgarain split squat", "rear-foot-raised-split-squat"),
        ("shoulder pres", "overhead-press"),
    ],
)
def test_a_slip_of_the_finger_is_forgiven(typed: str, slug: str):
    """A misspelt word is mended when one exercise is meant; a coach's file still has to spell it out."""
    found = catalogue.find(typed)
    assert found is not None
    assert found.slug == slug


@pytest.mark.parametrize("typed", ["row", "press", "rows", "raise", "dumbbell", "leg"])
def test_a_word_that_many_exercises_share_is_asked_about(typed: str):
    """When several exercises could be meant, none is taken; some are offered."""
    assert catalogue.find(typed) is None


@pytest.mark.parametrize(
    "typed", ["back squat", "bench press", "leg press", "side crunch", "heel press", "band floor press", "barbell row"]
)
def test_another_exercise_is_no_misspelling(typed: str):
    """A real word is never bent into another: a bench press is no French press, a back squat no rack squat."""
    assert catalogue.find(typed) is None


@pytest.mark.parametrize("typed", ["", "  ", "the", "11 at 20kg", "hi", "?!", "x" * 5000])
def test_what_is_no_exercise_finds_nothing(typed: str):
    """Text without an exercise finds none and offers none."""
    assert catalogue.find(typed) is None
    assert catalogue.nearest(typed) == ()


@pytest.mark.parametrize(
    ("typed", "slug"),
    [
        ("row", "one-arm-row"),
        ("back squat", "front-squat"),
        ("bench press", "floor-press"),
        ("goblet squad", "goblet-squat"),
        ("single arm floor presss", "one-arm-floor-press"),
    ],
)
def test_the_nearest_names_are_offered(typed: str, slug: str):
    """Names alike, the most alike first, three unless asked for more."""
    offered = catalogue.nearest(typed)
    assert len(offered) <= 3
    assert slug in [exercise.slug for exercise in catalogue.nearest(typed, limit=6)]
    assert catalogue.nearest(typed, limit=1) == offered[:1]
