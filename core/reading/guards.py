"""When a number is not a set: questions, plans, doubts, other people's numbers, other things that are counted.

A guard never decides what a number means; it only keeps it from becoming a record. Asking costs a second, a wrong record more.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from core.reading.lexicon import ENGLISH, GUARDS, VOCABULARY
from core.reading.tokens import Kind, Token

if TYPE_CHECKING:
    from collections.abc import Collection, Sequence

_FILLED_BY_STRANGERS = 0.5
_MOST_STRANGERS = 4
_HEDGE_REACH = 3
_CODE_MARKS = frozenset("{}<>\\=^~")
_DOING = frozenset("did does do got gets get managed hit made makes lifts lifted can uses used has had done does's".split())
_SAYING = frozenset("said says told recommended suggested want wants wanted asked".split())
_ASKING_FIRST = frozenset("is are am does should shall would can could may might do which how what why when".split())
_ASKS = (
    "should i", "shall i", "can i", "could i", "do i", "how many", "how much", "what if", "may i", "want to", "wanted to", "need to",
    "trying to", "try", "going to", "going for", "next time", "next round", "next set", "lets do", "meant to", "supposed to", "at least",
    "at most", "less than", "more than", "not sure", "even though", "used to", "last time", "last week", "last workout", "last session",
    "up to", "or so", "lost count", "couple of", "a few", "instead of", "what about", "how about", "was it", "would be", "ready for",
    "go for", "tried to", "hoping for", "as if", "in theory", "my max", "have to", "had to do", "was going", "not able",
)  # fmt: skip
_INJECTED = (
    "ignore all", "ignore the", "ignore your", "ignore any", "ignore what", "ignore everything", "ignore previous", "system :", "assistant :",
    "you must", "previous instructions", "you are now", "new rule", "new rules", "act as", "from now on you", "forget your", "forget all",
    "as an", "developer mode", "user :", "coach :", "for every", "all trainees", "everybody", "everyone's", "delete all", "all records",
    "drop table", "other trainees", "the database", "your instructions", "your prompt", "your rules", "every trainee",
)  # fmt: skip


def gives_orders(tokens: Sequence[Token]) -> bool:
    """Whether the text tries to order the assistant about, or is code: nothing in it is a record."""
    words = [token.text for token in tokens]
    orders = sum(word in GUARDS["orders"] for word in words)
    marks = sum(word in _CODE_MARKS or word == ":reversed:" for word in words)
    line = " ".join(words)
    return orders > 1 or marks > 1 or "sudo" in words or any(order in line for order in _INJECTED)


def keeps_back(
    tokens: Sequence[Token], first: int, last: int, free: Collection[int], soft: Collection[int], *, strong: bool
) -> bool:
    """Whether the numbers in tokens `[first, last)`, one clause, must not become a record.

    `free` are the tokens that set phrases explain; `soft` the numbers that are reserve or effort, about which a doubt does no
    harm; `strong` is true when the numbers are said in full (reps and a unit), so that unknown words around them do little.
    """
    inside = [i for i in range(first, last) if i not in free]
    if any(tokens[i].kind in {Kind.ODD, Kind.CLOCK} for i in inside):
        return True
    numbers = [i for i in inside if tokens[i].kind is Kind.NUMBER]
    if all(i in soft for i in numbers):
        return False
    texts = {tokens[i].text for i in inside}
    if any(texts & GUARDS[entry] for entry in ("negation", "plan", "other_time", "measure", "question", "foreign")):
        return True
    if any(tokens[i].text in GUARDS["hedge"] and not _bound(tokens, i, first, last) & set(soft) for i in inside):
        return True
    if any(_vague(tokens, i, first, last) for i in numbers if i not in soft):
        return True
    line = f" {' '.join(tokens[i].text for i in inside)} "
    if any(f" {ask} " in line for ask in _ASKS) or (inside and tokens[inside[0]].text in _ASKING_FIRST and inside[0] == first):
        return True
    return _of_others(tokens, inside) or _strangers(tokens, inside, strong=strong)


def _bound(tokens: Sequence[Token], index: int, first: int, last: int) -> set[int]:
    """The number that a word of doubt at `index` is about: the next one near, else the one before."""
    ahead = next((i for i in range(index + 1, min(index + 1 + _HEDGE_REACH, last)) if tokens[i].kind is Kind.NUMBER), None)
    behind = next((i for i in range(index - 1, first - 1, -1) if tokens[i].kind is Kind.NUMBER), None)
    return {ahead if ahead is not None else behind} - {None}  # type: ignore[return-value]


def _vague(tokens: Sequence[Token], index: int, first: int, last: int) -> bool:
    """Whether the number at `index` is only about so much, or counts something unknown."""
    before = tokens[index - 1].text if index > first else ""
    after = tokens[index + 1] if index + 1 < last else None
    if before in {"like", "some", "~", "<", ">", "minus", "say"}:
        return True
    if after is None:
        return False
    if after.text in {"ish", "odd", "something", "plus", "+"}:
        return not (after.text in {"+", "plus"} and index + 2 < last and tokens[index + 2].kind is Kind.NUMBER)
    return after.kind is Kind.WORD and after.text not in VOCABULARY


def _of_others(tokens: Sequence[Token], inside: Sequence[int]) -> bool:
    """Whether the clause tells what somebody else did, or said."""
    words = [tokens[i].text for i in inside]
    for at, word in enumerate(words):
        following = words[at + 1] if at + 1 < len(words) else ""
        if word in GUARDS["others"] and word not in {"you", "your"}:
            return True
        if word in {"you", "coach", "trainer", "video"} and following in _SAYING | {"did"}:
            return True
        if word in GUARDS["people"]:
            later = words[at + 1 :]
            doing = next((n for n, w in enumerate(later) if w in _DOING), None)
            if doing is not None and "i" not in later[:doing]:
                return True
    return False


def tells_of_others(tokens: Sequence[Token], first: int, last: int, free: Collection[int]) -> bool:
    """Whether a whole sentence is about somebody else ("my neighbour, who is eighty, did 12 at 3 kg")."""
    words = [tokens[i].text for i in range(first, last) if i not in free]
    for at, word in enumerate(words):
        if word in GUARDS["people"] and at and words[at - 1] in {"my", "the", "our"}:
            later = words[at + 1 :]
            doing = next((n for n, w in enumerate(later) if w in {"did", "does", "managed", "lifts", "lifted"}), None)
            if doing is not None and "i" not in later[:doing]:
                return True
    return False


def _strangers(tokens: Sequence[Token], inside: Sequence[int], *, strong: bool) -> bool:
    """Whether too many words are unknown for the numbers to be trusted."""
    words = [tokens[i].text for i in inside if tokens[i].kind is Kind.WORD]
    if not strong:
        return any(word not in VOCABULARY for word in words)
    strangers = sum(word not in VOCABULARY and word not in ENGLISH for word in words)
    return strangers > _MOST_STRANGERS or strangers > _FILLED_BY_STRANGERS * (len(words) + 1)
