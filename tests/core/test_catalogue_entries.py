"""Every exercise of the catalogue, one by one: what a coach may rely on."""

from decimal import Decimal

import pytest

from core import catalogue
from core.catalogue.checking import needs_kit
from core.errors import ExerciseUnknown
from core.exercise import Exercise, Implement, Joint, Measure, Pattern, Posture

EVERY = tuple(catalogue.all_exercises().values())


def test_there_are_enough_exercises_over_all_patterns():
    """At least ninety exercises, and every movement pattern has several."""
    assert len(EVERY) >= 90
    for pattern in Pattern:
        assert sum(one.pattern is pattern for one in EVERY) >= 5, pattern


def test_every_kind_of_equipment_at_home_is_served():
    """Dumbbells, kettlebells, bands, chair, floor, wall and the own body each have exercises."""
    for implement in Implement:
        assert sum(implement in one.implements for one in EVERY) >= 5, implement


@pytest.mark.parametrize("one", EVERY, ids=lambda one: one.slug)
def test_an_entry_is_complete_and_fits_a_phone(one: Exercise):
    """Names fit in 28 characters, form points in 60; set-up, fault and cure are sentences; muscles do not repeat."""
    assert one.name == one.name.strip()
    assert 3 <= len(one.name) <= 28
    assert len(set(one.form)) == 3
    assert all(0 < len(point) <= 60 and not point.endswith(".") for point in one.form)
    assert all(text.endswith(".") for text in (one.set_up, one.fault, one.cure))
    assert not one.careful or one.careful.endswith(".")
    assert len(one.main) >= 1
    assert len({*one.main, *one.helping}) == len(one.main) + len(one.helping)


@pytest.mark.parametrize("one", EVERY, ids=lambda one: one.slug)
def test_nicknames_are_what_people_type(one: Exercise):
    """Nicknames are lower case, and each of them finds its exercise and no other."""
    assert len(one.names) >= 1
    for name in (one.slug, one.name, *one.names):
        assert catalogue.find(name) is one, name
    assert all(name == name.lower() for name in one.names)


@pytest.mark.parametrize("one", EVERY, ids=lambda one: one.slug)
def test_tempo_and_measure_agree(one: Exercise):
    """What is counted in reps has a tempo of 2 to 10 seconds a rep; a hold or a carry has none."""
    if one.measure is Measure.REPS:
        assert one.tempo is not None
        assert 2 <= one.tempo.rep_s <= 10
    else:
        assert one.tempo is None


@pytest.mark.parametrize("one", EVERY, ids=lambda one: one.slug)
def test_what_is_held_is_an_implement_that_can_be_held(one: Exercise):
    """Loads are held exactly where a dumbbell or a kettlebell is the usual implement."""
    held = {Implement.DUMBBELL, Implement.KETTLEBELL}
    assert (one.loads_held > 0) == (one.implements[0] in held)


@pytest.mark.parametrize("joint", Joint)
@pytest.mark.parametrize("one", EVERY, ids=lambda one: one.slug)
def test_every_joint_can_be_spared(one: Exercise, joint: Joint):
    """For each exercise and each of the six joints there is another exercise that leaves that joint alone."""
    instead = catalogue.sparing(one.slug, joint)
    assert instead.slug != one.slug
    assert joint not in instead.spare
    if joint in one.spare:
        assert instead.slug == one.spare[joint]


@pytest.mark.parametrize("one", [one for one in EVERY if needs_kit(one)], ids=lambda one: one.slug)
def test_without_kit_there_is_a_swap_that_every_home_can_do(one: Exercise):
    """A trainee without weights or bands is never left standing."""
    swap = catalogue.exercise(str(one.swap_load))
    assert not needs_kit(swap)


def test_a_walk_and_a_jump_have_a_swap_for_small_flats():
    """What needs a lane names a swap for no space; what is loud names one for no noise."""
    for slug in ("farmer-carry", "suitcase-carry", "walking-lunge", "heel-to-toe-walk", "kettlebell-swing"):
        swap = catalogue.exercise(slug).swap_space
        assert swap is not None
        assert catalogue.exercise(swap).swap_space is None
    for slug in ("jump-squat", "jumping-jack", "high-knees", "burpee", "deadlift"):
        swap = catalogue.exercise(slug).swap_noise
        assert swap is not None
        assert catalogue.exercise(swap).swap_noise is None


@pytest.mark.parametrize("direction", ["easier", "harder"])
@pytest.mark.parametrize("one", EVERY, ids=lambda one: one.slug)
def test_lines_of_variants_come_to_an_end(one: Exercise, direction: str):
    """Following "easier" or "harder" never comes back to an exercise already met, and skill never goes the wrong way."""
    met, here = {one.slug}, one
    while (slug := getattr(here, direction)) is not None:
        there = catalogue.exercise(slug)
        assert slug not in met
        assert there.skill >= here.skill if direction == "harder" else there.skill <= here.skill
        met.add(slug)
        here = there


@pytest.mark.parametrize("one", [one for one in EVERY if one.skill == 3], ids=lambda one: one.slug)
def test_what_asks_for_practice_has_an_easier_variant(one: Exercise):
    """No beginner meets an exercise for the practised without a way down, which ends at one for a first day."""
    here = one
    while here.easier is not None:
        here = catalogue.exercise(here.easier)
    assert here.skill == 1


@pytest.mark.parametrize("one", [one for one in EVERY if one.body_share], ids=lambda one: one.slug)
def test_a_share_of_body_mass_names_its_source(one: Exercise):
    """Body mass counts only with a source, and a weight in the hands does not change the share."""
    assert Decimal("0.4") <= one.body_share <= 1
    assert one.body_share_source


def test_band_exercises_warn_of_torn_or_loose_bands():
    """Every exercise done with a band says to look it over or to fix it well (usual caution)."""
    for one in EVERY:
        if one.implements[0] is Implement.BAND:
            assert "band" in one.careful or "fix" in one.careful, one.slug


def test_lying_on_the_belly_is_not_for_pregnancy():
    """Every face-down exercise says so (usual caution)."""
    face_down = [one for one in EVERY if "face down" in one.set_up]
    assert len(face_down) >= 3
    assert all("pregnancy" in one.careful for one in face_down)
    assert all(one.posture is Posture.FLOOR for one in face_down)


def test_an_unknown_slug_is_an_error_of_our_own():
    """Asking for what the catalogue does not hold raises, with the slug."""
    with pytest.raises(ExerciseUnknown) as caught:
        catalogue.exercise("leg-press")
    assert caught.value.slug == "leg-press"


def test_the_catalogue_cannot_be_changed():
    """What is handed out is read-only."""
    with pytest.raises(TypeError):
        catalogue.all_exercises()["new"] = EVERY[0]
