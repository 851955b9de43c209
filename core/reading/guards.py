"""When a number is not a set: questions, plans, doubts, other people's numbers, other things that are counted.

A guard never decides what a number means; it only keeps it from becoming a record. Asking costs a second, a wrong record more.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import TYPE_CHECKING

from core.reading.company import is_count, is_told_of_others
from core.reading.doubtful_numbers import (
    TOTALS,
    bound_to,
    counts_otherwise,
    is_affirmed,
    is_of_place,
    is_told_in_all,
    is_vague,
    totals_sets,
)
from core.reading.lexicon import COURTESY, ENGLISH, GUARDS, VOCABULARY, Sayings, listed
from core.reading.other_doers import is_of_others
from core.reading.other_figures import is_code
from core.reading.spelling import is_english
from core.reading.token import Kind, Token
from core.reading.whose import (
    is_intended,
    is_ordered,
    leads_with_someone,
    only_imagined,
    reached_up,
    rejects_the_suggested,
    tells_of_a_first,
    tells_what_they_weigh,
    tried,
)

if TYPE_CHECKING:
    from collections.abc import Collection, Sequence

_FILLED_BY_STRANGERS = 0.5
_MOST_STRANGERS = 6
_BESIDE_AFTER = 4
_EXCUSING = frozenset({"i", "am", "so", "very", "terribly", "awfully", "sorry", "apologies", "my", ",", "oops", "forgive", "me"})
_JUDGED = [[unit, verb] for unit in ("kg", "lb") for verb in ("is", "was")]
_ALSO_PLACES = frozenset({"over", "under", "about", "around", "between", "almost", "nearly"})
_REQUESTING = frozenset({"could", "can", "would", "will"})
_NOTING = listed("words_guards", "noting")
_WISHING = frozenset({"wish", "want", "like", "would", "beg", "desire", "am", "pleased", "happy", "proud", "glad"})
_CODE_MARKS = frozenset("{}<>\\^~")
_ASKING_FIRST = listed("words_guards", "asking_first")
_APPROVED = frozenset({"ok", "okay", "alright", "fine", "enough", "possible", "safe", "sufficient", "adequate", "correct", "right"})
_TELL_ME = frozenset({"tell", "confirm", "advise", "say", "inform"})
_BARELY = frozenset({"only", "just", "barely", "hardly", "not"})
_OWN = frozenset({"i", "i'd", "we", "my", "me", "for", "the", "a", "just", "already", "really", "think"})
_ASKS = Sayings("asks")
_ABLE_TO_DO = re.compile(r" (?:can|could) (?:do|manage|hit|make|get) ")
_TURNED_OUT = frozenset({"turned", "came", "ended", "worked", "meant", "gave", "proved", "happened"})
_OTHER_TIMES = Sayings("other_times")
_INJECTED = Sayings("injected")
_LATEST = frozenset({"last", "latest", "previous"})
_RECORDS = frozenset({"one", "set", "entry", "log", "record", "message", "text", "number", "reps", ",", ".", "please"})


@dataclass(frozen=True, slots=True)
class Told:
    """What is known of the tokens of a message before it is asked whether its numbers count.

    `soft` are the numbers that are reserve or effort, about which a doubt does no harm; `bare` those that nothing marks; `spoken`
    the words of set phrases that mean nothing by themselves, such as "that was".
    """

    soft: frozenset[int]
    bare: frozenset[int]
    spoken: frozenset[int]


def gives_orders(tokens: Sequence[Token]) -> bool:
    """Whether the text tries to order the assistant about, or is code: nothing in it is a record."""
    words = [token.text for token in tokens]
    orders = sum(word in GUARDS["orders"] and not _leads_on(tokens, at) for at, word in enumerate(words))
    marks = sum((word in _CODE_MARKS and not _leads_on(tokens, at)) or word == ":reversed:" for at, word in enumerate(words))
    line = f" {' '.join(words)} "
    injected = [saying for saying in _INJECTED.within(line) if saying != "ignore the" or not _ignores_a_record(words)]
    return orders > 1 or marks > 1 or "sudo" in words or bool(injected) or is_code(tokens)


def _leads_on(tokens: Sequence[Token], at: int) -> bool:
    """Whether an arrow or "drop" leads from one set to the next: "8x20kg -> 6x16kg", "8 @ 20kg drop 6 @ 16kg"."""
    arrow = tokens[at].text == ">" and tokens[at - 1].text in {"-", "="}
    return (arrow or tokens[at].text == "drop") and at + 1 < len(tokens) and tokens[at + 1].kind is Kind.NUMBER and at > 1


def _ignores_a_record(words: Sequence[str]) -> bool:
    """Whether "ignore the" goes on with the last record: "ignore the last message, wrong chat"."""
    at = next(i for i in range(len(words)) if tuple(words[i : i + 2]) == ("ignore", "the"))
    return words[at + 2 : at + 3] != [] and words[at + 2] in _LATEST and set(words[at + 3 : at + 4]) <= _RECORDS


def keeps_back(
    tokens: Sequence[Token],
    first: int,
    last: int,
    free: Collection[int],
    told: Told,
    *,
    strong: bool,
) -> bool:
    """Whether the numbers in tokens `[first, last)`, one clause, must not become a record.

    `free` are the tokens that set phrases explain; `strong` is true when the numbers are said in full (reps and a unit), so that
    unknown words around them do little.
    """
    soft = told.soft
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
    if (
        _is_foreign(tokens, inside)
        or any(tokens[i].text in TOTALS and not (totals_sets(tokens, i) or is_told_in_all(tokens, i, numbers)) for i in inside)
        or any(counts_otherwise(tokens, i, numbers, strong=strong) for i in inside)
    ):
        return True
    if any(is_vague(tokens, i, first, strong=strong, bare=i in told.bare and i - 1 not in free) for i in core):
        return True
    parting = set(free) - told.spoken
    if not strong and not all(is_count(tokens, i, first, last, parting) for i in core if i in told.bare):
        return True
    begin = max((i + 1 for i in soft if first <= i < core[0]), default=first)  # "rpe 8 reps 10": nobody reps
    ahead = [tokens[i].text for i in range(begin, core[0]) if i not in parting]
    if ahead[:1] == ["no"]:
        ahead = ahead[2:]  # "no worries, got 10"
    meant = is_intended([tokens[i].text for i in range(first, core[0])])
    others = is_told_of_others(ahead) and not tells_what_they_weigh(tokens, core[0], ahead)
    if meant or others or leads_with_someone(ahead) or is_ordered(ahead):
        return True
    end = core[-1]
    leading = {
        tokens[i].text
        for i in inside
        if i < end and tokens[i - 1].text not in {"you", "they", "off"} and not rejects_the_suggested(tokens, i)
    }
    if leading & (GUARDS["negation"] | GUARDS["plan"] | GUARDS["question"]) or any(
        tokens[i].text == "tomorrow" and i <= end + _BESIDE_AFTER for i in inside
    ):
        return True
    if any(
        tokens[i].text in GUARDS["hedge"]
        and not is_affirmed(tokens, i)
        and not bound_to(tokens, i, first, last) & set(soft)
        and not (tokens[i].text in _ALSO_PLACES and is_of_place(tokens, i, end, last))
        for i in inside
    ):
        return True
    line = f" {' '.join(tokens[i].text for i in inside if i <= end + 1)} "
    if _ABLE_TO_DO.search(line) and not texts & {"only", "just", "until", "barely", "still"}:
        return True  # "I can do 15 in my sleep"
    if _OTHER_TIMES.within(f" {' '.join(tokens[i].text for i in inside)} "):
        return True
    asks = [ask for ask in _ASKS.within(line) if not (ask == "up to" and reached_up(line))]
    asks = [ask for ask in asks if not (ask == "try" and strong and tried(line))]
    if asks or _asks_first(tokens, inside, first, strong=strong):
        return True
    pointed = len(core) > 1 and tokens[end - 1].text in {"the", "this", "that", "these", "those"}  # "left 6, the 14kg is too heavy"
    lone = len(core) == 1 and any(t.kind is Kind.NUMBER for t in (*tokens[:first], *tokens[last:]))
    judged = end not in told.bare and (pointed or lone)
    after = [tokens[i].text for i in inside if i > end]
    another = after[:1] == ["for"] and tells_of_a_first(tokens[first:end])
    if only_imagined(after) and not another and not (judged and after[:2] in _JUDGED):
        return True  # but "only 7, 12.5 kg is too much"
    return is_of_others(tokens, inside, end) or (strong and _strangers(tokens, inside))


def _is_foreign(tokens: Sequence[Token], inside: Sequence[int]) -> bool:
    """Whether words are of another language; "ja" is South African too, where all the others are English."""
    words = {tokens[i].text for i in inside if tokens[i].kind is Kind.WORD}
    foreign = words & GUARDS["foreign"]
    return bool(foreign - {"ja"}) or (bool(foreign) and not all(word in VOCABULARY or is_english(word) for word in words))


def _asks_first(tokens: Sequence[Token], inside: Sequence[int], first: int, *, strong: bool) -> bool:
    """Whether the clause begins as a question does; "is 14 with 8 kilos" and "did 12" tell."""
    first = next((i for i in inside if tokens[i].text not in (COURTESY | _TELL_ME) - _OWN), first)
    if first not in inside or tokens[first].text not in _ASKING_FIRST:
        return False
    if tokens[first].text in _REQUESTING and tokens[first + 1 : first + 2] and tokens[first + 1].text in _BARELY:
        return False  # "could only find the 12kg pair"
    if tokens[first].text == "which" and first and (tokens[first - 1].text == "," or tokens[first + 1].text in _TURNED_OUT):
        return False  # "the lightest dumbbells, which weigh three kilograms", "to failure, which turned out to be 7"
    if (tokens[first].text, tokens[first + 1].text) == ("am", "after"):
        return False  # "am after doing 9", as in Ireland
    told = first + 1 in inside and (tokens[first + 1].kind is Kind.NUMBER or tokens[first + 1].text in {"done", "finished"})
    tells = told and tokens[first].text in {"is", "was", "did", "does"}
    closing = [token.text for token in tokens[inside[-1] : inside[-1] + 2]]
    asks = bool(_APPROVED & set(closing))  # "is 20kg for 12 ok"
    return asks or not (strong and tells)


def polite_request(tokens: Sequence[Token], first: int, last: int) -> set[int]:
    """The first words of "could you please note 12 at 8 kg": an order said politely, not a question; empty when it is none."""
    at = first
    while at < last and tokens[at].text in COURTESY | _EXCUSING:
        at += 1
    allowed = first < at < last and tokens[at - 1].text in {"you", "u"} and tokens[at].text in _REQUESTING
    at -= allowed  # "ye can mark 13 there"
    asked = allowed or (at + 1 < last and tokens[at].text in _REQUESTING and tokens[at + 1].text in {"you", "u"})
    offered = at + 1 < last and tokens[at].text in {"may", "can", "could", "might"} and tokens[at + 1].text == "i"
    told = at
    while told < last and tokens[told].text in _WISHING:
        told += 1
    if told > at and told + 1 < last and tokens[told].text == "to" and tokens[told + 1].text in _NOTING:
        return set(range(first, told + 2))  # "I wish to report fourteen repetitions"
    if asked or offered:
        end = at + 2
        while end < last and tokens[end].text in {"please", "kindly", "just", "be", "so", "good", "kind", "as", "to", "now"}:
            end += 1
        counts_along = end + 1 < last and (tokens[end].text, tokens[end + 1].text) == ("count", "to")
        if end < last and tokens[end].text in _NOTING and not counts_along:
            return set(range(first, end + 1))
    return set()


def _strangers(tokens: Sequence[Token], inside: Sequence[int]) -> bool:
    """Whether too many words are unknown for the numbers to be trusted."""
    words = [tokens[i].text for i in inside if tokens[i].kind is Kind.WORD]
    strangers = sum(word not in VOCABULARY and word not in ENGLISH for word in words)
    return strangers > _MOST_STRANGERS or strangers > _FILLED_BY_STRANGERS * (len(words) + 1)
