"""What dictation or a slip of the thumb wrote for another word: "ate at twenty", "two to left", "comma"."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from itertools import pairwise

from core.reading.lexicon import COURTESY, GUARDS, HURT, NUMBER_WORDS, PLACES, VOCABULARY, listed
from core.reading.slips import as_each, is_for, is_reps, joined_parts
from core.reading.token import Kind, Token

_AFTER_MORE = frozenset({"left", "in", ",", ".", "!", ";", "as", "while", "because", "and", "but", "so"})
_HEARABLE = frozenset({"ate", "for", "to", "too", "tin", "couple", "won", "comma", "period", "full", "stop", "newline", "dash"})
"""Words that may stand for another wherever they stand; any other only after a number."""

_AFTER_LET = {("me",), ("us",), ("him",), ("her",), ("it",), ("the",), ("my",), ("them",)}
_EAGER = frozenset(
    {
        "tried",
        "try",
        "trying",
        "fought",
        "tempted",
        "pushed",
        "push",
        "gone",
        "went",
        "going",
        "reached",
        "asked",
        "begging",
        "ready",
        "up",
        "back",
        "keen",
        "hungry",
        "ask",
        "asking",
        "time",
        "room",
        "here",
        "waiting",
        "go",
        "set",
    }
)
"""Words after which "for more" means what it says."""

_TELLS = {("was",), ("is",), ("got",), ("did",)}
_NOT_MISTYPED = frozenset({"mot", "bot", "nott", "noot", "nof", "nog", "nkt", "npt", "hot", "knot"})
"""What thumbs and dictation make of "not", read so only between two numbers: "13 mot 12"."""

_PRAISE = listed("words_quantities", "praise")
_STOPPED = {("the",), ("it",), ("me",), ("my",), ("now",), ("for",), ("a",), ("please",), ("there",), ("here",)}
"""Words after which "stop" is no dictated mark."""

_CHANGING = frozenset({"change", "amend", "correct", "alter", "switch"})
_LIMB = {("side",), ("arm",), ("leg",), ("hand",)}
_KIT = {("dumbbells",), ("kettlebells",)}
_AFTER_COUNTED = frozenset({"at", "with", "of", "on", "each", "per", "only", "left", "right", "then", "using", "@", "both", "a"})
_BEFORE_COUNTED = frozenset(
    {"got", "did", "managed", "made", "done", "only", "just", "finished", "completed", "hit", "left", "right"}
)
_BEFORE_OF_SIDE = _BEFORE_COUNTED | {"", "and", "then", ",", "reps", "side", "arm", "leg", "hand"}
"""Words before a count of one side, which dictation may have heard as another word."""

_NOT_BEFORE_COUNTED = frozenset({"kg", "lb", "s", "it", "them", "this", "that", "these", "those", "weight", "good"})
"""Words after which "for reps" means what it says."""

_BEFORE_AN_HOUR = frozenset({"at", "by", "till", "until", "after", "from", "around", "before"})
_DAY_PARTS = {("morning",), ("afternoon",), ("evening",)}
_BEFORE_AN = frozenset({"left", "right", "side", "arm", "leg", "kg", "lb", "reps", "then"})
_LONGEST_MISTYPED = 3
_SHORT_WORDS = {"4": "for", "2": "to"}
_BEFORE_SHORT = listed("words_tokens", "before_short")
_AFTER_SHORT = listed("words_tokens", "after_short")
_DICTATED_MARKS = {"comma": ",", "period": ".", "stop": ".", "newline": ";", "dash": "-"}
_STOPPABLE = {("the", "clock"), ("the", "timer"), ("the", "session"), ("the", "workout"), ("the", "watch"), ("it",), ("here",)}
"""What may be stopped: "20 kilos stop the clock" dictates no full stop."""

_TANK = (
    ("left",),
    ("in", "the", "tank"),
    ("in", "tank"),
    ("in", "me"),
    ("in", "reserve"),
    ("in", "hand"),
    ("rir",),
    ("to", "spare"),
)
_EATEN = frozenset({"lunch", "dinner", "breakfast", "too", "my", "a", "me", "up", "into", "the"})
_NTH = frozenset({"first", "second", "third", "fourth", "last", "next", "other"})
_AFTER_NTH = frozenset({"set", "round", "time", "go", "lap", ",", ".", "!", "and", "with", "at", "because", "but"})
_AFTER_LEFT = {"reps", "each", "s", "more", "sets", "rir", "then", "but", "this", "today"}
_BEFORE_EIGHT = {
    "past",
    "left",
    "right",
    "side",
    "arm",
    "leg",
    "at",
    "and",
    "then",
    "rpe",
    "got",
    "did",
    "done",
    "made",
    "managed",
    "on",
    "not",
    "was",
    "x",
    "for",
    "with",
    "effort",
    "hit",
    "only",
    "just",
    "another",
    "set",
    "round",
}
_AFTER_EIGHT = {
    "at",
    "reps",
    "rep",
    "with",
    "kg",
    "lb",
    "x",
    "on",
    "left",
    "not",
    "repetitions",
    "in",
    "ate",
    "and",
}


def heard(tokens: list[Token]) -> list[Token]:
    """What dictation wrote for another word: "ate at twenty", "to left", "for more in the tank", "comma"."""
    tokens = _with_clipped(_with_sides_pointed_at(joined_parts(tokens)))
    meant = list(tokens)
    begun = {token.text for token, after in pairwise(tokens) if after.text in {"one", "1", "won"}}
    two_sided = any(token.text == "right" for token in tokens)
    changing = next((i for i, token in enumerate(tokens) if token.text in _CHANGING), len(tokens))
    for index, token in enumerate(tokens):
        if is_for(tokens, index):
            meant[index] = replace(token, kind=Kind.WORD, text="for", worded=False)
            continue
        if is_reps(tokens, index):
            meant[index] = replace(token, text="reps")
            continue
        if token.kind is Kind.WORD and (each := as_each(tokens, index)) is not None:
            meant[index] = replace(token, text=each)
            continue
        if token.raw in _SHORT_WORDS and 0 < index < len(tokens) - 1:
            after, thanked = tokens[index + 1], tokens[index - 1].text in {"sorry", "thanks", "cheers", "ta", "apologies"}
            around = tokens[index - 1].text in _BEFORE_SHORT and after.text in _AFTER_SHORT
            around |= thanked and after.kind is Kind.WORD and after.text not in _AFTER_EIGHT | _AFTER_LEFT
            around |= (token.raw == "4" and _is_for_somebody(tokens, index)) or (
                token.raw == "2" and index > changing and _changes_to(tokens, index)
            )
            meant[index] = replace(token, kind=Kind.WORD, text=_SHORT_WORDS[token.raw]) if around else token
        if token.kind is not Kind.WORD:
            continue
        before = tokens[index - 1] if index else None
        if token.text not in _HEARABLE and (before is None or before.kind is not Kind.NUMBER):
            continue
        end = next((i for i in range(index + 1, min(index + 5, len(tokens))) if tokens[i].apart), index + 5)
        following = tuple(t.text for t in tokens[index + 1 : end])
        number = _homophone(token.text, before, following) or _numbered(tokens, index, following, begun)
        if number is not None:
            value = Decimal(NUMBER_WORDS[number])
            meant[index] = replace(
                token, kind=Kind.NUMBER, text=number, value=value, worded=number == "eight" or following[:1] == ("point",)
            )
        elif token.text in {"to", "too", "for", "tin"} and _lost_count(token.text, before, following):
            meant[index] = replace(token, kind=Kind.ODD)
        elif token.text == "for" and following[:1] == ("left",) and (two_sided or following[1:2] in _LIMB):
            continue
        elif (token.text, following[:1]) in {
            ("for", ("left",)),
            ("to", ("reps",)),
            ("too", ("reps",)),
        } and _counted(before):
            meant[index] = replace(token, kind=Kind.ODD)
        elif token.text == "let" and before is not None and before.kind is Kind.NUMBER and following[:1] not in _AFTER_LET:
            meant[index] = replace(token, text="left")
        elif token.text == "stop" and following[:1] in _STOPPED:
            continue  # "stop the clock"
        elif (token.text == "full" and following[:1] == ("stop",) and _counted(before)) or (
            token.text == "stop" and before is not None and before.text == "full"
        ):
            meant[index] = replace(token, kind=Kind.MARK, text=".")
        elif token.text in _DICTATED_MARKS and _counted(before) and following[:2] not in _STOPPABLE:
            meant[index] = replace(token, kind=Kind.MARK, text=_DICTATED_MARKS[token.text])
        elif (
            token.raw in _NOT_MISTYPED
            and _counted(before)
            and tokens[index + 1 : index + 2]
            and tokens[index + 1].kind is Kind.NUMBER
        ):
            meant[index] = replace(token, text="not")
        elif token.text not in {"x", "by", "at"} and _mistyped_at(token, before, tokens[index + 1 : index + 3]):
            meant[index] = replace(token, text="at")
    return meant


def _with_sides_pointed_at(tokens: list[Token]) -> list[Token]:
    """The tokens with a "1" that is no number as the "one" it stands for."""
    return [
        replace(token, kind=Kind.WORD, text="one", worded=False) if token.raw == "1" and _points_at_a_side(tokens, index) else token
        for index, token in enumerate(tokens)
    ]


def _points_at_a_side(tokens: list[Token], index: int) -> bool:
    """Whether a "1" after a side is the part of the body there that hurts: "ankle hurting, left 1"."""
    closed = index + 1 == len(tokens) or tokens[index + 1].kind is Kind.MARK
    if not closed or not index or tokens[index - 1].text not in {"left", "right"}:
        return False
    words = {token.text for token in tokens}
    only = sum(token.kind is Kind.NUMBER for token in tokens) == 1
    return only and bool(words & HURT) and bool(words & set(PLACES))


def _is_for_somebody(tokens: list[Token], index: int) -> bool:
    """Whether a "4" leads to a person: "dat was 4 my mate", "4 real"."""
    after, people = tokens[index + 1].text, GUARDS["people"] | {"mate"}
    return after in {"real", "me", "you", "ya"} or (
        after in {"my", "the"} and any(token.text in people for token in tokens[index + 2 : index + 3])
    )


def _changes_to(tokens: list[Token], index: int) -> bool:
    """Whether a "2" after a word of changing leads to what a record is to be: "chnge last 2 14kg"."""
    of_a_record = tokens[index - 1].text in {"last", "it", "that", "one", "weight", "load", "set", "reps"}
    return of_a_record and tokens[index + 1].kind is Kind.NUMBER


def _with_clipped(tokens: list[Token]) -> list[Token]:
    """The tokens with what a number leaves of a clipped word: "I'd 12 and 11 done" is "had", "9 on the left an 10" is "and"."""
    meant = list(tokens)
    for at in range(1, len(tokens) - 1):
        before, token = tokens[at - 1], tokens[at]
        if token.text not in {"would", "an"} or tokens[at + 1].kind is not Kind.NUMBER:
            continue
        if token.text == "would" and before.text in {"i", "we"} and before.start == token.start:
            meant[at] = replace(token, text="had")
        elif token.text == "an" and (before.kind is Kind.NUMBER or before.text in _BEFORE_AN):
            meant[at] = replace(token, text="and")
    return meant


def _counted(before: Token | None) -> bool:
    return before is not None and (before.kind is Kind.NUMBER or before.text in {"kg", "lb", "reps", "s", "tank", "but"})


def _homophone(word: str, before: Token | None, following: tuple[str, ...]) -> str | None:
    """The number word that `word` stands for where it stands, if it does."""
    previous = before.text if before is not None else ""
    if word == "tin" and following[:1] == ("reps",):
        return "ten"
    if word == "ate":
        nth = following[:1] == ("the",) and following[1:2] != () and following[1] in _NTH
        if nth and previous in {"and", "then", ","} and (len(following) == len(("the", "second")) or following[2] in _AFTER_NTH):
            return "eight"  # "nine the first round and ate the second"
        if previous == "just" and not following:
            return None  # "in 25 minutes, just ate"
        if previous == "to" and following[:1] in {("tonight",), ("am",), ("pm",), ("tomorrow",), ("o'clock",)}:
            return "eight"  # "ten to ate tonight"
        named = following[1:2] == ("reps",) and following[0] in _PRAISE  # "ate clean reps"
        heard = named or previous in _BEFORE_EIGHT or before is None or following[:1] == () or following[0] in _AFTER_EIGHT
        return "eight" if heard and not (following and following[0] in _EATEN) else None
    also = word == "too" and previous not in _BEFORE_COUNTED - {"left", "right"}  # "10 on the left arm, too on the right"
    if _is_of_a_side(following) and previous in _BEFORE_OF_SIDE and not also:
        return {"to": "two", "too": "two", "for": "four", "won": "one"}.get(word)  # "got for on the left and five on the right"
    if word in {"to", "too"} and previous in {"got", "have", "own"} and following[1:2] in {("kg",), ("lb",)}:
        return "two" if following[2:3] in {("dumbbells",), ("kettlebells",)} else None
    if previous in {"got", "have", "own", "and"} and following[:1] in _KIT and following[1:2] in {("of",), ("at",)}:
        return {"to": "two", "too": "two", "for": "four"}.get(word)
    if previous == "past":
        return {"to": "two", "too": "two", "for": "four", "won": "one"}.get(word)
    dated = following[:1] in {("am",), ("pm",), ("o'clock",)} or (following[:2] == ("in", "the") and following[2:3] in _DAY_PARTS)
    if previous in _BEFORE_AN_HOUR and dated:
        return {"to": "two", "too": "two", "for": "four", "won": "one"}.get(word)
    tank = any(following[: len(form)] == form for form in _TANK)
    more_tank = following[:1] == ("more",) and (
        len(following) == 1 or following[1:4] in {("in", "the", "tank"), ("in", "me")} or following[1] in _AFTER_MORE | COURTESY
    )
    counted = following[:1] == ("reps",) and (following[1] if len(following) > 1 else "") in _AFTER_COUNTED
    counted |= following[:1] == ("reps",) and previous in _BEFORE_COUNTED
    if word in {"for", "to", "too"} and counted and previous not in _NOT_BEFORE_COUNTED:
        return "four" if word == "for" else "two"
    if word in {"for", "to", "too"} and following[:2] == ("of", "them") and previous in _BEFORE_COUNTED:
        return "four" if word == "for" else "two"  # "did only for of them"
    if word in {"to", "too"}:
        if previous in {"got", "did", "managed"} and following[:1] in {("with",), ("using",)}:
            return "two"  # "got to with the thirty kilos"
        if before is not None and (tank or more_tank):
            return "two"
        if previous in {"at", "with", "@"} and following[:1] in {("kg",), ("lb",)}:
            return "two"
        if following[:1] == ("point",) or following[:3] == ("and", "a", "half"):
            return "two"
        return (
            "two"
            if (previous == "in" and following[:1] in {("hours",), ("minutes",)})
            or (previous in {"own", "have", "got"} and following[:1] == ("dumbbells",))
            else None
        )
    if word == "for":
        spoken = following[:1] == ("at",) and len(following) > 1 and following[1] in NUMBER_WORDS
        spoken |= (
            (before is None or previous in _BEFORE_COUNTED - {"left", "right"})
            and following[:1] in {("with",), ("using",)}
            and following[1:2] != ()
            and (following[1] in NUMBER_WORDS or following[1] in {"the", "my"})
        )
        waits = previous == "in" and following[:1] in {("hours",), ("minutes",)}
        loaded = previous in {"at", "with", "@", "the", "my", "reps", "rep"} and following[:1] in {("kg",), ("lb",)}
        left_over = following[:1] == ("left",) and any(following[1 : 1 + len(form)] == form for form in _TANK[1:])
        tanked = (
            before is not None and previous not in _EAGER and (more_tank or (tank and (following[:1] != ("left",) or left_over)))
        )
        return "four" if spoken or waits or loaded or tanked else None
    if word == "couple" and (tank or following[:1] == ("more",)):
        return "two"
    if word == "won" and (tank or more_tank):
        return "one"
    return None


def _is_of_a_side(following: tuple[str, ...]) -> bool:
    """Whether the words go on with the side that a count was done on: "on the left"."""
    side = following[1:2] if following[1:2] not in {("the",), ("my",)} else following[2:3]
    return following[:1] == ("on",) and side in {("left",), ("right",)}


def _numbered(tokens: list[Token], index: int, following: tuple[str, ...], begun: set[str]) -> str | None:
    """The number of a set or of sets that was heard as "to" or "for": "set one twelve, set too eleven", "too sets of ten".

    `begun` are the words that a one stands behind somewhere in the message.
    """
    numbers_a_set = index > 1 and tokens[index - 1].kind is Kind.NUMBER and tokens[index - 2].text in {"set", "round"}
    if tokens[index].text == "ate" and numbers_a_set and following[:1] not in {(word,) for word in _EATEN}:
        return "eight"  # "set two ten set three ate all with eighteen kilos"
    heard = {"to": "two", "too": "two", "for": "four", "won": "one"}.get(tokens[index].text)
    if heard is None:
        return None
    counted = following[:2] in {("sets", "of"), ("rounds", "of")} and tokens[index].text != "for"
    label = tokens[index - 1].text if index else ""
    told = index + 1 + (following[:1] in _TELLS)
    named = label in {"set", "round"} & begun and told < len(tokens) and tokens[told].kind is Kind.NUMBER
    return heard if counted or named else None


def _lost_count(word: str, before: Token | None, following: tuple[str, ...]) -> bool:
    """Whether a number was said where this word was heard, which number being open: "too at ten kilos", "twenty to at ten"."""
    if following[:1] == ("at",):
        return word in {"to", "too", "tin"} and (before is None or _counted(before))
    return word != "tin" and before is not None and before.text in {"left", "right"} and following[:1] in {("right",), ("left",)}


def _mistyped_at(token: Token, before: Token | None, following: list[Token]) -> bool:
    """Whether a short unknown word between two numbers can only be "at"."""
    if before is None or before.kind is not Kind.NUMBER or token.glued or not following or following[0].kind is not Kind.NUMBER:
        return False
    if len(token.text) > _LONGEST_MISTYPED or (token.text in VOCABULARY and token.text not in {"st", "a"}):
        return False
    return bool(set(token.text) & {"a", "t"}) and token.text not in {"and", "to"}
