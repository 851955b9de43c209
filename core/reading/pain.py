"""Pain in a message: where, which side, and whether it is one of the signs that stop everything at once.

The urgent signs are looked for first, in every sentence, whatever else it says, and with more patience for spelling than any
other words. Only a plain denial ("no chest pain") or a time long past takes one away.
"""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache
from typing import TYPE_CHECKING

from rapidfuzz.distance import OSA

from core.reading import phrases
from core.reading.acts import Pain, Side
from core.reading.lexicon import HURT, PLACES, VOCABULARY, listed
from core.reading.tokens import Kind, Token

if TYPE_CHECKING:
    from collections.abc import Sequence

_URGENT_WORDS = tuple(
    sorted(
        {
            word
            for entry in ("chest", "dizzy", "numb", "breath", "collapse")
            for word in listed("urgent", entry)
        }
    )
)
_SHORTEST = 4
_PATIENT_FROM = 6
_DENIALS = {"no", "not", "without", "never", "zero", "nil", "denies", "isnt", "free"}
_BETWEEN_DENIAL = {
    "any", "more", "a", "the", "feel", "feeling", "having", "getting", "longer", "really", "even", "in", "my", "sign", "signs", "of",
    "get", "have", "had", "at", "all", "actual", "real", "felt", "at", "or", "left", "right", "is", "was", "too", "so",
    "chest", "pain", "dizziness", "dizzy", "numbness", "knee", "back", "joint", "lower", "shoulder", "nor", "faint", "i", "am",
}  # fmt: skip
_LONG_PAST = (
    "last year", "last month", "last week", "last summer", "last winter", "last time", "last spring", "last autumn", "years ago",
    "year ago", "months ago", "month ago", "weeks ago", "week ago", "days ago", "used to", "when i was", "as a kid", "as a child",
    "in the past", "long ago", "back then", "yesterday", "back in", "last session", "last workout",
)  # fmt: skip
_CHEST_EXERCISE = {
    "press",
    "presses",
    "fly",
    "flys",
    "flies",
    "flye",
    "day",
    "exercise",
    "exercises",
    "workout",
    "supported",
    "dips",
    "pump",
}
_MUSCLES = {
    "leg",
    "arm",
    "quad",
    "glute",
    "hamstring",
    "calf",
    "biceps",
    "triceps",
    "thigh",
    "forearm",
    "trap",
}
_OF_MUSCLES = {"sore", "killing", "achy", "aching", "ache", "aches", "tender", "burning", "stings"}
_REAL = {
    "pain",
    "pains",
    "hurt",
    "hurts",
    "hurting",
    "painful",
    "tweaked",
    "strained",
    "pulled",
    "sharp",
    "stabbing",
    "popped",
}


@lru_cache(maxsize=4096)
def _urgent_spelling(raw: str) -> str | None:
    """The urgent word that an unknown word may be meant for: one slip in five letters, two in six or more."""
    if raw in VOCABULARY or len(raw) < _SHORTEST or not raw.isalpha():
        return None
    reach = 2 if len(raw) >= _PATIENT_FROM else 1
    best = min(_URGENT_WORDS, key=lambda word: (OSA.distance(raw, word), word))
    if OSA.distance(raw, best) <= reach and (best[0] == raw[0] or len(raw) >= _PATIENT_FROM):
        return best
    return None


def pains(
    tokens: Sequence[Token], sentences: Sequence[tuple[int, int]]
) -> list[tuple[int, Pain, tuple[int, int]]]:
    """Each pain with the index of its first token and the span of tokens it stands in."""
    patient = [
        replace(token, text=spelt)
        if token.kind is Kind.WORD and (spelt := _urgent_spelling(token.raw))
        else token
        for token in tokens
    ]
    found: list[tuple[int, Pain, tuple[int, int]]] = []
    for first, last in sentences:
        found += _in_clause(patient, first, last)
    return _distinct(found)


def _in_clause(tokens: Sequence[Token], first: int, last: int) -> list[tuple[int, Pain, tuple[int, int]]]:
    said = phrases.find(
        tokens, first, last, lambda meaning: meaning == "pain" or meaning.startswith("urgent")
    )
    alone = phrases.whole(tokens, first, last, lambda meaning: meaning == "pain")
    if alone is not None:
        said = [*said, alone]
    found = []
    for one in said:
        urgent = one.meaning.startswith("urgent")
        if _denied(tokens, first, one.first, one.last, urgent=urgent) or _long_past(tokens, first, last):
            continue
        if one.meaning == "urgent-chest" and _is_exercise(tokens, one, last):
            continue
        if one.meaning == "pain" and _is_muscle_talk(tokens, one):
            continue
        place, side = _where(tokens, one, first, last)
        if one.meaning == "urgent-chest":
            place, side = "chest", None
        if one.meaning in {"urgent-dizzy", "urgent-faint", "urgent-breath", "urgent-heart"}:
            place, side = None, None
        found.append((one.first, Pain(place, side, urgent), (one.first, one.last)))
    return found


def _denied(tokens: Sequence[Token], first: int, start: int, last: int, *, urgent: bool) -> bool:
    """Whether what is said from `start` is denied: "no pain", "does not hurt", "not at all dizzy"."""
    index = start - 1
    while index >= first and tokens[index].text in _BETWEEN_DENIAL:
        index -= 1
    if index >= first and tokens[index].text in _DENIALS:
        return True
    inside = [token.text for token in tokens[start:last]]
    after = tokens[last].text if last < len(tokens) else ""
    if after == "free" or inside[-1:] == ["painless"]:
        return True
    if inside[:2] == ["can", "not"] or (urgent and ("can" in inside or "could" in inside)):
        return False
    return any(word in {"not", "no", "never", "without"} for word in inside)


def _long_past(tokens: Sequence[Token], first: int, last: int) -> bool:
    """Whether the clause speaks of another time; "since yesterday" and "than last week" speak of now."""
    line = " " + " ".join(token.text for token in tokens[first:last]) + " "
    for time in _LONG_PAST:
        if (
            f" {time} " in line
            and f"since {time}" not in line
            and f"than {time}" not in line
            and " still " not in line
            and " now " not in line
        ):
            return True
    return False


def _is_exercise(tokens: Sequence[Token], said: phrases.Said, last: int) -> bool:
    """Whether "chest" here is the chest press, not the chest."""
    for index in range(said.first, said.last):
        if tokens[index].text == "chest":
            following = tokens[index + 1].text if index + 1 < last else ""
            if following in _CHEST_EXERCISE:
                return True
    return False


def _is_muscle_talk(tokens: Sequence[Token], said: phrases.Said) -> bool:
    """Whether only a muscle is sore or burning, which is work and not pain."""
    words = [token.text for token in tokens[said.first : said.last]]
    places = {PLACES[word] for word in words if word in PLACES}
    return (
        bool(places)
        and places <= _MUSCLES
        and any(word in _OF_MUSCLES for word in words)
        and not any(word in _REAL for word in words)
    )


def _where(
    tokens: Sequence[Token], said: phrases.Said, first: int, last: int
) -> tuple[str | None, Side | None]:
    """The place and the side in or right beside the phrase."""
    span = range(said.first, min(said.last + 4, last))
    place_at = next((i for i in span if tokens[i].text in PLACES and tokens[i].text not in {"side"}), None)
    if place_at is None:
        return None, None
    place = PLACES[tokens[place_at].text]
    before = tokens[place_at - 1].text if place_at > first else ""
    if place == "back" and before == "lower":
        place = "lower back"
    near = [tokens[i].text for i in range(max(first, place_at - 3), min(last, place_at + 4))]
    sides = {word for word in near if word in {"left", "right"}}
    side = Side(sides.pop()) if len(sides) == 1 else None
    return place, side


def _distinct(found: list[tuple[int, Pain, tuple[int, int]]]) -> list[tuple[int, Pain, tuple[int, int]]]:
    """Each place once; a sign without a place adds nothing to an equal one."""
    kept: list[tuple[int, Pain, tuple[int, int]]] = []
    for at, pain, span in sorted(found, key=lambda one: one[0]):
        double = next(
            (
                i
                for i, (_, other, _) in enumerate(kept)
                if other.place == pain.place or (pain.place is None and not pain.urgent)
            ),
            None,
        )
        if double is None:
            kept.append((at, pain, span))
        elif pain.urgent and not kept[double][1].urgent:
            kept[double] = (kept[double][0], pain, kept[double][2])
    return kept


def is_pain_word(token: Token) -> bool:
    """Whether the word speaks of pain."""
    return token.text in HURT
