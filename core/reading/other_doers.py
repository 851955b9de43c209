"""Whether it is told of somebody else, of another day, or only imagined."""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING

from core.reading.lexicon import COURTESY, GUARDS, listed
from core.reading.token import Kind, Token
from core.reading.whose import (
    DEGREE,
    addressed,
    is_object,
    is_watched,
    is_what_they_weigh,
    managed_something,
    went_on,
)

if TYPE_CHECKING:
    from collections.abc import Collection, Sequence

_DAYS_PAST = frozenset({"yesterday", "yesterdays", "monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday"})
_OTHER_DAYS = (
    "last night",
    "the other day",
    "the other night",
    "last week",
    "last year",
    "last month",
    "last summer",
    "last monday",
    "days ago",
    "a week ago",
    "hours ago",
)
_POINTED = tuple([one, verb] for one in ("that", "it", "this", "which", "those", "these") for verb in ("was", "were", "is", "be"))
_DATED = frozenset({"did", "do", "done", "had", "forgot", "sent", "send", "log", "logged", "report"})
_COMPARING = frozenset({"from", "than", "since", "like", "as", "after", "of", "per"})
_LIFTS = frozenset({"curl", "row", "squat", "bench", "deadlift", "press", "lift", "manage", "carry", "hold", "shift"})
_NAMED = listed("words_guards", "named")
_MEANWHILE = frozenset(
    {"while", "whilst", "when", "with", "before", "after", "until", "till", "as", "since", "and", "because", "for", "at"}
)
_DOING = listed("words_guards", "doing")
_SAYING = listed("words_guards", "saying")
_DID_THE = tuple([verb, "the"] for verb in ("did", "got", "hit", "made", "managed", "finished", "completed"))
_MOVES = frozenset({"exercise", "exercises", "move", "movement", "station", "circuit", "workout", "drill"})


def of_another_day(tokens: Sequence[Token], sentences: Sequence[tuple[int, int]], clauses: Sequence[tuple[int, int]]) -> bool:
    """Whether words beside the set say that it was not now: "but that was yesterday", "forgot to send it on monday"."""
    for first, last in (*clauses, *sentences):
        words = [token.text for token in tokens[first:last] if token.kind is Kind.WORD]
        line = f" {' '.join(words)} "
        dated = [word for word in words if word in _DAYS_PAST] or [time for time in _OTHER_DAYS if f" {time} " in line]
        if not dated or set(words) & _COMPARING:
            continue
        lead = line.partition(f" {dated[0]}")[0].split()
        while lead and lead[-1] in {"on", "from", "all", "just", "only", "back", "done", "actually", "the"}:
            lead.pop()
        if tuple(lead[:2]) in {tuple(one) for one in _POINTED} and set(lead) & _DATED:
            return True  # "that is what I did this time last year"
        if lead[-2:] in _POINTED or (lead[-1:] in (["it"], ["that"], ["this"], ["them"], ["those"]) and set(lead) & _DATED):
            return True
        if set(lead) <= COURTESY | {"but", "and", "oh", "was"}:
            after = line.partition(f" {dated[0]}")[2].split()
            if set(after) <= COURTESY | {"is", "set", "sets", "session", "was", "that", "this", "s", "though"}:
                return True
    return False


def is_of_others(tokens: Sequence[Token], inside: Sequence[int], told: int) -> bool:
    """Whether the clause tells what somebody else did, or said; what stands after token `told` is told on the side."""
    words = [tokens[i].text for i in inside]
    for at, word in enumerate(words):
        following = words[at + 1] if at + 1 < len(words) else ""
        beside = inside[at] > told and bool(_MEANWHILE & {tokens[i].text for i in inside if told < i < inside[at]})
        if beside or (inside[at] > told and following not in _DOING and following):
            continue
        if word in {"they", "they're"} and is_what_they_weigh(tokens, inside[at] + 1):
            continue
        if word in GUARDS["others"] and word not in {"you", "your"}:
            return True
        whose = words[max(0, at - 2) : at]
        named = word in _NAMED and (
            whose[-1:] in (["my"], ["the"], ["our"], ["a"], ["yer"], ["your"]) or whose[:1] in (["my"], ["our"])
        )
        acting = next((w for w in words[at + 1 :] if w not in DEGREE | {"is", "here", "there"}), "")
        if managed_something(words[at + 1 :]):
            continue  # "and my daughter only managed to get in the way"
        if named and acting in _DOING | _SAYING and not (word == "label" and acting == "says"):
            return True
        if word == "you" and words[max(0, at - 3) : at - 1] in _DID_THE and tokens[inside[at] - 1].kind is Kind.NUMBER:
            continue  # "did the 12 you asked for"
        if word == "you" and words[max(0, at - 2) : at] in (["not", "what"], ["did", "what"]):
            continue  # "went with 18kg, not what you suggested", "did what you asked: 8 at 15kg"
        if word in {"you", "coach", "trainer", "video"} and following in _SAYING | {"did"}:
            return True
        if word in GUARDS["people"] and not is_object(words, at):
            later = words[at + 1 :]
            if is_watched(later):
                continue  # "the cat watched me do 12"
            doing = next((n for n, w in enumerate(later) if w in _DOING or (w in _LIFTS and later[n - 1] in DEGREE)), None)
            if doing is not None and "i" not in later[:doing] and not went_on(later[:doing]):
                return True
            if "could" in later[:4] and not {"so", "and", "but", "i", "we"} & set(later[: later.index("could")]):
                return True  # "my grandad at 80 could still curl 15kg"
            if following in {"is", "turned", "turns"} and later[-1:] and tokens[inside[-1]].kind is Kind.NUMBER:
                return True  # "my son is 8"
    return False


def tells_otherwise(tokens: Sequence[Token]) -> bool:
    """Whether a message without numbers is about others, about another time, or denied ("same as my brother")."""
    texts = {token.text for token in tokens} - addressed(tokens)
    return any(texts & GUARDS[entry] for entry in ("people", "plan", "question")) or bool(texts & {"he", "she", "they", "?"})


def likens_no_set(tokens: Sequence[Token], first: int, last: int) -> bool:
    """Whether a "same" at `[first, last)` is asked about, or is a move and no set: "same again?", "not the same exercise again"."""
    before = [token.text for token in tokens[max(first - 2, 0) : first]]
    named = {token.text for token in tokens[first : last + 1]} & _MOVES
    asked = last < len(tokens) and tokens[last].text == "?"
    return bool(named) or asked or bool(set(before) & {"not", "never"}) or before in (["is", "it"], ["do", "i"])


def tells_of_others(tokens: Sequence[Token], first: int, last: int, free: Collection[int]) -> bool:
    """Whether a whole sentence is about somebody else ("my neighbour, who is eighty, did 12 at 3 kg") or imagined ("if I had")."""
    words = [tokens[i].text for i in range(first, last) if i not in free]
    if ("even", "though") in pairwise(words) or _imagined(tokens, first, last, free):
        return True
    for at, word in enumerate(words):
        if word in GUARDS["people"] and at and words[at - 1] in {"my", "the", "our"} and not is_object(words, at):
            later = words[at + 1 :]
            if managed_something(later):
                continue
            doing = next((n for n, w in enumerate(later) if w in {"did", "does", "managed", "lifts", "lifted"}), None)
            if doing is not None and "i" not in later[:doing]:
                return True
    return False


def _imagined(tokens: Sequence[Token], first: int, last: int, free: Collection[int]) -> bool:
    """Whether "if I" stands before the first number of a sentence."""
    number = next((i for i in range(first, last) if tokens[i].kind is Kind.NUMBER), first)
    ifs = [i for i in range(first, number) if tokens[i].text == "if" and i not in free]
    return any(tokens[i + 1].text == "i" for i in ifs) or (bool(ifs) and tokens[number - 1].text == "then")
