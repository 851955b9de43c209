"""Numbers beside a set told in full that are none of it: "11 at 20kg, 3 stations to go", "8kg in each hand so 16"."""

from __future__ import annotations

from typing import TYPE_CHECKING

from core.reading import lost_counts
from core.reading.assembly import DOING, LISTING
from core.reading.company import is_count, is_counted
from core.reading.lexicon import COURTESY, EXERCISES, listed
from core.reading.sets import SIDES
from core.reading.token import Kind, Token

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from core.reading.parts import Part
    from core.reading.phrases import Said

_FINISHED = frozenset({"done", "completed", "complete", "finished", "over"})
_OF_THE_CLOCK = frozenset({"since", "before", "from", "past"})
_BESIDE_LIST = listed("words_sets", "beside_list")
_FITTING = listed("words_sets", "fitting")
_TRENDING = listed("words_sets", "trending")
_FEWEST_IN_A_ROW = 3
_APPROVED = frozenset({"ok", "fine", "good", "enough", "grand", "perfect", "alright", "right", "plenty", "great", "suitable", "do"})
"""What is said of a load that somebody would take, and has not lifted yet."""
WHILE = {
    "as",
    "while",
    "whilst",
    "before",
    "after",
    "until",
    "till",
    "though",
    "despite",
    "because",
    "when",
    ",",
    ".",
    "so",
    "since",
}
"""Words after which a clause goes on to something beside the set."""


def is_loose(tokens: Sequence[Token], clauses: Sequence[tuple[int, int]], parts: Sequence[Part], said: Mapping[int, Said]) -> bool:
    """Whether a bare number after a full set counts something else: "11 at 20kg, 3 stations to go", "but only 9 clean"."""
    if lost_counts.counts_the_last(tokens, [part.at for part in parts if part.kind in {"bare", "reps"}]):
        return True
    if _doubles_a_load(tokens, parts):
        return True
    named = [part for part in parts if part.kind in {"bare", "reps"}]
    if len(named) > 1 and any(
        tokens[part.at - 1].text == "in" and part.kind == "bare" and part.at > 1 and tokens[part.at - 2].text not in _FITTING
        for part in named
    ):
        return True  # "school gate in 5 but got 14 in"
    if len(named) > 1 and any(one.meaning == "mark-amend" and tokens[one.first].text == "supposed" for one in said.values()):
        return True  # "supposed to be 12 but only 9"
    if not is_told_in_full(parts):
        return False
    counted = [part for part in parts if part.kind in {"bare", "reps"}]
    if len(counted) > 1 and counted[0].kind == "bare" and tokens[counted[0].at - 1].text in _OF_THE_CLOCK:
        return True  # "been up since six. 11 at 14kg"
    for part in counted[1:]:
        first, last = next((span for span in clauses if span[0] <= part.at < span[1]), (0, len(tokens)))
        led = parts[parts.index(part) - 1].kind == "load" and part.dropped <= DOING | LISTING  # "12.5kg do 8"
        if part.kind == "bare" and not led and part.dropped - LISTING and not is_count(tokens, part.at, first, last, set(said)):
            return True
        after = part.at + 1
        if tokens[part.at - 1].text in {"at", "@", "with", "on"}:
            continue  # "6 @26 failure"
        following = parts[parts.index(part) + 1 :][:2]
        numbered = [one.kind for one in following if one.kind not in {"with", "in", "at"}][:1] == ["label"]
        numbered |= tokens[after : after + 1] != [] and tokens[after].text in {"after", "afterwards"}
        if part.kind == "bare" and tokens[part.at - 1].text == "so" and not numbered:
            return True  # "8kg in each hand so 16", but "so 8 on 2nd"
        if (tokens[part.at - 2].text, tokens[part.at - 1].text) == ("the", "last"):
            return True  # "the last 2 were half"
        if part.kind == "bare" and after in said and said[after].meaning == "mark-failure":
            if tokens[after].text == "failure" and parts[parts.index(part) - 1].kind in {*SIDES, "label"}:
                continue  # "left 9 failure right 10 failure 14kg"
            return _tells_the_last_rep(tokens[after].text, part, counted)  # "11 at 20kg, 12 failed"
        if part.kind == "bare" and after < len(tokens) and after not in said and tokens[after].kind is Kind.WORD:
            word = tokens[after].text
            failed = after + 1 in said and said[after + 1].meaning == "mark-failure"  # "9 with nothing left"
            if word == "with" and failed:
                continue
            if word == "with" and not any(token.kind is Kind.NUMBER for token in tokens[after : after + 4]):
                return True  # "3 with help"
            if word == "of" and _ends_in_them(tokens, after):
                continue  # "and then just four of them at 20 kg"
            if word == "in" and not numbered and tokens[min(after + 1, len(tokens) - 1)].text in {"the", "my", "me"}:
                return True  # "3 in the bak"
            if word in _FINISHED and parts[parts.index(part) - 1].kind in {*SIDES, "label"}:
                continue  # "left side 12 done, right side 11 done"
            if word in _FINISHED and _closes_a_list(parts, part):
                continue  # "I had 12, 11 and 9 done, all with 20kg"
            if parts[parts.index(part) - 1].kind == "label" and not is_counted(word):
                continue  # "r1 12 r2 10 baby woke up"
            if word == "of" and _goes_with_a_load(parts, part):
                continue  # "12 reps of 10kg and 8 of 14kg"
            aim = tokens[min(after + 1, len(tokens) - 1)].text == "to"  # "8 9 10 going to the shops"
            if word in _TRENDING and not aim and _ends_a_row(parts, part):
                continue  # "8 9 10 going up, all at 30lb"
            if word in EXERCISES and word.endswith("s"):
                continue  # "12 rows left side, 12 rows right side"
            if word not in _BESIDE_LIST | WHILE and word not in COURTESY and not tokens[after].glued:
                return True
    return False


def _tells_the_last_rep(word: str, part: Part, counted: Sequence[Part]) -> bool:
    """Whether a count and a word of failing tell which rep failed, and no set of its own: "11 at 20kg, 12 failure"."""
    before = counted[counted.index(part) - 1].numbers[0]
    return word in {"failed", "fail", "missed"} or (word == "failure" and part.numbers[0] > before)


def _ends_in_them(tokens: Sequence[Token], at: int) -> bool:
    """Whether the count is only "of them", and its load follows: "four of them at 20 kg", but not "3 of them ugly"."""
    words = [token.text for token in tokens[at : at + 3]]
    return words[1:] in (["them", "at"], ["them", "with"]) and tokens[at + 3 : at + 4] != [] and tokens[at + 3].kind is Kind.NUMBER


def _goes_with_a_load(parts: Sequence[Part], part: Part) -> bool:
    """Whether "of" joins a count to its load: "8 of 14kg"."""
    return [one.kind for one in parts[parts.index(part) + 1 :][:2]] == ["of", "load"]


def _ends_a_row(parts: Sequence[Part], part: Part) -> bool:
    """Whether a count is the last of several, and their load is told after them: "8 9 10"."""
    counted = [one for one in parts if one.kind in {"bare", "reps"}]
    before = parts[: parts.index(part)]
    return counted[-1] is part and len(counted) >= _FEWEST_IN_A_ROW and not any(one.kind == "load" for one in before)


def _doubles_a_load(tokens: Sequence[Token], parts: Sequence[Part]) -> bool:
    """Whether the one count only adds up what both hands held: "8kg in each hand so 16"."""
    numbers = [part for part in parts if part.numbers]
    if [part.kind for part in numbers] != ["load", "bare"] or tokens[numbers[1].at - 1].text not in {"so", "makes", "making"}:
        return False
    return numbers[1].numbers[0] == 2 * numbers[0].numbers[0] and any(part.kind in {"hands", "each"} for part in parts)


def _closes_a_list(parts: Sequence[Part], part: Part) -> bool:
    """Whether a count ends a list with an "and", and no load was told before it."""
    before = parts[: parts.index(part)]
    return before[-1].kind == "and" and not any(one.kind in {"load", "bodyweight"} for one in before)


def judges_a_load(tokens: Sequence[Token], parts: Sequence[Part]) -> bool:
    """Whether a lone number is a dumbbell that is judged: "the 16 was too heavy", "12kg is okay for me"."""
    numbers = [part for part in parts if part.numbers]
    if len(numbers) != 1 or numbers[0].kind not in {"bare", "load"}:
        return False
    after = [token.text for token in tokens[numbers[0].at + 1 : numbers[0].at + 6]]
    if numbers[0].kind == "load":
        return after[1:2] in (["is"], ["will"], ["would"], ["should"]) and bool(_APPROVED & set(after[2:]))
    return after[:1] in (["was"], ["is"], ["felt"], ["feels"], ["were"]) and bool(
        set(after) & {"heavy", "light", "heavier", "lighter"}
    )


def is_told_in_full(parts: Sequence[Part]) -> bool:
    """Whether reps and load are said in full."""
    kinds = {part.kind for part in parts}
    parts = [part for part in parts if part.kind not in {"each", "hands", "left_side", "left", "right", "failure", "label"}]
    joined = any(
        link.kind in {"at", "at_sign", "with"} and "bare" in {one.kind, other.kind} and one.numbers and other.kind == "bare"
        for one, link, other in zip(parts, parts[1:], parts[2:], strict=False)
    )
    return joined or (bool(kinds & {"load", "bodyweight"}) and bool(kinds & {"bare", "reps"})) or "reps" in kinds
