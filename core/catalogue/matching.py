"""Finding an exercise by what people type: exact names first, then slips of the finger, never a guess.

A trainee who types "gobblet squats" means one thing; one who types "row" may mean several and is better
asked.
"""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from rapidfuzz import fuzz

from core.exercise import Implement

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

    from core.exercise import Exercise

SHORT_FORMS = {
    "bw": "bodyweight",
    "db": "dumbbell",
    "dumbell": "dumbbell",
    "kb": "kettlebell",
    "kettle": "kettlebell",
    "ohp": "overhead press",
    "one": "1",
    "single": "1",
    "two": "2",
    "rdl": "romanian deadlift",
    "sl": "1 leg",
}
SMALL_WORDS = frozenset({"a", "an", "the", "my", "some", "those", "with", "and", "of", "on", "your"})
HELD = frozenset({Implement.DUMBBELL, Implement.KETTLEBELL, Implement.BAND, Implement.BODYWEIGHT})
"""Implements people name beside an exercise: a "kettlebell goblet squat" is a goblet squat."""
SAME_ENOUGH = 85.0
"""Likeness (0 to 100) from which a misspelt name is taken for the name (our choice, tried in the tests)."""
CLEAR_LEAD = 6.0
"""How far the best match must be ahead of the next exercise to count without asking."""
FUZZY_LENGTH = 5
"""Shorter texts must match a name exactly: one slip in four letters is another word."""
ALIKE = 55.0
"""Likeness below which a name is not worth offering."""


def words_of(text: str) -> list[str]:
    """The words of a name as they are compared: lower case, short forms written out, singular."""
    spoken = re.sub(r"['’]s\b|['’]", "", text.lower())
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
    if word.endswith("s") and not word.endswith(("ss", "us")):
        return word[:-1]
    return word


def names_of(exercises: Iterable[Exercise]) -> dict[str, Exercise]:
    """Every key that names an exercise: its slug, its name and its nicknames."""
    return {key_of(name): exercise for exercise in exercises for name in (exercise.slug, exercise.name, *exercise.names)}


def exact(text: str, names: Mapping[str, Exercise]) -> Exercise | None:
    """The exercise that bears this name.

    A word for the implement before or after it is allowed when the exercise is done with it.
    """
    words = words_of(text)
    found = names.get("".join(words))
    if found is not None:
        return found
    tools = {word for word in words if word in HELD}
    bare = names.get("".join(word for word in words if word not in tools))
    return bare if bare is not None and tools <= set(bare.implements) else None


def find(text: str, names: Mapping[str, Exercise]) -> Exercise | None:
    """The one exercise `text` means, slips of the finger allowed; None when in doubt."""
    found = exact(text, names)
    key = key_of(text)
    if found is not None or len(key) < FUZZY_LENGTH:
        return found
    best: dict[str, float] = {}
    for name, exercise in names.items():
        best[exercise.slug] = max(best.get(exercise.slug, 0.0), fuzz.ratio(key, name))
    first, second = sorted(best.items(), key=lambda pair: (-pair[1], pair[0]))[:2]
    if first[1] < SAME_ENOUGH or first[1] - second[1] < CLEAR_LEAD:
        return None
    return names[key_of(first[0])]


def nearest(text: str, names: Mapping[str, Exercise], limit: int) -> tuple[Exercise, ...]:
    """Up to `limit` exercises whose names are most like `text`, the most alike first."""
    spoken = " ".join(words_of(text))
    best: dict[str, float] = {}
    for exercise in names.values():
        if exercise.slug not in best:
            called = (exercise.slug, exercise.name, *exercise.names)
            best[exercise.slug] = max(_likeness(spoken, " ".join(words_of(name))) for name in called)
    ranked = sorted(best.items(), key=lambda pair: (-pair[1], pair[0]))
    return tuple(names[key_of(slug)] for slug, likeness in ranked[:limit] if likeness >= ALIKE)


def _likeness(spoken: str, name: str) -> float:
    """How alike two names are, 0 to 100: letters in order, or words in any order; shared words count less."""
    return max(
        fuzz.ratio(spoken, name),
        fuzz.token_sort_ratio(spoken, name),
        0.8 * fuzz.token_set_ratio(spoken, name),
    )
