"""Finding an exercise by what people type: exact names first, then slips of the finger, never a guess.

A trainee who types "gobblet squats" means one thing; one who types "row" may mean several and is better
asked.
"""

from __future__ import annotations

import re
from itertools import product
from math import prod
from typing import TYPE_CHECKING

from rapidfuzz import fuzz
from rapidfuzz.distance import OSA

from core.exercise import Implement

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping, Sequence

    from core.exercise import Exercise

SHORT_FORMS = {
    "bw": "bodyweight",
    "db": "dumbbell",
    "kb": "kettlebell",
    "ohp": "overhead press",
    "one": "1",
    "single": "1",
    "two": "2",
    "armed": "arm",
    "legged": "leg",
    "pres": "press",
    "rdl": "romanian deadlift",
    "sl": "1 leg",
}
SMALL_WORDS = frozenset({"a", "an", "the", "my", "some", "those", "with", "and", "of", "on", "your"})
HELD = frozenset({Implement.DUMBBELL, Implement.KETTLEBELL, Implement.BAND, Implement.BODYWEIGHT})
"""Implements people name beside an exercise: a "kettlebell goblet squat" is a goblet squat."""
SHORTEST_PLURAL = 3
ONE_SLIP = 4
"""Letters of a word from which one slip is forgiven; a shorter word with a slip is another word."""
TWO_SLIPS = 8
"""Letters of a word from which two are."""
MOST_READINGS = 64
"""Texts with more possible readings than this are not names."""
ALIKE = 55.0
"""Likeness below which a name is not worth offering."""


def words_of(text: str) -> list[str]:
    """The words of a name as they are compared: lower case, short forms written out, singular."""
    spoken = re.sub(r"['’]s\b|['’]", "", text.lower())
    spoken = re.sub(r"\b(kettle|dumb) bell", r"\1bell", spoken).replace("dumbell", "dumbbell")
    words = re.findall(r"[a-z0-9½]+", spoken)
    written_out = " ".join(SHORT_FORMS.get(word, word) for word in words).split()
    return [_singular(word) for word in written_out if word not in SMALL_WORDS]


def key_of(text: str) -> str:
    """The words of a name run together: "Push-ups", "push up" and "pushup" are one key."""
    return "".join(words_of(text))


def _singular(word: str) -> str:
    """`lunges` is `lunge`, `presses` is `press`, `flies` is `fly`; `press` stays."""
    if word.endswith("ies"):
        return f"{word[:-3]}y"
    if word.endswith(("sses", "ches", "shes")):
        return word[:-2]
    if len(word) >= SHORTEST_PLURAL and word.endswith("s") and not word.endswith(("ss", "us")):
        return word[:-1]
    return word


def names_of(exercises: Iterable[Exercise]) -> dict[str, Exercise]:
    """Every key that names an exercise: its slug, its name and its nicknames."""
    return {key_of(name): exercise for exercise in exercises for name in _called(exercise)}


def exact(text: str, names: Mapping[str, Exercise]) -> Exercise | None:
    """The exercise that bears this name.

    A word for the implement before or after it is allowed when the exercise is done with it.
    """
    words = words_of(text)
    found = names.get("".join(words))
    if found is not None:
        return found
    tools = HELD.intersection(words)
    bare = names.get("".join(_without_tools(words)))
    return bare if bare is not None and tools <= set(bare.implements) else None


def find(text: str, names: Mapping[str, Exercise]) -> Exercise | None:
    """The one exercise `text` means, slips of the finger allowed; None when in doubt.

    Only words that no exercise's name contains are mended: a "back squat" is no slip for a "rack squat".
    """
    found = exact(text, names)
    if found is not None:
        return found
    known = {word for exercise in names.values() for word in words_of(" ".join(_called(exercise)))}
    readings = [[word] if word in known else _mended(word, known) for word in words_of(text)]
    if prod(map(len, readings)) > MOST_READINGS:
        return None
    found_by_slug = {found.slug: found for words in product(*readings) if (found := exact(" ".join(words), names))}
    return next(iter(found_by_slug.values())) if len(found_by_slug) == 1 else None


def _mended(word: str, known: Iterable[str]) -> list[str]:
    """The words that `word` may be a slip for: the first letter is right, one or two others are not."""
    slips = 0 if len(word) < ONE_SLIP else 1 if len(word) < TWO_SLIPS else 2
    return sorted(other for other in known if other[0] == word[0] and OSA.distance(word, other, score_cutoff=slips) <= slips)


def _called(exercise: Exercise) -> tuple[str, ...]:
    """Everything an exercise is called."""
    return (exercise.slug, exercise.name, *exercise.names)


def nearest(text: str, names: Mapping[str, Exercise], limit: int) -> tuple[Exercise, ...]:
    """Up to `limit` exercises whose names are most like `text`, the most alike first."""
    spoken = words_of(text)
    best: dict[str, float] = {}
    for exercise in names.values():
        if exercise.slug not in best:
            best[exercise.slug] = max(_likeness(spoken, words_of(name)) for name in _called(exercise))
    ranked = sorted(best.items(), key=lambda pair: (-pair[1], pair[0]))
    return tuple(names[key_of(slug)] for slug, likeness in ranked[:limit] if likeness >= ALIKE)


def _likeness(spoken: Sequence[str], name: Sequence[str]) -> float:
    """How alike two names are, 0 to 100, with the implement said or not."""
    return max(_alike(spoken, name), _alike(_without_tools(spoken), _without_tools(name)) - 1)


def _without_tools(words: Sequence[str]) -> list[str]:
    return [word for word in words if word not in HELD]


def _alike(spoken: Sequence[str], name: Sequence[str]) -> float:
    """Letters in order, or words in any order; words shared by both count for less."""
    said, called = " ".join(spoken), " ".join(name)
    return max(
        fuzz.ratio(said, called),
        fuzz.token_sort_ratio(said, called),
        0.8 * fuzz.token_set_ratio(said, called),
    )
