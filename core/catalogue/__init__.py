"""The exercises the assistant knows, kept in TOML files by movement pattern, read and checked once.

In reading order: `loading` turns the files into exercises, `checking` says what is wrong with the whole,
`matching` finds an exercise by what people type.
"""

from __future__ import annotations

from functools import cache
from importlib.resources import files
from types import MappingProxyType
from typing import TYPE_CHECKING

from core.catalogue import checking, loading, matching
from core.errors import CatalogueBroken, ExerciseUnknown

if TYPE_CHECKING:
    from collections.abc import Mapping

    from core.exercise import Exercise, Joint


@cache
def all_exercises() -> Mapping[str, Exercise]:
    """Every exercise by its slug, in the order of the files.

    Raises:
        CatalogueBroken: when the files contradict themselves, with every fault at once.
    """
    texts = {
        file.name: file.read_text(encoding="utf-8")
        for file in files(__name__).joinpath("data").iterdir()
        if file.name.endswith(".toml")
    }
    exercises, faults = loading.read_files(texts)
    faults += checking.faults_of(exercises)
    if faults:
        raise CatalogueBroken(faults)
    return MappingProxyType(exercises)


@cache
def _names() -> Mapping[str, Exercise]:
    return MappingProxyType(matching.names_of(all_exercises().values()))


def exercise(slug: str) -> Exercise:
    """The exercise with this slug.

    Raises:
        ExerciseUnknown: when the catalogue does not hold it.
    """
    try:
        return all_exercises()[slug]
    except KeyError:
        raise ExerciseUnknown(slug) from None


def named(text: str) -> Exercise | None:
    """The exercise with exactly this name, nickname or slug; capitals, hyphens and plurals aside."""
    return matching.exact(text, _names())


def find(text: str) -> Exercise | None:
    """The one exercise a person means by `text`, slips of the finger allowed; None when in doubt."""
    return matching.find(text, _names())


def nearest(text: str, limit: int = 3) -> tuple[Exercise, ...]:
    """Up to `limit` exercises whose names are most like `text`, best first; to offer, never to assume."""
    return matching.nearest(text, _names(), limit)


def sparing(slug: str, joint: Joint) -> Exercise:
    """What to do instead when this joint complains, whether or not the exercise should trouble it.

    The exercise's own swap where it has one; else the kindest of the same pattern that leaves the joint
    alone, and if the pattern holds none, the kindest of all.

    Raises:
        ExerciseUnknown: when the catalogue does not hold it.
    """
    troubled = exercise(slug)
    if joint in troubled.spare:
        return exercise(troubled.spare[joint])
    return min(
        (other for other in all_exercises().values() if joint not in other.spare and other.slug != slug),
        key=lambda other: (
            other.pattern is not troubled.pattern,
            bool(checking.kit_of(other) - checking.kit_of(troubled)),
            len(other.spare),
            other.skill,
            other.slug,
        ),
    )
