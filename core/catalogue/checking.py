"""What must hold for the catalogue as a whole: names that fit and differ, links that lead somewhere."""

from __future__ import annotations

import re
from graphlib import CycleError, TopologicalSorter
from typing import TYPE_CHECKING

from core.catalogue.loading import MUSCLES
from core.catalogue.matching import key_of
from core.exercise import Implement

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from core.exercise import Exercise

NAME_LENGTH = 28
"""Characters of a name, so that it fits a phone line beside a number."""
FORM_LENGTH = 60
"""Characters of a form point."""
HELD = range(3)
SKILLS = range(1, 4)
SLUG = re.compile(r"[a-z0-9]+(-[a-z0-9]+)*")


def faults_of(exercises: Mapping[str, Exercise]) -> list[str]:
    """Every fault of the catalogue as a whole, a sentence each; empty when it is sound."""
    return [
        *(
            f"{exercise.slug}: {says}"
            for exercise in exercises.values()
            for says in (
                *_entry(exercise),
                *_dangling(exercise, exercises),
                *_useless(exercise, exercises),
            )
        ),
        *_shared_names(exercises),
        *_loops(exercises),
    ]


def _entry(exercise: Exercise) -> Iterator[str]:
    """What is wrong with an exercise looked at alone."""
    wrong = {
        "a slug is lower-case words joined by hyphens": not SLUG.fullmatch(exercise.slug),
        f"name is longer than {NAME_LENGTH} characters": len(exercise.name) > NAME_LENGTH,
        "implements is empty": not exercise.implements,
        "main is empty": not exercise.main,
        "a muscle is both main and helping": bool(set(exercise.main) & set(exercise.helping)),
        "loads_held is not 0, 1 or 2": exercise.loads_held not in HELD,
        "skill is not 1, 2 or 3": exercise.skill not in SKILLS,
        "body_share is not between 0 and 1": not 0 <= exercise.body_share <= 1,
        "body_share says not where it comes from": bool(exercise.body_share) and not exercise.body_share_source,
        "it needs kit, so swap_load is needed": needs_kit(exercise) and exercise.swap_load is None,
    }
    yield from (says for says, is_wrong in wrong.items() if is_wrong)
    for point in exercise.form:
        if len(point) > FORM_LENGTH:
            yield f"form point {point!r} is {len(point)} characters, {FORM_LENGTH} fit"
    for muscle in (*exercise.main, *exercise.helping):
        if muscle not in MUSCLES:
            yield f"muscle {muscle!r} is none of {', '.join(sorted(MUSCLES))}"


def _dangling(exercise: Exercise, exercises: Mapping[str, Exercise]) -> Iterator[str]:
    """Variants and swaps that lead nowhere, or back to the exercise itself."""
    for link, slug in _links(exercise).items():
        if slug == exercise.slug:
            yield f"{link} is itself"
        elif slug is not None and slug not in exercises:
            yield f"{link} is {slug!r}, which does not exist"


def _useless(exercise: Exercise, exercises: Mapping[str, Exercise]) -> Iterator[str]:
    """Swaps and variants that exist but do not help: a swap for a sore knee must be kind to knees."""
    for joint, slug in exercise.spare.items():
        if slug in exercises and joint in exercises[slug].spare:
            yield f"spare {joint} is {slug!r}, which troubles the {joint} too"
    if (quiet := exercises.get(exercise.swap_noise or "")) and quiet.swap_noise:
        yield f"swap_noise is {quiet.slug!r}, which makes noise too"
    if (small := exercises.get(exercise.swap_space or "")) and small.swap_space:
        yield f"swap_space is {small.slug!r}, which needs room too"
    if (empty := exercises.get(exercise.swap_load or "")) and needs_kit(empty):
        yield f"swap_load is {empty.slug!r}, which needs a load or a band too"
    if (harder := exercises.get(exercise.harder or "")) and harder.skill < exercise.skill:
        yield f"harder is {harder.slug!r}, which asks for less skill"
    for link, linked in _links(exercise).items():
        other = exercises.get(linked or "")
        if link == "harder" or other is None:
            continue
        if other.skill > exercise.skill:
            yield f"{link} is {linked!r}, which asks for more skill"
        if kit_of(other) - kit_of(exercise):
            yield f"{link} is {linked!r}, which needs more kit"


def _links(exercise: Exercise) -> dict[str, str | None]:
    """Every variant and swap of an exercise."""
    return {
        "easier": exercise.easier,
        "harder": exercise.harder,
        "swap_space": exercise.swap_space,
        "swap_load": exercise.swap_load,
        "swap_noise": exercise.swap_noise,
        **{f"spare {joint}": slug for joint, slug in exercise.spare.items()},
    }


def kit_of(exercise: Exercise) -> frozenset[str]:
    """What an exercise needs beside what every home has (floor, wall, chair, the own body): a load, a band or nothing."""
    if exercise.loads_held:
        return frozenset({"load"})
    return frozenset({"band"}) if exercise.implements[:1] == (Implement.BAND,) else frozenset()


def needs_kit(exercise: Exercise) -> bool:
    """True when what every home has is not enough for it."""
    return bool(kit_of(exercise))


def _shared_names(exercises: Mapping[str, Exercise]) -> Iterator[str]:
    """Names and nicknames that mean two exercises."""
    owners: dict[str, str] = {}
    for exercise in exercises.values():
        for name in dict.fromkeys((exercise.slug, exercise.name, *exercise.names)):
            owner = owners.setdefault(key_of(name), exercise.slug)
            if owner != exercise.slug:
                yield f"{exercise.slug}: {name!r} also means {owner}"


def _loops(exercises: Mapping[str, Exercise]) -> Iterator[str]:
    """Lines of variants that come back to where they began: harder than itself in the end."""
    sorter: TopologicalSorter[str] = TopologicalSorter()
    for exercise in exercises.values():
        if exercise.harder is not None:
            sorter.add(exercise.harder, exercise.slug)
        if exercise.easier is not None:
            sorter.add(exercise.slug, exercise.easier)
    try:
        sorter.prepare()
    except CycleError as error:
        yield f"variants go round in a loop: {' > '.join(error.args[1])}"
