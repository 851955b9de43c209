"""Whether what is listed is somebody's own, and there: not another's, elsewhere, wished for, gone, done with, or asked about."""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING

from core.reading.clock import DAY_WORDS
from core.reading.gear_words import KINDS, PAIRS, SKIPPED, Words
from core.reading.lexicon import GUARDS, VOCABULARY, listed
from core.reading.spelling import is_english
from core.reading.token import Kind, Token

if TYPE_CHECKING:
    from collections.abc import Sequence

PLAINLY_OWNED = listed("words_gear", "plainly_owned")
OWNING = listed("words_gear", "owning")
_DONE = listed("words_gear", "done")
GONE = listed("words_gear", "gone")
_WISHED = listed("words_gear", "wished")
_ASKED = listed("words_gear", "asked")
_BY_OTHERS = listed("words_gear", "by_others")
_NOUNS = listed("words_gear", "nouns")
_AFTER_NOTHING = listed("words_gear", "after_nothing")
_OTHERS = GUARDS["people"] | {"law", "mate", "shop", "store", "supermarket", "seller", "he", "she", "his", "her", "he's", "she's"}
CLAUSE_ENDS = frozenset({",", "but", "because", "although", "though", "so", "(", ";"})
_DENIED = frozenset({"do", "does", "did", "am", "is", "are", "have", "has", "can", "will", "a", "the", "my", "any", "got", "own"})
_NEEDED = frozenset({"needed", "required", "necessary", "heavy", "heavier", "lighter", "light", "left", "today's"})
_LONGEST_OPENING = 5
_BEFORE_ABOUT = frozenset({"shame", "pity", "sorry", "worry", "worried", "bothered", "what", "how"})
_AT_A_PLACE = frozenset({("@", "home"), ("@", "mine"), ("@", "my"), ("@", "work"), ("@", "hand"), ("@", "the")})


def is_gone_after_all(tokens: Sequence[Token], first: int, last: int) -> bool:
    """Whether what comes after the list says that the things are not there: "..., but the movers lost it"."""
    rest = [tokens[i].text for i in range(first, last)]
    meant = {"it", "them", "they", "both", "those", "that"} & set(rest)
    if not meant or set(rest) & set(KINDS):
        return False
    if any(
        (one in {"not", "never"} and verb in {"have", "own", "got", "had"}) or (one in _OTHERS and verb in _BY_OTHERS)
        for one, verb in pairwise(rest)
    ):
        return True  # "11 kg dumbbells, I don't have those", "my brother has those"
    theirs = any(one in {"is", "are", "belong", "belongs"} and other in {"not", "to"} for one, other in pairwise(rest))
    return bool(set(rest) & GONE) or (
        theirs and not {"me", "us"} & set(rest) and bool({"mine", "ours", "belong", "belongs"} & set(rest))
    )


def is_given_for(tokens: Sequence[Token], first: int, last: int) -> bool:
    """Whether loads were given for others: "swapped my 20s for a pair of 24s", whose first number is no longer there."""
    given = next((i for i in range(first, last) if tokens[i].text in {"swapped", "traded", "exchanged", "swap", "trade"}), last)
    until = next((i for i in range(given, last) if tokens[i].text == "for"), last)
    return any(tokens[i].kind is Kind.NUMBER for i in range(given, until))


def clause_end(tokens: Sequence[Token], index: int, last: int) -> int:
    """Where the clause that ends the list ends; what comes after is about something else."""
    return next((i for i in range(index, last) if tokens[i].text in CLAUSE_ENDS or tokens[i].apart), last)


def is_bought(tokens: Sequence[Token], first: int, last: int) -> bool:
    """Whether the sentence tells of new things before any number: "btw I just bought a 14kg kettlebell"."""
    until = next((i for i in range(first, last) if tokens[i].kind is Kind.NUMBER), last)
    words = [tokens[i].text for i in range(first, until)]
    verbs = {"bought", "purchased", "found", "ordered"}
    return bool("arrived" in words or set(words[:1]) & (verbs - {"ordered"}) or ({"i", "we"} & set(words) and verbs & set(words)))


def is_asked(tokens: Sequence[Token], first: int, last: int) -> bool:
    """Whether the sentence is a question, but "what I have is ..." is none."""
    words = [token.text for token in tokens[first : first + 2]]
    asks = bool(set(words[:1]) & _ASKED) and not (words[0] == "what" and words[1:] in (["i"], ["we"]))
    return asks or (last < len(tokens) and tokens[last].text == "?")


def negations(tokens: Sequence[Token], first: int, last: int) -> set[int]:
    """The places of words that deny what is said, and not only a word of it ("not eaten yet")."""
    return {
        i
        for i in range(first, last)
        if tokens[i].text in {"not", "never", "without"}
        and (
            tokens[i].text != "not"
            or (i > first and tokens[i - 1].text in _DENIED)
            or (i + 1 < last and tokens[i + 1].text in _DENIED)
        )
    }


def describing(tokens: Sequence[Token], first: int, last: int) -> set[str]:
    """Words that judge a load, where they only say what a thing is like: "a light band", "nothing heavier"."""
    like = {tokens[i].text for i in range(first, last - 1) if tokens[i].text in SKIPPED and tokens[i + 1].text in KINDS}
    if any(tokens[i].text == "about" and tokens[i - 1].text in _BEFORE_ABOUT for i in range(first + 1, last)):
        like.add("about")  # "a pair of 9kg kettlebells, shame about the neighbours"
    if last - first > 1 and tokens[last - 2].text == "about" and tokens[last - 1].text in {"it", "all"}:
        like.add("about")  # "two 6 kg dumbbells and that's about it"
    return like | {tokens[i].text for i in range(first + 1, last) if tokens[i - 1].text in {"nothing", "none"}}


def is_done(tokens: Sequence[Token], first: int, last: int, kinds: set[str]) -> bool:
    """Whether the words tell of a set that was done with the things: "10 at", "12 with the", "made"."""
    words = [token.text for token in tokens[first:last]]
    said = set(words)
    pairs = set(pairwise(words))
    sold_in_sets = (
        "my" in said or bool(pairs & {("set", "of"), ("sets", "of"), ("set", ":")}) or any((kind, "set") in pairs for kind in KINDS)
    )
    ready = ("set", "up") in pairs or ("all", "set") in pairs
    if said & _DONE and not (said & _DONE <= {"set", "sets"} and (sold_in_sets or ready)):
        return True
    listing = Words(tokens, first, last)
    loaded = any(
        word in {"at", "@"} and listing.is_number(first + at + 1) and not listing.kind_at(first + at - 1)
        for at, word in enumerate(words)
    )
    if loaded or ("@" in said and not pairs & _AT_A_PLACE):
        return True
    at_hand = words[-1] == "with" and words.count("with") == 1  # "a pair of 10s is what I'm working with"
    if "with" not in said or at_hand or ("with", "me") in pairs or kinds & {"handle", "plate", "barbell"} or said & OWNING:
        return False
    return any(listing.is_number(i) for i in range(first, first + words.index("with")))


def is_of_others(told: Sequence[str]) -> bool:
    """Whether somebody else has the things: "my brother has 60 lb dumbbells", but "my son left me his dumbbells"."""
    if any(one in {"belong", "belongs"} and other == "to" for one, other in pairwise(told)):
        return not {"me", "us"} & set(told)
    if {"i", "we", "me", "us"} & set(told):
        return False
    if told[:1] == ["they"] or "they" in told[:_LONGEST_OPENING]:
        return not {"in", "at", "here"} & set(told)  # "at the gym they have dumbbells"
    named = told[:1] == ["our"] and told[1:2] != [] and told[1].removesuffix("'s") not in VOCABULARY and not is_english(told[1])
    if named and {"has", "got", "owns"} & set(told[1:_LONGEST_OPENING]):
        return True  # "our Dave's got a 32kg kettlebell"
    opening = [
        word
        for word in told[:_LONGEST_OPENING]
        if word not in {"is", "has"} or told[1:2] != [word] or told[2:3] not in (["got"], ["selling"])
    ]
    return any(
        word in _OTHERS and following in _BY_OTHERS | {"just", "only", "also", "dumbbells", "kettlebells", "dumbbell", "kettlebell"}
        for word, following in pairwise(opening)
    ) or told[:1] in (["you"], ["his"], ["her"])


def is_elsewhere(told: Sequence[str]) -> bool:
    """Whether the things are said to be at somebody else's: "the 10kg dumbbells are at my mum's"."""
    here = told[:1] == ["at"] and "there" in told  # "at my mum's, there's a pair of 2kg"
    at_others = not here and any(
        place == "at" and whose in {"my", "his", "her", "our", "the"} and other in GUARDS["people"]
        for place, whose, other in zip(told, told[1:], told[2:], strict=False)
    )
    theirs = bool({"his", "hers", "theirs"} & set(told[-1:])) or any(
        link in {"is", "are", "were"} and whose in {"my", "our", "the"} and other in GUARDS["people"]
        for link, whose, other in zip(told, told[1:], told[2:], strict=False)
    )
    return (at_others or theirs) and not {"i", "we", "here", "now"} & set(told)


def is_likened(told: Sequence[str]) -> bool:
    """Whether something else is weighed or likened to a dumbbell: "the baby weighs 6 kg, so basically a dumbbell"."""
    alike = bool(set(told) & {"basically", "practically", "essentially", "virtually"}) or any(
        be in {"is", "are", "was"} and like == "like" for be, like in pairwise(told)
    )
    if alike and not set(told) & ({"i", "we", "here"} | PLAINLY_OWNED):
        return True
    verb = next((at for at, word in enumerate(told) if word in {"weighs", "weigh", "weighed", "weighing"}), 0)
    return verb > 0 and not set(told[:verb]) & (set(KINDS) | PAIRS | {"weights", "set", "they", "one", "it"})


def is_wished(told: Sequence[str]) -> bool:
    """Whether the things are wished for or planned, not had: "might buy", but "I have buy"."""
    line = f" {' '.join(told)} "
    if any(f" {had} buy " in line for had in ("i", "have", "we", "i just", "did")):
        line = line.replace(" buy ", " ")
    for may in ("i can use", "we can use", "can use"):
        line = line.replace(f" {may} ", " ")
    said = set(line.split())
    to_come = said & {"go", "goes", "come", "comes", "coming", "arrive", "delivered", "delivery"} and said & (
        set(DAY_WORDS) | {"tomorrow", "next"}
    )
    return bool(said & _WISHED or to_come) or any(
        f" {wish} " in line
        for wish in ("going to", "have to", "will get", "get me", "if i", "for sale", "am getting", "next month", "next week")
    )


def owns_nothing(tokens: Sequence[Token], first: int, last: int) -> bool:
    """Whether the sentence says that there are no weights at all: "there are no dumbbells in this cottage"."""
    words = [token.text for token in tokens[first:last]]
    if any(token.kind is not Kind.WORD and token.kind is not Kind.MARK for token in tokens[first:last]):
        return False
    for at, word in enumerate(words):
        if word not in {"no", "not", "zero", "without", "never"}:
            continue
        noun = at + 1
        while noun < len(words) and words[noun] in {
            "have",
            "got",
            "get",
            "own",
            "any",
            "a",
            "single",
            "even",
            "one",
            "dey",
            "possess",
            "kind",
            "sort",
            "of",
            "there",
            "be",
            "with",
            "me",
        }:
            noun += 1
        if noun >= len(words) or words[noun] not in _NOUNS:
            continue
        rest = words[noun + 1 :]
        end = next((i for i, following in enumerate(rest) if following in CLAUSE_ENDS), len(rest))
        others = {word for word in (*rest, *words[:at]) if word in KINDS} - {"bar"}
        verb = {"have", "got", "get", "own", "are", "is", "possess", "dey", "there"} & set(words[: noun + 1])
        if others - _NOUNS or (others and rest[:1] != [","] and "no" not in rest):
            continue
        if verb and rest[:1] != ["for"]:
            return not rest or rest[0] not in _NEEDED
        return (end == 0 and at == 0) or (end > 0 and rest[0] in _AFTER_NOTHING)
    return False
