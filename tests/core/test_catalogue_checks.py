"""A catalogue that contradicts itself is refused, with every fault at once."""

from core.catalogue.checking import faults_of
from core.catalogue.loading import read_files

SOUND = """
[goblet-squat]
name = "Goblet squat"
names = ["goblet"]
implements = ["dumbbell"]
loads_held = 1
main = ["quads"]
tempo = "3-1-1-0"
posture = "standing"
set_up = "Hold one weight at the chest."
form = ["One", "Two", "Three"]
fault = "Tipping."
cure = "Less weight."
harder = "jump-squat"
swap_load = "jump-squat"
spare = { wrist = "jump-squat" }

[jump-squat]
name = "Jump squat"
names = ["jumps"]
implements = ["bodyweight"]
main = ["quads"]
tempo = "1-0-1-1"
posture = "standing"
set_up = "Stand."
form = ["One", "Two", "Three"]
fault = "Loud."
cure = "Softer."
"""


def faults(text: str) -> list[str]:
    """Every fault of a catalogue of one file."""
    exercises, found = read_files({"squat.toml": 'pattern = "squat"\n' + text})
    return found + faults_of(exercises)


def test_a_sound_catalogue_has_no_faults():
    """The catalogue that the other tests break is sound."""
    assert faults(SOUND) == []


def test_faults_of_one_entry_come_all_at_once():
    """Wrong words, wrong kinds and unknown keys are all told in one go."""
    broken = (
        SOUND.replace('"dumbbell"', '"barbell"')
        .replace('"3-1-1-0"', '"slow"')
        .replace("loads_held = 1", 'loads_held = "one"')
        .replace('posture = "standing"\nset_up = "Hold', 'posture = "upside down"\ncolour = "red"\nset_up = "Hold')
        .replace('main = ["quads"]\ntempo = "1-0', 'main = ["thighs"]\nsides = "both"\ntempo = "1-0')
    )
    told = "\n".join(faults(broken))
    for part in (
        "goblet-squat: 'barbell' is none of",
        "goblet-squat: tempo 'slow'",
        "goblet-squat: loads_held must be a whole number",
        "goblet-squat: 'upside down' is none of",
        "goblet-squat: nobody reads colour",
        "jump-squat: muscle 'thighs' is none of",
        "jump-squat: sides must be true or false",
    ):
        assert part in told


def test_a_line_too_long_for_a_phone_is_a_fault():
    """28 characters for a name, 60 for a form point, three points."""
    broken = SOUND.replace('"Goblet squat"', f'"{"G" * 29}"').replace('form = ["One"', f'form = ["{"x" * 61}"', 1)
    told = faults(broken)
    assert any("name is longer than 28" in fault for fault in told)
    assert any("61 characters, 60 fit" in fault for fault in told)
    assert any("form needs 3 points, not 2" in fault for fault in faults(SOUND.replace('"One", ', "", 1)))


def test_links_must_lead_somewhere():
    """A variant or swap that does not exist, or is the exercise itself, is a fault."""
    assert "goblet-squat: harder is 'pistol', which does not exist" in faults(
        SOUND.replace('harder = "jump-squat"', 'harder = "pistol"')
    )
    assert "goblet-squat: harder is itself" in faults(SOUND.replace('harder = "jump-squat"', 'harder = "goblet-squat"'))
    assert "goblet-squat: spare wrist is 'plank', which does not exist" in faults(
        SOUND.replace('wrist = "jump-squat"', 'wrist = "plank"')
    )


def test_a_swap_must_help():
    """A swap that troubles the same joint, needs a load, makes noise or needs room where it should not is a fault."""
    told = faults(SOUND.replace('cure = "Softer."', 'cure = "Softer."\nspare = { wrist = "goblet-squat" }'))
    assert "goblet-squat: spare wrist is 'jump-squat', which troubles the wrist too" in told
    told = faults(SOUND.replace('cure = "Softer."', 'cure = "Softer."\nswap_load = "goblet-squat"'))
    assert "jump-squat: swap_load is 'goblet-squat', which needs a load or a band too" in told
    loud = 'cure = "Softer."\nswap_noise = "goblet-squat"\nswap_space = "goblet-squat"'
    loud_both = SOUND.replace('cure = "Softer."', loud).replace(
        'cure = "Less weight."', 'cure = "Less weight."\nswap_noise = "jump-squat"\nswap_space = "jump-squat"'
    )
    told = faults(loud_both)
    assert "jump-squat: swap_noise is 'goblet-squat', which makes noise too" in told
    assert "jump-squat: swap_space is 'goblet-squat', which needs room too" in told


def test_variants_must_not_go_round():
    """A line that only gets harder and comes back to its start is a fault, also through an "easier" told from the other end."""
    harder = faults(SOUND.replace('cure = "Softer."', 'cure = "Softer."\nharder = "goblet-squat"'))
    assert any("go round in a loop" in fault for fault in harder)
    easier = faults(SOUND.replace('fault = "Tipping."', 'fault = "Tipping."\neasier = "jump-squat"'))
    assert any("go round in a loop" in fault for fault in easier)


def test_a_harder_variant_asks_for_no_less_skill():
    """Skill follows the line of variants."""
    told = faults(SOUND.replace('cure = "Less weight."', 'cure = "Less weight."\nskill = 2'))
    assert "goblet-squat: harder is 'jump-squat', which asks for less skill" in told


def test_a_swap_asks_for_no_more():
    """A swap or an easier variant needs no skill and no kit that the exercise does not need itself."""
    swaps = 'cure = "Softer."\nspare = { wrist = "goblet-squat" }'
    told = faults(SOUND.replace('cure = "Softer."', swaps).replace('spare = { wrist = "jump-squat" }', ""))
    assert "jump-squat: spare wrist is 'goblet-squat', which needs more kit" in told
    told = faults(SOUND.replace('cure = "Softer."', 'cure = "Softer."\nskill = 2'))
    assert "goblet-squat: swap_load is 'jump-squat', which asks for more skill" in told


def test_one_name_means_one_exercise():
    """A nickname of two exercises is a fault, whatever its capitals, hyphens or plural."""
    told = faults(SOUND.replace('names = ["jumps"]', 'names = ["Goblets"]'))
    assert told == ["jump-squat: 'Goblets' also means goblet-squat"]


def test_a_file_that_is_no_toml_hides_no_other():
    """A file that cannot be read is told beside the faults of the others."""
    exercises, found = read_files({"a.toml": "pattern = ", "b.toml": 'pattern = "squat"\n' + SOUND, "c.toml": SOUND})
    assert len(exercises) == 2
    assert len(found) == 2
    assert found[0].startswith("a.toml: ")
    assert found[1].startswith("c.toml: pattern None is none of")
