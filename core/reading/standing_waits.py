"""Whether words of waiting ask to wait: no hold, no tempo, no rest within a set, and nobody else."""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING

from core.reading.around_phrases import AUXILIARIES, OF_WAITING, WHEN, of_somebody
from core.reading.lexicon import COURTESY, listed
from core.reading.quantities import HOLD_WORDS
from core.reading.spans import CLAUSE_ENDS
from core.reading.token import Kind, Token

if TYPE_CHECKING:
    from collections.abc import Sequence

    from core.reading.phrases import Said


_WALL_SITS = {("wall", "sit"), ("wall", "sits"), ("wall", "squat"), ("wall", "squats"), ("wall", "hold")}
_CARRIED = frozenset({"carried", "walked", "hung", "held", "stayed", "kept"})
_RESTED = (["rested"], ["waited"], ["breathed"], ["stopped"], ["managed"], ["did"], ["lasted"], ["got"], ["made"], ["in"])
_HANGS = frozenset({"hang", "hold", "plank", "carry"})
_FETCHING = frozenset({"drink", "get", "grab", "fetch", "sip", "have", "take"})
_TELLING = frozenset(
    {"says", "say", "said", "tells", "tell", "told", "asks", "asked", "reminds", "likes", "always", "every", "usually"}
)
_ERRANDS = listed("words_standing", "errands")
_PUTTING_RIGHT = frozenset({",", "no", "nah", "naw", "sorry", "it", "is", "was", "i", "mean", "meant", "actually", "make", "that"})
_CALLING = listed("words_phrases", "thing")


def asks_to_wait(tokens: Sequence[Token], said: Said, first: int, last: int) -> bool:
    """Whether words of waiting ask to wait, and tell of no hold, no tempo and nobody else."""
    before = tokens[said.first - 1] if said.first > first else None
    after = tokens[said.last] if said.last < last else None
    if _was_forced(tokens, said, first) or (before is not None and before.text in AUXILIARIES and of_somebody(tokens, said, first)):
        return False  # "had to stop for a second at 8", "the kids are getting water"
    if _is_an_errand(tokens, said, first) or _is_fetched_otherwise(tokens, said, first):
        return False  # "doctor says drink water", "I have put my shoes on and drunk water"
    counted = after is not None and (after.kind is Kind.NUMBER or after.text == "and" or _puts_right(tokens, said, first, last))
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
    held = held or _is_held_out(tokens, said, first)
    held = held or _is_spent(tokens, said, first, last)
    return not counted and not held and not _tells_why(tokens, said, first) and _waits(tokens, said, first, last)


def _is_held_out(tokens: Sequence[Token], said: Said, first: int) -> bool:
    """Whether it is told that something could be held: "I was able to hold the position"."""
    lead = [token.text for token in tokens[max(first, said.first - 3) : said.first]]
    return tokens[said.first].text in {"hold", "keep"} and (lead[-2:] == ["able", "to"] or lead[-1:] in _MANAGING)


_MANAGING = (["could"], ["managed"], ["did"], ["can"], ["only"])


def _is_an_errand(tokens: Sequence[Token], said: Said, first: int) -> bool:
    """Whether what must be got, beside a set, is something for afterwards: "10 with 9kg, gotta get the laundry"."""
    words = {token.text for token in tokens[said.first : said.last]}
    counted = any(token.kind is Kind.NUMBER for token in tokens[first : said.first])
    return counted and bool(words & {"get", "take", "sort", "change", "grab"}) and bool(words & _ERRANDS)


def _is_fetched_otherwise(tokens: Sequence[Token], said: Said, first: int) -> bool:
    """Whether a drink is what others tell to have, or was had before: "mum tells me to drink water", "I don drink water"."""
    if tokens[said.first].text not in _FETCHING or said.first == first:
        return False
    lead = [token.text for token in tokens[first : said.first]]
    others = bool(set(lead) & _TELLING) and not set(lead) & {"need", "want", "going", "must"}
    return others or (lead[-1] in {"and", "&"} and bool(set(lead) & {"have", "don", "did", "done", "already", "had"}))


def _puts_right(tokens: Sequence[Token], said: Said, first: int, last: int) -> bool:
    """Whether a "hang on" stands between a number and the right one: "fifteen hang on no sixteen with six kilos"."""
    at = said.last
    while at < last and tokens[at].text in _PUTTING_RIGHT:
        at += 1
    corrected = said.last < at < last and tokens[at].kind is Kind.NUMBER
    return corrected and any(token.kind is Kind.NUMBER for token in tokens[max(first, said.first - 4) : said.first])


def _was_forced(tokens: Sequence[Token], said: Said, first: int) -> bool:
    """Whether the wait is over and only told: "had to stop for a second at 8"."""
    return [token.text for token in tokens[max(first, said.first - 2) : said.first]] == ["had", "to"]


def _is_spent(tokens: Sequence[Token], said: Said, first: int, last: int) -> bool:
    """Whether a length of time was one of rest or of holding: "then rested half a minute", "carried the 16s for half a minute"."""
    lead = [token.text for token in tokens[first : said.first]]
    carried = lead[-1:] == ["for"] and bool(_CARRIED & set(lead))
    within = lead[-2:] == ["with", "a"] and any(token.kind is Kind.NUMBER for token in tokens[first : said.first])
    return (
        carried
        or within
        or lead[-1:] in _RESTED
        or _is_of_a_side(tokens, said.last)
        or (said.last < last and tokens[said.last].text in _HANGS)
    )


def _is_of_a_side(tokens: Sequence[Token], at: int) -> bool:
    """Whether what follows at `at` tells a side: "half a minute each side", "half a minute on the left"."""
    at += at < len(tokens) and tokens[at].text == "on"
    at += at < len(tokens) and tokens[at].text in {"the", "my"}
    return at < len(tokens) and tokens[at].text in {"each", "per", "left", "right", "both"}


def _pauses_for(tokens: Sequence[Token], said: Said) -> bool:
    """Whether a phrase begins with a word of pausing and tells for how many seconds, so that it may be a rest within the set."""
    timed = any(tokens[i].kind is Kind.NUMBER and tokens[i + 1].text == "seconds" for i in range(said.first, said.last - 1))
    return timed and tokens[said.first].text in {"pause", "pausing", "break", "wait"}


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
