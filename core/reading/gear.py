"""What the trainee owns: "8, 12 and 16 kg dumbbells", "a pair of 8s and a 16", "adjustable handles with 4 x 1.25 kg plates".

`gear_list` reads the list itself; here is decided whether the sentence that holds it says that somebody has it.
"""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise
from typing import TYPE_CHECKING

from core.reading.acts import Act, Have, Unclear
from core.reading.gear_list import Listing
from core.reading.gear_owned import (
    CLAUSE_ENDS,
    GONE,
    OWNING,
    PLAINLY_OWNED,
    clause_end,
    describing,
    is_asked,
    is_bought,
    is_done,
    is_elsewhere,
    is_given_for,
    is_gone_after_all,
    is_likened,
    is_of_others,
    is_wished,
    negations,
    owns_nothing,
)
from core.reading.gear_words import KINDS, PAIRS, UNITS, Words
from core.reading.lexicon import listed, sayings
from core.reading.token import Kind, Token

if TYPE_CHECKING:
    from collections.abc import Sequence

_OWNING_PAIRS = frozenset(tuple(pair.split()) for pair in sayings("owning_pairs"))
_JUDGED = listed("words_gear", "judged")
_PRICED = listed("words_gear", "priced")
_LIST_WORDS = listed("words_gear", "list_words")
_WEAKLY_DONE = frozenset({"used", "finished", "complete", "completed", "completing"})
_LONGEST_MESSAGE = 200
_LONGEST_LIST = 12
_ARRIVED = frozenset({"new", "arrived", "came"})
_LENGTHS = frozenset({"minutes", "seconds", "hours", "days", "weeks"})
_GAP_WORDS = frozenset({"and", "s", "the", "&", "-", ".", "!", "though", "sadly", "unfortunately", "please", "thanks"})
_TELLING = frozenset({"mention", "say", "add", "report", "confirm", "note"})
_LONGEST_TELLING = 9
_LONGEST_PLANNING = 6
_PLANNING = listed("words_gear", "planning")
_RACKS = frozenset({"gym", "rack", "hotel", "shed", "garage", "basement", "shelf", "clubhouse", "flat", "house"})


def items(tokens: Sequence[Token], first: int, last: int) -> Have | None:
    """The things that tokens `[first, last)` list; None when a number among them stays unexplained."""
    listing = Listing(tokens, first, last)
    return listing.have() if listing.read() else None


def begins(tokens: Sequence[Token], first: int, last: int) -> int | None:
    """Where a sentence that tells a set first goes on to what is owned: "got 11 with 10kg, and I've also got a 16kg kettlebell"."""
    for at in range(first + 1, last):
        if tokens[at].text not in {",", "and", "but", "("} or not any(tokens[i].kind is Kind.NUMBER for i in range(first, at)):
            continue
        begin = at + 1
        while begin < last and tokens[begin].text in {"and", "but", "also", ",", "btw", "oh"}:
            begin += 1
        words = [tokens[i].text for i in range(begin, min(begin + 4, last))]
        if (
            words[:1] in (["my"], ["the"], ["a"], ["new"])
            and any(tokens[i].text in {"arrived", "came"} for i in range(begin, last))
            and _names_things_only(tokens, begin, last)
        ):
            return begin
        if (
            words[:1] in (["i"], ["we"])
            and set(words[1:]) & PLAINLY_OWNED
            and any(tokens[i].text in KINDS or tokens[i].text in PAIRS for i in range(begin, last))
        ):
            return begin
    return None


def _names_things_only(tokens: Sequence[Token], first: int, last: int) -> bool:
    """Whether things are named without any number."""
    return any(tokens[i].text in KINDS for i in range(first, last)) and all(
        tokens[i].kind in {Kind.WORD, Kind.MARK} for i in range(first, last)
    )


def on_one_line(tokens: Sequence[Token]) -> list[Token]:
    """The tokens, with commas for the line ends, or the mark before bare loads, where a list of things goes on over them."""
    if len(tokens) > _LONGEST_MESSAGE or not any(token.text in KINDS or token.text in PAIRS for token in tokens):
        return list(tokens)
    ends = {
        i
        for i, token in enumerate(tokens)
        if token.raw == "\n" or (token.text in {".", "!"} and (_are_loads(tokens, i + 1) or _is_a_gap(tokens, i + 1)))
    }
    if not ends:
        return list(tokens)
    joined = [replace(token, text=",", raw=",", glued=False) if i in ends else token for i, token in enumerate(tokens)]
    joined = [token for i, token in enumerate(joined) if not (i in ends and i - 1 in ends)]
    begin = next((i for i in range(len(joined)) if joined[i].text != ","), 0)
    return joined if isinstance(gear(joined, begin, len(joined)), Have) else list(tokens)


def _are_loads(tokens: Sequence[Token], index: int) -> bool:
    """Whether loads and nothing else follow up to the end: "finally got dumbbells! 5kg and 8kg"."""
    counted = any(token.kind is Kind.NUMBER for token in tokens[:index])
    rest = [token for token in tokens[index:] if token.text not in {".", "!"}]
    loads = all(token.kind is Kind.NUMBER or token.text in UNITS | {",", "and", "s", "&", "x"} for token in rest)
    return not counted and loads and bool({token.text for token in rest} & UNITS)


def _is_a_gap(tokens: Sequence[Token], index: int) -> bool:
    """Whether what follows only says which loads are not there: "5, 10 and 15 kilos. nothing between 10 and 15"."""
    opening = [token.text for token in tokens[index : index + 3]]
    if opening[:1] not in (["nothing"], ["none"]) or "between" not in opening:
        return False
    return all(
        token.kind is Kind.NUMBER or token.text in UNITS | _GAP_WORDS for token in tokens[index + 1 + opening.index("between") :]
    )


def as_one_list(acts: Sequence[Act]) -> list[Act]:
    """The acts, with what goes on listing things taken into the list before it: "a pair of 20kg. And a 24kg kettlebell."."""
    joined: list[Act] = []
    for act in acts:
        before = joined[-1] if joined else None
        if isinstance(act, Have) and isinstance(before, Have) and act.items and before.items:
            joined[-1] = Have((*before.items, *act.items))
        else:
            joined.append(act)
    return joined


def gear(tokens: Sequence[Token], first: int, last: int, *, awaited: bool = False) -> Have | Unclear | None:
    """What the sentence says the trainee owns; None when it says nothing of that, unclear when what is only wished for has numbers.

    `awaited` says that reps are awaited, so that only a verb of owning makes a rack of it.
    """
    if (told_from := _telling_ends(tokens, first, last)) is not None:
        return gear(tokens, told_from, last, awaited=awaited)
    if (planned := _planning_ends(tokens, first, last)) is not None:
        return gear(tokens, planned, last, awaited=awaited)
    words = [token.text for token in tokens[first:last]]
    said = set(words)
    asked = is_asked(tokens, first, last)
    if awaited and not (said & (PLAINLY_OWNED - {"got"}) or "got a" in " ".join(words) or is_bought(tokens, first, last)):
        return None
    if not awaited and not asked and owns_nothing(tokens, first, last):
        return Have()
    listing = Listing(tokens, first, last)
    kinds = {KINDS[words[i - first]] for i in range(first, last) if listing.kind_at(i) is not None}
    paired = bool(said & PAIRS)
    if not (kinds or paired or said & PLAINLY_OWNED or _is_on_a_rack(words)):
        return None
    counted = [i for i in range(first, last) if listing.is_number(i)]
    if counted and all(i + 1 < last and tokens[i + 1].text in _LENGTHS for i in counted):
        return None  # "30 seconds, fixing my plates"
    stands = listing.read()
    end = clause_end(tokens, listing.until, last) if stands else last
    told = [tokens[i].text for i in range(first, end)]
    if is_done(tokens, first, last, kinds) or set(told) & _WEAKLY_DONE:
        return None
    if said & (_JUDGED | _PRICED) - describing(tokens, first, last):
        listed_loads = kinds and not awaited and any(listing.is_number(i) for i in range(first, last))
        return (
            Unclear()
            if listed_loads and (_is_told_of(words) or is_gone_after_all(tokens, end, last)) and not said & {"that", "this"}
            else None
        )
    owns = bool(said & OWNING) or bool(_OWNING_PAIRS & set(pairwise(words)))
    begin = _owning_begins(tokens, first, end)
    told = told[begin - first :]
    if (
        asked
        or {tokens[i].text for i in range(begin, end) if i not in listing.negated} & GONE
        or is_gone_after_all(tokens, end, last)
        or is_given_for(tokens, begin, end)
        or (
            {"away", "back"} & set(told)
            and {"gave", "given", "threw", "give", "handed", "took", "sent"} & set(told)
            and "me" not in told
        )
        or is_elsewhere(told)
        or is_likened(told)
        or is_of_others(told)
        or is_wished(told)
    ):
        numbers = any(listing.is_number(i) and listing.text(i + 1) not in _LENGTHS for i in range(first, last))
        return Unclear() if numbers and (kinds or paired) and not asked and not awaited and not said & {"that", "this"} else None
    if not stands and not awaited and kinds and _is_told_of(words) and any(listing.is_number(i) for i in range(first, last)):
        return Unclear()
    if not stands or set(range(first, end)) & negations(tokens, first, end) - listing.negated:
        return None
    if not _is_listed(tokens, first, last, kinds=kinds, paired=paired, owns=owns):
        return None
    have = listing.have()
    return have if have is not None and have.items else None


def _telling_ends(tokens: Sequence[Token], first: int, last: int) -> int | None:
    """Where the words end that only say that something is told: "I should mention that | I own a 2 kg pair"; None without any."""
    for at in range(first + 1, min(first + _LONGEST_TELLING, last - 1)):
        if tokens[at].kind is Kind.NUMBER or tokens[at].text in {"if", "can not", "not"}:
            return None
        told = tokens[at].text in _TELLING or (tokens[at].text == "you" and tokens[at - 1].text in {"tell", "inform"})
        told |= tokens[at].text == "know" and tokens[at - 1].text == "you"
        begin = at + 2 if tokens[at + 1].text == "that" else at + 1
        owns = begin + 1 < last and tokens[begin].text in {"i", "we"} and tokens[begin + 1].text in PLAINLY_OWNED
        if told and owns and tokens[first].text in {"i", "we", "just", "let", "to"}:
            return begin
    return None


def _planning_ends(tokens: Sequence[Token], first: int, last: int) -> int | None:
    """Where the words end that only say what to plan with: "you can plan with | 11 kg dumbbells, I have those"; None for none."""
    words = [token.text for token in tokens[first:last]]
    end = next((at for at, word in enumerate(words[:_LONGEST_PLANNING]) if word in {"with", "on", "use"}), None)
    if (
        end is None
        or not set(words[: end + 1]) <= _PLANNING
        or not set(words[: end + 1]) & {"plan", "use", "count", "work", "reckon"}
    ):
        return None
    owned = any(one in {"i", "we"} and verb in PLAINLY_OWNED for one, verb in pairwise(words[end + 1 :]))
    return first + end + 1 if owned or words[end + 1 : end + 2] in (["my"], ["our"]) else None


def _is_on_a_rack(words: Sequence[str]) -> bool:
    """Whether a place has weights that are named by their loads alone: "the hotel gym only has 5s, 10s and 15s"."""
    loads = [word.isdigit() for word in words].count(True)
    plain = all(word.isdigit() or word in _LIST_WORDS | _RACKS | {"has"} for word in words)
    return plain and "has" in words and bool(_RACKS & set(words)) and loads > 1 and words.count("s") == loads


def _is_told_of(words: Sequence[str]) -> bool:
    """Whether the words say what things there are, so that their numbers are no set."""
    there = {"here", "there", "is", "are", "my", "our", "home"} & set(words)
    return bool(there) or any(one in {"i", "we"} and other in (PLAINLY_OWNED - {"got"}) | {"get"} for one, other in pairwise(words))


def _owning_begins(tokens: Sequence[Token], first: int, last: int) -> int:
    """Where a clause begins that plainly says what is owned, before any number: "my order came, I have dumbbells of 5 and 7 kg"."""
    for at in range(first + 1, last - 2):
        if tokens[at].kind is Kind.NUMBER:
            break
        link = tokens[at].text in CLAUSE_ENDS | {"and", "-"} or tokens[at].apart
        begin = at if tokens[at].apart else at + 1
        while link and tokens[begin].text in {"now", "so", "and", "but", "then", "still"} and begin < last - 2:
            begin += 1
        if (
            link
            and tokens[begin].text in {"i", "we"}
            and tokens[begin + 1].text in PLAINLY_OWNED | {"still", "now", "only", "just"}
        ):
            return begin
    return first


def _is_listed(tokens: Sequence[Token], first: int, last: int, *, kinds: set[str], paired: bool, owns: bool) -> bool:
    """Whether there is enough to be a list of things: a kind, a pair, or loads beside a plain verb of owning."""
    listing = Words(tokens, first, last)
    words = [token.text for token in tokens[first:last]]
    said = set(words)
    numbers = [i for i in range(first, last) if listing.is_number(i)]
    if not numbers:
        return (
            bool(kinds - {"dumbbell"})
            and len(words) <= _LONGEST_LIST
            and (
                owns
                or words[0] in {"just", "only", "a", "an"}
                or bool(said & _ARRIVED)
                or said <= set(KINDS) | {"and", ",", "a", "some", "resistance"}
            )
        )
    if kinds or paired or _is_on_a_rack(words):
        return True
    plural = any(listing.text(i + 1) == "s" and tokens[i + 1].glued for i in numbers)
    several = plural or (bool(said & UNITS) and len(numbers) > 1)
    return (
        bool(said & PLAINLY_OWNED)
        and several
        and not said & {"x", "left"}
        and all(i in numbers or tokens[i].text in _LIST_WORDS for i in range(first, last))
    )
