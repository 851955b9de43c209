"""Whether a set phrase means what it says where it stands: a wait, a feeling, an end, or only words beside something else."""

from __future__ import annotations

from typing import TYPE_CHECKING

from core.reading.lexicon import COURTESY, ENGLISH, PLACES, VOCABULARY, listed
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
_OF_WAITING = listed("words_sentences", "waiting")


def stands(tokens: Sequence[Token], said: Said, first: int, last: int) -> bool:
    """Whether the phrase means what it says where it stands."""
    before = tokens[said.first - 1] if said.first > first else None
    if said.meaning.startswith("units") and before is not None and before.kind is Kind.NUMBER:
        return False
    after = tokens[said.last] if said.last < last else None
    if said.meaning == "pause":
        counted = after is not None and (after.kind is Kind.NUMBER or after.text == "and")
        held = any(token.text in HOLD_WORDS - {"hold", "hang"} for token in tokens)
        held = held or (
            tokens[first].text == "i"
            and any(token.text == "hold" for token in tokens)
            and tokens[said.last - 1].text in {"minutes", "seconds"}
        )
        return not counted and not held and not _tells_why(tokens, said, first) and _waits(tokens, said, first, last)
    if said.meaning == "finish" and any(token.kind is Kind.NUMBER for token in tokens[said.last : last]):
        return bool({token.text for token in tokens[said.first : said.last]} & OF_THE_SESSION)
    if tokens[first].text == "if" and said.meaning in {"finish", "skip", "skip-day", "start", "undo"}:
        return False  # "if it's 12 again I'm out"
    if said.meaning == "swap-here" and said.last - said.first <= len(("other", "one")):
        return not any(token.kind is Kind.NUMBER for token in tokens[first:last])  # "stronger side 12, other one 10"
    if said.meaning == "today" and tokens[said.first].text in {"today", "todays"}:
        return all(tokens[i].text in _ASKING_FOR or tokens[i].text in COURTESY for i in range(first, said.first))
    if said.meaning == "finish" and after is not None and after.text in {"to", "of"}:
        return False  # "I'm off to hers", "I'm out of puff"
    if (
        said.meaning == "form"
        and before is not None
        and before.text in _KEEPING
        and tokens[said.first].text in {"my", "the", "form"}
    ):
        return False  # "couldn't keep my form"
    if said.meaning == "skip" and after is not None and after.text == ":":
        return False
    if said.meaning == "skip" and last < len(tokens) and tokens[last].text == "?":
        return not any(token.kind is Kind.NUMBER for token in tokens[first:last])
    if said.meaning == "right" and any(token.text in PLACES for token in tokens[first : said.first]):
        return False  # "my knee hurt last year but it's fine now"
    if said.meaning in FEELINGS:
        return not asked(tokens, first, last) and not _of_something_else(tokens, said, first)
    return not _negated(tokens, said, first)


def _tells_why(tokens: Sequence[Token], said: Said, first: int) -> bool:
    """Whether a doorbell or a crying baby is only told beside a set: "before the phone rang", "my son is crying but ten"."""
    words = {token.text for token in tokens[said.first : said.last]}
    led = said.first > first and tokens[said.first - 1].text in WHEN
    return led or (not words & _OF_WAITING and any(token.kind is Kind.NUMBER for token in tokens))


def _waits(tokens: Sequence[Token], said: Said, first: int, last: int) -> bool:
    """Whether a length of time beside a set is a wait: it stands by itself ("11 at 20kg, 2 secs"), not "3 sec negatives"."""
    lengths = [i for i in range(said.first, said.last) if tokens[i].kind is Kind.NUMBER]
    others = any(tokens[i].kind is Kind.NUMBER for i in range(first, last) if not said.first <= i < said.last)
    if not others or not lengths or lengths[0] != said.first:
        return True
    begins = said.first == first or tokens[said.first - 1].text in CLAUSE_ENDS
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
    questions = {"is", "are", "was", "will", "would", "should", "do"}
    return last < len(tokens) and tokens[last].text == "?" and tokens[first].text in questions


def _of_something_else(tokens: Sequence[Token], said: Said, first: int) -> bool:
    """Whether the feeling is about the traffic, the shoes or a knee, and not about the load."""
    lead = [token.text for token in tokens[max(first, said.first - 2) : said.first]]
    if lead and lead[-1] in {"is", "are", "was", "were", "felt"}:
        lead.pop()
    return bool(lead) and (lead[-1] in PLACES or (lead[-1] in ENGLISH and lead[-1] not in VOCABULARY))


def _negated(tokens: Sequence[Token], said: Said, first: int) -> bool:
    """Whether "not" or "should I" stands right before the phrase."""
    before = [token.text for token in tokens[max(first, said.first - 3) : said.first]]
    if before[-2:] in (["should", "i"], ["shall", "i"], ["do", "not"], ["did", "not"]) or before[-3:-1] == [
        "do",
        "not",
    ]:
        return True
    return bool(before) and before[-1] in {"not", "never", "nobody"} and tokens[said.first].text != "not"
