"""How far a side may stand from the number it belongs to: "left only so far: 11", "11 at 16kg, right only", "right not left"."""

from __future__ import annotations

from typing import TYPE_CHECKING

from core.reading.lexicon import AMOUNTS, COURTESY, GUARDS, listed
from core.reading.spans import CLAUSE_ENDS, SENTENCE_ENDS
from core.reading.token import Kind, Token

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from core.reading.phrases import Said

LIMBS = frozenset({"side", "arm", "leg", "hand", "foot"})
"""What is left or right of somebody who lifts."""

COUNTED_WITH = frozenset({"kg", "lb", "reps", "rep", "s", "seconds", "/"})
"""Words between a number and the side that follows it."""

_AFTER_SIDE = listed("words_quantities", "after_side")
_BESIDE_SIDE = frozenset({"did", "done", "do", "only", "just", "the", "my", "side", "arm", "leg", "that", "was", "this", "is"})
_MOST_AFTER_SIDE = 4
_TOWARDS = frozenset(
    {"the", "my", "on", "to", "for", "do", "doing", "did", "could", "i", "get", "got", "start", "started", "reach"}
)
"""Words that lead to a side which was not done: "no time to do the left arm"."""

_SPENT = listed("words_company", "spent") | {"timer", "clock", "chance", "puff", "grip"}
_GOT = frozenset({"got", "did", "managed"})
_CONJUNCTIONS = frozenset({"and", "but", "while", "whilst", "as", "because", "since", "so"})
_OF_BOTH = listed("words_company", "closed") | {
    "same",
    "equal",
    "equally",
    "even",
    "evenly",
    "identical",
    "complete",
    "completed",
    "finished",
    "each",
}
"""Words after "both sides" that still say of the set that it was done on both."""


_OF_THE_SET = listed("words_quantities", "of_the_set") | COURTESY | AMOUNTS["reps"] | LIMBS
_TELLING = {
    "mark-reserve",
    "mark-failure",
    "mark-effort",
    "mark-could",
    "mark-label",
    "mark-nought",
    "mark-held",
    "mark-same",
    "mark-each",
}
_ENDING = CLAUSE_ENDS | {"and", "as", "while", "when", "since", "with", "at", "@", "using"}


def is_remark(tokens: Sequence[Token], said: Said, marks: Mapping[int, Said]) -> bool:
    """Whether a side is only told of: "left side little weak", "right was proper grim", and not "left side only", "left arm 9"."""
    before = _text(tokens, said.first - 1)
    each = before in {"kg", "lb"} and {"each", "both", "per"} & {token.text for token in tokens[: said.first]}
    told_both = {"left", "right"} <= {token.text for token in tokens[: said.first]}
    if _is_number(tokens, said.first - 1) or (before in COUNTED_WITH and not (each or told_both) and not tokens[said.first].apart):
        return False
    if told_both and _is_talk(tokens, said, marks):
        return True  # "left 8, right 8. Left is weaker so I begin with left"
    if _is_left_undone(tokens, said) or _is_of_a_person(tokens, said):
        return True
    told = False
    begin = said.last
    if not said.first or tokens[said.first - 1].kind is Kind.MARK:
        begin = _past_the_other(tokens, begin)
    for at in range(begin, len(tokens)):
        token = tokens[at]
        if token.kind is Kind.MARK or token.apart or token.text in _ENDING:
            break
        if token.kind is not Kind.WORD or (at in marks and marks[at].meaning in _TELLING):
            return False
        told = told or token.text not in _OF_THE_SET
    return told


def _is_left_undone(tokens: Sequence[Token], said: Said) -> bool:
    """Whether there was nothing left for a side, after another one was counted: "ran out of time for the other arm"."""
    if is_beside_number(tokens, said.first, said.last):
        return False
    lead = said.first - 1
    while _text(tokens, lead) in _TOWARDS:
        lead -= 1
    undone = _text(tokens, lead) == "before" or (_text(tokens, lead + 1) in {"for", "to"} and _text(tokens, lead) in _SPENT)
    return undone and any(token.kind is Kind.NUMBER for token in tokens[:lead])


def _is_of_a_person(tokens: Sequence[Token], said: Said) -> bool:
    """Whether somebody else is named before a side, in a clause without numbers: "cat sat on my left arm"."""
    first = next((i + 1 for i in range(said.first - 1, -1, -1) if tokens[i].kind is not Kind.WORD or tokens[i + 1].apart), 0)
    last = next((i for i in range(said.last, len(tokens)) if tokens[i].kind is not Kind.WORD or tokens[i].apart), len(tokens))
    ends = _is_number(tokens, last) or (first > 0 and _is_number(tokens, first - 1))
    words = {tokens[i].text for i in range(first, said.first)}
    ends = ends or tokens[said.first].text == "for"  # "kid on my back for the right"
    return not ends and bool(words & GUARDS["people"]) and not words & {"i", "we", "me", "counted"}


def _past_the_other(tokens: Sequence[Token], at: int) -> int:
    """The index after "and right arm", where both are told of: "left arm and right arm both shot"."""
    if _text(tokens, at) not in {"and", "&"}:
        return at
    end = at + 1 + (_text(tokens, at + 1) in {"my", "the"})
    if _text(tokens, end) not in {"left", "right"}:
        return at
    return end + 1 + (_text(tokens, end + 1) in LIMBS)


def is_where(tokens: Sequence[Token], said: Said) -> bool:
    """Whether a side tells where something else is: "the shop is on the right", but not "that one was on the right"."""
    if _text(tokens, said.first) not in {"on", "in", "to"} or _text(tokens, said.first - 1) not in _STANDING:
        return False
    subject = _text(tokens, said.first - 2)
    return (
        subject.isalpha()
        and subject not in _OF_BOTH | _OF_THE_SET | COUNTED_WITH | _OF_A_RECORD
        and not _is_number(tokens, said.last)
    )


_STANDING = frozenset({"is", "are", "was", "were", "sits", "stands", "lives", "hangs", "parked"})
_OF_A_RECORD = frozenset(
    {"it", "that", "this", "they", "those", "these", "one", "ones", "set", "last", "first", "which", "all", "i"}
)


def is_of_others(tokens: Sequence[Token], index: int) -> bool:
    """Whether an "each" stands in a clause without numbers that tells of something else: "the kids had a biscuit each"."""
    first, last = index, index + 1
    while first and tokens[first - 1].kind is Kind.WORD and tokens[first].text not in _CONJUNCTIONS and not tokens[first].apart:
        first -= 1
    while last < len(tokens) and tokens[last].kind is Kind.WORD and not tokens[last].apart:
        last += 1
    if (first and _is_number(tokens, first - 1)) or (last < len(tokens) and _is_number(tokens, last)):
        return False
    return any(token.text not in _OF_BOTH | COURTESY | COUNTED_WITH | LIMBS | _OF_THE_SET for token in tokens[first:last])


def is_busy(tokens: Sequence[Token], said: Said) -> bool:
    """Whether "both arms" begins what is told of them, away from any number: "couldn't do any, both arms full of child"."""
    begins = said.first == 0 or tokens[said.first - 1].kind is Kind.MARK or tokens[said.first].apart
    since = next(
        (i + 1 for i in range(said.first - 1, -1, -1) if tokens[i].kind is not Kind.WORD or tokens[i].text in _CONJUNCTIONS), 0
    )
    if not _is_number(tokens, said.last) and GUARDS["people"] & {token.text for token in tokens[since : said.first]}:
        return True  # "with the kids on either side"
    if tokens[said.first].text == "a":
        return not (
            _is_number(tokens, said.first - 1) or _text(tokens, said.first - 1) in COUNTED_WITH | {"x"}
        )  # "an arm and a leg"
    if (
        not begins
        or tokens[said.first].text not in {"both", "each", "every"}
        or said.last >= len(tokens)
        or is_beside_number(tokens, said.first, said.last)
    ):
        return False
    following = tokens[said.last]
    plain = following.kind is not Kind.WORD or following.apart or following.text in _OF_BOTH | COURTESY | AMOUNTS["reps"]
    return not plain


def _is_talk(tokens: Sequence[Token], said: Said, marks: Mapping[int, Said]) -> bool:
    """Whether a whole sentence with a side in it has no number, and nothing that judges a set."""
    first = next((i + 1 for i in range(said.first - 1, -1, -1) if tokens[i].text in SENTENCE_ENDS), 0)
    last = next((i for i in range(said.last, len(tokens)) if tokens[i].text in SENTENCE_ENDS), len(tokens))
    inside = range(first, last)
    return not any(_is_number(tokens, i) or (i in marks and marks[i].meaning in _TELLING) for i in inside)


def leads(tokens: Sequence[Token], index: int, *, sides: bool) -> bool:
    """Whether a side at `index` has its number a few small words on: "left only so far: 11", "(left) got 13"."""
    if not (sides or {"left", "right"} <= {token.text for token in tokens}):
        return False
    if sides and [_text(tokens, index + 1), _text(tokens, index + 2)] == ["first", ","] and _text(tokens, index + 3) in _GOT:
        return _is_number(tokens, index + 4)  # "did the right first, got 10"
    if sides and _text(tokens, index + 1) == "," and _text(tokens, index + 2) in _GOT:
        return _is_number(tokens, index + 3)  # "then right, got 10"
    if _text(tokens, index + 1) in {"now", "then", "so"} and _text(tokens, index + 2) != "far":
        return False  # "right then, 12"
    ahead = _past_small_words(tokens, index + 1, index + 1 + _MOST_AFTER_SIDE)
    return _is_number(tokens, ahead)


def is_beside_number(tokens: Sequence[Token], first: int, last: int) -> bool:
    """Whether a number stands right before the words `[first, last)`, or a few small words after them."""
    ahead = _past_small_words(tokens, last, len(tokens))
    return _is_number(tokens, ahead) or _is_number(tokens, first - 1) or _text(tokens, first - 1) in COUNTED_WITH


def stands_alone(tokens: Sequence[Token], index: int) -> bool:
    """Whether a side at `index` stands with "only" or "just" and nothing else between marks: "11 at 16kg, left only"."""
    first, last = index, index + 1
    while first and tokens[first - 1].text in _BESIDE_SIDE:
        first -= 1
    while _text(tokens, last) in _BESIDE_SIDE:
        last += 1
    only = {"only", "just"} & {token.text for token in tokens[first:last]}
    closed = _text(tokens, index - 1) == "(" and _text(tokens, index + 1) == ")"
    if closed or (_text(tokens, index) == "left" and _text(tokens, index - 1) == "," and last == len(tokens) == index + 1):
        return any(token.kind is Kind.NUMBER for token in tokens[:index])  # "9 at 16kg (left)", "9 at 16kg, left"
    begun = first == 0 or tokens[first - 1].kind is Kind.MARK
    return bool(only) and begun and (last == len(tokens) or tokens[last].kind is Kind.MARK)


def contrasts(tokens: Sequence[Token], index: int) -> bool:
    """Whether one side is named for the other, and no number: "right not left"."""
    if any(token.kind is Kind.NUMBER for token in tokens):
        return False
    pair = {_text(tokens, index), _text(tokens, index + 2 if _text(tokens, index + 1) == "not" else index - 2)}
    return pair == {"left", "right"} and "not" in {_text(tokens, index - 1), _text(tokens, index + 1)}


def counted_left(tokens: Sequence[Token], said: Said) -> bool:
    """Whether "reps left" names a side, since the right is told as well: "10 reps left, 9 reps right"."""
    words = [token.text for token in tokens[said.first : said.last]]
    return words in (["reps", "left"], ["rep", "left"]) and any(
        token.text in {"right", "r"}
        and (_is_number(tokens, i - 1) or _is_number(tokens, i + 1) or _text(tokens, i - 1) in {"reps", "rep"})
        for i, token in enumerate(tokens)
    )


def names_both(tokens: Sequence[Token], index: int) -> bool:
    """Whether the sides are named together for two numbers before them: "10 & 9 (left & right)", "8, 7 left then right"."""
    opposite = {"left": {"right", "r"}, "l": {"right", "r"}, "right": {"left", "l"}, "r": {"left", "l"}}[_text(tokens, index)]
    first = index if _text(tokens, index + 2) in opposite else index - 2 if _text(tokens, index - 2) in opposite else None
    if first is None or _text(tokens, first + 1) not in {"and", "&", "/", "then", ",", "+"}:
        return False
    return sum(token.kind is Kind.NUMBER for token in tokens[:first]) > 1


def joined_sides(tokens: Sequence[Token], index: int) -> int | None:
    """The index after "left and right" at `index`, when one count is for both: "9 left and right, 16kg"; None otherwise."""
    opposite = {"left": {"right", "r"}, "l": {"right", "r"}, "right": {"left", "l"}, "r": {"left", "l"}}.get(_text(tokens, index))
    end = index + 1
    if opposite is None or _text(tokens, end) not in {"and", "&", "/", "+", "n"}:
        return None
    end += 1
    while _text(tokens, end) in {"my", "the", "on"}:
        end += 1
    counts = [i for i in range(len(tokens)) if _is_number(tokens, i) and _text(tokens, i + 1) not in {"kg", "lb", "s"}]
    beside = counts[:1] and (counts[0] < index or counts[0] - end <= _MOST_AFTER_SIDE)
    if _text(tokens, end) not in opposite or len(counts) != 1 or not beside or _is_number(tokens, end + 1):
        return None
    return end + 1


def is_same(tokens: Sequence[Token], index: int) -> bool:
    """Whether a side at `index` was as the other one, which has its number: "left 9, right same", "right the same"."""
    at = index + 1
    while _text(tokens, at) in {"side", "arm", "leg", "hand", "was", "is", "did", "got", "the", "also", ",", ":", "-"}:
        at += 1
    before = index - 1
    while _text(tokens, before) in {"on", "the", "my", "for", "with", "as"}:
        before -= 1
    same = {_text(tokens, at), _text(tokens, before)} & {"same", "ditto", "likewise", "identical"}
    return bool(same)


def _past_small_words(tokens: Sequence[Token], index: int, last: int) -> int:
    first = index
    while index < last and _text(tokens, index) in _AFTER_SIDE:
        index += 1
    comma = index > first and _text(tokens, index) == ","  # "left only so far, 11"
    return index + 1 if comma and index < last else index


def _text(tokens: Sequence[Token], index: int) -> str:
    return tokens[index].text if 0 <= index < len(tokens) else ""


def _is_number(tokens: Sequence[Token], index: int) -> bool:
    return 0 <= index < len(tokens) and tokens[index].kind is Kind.NUMBER
