"""Whether a set phrase means what it says where it stands: a wait, a feeling, an end, or only words beside something else."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise
from typing import TYPE_CHECKING

from core.reading.lexicon import COURTESY, ENGLISH, EXERCISES, GUARDS, PLACES, VOCABULARY, listed
from core.reading.objects import ABOUT_THE_SESSION, is_about_something_else
from core.reading.other_figures import tells_how_often
from core.reading.phrases import REQUESTS
from core.reading.quantities import HOLD_WORDS
from core.reading.spans import CLAUSE_ENDS
from core.reading.token import Kind, Token

if TYPE_CHECKING:
    from collections.abc import Sequence

    from core.reading.phrases import Said


OF_THE_SESSION = frozenset({"today", "workout", "session", "tonight", "day", "training", "todays"})
FEELINGS = {"heavy", "light", "right"}
WHEN = frozenset({"before", "when", "after", "while", "whilst", "until", "till", "because", "since", "as", "though", "although"})
_KEEPING = frozenset({"keep", "kept", "lost", "lose", "losing", "broke", "break", "breaking", "held", "hold", "holding", "keeping"})
_ASKING_FOR = listed("words_sentences", "asking_for")
OF_WAITING = listed("words_sentences", "waiting")


def stands(tokens: Sequence[Token], said: Said, first: int, last: int) -> bool:
    """Whether the phrase means what it says where it stands."""
    before = tokens[said.first - 1] if said.first > first else None
    if (
        said.meaning.startswith("units")
        and before is not None
        and (before.kind is Kind.NUMBER or before.text in {"much", "many", "few", "more"})
    ):
        return False  # "too much kilos for me"
    after = tokens[said.last] if said.last < last else None
    words = {token.text for token in tokens[said.first : said.last]}
    if said.meaning == "start" and words == {"hit", "me"} and any(tokens[i].text not in COURTESY for i in range(first, said.first)):
        return False  # "it just hit me"
    if said.meaning == "start" and tells_how_often(tokens[said.last : last]):
        return False  # "I want to train 3 times a week"
    if said.meaning == "start" and after is not None and _leads_to_weights(tokens, said.last, last):
        return False  # "can we go lighter", "I'm ready for something heavier"
    if said.meaning in ABOUT_THE_SESSION and is_about_something_else(tokens, said.first, last):
        return False  # "pause the telly"
    if said.meaning in _OF_ONES_OWN and of_somebody(tokens, said, first):
        return False  # "my friend can't train today"
    if said.meaning == "form-here" and words >= {"my", "head", "in"}:
        return False  # "lunges do my head in"
    if "instead" in words and said.meaning == "swap" and _had_instead(tokens, said, first):
        return False  # "no weight, had the toddler hanging off me instead"
    if said.meaning == "swap-here" and [token.text for token in tokens[said.last : said.last + 3]] in _OTHER_WEIGHTS:
        return False  # "give me something with more weight"
    if said.meaning == "pause":
        return _is_a_pause(tokens, said, first, last)
    if (
        said.meaning == "finish"
        and "go" in words
        and _HOW_DEEP & {token.text for token in tokens[max(first, said.first - 2) : said.first]}
    ):
        return False  # "explain how deep I must go"
    if said.meaning == "finish" and words & {"last", "final"} and not _is_told_before(tokens, said):
        return False  # "ready for the last one for today"
    if said.meaning == "finish" and "enough" in words and asked(tokens, first, last):
        return False  # "is 14kg enough for a woman of my age?"
    if said.meaning == "finish" and any(token.kind is Kind.NUMBER for token in tokens[said.last : last]):
        return bool({token.text for token in tokens[said.first : said.last]} & OF_THE_SESSION)
    if said.meaning == "resume" and _goes_otherwise(tokens, said, first):
        return False  # "which way do my elbows go on this?"
    if said.meaning in REQUESTS and is_thanked_for(tokens, said, first):
        return False  # "thanks for the tips"
    if said.meaning == "form" and said.exercise is None and tokens[said.first].text == "give" and not _OF_FORM & words:
        return False  # "give more"
    if (
        said.meaning in {"form", "form-here"}
        and tokens[said.last - 1].text == "how"
        and after is not None
        and after.text in _HOW_ELSE
    ):
        return False  # "show me how much the ticket is"
    if said.meaning in {"form", "form-here"} and _tells_of_form(tokens, said):
        return False  # "form was clean"
    if said.meaning == "help" and after is not None and after.text in _WHERE and tokens[said.last - 1].text in {"stuck", "lost"}:
        return False  # "stuck in town"
    if (
        said.meaning == "finish"
        and "enough" in words
        and {"was", "were"} & {t.text for t in tokens[max(first, said.first - 3) : said.first]}
    ):
        return False  # "six reps were quite enough for me"
    if said.meaning == "finish" and _gives_up_a_habit(tokens, said, first):
        return False  # "my right's weaker since I quit welding"
    if said.meaning == "finish" and ends_a_set(tokens, said, first):
        return False  # "8 reps, radio called so I stop there"
    if is_of_oneself(tokens, said):
        return False  # "I felt good today"
    if said.meaning == "right" and said.first == first and leads_to_a_set(tokens, said, last):
        return False  # "felt strong so I went up to 15 kg"
    if said.meaning == "skip-day" and of_dates(tokens, first, last):
        return False  # "away 21st to 24th, no training"
    if (
        tokens[first].text == "if"
        and not _is_polite(tokens, first)
        and said.meaning in {"finish", "skip", "skip-day", "start", "undo"}
    ):
        return False  # "if it's 12 again I'm out"
    if (
        said.meaning == "swap-here"
        and tokens[said.first].text in {"other", "another", "different"}
        and said.last - said.first <= len(("other", "one"))
    ):
        return not any(token.kind is Kind.NUMBER for token in tokens[first:last])  # "stronger side 12, other one 10"
    if said.meaning == "today" and tokens[said.first].text in {"today", "todays"}:
        return all(tokens[i].text in _ASKING_FOR or tokens[i].text in COURTESY for i in range(first, said.first))
    if said.meaning == "finish" and after is not None and _is_done_with_less(tokens, said, after):
        return False  # "I'm off to hers", "I'm out of puff", "I'm off sick", "done with this exercise"
    if (
        said.meaning == "form"
        and before is not None
        and before.text in _KEEPING
        and tokens[said.first].text in {"my", "the", "form"}
    ):
        return False  # "couldn't keep my form"
    if said.meaning == "form" and any(token.text in GUARDS["people"] for token in tokens[max(first, said.first - 3) : said.first]):
        return False  # "I was telling my wife how to do the crossword"
    if said.meaning == "skip" and before is not None and before.text in _LIFTING and tokens[said.first].text == "pass":
        return False  # "I fit carry pass that one"
    if said.meaning in FEELINGS and before is not None and before.text == "if" and not _wonders(tokens, said, first):
        return False  # "if that's ok"
    if said.meaning == "skip" and after is not None and after.text in SKIPPED_ELSEWHERE:
        return False  # "skip the next meeting"
    if said.meaning == "skip" and after is not None and (after.text == ":" or _skips_to(tokens, said)):
        return False
    if said.meaning == "skip" and last < len(tokens) and tokens[last].text == "?":
        begin = next((i + 1 for i in range(said.first - 1, first - 1, -1) if tokens[i].text in CLAUSE_ENDS), first)
        begin = begin if tokens[begin].text in {"can", "could", "may", "might"} else first
        return not any(token.kind is Kind.NUMBER for token in tokens[begin:last])  # "13 at 7kg, can I skip the next one?"
    if said.meaning == "right" and tokens[said.last - 1].text == "on" and after is not None and after.text in _ON_TIME:
        return False  # "washing machine finished bang on the beep"
    if said.meaning == "right" and before is not None and before.text in {"not", "never", "no", "hardly"}:
        return False  # "this is not good for me"
    if said.meaning == "right" and any(
        tokens[i].text in PLACES and tokens[i - 1].text not in {"each", "either", "both", "every", "per"}
        for i in range(first, said.first)
    ):
        return False  # "my knee hurt last year but it's fine now"
    if said.meaning == "heavy" and after is not None and after.text in {"less", "small", "few", "little", "low"}:
        return False  # "weight is too much less"
    if said.meaning == "light" and words & {"go", "move", "bump"} and "not" in {t.text for t in tokens[first : said.first]}:
        return False  # "the last one would not go up"
    if said.meaning in {"heavy", "light"} and _wonders(tokens, said, first):
        return True  # "I wonder whether I might have a lighter pair"
    if said.meaning in FEELINGS:
        return not (asked(tokens, first, last) or _is_said_by_others(tokens, said, first)) and not _of_something_else(
            tokens, said, first
        )
    return not _negated(tokens, said, first)


def _is_told_before(tokens: Sequence[Token], said: Said) -> bool:
    """Whether a set is told before the phrase, and nothing leads from there to another: "12 with 6kg, last one for today"."""
    told = next((i for i in range(said.first - 1, -1, -1) if tokens[i].kind is Kind.NUMBER), None)
    return told is not None and not {token.text for token in tokens[told:]} & {"ready", "next", "go", "then", "now", "start"}


def _is_a_pause(tokens: Sequence[Token], said: Said, first: int, last: int) -> bool:
    """Whether words of waiting ask to wait, and tell of no hold, no tempo and nobody else."""
    before = tokens[said.first - 1] if said.first > first else None
    after = tokens[said.last] if said.last < last else None
    if _was_forced(tokens, said, first) or (
        before is not None and before.text in _AUXILIARIES and of_somebody(tokens, said, first)
    ):
        return False  # "had to stop for a second at 8", "the kids are getting water"
    counted = after is not None and (after.kind is Kind.NUMBER or after.text == "and")
    held = any(token.text in HOLD_WORDS - {"hold", "hang", "wall"} for token in tokens[first:last])
    held = held or any(pair in _WALL_SITS for pair in pairwise(token.text for token in tokens[first:last]))
    held = held or (
        tokens[first].text == "i"
        and any(token.text == "hold" for token in tokens)
        and tokens[said.last - 1].text in {"minutes", "seconds"}
    )
    whole = said.first == first and all(tokens[i].text in COURTESY for i in range(said.last, last))
    if (
        not whole
        and _pauses_for(tokens, said)
        and any(token.kind is Kind.NUMBER for token in (*tokens[: said.first], *tokens[said.last :]))
    ):
        return False  # "10 at 12kg, pause 2 seconds at the bottom"
    return not counted and not held and not _tells_why(tokens, said, first) and _waits(tokens, said, first, last)


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


_THE_DAY = frozenset({"today", "tonight", "todays", "tonights"})
_OF_THE_PLAN = listed("words_standing", "of_the_plan")
_OF_DOING = frozenset({"how", "form", "technique", "posture", "demo", "demonstrate", "video", "correctly", "properly", "not"})


def past_a_figure(tokens: Sequence[Token], index: int, last: int) -> int:
    """Where a phrase that ends before `index` ends with a figure for a small word: "skip it *4 now*", "change this *1*"."""
    if index < last and tokens[index].text == "1" and tokens[index - 1].text in {"this", "that", "next"}:
        return index + 1
    figure = index + 1 < last and tokens[index].text == "4" and tokens[index + 1].text in _AFTER_FOUR
    return index + 2 if figure else index


_WALL_SITS = {("wall", "sit"), ("wall", "sits"), ("wall", "squat"), ("wall", "squats"), ("wall", "hold")}
_OFF = listed("words_standing", "off")
_LESS = frozenset({"exercise", "one", "station", "set", "move", "movement", "round", "side", "leg", "arm", "1"})


def _is_done_with_less(tokens: Sequence[Token], said: Said, after: Token) -> bool:
    """Whether what follows words of an end names what is over instead of the session: "I'm off work", "done with this exercise"."""
    if after.text in {"to", "of", "sick", "ill"}:
        return True
    ends = [token.text for token in tokens[max(0, said.last - 2) : said.last]]
    return (ends[-1] == "off" and after.text in _OFF) or (ends in (["with", "this"], ["with", "that"]) and after.text in _LESS)


_AGO = frozenset({"since", "when", "after", "before", "once", "until", "till"})
_OF_TRAINING = frozenset({"training", "exercising", "working", "lifting", "going", "being"})
_HABITS = listed("words_standing", "habits")


def _gives_up_a_habit(tokens: Sequence[Token], said: Said, first: int) -> bool:
    """Whether "I quit" tells of something else that was given up, or of long ago: "since I quit welding", "I quit sugar"."""
    if tokens[said.last - 1].text != "quit":
        return False
    led = {token.text for token in tokens[max(first, said.first - 2) : said.first]} & _AGO
    after = tokens[said.last].text if said.last < len(tokens) and not tokens[said.last].apart else ""
    return bool(led) or after in _HABITS or (after.endswith("ing") and after not in _OF_TRAINING)


_AFTER_FOUR = frozenset({"now", "this", "that", "me", "today", "tonight", "us"})
_OF_ONES_OWN = frozenset({"start", "resume", "finish", "swap", "swap-here", "skip", "skip-day", "heavy", "light", "right"})
_OTHER_WEIGHTS = [["with", much, "weight"] for much in ("more", "less", "extra", "lower", "higher")]
SKIPPED_ELSEWHERE = listed("words_when", "occasions") | listed("words_standing", "skipped_elsewhere")
"""What may be skipped and is no station: "skip the next meeting"."""
_HOW_DEEP = frozenset({"deep", "low", "high", "far", "wide", "fast", "slow", "slowly", "heavy", "down", "where", "light"})
_HOW_ELSE = frozenset({"much", "many", "often", "old", "late", "expensive", "come", "hot", "cold", "big"})
_HOW_MUCH = frozenset({"too", "so", "very", "really", "way", "much", "far", "quite", "pretty"})
_ON_TIME = frozenset({"the", "time", "cue", "schedule", "a", "my", "noon", "half"})
_OF_A_BACK = frozenset({"bad", "sore", "dodgy", "stiff", "lower", "his", "her", "their", "a"})
_COPULAS = frozenset({"is", "are", "was", "were", "felt"})
_AUXILIARIES = listed("words_standing", "auxiliaries")
_LIFTED = EXERCISES | {
    "weight", "weights", "load", "loads", "dumbbell", "dumbbells", "kettlebell", "kettlebells", "one", "ones", "pair", "set",
    "sets", "last", "exercise", "reps", "kg", "lb", "round", "station", "bar", "plates", "s", "workout", "session", "circuit",
    "whole", "thing", "current", "second", "first",
}  # fmt: skip


def of_somebody(tokens: Sequence[Token], said: Said, first: int) -> bool:
    """Whether somebody else is said to do it: "my mum is back", "my friend can't train today"."""
    at = said.first - 1
    if tokens[said.first].text == "back" and at >= first and tokens[at].text in _OF_A_BACK:
        return True  # "the wife's got a bad back again"
    while at >= first and tokens[at].text in _AUXILIARIES:
        at -= 1
    others = GUARDS["people"] | _LITTLE_ONES if said.meaning in FEELINGS else GUARDS["people"] | {"he", "she"}
    return at >= first and tokens[at].text in others


_WHERE = frozenset({"in", "at", "on", "behind", "under", "between", "inside", "outside", "near", "home", "indoors", "waiting"})
_TOLD = frozenset(
    {"was", "were", "is", "felt", "feels", "stayed", "stays", "held", "holds", "went", "got", "broke", "fell", "slipped"}
)
_CALLED = frozenset({"stop", "stopped", "call", "called", "finish", "finished", "end", "ended", "quit"})


_WONDERING = frozenset({"which", "what", "where", "how", "why", "who", "when", "does", "do", "did", "is", "are"})
_NOT_YET = frozenset({"before", "until", "till", "once", "if"})
_GOES_ON = (COURTESY - {"a", "the", "my"}) | frozenset(
    {"lets", "to", "can", "may", "could", "will", "you", "we", "us", "ready", "and", ",", "shall", "should"}
)


def _goes_otherwise(tokens: Sequence[Token], said: Said, first: int) -> bool:
    """Whether words of going on stand in a question, or tell of something else that goes on: "the lights go on"."""
    if said.first == first:
        return False
    begin = next((i + 1 for i in range(said.first - 1, first - 1, -1) if tokens[i].text in CLAUSE_ENDS), first)
    if (tokens[begin].text in _WONDERING and begin < said.first) or any(
        token.text in _NOT_YET for token in tokens[max(begin, said.first - 2) : said.first]
    ):
        return True
    return tokens[said.first].text == "go" and tokens[said.first - 1].text not in _GOES_ON


def _skips_to(tokens: Sequence[Token], said: Said) -> bool:
    """Whether it is a place that is skipped to, and not the next station: "skip to the bit where I'm strong"."""
    words = [token.text for token in tokens[said.first : said.last]]
    return words[-1] == "to" or words[-2:] == ["to", "the"]


_POLITE = (
    "if it is all the same",
    "if you do not mind",
    "if you would not mind",
    "if that is",
    "if possible",
    "if i may",
    "if it is ok",
)


def _is_polite(tokens: Sequence[Token], first: int) -> bool:
    """Whether an "if" only asks nicely: "if it's all the same to you I'll sit this one out"."""
    words = " ".join(token.text for token in tokens[first : first + 6])
    return words.startswith(_POLITE)


def is_of_oneself(tokens: Sequence[Token], said: Said) -> bool:
    """Whether "felt good" tells how the writer feels, and nothing of the weight: "I felt good today"."""
    words = [token.text for token in tokens[max(0, said.first - 3) : said.last]]
    at = next((i for i, word in enumerate(words) if word in {"feel", "felt", "feeling"}), None)
    if said.meaning != "right" or at is None or {"right", "perfect", "comfortable", "manageable"} & set(words[at:]):
        return False
    lead = [word for word in words[:at] if word not in {"really", "just", "am", "still", "actually", "have", "been"}]
    return lead[-1:] == ["i"]


def leads_to_a_set(tokens: Sequence[Token], said: Said, last: int) -> bool:
    """Whether a feeling only tells why the set that follows was done: "felt good so I did 12"."""
    after = tokens[said.last].text if said.last < last else ""
    return after == "so" and any(token.kind is Kind.NUMBER for token in tokens[said.last : last])


def _wonders(tokens: Sequence[Token], said: Said, first: int) -> bool:
    """Whether a wish is led in by nothing but a polite wondering about it: "I was wondering if I could have a lighter one"."""
    lead = {token.text for token in tokens[first : said.first]}
    wished = {token.text for token in tokens[said.first : said.last]}
    return bool(wished & _WISHED and lead & {"wonder", "wondering", "wondered", "mind"} and (lead | wished) & {"if", "whether"})


_WISHED = frozenset({"have", "had", "get", "use", "used", "try", "tried", "trouble", "ask", "trusted"})


def _is_said_by_others(tokens: Sequence[Token], said: Said, first: int) -> bool:
    """Whether somebody else finds it so: "my kid thinks they're too heavy"."""
    lead = [token.text for token in tokens[first : said.first]]
    return any(
        (one in GUARDS["people"] or one in {"he", "she", "buddy", "mate", "bro"}) and following in _FINDING
        for one, following in pairwise(lead)
    )


def _judges_otherwise(tokens: Sequence[Token], said: Said) -> bool:
    """Whether what follows a feeling names something else: "easy to forget", "rough on my shoulder", "too light outside"."""
    words = [token.text for token in tokens[said.last : said.last + 4]]
    if words[:1] == ["to"] and tokens[said.last - 1].text in {"easy", "hard", "tough", "difficult"}:
        return words[1:2] != [] and words[1] not in _LIFTING
    end = next((i for i, word in enumerate(words) if word in CLAUSE_ENDS or not word.isalpha()), len(words))
    return bool(_ELSEWHERE & set(words[:end])) or (words[:1] == ["on"] and bool(set(PLACES) & set(words[:end])))


_ELSEWHERE = listed("words_standing", "elsewhere")
_LIFTING = listed("words_standing", "lifting")
_CALLING = listed("words_phrases", "thing")
_LITTLE_ONES = frozenset({"baby", "man", "boy", "girl", "lad", "lass", "pikin", "bub"})
_OF_FORM = frozenset({"form", "technique", "demo", "video", "picture", "tips", "how", "again"})
_FINDING = frozenset({"thinks", "say", "says", "said", "reckons", "thought", "finds", "found", "told", "calls", "asked", "claims"})


def _was_forced(tokens: Sequence[Token], said: Said, first: int) -> bool:
    """Whether the wait is over and only told: "had to stop for a second at 8"."""
    return [token.text for token in tokens[max(first, said.first - 2) : said.first]] == ["had", "to"]


def _leads_to_weights(tokens: Sequence[Token], index: int, last: int) -> bool:
    """Whether what follows is how heavy it should be: "lighter", "for heavier", "for a heavier one"."""
    while index < last and tokens[index].text in {"for", "something", "a", "some", "the"}:
        index += 1
    return index < last and tokens[index].text in _WEIGHED


_WEIGHED = frozenset({"lighter", "heavier", "up", "down", "bigger", "smaller", "easier", "harder", "higher", "lower"})


def _pauses_for(tokens: Sequence[Token], said: Said) -> bool:
    """Whether a phrase begins with a word of pausing and tells for how many seconds, so that it may be a rest within the set."""
    timed = any(tokens[i].kind is Kind.NUMBER and tokens[i + 1].text == "seconds" for i in range(said.first, said.last - 1))
    return timed and tokens[said.first].text in {"pause", "pausing", "break", "wait"}


def of_dates(tokens: Sequence[Token], first: int, last: int) -> bool:
    """Whether a sentence is about days of the month, and not about today."""
    return any(token.kind is Kind.ORDINAL for token in tokens[first:last])


def is_thanked_for(tokens: Sequence[Token], said: Said, first: int) -> bool:
    """Whether the clause thanks for what the phrase names."""
    begin = next((i + 1 for i in range(said.first - 1, first - 1, -1) if tokens[i].text in CLAUSE_ENDS), first)
    words = [token.text for token in tokens[begin : said.last]]
    asked = {"trouble", "bother", "ask", "you'd"} & set(words)  # "might I trouble you for another exercise?"
    return not asked and any(one in {"thanks", "you", "cheers", "ta"} and following == "for" for one, following in pairwise(words))


def _tells_of_form(tokens: Sequence[Token], said: Said) -> bool:
    """Whether the form is told of and not asked for: "form was clean", "technique felt off", "I will tell you"."""
    if said.first and tokens[said.first - 1].text in {"i", "we"} and tokens[said.first].text == "will":
        return True
    words = [token.text for token in tokens[said.first : said.last + 1]]
    return words[0] in {"form", "technique"} and len(words) > 1 and words[1] in _TOLD


def ends_a_set(tokens: Sequence[Token], said: Said, first: int) -> bool:
    """Whether it is the set told before that was stopped: "9 reps so call it", "the phone rang so I stop there"."""
    verb = said.first + (tokens[said.first].text == "i")
    if {token.text for token in tokens[said.first : said.last]} & OF_THE_SESSION or tokens[verb].text not in _CALLED:
        return False
    lead = [token.text for token in tokens[max(first, verb - 2) : verb]]
    return lead in (["so", "i"], ["then", "i"]) and any(token.kind is Kind.NUMBER for token in tokens[:verb])


def _tells_why(tokens: Sequence[Token], said: Said, first: int) -> bool:
    """Whether a doorbell or a crying baby is only told beside a set: "before the phone rang", "my son is crying but ten"."""
    words = {token.text for token in tokens[said.first : said.last]}
    led = said.first > first and tokens[said.first - 1].text in WHEN
    recorded = any(token.kind is Kind.NUMBER or token.text in {"same", "ditto"} for token in tokens)
    recorded = recorded or tokens[0].text == "none"
    ahead = tokens[max(first, said.first - 3) : said.first]
    before = [token.text for token in ahead]
    counted = any(token.kind is Kind.NUMBER for token in ahead)
    led = led or (
        recorded and not counted and "with" in before and not words & {"sec", "second", "seconds", "minutes"}
    )  # "with a short pause"
    must = tokens[said.first].text in {"got", "have"} and tokens[said.first + 1].text == "to"
    return led or (not words & OF_WAITING and recorded and not must)


def _waits(tokens: Sequence[Token], said: Said, first: int, last: int) -> bool:
    """Whether a length of time beside a set is a wait: it stands by itself ("11 at 20kg, 2 secs"), not "3 sec negatives"."""
    lengths = [i for i in range(said.first, said.last) if tokens[i].kind is Kind.NUMBER]
    others = any(tokens[i].kind is Kind.NUMBER for i in range(first, last) if not said.first <= i < said.last)
    if not others or not lengths or lengths[0] != said.first:
        return True
    begin = said.first
    while begin > first and tokens[begin - 1].text in COURTESY | _CALLING:
        begin -= 1  # "doorbell sir one minute"
    begins = begin == first or tokens[begin - 1].text in CLAUSE_ENDS
    asked_for = "please" in {token.text for token in tokens[said.first : said.last + 1]}
    begins |= asked_for and tokens[begin - 1].text in {"kg", "lb", "reps", "rep"}  # "12 at 10kg one min please"
    ends = said.last == last or tokens[said.last].text in CLAUSE_ENDS | COURTESY
    return begins and ends


def goes_on(tokens: Sequence[Token], index: int) -> bool:
    """Whether "and a half" or "and ten" follows: a length of time, not a wait."""
    following = list(tokens[index : index + 2])
    return (
        len(following) > 1
        and following[0].text == "and"
        and (following[1].text in {"a", "half"} or following[1].kind is Kind.NUMBER)
    )


def asked(tokens: Sequence[Token], first: int, last: int) -> bool:
    """Whether the sentence is a question such as "is 16kg too heavy?"."""
    questions = {"if", "is", "are", "was", "will", "would", "should", "do"}
    return last < len(tokens) and tokens[last].text == "?" and tokens[first].text in questions


def _of_something_else(tokens: Sequence[Token], said: Said, first: int) -> bool:
    """Whether the feeling is about the traffic, the shoes or a knee, and not about the load."""
    lead = [token.text for token in tokens[max(first, said.first - 5) : said.first]]
    while lead and lead[-1] in _HOW_MUCH:
        lead.pop()
    after = tokens[said.last].text if said.last < len(tokens) else ""
    beyond = tokens[said.last + 1].text if said.last + 1 < len(tokens) else ""
    if after in _LIFE or (after in {"at", "in"} and beyond in _LIFE | {"the", "my"}) or _judges_otherwise(tokens, said):
        return True  # "was heavy traffic", "easy day at work"
    if lead[-1:] == ["the"] and tokens[said.last - 1].text in {"one", "ones"}:
        return True  # "the easy one is over"
    told = tokens[said.first].text in _COPULAS
    if lead and lead[-1] in _COPULAS:
        lead.pop()
        told = True
    if told and len(lead) > 1 and lead[-2] in {"the", "my", "our", "your"} and lead[-1] not in _LIFTED:
        return True  # "the film was too light"
    if lead and lead[-1].endswith("ly"):
        return False  # "frankly too heavy"
    if lead and lead[-1] in _LIFE:
        return True
    if lead[-2:] in (["next", "week"], ["next", "session"], ["next", "workout"]):
        return False  # "next week give me more weight"
    return bool(lead) and (lead[-1] in PLACES or (lead[-1] in ENGLISH and lead[-1] not in VOCABULARY))


_LIFE = frozenset({"work", "traffic", "rain", "life", "homework", "heat", "sun", "school", "kids", "day", "chores"})


def _negated(tokens: Sequence[Token], said: Said, first: int) -> bool:
    """Whether "not" or "should I" stands right before the phrase."""
    before = [token.text for token in tokens[max(first, said.first - 3) : said.first]]
    if before[-2:] in (["should", "i"], ["shall", "i"], ["do", "not"], ["did", "not"]) or before[-3:-1] == [
        "do",
        "not",
    ]:
        return True
    return bool(before) and before[-1] in {"not", "never", "nobody"} and tokens[said.first].text != "not"
