"""Whether one number is only about so much, or counts something else than a set: a distance, an age, a total, a change."""

from __future__ import annotations

from typing import TYPE_CHECKING

from core.reading.company import NAMING, is_counted
from core.reading.lexicon import AMOUNTS, GUARDS, VOCABULARY, listed
from core.reading.spelling import is_english
from core.reading.token import Kind, Token

if TYPE_CHECKING:
    from collections.abc import Sequence

_BESIDE_AFTER = 4
TOTALS = frozenset({"total", "altogether", "combined", "target", "hours"})
_BESIDE_TOTAL = frozenset(
    {"in", "of", ":", ",", "i", "have", "had", "did", "made", "do", "done", "completed", "a", "is", "was", "finished"}
)
_CHANCES = frozenset({"chance", "hope", "way", "danger", "possibility", "prospect", "sign"})
_SETS = frozenset({"sets", "rounds", "series"})
_DONE_WITH = frozenset({"reps", "rep", "set", "sets", "round", "rounds", "kg"})
_COMPARING = frozenset({"from", "than", "since", "like", "as", "after", "of", "per"})
_MOVED = listed("words_guards", "moved")
_WEIGHING = frozenset({"which", "that", "they", "each", "these", "those", "dumbbells", "ones", "kettlebells", "dumbbell"})
_BEFORE_FILLER = frozenset(
    {
        "was",
        "is",
        "um",
        "uh",
        "er",
        "erm",
        "hmm",
        "so",
        "like",
        "then",
        "just",
        "yes",
        "and",
        "got",
        "did",
        "managed",
        "made",
        "hit",
        "had",
    }
)
_TOLD_AT_LAST = (["that", "was"], ["it", "was"], ["i", "did"], ["i", "got"], ["that", "is"], ["i", "had"])
_BEFORE_A_PLACE = frozenset({"the", "my", "our", "his", "her", "their", "me", "us", "him", "them", "a", "all"})
_SUBJECTS = frozenset({"i", "it", "that", "we", "still", "but", "and", "then", "so"})
_TOLD_BY = frozenset({"was", "is", "did", "got", "said", "meant", "had", "managed", "made", "used", "should"})
_HEDGE_REACH = 3
_IDLING = frozenset({"waited", "wait", "waiting", "paused", "slept", "napped", "sat", "stretched", "breathed", "stood", "lost"})
_ARROWS = [[unit, stroke, ">"] for unit in ("kg", "lb", "reps", "weight", "load") for stroke in ("-", "=")]
_THINKING = frozenset({"think", "thought", "guess", "maybe", "probably"})
_AFFIRMING = listed("words_quantities", "affirming") | {"kg", "lb", "rep", "did", "got"}
_LIFTED_WITH = frozenset({"at", "@", "with", "without", "using", "done"})


def is_vague(tokens: Sequence[Token], index: int, first: int, *, strong: bool, bare: bool) -> bool:
    """Whether the number at `index` is only about so much, or counts something unknown."""
    before = tokens[index - 1].text if index > first else ""
    after = tokens[index + 1] if index + 1 < len(tokens) else None
    if before == "like":
        led = index - 1 > first and tokens[index - 2].text in _BEFORE_FILLER
        return not (strong and (led or (index - 1 == first and _is_told_of_at_last(tokens, index))))
    if (
        before in {"hardly", "scarcely"}
        or (before == "more" and _two_before(tokens, index, first) == "no")
        or (before == "plus" and index - 1 == first)
    ):
        return True
    if after is not None and _is_by_so_much(_two_before(tokens, index, first), before, after):
        return True
    if before == "no" and after is not None and after.text == "s" and after.glued:
        return True  # "no 14s here"
    arrow = [token.text for token in tokens[max(first, index - 3) : index]]  # "8x20kg -> 6x16kg", but "14 -> 16kg"
    if (before in {"some", "~", "<", ">", "minus", "twice", "thrice"} and arrow not in _ARROWS) or (
        before == "say" and index - first <= 1
    ):
        return True
    lead = tokens[index - 2].text if index - 1 > first else ""
    if (before == "to" and lead in {"close", "closer", "near", "nearer"}) or (before == "of" and lead in {"shy", "short"}):
        return True
    if _is_out_of_reach(tokens, index, first):
        return True
    if (bare and before in NAMING) or before == "past" or (before == "oh" and tokens[index].worded):
        return True
    if after is None:
        return False
    given = [token.text for token in tokens[index + 1 : index + 4]]
    if given[:2] in (["at", "noon"], ["at", "night"], ["at", "midnight"], ["at", "home"]) and not strong:
        return True
    weighed = [token.text for token in tokens[max(first, index - 3) : index]]
    if weighed in (["my", "weight", "was"], ["my", "weight", "is"], ["my", "weight", "being"]):
        return True
    if given[:2] == ["in", "all"] and any(token.kind is Kind.NUMBER for token in tokens[:index]):
        return True  # "another 3 after a breather, 10 in all"
    if given[:2] in (["too", "many"], ["too", "few"]):
        return True  # "that was 2 too many"
    if given == ["give", "or", "take"] or given[:2] == ["and", "change"] or given == ["and", "a", "bit"]:
        return True
    if given[:2] == ["for", "my"] and given[2:] and given[2] in GUARDS["people"]:
        return True
    if after.text in {"past", "noon", "pm", "am"} or [token.text for token in tokens[index + 1 : index + 3]] in (
        ["of", "us"],
        ["of", "you"],
    ):
        return True
    if (after.text in {"k", "yo"} and after.glued) or [token.text for token in tokens[index + 1 : index + 3]] == ["or", "so"]:
        return True
    if after.text in {"ish", "odd", "something", "plus", "+"}:
        return not (after.text in {"+", "plus"} and _is_added(tokens, index + 2))
    if after.kind is not Kind.WORD or after.apart:
        return False
    if after.text == "o" and not after.glued and tokens[index + 2 : index + 3] and tokens[index + 2].kind is not Kind.WORD:
        return False  # "only 5 o. 30kg"
    return (after.glued and after.text not in VOCABULARY) or (
        strong and bare and is_counted(after.text) and not _is_unknown_exercise(tokens, index + 1)
    )


def counts_otherwise(tokens: Sequence[Token], index: int, numbers: Sequence[int], *, strong: bool) -> bool:
    """Whether the word at `index` makes a number something else than a set: a distance, an age, a time, another day's."""
    word = tokens[index].text
    if word in GUARDS["measure"] and not (
        word in TOTALS and (totals_sets(tokens, index) or is_told_in_all(tokens, index, numbers))
    ):
        if word in {"weigh", "weighs", "weighing"} and tokens[index - 1].text in _WEIGHING and index + 1 in numbers:
            return False  # "the lightest dumbbells, which weigh three kilograms"
        if word == "old" and tokens[index - 1].text in {"the", "my", "me", "them", "those", "these", "our", "same"}:
            return False  # "the old 22lb ones from the loft"
        return not strong or any(index - 1 == i or index < i < index + _BESIDE_AFTER for i in numbers)
    if word in GUARDS["other_time"]:
        compared = index > 0 and tokens[index - 1].text in _COMPARING
        return not (strong and compared)
    return False


def is_told_in_all(tokens: Sequence[Token], index: int, numbers: Sequence[int]) -> bool:
    """Whether "total" only leads to the one count there is, by name: "total 12 reps I have done"."""
    counted = [i for i in numbers if i + 1 < len(tokens) and tokens[i + 1].text in AMOUNTS["reps"]]
    uncounted = [i for i in numbers if tokens[i + 1 : i + 2] == [] or tokens[i + 1].text not in {"kg", "lb", "s"}]
    grand = tokens[index + 1 : index + 2] != [] and tokens[index + 1].text == "of" and uncounted == [index + 2]
    return tokens[index].text == "total" and (counted == [index + 1] or grand)  # "a grand total of 7 with the 22.5kg"


def totals_sets(tokens: Sequence[Token], index: int) -> bool:
    """Whether the total at `index` only says how many sets there were: "total 3 sets", "3 sets in total"."""
    at = index + 1
    while at < len(tokens) and tokens[at].text in _BESIDE_TOTAL:
        at += 1
    ahead = at + 1 < len(tokens) and tokens[at].kind is Kind.NUMBER and tokens[at + 1].text in _SETS
    behind = [token.text for token in tokens[max(0, index - 3) : index] if token.text not in _BESIDE_TOTAL]
    return ahead or (behind[-1:] != [] and behind[-1] in _SETS)


def is_of_place(tokens: Sequence[Token], index: int, end: int, last: int) -> bool:
    """Whether a word such as "over" after the number at `end` tells where, and no doubt: "while the pasta boiled over"."""
    near = tokens[index].text == "between"
    led = tokens[index - 1].text if index else ""
    if near and led == "in" and index + 1 < last and tokens[index + 1].kind is Kind.WORD:
        return True  # "in between emails I did 12"
    if led in _MOVED and index + 1 < last and tokens[index + 1].kind is not Kind.NUMBER:
        return True  # "knocked over my beer grabbing the 20s"
    if led in {"knocked", "bowled"} and tokens[index].text == "over":
        return True  # "knocked over 14"
    number = next((i for i in range(index + 1, last) if tokens[i].kind is Kind.NUMBER), index)
    if any(tokens[i].text == ":" for i in range(index + 2, number)):
        return True  # "between school run and dinner: 12"
    if tokens[index + 1 : index + 2] and tokens[index + 1].text in _BEFORE_A_PLACE and _is_told_after(tokens, index + 2, number):
        return True  # "the phone heard me wrong over the fan it was 4"
    done = index > 0 and tokens[index - 1].text in _DONE_WITH and tokens[index + 1 : index + 2] != []
    if tokens[index].text == "over" and (
        (index + 1 == last and index > end) or (done and tokens[index + 1].kind is not Kind.NUMBER)
    ):
        return True  # "round 3 over", "15 reps over with 8 kg"
    return index > end + (0 if near else 1) and not any(tokens[i].kind is Kind.NUMBER for i in range(index + 1, last))


def _is_told_after(tokens: Sequence[Token], first: int, number: int) -> bool:
    """Whether a new statement begins between a place and the next number: "over the fan | it was 4"."""
    return any(tokens[i].text in _SUBJECTS and tokens[i + 1].text in _TOLD_BY for i in range(first, number - 1))


def bound_to(tokens: Sequence[Token], index: int, first: int, last: int) -> set[int]:
    """The number that a word of doubt at `index` is about: the next one near, else the one before."""
    ahead = next(
        (i for i in range(index + 1, min(index + 1 + _HEDGE_REACH, last)) if tokens[i].kind is Kind.NUMBER),
        None,
    )
    behind = next((i for i in range(index - 1, first - 1, -1) if tokens[i].kind is Kind.NUMBER), None)
    return {ahead if ahead is not None else behind} - {None}  # type: ignore[return-value]


def is_affirmed(tokens: Sequence[Token], index: int) -> bool:
    """Whether the number that "think" at `index` is about is said once more after a "yes": "I think I did eleven yes eleven"."""
    if tokens[index].text not in _THINKING:
        return False
    ahead = next((i for i in range(index + 1, len(tokens)) if tokens[i].kind is Kind.NUMBER), None)
    behind = next((i for i in range(index - 1, max(index - _HEDGE_REACH, 0) - 1, -1) if tokens[i].kind is Kind.NUMBER), None)
    return any(number is not None and _is_said_once_more(tokens, number) for number in (ahead, behind))


def _is_said_once_more(tokens: Sequence[Token], number: int) -> bool:
    """Whether the number at `number` follows once more, after a "yes" and nothing else that counts: "ten I think, yes ten"."""
    at = number + 1
    while at < len(tokens) and (tokens[at].text in _AFFIRMING or tokens[at].kind is Kind.MARK):
        at += 1
    again = at < len(tokens) and tokens[at].kind is Kind.NUMBER and tokens[at].value == tokens[number].value
    return again and any(tokens[i].text in {"yes", "aye", "definitely"} for i in range(number, at))


def _is_unknown_exercise(tokens: Sequence[Token], at: int) -> bool:
    """Whether a word of no language of ours after a count names what was done: "15 baithaks at 10kg"."""
    word, following = tokens[at].text, [token.text for token in tokens[at + 1 : at + 2]]
    return word not in VOCABULARY and not is_english(word) and following != [] and following[0] in _LIFTED_WITH


def _is_added(tokens: Sequence[Token], at: int) -> bool:
    """Whether a count follows a "plus": "10 plus 5", "ten plus another five after a breather"."""
    at += tokens[at : at + 1] != [] and tokens[at].text in {"another", "then"}
    return at < len(tokens) and tokens[at].kind is Kind.NUMBER


def _is_told_of_at_last(tokens: Sequence[Token], index: int) -> bool:
    """Whether the clause that tells a set ends in "that was" or "I did", so that "like" before it is a filler."""
    last = next((i for i in range(index, len(tokens)) if tokens[i].kind is Kind.MARK), len(tokens))
    return [token.text for token in tokens[last - 2 : last]] in _TOLD_AT_LAST


def _is_out_of_reach(tokens: Sequence[Token], index: int, first: int) -> bool:
    """Whether the number at `index` is what there was no chance of: "no chance of 15", "no way of doing 15"."""
    words = [token.text for token in tokens[max(first, index - 4) : index]]
    words = words[:-1] if words[-1:] != [] and words[-1].endswith("ing") else words
    return words[-3:-2] == ["no"] and words[-1] == "of" and words[-2] in _CHANCES


def _two_before(tokens: Sequence[Token], index: int, first: int) -> str:
    """The word two before the one at `index`, or nothing."""
    return tokens[index - 2].text if index - 1 > first else ""


def _is_by_so_much(lead: str, before: str, after: Token) -> bool:
    """Whether a number tells by how much something changed, or how long nothing was done: "down 3kg", "waited 30 seconds"."""
    if after.text in {"kg", "lb"}:
        return before in {"up", "down"} and lead not in {"picked", "pick", "picking"}
    if (lead, before) in {("make", "it"), ("make", "that")}:
        return after.text == "minutes"
    return before in _IDLING and (after.text in {"seconds", "second", "minutes"} or (after.text == "s" and after.glued))
