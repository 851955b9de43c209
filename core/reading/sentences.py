"""One sentence becomes acts: what is owned, when, and the set phrases; its numbers are left to `records`."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from typing import TYPE_CHECKING

from core.reading import gear, phrases
from core.reading.acts import (
    Act,
    Again,
    Awaiting,
    Context,
    Feel,
    Finish,
    Form,
    Have,
    Help,
    Pain,
    Pause,
    Progress,
    Resume,
    Skip,
    Start,
    Swap,
    TimeLeft,
    Today,
    Undo,
    Units,
)
from core.reading.asking_on import goes_on_asking
from core.reading.beside import MAY_STAND_BESIDE, around_numbers, beside_told, may_stand_beside, may_trail
from core.reading.exercise_runs import naming_what_follows
from core.reading.feelings import feeling
from core.reading.lexicon import COURTESY, HURT, PLACES
from core.reading.naming import as_written
from core.reading.objects import ABOUT_THE_SESSION, is_about_something_else
from core.reading.phrases import REQUESTS, Said
from core.reading.sentence_times import read_times
from core.reading.side_words import LIMBS
from core.reading.spans import CLAUSE_ENDS, SENTENCE_ENDS, parted, split
from core.reading.standing import (
    FEELINGS,
    OF_THE_SESSION,
    OF_WAITING,
    WHEN,
    asked,
    ends_a_set,
    goes_on,
    in_its_place,
    is_of_oneself,
    is_thanked_for,
    leads_to_a_set,
    of_dates,
    past_a_figure,
    stands,
)
from core.reading.token import Kind, Token
from core.reading.unit_talk import unit_wished
from core.reading.when import REMIND_WORDS
from core.units import Unit

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence


_PLAIN_ACTS: dict[str, Act] = {
    "undo": Undo(),
    "start": Start(),
    "start-if-go": Start(),
    "pause": Pause(),
    "resume": Resume(),
    "finish": Finish(),
    "today": Today(),
    "help": Help(),
    "form-here": Form(),
    "skip": Skip(),
    "skip-day": Skip("day"),
    "swap-here": Swap(),
    "progress": Progress(),
    "heavy": Feel("heavy"),
    "light": Feel("light"),
    "right": Feel("right"),
    "units-kg": Units(Unit.KG),
    "units-lb": Units(Unit.LB),
    "have-nothing": Have(),
    "time-left": TimeLeft(),
    "again": Again(),
}
_NAMING_ACTS: dict[str, Callable[[str | None], Act]] = {"form": Form, "swap": Swap, "progress-on": Progress}


def act_of(said: Said, text: str) -> Act:
    """The act of a set phrase."""
    make = _NAMING_ACTS.get(said.meaning)
    return make(as_written(said.exercise, text)) if make is not None else _PLAIN_ACTS[said.meaning]


@dataclass(slots=True)
class Reading:
    """What has been found so far: acts with the index they begin at, and the tokens that are explained."""

    tokens: list[Token]
    context: Context
    text: str
    acts: list[tuple[int, Act]] = field(default_factory=list)
    explained: set[int] = field(default_factory=set)
    phrases: dict[int, Said] = field(default_factory=dict)

    def add(self, at: int, act: Act) -> None:
        """Take an act that begins at token `at`."""
        self.acts.append((at, act))

    def explain(self, first: int, last: int) -> None:
        """Account for tokens `[first, last)`."""
        self.explained.update(range(first, last))

    def words_at(self, at: int) -> set[str]:
        """The words of the phrase that begins at token `at`; none when no phrase does."""
        said = self.phrases.get(at)
        return {token.text for token in self.tokens[said.first : said.last]} if said is not None else set()


def read_sentence(reading: Reading, first: int, last: int) -> None:
    """Read tokens `[first, last)`, one sentence: gear, times, then set phrases anywhere in it and those that are a whole clause."""
    tokens, context = reading.tokens, reading.context
    asks = goes_on_asking(tokens, first, last)
    if asks is not None:
        read_sentence(reading, first, asks)
        read_sentence(reading, asks + 1, last)
        return
    owned = gear.gear(tokens, first, last, awaited=context.awaiting is Awaiting.REPS)
    apart = gear.begins(tokens, first, last)
    if apart is not None and (also := gear.gear(tokens, apart, last)) is not None:
        reading.add(apart, also)
        reading.explain(apart, last)
        read_sentence(reading, first, apart)
    elif owned is not None:
        reading.add(first, owned)
        reading.explain(first, last)
    elif not read_times(reading, first, last):
        before = len(reading.acts), len(reading.phrases)
        recorded = context.last is not None and context.awaiting in {Awaiting.NONE, Awaiting.GO}
        if (wish := unit_wished(tokens, first, last, recorded=recorded)) is not None:
            unit, clauses = wish
            reading.add(clauses[0][0], Units(unit))
            for clause in clauses:
                reading.explain(*clause)
        anything = _read_phrases(reading, first, last)
        _read_alone(reading, first, last, phrases_found=anything)
        stretches = list(parted(tokens, [(first, last)]))
        if (len(reading.acts), len(reading.phrases)) == before and len(stretches) > 1:
            for start, end in stretches:
                read_sentence(reading, start, end)


def _read_phrases(reading: Reading, first: int, last: int) -> bool:
    """Read the phrases that count wherever they stand; whether there are any."""
    tokens = reading.tokens
    said = [
        in_its_place(tokens, one, first, last, ready=reading.context.awaiting is Awaiting.GO)
        for one in phrases.find(tokens, first, last, _is_conversation)
        if not (reading.explained & set(range(one.first, one.last)))
    ]
    if reading.context.last is not None and reading.context.awaiting is not Awaiting.REPS:
        said = _changing_a_figure(tokens, said, last)
    correcting = any(one.meaning == "mark-amend" for one in said)
    counted = any(token.kind is Kind.NUMBER for token in tokens[first:last])
    for one in (naming_what_follows(tokens, each, first, last) for each in said):
        if one.meaning == "undo" and _takes_back_a_number(tokens, one, first, last):
            reading.phrases[one.first] = replace(one, meaning="mark-sorry")
        elif one.meaning == "mark-sorry" and tokens[one.last - 1].text == "bad" and _names_what_is_bad(tokens, one):
            continue  # "8 on my bad side"
        elif one.meaning == "swap-here" and counted and (spare := _had_another(tokens, one)) is not None:
            reading.phrases[one.first] = Said("mark-could", one.first, spare)
        elif one.meaning == "swap-here" and tokens[one.last - 1].text == "another" and _is_counted(tokens, one.last):
            continue  # "got another six"
        elif one.meaning == "have-nothing" and counted:
            reading.phrases[one.first] = replace(one, meaning="mark-bodyweight")
        elif (one.meaning == "skip-day" and tokens[one.first].text.startswith("feel") and _is_in_danger(reading)) or (
            one.meaning == "mark-load" and not _leads_to_a_load(tokens, one)
        ):
            continue
        elif (
            one.meaning == "mark-plain" and tokens[one.first].text in {"more", "left"} and tokens[one.first - 1].kind is Kind.NUMBER
        ):
            continue  # "a couple more left in me" counts them
        elif one.meaning == "mark-amend" and tokens[one.last - 1].text in {"fact", "reality"} and one.last == last and not counted:
            reading.phrases[one.first] = replace(one, meaning="mark-plain")  # "just right in fact"
        elif one.meaning.startswith("mark"):
            reading.phrases[one.first] = one
        elif one.meaning.startswith("units") and [token.text for token in tokens[one.last - 1 : one.last + 1]] == _TAKEN_APART:
            reading.phrases[one.last - 1] = Said("mark-not", one.last - 1, one.last + 1)  # "12.5 kg instead of 15 kg"
        elif not (one.meaning.startswith("units") and (correcting or _corrects_unit(reading, one))) and stands(
            tokens, one, first, last
        ):
            whole_day = one.meaning == "skip" and one.exercise is None and _of_the_day(tokens, one, first, last)
            reading.add(one.first, Skip("day") if whole_day else act_of(one, reading.text))
            reading.phrases[one.first] = one
            reading.explain(one.first, past_a_figure(tokens, one.last, last))
    return bool(said)


def _names_what_is_bad(tokens: Sequence[Token], said: Said) -> bool:
    """Whether "my bad" only begins the name of a side or a place: "my bad leg held up"."""
    return said.last < len(tokens) and tokens[said.last].text in LIMBS | PLACES.keys() | {"one"}


def _changing_a_figure(tokens: Sequence[Token], said: list[Said], last: int) -> list[Said]:
    """The phrases, with a "could you change my last one to 12" as a correction, which asks for no other exercise."""
    for one in said:
        if one.meaning != "swap-here" or not _EXCHANGING & {tokens[i].text for i in range(one.first, one.last)}:
            continue
        figure = next((i for i in range(one.last, last) if tokens[i].kind is Kind.NUMBER), None)
        if figure is None or tokens[figure - 1].text != "to" or not {t.text for t in tokens[one.last : figure]} <= _OF_THE_RECORD:
            continue
        changing = Said("mark-amend", one.first, figure)
        return [changing, *(other for other in said if not changing.first <= other.first < changing.last)]
    return said


_EXCHANGING = frozenset({"change", "switch", "alter"})
_OF_THE_RECORD = frozenset(
    {"to", "my", "the", "that", "this", "it", "last", "one", "set", "entry", "record", "reps", "weight", "load", "number", "log"}
)


def _of_the_day(tokens: Sequence[Token], said: Said, first: int, last: int) -> bool:
    """Whether what is left out is the day: "cba today", but "skip this one today"."""
    words = {token.text for token in tokens[said.first : said.last]}
    clause = {token.text for token in tokens[first:last]}
    return bool(clause & {"today", "tonight"}) and not words & {
        "this",
        "that",
        "one",
        "station",
        "exercise",
        "next",
        "set",
        "round",
    }


def _had_another(tokens: Sequence[Token], said: Said) -> int | None:
    """The index after "another" in "got another one in the tank", which asks for no other exercise; None when it does."""
    after = [token.text for token in tokens[said.last : said.last + 2]]
    another = next((i + 1 for i in range(said.first, said.last) if tokens[i].text == "another"), None)
    return another if after[:1] == ["left"] or after in (["in", "the"], ["in", "me"], ["in", "my"]) else None


def _is_counted(tokens: Sequence[Token], at: int) -> bool:
    return at < len(tokens) and tokens[at].kind is Kind.NUMBER


def _is_in_danger(reading: Reading) -> bool:
    """Whether an urgent sign was told, beside which "feel sick" asks for nothing else."""
    return any(isinstance(act, Pain) and act.urgent for _, act in reading.acts)


def _leads_to_a_load(tokens: Sequence[Token], said: Said) -> bool:
    """Whether "went up to" names the load of a set that is told after it, in the first number of the message."""
    numbers = [i for i, token in enumerate(tokens) if token.kind is Kind.NUMBER]
    if len(numbers) < len(("load", "reps")) or said.last not in numbers:
        return False
    place = numbers.index(said.last)
    counted = [token.text for token in tokens[said.last + 1 : numbers[place + 1]]] if place + 1 < len(numbers) else [""]
    return (place == 0 and "/" not in counted) or (bool(counted) and set(counted) <= _TO_ITS_COUNT)


_TO_ITS_COUNT = frozenset({"for", "and", "got", "did", "x", "hit", "managed", "made", ",", "then", "only"})
"""Words between a load that was gone up to and the reps done with it: "then bumped up to 30 for 8"."""


def _takes_back_a_number(tokens: Sequence[Token], said: Said, first: int, last: int) -> bool:
    """Whether "eleven scratch that twelve" takes back the number just said, and no record."""
    before = said.first > first and tokens[said.first - 1].kind is Kind.NUMBER
    return before and said.last < last and tokens[said.last].kind is Kind.NUMBER


def _corrects_unit(reading: Reading, said: Said) -> bool:
    """Whether "lbs not kg" after a record corrects it and sets nothing."""
    words = {token.text for token in reading.tokens[said.first : said.last]}
    recorded = reading.context.last is not None and reading.context.awaiting is Awaiting.NONE
    corrects = "not" in words or bool({token.text for token in reading.tokens} & _CORRECTING)
    return recorded and corrects and not words & {"use", "switch", "change", "show", "set", "prefer", "speak"}


_TAKEN_APART = ["instead", "of"]
_CORRECTING = frozenset({"sorry", "oops", "whoops", "meant", "mean"})


def _read_alone(reading: Reading, first: int, last: int, *, phrases_found: bool) -> None:
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
            _corrects_unit(reading, replace(alone, first=first, last=last)) or _covers_the_loads(tokens, start, end)
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


_MOST_BESIDE_OK = 2


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


_LONGEST_TWO = 10


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
        case "finish" if tokens[sentence[0]].text == "if":
            return False  # "if it's 12 again I'm out"
        case "finish" if asked(tokens, *sentence):
            return False  # "is 14kg enough for a woman of my age?"
        case "resume" if words == {"back"} and {"to", "there"} & {token.text for token in tokens[sentence[0] : alone.first]}:
            return False  # "walked to the shop and back before this"
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
            leads = alone.meaning == "right" and leads_to_a_set(tokens, alone, sentence[1])
            polite = tokens[alone.first].text == "if" or tokens[alone.first - 1].text == "if"
            return not asked(tokens, *sentence) and not leads and not polite
        case asking if asking in REQUESTS:
            return not is_thanked_for(tokens, alone, alone.first)
        case _:
            return True


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


def _is_conversation(meaning: str) -> bool:
    return meaning != "pain" and not meaning.startswith(("urgent", "answer"))


def _alone(context: Context) -> Callable[[str], bool]:
    """Which phrases may stand alone: "ok" starts only when the conversation waits for it."""

    def wanted(meaning: str) -> bool:
        if meaning == "start-if-go":
            return context.awaiting is Awaiting.GO
        return meaning != "pain" and not meaning.startswith(("answer", "urgent"))

    return wanted
