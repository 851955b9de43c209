"""Muscles that are only tired or sore from work, which is no pain: "arms are cactus", "legs gave out"."""

from __future__ import annotations

from typing import TYPE_CHECKING

from core.reading.lexicon import HURT, listed

if TYPE_CHECKING:
    from collections.abc import Sequence

    from core.reading.places import Place
    from core.reading.token import Token

_MUSCLES = listed("words_pain", "muscles") | {"hip flexor"}
_OF_MUSCLES = listed("words_pain", "of_muscles")
_Sign = tuple[str, int, int]


def muscles_gave_out(tokens: Sequence[Token], first: int, last: int, signs: Sequence[_Sign], places: list[Place]) -> bool:
    """Whether it is only that the arms or legs gave out: the end of a set, not a pain."""
    words = {tokens[i].text for i in range(first, last)}
    muscular = bool(places) and all(place.name in _MUSCLES and place.side is None for place in places)
    given = any(tokens[i].text in {"gave", "giving", "gives"} and tokens[i + 1].text == "me" for i in range(first, last - 1))
    return (
        muscular
        and not given
        and bool(words & {"gave", "giving", "gives"})
        and not words & HURT
        and all(sign[0] == "pain" for sign in signs)
    )


def is_muscle_talk(tokens: Sequence[Token], first: int, last: int, places: Sequence[Place]) -> bool:
    """Whether only a muscle is sore or burning, which is work and not pain."""
    words = {tokens[i].text for i in range(first, last)}
    hurting = words & HURT
    if hurting and hurting <= {"sore", "burning", "tender", "killing"} and not places:
        return True
    if not places or not {place.name for place in places} <= _MUSCLES:
        return False
    lone = _side_follows(tokens, last) or any(place.side is not None or _is_one(tokens, place) for place in places)
    if not hurting:
        return not lone and bool(words & _WORN)
    return hurting <= _OF_MUSCLES and not (lone and hurting <= _OF_ONE_SIDE)


def _side_follows(tokens: Sequence[Token], last: int) -> bool:
    """Whether a side is told right after a clause: "both forearms ache, especially the right"."""
    after = [token.text for token in tokens[last + 1 : last + 4]]
    return (
        after[:1] != [] and after[0] in {"especially", "mostly", "mainly", "particularly"} and bool({"left", "right"} & set(after))
    )


_OF_ONE_SIDE = frozenset({"killing", "sore", "aching", "achy", "ache", "aches", "tender"})
"""Words of work too, but not of one arm or leg alone: "left hammy's sore": both would be from work."""
_WORN = listed("words_pain", "complaining")
"""What muscles in pairs are said to be after work: "arms are cactus"."""


def _is_one(tokens: Sequence[Token], place: Place) -> bool:
    """Whether one muscle of a pair is named: "my forearm is sore", "hammy's sore", not "forearms are sore"."""
    return not tokens[place.at].text.endswith("s")
