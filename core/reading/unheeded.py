"""Words that would change a record, and that nothing in the reading has used: then it is better to ask.

A guard on the record as a whole, after its parts are known: what is said to be a dream, a joke or an example anywhere beside the
numbers; what is denied ("could not face one more") where the parts took it for granted; a weight that is said not to be there; what
o'clock it is, what something cost, what is counted aloud, compared, or only about so much.
"""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING

from core.reading.lexicon import ENGLISH, VOCABULARY, Sayings, listed
from core.reading.spelling import is_english
from core.reading.token import Kind

if TYPE_CHECKING:
    from collections.abc import Collection, Mapping, Sequence

    from core.reading.acts import Log
    from core.reading.parts import Part
    from core.reading.phrases import Said
    from core.reading.token import Token

_VAGUE = Sayings("vague")
_UNREAL = Sayings("unreal")
_TAKEN_BACK = Sayings("taken_back")
_UNITS = frozenset({"kg", "lb", "s", "reps", "rep"})
_FOR_LATER = (" for the next ", " for my next ", " for next ", " for later ", " for tomorrow ")
_ODD_REPS = listed("words_guards", "odd_reps")
_ABSENT = listed("words_records", "absent")
_POINTING = frozenset({"last", "this", "that", "each", "every", "final", "first", "next", "the", "another", "no", "left", "right"})
_ADDING = frozenset({"plus", "+", "and", "&", "with", "then"})
_CHEATED = listed("words_guards", "cheated")
_NUMBERED = frozenset({"set", "round", "station", "birthday", "time", "floor", "anniversary"})
_MOST_SETS = 5
_MEANTIME = frozenset({"yet", "even", "actually", "really", "been", "have", "i", "it", "be", "to"})
_HAPPENING = frozenset(
    {"do", "done", "did", "happen", "happened", "happening", "doing", "start", "started", "finish", "finished", "complete"}
)
_OF_A_SET = frozenset({"it", "that", "this", "them", "those", "yet", "any", "at", "though", "tbh", "lol"})
_COULD_NOT = [[who, able, "not"] for who in ("i", "we") for able in ("can", "could", "did", "would")]
_HAD_NO = (["had", "not"], ["had", "no"], ["have", "not"], ["have", "no"], ["not", "enough"], ["no", "strength"])
_GATHERING = frozenset({"both", "all", "every"})
_COPULAS = frozenset({"is", "are", "was", "were"})
_JUDGED = frozenset({"heavy", "light", "too", "hard", "easy", "bad", "that", "so", "very", "enough", "right"})
_DENYING = listed("words_guards", "denying")
_MADE_SURE = frozenset({"definitely", "certainly", "surely", "absolutely", "easily"})
"""What a "no" leads to that only takes back a doubt: "maybe.. no definitely 2 more"."""
_WEIGHTS = listed("words_guards", "weights")
_BEFORE_WEIGHTS = frozenset(
    {"any", "the", "a", "my", "use", "used", "using", "extra", "added", "with", "have", "had", "hold", "carry"}
)
_HEDGES = frozenset({"maybe", "perhaps", "possibly", "probably", "ish"})
_HOURS, _MINUTES = 24, 60
_ORDINALS = frozenset(
    {
        "sixth", "seventh", "eighth", "ninth", "tenth", "eleventh", "twelfth", "thirteenth", "fourteenth", "fifteenth", "sixteenth",
        "seventeenth", "eighteenth", "nineteenth", "twentieth",
    }
)  # fmt: skip
_STUCK = frozenset(
    {"got", "would", "was", "did", "failed", "never", "stalled", "stuck", "went", "could", "beat", "almost", "nearly"}
)
_ABLE = frozenset({"could", "can", "might", "would"})
_FURTHER = frozenset({"another", "more", "further", "extra"})
_SESSIONS = frozenset({"workout", "session", "training", "week", "day", "month"})
_BOUTS = _SESSIONS | {"set", "round", "exercise", "station"}
_STORES = frozenset({"tank", "rir"})
_BEFORE_STORES = frozenset({"the", "in", "my"})
_REACH_OF_ABLE = 9
_REACH_OF_HALF = 3
_DOTS = 2
_NO_UNITS = frozenset({"lg", "kb", "gb", "lgs", "klb"})
_HELPED = frozenset({"helped", "assisted", "spotted", "cheated", "helping"})
_HOW_MANY = 2
_COMPARED = frozenset(
    {"more", "less", "up", "down", "ahead", "behind", "missed", "beat", "beaten", "improved", "short", "off", "out"}
)
_NO_COMPARISON = frozenset({"number", "under", "over", "after", "ever", "never", "together"})
_EARLIER = (
    "the next one",
    "the next set",
    "my next set",
    "before the last",
    "before last",
    "before that",
    "sets ago",
    "rounds ago",
    "set ago",
    "last but one",
)
_IS_THAT = (("is", "that"), ("is", "it"), ("was", "that"), ("was", "it"))
_PER_WHAT = frozenset({"per", "total", "each", "both", "combined", "altogether", "counting", "counted"})
_PLATES = frozenset({"25", "50", "75"})
"""Hundredths that a plate may weigh."""

_LEFT_OVER = {"reserve", "more", "either"}


def is_unreal(tokens: Sequence[Token], numbers: Sequence[int], failed: Collection[int]) -> bool:
    """Whether words anywhere in the message say that the set was not done: "in my dreams", "for example", "..., just kidding".

    `failed` are the tokens that tell of a rep that failed, of which "did not happen" says no more than that.
    """
    line = _line(tokens).replace(" all the way ", " ")  # "went all the way to failure", but "on the way to 12"
    if _UNREAL.within(line):
        return True
    for at in numbers:
        beside = [token.text for token in tokens[at + 1 : at + 5] if token.text not in _UNITS]
        if (
            beside[:1] in (["not"], ["never"])
            and beside[1:2] != []
            and beside[1] in _HAPPENING
            and beside[2:3] in ([","], ["."], [])
        ):
            return True  # "12 reps not done, stopped by phone, 10kg"
    begin = numbers[-1] + 1 if numbers else len(tokens)
    halved = any(tokens[i].value % 1 for i in numbers)
    rest = [
        tokens[i]
        for i in range(begin, len(tokens))
        if i not in failed
        and (tokens[i].text not in _UNITS or tokens[i - 1].text in _HAPPENING)
        and not _is_meant_well(tokens, i)
        and not (halved and _is_of_the_half(tokens, i))
    ]
    after = _line(rest)
    counted = not numbers or any(tokens[i].value for i in numbers)  # "0, could not do it" tells the same twice
    taken_back = [saying for saying in _TAKEN_BACK.within(after) if saying != "before that" or not _came_between(tokens, numbers)]
    return after.startswith(_FOR_LATER) or (counted and _was_not_done(after.split())) or bool(taken_back)


def _came_between(tokens: Sequence[Token], numbers: Sequence[int]) -> bool:
    """Whether "before that" tells the one set that something told first cut off: "kids barged in!! 14 push ups before that"."""
    ends = [token.text for token in tokens if token.kind is not Kind.MARK][-2:] == ["before", "that"]
    begun = numbers[0] > 0 and tokens[numbers[0] - 1].kind is Kind.MARK
    return ends and begun and len(numbers) == 1


def is_vague(tokens: Sequence[Token], soft: Collection[int]) -> bool:
    """Whether words say of the count or the load that it is only about so much: "10, more or less"; of what was left they may."""
    last = next((i for i in range(len(tokens) - 1, -1, -1) if tokens[i].kind is Kind.NUMBER), -1)
    after = [token.text for token in tokens[last + 1 :] if token.kind is Kind.WORD and token.text not in _UNITS]
    if last >= 0 and last not in soft and len(after) == 1 and after[0] in _HEDGES:
        return True  # "12 with 7kg.. maybe"
    line = _line(tokens)
    for saying in _VAGUE.within(line):
        words = saying.split()
        at = next((i for i in range(len(tokens)) if [t.text for t in tokens[i : i + len(words)]] == words), 0)
        about = next((i for i in range(at - 1, -1, -1) if tokens[i].kind is Kind.NUMBER), None)
        if about is not None and about not in soft:
            return True
    return False


def _is_meant_well(tokens: Sequence[Token], at: int) -> bool:
    """Whether a word takes nothing back by what stands beside it: "not kidding", "but no pain"."""
    before, after = (tokens[i].text if 0 <= i < len(tokens) else "" for i in (at - 1, at + 1))
    return (tokens[at].text in {"kidding", "joking"} and before == "not") or (tokens[at].text == "no" and after in _ABSENT)


def _is_of_the_half(tokens: Sequence[Token], at: int) -> bool:
    """Whether a "not" is about the half of a repetition, which never counts: "the half did not happen", "do not count the half"."""
    beside = {token.text for token in tokens[max(at - _REACH_OF_HALF, 0) : at + 1 + _REACH_OF_HALF]}
    return tokens[at].text in {"not", "never"} and "half" in beside


def _was_not_done(words: Sequence[str]) -> bool:
    """Whether words after the numbers say that it did not happen: "have not done it yet", "never happened"."""
    for at, word in enumerate(words):
        if word not in {"not", "never"} or (at and words[at - 1] in {"why", "if"}):
            continue
        rest = [one for one in words[at + 1 : at + 5] if one not in _MEANTIME]
        if rest[:1] != [] and rest[0] in _HAPPENING and set(rest[1:2]) <= _OF_A_SET:
            return True
    return False


def denies_what_was_left(tokens: Sequence[Token], parts: Sequence[Part], said: Mapping[int, Said]) -> bool:
    """Whether a number of reps left stands under a "not" that no set phrase has used: "not sure there was one more"."""
    free = {i for one in said.values() if one.meaning == "mark-plain" for i in range(one.first, one.last)}
    for part in parts:
        if part.kind not in _LEFT_OVER or not part.numbers:
            continue
        at = part.at - 1
        while at >= 0 and tokens[at].kind is Kind.WORD and not tokens[at + 1].apart:
            sure = tokens[at].text == "no" and tokens[at + 1].text in _MADE_SURE
            if tokens[at].text in _DENYING and at not in free and not sure:
                return True
            at -= 1
        ahead = [token.text for token in tokens[part.at + 1 : part.at + 7]]
        if any(ahead[n : n + 2] in _HAD_NO and not {"if", "but"} & set(ahead[:n]) for n in range(5)):
            return True  # "for one more I had not force"
        if any(ahead[n : n + 3] in _COULD_NOT for n in range(4)):
            return True  # "one more I could not do"
    return False


def leaves_out_a_weight(tokens: Sequence[Token], logs: Sequence[Log], used: Collection[int]) -> bool:
    """Whether a weight is said not to be there, and the sets have none: "weights were not to hand"."""
    if any(log.load is not None or log.same for log in logs):
        return False
    for at, token in enumerate(tokens):
        if token.text not in _WEIGHTS or at in used:
            continue
        before = at - 1
        while before >= 0 and tokens[before].text in _BEFORE_WEIGHTS:
            before -= 1
        after = [one.text for one in tokens[at + 1 : at + 4]]
        if after[:1] != [] and after[0] in _COPULAS:
            after.pop(0)
        missing = after[:1] == ["not"] and not set(after[1:2]) & _JUDGED
        if missing or (before >= 0 and tokens[before].text in _DENYING):
            return True
    return False


def spreads_what_was_left(tokens: Sequence[Token], parts: Sequence[Part], logs: Sequence[Log]) -> bool:
    """Whether what was left is told of several sets, and only some of them have it: "first 10, then 9, one left both times"."""
    if len({log.reserve is None for log in logs}) == 1:
        return False
    left = [part.at for part in parts if part.kind in _LEFT_OVER | {"failure", "left"}]
    return any(
        tokens[i].text in _GATHERING and tokens[i].kind is Kind.WORD and not _gathers_a_load(tokens, i)
        for at in left
        for i in range(at + 1, min(at + 6, len(tokens)))
    )


def _gathers_a_load(tokens: Sequence[Token], at: int) -> bool:
    """Whether "every" or "all" stands right beside a load, which it is about: "to failure, 16kg every time", "all at 16kg"."""
    before = at - 1 - (tokens[at - 1].text in {"for", "on", "in"})
    if tokens[before].text in {"kg", "lb"}:
        return True
    ahead = at + 1
    while ahead < len(tokens) and tokens[ahead].text in {"at", "with", "@", "on", "using", "sets", "rounds", "three", "of", "them"}:
        ahead += 1
    return (
        tokens[ahead : ahead + 1] != []
        and tokens[ahead].kind is Kind.NUMBER
        and tokens[ahead + 1 : ahead + 2] != []
        and (tokens[ahead + 1].text in {"kg", "lb", "s"})
    )


def loses_what_was_left(tokens: Sequence[Token], logs: Sequence[Log], used: Collection[int]) -> bool:
    """Whether words of what could still have been done, or not, stand beside sets that have no reserve: "and one I could still"."""
    if any(log.reserve is not None or log.rpe is not None for log in logs):
        return False
    for at, token in enumerate(tokens):
        if at in used or token.kind is not Kind.WORD:
            continue
        if token.text in _STORES and tokens[at - 1].text in _BEFORE_STORES:
            return True  # "kept a couple in the tank"
        if token.text not in _ABLE:
            continue
        end = next((i for i in range(at + 1, len(tokens)) if tokens[i].kind is Kind.MARK or tokens[i].apart), len(tokens))
        ahead = [tokens[i].text for i in range(at + 1, min(end, at + _REACH_OF_ABLE)) if i not in used]
        further = next((i for i, word in enumerate(ahead) if word in _FURTHER), None)
        if ahead[:1] in (["still"], ["have"], ["not"]) and further is not None and not _BOUTS & set(ahead[further : further + 3]):
            return True
    return False


def drops_a_count(tokens: Sequence[Token], used: Collection[int]) -> bool:
    """Whether one repetition is told of that no part counts: "11 proper reps and one cheat", "12 and a dodgy 13th"."""
    for at, token in enumerate(tokens):
        after = tokens[at + 1].text if at + 1 < len(tokens) else ""
        if token.kind is Kind.ORDINAL and after in _SESSIONS:
            return True  # "it's my 3rd workout this week"
        if token.text in _HELPED and at and any(one.kind is Kind.NUMBER for one in tokens[at + 1 : at + 4]):
            return True  # "spotter helped with 2 of them"
        if at in used:
            continue
        if token.text == "none" and at and tokens[at - 1].text in _ADDING | {"next"}:
            return True  # "10 then none"
        if token.text == "one" and at and tokens[at - 1].text in _ADDING and _CHEATED & {t.text for t in tokens[at + 1 : at + 4]}:
            return True  # "7 at 35 lb plus one I cheated"
        if token.text == "one" and token.kind is Kind.WORD and not (at and tokens[at - 1].text in _POINTING):
            if after in _ODD_REPS and tokens[at + 1].kind is Kind.WORD:
                return True
        elif token.text in _ORDINALS and after not in _NUMBERED | _STUCK and token.kind is Kind.WORD:
            return True  # "felt ok until the ninth", "and a thirteenth I'm too embarrassed to count"
        elif token.kind is Kind.ORDINAL and after and after not in _NUMBERED and int(token.text[:-2]) > _MOST_SETS:
            return True
    return False


def counts_aloud(tokens: Sequence[Token]) -> bool:
    """Whether figures go up by one with dots between, as one counts: "8... 9... lost it"."""
    numbers = [i for i, token in enumerate(tokens) if token.kind is Kind.NUMBER]
    return any(
        other - one > _DOTS
        and tokens[min(other + 1, len(tokens) - 1)].text not in _UNITS
        and tokens[other].value == tokens[one].value + 1
        and {t.text for t in tokens[one + 1 : other]} == {"."}
        for one, other in pairwise(numbers)
    )


def compares(tokens: Sequence[Token], parts: Sequence[Part]) -> bool:
    """Whether a number tells by how much, or what came on top: "weaker by 2 reps", "for extra 18 kilos"."""
    for part in parts:
        before, lead = (tokens[part.at - n].text if part.at >= n else "" for n in (1, 2))
        if part.numbers and before == "by" and (lead in _COMPARED or (lead.endswith("er") and lead not in _NO_COMPARISON)):
            return True
        if part.kind == "load" and before in {"extra", "additional"}:
            return True
    return False


def is_of_another_set(tokens: Sequence[Token]) -> bool:
    """Whether a correction is of an earlier record than the last: "the one before the last one was 10"."""
    line = _line(tokens)
    return any(f" {words} " in line for words in _EARLIER)


def asks_what_it_was(tokens: Sequence[Token], numbers: Collection[int]) -> bool:
    """Whether a question after the numbers is about them: "12 at 16kg but is that per hand or total?"."""
    if not numbers or not any(token.text == "?" for token in tokens[max(numbers) :]):
        return False
    words = [token.text for token in tokens[max(numbers) + 1 :]]
    return any(pair in _IS_THAT and (set(words[at + 2 : at + 4]) & _PER_WHAT) for at, pair in enumerate(pairwise(words)))


def leads_with_a_stranger(tokens: Sequence[Token]) -> bool:
    """Whether a word nobody knows stands where the count should: "elvven at 24 kg rpe 9"."""
    first = tokens[0]
    if first.kind is not Kind.WORD or len(tokens) < len(("elvven", "at", "24", "kg")) or tokens[2].kind is not Kind.NUMBER:
        return False
    known = first.text in VOCABULARY or first.text in ENGLISH or is_english(first.text)
    return tokens[1].text in {"at", "@", "x", "reps"} and not known


def tells_of_half_a_set(tokens: Sequence[Token]) -> bool:
    """Whether a number is of a part of a set: "eight in the first half and five after a breather"."""
    return any(one.text in {"first", "second"} and after.text == "half" for one, after in pairwise(tokens))


def has_no_unit(tokens: Sequence[Token]) -> bool:
    """Whether a number stands with a unit that is between two: "20 lg x 12"."""
    return any(token.text in _NO_UNITS and tokens[at].kind is Kind.NUMBER for at, token in enumerate(tokens[1:]))


def names_a_price(tokens: Sequence[Token], parts: Sequence[Part]) -> bool:
    """Whether a count has hundredths as no half rep has: "89.99 for 12kg dumbbells"."""
    for part in parts:
        hundredths = tokens[part.at].text.partition(".")[2] if part.kind in {"bare", "reps"} and part.numbers else ""
        if len(hundredths) == len("99") and hundredths not in _PLATES and any(other.kind == "load" for other in parts):
            return True
    return False


def lists_pairs(tokens: Sequence[Token], parts: Sequence[Part]) -> bool:
    """Whether several numbers may be what somebody owns, in pairs: "8 - 10 - 12 kg, of every one a pair"."""
    counted = [part.at for part in parts if part.kind in {"bare", "load"}]
    return len(counted) > _HOW_MANY and any(token.text in {"pair", "pairs"} for token in tokens[counted[-1] :])


def tells_the_time(tokens: Sequence[Token], parts: Sequence[Part], *, awaited: bool) -> bool:
    """Whether the one number is a time of day: "it's 6.45 and I'm knackered", "it is 7 already" when no reps are `awaited`."""
    numbers = [part for part in parts if part.numbers]
    if len(numbers) != 1 or numbers[0].kind != "bare":
        return False
    at, value = numbers[0].at, numbers[0].numbers[0]
    minutes = tokens[at].text.partition(".")[2]
    clock = len(minutes) == len("45") and value < _HOURS and int(minutes) < _MINUTES and minutes not in _PLATES
    told = [token.text for token in tokens[max(0, at - 2) : at]] == ["it", "is"]
    after = [token.text for token in tokens[at + 1 : at + 3]]
    late = after[:1] in (["already"], ["now"], ["here"]) or after in (["and", "i"], ["and", "we"])
    return (clock and (told or not at)) or (told and late and not awaited)


def _line(tokens: Sequence[Token]) -> str:
    return f" {' '.join(token.text for token in tokens if token.kind is Kind.WORD)} "
