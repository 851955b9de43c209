"""Set phrases that are a part of a story: quoted, the subject of what is told, or said of somebody or something else."""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING

from core.reading.around_phrases import AUXILIARIES, WHEN
from core.reading.lexicon import COURTESY, ENGLISH, GUARDS, HURT, PLACES, listed
from core.reading.objects import OF_TRAINING
from core.reading.spans import CLAUSE_ENDS

if TYPE_CHECKING:
    from collections.abc import Sequence

    from core.reading.phrases import Said
    from core.reading.token import Token

_SAYING = listed("words_stories", "saying")
_ADDRESSED = frozenset({",", "with", "me", "please", "you", "now"})
_SPEAKERS = GUARDS["people"] | {"the", "my", "our", "his", "her", "he", "she", "they", "a"}
_NOT_WHAT_IS_TOLD = listed("words_stories", "still_asked")
_VERBS = frozenset({"go", "begin", "kick", "stop", "skip", "pass", "finish", "end", "hold", "wait", "carry", "show"})
_ARTICLES = frozenset({"the", "a", "his", "her", "our", "their"})
_PAIRS = {
    ("slow", "steady"),
    ("nice", "easy"),
    ("out", "about"),
    ("here", "there"),
    ("back", "forth"),
    ("over", "out"),
    ("done", "dusted"),
    ("lb", "pence"),
    ("stop", "shop"),
}
_ON_WITH = frozenset(
    {"with", "from", "where", "at", "and", "it", "this", "lifting", "training", "ok", "yes", "whenever", "again", "as"}
)
_ELSEWHERE_TOO = frozenset({"swap-here", "start", "pause", "skip-day"})
_AT_WORK = ["work"], ["school"], ["at", "work"], ["at", "school"]
_SUBJECTS = frozenset({"start", "swap-here", "pause", "skip", "finish", "resume"})
_LONGEST_SUBJECT = 3
_OF_TIME = frozenset({"moment", "minutes", "second", "sec"})
_PERSONS = frozenset({"i", "we", "he", "she", "it", "they", "you", "the", "my", "our"})
_WAS = frozenset({"was", "were", "had"})
_THEN = listed("words_stories", "then")
_BRINGING = listed("words_stories", "bringing")
_COMING = listed("words_stories", "coming")
_AMID = frozenset({"just", "now", "finally", "all", "both", "only", "already", "straight", "right"})
_OWNERS = frozenset({"the", "my", "our", "his", "her", "their", "it", "them", "him", "me", "us", "a", "some"})
_ONESELF = frozenset({"i", "we", "am", "me", "l", "and", "that", "there"})
_LONGEST_BROUGHT = 4
_LEFT_UNDONE = frozenset({"skip", "skip-day", "finish", "pause", "swap", "swap-here"})
_NEARLY = frozenset({"nearly", "almost"})
_THOUGHT = {("thought", "about"), ("thought", "of"), ("was", "going"), ("was", "gonna"), ("was", "about")}
_USED_TO = (["used", "to"], ["use", "to"])
_OFTEN = listed("words_stories", "often")
_OTHER_DAYS = frozenset({"tomorrow", "yesterday"})
_REMINDING = listed("when", "remind")
_BOTHERING = listed("words_when", "bothering")
_STILL_BOTHERING = frozenset(
    {"not", "no", "never", "longer", "really", "still", "even", "just", "been", "always", "much", "constantly"}
)
_GOING = (["go"], ["goes"], ["put"], ["take"], ["comes"], ["come"])
_BEING = frozenset({"is", "are", "was", "were", "be", "has", "have", "had"})


def is_told(tokens: Sequence[Token], said: Said, first: int, last: int) -> bool:
    """Whether a phrase is only told of in the sentence from `first` to `last`, whatever it would ask for by itself."""
    return (
        any(is_quoted(tokens, at, last) for at in range(said.first + 1, said.last + 1))
        or _is_a_noun(tokens, said, first)
        or _goes_on_as_a_saying(tokens, said, first, last)
        or _is_what_is_told_of(tokens, said, last)
        or (said.meaning in _LEFT_UNDONE and _was_only_near(tokens, said, first))
        or (said.meaning in {"resume", "finish", "start"} and _is_said_of_another(tokens, said, first))
        or (said.meaning == "skip-day" and _is_another_day(tokens, said, first, last))
    )


def _is_a_noun(tokens: Sequence[Token], said: Said, first: int) -> bool:
    """Whether a word before a verb makes a thing of it: "the go ahead from the council", but "the next one"."""
    return said.first > first and tokens[said.first].text in _VERBS and tokens[said.first - 1].text in _ARTICLES


def _goes_on_as_a_saying(tokens: Sequence[Token], said: Said, first: int, last: int) -> bool:
    """Whether what follows at once shows that no training is meant: "day off work", "here and there", "go on holiday"."""
    ending = tokens[said.last - 1].text
    after = [token.text for token in tokens[said.last : min(said.last + 3, last)]]
    lead = [token.text for token in tokens[max(first, said.first - 2) : said.first]]
    if (after[:1] == ["and"] and (ending, *after[1:2]) in _PAIRS) or (lead[1:] == ["and"] and (lead[0], ending) in _PAIRS):
        return True
    if said.meaning in _ELSEWHERE_TOO and (after[:1] in _AT_WORK or after[:2] in _AT_WORK):
        return True
    goes_on = said.meaning == "resume" and ending in {"on", "going"}
    return (
        goes_on
        and after[:1] != []
        and after[0] in ENGLISH
        and after[0] not in OF_TRAINING | COURTESY | CLAUSE_ENDS | WHEN | _ON_WITH
    )


def is_quoted(tokens: Sequence[Token], after: int, last: int) -> bool:
    """Whether somebody else is told to have said what ends before `after`: "leave it out said the cabbie"."""
    while after < last and tokens[after].text in GUARDS["people"] | _ADDRESSED:
        after += 1
    spoken = after + 1 < last and tokens[after].text in _SAYING and tokens[after + 1].text in _SPEAKERS
    spoken = spoken and not (after + 2 < last and tokens[after + 2].text in PLACES.keys() | {"body"})  # "enough says my body"
    closing = [token.text for token in tokens[max(after, last - 4) : last]]
    return spoken or (bool(closing) and closing[-1] in _SAYING and bool(GUARDS["people"] & set(closing)))


def _is_what_is_told_of(tokens: Sequence[Token], said: Said, last: int) -> bool:
    """Whether a phrase is the subject of a sentence: "kick off was late", "one moment it was sunny"."""
    after = [token.text for token in tokens[said.last : min(said.last + 3, last)]]
    if said.meaning == "pause" and tokens[said.last - 1].text in _OF_TIME and set(after[:1]) & _PERSONS:
        return bool(_WAS & set(after[1:3]))
    if said.meaning == "pause" and set(after) & _THEN:
        return True  # "the phone rang during that"
    if said.meaning == "pause" and tokens[said.last - 1].text == "break" and _WAS & set(after):
        return True  # "tea break at work was short"
    if said.meaning not in _SUBJECTS or not after or said.last - said.first > _LONGEST_SUBJECT:
        return False
    return after[0] in {"was", "were"} or (after[0] == "is" and len(after) > 1 and after[1] not in _NOT_WHAT_IS_TOLD)


def _is_said_of_another(tokens: Sequence[Token], said: Said, first: int) -> bool:
    """Whether it is somebody or something else that is back: "my phone is back from the shop", "brought my stuff back"."""
    if tokens[said.first].text == "my" and tokens[said.first + 1].text in GUARDS["people"]:
        return True  # "my boss quit"
    if tokens[said.first].text != "back":
        return False
    begin = next((i + 1 for i in range(said.first - 1, first - 1, -1) if tokens[i].text in CLAUSE_ENDS), first)
    lead = [token.text for token in tokens[begin : said.first]]
    while lead and lead[-1] in _AMID:
        lead.pop()
    if any(one in _BRINGING and following in _OWNERS for one, following in pairwise(lead[-_LONGEST_BROUGHT:])):
        return True
    verbs = 0
    while lead and lead[-1] in AUXILIARIES | _COMING:
        lead.pop()
        verbs += 1
    return bool(verbs and lead and lead[-1] not in _ONESELF | COURTESY and "your" not in lead[-2:])  # "your boy is back"


def _was_only_near(tokens: Sequence[Token], said: Said, first: int) -> bool:
    """Whether what a phrase names was only thought of, and not done: "nearly skipped it", "wasn't going to train today"."""
    begin = next((i + 1 for i in range(said.first - 1, first - 1, -1) if tokens[i].text in CLAUSE_ENDS), first)
    lead = [token.text for token in tokens[begin : said.first]]
    if set(lead) & _NEARLY or lead[-1:] == ["was"]:
        return True
    return any(pair in _THOUGHT for pair in pairwise(lead))


def _is_another_day(tokens: Sequence[Token], said: Said, first: int, last: int) -> bool:
    """Whether a day without training is no day at hand: "used to hurt, not today", "we had no gym", "day off tomorrow"."""
    lead = [token.text for token in tokens[first : said.first]]
    words = [token.text for token in tokens[said.first : said.last]]
    if words[:2] in (["not", "today"], ["not", "tonight"]):
        used = any(pair in _USED_TO for pair in map(list, pairwise(lead)))
        spoken = lead[-1:] != [] and lead[-1] in _SAYING and bool(set(lead) & (GUARDS["people"] | {"he", "she", "they"}))
        return used or spoken or bool(_OFTEN & set(lead) and HURT & set(lead))
    if words[0] == "out" and lead[-1:] in _GOING:
        return True  # "the bins go out tonight"
    if words[0] == "on" and lead[-1:] != [] and lead[-1] in {"is", "are"} and not set(lead[-2:]) & _ONESELF:
        return True  # "my maid is on leave today"
    near = {*words, *lead, *(token.text for token in tokens[said.last : last])}
    had = words[0] == "no" and lead[-1:] == ["had"]
    return had or bool(near & _OTHER_DAYS and not near & {"today", "tonight", "now"})


def is_told_to_bother(tokens: Sequence[Token], at: int) -> bool:
    """Whether a word at `at` tells that something bothers, or does not: "nothing bugging me", but "you are bugging me"."""
    if tokens[at].text not in _BOTHERING:
        return False
    index, denied = at - 1, False
    while index >= 0 and tokens[index].text in _STILL_BOTHERING:
        denied |= tokens[index].text in {"not", "no", "never"}
        index -= 1
    lead = tokens[index].text if index >= 0 else ""
    subject = tokens[index - 1].text if index > 0 else ""
    if lead in {"nothing", "stopped"}:
        return True
    return (
        lead in _BEING
        and subject not in _REMINDING | {"you", "u", "this", "they", ""}
        and (denied or subject not in {"it", "that"})
    )
