"""When a number is not a set: questions, plans, doubts, other people's numbers, other things that are counted.

A guard never decides what a number means; it only keeps it from becoming a record. Asking costs a second, a wrong record more.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from itertools import pairwise
from typing import TYPE_CHECKING

from core.reading.company import NAMING, is_count, is_counted, is_told_of_others
from core.reading.lexicon import AMOUNTS, COURTESY, ENGLISH, GUARDS, VOCABULARY, Sayings, listed
from core.reading.spelling import is_english
from core.reading.token import Kind, Token
from core.reading.whose import (
    DEGREE,
    addressed,
    is_intended,
    is_object,
    is_ordered,
    is_what_they_weigh,
    leads_with_someone,
    managed_something,
    only_imagined,
    reached_up,
    tried,
)

if TYPE_CHECKING:
    from collections.abc import Collection, Sequence

_FILLED_BY_STRANGERS = 0.5
_MOST_STRANGERS = 6
_BESIDE_AFTER = 4
_TOTALS = frozenset({"total", "altogether", "combined", "target", "hours"})
_DAYS_PAST = frozenset({"yesterday", "yesterdays", "monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday"})
_OTHER_DAYS = (
    "last night",
    "the other day",
    "the other night",
    "last week",
    "last year",
    "last month",
    "last summer",
    "last monday",
    "days ago",
    "a week ago",
    "hours ago",
)
_POINTED = tuple([one, verb] for one in ("that", "it", "this", "which", "those", "these") for verb in ("was", "were", "is", "be"))
_DATED = frozenset({"did", "do", "done", "had", "forgot", "sent", "send", "log", "logged", "report"})
_EXCUSING = frozenset({"i", "am", "so", "very", "terribly", "awfully", "sorry", "apologies", "my", ",", "oops", "forgive", "me"})
_BESIDE_TOTAL = frozenset(
    {"in", "of", ":", ",", "i", "have", "had", "did", "made", "do", "done", "completed", "a", "is", "was", "finished"}
)
_JUDGED = [[unit, verb] for unit in ("kg", "lb") for verb in ("is", "was")]
_SETS = frozenset({"sets", "rounds", "series"})
_DONE_WITH = frozenset({"reps", "rep", "set", "sets", "round", "rounds", "kg"})
_COMPARING = frozenset({"from", "than", "since", "like", "as", "after", "of", "per"})
_MOVED = listed("words_guards", "moved")
_ALSO_PLACES = frozenset({"over", "under", "about", "around", "between", "almost", "nearly"})
_REQUESTING = frozenset({"could", "can", "would", "will"})
_NOTING = listed("words_guards", "noting")
_WISHING = frozenset({"wish", "want", "like", "would", "beg", "desire", "am", "pleased", "happy", "proud", "glad"})
_LIFTS = frozenset({"curl", "row", "squat", "bench", "deadlift", "press", "lift", "manage", "carry", "hold", "shift"})
_WEIGHING = frozenset({"which", "that", "they", "each", "these", "those", "dumbbells", "ones", "kettlebells", "dumbbell"})
_NAMED = listed("words_guards", "named")
_MEANWHILE = frozenset(
    {"while", "whilst", "when", "with", "before", "after", "until", "till", "as", "since", "and", "because", "for", "at"}
)
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
_HEDGE_REACH = 3
_CODE_MARKS = frozenset("{}<>\\^~")
_DOING = listed("words_guards", "doing")
_SAYING = listed("words_guards", "saying")
_ASKING_FIRST = listed("words_guards", "asking_first")
_APPROVED = frozenset({"ok", "okay", "alright", "fine", "enough", "possible", "safe", "sufficient", "adequate", "correct", "right"})
_TELL_ME = frozenset({"tell", "confirm", "advise", "say", "inform"})
_BARELY = frozenset({"only", "just", "barely", "hardly", "not"})
_IDLING = frozenset({"waited", "wait", "waiting", "paused", "slept", "napped", "sat", "stretched", "breathed", "stood", "lost"})
_OWN = frozenset({"i", "i'd", "we", "my", "me", "for", "the", "a", "just", "already", "really", "think"})
_DID_THE = tuple([verb, "the"] for verb in ("did", "got", "hit", "made", "managed", "finished", "completed"))
_ASKS = Sayings("asks")
_ABLE_TO_DO = re.compile(r" (?:can|could) (?:do|manage|hit|make|get) ")
_OTHER_TIMES = Sayings("other_times")
_INJECTED = Sayings("injected")


_MOVES = frozenset({"exercise", "exercises", "move", "movement", "station", "circuit", "workout", "drill"})
_LATEST = frozenset({"last", "latest", "previous"})
_RECORDS = frozenset({"one", "set", "entry", "log", "record", "message", "text", "number", "reps", ",", ".", "please"})


@dataclass(frozen=True, slots=True)
class Told:
    """What is known of the tokens of a message before it is asked whether its numbers count.

    `soft` are the numbers that are reserve or effort, about which a doubt does no harm; `bare` those that nothing marks; `spoken`
    the words of set phrases that mean nothing by themselves, such as "that was".
    """

    soft: frozenset[int]
    bare: frozenset[int]
    spoken: frozenset[int]


def gives_orders(tokens: Sequence[Token]) -> bool:
    """Whether the text tries to order the assistant about, or is code: nothing in it is a record."""
    words = [token.text for token in tokens]
    orders = sum(word in GUARDS["orders"] for word in words)
    marks = sum(word in _CODE_MARKS or word == ":reversed:" for word in words)
    line = f" {' '.join(words)} "
    injected = [saying for saying in _INJECTED.within(line) if saying != "ignore the" or not _ignores_a_record(words)]
    return orders > 1 or marks > 1 or "sudo" in words or bool(injected)


def _ignores_a_record(words: Sequence[str]) -> bool:
    """Whether "ignore the" goes on with the last record: "ignore the last message, wrong chat"."""
    at = next(i for i in range(len(words)) if tuple(words[i : i + 2]) == ("ignore", "the"))
    return words[at + 2 : at + 3] != [] and words[at + 2] in _LATEST and set(words[at + 3 : at + 4]) <= _RECORDS


def keeps_back(
    tokens: Sequence[Token],
    first: int,
    last: int,
    free: Collection[int],
    told: Told,
    *,
    strong: bool,
) -> bool:
    """Whether the numbers in tokens `[first, last)`, one clause, must not become a record.

    `free` are the tokens that set phrases explain; `strong` is true when the numbers are said in full (reps and a unit), so that
    unknown words around them do little.
    """
    soft = told.soft
    inside = [i for i in range(first, last) if i not in free]
    if not strong and any(
        tokens[i].text == "minutes" and tokens[i - 1].text in {"a", "over", "under"} and i > first for i in inside
    ):
        return bool({tokens[i].text for i in inside} & GUARDS["hedge"])
    if any(tokens[i].kind in {Kind.ODD, Kind.CLOCK} for i in inside):
        return True
    numbers = [i for i in inside if tokens[i].kind is Kind.NUMBER]
    if all(i in soft for i in numbers):
        return False
    texts = {tokens[i].text for i in inside}
    core = [i for i in numbers if i not in soft]
    if (
        texts & GUARDS["foreign"]
        or any(tokens[i].text in _TOTALS and not (_totals_sets(tokens, i) or _is_told_in_all(tokens, i, numbers)) for i in inside)
        or any(_counts_otherwise(tokens, i, numbers, strong=strong) for i in inside)
    ):
        return True
    if any(_vague(tokens, i, first, strong=strong, bare=i in told.bare and i - 1 not in free) for i in core):
        return True
    parting = set(free) - told.spoken
    if not strong and not all(is_count(tokens, i, first, last, parting) for i in core if i in told.bare):
        return True
    ahead = [tokens[i].text for i in range(first, core[0]) if i not in parting]
    if ahead[:1] == ["no"]:
        ahead = ahead[2:]  # "no worries, got 10"
    meant = is_intended([tokens[i].text for i in range(first, core[0])])
    if meant or is_told_of_others(ahead) or leads_with_someone(ahead) or is_ordered(ahead):
        return True
    end = core[-1]
    leading = {tokens[i].text for i in inside if i < end and tokens[i - 1].text not in {"you", "they"}}
    if leading & (GUARDS["negation"] | GUARDS["plan"] | GUARDS["question"]) or any(
        tokens[i].text == "tomorrow" and i <= end + _BESIDE_AFTER for i in inside
    ):
        return True
    if any(
        tokens[i].text in GUARDS["hedge"]
        and not _bound(tokens, i, first, last) & set(soft)
        and not (tokens[i].text in _ALSO_PLACES and _is_of_place(tokens, i, end, last))
        for i in inside
    ):
        return True
    line = f" {' '.join(tokens[i].text for i in inside if i <= end + 1)} "
    if _ABLE_TO_DO.search(line) and not texts & {"only", "just", "until", "barely", "still"}:
        return True  # "I can do 15 in my sleep"
    if _OTHER_TIMES.within(f" {' '.join(tokens[i].text for i in inside)} "):
        return True
    asks = [ask for ask in _ASKS.within(line) if not (ask == "up to" and reached_up(line))]
    asks = [ask for ask in asks if not (ask == "try" and strong and tried(line))]
    if asks or _asks_first(tokens, inside, first, strong=strong):
        return True
    pointed = len(core) > 1 and tokens[end - 1].text in {"the", "this", "that", "these", "those"}  # "left 6, the 14kg is too heavy"
    lone = len(core) == 1 and any(t.kind is Kind.NUMBER for t in (*tokens[:first], *tokens[last:]))
    judged = end not in told.bare and (pointed or lone)
    after = [tokens[i].text for i in inside if i > end]
    if only_imagined(after) and not (judged and after[:2] in _JUDGED):
        return True  # but "only 7, 12.5 kg is too much"
    return _of_others(tokens, inside, end) or (strong and _strangers(tokens, inside))


def _asks_first(tokens: Sequence[Token], inside: Sequence[int], first: int, *, strong: bool) -> bool:
    """Whether the clause begins as a question does; "is 14 with 8 kilos" and "did 12" tell."""
    first = next((i for i in inside if tokens[i].text not in (COURTESY | _TELL_ME) - _OWN), first)
    if first not in inside or tokens[first].text not in _ASKING_FIRST:
        return False
    if tokens[first].text in _REQUESTING and tokens[first + 1 : first + 2] and tokens[first + 1].text in _BARELY:
        return False  # "could only find the 12kg pair"
    if tokens[first].text == "which" and first and tokens[first - 1].text == ",":
        return False  # "the lightest dumbbells, which weigh three kilograms"
    told = first + 1 in inside and (tokens[first + 1].kind is Kind.NUMBER or tokens[first + 1].text in {"done", "finished"})
    tells = told and tokens[first].text in {"is", "was", "did", "does"}
    closing = [token.text for token in tokens[inside[-1] : inside[-1] + 2]]
    asks = bool(_APPROVED & set(closing))  # "is 20kg for 12 ok"
    return asks or not (strong and tells)


def of_another_day(tokens: Sequence[Token], sentences: Sequence[tuple[int, int]], clauses: Sequence[tuple[int, int]]) -> bool:
    """Whether words beside the set say that it was not now: "but that was yesterday", "forgot to send it on monday"."""
    for first, last in (*clauses, *sentences):
        words = [token.text for token in tokens[first:last] if token.kind is Kind.WORD]
        line = f" {' '.join(words)} "
        dated = [word for word in words if word in _DAYS_PAST] or [time for time in _OTHER_DAYS if f" {time} " in line]
        if not dated or set(words) & _COMPARING:
            continue
        lead = line.partition(f" {dated[0]}")[0].split()
        while lead and lead[-1] in {"on", "from", "all", "just", "only", "back", "done", "actually", "the"}:
            lead.pop()
        if tuple(lead[:2]) in {tuple(one) for one in _POINTED} and set(lead) & _DATED:
            return True  # "that is what I did this time last year"
        if lead[-2:] in _POINTED or (lead[-1:] in (["it"], ["that"], ["this"], ["them"], ["those"]) and set(lead) & _DATED):
            return True
        if set(lead) <= COURTESY | {"but", "and", "oh", "was"}:
            after = line.partition(f" {dated[0]}")[2].split()
            if set(after) <= COURTESY | {"is", "set", "sets", "session", "was", "that", "this", "s", "though"}:
                return True
    return False


def polite_request(tokens: Sequence[Token], first: int, last: int) -> set[int]:
    """The first words of "could you please note 12 at 8 kg": an order said politely, not a question; empty when it is none."""
    at = first
    while at < last and tokens[at].text in COURTESY | _EXCUSING:
        at += 1
    asked = at + 1 < last and tokens[at].text in _REQUESTING and tokens[at + 1].text in {"you", "u"}
    offered = at + 1 < last and tokens[at].text in {"may", "can", "could", "might"} and tokens[at + 1].text == "i"
    told = at
    while told < last and tokens[told].text in _WISHING:
        told += 1
    if told > at and told + 1 < last and tokens[told].text == "to" and tokens[told + 1].text in _NOTING:
        return set(range(first, told + 2))  # "I wish to report fourteen repetitions"
    if asked or offered:
        end = at + 2
        while end < last and tokens[end].text in {"please", "kindly", "just", "be", "so", "good", "kind", "as", "to", "now"}:
            end += 1
        counts_along = end + 1 < last and (tokens[end].text, tokens[end + 1].text) == ("count", "to")
        if end < last and tokens[end].text in _NOTING and not counts_along:
            return set(range(first, end + 1))
    return set()


def _counts_otherwise(tokens: Sequence[Token], index: int, numbers: Sequence[int], *, strong: bool) -> bool:
    """Whether the word at `index` makes a number something else than a set: a distance, an age, a time, another day's."""
    word = tokens[index].text
    if word in GUARDS["measure"] and not (
        word in _TOTALS and (_totals_sets(tokens, index) or _is_told_in_all(tokens, index, numbers))
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


def _is_told_in_all(tokens: Sequence[Token], index: int, numbers: Sequence[int]) -> bool:
    """Whether "total" only leads to the one count there is, by name: "total 12 reps I have done"."""
    counted = [i for i in numbers if i + 1 < len(tokens) and tokens[i + 1].text in AMOUNTS["reps"]]
    uncounted = [i for i in numbers if tokens[i + 1 : i + 2] == [] or tokens[i + 1].text not in {"kg", "lb", "s"}]
    grand = tokens[index + 1 : index + 2] != [] and tokens[index + 1].text == "of" and uncounted == [index + 2]
    return tokens[index].text == "total" and (counted == [index + 1] or grand)  # "a grand total of 7 with the 22.5kg"


def _totals_sets(tokens: Sequence[Token], index: int) -> bool:
    """Whether the total at `index` only says how many sets there were: "total 3 sets", "3 sets in total"."""
    at = index + 1
    while at < len(tokens) and tokens[at].text in _BESIDE_TOTAL:
        at += 1
    ahead = at + 1 < len(tokens) and tokens[at].kind is Kind.NUMBER and tokens[at + 1].text in _SETS
    behind = [token.text for token in tokens[max(0, index - 3) : index] if token.text not in _BESIDE_TOTAL]
    return ahead or (behind[-1:] != [] and behind[-1] in _SETS)


def _is_of_place(tokens: Sequence[Token], index: int, end: int, last: int) -> bool:
    """Whether a word such as "over" after the number at `end` tells where, and no doubt: "while the pasta boiled over"."""
    near = tokens[index].text == "between"
    led = tokens[index - 1].text if index else ""
    if led in _MOVED and index + 1 < last and tokens[index + 1].kind is not Kind.NUMBER:
        return True  # "knocked over my beer grabbing the 20s"
    if led in {"knocked", "bowled"} and tokens[index].text == "over":
        return True  # "knocked over 14"
    number = next((i for i in range(index + 1, last) if tokens[i].kind is Kind.NUMBER), index)
    if any(tokens[i].text == ":" for i in range(index + 2, number)):
        return True  # "between school run and dinner: 12"
    done = index > 0 and tokens[index - 1].text in _DONE_WITH and tokens[index + 1 : index + 2] != []
    if tokens[index].text == "over" and (
        (index + 1 == last and index > end) or (done and tokens[index + 1].kind is not Kind.NUMBER)
    ):
        return True  # "round 3 over", "15 reps over with 8 kg"
    return index > end + (0 if near else 1) and not any(tokens[i].kind is Kind.NUMBER for i in range(index + 1, last))


def _bound(tokens: Sequence[Token], index: int, first: int, last: int) -> set[int]:
    """The number that a word of doubt at `index` is about: the next one near, else the one before."""
    ahead = next(
        (i for i in range(index + 1, min(index + 1 + _HEDGE_REACH, last)) if tokens[i].kind is Kind.NUMBER),
        None,
    )
    behind = next((i for i in range(index - 1, first - 1, -1) if tokens[i].kind is Kind.NUMBER), None)
    return {ahead if ahead is not None else behind} - {None}  # type: ignore[return-value]


_LIFTED_WITH = frozenset({"at", "@", "with", "without", "using", "done"})


def _vague(tokens: Sequence[Token], index: int, first: int, *, strong: bool, bare: bool) -> bool:
    """Whether the number at `index` is only about so much, or counts something unknown."""
    before = tokens[index - 1].text if index > first else ""
    after = tokens[index + 1] if index + 1 < len(tokens) else None
    if before == "like":
        return not (strong and index - 1 > first and tokens[index - 2].text in _BEFORE_FILLER)
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
    if before in {"some", "~", "<", ">", "minus"} or (before == "say" and index - first <= 1):
        return True
    lead = tokens[index - 2].text if index - 1 > first else ""
    if (before == "to" and lead in {"close", "closer", "near", "nearer"}) or (before == "of" and lead in {"shy", "short"}):
        return True
    if (bare and before in NAMING) or before == "past" or (before == "oh" and tokens[index].worded):
        return True
    if after is None:
        return False
    given = [token.text for token in tokens[index + 1 : index + 4]]
    if given[:2] in (["at", "noon"], ["at", "night"], ["at", "midnight"], ["at", "home"]) and not strong:
        return True
    weighed = [token.text for token in tokens[max(first, index - 3) : index]]
    if weighed in (["my", "weight", "was"], ["my", "weight", "is"]):
        return True
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
        return not (after.text in {"+", "plus"} and index + 2 < len(tokens) and tokens[index + 2].kind is Kind.NUMBER)
    if after.kind is not Kind.WORD or after.apart:
        return False
    if after.text == "o" and not after.glued and tokens[index + 2 : index + 3] and tokens[index + 2].kind is not Kind.WORD:
        return False  # "only 5 o. 30kg"
    return (after.glued and after.text not in VOCABULARY) or (
        strong and bare and is_counted(after.text) and not _is_unknown_exercise(tokens, index + 1)
    )


def _is_unknown_exercise(tokens: Sequence[Token], at: int) -> bool:
    """Whether a word of no language of ours after a count names what was done: "15 baithaks at 10kg"."""
    word, following = tokens[at].text, [token.text for token in tokens[at + 1 : at + 2]]
    return word not in VOCABULARY and not is_english(word) and following != [] and following[0] in _LIFTED_WITH


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


def _of_others(tokens: Sequence[Token], inside: Sequence[int], told: int) -> bool:
    """Whether the clause tells what somebody else did, or said; what stands after token `told` is told on the side."""
    words = [tokens[i].text for i in inside]
    for at, word in enumerate(words):
        following = words[at + 1] if at + 1 < len(words) else ""
        beside = inside[at] > told and bool(_MEANWHILE & {tokens[i].text for i in inside if told < i < inside[at]})
        if beside or (inside[at] > told and following not in _DOING and following):
            continue
        if word in {"they", "they're"} and is_what_they_weigh(tokens, inside[at] + 1):
            continue
        if word in GUARDS["others"] and word not in {"you", "your"}:
            return True
        whose = words[max(0, at - 2) : at]
        named = word in _NAMED and (whose[-1:] in (["my"], ["the"], ["our"], ["a"]) or whose[:1] in (["my"], ["our"]))
        acting = next((w for w in words[at + 1 :] if w not in DEGREE | {"is"}), "")
        if managed_something(words[at + 1 :]):
            continue  # "and my daughter only managed to get in the way"
        if named and acting in _DOING | _SAYING:
            return True
        if word == "you" and words[max(0, at - 3) : at - 1] in _DID_THE and tokens[inside[at] - 1].kind is Kind.NUMBER:
            continue  # "did the 12 you asked for"
        if word in {"you", "coach", "trainer", "video"} and following in _SAYING | {"did"}:
            return True
        if word in GUARDS["people"] and not is_object(words, at):
            later = words[at + 1 :]
            doing = next((n for n, w in enumerate(later) if w in _DOING or (w in _LIFTS and later[n - 1] in DEGREE)), None)
            if doing is not None and "i" not in later[:doing]:
                return True
            if "could" in later[:4] and not {"so", "and", "but", "i", "we"} & set(later[: later.index("could")]):
                return True  # "my grandad at 80 could still curl 15kg"
            if following in {"is", "turned", "turns"} and later[-1:] and tokens[inside[-1]].kind is Kind.NUMBER:
                return True  # "my son is 8"
    return False


def tells_otherwise(tokens: Sequence[Token]) -> bool:
    """Whether a message without numbers is about others, about another time, or denied ("same as my brother")."""
    texts = {token.text for token in tokens} - addressed(tokens)
    return any(texts & GUARDS[entry] for entry in ("people", "plan", "question")) or bool(texts & {"he", "she", "they", "?"})


def likens_no_set(tokens: Sequence[Token], first: int, last: int) -> bool:
    """Whether a "same" at `[first, last)` is asked about, or is a move and no set: "same again?", "not the same exercise again"."""
    before = [token.text for token in tokens[max(first - 2, 0) : first]]
    named = {token.text for token in tokens[first : last + 1]} & _MOVES
    asked = last < len(tokens) and tokens[last].text == "?"
    return bool(named) or asked or bool(set(before) & {"not", "never"}) or before in (["is", "it"], ["do", "i"])


def tells_of_others(tokens: Sequence[Token], first: int, last: int, free: Collection[int]) -> bool:
    """Whether a whole sentence is about somebody else ("my neighbour, who is eighty, did 12 at 3 kg") or imagined ("if I had")."""
    words = [tokens[i].text for i in range(first, last) if i not in free]
    if ("even", "though") in pairwise(words) or _imagined(tokens, first, last, free):
        return True
    for at, word in enumerate(words):
        if word in GUARDS["people"] and at and words[at - 1] in {"my", "the", "our"} and not is_object(words, at):
            later = words[at + 1 :]
            if managed_something(later):
                continue
            doing = next((n for n, w in enumerate(later) if w in {"did", "does", "managed", "lifts", "lifted"}), None)
            if doing is not None and "i" not in later[:doing]:
                return True
    return False


def _imagined(tokens: Sequence[Token], first: int, last: int, free: Collection[int]) -> bool:
    """Whether "if I" stands before the first number of a sentence."""
    number = next((i for i in range(first, last) if tokens[i].kind is Kind.NUMBER), first)
    ifs = [i for i in range(first, number) if tokens[i].text == "if" and i not in free]
    return any(tokens[i + 1].text == "i" for i in ifs) or (bool(ifs) and tokens[number - 1].text == "then")


def _strangers(tokens: Sequence[Token], inside: Sequence[int]) -> bool:
    """Whether too many words are unknown for the numbers to be trusted."""
    words = [tokens[i].text for i in inside if tokens[i].kind is Kind.WORD]
    strangers = sum(word not in VOCABULARY and word not in ENGLISH for word in words)
    return strangers > _MOST_STRANGERS or strangers > _FILLED_BY_STRANGERS * (len(words) + 1)
