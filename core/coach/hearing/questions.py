"""Questions that no line of `phrases.txt` says: caught by their words, since an answer changes nothing for anybody.

Every word must be one that such questions are made of; a word of another kind (a day, a place on the body, a name too many) and
nothing is caught.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from core.coach.asks import HowIs, WeekAsked, WhoMissed, WhoNeedsWord, WhoTrained
from core.coach.hearing.lists import listed
from core.coach.hearing.words import mended

if TYPE_CHECKING:
    from core.coach.asks import Ask, Which
    from core.coach.hearing.whom import Roster

_FILLING = listed("questions", "filling")
_WHO = listed("questions", "who")
_TRAINED = listed("questions", "trained")
_MISSED = listed("questions", "missed")
_WORD = listed("questions", "needs_word")
_HOW = listed("questions", "how")
_ASKING = listed("questions", "asking")
_ABOUT_TRAINING = (
    _HOW
    | _TRAINED
    | frozenset(
        {
            "consistent",
            "regular",
            "regularly",
            "consistently",
            "much",
            "many",
            "often",
            "well",
            "these",
            "days",
            "lately",
            "recently",
            "then",
            "now",
        }
    )
)
_NO_QUESTION = listed("questions", "never_of_one")
_GIVE = listed("questions", "give")
_DENIALS = frozenset({"not", "no", "nothing", "none"})
_GROUP = listed("questions", "group")
_OVER = listed("questions", "overview")


def question_in(roster: Roster, first: int, last: int, *, questioned: bool) -> Ask | None:
    """What words `[first, last)` ask about a trainee or all of them; None when they ask nothing, or something else."""
    known = _FILLING | _WHO | _TRAINED | _MISSED | _WORD | _ABOUT_TRAINING | _GROUP | _OVER | {"not"}
    said: list[str] = []
    people: list[str] = []
    at = first
    while at < last:
        word = roster.words[at]
        end = None if word.mark else roster.known(at)
        if end is not None:
            people.append(roster.raw(at, end))
            at = end
            continue
        if not word.mark:
            said.append(mended(word.says, known))
        elif not word.parts_only:
            return None
        at += 1
    words = frozenset(said)
    week: Which = "last" if words & {"last", "past"} else "this"
    if not words or not words <= known or (week == "last" and "week" not in words):
        return None
    if people:
        return HowIs(people[0]) if len(people) == 1 and _is_about_one(words, questioned=questioned) else None
    return _about_all(words, week)


def _is_about_one(words: frozenset[str], *, questioned: bool) -> bool:
    """Whether words beside one name ask how that one is doing."""
    if words & _NO_QUESTION or not words <= _FILLING | _ABOUT_TRAINING or (words & _GIVE and not words & {"me", "us"}):
        return False
    return bool(words & _ASKING) or (questioned and bool(words & _ABOUT_TRAINING))


def _about_all(words: frozenset[str], week: Which) -> Ask | None:
    """What words without any name ask about all; None when they ask several things or none."""
    asks: list[Ask] = []
    denied = bool(words & _DENIALS)
    if words & _GIVE and not words & {"me", "us"} and not words & _OVER:
        return None
    if words & _WHO:
        missed, trained = bool(words & _MISSED), bool(words & _TRAINED)
        if words & _WORD:
            asks.append(WhoNeedsWord())
        if missed != (denied and trained) and not (missed and "not" in words):
            asks.append(WhoMissed(week))
        elif trained and not (missed or denied or words & _WORD):
            asks.append(WhoTrained(week))
    elif words & _GROUP and words & _ASKING:
        asks += [] if words & (_WORD | _MISSED | _DENIALS | {"me", "us", "to"}) else [WeekAsked(week)]
    elif words & _OVER - {"week"} and words <= _FILLING | _OVER | {"how", "what"} and not (denied or "on" in words):
        asks.append(WeekAsked(week))
    return asks[0] if len(asks) == 1 else None
