"""Whether a request asks for what its words name: to start, go on, skip, swap, be shown how, or be told the day's plan."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise
from typing import TYPE_CHECKING

from core.reading.around_phrases import LIFTING
from core.reading.lexicon import COURTESY, GUARDS, listed
from core.reading.other_figures import tells_how_often
from core.reading.spans import CLAUSE_ENDS
from core.reading.token import Kind, Token

if TYPE_CHECKING:
    from collections.abc import Sequence

    from core.reading.phrases import Said


_GOING_TO = frozenset({"see", "meet", "visit", "eat", "chop", "home", "church", "out", "shopping", "swimming"})
_PAST = frozenset({"past", "by", "beyond", "through", "via", "round", "around"})
_CHORES = GUARDS["substance"] | listed("words_standing", "elsewhere") | listed("words_standing", "over_elsewhere")
_CALLED_UPON = frozenset({"god", "lord", "heaven", "heavens", "jesus", "allah", "saints"})
_TELLERS = frozenset({"i", "he", "she", "they", "we", "my", "it"})
_MEALS = frozenset({"tea", "dinner", "lunch", "breakfast", "supper", "pudding", "telly", "tv"})
_KEEPING = frozenset({"keep", "kept", "lost", "lose", "losing", "broke", "break", "breaking", "held", "hold", "holding", "keeping"})
_ASKING_FOR = listed("words_sentences", "asking_for")
_THE_DAY = frozenset({"today", "tonight", "todays", "tonights"})
_OF_THE_PLAN = listed("words_standing", "of_the_plan")
_OF_DOING = frozenset({"how", "form", "technique", "posture", "demo", "demonstrate", "video", "correctly", "properly", "not"})
_OTHER_WEIGHTS = [["with", much, "weight"] for much in ("more", "less", "extra", "lower", "higher")]
SKIPPED_ELSEWHERE = listed("words_when", "occasions") | listed("words_standing", "skipped_elsewhere")
"""What may be skipped and is no station: "skip the next meeting"."""
_TAGS = [[be, "not", what] for be in ("is", "was", "does") for what in ("it", "that", "this")]
_HOW_ELSE = frozenset({"much", "many", "often", "old", "late", "expensive", "come", "hot", "cold", "big"})
_WHERE = frozenset({"in", "at", "on", "behind", "under", "between", "inside", "outside", "near", "home", "indoors", "waiting"})
_TOLD = frozenset(
    {"was", "were", "is", "felt", "feels", "stayed", "stays", "held", "holds", "went", "got", "broke", "fell", "slipped"}
)
_WONDERING = frozenset({"which", "what", "where", "how", "why", "who", "when", "does", "do", "did", "is", "are"})
_WOULD = frozenset({"would", "might", "could", "nearly", "almost", "gonna", "will"})
_FALLING = frozenset({"drop", "lose", "chuck", "throw", "bin", "toss", "dump"})
_NOT_YET = frozenset({"before", "until", "till", "once", "if"})
_GOES_ON = (COURTESY - {"a", "the", "my"}) | frozenset(
    {"lets", "to", "can", "may", "could", "will", "you", "we", "us", "ready", "and", ",", "shall", "should"}
)
_OF_FORM = frozenset({"form", "technique", "demo", "video", "picture", "tips", "how", "again"})
_WEIGHED = frozenset({"lighter", "heavier", "up", "down", "bigger", "smaller", "easier", "harder", "higher", "lower"})


def start_stands(tokens: Sequence[Token], said: Said, first: int, last: int) -> bool:
    """Whether words of a start ask for one."""
    words = {token.text for token in tokens[said.first : said.last]}
    if words == {"hit", "me"} and any(tokens[i].text not in COURTESY for i in range(first, said.first)):
        return False  # "it just hit me"
    if tokens[said.last - 1].text == "go" and said.last < last and tokens[said.last].text in _GOING_TO:
        return False  # "we go see after church"
    if tokens[said.last - 1].text == "move" and said.last < last and tokens[said.last].text == "on":
        return False  # "let's move on with my life"
    if tokens[said.last - 1].text in {"go", "move"} and said.last < last and tokens[said.last].text in _PAST:
        return False  # "let's move past this one", "let's go past the shop first"
    if tells_how_often(tokens[said.last : last]):
        return False  # "I want to train 3 times a week"
    return said.last == last or not _leads_to_weights(tokens, said.last, last)  # "can we go lighter"


def swap_stands(tokens: Sequence[Token], said: Said, first: int, last: int) -> bool:
    """Whether words of a swap ask for another exercise, and not for another weight or a side."""
    if [token.text for token in tokens[said.last - 3 : said.last]] in _TAGS:
        return False  # "lovely weather today, isn't it"
    if said.meaning == "swap":
        told = "instead" in {token.text for token in tokens[said.first : said.last]} and _had_instead(tokens, said, first)
        return not told  # "no weight, had the toddler hanging off me instead"
    if [token.text for token in tokens[said.last : said.last + 3]] in _OTHER_WEIGHTS:
        return False  # "give me something with more weight"
    if tokens[said.last - 1].text in {"else", "different"} and _MEALS & {token.text for token in tokens[said.last : said.last + 3]}:
        return False  # "something different for tea tonight"
    short = said.last - said.first <= len(("other", "one"))
    if short and tokens[said.first].text in {"other", "another", "different"}:
        return not any(token.kind is Kind.NUMBER for token in tokens[first:last])  # "stronger side 12, other one 10"
    return True


def form_stands(tokens: Sequence[Token], said: Said, first: int, last: int) -> bool:
    """Whether the form of an exercise is asked for, and not told of."""
    words = {token.text for token in tokens[said.first : said.last]}
    after = tokens[said.last].text if said.last < last else ""
    if tokens[said.last - 1].text == "how" and after in _HOW_ELSE:
        return False  # "show me how much the ticket is"
    if _tells_of_form(tokens, said):
        return False  # "form was clean"
    if said.meaning == "form-here":
        return not words >= {"my", "head", "in"}  # "lunges do my head in"
    if said.exercise is None and tokens[said.first].text == "give" and not _OF_FORM & words:
        return False  # "give more"
    before = tokens[said.first - 1].text if said.first > first else ""
    if before in _KEEPING and tokens[said.first].text in {"my", "the", "form"}:
        return False  # "couldn't keep my form"
    told = any(token.text in GUARDS["people"] for token in tokens[max(first, said.first - 3) : said.first])
    return not told  # "I was telling my wife how to do the crossword"


def skip_stands(tokens: Sequence[Token], said: Said, first: int, last: int) -> bool:
    """Whether it is the station at hand that is to be skipped."""
    before = tokens[said.first - 1].text if said.first > first else ""
    after = tokens[said.last].text if said.last < last else ""
    if before in LIFTING and tokens[said.first].text == "pass":
        return False  # "I fit carry pass that one"
    if tokens[said.first].text == "next" and _tells_of_a_set(tokens, said):
        return False  # "first I do 12 with 8kg next I do 10"
    if after in SKIPPED_ELSEWHERE or (after and (after == ":" or _skips_to(tokens, said))):
        return False  # "skip the next meeting"
    if last < len(tokens) and tokens[last].text == "?":
        begin = next((i + 1 for i in range(said.first - 1, first - 1, -1) if tokens[i].text in CLAUSE_ENDS), first)
        begin = begin if tokens[begin].text in {"can", "could", "may", "might"} else first
        return not any(token.kind is Kind.NUMBER for token in tokens[begin:last])  # "13 at 7kg, can I skip the next one?"
    return True


def _tells_of_a_set(tokens: Sequence[Token], said: Said) -> bool:
    """Whether words that begin with "next" go on with a set that was done: "next I do 10 with 10kg"."""
    told = [token.text for token in tokens[said.first + 1 : said.first + 3]]
    counted = tokens[said.first + 3 : said.first + 4]
    return told in (["i", "do"], ["i", "did"], ["i", "got"]) and bool(counted) and counted[0].kind is Kind.NUMBER


def _is_elsewhere_now(tokens: Sequence[Token], said: Said) -> bool:
    """Whether somebody is only back in a place where they live: "I'm back stateside", "back in Cape Town"."""
    after = tokens[said.last : said.last + 3]
    if tokens[said.last - 1].text != "back" or not after or after[0].apart:
        return False
    named = after[1:] != [] and (after[1].raw[:1].isupper() or bool({token.text for token in after[1:]} & _COUNTRIES))
    return after[0].text in _ABROAD or (after[0].text in {"in", "to"} and named)


_ABROAD = frozenset({"stateside", "overseas", "abroad", "home"})
_COUNTRIES = frozenset(
    {"country", "states", "uk", "us", "usa", "europe", "town", "city", "village", "america", "england", "ireland"}
)


def resume_stands(tokens: Sequence[Token], said: Said, first: int) -> bool:
    """Whether it is the workout that is to go on: not "the lights go on", nor a question of which way something goes."""
    if _is_elsewhere_now(tokens, said):
        return False
    if said.first == first:
        return True
    begin = next((i + 1 for i in range(said.first - 1, first - 1, -1) if tokens[i].text in CLAUSE_ENDS), first)
    if (tokens[begin].text in _WONDERING and begin < said.first) or any(
        token.text in _NOT_YET for token in tokens[max(begin, said.first - 2) : said.first]
    ):
        return False
    return tokens[said.first].text != "go" or tokens[said.first - 1].text in _GOES_ON


def undo_stands(tokens: Sequence[Token], said: Said, first: int) -> bool:
    """Whether a record is to be taken back, and not a weight that would fall: "any heavier and I'd drop it"."""
    led = said.first > first and tokens[said.first - 1].text in _WOULD
    return not (led and tokens[said.first].text in _FALLING)


def help_stands(tokens: Sequence[Token], said: Said, last: int) -> bool:
    """Whether help is wanted with the assistant, and nobody is "stuck in town"."""
    after = said.last + (said.last < last and tokens[said.last].text == ",")
    if tokens[said.last - 1].text == "say" and after < last and tokens[after].text in _TELLERS:
        return False  # "what can I say, I love cheese"
    if said.first and tokens[said.first - 1].text in _CALLED_UPON:
        return False  # "god help me"
    if tokens[said.last - 1].text == "me" and said.last < last and _is_other_help(tokens, said.last):
        return False  # "can you help me with my homework"
    return tokens[said.last - 1].text not in {"stuck", "lost"} or said.last == last or tokens[said.last].text not in _WHERE


def _is_other_help(tokens: Sequence[Token], at: int) -> bool:
    """Whether help is wanted with something else than the assistant: "help me move house", "help me up"."""
    if tokens[at].text != "with":
        return tokens[at].text in {"up", "move", "find", "carry", "clean", "cook", "lift"}
    noun = next((token.text for token in tokens[at + 1 : at + 3] if token.text not in {"my", "the", "a", "some", "our"}), "")
    return noun in _CHORES


def today_stands(tokens: Sequence[Token], said: Said, first: int) -> bool:
    """Whether the day's plan is asked for."""
    asks = (tokens[i].text in _ASKING_FOR or tokens[i].text in COURTESY for i in range(first, said.first))
    return tokens[said.first].text not in {"today", "todays"} or all(asks)


def in_its_place(tokens: Sequence[Token], said: Said, first: int, last: int, *, ready: bool) -> Said:
    """The phrase with what it means here: "start again" goes on; where a go is waited for (`ready`) "crack on" starts."""
    if said.meaning in {"form", "form-here"} and _asks_for_the_plan(tokens, said, first, last):
        return replace(said, meaning="today", exercise=None)  # "could you tell me what exercises are planned for today?"
    if said.meaning == "start" and "again" in {token.text for token in tokens[first:last]}:
        here = {token.text for token in tokens[said.first : said.last + 1]}
        return said if ready and here >= {"ready", "go", "again"} else replace(said, meaning="resume")
    if said.meaning == "resume" and ready:
        words = [token.text for token in tokens[said.first : said.last]]
        ends = said.last == last or tokens[said.last].text in CLAUSE_ENDS
        leads = all(token.text in COURTESY for token in tokens[first : said.first])
        if words == ["crack", "on"] or (words == ["go", "on"] and ends and leads and last - first > len(words)):
            return replace(said, meaning="start")  # "go on then, let's have it"
    return said


def _asks_for_the_plan(tokens: Sequence[Token], said: Said, first: int, last: int) -> bool:
    """Whether what is to be shown or told is what the day brings, and not how something is done."""
    words = {token.text for token in tokens[first:last]}
    asked_for = {token.text for token in tokens[said.first : last]}
    return bool(asked_for & _THE_DAY and asked_for & _OF_THE_PLAN) and not words & _OF_DOING and _all_plan(said)


def _all_plan(said: Said) -> bool:
    """Whether what stands where an exercise is named is none, but the plan itself: "deck for today's workout"."""
    return said.exercise is None or bool(set(said.exercise.lower().replace("'s", "s").split()) & (_THE_DAY | _OF_THE_PLAN))


def is_thanked_for(tokens: Sequence[Token], said: Said, first: int) -> bool:
    """Whether the clause thanks for what the phrase names."""
    begin = next((i + 1 for i in range(said.first - 1, first - 1, -1) if tokens[i].text in CLAUSE_ENDS), first)
    words = [token.text for token in tokens[begin : said.last]]
    asked = {"trouble", "bother", "ask", "you'd"} & set(words)  # "might I trouble you for another exercise?"
    return not asked and any(one in {"thanks", "you", "cheers", "ta"} and following == "for" for one, following in pairwise(words))


def _had_instead(tokens: Sequence[Token], said: Said, first: int) -> bool:
    """Whether "instead" beside a number tells what was had in the place of a weight, and asks for nothing."""
    begin = next((i for i in range(said.first, first, -1) if tokens[i - 1].kind is Kind.MARK), first)
    held = {token.text for token in tokens[begin : said.first]} & {
        "had",
        "held",
        "used",
        "carried",
        "lifted",
        "carrying",
        "holding",
    }
    return said.exercise is None and bool(held) and any(token.kind is Kind.NUMBER for token in tokens[: said.first])


def _leads_to_weights(tokens: Sequence[Token], index: int, last: int) -> bool:
    """Whether what follows is how heavy it should be: "lighter", "for heavier", "for a heavier one"."""
    while index < last and tokens[index].text in {"for", "something", "a", "some", "the"}:
        index += 1
    return index < last and tokens[index].text in _WEIGHED


def _skips_to(tokens: Sequence[Token], said: Said) -> bool:
    """Whether it is a place that is skipped to, and not the next station: "skip to the bit where I'm strong"."""
    words = [token.text for token in tokens[said.first : said.last]]
    return words[-1] == "to" or words[-2:] == ["to", "the"]


def _tells_of_form(tokens: Sequence[Token], said: Said) -> bool:
    """Whether the form is told of and not asked for: "form was clean", "technique felt off", "I will tell you"."""
    if said.first and tokens[said.first - 1].text in {"i", "we"} and tokens[said.first].text == "will":
        return True
    words = [token.text for token in tokens[said.first : said.last + 1]]
    return words[0] in {"form", "technique"} and len(words) > 1 and words[1] in _TOLD
