"""Questions that no line of `phrases.txt` says: caught by their words, since an answer changes nothing for anybody.

Every word must be one that such questions are made of; a word of another kind (a day, a place on the body, a name too many) and
nothing is caught.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from core.coach.asks import HowIs, WeekAsked, WhoMissed, WhoNeedsWord, WhoTrained
from core.coach.hearing.words import mended

if TYPE_CHECKING:
    from core.coach.asks import Ask, Which
    from core.coach.hearing.whom import Roster

_FILLING = frozenset(
    "a an things the is are was were has have having had 's do does did been be being it its that there here all any some of my our me i we you us to too in at on for with from by so far yet "
    "really properly actually still only just also please and or up out this last past week weeks show tell share give send list let "
    "know see get want need would like can could should must shall will may check look their his her them they people clients client trainees persons "
    "guys lot about quickly quick really actually anything something everything no".split()
)
_WHO = frozenset("who whom anyone anybody which whose somebody someone one".split())
_TRAINED = frozenset(
    "train trained training trains work worked workout workouts session sessions active turned showed shown came attended attend exercised exercising logged log done did completed complete "
    "finished finish circuit circuits hit moved put managed make made putting doing".split()
)
_MISSED = frozenset(
    "miss missed missing misses skip skipped skipping slack slacking slacked slacker slackers behind lagging lag absent absentee absentees lazy quiet silent inactive bunked bunking bunk dropped "
    "fallen falling ghosted ghosting disappeared vanished pending incomplete wagged wagging dodged dodging slipped slipping".split()
)
_WORD = frozenset(
    "talk talking speak speaking word call calling ring phone chat chase chasing follow attention help nudge struggling stuck stalling stalled hurt hurting injured pain pains sore "
    "trouble problem problems issue issues flag flags flagged concern concerns worry worried worries worrying alert alerts contact conversation check-in checking plateaued plateau weaker tired injury injuries niggle niggles complaints complaint red hard time difficulty difficulties rough tough stalled".split()
)
_HOW = frozenset(
    "how what status progress progressing update updates news report tracking doing going goes go getting along performing performance coping managing faring keeping improving progression results stats numbers summary overview "
    "happening new latest rundown story looking gone getting comes coming trending form shape alright ok okay well good fine better stronger".split()
)
_ASKING = frozenset(
    "how what rundown status progress update updates news report summary overview results stats numbers latest".split()
)
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
_NO_QUESTION = frozenset("last past or no not should shall must will out".split())
_GIVE = frozenset("tell show give send share let".split())
_GROUP = frozenset("everyone everybody team group gang crew lot squad we they things clients people lads class bunch mob".split())
_OVER = frozenset("week rundown recap weekly summary overview roundup wrap recap review digest snapshot picture glance".split())


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
    if words & _GIVE and not words & {"me", "us"} and not words & _OVER:
        return None
    if words & _WHO:
        if words & _WORD:
            asks.append(WhoNeedsWord())
        missed = bool(words & _MISSED) or bool({"not", "no"} & words and words & _TRAINED)
        if missed and not (words & _MISSED and "not" in words):
            asks.append(WhoMissed(week))
        elif (
            words & _TRAINED
            and not words & _MISSED
            and not words & {"not", "no"}
            and not words & _WORD
            and "last" not in words - {"last"}
        ):
            asks.append(WhoTrained(week))
    elif words & _GROUP and words & _ASKING and not words & (_WORD | _MISSED | {"not", "no", "me", "us", "to"}):
        asks.append(WeekAsked(week))
    elif words & _OVER - {"week"} and words <= _FILLING | _OVER | {"how", "what"} and not words & {"not", "no", "on"}:
        asks.append(WeekAsked(week))
    return asks[0] if len(asks) == 1 else None
