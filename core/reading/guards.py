"""When a number is not a set: questions, plans, doubts, other people's numbers, other things that are counted.

A guard never decides what a number means; it only keeps it from becoming a record. Asking costs a second, a wrong record more.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from core.reading.lexicon import GUARDS, VOCABULARY
from core.reading.tokens import Kind, Token

if TYPE_CHECKING:
    from collections.abc import Collection, Sequence

_STRANGERS_IN_CLAUSE = 2
_FILLED_BY_STRANGERS = 0.5
_HEDGED_DIRECTLY = {"like", "say", "some", "almost", "nearly", "over", "under"}
_VAGUE_AFTER = {"ish", "+", "something", "odd", "-ish", "or", "max", "min", "plus"}
_HARMLESS = {
    "could", "would", "want", "need", "meant", "going", "may", "trying", "try", "think", "thought", "like", "over", "under", "some", "several",
    "between", "least", "most", "might", "next", "when", "how", "what", "which", "why", "couple", "few", "wanted", "usual", "sure",
    "either", "less", "than", "almost", "nearly", "most", "fat", "target", "goal", "supposed", "once", "used",
}  # fmt: skip
_SPEAKS_OF_OTHERS = {"he", "she", "they", "you", "your", "we", "his", "her", "their"}
_DOING = {
    "did",
    "does",
    "do",
    "got",
    "gets",
    "managed",
    "hit",
    "made",
    "lifts",
    "lifted",
    "can",
    "uses",
    "used",
    "has",
    "had",
    "says",
    "said",
    "wants",
    "did",
    "done",
    "is",
    "was",
    "does",
    "told",
    "recommended",
    "suggested",
}


def gives_orders(tokens: Sequence[Token]) -> bool:
    """Whether the text tries to order the assistant about, or is code: nothing in it is a record."""
    words = [token.text for token in tokens]
    orders = sum(word in GUARDS["orders"] for word in words)
    marks = sum(word in {"{", "}", "<", ">", "\\", "[", "]", "=", "_", "^"} for word in words)
    line = " ".join(words)
    return (
        orders >= 2
        or marks >= 2
        or (
            orders == 1
            and any(
                w in line
                for w in (
                    "ignore all",
                    "ignore the",
                    "ignore your",
                    "ignore any",
                    "ignore what",
                    "ignore everything",
                    "system :",
                    "assistant :",
                    "sudo",
                    "drop table",
                    "jailbreak",
                    "you must",
                    "previous instructions",
                )
            )
        )
    )


def keeps_back(
    tokens: Sequence[Token], first: int, last: int, free: Collection[int], *, strong: bool
) -> bool:
    """Whether the numbers in tokens `[first, last)`, one clause, must not become a record.

    `free` are the tokens that set phrases explain; `strong` is true when the numbers are said in full (reps and a unit), so
    that a few unknown words around them do no harm.
    """
    words = [tokens[i] for i in range(first, last) if i not in free]
    texts = {token.text for token in words}
    for entry in ("negation", "hedge", "plan", "other_time", "measure", "question"):
        if texts & (GUARDS[entry] - _HARMLESS):
            return True
    if any(token.kind in {Kind.ODD, Kind.CLOCK} for token in words):
        return True
    for i in range(first, last):
        if tokens[i].kind is Kind.NUMBER and i not in free and _vague(tokens, i, first, last):
            return True
    if _future_or_question(tokens, first, last, free):
        return True
    if _of_others(tokens, first, last, free):
        return True
    return _strangers(tokens, first, last, free, strong=strong)


def _vague(tokens: Sequence[Token], index: int, first: int, last: int) -> bool:
    """Whether the number at `index` is only about so much, or counts something unknown."""
    before = tokens[index - 1].text if index > first else ""
    after = tokens[index + 1] if index + 1 < last else None
    if before in _HEDGED_DIRECTLY or before in {"~", "<", ">", "minus"}:
        return True
    if after is None:
        return False
    if after.text in {"ish", "odd", "something", "-ish"} or (
        after.text == "+" and not (index + 2 < last and tokens[index + 2].kind is Kind.NUMBER)
    ):
        return True
    if (
        after.text == "-"
        and after.glued
        and index + 2 < last
        and tokens[index + 2].kind is Kind.NUMBER
        and tokens[index + 2].glued
    ):
        return tokens[index + 3].text not in {"kg", "lb"} if index + 3 < last else True
    return after.kind is Kind.WORD and after.text not in VOCABULARY


def _future_or_question(tokens: Sequence[Token], first: int, last: int, free: Collection[int]) -> bool:
    words = [tokens[i].text for i in range(first, last) if i not in free]
    line = f" {' '.join(words)} "
    asks = (
        " should i ",
        " shall i ",
        " can i ",
        " could i ",
        " do i ",
        " was it ",
        " is it ",
        " did i ",
        " how many ",
        " how much ",
        " would i ",
        " what ",
        " how ",
        " which ",
        " why ",
        " when ",
        " what if ",
        " may i ",
        " am i ",
        " would ",
        " want ",
        " wanted ",
        " need ",
        " trying ",
        " try ",
        " might ",
        " could ",
        " going to ",
        " next time ",
        " next round ",
        " next set ",
        " next week ",
        " lets ",
        " target ",
        " goal ",
        " meant to ",
        " supposed to ",
        " between ",
        " at least ",
        " at most ",
        " less than ",
        " more than ",
        " not sure ",
        " unsure ",
        " i think ",
        " think ",
        " think i ",
        " couple of ",
        " a few ",
        " used to ",
        " once ",
        " last time ",
        " may ",
    )
    return any(ask in line for ask in asks)


def _of_others(tokens: Sequence[Token], first: int, last: int, free: Collection[int]) -> bool:
    """Whether the clause tells what somebody else did."""
    for i in range(first, last):
        if i in free:
            continue
        word = tokens[i].text
        if word in GUARDS["others"]:
            following = tokens[i + 1].text if i + 1 < last else ""
            if word in _SPEAKS_OF_OTHERS - {"you", "we", "your"} or following in _DOING or following == "'":
                return True
    return False


def _strangers(
    tokens: Sequence[Token], first: int, last: int, free: Collection[int], *, strong: bool
) -> bool:
    """Whether too many words are unknown for the numbers to be trusted."""
    words = [tokens[i] for i in range(first, last) if i not in free and tokens[i].kind is Kind.WORD]
    strangers = sum(token.text not in VOCABULARY for token in words)
    if not strangers:
        return False
    if not strong:
        return True
    return strangers > _STRANGERS_IN_CLAUSE or strangers > _FILLED_BY_STRANGERS * (len(words) + 1)
