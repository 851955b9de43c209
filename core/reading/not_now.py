"""Whether a pain that is told hurts its teller now: not denied, long past, imagined, a figure of speech or somebody else's.

An urgent sign is taken away by less than any other pain: only by words that are about the sign itself.
"""

from __future__ import annotations

import re
from itertools import pairwise
from typing import TYPE_CHECKING

from core.reading.lexicon import CHEST_TROUBLE, COURTESY, GUARDS, HURT, PLACES, listed, sayings

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from core.reading.token import Token

_DENIALS = listed("words_pain", "denials")
_BETWEEN_DENIAL = listed("words_pain", "between_denial")
_LONG_PAST = sayings("long_past")
_STILL = sayings("still")
_LIKE_BEFORE = frozenset({"like", "as", "same", "today", "tonight"})
_FIGURES = sayings("figures")
_FIGURE_WORDS = tuple(tuple(figure.split()) for figure in _FIGURES)
_FIGURE_FIRSTS = frozenset(figure[0] for figure in _FIGURE_WORDS)
_NECK_OR_BUM = frozenset({"neck", "bum", "butt", "backside"})
_IN_EARNEST = frozenset({"since", "exercise", "again", "sharp", "during", "while", "lifting", "rep", "reps", "press", "developed"})
_BETTER = ("fine", "ok", "better", "good", "great", "gone", "alright", "healed")
_TRIGGERS = listed("words_pain", "triggers")
_FOLK = frozenset({"lad", "lads", "lass", "boy", "boys", "missis", "people", "folks"})
_THEY = frozenset({"he", "she", "they", "his", "her", "their"})
_BEARING = listed("words_pain", "bearing")
_TO_WHOM = frozenset({"with", "from", "after", "for", "by", "to", "at", "holding", "the", "my"})
_ENDING = frozenset({"has", "have", "had", "is", "are", "it", "all", "now", "just", "soon", "quickly"})
_LIKENING = frozenset({"like", "if", "though"})
_ONESELF = frozenset({"i", "my", "me", "it", "the"})
_WELL = frozenset(
    {
        "right", "good", "ok", "great", "well", "happy", "normal", "nice", "fine", "better", "stopped", "going", "gone", "stop",
        "slow", "slowing", "calm", "calming", "settle", "settling", "regular", "beating", "come", "coming", "down", "steady",
    }
)  # fmt: skip
_ON_THE_WAY = frozenset({"feel", "feeling", "so", "too", "very", "all", "that"})
_THAT_GO = frozenset(
    {"dizziness", "numbness", "tingling", "pain", "pains", "tightness", "pressure", "giddiness", "vertigo", "needles"}
)
_UNTIL_NOW = ("before today", "before now", "until", "till")
_YEAR = re.compile(r" (?:in|of|around) (?:19|20)[0-9]{2} ")
_Sign = tuple[str, int, int]
_Span = tuple[int, int]


def is_not_now(tokens: Sequence[Token], first: int, last: int, signs: Sequence[_Sign]) -> bool:
    """Whether what the signs of a clause tell is no pain of the writer's that is there now."""
    line = " " + " ".join(token.text for token in tokens[first : last + 2]) + " "
    within = " " + " ".join(token.text for token in tokens[first:last]) + " "
    urgent = any(meaning != "pain" for meaning, _, _ in signs)
    if _long_past(within, urgent=urgent) or (not urgent and _is_figure(tokens, first, line)):
        return True
    if not urgent and _is_likened(within):
        return True
    if not urgent and (_is_well(within) or _has_been_well(within)):
        return True
    start = min(sign[1] for sign in signs)
    lead = [token.text for token in tokens[first:start]]
    imagined = next((at for at, word in enumerate(lead) if word in _IMAGINING and not (at and lead[at - 1] in _LIKE)), None)
    if imagined is not None and not (urgent and lead[imagined - 1 : imagined] != ["what"] and _TRIGGERS & set(lead[imagined:])):
        return True
    if not urgent and (
        tokens[first].text in {"when", "do", "if"}
        or any(word in _WOULD and after not in _TELLING and (word, after) != _COULD_NOT for word, after in pairwise([*lead, ""]))
        or (tokens[first].text in {"will", "does", "should", "can", "could"} and tokens[first + 1].text != "not")
    ):
        return True
    if _of_somebody_else(tokens, first, max(sign[2] for sign in signs), urgent=urgent):
        return True
    return all(_denied(tokens, first, sign) for sign in signs)


def is_painless_after(tokens: Sequence[Token], first: int, last: int) -> bool:
    """Whether a clause says of what was told before it that it is no pain: "but no pain", "but in a good way"."""
    line = f" {' '.join(token.text for token in tokens[first:last])} "
    line = line if line.startswith(" but ") else f" but{line}"
    return any(line.startswith(f" {denied} ") for denied in _PAINLESS) or " in a good way " in line


def _is_likened(line: str) -> bool:
    """Whether something that can have none is called a headache: "parking here is a headache", but "there is a headache"."""
    before, called, _ = line.partition(" a headache ")
    words = before.split()
    return bool(called) and len(words) > 1 and words[-1] in {"is", "are", "was", "be"} and words[-2] not in _NO_NAMES


def _is_well(line: str) -> bool:
    """Whether a clause tells that what hurt, or might, does not: "crook shoulder is all good", "clicking but no pain"."""
    if any(f" {denied} " in line for denied in _PAINLESS):
        return True
    words = set(line.split())
    well = any(f" {verb} {good} " in line for verb in ("is", "are", "feels", "feel") for good in _ALL_WELL)
    return well and not words & {"but", "still", "not", "except", "until", "when", "no", "one", "other", "only"}


def _has_been_well(line: str) -> bool:
    """Whether a clause tells of what was that it has been well since: "had trouble in 1998 and it has been fine since"."""
    past, _, after = line.partition(" has been ")
    return bool(after and set(past.split()) & _WAS and set(after.split()[:2]) & _WELL_SINCE)


_WAS = frozenset({"had", "was", "were", "did", "hurt", "broke", "pulled", "tore", "injured", "got"})
_WELL_SINCE = frozenset({"fine", "ok", "good", "great", "better", "alright", "sound", "perfect"})
_NO_NAMES = frozenset({"there", "it", "this", "that", "what", "problem", "issue", "complaint", "symptom", "all"})
_LIKE = frozenset({"as", "how", "like", "feel", "feels", "feeling"})
_WOULD = frozenset({"will", "would", "might", "could", "should"})
_COULD_NOT = ("could", "not")
"""What was not managed, which imagines nothing: "couldn't finish my knee is sore"."""
_TELLING = frozenset({"mention", "say", "add", "tell", "report", "note", "like", "inform", "admit", "warn", "let"})
_STAYING = frozenset({"stop", "stay", "keep", "sit", "stand", "hold"})
_PAINLESS = (
    "but no pain", "but not pain", "but not painful", "but not sore", "but does not hurt", "but do not hurt", "but no hurt",
    "but it does not hurt", "but it is not painful", "but painless", "no pain though", "without pain", "not painful though",
    "but no real pain", "but no actual pain", "and no pain", "but not today",
    "but not tonight", "but not this time",
)  # fmt: skip
_ALL_WELL = (
    "all good", "good today", "good now", "fine", "all fine", "much better", "all better", "totally fine", "perfectly fine",
    "sorted", "all right", "healed", "ok today", "ok now", "great today", "great now", "behaving", "holding up", "all gone",
    "all clear",
)  # fmt: skip
_AFTER_NOTHING = frozenset({"is", "was", "feels", "really", "at", "all", "actually", "even", "else"})
"""Words between a "nothing" and what it denies."""

_IMAGINING = frozenset({"if", "whenever", "case", "pretend", "imagine", "suppose"})


def is_out_of_sight(tokens: Sequence[Token], first: int, last: int) -> bool:
    """Whether it is somebody that is not seen, and the eyes are well: "the mirror is broken so I cannot see me"."""
    words = [token.text for token in tokens[first:last]]
    return any(one == "see" and whom in {"me", "you", "u"} for one, whom in pairwise(words))


def figures(tokens: Sequence[Token], first: int, last: int) -> Iterator[_Span]:
    """The spans of a clause that are a figure of speech: "collapsed in a heap", "dizzy with joy"."""
    words = [token.text for token in tokens[first:last]]
    if _FIGURE_FIRSTS.isdisjoint(words):
        return
    for figure in _FIGURE_WORDS:
        if figure[0] in words:
            for at in range(len(words) - len(figure) + 1):
                if tuple(words[at : at + len(figure)]) == figure:
                    yield first + at, first + at + len(figure)


def _is_figure(tokens: Sequence[Token], first: int, line: str) -> bool:
    """Whether the clause is a figure of speech, "a pain in the" but for a pain in a place that is none."""
    said = next((figure for figure in _FIGURES if f" {figure} " in line), None)
    if said is not None and said.startswith("old "):
        return not {token.text for token in tokens[first : first + line.count(" ")]} & (HURT | {"again", "me"})
    if said != "a pain in the":
        return said is not None
    if _IN_EARNEST & set(line.split()):
        return False
    places = {token.text for token in tokens[first : first + line.count(" ")] if token.text in PLACES}
    return not places - _NECK_OR_BUM


def _long_past(line: str, *, urgent: bool) -> bool:
    """Whether the clause speaks of another time; "since yesterday" and "than last week" speak of now."""
    still = [word for word in _STILL if word != "now" or not any(f" {better} now " in line for better in _BETTER)]
    if not urgent and any(f" {gone} " in line for gone in ("all gone", "is gone", "has gone", "cleared up", "went away")):
        still = []  # "back pain from last month is all gone"
    now = [*still, *_LIKE_BEFORE] if urgent else still
    if _YEAR.search(line) and not any(f" {word} " in line for word in {*still} - {"now", "again"}):
        return True  # "I fainted once in 2009", but "has hurt since 2009"
    return any(f" {time} " in line for time in _LONG_PAST) and not any(f" {word} " in line for word in now)


def _of_somebody_else(tokens: Sequence[Token], first: int, end: int, *, urgent: bool) -> bool:
    """Whether somebody else is in pain: a person is named before, and no "I" or "my knee" comes between."""
    owner = None
    for i in range(first, end):
        word = tokens[i].text
        following = tokens[i + 1].text if i + 1 < end else ""
        if word in _THEY and i > first and (tokens[i - 1].text in PLACES or tokens[i - 1].text in _LIKENING):
            continue  # "my knees they hurt", "my hands feel like they're not mine"
        of_one = word.endswith("s") and word[:-1] in GUARDS["people"] and following in PLACES  # "my husbands back hurts"
        if of_one or word in GUARDS["people"] | _FOLK | _THEY:
            owner = owner if urgent and _is_only_handled(tokens, first, i, following) else i
        elif word in {"i", "me"} or (word == "my" and following not in GUARDS["people"] | _FOLK):
            owner = None
    return owner is not None


def _is_only_handled(tokens: Sequence[Token], first: int, at: int, following: str) -> bool:
    """Whether a person is only what the writer does something with: "after carrying my son"."""
    index = at - 1
    while index >= first and tokens[index].text in {"the", "my", "a", "our"}:
        index -= 1
    led = tokens[index].text if index >= first else ""
    return following not in _BEARING and (led in _TO_WHOM or led.endswith("ing"))


def _denied(tokens: Sequence[Token], first: int, sign: _Sign) -> bool:
    """Whether a sign is denied: "no pain", "does not hurt", "not at all dizzy"; of some the "not" is a part."""
    meaning, start, end = sign
    stopped = meaning == "pain" and start > first and tokens[start - 1].text in {"stopped", "quit"}
    if stopped or denial_start(tokens, first, start) < start:
        return True
    inside = [token.text for token in tokens[start:end]]
    after = [token.text for token in tokens[end : end + 3]]
    sees = bool({"see", "speak", "talk", "focus"} & set(inside))
    own = _own_denials(meaning, starts_with_not=tokens[start].text == "not" or sees)
    if (
        after[:1] == ["free"]
        or (set(after[:1]) & {"passed", "stopped", "eased"} and after[1:2] != ["out"])
        or (after[:1] == ["gone"] and tokens[end - 1].text in _THAT_GO)
        or (not own and set(after[:2]) & {"gone", "free"} and not (after[0] == "," and after[2:3] not in ([], ["now"], ["."])))
        or (after[:2] == ["went", "away"] and tokens[end - 1].text in _THAT_GO)
        or (after[:1] and after[0] in _ENDING and after[1:2] in (["gone"], ["passed"], ["stopped"]))
    ):
        return True
    if meaning in {"urgent-chest", "urgent-heart"} and "not" in inside[1:]:
        before, rest = inside[: inside.index("not")], inside[inside.index("not") + 1 :]
        told = next((word for word in rest if word not in _ON_THE_WAY), None)
        return told is not None and told not in _WELL and not CHEST_TROUBLE & set(before)
    if meaning == "urgent-heart" and "heart" in inside and _is_sound(inside[inside.index("heart") + 1 :]):
        return after[:1] != ["but"]
    if meaning == "urgent-chest" and inside[-1] in HURT and _says_nothing_hurts(inside[:-1]):
        return True  # "chest good nothing hurts"
    if meaning == "urgent-chest" and inside[0] == "chest" and inside[1:2] != [] and inside[1] in CHEST_TROUBLE:
        return False  # "chest pain lol, no really it hurts"
    if any(word == "not" and after in _STAYING for word, after in pairwise(inside)):
        return False  # "the room won't stop spinning", "the floor won't stay still"
    return any(word in _DENIALS and word not in own for word in inside) and not (own and inside[:1] == ["no"])


def _is_sound(words: Sequence[str]) -> bool:
    """Whether the words after "heart" say nothing but that it is well: "is fine", "feels good", but not "is going strange"."""
    return bool(_SOUND & set(words)) and set(words) <= _SOUND | _BESIDE_SOUND | COURTESY


_SOUND = frozenset({"fine", "ok", "good", "great", "normal", "steady", "grand", "well", "healthy", "strong"})
_BESIDE_SOUND = frozenset(
    {"is", "was", "feels", "beating", "beats", "going", "doing", "all", "now", "perfectly", "totally", "just"}
)


def _says_nothing_hurts(words: Sequence[str]) -> bool:
    """Whether the words before a last "hurts" end with a "nothing", and tell no trouble before it."""
    at = len(words) - 1
    while at >= 0 and words[at] in _AFTER_NOTHING:
        at -= 1
    return at >= 0 and words[at] == "nothing" and not CHEST_TROUBLE & set(words[:at])


def excepted(tokens: Sequence[Token], first: int, last: int) -> int:
    """Where what is excepted from a denial begins: "nothing hurts except | my knee"; `last` when nothing is."""
    for at in range(first + 1, last):
        pair = tokens[at].text, tokens[at + 1].text if at + 1 < last else ""
        if pair[0] in {"except", "excepting", "bar", "barring", "excluding"} or pair in _EXCEPTING:
            return at + 1
    return last


_EXCEPTING = {("apart", "from"), ("other", "than"), ("aside", "from"), ("save", "for")}


def _own_denials(meaning: str, *, starts_with_not: bool) -> frozenset[str]:
    """The denials that are a part of a sign: "can not breathe", "fingers no feel"."""
    if meaning == "urgent-numb":
        return frozenset({"not", "no", "without", "zero", "never"})
    if meaning == "urgent-breath":
        return frozenset({"not", "no"})
    if meaning.startswith("urgent") and meaning not in {"urgent-dizzy", "urgent-faint"}:
        return frozenset({"not"})
    return frozenset({"not"}) if starts_with_not else frozenset()


def denial_start(tokens: Sequence[Token], first: int, start: int) -> int:
    """Where the denial right before `start` begins; `start` itself when there is none.

    "No I feel dizzy" and "no my knee hurts" answer something; "never felt this dizzy" tells how dizzy it is.
    """
    index = start - 1
    while index >= first and tokens[index].text in _BETWEEN_DENIAL:
        index -= 1
    if index >= first and tokens[index].text == "nothing" and {t.text for t in tokens[index + 1 : start]} <= _AFTER_NOTHING:
        return index  # "nothing hurts", but "did nothing and my chest hurts"
    if index < first or tokens[index].text not in _DENIALS:
        return start
    following = tokens[index + 1].text if index + 1 < len(tokens) else ""
    if tokens[index].text == "no" and index == first and following in _ONESELF:
        return start
    if tokens[index].text == "not" and following in {"make", "come", "do", "train"}:
        return start  # "can't make it today got a migraine"
    told = {token.text for token in tokens[index + 1 : start + 4]}
    line = " ".join(token.text for token in tokens[start : start + 5])
    if tokens[index].text == "never" and (told & {"this", "so", "such", "like"} or any(now in line for now in _UNTIL_NOW)):
        return start
    return index
