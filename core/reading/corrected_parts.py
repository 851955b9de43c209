"""What a correction names: the parts of a message with the former value, the denied and the confirmed taken out."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise
from typing import TYPE_CHECKING

from core.reading.acts import Awaiting, Context
from core.reading.lexicon import AMOUNTS, COURTESY, listed
from core.reading.parts import Part
from core.reading.token import Kind, Token

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from core.reading.phrases import Said

_WRONG = frozenset({"wrong", "incorrect", "typo", "mistake", "error"})
_BEFORE_WRONG = frozenset({"was", "is", "a", "an", "the", "my", "kg", "lb", "reps", "s"})
_SHOULD_BE = {("should", "be"), ("should", "read"), ("should", "say"), ("should", "have"), ("must", "be")}
_RIGHT = frozenset({"right", "correct", "fine", "ok", "good", "true"})
_CONFIRMED = frozenset({"right", "correct", "true", "accurate", "unchanged"})
_RECORDED = frozenset({"reps", "rep", "weight", "weights", "load", "number", "count", "rest", "else", "repetitions"})
_STAYING = frozenset({"is", "are", "was", "were", "be", "stay", "stays", "stayed", "remain", "remains"})
_UNCHANGING = _STAYING - {"is", "are", "was", "were", "be"}
_DEGREES = frozenset({"all", "quite", "the", "just", "only", "perfectly", "still", "also"})
_FIELDS = frozenset({"load", "reps"})
_OF_WHAT_WAS_LEFT = frozenset({"left", "right", "reserve", "more", "effort"})
_BEFORE_NOTED = frozenset({"i", "mistake", "mistakenly", "wrongly", "accidentally", "accident", "error"})
NOTED = listed("words_records", "noted")
_WONDERING = listed("words_records", "wondering")
_RETELLING = listed("words_records", "retelling")
_BEGINS_TO_RETELL = frozenset(
    {"i", "it", "that", "we", "na", "no", "the", "my", "was", "did", "actually", "should", "they", "those"}
)
LONGEST_NOTE = 7
_REACH_OF_FORMER = 4
_REACH_OF_BLAME = 3
NOTERS = frozenset({"you", "app", "record", "log", "it", "screen", "sheet", "chat", "bot", "message"})
_HAVING = frozenset({"have", "got", "has", "down", "shows", "show", "says", "reads", "logged"})
_DROPPING = frozenset({"scrap", "forget", "ignore", "scratch", "disregard", "nix", "bin", "drop"})
_PARTING = frozenset({",", ".", "but", "!", ";", "and", "-", "should", "i"})


def without_noted(tokens: Sequence[Token], parts: list[Part]) -> list[Part]:
    """The parts without what was said to be typed wrongly, after what was meant: "18kg, I typed 81"."""
    said = [part.at for part in parts if part.numbers]
    noted = next(
        (i for i, t in enumerate(tokens) if t.text in NOTED and i and tokens[i - 1].text == "i" and said and i > said[0]), None
    )
    if noted is None:
        return parts
    end = next((i for i in range(noted, len(tokens)) if tokens[i].text in {",", "but", ".", "not"}), len(tokens))
    kept = [part for part in parts if not noted < part.at < end]
    meant = any(part.numbers and before.kind != "not" for before, part in pairwise([Part("break"), *kept]))
    return kept if meant else parts  # "not fifteen, I said sixteen"


def is_what_was_noted(tokens: Sequence[Token], at: int) -> bool:
    """Whether the number at `at` is what somebody has down for the set, and not what was done: "you've put 12 but I did 14"."""
    lead = tokens[max(0, at - LONGEST_NOTE) : at]
    begun = next((i + 1 for i in range(len(lead) - 1, -1, -1) if lead[i].kind is not Kind.WORD), 0)
    words = [token.text for token in lead[begun:]]
    end = next((i for i in range(at + 1, len(tokens)) if tokens[i].text in _PARTING), len(tokens))
    return (
        bool(NOTERS & set(words))
        and "i" not in words
        and bool((NOTED | _HAVING) & set(words))
        and any(token.text in {"i", "was", "should", "it", "meant"} for token in tokens[end:])
    )


def _end_of_wonder(tokens: Sequence[Token], at: int) -> int:
    """The index after a question at the very start that only wonders at the number at `at`: "16.5kg? no idea"; 0 for others."""
    asked = next((i for i in range(at + 1, min(at + 1 + LONGEST_NOTE, len(tokens))) if tokens[i].text == "?"), None)
    if asked is None or at > LONGEST_NOTE:
        return 0
    wonders = all(i == at or tokens[i].kind is Kind.MARK or tokens[i].text in _WONDERING | COURTESY for i in range(asked))
    return asked + 1 if wonders else 0


def _is_wondered_at(tokens: Sequence[Token], parts: Sequence[Part], former: Part, meant: Part) -> bool:
    """Whether the number of the last record is wondered at, and another told for it: "why does it say 10? I did 12"."""
    if meant.at < former.at or any(token.text == "?" for token in tokens[meant.at :]):
        return False
    begun = meant.at
    while begun and tokens[begun - 1].text in _RETELLING:
        begun -= 1
    told = begun < meant.at and tokens[begun].text in _BEGINS_TO_RETELL
    return told and _end_of_wonder(tokens, former.at) > 0 and not any(part.kind in _OF_WHAT_WAS_LEFT for part in parts)


def not_wondered_at(tokens: Sequence[Token], former: Sequence[Part] | None, numbers: Sequence[int]) -> list[int]:
    """The numbers without the one that was asked back, where `with_former` found one."""
    begun = _end_of_wonder(tokens, former[1].at) if former is not None else 0
    return [at for at in numbers if at >= begun]


def words_of_the_former(tokens: Sequence[Token], former: Sequence[Part] | None) -> set[int]:
    """The words that only tell of the number given up, where `with_former` found one."""
    if former is None:
        return set()
    given_up, meant = former[1].at, former[2].at
    wondered = _end_of_wonder(tokens, given_up)
    return set(range(wondered) if wondered else range(given_up - _REACH_OF_FORMER, max(given_up + _REACH_OF_FORMER, meant)))


def when_it_went_wrong(tokens: Sequence[Token], blame: Said | None) -> set[int]:
    """The words that only say when the mistake was made, and not the set: "pressed the wrong number earlier, it was 6"."""
    if blame is None or not _WRONG & {token.text for token in tokens[blame.first : blame.last]}:
        return set()
    near = range(max(0, blame.first - _REACH_OF_BLAME), min(len(tokens), blame.last + _REACH_OF_BLAME))
    return {i for i in near if tokens[i].text in {"earlier", "previously"}}


def with_former(tokens: Sequence[Token], parts: list[Part], context: Context) -> list[Part] | None:
    """The parts with the number of the last record marked as given up where it is told as what was: "16 was the old one, 20kg".

    None when no number is told so.
    """
    last, numbers = context.last, [part for part in parts if part.numbers]
    if last is None or context.awaiting is Awaiting.REPS or len(numbers) != len("ab") or any(p.kind == "not" for p in parts):
        return None
    for former, meant in (numbers, numbers[::-1]):
        value = former.numbers[0]
        if former.kind not in {"bare", "load", "reps"} or value not in {last.reps, last.load} or value == meant.numbers[0]:
            continue
        if former.kind in _FIELDS and value != (last.load if former.kind == "load" else last.reps):
            continue  # "you got it down as 12kg", of 12 reps at 10 kg
        after = [token.text for token in tokens[former.at + 1 : former.at + 4]]
        before = [
            token.text
            for token in tokens[max(0, former.at - 4) : former.at]
            if token.text not in {"have", "had", "it", "as", "you"}
        ]
        begins = before[-2:-1] != [] and (before[-2] in _BEFORE_NOTED or not before[-2].isalpha())
        noted = is_what_was_noted(tokens, former.at) or (
            (begins and before[-1] in NOTED)
            or before[-1:] == ["into"]
            or (before[-1:] == ["the"] and before[-2:-1] != [] and before[-2] in _DROPPING)
            or (after[:1] == ["i"] and after[1:2] != [] and after[1] in NOTED)
        )
        parted_off = any(tokens[i].text in {",", ".", "!", ";"} for i in range(former.at, meant.at))
        was = (
            former.kind == "bare" and meant.kind == "load" and value == last.load and after[:1] in (["was"], ["is"]) and parted_off
        )
        was |= {former.kind, meant.kind} == {"load"} and former.at < meant.at and _was_in_fact(after)
        was |= value == last.reps and before[-1:] == ["the"] and after[:1] == ["was"] and parted_off and meant.kind != "load"
        if noted or was or _is_wondered_at(tokens, parts, former, meant):
            weighed = (former.kind, meant.kind) == ("load", "bare")
            return [Part("not"), former, replace(meant, kind="load") if weighed else meant]
    return None


def field_confirmed(tokens: Sequence[Token]) -> int | None:
    """Where a field of the last record is said to be right, and so the number beside is of another: "reps are correct, 8kg"."""
    for at, token in enumerate(tokens):
        if token.text not in _RECORDED or at + 1 == len(tokens) or tokens[at + 1].text not in _STAYING:
            continue
        said = [one.text for one in tokens[at + 2 : at + 6] if one.text not in _DEGREES]
        stays = said[:1] == ["same"] and tokens[at + 1].text in _UNCHANGING
        if said[:1] == [] or said[1:2] not in ([], [","], ["."], [";"], ["-"], ["!"], ["but"], ["and"]):
            continue
        if stays or said[0] in _CONFIRMED or (said[0] in _RIGHT and "but" in said):
            return at
    return None


def without_confirmed(tokens: Sequence[Token], parts: list[Part], context: Context) -> list[Part]:
    """The parts without the number of the last record that is said to be right: "10 was right but the weight was 14kg"."""
    last, numbers = context.last, [part for part in parts if part.numbers]
    if last is None or context.awaiting is Awaiting.REPS:
        return parts
    if numbers and field_confirmed(tokens) is not None:
        return [part for part in parts if part.kind != "same"]  # "it was 10kg, the reps stay the same"
    if len(numbers) != len("ab"):
        return parts
    first = numbers[0]
    told = [token.text for token in tokens[first.at + 1 : numbers[1].at] if token.text not in AMOUNTS["reps"] | {"kg", "lb", "the"}]
    kept = first.numbers[0] in {last.reps, last.load} and told[:1] in (["was"], ["is"], ["were"], ["are"])
    right = told[1:2] != [] and told[1] in _RIGHT and {"but", ","} & set(told)
    return [part for part in parts if part is not first] if kept and right else parts


def with_what_was_left(parts: list[Part], context: Context) -> list[Part]:
    """The parts with "3 left" beside a load or reps of a set without sides as its reserve: "the weight was 6kg, 3 left"."""
    last, kinds = context.last, {part.kind for part in parts}
    sided = context.sides or kinds & {"left_side", "right", "each"} or (last is not None and last.side is not None)
    if last is None or context.awaiting is Awaiting.REPS or sided or not kinds & {"load", "reps"}:
        return parts
    left = {at for at, part in enumerate(parts) if part.kind == "left" and at and parts[at - 1].kind == "bare"}
    return [replace(part, kind="reserve") if at + 1 in left else part for at, part in enumerate(parts) if at not in left]


def without_explained(tokens: Sequence[Token], parts: list[Part], context: Context) -> list[Part]:
    """The parts without a bare number that only says again what was meant, or what the last record held.

    Such as "10kg, the 12 was still on the rack", "6 reps, I was being optimistic with 8", "22 kilos, I was using 22".
    """
    last, numbers = context.last, [part for part in parts if part.numbers]
    contrasted = [part.kind for part in parts if part.numbers or part.kind == "not"]
    if contrasted[1:] == ["bare", "not", "bare"] and numbers[0].numbers == numbers[1].numbers:
        return [part for part in parts if part is not numbers[1]]  # "13 reps, 13 not 11"
    if last is None or len(numbers) != len("ab") or "not" in contrasted:
        return parts
    meant, other = numbers
    value = other.numbers[0]
    if meant.kind not in {"load", "reps", "bare"} or other.kind not in {"bare", "load"} or not _is_told_apart(tokens, meant, other):
        return parts
    if (other.kind == "load") != (meant.kind == "load") and (other.kind == "load" or meant.kind == "bare"):
        return parts
    had = last.load if meant.kind == "load" else last.reps
    again = value == meant.numbers[0] and meant.kind != "bare"
    explained = value == had != meant.numbers[0] and (meant.kind != "bare" or _tells_what_it_was(tokens, other.at))
    return [part for part in parts if part is not other and part.at < other.at] if again or explained else parts


def _was_in_fact(after: Sequence[str]) -> bool:
    """Whether the words after a load go on with what it was instead: "those 12s were actually 14s"."""
    words = [word for word in after if word not in {"s", "kg", "lb"}]
    return words[:1] in (["was"], ["were"]) and words[1:2] != [] and words[1] in {"actually", "really", "in", "meant"}


def _is_told_apart(tokens: Sequence[Token], meant: Part, other: Part) -> bool:
    """Whether words of another statement stand between two numbers, or after the other, and they are no set: "12kg x 12"."""
    between = [token.text for token in tokens[meant.at + 1 : other.at] if token.text not in {"kg", "lb", *AMOUNTS["reps"]}]
    if set(between) & {"x", "@", "for", "at", "*", "and", "then", "/"} or between in ([], [","]):
        return between == [","] and _tells_what_it_was(tokens, other.at)
    return between != ["with"]


def _tells_what_it_was(tokens: Sequence[Token], at: int) -> bool:
    """Whether what the number at `at` was is told right after it: "11 was wishful thinking"."""
    after = [token.text for token in tokens[at + 1 : at + 3] if token.text not in {"s", "kg", "lb"}]
    return after[:1] != [] and after[0] in {"was", "were", "is", "are"}


def with_mistyped(tokens: Sequence[Token], parts: list[Part], context: Context) -> list[Part]:
    """The parts with the last record's number given up in "hit 9 instead of 19", which tells what was meant last."""
    last, numbers = context.last, [part for part in parts if part.numbers]
    typed = (
        bool(numbers) and numbers[0].at > 0 and tokens[numbers[0].at - 1].text in NOTED | {"hit", "pressed", "tapped", "punched"}
    )
    if last is None or not typed or len(numbers) != len("ab") or not any(part.kind == "not" for part in parts):
        return parts
    former, meant = numbers
    given = former.numbers[0] in {last.reps, last.load} and meant.numbers[0] not in {last.reps, last.load}
    return [Part("not"), former, meant] if given else parts


def without_denied(tokens: Sequence[Token], parts: list[Part], context: Context) -> list[Part]:
    """The parts without the number of the last record that a closing "no" denies: "it is 10 kg, no 14", "was 11, no 10"."""
    last, numbers = context.last, [part for part in parts if part.numbers]
    if last is None or len(numbers) != len("ab") or numbers[0].kind not in {"bare", "load", "reps"}:
        return parts
    denied = numbers[1].numbers[0]
    had = last.load if numbers[0].kind == "load" else last.reps
    no = tokens[numbers[1].at - 1].text == "no" and numbers[1].kind in {"bare", numbers[0].kind}
    return [part for part in parts if part is not numbers[1]] if no and denied == had != numbers[0].numbers[0] else parts


def only_rejects(tokens: Sequence[Token], parts: Sequence[Part], marks: Mapping[str, Said]) -> bool:
    """Whether the one number said is called wrong, and none is given for it: "12 was a typo", but "12, typo"."""
    numbers = [part for part in parts if part.numbers]
    wrong = next((i for i, token in enumerate(tokens) if token.text in _WRONG), None)
    if "mark-amend" not in marks or len(numbers) != 1 or wrong is None or wrong < numbers[0].at:
        return False
    return all(token.text in _BEFORE_WRONG for token in tokens[numbers[0].at + 1 : wrong])


def with_rejected(tokens: Sequence[Token], parts: list[Part]) -> list[Part]:
    """The parts with what is given up marked as such: "11 should be 12", "8, the 9 was a typo", "20kg was wrong, it was 18kg"."""
    numbers = [part for part in parts if part.numbers]
    pair = len(numbers) == len("ab") and numbers[0].kind in {"bare", "reps", "load"} and not any(p.kind == "not" for p in parts)
    if not pair:
        return parts
    rest = [token.text for token in tokens[numbers[1].at + 1 :]]
    wrong = next((at for at, word in enumerate(rest) if word in _WRONG), None)
    if numbers[1].kind == "bare" and "was" in rest[:wrong] and wrong is not None and set(rest[:wrong]) <= _BEFORE_WRONG:
        return [Part("not"), numbers[1], numbers[0]]  # "8 reps, the 9 was a typo"
    between = [token.text for token in tokens[numbers[0].at : numbers[1].at]]
    denied = {*pairwise(between)} & {("not", "correct"), ("not", "right"), ("not", "accurate")}
    if "wrong" not in between and not denied and not _SHOULD_BE & {*pairwise(between)}:
        return parts
    meant = numbers[1]
    if meant.kind == "bare" and numbers[0].kind == "load":
        meant = replace(meant, kind="load")
    return [Part("not"), numbers[0], meant]
