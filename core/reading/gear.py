"""What the trainee owns: "8, 12 and 16 kg dumbbells", "a pair of 8s and a 16", "adjustable handles with 4 x 1.25 kg plates".

`gear_list` reads the list itself; here is decided whether the sentence that holds it says that somebody has it.
"""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise
from typing import TYPE_CHECKING

from core.reading.acts import Act, Have, Unclear
from core.reading.clock import DAY_WORDS
from core.reading.gear_list import Listing
from core.reading.gear_words import KINDS, PAIRS, SKIPPED, UNITS, Words
from core.reading.lexicon import GUARDS, VOCABULARY, listed, sayings
from core.reading.spelling import is_english
from core.reading.token import Kind, Token

if TYPE_CHECKING:
    from collections.abc import Sequence

_PLAINLY_OWNED = listed("words_gear", "plainly_owned")
_OWNING = listed("words_gear", "owning")
_OWNING_PAIRS = frozenset(tuple(pair.split()) for pair in sayings("owning_pairs"))
_DONE = listed("words_gear", "done")
_JUDGED = listed("words_gear", "judged")
_PRICED = listed("words_gear", "priced")
_GONE = listed("words_gear", "gone")
_WISHED = listed("words_gear", "wished")
_ASKED = listed("words_gear", "asked")
_BY_OTHERS = listed("words_gear", "by_others")
_LIST_WORDS = listed("words_gear", "list_words")
_NOUNS = listed("words_gear", "nouns")
_AFTER_NOTHING = listed("words_gear", "after_nothing")
_OTHERS = GUARDS["people"] | {"law", "mate", "shop", "store", "supermarket", "seller", "he", "she", "his", "her", "he's", "she's"}
_CLAUSE_ENDS = frozenset({",", "but", "because", "although", "though", "so", "(", ";"})
_DENIED = frozenset({"do", "does", "did", "am", "is", "are", "have", "has", "can", "will", "a", "the", "my", "any", "got", "own"})
_WEAKLY_DONE = frozenset({"used", "finished", "complete", "completed", "completing"})
_NEEDED = frozenset({"needed", "required", "necessary", "heavy", "heavier", "lighter", "light", "left", "today's"})
_LONGEST_MESSAGE = 200
_LONGEST_LIST = 12
_ARRIVED = frozenset({"new", "arrived", "came"})
_LENGTHS = frozenset({"minutes", "seconds", "hours", "days", "weeks"})
_LONGEST_OPENING = 5
_GAP_WORDS = frozenset({"and", "s", "the", "&", "-", ".", "!", "though", "sadly", "unfortunately", "please", "thanks"})
_TELLING = frozenset({"mention", "say", "add", "report", "confirm", "note"})
_LONGEST_TELLING = 9
_LONGEST_PLANNING = 6
_PLANNING = listed("words_gear", "planning")
_BEFORE_ABOUT = frozenset({"shame", "pity", "sorry", "worry", "worried", "bothered", "what", "how"})
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
            and set(words[1:]) & _PLAINLY_OWNED
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
    asked = _is_asked(tokens, first, last)
    if awaited and not (said & (_PLAINLY_OWNED - {"got"}) or "got a" in " ".join(words) or _is_bought(tokens, first, last)):
        return None
    if not awaited and not asked and _owns_nothing(tokens, first, last):
        return Have()
    listing = Listing(tokens, first, last)
    kinds = {KINDS[words[i - first]] for i in range(first, last) if listing.kind_at(i) is not None}
    paired = bool(said & PAIRS)
    if not (kinds or paired or said & _PLAINLY_OWNED or _is_on_a_rack(words)):
        return None
    counted = [i for i in range(first, last) if listing.is_number(i)]
    if counted and all(i + 1 < last and tokens[i + 1].text in _LENGTHS for i in counted):
        return None  # "30 seconds, fixing my plates"
    stands = listing.read()
    end = _clause_end(tokens, listing.until, last) if stands else last
    told = [tokens[i].text for i in range(first, end)]
    if _is_done(tokens, first, last, kinds) or set(told) & _WEAKLY_DONE:
        return None
    if said & (_JUDGED | _PRICED) - _describing(tokens, first, last):
        listed_loads = kinds and not awaited and any(listing.is_number(i) for i in range(first, last))
        return (
            Unclear()
            if listed_loads and (_is_told_of(words) or _is_gone_after_all(tokens, end, last)) and not said & {"that", "this"}
            else None
        )
    owns = bool(said & _OWNING) or bool(_OWNING_PAIRS & set(pairwise(words)))
    begin = _owning_begins(tokens, first, end)
    told = told[begin - first :]
    if (
        asked
        or {tokens[i].text for i in range(begin, end) if i not in listing.negated} & _GONE
        or _is_gone_after_all(tokens, end, last)
        or _is_given_for(tokens, begin, end)
        or (
            {"away", "back"} & set(told)
            and {"gave", "given", "threw", "give", "handed", "took", "sent"} & set(told)
            and "me" not in told
        )
        or _is_elsewhere(told)
        or _is_likened(told)
        or _is_of_others(told)
        or _is_wished(told)
    ):
        numbers = any(listing.is_number(i) and listing.text(i + 1) not in _LENGTHS for i in range(first, last))
        return Unclear() if numbers and (kinds or paired) and not asked and not awaited and not said & {"that", "this"} else None
    if not stands and not awaited and kinds and _is_told_of(words) and any(listing.is_number(i) for i in range(first, last)):
        return Unclear()
    if not stands or set(range(first, end)) & _negations(tokens, first, end) - listing.negated:
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
        owns = begin + 1 < last and tokens[begin].text in {"i", "we"} and tokens[begin + 1].text in _PLAINLY_OWNED
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
    owned = any(one in {"i", "we"} and verb in _PLAINLY_OWNED for one, verb in pairwise(words[end + 1 :]))
    return first + end + 1 if owned or words[end + 1 : end + 2] in (["my"], ["our"]) else None


def _is_on_a_rack(words: Sequence[str]) -> bool:
    """Whether a place has weights that are named by their loads alone: "the hotel gym only has 5s, 10s and 15s"."""
    loads = [word.isdigit() for word in words].count(True)
    plain = all(word.isdigit() or word in _LIST_WORDS | _RACKS | {"has"} for word in words)
    return plain and "has" in words and bool(_RACKS & set(words)) and loads > 1 and words.count("s") == loads


def _is_told_of(words: Sequence[str]) -> bool:
    """Whether the words say what things there are, so that their numbers are no set."""
    there = {"here", "there", "is", "are", "my", "our", "home"} & set(words)
    return bool(there) or any(
        one in {"i", "we"} and other in (_PLAINLY_OWNED - {"got"}) | {"get"} for one, other in pairwise(words)
    )


def _owning_begins(tokens: Sequence[Token], first: int, last: int) -> int:
    """Where a clause begins that plainly says what is owned, before any number: "my order came, I have dumbbells of 5 and 7 kg"."""
    for at in range(first + 1, last - 2):
        if tokens[at].kind is Kind.NUMBER:
            break
        link = tokens[at].text in _CLAUSE_ENDS | {"and", "-"} or tokens[at].apart
        begin = at if tokens[at].apart else at + 1
        while link and tokens[begin].text in {"now", "so", "and", "but", "then", "still"} and begin < last - 2:
            begin += 1
        if (
            link
            and tokens[begin].text in {"i", "we"}
            and tokens[begin + 1].text in _PLAINLY_OWNED | {"still", "now", "only", "just"}
        ):
            return begin
    return first


def _is_gone_after_all(tokens: Sequence[Token], first: int, last: int) -> bool:
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
    return bool(set(rest) & _GONE) or (
        theirs and not {"me", "us"} & set(rest) and bool({"mine", "ours", "belong", "belongs"} & set(rest))
    )


def _is_given_for(tokens: Sequence[Token], first: int, last: int) -> bool:
    """Whether loads were given for others: "swapped my 20s for a pair of 24s", whose first number is no longer there."""
    given = next((i for i in range(first, last) if tokens[i].text in {"swapped", "traded", "exchanged", "swap", "trade"}), last)
    until = next((i for i in range(given, last) if tokens[i].text == "for"), last)
    return any(tokens[i].kind is Kind.NUMBER for i in range(given, until))


def _clause_end(tokens: Sequence[Token], index: int, last: int) -> int:
    """Where the clause that ends the list ends; what comes after is about something else."""
    return next((i for i in range(index, last) if tokens[i].text in _CLAUSE_ENDS or tokens[i].apart), last)


def _is_bought(tokens: Sequence[Token], first: int, last: int) -> bool:
    """Whether the sentence tells of new things before any number: "btw I just bought a 14kg kettlebell"."""
    until = next((i for i in range(first, last) if tokens[i].kind is Kind.NUMBER), last)
    words = [tokens[i].text for i in range(first, until)]
    verbs = {"bought", "purchased", "found", "ordered"}
    return bool("arrived" in words or set(words[:1]) & (verbs - {"ordered"}) or ({"i", "we"} & set(words) and verbs & set(words)))


def _is_asked(tokens: Sequence[Token], first: int, last: int) -> bool:
    """Whether the sentence is a question, but "what I have is ..." is none."""
    words = [token.text for token in tokens[first : first + 2]]
    asks = bool(set(words[:1]) & _ASKED) and not (words[0] == "what" and words[1:] in (["i"], ["we"]))
    return asks or (last < len(tokens) and tokens[last].text == "?")


def _negations(tokens: Sequence[Token], first: int, last: int) -> set[int]:
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


def _describing(tokens: Sequence[Token], first: int, last: int) -> set[str]:
    """Words that judge a load, where they only say what a thing is like: "a light band", "nothing heavier"."""
    like = {tokens[i].text for i in range(first, last - 1) if tokens[i].text in SKIPPED and tokens[i + 1].text in KINDS}
    if any(tokens[i].text == "about" and tokens[i - 1].text in _BEFORE_ABOUT for i in range(first + 1, last)):
        like.add("about")  # "a pair of 9kg kettlebells, shame about the neighbours"
    if last - first > 1 and tokens[last - 2].text == "about" and tokens[last - 1].text in {"it", "all"}:
        like.add("about")  # "two 6 kg dumbbells and that's about it"
    return like | {tokens[i].text for i in range(first + 1, last) if tokens[i - 1].text in {"nothing", "none"}}


def _is_done(tokens: Sequence[Token], first: int, last: int, kinds: set[str]) -> bool:
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
    if "with" not in said or at_hand or ("with", "me") in pairs or kinds & {"handle", "plate", "barbell"} or said & _OWNING:
        return False
    return any(listing.is_number(i) for i in range(first, first + words.index("with")))


_AT_A_PLACE = frozenset({("@", "home"), ("@", "mine"), ("@", "my"), ("@", "work"), ("@", "hand"), ("@", "the")})


def _is_of_others(told: Sequence[str]) -> bool:
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


def _is_elsewhere(told: Sequence[str]) -> bool:
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


def _is_likened(told: Sequence[str]) -> bool:
    """Whether something else is weighed or likened to a dumbbell: "the baby weighs 6 kg, so basically a dumbbell"."""
    alike = bool(set(told) & {"basically", "practically", "essentially", "virtually"}) or any(
        be in {"is", "are", "was"} and like == "like" for be, like in pairwise(told)
    )
    if alike and not set(told) & ({"i", "we", "here"} | _PLAINLY_OWNED):
        return True
    verb = next((at for at, word in enumerate(told) if word in {"weighs", "weigh", "weighed", "weighing"}), 0)
    return verb > 0 and not set(told[:verb]) & (set(KINDS) | PAIRS | {"weights", "set", "they", "one", "it"})


def _is_wished(told: Sequence[str]) -> bool:
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
        bool(said & _PLAINLY_OWNED)
        and several
        and not said & {"x", "left"}
        and all(i in numbers or tokens[i].text in _LIST_WORDS for i in range(first, last))
    )


def _owns_nothing(tokens: Sequence[Token], first: int, last: int) -> bool:
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
        end = next((i for i, following in enumerate(rest) if following in _CLAUSE_ENDS), len(rest))
        others = {word for word in (*rest, *words[:at]) if word in KINDS} - {"bar"}
        verb = {"have", "got", "get", "own", "are", "is", "possess", "dey", "there"} & set(words[: noun + 1])
        if others - _NOUNS or (others and rest[:1] != [","] and "no" not in rest):
            continue
        if verb and rest[:1] != ["for"]:
            return not rest or rest[0] not in _NEEDED
        return (end == 0 and at == 0) or (end > 0 and rest[0] in _AFTER_NOTHING)
    return False
