"""Words that would change a record, and that nothing in the reading has used: then it is better to ask.

A guard on the record as a whole, after its parts are known: what is said to be a dream, a joke or an example anywhere beside the
numbers; what is denied ("could not face one more") where the parts took it for granted; a weight that is said not to be there;
what o'clock it is.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from core.reading.lexicon import Sayings, listed
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
_LATE_ORDINALS = listed("words_guards", "late_ordinals")
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
_GATHERING = frozenset({"both", "all", "every"})
_COPULAS = frozenset({"is", "are", "was", "were"})
_JUDGED = frozenset({"heavy", "light", "too", "hard", "easy", "bad", "that", "so", "very", "enough", "right"})
_DENYING = listed("words_guards", "denying")
_WEIGHTS = listed("words_guards", "weights")
_BEFORE_WEIGHTS = frozenset(
    {"any", "the", "a", "my", "use", "used", "using", "extra", "added", "with", "have", "had", "hold", "carry"}
)
_HOURS, _MINUTES = 24, 60
_PLATES = frozenset({"25", "50", "75"})
"""Hundredths that a plate may weigh."""

_LEFT_OVER = {"reserve", "more", "either"}


def is_unreal(tokens: Sequence[Token], numbers: Sequence[int], failed: Collection[int]) -> bool:
    """Whether words anywhere in the message say that the set was not done: "in my dreams", "for example", "..., just kidding".

    `failed` are the tokens that tell of a rep that failed, of which "did not happen" says no more than that.
    """
    line = _line(tokens)
    if _UNREAL.within(line):
        return True
    begin = numbers[-1] + 1 if numbers else len(tokens)
    rest = [
        tokens[i]
        for i in range(begin, len(tokens))
        if i not in failed and tokens[i].text not in _UNITS and not _is_meant_well(tokens, i)
    ]
    after = _line(rest)
    return after.startswith(_FOR_LATER) or _was_not_done(after.split()) or bool(_TAKEN_BACK.within(after))


def is_vague(tokens: Sequence[Token], soft: Collection[int]) -> bool:
    """Whether words say of the count or the load that it is only about so much: "10, more or less"; of what was left they may."""
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
            if tokens[at].text in _DENYING and at not in free:
                return True
            at -= 1
        ahead = [token.text for token in tokens[part.at + 1 : part.at + 7]]
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
    return any(token.text in _GATHERING and token.kind is Kind.WORD for at in left for token in tokens[at + 1 : at + 6])


def drops_a_count(tokens: Sequence[Token], used: Collection[int]) -> bool:
    """Whether one repetition is told of that no part counts: "11 proper reps and one cheat", "12 and a dodgy 13th"."""
    for at, token in enumerate(tokens[:-1]):
        if at in used:
            continue
        if token.text == "one" and at and tokens[at - 1].text in _ADDING and _CHEATED & {t.text for t in tokens[at + 1 : at + 4]}:
            return True  # "7 at 35 lb plus one I cheated"
        if token.text == "one" and token.kind is Kind.WORD and not (at and tokens[at - 1].text in _POINTING):
            if tokens[at + 1].text in _ODD_REPS and tokens[at + 1].kind is Kind.WORD:
                return True
        elif token.text in _LATE_ORDINALS and at and tokens[at - 1].text in {"a", "my", "another"}:
            return True  # "and a thirteenth I am too embarrassed to count"
        elif token.kind is Kind.ORDINAL and tokens[at + 1].text not in _NUMBERED and int(token.text[:-2]) > _MOST_SETS:
            return True
    return False


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
