"""Whose set it is that the words of a clause tell, and whether it was done: others, plans, orders, what would be."""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING

from core.reading.lexicon import COURTESY, GUARDS, VOCABULARY, listed
from core.reading.spelling import is_english
from core.reading.token import Kind, Token

if TYPE_CHECKING:
    from collections.abc import Sequence
    from decimal import Decimal

_NOT_DONE = listed("words_guards", "not_done")
_BEFORE_UNDONE = listed("words_guards", "before_undone")
_NOT_YET = listed("words_guards", "not_yet")
_PERCEIVING = listed("words_guards", "perceiving")
_PERCEIVED = listed("words_guards", "perceived")
_CLAIMED = listed("words_guards", "claimed")
_NOTING = listed("words_guards", "noting")
_SAYING = listed("words_guards", "saying")
_TALLYING = listed("words_guards", "tallying")
_TALLIED = listed("words_guards", "tallied")
_DOING = listed("words_guards", "doing")
_HAPPENED = listed("words_guards", "happened")
_TRAINED = frozenset({"started", "finished", "tried", "stopped", "joined", "trained", "rested", "struggled", "ended"})
_LIFTING = frozenset({"do", "lift", "hit", "make", "press", "complete", "finish", "squeeze", "beat", "count"})
_WHOSE = frozenset({"my", "our", "the", "his", "her", "their"})
_OBJECT_OF = listed("words_guards", "object_of")
_LONGEST_NAME = 3
_LONGEST_SUGGESTION = 6
_BEFORE_SUGGESTED = frozenset({"the", "what", "your", "those", "these", "as", "my"})
_CHILDREN = frozenset({"lad", "lass", "laddie", "lassie", "bairn", "wean", "youngest", "eldest", "oldest", "missis"})
_LABELS = frozenset({"label", "labels", "sticker", "tag", "stamp", "marking", "writing", "print", "handle", "dumbbell", "pair"})
_SUGGESTED = listed("words_guards", "suggested")
DEGREE = frozenset({"only", "just", "about", "also", "even", "still", "always", "easily", "has", "had", "have", "can", "could"})
"""Words between somebody and what he does: "my buddy just hit"."""

_ORDERING = frozenset({"set", "put", "raise", "lower", "bump", "move", "increase", "reduce"})
_INTENDING = {
    ("meant", "to"),
    ("supposed", "to"),
    ("planned", "to"),
    ("going", "to"),
    ("need", "to"),
    ("needed", "to"),
    ("like", "to"),
    ("love", "to"),
    ("want", "me"),
    ("wants", "me"),
    ("wanted", "me"),
    ("like", "me"),
    ("likes", "me"),
    ("expects", "me"),
    ("asked", "me"),
    ("asks", "me"),
    ("tells", "me"),
    ("advised", "me"),
}
_NAMING = frozenset(
    {"goal", "objective", "delete", "remove", "scrap", "forget", "cancel", "ignore", "erase", "discard", "undo", "change"}
)
_NOT_NOW = {("always", "do"), ("always", "get"), ("usual", "is"), ("had", "me"), ("next", "up")}
_BESTS = frozenset({"pb", "pr", "ever", "record", "best"})
_KIN = listed("words_guards", "kin")
"""People of whom one speaks, and whom one does not address."""

_REACHED = frozenset(
    {"got", "went", "swapped", "moved", "bumped", "jumped", "made", "counted", "came", "stepped", "worked", "back", "size", "notch"}
)
_BEFORE_COULD = frozenset({"i", ",", ".", "!", "today", "this", "time", "unfortunately", "sadly", "only", "here"})
_COULD_DO = frozenset({"do", "make", "manage", "get", "lift", "complete", "finish", "achieve", "perform"})
_SUPPOSING = frozenset({"if", "when", "before", "once", "easily", "easy", "sleep", "more", "tomorrow", "next", "maybe", "?"})
_ABLE = frozenset({"can", "could", "should", "will", "would", "have", "has", "it", "they", "which"})
_AGAIN = frozenset({"again", "same", "reps", "weight", "load", "time", "before", "numbers", "ditto", "thing"})
_OWNED = frozenset({"my", "the", "our"})


def only_imagined(words: Sequence[str]) -> bool:
    """Whether what follows the last number of a clause makes it no set of the writer's: "would kill me", "for my brother"."""
    rest = list(words)
    while rest and rest[0] in {"kg", "lb", "s", "reps", "rep", "each"}:
        rest.pop(0)
    match rest[:3]:
        case ["would" | "will", "you" | "u" | "ye", *_] if set(rest[2:]) <= COURTESY:
            return False  # "make that 9 would you please"
        case ["would" | "should" | "might", after, *_]:
            return after not in {"have", "do"}
        case ["if" | "twice" | "thrice", *_]:
            return True  # "12 at 20kg if you count the bad ones"
        case ["did" | "would" | "was", "not", verb]:
            return verb in {"happen", "go", "come", "count", "move", "work", "budge"}  # "13 didn't happen"
        case ["is"] | ["is", "too" | "for" | "what", *_]:
            return True
        case ["is", "doable" | "possible" | "manageable" | "feasible" | "enough" | "sensible" | "reasonable", *_]:
            return True
        case ["is" | "was", "the" | "my", thing]:
            return thing in {"plan", "goal", "target", "aim", "idea", "dream", "order", "prescription", "hope", "ambition"}
        case [undone, *_] if undone in _NOT_YET:
            return True  # "12 at 20kg unless my back plays up"
        case ["for", "the" | "my", "next"]:
            return True
        case ["for", whose, person] if whose in _WHOSE and person in GUARDS["people"]:
            return True
        case ["down" | "in" | "up", "for", whose] if whose in _WHOSE:
            return set(rest[3:4]) <= GUARDS["people"] and len(rest) > len(rest[:3])
        case _:
            return False


def tells_of_a_first(tokens: Sequence[Token]) -> bool:
    """Whether one set is called the first, so that "the next" was done as well: "10 for the first set and 10 for the next"."""
    return any(one.text == "the" and other.text in {"first", "1st"} for one, other in pairwise(tokens))


def leads_with_someone(words: Sequence[str]) -> bool:
    """Whether a clause up to its first number has somebody else for its subject: "my training partner", "my neighbour lifts"."""
    words = words[1:] if words[:1] in (["from"], ["by"], ["for"]) and words[-1:] == [":"] else words
    if [*words[1:]] == [":"] and not (words[0] in VOCABULARY or is_english(words[0])):
        return True  # "Dave: 12 at 20kg"
    lead = [word for word in words if word != ":"]
    while lead and lead[0] in COURTESY - _WHOSE:
        lead.pop(0)
    person = next((at for at, word in enumerate(lead[: _LONGEST_NAME + 1]) if word in GUARDS["people"] | _CHILDREN), None)
    if person is None:
        return False
    if lead[0] not in _WHOSE and not (person == 0 and (lead[0] in _KIN or lead[1:] == ["is"])):
        return False
    rest = [word for word in lead[person + 1 :] if word not in DEGREE | GUARDS["people"] | {"sir", "madam"}]
    if "i" in rest:
        return False  # "my son is telling I did"
    if rest[:1] == ["is"] and set(rest[1:]) & _CLAIMED:
        return True  # "my brother's number was 15"
    if rest[:1] == ["counted"] and rest[-1] == "to":
        return True  # "my son counted to 12"
    if len(rest) > 1 and rest[0] in {"is", "was", "keeps"} and rest[1] in _SAYING | _DOING | {"doing"}:
        return True  # "my trainer is telling 15"
    return not rest or (len(rest) == 1 and (rest[0] in _DOING or rest[0].endswith(("s", "ed"))))


def went_on(words: Sequence[str]) -> bool:
    """Whether the words before a "got" tell what somebody else did, and the writer went on: "mum rang mid set still"."""
    before = words[:-1]
    happened = any(word in _HAPPENED or (word.endswith("ed") and word not in _DOING | _TRAINED) for word in before)
    return [*words[-1:]] == ["still"] and happened and not {"and", "who"} & set(before)


def is_object(words: Sequence[str], at: int) -> bool:
    """Whether the person at `at` is only met on the way, and does nothing: "tripped over the dog picking up"."""
    near = words[max(at - 2, 0) : at]
    met = len(near) > 1 and near[0] in _OBJECT_OF and near[1] in _WHOSE | {"a", "this"}
    return met and not set(words[at + 1 : at + 3]) & _DOING


def counted_by_another(tokens: Sequence[Token], first: int, last: int) -> set[int]:
    """The words of a sentence that tell who counted the set: "my son counted for me and he says" nine; empty when none do."""
    number = next((i for i in range(first, last) if tokens[i].kind is Kind.NUMBER), None)
    counting = next((i for i in range(first, number or first) if tokens[i].text in _TALLYING), None)
    if number is None or counting is None:
        return set()
    lead = [tokens[i].text for i in range(first, counting)]
    who = next((at for at, word in enumerate(lead) if word in GUARDS["people"] | _CHILDREN or word in {"he", "she", "they"}), None)
    between = [(i, tokens[i].text) for i in range(counting, number) if tokens[i].kind is Kind.WORD]
    told = all(word in _TALLIED or word in GUARDS["people"] for _, word in between)
    own = {word for _, word in between} & {"he", "she", "they"}
    if (
        who is None
        or not told
        or (own and {"did", "got", "had"} & {word for _, word in between} and "i" not in dict(between).values())
    ):
        return set()
    if [word for _, word in between][-1] == "to":
        return set()  # "my son counted to nine"
    return {i for i in range(first, number) if tokens[i].kind is Kind.WORD}


def reached_up(line: str) -> bool:
    """Whether "up to" follows what was done: "I got up to nine", "swapped up to 20kg", but "can get up to 20kg"."""
    words = line.partition(" up to ")[0].split()
    words = words[:-1] if words[-1:] in (["it"], ["them"]) else words
    return words[-1:] != [] and words[-1] in _REACHED and not set(words) & _ABLE


def tried(line: str) -> bool:
    """Whether "try" tells what was done, as in Nigeria: "but I try (reach) 13 reps with 10kg", and no plan: "let me try 13"."""
    lead, _, rest = line.partition(" i try ")
    rest = rest.split(" ", 1)[-1] if rest.split(" ", 1)[0] in _COULD_DO | {"reach", "hit"} else rest
    return rest[:1].isdigit() and not set(lead.split()) & (_ABLE | {"let", "may", "might", "if", "when"})


def could_and_did(tokens: Sequence[Token], index: int, load: Decimal | None) -> bool:
    """Whether "could" at `index` tells what was done, as in "I could make 11 with 16 kilos" where 16 were suggested."""
    lead = [token.text for token in tokens[:index]]
    if tokens[index].text != "could" or lead[-1:] != ["i"] or set(lead) - COURTESY - _BEFORE_COULD:
        return False
    rest = [token for token in tokens[index + 1 :] if token.text not in {"only", "just", "reps", "rep", "repetitions"}]
    texts = [token.text for token in rest]
    told = [token.kind is Kind.NUMBER for token in rest[1:4]] == [True, False, True] and rest[3].value == load
    return told and texts[0] in _COULD_DO and texts[2] in {"with", "at", "@", "using"} and not set(texts) & _SUPPOSING


def is_intended(words: Sequence[str]) -> bool:
    """Whether a clause up to its first number tells what was only meant to be done: "meant to do", not "meant to say"."""
    if [*words[-2:]] in (["no", "way"], ["i'd", "love"], ["would", "love"], ["i'd", "like"], ["would", "like"]):
        return True
    if {*words[-2:-1]} & {"would", "i'd"} and words[-1] in {"get", "do", "manage", "hit", "make", "lift", "need", "reach"}:
        return True  # "reckon I'd get"
    if [*words[-3:-1]] == ["failed", "to"]:
        return True  # "failed to get" twelve
    near = list(words)
    while near and near[-1] in _BEFORE_UNDONE:
        near.pop()
    late = near[-2:-1] in (["late"], ["slow"], ["delayed"])  # "sorry late reply 11"
    undone = near[-1:] != [] and near[-1] in _NOT_DONE and not late and not is_watched(words)
    if undone or [*words[-2:]] in (["before", "the"], ["before", "my"]):
        return True  # "dodged the", "gave up before the"
    if set(words) & _PERCEIVING and set(words) & (_PERCEIVED | GUARDS["people"]) and not is_watched(words):
        return True  # "just watched someone curl"
    pairs = {*pairwise(words)}
    going = {("i", "go"), ("i", "want"), ("we", "want")}
    if going & pairs and words[-1] in {"do", "try", "carry", "lift", "make", "manage", "use", "hit"}:
        return True  # "I go do", "I wan do", as in Nigeria
    if pairs & _NOT_NOW or [*words[-2:]] == ["next", "is"] or (("able", "to") in pairs and "should" in words):
        return True
    meant = next((at for at, pair in enumerate(pairwise(words)) if pair in _INTENDING), None)
    return meant is not None and not set(words[meant + 2 : meant + 3]) & (
        _NOTING | {"be", "b", "love", "laugh", "say", "type", "tell", "send"}
    )


def is_watched(words: Sequence[str]) -> bool:
    """Whether somebody else only looks on: "the delivery fella watched me do" ten."""
    at = next((i for i, (one, whom) in enumerate(pairwise(words)) if one in _PERCEIVING and whom == "me"), None)
    return (
        at is not None
        and words[at + 2 : at + 3] != []
        and _is_of_lifting(words[at + 2])
        and not {"then", "and"} & {*words[at + 2 :]}
    )


def _is_of_lifting(word: str) -> bool:
    return word in _LIFTING or word in {"get", "manage", "grind", "bang", "smash", "knock", "struggle"} or word.endswith("ing")


def is_ordered(words: Sequence[str]) -> bool:
    """Whether a clause up to its first number orders or names something about it: "set my record to", "goal:", "my PB is"."""
    words = words[3:] if [*words[:3]] == ["for", "the", "record"] else words  # "for the record it was 11"
    said = [word for word in words if word not in COURTESY and word != ":"]
    if set(said[:1]) & _NAMING or (said[-1:] in (["is"], ["was"]) and _BESTS & set(said) and "new" not in said):
        return True
    return words[-1:] == ["to"] and words[:1] != [] and words[0] in _ORDERING and bool(_OWNED & set(words))


def addressed(tokens: Sequence[Token]) -> set[str]:
    """Who is only spoken to, or speaks, after "same again": "my friend", "boss", "says grandpa"."""
    words = [token.text for token in tokens if token.kind is Kind.WORD]
    tail = len(words)
    while tail and words[tail - 1] in GUARDS["people"] | COURTESY | {"says", "said"}:
        tail -= 1
    return set(words[tail:]) if tail and words[tail - 1] in _AGAIN else set()


def rejects_the_suggested(tokens: Sequence[Token], at: int) -> bool:
    """Whether "not" at `at` only sets a weight off from the one asked for: "used 12kg not the suggested ones and got 15"."""
    end = next((i for i in range(at + 1, len(tokens)) if tokens[i].kind is not Kind.WORD), len(tokens))
    ahead = [token.text for token in tokens[at + 1 : min(end, at + 1 + _LONGEST_SUGGESTION)]]
    led = ahead[:1] != [] and ahead[0] in _BEFORE_SUGGESTED
    return tokens[at].text == "not" and led and bool(_SUGGESTED & set(ahead))


def tells_what_they_weigh(tokens: Sequence[Token], number: int, ahead: Sequence[str]) -> bool:
    """Whether the words `ahead` of a load only read it off: "the label says 10kg", "it says 8kg on the end"."""
    if [*ahead[-1:]] not in (["says"], ["reads"], ["shows"], ["say"], ["read"]) or number + 2 > len(tokens):
        return False
    weighed = tokens[number + 1 : number + 2] != [] and tokens[number + 1].text in {"kg", "lb"}
    on_it = tokens[number + 2 : number + 3] != [] and tokens[number + 2].text == "on"
    return weighed and (bool(_LABELS & set(ahead)) or (ahead[-2:-1] in (["it"], ["which"], ["that"]) and on_it))


def is_what_they_weigh(tokens: Sequence[Token], at: int) -> bool:
    """Whether "they" are the weights, of which is told how heavy they are: "the green ones, they're 6kg"."""
    while at < len(tokens) and tokens[at].text in {"are", "were", "is", "both", "only", "just", "weigh", "each", "say", "read"}:
        at += 1
    return at + 1 < len(tokens) and tokens[at].kind is Kind.NUMBER and tokens[at + 1].text in {"kg", "lb"}


def managed_something(words: Sequence[str]) -> bool:
    """Whether these words tell of something else that somebody managed, and no set: "managed to spill my tea"."""
    did = next((at for at, word in enumerate(words) if word in _DOING), None)
    if did is not None and list(words[did + 1 : did + 4]) == ["in", "the", "way"]:
        return words[did + 4 : did + 5] != ["and"]  # "the dog got in the way did four reps"
    return did is not None and words[did + 1 : did + 2] == ["to"] and not set(words[did + 2 : did + 3]) & _LIFTING
