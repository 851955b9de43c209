"""Set phrases that are a whole clause: "done", "next", "left knee"."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from core.reading import phrases
from core.reading.acts import Awaiting, Context, Pain
from core.reading.around_phrases import FEELINGS, OF_THE_SESSION, OF_WAITING, WHEN, asked
from core.reading.beside import MAY_STAND_BESIDE, around_numbers, beside_told, may_stand_beside, may_trail
from core.reading.feelings import feeling
from core.reading.in_stories import is_told
from core.reading.lexicon import COURTESY, HURT, PLACES
from core.reading.objects import ABOUT_THE_SESSION, is_about_something_else
from core.reading.phrases import REQUESTS, Said
from core.reading.reading_so_far import Reading, act_of
from core.reading.spans import CLAUSE_ENDS, SENTENCE_ENDS, split
from core.reading.standing import of_dates, tells_of_its_unit
from core.reading.standing_ends import ends_a_set
from core.reading.standing_feelings import goes_on_of_something_else, is_of_oneself, judges_otherwise, leads_to_a_set
from core.reading.standing_requests import is_thanked_for
from core.reading.standing_waits import goes_on
from core.reading.token import Kind, Token
from core.reading.when import REMIND_WORDS

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

_CORRECTING = frozenset({"sorry", "oops", "whoops", "meant", "mean"})
_MOST_BESIDE_OK = 2
_LONGEST_TWO = 10


def corrects_unit(reading: Reading, said: Said) -> bool:
    """Whether "lbs not kg" after a record corrects it and sets nothing."""
    words = {token.text for token in reading.tokens[said.first : said.last]}
    recorded = reading.context.last is not None and reading.context.awaiting is Awaiting.NONE
    corrects = "not" in words or bool({token.text for token in reading.tokens} & _CORRECTING)
    return recorded and corrects and not words & {"use", "switch", "change", "show", "set", "prefer", "speak"}


def is_in_danger(reading: Reading) -> bool:
    """Whether an urgent sign was told, beside which "feel sick" asks for nothing else."""
    return any(isinstance(act, Pain) and act.urgent for _, act in reading.acts)


def read_alone(reading: Reading, first: int, last: int, *, phrases_found: bool) -> None:
    """Read the phrases that are all that the sentence, a clause, or what stands beside the numbers of a clause says."""
    tokens, wanted = reading.tokens, _alone(reading.context)
    if not phrases_found and phrases.whole(tokens, first, last, wanted) is not None:
        spans, tails, beside = [(first, last)], dict[tuple[int, int], bool](), set[tuple[int, int]]()
    else:
        spans = split(tokens, first, last, CLAUSE_ENDS | {"and", "-"})
        spans += [(start, cut) for start, end in spans if (cut := _before_a_reason(tokens, start, end)) is not None]
        tails = {tail: after for start, end in spans for tail, after in around_numbers(tokens, start, end).items()}
        spans += list(tails)
        beside = {span for start, end in spans for span in beside_told(tokens, reading.explained, start, end)}
        spans += sorted(beside - set(spans))
        apart = {span for start, end in spans for span in _after_told(reading, start, end)}
        spans += sorted(apart - set(spans))
        beside -= apart
    for start, end in spans:
        alone = phrases.whole(tokens, start, end, wanted)
        if alone is None and tails.get((start, end)) is not False:
            spans.extend(_two_in_a_row(reading, start, end))
        leads = tails.get((start, end)) is False
        if alone is None and (felt := feeling(tokens, start, end, leads=leads)) is not None:
            alone = Said(felt, start, end)
        if alone is None or reading.explained & set(range(start, end)):
            continue
        if alone.meaning == "today" and start and tokens[start - 1].text in PLACES:
            continue  # "knees ok today"
        if (start, end) in beside and not may_stand_beside(alone.meaning, {token.text for token in tokens[start:end]}):
            continue
        if alone.meaning.startswith("units") and (
            corrects_unit(reading, replace(alone, first=first, last=last))
            or _covers_the_loads(tokens, start, end)
            or tells_of_its_unit(tokens, alone)
        ):
            continue
        counted = any(token.kind is Kind.NUMBER for token in tokens)
        if alone.meaning == "have-nothing" and counted and {t.text for t in tokens[start:end]} & {"nothing", "none"}:
            continue  # "zero. nothing. my arms said no": no load is told
        if alone.meaning == "have-nothing" and counted:
            reading.phrases[start] = replace(alone, meaning="mark-bodyweight")
        elif _stands_alone(reading, alone, (first, last), tails.get((start, end))):
            led = start > first and (
                tokens[start - 1].text == "then" or [token.text for token in tokens[start - 2 : start]] == ["nice", "and"]
            )  # "left at the lights then right", "nice and cool"
            if alone.meaning == "start-if-go" and (
                led or _goes_on_otherwise(tokens, start, end) or _tells_how_it_is(tokens, start)
            ):
                continue
            reading.add(start, act_of(alone, reading.text))
            reading.explain(start, end)
            reading.phrases = {at: one for at, one in reading.phrases.items() if not start <= at < end}
            reading.phrases[start] = alone


def _after_told(reading: Reading, first: int, last: int) -> list[tuple[int, int]]:
    """What an emoji parts from words that are already told: "the right" (wrist) and then "next one"."""
    cut = next((i for i in range(first + 1, last) if reading.tokens[i].apart and i - 1 in reading.explained), None)
    return [] if cut is None or cut in reading.explained else [(cut, last)]


def _covers_the_loads(tokens: Sequence[Token], first: int, last: int) -> bool:
    """Whether a unit is only said at last of the loads before it: "12 at 16, 10 at 18, all kilos"."""
    gathers = any(token.text in {"all", "both"} for token in tokens[first:last])
    return gathers and any(token.kind is Kind.NUMBER for token in tokens[:first])


def _tells_how_it_is(tokens: Sequence[Token], first: int) -> bool:
    """Whether an "all good" at `first` tells how somebody or a part of the body is, and starts nothing: "knee ok now"."""
    place = tokens[first - 1].text in PLACES and tokens[first - 1].text != "back" if first else False
    return place or any(token.text in HURT for token in tokens)


def _goes_on_otherwise(tokens: Sequence[Token], first: int, last: int) -> bool:
    """Whether an "ok" only begins a message about something else: "ok so, how long is the rest?"."""
    rest = [*tokens[:first], *tokens[last:]]
    end = next((i for i in range(last, len(tokens)) if tokens[i].text in SENTENCE_ENDS or tokens[i].apart), len(tokens))
    beside = sum(token.kind is Kind.WORD and token.text not in COURTESY for token in tokens[last:end])
    return beside > _MOST_BESIDE_OK or any(token.text == "?" or token.kind is Kind.NUMBER for token in rest)


def _two_in_a_row(reading: Reading, first: int, last: int) -> list[tuple[int, int]]:
    """How a stretch parts into a feeling and another phrase that may stand beside it: "easy next one please"."""
    tokens = reading.tokens
    if last - first > _LONGEST_TWO or any(tokens[i].kind is not Kind.WORD for i in range(first, last)):
        return []
    wanted = _alone(reading.context)
    for cut in range(first + 1, last):
        felt = feeling(tokens, first, cut, leads=False)
        after = phrases.whole(tokens, cut, last, wanted) if felt is not None else None
        if after is not None and after.meaning in MAY_STAND_BESIDE | {"form", "form-here", "swap-here"}:
            return [(first, cut), (cut, last)]
    return []


def _before_a_reason(tokens: Sequence[Token], first: int, last: int) -> int | None:
    """Where a clause goes on to tell when or why: "go go go before he wakes up"."""
    cut = next((i for i in range(first + 1, last) if tokens[i].text in WHEN or tokens[i].apart), None)
    if cut is not None and any(token.text in REMIND_WORDS for token in tokens[first:cut]):
        return None  # "remind me when I am home"
    return None if cut is None or any(token.kind is Kind.NUMBER for token in tokens[first:last]) else cut


def _stands_alone(reading: Reading, alone: Said, sentence: tuple[int, int], tail: bool | None) -> bool:  # noqa: FBT001 - see below
    """Whether a clause that is one phrase means it; `tail` is None for a whole clause, else whether it follows numbers."""
    tokens = reading.tokens
    words = {token.text for token in tokens[alone.first : alone.last]}
    counted = any(token.kind is Kind.NUMBER for token in tokens)
    marked = {i for one in reading.phrases.values() if one.meaning.startswith("mark") for i in range(one.first, one.last)}
    waits = alone.meaning == "pause" and words == {"wait"} and all(token.text in COURTESY for token in tokens[alone.last :])
    leaves = words == {"that", "is", "me"}  # "13 at 10kg and that's me"
    if (tail is not None or counted) and marked >= set(range(alone.first, alone.last)) and not (leaves or (waits and tail is None)):
        return False
    if tail and words == {"here"}:
        return False  # "it's 12 here"
    if tail is not None and alone.meaning not in FEELINGS and not (tail and may_trail(alone.meaning, words)):
        return False
    if alone.meaning in ABOUT_THE_SESSION and is_about_something_else(tokens, alone.first, alone.last):
        return False
    if is_told(tokens, alone, *sentence):
        return False  # "used to hurt, not today"
    match alone.meaning:
        case "pause" if "rest" in words <= {"for", "the", "rest"} and "the" in words | {tokens[alone.first - 1].text}:
            return False  # "then 12 kg for the rest"
        case "pause" if counted and tokens[alone.first - 1].text == "because" and not words & OF_WAITING:
            return False  # "had to stop at 9 because nappy emergency"
        case "pause":
            if (
                counted
                and words == {"hold"}
                and {"i", "we"} & {token.text for token in tokens[max(0, alone.first - 1) : alone.first]}
            ):
                return False  # "plank 60 seconds I hold"
            denied = words in ({"not", "now"}, {"not", "yet"}) and alone.first > 0 and tokens[alone.first - 1].text == "but"
            return not denied and not goes_on(tokens, alone.last)
        case "skip" if reading.context.sides and "next" in words and {"left", "right"} & words:
            return False  # "did left only 12, right next"
        case "skip-day":
            return not of_dates(tokens, *sentence)
        case "finish" if {"that", "is", "me"} <= words and alone.last in reading.explained:
            return False  # "that's me back now", "that's me ready"
        case "finish" if tokens[sentence[0]].text == "if":
            return False  # "if it's 12 again I'm out"
        case "finish" if asked(tokens, *sentence):
            return False  # "is 14kg enough for a woman of my age?"
        case "resume" if words == {"back"} and {"to", "there"} & {token.text for token in tokens[sentence[0] : alone.first]}:
            return False  # "walked to the shop and back before this"
        case "resume" if words >= {"ah", "here"}:
            return False  # "ah here, I was counting the dog's jumps as well"
        case "resume" if words == {"back"} and _tells_of_then(tokens, alone.last):
            return False  # "back then I was thin"
        case "finish":
            told = (
                (_is_just_done(words) and not _goes_to_the_end(tokens, alone))
                or _ends_the_set(words, tail=tail)
                or ends_a_set(tokens, alone, sentence[0])
            )
            return not (counted and told)
        case "have-nothing":
            healed = any(token.text in PLACES for token in tokens)  # "shoulder pain last month, now nothing"
            return not healed and (reading.context.awaiting is not Awaiting.REPS or len(words) > 1)
        case "right" if is_of_oneself(tokens, alone):
            return False
        case feeling if feeling in FEELINGS:
            if tail and _tells_a_reserve(reading, alone):
                return False  # "could have done two more easy"
            if tail and alone.first > 1 and tokens[alone.first - 2].text in {"last", "final", "first"}:
                return False  # "last 2 were tough"
            if goes_on_of_something_else(tokens, alone, sentence[0]) or judges_otherwise(tokens, alone):
                return False  # "the handle is thin and hard", "feeling heavy after lunch"
            leads = alone.meaning == "right" and leads_to_a_set(tokens, alone, sentence[1])
            polite = tokens[alone.first].text == "if" or tokens[alone.first - 1].text == "if"
            return not asked(tokens, *sentence) and not leads and not polite
        case asking if asking in REQUESTS:
            return not is_thanked_for(tokens, alone, alone.first)
        case _:
            return True


def _tells_of_then(tokens: Sequence[Token], after: int) -> bool:
    """Whether "then" and what was follow at once: "(back) then I was thin"."""
    words = [token.text for token in tokens[after : after + 4]]
    return words[:1] == ["then"] and bool({"was", "were", "had", "used", "did", "could", "would"} & set(words[1:]))


def _tells_a_reserve(reading: Reading, said: Said) -> bool:
    """Whether "easy" only tells of what was left, right beside it: "two more easy", "a couple in the tank easy"."""
    tokens = reading.tokens
    left = [one for one in reading.phrases.values() if one.meaning in {"mark-reserve", "mark-could"}]
    beside = {i for one in left for i in range(one.first, one.last)}
    rest = {tokens[i].text for i in range(said.first, said.last) if i not in beside}
    led = any(said.first in {one.last, *range(one.first, one.last)} for one in left) or tokens[said.first - 1].text == "more"
    return led and rest == {"easy"}


def _is_just_done(words: set[str]) -> bool:
    """Whether "finished" beside a set speaks of the set and not of the session."""
    told = words & {"done", "finished", "complete", "completed", "through", "more"} or words == {"out"}
    return bool(told) and not words & OF_THE_SESSION


def _goes_to_the_end(tokens: Sequence[Token], said: Said) -> bool:
    """Whether "done" is what comes after the set: "11 with 22 and then we're done"."""
    return said.first > 0 and tokens[said.first - 1].text == "then"


def _ends_the_set(words: set[str], *, tail: bool | None) -> bool:
    """Whether it is the set that ended: "9 at 55 lb so call it", "12 reps 10 kg finish", "round 2 finish"."""
    if words == {"that", "is", "me"}:
        return False  # "13 at 10kg and that's me, bath time"
    return words - COURTESY <= {"call", "it"} or (tail is not None and words - COURTESY <= {"finish"})


def is_conversation(meaning: str) -> bool:
    """Whether a phrase is for the conversation, and no sign of pain and no answer."""
    return meaning != "pain" and not meaning.startswith(("urgent", "answer"))


def _alone(context: Context) -> Callable[[str], bool]:
    """Which phrases may stand alone: "ok" starts only when the conversation waits for it."""

    def wanted(meaning: str) -> bool:
        if meaning == "start-if-go":
            return context.awaiting is Awaiting.GO
        return meaning != "pain" and not meaning.startswith(("answer", "urgent"))

    return wanted
