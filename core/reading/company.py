"""The company a bare number keeps: whether what stands beside it leaves it a count of reps.

People wrap a count in any words at all ("12, baby woke up halfway", "killer set 16"), so no list can say which words are
harmless. What can be listed is what makes a number something else: a thing it counts ("3 dogs"), a name it is part of
("bus 12"), a preposition of place or time ("at 8"), somebody else who did it, something else that was done.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from core.reading.lexicon import AMOUNTS, COURTESY, ENGLISH, EXERCISES, GUARDS, PLACES, VOCABULARY, listed
from core.reading.spelling import is_english
from core.reading.token import Kind, Token
from core.reading.whose import went_on

if TYPE_CHECKING:
    from collections.abc import Collection, Sequence

_CLOSED = listed("words_company", "closed")
_DONE = listed("words_company", "done")
_HOW = listed("words_company", "how")
_BESIDE_VERB = listed("words_company", "beside_verb")
NAMING = listed("words_company", "naming")
"""Things whose name ends in a number."""

_PREPOSITIONS = listed("words_company", "prepositions")
_COPULAS = listed("words_company", "copulas")
_SUBJECTS = listed("words_company", "subjects")
_DRILLS = EXERCISES - {"floor", "wall", "dog", "bird", "bear", "crab", "front", "pec", "deck", "windmill", "mountain", "superman"}
_NOBODY = (
    _CLOSED
    | _SUBJECTS
    | frozenset(PLACES)
    | EXERCISES
    | COURTESY
    | AMOUNTS["reps"]
    | AMOUNTS["sets"]
    | listed("words_company", "outcries")
)
_DOES = _DONE - {
    "up",
    "call",
    "count",
    "mark",
    "note",
    "log",
    "record",
    "done",
    "put",
    "say",
    "counted",
    "report",
    "write",
} | listed("words_company", "does")
_ELSEWHERE = listed("words_company", "elsewhere")
_ENDING = listed("words_sets", "stopping") | listed("words_company", "ending")
_REACHING = listed("words_company", "reaching")
_OWNING = frozenset({"the", "my", "our", "your", "those", "these", "a", "an"})
_COUNTED = listed("words_company", "counted") | GUARDS["people"]
_NOT_COUNTED = EXERCISES | frozenset(PLACES) | COURTESY | AMOUNTS["reps"] | listed("words_company", "not_counted")
_AFTER = listed("words_company", "after")
_NAMED = listed("words_guards", "named") | GUARDS["people"]
_SETS = frozenset({"set", "sets", "total", "count", "round", "tally", "max", "result", "sum"})
_WITHIN = listed("words_company", "within")
_HERE = frozenset({"here", "outside", "there", "already", "now", "today", "inside", "in"})
_FOR_ME = frozenset(
    {"me", "the", "that", "this", "now", "round", "set", "today", "both", "each", "left", "right", "you", "coach", "sure", "first"}
)
_SAYING = frozenset({"says", "said", "shows", "showed", "reads", "told", "suggests", "suggested", "recommends"})
_COUNTING = frozenset({"i", "we", "count", "counter", "clicker", "tally", "number"})
_UNTIL = frozenset({"could", "can", "gone", "went", "did", "kept", "managed", "made", "got", "held", "lasted", "pushed"})
_FOR = frozenset({"went", "good", "got", "did", "it", "that", "done", "up", "set", "made", "managed", "lasted", "is", "all"})
_HAVING = frozenset({"had", "got", "have"})
_SPENT = listed("words_company", "spent")
_GOES_OUT = frozenset({"runs", "goes", "go", "comes", "sells", "checks", "lets"})
_FINAL = frozenset({"max", "limit", "best", "lot", "last", "most", "end", "final", "count", "result", "total"})
_OF_THEM = frozenset({"those", "these", "them", "that"})
_UNITS = frozenset({"kg", "lb", "s", "x"})
_ENGLISH_ENDINGS = ("able", "ible", "ful", "less", "ish", "ly", "ing", "ness", "ous")
_BESIDE_ME = frozenset({"to", "beside", "behind", "near", "opposite", "by", "with"})
_WHERE = frozenset({"in", "on", "at", "through", "over", "under", "into", "onto", "off", "during", "behind", "across", "outside"})
_PRONOUNS = frozenset({"i", "we", "he", "she", "they", "you", "it"})
_LONGEST_TAIL = 4
_LONGEST_COUNT = 6
_HOLDING = {(verb, owner) for verb in ("with", "using") for owner in ("the", "my")}
_SHORTEST_PLURAL = 4


def is_count(tokens: Sequence[Token], index: int, first: int, last: int, free: Collection[int]) -> bool:
    """Whether the number at `index` can be a count of reps by what stands beside it in its clause, tokens `[first, last)`.

    `free` are the tokens that set phrases explain: they stand for themselves, and part what they stand between.
    """
    begin = next((i + 1 for i in range(index - 1, first - 1, -1) if _parts(tokens, i, free) or tokens[i + 1].apart), first)
    end = next((i for i in range(index + 1, last) if _parts(tokens, i, free) or tokens[i].apart), last)
    following = tokens[index + 1].text if index + 1 < last else ""
    linked = end < last and tokens[end].kind is Kind.NUMBER
    if _is_unknown([token for token in tokens[first:last] if token.kind is Kind.WORD]):
        return False
    if index - begin == 1 and begin > first and begin - 1 in free:
        begin = max(first, begin - _LONGEST_TAIL)  # "maxed at 9"
    lead, tail = ([token.text for token in some] for some in (tokens[begin:index], tokens[index + 1 : end]))
    return (_led(lead, following, tail) or _is_held(tokens, begin, lead)) and _followed(tail, linked=linked)


def _is_held(tokens: Sequence[Token], begin: int, lead: Sequence[str]) -> bool:
    """Whether "with the" leads to what a set that is told before it was done with: "eleven left, ten right, with the six"."""
    counted = any(token.kind is Kind.NUMBER for token in tokens[max(0, begin - _LONGEST_COUNT) : begin])
    return counted and tuple(lead) in _HOLDING


def _is_unknown(words: Sequence[Token]) -> bool:
    """Whether no word beside the number is one of ours: it may be another language."""
    said = [token.text for token in words if token.text not in COURTESY]
    return bool(said) and not any(
        word in VOCABULARY or word in _SUBJECTS or is_english(word) or word.endswith(_ENGLISH_ENDINGS) for word in said
    )


def _parts(tokens: Sequence[Token], index: int, free: Collection[int]) -> bool:
    """Whether a token parts a number from what lies beyond: a mark, another number, a set phrase."""
    return index in free or tokens[index].kind is not Kind.WORD


def _led(lead: Sequence[str], following: str, tail: Sequence[str]) -> bool:
    """Whether the words before a number leave it a count; `following` is the word after it, `tail` the words that go with it."""
    words = list(lead)
    while words and words[0] in COURTESY:
        words.pop(0)
    if not words:
        return True
    before, verb = words[-1], _verb(words)
    if before == "in" and words[-2:-1] in (["done"], ["ready"], ["back"], ["finished"]):
        return False  # "done in 10"
    if verb is not None:
        yours = words[verb - 1 : verb] == ["you"] and words[verb - 2 : verb - 1] not in (["thank"], ["bless"], ["love"])
        return _by_oneself(words[:verb]) and not yours
    if before in NAMING or before in GUARDS["measure"] or before in GUARDS["people"]:
        return False
    if before == "over" and words[-2:-1] in (["knocked"], ["bowled"]):
        return _by_oneself(words[:-2])
    if before in _PREPOSITIONS:
        return _reached(words, following) or (before == "after" and bool(_ENDING & set(tail)))
    if before in _COPULAS:
        told = not ({"it", "this"} & set(words) and following in _HERE) or [*tail[:3]] == ["in", "the", "end"]
        pointing = words[-2:-1] != [] and words[-2] in {"that", "it", "this", "which"}
        return told and (pointing or set(words[:-1]) <= _SUBJECTS | _DRILLS) and before != "am" and words[-2:] != ["i", "was"]
    if words[-2:] == ["my", "weight"]:
        return False
    if before in _OWNING:
        return bool(_DONE & set(words)) or words in (["only", "the"], ["just", "the"])
    return not (_ELSEWHERE & set(words) or _is_plural(before) or _says(words))


def _verb(words: Sequence[str]) -> int | None:
    """Where the verb stands whose object the number is, with at most words of degree between: "managed only just"."""
    at = len(words) - 1
    while at > 0 and words[at] in _HOW:
        at -= 1
    return at if words[at] in _DONE else None


def is_told_of_others(words: Sequence[str]) -> bool:
    """Whether the words of a clause up to its first number tell what somebody does who is not the writer: "the postman did"."""
    verb = next((at for at, word in enumerate(words) if at and word in _DOES and words[at - 1] != "as"), None)
    if verb is None or "i" in words[verb:]:
        return False
    if words[verb] in _SAYING:
        return words[verb - 1] not in _COUNTING
    return not (_by_oneself(words[:verb]) or went_on(words[:verb]))


def _by_oneself(words: Sequence[str]) -> bool:
    """Whether nobody else is named right before the verb: "and hit", "legs dead still got", but "hubby did"."""
    rest = list(words)
    while rest and rest[-1] in _BESIDE_VERB:
        rest.pop()
    if rest[-1:] == ["me"] and rest[-2:-1] != [] and rest[-2] in _BESIDE_ME:
        rest = rest[: -3 if rest[-3:-2] == ["next"] else -2]  # "the lad next to me"
    if rest[-2:] in (["of", "mine"], ["of", "ours"]):
        return False  # "a mate of mine got"
    rest, whole = _without_where(rest), rest
    if rest != whole and rest[-1:] != [] and rest[-1] in COURTESY - {"i", "we", "me"}:
        return False  # "coach at work did"
    if rest[-2:-1] == ["no"] and rest[-1] != "one":
        return True  # "no worries got"
    if rest[-2:] == ["your", "man"]:
        return False  # "yer man beside me did 15"
    if rest[-2:-1] in (["me"], ["my"], ["our"]) and rest[-1] in _NAMED:
        return False  # "me mate did", "my mate at work did"
    if not rest or {"i", "we", "me", "myself"} & set(rest):
        return True
    subject = rest[-1]
    named = rest[-2:-1] in (["my"], ["the"], ["our"], ["his"], ["her"])
    return subject in _NOBODY or (not named and subject.endswith(("ed", "ing")))


def _without_where(words: list[str]) -> list[str]:
    """The words without what they end with that tells where, which nobody does: "kids screaming | in the background"."""
    for size in (3, 2):
        tail = words[-size:]
        if len(tail) == size and tail[0] in _WHERE and set(tail[1:-1]) <= _OWNING and tail[-1] not in _PRONOUNS:
            return words[:-size]
    return words


def _reached(words: Sequence[str], following: str) -> bool:
    """Whether a preposition leads to where a set ended: "stopped at", "got to", "a set of", "could until"."""
    before, said = words[-1], set(words)
    match before:
        case "at" if words[-2:-1] == ["out"] and words[-3:-2] != [] and words[-3] in _GOES_OUT:
            return False  # "my parking ticket runs out at 12"
        case "at" | "on" if words[-2:-1] == ["stuck"] and words[-3:-2] in (["is"], ["are"]) and words[-4:-3] not in ([], ["i"]):
            return False  # "the lift is stuck on 9"
        case "of":
            return words[-2:-1] != [] and words[-2] in _SETS
        case "for":
            had = bool(_HAVING & set(words[:-2])) and words[-2] in _SPENT
            return (
                had or words[-2:-1] == [] or words[-2] in _FOR or words[-3:-1] in (["me", "down"], ["it", "down"], ["that", "down"])
            )
        case "with":
            return bool(said & _ENDING) or following in AMOUNTS["reps"]
        case "until" | "till" | "til":
            return bool(said & _UNTIL)
        case "x" | "by":
            return before == "x" or words == ["by"] or bool(said & (_ENDING - {"done"}))
        case _:
            if words[-4:-2] == ["out", "of"]:
                return words[-2] in _SPENT  # "ran out of puff at 8", but "of milk"
            return bool(said & (_ENDING | _REACHING))


def _says(words: Sequence[str]) -> bool:
    """Whether the words before tell what somebody or something says: "the radio said 17", but "I say 12"."""
    return words[-1] in {"said", "says", "reads", "shows", "showing"} and words[-2:-1] not in (["i"], ["count"], ["counter"])


def _followed(tail: Sequence[str], *, linked: bool) -> bool:
    """Whether the words after a number leave it a count: they do not say what it counts instead of reps.

    `linked` says that another number follows them.
    """
    words = list(tail)
    while words and words[0] in _UNITS:
        words.pop(0)
    if not words:
        return True
    if words[1:4] == ["the", "end", "of"]:
        words = words[4:] or words  # "12 by the end of the set", but "of the week"
    if words[:2] == ["in", "here"]:
        return False  # "must be 30 in here"
    if words[0] in {"left", "right"} and words[1:2] != [] and is_counted(words[1]):
        return False  # "2 left shoes"
    if words[0] in _AFTER:
        return (linked and len(words) == 1) or _passes(words)
    if _WITHIN & set(words[:_LONGEST_TAIL]):
        return False
    for word in words[:_LONGEST_TAIL]:
        if word in _CLOSED or word in EXERCISES or word in PLACES or word in AMOUNTS["reps"] or word in COURTESY:
            return True
        if is_counted(word):
            return False
    return True


def is_counted(word: str) -> bool:
    """Whether a word after a number is a thing that is counted, and no repetition."""
    return word in _COUNTED or _is_plural(word)


def _passes(words: Sequence[str]) -> bool:
    """Whether the first of the words after a number, which can make it something else, does not do so with those after it."""
    following, third = [*words[1:3], "", ""][:2]
    match words[0]:
        case "was" | "were":
            return following not in _OWNING or third in _FINAL
        case "of":
            return following in _OF_THEM or (following in _OWNING and bool(_DRILLS & set(words[2:_LONGEST_TAIL])))
        case "for":
            return following in _FOR_ME or following in COURTESY
        case "is":
            return following in {"done", "it", "all", "what", "my"}
        case "from":
            return following in {"me", "this", "here"}
        case "a" | "an":
            return following in {"bit", "little", "side", "leg", "arm", "struggle", "tough", "hard", "killer", "grind", "new"}
        case _:
            return False


def _is_plural(word: str) -> bool:
    """Whether a word looks like more than one thing, and not like something that is done or felt in a set."""
    return (
        len(word) >= _SHORTEST_PLURAL
        and word.endswith("s")
        and not word.endswith(("ss", "us", "is"))
        and word not in _NOT_COUNTED
        and not (word not in VOCABULARY and word not in ENGLISH and word.endswith("sss"))
    )
