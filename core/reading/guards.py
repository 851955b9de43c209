"""When a number is not a set: questions, plans, doubts, other people's numbers, other things that are counted.

A guard never decides what a number means; it only keeps it from becoming a record. Asking costs a second, a wrong record more.
"""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING

from core.reading.lexicon import AMOUNTS, COURTESY, ENGLISH, EXERCISES, GUARDS, PLAIN, VOCABULARY, listed, sayings
from core.reading.tokens import Kind, Token

if TYPE_CHECKING:
    from collections.abc import Collection, Sequence

_FILLED_BY_STRANGERS = 0.5
_MOST_STRANGERS = 6
_BESIDE_AFTER = 4
_TOTALS = frozenset({"total", "altogether", "combined", "target", "hours"})
_COMPARING = frozenset({"from", "than", "since", "like", "as", "after", "of", "per"})
_ALSO_PLACES = frozenset({"over", "under", "about", "around", "between", "almost", "nearly"})
_LEADS_A_COUNT = (
    listed("structure", "words")
    | PLAIN
    | COURTESY
    | EXERCISES
    | AMOUNTS["reps"]
    | AMOUNTS["sets"]
    | listed("words_guards", "leads_a_count")
)
_REQUESTING = frozenset({"could", "can", "would", "will"})
_NOTING = listed("words_guards", "noting")
_NAMED = listed("words_guards", "named")
_MEANWHILE = frozenset(
    {"while", "whilst", "when", "with", "before", "after", "until", "till", "as", "since", "and", "because", "for", "at"}
)
_DONE_BEFORE = listed("words_guards", "done_before")
_GOES_ON = listed("words_guards", "goes_on")
_HEDGE_REACH = 3
_CODE_MARKS = frozenset("{}<>\\^~")
_DOING = listed("words_guards", "doing")
_SAYING = listed("words_guards", "saying")
_ASKING_FIRST = listed("words_guards", "asking_first")
_ASKS = sayings("asks")
_OTHER_TIMES = sayings("other_times")
_NUMBERED_THINGS = listed("words_guards", "numbered_things")
_SUBSTANCE = listed("guards", "substance")
_INJECTED = sayings("injected")


def gives_orders(tokens: Sequence[Token]) -> bool:
    """Whether the text tries to order the assistant about, or is code: nothing in it is a record."""
    words = [token.text for token in tokens]
    orders = sum(word in GUARDS["orders"] for word in words)
    marks = sum(word in _CODE_MARKS or word == ":reversed:" for word in words)
    line = " ".join(words)
    return orders > 1 or marks > 1 or "sudo" in words or any(order in line for order in _INJECTED)


def keeps_back(
    tokens: Sequence[Token],
    first: int,
    last: int,
    free: Collection[int],
    soft: Collection[int],
    *,
    strong: bool,
) -> bool:
    """Whether the numbers in tokens `[first, last)`, one clause, must not become a record.

    `free` are the tokens that set phrases explain; `soft` the numbers that are reserve or effort, about which a doubt does no
    harm; `strong` is true when the numbers are said in full (reps and a unit), so that unknown words around them do little.
    """
    inside = [i for i in range(first, last) if i not in free]
    if not strong and any(
        tokens[i].text == "minutes" and tokens[i - 1].text in {"a", "over", "under"} and i > first for i in inside
    ):
        return bool({tokens[i].text for i in inside} & GUARDS["hedge"])
    if any(tokens[i].kind in {Kind.ODD, Kind.CLOCK} for i in inside):
        return True
    numbers = [i for i in inside if tokens[i].kind is Kind.NUMBER]
    if all(i in soft for i in numbers):
        return False
    texts = {tokens[i].text for i in inside}
    core = [i for i in numbers if i not in soft]
    strong = strong or _plainly_done(tokens, core, first, last)
    leading = {tokens[i].text for i in inside if not strong or i < core[-1]}
    if texts & (GUARDS["foreign"] | _TOTALS) or any(_counts_otherwise(tokens, i, numbers, strong=strong) for i in inside):
        return True
    if leading & (GUARDS["negation"] | GUARDS["plan"] | GUARDS["question"]) or any(
        tokens[i].text == "tomorrow" and (not strong or i <= core[-1] + _BESIDE_AFTER) for i in inside
    ):
        return True
    beyond = core[-1] + 1 if strong else last
    if any(
        tokens[i].text in GUARDS["hedge"]
        and not _bound(tokens, i, first, last) & set(soft)
        and not (beyond < i < last - 1 and tokens[i].text in _ALSO_PLACES)
        for i in inside
    ):
        return True
    if any(_vague(tokens, i, first, last) for i in numbers if i not in soft):
        return True
    line = f" {' '.join(tokens[i].text for i in inside if not strong or i <= core[-1] + 1)} "
    if any(f" {time} " in f" {' '.join(tokens[i].text for i in inside)} " for time in _OTHER_TIMES):
        return True
    if any(f" {ask} " in line for ask in _ASKS) or (inside and tokens[inside[0]].text in _ASKING_FIRST and inside[0] == first):
        return True
    return _of_others(tokens, inside, core[-1] if strong else last) or _strangers(tokens, inside, strong=strong)


def polite_request(tokens: Sequence[Token], first: int, last: int) -> set[int]:
    """The first words of "could you please note 12 at 8 kg": an order said politely, not a question; empty when it is none."""
    at = first
    while at < last and tokens[at].text in COURTESY:
        at += 1
    asked = at + 1 < last and tokens[at].text in _REQUESTING and tokens[at + 1].text in {"you", "u"}
    offered = at + 1 < last and tokens[at].text in {"may", "can", "could", "might"} and tokens[at + 1].text == "i"
    if asked or offered:
        end = at + 2
        while end < last and tokens[end].text in {"please", "kindly", "just", "be", "so", "good", "kind", "as", "to", "now"}:
            end += 1
        if end < last and tokens[end].text in _NOTING:
            return set(range(first, end + 1))
    return set()


def _plainly_done(tokens: Sequence[Token], core: Sequence[int], first: int, last: int) -> bool:
    """Whether a lone number is told as a set done, so that what is said around it does little: "did 12 in the garden", "9 cos"."""
    if len(core) != 1:
        return False
    before = tokens[core[0] - 1].text if core[0] > first else ""
    after = tokens[core[0] + 1].text if core[0] + 1 < last else ""
    return (before in _DONE_BEFORE or core[0] == first) and after in _GOES_ON


def _counts_otherwise(tokens: Sequence[Token], index: int, numbers: Sequence[int], *, strong: bool) -> bool:
    """Whether the word at `index` makes a number something else than a set: a distance, an age, a time, another day's."""
    word = tokens[index].text
    if word in GUARDS["measure"]:
        return not strong or any(index - 1 == i or index < i < index + _BESIDE_AFTER for i in numbers)
    if word in GUARDS["other_time"]:
        compared = index > 0 and tokens[index - 1].text in _COMPARING
        return not (strong and compared)
    return False


def _bound(tokens: Sequence[Token], index: int, first: int, last: int) -> set[int]:
    """The number that a word of doubt at `index` is about: the next one near, else the one before."""
    ahead = next(
        (i for i in range(index + 1, min(index + 1 + _HEDGE_REACH, last)) if tokens[i].kind is Kind.NUMBER),
        None,
    )
    behind = next((i for i in range(index - 1, first - 1, -1) if tokens[i].kind is Kind.NUMBER), None)
    return {ahead if ahead is not None else behind} - {None}  # type: ignore[return-value]


def _vague(tokens: Sequence[Token], index: int, first: int, last: int) -> bool:
    """Whether the number at `index` is only about so much, or counts something unknown."""
    before = tokens[index - 1].text if index > first else ""
    after = tokens[index + 1] if index + 1 < last else None
    if before in {"like", "some", "~", "<", ">", "minus"} or (before == "say" and index - first <= 1):
        return True
    if before in _NUMBERED_THINGS or (before == "oh" and tokens[index].worded):
        return True
    if after is None:
        return False
    given = [token.text for token in tokens[index + 1 : index + 4]]
    if given[:2] == ["for", "my"] and given[2:] and given[2] in GUARDS["people"]:
        return True
    if after.text in {"past", "noon", "pm", "am"} or [token.text for token in tokens[index + 1 : index + 3]] in (
        ["of", "us"],
        ["of", "you"],
    ):
        return True
    if (after.text == "k" and after.glued) or [token.text for token in tokens[index + 1 : index + 3]] == ["or", "so"]:
        return True
    if after.text in {"ish", "odd", "something", "plus", "+"}:
        return not (after.text in {"+", "plus"} and index + 2 < last and tokens[index + 2].kind is Kind.NUMBER)
    return (
        after.kind is Kind.WORD
        and after.text not in _GOES_ON
        and (after.text not in VOCABULARY or after.text in {"am", "pm"} or after.text in GUARDS["people"])
    )


def _of_others(tokens: Sequence[Token], inside: Sequence[int], told: int) -> bool:
    """Whether the clause tells what somebody else did, or said; what stands after token `told` is told on the side."""
    words = [tokens[i].text for i in inside]
    for at, word in enumerate(words):
        following = words[at + 1] if at + 1 < len(words) else ""
        beside = inside[at] > told and bool(_MEANWHILE & {tokens[i].text for i in inside if told < i < inside[at]})
        if beside or (inside[at] > told and following not in _DOING and following):
            continue
        if word in GUARDS["others"] and word not in {"you", "your"}:
            return True
        named = at > 0 and words[at - 1] in {"my", "the", "our", "a"} and word in _NAMED
        if named and following in _DOING | _SAYING:
            return True
        if word in {"you", "coach", "trainer", "video"} and following in _SAYING | {"did"}:
            return True
        if word in GUARDS["people"]:
            later = words[at + 1 :]
            doing = next((n for n, w in enumerate(later) if w in _DOING), None)
            if doing is not None and "i" not in later[:doing]:
                return True
            if following in {"is", "turned", "turns"} and later[-1:] and tokens[inside[-1]].kind is Kind.NUMBER:
                return True  # "my son is 8"
    return False


def tells_otherwise(tokens: Sequence[Token]) -> bool:
    """Whether a message without numbers is about others, about another time, or denied ("same as my brother")."""
    texts = {token.text for token in tokens}
    return any(texts & GUARDS[entry] for entry in ("people", "plan", "question")) or bool(texts & {"he", "she", "they", "?"})


def tells_of_others(tokens: Sequence[Token], first: int, last: int, free: Collection[int]) -> bool:
    """Whether a whole sentence is about somebody else ("my neighbour, who is eighty, did 12 at 3 kg")."""
    words = [tokens[i].text for i in range(first, last) if i not in free]
    if ("even", "though") in pairwise(words):
        return True
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
    if not strong and (set(words) & _SUBSTANCE or "my weight" in " ".join(words)):
        return True
    if not strong:
        known = [word for word in words if word in VOCABULARY]
        before = [tokens[i - 1] for i in inside if tokens[i].kind is Kind.NUMBER and i - 1 in inside]
        unknown_verb = any(token.kind is Kind.WORD and token.text not in _LEADS_A_COUNT for token in before)
        return (
            unknown_verb
            or any(word not in VOCABULARY and word not in ENGLISH for word in words)
            or len(words) - len(known) > len(known)
        )
    strangers = sum(word not in VOCABULARY and word not in ENGLISH for word in words)
    return strangers > _MOST_STRANGERS or strangers > _FILLED_BY_STRANGERS * (len(words) + 1)
