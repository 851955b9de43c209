"""Whether a feeling is the writer's own, and about the weight: not about the traffic, a knee, or what a child thinks."""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING

from core.reading.around_phrases import LIFTING, asked
from core.reading.lexicon import COURTESY, ENGLISH, EXERCISES, GUARDS, HURT, PLACES, VOCABULARY, listed
from core.reading.spans import CLAUSE_ENDS
from core.reading.token import Kind, Token

if TYPE_CHECKING:
    from collections.abc import Sequence

    from core.reading.phrases import Said


_GONE_UP = frozenset({"went", "moved", "gone", "stepped", "jumped", "bumped", "came", "changed", "switched", "popped"})
_ASKING = frozenset({"can", "could", "may", "might", "shall", "please", "give", "need", "want", "lets"})
"""Words that begin a wish, so that what stands before it is no part of it: "dead on my feet, can I go lighter"."""
_LITTLE = frozenset({"less", "small", "few", "little", "low", "light", "lighter", "lite", "easy"})
_CLIMBED = frozenset({"stairs", "upstairs", "every", "again", "all", "steps", "this", "that", "my", "our", "there", "to"})
_WISHED_UP = frozenset(
    {
        "i", "we", "can", "could", "should", "may", "might", "will", "would", "lets", "let", "me", "us", "want", "wan", "need",
        "ready", "like", "able", "time", "going", "gonna", "think", "prefer", "please", "must", "better", "now", "well", "next",
        "deserve", "try", "fit", "good", "keen", "happy", "dey", "and", "just", "then", "maybe", "set", "safe", "probably", "you",
        "love", "wish", "reckon", "go", "definitely", "easily", "have", "got", "comfortable",
    }
)  # fmt: skip
_EATEN = frozenset(
    {"is", "had", "have", "ate", "eat", "eating", "want", "fancy", "bought", "waiting", "fell", "in", "on", "with", "left"}
)
_TIMES_OF_LIFE = frozenset({"today", "morning", "week", "weekend", "sun", "shower", "evening"})
_PLACES_TO_BE = frozenset({"here", "outside", "there"})
_HOW_MUCH = frozenset({"too", "so", "very", "really", "way", "much", "far", "quite", "pretty"})
_ON_TIME = frozenset({"the", "time", "cue", "schedule", "a", "my", "noon", "half"})
_COPULAS = frozenset({"is", "are", "was", "were", "felt"})
_WEIGHTY = frozenset({"heavy", "light", "heavier", "lighter"})
_POINTED = frozenset({"it", "they", "them", "this", "that", "these", "those", "she", "he", "things", "really", "and", "must", ","})
_WEIGHING = frozenset({"weigh", "weighs", "weighed"})
_LIFTED = EXERCISES | {
    "weight", "weights", "load", "loads", "dumbbell", "dumbbells", "kettlebell", "kettlebells", "one", "ones", "pair", "set",
    "sets", "last", "exercise", "reps", "kg", "lb", "round", "station", "bar", "plates", "s", "workout", "session", "circuit",
    "whole", "thing", "bell", "bells", "current", "second", "first",
}  # fmt: skip
_COMPARING = frozenset({"heavier", "lighter", "bigger", "smaller", "harder", "easier", "more", "less", "up", "down"})
_WISHED = frozenset({"have", "had", "get", "use", "used", "try", "tried", "trouble", "ask", "trusted"})
_ELSEWHERE = listed("words_standing", "elsewhere")
_FINDING = frozenset({"thinks", "say", "says", "said", "reckons", "thought", "finds", "found", "told", "calls", "asked", "claims"})
_LIFE = frozenset({"work", "traffic", "rain", "life", "homework", "heat", "sun", "school", "kids", "day", "chores"})


def feeling_stands(tokens: Sequence[Token], said: Said, first: int, last: int) -> bool:
    """Whether words of a feeling judge the weight where they stand."""
    if said.meaning == "right" and not _is_right(tokens, said, first, last):
        return False
    before = tokens[said.first - 1] if said.first > first else None
    if _asks_for_no_change(tokens, said, first):
        return False  # "don't make it heavier", "no need to go lighter"
    wonders = _wonders(tokens, said, first)
    if before is not None and before.text == "if" and not wonders:
        return False  # "if that's ok"
    after = tokens[said.last] if said.last < last else None
    words = {token.text for token in tokens[said.first : said.last]}
    if said.meaning == "heavy" and after is not None and after.text in _LITTLE:
        return False  # "weight is too much less"
    if said.meaning == "heavy" and _hurts_so_much(tokens, said, first):
        return False  # "my back hurts too much"
    if said.meaning == "light" and words & {"go", "move", "bump"} and "not" in {t.text for t in tokens[first : said.first]}:
        return False  # "the last one would not go up"
    if said.meaning == "light" and (_goes_up_elsewhere(tokens, said, first, last) or _has_gone_up(tokens, said, first)):
        return False  # "we had to go up three flights", "went up a size! 18kg for 9"
    if said.meaning in {"heavy", "light"} and wonders:
        return True  # "I wonder whether I might have a lighter pair"
    return not (asked(tokens, first, last) or _is_said_by_others(tokens, said, first)) and not _of_something_else(
        tokens, said, first
    )


_OF_A_BODY = frozenset({"sweating", "sweat", "sweated", "shaking", "trembling", "coughing", "panting", "laughing", "talking"})
"""What somebody does "too much" that is no lifting."""


def _hurts_so_much(tokens: Sequence[Token], said: Said, first: int) -> bool:
    """Whether "too much" tells how much something hurts, and not how heavy it is: "my back hurts too much", "pains me too much"."""
    at = said.first - 1
    while at > first and tokens[at].text in {"me", "way", "is", "just"}:
        at -= 1
    return tokens[said.last - 1].text in {"much", "bad"} and at >= first and tokens[at].text in HURT | _OF_A_BODY


def goes_on_of_something_else(tokens: Sequence[Token], said: Said, first: int) -> bool:
    """Whether a feeling goes on with what was told of another thing: "the handle is thin and hard"."""
    if said.first - 1 <= first or tokens[said.first - 1].text != "and":
        return False
    begin = next((i + 1 for i in range(said.first - 2, first - 1, -1) if tokens[i].text in CLAUSE_ENDS), first)
    words = [token.text for token in tokens[begin : said.first - 1]]
    return any(
        owner in {"the", "my", "our", "this", "that", "his", "her"} and told in _COPULAS and thing not in _LIFTED
        for owner, thing, told in zip(words, words[1:], words[2:], strict=False)
    )


def _goes_up_elsewhere(tokens: Sequence[Token], said: Said, first: int, last: int) -> bool:
    """Whether "go up" is no wish for more weight: somebody else's, past, or up some stairs: "dared me to go up, so I did"."""
    words = [token.text for token in tokens[said.first : said.last]]
    if words[:2] not in (["go", "up"], ["move", "up"]) or set(words) & {"weight", "load", "bit"}:
        return False
    after = tokens[said.last] if said.last < last else None
    beyond = tokens[said.last + 1].text if said.last + 1 < last else ""
    climbed = words[-1] in {"the", "in"} or (after is not None and after.text in _CLIMBED)
    climbed = climbed or (after is not None and after.kind is Kind.NUMBER and beyond not in {"kg", "lb", ""})
    lead = [token.text for token in tokens[first : said.first]]
    if lead[-1:] == ["to"]:
        return climbed or len(lead) < len(("want", "to")) or lead[-2] not in _WISHED_UP - {"me", "us", "you", "and"}
    return climbed or bool(lead and lead[-1] not in _WISHED_UP | CLAUSE_ENDS | COURTESY)


def _has_gone_up(tokens: Sequence[Token], said: Said, first: int) -> bool:
    """Whether "up a size" tells what was changed for the set that is told, and asks for nothing: "up a size: 12kg, 10 reps"."""
    if tokens[said.first].text != "up":
        return False
    gone = said.first > first and tokens[said.first - 1].text in _GONE_UP
    leads = [token.kind for token in tokens[said.last : said.last + 2]] == [Kind.MARK, Kind.NUMBER]
    return gone or (leads and said.first == first)


def _asks_for_no_change(tokens: Sequence[Token], said: Said, first: int) -> bool:
    """Whether a change of the weight is what is not wanted."""
    lead = [token.text for token in tokens[max(first, said.first - 3) : said.first]]
    compared = {token.text for token in tokens[said.first : said.last]} & _COMPARING
    unneeded = lead[-1:] == ["no"] and tokens[said.first].text in {"need", "needs"}
    return bool(compared) and (unneeded or lead[-2:] == ["do", "not"] or lead == ["no", "need", "to"])


def _is_right(tokens: Sequence[Token], said: Said, first: int, last: int) -> bool:
    """Whether what felt good was the weight, and not the day, the minute, a place of the body, or nothing at all."""
    if is_of_oneself(tokens, said):
        return False  # "I felt good today"
    if said.first == first and leads_to_a_set(tokens, said, last):
        return False  # "felt strong so I went up to 15 kg"
    before = tokens[said.first - 1].text if said.first > first else ""
    after = tokens[said.last].text if said.last < last else ""
    if before in _TIMES_OF_LIFE:
        return False  # "today felt good"
    if tokens[said.last - 1].text == "on" and after in _ON_TIME:
        return False  # "washing machine finished bang on the beep"
    if before in {"rest", "else"} and tokens[said.first].text in _COPULAS - {"felt"}:
        return False  # "it was 6kg, the rest is right": of the record
    if before in {"not", "never", "no", "hardly"} or after in _PLACES_TO_BE:
        return False  # "this is not good for me", "it's nice here"
    beyond = tokens[said.last + 1].text if said.last + 1 < last else ""
    if after in {"until", "till"} or (after == "for" and beyond == "a"):
        return False  # "it was fine until the neighbours came", "about right for a monday"
    return not any(
        tokens[i].text in PLACES and tokens[i - 1].text not in {"each", "either", "both", "every", "per"}
        for i in range(first, said.first)
    )  # "my knee hurt last year but it's fine now"


def is_of_oneself(tokens: Sequence[Token], said: Said) -> bool:
    """Whether "felt good" tells how the writer feels, and nothing of the weight: "I felt good today"."""
    words = [token.text for token in tokens[max(0, said.first - 3) : said.last]]
    at = next((i for i, word in enumerate(words) if word in {"feel", "felt", "feeling"}), None)
    if said.meaning != "right" or at is None or {"right", "perfect", "comfortable", "manageable"} & set(words[at:]):
        return False
    lead = [word for word in words[:at] if word not in {"really", "just", "am", "still", "actually", "have", "been"}]
    return lead[-1:] == ["i"]


def leads_to_a_set(tokens: Sequence[Token], said: Said, last: int) -> bool:
    """Whether a feeling only tells why the set that follows was done: "felt good so I did 12"."""
    after = tokens[said.last].text if said.last < last else ""
    return after == "so" and any(token.kind is Kind.NUMBER for token in tokens[said.last : last])


def _wonders(tokens: Sequence[Token], said: Said, first: int) -> bool:
    """Whether a wish is led in by nothing but a polite wondering about it: "I was wondering if I could have a lighter one"."""
    lead = {token.text for token in tokens[first : said.first]}
    wished = {token.text for token in tokens[said.first : said.last]}
    return bool(wished & _WISHED and lead & {"wonder", "wondering", "wondered", "mind"} and (lead | wished) & {"if", "whether"})


def _is_said_by_others(tokens: Sequence[Token], said: Said, first: int) -> bool:
    """Whether somebody else finds it so: "my kid thinks they're too heavy"."""
    lead = [token.text for token in tokens[first : said.first]]
    return any(
        (one in GUARDS["people"] or one in {"he", "she", "buddy", "mate", "bro"}) and following in _FINDING
        for one, following in pairwise(lead)
    )


def judges_otherwise(tokens: Sequence[Token], said: Said) -> bool:
    """Whether what follows a feeling names something else: "easy to forget", "rough on my shoulder", "too light outside"."""
    words = [token.text for token in tokens[said.last : said.last + 4]]
    if words[:1] == ["to"] and tokens[said.last - 1].text in {"easy", "hard", "tough", "difficult", "struggle", "rough"}:
        return words[1:2] != [] and words[1] not in LIFTING
    end = next((i for i, word in enumerate(words) if word in CLAUSE_ENDS or not word.isalpha()), len(words))
    return bool(_ELSEWHERE & set(words[:end])) or (words[:1] == ["on"] and bool(set(PLACES) & set(words[:end])))


def _of_something_else(tokens: Sequence[Token], said: Said, first: int) -> bool:
    """Whether the feeling is about the traffic, the shoes or a knee, and not about the load."""
    lead = [token.text for token in tokens[max(first, said.first - 5) : said.first]]
    while lead and lead[-1] in _HOW_MUCH:
        lead.pop()
    after = tokens[said.last].text if said.last < len(tokens) else ""
    beyond = tokens[said.last + 1].text if said.last + 1 < len(tokens) else ""
    if after in _LIFE or (after in {"at", "in"} and beyond in _LIFE | {"the", "my"}) or judges_otherwise(tokens, said):
        return True  # "was heavy traffic", "easy day at work"
    if tokens[said.last - 1].text == "cake" and (after in _EATEN or set(lead) & _EATEN):
        return True  # "had a piece of cake", "a piece of cake fell on the mat"
    if lead[-1:] in (["a"], ["the"], ["my"]) and [t.text for t in tokens[said.first : said.last]] == ["lighter", "please"]:
        return True  # "got a lighter please"
    if lead[-1:] == ["the"] and tokens[said.last - 1].text in {"one", "ones"}:
        return True  # "the easy one is over"
    if lead and tokens[said.first].text in _WEIGHING:
        return lead[-1] not in _LIFTED | _POINTED  # "my schoolbag weighs a ton"
    told = tokens[said.first].text in _COPULAS
    if lead and lead[-1] in _COPULAS:
        lead.pop()
        told = True
    weighed = lead[-1:] == ["wait"] and _WEIGHTY & {token.text for token in tokens[said.first : said.last]}
    if weighed:
        return False  # dictated for "the weight is too heavy"
    if told and len(lead) > 1 and lead[-2] in {"the", "my", "our", "your"} and lead[-1] not in _LIFTED:
        return True  # "the film was too light"
    if told and len(lead) > 1 and lead[-2] in {"that", "this", "his", "her", "their"} and lead[-1] in _ELSEWHERE:
        return True  # "that film was heavy going"
    if lead and lead[-1].endswith("ly"):
        return False  # "frankly too heavy"
    if lead and lead[-1] in _LIFE:
        return True
    if lead[-2:] in (["next", "week"], ["next", "session"], ["next", "workout"]):
        return False  # "next week give me more weight"
    if tokens[said.first].text in _ASKING and lead[-1:] != [] and lead[-1] in PLACES:
        return False
    return bool(lead) and (lead[-1] in PLACES or (lead[-1] in ENGLISH and lead[-1] not in VOCABULARY))
